"""Whose place in a recipe a food would take, and which ingredient some words want in another form."""

import re
from collections.abc import Iterable, Mapping
from functools import cache

from kit import files
from kit.errors import ChangeError
from kit.food.cells import read_rows
from kit.food.composition import Food, Foods
from kit.food.names import short_name
from kit.food.vocabulary import words
from kit.lines.known_names import kind_of
from kit.lines.reader import read
from kit.meal.change_foods import MEATS, belongs
from kit.meal.ingredient_names import ingredients_called
from kit.meal.recipe import Recipe
from kit.texts import listing

_PLAIN = frozenset("regular plain normal ordinary usual".split())
_KIND = re.compile(r"(?:whole|low|reduced|fat|light|part)-?\w*|skim|nonfat|unsalted", re.IGNORECASE)
# Groups of reference amounts (21 CFR 101.12) whose foods do the same work in a dish: common practice.
_SAME_WORK = (
    {"grain_dry", "grain_prepared", "pasta_dry", "pasta_prepared", "hot_cereal", "hot_cereal_dry"},
    {"beans_canned", "beans_dry", "beans_prepared"},
    {"meat_raw", "meat_cooked", "meat_canned", "fish_raw", "fish_cooked", "fish_canned", "tofu_tempeh"},
    {"cheese", "cottage_cheese", "grated_hard_cheese", "ricotta"},
    {"cream", "half_and_half", "sour_cream", "yogurt"},
    {"milk", "evaporated_milk", "juice_beverage"},
    {"nuts_seeds"},
    {"nut_butter"},
    {"butter_oil"},
    {"sugar", "honey_jam", "syrup", "powdered_sugar"},
    {"fruit", "fruit_ingredient"},
    {"dried_fruit"},
    {"lemon_juice"},
    {"flour", "nut_flour"},
    {"soup"},
    {"bread", "tortilla_biscuit", "bagel_muffin"},
    {"sausage", "bacon_raw", "bacon_cooked"},
    {"olives", "pickles"},
    {"vegetable_garnish"},
)


def refined(text: str, recipe: Recipe, table: Foods) -> tuple[int, str] | None:
    """Return the ingredient that some words want in another form, and the words for that form.

    "Low-sodium broth" means the chicken broth of the recipe with less sodium, "brown rice" its rice, "fresh tomatoes"
    its tomatoes: the last words name one ingredient, those before say how else it should be.
    """
    said = text.split()
    for split in range(1, len(said)):
        places = ingredients_called(" ".join(said[split:]), recipe).places
        if len(places) != 1:
            continue
        part = recipe.ingredients[places[0]]
        thing = short_name(part.food)
        if _is_more_than_it(text, thing) and set(words(text)) <= {*words(part.line), *words(part.food.name)}:
            return places[0], part.food.name  # "low-sodium broth", as it is
        ahead = " ".join(said[:split])
        for wish in (text, f"{ahead} {_without_kind(thing) if ahead in _PLAIN else thing}"):
            reading = read(f"100 g {wish}", table=table)
            food = None if reading.problem else reading.food
            if food is None or _names_another(food, {*words(text), *words(part.line), *words(part.food.name)}):
                continue
            alike = part.food.base == food.base or part.food.group == food.group or does_same_work(food, part.food)
            if not alike:
                break  # "whole milk" is no kind of coconut milk
            if all(belongs(word, food, table) for word in words(wish)):
                return places[0], wish
    return None


def _without_kind(thing: str) -> str:
    """Return a name without its words for whole grain, little fat or little salt: what the regular kind is called."""
    return " ".join(word for word in thing.split() if not _KIND.fullmatch(word))


def _is_more_than_it(text: str, thing: str) -> bool:
    """Whether some words say how a thing should be, rather than only naming it."""
    return not set(words(text)) <= set(words(thing))


def _names_another(food: Food, said: set[str]) -> bool:
    """Whether a food is of a thing that nobody named: chicken in the broth where it was of vegetables."""
    return any(kind_of(word) == "food" and word not in said for word in words(food.name.split(",")[0]))


def takes_place_of(food: Food, recipe: Recipe) -> tuple[int, ...]:
    """Return the ingredients whose place a food would take: the nearest in kind, several where several are as near."""
    parts = [(at, part) for at, part in enumerate(recipe.ingredients) if part.grams > 0]
    head = words(short_name(food))[-1:]
    nearness = (
        lambda part: food.key in part.swaps,
        lambda part: bool(food.base) and part.food.base == food.base,
        lambda part: words(short_name(part.food))[-1:] == head and does_same_work(food, part.food),
        lambda part: _alike(food) is not None and _alike(part.food) == _alike(food),
        lambda part: words(short_name(part.food))[-1:] == head and part.food.group == food.group,
        lambda part: part.food.group == food.group and does_same_work(food, part.food),
        lambda part: does_same_work(food, part.food),
    )
    for near in nearness:
        found = tuple(at for at, part in parts if near(part))
        if found:
            return found
    return ()


def does_same_work(food: Food, other: Food) -> bool:
    """Whether two foods do the same work in a dish, by the groups of their reference amounts."""
    return any({food.reference, other.reference} <= work for work in _SAME_WORK)


def same_kind(food: Food, other: Food) -> bool:
    """Return whether two foods are of one group, or meat and poultry."""
    return food.group == other.group or {food.group, other.group} <= MEATS


@cache
def _families() -> Mapping[str, str]:
    return {row["base"]: row["family"] for row in read_rows(files.bundled("data/alike.csv"))}


def _alike(food: Food) -> str | None:
    return _families().get(food.base)


def instead_of_what(text: str, places: Iterable[int], recipe: Recipe, amount: str = "") -> ChangeError:
    """Return the question which ingredient a food should take the place of."""
    names = [short_name(recipe.ingredients[at].food) for at in places]
    what = f"{amount} {text}".strip()
    choices = [f"{what} instead of the {name}" for name in names]
    if amount:
        choices.append(f"add {what}")
    told = f" ({listing(names, 'or')})" if names else ""
    return ChangeError(
        f'"{text}" instead of what{told}? write for instance "{text} instead of the '
        f'{names[0] if names else "..."}", or "add" and how much',
        choices,
    )
