"""A food typed in from its package label, kept with the range that the label's rounding leaves open."""

import re
from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass, field
from functools import cached_property

import numpy as np
from numpy.typing import NDArray

from kit.errors import LabelError, nearest
from kit.food.composition import Food, Measure, nutrient_index, nutrients
from kit.food.household import read_measure
from kit.food.label_checks import faults, key_from
from kit.food.label_rounding import LABEL_ONLY, Printed, printed_amount, printed_names, printed_percent

Array = NDArray[np.float64]
SOURCE = "package label"
# A food may differ from its label by a fifth before it is misbranded, 21 CFR 101.9(g)(4) and (5): taken as two
# standard deviations.
TOLERANCE_SD = 0.10
_GRAMS = re.compile(r"(\d+(?:[.,]\d+)?)\s*(?:g|grams?)\b", re.IGNORECASE)


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
        found = list(_GRAMS.finditer(self._serving_text))
        return float(found[-1][1].replace(",", ".")) if found else np.nan

    @property
    def _serving_text(self) -> str:
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

    def lines(self) -> Iterator[tuple[str, Callable[[str, str | float], Printed], str | float]]:
        """Yield each line of a known name with what reads it and what stands there, amounts first."""
        for reader, lines in ((printed_amount, self.amounts), (printed_percent, self.daily_percent)):
            for name, text in lines.items():
                if name in printed_names():
                    yield name, reader, text

    def range_per_100g(self) -> tuple[Array, Array]:
        """Return the least and most per 100 g, each of shape (n_nutrients,); NaN where nothing is printed."""
        low, high = (np.full(len(nutrients()), np.nan) for _ in range(2))
        for name, amount in self.printed.items():
            if name not in LABEL_ONLY:
                at = nutrient_index(name)
                low[at], high[at] = (100 / self.serving_grams * end for end in (amount.low, amount.high))
        return low, high

    def food(self) -> Food:
        """Return the food per 100 g, with the standard deviation that rounding and the label's tolerance leave.

        Raises
        ------
        LabelError
            If the label cannot be right; every fault has its line.
        """
        found = faults(self)
        if found:
            raise LabelError("\n".join(f'label "{self.name}": {fault}' for fault in found))
        values, deviations = (np.full(len(nutrients()), np.nan) for _ in range(2))
        for name, amount in self.printed.items():
            if name not in LABEL_ONLY:
                at = nutrient_index(name)
                values[at] = 100 / self.serving_grams * amount.value
                relative = amount.deviation / amount.value if amount.value else 0.0
                deviations[at] = np.hypot(relative, TOLERANCE_SD)
        facts = {fact: getattr(self, fact) for fact in ("other_names", "group", "origin", "vegetarian", "salted")}
        brings = self.allergens if "wheat" not in self.allergens else (*self.allergens, "gluten")
        return Food(
            key=self.key or key_from(self.name),
            name=self.name,
            per_100g=values,
            measures=tuple(self._measures()),
            state="ready",
            source=SOURCE,
            relative_sd=deviations,
            allergens=tuple(dict.fromkeys(brings)),
            **facts,
        )

    def _measures(self) -> Iterator[Measure]:
        """Yield the serving as a household measure, and the container."""
        grams_at = [match.start() for match in _GRAMS.finditer(self._serving_text)][-1]
        read = read_measure(self._serving_text[:grams_at].rstrip("(/, ").strip(), self.name)
        if read:
            yield Measure(read.measure, read.cut, float(f"{self.serving_grams / read.count:.6g}"), SOURCE)
        if self.servings_per_container and not (read and read.measure == "package"):
            yield Measure("package", "", self.serving_grams * self.servings_per_container, SOURCE)


_FACTS: Mapping[str, type | tuple[type, ...]] = {
    "name": str,
    "serving": (str, int, float),
    "servings_per_container": (int, float),
    "key": str,
    "amounts": Mapping,
    "daily_percent": Mapping,
    "other_names": list,
    "group": str,
    "origin": str,
    "vegetarian": bool,
    "allergens": list,
    "salted": bool,
}
_KINDS = {
    (str, int, float): "a text or a number",
    str: "a text in quotes",
    bool: "true or false",
    list: "a list in brackets",
    Mapping: "a table of lines",
}


def from_table(table: Mapping[str, object]) -> Label:
    """Return the label that an entry of a talk file describes.

    Parameters
    ----------
    table : mapping
        ``name``, ``serving``, a table ``amounts`` and, where wanted, ``daily_percent`` and the other attributes of
        `Label`. A nutrient's line may also stand in the entry itself.

    Raises
    ------
    LabelError
        If an entry is missing, unknown or of the wrong kind, or the label cannot be right; every fault has its line.

    Examples
    --------
    >>> label = from_table({"name": "Oat squares", "serving": "2/3 cup (55 g)", "energy": 230, "fat": "8 g"})
    >>> label.food().measures[0].grams, round(label.food()["fat"], 1)
    (82.5, 14.5)
    """
    found = [
        f"{needed} is missing; write it as the package prints it"
        for needed in ("name", "serving")
        if needed not in table
    ]
    facts: dict[str, object] = {}
    lines: dict[str, object] = {}
    for entry, value in table.items():
        if entry in printed_names():
            lines[entry] = value
        elif entry not in _FACTS:
            found.append(f'no entry "{entry}"{nearest(entry, [*_FACTS, *printed_names()])}')
        elif not isinstance(value, _FACTS[entry]) or (isinstance(value, bool) and _FACTS[entry] is not bool):
            found.append(f'{entry} is "{value}"; write {_KINDS.get(_FACTS[entry], "a number")}')
        else:
            facts[entry] = tuple(map(str, value)) if isinstance(value, list) else value
    if not found:
        label = Label(**facts | {"amounts": {**facts.get("amounts", {}), **lines}})
        found = list(faults(label))
    if found:
        raise LabelError("\n".join(found))
    return label


def food_from_table(table: Mapping[str, object]) -> Food:
    """Return the food per 100 g that an entry of a talk file describes; see `from_table`."""
    return from_table(table).food()
