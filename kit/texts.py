"""Numbers and lists as people read them: the one place where text is formatted."""

import math
import re
from collections.abc import Sequence

UNKNOWN = "unknown"
_COUNTS = (
    *"zero one two three four five six seven eight nine ten eleven twelve thirteen fourteen fifteen sixteen".split(),
    *"seventeen eighteen nineteen twenty".split(),
)
_WITH_AN = re.compile(r"[aeiou]|8|1[18]\b")
_A_HAIR_MORE = 1 + 1e-12  # so that a half stays one, in whatever order its parts were added


def number(value: float, decimals: int = 0) -> str:
    """Write a number with a thousands comma and no needless zeros; a half is rounded up.

    Examples
    --------
    >>> number(1234.5, 1), number(2.50, 2), number(float("nan"))
    ('1,234.5', '2.5', 'unknown')
    >>> number(0.85, 1), number(0.85 - 1e-16, 1)
    ('0.9', '0.9')
    """
    if value is None or math.isnan(value):
        return UNKNOWN
    text = f"{value * _A_HAIR_MORE:,.{decimals}f}"
    if "." in text:
        text = text.rstrip("0").rstrip(".")
    return "0" if text == "-0" else text


def quantity(value: float, unit: str, decimals: int = 0) -> str:
    """Write a number with its unit, or ``unknown``.

    Examples
    --------
    >>> quantity(12.34, "g", 1)
    '12.3 g'
    """
    text = number(value, decimals)
    return text if text == UNKNOWN else f"{text} {unit}"


def counted(value: float, decimals: int = 0) -> str:
    """Write a count as it is said: whole ones up to twenty in words.

    Examples
    --------
    >>> counted(2), counted(30), counted(2.5, 1)
    ('two', '30', '2.5')
    """
    return _COUNTS[int(value)] if 0 <= value < len(_COUNTS) and value == int(value) else number(value, decimals)


def one(thing: str) -> str:
    """Write a thing with the article that is spoken before it.

    Examples
    --------
    >>> one("head"), one("ear"), one("8-inch piece")
    ('a head', 'an ear', 'an 8-inch piece')
    """
    return f"{'an' if _WITH_AN.match(thing) else 'a'} {thing}"


def span(low: float, high: float) -> str:
    """Write a range with as many decimals as tell its ends apart.

    Examples
    --------
    >>> span(269.5, 330.4), span(2.9, 3.1), span(0.36, 0.4)
    ('270 to 330', '2.9 to 3.1', '0.36 to 0.4')
    """
    width = high - low
    decimals = 0 if width >= 3 or width <= 0 else 1 if width >= 0.15 else 2
    return f"{number(low, decimals)} to {number(high, decimals)}"


def percent(fraction: float, decimals: int = 0) -> str:
    """Write a fraction of one as a percentage.

    Examples
    --------
    >>> percent(0.256), percent(float("nan"))
    ('26 %', 'unknown')
    """
    return quantity(fraction * 100, "%", decimals)


def listing(words: Sequence[str], last: str = "and") -> str:
    """Join words the way a sentence does.

    Examples
    --------
    >>> listing(["milk", "wheat", "sesame"])
    'milk, wheat and sesame'
    """
    words = list(words)
    if len(words) < 2:
        return "".join(words)
    return f"{', '.join(words[:-1])} {last} {words[-1]}"
