"""What a wording is said of, as amounts on the bases that the rules use, each with its range."""

from dataclasses import dataclass, field, replace
from functools import cached_property
from math import hypot, inf, isfinite, isnan

import numpy as np
from numpy.typing import NDArray

from kit.food.energy import ENERGY_SOURCES, EU_KCAL_PER_GRAM, KCAL_PER_GRAM
from kit.food.nutrients import nutrient_index
from kit.rules.dish_kind import DishKind
from kit.rules.eu_basis import as_eu

Array = NDArray[np.float64]
Span = tuple[float, float]  # the least and the most a value can be; they differ where something is not known

FATTY_ACIDS = ("saturated_fat", "monounsaturated_fat", "polyunsaturated_fat")
# A mixed dish that no cup measures has its own limits for "lean", 21 CFR 101.62(e).
MIXED_PIECE = "mixed dishes not measured by the cup"
_KCAL = {**EU_KCAL_PER_GRAM, **dict.fromkeys((*FATTY_ACIDS, "unsaturated_fat"), KCAL_PER_GRAM["fat"])}
_SUMS = {"unsaturated_fat": ("monounsaturated_fat", "polyunsaturated_fat")}
NOT_KNOWN: Span = (0.0, inf)


@dataclass(frozen=True, eq=False)
class Subject:
    """A food or a dish.

    Attributes
    ----------
    name : str
        What it is called in a sentence.
    is_dish : bool
        Whether the rules for a meal or main dish apply, instead of those for a food.
    per_100g : numpy.ndarray, shape (n_nutrients,)
        NaN where nothing is known.
    low, high : numpy.ndarray, shape (n_nutrients,), optional
        The 90 % range of that, its weight taken as it stands; the value itself by default.
    serving_grams : float
        A serving. [g]
    heavier : tuple of float
        How much lighter and heavier a serving may be than that, as factors.
    reference : tuple of float
        The amount customarily eaten at once, the least and the most it may be; NaN where it has none. [g]
    small_reference, liquid : bool
        Whether that amount is 30 g or 2 tablespoons or less; whether it is drunk or poured.
    grams_per_ml : float
        NaN when not known.
    group : str
        The food's group; of a dish only `MIXED_PIECE`, else empty.
    kind : DishKind, optional
        What kind of dish it is.
    quality : tuple of float
        Published protein digestibility-corrected amino acid scores; empty when there is none.
    added_sodium : tuple of float
        What the salt in it brings to 100 g. [mg]
    alcohol : float
        Alcohol in 100 g. [g]
    in_dish : bool
        Whether it is a food of the dish, so that `serving_grams` is what a serving of the dish holds of it.
    altered : bool
        Whether it was made to hold less of something than others of its kind, as low-fat milk is.
    eu : bool
        Whether its energy and carbohydrate are counted as the EU does.
    otherwise : Subject, optional
        The same dish as the other kind that it may as well count as.
    """

    name: str
    is_dish: bool
    per_100g: Array
    serving_grams: float
    low: Array | None = field(default=None, repr=False)
    high: Array | None = field(default=None, repr=False)
    heavier: Span = (1.0, 1.0)
    reference: Span = (np.nan, np.nan)
    small_reference: bool = False
    liquid: bool = False
    grams_per_ml: float = np.nan
    group: str = ""
    kind: DishKind | None = None
    quality: tuple[float, ...] = ()
    added_sodium: Span = NOT_KNOWN
    alcohol: float = 0.0
    in_dish: bool = False
    altered: bool = False
    eu: bool = False
    otherwise: "Subject | None" = field(default=None, repr=False)

    def content(self, quantity: str) -> Span:
        """Return how much 100 g holds of a nutrient, ``corrected_protein``, ``unsaturated_fat`` or ``added_sodium``."""
        if quantity in _SUMS:
            spans = [self.content(name) for name in _SUMS[quantity]]
            return sum(low for low, _ in spans), sum(high for _, high in spans)
        if quantity == "corrected_protein":
            low, high = self.content("protein")
            return (low * min(self.quality), high * max(self.quality)) if self.quality else (0.0, high)
        if quantity == "added_sodium":
            return self.added_sodium
        at = nutrient_index(quantity)
        value = float(self.per_100g[at])
        if isnan(value):
            return NOT_KNOWN
        ends = [value if side is None else float(side[at]) for side in (self.low, self.high)]
        return ends[0], ends[1]

    def value(self, quantity: str) -> float:
        """Return the likeliest content of 100 g, NaN when not known."""
        if quantity in _SUMS:
            return sum(self.value(name) for name in _SUMS[quantity])
        if quantity == "corrected_protein":
            return self.value("protein") * (sum(self.quality) / len(self.quality) if self.quality else np.nan)
        if quantity == "added_sodium":
            return sum(self.added_sodium) / 2 if isfinite(self.added_sodium[1]) else np.nan
        return float(self.per_100g[nutrient_index(quantity)])

    @property
    def reference_grams(self) -> float:
        """The amount customarily eaten at once; NaN when it has none, or may be one of several. [g]"""
        return self.reference[0] if self.reference[0] == self.reference[1] else np.nan

    def grams(self, basis: str) -> Span:
        """Return the grams of a basis: ``reference``, ``serving``, ``50 g``, ``100 g``, ``100 mL`` or ``100 kcal``."""
        if basis == "100 kcal":
            energy = self.value("energy")
            return (10_000 / energy,) * 2 if energy > 0 else (np.nan, np.nan)
        if basis == "reference":
            return self.reference
        grams = {"serving": self.serving_grams, "50 g": 50.0, "100 g": 100.0, "100 mL": 100 * self.grams_per_ml}[basis]
        return grams, grams

    def amount(self, quantity: str, basis: str) -> Span:
        """Return an amount on a basis in the nutrient's unit, or the percent of ``energy`` or of ``fatty acids``.

        Notes
        -----
        The range of what a serving holds and that of its weight are independent, so they add in quadrature; a serving's
        own content does not hang on its weight.
        """
        if basis == "energy":
            return self._share(quantity, (*ENERGY_SOURCES, "fiber") if self.eu else ENERGY_SOURCES)
        if basis == "fatty acids":
            return self._share(quantity, FATTY_ACIDS)
        (low, high), value, grams = self.content(quantity), self.value(quantity), self.grams(basis)
        if not all(isfinite(end) for end in grams):
            return NOT_KNOWN
        if basis not in ("serving", "100 kcal") and self.heavier != (1.0, 1.0) and value > 0:
            lighter, heavier = self.heavier
            low = value * max(0.0, 1 - hypot(1 - low / value, 1 - 1 / heavier))
            high = value * (1 + hypot(high / value - 1, 1 / lighter - 1)) if isfinite(high) else inf
        return low * grams[0] / 100, high * grams[1] / 100

    def _share(self, quantity: str, parts: tuple[str, ...]) -> Span:
        """Return the percent of the energy of some nutrients that one of them brings, with its range.

        Of A in A + B, both unsure: see `kit.talk.dish.Dish.share`.
        """
        kcal = {name: (_KCAL[name] * self.value(name), self._half(name) * _KCAL[name]) for name in parts}
        alcohol = _KCAL["alcohol"] * self.alcohol if self.eu and parts != FATTY_ACIDS else 0.0
        whole = sum(value for value, _ in kcal.values()) + alcohol
        half_whole = hypot(*(half for _, half in kcal.values()))
        own, half = _KCAL[quantity] * self.value(quantity), _KCAL[quantity] * self._half(quantity)
        if isnan(whole) or isnan(own) or whole <= 0 or not isfinite(half_whole + half):
            return NOT_KNOWN
        rest = max(0.0, whole - own)
        half_rest = (
            half_whole if quantity not in kcal else hypot(*(h for name, (_, h) in kcal.items() if name != quantity))
        )
        spread = hypot(rest * half, own * half_rest) / whole**2
        return 100 * max(0.0, own / whole - spread), 100 * min(1.0, own / whole + spread)

    def _half(self, quantity: str) -> float:
        low, high = self.content(quantity)
        return (high - low) / 2

    def under(self, rules: str) -> "Subject":
        """Return it counted by a set of rules: the EU's carbohydrate is without fiber, its energy by its factors."""
        if rules != "eu" or self.eu:
            return self
        per_100g = as_eu(self.per_100g, self.alcohol)
        if self.low is None or self.high is None:
            return replace(self, per_100g=per_100g, eu=True)
        low, high = self.low.copy(), self.high.copy()
        carbohydrate, fiber, energy = (nutrient_index(name) for name in ("carbohydrate", "fiber", "energy"))
        spread = per_100g[energy] / self.per_100g[energy] if self.per_100g[energy] > 0 else 1.0
        low[energy], high[energy] = low[energy] * spread, high[energy] * spread
        less, more = low[carbohydrate] - self.high[fiber], high[carbohydrate] - self.low[fiber]
        low[carbohydrate], high[carbohydrate] = max(0.0, less) if isfinite(less) else 0.0, more
        return replace(self, per_100g=per_100g, low=low, high=high, eu=True)

    @cached_property
    def kind_words(self) -> str:
        """What kind of thing it is judged as: "a main dish", "a soup", "a food"."""
        return f"a {self.kind.kind}" if self.kind else "a food"
