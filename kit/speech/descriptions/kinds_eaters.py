"""One who eats so, and is told to leave the dish: "anyone who is vegan should pass", "no vegan would eat this"."""

import re

from kit.speech.words.sentence import Sentence

_WHO = (("who", "is"), ("who", "are"), ("you", "are"), ("that", "is"))
_MAY = frozenset("can could would will should may might must has eats needs would".split())
_SHUNS = re.compile(
    r"\b(?:pass(?: on| up)?|skip|avoid|leave (?:it|this|that|these|them)|sit (?:it|this)|look elsewhere|steer clear"
    r"|stay away|give (?:it|this) a miss|(?:have|pick|eat) something else|go without|not for (?:you|them|him|her)"
    r"|(?:can|should|must|would|will|could|may) not (?:eat|have(?! to)|touch|want|order)|out of luck|off limits)\b"
)
_EATS = frozenset("eat have touch want order choose go take".split())
_NEED_NOT = re.compile(r"\b(?:not|never|no need to|nothing to|without)(?: \w+){0,3} $")


def shuns(sentence: Sentence, at: int) -> bool | None:
    """Return whether one who eats so is told to leave the dish; None where it is told that they need not.

    Parameters
    ----------
    sentence : Sentence
        The sentence.
    at : int
        Where the kind stands: "vegan" of "anyone who is vegan".
    """
    before = sentence.texts[max(0, at - 2) : at]
    one = before[-1:] in (("a",), ("no",), ("any",), ("every",)) and (
        sentence.text_at(at + 1) in _MAY or sentence.text_at(at - 2) == "for"
    )
    if not one and before not in _WHO:
        return False
    eats = not _EATS.isdisjoint(sentence.texts[at + 2 : at + 4])
    if (before[-1:] == ("no",) and eats) or (
        before == ("for", "a") and "no" in sentence.texts[max(0, at - 4) : at - 2]
    ):
        return True  # "no vegan would eat this", "it is no dish for a vegan"
    told = _SHUNS.search(sentence.plain)
    if told is None:
        return False
    return None if _NEED_NOT.search(sentence.plain[: told.start()]) else True
