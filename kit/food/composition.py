"""The table of foods: what 100 g of each holds, what its household measures weigh, and where both are from."""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, field
from functools import cache
from pathlib import Path

import numpy as np
from numpy.typing import NDArray

from kit import files
from kit.errors import KitError, UnknownNameError
from kit.food.cells import list_in, named_numbers_in, number_in, read_rows
from kit.food.measure import Measure
from kit.food.nutrients import nutrient_index, nutrients
from kit.food.own_table import own_rows

Array = NDArray[np.float64]
SR26, PACKAGE_LABEL, FOODDATA_CENTRAL = "SR26", "package label", "FoodData Central"
MEASURE_COLUMNS = ("food", "measure", "cut", "grams", "source")
COMPOSITION = "USDA National Nutrient Database for Standard Reference, Release 26 (2013)"
DEVIATIONS = "relative_sd"  # a column of the user's own table only


@dataclass(frozen=True, eq=False)
class Food:
    """A food per 100 g of its edible part.

    Attributes
    ----------
    key, name : str
        Our key and a plain name.
    per_100g : numpy.ndarray, shape (n_nutrients,)
        In the order and units of `nutrients`; NaN where the source has no value.
    measures : tuple of Measure
        Household measures, the source's order.
    base, state : str
        The thing it is a form of, and which form: ``raw``, ``dry``, ``cooked``, ``canned``, ``drained``, ``rinsed`` ...
    check_package, refuse : bool, float
        Whether its allergens differ by maker; the inedible part of the food as bought. [fraction]
    source, release, changed_by : str
        Where its figures are from, for people; `SR26`, `PACKAGE_LABEL` ... alone; and what was changed about them.
    relative_sd : numpy.ndarray, shape (n_nutrients,), optional
        How far the composition may be off, where the food brings its own figure (a package label); else None.
    """

    key: str
    name: str
    per_100g: Array
    measures: tuple[Measure, ...] = ()
    other_names: tuple[str, ...] = ()
    group: str = ""
    state: str = ""
    base: str = ""
    origin: str = ""
    vegetarian: bool | None = None
    whole_grain: bool = False
    allergens: tuple[str, ...] = ()
    check_package: bool = False
    salted: bool = False
    reference: str = ""
    retention: str = ""
    refuse: float = 0.0
    refuse_part: str = ""
    source: str = ""
    release: str = ""
    changed_by: str = ""
    relative_sd: Array | None = field(default=None, repr=False)

    def __post_init__(self) -> None:
        values = np.array(self.per_100g, dtype=float)
        if values.shape != (len(nutrients()),):
            raise KitError(f'food "{self.key}" has {values.shape} values; give one for each nutrient')
        values.flags.writeable = False
        object.__setattr__(self, "per_100g", values)

    def __getitem__(self, name: str) -> float:
        """Return the food's content of one nutrient per 100 g, NaN when missing."""
        return float(self.per_100g[nutrient_index(name)])

    def measure(self, *names: str, cut: str | None = None) -> Measure | None:
        """Return the first household measure of one of these names, of that cut when given."""
        for name in names:
            for row in self.measures:
                if row.measure == name and cut in (None, row.cut):
                    return row
        return None


def food_from(values: Mapping[str, float], key: str = "given", name: str = "", **facts: object) -> Food:
    """Make a food from values per 100 g of any source; nutrients not named are missing, not zero.

    Raises
    ------
    UnknownNameError
        If a nutrient is not known.
    """
    per_100g = np.full(len(nutrients()), np.nan)
    for nutrient_name, value in values.items():
        per_100g[nutrient_index(nutrient_name)] = value
    return Food(key=key, name=name or key, per_100g=per_100g, **facts)  # type: ignore[arg-type]


class Foods(Mapping[str, Food]):
    """Foods by key. A table is itself, not its content, so that what is made from it can be kept."""

    __hash__ = object.__hash__

    def __init__(self, foods: Sequence[Food]) -> None:
        self._foods = {food.key: food for food in foods}

    def __getitem__(self, key: str) -> Food:
        """Return a food; UnknownNameError, with the nearest key, when there is none."""
        try:
            return self._foods[key]
        except KeyError:
            raise UnknownNameError("food", str(key), self._foods) from None

    def __iter__(self) -> Iterator[str]:
        return iter(self._foods)

    def __len__(self) -> int:
        return len(self._foods)

    def __contains__(self, key: object) -> bool:
        return key in self._foods

    def __eq__(self, other: object) -> bool:
        return self is other

    def forms(self, base: str) -> list[Food]:
        """Return the foods that are forms of one thing, in the table's order."""
        return [food for food in self._foods.values() if base and food.base == base]


