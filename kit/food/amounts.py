"""Numbers as people write them at the head of an ingredient line."""

import math
import re
from dataclasses import dataclass
from fractions import Fraction

from kit.food.measures import FRACTION_GLYPHS

_UP_TO_TWELVE = "one two three four five six seven eight nine ten eleven twelve".split()
_WORDS = {
    **dict(zip(_UP_TO_TWELVE, range(1, 13), strict=True)),
    **{"a": 1, "an": 1, "a couple": 2, "a few": 3, "a dozen": 12, "one dozen": 12, "two dozen": 24, "half a dozen": 6},
    **{"half": 0.5, "half a": 0.5, "half an": 0.5, "a half": 0.5, "one half": 0.5, "half of a": 0.5, "half of an": 0.5},
    **{"a quarter": 0.25, "quarter of a": 0.25, "quarter": 0.25, "one quarter": 0.25, "three quarters": 0.75},
    **{"a third": 1 / 3, "one third": 1 / 3, "two thirds": 2 / 3, "dozen": 12, "half dozen": 6, "couple": 2, "few": 3},
    **{"one and a half": 1.5, "two and a half": 2.5, "three and a half": 3.5, "a pair of": 2, "several": 3},
}
_FRACTION = r"\d{1,6}\s*/\s*\d{1,6}"
_PLAIN = r"\d{1,3}(?:,\d{3})+(?:\.\d+)?|\d+(?:\.\d+|,\d{1,2}(?!\d))?(?:e\d+)?|\.\d+"
_NUMBER = rf"(?:\d{{1,6}}(?:\s+(?:and\s+|&\s*)?|\s*-\s*|\s*&\s*|\s*\+\s*){_FRACTION}|{_FRACTION}|{_PLAIN})"
_SPOKEN = "|".join(sorted(map(re.escape, _WORDS), key=len, reverse=True))
_ONE = re.compile(
    rf"(?:(?P<number>(?![6-9]\d/\d\d?\b){_NUMBER})(?!\d|[.,]\d|\s*(?:%|percent\b|per cent\b))"  # "85/15" beef
    rf"|(?P<word>{_SPOKEN})(?:\s+of(?=\s+an?\b)|(?![\w'-])))",
    re.IGNORECASE,
)
_WORDS_OF_A_RANGE = frozenset("two three four five six seven eight nine ten twelve".split())  # "one or two"
_TO = re.compile(r"\s*(?:-|to\b|or\b)\s*", re.IGNORECASE)
_DOZEN = re.compile(r"\s*dozen\b\s*(?:of\b\s*)?", re.IGNORECASE)
_MIXED = re.compile(rf"(\d+)\D+?({_FRACTION})$")
_HALF_BEHIND = re.compile(
    rf"\b(?P<count>\d+|an?|{'|'.join(_UP_TO_TWELVE)}) (?P<measure>[a-z]+\.?) and an? (?P<part>half|third|quarter)"
    r"(?=\s+of\b|\s*(?:[,;.]|$))",
    re.IGNORECASE,
)
_DASHES = str.maketrans({"–": "-", "—": "-", "‐": "-", "‑": "-", "−": "-", "⁄": "/", "∕": "/", "×": "x", "\u00a0": " "})


@dataclass(frozen=True, slots=True)
class Count:
    """How many: the value, and the ends of a range where one was written ("2-3" is 2.5 from 2 to 3)."""

    value: float
    low: float
    high: float

    def times(self, factor: float) -> "Count":
        """Return the count multiplied."""
        return Count(self.value * factor, self.low * factor, self.high * factor)

    def plus(self, other: "Count") -> "Count":
        """Return the sum of two counts."""
        return Count(self.value + other.value, self.low + other.low, self.high + other.high)


ONE = Count(1.0, 1.0, 1.0)


def plain_characters(text: str) -> str:
    """Return text with one kind of dash, slash and space, and with fraction signs as digits.

    Examples
    --------
    >>> plain_characters("1½–2 cups")
    '1 1/2-2 cups'
    """
    text = text.translate(_DASHES)
    for sign, digits in FRACTION_GLYPHS.items():
        if sign in text:
            text = re.sub(rf"(?<=\d){sign}", f" {digits}", text).replace(sign, digits)
    return text


def with_half_ahead(text: str) -> str:
    """Return text with the part of a measure that is said behind it ahead of it.

    Examples
    --------
    >>> with_half_ahead("a cup and a half of lentils"), with_half_ahead("2 cans and a quarter")
    ('1 1/2 cup of lentils', '2 1/4 cans')
    """
    return _HALF_BEHIND.sub(_half_ahead, text)


def _half_ahead(found: re.Match[str]) -> str:
    count, part = found["count"].lower(), found["part"].lower()
    fraction = {"half": "1/2", "third": "1/3", "quarter": "1/4"}[part]
    return f"{count if count.isdigit() else _WORDS[count]} {fraction} {found['measure']}"


def read_count(text: str) -> tuple[Count | None, str]:
    """Read a number, a range or a number word at the start of a text.

    Parameters
    ----------
    text : str
        Text as `plain_characters` returns it.

    Returns
    -------
    count : Count or None
        None when the text does not start with a number. A number that is no amount (1/0, 1e309) is NaN.
    rest : str
        What follows.

    Examples
    --------
    >>> read_count("1 1/2 cups")[0].value, read_count("half a lemon")[1], read_count("2% milk")[0]
    (1.5, 'lemon', None)
    >>> read_count("2 to 3 cloves")[0]
    Count(value=2.5, low=2.0, high=3.0)
    """
    first = _ONE.match(text)
    if first is None:
        return None, text
    value, rest = _value(first), text[first.end() :]
    dozen = _DOZEN.match(rest)
    if dozen:
        value, rest = 12 * value, rest[dozen.end() :]
    to = _TO.match(rest)
    second = _ONE.match(rest[to.end() :]) if to else None
    # "2-3" and "2 to 3" are ranges; "1 15-ounce can" and "2 or a" are not.
    spoken = second and first["word"] and second["word"] and second["word"].lower() in _WORDS_OF_A_RANGE
    if to and second and (second["number"] or spoken) and not re.match(r"\s*-", rest[to.end() + second.end() :]):
        other = _value(second)
        if other >= value:
            return Count((value + other) / 2, value, other), rest[to.end() + second.end() :].lstrip()
    return Count(value, value, value), rest.lstrip()


def _value(match: re.Match[str]) -> float:
    if match["word"]:
        return float(_WORDS[match["word"].lower()])
    text = match["number"]
    mixed = _MIXED.match(text)
    if mixed:
        return float(mixed[1]) + _fraction(mixed[2])
    if "/" in text:
        return _fraction(text)
    text = text.replace(",", "") if re.fullmatch(r"\d{1,3}(,\d{3})+(\.\d+)?", text) else text.replace(",", ".")
    value = float(text)
    return value if math.isfinite(value) else math.nan


def _fraction(text: str) -> float:
    top, bottom = (int(part) for part in text.split("/"))
    return float(Fraction(top, bottom)) if bottom else math.nan
