"""The dish of a talk as it is now, with everything that checking a sentence about it needs."""

import math
from collections.abc import Sequence
from dataclasses import dataclass
from functools import cached_property

import numpy as np
from numpy.typing import NDArray

from kit.errors import UnknownNameError
from kit.food.alcohol import alcohol_of
from kit.food.composition import PACKAGE_LABEL, Food
from kit.food.measures import convert, unit
from kit.food.nutrients import nutrient_index
from kit.lines.nearest_measure import VOLUMES
from kit.lines.weighing import Z90
from kit.meal.certainty import Range, composition_sd, part_variances, ranges
from kit.meal.nutrition import Nutrition
from kit.rules.eu_basis import as_eu, counted
from kit.rules.naming import food_called, ingredient_called
from kit.rules.subjects import Subject, of_dish
from kit.talk.talk import Talk
from kit.texts import listing


@dataclass(frozen=True, eq=False)
class Dish:
    """A talk and the numbers of its dish, which may have been changed on screen since it was written."""

    talk: Talk
    numbers: Nutrition

    @cached_property
    def subject(self) -> Subject:
        """The dish as what a wording is said of."""
        return of_dish(self.numbers)

    @cached_property
    def counted(self) -> Nutrition:
        """The numbers as the talk's rules count them: by EU rules carbohydrate is without fiber."""
        return counted(self.numbers, self.talk.rules)

    @cached_property
    def _ranges(self) -> tuple[NDArray[np.float64], NDArray[np.float64]]:
        return ranges(self.counted)

    def range_of(self, nutrient: str) -> Range:
        """Return what a serving holds, with the 90 % range."""
        at = nutrient_index(nutrient)
        low, high = self._ranges
        return Range(float(self.counted.per_serving[at]), float(low[at]), float(high[at]))

    @cached_property
    def source(self) -> str:
        """Where the figures of the dish are from: "SR26", "SR26 and package label"."""
        used = (part.food.release for part in self.numbers.recipe.ingredients if part.grams > 0)
        names = {PACKAGE_LABEL: "package labels", "": "the figures given"}
        return listing(list(dict.fromkeys(names.get(word, word) for word in used))) or "the recipe"

    def in_grams(self, nutrient: str, grams: float) -> Range | None:
        """Return what some grams of the dish as eaten hold; None when that cannot be known."""
        whole = self.subject.serving_grams
        if not (whole > 0 and grams == grams):  # nothing in it, or NaN
            return None
        of, scale = self.range_of(nutrient), grams / whole
        lightest, heaviest = self.subject.heavier
        return Range(of.value * scale, of.low * scale / heaviest, of.high * scale / lightest)

    def food(self, key: str) -> Food:
        """Return any food by key; UnknownNameError when there is none."""
        return food_called(key, self.talk.recipe)

    def ingredient(self, name: str) -> Food:
        """Return the food of the recipe as written that a key or some words stand for; UnknownNameError otherwise."""
        return self.talk.recipe.ingredients[ingredient_called(name, self.talk.recipe)].food

    def places(self, foods: Sequence[Food]) -> list[int]:
        """Return where some foods stand in the dish as it is now; nowhere when they were left out or swapped."""
        keys = {food.key for food in foods}
        return [
            place
            for place, part in enumerate(self.numbers.recipe.ingredients)
            if part.food.key in keys and part.grams > 0
        ]

    def brought(self, foods: Sequence[Food], nutrient: str) -> Range:
        """Return what some ingredients bring to a serving, with the 90 % range; a missing value counts as nothing."""
        value, half = self._sum(self.places(foods), nutrient)
        return Range(value, max(0.0, value - half), value + half)

    def share(self, foods: Sequence[Food], nutrient: str) -> Range:
        """Return the part of a nutrient that some ingredients bring, with its 90 % range. [fraction]

        Notes
        -----
        For A of A + B, both unsure: the half-width is sqrt((B a)^2 + (A b)^2) / (A + B)^2, the first-order propagation
        of JCGM 100:2008 (GUM), 5.1.2.
        """
        places = self.places(foods)
        others = [place for place in range(len(self.numbers.recipe.ingredients)) if place not in places]
        (own, half), (rest, rest_half) = self._sum(places, nutrient), self._sum(others, nutrient)
        if own + rest <= 0:
            return Range(np.nan, np.nan, np.nan)
        share = own / (own + rest)
        half = float(np.hypot(rest * half, own * rest_half)) / (own + rest) ** 2
        return Range(share, max(0.0, share - half), min(1.0, share + half))

    def grams(self, food: Food) -> Range:
        """Return the grams of an ingredient in a serving, with the 90 % range. [g]"""
        parts = [self.numbers.recipe.ingredients[place] for place in self.places([food])]
        value = sum(part.grams for part in parts) / self.numbers.recipe.servings
        spread = float(np.hypot.reduce([part.grams * part.relative_sd for part in parts])) if parts else 0.0
        half = Z90 * spread / self.numbers.recipe.servings
        return Range(value, max(0.0, value - half), value + half)

    def _sum(self, places: Sequence[int], nutrient: str) -> tuple[float, float]:
        at = nutrient_index(nutrient)
        if not places:
            return 0.0, 0.0
        brings, variances = self._brought
        rows = list(places)
        return float(brings[rows, at].sum()), Z90 * math.sqrt(variances[rows, at].sum())

    @cached_property
    def _brought(self) -> tuple[NDArray[np.float64], NDArray[np.float64]]:
        """What each ingredient brings to a serving, and its variance, each of shape (n, n_nutrients)."""
        parts, brings = self.numbers.recipe.ingredients, self.counted.contributions
        amount_sd = [part.relative_sd for part in parts]
        content_sd = np.array([composition_sd(part.food) for part in parts])
        return np.nan_to_num(brings), part_variances(brings, amount_sd, content_sd)


def content(food: Food, nutrient: str, grams: float, rules: str = "us") -> Range:
    """Return what some grams of a food hold, counted by a set of rules, with the 90 % range of its composition."""
    per_100g = as_eu(food.per_100g, alcohol_of(food)) if rules == "eu" else food.per_100g
    value = float(per_100g[nutrient_index(nutrient)]) * grams / 100
    half = Z90 * float(composition_sd(food)[nutrient_index(nutrient)]) * value
    return Range(value, max(0.0, value - half), value + half)


def measure_grams(food: Food, measure: str) -> float:
    """Return the grams of one measure of a food: a unit of weight, a household measure of it, or a volume.

    Raises
    ------
    UnknownNameError
        If it cannot be known; the food's own measures are offered.

    Examples
    --------
    >>> from kit.food.composition import foods
    >>> measure_grams(foods()["lentils-boiled"], "cup")
    198.0
    """
    asked = unit(measure)
    if asked is not None and asked.kind == "mass":
        return asked.size
    name = measure if asked is None else asked.short
    row = food.measure(name, cut="") or food.measure(name)
    if row is not None:
        return row.grams
    volume = food.measure(*VOLUMES, cut="") or food.measure(*VOLUMES)
    if asked is not None and volume is not None:
        return convert(1, name, volume.measure) * volume.grams
    known = dict.fromkeys(["g", "oz", *(row.measure for row in food.measures)])
    raise UnknownNameError(f"measure of {food.key} called", measure, known)
