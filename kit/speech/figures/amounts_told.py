"""An amount told in a sentence of its own."""

import re

from kit.meal.certainty import Range
from kit.rules.naming import measure_said
from kit.rules.spoken import quantity_words, words_of
from kit.speech.claim import FOOD, SERVING, WEIGHT, About
from kit.speech.values import WORKED_OUT, Amount, said_thing
from kit.texts import counted


def spoken_quantity(name: str, of: Range, open_above: bool = False) -> str:
    """Return an amount the way it is said, without what it is of; salt is in grams, as fat is."""
    words = quantity_words("fat" if name in WORKED_OUT else name, of, open_above)
    return _AND_A_HALF.sub(r"\1 and a half", words)


_AND_A_HALF = re.compile(r"(\d{2,})\.5\b")  # "about 10 and a half grams"


def spoken_amount(name: str, of: Range, open_above: bool = False) -> str:
    """Return an amount with its nutrient the way it is said; salt is in grams."""
    return words_of(spoken_quantity(name, of, open_above), said_thing(name))


def sentences(name: str, about: About, found: Amount, given_by: str = "") -> tuple[str, ...]:
    """Return how much there is, in sentences of their own."""
    words = spoken_amount(name, found.of, found.open_above)
    if given_by:
        words += f" from {said_thing(given_by)}"
    begin = found.begin[:1].upper() + found.begin[1:]
    if about.kind == FOOD and about.measure in _MEASURED and about.count >= 1:
        several = about.count > 1
        measure = f"{counted(about.count, 1)} {measure_said(about.measure)}{'s' * several}".capitalize()
        return (f"{measure} of {about.foods[0].text} {'have' if several else 'has'} {words}.",)
    if about.kind == SERVING and about.count == 1:
        return (f"{{serving}} has {words}.",)
    if about.kind == WEIGHT and not given_by:
        return (f"{{serving}} has {{{name}}}." if name != "salt" else "{serving} has {sodium}.",)
    if begin.startswith(_TO_A_SERVING):
        return (f"The {begin.removeprefix(_TO_A_SERVING)} {words} to a serving.",)
    many, blank, rest = begin.partition(" ")
    if many.isdigit():
        begin = f"{counted(float(many))}{blank}{rest}".capitalize()
    return (f"{begin.replace(' g of', ' grams of')} {words}.",)


_MEASURED = ("oz", "cup", "tbsp", "tsp", "lb")
_TO_A_SERVING = "To a serving the "
