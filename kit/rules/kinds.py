"""Whether a food is vegetarian, vegan or whole grain, by its facts; None where its package has to tell."""

from kit.errors import UnknownNameError
from kit.food.composition import Food
from kit.food.vocabulary import words
from kit.meal.recipe import Ingredient

VEGETARIAN, VEGAN, WHOLE_GRAIN = "vegetarian", "vegan", "whole grain"
KINDS = (VEGETARIAN, VEGAN, WHOLE_GRAIN)
# Groups whose foods are grain or made of it: breads and snacks count in "all the grain is whole grain".
GRAINS = ("grain", "pasta", "bread", "snack")
# Of the snacks and the flours of other groups, these hold no grain.
_NO_GRAIN = ("nut", "seed", "pulse", "potato")
_MOSTLY_PEARLED = ("farro",)
_PEARLED = ("pearled", "pearl", "semipearled", "polished", "refined", "degermed", "degerminated")


def is_grain(food: Food) -> bool:
    """Return whether a food is grain or made of it."""
    return food.group in GRAINS and not set(_NO_GRAIN) & set(words(food.name))


def fits(food: Food, kind: str) -> bool | None:
    """Return whether a food is of a kind; None where nothing is known, or its package has to tell.

    Vegan is stricter than plant-based talk: honey is from animals and so not vegan, gelatin neither vegan nor
    vegetarian. Pearling takes the bran off, so pearled grain is not whole (common practice).

    Parameters
    ----------
    food : Food
        The food.
    kind : {"vegetarian", "vegan", "whole grain"}
        The kind.

    Raises
    ------
    UnknownNameError
        If there is no such kind.

    Examples
    --------
    >>> from kit.food.composition import foods
    >>> fits(foods()["honey"], "vegetarian"), fits(foods()["honey"], "vegan"), fits(foods()["gelatin"], "vegetarian")
    (True, False, False)
    """
    if kind not in KINDS:
        raise UnknownNameError("kind of food", kind, KINDS)
    if kind == WHOLE_GRAIN:
        return food.whole_grain and not set(_PEARLED) & set(words(food.name))
    if kind == VEGETARIAN:
        return food.vegetarian
    if not food.origin:
        return None
    if food.origin == "animal" or food.vegetarian is False:
        return False
    if food.check_package:
        return None
    return food.origin == "plant"


def part_fits(part: Ingredient, kind: str) -> bool | None:
    """Return whether an ingredient is of a kind; its line may tell what its food does not.

    "Pearled farro" is not whole. What is sold as farro is mostly pearled, so farro without a word is asked (common
    practice).
    """
    found = fits(part.food, kind)
    if kind != WHOLE_GRAIN or not found:
        return found
    line = set(words(part.line))
    if set(_PEARLED) & line:
        return False
    return None if set(_MOSTLY_PEARLED) & line and "whole" not in line else found
