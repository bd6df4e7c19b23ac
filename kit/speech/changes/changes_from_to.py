"""Another amount of a food, told from the one that there is: "cutting the oil from three tablespoons to two"."""

from kit.speech.about.parts import MEASURES, back, is_dish
from kit.speech.words.foods_said import FoodWord
from kit.speech.words.sentence import Sentence, food_at
from kit.speech.words.tokens import NO_QUANTITY, Quantity

_NO_CHANGE = ("from", "by", "thanks to")


def from_to(sentence: Sentence) -> tuple[FoodWord, float, tuple[int, ...], Quantity] | None:
    """Return the food, its new amount as a part of the old one, the places that say so, and the old amount.

    None where no amount is changed.
    """
    for at in (place + 1 for place in sentence.where(("from",), 1)):
        if at + 2 >= len(sentence):
            continue
        was, second = sentence.tokens[at].amount, at + 2 + (sentence.text_at(at + 1) == "down")
        named = at - 2
        if sentence.text_at(at + 1) == "of" and food_at(sentence, at - 2) is None:  # "from two spoons of oil to one"
            named, second = at + 2, at + 4
        food = food_at(sentence, named)
        if sentence.text_at(second - 1) != "to" or food is None:
            continue
        then = sentence.tokens[second].amount if second < len(sentence) else NO_QUANTITY
        same = then.unit in ("", was.unit) and was.unit in MEASURES and was.value > 0 and then.value > 0
        led = named > at or sentence.text_at(back(sentence, named)) not in _NO_CHANGE
        if same and led and not is_dish(sentence, named):
            return food, then.value / was.value, tuple(sorted((named, at, second))), was
    return None