def read_foods(table: Path, measures: Path) -> list[Food]:
    """Return the foods of a table laid out as ``data/foods.csv``, with their household measures.

    Raises
    ------
    KitError
        If the table cannot be read, or a cell is not a number; the message names file, food and column.
    """
    return _foods(read_rows(table), read_rows(measures), table, measures)


def read_own_foods(table: Path, measures: Path) -> list[Food]:
    """Return the foods of the user's own table as a spreadsheet may have saved it; `measures` need not exist.

    Raises
    ------
    KitError
        As `read_foods`, or where a column that a food cannot do without is missing.
    """
    rows = own_rows(table, own_columns(), ("food", "name"))
    weights = own_rows(measures, MEASURE_COLUMNS, MEASURE_COLUMNS[:1]) if measures.exists() else []
    return _foods(rows, weights, table, measures)


@cache
def own_columns() -> tuple[str, ...]:
    """Return the columns of the user's own table: those of ``data/foods.csv``, and each food's own deviations."""
    return (*read_rows(files.bundled("data/foods.csv"))[0], DEVIATIONS)


def _foods(
    rows: Sequence[Mapping[str, str]], weights: Sequence[Mapping[str, str]], table: Path, measures: Path
) -> list[Food]:
    of: dict[str, list[Measure]] = {}
    for row in weights:
        grams = number_in(row["grams"], measures, row["food"], "grams")
        if grams > 0:  # false for NaN too
            of.setdefault(row["food"], []).append(Measure(row["measure"], row["cut"], grams, row["source"]))
    return [_food(row, tuple(of.get(row["food"], ())), table) for row in rows]


def _food(row: Mapping[str, str], measures: tuple[Measure, ...], table: Path) -> Food:
    values = np.array([number_in(row[name], table, row["food"], name) for name in nutrients()])
    cholesterol = nutrient_index("cholesterol")
    if row["origin"] == "plant" and np.isnan(values[cholesterol]):
        values[cholesterol] = 0.0  # only foods from animals hold any (Dietary Guidelines for Americans)
    changed = _by_place(named_numbers_in(row.get("changed", ""), table, row["food"], "changed"))
    return Food(
        key=row["food"],
        name=row["name"],
        per_100g=values if changed is None else np.where(np.isnan(changed), values, changed),
        measures=measures,
        other_names=list_in(row["other_names"]),
        group=row["group"],
        state=row["state"],
        base=row["base"],
        origin=row["origin"],
        vegetarian={"yes": True, "no": False}.get(row["vegetarian"]),
        whole_grain=row["whole_grain"] == "yes",
        allergens=list_in(row["allergens"]),
        check_package=row.get("check_package") == "yes",
        salted=row["salted"] == "yes",
        reference=row["reference"],
        retention=row["retention"],
        refuse=float(row["refuse_pct"] or 0) / 100,
        refuse_part=row["refuse_part"],
        source="; ".join(
            filter(None, (f"{SR26} {row['sr26']}" if row["sr26"] else PACKAGE_LABEL, row.get("changed_by")))
        ),
        release=SR26 if row["sr26"] else PACKAGE_LABEL,
        changed_by=row.get("changed_by") or "",
        relative_sd=_by_place(named_numbers_in(row.get(DEVIATIONS, ""), table, row["food"], DEVIATIONS)),
    )


def _by_place(values: Mapping[str, float]) -> Array | None:
    """Return named numbers as an array with NaN for the others; None when there are none."""
    if not values:
        return None
    array = np.full(len(nutrients()), np.nan)
    for name, value in values.items():
        array[nutrient_index(name)] = value
    return array


@cache
def bundled_foods() -> Foods:
    """Return the kit's own table of foods."""
    return Foods(read_foods(files.bundled("data/foods.csv"), files.bundled("data/measures.csv")))


def own_table() -> Path:
    """Return the path of the user's own foods, laid out as ``data/foods.csv``; it need not exist."""
    return files.own_folder() / "foods.csv"


def foods() -> Foods:
    """Return all foods at hand: the kit's own, then those the user has typed in from package labels."""
    table = own_table()
    try:
        changed = table.stat().st_mtime_ns
    except OSError:
        return bundled_foods()
    return _with_own(table, changed)


@cache
def _with_own(table: Path, _changed: int) -> Foods:
    """Return the kit's foods and those of the user's table, read again only when that file has changed."""
    own = read_own_foods(table, table.with_name("measures.csv"))
    return Foods([*bundled_foods().values(), *(food for food in own if food.key not in bundled_foods())])
