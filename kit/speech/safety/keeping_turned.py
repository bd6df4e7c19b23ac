"""Times of keeping that a word beside them turns round: "after two hours", "into the cupboard", "at least"."""

import re
from collections.abc import Set
from dataclasses import replace

from kit.speech.safety.keeping_judged import OUT
from kit.speech.safety.keeping_words import IN_FREEZER, IN_FRIDGE, OUTSIDE
from kit.speech.words.sentence import Sentence
from kit.speech.words.tokens import Quantity

_LATER = ("after", "beyond", "past")
_DONE_THEN = frozenset(
    "eat eaten finish finished use used drink have best keep kept chill chilled refrigerate refrigerated freeze get "
    "put puts goes go into belongs cool".split()
)
_INTO = ("in", "into", "to", "onto", "on")
_ARTICLES = ("the", "a", "your")
_PUT_AWAY = frozenset(
    "get gets put puts goes go chill chilled refrigerate refrigerated belongs into cool need needs have be".split()
)
_KEPT_OR_EATEN = frozenset(
    "eat eaten finish finished use used drink keep keeps kept last lasts good cook fine best safe stays freeze "
    "thaw marinate serve enjoy".split()
)
_THE_LEAST = re.compile(r"\b(?:is|are) the (?:very )?(?:least|minimum|shortest)\b|\bis the least\b")
_NO_LESS = re.compile(
    r"^,? ?(?:and )?(?:no|not(?: a \w+)?|never) (?:less|fewer|shorter)\b|^,? ?(?:at the (?:very )?least)\b"
)
_LEFT_OVER = re.compile(r"\b(?:what|whatever|anything|if) [\w ]*\bnot (?:eat|finish|use)\b")
_NO_LESS_BEHIND = re.compile(r"\b(?:or (?:more|longer)|at (?:the very )?least|minimum)(?= ?[.,;!]|$)")
_WARM_DAY = 60  # degrees Fahrenheit; what is warmer tells of the day, and not of the refrigerator
_HOTTEST_DAY = 130
_HOT_DAY, _HOTTEST_TOLD = 90, 110  # degrees Fahrenheit; from 90 °F on an hour is the limit: USDA FSIS
_AT_LEAST = ("over", "at least", "well over")


def no_less(sentence: Sentence, at: int, said: Quantity) -> Quantity:
    """Return a time with "no less" or "at the least" behind it as the least there is."""
    behind = " ".join(sentence.texts[at + 1 : at + 5])
    own = " ".join(sentence.text_at(spot) for spot in sentence.clause_of(at) if spot > at)
    others = any(sentence.tokens[spot].quantity is not None for spot in sentence.clause_of(at) if spot > at)
    least = _NO_LESS.match(behind) or (not others and _NO_LESS_BEHIND.search(own))
    return replace(said, relation="at least") if least else said


def put_away_within(sentence: Sentence, at: int, within: bool) -> bool:
    """Return whether a limit is for putting food away: "chill it within two days" leaves it out until then."""
    if not within or sentence.text_at(at - 1) in _LATER:
        return False
    first = max((spot for spot in range(at) if sentence.text_at(spot) in ("if", "once", "when")), default=-1)
    led = [spot for spot in sentence.clause_of(at) if first < spot < at]
    before = {word for spot in led for word in sentence.text_at(spot).split()}
    away = bool(before & IN_FRIDGE) or {"put", "away"} <= before
    return away and bool(before & _PUT_AWAY) and before.isdisjoint(_KEPT_OR_EATEN)


def turned(sentence: Sentence, at: int, said: Quantity, place: str | None, warned: bool, words: Set[str]) -> bool:
    """Return whether a word beside a time turns it round, so that it is asked about.

    Parameters
    ----------
    sentence : Sentence
        Where it stands.
    at : int
        The place of the time's token.
    said : Quantity
        The time.
    place : str or None
        Where it is kept so long.
    warned : bool
        Whether it is warned of: "do not leave it out".
    words : set of str
        All words of the sentence.
    """
    clause = sentence.clause_of(at)
    before = {word for spot in clause if spot < at for word in sentence.text_at(spot).split()}
    latest = "latest" in sentence.texts[at + 1 : at + 5]
    later = sentence.text_at(at - 1) in _LATER or sentence.text_at(at).startswith(("beyond", "past"))
    if later and not before.isdisjoint(_DONE_THEN) and not latest:
        return True  # "eat it after four days", "chill it after two hours"
    if warned and sentence.text_at(at).startswith(("less", "under", "fewer")):
        return True  # "do not leave it out for less than two hours"
    if _THE_LEAST.search(" ".join(sentence.texts[at + 1 :])):
        return True
    outside = place == OUT and said.unit == "hour"
    return outside and (_goes_outside(sentence, at, words) or _other_day(sentence, at))


def _goes_outside(sentence: Sentence, at: int, words: Set[str]) -> bool:
    """Return whether food is put somewhere that is not cold: "get it into the cupboard within two hours"."""
    if words & (IN_FRIDGE | IN_FREEZER) or sentence.text_at(at).startswith(("more", "over", "longer")):
        return False
    led = [spot for spot in sentence.clause_of(at) if spot < at and sentence.text_at(spot) in OUTSIDE]
    put = any(sentence.text_at(spot - 1) in _ARTICLES and sentence.text_at(spot - 2) in _INTO for spot in led)
    moved = any(sentence.text_at(spot) in _PUT_AWAY for spot in sentence.clause_of(at) if spot < at)
    return (
        put and moved and any(sentence.text_at(spot).startswith(("within", "inside")) for spot in (at - 1, at, at - 2))
    )


def _other_day(sentence: Sentence, at: int) -> bool:
    """Return whether how warm a day is told in another way than the advice does: "when it's under ninety"."""
    for spot, token in enumerate(sentence.tokens):
        amount = token.amount
        told = amount.unit in ("degree", "celsius") or (not amount.unit and spot in sentence.clause_of(at))
        if spot == at or not told or not _WARM_DAY <= amount.value < _HOTTEST_DAY:
            continue
        below = amount.relation in ("under", "well under", "at most")
        if below or amount.unit == "celsius" or not _HOT_DAY <= amount.value <= _HOTTEST_TOLD:
            return True
    return False


def frozen_before(sentence: Sentence, at: int) -> bool:
    """Return whether freezing is named before a time; behind it, "or freeze" is what else may be done.

    "Freeze what you won't eat in three months" names how long it is kept unfrozen.
    """
    if _LEFT_OVER.search(" ".join(sentence.texts[:at])):
        return False
    return any(not IN_FREEZER.isdisjoint(text.split()) for text in sentence.texts[:at])
