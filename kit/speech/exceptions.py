"""What is set apart from a statement about everything: "nut-free except the almonds", "vegan apart from the honey"."""

from kit.speech.foods_said import FoodWord
from kit.speech.sentence import Sentence
from kit.speech.slots import foods_from

_EXCEPT = frozenset("except but besides bar excepting".split())
_OF_TWO_WORDS = {"apart": "from", "aside": "from", "other": "than"}
_REACH = 6  # words behind the statement


def excepted(sentence: Sentence, at: int) -> tuple[list[FoodWord], list[int]]:
    """Return the foods that are set apart from what is said at a place, and where they stand."""
    for place in range(at + 1, min(len(sentence), at + _REACH)):
        word, following = sentence.text_at(place), sentence.text_at(place + 1)
        if word in _EXCEPT or _OF_TWO_WORDS.get(word) == following:
            over = place + 1
            while over < len(sentence) and sentence.text_at(over) in ("for", "from", "than", "the", "with", "of"):
                over += 1
            return foods_from(sentence, over, len(sentence))
    return [], []
