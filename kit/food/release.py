"""A whole official composition release, the FoodData Central CSV folder, brought into a store of the user's own."""

import os
import sqlite3
import sys
import tempfile
from collections.abc import Iterator
from contextlib import closing
from dataclasses import dataclass
from itertools import batched, groupby
from operator import itemgetter
from pathlib import Path
from typing import TextIO

import numpy as np

from kit import files
from kit.errors import ReleaseError
from kit.food.composition import nutrient, nutrient_index, nutrients, read_rows
from kit.food.household import WordedMeasure, read_measure
from kit.food.release_files import Progress, ReleaseFolder, decimal, whole_number
from kit.food.store import LAYOUT, TABLES, Found, Store, default_path, pack_names
from kit.texts import number

__all__ = ["Found", "ImportSummary", "ProgressBar", "Store", "import_release"]

_GRAMS = {"g": 1.0, "mg": 1e-3, "ug": 1e-6, "mcg": 1e-6, "µg": 1e-6, "μg": 1e-6}
_KCAL = {"kcal": 1.0, "kj": 1 / 4.184}  # 4.184 kJ exactly: FAO Food and Nutrition Paper 77, 2003
_VITAMIN_D_UG_PER_IU = 0.025  # 800 IU = 20 µg, 21 CFR 101.9(c)(8)(iv)
# Samples that were analysed to make up a food, not foods themselves. (The release writes one of them in two ways.)
_SAMPLES = frozenset(
    ("sample_food", "sub_sample_food", "market_acquisition", "market_acquistion", "agricultural_acquisition")
) | {"experimental_food"}
_KINDS = ("foundation_food", "sr_legacy_food", "survey_fndds_food", "", "branded_food")  # generic before specific
_BATCH = 20_000
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
        Foods, and household measures of them that the kit can read.
    samples_left_out, empty_left_out, measures_left_out : int
        Rows for samples; foods without any nutrient the kit uses; measures in words the kit does not read.
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
            f" uses, {number(self.measures_left_out)} measures it cannot read"
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
    changes nothing. Rows are streamed, so memory does not grow with the release's table of contents.

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
        with open(part, "rb+") as written:
            os.fsync(written.fileno())
        os.replace(part, path)
    except sqlite3.OperationalError as fault:  # such as a full disk
        raise ReleaseError(f"{path} cannot be written ({fault}); make room or choose another folder") from fault
    finally:
        Path(part).unlink(missing_ok=True)
    release.progress(1.0, "done")
    return ImportSummary(path, *counts)


def _fill(rows: sqlite3.Connection, release: ReleaseFolder) -> tuple[int, int, int, int, int, int]:
    """Fill a new store; return the counts of `ImportSummary` in its order."""
    samples = _list_foods(rows, release)
    unread = _list_weights(rows, release)
    _insert(rows, "value", _values(release))
    release.progress(0.9, "laying out the foods")
    counts = {"below_zero": 0}
    _insert(rows, "packed", _packed(rows, counts))
    order = " ".join(f"WHEN '{kind}' THEN {place}" for place, kind in enumerate(_KINDS) if kind)
    rows.execute(
        "INSERT INTO food (fdc_id, name, kind, category, published, per_100g)"
        " SELECT fdc_id, name, kind, category, published, per_100g FROM listed JOIN packed USING (fdc_id)"
        f" ORDER BY CASE kind {order} ELSE {_KINDS.index('')} END, length(name), name, fdc_id"
    )
    rows.execute(
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
    return len(names), measures, samples, listed - len(names), unread, counts["below_zero"]


def _insert(rows: sqlite3.Connection, table: str, values: Iterator[tuple]) -> None:
    """Insert rows batch by batch, so that few are in memory at a time."""
    for batch in batched(values, _BATCH):
        marks = ", ".join("?" * len(batch[0]))
        rows.executemany(f"INSERT INTO {table} VALUES ({marks})", batch)
