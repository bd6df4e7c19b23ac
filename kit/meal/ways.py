"""How each ingredient of a dish is cooked: as the cook said, or worked out from what it is, with the reason."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from functools import cache
from typing import Protocol

from kit import files
from kit.food.cells import read_rows
from kit.food.composition import Food
from kit.food.cooking import WAYS
from kit.food.vocabulary import words

DRY_FOODS = ("grain", "pasta", "pulse")  # groups whose dry foods are cooked in water unless the dish says more
_COOKED_FOODS = ("meat", "poultry", "fish", "shellfish", "egg", "grain", "pasta", "pulse")
_PLANTS = ("vegetable", "soy")  # raw in one dish, cooked in another
_POURED = ("beverage", "stock")
_FRESH = ("raw", "dry", "frozen")
_MUCH_LIQUID = 0.2  # of the listed weight: more than a splash for the pan
_MUCH_FLOUR = 0.08


@dataclass(frozen=True, slots=True)
class Way:
    """A way of cooking.

    Attributes
    ----------
    name : str
        One of `WAYS`; empty where it is not known.
    because : str
        Why that one is taken, in words for people.
    stated : bool
        Whether the cook said so herself.
    eaten_raw : bool
        Whether the food may as well be raw in this dish.
    """

    name: str
    because: str
    stated: bool = False
    eaten_raw: bool = False


@dataclass(frozen=True, slots=True)
class Mixture:
    """What a dish is as it was written, by which it is worked out how it is cooked, whatever is changed in it later.

    Attributes
    ----------
    much_liquid : bool
        Whether stock or water is more than a splash.
    dough : bool
        Whether it is a dough or a batter.
    """

    much_liquid: bool
    dough: bool


class Cooked(Protocol):
    """What is asked of an ingredient here."""

    @property
    def food(self) -> Food:
        """The food."""

    @property
    def grams(self) -> float:
        """Its grams in the recipe. [g]"""

    @property
    def line(self) -> str:
        """The line of the recipe."""

    @property
    def part(self) -> str:
        """The part of the recipe it belongs to."""

    @property
    def treatment(self) -> str:
        """How the cook said that it is cooked: one of `kit.food.cooking.WAYS`, or another word."""


def mixture_of(ingredients: Sequence[Cooked]) -> Mixture:
    """Return what a dish of these ingredients is."""
    return Mixture(_much_liquid(ingredients), _is_dough(ingredients))


def ways(title: str, ingredients: Sequence[Cooked], mixture: Mixture | None = None) -> tuple[Way, ...]:
    """Return the way of cooking of each ingredient of a dish.

    Parameters
    ----------
    title : str
        The dish's title, whose words tell much: "roast", "soup", "salad".
    ingredients : sequence of Cooked
        The ingredients.
    mixture : Mixture, optional
        What the dish is; by its ingredients where that is not given.

    Examples
    --------
    >>> from kit.meal.recipe import recipe
    >>> soup = recipe("Carrot soup", ["4 carrots", "2 cups water"])
    >>> [way.name for way in ways(soup.title, soup.ingredients)]
    ['stewed', 'stewed']
    """
    mixture = mixture or mixture_of(ingredients)
    return tuple(_way(title, each, mixture.much_liquid, mixture.dough) for each in ingredients)


def _way(title: str, each: Cooked, much_liquid: bool, dough: bool) -> Way:
    if each.treatment in WAYS:
        return Way(each.treatment, "stated by the cook", stated=True)
    for text, where in ((each.line, "its line"), (each.part, "its part of the recipe")):
        word, way = _told(text)
        if way and not (way == "raw" and _is_cooked_food(each.food)):
            return Way(way, f'"{word}" in {where}')
    if any(word in _words_of("food") for word in words(each.food.name)) or _needs_no_cooking(each.food):
        return Way("raw", "eaten as it is")
    word, way = _told(title)
    if way in ("baked", "raw") and is_oats(each.food):  # granola, muesli
        return Way(way, f'"{word}" in the title')
    if way and way != "raw":
        if way in ("baked", "fried") and each.food.state == "dry" and each.food.group in DRY_FOODS and not dough:
            return Way("boiled", "a dry food is boiled first")
        return Way(way, f'"{word}" in the title')
    if each.food.state == "dry" and each.food.group in DRY_FOODS and not dough:
        return Way("stewed" if much_liquid else "boiled", "a dry food is cooked in water")
    if dough:
        return Way("baked", "flour and what makes it rise")
    if _is_cooked_food(each.food):
        return Way("stewed", "much liquid") if much_liquid else Way("", "cooked, but how is not said")
    if way:
        return Way("raw", f'"{word}" in the title')
    if much_liquid:
        return Way("stewed", "much liquid")
    return Way("", "raw or cooked is not said", eaten_raw=True)


def is_oats(food: Food) -> bool:
    """Whether a dry food is also eaten without having been cooked soft."""
    return food.state == "dry" and food.group == "grain" and "oats" in food.base


def _told(text: str) -> tuple[str, str]:
    """Return the last word of a text that names a way, and that way; after "with" only where none stands before it."""
    known = _words_of("title")
    before, _, after = f" {text.lower()} ".partition(" with ")
    for half in (before, after):
        found = [word for word in words(half) if word in known]
        if found:
            return found[-1], known[found[-1]]
    return "", ""


@cache
def _words_of(kind: str) -> Mapping[str, str]:
    rows = read_rows(files.bundled("data/cooking_words.csv"))
    return {words(row["word"])[0]: row["way"] for row in rows if row["of"] == kind}


def _is_cooked_food(food: Food) -> bool:
    """Whether a food is never served as it stands in the table: raw meat, dry rice, raw potatoes."""
    return food.state in _FRESH and (food.group in _COOKED_FOODS or "potato" in food.name.lower())


def _needs_no_cooking(food: Food) -> bool:
    return food.group in ("herb", "nut", "seed", "snack", "sweetener") and food.state != "dry"


def _much_liquid(ingredients: Sequence[Cooked]) -> bool:
    total = sum(each.grams for each in ingredients)
    poured = sum(each.grams for each in ingredients if each.food.group == "stock" or each.food.key == "water")
    return total > 0 and poured > _MUCH_LIQUID * total


def _is_dough(ingredients: Sequence[Cooked]) -> bool:
    """Whether a dish is a dough or batter: much flour, and egg or something that makes it rise."""
    total = sum(each.grams for each in ingredients)
    flour = sum(each.grams for each in ingredients if each.food.reference == "flour")
    rises = any(
        each.food.reference == "leavening" or each.food.group == "egg" or "yeast" in each.food.key
        for each in ingredients
    )
    return rises and total > 0 and flour > _MUCH_FLOUR * total
