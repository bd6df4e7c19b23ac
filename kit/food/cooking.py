"""As bought, edible, as eaten: what peeling, draining and cooking do to a weight and to what is in it."""

from collections.abc import Mapping
from functools import cache, lru_cache

import numpy as np
from numpy.typing import NDArray

from kit import files
from kit.errors import AmountError, UnknownNameError
from kit.food.cells import read_rows
from kit.food.composition import Food, Foods, bundled_foods
from kit.food.nutrients import nutrients

WAYS = ("raw", "boiled", "baked", "fried", "stewed")


def edible_grams(as_bought: float, refuse: float) -> float:
    """Return the edible part of a weight as bought.

    Parameters
    ----------
    as_bought : float
        Weight as bought. [g]
    refuse : float
        Inedible fraction, from 0 to below 1.

    Raises
    ------
    AmountError
        If the fraction cannot be one.

    Examples
    --------
    >>> edible_grams(1000, 0.36)
    640.0
    """
    if not 0 <= refuse < 1:
        raise AmountError(f"refuse is {refuse:g}; give a fraction from 0 to below 1, such as 0.36")
    return as_bought * (1 - refuse)


def weight_yield(raw: Food, cooked: Food) -> float:
    """Return the cooked weight of 1 g raw, from the dry matter that cooking in water conserves.

    Both foods need a water value. What leaches into discarded water makes the real yield of a drained food
    a little lower.

    Raises
    ------
    AmountError
        If a water value is missing, or nothing dry would be left.

    References
    ----------
    FAO/INFOODS, "Guidelines for Food Matching", version 1.2, Rome, 2012 (the "mixed" recipe method); the
    conservation of dry matter itself is common practice.
    """
    dry = [100 - food["water"] for food in (raw, cooked)]
    if not all(part > 0 for part in dry):  # false for NaN too
        raise AmountError(
            f'"{raw.key}" to "{cooked.key}": a water value is missing or 100 g; choose foods whose water is known'
        )
    return dry[0] / dry[1]


def volume_yield(raw: Food, cooked: Food) -> float:
    """Return how many cups a cup of the raw food makes, from the weight yield and the two cup weights.

    Raises
    ------
    AmountError
        If a food has no weight for a cup.
    """
    cups = []
    for food in (raw, cooked):
        row = food.measure("cup")
        if row is None:
            raise AmountError(f'"{food.key}" has no weight for a cup; give one in measures.csv')
        cups.append(row.grams)
    return weight_yield(raw, cooked) * cups[0] / cups[1]


def drained_share(drained: Food, table: Foods | None = None) -> tuple[float, str]:
    """Return the drained part of a can's net weight, and where the figure is from.

    Parameters
    ----------
    drained : Food
        A food that the can holds, best in its form without the liquid: state ``drained`` or ``rinsed``.
    table : Foods, optional
        Where the forms of the food are looked up.
    """
    forms = (bundled_foods() if table is None else table).forms(drained.base)
    whole = next((row for food in forms if food.state == "canned" if (row := food.measure("can"))), None)
    poured_off = [food for food in (drained, *forms) if food.state in ("drained", "rinsed")]
    solid = next((row for food in poured_off if (row := food.measure("can"))), None)
    if whole and solid and whole.source.startswith("SR26") and solid.source.startswith("SR26"):
        return solid.grams / whole.grams, f"{solid.grams:g} g of a {whole.grams:g} g can, SR26"
    shares = _drained_shares()
    own = [food.key for food in (drained, *forms) if food.key in shares]
    return shares.get(own[0] if own else drained.group, shares[""])


@cache
def _drained_shares() -> Mapping[str, tuple[float, str]]:
    """Return the drained part of a can by food, else by group, else of any, with the source."""
    return {
        row["food"] or row["group"]: (float(row["share"]), row["source"])
        for row in read_rows(files.bundled("data/drained_shares.csv"))
    }


@cache
def _retention_table() -> Mapping[str, Mapping[str, str]]:
    return {row["code"]: row for row in read_rows(files.bundled("data/retention_factors.csv"))}


def treatments(family: str = "") -> Mapping[str, str]:
    """Return the ways of cooking that have published retention factors: code and words, of one family or of all."""
    return {code: row["treatment"] for code, row in _retention_table().items() if family in ("", row["family"])}


