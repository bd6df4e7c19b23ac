"""What the foods without a value for a nutrient may bring at the most."""

from functools import cache

from kit.food.composition import foods
from kit.food.nutrients import nutrient_index
from kit.meal.certainty import Range
from kit.talk.dish import Dish

LITTLE_MISSING = 0.10  # of an amount: what cannot be more only widens its range
# What a food holds of a nutrient is no more than it holds of another, less a third: sugars are carbohydrate, no fiber.
_AT_MOST = {
    "sugars": ("carbohydrate", "fiber"),
    "fiber": ("carbohydrate", "sugars"),
    "saturated_fat": ("fat", ""),
    "monounsaturated_fat": ("fat", "saturated_fat"),
    "polyunsaturated_fat": ("fat", "saturated_fat"),
}


def most_missing(dish: Dish, name: str) -> float:
    """Return the most that the foods without a value for a nutrient may bring to a serving; infinite where unknown."""
    at, parts = nutrient_index(name), dish.numbers.recipe.ingredients
    missing = [part for part, lacks in zip(parts, dish.numbers.missing[:, at], strict=True) if lacks and part.grams > 0]
    if not missing:
        return 0.0
    if name not in _AT_MOST:
        return float("inf")
    whole, less = _AT_MOST[name]
    most = 0.0
    for part in missing:
        apart = part.food[less] if less and part.food[less] == part.food[less] else 0.0
        of_kind = _most_of_its_kind(part.food.group, part.food.state, name)
        most += part.grams / 100 * min(part.food[whole] - apart, of_kind)
    return most / dish.numbers.recipe.servings if most == most else float("inf")


@cache
def _most_of_its_kind(group: str, state: str, name: str) -> float:
    """Return the most of a nutrient that the table's other foods of a group and state hold; infinite for too few."""
    own = [food[name] for food in foods().values() if (food.group, food.state) == (group, state)]
    known = [value for value in own if value == value]
    return max(known) if len(known) >= 10 else float("inf")


def with_missing(dish: Dish, name: str, of: Range) -> Range:
    """Return a range that reaches up to what the missing values may add, where that is little."""
    if not dish.numbers.missing[:, nutrient_index(name)].any():
        return of
    more = most_missing(dish, name)
    return Range(of.value, of.low, of.high + more) if more <= LITTLE_MISSING * of.value else of
