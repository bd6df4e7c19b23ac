"""From words to claims: what every family reads in a sentence, in order; each takes the words that it accounts for."""

import re
from collections.abc import Callable, Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from functools import lru_cache
from itertools import pairwise
from typing import Any
from weakref import WeakKeyDictionary

from kit.speech.about import unread
from kit.speech.about.subjects import subjects
from kit.speech.allergens import allergens_judged, allergens_only, allergens_said
from kit.speech.answers import NO_ALONE, OF_WHAT_WENT_BEFORE, answered
from kit.speech.changes import allergens_cooked, changes_nothing, effects, effects_judged
from kit.speech.changes.changes_excepted import without_gone
from kit.speech.changes.changes_open import is_open_change, of_the_changed
from kit.speech.changes.changes_said import LEAVE_OUT, TRIED, SaidChange, read_change
from kit.speech.claim import FOOD, Claim, Finding
from kit.speech.descriptions import absences, health, kinds, wordings, wordings_judged
from kit.speech.descriptions.wordings_claim import WordingClaim
from kit.speech.doubting import denials, doubts, falls_short, hedges, numbers_left, said_beside, unheard, unknown_words
from kit.speech.doubting.goes_too import with_others
from kit.speech.figures import amounts, comparisons, counts, counts_of_parts, foods_counted
from kit.speech.figures.comparisons_claim import ComparisonClaim
from kit.speech.figures.weights_said import WeightClaim
from kit.speech.proportions import (
    balance,
    day_shares,
    dish_shares,
    dish_shares_judged,
    dish_shares_next,
    energy_shares,
    first_of_all,
    nutrient_parts,
    the_rest,
)
from kit.speech.proportions.shares import shares
from kit.speech.safety import doneness_looks, keeping, keeping_judged, resting
from kit.speech.words.asides import without_asides
from kit.speech.words.foods_said import FoodNames, names_of
from kit.speech.words.sentence import Sentence, sentence
from kit.talk.dish import Dish

