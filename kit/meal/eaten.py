"""What a dish weighs as it is eaten: dry foods have taken up water, and the oven and the pot have driven some off."""

from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache
from math import hypot

from kit import files
from kit.food.cells import read_rows
from kit.food.composition import Food
from kit.food.cooking import weight_yield
from kit.food.three_weights import cooked_form
from kit.lines.weighing import Z90, spread
from kit.meal.certainty import Range
from kit.meal.recipe import Recipe
from kit.meal.ways import DRY_FOODS, Way, is_oats, ways

_ENOUGH = 0.4  # of the water that dry food takes up when cooked soft: with as much listed, it is cooked in that
_FIRM = 0.75  # of that water, the least that food cooked firm takes up
_POURED_OFF = 3.0  # times the water that pasta takes up: what is more is poured off
_WET = 50.0  # g of water in 100 g; drier food loses little
_NOTHING_LOST = (1.0, 1.0, 1.0)
_PLAIN_GROUPS = ("oil", "nut", "seed", "spice", "sweetener", "baking", "snack")


@dataclass(frozen=True, slots=True)
class _Water:
    """Water about the dry foods of a dish. [g]

    Attributes
    ----------
    soaked : float
        Which part of the listed liquid they take up. [fraction]
    added : tuple of float
        What comes from the tap: the least, the likely and the most.
    """

    soaked: float
    added: tuple[float, float, float]


def eaten_grams(recipe: Recipe) -> Range:
    """Return the weight of the whole dish as it is eaten, with its 90 % range. [g]

    The weight of the finished dish is taken where the cook gave it. Otherwise it is estimated: dry grains, pasta and
    pulses take up the liquid that the recipe lists, and water from the tap where it lists none; roasting, frying and
    simmering drive water off, by `data/cooking_yields.csv`.

    Parameters
    ----------
    recipe : Recipe
        The dish.

    Returns
    -------
    Range
        Value and range; equal where every part is eaten as it was weighed.

    References
    ----------
    Uptake conserves dry matter: FAO/INFOODS, "Guidelines for Food Matching", version 1.2, Rome, 2012. Losses: the
    sources of `data/cooking_yields.csv`. Weighing the finished pot is common practice.

    Examples
    --------
    >>> from kit.meal.recipe import recipe
    >>> oats = recipe("Oats", ["1 cup rolled oats", "1 1/8 cups whole milk"])
    >>> round(eaten_grams(oats).value) == round(float(oats.grams.sum()))
    True
    """
    if recipe.finished_grams is not None:
        half = Z90 * spread("weighed") * recipe.finished_grams
        return Range(recipe.finished_grams, recipe.finished_grams - half, recipe.finished_grams + half)
    recipe = _without_pasta_water(recipe)
    cooked = ways(recipe.title, recipe.ingredients)
    water = _water(recipe, cooked)
    dough = any(way.because == "flour and what makes it rise" for way in cooked)
    ends = [0.0, 0.0, 0.0]
    for part, way in zip(recipe.ingredients, cooked, strict=True):
        in_dry_food = water.soaked if _is_liquid(part.food) else 0.0
        for end, kept in enumerate(_kept(part.food, way, dough)):
            ends[end] += part.grams * (in_dry_food + (1 - in_dry_food) * kept)
    low, value, high = (end + more for end, more in zip(ends, water.added, strict=True))
    amounts = Z90 * hypot(*(part.grams * part.relative_sd for part in recipe.ingredients))
    return Range(value, max(0.0, value - hypot(value - low, amounts)), value + hypot(high - value, amounts))


def _without_pasta_water(recipe: Recipe) -> Recipe:
    """Return the recipe with no more listed water than its pasta takes up, where it lists a potful to boil it in."""
    pasta = sum(part.grams * (taken_up(part.food) - 1) for part in recipe.ingredients if part.food.group == "pasta")
    plain = sum(part.grams for part in recipe.ingredients if part.food.key == "water")
    if pasta <= 0 or plain <= _POURED_OFF * pasta:
        return recipe
    left = [part.grams * (pasta / plain if part.food.key == "water" else 1.0) for part in recipe.ingredients]
    return recipe.with_grams(left)


def _water(recipe: Recipe, cooked: tuple[Way, ...]) -> _Water:
    parts = recipe.ingredients
    uptake = [part.grams * (taken_up(part.food) - 1) for part in parts]
    oats = sum(water for part, water in zip(parts, uptake, strict=True) if is_oats(part.food))
    listed = sum(part.grams * part.food["water"] / 100 for part in parts if _is_liquid(part.food))
    if any(part.food.reference == "flour" for part in parts):  # a dough or a crumble: its oats are not cooked soft
        oats_at_most, wanted = 0.0, sum(uptake) - oats
    else:
        oats_at_most, wanted = oats, sum(uptake)
    if wanted > 0 and listed >= _ENOUGH * wanted:
        return _Water(min(1.0, wanted / listed), (0.0, 0.0, 0.0))
    toasted = any(way.name in ("baked", "raw") for part, way in zip(parts, cooked, strict=True) if is_oats(part.food))
    likely = wanted - oats_at_most if toasted else wanted
    most = likely if toasted and listed <= 0 else wanted
    return _Water(0.0, (_FIRM * (wanted - oats_at_most), likely, most))


def _is_liquid(food: Food) -> bool:
    """Whether dry food can be cooked in a food: water, stock, a drink, milk of any kind."""
    return food.group in ("beverage", "stock") or ("milk" in food.key and food["water"] > _WET)


@cache
def _yields() -> Mapping[tuple[str, str], tuple[float, float, float]]:
    return {
        (row["group"], row["way"]): (float(row["low"]), float(row["likely"]), float(row["high"]))
        for row in read_rows(files.bundled("data/cooking_yields.csv"))
    }


def _kept(food: Food, way: Way, dough: bool) -> tuple[float, float, float]:
    """Return what is left of 1 g after cooking: the least, the likely and the most."""
    if dough and way.name in ("baked", "fried"):
        return _yields()["dough", way.name]
    if way.name == "raw" or food.group in _PLAIN_GROUPS or not food["water"] > _WET:
        return _NOTHING_LOST
    if way.name == "":
        return _either(food, way)
    fresh = food.state in ("raw", "frozen")
    own = _yields().get((food.group, way.name)) if fresh else None
    return own or _yields()["", way.name]


def _either(food: Food, way: Way) -> tuple[float, float, float]:
    """Return what is left where the way is not known: anything from the least of one to the most of another."""
    if food.state not in ("raw", "frozen"):
        return _NOTHING_LOST
    found = [kept for (group, _), kept in _yields().items() if group == food.group]
    if not found:
        return _NOTHING_LOST
    lows, likely, highs = zip(*found, strict=True)
    most = 1.0 if way.eaten_raw else max(highs)
    middle = sum(likely) / len(likely)
    return min(lows), (middle + 1) / 2 if way.eaten_raw else middle, most


@cache
def taken_up(food: Food) -> float:
    """Return the cooked weight of 1 g of a dry food whose cooked form the table has, else 1."""
    if food.group not in DRY_FOODS:
        return 1.0
    cooked = cooked_form(food)
    return weight_yield(food, cooked) if cooked else 1.0
