"""The calories that one nutrient gives: "130 calories from fat", "the fat is worth 130 calories"."""

from dataclasses import replace

from kit.food.energy import KCAL_PER_GRAM
from kit.speech.about.parts import is_dish
from kit.speech.about.slots import Named
from kit.speech.values import Amount, scaled
from kit.speech.words.sentence import Sentence

_GIVERS = {  # the nutrient by whose factor its calories are counted
    **dict.fromkeys(("fat", "saturated_fat", "unsaturated_fat"), "fat"),
    **dict.fromkeys(("carbohydrate", "sugars"), "carbohydrate"),
    "protein": "protein",
}
_FROM = ("from", "of", "in", "as", "comes from", "come from", "coming from", "due to", "because of", "thanks to")
_THE = ("the", "its", "pure", "plain", "just", "only", "total", "that", "our")
_INSIDE_IT = ("in", "it", "this", "here", "there", "them", "the", "alone", "itself")
_GIVES = frozenset("is are comes come amounts adds makes accounts worth works runs".split())


def energy_from(sentence: Sentence, at: int) -> Named | None:
    """Return the nutrient whose calories are said: "130 calories from fat", "the fat is worth 130 calories"."""
    if sentence.text_at(at - 1) in ("the", "its", "those", "these", "of"):
        return None  # "a third of its 430 calories from fat"
    over = at + 1
    while sentence.text_at(over) in (*_FROM, *_THE) or sentence.is_a(over, "verb_from"):
        over += 1
    if over > at + 1 and _gives_energy(sentence, over):
        return Named(sentence.tokens[over].parts["nutrient"], over)
    first = sentence.clause_of(at)[0]
    while sentence.text_at(first) in ("the", "its", "that", "and", "so", "all", "just", ",", "of"):
        first += 1
    if first >= at or not _gives_energy(sentence, first) or first in sentence.used:
        return None
    behind = first + 1
    while behind < at and (sentence.text_at(behind) in _INSIDE_IT or is_dish(sentence, behind)):
        behind += 1
    gives = sentence.is_a(behind, "verb_bring") or sentence.text_at(behind) in _GIVES
    return Named(sentence.tokens[first].parts["nutrient"], first) if gives else None


def _gives_energy(sentence: Sentence, at: int) -> bool:
    return sentence.is_a(at, "nutrient") and sentence.tokens[at].parts["nutrient"] in _GIVERS


def energy_given(found: Amount, name: str) -> Amount:
    """Return the energy of an amount of a nutrient, by the general factors. [kcal]"""
    return replace(found, of=scaled(found.of, KCAL_PER_GRAM[_GIVERS[name]]))
