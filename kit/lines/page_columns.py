"""A page set in two columns, ingredients beside the method: one column after the other."""

import re
from collections.abc import Iterable, Iterator, Sequence

from kit.lines.page_words import is_whole

_GAP = re.compile(r"\s{3,}")
# Pictures that people set before and behind words; stars, boxes and ticks, which say something, are not among them.
_PICTURES = re.compile("[\U0001f000-\U0001faff\u2728\u2744\u2764\u27a1\u2b05-\u2b07\ufe0f\u200d]+")
_KEYCAP = re.compile("(\\d)\ufe0f?\u20e3")
_QUOTED = re.compile(r"^(?:> ?)+")
_LEAST_QUOTED = 3  # lines, before ">" is taken for the mark of a quotation


def without_pictures(text: str) -> str:
    """Return a text without small pictures; a number on a key is a number with a point.

    Examples
    --------
    >>> without_pictures("\u2728 1 cup oats \U0001f35e"), without_pictures("1\ufe0f\u20e3 Stir.")
    (' 1 cup oats ', '1. Stir.')
    """
    return _PICTURES.sub("", _KEYCAP.sub(r"\1.", text))


def in_one_column(rows: Iterable[tuple[int, str]]) -> Iterator[tuple[int, str]]:
    """Yield the rows of a page, each with its number; where two columns begin, the left one first, then the right one.

    Two columns begin where the headings of ingredients and method stand side by side; an empty row ends them.
    """
    right: list[tuple[int, str]] = []
    edge = 0
    for number, text in rows:
        if edge and not text.strip():
            yield from right
            right, edge = [], 0
        headings = _GAP.split(text.strip())
        if not edge and len(headings) == 2 and is_whole("ingredients", headings[0]) and is_whole("method", headings[1]):
            edge = text.index(headings[1])
        if not edge:
            yield number, text
            continue
        left, other = _halves(text, edge)
        if left:
            yield number, left
        right += [(number, other)] if other else []
    yield from right


def _halves(text: str, edge: int) -> tuple[str, str]:
    """Return what stands in the left and in the right column, which begins at a place or a little before it."""
    gap = next((gap for gap in _GAP.finditer(text) if gap.end() >= edge - 3), None)
    if gap is None:
        return text, ""
    return text[: gap.start()], text[gap.end() :]


def without_quoting(lines: Sequence[str]) -> list[str]:
    """Return the lines of a letter without the marks of what it quotes: "> 2 cups rice".

    Examples
    --------
    >>> without_quoting(["> Rice", ">", "> 2 cups rice", "Sent later"])
    ['Rice', '', '2 cups rice', 'Sent later']
    """
    quoted = sum(1 for line in lines if line.startswith(">"))
    return [_QUOTED.sub("", line) for line in lines] if quoted >= _LEAST_QUOTED else list(lines)
