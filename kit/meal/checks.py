"""Checks that a table's figures fit together: energy against the general factors, and the parts of 100 g."""

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from kit.food.composition import Food
from kit.food.energy import ATWATER_GENERAL, ENERGY_SOURCES, ENERGY_TOLERANCE, ENERGY_TOLERANCE_KCAL
from kit.food.nutrients import nutrient_index
from kit.meal.nutrition import Nutrition, per_100g
from kit.texts import quantity

PARTS = ("water", "protein", "fat", "carbohydrate", "ash")
PARTS_TOLERANCE = 2.0  # [g] of 100 g
_ALCOHOL = "alcohol"
_WHY_ENERGY = {
    "fiber": "much of its carbohydrate is fiber, which gives less than 4 kcal/g",
    "spice": "spices and leaves have their own, lower energy factors",
    "fruit": "fruit acids and fiber give less than 4 kcal/g",
    "nut": "nuts and seeds have their own, lower energy factors",
    "alcohol": f"{_ALCOHOL} gives energy that the three do not",
    "other": "its food-specific energy factors differ from 4, 9 and 4",
}


@dataclass(frozen=True, slots=True)
class Check:
    """One check: of what, whether it holds, and the numbers in a sentence."""

    of: str
    what: str
    holds: bool
    because: str


def _energy(values: NDArray[np.float64]) -> tuple[float, float]:
    grams = values[[nutrient_index(name) for name in ENERGY_SOURCES]]
    return float(values[nutrient_index("energy")]), float(grams @ np.array(ATWATER_GENERAL))


def check_values(values: NDArray[np.float64], of: str, food: Food | None = None) -> tuple[Check, ...]:
    """Check figures per 100 g of a food or a dish; a check whose figures are missing is left out.

    Parameters
    ----------
    values : numpy.ndarray, shape (n_nutrients,)
        Per 100 g.
    of : str
        What they are of, for the message.
    food : Food, optional
        The food, so that a known reason for a difference can be given.
    """
    checks = []
    table, estimate = _energy(values)
    if np.isfinite(table) and np.isfinite(estimate):
        allowed = max(ENERGY_TOLERANCE * table, ENERGY_TOLERANCE_KCAL)
        holds = abs(table - estimate) <= allowed
        why = "" if holds else f"; {_reason(values, food)}"
        because = (
            f"the table has {quantity(table, 'kcal')}, the general factors {quantity(estimate, 'kcal')} per 100 g{why}"
        )
        checks.append(Check(of, "energy", holds, because))
    parts = values[[nutrient_index(name) for name in PARTS]]
    if np.isfinite(parts).all():
        total = float(parts.sum())
        holds = abs(total - 100) <= PARTS_TOLERANCE
        why = (
            ""
            if holds
            else f"; {_ALCOHOL} or an acid may be the rest"
            if total < 100
            else "; each is analysed on its own"
        )
        checks.append(
            Check(
                of,
                "parts",
                holds,
                f"water, protein, fat, carbohydrate and ash make {quantity(total, 'g', 1)} of 100 g{why}",
            )
        )
    return tuple(checks)


def _reason(values: NDArray[np.float64], food: Food | None) -> str:
    fiber, carbohydrate = (values[nutrient_index(name)] for name in ("fiber", "carbohydrate"))
    if carbohydrate > 0 and fiber / carbohydrate > 0.25:
        return _WHY_ENERGY["fiber"]
    group = food.group if food else ""
    groups = {"spice": "spice", "herb": "spice", "vegetable": "spice", "fruit": "fruit", "nut": "nut", "seed": "nut"}
    return _WHY_ENERGY["alcohol" if group == "beverage" else groups.get(group, "other")]


def checks(numbers: Nutrition) -> tuple[Check, ...]:
    """Check the dish and each of its foods."""
    found = list(check_values(per_100g(numbers), numbers.recipe.title))
    foods = {ingredient.food.key: ingredient.food for ingredient in numbers.recipe.ingredients}
    for food in foods.values():
        found += check_values(food.per_100g, food.name, food)
    return tuple(found)
