"""How much of another food takes an ingredient's place: cup for cup, piece by weight, dry as what it becomes."""

from dataclasses import replace

from kit.food.composition import Food, Foods
from kit.food.cooking import drained_share, weight_yield
from kit.food.measures import unit
from kit.food.three_weights import cooked_form
from kit.lines.nearest_measure import SIZES, VOLUMES
from kit.meal.recipe import Ingredient

_VOLUME_NOUNS = (*VOLUMES, "pinch", "dash")
_CANNED = ("canned", "drained", "rinsed")
_READY = ("cooked", *_CANNED)  # states that a dry food comes into by cooking
_DRIED_HERB = 1 / 3  # of the volume of the fresh leaves: common practice


def in_place_of(old: Ingredient, other: Food, grams: float | None = None) -> Ingredient:
    """Return an ingredient with another food in its place.

    Parameters
    ----------
    old : Ingredient
        What is there.
    other : Food
        What takes its place.
    grams : float, optional
        How much of it. By default as much of the same measure where both foods have it ("a cup for a cup"), otherwise
        the same weight; of a food that is ready to eat as much as the dry one becomes, and the other way round; of a
        dried herb a third of the volume of the fresh one (common practice). [g]

    Examples
    --------
    >>> from kit.food.composition import foods
    >>> from kit.meal.recipe import recipe
    >>> milk = recipe("Oats", ["2 cups milk"]).ingredients[0]
    >>> in_place_of(milk, foods()["soy-milk"]).grams
    486.0
    """
    if (
        old.noun.endswith("-inch") and other.group == old.food.group
    ):  # an 8-inch tortilla is replaced by another one, of whatever size
        old = replace(old, noun="piece")
    if grams is None:
        cooked = _as_it_becomes(old, other)
        if cooked is not None:
            return cooked
    each, cut, by_measure = _each(old, other)
    new = old.count * each if grams is None else grams
    how = in_place_of_words(old.food) + ("" if by_measure or grams is not None else ", by weight")
    if grams is None and _dried_for_fresh(old.food, other):
        new, how = new * _DRIED_HERB, f"{how}, a third of the fresh leaves (common practice)"
    elif grams is None and _dried_for_fresh(other, old.food):
        new, how = new / _DRIED_HERB, f"{how}, three times the dried leaves (common practice)"
    same_cans = old.container and other.state in _CANNED
    if grams is None and not by_measure and unit(old.noun) is None and not same_cans:
        return _in_own_measure(old, other, new, how)
    return _other_food(old, other, new, each, cut, how)


def in_place_of_words(food: Food) -> str:
    """Return the words that say whose place was taken."""
    return f"in place of {food.name}"


def _each(old: Ingredient, other: Food) -> tuple[float, str, bool]:
    """Return the grams of one measure of the other food, its cut, and whether it is the same measure."""
    row = None if old.noun in SIZES else other.measure(old.noun, cut=old.cut) or other.measure(old.noun)
    if row is not None:
        return row.grams, row.cut, True
    if old.noun in _VOLUME_NOUNS:
        row = other.measure(*VOLUMES)
        own = old.food.measure(row.measure) if row else None
        if row and own:
            return old.noun_grams * row.grams / own.grams, row.cut, True
    return old.noun_grams, "", False


def _other_food(old: Ingredient, other: Food, grams: float, each: float, cut: str, how: str) -> Ingredient:
    return replace(
        old,
        food=other,
        grams=grams,
        noun_grams=each,
        cut=cut,
        line=other.name,
        treatment="",
        how=how,
        slider=None,
    )


def _dried_for_fresh(fresh: Food, dried: Food) -> bool:
    return fresh.group == "herb" and dried.group == "spice" and dried.state == "dried"


def _as_it_becomes(old: Ingredient, other: Food) -> Ingredient | None:
    """Return as much of a cooked food as the dry one makes, or of a dry food as makes the cooked one."""
    if old.food.state == "dry" and other.state in _READY:
        made = cooked_form(old.food)
        if made is None:
            return None
        grams = _same_volume(old.grams * weight_yield(old.food, made), made, other)
        return _in_cups(old, other, grams, f"{in_place_of_words(old.food)}, as much as it makes when it is cooked")
    if old.food.state in _READY and other.state == "dry":
        made = cooked_form(other)
        if made is None:
            return None
        grams = _same_volume(old.grams, old.food, made) / weight_yield(other, made)
        return _in_cups(old, other, grams, f"{in_place_of_words(old.food)}, as much as makes it when cooked")
    return None


def _same_volume(grams: float, food: Food, other: Food) -> float:
    cups = food.measure("cup"), other.measure("cup")
    return grams * cups[1].grams / cups[0].grams if cups[0] and cups[1] else grams


def _in_own_measure(old: Ingredient, other: Food, grams: float, how: str) -> Ingredient:
    """Return a weight of a food in a measure of its own: there is no clove of shallots, and no can of cooked beans."""
    row = other.measure(old.noun) if old.noun in SIZES else None
    if row is None:
        return _in_cups(old, other, grams, how)
    return _other_food(old, other, grams, row.grams, row.cut, how)


def _in_cups(old: Ingredient, other: Food, grams: float, how: str) -> Ingredient:
    row = other.measure("cup")
    new = _other_food(old, other, grams, row.grams if row else 1.0, row.cut if row else "", how)
    return replace(new, noun="cup" if row else "g", container="")


def poured_off(old: Ingredient, form: Food, table: Foods) -> float:
    """Return the grams of a canned food's drained, rinsed or undrained form that the same cans hold. [g]"""
    share, _ = drained_share(form if form.state != "canned" else old.food, table)
    if old.food.state == "canned":
        return old.grams * share
    return old.grams / share if form.state == "canned" else old.grams
