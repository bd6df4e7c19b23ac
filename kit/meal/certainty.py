"""How sure a number is, and the form of it that can be said aloud."""

from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache, lru_cache
from math import floor, isnan, log10

import numpy as np
from numpy.typing import ArrayLike, NDArray

from kit import files
from kit.food.cells import read_rows
from kit.food.composition import Food
from kit.food.nutrients import nutrient, nutrient_index, nutrients
from kit.lines.weighing import Z90
from kit.meal.makeup import Makeup
from kit.meal.nutrition import Nutrition
from kit.texts import UNKNOWN, number

Array = NDArray[np.float64]
_ROUND_STEPS = (5.0, 2.5, 1.0)
_HALF_A_UNIT, _TENTH, _NEARLY_ONE = 0.5, 0.1, 0.95
_MOST_DIGITS = 6  # no step asks for more
_FORGIVEN = 0.05  # of a number: rounded by more it reads as an error beside a chart
_SPOKEN_UNITS = {"kcal": ("calorie", "calories"), "g": ("gram", "grams"), "mg": ("milligram", "milligrams")}
_SPOKEN_UNITS["µg"] = ("microgram", "micrograms")
_SMALLER = {"g": "mg", "mg": "µg"}
# The parts of a unit that people say: common practice.
_PARTS = {
    1 / 10: "a tenth of a",
    1 / 5: "a fifth of a",
    1 / 4: "a quarter of a",
    1 / 3: "a third of a",
    1 / 2: "half a",
    2 / 3: "two thirds of a",
    3 / 4: "three quarters of a",
    1.0: "1",
}


@cache
def _composition_sd(group: str) -> tuple[Array, Array, Array]:
    """Return the relative deviations of plain and of salted foods of a group, and the absolute ones."""
    plain, salted, absolute = (np.zeros(len(nutrients())) for _ in range(3))
    for row in read_rows(files.bundled("data/composition_uncertainty.csv")):
        if row["group"] in ("", group):
            at = nutrient_index(row["nutrient"])
            plain[at], salted[at] = float(row["relative_sd"]), float(row["relative_sd_salted"])
            absolute[at] = float(row["absolute_sd"] or absolute[at])
    return plain, salted, absolute


def composition_sd(food: Food) -> Array:
    """Return the relative standard deviation of a food's composition, shape (n_nutrients,).

    It is that of its kind of food, and wider where there is little of a nutrient: a trace varies more than a third.
    A food that brings its own figure, as one from a package label does, keeps it.
    """
    plain, salted, absolute = _composition_sd(food.group)
    content = np.nan_to_num(food.per_100g)
    little = np.divide(absolute, content, out=np.zeros_like(content), where=content > 0)
    table = np.hypot(salted if food.salted else plain, np.minimum(little, 1.0))
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
    return np.sqrt(part_variances(parts, amount_sd, content_sd).sum(axis=0))


def part_variances(parts: ArrayLike, amount_sd: ArrayLike, content_sd: ArrayLike) -> Array:
    """Return the variance of each part, shape (n, k), NaN counted as nothing; see `total_sd`, which sums them."""
    u2 = np.square(np.asarray(amount_sd, dtype=float))[:, None]
    v2 = np.square(np.asarray(content_sd, dtype=float))
    return np.nan_to_num(np.square(parts) * (u2 + v2 + u2 * v2))


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
    """Return the low and high ends of the 90 % range of every nutrient per serving, each of shape (n_nutrients,).

    Of a vitamin that is "up to", the low end lies lower by what cooking may have taken, independent of the rest.
    """
    share = numbers.recipe.grams / numbers.recipe.servings
    half = Z90 * np.sqrt((share * share) @ _variance_of_a_gram(numbers.recipe.makeup))
    below = np.hypot(half, share @ numbers.recipe.makeup.may_lose)
    return np.maximum(0.0, numbers.per_serving - below), numbers.per_serving + half


@lru_cache(maxsize=512)
def _variance_of_a_gram(made: Makeup) -> Array:
    """Return the variance that 1 g of each ingredient brings, as `total_sd` adds it up, shape (n, n_nutrients)."""
    if not made.foods:
        return np.zeros_like(made.known)
    return part_variances(made.known, made.amount_sd, np.stack([composition_sd(food) for food in made.foods]))


def range_of(numbers: Nutrition, name: str) -> Range:
    """Return one nutrient's value per serving with its 90 % range."""
    low, high = ranges(numbers)
    at = nutrient_index(name)
    return Range(float(numbers.per_serving[at]), float(low[at]), float(high[at]))


def round_step(half_width: float) -> float:
    """Return the coarsest step that people count in which is not above the range's half-width.

    Steps of 0.5, 1, 5, 10, 25, 50, 100, 250 ...; finer ones are tenths, hundredths and so on. There are no steps of
    two: they read as errors beside a chart. Half a unit is taken from a half-width of a quarter on: it fits still.

    Examples
    --------
    >>> round_step(30), round_step(3), round_step(0.3), round_step(0.1), round_step(2400)
    (25.0, 1.0, 0.5, 0.1, 1000.0)
    """
    if half_width < _HALF_A_UNIT / 2:
        return 10.0 ** (floor(log10(2 * half_width) + 1e-12))
    if half_width < 1:
        return _HALF_A_UNIT
    power = 10.0 ** floor(log10(half_width) + 1e-12)
    steps = (factor * power for factor in _ROUND_STEPS if factor != 2.5 or power >= 10)
    return next(step for step in steps if step <= half_width * (1 + 1e-9))


