"""A food's name as it is said in a sentence: the thing without its state."""

import re
from functools import cache

from kit.food.composition import Food

# First words of food names that keep their capital in the middle of a sentence.
PROPER = frozenset(
    (
        "American Asian Belgian Brazil Brie Brussels Caesar Camembert Canadian Cheddar Colby Edam English French "
        "Gouda Graham Greek Italian Jerusalem Khorasan Lima Mandarin Medjool Monterey Muenster Napa Neufchatel "
        "New Parmesan Romano Savoy Swiss Thousand Worcestershire"
    ).split()
)


def lowered(text: str) -> str:
    """Return a name as it stands inside a sentence.

    Examples
    --------
    >>> lowered("Brown rice"), lowered("Greek yogurt")
    ('brown rice', 'Greek yogurt')
    """
    return text if text.split(" ")[0].split("-")[0] in PROPER else text[:1].lower() + text[1:]


@cache
def short_name(food: Food) -> str:
    """Return a food's name as it is said of a food in the dish: the thing without its state.

    Examples
    --------
    >>> from kit.food.composition import foods
    >>> short_name(foods()["lentils-dry"]), short_name(foods()["cheese-feta"])
    ('lentils', 'feta cheese')
    """
    return lowered(re.sub(r"\s*\([^)]*\)", "", food.name).split(",")[0])
