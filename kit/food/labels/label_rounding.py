"""How a US nutrition label rounds, in both directions: 21 CFR 101.9(c), exact, for labels and label-style tables only.

What is said aloud is rounded by its certainty instead; see `kit.meal.certainty`.
"""

import math
from dataclasses import dataclass
from functools import cache

from kit.errors import AmountError, UnknownNameError
from kit.food.daily_values import daily_values, vitamins_and_minerals
from kit.food.nutrients import nutrient, nutrients
from kit.texts import UNKNOWN, quantity

FATS = ("fat", "saturated_fat", "monounsaturated_fat", "polyunsaturated_fat")
CARBOHYDRATES = ("carbohydrate", "fiber", "sugars")
_ENDLESS = math.inf
_HAIR = 1e-9  # 2.675 is stored a hair below; a half that arithmetic made a hair smaller still goes up


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

    Attributes
    ----------
    zero_below : float
        What is less is declared as 0.
    bands : tuple of (float, float, float)
        From, to, step; rising.
    less_than : float
        The "less than" amount that is declared for what lies between `zero_below` and it; 0 where there is none.
    less_than_itself : bool
        Whether that amount itself is declared as "less than" it.
    may_be_zero_below : float
        What is less may be declared as 0 as well.
    """

    zero_below: float
    bands: tuple[tuple[float, float, float], ...]
    less_than: float = 0.0
    less_than_itself: bool = False
    may_be_zero_below: float = 0.0

    def forwards(self, amount: float) -> tuple[float, bool]:
        """Return the amount that is declared, and whether it is declared as "less than" that."""
        if amount < self.zero_below:
            return 0.0, False
        if amount < self.less_than or (self.less_than_itself and amount == self.less_than):
            return self.less_than, True
        step = next(step for _, end, step in self.bands if amount <= end + _HAIR)
        return nearest(amount, step), False

    def backwards(self, value: float, half_digit: float) -> Printed:
        """Return what a printed value stands for; one that is on no step, `half_digit` to both sides of it."""
        if value == 0:
            return Printed(0.0, 0.0, max(self.zero_below, self.may_be_zero_below))
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
    "cholesterol": Rounding(2, ((5, _ENDLESS, 5),), 5, less_than_itself=True),  # (c)(3)
    "sodium": Rounding(5, ((5, 140, 5), (140, _ENDLESS, 10))),  # (c)(4)
    "protein": Rounding(0.5, ((0.5, _ENDLESS, 1),), 1),  # (c)(7): 0.5 to 1 g may be printed as 1 g
    **dict.fromkeys((*FATS, "trans_fat"), _FAT),
    **dict.fromkeys((*CARBOHYDRATES, "added_sugars", "sugar_alcohol", "alcohol"), _CARBOHYDRATE),
}
# (c)(8)(iii): below 2 % is 0, or 2 % from 1 % on; to 10 % by twos, to 50 % by fives, above by tens.
_VITAMIN_PERCENT = Rounding(1, ((1, 10, 2), (10, 50, 5), (50, _ENDLESS, 10)), may_be_zero_below=2)
_OTHER_PERCENT = Rounding(0.5, ((0.5, _ENDLESS, 1),))


def rounding(name: str) -> Rounding:
    """Return how a label rounds the amount of a nutrient, or of something that only labels have."""
    if name in _ROUNDINGS:
        return _ROUNDINGS[name]
    day = daily_values()[name].amount if name in daily_values() else 0.0
    step = 0.1 if day < 25 else 1 if day < 250 else 10  # (c)(8): by the size of the daily value
    return Rounding(step / 2, ((0, _ENDLESS, step),), may_be_zero_below=0.02 * day)


def percent_rounding(name: str) -> Rounding:
    """Return how a label rounds the percentage of a nutrient's daily value."""
    return _VITAMIN_PERCENT if name in vitamins_and_minerals() else _OTHER_PERCENT


@cache
def on_a_label() -> tuple[str, ...]:
    """Return the nutrients of the table whose amounts a label may declare; water and ash are not among them."""
    return tuple(name for name in nutrients() if name in _ROUNDINGS or name in vitamins_and_minerals())


def declared(name: str, amount: float) -> str:
    """Return an amount in one serving as a nutrition label declares it.

    Parameters
    ----------
    name : str
        Nutrient id. Water and ash are not on a label; they are refused.
    amount : float
        Amount in one serving, in the nutrient's unit; NaN when unknown.

    Returns
    -------
    str
        Number and unit, ``"less than 1 g"`` where the rule says so, or ``"unknown"``.

    Raises
    ------
    UnknownNameError
        If there is no such nutrient, or a label never declares it.
    AmountError
        If the amount is negative.

    References
    ----------
    21 CFR 101.9(c)(1) to (c)(8); FDA, A Food Labeling Guide (2009), Appendix H; for the amounts of vitamins and
    minerals, the preamble of the 2016 rule (81 FR 33742).

    Examples
    --------
    >>> declared("energy", 232), declared("cholesterol", 3), declared("fiber", 0.7), declared("iron", 8.04)
    ('230 kcal', 'less than 5 mg', 'less than 1 g', '8 mg')
    """
    unit = nutrient(name).unit
    if name not in on_a_label():
        raise UnknownNameError("amount on a label called", name, on_a_label())
    if math.isnan(amount):
        return UNKNOWN
    if amount < 0:
        raise AmountError(f"{name} is {amount:g} {unit}; give 0 {unit} or more")
    value, less = rounding(name).forwards(amount)
    return f"less than {quantity(value, unit, 1)}" if less else quantity(value, unit, 1)


def declared_percent(name: str, fraction: float) -> str:
    """Return a share of the daily value as a nutrition label declares it.

    Parameters
    ----------
    name : str
        Nutrient id.
    fraction : float
        Amount in one serving as a fraction of the daily value; NaN when unknown. The rule allows it to be computed
        from the declared amount as well as from the exact one, 101.9(d)(7)(ii).

    Returns
    -------
    str
        A percentage, or ``"unknown"``. Vitamins and minerals go in steps of 2, 5 and 10 %; others are whole.

    Raises
    ------
    UnknownNameError
        If the nutrient has no daily value.
    AmountError
        If the fraction is negative.

    References
    ----------
    21 CFR 101.9(c)(8)(iii) and (d)(7)(ii).

    Examples
    --------
    >>> declared_percent("potassium", 0.05), declared_percent("iron", 0.4444), declared_percent("fat", 0.1026)
    ('6 %', '45 %', '10 %')
    """
    if name not in daily_values():
        raise UnknownNameError("daily value for the nutrient", nutrient(name).id, daily_values())
    if math.isnan(fraction):
        return UNKNOWN
    if fraction < 0:
        raise AmountError(f"{name} is {fraction:g} of a day; give 0 or more")
    return quantity(percent_rounding(name).forwards(100 * fraction)[0], "%")


def nearest(amount: float, step: float) -> float:
    """Return the multiple of `step` nearest to an amount; halfway goes up.

    Examples
    --------
    >>> nearest(22.5, 1), nearest(145, 10), nearest(2.25, 0.5)
    (23, 150, 2.5)
    """
    return math.floor(amount / step + 0.5 + _HAIR) * step
