"""What a wording is said of, a food or a dish, as amounts on the bases that the rules use."""

from dataclasses import dataclass, field
from functools import cache, cached_property
from math import inf, isfinite, isnan

import numpy as np
from numpy.typing import NDArray

from kit import files
from kit.errors import AmountError
from kit.food.composition import Food, nutrient_index, read_rows
from kit.food.measures import convert
from kit.lines.nearest_measure import VOLUMES
from kit.meal.eaten import eaten_grams
from kit.meal.nutrition import ATWATER_GENERAL, ENERGY_SOURCES, Nutrition
from kit.rules.naming import full_name
from kit.rules.reference import reference_amount, reference_of

FATTY_ACIDS = ("saturated_fat", "monounsaturated_fat", "polyunsaturated_fat")
_KCAL = dict(zip(ENERGY_SOURCES, ATWATER_GENERAL, strict=True)) | dict.fromkeys((*FATTY_ACIDS, "unsaturated_fat"), 9.0)
_SUMS = {"unsaturated_fat": ("monounsaturated_fat", "polyunsaturated_fat")}
_POURED = ("beverage", "stock")

Span = tuple[float, float]  # the least and the most a value can be; they differ where something is not known


@dataclass(frozen=True, eq=False)
class Subject:
    """A food or a dish.

    Attributes
    ----------
    name : str
        What it is called in a sentence.
    is_dish : bool
        Whether the rules for a meal or main dish apply, instead of those for a single food.
    per_100g : numpy.ndarray, shape (n_nutrients,)
        NaN where nothing is known.
    serving_grams : float
        A serving. [g]
    reference_grams : float
        The amount customarily eaten at once; NaN where the food belongs to no such category. [g]
    small_reference, liquid : bool
        Whether that amount is 30 g or 2 tablespoons or less; whether the food is drunk or poured.
    grams_per_ml : float
        NaN when not known.
    group : str
        The food's group; empty for a dish.
    quality : tuple of float
        Published protein digestibility-corrected amino acid scores; empty when there is none.
    at_least : numpy.ndarray of bool, shape (n_nutrients,)
        Where an ingredient's value is missing, so that the amount is only the least.
    """

    name: str
    is_dish: bool
    per_100g: NDArray[np.float64]
    serving_grams: float
    reference_grams: float = np.nan
    small_reference: bool = False
    liquid: bool = False
    grams_per_ml: float = np.nan
    group: str = ""
    quality: tuple[float, ...] = ()
    at_least: NDArray[np.bool_] | None = field(default=None, repr=False)

    def content(self, quantity: str) -> Span:
        """Return how much of a nutrient, or of ``corrected_protein`` or ``unsaturated_fat``, 100 g holds."""
        if quantity in _SUMS:
            spans = [self.content(name) for name in _SUMS[quantity]]
            return sum(low for low, _ in spans), sum(high for _, high in spans)
        if quantity == "corrected_protein":
            low, high = self.content("protein")
            return (low * min(self.quality), high * max(self.quality)) if self.quality else (0.0, inf)
        at = nutrient_index(quantity)
        value = float(self.per_100g[at])
        if isnan(value):
            return 0.0, inf
        return value, inf if self.at_least is not None and self.at_least[at] else value

    def grams(self, basis: str) -> float:
        """Return the grams of a basis: ``reference``, ``serving``, ``50 g``, ``100 g``, ``100 mL`` or ``100 kcal``."""
        if basis == "100 kcal":
            low, high = self.content("energy")
            return 10_000 / low if low == high and low > 0 else np.nan
        return {
            "reference": self.reference_grams,
            "serving": self.serving_grams,
            "50 g": 50.0,
            "100 g": 100.0,
            "100 mL": 100 * self.grams_per_ml,
        }[basis]

    def amount(self, quantity: str, basis: str) -> Span:
        """Return an amount on a basis in the nutrient's unit, or the percent of ``energy`` or of ``fatty acids``."""
        low, high = self.content(quantity)
        if basis == "energy":
            share = 100 * _KCAL[quantity] / self._general_energy
        elif basis == "fatty acids":
            share = 100 / sum(self.content(name)[0] for name in FATTY_ACIDS)
        else:
            share = self.grams(basis) / 100
        return (low * share, high * share) if isfinite(share) else (0.0, inf)

    @cached_property
    def _general_energy(self) -> float:
        """Energy of 100 g by the general factors; NaN when a part is missing or there is none. [kcal]"""
        spans = [self.content(name) for name in ENERGY_SOURCES]
        if any(low != high for low, high in spans):
            return np.nan
        return sum(_KCAL[name] * low for name, (low, _) in zip(ENERGY_SOURCES, spans, strict=True)) or np.nan


@cache
def _quality() -> dict[str, tuple[float, ...]]:
    found: dict[str, tuple[float, ...]] = {}
    for row in read_rows(files.bundled("data/protein_quality.csv")):
        found[row["base"]] = (*found.get(row["base"], ()), float(row["pdcaas"]))
    return found


def of_food(food: Food, serving_grams: float | None = None) -> Subject:
    """Return a single food as what a wording is said of.

    Parameters
    ----------
    food : Food
        The food.
    serving_grams : float, optional
        What a serving of the dish holds of it; its reference amount by default. [g]
    """
    try:
        wanted, grams = reference_of(food), reference_amount(food)
    except AmountError:
        wanted, grams = None, np.nan
    return Subject(
        name=full_name(food),
        is_dish=False,
        per_100g=food.per_100g,
        serving_grams=grams if serving_grams is None else serving_grams,
        reference_grams=grams,
        small_reference=wanted is not None and wanted.is_small,
        liquid=food.group in _POURED or (wanted is not None and wanted.unit == "mL"),
        grams_per_ml=_grams_per_ml(food),
        group=food.group,
        quality=_quality().get(food.base, ()),
    )


def of_dish(numbers: Nutrition, name: str = "the dish") -> Subject:
    """Return a dish as it is eaten as what a wording is said of; its serving counts as a meal or main dish."""
    grams = eaten_grams(numbers.recipe).value / numbers.recipe.servings
    per_100g = numbers.per_serving * 100 / grams if grams > 0 else np.full_like(numbers.per_serving, np.nan)
    return Subject(name, True, per_100g, grams, at_least=numbers.at_least)


def _grams_per_ml(food: Food) -> float:
    row = food.measure(*VOLUMES, cut="") or food.measure(*VOLUMES)
    return row.grams / convert(1, row.measure, "mL") if row else np.nan
