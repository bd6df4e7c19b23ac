"""Foods that alone are said to bring an allergen: "the butter is the only dairy", "the only wheat in it is the"."""

from collections.abc import Sequence
from dataclasses import dataclass, replace

from kit.rules.verdicts import CANNOT_TELL, HOLDS, OFF
from kit.speech.about.slots import foods_from
from kit.speech.about.unread import asked
from kit.speech.allergens.allergens_judged import AllergenClaim
from kit.speech.allergens.allergens_judged import judge as judge_allergen
from kit.speech.claim import THE_DISH, Claim, Finding
from kit.speech.words.foods_said import FoodWord
from kit.speech.words.sentence import Sentence
from kit.talk.dish import Dish

FAMILY = "allergen"
_ONLY = frozenset("only sole single one".split())
_OF = frozenset(  # between "only" and the allergen: "the only ingredient with", "the only source of"
    "source sources of ingredient ingredients thing things food foods part item items with that has have contains "
    "contain containing brings bring added real bit to for carrying".split()
)
_HERE = frozenset("in it this here there the dish recipe whole at all anywhere that is are we use".split())
_BE = ("is", "are")
_LEADS = ("from", "in", "comes", "come", "with")
_BEFORE = frozenset("not the also actually really probably of course".split())


@dataclass(frozen=True, slots=True)
class OnlyClaim(Claim):
    """Some foods alone bring an allergen to the dish; denied, others bring it too."""

    allergen: str = ""
    foods: tuple[FoodWord, ...] = ()


def read(sentence: Sentence) -> list[Claim]:
    """Return the foods that a sentence says are the only ones with an allergen.

    Parameters
    ----------
    sentence : Sentence
        The sentence; the tokens that are read are used up.
    """
    if sentence.words.isdisjoint(_ONLY):
        return []
    claims: list[Claim] = []
    for at in sorted({*sentence.where(_ONLY), *sentence.places("rank")}):
        if sentence.is_a(at, "rank") and not sentence.is_a(at, "rank", "only"):
            continue
        if sentence.text_at(at - 1) not in ("the", "our", "its"):
            continue
        place = sentence.after(at + 1, lambda token: token.text in _OF)
        if not sentence.is_a(place, "allergen") or sentence.is_a(place + 1, "wording") or place in sentence.used:
            continue
        claim = _foods_before(sentence, at, place) or _foods_behind(sentence, at, place)
        if claim is not None and not claim.negated and "not" in sentence.texts[place : max(claim.places)]:
            claims.append(asked(sentence, (at, *claim.places)))  # "the only nuts in it are not pecans"
        elif claim is not None:
            claims.append(claim)
        elif not sentence.is_a(place, "allergen", "any"):
            claims.append(asked(sentence, (at, place)))  # "and the butter the only thing with milk"
            sentence.used.update((at, place))
        sentence.used.update((at, *claim.places) if claim is not None else ())
    return claims


def _foods_before(sentence: Sentence, at: int, allergen: int) -> OnlyClaim | None:
    """Return "the butter is the only dairy", "the butter and the cream are not the only source of milk"."""
    verb = at - 1
    while verb > 0 and sentence.text_at(verb) in _BEFORE:
        verb -= 1
    if sentence.text_at(verb) not in _BE:
        return None
    first = sentence.clause_of(verb)[0]
    foods, places = foods_from(sentence, first, verb)
    if not foods or places[-1] != verb - 1 or _lists_allergens(sentence, allergen, places):
        return None
    denied = "not" in sentence.texts[verb:at]
    negators = [place for place in range(verb, at) if sentence.text_at(place) == "not"]
    return _claim(sentence, allergen, foods, (*places, *negators), denied)


def _foods_behind(sentence: Sentence, at: int, allergen: int) -> OnlyClaim | None:
    """Return "the only dairy in it is the butter", "the only gluten comes from the crackers"."""
    verb = sentence.after(allergen + 1, lambda token: token.text in _HERE - {*_BE} or token.is_a("dish"))
    if sentence.text_at(verb) not in (*_BE, "comes", "come"):
        return None
    start = sentence.after(verb + 1, lambda token: token.text in (*_LEADS, "not"))
    if sentence.text_at(start - 1) == "in" and sentence.tokens[verb].text in _BE and sentence.is_a(start, "pronoun"):
        return None
    over = sentence.after(start, lambda token: token.text in ("the", "that", "our", "of") or token.quantity is not None)
    foods, places = foods_from(sentence, over, len(sentence))  # "the three tablespoons of flour"
    if not foods or _lists_allergens(sentence, allergen, places):
        return None
    return _claim(sentence, allergen, foods, places, False)


def _lists_allergens(sentence: Sentence, allergen: int, places: Sequence[int]) -> bool:
    """Return whether it is allergens that are listed as the only ones: "the only allergens are milk and egg"."""
    return sentence.is_a(allergen, "allergen", "any") and any(sentence.is_a(place, "allergen") for place in places)


def _claim(sentence: Sentence, allergen: int, foods: list[FoodWord], places: Sequence[int], denied: bool) -> OnlyClaim:
    name = sentence.tokens[allergen].parts["allergen"]
    return OnlyClaim((*sorted(places), allergen), THE_DISH, denied, name, tuple(foods))


def judge(claim: OnlyClaim, dish: Dish) -> Finding:
    """Judge whether some foods alone bring an allergen, by the facts of each food."""
    brings = AllergenClaim(claim.places, THE_DISH, False, claim.allergen, foods=claim.foods)
    there = judge_allergen(brings, dish)
    if there.verdict != HOLDS:
        return there  # one of them does not bring it, whether others do or not
    found = judge_allergen(replace(brings, only=True), dish)
    if not claim.negated:
        return found
    others = _others(brings, dish)
    if found.verdict == OFF:
        return Finding(HOLDS, found.because)
    return Finding(OFF if others is None else CANNOT_TELL, others or found.because)


def _others(claim: AllergenClaim, dish: Dish) -> str | None:
    """Return which other packages may bring an allergen; None where none may."""
    apart = replace(claim, free=True, foods=(), but=claim.foods)
    found = judge_allergen(apart, dish)
    return found.because if found.verdict == CANNOT_TELL else None
