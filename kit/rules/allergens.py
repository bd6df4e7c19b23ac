"""Which foods of a dish bring an allergen, and of which that has to be asked."""

from collections.abc import Sequence

from kit.food.composition import Food
from kit.food.vocabulary import words
from kit.texts import listing

# Chestnuts stand on neither list of tree nuts, FDA's since January 2025 (from memory); whoever avoids nuts is asked.
_ASKED_BESIDE = {"tree_nut": ("chestnut",)}


def bringing(foods: Sequence[Food], allergen: str) -> tuple[list[Food], list[Food]]:
    """Return the foods that bring an allergen, and those of which that has to be asked.

    Oats are grown and milled beside wheat and barley: whether they bring gluten, only their package tells.

    Parameters
    ----------
    foods : sequence of Food
        The foods of a dish.
    allergen : str
        Its id.

    References
    ----------
    Oats and gluten: 21 CFR 101.91 lets a package that keeps to 20 mg/kg say "gluten-free", from memory.

    Examples
    --------
    >>> from kit.food.composition import foods
    >>> oats_and_bulgur = [foods()["oats-rolled-dry"], foods()["bulgur-dry"]]
    >>> [[food.key for food in some] for some in bringing(oats_and_bulgur, "gluten")]
    [['bulgur-dry'], ['oats-rolled-dry']]
    """
    beside = _ASKED_BESIDE.get(allergen, ())
    brings = [food for food in foods if allergen in food.allergens and not _oats_alone(food, allergen)]
    asked = [
        food
        for food in foods
        if food not in brings
        and (must_be_asked(food) or _oats_alone(food, allergen) or any(one in food.allergens for one in beside))
    ]
    return brings, asked


def allergen_sentence(name: str, foods: Sequence[str]) -> str:
    """Return an allergen with the foods that bring it.

    Examples
    --------
    >>> allergen_sentence("milk", ["feta cheese"])
    'Milk, from the feta cheese'
    """
    return f"{name[:1].upper()}{name[1:]}, from the {listing(foods)}"


def check_the_package(foods: Sequence[str]) -> str:
    """Return what to do about foods whose allergens are not known.

    Examples
    --------
    >>> check_the_package(["bread", "barbecue sauce"])
    'Check the package of the bread and barbecue sauce'
    """
    return f"Check the package of the {listing(foods)}"


def must_be_asked(food: Food) -> bool:
    """Return whether a food's allergens are not known, or differ by maker: its package has to be read."""
    return food.check_package or facts_unknown(food)


def facts_unknown(food: Food) -> bool:
    """Return whether nothing is known about a food's origin and allergens, as of an imported release's foods."""
    return not food.allergens and not food.origin and food.vegetarian is None


def _oats_alone(food: Food, allergen: str) -> bool:
    """Whether a food's gluten is only that of oats."""
    return allergen == "gluten" and "gluten" in food.allergens and "wheat" not in food.allergens and _is_oats(food)


def _is_oats(food: Food) -> bool:
    return not {"oat", "granola", "muesli"}.isdisjoint(words(food.name))
