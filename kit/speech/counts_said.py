"""Ways of saying how many servings there are: "there are six", "five people can eat from this", "how many? Six"."""

import re

from kit.speech.parts import is_serving
from kit.speech.sentence import Sentence

PEOPLE = frozenset("people persons person guests friends eaters adults hungry mouths of".split())


def there_are(sentence: Sentence, at: int) -> bool:
    """Return whether a count is of what there is, or of what comes out: "there are", "you get", "it gives us"."""
    before = [sentence.text_at(place) for place in sentence.clause_of(at) if place < at]
    led = before[-2:] in (["there", "are"], ["there", "is"]) or before[-3:] == ["there", "will", "be"]
    comes = [
        word for word in before if word not in ("you", "us", "we", "will", "about", "out", "of", "it", "that", "just")
    ]
    return led or (comes[-1:] in (["get"], ["gives"], ["give"]) and len(comes) <= 3 and "if" not in before)


def can_eat(sentence: Sentence, at: int) -> bool:
    """Return whether so many people are said to eat from the dish: "five people can eat from this"."""
    behind = " ".join(sentence.texts[at : at + 6])
    return _EAT_FROM.match(behind) is not None


_EAT_FROM = re.compile(
    r"(?:can |could |will |would |may )?(?:all )?(?:eat|share|be fed|get fed|have some) (?:from|of|out of|it|this)\b"
)


def answers_how_many(sentence: Sentence, at: int) -> bool:
    """Return whether a number answers how many servings there are: "How many servings does it make? Six."."""
    asked = sentence.texts[:2] == ("how", "many") and (is_serving(sentence, 2) or sentence.text_at(2) in PEOPLE)
    return asked and sentence.text_at(at - 1) == "?" and sentence.text_at(at + 1) in ("", ".", "!")
