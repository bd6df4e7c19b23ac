"""A whole official composition release, the FoodData Central CSV folder, brought into a store of the user's own."""

import os
import sqlite3
import sys
import tempfile
from collections.abc import Iterator
from contextlib import closing
from dataclasses import dataclass
from itertools import groupby
from operator import itemgetter
from pathlib import Path
from typing import TextIO

import numpy as np

from kit.errors import ReleaseError
from kit.food.household import WordedMeasure, read_measure
from kit.food.nutrients import nutrient_index, nutrients
from kit.food.releases.plausible import HEAVIEST_MEASURE, refuse_the_absurd
from kit.food.releases.release_files import Progress, ReleaseFolder, decimal, whole_number
from kit.food.releases.release_nutrients import columns
from kit.food.releases.store import LAYOUT, TABLES, Found, Store, default_path, pack_names
from kit.texts import number

__all__ = ["Found", "ImportSummary", "ProgressBar", "Store", "import_release"]

# Samples that were analysed to make up a food, not foods themselves. (The release writes one of them in two ways.)
_SAMPLES = frozenset(
    ("sample_food", "sub_sample_food", "market_acquisition", "market_acquistion", "agricultural_acquisition")
) | {"experimental_food"}
_NO_UNIT = ("", "undetermined", "quantity not specified")
_KINDS = ("foundation_food", "sr_legacy_food", "survey_fndds_food", "", "branded_food")  # generic before specific
_LAST_PLACE = 2**31  # of a portion among those of its food; anything else is no place
_STAGING = """
    CREATE TEMP TABLE listed (fdc_id INTEGER PRIMARY KEY, name TEXT, kind TEXT, category TEXT, published TEXT);
    CREATE TEMP TABLE value (fdc_id INTEGER, nutrient INTEGER, preference INTEGER, amount REAL);
    CREATE TEMP TABLE weight (fdc_id INTEGER, sequence INTEGER, measure TEXT, cut TEXT, grams REAL);
    CREATE TEMP TABLE packed (fdc_id INTEGER PRIMARY KEY, per_100g BLOB);
"""


@dataclass(frozen=True)
class ImportSummary:
    """What an import brought in and what it left out.

    Attributes
    ----------
    store : pathlib.Path
        Where it lies now.
    foods, measures : int
        Foods, and household measures of them.
    samples_left_out, empty_left_out, measures_left_out : int
        Rows for samples; foods without any nutrient the kit uses; portions in ounces, in servings
        or in other words that are no kitchen measure.
    below_zero : int
        Contents below zero: of carbohydrate, where differences of rounded numbers bring them about, taken as zero;
        of anything else taken as missing.
    """

    store: Path
    foods: int
    measures: int
    samples_left_out: int
    empty_left_out: int
    measures_left_out: int
    below_zero: int

    def __str__(self) -> str:
        return (
            f"{number(self.foods)} foods and {number(self.measures)} household measures are imported; left out:"
            f" {number(self.samples_left_out)} samples, {number(self.empty_left_out)} foods without a nutrient the kit"
            f" uses, {number(self.measures_left_out)} portions that are no kitchen measure"
        )


class ProgressBar:
    """A progress bar of one line of text; give it to `import_release` as `progress`.

    Parameters
    ----------
    stream : text stream
        Standard error by default. Where that is no terminal, each step is written once instead.
    """

    def __init__(self, stream: TextIO | None = None) -> None:
        self.stream = stream or sys.stderr
        self._shown = ""

    def __call__(self, fraction: float, step: str) -> None:
        """Show how much is done, 0 to 1, and with what."""
        done = round(fraction * 100)
        live = self.stream.isatty()
        line = f"[{'#' * (done // 5):-<20}] {done:3d} %  {step}" if live else step
        if line == self._shown:
            return
        self._shown = line
        self.stream.write(f"\r{line:<70}" if live else f"{line}\n")
        if live and fraction >= 1:
            self.stream.write("\n")
        self.stream.flush()


