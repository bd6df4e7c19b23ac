"""The user's own table of foods, typed in from package labels and laid out as ``data/foods.csv``."""

import csv
import io
from collections.abc import Iterable, Mapping
from pathlib import Path

import numpy as np

from kit import files
from kit.errors import LabelError
from kit.food.composition import (
    DEVIATIONS,
    MEASURE_COLUMNS,
    Food,
    Measure,
    bundled_foods,
    nutrients,
    own_columns,
    own_table,
)
from kit.food.labels.label import Label
from kit.food.labels.label_food import food_of
from kit.food.own_table import own_rows


def keep(label: Label, *, replace: bool = False) -> Food:
    """Add a food to the user's own table, where the kit finds it from then on.

    Parameters
    ----------
    label : Label
        As typed.
    replace : bool
        Whether a food of the same key in the user's table may be replaced.

    Returns
    -------
    Food
        As it is kept.

    Raises
    ------
    LabelError
        If the label cannot be right, or its key is taken; the table is left as it was.
    KitError
        If the user's folder cannot be written.
    """
    food = food_of(label)
    table = own_table()
    weights = table.with_name("measures.csv")
    rows = own_rows(table, own_columns(), ("food", "name")) if table.exists() else []
    if food.key in bundled_foods():
        raise LabelError(f'label "{food.name}": the kit has a food "{food.key}" of its own; give the label another key')
    if not replace and any(row["food"] == food.key for row in rows):
        instead = "give another key, or say that it may be replaced"
        raise LabelError(f'label "{food.name}": {table.name} holds "{food.key}" already; {instead}')
    # The measures go first: weights of a food that is not there yet do no harm.
    kept = [row for row in _weights(weights) if row["food"] != food.key]
    _write(weights, MEASURE_COLUMNS, [*kept, *(_measure_row(food.key, measure) for measure in food.measures)])
    _write(table, own_columns(), [*(row for row in rows if row["food"] != food.key), _food_row(food)])
    return food


def _food_row(food: Food) -> dict[str, str]:
    values = {name: _number(value) for name, value in zip(nutrients(), food.per_100g, strict=True)}
    deviations = {} if food.relative_sd is None else dict(zip(nutrients(), food.relative_sd, strict=True))
    return values | {
        "food": food.key,
        "name": food.name,
        "other_names": "; ".join(food.other_names),
        "group": food.group,
        "state": food.state,
        "base": food.base,
        "origin": food.origin,
        "vegetarian": "" if food.vegetarian is None else "yes" if food.vegetarian else "no",
        "whole_grain": "yes" if food.whole_grain else "no",
        "allergens": "; ".join(food.allergens),
        "salted": "yes" if food.salted else "no",
        "reference": food.reference,
        DEVIATIONS: "; ".join(f"{name} {_number(value)}" for name, value in deviations.items() if np.isfinite(value)),
    }


def _weights(path: Path) -> list[dict[str, str]]:
    return own_rows(path, MEASURE_COLUMNS, MEASURE_COLUMNS[:1]) if path.exists() else []


def _measure_row(key: str, measure: Measure) -> dict[str, str]:
    facts = (key, measure.measure, measure.cut, _number(measure.grams), measure.source)
    return dict(zip(MEASURE_COLUMNS, facts, strict=True))


def _number(value: float) -> str:
    return "" if np.isnan(value) else f"{value:.6g}"


def _write(path: Path, columns: Iterable[str], rows: Iterable[Mapping[str, str]]) -> None:
    """Write a table whole; columns of the rows that are not named, such as the user's own, stay at the end."""
    rows = list(rows)
    known = list(columns)
    known += [column for column in dict.fromkeys(name for row in rows for name in row) if column not in known]
    text = io.StringIO()
    writer = csv.DictWriter(text, known, restval="", lineterminator="\n")
    writer.writeheader()
    writer.writerows(rows)
    files.write_whole(path, text.getvalue(), replace=True)
