"""Keeping and food safety: days in the refrigerator, months in the freezer, hours out, reheating, doneness."""

import re
from dataclasses import replace

from kit.speech.about.parts import is_dish
from kit.speech.about.unread import asked
from kit.speech.claim import THE_DISH, About, Claim
from kit.speech.safety.heat_listed import read_listed
from kit.speech.safety.keeping_aside import asides, danger_zone, on_a_hot_day
from kit.speech.safety.keeping_heat import read_heat, temperature
from kit.speech.safety.keeping_judged import FREEZER, FRIDGE, OUT, TimeClaim
from kit.speech.safety.keeping_turned import frozen_before, no_less, put_away_within, turned
from kit.speech.safety.keeping_untimed import open_ended, thaw, vague
from kit.speech.safety.keeping_warned import (
    denies_unread,
    hours_between,
    is_all,
    is_allowed,
    is_hot,
    is_kept_until,
    is_limit,
    is_risky,
    is_thrown,
    is_warned,
    lets_be,
    need_not,
)
from kit.speech.safety.keeping_words import (
    KEEP,
    PLACES,
    clause_words,
    eats,
    foods_named,
    had_within,
    in_or_out,
    is_of_cooking,
    is_often,
    is_still_raw,
    near_place,
    place_told,
)
from kit.speech.words.sentence import Sentence
from kit.speech.words.tokens import Quantity

FAMILY = "keeping and safety"


_DAYS = {"hour": 1 / 24, "day": 1.0, "week": 7.0, "month": 30.4, "year": 365.0, "minute": 1 / 1440}


def read(sentence: Sentence, about: list[About]) -> list[Claim]:
    """Return what a sentence claims about keeping and food safety."""
    words = sentence.words
    claims: list[Claim] = danger_zone(sentence) + read_listed(sentence)
    for at, said in list(sentence.quantities()):
        if at in sentence.used:
            continue
        said = _of_the_time_before(sentence, at, said)
        if (heat := temperature(sentence, at, said)) is not None:
            claims += read_heat(sentence, at, heat)
        elif said.unit in _DAYS and said.unit not in ("minute",):
            claims += _time(sentence, at, said, words)
    claims += vague(sentence, words)
    claims += _longer_out(sentence) if claims else []
    claims += asides(sentence, claims)
    return (
        claims + open_ended(sentence, {sentence.clauses[claim.places[0]] for claim in claims}) + thaw(sentence, words)
    )


_OUT_LONGER = re.compile(
    r"\b(?:on the counter|on the table|out|at room temperature)(?: for)? (?:a|another|a whole|a full) (?:day|night)\b"
    r"|\bor (?:out|out of it|otherwise|on the counter)(?= ?[.,;!]| and\b|$)"
    r"|(?<=, )keep (?:it|them)(?=[^.;]* out\b)"  # "throw it away after ..., keep it four days out"
    r"|\blonger\b[^.;]*\b(?:out|counter|table|room temperature|warm)\b"
)


def _longer_out(sentence: Sentence) -> list[Claim]:
    """Return what is said beside a time to keep outside: "..., and on the counter a day", "longer if you leave it"."""
    found = _OUT_LONGER.search(sentence.text.lower())
    inside = found and [at for at, one in enumerate(sentence.tokens) if found.start() <= one.start < found.end()]
    return [asked(sentence, inside)] if inside and sentence.used.isdisjoint(inside) else []


