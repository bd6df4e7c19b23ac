"""Numbers in the statement of a claim that no family has read: what they may mean is asked."""

from collections.abc import Sequence

from kit.speech.claim import SERVING, WEIGHT, Claim
from kit.speech.comparisons_claim import ComparisonClaim
from kit.speech.quantities_said import WEIGHTS
from kit.speech.sentence import Sentence
from kit.speech.tokens import Quantity
from kit.speech.unread import asked

_OF_TIME_OR_HEAT = ("minute", "second", "hour", "degree", "celsius", "day", "week", "month", "year")
_PLAIN_THINGS = frozenset(  # counted in kitchen talk, and nothing that a claim is about
    "ways way things thing reasons reason notes words points times minutes steps step batches batch pots pans pieces "
    "forks spoons hands layers inch inches inch-pan seconds tricks kinds sorts rounds go goes".split()
)


def left(sentence: Sentence, claims: Sequence[Claim]) -> list[Claim]:
    """Return the numbers that stand in the statement of a claim and that nothing has accounted for, as asked about.

    Parameters
    ----------
    sentence : Sentence
        The sentence, when every family has read it.
    claims : sequence of Claim
        What they have read.
    """
    told = {sentence.clauses[at] for claim in claims for at in claim.places}
    places = {at for claim in claims for at in claim.places}
    found = [
        at
        for at, said in sentence.quantities()
        if at not in places
        and sentence.clauses[at] in told
        and not any(_takes_up(claim, said) for claim in claims)
        and not _is_kitchen_talk(sentence, at, said)
    ]
    sentence.used.update(found)
    return [asked(sentence, (at,)) for at in found]


def _takes_up(claim: Claim, said: Quantity) -> bool:
    """Return whether a claim is about so much: "half a plate has", "two eggs give you"."""
    others = [claim.other] if isinstance(claim, ComparisonClaim) else []
    for about in (claim.about, *others):
        of_weight = about.kind == WEIGHT and said.unit in WEIGHTS
        count = said.value * WEIGHTS[said.unit] if of_weight else said.value
        if abs(about.count - count) < 1e-6 and (about.kind != SERVING or not said.unit or said.unit == "times"):
            return True
    return False


def _is_kitchen_talk(sentence: Sentence, at: int, said: Quantity) -> bool:
    one = said.value == 1 and not said.unit and not said.is_fraction  # "in this one"
    return one or said.unit in _OF_TIME_OR_HEAT or sentence.text_at(at + 1) in _PLAIN_THINGS
