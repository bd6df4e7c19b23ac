"""Keeping without a number: "overnight on the counter", "until the weekend", "fine on the counter"; thawing."""

import re
from dataclasses import replace

from kit.speech.about.unread import asked
from kit.speech.claim import THE_DISH, Claim
from kit.speech.safety.keeping_judged import FREEZER, FRIDGE, OUT, ThawClaim, TimeClaim
from kit.speech.safety.keeping_warned import is_thrown
from kit.speech.safety.keeping_words import AT_A_PLACE, KEEP, clause_words, foods_named, near_place, only_set_apart
from kit.speech.words.sentence import Sentence, food_at
from kit.speech.words.tokens import NO_QUANTITY, Quantity

_VAGUE = {"overnight": 0.5, "fortnight": 14.0}


_SOME_DAY = frozenset(
    "monday tuesday wednesday thursday friday saturday sunday weekend payday christmas easter".split()
)


_LEFT = frozenset(
    "leave leaving rest rests cool cools cooled cooling marinate left sit sits sat stand stood keep keeps stay stays "
    "fine okay ok good happy happily safe go back spend spends spent survive survives".split()
)
_NEXT_DAY = frozenset("morning tomorrow day".split())


_WHOLE = ("all", "whole", "entire", "the whole", "the entire", "full", "a full")


_ALL = {
    "day": 0.4,
    "week": 7.0,
    "month": 30.4,
    "afternoon": 0.25,
    "evening": 0.2,
    "morning": 0.25,
    "night": 0.5,
    "year": 365.0,
    "winter": 90.0,
    "summer": 90.0,
}


_I_STOOD = re.compile(r"\b(?:i|we|you|they|who) (?:sat|stood|sit|stand)\b")
_MOST = ("most", "much", "rest", "part", "best")  # "most of the day"
_GONE = frozenset("bad spoil spoils throw thrown toss tossed discard bin binned".split())
_FOR = frozenset("keeps keep lasts last kept keeping".split())
_KEEPS_OR_LASTS = frozenset("keep keeps last lasts".split())
_KEPT = KEEP - {"eat", "use", "good", "out", "fine", "cold", "chill", "chilled"}
_HOURS = frozenset("noon midday midnight lunch lunchtime dinner dinnertime supper bedtime class evening".split())
_UNTIL = ("until", "till", "through", "by")
_COUNTERS = frozenset("counter countertop table bench worktop sideboard windowsill stove stovetop temperature".split())
_OUTSIDE = frozenset(
    "out bag backpack car porch counter desk unrefrigerated countertop stove stovetop hob table sink buffet picnic "
    "patio windowsill sideboard pantry cupboard shelf worktop".split()
)


def vague(sentence: Sentence, words: frozenset[str]) -> list[Claim]:
    """Return times without a number: "overnight on the counter", "all day", "until the weekend"."""
    claims: list[Claim] = []
    of_days = "day" in sentence.words
    for at in range(len(sentence)):
        claim = (
            (_day_number(sentence, at, words) if of_days else None)
            or (_a_day(sentence, at, words) if of_days else None)
            or (None if at in sentence.used else _time(sentence, at, words))
        )
        if claim is not None:
            sentence.used.add(at)
            claims.append(claim)
    return claims


def _day_number(sentence: Sentence, at: int, words: frozenset[str]) -> Claim | None:
    """Return how long it keeps by the number of a day: "good until day five", "thrown out before day eight"."""
    amount = sentence.tokens[at].amount
    if sentence.text_at(at - 1) != "day" or sentence.tokens[at].quantity is None or amount.unit or at in sentence.used:
        return None
    if not words & (KEEP | _GONE):
        return None
    if words & {"not", "never", "no"}:
        return asked(sentence, (at - 1, at))
    return TimeClaim(
        (at - 1, at), THE_DISH, False, near_place(sentence, at, words) or FRIDGE, replace(amount, unit="day")
    )


