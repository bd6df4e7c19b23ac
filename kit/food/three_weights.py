"""One ingredient as bought, edible and as eaten: three weights, and the published yields beside ours."""

from collections.abc import Sequence
from dataclasses import dataclass
from functools import cache

from kit import files
from kit.food.cells import read_rows
from kit.food.composition import Food, Foods, bundled_foods
from kit.food.cooking import volume_yield, weight_yield


@dataclass(frozen=True, slots=True)
class PublishedYield:
    """A yield printed elsewhere: cooked over raw, by weight or by volume, with its source."""

    kind: str
    low: float
    high: float
    source: str


@dataclass(frozen=True, slots=True)
class ThreeWeights:
    """Three weights of one ingredient.

    Attributes
    ----------
    food : Food
        As the recipe measures it.
    edible : float
        Its grams in the recipe. [g]
    as_bought : float
        With the inedible part. [g]
    cooked : Food or None
        Its cooked form, where the table has one.
    as_eaten : float
        Cooked, when only water is taken up or given off; otherwise the edible weight. [g]
    yields : dict of str to float
        Ours by dry matter: ``"weight"``, and ``"volume"`` where both cups are known. [-]
    published : tuple of PublishedYield
        What others print for it, or for its group.
    """

    food: Food
    edible: float
    as_bought: float
    cooked: Food | None
    as_eaten: float
    yields: dict[str, float]
    published: tuple[PublishedYield, ...]


@cache
def _yields() -> Sequence[dict[str, str]]:
    return read_rows(files.bundled("data/yields.csv"))


def published_yields(food: Food) -> tuple[PublishedYield, ...]:
    """Return the published yields of cooking a raw or dry food: its own, and those of its group."""
    rows = [row for row in _yields() if row["from_state"] == food.state and row["to_state"] == "cooked"]
    own = [row for row in rows if row["base"] and row["base"] == food.base]
    group = [row for row in rows if not row["base"] and row["group"] == food.group]
    return tuple(
        PublishedYield(row["kind"], float(row["low"]), float(row["high"]), row["source"]) for row in (*own, *group)
    )


def cooked_form(food: Food, table: Foods | None = None) -> Food | None:
    """Return what a dry food becomes when it is cooked, or None where the table has no such form.

    Only dry grains, pulses and pasta: their cooking moves water, and the dry matter stays. A raw vegetable loses solids
    too, and the table's raw and cooked rows are of different plants.
    """
    if food.state != "dry":
        return None
    forms = (bundled_foods() if table is None else table).forms(food.base)
    return next((form for form in forms if form.state == "cooked"), None)


def three_weights(food: Food, grams: float, table: Foods | None = None) -> ThreeWeights:
    """Return an ingredient as bought, edible and as eaten.

    Parameters
    ----------
    food : Food
        As the recipe measures it.
    grams : float
        Its edible grams. [g]
    table : Foods, optional
        Where its cooked form is looked up.

    Examples
    --------
    >>> lentils = three_weights(bundled_foods()["lentils-dry"], 192)
    >>> round(lentils.as_eaten), round(lentils.yields["weight"], 2)
    (567, 2.95)
    """
    cooked = cooked_form(food, table)
    yields = {}
    if cooked is not None:
        yields["weight"] = weight_yield(food, cooked)
        if food.measure("cup") and cooked.measure("cup"):
            yields["volume"] = volume_yield(food, cooked)
    raw = food.state == "raw" and food.group in ("vegetable", "fruit", "herb")
    as_bought = grams / (1 - food.refuse) if raw else grams
    as_eaten = grams * yields.get("weight", 1.0)
    return ThreeWeights(food, grams, as_bought, cooked, as_eaten, yields, published_yields(food))