def import_release(folder: Path, store_path: Path | None = None, progress: Progress | None = None) -> ImportSummary:
    """Bring an official composition release into a store of the user's own.

    The store is built beside its place and put there only when it is complete: an import that fails or is interrupted
    changes nothing. Rows are streamed: of the whole release only the names are in memory at once.

    Parameters
    ----------
    folder : pathlib.Path
        The release's CSV files: ``food.csv``, ``food_nutrient.csv``, ``nutrient.csv``, ``food_portion.csv``,
        ``measure_unit.csv`` and, where there is one, ``food_category.csv``.
    store_path : pathlib.Path, optional
        Where to put the store; ``release.sqlite`` in the user's own folder by default.
    progress : callable, optional
        Called with the fraction done and the name of the step; see `ProgressBar`.

    Raises
    ------
    ReleaseError
        If a file or column is missing or a cell is not what it should be; the message names file and line.
    """
    release = ReleaseFolder(Path(folder), progress or (lambda fraction, step: None))
    path = Path(store_path) if store_path else default_path()
    try:
        path.parent.mkdir(parents=True, exist_ok=True)
        handle, part = tempfile.mkstemp(prefix=f".{path.name}.", suffix=".part", dir=path.parent)
    except OSError as fault:
        raise ReleaseError(f"{path.parent} cannot be written ({fault.strerror}); choose another folder") from fault
    os.close(handle)
    try:
        with closing(sqlite3.connect(part)) as rows:
            rows.executescript(f"PRAGMA synchronous = OFF; PRAGMA journal_mode = MEMORY; {TABLES} {_STAGING}")
            counts = _fill(rows, release)
            refuse_the_absurd(rows)
        with open(part, "rb+") as written:
            os.fsync(written.fileno())
        os.replace(part, path)
    except sqlite3.OperationalError as fault:  # such as a full disk
        raise ReleaseError(f"{path} cannot be written ({fault}); make room or choose another folder") from fault
    finally:
        Path(part).unlink(missing_ok=True)
    release.progress(1.0, "done")
    return ImportSummary(path, *counts)


@dataclass
class _Counts:
    """What has been left out so far."""

    samples: int = 0
    measures: int = 0
    below_zero: int = 0


def _fill(rows: sqlite3.Connection, release: ReleaseFolder) -> tuple[int, int, int, int, int, int]:
    """Fill a new store; return the counts of `ImportSummary` in its order."""
    left_out = _Counts()
    _list_foods(rows, release, left_out)
    rows.executemany("INSERT INTO value VALUES (?, ?, ?, ?)", _values(release))
    rows.executemany("INSERT INTO weight VALUES (?, ?, ?, ?, ?)", _weights(rows, release, left_out))
    release.progress(0.9, "laying out the foods")
    rows.executemany("INSERT INTO packed VALUES (?, ?)", _packed(rows, left_out))
    order = " ".join(f"WHEN '{kind}' THEN {place}" for place, kind in enumerate(_KINDS) if kind)
    rows.execute(
        "INSERT INTO food (fdc_id, name, kind, category, published, per_100g)"
        " SELECT fdc_id, name, kind, category, published, per_100g FROM listed JOIN packed USING (fdc_id)"
        f" ORDER BY CASE kind {order} ELSE {_KINDS.index('')} END, length(name), name, fdc_id"
    )
    rows.execute(  # SQLite takes the other columns from the row that holds the min
        "INSERT INTO measure SELECT fdc_id, min(sequence), measure, cut, grams FROM weight"
        " WHERE fdc_id IN (SELECT fdc_id FROM food) GROUP BY fdc_id, measure, cut"
    )
    rows.execute("CREATE INDEX measures_of_food ON measure (fdc_id)")
    names = rows.execute("SELECT name, fdc_id FROM food ORDER BY number").fetchall()
    parts = pack_names([name for name, _ in names], [fdc_id for _, fdc_id in names])
    rows.executemany("INSERT INTO word_index VALUES (?, ?)", parts.items())
    rows.execute("INSERT INTO about VALUES ('layout', ?)", (LAYOUT,))
    rows.commit()
    listed, measures = (rows.execute(f"SELECT count(*) FROM {table}").fetchone()[0] for table in ("listed", "measure"))
    return len(names), measures, left_out.samples, listed - len(names), left_out.measures, left_out.below_zero


