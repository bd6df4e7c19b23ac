"""What a serving holds, and which ingredient brings it."""

from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache, cached_property, lru_cache
from math import nan

import numpy as np
from numpy.typing import ArrayLike, NDArray

from kit.food.cooking import is_loss_known, vitamins_that_cooking_takes
from kit.food.energy import ATWATER_GENERAL, ENERGY_SOURCES
from kit.food.nutrients import nutrient_index, nutrients
from kit.meal.makeup import Makeup
from kit.meal.recipe import Recipe

Array = NDArray[np.float64]
A_LITTLE = 0.05  # of a vitamin: what foods bring of it together that does not matter


def contributions(grams: ArrayLike, per_100g: ArrayLike, servings: float = 1.0) -> Array:
    """Return what each ingredient brings to a serving.

    Parameters
    ----------
    grams : array_like, shape (n,)
        Grams of each ingredient in the recipe. [g]
    per_100g : array_like, shape (n, k)
        What 100 g of each holds; NaN where missing.
    servings : float
        How many servings the recipe makes.

    Returns
    -------
    numpy.ndarray, shape (n, k)
        Amounts per serving; NaN where an ingredient is used and its value missing. An unused one brings 0 of all.

    References
    ----------
    Recipe calculation by summing: Greenfield & Southgate, "Food Composition Data", 2nd ed., FAO, Rome, 2003.

    Examples
    --------
    >>> contributions([50, 0], [[20, 1], [np.nan, 2]], servings=2).tolist()
    [[5.0, 0.25], [0.0, 0.0]]
    """
    return _shared(np.asarray(grams, dtype=float) / servings, np.asarray(per_100g, dtype=float) / 100)


def energy_shares(grams: ArrayLike) -> Array:
    """Return the shares of energy from protein, fat and carbohydrate by the general factors.

    Parameters
    ----------
    grams : array_like, shape (..., 3)
        Protein, fat and carbohydrate, in that order. [g]

    Returns
    -------
    numpy.ndarray, shape (..., 3)
        Fractions adding to 1 along the last axis; all NaN for a dish with a missing amount or no energy.

    Raises
    ------
    ValueError
        If the last axis is not three long, or an amount is negative.

    References
    ----------
    .. [1] FAO, "Food energy: methods of analysis and conversion factors", Food and Nutrition
       Paper 77, Rome, 2003, ch. 3.

    Examples
    --------
    >>> energy_shares([25, 0, 75]).tolist()
    [0.25, 0.0, 0.75]
    """
    grams = np.asarray(grams, dtype=float)
    if grams.shape[-1:] != (3,):
        raise ValueError(f"grams has shape {grams.shape}; make its last axis {ENERGY_SOURCES}")
    if (grams < 0).any():
        at = tuple(np.argwhere(grams < 0)[0].tolist())
        raise ValueError(f"{ENERGY_SOURCES[at[-1]]} at {at} is {grams[at]:g} g; give 0 g or more")
    kcal = grams * ATWATER_GENERAL
    total = kcal.sum(axis=-1, keepdims=True)
    return np.divide(kcal, total, out=np.full_like(kcal, np.nan), where=total > 0)


@cache
def _energy_places() -> NDArray[np.intp]:
    return np.array([nutrient_index(name) for name in ENERGY_SOURCES])


@lru_cache(maxsize=512)
def _energy_known(made: Makeup) -> bool:
    return not np.isnan(made.per_gram[:, _energy_places()]).any()


@cache
def _taken_by_cooking() -> NDArray[np.bool_]:
    taken = vitamins_that_cooking_takes()
    return np.array([name in taken for name in nutrients()])


