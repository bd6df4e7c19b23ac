"""Whether a release that was read can be one: a store of nonsense never takes the place of a good one."""

import sqlite3

import numpy as np

from kit.errors import ReleaseError
from kit.food.nutrients import nutrient_index, nutrients
from kit.texts import number, percent

HEAVIEST_MEASURE = 20_000.0  # of one household measure: a whole turkey weighs 10 kg [g]
_MOST_KCAL = 930.0  # in 100 g: pure fat has 902 (USDA Agriculture Handbook 74), and some room
_MOST_GRAMS = 105.0  # in 100 g, with the room that analysis leaves
_GRAMS_PER = {"g": 1.0, "mg": 1e-3, "µg": 1e-6}
_MOST_OUT = 0.02  # of the foods: more than this is no slip but another unit, or another table


def refuse_the_absurd(rows: sqlite3.Connection) -> None:
    """Raise when a filled store holds no foods, or figures that no table of foods has.

    Raises
    ------
    ReleaseError
        With what is wrong; the earlier import is then kept.
    """
    foods = rows.execute("SELECT name, per_100g FROM food").fetchall()
    if not foods:
        raise ReleaseError(
            "the release holds no food with a nutrient that the kit uses; give the whole unpacked release"
            " (what was imported before is kept)"
        )
    per_100g = np.array([np.frombuffer(content, "<f8") for _, content in foods])
    most = np.array([_MOST_GRAMS / _GRAMS_PER.get(about.unit, np.nan) for about in nutrients().values()])
    most[nutrient_index("energy")] = _MOST_KCAL
    out = (per_100g > most).any(axis=1)
    if out.mean() > _MOST_OUT:
        first = int(np.flatnonzero(out)[0])
        at = int(np.flatnonzero(per_100g[first] > most)[0])
        about = list(nutrients().values())[at]
        raise ReleaseError(
            f'{percent(out.mean())} of the foods hold more than 100 g can hold, such as "{foods[first][0]}" with'
            f" {number(per_100g[first, at])} {about.unit} of {about.name.lower()}; check that amounts are per 100 g and"
            " in the units of nutrient.csv (what was imported before is kept)"
        )
