"""What a millilitre and a handful of a food weigh by its group, where its table has no measure that is near."""

from collections.abc import Mapping
from functools import cache

from kit import files
from kit.food.cells import read_rows
from kit.food.composition import Food
from kit.food.measure import Measure
from kit.food.measures import units
from kit.lines.nearest_measure import UNIT_OF, Written
from kit.lines.refuse import LEAVES

_HANDFUL_OF_LEAVES = 25.0  # about a cup of them, common practice [g]
_BAKED = ("bread", "snack")  # crushed they weigh three times what they weigh in cubes
_AIRY = ("bread", "roll", "bagel", "pita", "croissant", "english-muffin", "cake-angel-food", "cake-sponge")
_CRUMBS = ("crushed", "ground", "minced")
_OF_FLAKES = 0.35  # crumbs are heavier [g/mL]
_IN_CUBES = ("cubed", "torn", "diced", "chopped", "pieces")


@cache
def _groups() -> Mapping[str, Mapping[str, str]]:
    return {row["group"]: row for row in read_rows(files.bundled("data/group_densities.csv"))}


def density_of(food: Food, written: Written) -> float | None:
    """Return grams per millilitre; None for what is baked, unless it is bread in cubes: crumbs and cubes differ.

    Parameters
    ----------
    food : Food
        A food without a volume of its own.
    written : Written
        The amount; its cut tells.
    """
    if food.group in _BAKED and not (food.key.startswith(_AIRY) and written.cut in _IN_CUBES):
        return None
    return float(_groups().get(food.group, {"grams_per_ml": 1.0})["grams_per_ml"])


def is_crushed_of_flakes(food: Food, written: Written, row: Measure) -> bool:
    """Whether a line measures crumbs and the table only the flakes or chips that they are made of."""
    light = row.grams / units()[UNIT_OF[row.measure]].size < _OF_FLAKES
    baked = food.group in (*_BAKED, "grain") and food.state == "ready"
    return light and baked and written.cut in _CRUMBS and row.cut not in _CRUMBS


def handful_of(food: Food) -> float | None:
    """Return the grams of a handful, or None where nobody takes one."""
    if food.retention == LEAVES:
        return _HANDFUL_OF_LEAVES
    grams = _groups().get(food.group, {}).get("handful_grams")
    return float(grams) if grams else None