def _a_day(sentence: Sentence, at: int, words: frozenset[str]) -> Claim | None:
    """Return "keeps a day", "keeps for a day", "leave it out for a day"."""
    if sentence.text_at(at) != "day" or sentence.text_at(at - 1) != "a":
        return None
    led = at - 2 - (sentence.text_at(at - 2) == "for")
    place = near_place(sentence, at, words)
    if place != FRIDGE and words & {"cooker", "warm", "warmer"} and words & _LEFT:
        return asked(sentence, (at - 1, at))  # "left in the cooker for a day"
    if sentence.text_at(at - 2) == "than" and (place or words & KEEP):
        return asked(sentence, (at - 2, at))  # "not longer than a day"
    if sentence.text_at(led) not in _FOR and not (place == OUT and led < at - 2):
        return None
    return TimeClaim((at,), THE_DISH, False, place or FRIDGE, Quantity(1.0, 1.0, "day"))


def _time(sentence: Sentence, at: int, words: frozenset[str]) -> Claim | None:
    """Return how long it is said to be left out or kept, or until which day; None for any other word of time."""
    if words & _LEFT and words & _OUTSIDE and _o_clock(sentence, at) and near_place(sentence, at, words) == OUT:
        hours = _hours_from(sentence, at)
        if hours > 2:
            return TimeClaim((at,), THE_DISH, False, OUT, Quantity(hours / 24, hours / 24, "day"))
        return TimeClaim((at,), THE_DISH, False, OUT, NO_QUANTITY)
    days, some_day = _days(sentence, at), _some_day(sentence, at)
    if some_day and sentence.texts[at + 1 : at + 3] == ("after", "next"):
        days, some_day = 8.0, False  # at the least
    if days is None and not some_day:
        return None
    place = near_place(sentence, at, words)
    keeps = place or words & _KEEPS_OR_LASTS
    if some_day:
        if place != OUT and (keeps or _fine_until(sentence, at)):
            return TimeClaim((at,), THE_DISH, False, place or FRIDGE, NO_QUANTITY)
        return None
    assert days is not None
    said = Quantity(days, days, "day")
    outside = words & _OUTSIDE or {"room", "temperature"} <= words
    if place == OUT and words & _LEFT and outside and _I_STOOD.search(sentence.plain) is None:
        warned = bool(clause_words(sentence, at) & {"not", "never"})
        thrown = is_thrown(sentence) is True  # "if it sat out overnight, throw it away"
        foods = foods_named(sentence)
        if thrown and warned:
            return asked(sentence, (at,))
        return TimeClaim((at,), THE_DISH, False, OUT, said, limit=warned, warned=warned, foods=foods, thrown=thrown)
    kept = words & _KEPT or (place is not None and sentence.text_at(at) == "fortnight")
    if place in (FRIDGE, FREEZER, None) and keeps and kept and days >= 2:
        return TimeClaim((at,), THE_DISH, False, place or FRIDGE, said, foods=foods_named(sentence))
    return None


def _o_clock(sentence: Sentence, at: int) -> bool:
    """Return whether a time of the day is said up to which something stays: "until three", "from eight to noon"."""
    amount, led = sentence.tokens[at].amount, sentence.text_at(at - 1 - (sentence.text_at(at - 1) == "the"))
    hour = sentence.tokens[at].quantity is not None and not amount.unit and 1 <= amount.value <= 12
    until = led in _UNTIL or (led == "to" and "from" in sentence.texts[max(0, at - 4) : at])
    return until and (hour or sentence.text_at(at) in _HOURS)


# Hours of the day at which something usually is; common practice.
_CLOCK = {
    "breakfast": 8.0,
    "morning": 9.0,
    "noon": 12.0,
    "midday": 12.0,
    "lunch": 12.5,
    "lunchtime": 12.5,
    "afternoon": 15.0,
    "dinner": 18.5,
    "dinnertime": 18.5,
    "supper": 18.5,
    "evening": 19.0,
    "bedtime": 22.0,
    "midnight": 24.0,
}


def _hours_from(sentence: Sentence, at: int) -> float:
    """Return the hours up to a time of the day from the one that is named before it; 0 where none is."""
    for place in range(at):
        led = sentence.text_at(place - 1 - (sentence.text_at(place - 1) == "the"))
        if led not in ("from", "at", "since", "after") or (led != "from" and sentence.text_at(place) not in _CLOCK):
            continue
        one, other = _CLOCK.get(sentence.text_at(place), 0.0), _CLOCK.get(sentence.text_at(at), 0.0)
        if one and other > one:
            return other - one
        first, last = sentence.tokens[place].amount.value or one, sentence.tokens[at].amount.value or other
        return (last - first) % 12 if first and last else 0.0
    return 0.0


