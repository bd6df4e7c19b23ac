"""Servings: make more or share out differently, and the amounts that a kitchen can measure."""

from dataclasses import replace

from kit.meal.recipe import Recipe

MAKE_MORE, SHARE_OUT = "make more", "share out"  # the two meanings of other servings


def make_more(recipe: Recipe, servings: float) -> Recipe:
    """Return the recipe for other servings, every amount scaled; a serving stays the same.

    Raises
    ------
    AmountError
        If the servings make no sense.
    """
    return recipe.with_grams(recipe.grams * (servings / recipe.servings), servings)


def share_out(recipe: Recipe, servings: float) -> Recipe:
    """Return the same pot shared out into other servings; a serving changes.

    Raises
    ------
    AmountError
        If the servings make no sense.
    """
    return replace(recipe, servings=servings)
