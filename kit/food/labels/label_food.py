"""The food that a package label describes, once nothing about the label can be wrong."""

from collections.abc import Iterator, Mapping
from typing import Any

import numpy as np

from kit.errors import LabelError, nearest
from kit.food.composition import PACKAGE_LABEL, Food
from kit.food.household import read_measure
from kit.food.labels.label import SERVING_GRAMS, Label, key_from
from kit.food.labels.label_checks import faults
from kit.food.labels.printed import LABEL_ONLY, printed_names
from kit.food.measure import Measure
from kit.food.nutrients import nutrient_index, nutrients

# A food may differ from its label by a fifth before it is misbranded, 21 CFR 101.9(g)(4) and (5): taken as two
# standard deviations.
TOLERANCE_SD = 0.10


def food_of(label: Label) -> Food:
    """Return the food per 100 g, with the standard deviation that rounding and the label's tolerance leave.

    Raises
    ------
    LabelError
        If the label cannot be right; every fault has its line.
    """
    found = faults(label)
    if found:
        raise LabelError("\n".join(f'label "{label.name}": {fault}' for fault in found))
    values, deviations = (np.full(len(nutrients()), np.nan) for _ in range(2))
    for name, amount in label.printed.items():
        if name not in LABEL_ONLY:
            at = nutrient_index(name)
            values[at] = 100 / label.serving_grams * amount.value
            relative = amount.deviation / amount.value if amount.value else 0.0
            deviations[at] = np.hypot(relative, TOLERANCE_SD)
    facts = {fact: getattr(label, fact) for fact in ("other_names", "group", "origin", "vegetarian", "salted")}
    brings = label.allergens if "wheat" not in label.allergens else (*label.allergens, "gluten")
    return Food(
        key=label.key or key_from(label.name),
        name=label.name,
        per_100g=values,
        measures=tuple(_measures(label)),
        state="ready",
        source=PACKAGE_LABEL,
        release=PACKAGE_LABEL,
        relative_sd=deviations,
        allergens=tuple(dict.fromkeys(brings)),
        check_package=not label.allergens,  # what is not typed in is not known to be absent
        **facts,
    )


def _measures(label: Label) -> Iterator[Measure]:
    """Yield the serving as a household measure, and the container."""
    grams_at = [match.start() for match in SERVING_GRAMS.finditer(label.serving_text)][-1]
    read = read_measure(label.serving_text[:grams_at].rstrip("(/, ").strip(), label.name)
    if read:
        yield Measure(read.measure, read.cut, float(f"{label.serving_grams / read.count:.6g}"), PACKAGE_LABEL)
    if label.servings_per_container and not (read and read.measure == "package"):
        yield Measure("package", "", label.serving_grams * label.servings_per_container, PACKAGE_LABEL)


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
    >>> food_of(label).measures[0].grams, round(food_of(label)["fat"], 1)
    (82.5, 14.5)
    """
    found = [
        f"{needed} is missing; write it as the package prints it"
        for needed in ("name", "serving")
        if needed not in table
    ]
    facts: dict[str, Any] = {}
    lines: dict[str, Any] = {}
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
    return food_of(from_table(table))
