"""Two or three foods, or two dishes, side by side on one basis: a serving, 100 g, a cup or 100 kcal."""

import itertools
from collections.abc import Sequence
from dataclasses import dataclass
from math import hypot

import numpy as np
from numpy.typing import NDArray

from kit.errors import AmountError
from kit.food.composition import Food
from kit.food.measures import units
from kit.food.names import lowered
from kit.food.nutrients import nutrient_index
from kit.lines.nearest_measure import Written
from kit.lines.weighing import Z90, weigh
from kit.meal.certainty import Range, composition_sd, ranges
from kit.meal.eaten import eaten_grams
from kit.meal.nutrition import Nutrition

Array = NDArray[np.float64]
BASES = ("serving", "100 g", "cup", "100 kcal")
MOST = 3  # sides that can be taken in at a glance
_KCAL = 100.0


@dataclass(frozen=True, eq=False)
class Side:
    """One side of a comparison.

    Attributes
    ----------
    name : str
        The food or the dish.
    grams : float
        What the basis weighs of it. [g]
    values, low, high : numpy.ndarray, shape (n_nutrients,)
        What it holds, and the ends of the 90 % range; NaN where nothing is known.
    at_least : numpy.ndarray of bool, shape (n_nutrients,)
        Where a part of it is missing from the table.
    """

    name: str
    grams: float
    values: Array
    low: Array
    high: Array
    at_least: NDArray[np.bool_]

    def __getitem__(self, name: str) -> Range:
        """Return one nutrient with its range."""
        at = nutrient_index(name)
        return Range(float(self.values[at]), float(self.low[at]), float(self.high[at]))


@dataclass(frozen=True, eq=False)
class Comparison:
    """Foods or dishes on one basis, in the order they were given."""

    basis: str
    sides: tuple[Side, ...]

    def differ(self, name: str) -> bool:
        """Whether the ranges of a nutrient tell every two sides apart; not where a value is missing or "at least"."""
        at = nutrient_index(name)
        if any(np.isnan(side.values[at]) or side.at_least[at] for side in self.sides):
            return False
        ordered = sorted(self.sides, key=lambda side: side.values[at])
        return all(low.high[at] < high.low[at] for low, high in itertools.pairwise(ordered))

    def times(self, name: str) -> Range:
        """Return how many times as much of a nutrient the first side holds as the second, with the 90 % range.

        NaN where one is missing or the second holds none.
        """
        first, second = self.sides[0][name], self.sides[1][name]
        if not second.value > 0 or np.isnan(first.value):
            return Range(np.nan, np.nan, np.nan)
        ratio = first.value / second.value
        spread = [side.half_width / side.value if side.value > 0 else 0.0 for side in (first, second)]
        half = ratio * hypot(*spread)
        return Range(ratio, max(0.0, ratio - half), ratio + half)


def compare(things: Sequence[Food | Nutrition], basis: str = "100 g") -> Comparison:
    """Set foods or dishes side by side.

    Parameters
    ----------
    things : sequence of Food or Nutrition
        Two or three.
    basis : {"serving", "100 g", "cup", "100 kcal"}
        How much of each. A food by itself has no serving here, and a dish no cup. A dish's 100 g are as eaten.

    Raises
    ------
    AmountError
        If there are not two or three, or the basis does not fit one of them.

    Examples
    --------
    >>> from kit.food.composition import foods
    >>> found = compare([foods()["quinoa-boiled"], foods()["rice-white-boiled"]], "cup")
    >>> [round(side["protein"].value, 1) for side in found.sides], found.differ("protein")
    ([8.1, 4.3], True)
    """
    if basis not in BASES:
        raise AmountError(f'no basis "{basis}"; compare by one of {", ".join(BASES)}')
    if not 2 <= len(things) <= MOST:
        raise AmountError(f"{len(things)} things to compare; choose two or three")
    return Comparison(basis, tuple(_side(thing, basis) for thing in things))


def _side(thing: Food | Nutrition, basis: str) -> Side:
    return _food(thing, basis) if isinstance(thing, Food) else _dish(thing, basis)


def _food(food: Food, basis: str) -> Side:
    grams, amount_sd = _amount(food, basis)
    content = composition_sd(food)
    values = food.per_100g * grams / 100
    spread = Z90 * np.sqrt(content**2 + amount_sd**2 + (content * amount_sd) ** 2)
    if basis == "100 kcal":  # the energy is what is held fixed; all else is as unsure as both
        energy = nutrient_index("energy")
        spread = Z90 * np.hypot(content, content[energy])
        spread[energy] = 0.0
    half = values * spread
    name = lowered(food.name)
    return Side(name, grams, values, np.maximum(0.0, values - half), values + half, np.zeros(len(values), dtype=bool))


def _amount(food: Food, basis: str) -> tuple[float, float]:
    """Return the grams of a basis, and how unsure they are. [g], [fraction]"""
    if basis == "100 g":
        return 100.0, 0.0
    if basis == "100 kcal":
        if not food["energy"] > 0:
            raise AmountError(f"{food.name} has no energy to go by; compare by 100 g")
        return 100.0 * _KCAL / food["energy"], 0.0
    if basis == "serving":
        raise AmountError(f"{food.name} by itself has no serving; compare by a cup, 100 g or 100 kcal")
    weight = weigh(food, Written(unit=units()["cup"])) if food.measure("cup", "tbsp", "tsp", "fl oz") else None
    if weight is None:
        raise AmountError(f"{food.name} has no weight for a cup; compare by 100 g or 100 kcal")
    return weight.grams, weight.relative_sd


def _dish(numbers: Nutrition, basis: str) -> Side:
    eaten = eaten_grams(numbers.recipe)
    _low, high = ranges(numbers)
    serving = eaten.value / numbers.recipe.servings
    of_serving, unsure = 1.0, 0.0
    if basis == "100 g":
        if not serving > 0:
            raise AmountError(f"{numbers.recipe.title} weighs nothing; compare by a serving")
        of_serving, unsure = 100.0 / serving, eaten.half_width / eaten.value
    elif basis == "100 kcal":
        if not numbers["energy"] > 0:
            raise AmountError(f"{numbers.recipe.title} has no energy to go by; compare by a serving")
        energy = nutrient_index("energy")
        of_serving = _KCAL / numbers["energy"]
        unsure = float(high[energy] - numbers["energy"]) / numbers["energy"]
    elif basis == "cup":
        raise AmountError(
            f"how much a cup of {numbers.recipe.title} weighs is not known; compare by a serving or 100 g"
        )
    values = numbers.per_serving * of_serving
    half = np.hypot((high - numbers.per_serving) * of_serving, values * unsure)
    if basis == "100 kcal":
        half[nutrient_index("energy")] = 0.0
    return Side(
        numbers.recipe.title,
        serving * of_serving,
        values,
        np.maximum(0.0, values - half),
        values + half,
        np.asarray(numbers.at_least),
    )
