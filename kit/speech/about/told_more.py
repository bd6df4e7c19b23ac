"""Words that tell more of an amount that is said: "and as much fat", "saturated mostly", "all but a few of them"."""

import re

from kit.speech.about.parts import is_serving
from kit.speech.words.sentence import Sentence

_WEIGHED = ("g", "mg", "kcal")
_HAS = frozenset("has have holds hold contains contain packs pack carries gives".split())
_KINDS_OF_FAT = ("saturated", "unsaturated", "monounsaturated", "polyunsaturated", "trans")
_COVERS = frozenset("covers cover meets fills satisfies".split())
_TELLING = frozenset((*_KINDS_OF_FAT, "less", "more", "fewer", "all", "all but"))
_BY_HOW_MUCH = frozenset("a bit lot far much little touch tad shade way even slightly considerably somewhat".split())
_FUZZY = ("you", "i", "we", "enough", "usual", "one")
_ALL_BUT = re.compile(
    r"all but (?:an? |the )?(?:few|handful|couple|one|two|three|five|ten|small part|fraction)\b[^,.]* of (?:it|them)\b"
)


def tells_more(sentence: Sentence, at: int) -> bool:
    """Return whether a word tells more of an amount that was said before it, and no family has used it."""
    text, token = sentence.text_at(at), sentence.tokens[at]
    if text in _TELLING or token.is_a("nutrient"):
        behind_amount = any(one.amount.unit in _WEIGHED for one in sentence.tokens[:at])
        return behind_amount and _of_the_amount(sentence, at, text)
    if text in _COVERS:
        return any(sentence.is_a(place, "day") or sentence.text_at(place) == "day" for place in range(at + 1, at + 4))
    if text == "as" and sentence.text_at(at + 1) == "much" and sentence.text_at(at + 2) == "as":
        named = any(one.is_a("nutrient") for one in sentence.tokens[:at])
        return named and sentence.text_at(at + 3) not in (*_FUZZY, "needed", "possible", "will")
    return token.amount.unit in ("g", "mg") and _a_serving_has(sentence, at)


def _of_the_amount(sentence: Sentence, at: int, text: str) -> bool:
    """Return whether a word tells more of the amount before it."""
    if text in _KINDS_OF_FAT and sentence.text_at(at + 1) != "fat":
        return True  # "ten grams of fat, saturated mostly"
    if sentence.is_a(at, "nutrient") and sentence.texts[max(0, at - 2) : at] == ("as", "much"):
        return True  # "six grams of protein and as much fat"
    return _is_less_than(sentence, at) or _is_all_but_few(sentence, at)


def _is_less_than(sentence: Sentence, at: int) -> bool:
    """Return whether an amount is told to be less or more than another: "eleven grams, which is less than in"."""
    if sentence.text_at(at) not in ("less", "more", "fewer") or sentence.text_at(at + 1) != "than":
        return False
    linked = sentence.text_at(at - 1) in ("is", "are", ",") or sentence.text_at(at - 1) in _BY_HOW_MUCH
    return linked and sentence.text_at(at + 2) not in _FUZZY


def _is_all_but_few(sentence: Sentence, at: int) -> bool:
    """Return whether all but a few of something counted are told of: "575 calories, all but a few of them from"."""
    all_but = sentence.text_at(at) in ("all", "all but")
    return all_but and _ALL_BUT.match(" ".join(sentence.texts[at : at + 7])) is not None


def _a_serving_has(sentence: Sentence, at: int) -> bool:
    """Return whether a serving is said to have a weight of whatever: "a slice has 18 grams of natural sugar"."""
    verb = at - 1 - (sentence.text_at(at - 1) in ("got", "only", "just"))
    return sentence.text_at(verb) in _HAS and is_serving(sentence, verb - 1) and sentence.text_at(at + 1) == "of"
