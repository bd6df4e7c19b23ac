"""The allergens that rules name, the words for them, and which foods bring them."""

from collections.abc import Mapping, Sequence
from functools import cache

from kit import files
from kit.errors import UnknownNameError
from kit.food.composition import Food, read_rows

_ALSO_CALLED = {"dairy": "milk", "lactose": "milk", "nuts": "tree_nut", "nut": "tree_nut", "shellfish": "crustacean"}
_ALSO_CALLED |= {"soya": "soy", "soybeans": "soy", "eggs": "egg", "peanuts": "peanut", "celeriac": "celery"}


@cache
def allergen_names() -> Mapping[str, str]:
    """Return every allergen's name by its id."""
    return {row["allergen"]: row["name"] for row in read_rows(files.bundled("data/allergens.csv"))}


def allergen_called(name: str) -> str:
    """Return the id of the allergen that a word stands for.

    Raises
    ------
    UnknownNameError
        If there is none.

    Examples
    --------
    >>> allergen_called("dairy"), allergen_called("tree nuts"), allergen_called("gluten")
    ('milk', 'tree_nut', 'gluten')
    """
    low = name.strip().lower()
    for allergen, known in allergen_names().items():
        if low in (allergen, known, _ALSO_CALLED.get(low, "") and known) or _ALSO_CALLED.get(low) == allergen:
            return allergen
    raise UnknownNameError("allergen", name, [*allergen_names(), *_ALSO_CALLED])


def bringing(foods: Sequence[Food], allergen: str) -> tuple[list[Food], list[Food]]:
    """Return the foods that bring an allergen, and those of which nothing is known."""
    brings = [food for food in foods if allergen in food.allergens]
    return brings, [food for food in foods if food not in brings and facts_unknown(food)]


def facts_unknown(food: Food) -> bool:
    """Return whether nothing is known about a food's origin and allergens, as of an imported release's foods."""
    return not food.allergens and not food.origin and food.vegetarian is None
