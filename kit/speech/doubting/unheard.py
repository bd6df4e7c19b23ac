"""Words beside a claim that turn it, multiply it or give it to another time, and that no family has heard."""

import re
from collections.abc import Sequence

from kit.speech.about.parts import after_determiners, is_serving
from kit.speech.about.unread import UnreadClaim, asked
from kit.speech.changes.changes_said import SaidChange
from kit.speech.changes.effects_judged import EffectClaim
from kit.speech.claim import Claim
from kit.speech.descriptions.health import HealthClaim
from kit.speech.descriptions.kinds import KindClaim
from kit.speech.doubting.allergens_unread import allergens_unread
from kit.speech.doubting.counted import AMOUNTS, COUNTED
from kit.speech.doubting.other_parts import other_parts
from kit.speech.doubting.told_otherwise import told_otherwise
from kit.speech.figures.comparisons_claim import ComparisonClaim
from kit.speech.figures.foods_counted import FoodCountClaim
from kit.speech.figures.weights_said import WeightClaim
from kit.speech.proportions.day_shares import DayShareClaim
from kit.speech.proportions.dish_shares_judged import DishShareClaim
from kit.speech.safety.keeping_judged import DegreesClaim, TimeClaim
from kit.speech.words.sentence import Sentence

_NOT_OF_KINDS = (*COUNTED, DegreesClaim, TimeClaim)
_SELDOM = frozenset("rarely seldom scarcely hardly fails fail failing refuses ceases".split())
_NO_LONGER = ("no", "longer")
_TIMES = frozenset("twice double triple thrice half".split())
_OTHER_SPANS = ("week", "month", "year")
_OF_A_MEAL = re.compile(
    r"\bfor (?:a|the|your|one|each|every) (?:single |full |whole )?meal\b|\bhourly\b"
    r"|\bneeds? (?:in|for) (?:a|one|each) meal\b|\b(?:in|for) (?:an|one|each) hour\b"
)
_OF_A_SPAN = re.compile(
    r"\b(?:week|month|year|hour|meal)'s \w+"
    r"|\b(?:half|thirds?|quarters?|fifths?|sixth|seventh|eighth|tenths?|percent) of an? (?:week|month|hour|meal)\b"
    r"|\b(?:vitamin \w+|iron|fiber|calcium|sodium|protein) for an? (?:week|month|hour|meal)\b"
)
_SPAN_WORDS = frozenset("meal meals hourly hour hours week month year weeks months years".split())
_LEADS = re.compile(  # none of these says what follows
    r"(?:and |but |so )?(?:not that\b|never mind\b|(?:nobody|no one|none) (?:says?|said|claims?|thinks?)\b|hardly\b"
    r"|no way\b|in theory\b|on paper\b|at best\b|at worst\b|if (?:you are|we are) lucky\b|almost :)"
)
_FIRST_WORDS = frozenset("not never nobody no none hardly in on at if almost and but so".split())
_LEAST_OF_ALL = re.compile(r"(?:the )?least \w+ (?:comes?|is|are)\b")
_LEAST = re.compile(r"\b(?:the )?least of (?:it|that|those|them|which|the|its)\b")
_WELL_AS_MUCH = re.compile(
    r"\b(?:well|far|much|way) (?:over|under|above|below|short of|past|beyond) (?:as (?:much|many)|the same)\b"
)
_JUDGED = re.compile(r"\bwhich is (?:very |pretty |quite |rather |really |so )*(low|high|little|nothing|negligible)\b")
_UNLESS = ("unless",)


def unheard(sentence: Sentence, claims: Sequence[Claim], named: SaidChange | None = None) -> list[Claim]:
    """Return the claims, and those that ask about a part, an allergen or a word beside them that was not heard.

    Parameters
    ----------
    sentence : Sentence
        The sentence, when every family has read it.
    claims : sequence of Claim
        What they have read.
    named : SaidChange, optional
        The change of the dish that it names.
    """
    if not claims:
        return []
    change = named.places if named is not None else ()
    claims = other_parts(sentence, claims)
    claims += allergens_unread(sentence, claims) + told_otherwise(sentence, claims, named)
    plain = [claim for claim in claims if not isinstance(claim, (UnreadClaim, HealthClaim))]
    if not plain:
        return claims
    taken = {*change, *sentence.used, *(at for claim in claims for at in claim.places)}
    if _led_off(sentence) or (any(isinstance(claim, _NOT_OF_KINDS) for claim in plain) and _unless(sentence, taken)):
        told = tuple(sorted({at for claim in plain for at in claim.places}))
        return [*claims, asked(sentence, told)]
    return [*claims, *(asked(sentence, claim.places) for claim in plain if _is_open(sentence, claim, taken, change))]


def _is_open(sentence: Sentence, claim: Claim, taken: set[int], change: Sequence[int]) -> bool:
    """Return whether something beside a claim was not heard."""
    doubts = (
        _seldom(sentence, claim, taken, change),
        isinstance(claim, (FoodCountClaim, WeightClaim)) and _gone_without(sentence, claim, change),
        isinstance(claim, COUNTED)
        and (
            _multiplied(sentence, claim, taken)
            or _gone_without(sentence, claim, change)
            or _of_another_span(sentence, claim, taken)
            or _the_least_of_it(sentence, claim)
            or _judged_behind(sentence, claim, taken)
        ),
        isinstance(claim, ComparisonClaim) and _WELL_AS_MUCH.search(sentence.plain) is not None,
    )
    return any(doubts)


