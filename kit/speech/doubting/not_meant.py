"""What is said but not meant, or meant of something else: "I'd be surprised if", "my foot", "in name only"."""

import re
from collections.abc import Sequence

from kit.speech.about.unread import asked
from kit.speech.allergens.allergens_judged import AllergenClaim
from kit.speech.claim import FOOD, Claim
from kit.speech.descriptions.kinds import KindClaim
from kit.speech.descriptions.wordings_claim import WordingClaim
from kit.speech.figures.amounts import AmountClaim
from kit.speech.words.sentence import Sentence

_GATE = frozenset(
    "surprise surprised surprises amaze amazed astonish astonished shock shocked miracle hat foot eye nobody nope name "
    "used dreams dream pull pulling joke joking kidding lie lying fib wish wishful rules book label "
    "pigs bluff".split()
)
_NOT_MEANT = re.compile(
    r"\b(?:surpris|amaz|astonish|shock)\w*(?: (?:me|you|us|anyone))?(?: greatly| very much)? if\b|\bmiracle if\b"
    r"|\b(?:eat my hat|my foot|my eye|said (?:nobody|no one)|in name only|in (?:your|my) dreams|dream on)\b"
    r"|\bpull(?:ing)? (?:your|my) leg\b|\bthat is a (?:lie|joke|fib)\b"
    r"|\b(?:i am|just|only) (?:joking|kidding|lying|bluffing)\b"
    r"|\bused to be\b|\bwishful thinking\b|\bwhen pigs\b"
    r"|\bnot by (?:the|any) (?:rules?|book|label|law|standard)\b"
)
_OTHER_AMOUNT = re.compile(
    r"(?:calories|grams|milligrams|micrograms)(?: of (?:\w+ )?\w+)? (?:too (?:many|much|few|little)\b|missing\b"
    r"|(?:more|less|fewer) than (?:i|we|you|they|he|she|anyone|the doctor|my|your)\b|over budget\b)"
)
_OF_OTHERS = frozenset("too missing than over".split())


def not_meant(sentence: Sentence, claims: Sequence[Claim]) -> list[Claim]:
    """Return the claims, those that are not meant as they are said asked about.

    Parameters
    ----------
    sentence : Sentence
        The sentence.
    claims : sequence of Claim
        What every family has read in it.
    """
    if not _GATE.isdisjoint(sentence.words) and _NOT_MEANT.search(sentence.plain):
        places = tuple(sorted({at for claim in claims for at in claim.places}))
        return [asked(sentence, places)] if places else list(claims)
    other = not _OF_OTHERS.isdisjoint(sentence.words) and _OTHER_AMOUNT.search(sentence.plain) is not None
    return [_open(sentence, claim, other) for claim in claims]


def _open(sentence: Sentence, claim: Claim, other: bool) -> Claim:
    """Return a claim asked about where it is of another amount, or only likened: "about as egg-free as a custard"."""
    if isinstance(claim, AmountClaim):
        return asked(sentence, claim.places) if other else claim
    judged = isinstance(claim, (KindClaim, WordingClaim)) or (isinstance(claim, AllergenClaim) and claim.free)
    if not judged:
        return claim
    first, last = min(claim.places), max(claim.places)
    likened = sentence.text_at(first - 1) == "as" and "as" in (sentence.text_at(last + 1), sentence.text_at(last + 2))
    with_more = claim.about.kind == FOOD and sentence.texts[last + 1 : last + 3] == ("even", "with")
    if isinstance(claim, WordingClaim) and with_more:  # "the cod is lean even with the butter counted in"
        return asked(sentence, (*claim.places, last + 1))
    as_good_as = sentence.texts[max(0, first - 3) : first] == ("as", "good", "as")
    return asked(sentence, (first - 1, *claim.places)) if likened or as_good_as else claim