# The family of each claim, and what judges it. A new family is one module, one line in `_claims` and its claims here.
FAMILIES: Mapping[type[Claim], tuple[str, Callable[..., Finding]]] = {
    amounts.AmountClaim: (amounts.FAMILY, amounts.judge),
    day_shares.DayShareClaim: (day_shares.FAMILY, day_shares.judge),
    energy_shares.EnergyShareClaim: (energy_shares.FAMILY, energy_shares.judge),
    nutrient_parts.PartClaim: (nutrient_parts.FAMILY, nutrient_parts.judge),
    dish_shares_judged.DishShareClaim: (dish_shares.FAMILY, dish_shares_judged.judge),
    WordingClaim: (wordings.FAMILY, wordings_judged.judge_wording),
    ComparisonClaim: (comparisons.FAMILY, comparisons.judge),
    kinds.KindClaim: (kinds.FAMILY, kinds.judge),
    absences.AbsentClaim: (absences.FAMILY, absences.judge),
    allergens_judged.AllergenClaim: (allergens_said.FAMILY, allergens_judged.judge),
    allergens_only.OnlyClaim: (allergens_only.FAMILY, allergens_only.judge),
    allergens_cooked.CookedAwayClaim: (allergens_said.FAMILY, allergens_cooked.judge),
    keeping_judged.TimeClaim: (keeping.FAMILY, keeping_judged.judge),
    keeping_judged.DegreesClaim: (keeping.FAMILY, keeping_judged.judge),
    keeping_judged.ThawClaim: (keeping.FAMILY, keeping_judged.judge),
    resting.RestClaim: (resting.FAMILY, resting.judge),
    doneness_looks.LooksClaim: (doneness_looks.FAMILY, doneness_looks.judge),
    effects_judged.EffectClaim: (effects.FAMILY, effects_judged.judge),
    counts.ServingsClaim: (counts.FAMILY, counts.judge),
    counts_of_parts.PartCountClaim: (counts_of_parts.FAMILY, counts_of_parts.judge),
    counts.IngredientsClaim: (counts.FAMILY, counts.judge),
    WeightClaim: (counts.FAMILY, counts.judge),
    foods_counted.FoodCountClaim: (foods_counted.FAMILY, foods_counted.judge),
    balance.BalanceClaim: (balance.FAMILY, balance.judge),
    health.HealthClaim: (health.FAMILY, health.judge),
    health.SafetyClaim: (keeping.FAMILY, health.judge),
    unread.UnreadClaim: (unread.FAMILY, unread.judge),
    denials.DenialClaim: (denials.FAMILY, unread.judge),
}
_END = re.compile(r"(?<=[.!?])[\"”')]?\s+(?=\S)")
_ASKED = re.compile(
    r"(?:\w+\s){0,2}\w+\?\s*|(?:an?|one|two|three|half|each|the|this|that|all)\s(?:\w+\s){1,4}\w+\?\s*",
    re.IGNORECASE,
)
_HOW_MUCH = re.compile(
    r"(?:and |so )?(?:how (?:much|many) |(?:where|what) (?:does|do) (?:most of |all )?(?:the|its|that|your) )"
    r"[^?]*\?\s*",
    re.IGNORECASE,
)
_JOINED_QUESTION = re.compile(r"(?:\S+ ){3,}(and )(?:\w+ ){0,2}\w+\?\s*$")
_AND_ASKS = re.compile(
    r"\band (?=(?:how|what|which|who|where|is|are|does|do|has|have|any)\b[^?]*\?\s*$)", re.IGNORECASE
)
_ANSWERS = re.compile(rf"{NO_ALONE.pattern}|(?:only|just) (?:in|from|the)\b", re.IGNORECASE)
_ASKS = re.compile(r"(?:is|are|was|does|do|did|has|have|can|could|will|would)\b", re.IGNORECASE)
_GOES_ON = re.compile(
    r"(?:it|they|them|its|their|both|that|those|these|and|but|so(?= (?:it|they|that|is|are|does|do|has|have)\b))\b",
    re.IGNORECASE,
)
_FRAGMENT = re.compile(  # "It's low in sodium. Fat too.", "So is the butter."
    r"(?:(?:and|plus|also) \w+(?: \w+)?|(?:and |the |its )*\w+(?: \w+)? (?:too|as well|also|neither|either|likewise)"
    r"|(?:and )?(?:so|neither|nor) (?:is|are|does|do|has|have) [\w ]{2,30}"
    r"|(?:the )?same (?:goes )?(?:for|with) [\w ]{2,30})[.!]*\s*",
    re.IGNORECASE,
)
_PUT_RIGHT = re.compile(r"(?:oh |no |wait |or )*(?:sorry|oops|whoops|scratch that|strike that|i mean)\b", re.IGNORECASE)
_FRAGMENT_AND = re.compile(  # "It contains tree nuts. And peanuts, and it's ...", "... The butter too, and leave out"
    r"(?:(?:and|plus|also) (?!the |an? |its? |they |that |there )\w+(?=,? (?:and|but) (?:no|it|it's|there|there's)\b)"
    r"|(?:and |the |its )*\w+(?: \w+)? (?:too|as well|also|neither|either|likewise)(?=,? (?:and|but)\b))",
    re.IGNORECASE,
)
_AS_IT_IS = re.compile(r"\bas (?:it|they|that|this) (?:is|are|stands?|stand)\b|\bas (?:is|written)\b|\bthe way it is\b")
_EITHER_WAY = re.compile(
    r"\b(?:and|or|even) with (?:it|them)\b|\bwith (?:it|them)(?: too)? *[.,;!]|\beither way\b|\bwith or without\b"
)


