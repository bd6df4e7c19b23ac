"""The user's own table of foods, typed in from package labels and laid out as ``data/foods.csv``."""

import csv
import io
import json
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import asdict, dataclass
from pathlib import Path
from typing import Any

import numpy as np

from kit import files
from kit.errors import LabelError, UnknownNameError
from kit.food.composition import DEVIATIONS, MEASURE_COLUMNS, Food, bundled_foods, own_columns, own_table
from kit.food.labels.label import Label
from kit.food.labels.label_food import food_of
from kit.food.measure import Measure
from kit.food.nutrients import nutrients
from kit.food.own_table import own_rows

LABEL_COLUMN = "label"  # the label as it was typed, so that it can be corrected


@dataclass(frozen=True, slots=True)
class Kept:
    """A food of the user's own table.

    Attributes
    ----------
    key, name : str
        Of the food.
    label : Label or None
        The label as it was typed; None for a row that was written by hand.
    """

    key: str
    name: str
    label: Label | None


def kept() -> tuple[Kept, ...]:
    """Return the foods of the user's own table, by name."""
    rows = _rows(own_table())
    found = (Kept(row["food"], row["name"], _typed(row.get(LABEL_COLUMN, ""))) for row in rows)
    return tuple(sorted(found, key=lambda each: each.name.casefold()))


def keep(label: Label, *, replace: bool = False) -> Food:
    """Add a food to the user's own table, where the kit finds it from then on.

    Parameters
    ----------
    label : Label
        As typed.
    replace : bool
        Whether a food of the same key in the user's table may be replaced; the row of before goes into the bin.

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
    if food.key in bundled_foods():
        raise LabelError(f'label "{food.name}": the kit has a food "{food.key}" of its own; give the label another key')
    table = own_table()
    with files.locked(table.parent):
        if any(row["food"] == food.key for row in _rows(table)):
            if not replace:
                instead = "give another key, or say that it may be replaced"
                raise LabelError(f'label "{food.name}": {table.name} holds "{food.key}" already; {instead}')
            delete(food.key)
        _add(table, food.key, _food_row(food, label), [_measure_row(food.key, measure) for measure in food.measures])
    return food


def delete(key: str) -> None:
    """Move a food of the user's own table into the bin, from where `restore` brings it back.

    Raises
    ------
    UnknownNameError
        If there is no such food in it.
    KitError
        If the user's folder cannot be written.
    """
    _move(key, own_table(), _bin_table())


def restore(key: str) -> None:
    """Bring a food back that was deleted last.

    Raises
    ------
    UnknownNameError
        If there is no such food in the bin.
    LabelError
        If a food of that key was kept meanwhile.
    """
    if any(row["food"] == key for row in _rows(own_table())):
        raise LabelError(f'a food "{key}" was kept meanwhile; give that one another name, or delete it')
    _move(key, _bin_table(), own_table())


def _bin_table() -> Path:
    return files.own_folder() / "bin" / "foods.csv"


def _move(key: str, table: Path, to: Path) -> None:
    """Move the row of a food, and those of its measures, from one table to another; there they replace older ones."""
    with files.locked(own_table().parent):
        rows = _rows(table)
        moved = [row for row in rows if row["food"] == key]
        if not moved:
            raise UnknownNameError("food of yours", key, [row["food"] for row in rows])
        weights = _weights(_measures_of(table))
        _add(to, key, moved[-1], [row for row in weights if row["food"] == key])
        _write(table, own_columns(), [row for row in rows if row["food"] != key])
        _write(_measures_of(table), MEASURE_COLUMNS, [row for row in weights if row["food"] != key])


def _add(table: Path, key: str, row: Mapping[str, str], weights: Sequence[Mapping[str, str]]) -> None:
    """Add a food to a table, in the place of one of that key. The measures go first: alone they do no harm."""
    others = [each for each in _weights(_measures_of(table)) if each["food"] != key]
    _write(_measures_of(table), MEASURE_COLUMNS, [*others, *weights])
    _write(table, own_columns(), [*(each for each in _rows(table) if each["food"] != key), row])


def _measures_of(table: Path) -> Path:
    return table.with_name("measures.csv")


def _rows(table: Path) -> list[dict[str, str]]:
    return own_rows(table, own_columns(), ("food", "name")) if table.exists() else []


def _typed(text: str) -> Label | None:
    """Return the label that a row was typed as; None where the row does not say, or says what is no label."""
    try:
        return Label(**{fact: _plain(value) for fact, value in json.loads(text).items()})
    except (ValueError, TypeError, AttributeError):
        return None


def _plain(value: Any) -> Any:
    return tuple(value) if isinstance(value, list) else value


def _food_row(food: Food, label: Label) -> dict[str, str]:
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
        "check_package": "yes" if food.check_package else "no",
        "salted": "yes" if food.salted else "no",
        "reference": food.reference,
        DEVIATIONS: "; ".join(f"{name} {_number(value)}" for name, value in deviations.items() if np.isfinite(value)),
        LABEL_COLUMN: json.dumps(asdict(label), ensure_ascii=False),
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
