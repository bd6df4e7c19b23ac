"""An imported composition release as it lies on the user's disk: found by words, read food by food."""

import sqlite3
from collections.abc import Iterator
from contextlib import closing, contextmanager
from dataclasses import dataclass, field
from functools import lru_cache
from pathlib import Path
from typing import NamedTuple

import numpy as np

from kit import files
from kit.errors import ReleaseError, UnknownNameError
from kit.food.composition import FOODDATA_CENTRAL, Food
from kit.food.measure import Measure
from kit.food.wordindex import WordIndex

LAYOUT = "1"  # of the tables below; a store of another layout is imported again
TABLES = """
    CREATE TABLE about (fact TEXT PRIMARY KEY, value TEXT NOT NULL);
    CREATE TABLE food (
        number INTEGER PRIMARY KEY, fdc_id INTEGER UNIQUE NOT NULL, name TEXT NOT NULL, kind TEXT NOT NULL,
        category TEXT NOT NULL, published TEXT NOT NULL, per_100g BLOB NOT NULL);
    CREATE TABLE measure (fdc_id INTEGER NOT NULL, sequence INTEGER NOT NULL, measure TEXT NOT NULL, cut TEXT NOT NULL,
        grams REAL NOT NULL);
    CREATE TABLE word_index (part TEXT PRIMARY KEY, content BLOB NOT NULL);
"""
KEY_PREFIX = "fdc-"

# The release's food categories, as far as they are one of the kit's groups.
_GROUPS = {
    "dairy and egg products": "dairy",
    "spices and herbs": "spice",
    "fats and oils": "oil",
    "poultry products": "poultry",
    "soups, sauces, and gravies": "condiment",
    "sausages and luncheon meats": "meat",
    "breakfast cereals": "grain",
    "fruits and fruit juices": "fruit",
    "pork products": "meat",
    "vegetables and vegetable products": "vegetable",
    "nut and seed products": "nut",
    "beef products": "meat",
    "beverages": "beverage",
    "finfish and shellfish products": "fish",
    "legumes and legume products": "pulse",
    "lamb, veal, and game products": "meat",
    "baked products": "bread",
    "sweets": "sweetener",
    "cereal grains and pasta": "grain",
    "snacks": "snack",
}


class Found(NamedTuple):
    """A food that fits some words: its key, its name, and how well it fits, 0 to 100."""

    key: str
    name: str
    score: float


@dataclass(frozen=True)
class Store:
    """An imported release, opened to be read; one that is not there holds no foods.

    Parameters
    ----------
    path : pathlib.Path
        The file; by default the one that `import_release` writes.
    """

    path: Path = field(default_factory=lambda: default_path())

    def __len__(self) -> int:
        with self._open() as rows:
            return rows.execute("SELECT count(*) FROM food").fetchone()[0] if rows else 0

    def __contains__(self, key: object) -> bool:
        with self._open() as rows:
            return rows is not None and self._row(rows, str(key)) is not None

    def find(self, words: str, limit: int = 10) -> list[Found]:
        """Return the foods whose names fit some words best, best first and generic before specific.

        Parameters
        ----------
        words : str
            In any order, singular or plural; likely misspellings are understood.
        limit : int
            How many to return at the most.

        Raises
        ------
        ReleaseError
            If the store cannot be read.
        """
        try:
            changed = self.path.stat()
        except FileNotFoundError:
            return []
        names = _names(self.path, changed.st_mtime_ns, changed.st_size)
        return [Found(*names.food(number), score) for number, score in names.index.find(words, limit)]

    def food(self, key: str) -> Food:
        """Return one food.

        Its allergens, origin and whether it is vegetarian are not part of a release and stay unknown.

        Parameters
        ----------
        key : str
            ``fdc-`` and the release's number of the food.

        Raises
        ------
        UnknownNameError
            If the store has no such food.
        ReleaseError
            If the store cannot be read.
        """
        with self._open() as rows:
            row = self._row(rows, key) if rows else None
            if rows is None or row is None:
                raise UnknownNameError("food", key, where="" if rows else f"{self.path.name} (no release is imported)")
            fdc_id, name, kind, category, published, content = row
            weights = rows.execute(
                "SELECT measure, cut, grams, sequence FROM measure WHERE fdc_id = ? ORDER BY sequence", (fdc_id,)
            ).fetchall()
        source = f"{FOODDATA_CENTRAL} {fdc_id}"
        return Food(
            key=f"{KEY_PREFIX}{fdc_id}",
            name=name,
            per_100g=np.frombuffer(content, "<f8"),
            measures=tuple(Measure(measure, cut, grams, source) for measure, cut, grams, _ in weights),
            group=_GROUPS.get(category.lower(), ""),
            source=", ".join(part for part in (source, kind.replace("_", " "), published) if part),
            release=FOODDATA_CENTRAL,
        )

    @staticmethod
    def _row(rows: sqlite3.Connection, key: str) -> tuple | None:
        number = key.removeprefix(KEY_PREFIX)
        if not key.startswith(KEY_PREFIX) or not (number.isascii() and number.isdigit()) or len(number) > 18:
            return None
        return rows.execute(
            "SELECT fdc_id, name, kind, category, published, per_100g FROM food WHERE fdc_id = ?", (int(number),)
        ).fetchone()

    @contextmanager
    def _open(self) -> Iterator[sqlite3.Connection | None]:
        """Open the file for one question, so that a new import can always take its place."""
        if not self.path.exists():
            yield None
            return
        with _read_only(self.path) as rows:
            yield rows


@dataclass(frozen=True, eq=False)
class _Names:
    """All names of a store, packed, and their word index."""

    index: WordIndex
    text: bytes
    ends: np.ndarray
    fdc_ids: np.ndarray

    def food(self, number: int) -> tuple[str, str]:
        name = self.text[self.ends[number] : self.ends[number + 1]].decode()
        return f"{KEY_PREFIX}{self.fdc_ids[number]}", name


def default_path() -> Path:
    """Return where an imported release lies; it need not exist."""
    return files.own_folder() / "release.sqlite"


def pack_names(names: list[str], fdc_ids: list[int]) -> dict[str, bytes]:
    """Return the word index of names in the order of the store's foods, as named byte strings to be stored."""
    encoded = [name.encode() for name in names]
    ends = np.cumsum([0] + [len(name) for name in encoded])
    packed = {"name_text": b"".join(encoded), "name_ends": ends.astype("<i8").tobytes()}
    return WordIndex.build(names).parts() | packed | {"fdc_ids": np.array(fdc_ids, "<i8").tobytes()}


@lru_cache(maxsize=2)
def _names(path: Path, _changed: int, _size: int) -> _Names:
    """Return a store's names, read again only when the file has changed."""
    with _read_only(path) as rows:
        parts = dict(rows.execute("SELECT part, content FROM word_index"))
    ends, fdc_ids = np.frombuffer(parts["name_ends"], "<i8"), np.frombuffer(parts["fdc_ids"], "<i8")
    return _Names(WordIndex.from_parts(parts), parts["name_text"], ends, fdc_ids)


@contextmanager
def _read_only(path: Path) -> Iterator[sqlite3.Connection]:
    try:
        with closing(sqlite3.connect(f"{path.resolve().as_uri()}?mode=ro", uri=True)) as rows:
            layout = rows.execute("SELECT value FROM about WHERE fact = 'layout'").fetchone()
            if layout is None or layout[0] != LAYOUT:
                raise ReleaseError(f"{path} was written by another version of the kit; import the release again")
            yield rows
    except sqlite3.DatabaseError as fault:
        raise ReleaseError(f"{path} is no imported release ({fault}); import the release again") from fault
