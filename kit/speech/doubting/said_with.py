"""What stands with an amount and belongs to it: another nutrient, or the one food that it is all said to be of."""

import re
from collections.abc import Sequence

from kit.speech.about.parts import DETERMINERS, back
from kit.speech.about.unread import ONE_THING, asked
from kit.speech.allergens.allergens_judged import AllergenClaim
from kit.speech.claim import Claim
from kit.speech.figures.amounts import AmountClaim
from kit.speech.proportions.day_shares import DayShareClaim
from kit.speech.proportions.dish_shares_judged import DishShareClaim
from kit.speech.proportions.energy_shares import EnergyShareClaim
from kit.speech.words.sentence import Sentence, food_at

_ALL = (
    r"(?:all|mostly|mainly|largely|chiefly|primarily|only|just|purely|entirely|solely|principally|nothing but"
    r"|practically all|most)(?: of (?:it|that|them|this|those))?(?: (?:is|are|being|plain|pure|simply))?"
    r"(?: the| its| our)?"
)
_ALL_OF_IT = re.compile(rf"(?:^| |, |[(:–—-] ?){_ALL}$")
_ALL_BEHIND = re.compile(r"(?:,|\() (?:mostly|mainly|largely|chiefly|primarily|nearly all|only|entirely|all of it)\b")
_JOINS = ("and", "plus", "or", "&", "as well as", "nor")
_VERBS_BEHIND = ("is", "are", "brings", "bring", "has", "have", "goes", "gives", "comes", "in")


def all_of_one(sentence: Sentence, claims: Sequence[Claim]) -> list[Claim]:
    """Return the one food that an amount is all, or mostly, said to be of: "26 grams of protein, mostly rice".

    Parameters
    ----------
    sentence : Sentence
        The sentence.
    claims : sequence of Claim
        What has been read in it.
    """
    counted = [claim for claim in claims if isinstance(claim, (AmountClaim, DayShareClaim))]
    if not counted:
        return []
    first = min(min(claim.places) for claim in counted)
    for at in range(first, len(sentence)):
        word = food_at(sentence, at)
        if word is None or at in sentence.used or any(at in claim.places for claim in claims):
            continue
        led = " ".join(sentence.texts[max(0, at - 5) : at])
        behind = " ".join(sentence.texts[at + 1 : at + 4])
        leads = _ALL_OF_IT.search(led) is not None and sentence.text_at(at + 1) not in _VERBS_BEHIND
        if leads or _ALL_BEHIND.match(behind):
            return [asked(sentence, (at,), (max(0, at - 1), at))]
    return []


def with_another(sentence: Sentence, claim: Claim) -> Claim:
    """Return an amount of one nutrient beside which another stands as asked about: "fat and protein are 26 grams"."""
    if not isinstance(claim, (AmountClaim, EnergyShareClaim)):
        return claim
    for place in claim.places:
        if not sentence.is_a(place, "nutrient"):
            continue
        for joint, other in ((back(sentence, place), -1), (place + 1, 1)):
            over = joint + other - 2 * (sentence.texts[max(0, joint - 2) : joint + 1] == ("as", "well", "as"))
            while sentence.text_at(over) in DETERMINERS:
                over += other
            named = sentence.is_a(over, "nutrient") and over not in sentence.used and over not in claim.places
            ends = other < 0 or sentence.text_at(over + 1) in ("", ".", ",", "!", "together", "combined", "a", "per")
            if named and (sentence.text_at(joint) in _JOINS or over < joint - 2) and ends:
                return asked(sentence, (over, *claim.places))
    return claim


def in_turn(sentence: Sentence, claim: Claim) -> Claim:
    """Return an amount that is told in turn with others as asked about: "protein and fat are at 26 and nine grams"."""
    counted = isinstance(claim, (AmountClaim, DayShareClaim, DishShareClaim))
    return asked(sentence, claim.places) if counted and "respectively" in sentence.words else claim


def of_one_source(sentence: Sentence, claim: Claim) -> Claim:
    """Return an allergen that one thing alone is said to bring as asked about: "just one source of dairy: the milk"."""
    alone = isinstance(claim, AllergenClaim) and not (claim.free or claim.safe)
    return asked(sentence, claim.places) if alone and ONE_THING.search(sentence.text.lower()) else claim
