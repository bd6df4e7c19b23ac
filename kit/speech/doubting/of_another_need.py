"""Shares that are not of what a day needs: of a week's, of a meal's, of what something else holds."""

import re

from kit.speech.about.unread import asked
from kit.speech.claim import Claim
from kit.speech.proportions.day_shares import DayShareClaim
from kit.speech.words.sentence import Sentence

_OTHER_NEEDS = frozenset("week weeks weekly month monthly year fortnight weekend meal sitting hour".split())
_NEEDED_OTHERWISE = re.compile(
    r"\b(?:needs?|wants?|requirements?|allowance|quota|limit|worth|should have)\b[^,.;]{0,24}"
    r"\b(?:week|month|year|fortnight|weekend|(?:each|every|per|a|one|any) (?:meal|sitting|hour))\b"
    r"|\b(?:weekly|monthly)\b"
)
_DAYS_WORTH = frozenset(
    "worth value values need needs amount allowance supply requirement dose intake recommended limit total quota end "
    "own maximum minimum share target goal budget full".split()
)


def of_another_need(sentence: Sentence, claim: Claim) -> Claim:
    """Return a share of a day as one that is asked about where it is told of another need.

    Parameters
    ----------
    sentence : Sentence
        The sentence.
    claim : Claim
        One of those that were read in it.
    """
    if not isinstance(claim, DayShareClaim):
        return claim
    if other := _of_the_day(sentence, claim):
        return asked(sentence, (*claim.places, other))
    behind = " ".join(sentence.texts[min(claim.places) : min(claim.places) + 14])
    otherwise = not _OTHER_NEEDS.isdisjoint(sentence.words) and _NEEDED_OTHERWISE.search(behind)
    return asked(sentence, claim.places) if otherwise else claim


def _of_the_day(sentence: Sentence, claim: Claim) -> int:
    """Return where something else of a day is named: "half of the vitamin C of a day's vegetables"; 0 for nothing."""
    for at in range(min(claim.places), min(len(sentence) - 1, max(claim.places) + 8)):
        behind = sentence.tokens[at + 1]
        day = sentence.tokens[at].possessive and sentence.tokens[at].is_a("day")
        if day and (behind.food is not None or behind.is_a("group")) and not behind.is_a("nutrient"):
            return at + 1 if behind.text not in _DAYS_WORTH else 0
    return 0
