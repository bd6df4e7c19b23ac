"""Who comes behind the main source: "followed by the feta", "the most protein after the turkey"."""

import re
from collections.abc import Sequence
from dataclasses import replace

from kit.speech.about.parts import after_determiners, is_food
from kit.speech.about.slots import Named, foods_from, negated
from kit.speech.about.unread import asked
from kit.speech.claim import FOOD, About, Claim
from kit.speech.proportions.dish_shares_judged import DishShareClaim
from kit.speech.words.sentence import Sentence, food_at


def runners_up(sentence: Sentence, claims: Sequence[Claim]) -> list[Claim]:
    """Return the food that is said to come behind the main source: "..., followed by the feta", "with the feta next".

    Parameters
    ----------
    sentence : Sentence
        The sentence.
    claims : sequence of Claim
        What has been read in it.
    """
    ranked = [claim for claim in claims if isinstance(claim, DishShareClaim) and claim.rank]
    ranked = ranked or _leading(sentence, claims)
    last = max(ranked, key=lambda claim: claim.rank, default=None)
    if last is None or len(ranked) != last.rank or any(claim.negated for claim in ranked):
        return []
    named = {food for claim in ranked for food in claim.about.foods}
    for at in range(max(last.places) + 1, len(sentence)):
        food = food_at(sentence, at)
        if food is None or not is_food(sentence, at) or at in last.places or food in named:
            continue
        led = " ".join(sentence.texts[max(0, at - 3) : at])
        behind = " ".join(sentence.texts[at + 1 : at + 5])
        if _FOLLOWED.search(led) or _NEXT.match(behind):
            counted = [place for place in range(at + 1, min(at + 5, len(sentence))) if sentence.text_at(place) == "two"]
            sentence.used.update((at, *counted))
            about = About(FOOD, 1.0, (food,))
            found = replace(last, places=(at,), about=about, rank=last.rank + 1, start=0, end=0)
            return [found, *runners_up(sentence, [*ranked, found])]  # "followed by the almonds and then the cheese"
    return []


def _leading(sentence: Sentence, claims: Sequence[Claim]) -> list[DishShareClaim]:
    """Return the food that brings half or more as the first, where another is said to be second."""
    if not sentence.words & {"second"}:
        return []
    shares = [claim for claim in claims if isinstance(claim, DishShareClaim) and claim.said is not None]
    half = [claim for claim in shares if claim.said is not None and claim.said.low >= _HALF and not claim.negated]
    return [replace(half[0], said=None, rank=1)] if len(half) == len(shares) == 1 else []


_HALF = 0.45


_FOLLOWED = re.compile(
    r"\b(?:followed by|then|after (?:that|them|those|it|which)|behind (?:them|it)|(?:second|next) (?:is|are|comes?)"
    r"|next)(?: the| our)?$"
)
_NEXT = re.compile(
    r"(?:is |are |comes? |coming |ranking |landing |in |a |right |just |as |not |the |close |runs? |places? )*"
    r"(?:next|second|behind|far behind|runner|number two|after)\b"
)


def second(sentence: Sentence, at: int, behind: int, about: About, named: Sequence[Named]) -> list[Claim]:
    """Return who is second, and who first: "the potatoes bring the most protein after the turkey"."""
    first, places = foods_from(sentence, after_determiners(sentence, behind + 1), sentence.clause_of(at)[-1] + 1)
    sentence.used.update({at, behind, *places, *(one.place for one in named)})
    if len(first) != 1:
        return [asked(sentence, (at, behind))]
    told = ((about, 2), (About(FOOD, 1.0, tuple(first)), 1))
    return [
        DishShareClaim(tuple(sorted({at, one.place})), who, negated(sentence, at), one.nutrient, None, rank, -1, -1)
        for one in named
        for who, rank in told
    ]
