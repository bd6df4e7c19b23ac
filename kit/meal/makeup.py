"""What a gram of each ingredient holds, gathered once for the same foods: moved sliders and changes share it."""

from dataclasses import dataclass
from functools import lru_cache

import numpy as np
from numpy.typing import NDArray

from kit.food.composition import Food
from kit.food.cooking import kept_when, most_lost
from kit.food.nutrients import nutrients

Array = NDArray[np.float64]


@dataclass(frozen=True, eq=False)
class Makeup:
    """The composition of a recipe's ingredients, whatever their amounts.

    Attributes
    ----------
    foods : tuple of Food
        In the recipe's order.
    amount_sd : numpy.ndarray, shape (n_ingredients,)
        Relative standard deviation of each amount.
    per_100g : numpy.ndarray, shape (n_ingredients, n_nutrients)
        What 100 g of each holds when eaten; NaN where missing.
    per_gram, known : numpy.ndarray, shape (n_ingredients, n_nutrients)
        What 1 g of each holds, NaN where missing; and the same with 0 there.
    may_lose : numpy.ndarray, shape (n_ingredients, n_nutrients)
        What cooking may have taken of that, where nobody knows how much.
    """

    foods: tuple[Food, ...]
    amount_sd: Array
    per_100g: Array
    per_gram: Array
    known: Array
    may_lose: Array


@lru_cache(maxsize=512)
def makeup(foods: tuple[Food, ...], treatments: tuple[str, ...], amount_sd: tuple[float, ...]) -> Makeup:
    """Return the makeup of some foods, each with its cooking treatment and how sure its amount is."""
    rows = [
        food.per_100g * (kept_when(food, treatment) if treatment else 1.0)
        for food, treatment in zip(foods, treatments, strict=True)
    ]
    per_100g = np.array(rows).reshape(len(rows), len(nutrients()))
    per_gram, unsure = per_100g / 100, np.array(amount_sd)
    known = np.nan_to_num(per_gram)
    lost = [most_lost(food, treatment) for food, treatment in zip(foods, treatments, strict=True)]
    may_lose = known * np.array(lost).reshape(known.shape)
    for array in (per_100g, per_gram, known, may_lose, unsure):
        array.flags.writeable = False
    return Makeup(foods, unsure, per_100g, per_gram, known, may_lose)
