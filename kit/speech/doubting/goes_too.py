"""Other foods of which the same is told in a few words, or the contrary: "so does the cream", "nor do the oats"."""

from collections.abc import Sequence
from dataclasses import replace

from kit.speech.about.slots import foods_from
from kit.speech.about.unread import asked
from kit.speech.allergens.allergens_judged import AllergenClaim
from kit.speech.claim import FOOD, About, Claim
from kit.speech.descriptions.kinds import KindClaim
from kit.speech.descriptions.wordings_claim import WordingClaim
from kit.speech.words.foods_said import FoodWord
from kit.speech.words.sentence import Sentence

_AUXILIARIES = frozenset("do does is are has have did can will".split())
_SAME = ("so", "neither", "nor")
_JOINS = (",", "and", ";", ".", "but", "while")
_TOLD = (AllergenClaim, KindClaim, WordingClaim)
_ENDS = ("", ".", "!", ",", ";")


def with_others(sentence: Sentence, claims: Sequence[Claim]) -> list[Claim]:
    """Return the claims with those of the foods of which the same is told behind them, or the contrary.

    "The cream has milk in it, and so does the butter", "the oats bring no milk, and neither does the butter",
    "the cherries have none of it, but the cream does".

    Parameters
    ----------
    sentence : Sentence
        The sentence; the tokens that are read are used up.
    claims : sequence of Claim
        What has been read of foods in it.
    """
    if len(claims) == 0 or sentence.words.isdisjoint(_AUXILIARIES | {"so"}):
        return list(claims)
    found = list(claims)
    for at in range(2, len(sentence)):
        short = sentence.text_at(at) == "so" and sentence.tokens[at].possessive  # "and so's the butter"
        if at in sentence.used or not (short or sentence.text_at(at) in _AUXILIARIES):
            continue
        told = _same(sentence, at, short) or _also(sentence, at) or _contrary(sentence, at)
        if told is None:
            continue
        start, places, foods, turned = told
        before = [claim for claim in claims if isinstance(claim, _TOLD) and max(claim.places) < start]
        if not before or any(place in claim.places for claim in claims for place in places):
            continue
        last = max(before, key=lambda claim: max(claim.places))
        if last.about.kind != FOOD or (turned is not None and turned != _denies(last)):
            continue
        sentence.used.update((*places, *range(start, at + 2)))
        if any(sentence.text_at(spot) in _AUXILIARIES for spot in range(max(last.places) + 1, start)):
            found.append(asked(sentence, (start, max(places))))  # of what is said of another food between the two
            continue
        for word in foods:
            found.append(_of(last, About(FOOD, 1.0, (word,)), tuple(places), turned))
    return found


def _of(last: Claim, about: About, places: tuple[int, ...], turned: bool | None) -> Claim:
    """Return a claim said of another food: the same, or whether it has what the other has not."""
    if turned is not None and isinstance(last, AllergenClaim):
        return replace(last, about=about, places=places, negated=False, free=not turned, safe=False, but=())
    if turned is not None:
        return replace(last, about=about, places=places, negated=not turned)
    return replace(last, about=about, places=places)


def _denies(claim: Claim) -> bool:
    return claim.negated != (isinstance(claim, AllergenClaim) and claim.free)


def _also(sentence: Sentence, at: int) -> tuple[int, list[int], list[FoodWord], bool | None] | None:
    """Return the foods of which the same is told with "too" behind: "and the broth does too"."""
    denied = sentence.text_at(at + 1) == "not"
    behind = sentence.texts[at + 1 + denied : at + 3 + denied]
    first = at - 1
    while first > 0 and sentence.text_at(first) not in ("and", ",", ";"):
        first -= 1
    if behind[:1] not in (("too",), ("either",), ("also",)) and behind != ("as", "well"):
        return None
    foods, places = foods_from(sentence, first + 1, at)
    return (first, places, foods, None) if places and places[-1] == at - 1 else None


def _same(
    sentence: Sentence, at: int, short: bool = False
) -> tuple[int, list[int], list[FoodWord], bool | None] | None:
    """Return the foods of which the same is told: "and neither does the cornstarch", "and so's the butter"."""
    if not short and sentence.text_at(at - 1) not in _SAME:
        return None
    start = at - (not short)
    while sentence.text_at(start - 1) in _JOINS:
        start -= 1
    foods, places = foods_from(sentence, at + 1, len(sentence))
    ends = bool(places) and sentence.text_at(places[-1] + 1) in (*_ENDS, "either", "too")
    return (start, places, foods, None) if ends and start < at - (not short) else None


def _contrary(sentence: Sentence, at: int) -> tuple[int, list[int], list[FoodWord], bool | None] | None:
    """Return the foods of which the contrary is told: "but the sour cream does", "but the butter isn't"."""
    denied = sentence.text_at(at + 1) == "not"
    behind = sentence.text_at(at + 1 + denied)
    first = at - 1
    while first > 0 and sentence.text_at(first) not in ("but", "while", ";", ","):
        first -= 1
    if sentence.text_at(first) not in ("but", "while") or behind not in _ENDS:
        return None
    foods, places = foods_from(sentence, first + 1, at)
    whole = bool(places) and places[-1] == at - 1
    return (first, places, foods, not denied) if whole else None