def retention(code: str) -> NDArray[np.float64]:
    """Return the fraction of each nutrient that stays in the food when it is cooked.

    Parameters
    ----------
    code : str
        A treatment's code, see `treatments`.

    Returns
    -------
    numpy.ndarray, shape (n_nutrients,)
        Fractions; 1 where the source has no factor (energy, protein, fat, carbohydrate, fiber).

    Raises
    ------
    UnknownNameError
        If there is no such treatment.

    References
    ----------
    USDA Table of Nutrient Retention Factors, Release 6, 2007. Good to about 30 % for vitamins: use a cooked food
    where the table has one, and never use a factor on a food that is cooked already.
    """
    try:
        row = _retention_table()[code]
    except KeyError:
        raise UnknownNameError("cooking treatment", code, _retention_table()) from None
    return np.array([float(row.get(name) or 100) / 100 for name in nutrients()])


@cache
def _codes_of_ways() -> Mapping[tuple[str, str], str]:
    rows = read_rows(files.bundled("data/retention_ways.csv"))
    return {(row["family"], row["way"]): row["code"] for row in rows}


_OTHER_VITAMINS = ("thiamin", "riboflavin", "niacin", "folate", "choline")
_FRESH = ("raw", "dry", "frozen")
_COOKED_OR_RAW = ("vegetable", "fruit", "meat", "poultry", "fish", "shellfish", "egg", "pulse", "grain", "pasta", "soy")


@cache
def vitamins_that_cooking_takes() -> frozenset[str]:
    """Return the vitamins of which some treatment leaves less than all."""
    vitamins = {name for name in nutrients() if name.startswith("vitamin_") or name in _OTHER_VITAMINS}
    return frozenset(
        name for name in vitamins if any(float(row.get(name) or 100) < 100 for row in _retention_table().values())
    )


def is_loss_known(food: Food, treatment: str) -> bool:
    """Whether it is known what a food loses in a treatment or a way of cooking.

    Cooked foods, and what no cooking changes, lose nothing more; of a fresh one it has to be known how it is cooked,
    and a factor has to be published for that.

    Examples
    --------
    >>> carrots = bundled_foods()["carrots-raw"]
    >>> is_loss_known(carrots, "boiled"), is_loss_known(carrots, "raw"), is_loss_known(carrots, "")
    (True, True, False)
    """
    if food.state not in _FRESH or food.group not in _COOKED_OR_RAW or treatment == "raw":
        return True
    return treatment in _retention_table() or (food.retention, treatment) in _codes_of_ways()


@lru_cache(maxsize=4_096)
def most_lost(food: Food, treatment: str) -> NDArray[np.float64]:
    """Return the most of each nutrient that cooking may have taken where nobody knows how much, in fractions.

    That is the loss in the way that leaves least of it in the food's family; in any family, for one of which nothing
    is published.

    Parameters
    ----------
    food : Food
        The food.
    treatment : str
        As in `is_loss_known`; where the loss is known there is no more to lose.

    Returns
    -------
    numpy.ndarray, shape (n_nutrients,)
        Fractions; 0 throughout where the loss is known, and for what cooking does not take.

    Examples
    --------
    >>> carrots, at = bundled_foods()["carrots-raw"], list(nutrients()).index("vitamin_c")
    >>> round(float(most_lost(carrots, "")[at]), 2), float(most_lost(carrots, "boiled")[at])
    (0.3, 0.0)
    """
    if is_loss_known(food, treatment):
        return np.zeros(len(nutrients()))
    codes = [code for (family, _), code in _codes_of_ways().items() if family == food.retention]
    kept = [retention(code) for code in codes or _codes_of_ways().values()]
    taken = np.array([name in vitamins_that_cooking_takes() for name in nutrients()])
    return np.where(taken, 1 - np.min(kept, axis=0), 0.0)


def kept_when(food: Food, treatment: str) -> NDArray[np.float64]:
    """Return the fraction of each nutrient that a food keeps in a treatment, or in a way of cooking.

    Parameters
    ----------
    food : Food
        The food; one that is cooked already keeps all.
    treatment : str
        A treatment's code, see `treatments`; one of `WAYS`, for that of the food's family; or empty.

    Returns
    -------
    numpy.ndarray, shape (n_nutrients,)
        Fractions; 1 throughout where nothing is published for that family and way.

    Examples
    --------
    >>> carrots = bundled_foods()["carrots-raw"]
    >>> round(float(kept_when(carrots, "baked")[list(nutrients()).index("vitamin_c")]), 2)
    0.75
    """
    code = _codes_of_ways().get((food.retention, treatment), "") if treatment in WAYS else treatment
    return retention(code) if code else np.ones(len(nutrients()))
