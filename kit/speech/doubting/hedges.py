"""Words that change what the other claims of a sentence are about: "not counting", "for two", "with a beer"."""

import re
from collections.abc import Sequence

from kit.speech.about.parts import is_dish
from kit.speech.about.unread import UnreadClaim, asked
from kit.speech.claim import FOOD, SERVING, Claim
from kit.speech.descriptions.wordings_claim import WordingClaim
from kit.speech.words.sentence import Sentence, food_at

_HEDGES = frozenset(
    "myth untrue false wrong supposedly allegedly excluding ignoring except besides child childs children kid kids "
    "toddler "
    "toddlers baby babies teenager teenagers athlete athletes smaller larger bigger second seconds refill weekly "
    "week month "
    "year yearly monthly hypothetically pretend imagine suppose once mile miles misses".split()
)
_HEDGED = (
    "not counting",
    "leaving aside",
    "apart from",
    "aside from",
    "used to",
    "other than",
    "not including",
    "setting aside",
    "on top of",
    "on the side",
    "alongside",
    "along with",
    "together with a",
    "plus a",
    "add a",
    "with a side",
    "served with",
    "half size",
    "half portion",
    "before the",
    "save for the",
    "give or take the",
    "before any",
)
_ALONG = ("along with", "alongside")
_SET_APART = ("other than", "apart from", "aside from", "besides", "except for", "except")
_SHARED_OUT = re.compile(
    r"\bthe lot\b"
    r"|\b(?:twice|double|triple|half|three times) that\b"
    r"|\bbetween (?:the|you|us|them|both|all)\b"
    r"|\bfor (?:two|three|four|five|six|eight|ten|both|everyone|\d+)(?: of (?:you|us)| people)? *(?:[.,;!?]|$)"
)
# What others say, or she once said, is no claim of hers: what holds of it is asked.
_REPORTED = re.compile(
    r"\bi (?:used to (?:say|think|tell)|said|thought)\b"
    r"|\b(?:they|people|folk|folks|some|many) (?:often |always )?(?:say|think|claim|believe|tell)\b"
    r"|\b(?:you|one) (?:may|might|would|could) (?:have thought|think|have heard|expect|guess|assume)\b|\bmyth\b"
    r"|\baccording to\b|\b(?:says|said) (?:my|the|a|his|her|our|your|one|some)\b"
)
_COUNTED = ("AmountClaim", "DayShareClaim", "EnergyShareClaim", "WordingClaim")


def qualifiers(sentence: Sentence, claims: Sequence[Claim], change: object) -> list[Claim]:
    """Return words that change what the other claims are about, and that none of them has accounted for."""
    counted = [claim for claim in claims if type(claim).__name__ in _COUNTED]
    if not counted:
        return []
    text = sentence.plain
    two = all(claim.about.kind == SERVING and claim.about.count == 2 for claim in counted)  # "seconds, so two plates"
    places = [
        at
        for at, token in enumerate(sentence.tokens)
        if at not in sentence.used
        and token.text in _HEDGES
        and sentence.text_at(at - 1) != "of"  # "the time of year"
        and not (token.text == "seconds" and two)
        and not (token.text == "once" and _ONCE_IT_IS.match(" ".join(sentence.texts[at : at + 4])))
    ]
    places += [at for at in range(len(sentence)) if at not in sentence.used and _counted_in(sentence, at)]
    apart = any(isinstance(claim, WordingClaim) and claim.excepted for claim in claims)
    hedged = [words for words in _HEDGED if f" {words} " in f" {text} " and not (apart and words in _SET_APART)]
    hedged = [words for words in hedged if not (words in _ALONG and _amount_behind(sentence, words))]
    if all(claim.about.count == 0.5 for claim in counted):
        hedged = [words for words in hedged if words != "half portion"]
    several = all(claim.about.count > 1 or len(claim.about.foods) > 1 for claim in counted)
    shared = [match[0] for match in _SHARED_OUT.finditer(text)]
    hedged += [words for words in shared if not (several and words == "between them")]
    others = [
        at
        for at in range(len(sentence))
        if at not in sentence.used
        and change is None
        and _is_other_food(sentence, at)
        and any(type(claim).__name__ == "AmountClaim" and claim.about.kind != FOOD for claim in counted)
    ]
    without = [
        at
        for at in range(len(sentence))
        if at not in sentence.used
        and change is None
        and sentence.text_at(at) in ("without", "minus", "sans")
        and any(sentence.tokens[spot].food is not None for spot in range(at + 1, min(at + 5, len(sentence))))
    ]
    besides = _set_beside(sentence, counted) if change is None else []
    without += besides
    if not (places or hedged or others or without):
        return []
    spots = tuple(sorted({*places, *others, *without})) or tuple(counted[0].places)
    return [UnreadClaim(spots, words=sentence.said(spots) if places or others or without else hedged[0])]