def _some_day(sentence: Sentence, at: int) -> bool:
    """Return whether a day is named up to which it keeps: "until the weekend"."""
    return sentence.text_at(at) in _SOME_DAY and any(sentence.text_at(spot) in _UNTIL for spot in range(at - 4, at))


def _days(sentence: Sentence, at: int) -> float | None:
    """Return how many days a word says: "overnight", "all week", "until morning", "lasts the week"."""
    word = sentence.text_at(at)
    if word in _VAGUE:
        return _VAGUE[word]
    if word not in _ALL and word not in _NEXT_DAY and word != "evening":
        return None
    before = sentence.text_at(at - 1)
    if before in ("a", "an", "one") and word in ("night", "afternoon", "evening", "morning"):
        return 0.5 if word == "night" else 0.25
    if before in _WHOLE and word in _ALL:
        return _ALL[word]
    if word == "day" and before == "a" and sentence.text_at(at - 2) == "half":
        return 0.5
    if word in _NEXT_DAY and _until(sentence, at):
        return 0.5
    if word in ("month", "year") and _until(sentence, at):
        return _ALL[word]
    if before == "the" and sentence.text_at(at - 2) == "of" and sentence.text_at(at - 3).split(" ")[-1] in _MOST:
        return _ALL.get(word)
    lasts = sentence.text_at(at - 2) in ("last", "lasts", "keep", "keeps", "for", "spend", "spends", "spent")
    return _ALL.get(word) if before == "the" and lasts else None


def _until(sentence: Sentence, at: int) -> bool:
    """Return whether a time is where something ends: "till morning", "until the next day"."""
    before = at - 1
    while sentence.text_at(before) in ("the", "next", "following"):
        before -= 1
    return sentence.text_at(before) in ("until", "till")


def _fine_until(sentence: Sentence, at: int) -> bool:
    """Return whether it is said to be good until some day: "good till Friday", "it's fine by Friday"."""
    return any(
        sentence.text_at(spot) in _UNTIL
        and sentence.text_at(spot - 1) in ("good", "fine", "safe", "okay", "ok", "eat", "fresh")
        for spot in range(at - 3, at)
    )


def open_ended(sentence: Sentence, timed: set[int]) -> list[Claim]:
    """Return food said to be fine outside the refrigerator without a time: "it's okay on the counter"."""
    for at, token in enumerate(sentence.tokens):
        fine = token.text in ("fine", "okay", "ok", "safe", "good", "happy", "happily", "keep", "keeps")
        if not fine or at in sentence.used or sentence.clauses[at] in timed:
            continue
        place = at + 1
        while sentence.text_at(place) in ("sitting", "left", "to", "sit", "stand", "be", "out", "there"):
            place += 1
        behind = [sentence.text_at(spot) for spot in range(place, place + 3)]
        if behind[:2] in (["on", "the"], ["at", "room"]) and behind[2] in _COUNTERS:
            sentence.used.add(at)
            return [TimeClaim((at, place), THE_DISH, False, OUT, NO_QUANTITY)]
    return []


def _denied(sentence: Sentence, at: int, words: frozenset[str]) -> bool:
    """Return whether a place is denied, and not only told from another: "in the fridge, not on the counter"."""
    denials = [spot for spot in range(len(sentence)) if sentence.text_at(spot) in ("not", "never")]
    tells_from = [spot for spot in denials if sentence.text_at(spot + 1) in AT_A_PLACE]
    return len(denials) > len(tells_from) or (bool(denials) and only_set_apart(sentence, at, words))


def thaw(sentence: Sentence, words: frozenset[str]) -> list[Claim]:
    """Return where something is said to be thawed."""
    for at, token in enumerate(sentence.tokens):
        if (
            token.text in ("thaw", "thaws", "thawed", "thawing", "defrost", "defrosting", "defrosted")
            and at not in sentence.used
        ):
            place = near_place(sentence, at, words, but=FREEZER)
            if place in (FRIDGE, OUT):
                sentence.used.add(at)
                if near_place(sentence, at, words, but=FREEZER, also=FRIDGE) == OUT and "or" in words:
                    place = OUT  # "in the fridge or on the counter"
                named = [food_at(sentence, spot) for spot in sentence.clause_of(at)]
                thing = next((f"the {word.text}" for word in named if word is not None and word.inside), "it")
                return [ThawClaim((at,), THE_DISH, _denied(sentence, at, words), place, thing)]
    return []