def said_number(value: float, half_width: float) -> float:
    """Return the value rounded to the step that can be said.

    However wide the range, a number is not rounded by more than a twentieth of it as long as whole ones can be said:
    16.8 from 11 to 23 is "about 17", not 15.

    Examples
    --------
    >>> said_number(431, 30), said_number(16.9, 1.3), said_number(8.13, 0.4), said_number(1.02, 0.04)
    (425.0, 17.0, 8.0, 1.0)
    >>> said_number(16.8, 5.9), said_number(86.6, 28.7), said_number(3.4, 1.2)
    (17.0, 90.0, 3.0)
    """
    if half_width <= 0:
        return value
    step = _said_step(value, half_width)
    return round(round(value / step) * step, 9)


def _said_step(value: float, half_width: float) -> float:
    """Return the step that a value is said in."""
    step = round_step(half_width)
    if step < _TENTH and abs(round(value, 1) - value) <= half_width:
        return _TENTH  # nobody says 1.02 where 1 is as true
    off = abs(round(value / step) * step - value)
    return step if step <= 1 or off <= _FORGIVEN * value else _said_step(value, 0.9 * step)


def spoken(value: float, low: float, high: float, unit: str = "", decimals: int = 0, at_least: bool = False) -> str:
    """Return a number the way it can be said: "about 425 calories", "hardly any", "at least 8 grams".

    Less than one is said as a fraction that people use, or in the next smaller unit: "about half a gram",
    "about 80 micrograms".

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
    >>> spoken(0.46, 0.41, 0.51, "g"), spoken(0.08, 0.06, 0.1, "mg")
    ('about half a gram', 'about 80 micrograms')
    """
    return " ".join(filter(None, spoken_parts(value, low, high, unit, decimals, at_least)))


def spoken_parts(
    value: float,
    low: float,
    high: float,
    unit: str = "",
    decimals: int = 0,
    at_least: bool = False,
    up_to: bool = False,
) -> tuple[str, str, str]:
    """Return what `spoken` says in its three parts, any of them empty: how it is meant, the number, the unit.

    Examples
    --------
    >>> spoken_parts(431, 401, 461, "kcal"), spoken_parts(0.2, 0, 0.5, "g")
    (('about', '425', 'calories'), ('', 'hardly any', ''))
    """
    if isnan(value):
        return "", UNKNOWN, ""
    if value <= 0 or low <= 0:
        return "", "hardly any" if value > 0 or not at_least else UNKNOWN, ""
    about = "at least" if at_least else "up to" if up_to else "about"
    if value < _NEARLY_ONE and unit in _SPOKEN_UNITS:
        return _less_than_one(value, low, high, unit, at_least, up_to)
    single, several = _SPOKEN_UNITS.get(unit, (unit, unit))
    if high <= value:
        said, digits = value, decimals
    else:
        said, digits = said_number(value, high - value), _MOST_DIGITS
        if at_least and said > value + 1e-9:  # "at least" must not say more than is known
            said -= _said_step(value, high - value)
    return about, number(said, digits), single if said == 1 else several


def _less_than_one(
    value: float, low: float, high: float, unit: str, at_least: bool, up_to: bool
) -> tuple[str, str, str]:
    """Return less than one unit in words: a fraction that lies in the range, or the next smaller unit."""
    single = _SPOKEN_UNITS[unit][0]
    about = "at least" if at_least else "up to" if up_to else "about"
    fitting = [share for share in _PARTS if low <= share <= (value if at_least else max(high, value))]
    if unit == "kcal":
        return (about, "1", single) if value >= _HALF_A_UNIT and not at_least else ("", "hardly any", "")
    if fitting and value >= _TENTH * 0.9:
        return about, _PARTS[min(fitting, key=lambda share: abs(share - value))], single
    if unit in _SMALLER:
        return spoken_parts(value * 1000, low * 1000, high * 1000, _SMALLER[unit], at_least=at_least, up_to=up_to)
    if value < _TENTH:
        return "", "less than a tenth", f"of a {single}"
    return about, number(value, 1), _SPOKEN_UNITS[unit][1]


def spoken_per_serving(numbers: Nutrition) -> Mapping[str, str]:
    """Return every nutrient of a serving in the form that can be said."""
    return {name: " ".join(filter(None, parts)) for name, parts in spoken_parts_per_serving(numbers).items()}


def spoken_parts_per_serving(numbers: Nutrition) -> Mapping[str, tuple[str, str, str]]:
    """Return every nutrient of a serving in the form that can be said, in its parts."""
    low, high = ranges(numbers)
    values = zip(nutrients(), numbers.per_serving, low, high, numbers.at_least, numbers.up_to, strict=True)
    return {
        name: spoken_parts(value, least, most, nutrient(name).unit, nutrient(name).decimals, bool(lacks), bool(lost))
        for name, value, least, most, lacks, lost in values
    }
