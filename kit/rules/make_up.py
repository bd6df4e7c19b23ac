"""What makes a meal or a main dish: what a serving weighs as eaten, and its portions of the four food groups."""

from collections.abc import Sequence
from math import hypot

from kit.food.composition import Food
from kit.food.measures import convert
from kit.lines.weighing import Z90
from kit.meal.certainty import Range
from kit.meal.eaten import eaten_grams, taken_up
from kit.meal.nutrition import Nutrition
from kit.meal.recipe import Recipe
from kit.texts import listing, number

MEAL, MAIN_DISH = "meal", "main dish"
POURED = ("beverage", "stock")
MAIN_DISH_OUNCES, MEAL_OUNCES = 6.0, 10.0  # 21 CFR 101.13(m)(1)(i) and (l)(1)(i)
PORTION_GRAMS = 40.0  # of each of two of the four food groups, the same paragraphs
# The four groups of 101.13(l) and (m), as the groups of the table of foods.
FOUR_GROUPS = {
    "bread, cereal, rice and pasta": ("grain", "pasta", "bread"),
    "fruits and vegetables": ("vegetable", "fruit"),
    "milk, yogurt and cheese": ("dairy",),
    "meat, poultry, fish, dry beans, eggs and nuts": (
        *("meat", "poultry", "fish", "shellfish", "egg", "pulse", "soy", "nut", "seed"),
    ),
}
# Condiments, pickles, garnishes and fats count for no group: 101.13(m)(1)(i)(C).
_FOR_NO_GROUP = (
    *("pickles", "olives", "vegetable_garnish", "seasoning_paste", "dried_vegetables", "relish", "dip"),
    *("cream", "half_and_half", "sour_cream", "butter_oil", "evaporated_milk", "bread_crumbs", "croutons"),
)
_JUICES = ("juice", "vegetable_juice")


def serving_weight(numbers: Nutrition) -> Range:
    """Return what a serving weighs as it is eaten, with the 90 % range. [g]"""
    whole, servings = eaten_grams(numbers.recipe), numbers.recipe.servings
    return Range(whole.value / servings, whole.low / servings, whole.high / servings)


def weighs_less(weight: Range, kind: str = MAIN_DISH) -> bool:
    """Return whether a serving surely weighs less than a main dish, or a meal, has to."""
    return weight.high < _least(kind)


def _least(kind: str) -> float:
    return (MEAL_OUNCES if kind == MEAL else MAIN_DISH_OUNCES) * convert(1, "oz", "g")


def made_up_as(kind: str, recipe: Recipe, weight: Range, groups: int = 2) -> tuple[bool | None, str]:
    """Return whether a serving weighs enough and holds enough of the food groups, None when in doubt, and why.

    References
    ----------
    21 CFR 101.13(l): a meal, 10 oz and three 40 g portions of two groups; (m): a main dish, 6 oz and 40 g each of two.
    """
    ounces, least = MEAL_OUNCES if kind == MEAL else MAIN_DISH_OUNCES, _least(kind)
    section = "21 CFR 101.13(l)" if kind == MEAL else "21 CFR 101.13(m)"
    if weighs_less(weight, kind):
        return False, f"a serving weighs {number(weight.value)} g, under {number(ounces)} oz ({section})"
    portions = {name: _grams_of(recipe, members) for name, members in FOUR_GROUPS.items()}
    surely = [name for name, grams in portions.items() if grams.low >= PORTION_GRAMS]
    perhaps = [name for name, grams in portions.items() if grams.high >= PORTION_GRAMS]
    if kind == MEAL and sum(grams.high // PORTION_GRAMS for grams in portions.values()) < 3:
        return False, f"a serving holds fewer than three portions of 40 g ({section})"
    if len(perhaps) < groups:
        what = f"only {listing(perhaps)}" if perhaps else "none of the four food groups"
        return False, f"a serving holds 40 g of {what} ({section})"
    if weight.low < least or len(surely) < groups:
        return None, f"a serving is too near to {number(ounces)} oz, or to 40 g of a second food group ({section})"
    return True, f"a serving weighs {number(weight.value)} g and holds 40 g or more of {listing(surely)} ({section})"


def _grams_of(recipe: Recipe, groups: Sequence[str]) -> Range:
    """Return the grams as eaten of some groups in a serving, with the 90 % range."""
    grams = [
        (part.grams * taken_up(part.food), part.relative_sd)
        for part in recipe.ingredients
        if _counts(part.food, groups)
    ]
    value = sum(amount for amount, _ in grams) / recipe.servings
    half = Z90 * hypot(*(amount * spread for amount, spread in grams)) / recipe.servings
    return Range(value, max(0.0, value - half), value + half)


def _counts(food: Food, groups: Sequence[str]) -> bool:
    if food.reference in _FOR_NO_GROUP or (food.group == "soy" and food.reference == "milk"):
        return False
    return food.group in groups or ("fruit" in groups and food.reference in _JUICES)
