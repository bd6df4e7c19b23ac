"""Amounts that are shared out, or added up: "if you cut it into ten", "a dozen slices, at 240 calories altogether"."""

import re
from collections.abc import Sequence
from dataclasses import replace

from kit.speech.about.unread import asked
from kit.speech.claim import SERVING, THE_DISH, WHOLE, About, Claim
from kit.speech.figures.amounts import AmountClaim
from kit.speech.figures.counts import ServingsClaim
from kit.speech.proportions.day_shares import DayShareClaim
from kit.speech.words.sentence import Sentence
from kit.speech.words.tokens import Quantity

_TOGETHER = frozenset("together altogether combined total".split())
_SHARES_OUT = frozenset(
    "cut cuts slice sliced divide divided split share shared portion portioned spread stretch stretched make "
    "get pour poured ladle ladled spoon spooned scoop scooped dish dished".split()
)
_CUTS = frozenset(
    "cut cuts slice sliced divide divided split portion portioned pour poured ladle ladled spoon spooned scoop scooped "
    "dish dished".split()
)
_AMONG = ("between", "among")
_PEOPLE = ("people", "persons", "guests", "friends")
_BETWEEN_US = re.compile(r"\bbetween (?:us|you)\b")
_SHARED_WITH = frozenset("share split halve go".split())
_PARTED = re.compile(r"\b(?:share|split|halve|go halves)\b.{0,20}\bwith\b")
_INTO = ("into", "in", "onto", "between", "among", "to", "by", "over", "across")


def shared_out(sentence: Sentence, claims: Sequence[Claim]) -> list[Claim]:
    """Return the claims with the amounts asked about that are shared out or added up: "if you cut it into ten"."""
    counted = [claim for claim in claims if isinstance(claim, (AmountClaim, DayShareClaim))]
    together = not _TOGETHER.isdisjoint(sentence.words) and all(claim.about.count == 1 for claim in counted)
    served = [claim for claim in claims if isinstance(claim, ServingsClaim)]
    if not counted or (served and not together):
        return list(claims)
    plain = all(claim.about == THE_DISH for claim in counted)
    if plain and _BETWEEN_US.search(sentence.plain):  # "between us that's 700 calories"
        return [*(claim for claim in claims if claim not in counted), asked(sentence, counted[0].places)]
    with_whom = not _SHARED_WITH.isdisjoint(sentence.words) and "with" in sentence.texts
    if plain and with_whom and _PARTED.search(sentence.plain):  # "share a plate with a friend"
        return [*(claim for claim in claims if claim not in counted), asked(sentence, counted[0].places)]
    if served:  # "a dozen slices, at 240 calories altogether"
        return [*(claim for claim in claims if claim not in counted), asked(sentence, counted[0].places)]
    for at, said in sentence.quantities():
        if said.unit or said.is_fraction or said.value < 2:
            continue
        verb = any(sentence.text_at(place) in _SHARES_OUT for place in range(max(0, at - 6), at))
        over = verb and sentence.text_at(at).startswith(("over ", "across "))  # "spread over seven plates"
        among = over or sentence.text_at(at).startswith(_AMONG)  # "between the five of you"
        parted = verb and (sentence.text_at(at - 1) in _INTO or sentence.text_at(at + 1) in ("ways", "way"))
        parted = parted or _they_share(sentence, at)
        if parted and not together and (each := _of_each(sentence, at, said, counted)):
            return [*(claim for claim in claims if claim not in counted), *each]
        if together or among or parted:
            return [*(claim for claim in claims if claim not in counted), asked(sentence, (at,), (max(0, at - 1), at))]
    return list(claims)


def _they_share(sentence: Sentence, at: int) -> bool:
    """Return whether so many people are said to share: "if ten people share the pot"."""
    return sentence.text_at(at + 1) in _PEOPLE and sentence.text_at(at + 2) in ("share", "split", "divide")


def _of_each(sentence: Sentence, at: int, said: Quantity, counted: Sequence[Claim]) -> list[Claim]:
    """Return what is said of each where the whole is cut into so many: "cut it in six and a piece is 545 calories"."""
    cut = any(sentence.text_at(place) in _CUTS for place in range(max(0, at - 6), at)) or _they_share(sentence, at)
    # "Poured into three glasses, that is 270 calories each."
    abouts = (THE_DISH, About(SERVING, said.value)) if sentence.words & {"each", "apiece"} else (THE_DISH,)
    behind = all(min(claim.places) > at and replace(claim.about, or_dish=False) in abouts for claim in counted)
    if not cut or not behind or said.low != said.high or said.relation != "about":
        return []
    sentence.used.add(at)
    return [replace(claim, places=(at, *claim.places), about=About(WHOLE, 1 / said.value)) for claim in counted]