@dataclass(frozen=True, eq=False)
class Read:
    """A sentence that was read.

    Attributes
    ----------
    sentence : Sentence
        Its tokens.
    claims : tuple of Claim
        What it claims, in the order of its words.
    change : SaidChange or None
        A change of the dish that it names; claims of other families are then about the changed dish.
    open_change : bool
        Whether it names a change that was not understood.
    offset : int
        Where it begins in what is said.
    """

    sentence: Sentence
    claims: tuple[Claim, ...]
    change: SaidChange | None = None
    open_change: bool = False
    offset: int = 0

    def words(self, claim: Claim) -> str:
        """Return the words that said a claim."""
        return self.sentence.said(claim.places)

    def is_changed(self, claim: Claim) -> bool:
        """Return whether a claim is about the dish with the change made: not one before ", and without the cream"."""
        if self.change is None:
            return False
        own = " ".join(self.sentence.text_at(place) for place in self.sentence.clause_of(max(claim.places)))
        number = max(claim.places)
        was = self.sentence.text_at(number - 1) == "from" and self.sentence.text_at(number + 1) in ("to", "down to")
        if was or _AS_IT_IS.search(own):
            return False
        at = min(self.change.places)
        first = self.sentence.clause_of(at)[0]
        joined = at > 0 and self.sentence.text_at(at - 1) in ("and", "but")
        before = max(claim.places) < (first if at - first <= 2 else at - 1)
        return not (joined and before)

    def spans(self, claim: Claim) -> tuple[tuple[int, int], ...]:
        """Return where the words of a claim stand in the sentence."""
        tokens = [self.sentence.tokens[at] for at in claim.places]
        return tuple((self.offset + token.start, self.offset + token.end) for token in tokens)


_names: WeakKeyDictionary[Dish, FoodNames] = WeakKeyDictionary()


def read(text: str, dish: Dish, tried: str = "") -> tuple[Read, ...]:
    """Read what is said, sentence by sentence; the same words about the same foods are read once.

    Parameters
    ----------
    text : str
        What is said, its placeholders filled.
    dish : Dish
        The dish as written and as it is now, whose foods the words may name.
    tried : str, optional
        The change that a question tries, when the words answer it: what they say becomes more or less is its effect.
    """
    names = _names.get(dish)
    if names is None:
        names = _names[dish] = names_of(dish.talk.recipe, dish.numbers.recipe)
    return _read(text, names, tried)


@lru_cache(maxsize=300)  # a talk's sentences several times over; more would only be kept
def _read(text: str, names: FoodNames, tried: str = "") -> tuple[Read, ...]:
    pieces = _sentences(text, names)
    answers = [piece for _, piece in pieces[1:]] + [""]
    found: list[Read] = []
    for (start, piece), answer in zip(pieces, answers, strict=True):
        one = _one(piece, start, names, tried)
        one = replace(one, claims=answered(one.sentence, one.claims, piece, answer))
        if found and not one.claims and len(one.sentence) and OF_WHAT_WENT_BEFORE.match(piece):
            one = replace(one, claims=(unread.asked(one.sentence, range(len(one.sentence))),))
        found.append(one)
    return tuple(found)


def _questions_behind(text: str, starts: Sequence[int]) -> Iterator[int]:
    """Return where a question begins that is joined to a statement: "It has no soy, and any gluten in it? None"."""
    if "?" not in text:
        return
    for start, end in pairwise([*starts, len(text)]):
        piece = text[start:end]
        last = max(piece.rfind(", and "), piece.rfind(" and any ") - 1)
        asked = _JOINED_QUESTION.search(piece)
        if last > 0 and piece.rstrip().endswith("?") and not _ASKS.match(piece):
            yield start + last + len(", and ")
        elif asked and not _ASKS.match(piece) and _ANSWERS.match(text[end:]):  # "no soy in here and egg? None"
            yield start + asked.end(1)
        elif (asks := _AND_ASKS.search(piece)) and not _ASKS.match(piece):  # "Sadly not, and how much fat? Three grams"
            yield start + asks.end()


