"""Whether a spoken number fits a value that is known with a range: yes, no, or too near to tell."""

from decimal import Decimal

from kit.meal.certainty import Range
from kit.speech.words.tokens import SHARE, Quantity

NEARLY_ALL, PLAINLY_NOT_NEARLY_ALL, ALL, HARDLY = 0.90, 0.75, 0.985, 0.05  # common practice
OF_A_FRACTION = 0.15  # "a third" holds from 0.85 to 1.15 of it: common practice
LITTLE_OVER, MUCH_OVER = 1.20, 1.35  # "just over": up to a fifth more; past a third more it is no longer just
MOST_ROUNDED = 0.10  # what rounding may change: 6.3 rounded to ten is another number
NOT_ABOVE = 0.02  # "nearly half" is said of no more than 52 %, "nearly 400" of no more than 408
REACHED = 0.95  # from so much of it on, a number that may be said is not one that is fallen short of
FAR = 0.25  # of the value: what is told as so much is not vouched for from there on, however wide the range
WELL = 0.90  # "well under" is at most nine tenths of it


def agrees(said: float, of: Range) -> bool:
    """Return whether a number may be said: inside the range, or the value rounded to the digits spoken.

    Examples
    --------
    >>> agrees(425, Range(431, 401, 461)), agrees(400, Range(431, 415, 447)), agrees(500, Range(431, 401, 461))
    (True, True, False)
    """
    near = abs(said - of.value) <= MOST_ROUNDED * abs(of.value)
    return of.low <= said <= of.high or (near and rounds_to(of.value, said))


def rounds_to(value: float, said: float) -> bool:
    """Return whether a value is a said number when rounded to its digits; closing zeros are not digits.

    Examples
    --------
    >>> rounds_to(431, 400), rounds_to(431, 425), rounds_to(8.14, 8.1)
    (True, False, True)
    """
    exponent = Decimal(str(round(said, 9))).normalize().as_tuple().exponent
    return bool(abs(round(value, -int(exponent)) - said) < 1e-9)


def fits(said: Quantity, of: Range, open_above: bool = False) -> bool | None:
    """Return whether a spoken quantity fits a value; None when the range leaves it open.

    Parameters
    ----------
    said : Quantity
        Its number in the unit of the value.
    of : Range
        The value with its 90 % range.
    open_above : bool
        Whether a part of the value is missing, so that it is only the least.

    Examples
    --------
    >>> of = Range(431, 401, 461)
    >>> [fits(Quantity(n, n, relation="under"), of) for n in (500, 435, 400)]
    [True, None, False]
    """
    if of.value != of.value:
        return None
    result = _fits(said, of)
    if not open_above:
        return result
    if said.relation == "at least" and said.value <= of.value * (1 + 1e-6):
        return True  # so much is known, and what is missing can only add
    # What is missing can only add: a floor stays kept, a ceiling that is broken stays broken.
    if said.relation in ("over", "at least", "well over", "most", "much"):
        return result if result else None
    if result is False and (of.low > said.high or said.relation in ("none", "hardly")):
        return False
    return None


def _fits(said: Quantity, of: Range) -> bool | None:
    number, relation = said.value, said.relation
    if relation in ("under", "at most"):
        return _below(number, of)
    if relation == "short of":
        return (False if of.value >= REACHED * number else None) if _about(said, of) else _below(number, of)
    if relation in ("over", "at least", "most"):
        return _above(number, of)
    if relation == "well under":
        return _below(WELL * number, of) if of.value <= number else False
    if relation == "well over":
        return _above(number / WELL, of) if of.value >= number else False
    if relation == "much":
        return _above(number, of)
    if relation == "between":
        return _between(said, of)
    if relation == "exactly":
        return abs(of.value - number) < 1e-9 if of.half_width <= 0 else False
    if relation == "all":
        return True if of.value >= ALL else False if of.high < 1 or of.value < NEARLY_ALL else None
    if relation == "nearly all":
        return True if of.value >= NEARLY_ALL else False if of.value < PLAINLY_NOT_NEARLY_ALL else None
    if relation == "none":
        return of.value <= 1 - ALL
    if relation == "hardly":
        return True if of.value <= HARDLY else None if of.value <= 2 * HARDLY else False
    if relation == "just over":
        return _just_over(number, of)
    if relation == "nearly" and said.unit != SHARE and not _about(said, of):
        return _just_under(number, of)
    if relation == "nearly" and of.value > number + (NOT_ABOVE if said.unit == SHARE else NOT_ABOVE * number):
        return None if _about(said, of) else False
    return None if _about(said, of) and abs(of.value - number) > FAR * of.value else _about(said, of)


# A bound has one side: it is 90 % sure at 1.28 of the 1.645 standard deviations that a range of two ends reaches.
ONE_SIDE = 1.2816 / 1.6449
# A value that lies a good way past a bound keeps it where that is 75 % sure, at 0.67 standard deviations, too.
CLEAR_OF, CLEAR = 1.15, 0.6745 / 1.6449  # "more than half" of 58 %: common practice


def _ends(of: Range, share: float = ONE_SIDE) -> tuple[float, float]:
    return of.value - share * (of.value - of.low), of.value + share * (of.high - of.value)


def _clear_ends(of: Range) -> tuple[float, float]:
    """Return the ends between which a bound is too near to tell."""
    (low, high), (least, most) = _ends(of), _ends(of, CLEAR)
    return max(low, min(least, of.value / CLEAR_OF)), min(high, max(most, of.value * CLEAR_OF))


def _below(limit: float, of: Range) -> bool | None:
    low, high = _clear_ends(of)
    if high <= limit:
        return True
    return False if low >= limit else None


def _above(limit: float, of: Range) -> bool | None:
    low, high = _clear_ends(of)
    if low >= limit:
        return True
    return False if high <= limit else None


def _between(said: Quantity, of: Range) -> bool | None:
    if said.low <= of.value <= said.high and (
        (said.low <= of.low and of.high <= said.high) or said.high - said.low < 2 * of.half_width
    ):
        return True
    if of.high < said.low or of.low > said.high:
        return False
    return True if said.low <= of.value <= said.high else None


def _just_over(number: float, of: Range) -> bool | None:
    if number * 0.985 <= of.value <= number * LITTLE_OVER:
        return True
    return False if of.high < number or of.low > number * LITTLE_OVER or of.value > number * MUCH_OVER else None


def _just_under(number: float, of: Range) -> bool | None:
    if number / LITTLE_OVER <= of.value <= number * 1.015:
        return True
    return False if of.low > number or of.high < number / LITTLE_OVER or of.value < number / MUCH_OVER else None


def _about(said: Quantity, of: Range) -> bool:
    if said.unit == SHARE:
        return _about_share(said, of)
    return agrees(said.value, of)


def _about_share(said: Quantity, of: Range) -> bool:
    """Return whether a share may be said: inside the range, near the fraction, or rounded to whole or five percent."""
    off = abs(of.value - said.value)
    if of.low <= said.value <= of.high or off <= 0.01:
        return True
    fives = round(100 * said.value, 6) % 5 == 0 and said.value >= 0.2
    return off <= (OF_A_FRACTION * said.value if said.is_fraction else 0.025 if fives else 0.0)
