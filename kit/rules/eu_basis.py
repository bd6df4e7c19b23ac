"""Amounts counted as the EU counts them: energy by its factors, carbohydrate without fiber, salt, kilojoules."""

from collections.abc import Mapping

import numpy as np
from numpy.typing import ArrayLike, NDArray

from kit.food.alcohol import alcohol_of
from kit.food.energy import EU_KCAL_PER_GRAM, EU_KJ_PER_GRAM
from kit.food.nutrients import nutrient_index
from kit.meal.nutrition import Nutrition
from kit.rules.reference import share_of_day

SALT_PER_SODIUM = 2.5  # Regulation (EU) 1169/2011, Annex I(11)
_COUNTED = ("protein", "fat", "carbohydrate", "fiber")


def salt_grams(sodium_mg: float) -> float:
    """Return the salt that sodium stands for on an EU label. [g]

    Examples
    --------
    >>> salt_grams(400)
    1.0
    """
    return SALT_PER_SODIUM * sodium_mg / 1000


def as_eu(values: ArrayLike, alcohol: ArrayLike = 0.0) -> NDArray[np.float64]:
    """Return amounts with energy and carbohydrate counted as the EU does.

    Parameters
    ----------
    values : array_like, shape (..., n_nutrients)
        Amounts in the order and units of `kit.food.nutrients.nutrients`; carbohydrate with its fiber.
    alcohol : array_like, shape (...)
        Alcohol beside them. [g]

    Returns
    -------
    numpy.ndarray, shape (..., n_nutrients)
        The same with carbohydrate less its fiber, and energy by the factors; both NaN where a part is missing.

    References
    ----------
    Regulation (EU) 1169/2011, Annex I and Annex XIV.
    """
    counted = np.array(values, dtype=float)
    carbohydrate = nutrient_index("carbohydrate")
    counted[..., carbohydrate] = np.maximum(0.0, counted[..., carbohydrate] - counted[..., nutrient_index("fiber")])
    counted[..., nutrient_index("energy")] = _sum(counted, alcohol, EU_KCAL_PER_GRAM)
    return counted


def kilojoules(values: ArrayLike, alcohol: ArrayLike = 0.0) -> NDArray[np.float64]:
    """Return the energy of amounts by the factors in kilojoules, which are not those in calories converted. [kJ]

    Parameters
    ----------
    values : array_like, shape (..., n_nutrients)
        As the table has them: carbohydrate with its fiber.
    alcohol : array_like, shape (...)
        Alcohol beside them. [g]
    """
    return _sum(as_eu(values), alcohol, EU_KJ_PER_GRAM)


def _sum(counted: NDArray[np.float64], alcohol: ArrayLike, factors: Mapping[str, float]) -> NDArray[np.float64]:
    places = [nutrient_index(name) for name in _COUNTED]
    energy = counted[..., places] @ np.array([factors[name] for name in _COUNTED])
    return np.asarray(energy + factors["alcohol"] * np.asarray(alcohol, dtype=float))


def counted(numbers: Nutrition, rules: str = "us") -> Nutrition:
    """Return the numbers of a dish counted by a set of rules: the US ones are the table's.

    Cooking drives off some alcohol; how much is not known, so all of it stays counted.
    """
    if rules != "eu":
        return numbers
    recipe = numbers.recipe
    alcohol = [part.grams * alcohol_of(part.food) / 100 / recipe.servings for part in recipe.ingredients]
    return Nutrition(recipe, as_eu(numbers.contributions, alcohol)) if recipe.ingredients else numbers


def kilojoules_of(numbers: Nutrition) -> float:
    """Return the energy of a serving in kilojoules, a part with a missing value as nothing. [kJ]"""
    recipe = numbers.recipe
    alcohol = [part.grams * alcohol_of(part.food) / 100 / recipe.servings for part in recipe.ingredients]
    return float(np.nansum(kilojoules(numbers.contributions, alcohol)))


def share_of_day_in(numbers: Nutrition, rules: str = "us") -> NDArray[np.float64]:
    """Return what a serving brings of each daily value, counted by the rules that set it, shape (n_nutrients,)."""
    return share_of_day(counted(numbers, rules).per_serving, rules)
