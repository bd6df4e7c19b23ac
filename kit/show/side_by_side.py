"""Foods or dishes side by side, as she asks for them on screen: "compare quinoa and brown rice by the cup".

A dish is named by its talk's title, or by words of it with the last one: "compare this with the split pea soup".
"""

import re
from collections.abc import Callable, Mapping

from kit.errors import AmountError, ChangeError
from kit.food.composition import Food
from kit.food.finding import find
from kit.food.finding import food as food_by_key
from kit.food.nutrients import nutrient
from kit.meal.comparing import MOST, Comparison, compare
from kit.meal.nutrition import Nutrition
from kit.show.marks import Drawing
from kit.show.parts import comparison
from kit.show.scenes import Scene, chart_scene
from kit.texts import listing, quantity

Dishes = Mapping[str, Callable[[], Nutrition]]  # by title in lower case
SHOWN = ("energy", "protein", "fiber", "sodium")
_BASIS = r"(?:\s+(?:by|per|in|for)\s+(?:the\s+|an?\s+)?(?P<basis>cup|100 g|100 kcal|serving))?"
_ASKS = re.compile(rf"compare\s+(?P<names>.+?){_BASIS}[.?!]?")
_CUP_OF = re.compile(r"\b(?:a|one|1) cup of ")  # says the basis ahead
_BETWEEN = re.compile(r"\s*,\s*(?:and\s+)?|\s+(?:and|with|or|to|against|beside|and also|versus|vs\.?)\s+")
_BASES = {"cup": "in a cup", "100 g": "in 100 g", "100 kcal": "in 100 kcal", "serving": "in a serving"}
_THIS = ("this", "this dish", "today's dish", "it")
_PLACE = "\x00"  # stands for a title while names are split, which may hold an "and" itself


def asks_to_compare(line: str) -> bool:
    """Return whether a line asks for foods side by side."""
    return _ASKS.fullmatch(" ".join(line.lower().split())) is not None


def side_by_side(line: str, this: Nutrition | None = None, dishes: Dishes | None = None) -> Scene:
    """Return the scene that a line asks for.

    Parameters
    ----------
    line : str
        What is asked for, with or without a basis: a cup, 100 g, 100 kcal or, of dishes, a serving. Without one dishes
        are compared by the serving, foods by the cup where each has a weight for one, all else by 100 g.
    this : Nutrition, optional
        The dish that is shown.
    dishes : mapping of str to callable, optional
        How to get the numbers of other dishes, by title in lower case.

    Raises
    ------
    ChangeError
        If something is not found, there are not two or three, or the basis fits one of them not.

    Examples
    --------
    >>> side_by_side("compare quinoa, cooked with brown rice, cooked")["footer"]
    'in a cup'
    """
    words, cups = _CUP_OF.subn("", " ".join(line.lower().split()))
    asked = _ASKS.fullmatch(words)
    assert asked
    dishes = dict(dishes or {}) | ({} if this is None else dict.fromkeys(_THIS, lambda: this))
    things = [_thing(name, dishes) for name in _names(asked["names"], dishes)]
    if not 2 <= len(things) <= MOST:
        raise ChangeError(
            f'{len(things)} things to compare; write two or three, such as "compare quinoa and brown rice"'
        )
    return chart_scene(_drawing(_compared(things, asked["basis"] or ("cup" if cups else None))))


def _names(text: str, dishes: Dishes) -> list[str]:
    """Split the names; "cooked", "dry" and their like stay with the name before them, and a title stays whole."""
    titles = sorted((title for title in dishes if title in text and title not in _THIS), key=len, reverse=True)
    for place, title in enumerate(titles):
        text = text.replace(title, f"{_PLACE}{place}")
    names: list[str] = []
    for part in _BETWEEN.split(text):
        if names and part in ("cooked", "dry", "raw", "boiled", "canned", "drained"):
            names[-1] += f", {part}"
        elif _PLACE in part:
            names.append(titles[int(part.split(_PLACE)[1])])
        else:
            names.append(part)
    return [name for name in names if name]


def _thing(name: str, dishes: Dishes) -> Food | Nutrition:
    plain = name.removeprefix("the ").removeprefix("our ")
    if plain in dishes:
        return dishes[plain]()
    words = plain.split()
    titled = [title for title in dishes if words[-1] == title.split()[-1] and set(words) <= set(title.split())]
    if len(titled) == 1 and len(words) > 1:
        return dishes[titled[0]]()
    found = find(name, 1)
    if not found:
        raise ChangeError(f'no food "{name}" is known; write its name as a shop has it')
    return food_by_key(found[0].food)


def _compared(things: list[Food | Nutrition], basis: str | None) -> Comparison:
    usual = "serving" if all(isinstance(thing, Nutrition) for thing in things) else "cup"
    try:
        return compare(things, basis or usual)
    except AmountError as fault:
        if basis:
            raise ChangeError(str(fault)) from fault
        return compare(things, "100 g")


def _drawing(made: Comparison) -> Drawing:
    names = [side.name for side in made.sides]
    shown = SHOWN if len(names) == 2 else SHOWN[:3]
    rows = {
        nutrient(name).short_name: [
            (side[name].value, quantity(side[name].value, nutrient(name).unit, nutrient(name).decimals))
            for side in made.sides
        ]
        for name in shown
    }
    return comparison.drawing(listing(names), names, rows, _BASES[made.basis])
