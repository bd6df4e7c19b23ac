"""What a change that is named leaves as it was: the dish ("not vegan unless you leave out the feta"), or its eater."""

import re

from kit.speech.changes.changes_said import AMOUNT, LEAVE_OUT, SWAP, SaidChange
from kit.speech.claim import THE_DISH, About
from kit.speech.words.sentence import Sentence

_WHO = ("you", "we", "there", "everyone", "everybody")
_BUT_FOR = ("unless", "until", "till", "except if", "except when", "but not if", "but not when", "not if", "not when")
_RESIZED = re.compile(
    r"\b(?:doubl|tripl|halv|quadrupl)(?:e|ed|es|ing)\b (?:(?:the|this|your) (?:whole )?(?:recipe|batch|amounts?|lot)"
    r"|it|everything|this)\b|\b(?:double|triple|half) batch\b|\bhalf (?:of )?the recipe\b|"
    r"\b(?:if|when|once) (?:\w+ )?(?:make|makes|cook|cooks|bake|bakes) (?:half|(?:it|this|enough)(?: \w+)? for)\b|"
    r"\b(?:scale|scales|scaled|scaling) (?:(?:it|this|the recipe) )?(?:up|down|to)\b|"
    r"\bstretch(?:ed|ing)? (?:it|this|the recipe) (?:out )?to\b"
)


def is_resized(sentence: Sentence) -> bool:
    """Return whether the recipe is made for another number: "double the recipe", "if we make it for eight"."""
    return _RESIZED.search(sentence.plain) is not None


def is_excepted(sentence: Sentence, change: SaidChange) -> bool:
    """Return whether something is said of the dish as it is, not with the change: "unless you leave out the feta"."""
    if not change.places:
        return False
    first = min(change.places)
    before = " ".join(sentence.texts[max(0, first - 6) : first])
    return re.search(rf"\b(?:{'|'.join(_BUT_FOR)})(?: \w+){{0,3}}$", before) is not None


def is_only_with(sentence: Sentence) -> bool:
    """Return whether something is said to be so with a change and not without it: "vegan only if you skip the feta"."""
    text = sentence.plain
    return _ONLY_WITH.search(text) is not None or _WOULD_BE.search(text) is not None


_WOULD_BE = re.compile(
    r"\bwould be (?!still|also|even|just|no|as\b)|\b(?:becomes?|turns(?: into)?)\b"
    r"|\bto (?:make|get|have) (?:it|this|them)\b|\bmakes? (?:it|this|them)\b"
    r"|\bfor an? [\w -]+ (?:version|bowl|one|plate|dish|take)\b"
)
_ONLY_WITH = re.compile(r"\bonly (?:if|when|once|after|by|without|as long as|so long as|provided)\b")


def _comes_to(sentence: Sentence, at: int) -> bool:
    """Return whether an amount is what there is then: "up to 195 milligrams", "down to 27 grams"."""
    return sentence.tokens[at].amount.unit in _AMOUNTS and sentence.text_at(at - 1) in ("to", "up to", "down to")


_AMOUNTS = ("kcal", "kJ", "g", "mg", "µg")


def without_gone(sentence: Sentence, about: list[About], change: SaidChange | None) -> list[About]:
    """Return what each word is about; behind food that goes, the dish: "in place of the shrimp you get 33 grams"."""
    if change is None or change.kind not in (AMOUNT, LEAVE_OUT, SWAP) or not change.places:
        return about
    last = max(change.places)
    comes_to = [at for at in range(last + 1, len(sentence)) if _comes_to(sentence, at)]
    if comes_to:  # "doubling the eggs brings the cholesterol up to 195 milligrams" in the dish
        about = [THE_DISH if at in comes_to and one.foods == change.foods else one for at, one in enumerate(about)]
    if change.kind == AMOUNT:
        return about
    if sentence.text_at(last + 1 + (sentence.text_at(last + 1) == ",")) not in _WHO:
        return about
    return [THE_DISH if at > last and one.foods == change.foods else one for at, one in enumerate(about)]
