"""What is said but not meant, or meant of something else: "I'd be surprised if", "my foot", "in name only"."""

import re
from collections.abc import Sequence

from kit.speech.about.parts import after_determiners, is_dish
from kit.speech.about.unread import asked
from kit.speech.allergens.allergens_judged import AllergenClaim
from kit.speech.changes.effects_judged import EffectClaim
from kit.speech.claim import FOOD, Claim
from kit.speech.descriptions.kinds import KindClaim
from kit.speech.descriptions.wordings_claim import WordingClaim
from kit.speech.figures.amounts import AmountClaim
from kit.speech.proportions.day_shares import DayShareClaim
from kit.speech.safety.keeping_judged import TimeClaim
from kit.speech.words.sentence import Sentence, food_at

_GATE = frozenset(
    "surprise surprised surprises amaze amazed astonish astonished shock shocked miracle hat foot eye nobody nope name "
    "used dreams dream pull pulling joke joking kidding lie lying fib wish wishful rules book label "
    "pigs bluff odd strange weird news me paper theory truth reality going".split()
)
_NOT_MEANT = re.compile(
    r"\b(?:surpris|amaz|astonish|shock)\w*(?: (?:me|you|us|anyone))?(?: greatly| very much)? if\b"
    r"|\b(?:miracle|odd|strange|weird|news to (?:me|us)) if\b"
    r"|\bnot me\b|\b(?:on paper|in theory|the truth is|the reality is|in reality|in truth)\b"
    r"|\bgoing by (?:the|my|an?) (?:old|other|original|first|last|box|packet|package|label)\b"
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
    found = [_open(sentence, claim, other) for claim in claims]
    judged = [claim for claim in found if isinstance(claim, (AllergenClaim, KindClaim, WordingClaim))]
    if judged and (on := _on_condition(sentence, max(judged[0].places))):
        found.append(asked(sentence, on))  # "nut-free as long as you count almonds as fruit"
    return found


_CONDITION = re.compile(
    r"(?:as|so) long as|(?:provided|assuming|supposing|granted|given)(?: that)? (?:you|it|the|we|they)\b"
)


def _on_condition(sentence: Sentence, at: int) -> tuple[int, ...]:
    """Return the places of a condition that is told behind a claim."""
    for place in range(at + 1, min(len(sentence) - 2, at + 8)):
        if _CONDITION.match(" ".join(sentence.texts[place : place + 4])):
            return (place, len(sentence) - 1)
    return ()


_IN_DEFECT = re.compile(
    r"\b(?:fridge|refrigerator|freezer) (?:is|was|goes|gets) (?:off|out|broken|unplugged|warm|down|full|not on)\b"
    r"|\bcount(?:ed|ing) from (?!the (?:day|time|moment) (?:you|it|we) (?:made|make|cook|was|is))"
)
_IS_THE_NEED = re.compile(
    r"\b(?:is|are|equals?) (?:all |exactly |about )?what (?:you|anyone|we|an? \w+) (?:needs?|wants?|should|requires?)\b"
)


_EVEN = (("with",), ("after",), ("once",), ("when",), ("if",))


def _open(sentence: Sentence, claim: Claim, other: bool) -> Claim:
    """Return a claim asked about where it is of another amount, or only likened: "about as egg-free as a custard"."""
    if isinstance(claim, AmountClaim):
        return asked(sentence, claim.places) if other else claim
    if isinstance(claim, TimeClaim):
        return asked(sentence, claim.places) if _IN_DEFECT.search(sentence.plain) else claim
    if isinstance(claim, DayShareClaim):  # "a fifth of the calcium in it is what you need in a day"
        return asked(sentence, claim.places) if _IS_THE_NEED.search(sentence.plain) else claim
    if isinstance(claim, EffectClaim):
        return asked(sentence, claim.places) if _of_another_food(sentence, claim) else claim
    judged = isinstance(claim, (KindClaim, WordingClaim)) or (isinstance(claim, AllergenClaim) and claim.free)
    if not judged:
        return claim
    first, last = min(claim.places), max(claim.places)
    likened = sentence.text_at(first - 1) == "as" and "as" in (sentence.text_at(last + 1), sentence.text_at(last + 2))
    behind = sentence.texts[last + 1 : last + 3]
    with_more = claim.about.kind == FOOD and behind[:1] == ("even",) and behind[1:] in _EVEN
    if behind in (("only", "when"), ("only", "while"), ("only", "raw")):
        return asked(sentence, (*claim.places, last + 1))  # "high in vitamin C only when raw"
    if isinstance(claim, WordingClaim) and with_more:  # "the cod is lean even with the butter counted in"
        return asked(sentence, (*claim.places, last + 1))
    as_good_as = sentence.texts[max(0, first - 3) : first] == ("as", "good", "as")
    return asked(sentence, (first - 1, *claim.places)) if likened or as_good_as else claim


def _of_another_food(sentence: Sentence, claim: EffectClaim) -> bool:
    """Return whether what a change does is told of a food that it leaves as it is: "half of the fat in the milk"."""
    at = max(claim.places) + 1
    if sentence.text_at(at) != "in" or claim.change is None:
        return False
    over = after_determiners(sentence, at + 1)
    food = food_at(sentence, over)
    named = {key for word in claim.change.foods for key in word.inside}
    return food is not None and not is_dish(sentence, over) and bool(food.inside) and named.isdisjoint(food.inside)
