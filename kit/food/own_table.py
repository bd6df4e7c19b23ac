"""The user's own tables of foods and measures, read however a spreadsheet saved them."""

import re
from collections.abc import Sequence
from pathlib import Path

from kit.errors import KitError, nearest
from kit.spreadsheets import read_table
from kit.texts import listing

_DECIMAL_COMMA = re.compile(r"-?\d+,\d+")


def own_rows(path: Path, columns: Sequence[str], needed: Sequence[str]) -> list[dict[str, str]]:
    """Return the rows of a table of the user's own; columns that were lost are empty, further ones are kept.

    Parameters
    ----------
    path : pathlib.Path
        The table, as UTF-8, UTF-16 or Windows-1252, parted by commas, semicolons or tabs.
    columns : sequence of str
        The columns it is laid out with.
    needed : sequence of str
        Those without which a row means nothing.

    Raises
    ------
    KitError
        If the file cannot be read, one of the needed columns is missing, or a row lacks what it needs.
    """
    table = read_table(path)
    names = [_known(name, columns) for name in table.columns]
    lost = [column for column in needed if column not in names]
    if lost:
        near = nearest(lost[0], table.columns)
        raise KitError(f"{path.name} has no column {listing(lost)}; name its columns as it was written with{near}")
    rows = []
    for place, cells in enumerate(table.rows, start=2):
        row = {**dict.fromkeys(columns, ""), **dict(zip(names, map(_cell, cells), strict=True))}
        empty = [column for column in needed if not row[column]]
        if empty:
            raise KitError(f"{path.name}, row {place}: {listing(empty)} is empty; fill it in, or delete the row")
        rows.append(row)
    return rows


def _known(name: str, columns: Sequence[str]) -> str:
    """Return a column's name as the table is laid out, whatever its capitals and spaces."""
    plain = name.strip().lower().replace(" ", "_")
    return plain if plain in columns else name


def _cell(cell: str) -> str:
    """Return a cell trimmed, its decimal comma as a point."""
    cell = cell.strip()
    return cell.replace(",", ".") if _DECIMAL_COMMA.fullmatch(cell) else cell