def _of_the_time_before(sentence: Sentence, at: int, said: Quantity) -> Quantity:
    """Return a number that goes on with the time before it in that time's unit: "three days, four at the most"."""
    if said.unit or said.is_fraction:
        return said
    before = next((spot for spot in (at - 2, at - 3) if spot >= 0 and sentence.tokens[spot].quantity is not None), None)
    if sentence.text_at(at).startswith(("within ", "inside ")) and sentence.text_at(at + 1) in ("", ".", ",", ";", "!"):
        told = (spot for spot in range(at - 1, -1, -1) if sentence.tokens[spot].amount.unit in _DAYS)
        last = next(told, at)  # "within two hours; when it's hot, within three"
        return replace(said, unit=sentence.tokens[last].amount.unit)
    if (unit := _unit_of_others(sentence, at, said)) is not None:
        return replace(said, unit=unit)
    if before is None or sentence.tokens[before].amount.unit not in _DAYS:
        return said
    between = set(sentence.texts[before + 1 : at])
    goes_on = sentence.text_at(at + 1) in ("", ".", ",", ";", "!", "if", "when", "on", "in", "at", "tops")
    if not (goes_on and between <= _JOINTS):
        return said
    first = sentence.tokens[before].amount
    over = "or" in between and first.relation == "over"  # "no more than an hour or three"
    return replace(said, unit=first.unit, relation=first.relation if over else said.relation)


def _unit_of_others(sentence: Sentence, at: int, said: Quantity) -> str | None:
    """Return the unit of a time said before for a bare number that is said to be fine too: "four days, but ten is"."""
    times = [one.amount.unit for one in sentence.tokens[:at] if one.quantity and one.amount.unit in _DAYS]
    if said.unit or said.is_fraction or said.value < 1 or not times:
        return None
    if sentence.text_at(at - 1) == "for" and sentence.text_at(at - 2) in PLACES:
        return times[-1]  # "in the fridge for four days and on the counter for one"
    if said.value < 2:
        return None
    fine = sentence.text_at(at + 1) in ("is", "are", "would") and not _LASTS.isdisjoint(sentence.texts[at + 2 : at + 5])
    keeps = sentence.text_at(at - 1 - (sentence.text_at(at - 1) == "for")) in _LASTS
    led = fine and sentence.text_at(at - 1) in ("but", "and", ",", ";", "though")
    return times[-1] if led or (keeps and sentence.text_at(at + 1) in ("", ".", ",", "!", ";", "and", "more")) else None


_RULED = frozenset("becomes become shrinks drops goes is rule".split())
_JOINTS = frozenset(", or and maybe perhaps even but".split())
_LASTS = frozenset("good fine safe okay ok keep keeps last lasts".split())
_IS_OFF = re.compile(r"\b(?:switch|turn)(?:ed|es|s)? (?:\w+ ){0,3}off\b|\boff the (?:heat|stove)\b")
_LEFT_OVER = frozenset("freeze what whatever anything everything if".split())
_EATEN_UP = frozenset("eat eaten finish finished".split())
_REHEATED = frozenset("reheated warmed rewarmed".split())  # then it keeps no four days more
_MORE = ("more", "longer", "extra", "over", "past", "beyond", "too")  # "two hours more than the rule says"


def _is_fine_so_long(sentence: Sentence, at: int) -> bool:
    """Return whether food is fine for a time where another is told: "fine for an hour; after four, bin it"."""
    others = [spot for spot, said in sentence.quantities() if spot != at and said.unit in _DAYS]
    first = max([0, at - 6, *(spot + 1 for spot in others if spot < at)])
    joined = "and" in sentence.texts[:at] or bool(others)  # "when in doubt, throw it out, and cooked eggs keep a week"
    return joined and not _LASTS.isdisjoint(sentence.texts[first:at])