_DRESSED = frozenset("buttered frosted iced glazed sugared overfilled loaded dressed".split())
_ALL_INCLUDED = ("all", "everything", "everyone")


def _counted_in(sentence: Sentence, at: int) -> bool:
    """Return whether something that is not in the dish is counted in: "the frosting included", "a buttered slice"."""
    text = sentence.text_at(at)
    if text in _DRESSED and is_dish(sentence, at + 1):
        return True
    thing = at - 1 if text == "included" else at + 1 + (sentence.text_at(at + 1) in ("the", "a", "its"))
    if text not in ("included", "including") or sentence.text_at(thing) in _ALL_INCLUDED:
        return False
    if sentence.text_at(at - 1) == "not":
        return False
    food = food_at(sentence, thing)
    return food is None or not food.inside


_ONCE_IT_IS = re.compile(  # "once it's all on the plate": when it is eaten, and not at another time
    r"once (?:it|they|that|everything|you) (?:is|are|have|has|gets?|comes?) (?!left|gone|out|without|cut|double|half)"
)


def _amount_behind(sentence: Sentence, words: str) -> bool:
    """Return whether another amount of the same follows: "30 grams of protein, along with 25 grams of fat"."""
    last = words.split(" ")[-1]
    behind = [at + 1 for at in range(len(sentence) - 1) if sentence.text_at(at) == last]
    return all(sentence.tokens[at].amount.unit in _OF_NUTRIENTS for at in behind)


_OF_NUTRIENTS = ("g", "mg", "µg", "kcal", "kJ", "%")


_BESIDE = frozenset(
    "aside plus minus before forget forgetting count counting counted include included includes extra added adding add "
    "top apart exclude excluded ignore then".split()
)


def _set_beside(sentence: Sentence, counted: Sequence[Claim]) -> list[int]:
    """Return foods of the dish that no claim has taken up and that are told from it: "cheese aside", "plus the ham"."""
    if _BESIDE.isdisjoint(sentence.words):
        return []
    if not any(type(claim).__name__ in _OF_THE_DISH and claim.about.kind != FOOD for claim in counted):
        return []
    return [
        at
        for at in range(len(sentence))
        if at not in sentence.used
        and (word := food_at(sentence, at)) is not None
        and word.inside
        and not is_dish(sentence, at)
        and (not sentence.is_a(at, "nutrient") or sentence.text_at(at + 1) == "aside")
        and not _BESIDE.isdisjoint((*sentence.texts[max(0, at - 4) : at], *sentence.texts[at + 1 : at + 4]))
    ]


_OF_THE_DISH = ("AmountClaim", "DayShareClaim", "EnergyShareClaim")


def reported(sentence: Sentence, claims: Sequence[Claim]) -> list[Claim]:
    """Return the claims with those that are only reported asked about: "I used to say it had 600 calories"."""
    found: list[Claim] = []
    for claim in claims:
        own = " ".join(sentence.text_at(at) for at in sentence.clause_of(claim.places[0]))
        said = _REPORTED.search(own)
        found.append(asked(sentence, claim.places) if said else claim)
    return found


def _is_other_food(sentence: Sentence, at: int) -> bool:
    """Return whether a token names a food that is not in the dish, and so is eaten beside it."""
    food = food_at(sentence, at)
    token = sentence.tokens[at]
    return (
        food is not None
        and food.exact
        and not food.inside
        and "water" not in food.outside  # which a cook cools, boils and rinses with
        and not token.is_a("nutrient")
        and not token.is_a("allergen")
        and not is_dish(sentence, at)
    )
