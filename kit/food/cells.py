"""The rows of a table, and what its cells hold: numbers, lists, and numbers by name."""

import csv
from pathlib import Path

import numpy as np

from kit.errors import KitError


def read_rows(path: Path) -> list[dict[str, str]]:
    """Return a CSV table's rows; every cell stays text, so that the tagname NA is not taken for a missing value."""
    try:
        with open(path, encoding="utf-8", newline="") as file:
            return list(csv.DictReader(file))
    except OSError as fault:
        raise KitError(f"{path} cannot be read ({fault.strerror})") from fault


def number_in(cell: str, table: Path, food: str, column: str) -> float:
    """Return the number in a cell, NaN for an empty one.

    Raises
    ------
    KitError
        If it is no number; the message names file, food and column.
    """
    try:
        return float(cell) if cell else np.nan
    except ValueError:
        message = f'{table.name}, food "{food}": {column} is "{cell}"; write a number, or leave it empty when unknown'
        raise KitError(message) from None


def list_in(cell: str) -> tuple[str, ...]:
    """Return the entries of a cell, which are separated by semicolons.

    Examples
    --------
    >>> list_in("milk; wheat")
    ('milk', 'wheat')
    """
    return tuple(entry.strip() for entry in cell.split(";") if entry.strip())


def named_numbers_in(cell: str, table: Path, food: str, column: str) -> dict[str, float]:
    """Return the numbers of a cell by name, where it is written "energy 0.104; fat 0.105"."""
    pairs = (entry.partition(" ") for entry in list_in(cell))
    return {name: number_in(value, table, food, column) for name, _, value in pairs}
