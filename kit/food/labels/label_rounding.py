"""What a number printed on a nutrition label may have been before it was rounded: 21 CFR 101.9(c), backwards."""

import math
import re
from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache

from kit import files
from kit.errors import LabelError
from kit.food.composition import nutrient, nutrients, read_rows
from kit.texts import number

# Printed on labels and needed to check them, though the kit's table of foods has no such column. [g]
LABEL_ONLY = {
    "trans_fat": "trans fat",
    "added_sugars": "added sugars",
    "sugar_alcohol": "sugar alcohol",
    "alcohol": "alcohol",
}
_GRAMS = {"g": 1.0, "gram": 1.0, "grams": 1.0, "mg": 1e-3, "mcg": 1e-6, "ug": 1e-6, "µg": 1e-6, "μg": 1e-6}
_KCAL = {"kcal": 1.0, "cal": 1.0, "calories": 1.0, "kj": 1 / 4.184}  # a label's "calorie" is a kilocalorie
_VITAMIN_D_UG_PER_IU = 0.025  # 800 IU is 20 µg, as in `kit.food.releases.release_nutrients`
_PRINTED = re.compile(
    r"(?P<less><|(?:contains\s+)?less\s+than)?\s*(?P<number>\d{1,3}(?:,\d{3})+(?:\.\d+)?|\d+(?:\.\d+)?|\.\d+)\s*"
    r"(?P<unit>[a-zµμ]*)(?:\s*(?:rae|dfe|ne))?\.?",
    re.IGNORECASE,
)
_ENDLESS = math.inf


@dataclass(frozen=True, slots=True)
class Printed:
    """An amount as it is printed, with the least and the most that is printed so."""

    value: float
    low: float
    high: float

    def times(self, factor: float) -> "Printed":
        """Return the amounts multiplied."""
        return Printed(self.value * factor, self.low * factor, self.high * factor)

    @property
    def deviation(self) -> float:
        """Standard deviation of the unrounded amount when any in the range is as likely."""
        return (self.high - self.low) / math.sqrt(12)


@dataclass(frozen=True, slots=True)
class Rounding:
    """How a label rounds an amount: below `zero_below` to 0; in each band (from, to, step) to the nearest step.

    `less_than` is the printed "less than" amount for what lies between `zero_below` and it.
    """

    zero_below: float
    bands: tuple[tuple[float, float, float], ...]
    less_than: float = 0.0

    def backwards(self, value: float, half_digit: float) -> Printed:
        """Return what a printed value stands for; one that is on no step, `half_digit` to both sides of it."""
        if value == 0:
            return Printed(0.0, 0.0, self.zero_below)
        pieces = [
            (max(value - step / 2, start), min(value + step / 2, end))
            for start, end, step in self.bands
            if math.isclose(value / step, round(value / step), abs_tol=1e-6)
        ]
        pieces = [(low, high) for low, high in pieces if low < high]
        if not pieces:  # printed finer than the rule asks for
            return Printed(value, max(0.0, value - half_digit), value + half_digit)
        return Printed(value, min(low for low, _ in pieces), max(high for _, high in pieces))


_FAT = Rounding(0.5, ((0.5, 5, 0.5), (5, _ENDLESS, 1)))  # (c)(2)
_CARBOHYDRATE = Rounding(0.5, ((1, _ENDLESS, 1),), 1)  # (c)(6)
_ROUNDINGS: dict[str, Rounding] = {
    "energy": Rounding(5, ((5, 50, 5), (50, _ENDLESS, 10))),  # (c)(1)
    "cholesterol": Rounding(2, ((5, _ENDLESS, 5),), 5),  # (c)(3)
    "sodium": Rounding(5, ((5, 140, 5), (140, _ENDLESS, 10))),  # (c)(4)
    "protein": Rounding(0.5, ((0.5, _ENDLESS, 1),), 1),  # (c)(7): 0.5 to 1 g may be printed as 1 g
    **dict.fromkeys(("fat", "saturated_fat", "monounsaturated_fat", "polyunsaturated_fat", "trans_fat"), _FAT),
    **dict.fromkeys(("carbohydrate", "fiber", "sugars", "added_sugars", "sugar_alcohol", "alcohol"), _CARBOHYDRATE),
}
# (c)(8)(iii): below 2 % is 0, or 2 % from 1 % on; to 10 % by twos, to 50 % by fives, above by tens.
_VITAMIN_PERCENT = Rounding(2, ((1, 10, 2), (10, 50, 5), (50, _ENDLESS, 10)))
_OTHER_PERCENT = Rounding(0.5, ((0.5, _ENDLESS, 1),))


@cache
def daily_amounts() -> Mapping[str, float]:
    """Return the daily value of every nutrient that has one, in the nutrient's unit."""
    return {row["nutrient"]: float(row["amount"]) for row in read_rows(files.bundled("data/daily_values.csv"))}


@cache
def printed_names() -> Mapping[str, str]:
    """Return what a label may print, by our id, with the name to call it by."""
    return {name: known.name.lower() for name, known in nutrients().items()} | LABEL_ONLY


def unit_of(name: str) -> str:
    """Return the unit of a nutrient or of an amount that only labels have."""
    return "g" if name in LABEL_ONLY else nutrient(name).unit


def rounding(name: str) -> Rounding:
    """Return how a label rounds the amount of a nutrient."""
    if name in _ROUNDINGS:
        return _ROUNDINGS[name]
    day = daily_amounts().get(name, 0.0)
    step = 0.1 if day < 25 else 1 if day < 250 else 10  # (c)(8): by the size of the daily value
    return Rounding(max(0.02 * day, step / 2), ((0, _ENDLESS, step),))  # 0 may be printed below 2 % of it


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
    factor = _factor(name, match["unit"] or unit, called)
    digits = match["number"].replace(",", "")
    value = float(digits) * factor
    rule = rounding(name)
    if match["less"]:
        low = rule.zero_below if math.isclose(value, rule.less_than) else 0.0
        return Printed((low + value) / 2, low, value)
    decimals = len(digits.partition(".")[2].rstrip("0"))
    half_digit = 0.5 * 10.0**-decimals * factor
    if not math.isclose(factor, 1.0):  # rounded in the other unit
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
    if name not in daily_amounts():
        raise LabelError(f"{called} has no daily value; write its amount instead of a percentage")
    try:
        value = float(str(percent).strip().removesuffix("%"))
    except ValueError:
        value = math.nan
    if not 0 <= value < _ENDLESS or isinstance(percent, bool):
        raise LabelError(f'{called} is "{percent}" percent of the daily value; write a number such as 10')
    rule = _OTHER_PERCENT if name in _ROUNDINGS else _VITAMIN_PERCENT
    return rule.backwards(value, 0.5).times(daily_amounts()[name] / 100)


def _factor(name: str, unit: str, called: str) -> float:
    ours = unit_of(name)
    plain = unit.lower()
    for sizes in (_GRAMS, _KCAL):
        if ours in sizes and plain in sizes:
            return sizes[plain] / sizes[ours]
    if name == "vitamin_d" and plain == "iu":
        return _VITAMIN_D_UG_PER_IU
    raise LabelError(f'{called} is in "{unit}"; write it in {ours}')


def amount_text(name: str, value: float) -> str:
    """Write an amount with its unit, as in a sentence about a label."""
    return f"{number(value, 1 if value < 100 else 0)} {unit_of(name)}"
