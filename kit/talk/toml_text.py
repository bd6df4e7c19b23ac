"""The text of a talk file as a table; a line that is no TOML is told in words and hides nothing else."""

import re
import tomllib
from collections.abc import Iterator, Sequence
from dataclasses import replace
from typing import Any

from kit.errors import TalkFileError
from kit.talk.toml_mending import TABLES, Mistake, mistake_in

MOST_MISTAKES = 40  # told at once
_LONGEST_STATEMENT = 400  # lines of one text or list
_LONGEST_TABLE = 6  # lines over which a table in braces may be broken
_SHOWN = 60  # characters of a line in a message
_DEEPEST = 20  # brackets inside each other
_TEXT_BLOCK = re.compile(r"=\s*(?:\"\"\"|''')")
_LIST = re.compile(r"=\s*[\[{]")
_STATEMENT = re.compile(r"^\s*(?:\[|[\w-]+\s*=)")
_AT = re.compile(r"\(at line (\d+)")


def read_table(text: str, keys: Sequence[str], name: str) -> tuple[dict[str, Any], tuple[str, ...]]:
    """Return the table of a talk file, and what is wrong with its lines, a sentence each.

    A line with a usual mistake is read as it should stand; any other faulty line is left out. Both are told.

    Parameters
    ----------
    text : str
        The text of the file.
    keys : sequence of str
        The keys that a talk file knows.
    name : str
        The file's name, for messages.

    Raises
    ------
    TalkFileError
        If there are more mistakes than a slip of the pen makes: then it is no talk file.
    """
    lines = re.split(r"\r\n|\r|\n", text)
    if _depth(text) > _DEEPEST:
        raise TalkFileError(name, [f"brackets stand inside each other over {_DEEPEST} deep; this is no talk file"])
    try:
        table = tomllib.loads("\n".join(lines))
        if not any(isinstance(table.get(kind), dict) for kind in TABLES):  # no "[point]" with a single bracket
            return table, ()
        faults: list[str] = []
    except (tomllib.TOMLDecodeError, ValueError, RecursionError):
        faults = []
    _mend_lines(lines, tuple(keys), faults, name)
    for _ in range(MOST_MISTAKES):
        try:
            return tomllib.loads("\n".join(lines)), tuple(faults)
        except (tomllib.TOMLDecodeError, ValueError, RecursionError) as fault:
            _leave_out(lines, fault, faults)
    raise TalkFileError(name, faults)


def statements(lines: Sequence[str]) -> Iterator[tuple[int, int]]:
    """Yield the first line of each statement of a TOML text without mistakes, and the line behind its last."""
    place = 0
    while place < len(lines):
        long = 1
        if lines[place].strip() and not lines[place].lstrip().startswith("#"):
            long = max(1, _statement(lines, place, entries=True))
            yield place, place + long
        place += long


def _depth(text: str) -> int:
    """Return how deep brackets stand inside each other, at the most."""
    deep = deepest = 0
    for sign in re.findall(r"[\[{(\])}\n]", text):
        deep = 0 if sign == "\n" and deep < 2 else deep + (sign in "[{(") - (sign in "])}" and deep > 0)
        deepest = max(deepest, deep)
    return deepest


def _mend_lines(lines: list[str], keys: tuple[str, ...], faults: list[str], name: str) -> None:
    """Put every faulty line right, or leave it out, and tell it."""
    place = 0
    while place < len(lines):
        if not lines[place].strip() or lines[place].lstrip().startswith("#"):
            place += 1
            continue
        long = _statement(lines, place)
        if long:
            place += long
            continue
        if len(faults) >= MOST_MISTAKES:
            raise TalkFileError(name, [*faults, "too many lines are no TOML; is it a plain text? Save it as .txt then"])
        several = _broken(lines, place)
        if several > 1:
            whole = " ".join(line.strip() for line in lines[place : place + several])
            mistake = replace(mistake_in(whole, keys), because="it stands on one line")
            mistake = replace(mistake, mended=whole) if _reads(whole) else mistake
        else:
            mistake = _open_block(lines[place]) or mistake_in(lines[place], keys)
        write = "; write {}".format(mistake.mended.replace("\n", " and below it ")) if mistake.mended else ""
        faults.append(f"line {place + 1}, {_shown(lines[place])}: {mistake.because}{write}")
        lines[place : place + several] = [mistake.mended, *[""] * (several - 1)]
        place += several


def _shown(line: str) -> str:
    line = " ".join(line.split())
    return line if len(line) <= _SHOWN else f"{line[:_SHOWN]}..."


def _statement(lines: Sequence[str], place: int, *, entries: bool = False) -> int:
    """Return how many lines the statement that begins here has; 0 when it is none."""
    first = lines[place]
    header = re.match(r"^\s*\[\s*(\w+)\s*\]\s*(?:#.*)?$", first)
    if header and header[1] in TABLES and not entries:
        return 0  # "[point]", which has to be "[[point]]"
    if _reads(first):
        return 1
    block, several = _TEXT_BLOCK.search(first), _LIST.search(first)
    if not (block or several):
        return 0
    for end in range(place + 1, min(len(lines), place + _LONGEST_STATEMENT)):
        if not block and _STATEMENT.match(lines[end]) and not lines[end].strip().startswith(("[", "]")):
            return 0
        if _reads("\n".join(lines[place : end + 1])):
            return end + 1 - place
    return 0


def _broken(lines: Sequence[str], place: int) -> int:
    """Return over how many lines a text in one pair of quotes, or a table in braces, was broken; 1 when it was not."""
    first = lines[place].rstrip()
    if not re.match(r"^\s*[\w-]+\s*=", first):
        return 1
    second = lines[place + 1].strip() if place + 1 < len(lines) else ""
    if first.count('"') == 1 and second.count('"') == 1 and second.endswith('"') and "=" not in second:
        return 2
    if "{" in first and first.count("{") > first.count("}"):
        for end in range(place + 1, min(place + _LONGEST_TABLE, len(lines))):
            if lines[end].strip().startswith("[["):
                break
            if "}" in lines[end]:
                return end + 1 - place
    return 1


def _open_block(line: str) -> Mistake | None:
    """Read a text in three quotes that is nowhere closed."""
    match = _TEXT_BLOCK.search(line)
    if match is None:
        return None
    mended = line[: match.start()] + '= "' + line[match.end() :].replace('"', "'").rstrip() + '"'
    return Mistake("a text that begins with three quotes ends with three", mended.strip())


def _reads(text: str) -> bool:
    try:
        tomllib.loads(text)
    except (tomllib.TOMLDecodeError, ValueError, RecursionError):
        return False
    return True


def _leave_out(lines: list[str], fault: Exception, faults: list[str]) -> None:
    """Leave out the line at which reading stopped: a key that stands twice."""
    at = _AT.search(str(fault))
    places = [place for place, line in enumerate(lines) for _ in line.split("\n")]  # a mended line may have become two
    place = places[min(int(at[1]) - 1 if at else len(places) - 1, len(places) - 1)]
    while place > 0 and not lines[place].strip():
        place -= 1
    key = lines[place].partition("=")[0].strip()
    twice = "overwrite" in str(fault) or "twice" in str(fault) or "mutate" in str(fault)
    because = f"{key} stands twice in this entry; delete one" if twice else str(fault).partition(" (at")[0]
    faults.append(f"line {place + 1}, {_shown(lines[place])}: {because}")
    lines[place] = ""
