"""Small pieces of which a serving may hold several: one of the "pancakes" need not be a serving."""

from collections.abc import Sequence

from kit.food.vocabulary import words
from kit.meal.recipe import Recipe

# What one weighs at most, by its name. [g]; common practice
_HEAVIEST = {
    **dict.fromkeys("meatball falafel dumpling wonton potsticker gyoza bite nugget ball crostini canape".split(), 60.0),
    **dict.fromkeys("cookie biscuit brownie truffle macaroon blini ravioli pierogi".split(), 90.0),
    **dict.fromkeys("fritter latke croquette samosa bruschetta roll shell bar square bhaji pakora pop".split(), 130.0),
    **dict.fromkeys("pancake crepe waffle toast patty slider scone tostada cake taco blintz".split(), 160.0),
    **dict.fromkeys("muffin bun arepa pupusa tamale empanada enchilada fajita skewer kebab".split(), 200.0),
    **dict.fromkeys("quesadilla flatbread pocket".split(), 300.0),
}
_FLAT = ("slice", "tortilla", "shell", "bun")


def pieces_of(recipe: Recipe, name: str) -> tuple[str, ...]:
    """Return the words for one piece of a dish that are no serving of it.

    Parameters
    ----------
    recipe : Recipe
        The dish, with how many servings it makes.
    name : str
        Its title, without what stands behind "with".
    """
    found: list[str] = []
    head = name.lower().split()[-1:]
    stem = (words(name) or [""])[-1]
    heaviest = _HEAVIEST.get(stem, 0.0)
    served_as = words(recipe.serving_is)
    if head and head[0] != stem and heaviest and stem not in served_as and _serving_grams(recipe) > heaviest:
        found += [stem, "piece"]
    if any(part.noun == "slice" for part in recipe.ingredients) and "slice" not in served_as:
        found.append("slice")
    return tuple(found)


def _serving_grams(recipe: Recipe) -> float:
    return float(recipe.grams.sum()) / recipe.servings


def is_counted(before: Sequence[str]) -> bool:
    """Return whether the words before a piece count it: "one taco", "every pancake", "three toasts"."""
    last = before[-1] if before else ""
    if last in ("the", "these", "those", "our", "your", "them") and list(before[-2:-1]) == ["of"]:
        last = before[-3] if len(before) > 2 else ""  # "one of the toasts"
    return last in _COUNTS or last.isdigit()


_COUNTS = frozenset(
    "a an one each every per single any another two three four five six seven eight nine ten twelve half".split()
)
