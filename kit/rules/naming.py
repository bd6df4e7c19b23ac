"""Foods, nutrients and measures under the names that people say."""

import re
from collections.abc import Collection
from functools import cache

from kit.errors import UnknownNameError
from kit.food.composition import Food
from kit.food.finding import food as food_by_key
from kit.food.measures import unit
from kit.food.names import lowered, short_name
from kit.food.nutrients import nutrient
from kit.food.vocabulary import singular, words
from kit.meal.recipe import Recipe

_STATES = ("dry", "cooked", "raw", "dried", "fresh", "canned", "frozen", "boiled", "baked", "roasted", "ground")


@cache
def said(name: str) -> str:
    """Return a nutrient the way it is said.

    Examples
    --------
    >>> said("vitamin_a"), said("saturated_fat"), said("energy")
    ('vitamin A', 'saturated fat', 'energy')
    """
    text = re.sub(r"\s*\([^)]*\)", "", nutrient(name).name)
    return text[:1].lower() + text[1:]


def thing_said(name: str) -> str:
    """Return what is counted, as in "grams of sugar" and "low in calories".

    Examples
    --------
    >>> thing_said("sugars"), thing_said("energy"), thing_said("iron")
    ('sugar', 'calories', 'iron')
    """
    return {"energy": "calories", "sugars": "sugar"}.get(name) or said(name)


def measure_said(measure: str) -> str:
    """Return a measure as it is said: the full name of a unit, any other measure as it is.

    Examples
    --------
    >>> measure_said("tbsp"), measure_said("fl oz"), measure_said("slice")
    ('tablespoon', 'fluid ounce', 'slice')
    """
    known = unit(measure)
    return measure if known is None else known.name.replace("_", " ")


@cache
def full_name(food: Food) -> str:
    """Return a food's name with its state before it, as a comparison needs it.

    Examples
    --------
    >>> from kit.food.composition import foods
    >>> full_name(foods()["lentils-boiled"]), full_name(foods()["rice-white-boiled"])
    ('cooked lentils', 'cooked white rice')
    """
    pieces = [piece.strip() for piece in re.sub(r"\s*\([^)]*\)", "", food.name).split(",")]
    states = [piece for piece in pieces[1:] if piece in _STATES and not pieces[0].lower().startswith(piece)]
    return " ".join([*states, lowered(pieces[0])])


def is_plural(name: str) -> bool:
    """Return whether a name takes a plural verb.

    Examples
    --------
    >>> is_plural("lentils"), is_plural("white rice"), is_plural("asparagus")
    (True, False, False)
    """
    last = name.split(" ")[-1].lower()
    return last not in ("hummus", "couscous", "molasses") and singular(last) != last


def names_food(sentence: str, food: Food) -> bool:
    """Return whether a sentence names a food by any of its names, or by the word that says what it is.

    Examples
    --------
    >>> from kit.food.composition import foods
    >>> names_food("The lentils in it are high in fiber.", foods()["lentils-dry"])
    True
    >>> names_food("It is high in fiber.", foods()["lentils-dry"])
    False
    """
    spoken = set(words(sentence))
    return any(set(words(name)) <= spoken for name in _names(food))


@cache
def _names(food: Food) -> tuple[str, ...]:
    short = short_name(food)
    parts = [part for word in short.split(" ") for part in word.split("-")]
    heads = [parts[-1]] if parts[-1] not in ("cheese", "oil", "juice", "flour", "sauce", "milk", "seeds") else parts[:1]
    return (short, *heads, *food.other_names)


def food_called(key: str, recipe: Recipe) -> Food:
    """Return a food by key; one of the recipe's own, such as a package label's, before the table's.

    Raises
    ------
    UnknownNameError
        If there is none; the nearest key is offered.
    """
    for part in recipe.ingredients:
        if part.food.key == key:
            return part.food
    return food_by_key(key)


def ingredient_called(name: str, recipe: Recipe) -> int:
    """Return the place of the ingredient that a key, or words fitting one food only, stand for.

    Raises
    ------
    UnknownNameError
        If the recipe has none, or several fit.

    Examples
    --------
    >>> from kit.meal.recipe import recipe
    >>> ingredient_called("feta", recipe("Salad", ["1 cup kale", "1/2 cup feta, crumbled"]))
    1
    """
    keys = [part.food.key for part in recipe.ingredients]
    if name in keys:
        return keys.index(name)
    asked = set(words(name.replace("-", " ")))
    fitting = {
        part.food.key: place
        for place, part in reversed(list(enumerate(recipe.ingredients)))
        if asked and asked <= {*words(part.food.name), *words(part.food.key.replace("-", " "))}
    }
    if len(fitting) == 1:
        return next(iter(fitting.values()))
    known: Collection[str] = fitting or keys
    kind = f"single ingredient (it fits {', '.join(sorted(fitting))}) called" if fitting else "ingredient"
    raise UnknownNameError(kind, name, known)
