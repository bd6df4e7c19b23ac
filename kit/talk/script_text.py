"""The script as plain text: a sentence a line, or paragraphs; headings are the parts of the talk."""

import re
from collections.abc import Sequence
from dataclasses import replace

from kit.talk.plain_lines import PlainLine, heading, one_line
from kit.talk.talk import Point

_END = re.compile(r"(?<=[.!?])[\"\u201d')\u2019]*\s+(?=[\"\u201c'(\u2018]?[A-Z0-9{\u00c0-\u00de])")
_SHORT_FORMS = re.compile(
    r"\b(?:approx|e\.g|i\.e|etc|vs|dr|mr|mrs|ms|st|no|fig|oz|lb|lbs|tsp|tbsp|min|max|ca|cf|vol|temp|deg|(?-i:[A-Z]))\.$",
    re.IGNORECASE,
)
_SOURCE = re.compile(r"\s*[(\[]source:\s*(?P<source>[^()\[\]]+)[)\]]\s*$", re.IGNORECASE)
_BULLET = re.compile(r"^\s*(?:[-*\u2022]\s+)")
_MOST_HEADING_WORDS = 7


def read_script(text: str, known: Sequence[Point] = ()) -> tuple[tuple[Point, ...], tuple[PlainLine, ...]]:
    r"""Read a script.

    Parameters
    ----------
    text : str
        A sentence a line, or paragraphs. A line with # in front, one that ends with a colon, one in capitals, or a
        short one without a full stop under an empty line, is the heading of a part. "(source: my own notes)" behind a
        sentence says on whose word it is said.
    known : sequence of Point
        The points of the talk so far: a line that says one of them word for word stays that one point.

    Returns
    -------
    points : tuple of Point
        One for each sentence.
    lines : tuple of PlainLine
        What each line was read as.

    Examples
    --------
    >>> points, _ = read_script("# Salt\nA box has {sodium}. It keeps 2.5 days.")
    >>> [(point.say, point.part) for point in points]
    [('A box has {sodium}.', 'Salt'), ('It keeps 2.5 days.', 'Salt')]
    """
    whole = {one_line(point.say) for point in known}
    rows = text.splitlines()
    points: list[Point] = []
    lines: list[PlainLine] = []
    part = ""
    stopped = sum(1 for row in rows if re.search(r"[.!?][\"')\u201d]*\s*$", row)) >= max(
        2, 0.5 * sum(map(bool, map(str.strip, rows)))
    )
    for place, row in enumerate(rows):
        below = rows[place + 1] if place + 1 < len(rows) else ""
        is_known = one_line(row) in whole
        # A point that begins with # is written behind a dash, so that a line with # in front is always a heading.
        plain = (is_known and not row.lstrip().startswith("#")) or _BULLET.match(row)
        named = None if plain else _part(row, rows[place - 1] if place else "", below, stopped=stopped)
        if not row.strip():
            lines.append(PlainLine(place))
        elif named is not None:
            part = named
            lines.append(PlainLine(place, f"part: {part}" if part else "no part"))
        else:
            said = _sentences(row if is_known else _BULLET.sub("", row), whole)
            told = "sentence" if len(said) == 1 else f"{len(said)} sentences"
            lines.append(PlainLine(place, told, entry=len(points), makes=len(said)))
            points += [replace(point, part=part) for point in said]
    return tuple(points), tuple(lines)


def _part(row: str, above: str, below: str, *, stopped: bool) -> str | None:
    """Return the part that a line heads; None when it is no heading."""
    named = heading(row)
    if named is not None:
        return named
    line = row.strip()
    few = 0 < len(line.split()) <= _MOST_HEADING_WORDS and not re.search(r"[{}\d.!?]", line.rstrip(":"))
    if few and (line.endswith(":") or (line.isupper() and len(line) > 3)):
        return line.rstrip(":").strip()
    if few and stopped and not above.strip() and below.strip() and not re.search(r"[,;]$", line):
        return line
    return None


def _sentences(row: str, whole: set[str]) -> list[Point]:
    """Return the sentences of a line; a line that is a known point stays one."""
    line = one_line(row)
    source = _SOURCE.search(line)
    bare = line[: source.start()] if source else line
    said = source["source"].strip() if source else ""
    if bare in whole or line in whole:
        return [Point(bare if bare in whole else line, source=said if bare in whole else "")]
    return [Point(sentence, source=said) for sentence in sentences(bare)]


def sentences(text: str) -> list[str]:
    """Return the sentences of a paragraph; a point inside a number, a placeholder or a short form ends none.

    Examples
    --------
    >>> sentences("It has {sodium.share_of_day}. Add approx. 2.5 g. Done!")
    ['It has {sodium.share_of_day}.', 'Add approx. 2.5 g.', 'Done!']
    """
    found: list[str] = []
    for piece in _split(text):
        if found and _SHORT_FORMS.search(found[-1]):
            found[-1] = f"{found[-1]} {piece}"
        else:
            found.append(piece)
    return found


def _split(text: str) -> list[str]:
    pieces, start = [], 0
    for match in _END.finditer(text):
        end = match.end() - len(match[0]) + len(match[0].rstrip())
        if text.count("{", start, end) == text.count("}", start, end):
            pieces.append(text[start:end])
            start = match.end()
    return [*pieces, text[start:]] if text[start:].strip() else pieces


def write_script(points: Sequence[Point]) -> str:
    """Return points as a script; `read_script` gives them back where it knows them."""
    lines: list[str] = []
    part = ""
    for point in points:
        if one_line(point.part) != part:
            part = one_line(point.part)
            lines += ["", f"# {part}"] if lines else [f"# {part}"]
        source = (
            f" (source: {one_line(point.source)})" if point.source and not re.search(r"[()\[\]]", point.source) else ""
        )
        say = one_line(point.say)
        unclear = _BULLET.match(say) or _part(say, "", "x", stopped=True) is not None
        lines.append(f"{'- ' if unclear else ''}{say}{source}")
    return "\n".join(lines)
