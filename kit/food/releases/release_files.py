"""The CSV files of an official composition release: read row by row, every fault told with its file and line."""

import csv
import io
import math
from collections.abc import Callable, Iterator
from dataclasses import dataclass
from operator import itemgetter
from pathlib import Path

from kit import files
from kit.errors import ReleaseError, nearest
from kit.texts import listing

Progress = Callable[[float, str], None]
Row = tuple[str, ...]

# Each file with the columns the kit uses, in the order of reading; other columns are passed over.
COLUMNS: dict[str, Row] = {
    "food_category.csv": ("id", "description"),
    "food.csv": ("fdc_id", "data_type", "description", "food_category_id", "publication_date"),
    "nutrient.csv": ("id", "unit_name", "nutrient_nbr"),
    "food_nutrient.csv": ("fdc_id", "nutrient_id", "amount"),
    "measure_unit.csv": ("id", "name"),
    "food_portion.csv": (
        *("fdc_id", "seq_num", "amount", "measure_unit_id"),
        *("portion_description", "modifier", "gram_weight"),
    ),
}
OPTIONAL = ("food_category.csv",)
_REPORT_EVERY = 20_000  # rows
_READING = 0.9  # of an import's progress; the rest is laying out what was read
_LONGEST_WHOLE_NUMBER = 18  # digits that the store can hold


@dataclass(frozen=True)
class ReleaseFolder:
    """A folder with the files of a release.

    Parameters
    ----------
    folder : pathlib.Path
        Where they lie.
    progress : callable
        Called with the fraction of an import that is done and the name of the step.

    Raises
    ------
    ReleaseError
        If the folder or a file that is needed is missing; all missing files are named.
    """

    folder: Path
    progress: Progress

    def __post_init__(self) -> None:
        if not files.is_folder(self.folder):
            kind = "is a file" if files.exists(self.folder) else "does not exist"
            raise ReleaseError(f"folder {self.folder} {kind}; give the folder that holds the release's food.csv")
        if refused := files.refusal(self.folder / "food.csv"):
            raise ReleaseError(f"folder {self.folder} cannot be read ({refused}); choose a folder you may read")
        missing = [name for name in COLUMNS if name not in OPTIONAL and not self.has(name)]
        if missing:
            inside = next((path.parent for path in sorted(self.folder.glob("*/food.csv"))), None)
            instead = f"give {inside} instead" if inside else "put the whole unpacked release into one folder"
            raise ReleaseError(f"{listing(missing)} missing from folder {self.folder}; {instead}")

    def has(self, name: str) -> bool:
        """Return whether the release has this file."""
        return files.is_file(self.folder / name)

    def rows(self, name: str) -> Iterator[tuple[int, Row]]:
        """Yield each row's line and the cells of the file's columns in `COLUMNS`, which may stand in any order.

        Raises
        ------
        ReleaseError
            If the file cannot be read, a column is missing, or a row has another number of cells than the header.
        """
        path = self.folder / name
        try:
            with open(path, "rb") as raw:
                text = io.TextIOWrapper(raw, encoding="utf-8-sig", newline="")
                reader = csv.reader(text, strict=True)
                header = [column.strip() for column in next(reader, [])]
                cells = itemgetter(*_places(name, header))
                width = len(header)
                for count, row in enumerate(reader, start=1):
                    if len(row) != width:
                        if not row:
                            continue
                        raise ReleaseError(
                            f"{name}, line {reader.line_num}: {len(row)} cells where the header has {width};"
                            " put a text that holds commas in double quotes"
                        )
                    if count % _REPORT_EVERY == 0:
                        self.progress(self._done(name, raw.tell()), f"reading {name}")
                    yield reader.line_num, cells(row)
        except UnicodeDecodeError as fault:
            raise ReleaseError(f"{name} is not UTF-8 text ({fault.reason}); save it as CSV in UTF-8") from fault
        except csv.Error as fault:
            raise ReleaseError(f"{name}, line {reader.line_num}: {fault}; write it as plain CSV") from fault
        except OSError as fault:
            raise ReleaseError(f"{name} cannot be read ({fault.strerror}); check the folder") from fault
        self.progress(self._done(name, path.stat().st_size), f"reading {name}")

    def _done(self, name: str, at: int) -> float:
        sizes = {known: (self.folder / known).stat().st_size for known in COLUMNS if self.has(known)}
        before = sum(size for known, size in sizes.items() if list(sizes).index(known) < list(sizes).index(name))
        return _READING * (before + at) / max(1, sum(sizes.values()))


def whole_number(text: str, name: str, line: int, column: str) -> int:
    """Return a cell as a whole number, such as a food's id."""
    plain = text.strip()
    if not (plain.isascii() and plain.isdigit() and len(plain) <= _LONGEST_WHOLE_NUMBER):
        raise ReleaseError(f'{name}, line {line}: {column} is "{text}"; write a whole number')
    return int(plain)


def decimal(text: str, name: str, line: int, column: str) -> float:
    """Return a cell as a number; an empty one is missing (NaN), not zero."""
    if not text.strip():
        return math.nan
    try:
        value = float(text)
    except ValueError:
        value = math.nan
    if not math.isfinite(value):
        raise ReleaseError(f'{name}, line {line}: {column} is "{text}"; write a number, or leave it empty when unknown')
    return value


def _places(name: str, header: list[str]) -> list[int]:
    missing = [column for column in COLUMNS[name] if column not in header]
    if missing:
        near = nearest(missing[0], header, 75.0)
        has = f"its header is {', '.join(header)}" if any(header) else "it is empty"
        raise ReleaseError(
            f"{name} has no column {listing(missing)} ({has}); name the columns as the release does{near}"
        )
    return [header.index(column) for column in COLUMNS[name]]
