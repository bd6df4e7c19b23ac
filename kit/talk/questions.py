"""What a prepared question tries: the recipe with something left out, swapped, made for more or shared out."""

from collections.abc import Iterator, Mapping
from typing import Any

from kit.errors import KitError, nearest
from kit.lines.recipe_text import MOST_SERVINGS
from kit.meal.changes import leave_out, swap
from kit.meal.portions import make_more, share_out
from kit.meal.recipe import Recipe
from kit.rules.naming import food_called, ingredient_called
from kit.talk.talk import Talk
from kit.texts import listing

_SERVINGS = {"make_more": make_more, "share_out": share_out}
KEYS = ("leave_out", "swap", "for", *_SERVINGS)


def tried(recipe: Recipe, wish: Mapping[str, Any]) -> Recipe:
    """Return the recipe that a question asks about.

    Parameters
    ----------
    recipe : Recipe
        As written.
    wish : mapping
        A question's ``try``: ``{ leave_out = INGREDIENT }``, ``{ swap = INGREDIENT, for = FOOD }``,
        ``{ make_more = N }`` or ``{ share_out = N }``; INGREDIENT is a food's key, or words that fit one ingredient.

    Raises
    ------
    KitError
        If a key or a food is not known, or the servings make no sense.
    """
    for key in wish:
        if key not in KEYS:
            near = nearest(key, KEYS) or f"; write one of {listing(KEYS, 'or')}"
            raise KitError(f'no key "{key}"{near}')
    if ("swap" in wish) != ("for" in wish) or len(wish) != 1 + ("swap" in wish):
        raise KitError(
            'try one thing: { leave_out = "feta" }, { swap = "feta", for = "tofu-firm" } or { make_more = 10 }'
        )
    if "leave_out" in wish:
        return leave_out(recipe, _key(recipe, wish["leave_out"]))
    if "swap" in wish:
        return swap(recipe, _key(recipe, wish["swap"]), food_called(str(wish["for"]), recipe))
    ((key, servings),) = wish.items()
    if isinstance(servings, bool) or not isinstance(servings, int | float) or not 0 < servings <= MOST_SERVINGS:
        raise KitError(f"{key} is {servings!r}; give a number of servings from above 0 to {MOST_SERVINGS:,}")
    return _SERVINGS[key](recipe, servings)


def _key(recipe: Recipe, name: object) -> str:
    return recipe.ingredients[ingredient_called(str(name), recipe)].food.key


def question_faults(talk: Talk) -> Iterator[str]:
    """Yield what is wrong with what the questions of a talk try, a sentence each."""
    for place, question in enumerate(talk.questions, 1):
        if question.try_ is None:
            continue
        try:
            tried(talk.recipe, question.try_)
        except KitError as fault:
            yield f'question {place} "{question.asks[:40]}": try: {fault}'
