"""Ways of saying how many servings there are: "there are six", "five people can eat from this", "how many? Six"."""

import re

from kit.speech.about.parts import is_serving
from kit.speech.about.slots import foods_from
from kit.speech.words.foods_said import FoodWord
from kit.speech.words.sentence import Sentence

PEOPLE = frozenset("people persons person guests friends eaters adults hungry mouths ways of".split())


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


def so_much_each(sentence: Sentence, at: int, behind: int) -> bool:
    """Return whether so many people open a statement of what each gets: "four people, six ounces each"."""
    first = at == sentence.clause_of(at)[0] and sentence.text_at(behind) == ","
    return first and not sentence.words.isdisjoint(("each", "apiece"))


def answers_how_many(sentence: Sentence, at: int) -> bool:
    """Return whether a number answers how many servings there are: "How many servings does it make? Six."."""
    asked = sentence.texts[:2] == ("how", "many") and (is_serving(sentence, 2) or sentence.text_at(2) in PEOPLE)
    return asked and sentence.text_at(at - 1) == "?" and sentence.text_at(at + 1) in ("", ".", "!")


_NOT_COUNTED = re.compile(
    r",? ?(?:not counting|not including|without counting|leaving (?:out|aside)|besides|apart from|aside from"
    r"|other than|in addition to|on top of|over and above|beyond|plus|if you do not count)(?: the)?(?= )"
)


def not_counted(sentence: Sentence, at: int) -> tuple[list[FoodWord], list[int]]:
    """Return the foods that a count leaves out, and their places: "ten ingredients, not counting the oil"."""
    for place in (at, at + 1):
        led = _NOT_COUNTED.match(" ".join(sentence.texts[place : place + 6]))
        if led:
            return foods_from(sentence, place + len(led[0].replace(",", ", ").split()), len(sentence))
    return [], []
