"""Two or three foods side by side, as she asks for them on screen: "compare quinoa and brown rice by the cup"."""

import re

from kit.errors import AmountError, ChangeError
from kit.food.composition import Food, nutrient
from kit.food.finding import find
from kit.food.finding import food as food_by_key
from kit.meal.comparing import Comparison, compare
from kit.show.marks import Drawing
from kit.show.parts import comparison
from kit.show.scenes import Scene, chart_scene
from kit.show.views import short_name
from kit.texts import listing, quantity

SHOWN = ("energy", "protein", "fiber", "sodium")
_BASIS = r"(?:\s+(?:by|per|in|for)\s+(?:the\s+|an?\s+)?(?P<basis>cup|100 g|100 kcal))?"
_ASKS = re.compile(rf"compare\s+(?P<names>.+?){_BASIS}[.?!]?")
_BETWEEN = re.compile(r"\s*,\s*(?:and\s+)?|\s+(?:and|with|or|to|against)\s+")
_BASES = {"cup": "in a cup", "100 g": "in 100 g", "100 kcal": "in 100 kcal"}


def asks_to_compare(line: str) -> bool:
    """Return whether a line asks for foods side by side."""
    return _ASKS.fullmatch(" ".join(line.lower().split())) is not None


def side_by_side(line: str) -> Scene:
    """Return the scene that a line asks for; by the cup where every food has a weight for one, else by 100 g.

    Raises
    ------
    ChangeError
        If a food is not found, or there are not two or three.

    Examples
    --------
    >>> side_by_side("compare quinoa, cooked with brown rice, cooked")["footer"]
    'in a cup'
    """
    asked = _ASKS.fullmatch(" ".join(line.lower().split()))
    assert asked
    foods = [_food(name) for name in _names(asked["names"])]
    if not 2 <= len(foods) <= 3:
        raise ChangeError(f'{len(foods)} foods to compare; write two or three, such as "compare quinoa and brown rice"')
    return chart_scene(_drawing(_compared(foods, asked["basis"]), foods))


def _names(text: str) -> list[str]:
    """Split the names; "cooked", "dry" and their like stay with the name before them."""
    names: list[str] = []
    for part in _BETWEEN.split(text):
        if names and part in ("cooked", "dry", "raw", "boiled", "canned", "drained"):
            names[-1] += f", {part}"
        else:
            names.append(part)
    return [name for name in names if name]


def _food(name: str) -> Food:
    found = find(name, 1)
    if not found:
        raise ChangeError(f'no food "{name}" is known; write its name as a shop has it')
    return food_by_key(found[0].food)


def _compared(foods: list[Food], basis: str | None) -> Comparison:
    try:
        return compare(foods, basis or "cup")
    except AmountError as fault:
        if basis:
            raise ChangeError(str(fault)) from fault
        return compare(foods, "100 g")


def _drawing(made: Comparison, foods: list[Food]) -> Drawing:
    names = [food.name for food in foods]
    shown = SHOWN if len(foods) == 2 else SHOWN[:3]
    rows = {
        short_name(name): [
            (side[name].value, quantity(side[name].value, nutrient(name).unit, nutrient(name).decimals))
            for side in made.sides
        ]
        for name in shown
    }
    return comparison.drawing(listing(names), names, rows, _BASES[made.basis])
