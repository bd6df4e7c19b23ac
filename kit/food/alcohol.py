"""Alcohol in a food, which the table has no column for."""

from functools import cache

import numpy as np

from kit.food.composition import Food

_PARTS = ("water", "protein", "fat", "carbohydrate", "ash")
_LEAST = 1.0  # [g] in 100 g; less is what the analyses leave over
_ALCOHOLIC = ("beverage", "baking")


@cache
def alcohol_of(food: Food) -> float:
    """Return the alcohol in 100 g of a drink or extract. [g]

    The table has no column for it: it is what is left of 100 g beside water, protein, fat, carbohydrate and ash.

    Examples
    --------
    >>> from kit.food.composition import foods
    >>> round(alcohol_of(foods()["wine-red"]), 1), alcohol_of(foods()["apple-juice"])
    (10.6, 0.0)
    """
    if food.group not in _ALCOHOLIC:
        return 0.0
    left = 100 - float(np.nansum([food[name] for name in _PARTS]))
    return left if left >= _LEAST and not np.isnan(food["water"]) else 0.0