def _sentences(text: str, names: FoodNames) -> list[tuple[int, str]]:
    """Return a text cut into sentences, with their starts; "They are ..." stays with the sentence that says who."""
    starts = [0, *(match.end() for match in _END.finditer(text))]
    starts = sorted({*starts, *_questions_behind(text, starts)})
    found: list[tuple[int, str]] = []
    for start, end in zip(starts, [*starts[1:], len(text)], strict=True):
        piece = text[start:end]
        asked = found and (_ASKED.fullmatch(found[-1][1]) or _HOW_MUCH.fullmatch(found[-1][1]))
        if asked and not NO_ALONE.match(piece):
            # "Sodium? A good thousand milligrams."
            found[-1] = (found[-1][0], text[found[-1][0] : end])
            continue
        if found and (_FRAGMENT.fullmatch(piece) or _PUT_RIGHT.match(piece)):
            found[-1] = (found[-1][0], text[found[-1][0] : end])
            continue
        if found and (fragment := _FRAGMENT_AND.match(piece)):
            start += fragment.end()
            found[-1] = (found[-1][0], text[found[-1][0] : start])
            piece = text[start:end]
        if found and _GOES_ON.match(piece):
            first, before = found[-1]
            about = subjects(sentence(before, names))
            if about and about[-1].kind == FOOD:
                found[-1] = (first, text[first:end])
                continue
        found.append((start, piece))
    return found


def _one(text: str, offset: int, names: FoodNames, tried: str = "") -> Read:
    said = sentence(without_asides(text), names)
    about = subjects(said)
    claims: list[Claim] = [*health.read(said)]
    change = read_change(said)
    about = without_gone(said, about, change)
    effect = effects.read(said, about, change or (SaidChange(TRIED, words=tried) if tried else None))
    claims += effect
    if change is not None and change.kind == LEAVE_OUT:
        said.used.update(change.places)
    claims += keeping.read(said, about)
    claims += doneness_looks.read(said) + resting.read(said, claims)
    claims += counts_of_parts.read(said) + counts.read(said, about)
    claims += balance.read(said)
    claims += first_of_all.read(said, about)
    claims += comparisons.read(said, about)
    found = shares(said, about)
    claims += day_shares.read(said, about, found)
    claims += energy_shares.read(said, about, found)
    claims += nutrient_parts.read(said, about, found)
    claims += dish_shares.read(said, about, found)
    claims += the_rest.read(said, claims, found)
    claims += dish_shares_next.runners_up(said, claims)
    claims += amounts.read(said, about)
    claims += allergens_cooked.read(said, change)
    claims += allergens_only.read(said) + allergens_said.read(said, about)
    claims += wordings.read(said, about)
    claims += kinds.read(said, about)
    claims = with_others(said, claims)
    claims += absences.read(said)
    claims += unread.read(said)
    claims += foods_counted.read(said, claims) if change is None else []
    claims += said_beside.other_amounts(said, claims) if change is None else []
    claims += of_the_changed(said, change.places, claims) if change is not None else []
    claims += changes_nothing.read(said, claims)
    claims += unknown_words.unknown_words(said, claims)
    claims += said_beside.beside(said, claims) + hedges.qualifiers(said, claims, change)
    claims = falls_short.falling_short(said, denials.denied(said, doubts.doubted(said, claims)))
    claims = hedges.reported(said, numbers_left.with_numbers_left(said, claims, change.places if change else ()))
    claims = unheard.unheard(said, claims, change)
    claims = claims or absences.of_no_family(said)
    claims.sort(key=lambda claim: claim.places)
    goes_too = [claim for claim in claims if isinstance(claim, allergens_judged.AllergenClaim) and claim.lost]
    undone = change is not None and not goes_too and _EITHER_WAY.search(text.lower()) is not None
    open_change = undone or (change is None and is_open_change(said))
    return Read(said, tuple(claims), change, open_change, offset)


def family_of(claim: Claim) -> str:
    """Return the name of a claim's family."""
    return FAMILIES[type(claim)][0]


def judge(claim: Claim, dish: Any, said: frozenset[str]) -> Finding:
    """Judge one claim; `said` are the nutrients whose amounts are said beside it."""
    check = FAMILIES[type(claim)][1]
    return check(claim, dish, said) if isinstance(claim, WordingClaim) else check(claim, dish)
