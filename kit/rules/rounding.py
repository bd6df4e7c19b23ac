"""Amounts as a US nutrition label declares them: 21 CFR 101.9(c), exact, and only for a table in label style.

What is said aloud is rounded by its certainty instead; see `kit.meal.certainty`.
"""

import math
from collections.abc import Callable, Mapping
from functools import cache

from kit.errors import AmountError, UnknownNameError
from kit.food.composition import nutrient
from kit.rules.reference import daily_values, vitamins_and_minerals
from kit.texts import UNKNOWN, quantity

FATS = ("fat", "saturated_fat", "monounsaturated_fat", "polyunsaturated_fat")
CARBOHYDRATES = ("carbohydrate", "fiber", "sugars")
_HAIR = 1e-9  # 2.675 is stored a hair below; a half that arithmetic made a hair smaller still goes up


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
    if name not in _rules():
        raise UnknownNameError("amount on a label called", name, _rules())
    if math.isnan(amount):
        return UNKNOWN
    if amount < 0:
        raise AmountError(f"{name} is {amount:g} {unit}; give 0 {unit} or more")
    return _rules()[name](amount, unit)


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
    percent = 100 * fraction
    if name not in vitamins_and_minerals():
        step = 1
    elif percent <= 10 + _HAIR:
        step = 2
    else:
        step = 5 if percent <= 50 + _HAIR else 10
    return quantity(nearest(percent, step), "%")


def nearest(amount: float, step: float) -> float:
    """Return the multiple of `step` nearest to an amount; halfway goes up.

    Examples
    --------
    >>> nearest(22.5, 1), nearest(145, 10), nearest(2.25, 0.5)
    (23, 150, 2.5)
    """
    return math.floor(amount / step + 0.5 + _HAIR) * step


@cache
def _rules() -> Mapping[str, Callable[[float, str], str]]:
    """Return how each nutrient that a label may declare is written."""
    rules: dict[str, Callable[[float, str], str]] = {
        "energy": _energy,
        "cholesterol": _cholesterol,
        "sodium": _sodium,
        "protein": _carbohydrate_or_protein,
    }
    rules |= dict.fromkeys(FATS, _fat)
    rules |= dict.fromkeys(CARBOHYDRATES, _carbohydrate_or_protein)
    return rules | {vitamin: _vitamin_or_mineral(vitamin) for vitamin in vitamins_and_minerals()}


def _energy(amount: float, unit: str) -> str:
    """(c)(1): below 5 is 0; to 50 the nearest 5; above, the nearest 10."""
    if amount < 5:
        return quantity(0, unit)
    return quantity(nearest(amount, 5 if amount <= 50 else 10), unit)


def _fat(amount: float, unit: str) -> str:
    """(c)(2): below 0.5 is 0; below 5 the nearest half; from 5 the nearest whole gram."""
    if amount < 0.5:
        return quantity(0, unit)
    return quantity(nearest(amount, 0.5 if amount < 5 else 1), unit, 1)


def _cholesterol(amount: float, unit: str) -> str:
    """(c)(3): below 2 is 0; 2 to 5 is "less than 5"; above, the nearest 5."""
    if amount < 2:
        return quantity(0, unit)
    return f"less than 5 {unit}" if amount <= 5 else quantity(nearest(amount, 5), unit)


def _sodium(amount: float, unit: str) -> str:
    """(c)(4): below 5 is 0; to 140 the nearest 5; above, the nearest 10."""
    if amount < 5:
        return quantity(0, unit)
    return quantity(nearest(amount, 5 if amount <= 140 else 10), unit)


def _carbohydrate_or_protein(amount: float, unit: str) -> str:
    """(c)(6) and (c)(7): below 0.5 is 0; below 1 is "less than 1"; from 1 the nearest whole gram."""
    if amount < 0.5:
        return quantity(0, unit)
    return f"less than 1 {unit}" if amount < 1 else quantity(nearest(amount, 1), unit)


def _vitamin_or_mineral(name: str) -> Callable[[float, str], str]:
    """(c)(8): the nearest tenth, whole or ten, as the daily value is below 25, below 250, or more."""
    day = daily_values()[name].amount
    step = 0.1 if day < 25 else 1 if day < 250 else 10
    return lambda amount, unit: quantity(nearest(amount, step), unit, 1)
