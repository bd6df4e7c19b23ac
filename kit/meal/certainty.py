"""How sure a number is, and the form of it that can be said aloud."""

from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache
from math import floor, isnan, log10

import numpy as np
from numpy.typing import ArrayLike, NDArray

from kit import files
from kit.food.composition import Food, nutrient, nutrient_index, nutrients, read_rows
from kit.lines.weighing import Z90
from kit.meal.nutrition import Nutrition
from kit.texts import UNKNOWN, number

Array = NDArray[np.float64]
_ROUND_STEPS = (5.0, 2.5, 2.0, 1.0)
_SPOKEN_UNITS = {"kcal": ("calorie", "calories"), "g": ("gram", "grams"), "mg": ("milligram", "milligrams")}
_SPOKEN_UNITS["µg"] = ("microgram", "micrograms")


@cache
def _composition_sd() -> tuple[Array, Array]:
    rows = {row["nutrient"]: row for row in read_rows(files.bundled("data/composition_uncertainty.csv"))}
    plain = np.array([float(rows[name]["relative_sd"]) for name in nutrients()])
    salted = np.array([float(rows[name]["relative_sd_salted"] or rows[name]["relative_sd"]) for name in nutrients()])
    return plain, salted


def composition_sd(food: Food) -> Array:
    """Return the relative standard deviation of a food's composition, shape (n_nutrients,).

    A food that brings its own figure, as one from a package label does, keeps it.
    """
    plain, salted = _composition_sd()
    table = salted if food.salted else plain
    return table if food.relative_sd is None else np.where(np.isnan(food.relative_sd), table, food.relative_sd)


def total_sd(parts: ArrayLike, amount_sd: ArrayLike, content_sd: ArrayLike) -> Array:
    """Return the standard deviation of sums of parts whose amounts and contents vary independently.

    Parameters
    ----------
    parts : array_like, shape (n, k)
        What each ingredient brings; NaN counts as nothing.
    amount_sd : array_like, shape (n,)
        Relative standard deviation u of each amount.
    content_sd : array_like, shape (n, k)
        Relative standard deviation v of each content.

    Returns
    -------
    numpy.ndarray, shape (k,)
        In the units of `parts`.

    Notes
    -----
    The variance of a product of independent factors is (a c)^2 (u^2 + v^2 + u^2 v^2); the sum's is the sum of these.
    See JCGM 100:2008 (GUM), 5.1.2, and L. A. Goodman, J. Am. Stat. Assoc. 55 (1960) 708, for the last term.

    Examples
    --------
    >>> total_sd([[3.0], [4.0]], [0.1, 0.1], [[0.0], [0.0]]).round(3).tolist()
    [0.5]
    """
    u2 = np.square(np.asarray(amount_sd, dtype=float))[:, None]
    v2 = np.square(np.asarray(content_sd, dtype=float))
    return np.sqrt(np.nansum(np.square(parts) * (u2 + v2 + u2 * v2), axis=0))


@dataclass(frozen=True, slots=True)
class Range:
    """A value with its 90 % range."""

    value: float
    low: float
    high: float

    @property
    def half_width(self) -> float:
        """How far the high end lies above the value."""
        return self.high - self.value


def ranges(numbers: Nutrition) -> tuple[Array, Array]:
    """Return the low and high ends of the 90 % range of every nutrient per serving, each of shape (n_nutrients,)."""
    ingredients = numbers.recipe.ingredients
    if not ingredients:
        return numbers.per_serving, numbers.per_serving
    amount_sd = [ingredient.relative_sd for ingredient in ingredients]
    content_sd = np.stack([composition_sd(ingredient.food) for ingredient in ingredients])
    half = Z90 * total_sd(numbers.contributions, amount_sd, content_sd)
    return np.maximum(0.0, numbers.per_serving - half), numbers.per_serving + half


def range_of(numbers: Nutrition, name: str) -> Range:
    """Return one nutrient's value per serving with its 90 % range."""
    low, high = ranges(numbers)
    at = nutrient_index(name)
    return Range(float(numbers.per_serving[at]), float(low[at]), float(high[at]))


def round_step(half_width: float) -> float:
    """Return the coarsest round step, 1, 2, 2.5 or 5 times a power of ten, that is not above the range's half-width.

    2.5 itself and its tenths are passed over: "twenty-seven and a half" claims a digit that the range does not give.

    Examples
    --------
    >>> round_step(30), round_step(3), round_step(0.3), round_step(2400)
    (25.0, 2.0, 0.2, 2000.0)
    """
    power = 10.0 ** floor(log10(half_width) + 1e-12)
    steps = (factor * power for factor in _ROUND_STEPS if factor != 2.5 or power >= 10)
    return next(step for step in steps if step <= half_width * (1 + 1e-9))


def said_number(value: float, half_width: float) -> float:
    """Return the value rounded to the step that can be said.

    Examples
    --------
    >>> said_number(431, 30), said_number(8.13, 0.4)
    (425.0, 8.2)
    """
    if half_width <= 0:
        return value
    step = round_step(half_width)
    return float(round(value / step) * step) if step >= 1 else round(round(value / step) * step, 6)


def spoken(value: float, low: float, high: float, unit: str = "", decimals: int = 0, at_least: bool = False) -> str:
    """Return a number the way it can be said: "about 425 calories", "hardly any", "at least 8 grams".

    Parameters
    ----------
    value, low, high : float
        The value and its 90 % range.
    unit : str
        Its unit, said in words.
    decimals : int
        Decimals of a number that has no range.
    at_least : bool
        Whether a part of it is missing from the table.

    Examples
    --------
    >>> spoken(431, 401, 461, "kcal"), spoken(0.2, 0, 0.5, "g"), spoken(8.1, 7.7, 8.5, "g", at_least=True)
    ('about 425 calories', 'hardly any', 'at least 8 grams')
    """
    if isnan(value):
        return UNKNOWN
    if value <= 0 or low <= 0:
        return "hardly any" if value > 0 or not at_least else UNKNOWN
    said = said_number(value, high - value)
    if at_least and said > value:  # "at least" must not say more than is known
        said -= round_step(high - value)
    step_decimals = 0 if high - value <= 0 else max(0, -floor(log10(round_step(high - value)) + 1e-9))
    digits = decimals if high - value <= 0 else step_decimals
    single, several = _SPOKEN_UNITS.get(unit, (unit, unit))
    text = f"{number(said, digits)} {single if said == 1 else several}".strip()
    return f"{'at least' if at_least else 'about'} {text}"


def spoken_per_serving(numbers: Nutrition) -> Mapping[str, str]:
    """Return every nutrient of a serving in the form that can be said."""
    low, high = ranges(numbers)
    values = zip(nutrients(), numbers.per_serving, low, high, numbers.at_least, strict=True)
    return {
        name: spoken(value, least, most, nutrient(name).unit, nutrient(name).decimals, bool(lacks))
        for name, value, least, most, lacks in values
    }