@dataclass(frozen=True, eq=False)
class Nutrition:
    """The numbers of a recipe, per serving.

    Attributes
    ----------
    recipe : Recipe
        The recipe they belong to.
    contributions : numpy.ndarray, shape (n_ingredients, n_nutrients)
        What each ingredient brings; NaN where its value is missing.
    """

    recipe: Recipe
    contributions: Array

    @cached_property
    def per_serving(self) -> Array:
        """Amounts per serving, shape (n_nutrients,): a sum of what is known, "at least" where some is missing."""
        return np.nansum(self.contributions, axis=0)

    @cached_property
    def missing(self) -> NDArray[np.bool_]:
        """Which ingredients lack a value for which nutrient, shape (n_ingredients, n_nutrients)."""
        return np.isnan(self.contributions)

    @cached_property
    def at_least(self) -> NDArray[np.bool_]:
        """Of which nutrients the total is only "at least", shape (n_nutrients,): all of them with a line still open."""
        return np.atleast_1d(self.missing.any(axis=0)) | bool(self.recipe.open_lines)

    @cached_property
    def up_to(self) -> NDArray[np.bool_]:
        """Of which vitamins cooking may have taken some, nobody knows how much, shape (n_nutrients,): "up to"."""
        return self._may_be_lost() & ~self.at_least

    def _may_be_lost(self) -> NDArray[np.bool_]:
        parts, ways = self.recipe.ingredients, self.recipe.ways
        known = [is_loss_known(part.food, part.treatment or way.name) for part, way in zip(parts, ways, strict=True)]
        unsure = np.nansum(self.contributions[~np.array(known, dtype=bool)], axis=0)
        return _taken_by_cooking() & (unsure > A_LITTLE * self.per_serving)

    @cached_property
    def serving_grams(self) -> float:
        """Weight of a serving as the ingredients are listed. [g]"""
        return float(self.recipe.grams.sum() / self.recipe.servings)

    def __getitem__(self, name: str) -> float:
        """Return a nutrient's amount per serving."""
        return float(self.per_serving[nutrient_index(name)])

    def brings(self, name: str) -> Array:
        """Return what each ingredient brings of one nutrient, shape (n_ingredients,), a missing value as NaN."""
        return self.contributions[:, nutrient_index(name)]

    def missing_from(self, name: str) -> tuple[str, ...]:
        """Return the names of the foods that have no value for a nutrient, and the lines that could not be read."""
        lacking = self.missing[:, nutrient_index(name)]
        foods = (part.food.name for part, lacks in zip(self.recipe.ingredients, lacking, strict=True) if lacks)
        lines = (f'"{reading.line.strip()}"' for reading in self.recipe.open_lines)
        return tuple(dict.fromkeys((*foods, *lines)))

    @cached_property
    def energy_shares(self) -> Mapping[str, float]:
        """Shares of energy by the general factors; NaN when there is no energy or an amount is missing."""
        kcal = (self.per_serving[_energy_places()] * ATWATER_GENERAL).tolist()
        total = sum(kcal)
        if not total > 0 or self._energy_is_at_least():
            return dict.fromkeys(ENERGY_SOURCES, nan)
        return {name: part / total for name, part in zip(ENERGY_SOURCES, kcal, strict=True)}

    def _energy_is_at_least(self) -> bool:
        """Whether protein, fat or carbohydrate is "at least" only."""
        if not self.recipe.open_lines and _energy_known(self.recipe.makeup):
            return False
        return bool(self.at_least[_energy_places()].any())


def nutrition(recipe: Recipe) -> Nutrition:
    """Work out what a serving of a recipe holds.

    Examples
    --------
    >>> from kit.meal.recipe import recipe
    >>> round(nutrition(recipe("Oats", ["1 cup rolled oats"]))["protein"], 2)
    10.65
    """
    made, share = recipe.makeup, recipe.grams / recipe.servings
    numbers = Nutrition(recipe, _shared(share, made.per_gram))
    numbers.__dict__["per_serving"] = share @ made.known
    return numbers


def _shared(share: Array, per_gram: Array) -> Array:
    """Return contributions, shape (n, k): NaN where an ingredient is used and its value missing, 0 where it is not."""
    brought = share[:, None] * per_gram
    if not share.all():
        brought[share == 0] = 0.0
    return brought


def per_100g(numbers: Nutrition) -> Array:
    """Return what 100 g of the dish holds, shape (n_nutrients,); NaN for a dish that weighs nothing."""
    grams = numbers.serving_grams
    return numbers.per_serving * 100 / grams if grams > 0 else np.full(len(nutrients()), np.nan)