def _list_foods(rows: sqlite3.Connection, release: ReleaseFolder, left_out: _Counts) -> None:
    listed_categories = release.rows("food_category.csv") if release.has("food_category.csv") else ()
    categories = {number: name for _, (number, name) in listed_categories}
    last = (0, "")

    def listed() -> Iterator[tuple]:
        nonlocal last
        for line, (fdc_id, kind, name, category, published) in release.rows("food.csv"):
            if kind in _SAMPLES:
                left_out.samples += 1
                continue
            last = (line, fdc_id)
            number = whole_number(fdc_id, "food.csv", line, "fdc_id")
            yield number, name.strip() or f"Food {number}", kind, categories.get(category, ""), published

    try:
        rows.executemany("INSERT INTO listed VALUES (?, ?, ?, ?, ?)", listed())
    except sqlite3.IntegrityError:
        message = f"food.csv, line {last[0]}: fdc_id {last[1]} stands a second time; give each food its own number"
        raise ReleaseError(message) from None


def _values(release: ReleaseFolder) -> Iterator[tuple[int, int, int, float]]:
    ours = columns(release)
    name = "food_nutrient.csv"
    for line, (fdc_id, nutrient_id, amount) in release.rows(name):
        column = ours.get(nutrient_id)
        if column and amount:
            value = decimal(amount, name, line, "amount") * column.factor
            yield whole_number(fdc_id, name, line, "fdc_id"), column.place, column.preference, value


def _packed(rows: sqlite3.Connection, left_out: _Counts) -> Iterator[tuple[int, bytes]]:
    """Yield each food's values as one array; of several for a nutrient the preferred one, then the first written."""
    may_be_zero = nutrient_index("carbohydrate")
    ordered = rows.execute(
        "SELECT fdc_id, nutrient, amount FROM value JOIN listed USING (fdc_id) WHERE amount IS NOT NULL"
        " ORDER BY fdc_id, preference DESC, value.rowid DESC"
    )
    for fdc_id, group in groupby(ordered, key=itemgetter(0)):
        values = np.full(len(nutrients()), np.nan)
        for _, place, amount in group:
            values[place] = amount
        below = np.flatnonzero(values < 0)
        left_out.below_zero += len(below)
        values[below] = np.where(below == may_be_zero, 0.0, np.nan)
        if not np.isnan(values).all():
            yield fdc_id, values.astype("<f8").tobytes()


def _weights(rows: sqlite3.Connection, release: ReleaseFolder, left_out: _Counts) -> Iterator[tuple]:
    """Yield the household measures that the kit can use, each as what one of it weighs."""
    units = {unit_id: unit.strip() for _, (unit_id, unit) in release.rows("measure_unit.csv")}
    name = "food_portion.csv"
    for line, (fdc_id, sequence, amount, unit_id, description, modifier, gram_weight) in release.rows(name):
        number = whole_number(fdc_id, name, line, "fdc_id")
        times, grams = decimal(amount, name, line, "amount"), decimal(gram_weight, name, line, "gram_weight")
        read = _worded(units.get(unit_id, ""), modifier.strip(), description.strip(), _food_name(rows, number))
        each = grams / read.count / (1.0 if np.isnan(times) else times or np.nan) if read else np.nan
        if read and 0 < each <= HEAVIEST_MEASURE:
            place = decimal(sequence, name, line, "seq_num")
            order = line if np.isnan(place) or not 0 <= place <= _LAST_PLACE else int(place)
            yield number, order, read.measure, read.cut, float(f"{each:.6g}")
        else:
            left_out.measures += 1


def _food_name(rows: sqlite3.Connection, fdc_id: int) -> str:
    found = rows.execute("SELECT name FROM listed WHERE fdc_id = ?", (fdc_id,)).fetchone()
    return found[0] if found else ""


def _worded(unit: str, modifier: str, description: str, food: str) -> WordedMeasure | None:
    """Read a portion, which the release words as a unit with a modifier, as either alone, or as a description."""
    named = unit if unit.lower() not in _NO_UNIT else ""
    said = modifier if not modifier.isdigit() else ""  # a survey writes a code number there
    return read_measure(", ".join(part for part in (named, said) if part) or description, food)
