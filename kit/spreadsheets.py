"""Tables from and for spreadsheets: CSV of the usual encodings and separators, and cells that do no harm."""

import csv
import io
import re
from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from pathlib import Path

from kit.errors import KitError

LARGEST_FILE = 50_000_000  # bytes
SEPARATORS = (",", ";", "\t", "|")
_SNIFFED_LINES = 20
_NUMBER = re.compile(r"[+-]?\d[\d.,]*(?:e[+-]?\d+)?%?", re.IGNORECASE)
_FORMULA_STARTS = ("=", "+", "-", "@", "\t", "\r", "\n")


@dataclass(frozen=True, slots=True)
class Table:
    """A table as it was read: its column names, and its rows with a cell for each."""

    columns: tuple[str, ...]
    rows: tuple[tuple[str, ...], ...]


def read_table(path: Path) -> Table:
    """Read a CSV table as another program saved it.

    UTF-8 with or without a mark, UTF-16 with one, and otherwise Windows-1252; commas, semicolons, tabs or upright bars;
    rows that are empty are passed over, and short ones filled up.

    Raises
    ------
    KitError
        If the file cannot be read, is empty, has two columns of one name, or a row has more cells than the header.

    References
    ----------
    RFC 4180 for the format; what spreadsheets write beside it is common practice.
    """
    try:
        if path.stat().st_size > LARGEST_FILE:
            raise KitError(f"{path.name} has over {LARGEST_FILE // 1_000_000} MB; a table of that size is another one")
        content = path.read_bytes()
    except OSError as fault:
        raise KitError(f"{path} cannot be read ({fault.strerror}); check its name and place") from fault
    return table_from(content, path.name)


def table_from(content: bytes, name: str) -> Table:
    """Read the content of a CSV table, as `read_table` does; `name` tells in messages which one.

    Raises
    ------
    KitError
        As `read_table`.
    """
    try:
        return _table(_text(content), name)
    except csv.Error as fault:
        raise KitError(f"{name} is no table ({fault}); save it as CSV") from None


def _text(content: bytes) -> str:
    if content.startswith((b"\xff\xfe", b"\xfe\xff")):
        return content.decode("utf-16", errors="replace")
    try:
        return content.decode("utf-8-sig")
    except UnicodeDecodeError:
        return content.decode("cp1252", errors="replace")


def _table(text: str, name: str) -> Table:
    if "\0" in text:
        raise KitError(f"{name} is no text; save the table as CSV")
    lines = csv.reader(io.StringIO(text, newline=""), delimiter=separator(text))
    header: tuple[str, ...] = ()
    rows = []
    for cells in lines:
        if not any(cell.strip() for cell in cells):
            continue
        if not header:
            header = tuple(cell.strip() for cell in cells)
            continue
        if any(cell.strip() for cell in cells[len(header) :]):
            raise KitError(
                f"{name}, line {lines.line_num}: {len(cells)} cells where the header has {len(header)};"
                " put a text that holds the separator in double quotes"
            )
        cells = cells[: len(header)]
        rows.append((*cells, *[""] * (len(header) - len(cells))))
    if not header:
        raise KitError(f"{name} is empty; save the table again, with its heading")
    twice = next((column for place, column in enumerate(header) if column and column in header[:place]), None)
    if twice:
        raise KitError(f'{name} has two columns "{twice}"; give each a name of its own')
    return Table(header, tuple(rows))


def separator(text: str) -> str:
    r"""Return the sign that parts the cells: the one that parts the first lines most, and alike in each.

    Examples
    --------
    >>> separator("food;grams\nlentils;1,5\n")
    ';'
    """
    lines = [line for line in text.splitlines()[:_SNIFFED_LINES] if line.strip()]
    counts = {sign: [len(row) - 1 for row in csv.reader(lines, delimiter=sign)][:_SNIFFED_LINES] for sign in SEPARATORS}
    return max(SEPARATORS, key=lambda sign: (min(counts[sign], default=0), counts[sign][:1], -SEPARATORS.index(sign)))


def harmless(cell: str) -> str:
    """Return a cell that no spreadsheet takes for a formula; a plain number stays as it is.

    Examples
    --------
    >>> harmless("=1+1"), harmless("-5"), harmless("2 cups")
    ("'=1+1", '-5', '2 cups')
    """
    if cell.startswith(_FORMULA_STARTS) and not _NUMBER.fullmatch(cell):
        return f"'{cell}"
    return cell


def table_text(columns: Sequence[str], rows: Iterable[Sequence[str]]) -> str:
    """Return a table as CSV text (RFC 4180) that a spreadsheet opens safely: every cell `harmless`."""
    text = io.StringIO()
    writer = csv.writer(text, lineterminator="\r\n")
    writer.writerow([harmless(column) for column in columns])
    writer.writerows([harmless(cell) for cell in row] for row in rows)
    return text.getvalue()
