"""What is printed on a package label, and what each amount may have been before it was rounded."""

import math
import re
from collections.abc import Mapping
from functools import cache

from kit.errors import LabelError
from kit.food.amount_units import factor
from kit.food.daily_values import daily_values
from kit.food.labels.label_rounding import Printed, percent_rounding, rounding
from kit.food.nutrients import nutrient, nutrients
from kit.texts import number

# Printed on labels and needed to check them, though the kit's table of foods has no such column. [g]
LABEL_ONLY = {
    "trans_fat": "trans fat",
    "added_sugars": "added sugars",
    "sugar_alcohol": "sugar alcohol",
    "alcohol": "alcohol",
}
_PRINTED = re.compile(
    r"(?P<less><|(?:contains\s+)?less\s+than)?\s*(?P<number>\d{1,3}(?:,\d{3})+(?:\.\d+)?|\d+(?:\.\d+)?|\.\d+)\s*"
    r"(?P<unit>[a-zµμ]*)(?:\s*(?:rae|dfe|ne))?\.?",
    re.IGNORECASE,
)
_MOST = 1_000_000.0  # of anything on a label, in its unit or in percent


@cache
def printed_names() -> Mapping[str, str]:
    """Return what a label may print, by our id, with the name to call it by."""
    return {name: known.name.lower() for name, known in nutrients().items()} | LABEL_ONLY


def unit_of(name: str) -> str:
    """Return the unit of a nutrient or of an amount that only labels have."""
    return "g" if name in LABEL_ONLY else nutrient(name).unit


def printed_amount(name: str, printed: str | float) -> Printed:
    """Return what a label's amount stands for.

    Parameters
    ----------
    name : str
        Nutrient id, or one of `LABEL_ONLY`.
    printed : str or float
        As printed: ``8``, ``"160 mg"``, ``"less than 1 g"``, ``"<1"``. Without a unit it is in the nutrient's own.

    Returns
    -------
    Printed
        In the nutrient's unit, for the same serving.

    Raises
    ------
    LabelError
        If it is not an amount, is below zero, or its unit is not one of that nutrient.

    Examples
    --------
    >>> printed_amount("fat", "8 g"), printed_amount("fiber", "less than 1 g")
    (Printed(value=8.0, low=7.5, high=8.5), Printed(value=0.75, low=0.5, high=1.0))
    """
    called, unit = printed_names()[name], unit_of(name)
    text = str(printed).strip()
    match = _PRINTED.fullmatch(text)
    if match is None or isinstance(printed, bool):
        raise LabelError(f'{called} is "{text}"; write it as printed, such as 8, "8 {unit}" or "less than 1 {unit}"')
    times = _factor(name, match["unit"] or unit, called)
    digits = match["number"].replace(",", "")
    value = float(digits) * times
    if value > _MOST:
        raise LabelError(f"{called} is {_beginning(text)}, more than any serving holds; write it as printed")
    rule = rounding(name)
    if match["less"]:
        low = rule.zero_below if math.isclose(value, rule.less_than) else 0.0
        return Printed((low + value) / 2, low, value)
    decimals = len(digits.partition(".")[2].rstrip("0"))
    half_digit = 0.5 * 10.0**-decimals * times
    if not math.isclose(times, 1.0):  # rounded in the other unit
        return Printed(value, max(0.0, value - half_digit), value + half_digit)
    return rule.backwards(value, half_digit)


def printed_percent(name: str, percent: float) -> Printed:
    """Return the amount that a label's percentage of the daily value stands for.

    Raises
    ------
    LabelError
        If the nutrient has no daily value, or the percentage is below zero or no number.

    Examples
    --------
    >>> printed_percent("calcium", 20)
    Printed(value=260.0, low=227.5, high=292.5)
    """
    called = printed_names()[name]
    if name not in daily_values():
        raise LabelError(f"{called} has no daily value; write its amount instead of a percentage")
    try:
        value = float(str(percent).strip().removesuffix("%"))
    except ValueError:
        value = math.nan
    if not 0 <= value <= _MOST or isinstance(percent, bool):
        said = _beginning(str(percent))
        raise LabelError(f'{called} is "{said}" percent of the daily value; write a number such as 10')
    return percent_rounding(name).backwards(value, 0.5).times(daily_values()[name].amount / 100)


def _beginning(text: str) -> str:
    return text if len(text) <= 40 else f"{text[:40]}..."


def _factor(name: str, unit: str, called: str) -> float:
    found = factor(unit, unit_of(name), name)
    if found is None:
        raise LabelError(f'{called} is in "{unit}"; write it in {unit_of(name)}')
    return found


def amount_text(name: str, value: float) -> str:
    """Write an amount with its unit, as in a sentence about a label."""
    return f"{number(value, 1 if value < 100 else 0)} {unit_of(name)}"
