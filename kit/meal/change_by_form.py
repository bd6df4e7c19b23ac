"""Swaps of which one side only says a form: "frozen spinach instead of fresh", "fresh instead of jarred"."""

from kit.errors import ChangeError
from kit.food.composition import Foods
from kit.food.names import short_name
from kit.food.vocabulary import line_words, words
from kit.meal.change_asked import Asked
from kit.meal.change_foods import newcomer
from kit.meal.change_places import refined
from kit.meal.ingredient_words import state_word
from kit.meal.recipe import Ingredient
from kit.texts import listing


def by_form(asked: Asked, old: str, new: str) -> tuple[int, str] | None:
    """Return the ingredient meant where one side only says a form, and the words for what comes.

    "Frozen spinach instead of fresh" means the spinach, "fresh instead of jarred" the only one from a jar.
    """
    recipe, table = asked.recipe, asked.table
    wish = refined(new, recipe, table)
    said = frozenset(words(old))
    if wish and only_form(old):
        return wish
    if wish and said <= _said_of(recipe.ingredients[wish[0]]):
        return wish
    states = {known.meaning for word in said if (known := line_words().get(word)) and known.kind == "state"}
    if not states or not only_form(old) or not only_form(new):
        return None
    fitting = [
        (at, f"{new} {short_name(part.food)}")
        for at, part in enumerate(recipe.ingredients)
        if part.grams > 0 and (state_word(part.food) in states or said <= set(words(part.line)))
    ]
    able = [(at, text) for at, text in fitting if _comes_in(text, recipe.ingredients[at], table)]
    if len(able) > 1:
        names = [short_name(recipe.ingredients[at].food) for at, _ in able]
        choices = [f"{text} instead of the {name}" for (_, text), name in zip(able, names, strict=True)]
        raise ChangeError(f'"{old}" fits {listing(names)}; write which one', choices)
    return able[0] if able else None


def _comes_in(text: str, old: Ingredient, table: Foods) -> bool:
    try:
        return newcomer(text, table, like=old).food is not old.food
    except ChangeError:
        return False


def only_form(text: str) -> bool:
    """Return whether words say nothing but a form: "fresh, chopped"."""
    known = [line_words().get(word) for word in words(text)]
    return bool(known) and all(word is not None and word.kind in ("state", "cut", "plain") for word in known)


def _said_of(part: Ingredient) -> frozenset[str]:
    names = (part.line, part.food.name, *part.food.other_names)
    return frozenset(word for name in names for word in words(name))