def _time(sentence: Sentence, at: int, said: Quantity, words: frozenset[str]) -> list[Claim]:
    before = [sentence.texts[spot : spot + 2] for spot in sentence.clause_of(at) if spot < at]
    if ("longer", "than") in before:  # "longer than two hours, or one when it is hot"
        said = Quantity(said.low, said.high, said.unit, "over")
    if said.relation == "between" and sentence.text_at(at).startswith(("more than", "longer than", "over ")):
        said = replace(said, low=said.high, relation="over")  # "for more than an hour or two"
    said = no_less(sentence, at, said)
    near = clause_words(sentence, at)
    if is_often(sentence, at, said) or (said.unit == "hour" and is_of_cooking(sentence, at, said, near)):
        return []
    place = _place_of(sentence, at, said, words, near)
    if any(lets_be(sentence, spot) for spot in sentence.clause_of(at)) and near & {"off", "bad", "sour"}:
        place, near = place or FRIDGE, near | {"keep"}  # "it does not go off for ten days"
    raw = bool(words & {"raw", "uncooked"}) or is_still_raw(sentence, at)
    if not _tells_keeping(sentence, at, said, words, near, place, raw):
        return []
    thrown = None if _is_fine_so_long(sentence, at) else is_thrown(sentence)
    kept_warm = place != FRIDGE and not near.isdisjoint(("cooker", "warm", "warmer"))  # "in the cooker on warm"
    if kept_warm or _is_open(sentence, at, said, words, place, thrown):
        sentence.used.add(at)
        return [asked(sentence, (at,), (at, min(at + 2, len(sentence) - 1)))]
    later = thrown and is_kept_until(sentence, at)
    days = Quantity(
        said.low * _DAYS[said.unit], said.high * _DAYS[said.unit], "day", "over" if later else said.relation
    )
    hot = any(is_hot(sentence, spot) and not hours_between(sentence, at, spot) for spot in sentence.clause_of(at))
    hours = [one for one in sentence.tokens if one.quantity and one.amount.unit == "hour"]
    hot = hot or (said.unit == "hour" and len(hours) == 1 and on_a_hot_day(sentence, near, at))
    longer = "longer" in sentence.plain or said.relation in ("over", "at most")
    warned = thrown is None and is_warned(sentence, at) and (place == OUT or longer)
    risky = place == OUT and said.relation == "over" and thrown is None and is_risky(sentence)
    within = is_limit(sentence, at, said.relation)
    if thrown is None and turned(sentence, at, said, place, is_warned(sentence, at), words):
        sentence.used.add(at)
        return [asked(sentence, (at - 1, at))]
    place = _place_meant(sentence, at, said, words, place, within)
    no_longer = days.relation in ("over", "at least") and is_warned(sentence, at)  # "won't keep longer than"
    if place == FREEZER and (no_longer or (days.relation == "about" and is_all(sentence, at))):
        days = replace(days, relation="at most")
    if said.unit == "hour" and place == FRIDGE and not within:
        return [asked(sentence, (at,))] if is_all(sentence, at) else []
    sentence.used.update(_used_by(sentence, at, words, thrown, hot or place == OUT))
    raw = raw or any("raw" in food.text for food in foods_named(sentence))
    # Of "..., and raw shrimp keep four days" only the shrimp.
    foods = foods_named(sentence, sentence.clause_of(at)) or foods_named(sentence)
    if raw and _of_the_dish(sentence, at):
        raw, foods = False, ()
    hard = bool(words & {"hard", "hard-boil"}) and bool(words & {"boil", "boiled", "cooked"})
    eggs = hard and bool(foods) and all("egg" in food.text for food in foods)
    limit, allowed, warned = within or warned, is_allowed(sentence), warned or risky
    return [
        TimeClaim((at,), THE_DISH, False, place, days, hot, limit, warned, foods, raw, eggs, allowed, thrown is True)
    ]


def _of_the_dish(sentence: Sentence, at: int) -> bool:
    """Return whether a time is of the dish, and raw food was told of before: "the soup keeps four"."""
    clause = sentence.clause_of(at)
    named = any(is_dish(sentence, spot) and sentence.text_at(spot - 1) in ("the", "cooked") for spot in clause)
    near = {sentence.text_at(spot) for spot in clause}
    return named and not foods_named(sentence, clause) and near.isdisjoint(("raw", "uncooked", "unbaked"))


def _place_of(sentence: Sentence, at: int, said: Quantity, words: frozenset[str], near: set[str]) -> str | None:
    """Return where something is kept so long, by the place that is named or by what is done; None where none tells."""
    place = near_place(sentence, at, words)
    if said.unit != "hour":
        return place
    if place is None:
        off = bool(near & _LASTS) and _IS_OFF.search(sentence.plain) is not None
        eaten = is_limit(sentence, at, said.relation) and bool(near & _EATEN_UP)  # "eat it within two hours"
        ruled = "rule" in sentence.words and bool(near & _RULED)  # "the two-hour rule becomes one hour"
        hot = on_a_hot_day(sentence, near, len(sentence))
        return OUT if off or eaten or ruled or hot or {"put", "away"} <= near else None
    if place == FRIDGE and sentence.text_at(at + 1) == "before":
        return OUT  # "leave it standing two hours before it goes in the fridge"
    return place


