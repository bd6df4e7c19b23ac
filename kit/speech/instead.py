"""What may be said instead: her own words with other numbers, else other sentences; only what reads back as true."""

import re
from collections.abc import Callable, Sequence

from kit.errors import KitError
from kit.rules.verdicts import HOLDS, OFF
from kit.speech.claim import Edit, Finding
from kit.talk.dish import Dish
from kit.talk.placeholders import fill

# "It only covers 45 percent" belittles a number that was put right, and ", tops" bounds it.
_BELITTLED = re.compile(r"\b(?:only|barely|merely|scarcely) (?=(?:gives?|gets?|covers?|brings?|has|have|holds?)\b)")
_BOUNDED = re.compile(r",? (?:tops|at most|at least|or less|or more|max|maximum)(?=[.!,;])")
_UP_TO = re.compile(r"\b(?:(?:just )?as (?:much|many|little|few) as|(?<!adds )up to|a mere|a full|a whole) (?=about\b)")
_BEGINS = re.compile(r"[?!] about\b")  # "How much fat? about 10 grams"
_STAYS = re.compile(
    r"\b(?:stays?|kept|keeps?|keeping|sits?|lands?|lies|hovers?|runs?)(?: \w+)? $|\byou(?:['’]re| are) $", re.IGNORECASE
)
_PARTS = (["all"], ["most"], ["half"])
_WHOLE_FOLLOWS = re.compile(r" (?:the|your|its|our|their|an?)\b")


def instead_of(text: str, pairs: Sequence[tuple[int, Finding]], dish: Dish, reads_back: Callable[[str], bool]) -> str:
    """Return words that hold when they are read back; empty when there are none.

    Parameters
    ----------
    text : str
        What was said.
    pairs : sequence of (int, Finding)
        The finding on each claim, and where the sentence of it begins in the text.
    dish : Dish
        The dish as it is now.
    reads_back : callable
        Whether some words hold.
    """
    off = [(start, finding) for start, finding in pairs if finding.verdict == OFF]
    others_hold = all(finding.verdict in (HOLDS, OFF) for _, finding in pairs)
    if others_hold and all(finding.edit is not None for _, finding in off):
        edits = {
            Edit(start + finding.edit.start, start + finding.edit.end, finding.edit.words)
            for start, finding in off
            if finding.edit is not None
        }
        new = _edited(text, edits)
        if new and not new.rstrip().endswith("?") and reads_back(new):  # a question put right is no statement
            return new
    found: list[str] = []
    for _, finding in off:
        candidates = (_filled(sentence, dish) for sentence in finding.sentences)
        good = next((one for one in candidates if one and reads_back(one)), "")
        if good and not any(one.startswith(good.rstrip(".")) for one in found):
            found.append(good)
    return " ".join(found)


def _edited(text: str, edits: set[Edit]) -> str:
    """Return a text with some pieces replaced; empty when two of them are the same piece."""
    if len({(edit.start, edit.end) for edit in edits}) < len(edits):
        return ""
    for edit in sorted(edits, key=lambda edit: -edit.start):
        before, after = text[: edit.start], text[edit.end :]
        words = _fitting(edit, text)
        if words.startswith(("high", "low", "very low", "a good")) and before.endswith((" a ", " an ")):
            before = before[: before.rindex(" a")] + " "  # "is a [good source of fiber]": "is high in fiber"
        if words.startswith("about") and _STAYS.search(before):
            words = f"at {words}"  # "sodium stays [below 500]": "stays at about 700"
        text = before + words + after
    text = _UP_TO.sub("", _BOUNDED.sub("", _BELITTLED.sub("", text)))
    return _capital(_BEGINS.sub(lambda found: found[0].replace("about", "About"), text))


def _fitting(edit: Edit, text: str) -> str:
    """Return the words of an edit as they fit where they go: "a 190-calorie bowl", "about a third of the iron"."""
    old, after = text[edit.start : edit.end], text[edit.end :]
    if "-" in old and " calories" in edit.words:  # an adjective: "a 90-calorie bowl"
        return f"{edit.words.removeprefix('about ').removesuffix(' calories')}-calorie"
    last = old.lower().split()[-1:]
    no_part = last in (["twice"], ["times"]) and not re.search(r"\b(?:twice|times)$", edit.words)
    if old.lower().endswith(" of") or ((last in _PARTS or no_part) and _WHOLE_FOLLOWS.match(after)):
        return f"{edit.words} of"
    return edit.words


def _capital(text: str) -> str:
    return text[:1].upper() + text[1:]


def _filled(sentence: str, dish: Dish) -> str:
    try:
        return _capital(fill(sentence, dish))
    except KitError:
        return ""
