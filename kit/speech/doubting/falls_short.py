"""Amounts that are denied by what they do not reach: "does not come to 400 calories", "won't even cover a fifth"."""

from collections.abc import Sequence
from dataclasses import replace

from kit.speech.about.slots import share_at
from kit.speech.claim import Claim
from kit.speech.figures.amounts import AmountClaim
from kit.speech.figures.weights_said import WeightClaim
from kit.speech.proportions.day_shares import DayShareClaim
from kit.speech.proportions.dish_shares_judged import DishShareClaim
from kit.speech.proportions.energy_shares import EnergyShareClaim
from kit.speech.proportions.nutrient_parts import PartClaim
from kit.speech.words.sentence import Sentence

_COUNTED = (AmountClaim, DayShareClaim, DishShareClaim, EnergyShareClaim, PartClaim, WeightClaim)
_AUXILIARIES = frozenset("do does did will would can could may might should has have had".split())
_ROUGHLY = ("about", "around", "roughly", "approximately", "some ", "close to", "near ")
_SAYS = frozenset("say says call think claim put be been guess believe mean state".split())  # the number is denied


def falling_short(sentence: Sentence, claims: Sequence[Claim]) -> list[Claim]:
    """Return the claims, a number that something does not reach said to be more than there is.

    "It is not 400 calories" says that it is another number; "it does not have 400 calories", that there are fewer.

    Parameters
    ----------
    sentence : Sentence
        The sentence.
    claims : sequence of Claim
        What every family has read in it, denied where it is denied.
    """
    return [_short(sentence, claim) if claim.negated else claim for claim in claims]


def _short(sentence: Sentence, claim: Claim) -> Claim:
    if not isinstance(claim, _COUNTED) or claim.said is None or claim.said.relation != "about":
        return claim
    counted = [at for at in claim.places if share_at(sentence, at) is not None or sentence.tokens[at].quantity]
    rough = counted and sentence.text_at(counted[0]).startswith(_ROUGHLY)  # "does not have about 29 grams"
    relation = _relation(sentence, counted[0]) if counted and not rough else ""
    return replace(claim, negated=False, said=replace(claim.said, relation=relation)) if relation else claim


def _relation(sentence: Sentence, at: int) -> str:
    """Return "short of" for a number before which stands that it is not reached, "nearly" for one not quite reached."""
    if any(sentence.text_at(place) == "but" for place in range(at + 1, at + 5)):
        return ""  # "does not have 300 but 500 milligrams"
    for place in range(at - 1, sentence.clause_of(at)[0], -1):
        word = sentence.text_at(place)
        if word not in ("not", "never"):
            continue
        between = sentence.texts[place + 1 : at]
        led = sentence.text_at(place - 1) in _AUXILIARIES or (word == "never" and bool(between))
        if not led or not _SAYS.isdisjoint(between):
            return ""
        return "nearly" if "quite" in between else "short of"
    return ""
