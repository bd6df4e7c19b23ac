"""A food typed in from its package label, kept with the range that the label's rounding leaves open."""

import re
from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass, field
from functools import cached_property
from typing import Any

import numpy as np
from numpy.typing import NDArray

from kit.errors import LabelError
from kit.food.labels.label_rounding import Printed
from kit.food.labels.printed import LABEL_ONLY, printed_amount, printed_names, printed_percent
from kit.food.nutrients import nutrient_index, nutrients

Array = NDArray[np.float64]
SERVING_GRAMS = re.compile(r"(\d+(?:[.,]\d+)?)\s*(?:g|grams?)\b", re.IGNORECASE)


def key_from(name: str) -> str:
    """Return a key made from a name, in whatever script it is written.

    Examples
    --------
    >>> key_from("Red pepper spread, hot")
    'red-pepper-spread-hot'
    """
    return "-".join(re.findall(r"[^\W_]+", name.lower()))


@dataclass(frozen=True)
class Label:
    """A nutrition label as it is printed.

    Attributes
    ----------
    name : str
        What the food is called in a recipe.
    serving : str or float
        The serving size as printed, ``"2/3 cup (55 g)"``, or its grams.
    amounts : mapping of str to str or float
        What a serving holds, by nutrient id (and ``trans_fat``, ``added_sugars``, ``sugar_alcohol``, ``alcohol``),
        as printed: ``8``, ``"160 mg"``, ``"less than 1 g"``. A line that is not printed is left out.
    daily_percent : mapping of str to float
        Percentages of the daily value, where they are printed instead of amounts or beside them.
    servings_per_container : float, optional
        As printed.
    key, other_names, group, origin, vegetarian, allergens, salted
        As in `kit.food.composition.Food`; the key is made from the name by default.
    """

    name: str
    serving: str | float
    amounts: Mapping[str, str | float]
    daily_percent: Mapping[str, float] = field(default_factory=dict)
    servings_per_container: float | None = None
    key: str = ""
    other_names: tuple[str, ...] = ()
    group: str = ""
    origin: str = ""
    vegetarian: bool | None = None
    allergens: tuple[str, ...] = ()
    salted: bool = False

    @cached_property
    def serving_grams(self) -> float:
        """Grams of a serving [g]; NaN when the label as typed does not say."""
        found = list(SERVING_GRAMS.finditer(self.serving_text))
        return float(found[-1][1].replace(",", ".")) if found else np.nan

    @property
    def serving_text(self) -> str:
        """The serving as printed, with a unit where only grams were given."""
        return f"{self.serving} g" if isinstance(self.serving, int | float) else self.serving

    @cached_property
    def printed(self) -> Mapping[str, Printed]:
        """What each readable line stands for, per serving; an amount goes before a percentage."""
        read: dict[str, Printed] = {}
        for name, reader, text in self.lines():
            try:
                read.setdefault(name, reader(name, text))
            except LabelError:
                continue  # `faults` tells it
        return read

    def lines(self) -> Iterator[tuple[str, Callable[[str, Any], Printed], str | float]]:
        """Yield each line of a known name with what reads it and what stands there, amounts first."""
        for name, text in self.amounts.items():
            if name in printed_names():
                yield name, printed_amount, text
        for name, share in self.daily_percent.items():
            if name in printed_names():
                yield name, printed_percent, share

    def range_per_100g(self) -> tuple[Array, Array]:
        """Return the least and most per 100 g, each of shape (n_nutrients,); NaN where nothing is printed."""
        low, high = (np.full(len(nutrients()), np.nan) for _ in range(2))
        for name, amount in self.printed.items():
            if name not in LABEL_ONLY:
                at = nutrient_index(name)
                low[at], high[at] = (100 / self.serving_grams * end for end in (amount.low, amount.high))
        return low, high
