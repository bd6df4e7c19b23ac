"""Numbers said of something else than it seems: of several together, of what is set apart, of another food."""

import re

from kit.speech.about.parts import is_serving
from kit.speech.about.unread import asked
from kit.speech.claim import SERVING, Claim
from kit.speech.figures.amounts import AmountClaim
from kit.speech.proportions.dish_shares_judged import DishShareClaim
from kit.speech.proportions.energy_shares import EnergyShareClaim
from kit.speech.proportions.shares import MACROS
from kit.speech.words.sentence import Sentence, food_at

_EATEN_WHOLE = re.compile(r"\b(?:eat|finish|have|drink|polish off) (?:the|a) (?:whole|entire) \w+ (?:to|for|before)\b")
_HALF_NOW = re.compile(  # "eat half now and half later", "cut in two, each half is"
    r"^cut in (?:half|two) , each half\b|\bhalf (?:now|today|tonight|(?:at|for) (?:noon|lunch))\b.*\bhalf\b"
)
_AND_MORE = re.compile(
    r"^(?:so |and )?(?:the|this|our) (?:whole|entire) \w+ and \w+ (?:has|have|is|are|comes?|holds?)\b"
)
_MADE_SO = re.compile(r"\b(?:twice|double|half|triple) the \w+ (?:would|will|can) make\b")
_LEAVES = ("leaving out", "leave out", "skipping", "skip", "dropping", "drop", "omitting")


def of_something_else(sentence: Sentence, claim: Claim) -> Claim:
    """Return a claim as one that is asked about where its number is said of something else.

    Parameters
    ----------
    sentence : Sentence
        The sentence.
    claim : Claim
        What a family has read in it.
    """
    text = sentence.plain
    doubts = (
        isinstance(claim, AmountClaim) and _amount(sentence, claim, text),
        isinstance(claim, EnergyShareClaim) and _joined_with_another(sentence, claim),
        isinstance(claim, DishShareClaim) and _share(sentence, claim, text),
    )
    return asked(sentence, claim.places) if any(doubts) else claim


def _amount(sentence: Sentence, claim: AmountClaim, text: str) -> bool:
    at = next((place for place in claim.places if sentence.tokens[place].quantity is not None), claim.places[0])
    of_dish = claim.about.kind == SERVING and claim.about.count == 1
    clause = sentence.clause_of(at)
    if sentence.texts[max(0, at - 2) : at] == ("all", "but"):  # "all but two grams of the fat is saturated"
        return True
    if claim.about.kind == SERVING and _HALF_NOW.search(text):
        return True
    if of_dish and (_EATEN_WHOLE.search(text) or _AND_MORE.match(text)):
        return True
    if of_dish and any(
        sentence.text_at(place) == "both" for place in clause if place < at and _measured(sentence, place)
    ):
        return True  # "both cups of ricotta together bring"
    if of_dish and any(
        sentence.text_at(place) in ("share", "shares") and is_serving(sentence, place - 1) for place in clause[1:]
    ):
        return True  # "the four bowls share 500 calories"
    if of_dish and text.startswith(_LEAVES) and _leaves_again(sentence, at):
        return True  # "leaving out the salt saves 290 milligrams, and leaving out the oil eight grams of fat"
    from_one = [
        place
        for place in clause
        if place > at
        and sentence.tokens[place].parts.get("nutrient") in MACROS
        and sentence.text_at(place - 1) == "from"
        and not any(
            sentence.is_a(between, "share") or sentence.tokens[between].quantity is not None
            for between in range(at + 1, place)  # "230 calories, a third of them from fat"
        )
    ]
    return claim.nutrient == "energy" and bool(from_one) and not claim.given_by  # "170 calories come from fat"


def _measured(sentence: Sentence, at: int) -> bool:
    return sentence.is_a(at + 1, "unit") or sentence.text_at(at + 2) == "of"


def _leaves_again(sentence: Sentence, at: int) -> bool:
    """Return whether another change leads to an amount that has no verb of its own."""
    led = [
        place for place in range(1, at) if sentence.text_at(place) in _LEAVES or sentence.text_at(place) == "leaving"
    ]
    return bool(led) and not any(
        sentence.is_a(place, "verb_save") or sentence.is_a(place, "verb_bring") for place in range(led[-1] + 1, at)
    )


def _joined_with_another(sentence: Sentence, claim: EnergyShareClaim) -> bool:
    """Return whether another nutrient is told with the claim's, of which nothing was read: "fat and protein bring"."""
    for at in claim.places:
        other = at - 2
        if not sentence.is_a(at, "nutrient") or sentence.text_at(at - 1) not in ("and", "plus", "&") or other < 0:
            continue
        # An amount or a share just before it is the other one's.
        counted = any(sentence.tokens[place].quantity is not None for place in range(max(0, other - 3), other))
        shared = any(sentence.is_a(place, "share") for place in range(max(0, other - 3), other))
        number_behind = max(claim.places) > at
        each = other in sentence.used and not sentence.words.isdisjoint(("each", "apiece"))  # read of each of them
        if sentence.is_a(other, "nutrient") and not each and number_behind and not counted and not shared:
            return sentence.tokens[other].parts["nutrient"] != sentence.tokens[at].parts["nutrient"]
    return False


def _share(sentence: Sentence, claim: DishShareClaim, text: str) -> bool:
    if claim.said is None:
        return False
    number = next((at for at in claim.places if sentence.is_a(at, "share") or sentence.tokens[at].quantity), None)
    if number is None:
        return False
    if sentence.text_at(number - 2) in ("second", "third") and sentence.text_at(number - 1) == "at":
        return True  # "with the arugula a close second at forty percent"
    if len(claim.about.foods) > 1 and not {"each", "apiece"}.isdisjoint(
        map(sentence.text_at, sentence.clause_of(number))
    ):
        return True
    behind = food_at(sentence, number - 2) if sentence.text_at(number - 1) == "behind" else None
    if behind is not None and behind not in claim.about.foods:
        return True  # "the beef is behind the protein and the noodles behind a third of the fat"
    return _MADE_SO.search(text) is not None
