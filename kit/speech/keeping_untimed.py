"""Keeping without a number: "overnight on the counter", "until the weekend", "fine on the counter"; thawing."""

from kit.speech.claim import THE_DISH, Claim
from kit.speech.keeping_judged import FREEZER, FRIDGE, OUT, ThawClaim, TimeClaim
from kit.speech.keeping_words import KEEP, clause_words, foods_named, near_place
from kit.speech.sentence import Sentence
from kit.speech.tokens import NO_QUANTITY, Quantity

_VAGUE = {"overnight": 0.5, "fortnight": 14.0}


_SOME_DAY = frozenset(
    "monday tuesday wednesday thursday friday saturday sunday weekend payday christmas easter".split()
)


_LEFT = frozenset(
    "leave leaving rest rests cool marinate left sit sits stand keep keeps stay stays fine okay ok good happy "
    "happily safe".split()
)
_NEXT_DAY = frozenset("morning tomorrow day".split())


_WHOLE = ("all", "whole", "entire", "the whole", "the entire", "full", "a full")


_ALL = {
    "day": 0.4,
    "week": 7.0,
    "month": 30.4,
    "afternoon": 0.25,
    "morning": 0.25,
    "night": 0.5,
    "year": 365.0,
    "winter": 90.0,
    "summer": 90.0,
}


_FOR = frozenset("keeps keep lasts last kept keeping".split())
_COUNTERS = frozenset("counter countertop table bench worktop sideboard windowsill stove stovetop temperature".split())


def vague(sentence: Sentence, words: frozenset[str]) -> list[Claim]:
    """Return times without a number: "overnight on the counter", "all day", "until the weekend"."""
    claims: list[Claim] = []
    for at, token in enumerate(sentence.tokens):
        days = _VAGUE.get(token.text)
        led = at - 2 - (sentence.text_at(at - 2) == "for")  # "keeps a day", "keeps for a day"
        if token.text == "day" and sentence.text_at(at - 1) == "a" and sentence.text_at(led) in _FOR:
            sentence.used.add(at)
            said = Quantity(1.0, 1.0, "day")
            claims.append(TimeClaim((at,), THE_DISH, False, near_place(sentence, at, words) or FRIDGE, said))
            continue
        if days is None and sentence.text_at(at - 1) in _WHOLE:
            days = _ALL.get(token.text)
        if days is None and token.text in _NEXT_DAY and _until(sentence, at):
            days = 0.5
        if days is None and token.text in ("month", "year") and _until(sentence, at):
            days = _ALL[token.text]
        the = sentence.text_at(at - 1) == "the"
        if days is None and the and sentence.text_at(at - 2) in ("last", "lasts", "keep", "keeps", "for"):
            days = _ALL.get(token.text)  # "they'll last the week", "leave it out for the afternoon"
        some_day = token.text in _SOME_DAY and bool(
            {"until", "till", "through", "by"} & {sentence.text_at(spot) for spot in range(at - 4, at)}
        )
        if (days is None and not some_day) or at in sentence.used:
            continue
        place = near_place(sentence, at, words)
        if some_day:
            if place != OUT and (place or words & {"keep", "keeps", "last", "lasts"} or _fine_until(sentence, at)):
                sentence.used.add(at)
                claims.append(TimeClaim((at,), THE_DISH, False, place or FRIDGE, NO_QUANTITY))
            continue
        assert days is not None
        keeps = bool(words & (KEEP - {"eat", "use", "good", "out", "fine", "cold", "chill", "chilled"}))
        left = bool(words & _LEFT)
        if (
            place == OUT
            and left
            and (
                "out" in words
                or words
                & {"counter", "desk", "unrefrigerated", "countertop", "stove", "stovetop", "hob", "table", "sink"}
                or {"room", "temperature"} <= words
            )
        ):
            warned = bool(clause_words(sentence, at) & {"not", "never"})
            sentence.used.add(at)
            claims.append(
                TimeClaim(
                    (at,),
                    THE_DISH,
                    False,
                    OUT,
                    Quantity(days, days, "day"),
                    False,
                    warned,
                    warned,
                    foods_named(sentence),
                )
            )
        elif (
            place in (FRIDGE, FREEZER, None)
            and keeps
            and days >= 2
            and (place or words & {"keep", "keeps", "last", "lasts"})
        ):
            sentence.used.add(at)
            claims.append(
                TimeClaim(
                    (at,),
                    THE_DISH,
                    False,
                    place or FRIDGE,
                    Quantity(days, days, "day"),
                    False,
                    False,
                    False,
                    foods_named(sentence),
                )
            )
    return claims


def _until(sentence: Sentence, at: int) -> bool:
    """Return whether a time is where something ends: "till morning", "until the next day"."""
    before = at - 1
    while sentence.text_at(before) in ("the", "next", "following"):
        before -= 1
    return sentence.text_at(before) in ("until", "till")


def _fine_until(sentence: Sentence, at: int) -> bool:
    """Return whether it is said to be good until some day: "good till Friday", "it's fine by Friday"."""
    return any(
        sentence.text_at(spot) in ("until", "till", "through", "by")
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


def thaw(sentence: Sentence, words: frozenset[str]) -> list[Claim]:
    """Return where something is said to be thawed."""
    for at, token in enumerate(sentence.tokens):
        if (
            token.text in ("thaw", "thaws", "thawed", "thawing", "defrost", "defrosting", "defrosted")
            and at not in sentence.used
        ):
            place = near_place(sentence, at, words)
            if place in (FRIDGE, OUT):
                sentence.used.add(at)
                return [ThawClaim((at,), THE_DISH, bool(words & {"not", "never"}), place)]
    return []