def _tells_keeping(
    sentence: Sentence, at: int, said: Quantity, words: frozenset[str], near: set[str], place: str | None, raw: bool
) -> bool:
    """Return whether a time is one of keeping: a place is named, or a word of keeping stands in its statement."""
    if place is not None:
        return not (said.unit == "hour" and place == FREEZER)
    if said.unit == "hour" and not words & {"leave", "sit", "sits", "stand", "left"}:
        return False
    verbs = words & (KEEP | {"cook", "cooked"} if raw and said.relation in ("under", "at most") else KEEP)
    return bool(near & (verbs | had_within(sentence, at)))


def _is_open(
    sentence: Sentence, at: int, said: Quantity, words: frozenset[str], place: str | None, thrown: bool | None
) -> bool:
    """Return whether words beside a time leave open what is said of it: "two hours more", "in the fridge or out"."""
    unread = thrown is None and denies_unread(sentence, at)
    again = said.unit != "hour" and place in (FRIDGE, None) and words & _REHEATED
    more = sentence.text_at(at + 1) in _MORE or sentence.text_at(at - 1) in ("another", "further", "extra")
    small = said.high * _DAYS[said.unit] <= (2 / 24 if said.unit == "hour" else 4)
    twice = place == OUT and "again" in sentence.texts[max(0, at - 3) : at]  # "then again for two hours"
    either = said.unit != "hour" and _EITHER_COLD.search(sentence.plain) is not None
    unread = unread or twice or either or _NOBODY.search(sentence.plain) is not None
    return bool(unread or ((again or more) and small) or (place in (FRIDGE, OUT) and in_or_out(sentence, at)))


_THAWED = frozenset("thawed defrosted thawing".split())
_EITHER_COLD = re.compile(r"\b(?:fridge|refrigerator) or (?:the )?freezer\b|\bfreezer or (?:the )?(?:fridge|refrig)")
_NOBODY = re.compile(r"\b(?:nobody|no one|no-one|none of you) (?:has|have|needs?)\b")


def _place_meant(
    sentence: Sentence, at: int, said: Quantity, words: frozenset[str], place: str | None, within: bool
) -> str:
    """Return where something is meant to be so long: in the refrigerator where nothing tells otherwise."""
    told = place_told(sentence, at)
    if told is None and not _THAWED.isdisjoint(sentence.texts[max(0, at - 6) : at]):
        return FRIDGE  # "frozen, it keeps two months; thawed, two more"
    if said.unit == "month" and told is None and (place == FREEZER or frozen_before(sentence, at)):
        return FREEZER
    if said.unit != "hour" and place in (FRIDGE, None) and put_away_within(sentence, at, within):
        return OUT  # "into the fridge within two days"
    if said.unit == "hour" and place != FREEZER and (within or (place == FRIDGE and need_not(sentence, at))):
        return OUT  # "into the fridge within two hours": what is timed is how long it may be out
    return place or FRIDGE


def _used_by(sentence: Sentence, at: int, words: frozenset[str], thrown: bool | None, outside: bool) -> set[int]:
    """Return the tokens that a time accounts for: its own, how hot the day is, and what only seems to deny it."""
    clause = sentence.clause_of(at)
    used = {at, *(spot for spot in clause if lets_be(sentence, spot))}
    if outside:
        used |= {spot for spot in clause if sentence.tokens[spot].amount.value in (90.0, 32.0)}
    if thrown is False:
        used |= {spot for spot in range(len(sentence)) if sentence.text_at(spot) in ("not", "never", "no")}
    if words & _LEFT_OVER:  # "freeze what you won't eat in three days" denies the eating, not the keeping
        denials = (spot for spot in range(len(sentence) - 1) if sentence.text_at(spot) == "not")
        used |= {spot for spot in denials if eats(sentence, spot + 1)}
    return used