def _led_off(sentence: Sentence) -> bool:
    """Return whether words before it take back what is said: "not that it has 430 calories", "at best"."""
    return sentence.text_at(0) in _FIRST_WORDS and _LEADS.match(sentence.plain) is not None


def _unless(sentence: Sentence, taken: set[int]) -> bool:
    """Return whether it is so unless something is: "unless you rinse the beans"."""
    return any(at not in taken for at in sentence.where(_UNLESS))


def _seldom(sentence: Sentence, claim: Claim, taken: set[int], change: Sequence[int]) -> bool:
    """Return whether it is said to be so hardly ever, or no longer: "it rarely has", "it no longer contains"."""
    if claim.negated or isinstance(claim, EffectClaim):
        return False  # "it is hardly low in sodium", "the fat hardly changes"
    longer = not (change and isinstance(claim, KindClaim))  # "chicken instead of tofu makes it no longer vegetarian"
    for at in sentence.clause_of(claim.places[0]):
        if at in taken:
            continue
        if sentence.text_at(at) in _SELDOM:
            return True
        if (
            longer
            and sentence.texts[at : at + 2] == _NO_LONGER
            and sentence.text_at(at + 2) not in ("", ".", "than", ",", "!")
        ):
            return True
    return False


def _multiplied(sentence: Sentence, claim: Claim, taken: set[int]) -> bool:
    """Return whether a number is only part of what is said, or several times it: "more than twice 450 calories"."""
    for at in claim.places:
        if sentence.tokens[at].quantity is None:
            continue
        before = at - 1 - (sentence.text_at(at - 1) == "of")
        if before < 0 or before in claim.places:
            continue
        amount = sentence.tokens[before].amount
        part = amount.unit == "times" or (before < at - 1 and amount.is_fraction and not amount.unit)
        if part or (sentence.text_at(before) in _TIMES and sentence.tokens[at].amount.unit):
            return True
    return False


def _gone_without(sentence: Sentence, claim: Claim, change: Sequence[int]) -> bool:
    """Return whether an amount is what is missing, or comes without a serving: "a bowl without thirty grams"."""
    for at in sentence.where(("without", "minus", "sans")):
        if at in change:
            continue
        over = after_determiners(sentence, at + 1, ("about", "around"))
        several = over < len(sentence) and sentence.tokens[over].quantity is not None
        served = over + several < len(sentence) and is_serving(sentence, over + several)
        if (several and over in claim.places) or served:
            return True
    return False


def _of_another_span(sentence: Sentence, claim: Claim, taken: set[int]) -> bool:
    """Return whether an amount is for a week, a meal or an hour: "half of your iron for a meal"."""
    clause = sentence.clause_of(claim.places[-1])
    if not _SPAN_WORDS.isdisjoint(sentence.words) and _OF_A_SPAN.search(sentence.text.lower().replace("’", "'")):
        return True
    if isinstance(claim, DishShareClaim):
        return False
    first, of_day = min(claim.places), isinstance(claim, DayShareClaim)
    for at in clause:
        unit = sentence.tokens[at].amount.unit
        if at in taken and not (of_day and (at in claim.places or sentence.text_at(at - 1) == "for")):
            continue
        led = at >= first or sentence.text_at(at - 1) in ("half", "a half", "in", "over", "per")
        if led and (unit in _OTHER_SPANS or (of_day and unit == "hour")):
            return True
        if at > first and sentence.text_at(at) in ("weeks", "months", "years", "hours"):
            return True
    if not isinstance(claim, DayShareClaim) or _SPAN_WORDS.isdisjoint(sentence.words):
        return False
    return _OF_A_MEAL.search(_told(sentence, clause)) is not None


def _told(sentence: Sentence, clause: Sequence[int]) -> str:
    """Return the words of a clause as they stand, in lower case."""
    first, last = sentence.tokens[clause[0]].start, sentence.tokens[clause[-1]].end
    return sentence.text[first : last + 2].lower().replace("’", "'")


def _the_least_of_it(sentence: Sentence, claim: Claim) -> bool:
    """Return whether the least of it is told beside it: "17 grams of fat, the least of it saturated"."""
    if "least" not in sentence.words:
        return False
    of_it = not claim.negated and _LEAST.search(sentence.plain) is not None
    return of_it or _LEAST_OF_ALL.match(sentence.plain) is not None


def _judged_behind(sentence: Sentence, claim: Claim, taken: set[int]) -> bool:
    """Return whether an amount is said to be low without what it is low in: "364 calories, which is low"."""
    if not isinstance(claim, AMOUNTS):
        return False
    found = _JUDGED.search(sentence.plain)
    if found is None:
        return False
    behind = range(max(claim.places), len(sentence))
    return any(at not in taken and sentence.text_at(at).endswith(found[1]) for at in behind)
