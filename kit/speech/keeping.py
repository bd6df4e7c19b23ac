"""Keeping and food safety: days in the refrigerator, months in the freezer, hours out, reheating, doneness."""

import re
from dataclasses import replace

from kit.speech.claim import THE_DISH, About, Claim
from kit.speech.keeping_judged import DONE_THINGS, FREEZER, FRIDGE, OUT, DegreesClaim, TimeClaim
from kit.speech.keeping_untimed import open_ended, thaw, vague
from kit.speech.keeping_warned import (
    denied_behind,
    denies_unread,
    hours_between,
    is_hot,
    is_kept_until,
    is_limit,
    is_thrown,
    is_warned,
    lets_be,
    need_not,
)
from kit.speech.keeping_words import (
    IN_FREEZER,
    IN_FRIDGE,
    KEEP,
    clause_words,
    eats,
    foods_named,
    foods_of_heat,
    had_within,
    in_or_out,
    is_of_cooking,
    is_often,
    near_place,
    of_an_animal,
)
from kit.speech.parts import is_dish
from kit.speech.sentence import Sentence, food_at
from kit.speech.tokens import Quantity
from kit.speech.unread import asked

FAMILY = "keeping and safety"
_DONE = frozenset(
    "okay ok fine enough eat ready pull off hits hit inside middle center centre internal thickest safe done "
    "cooked through reaches reach reached reads read thermometer core".split()
)


_READS = ("reads", "hits", "reaches", "read", "reach", "hit", "says", "say", "shows", "show", "registers", "register")
_CORE = frozenset("middle center centre inside core thickest".split())
_OVEN = frozenset("oven bake bakes preheat roast broil rack tray turn set gas griddle burner degree-oven sheet".split())


_PANS = frozenset("pan skillet griddle grill fryer oil smoker bath water board".split())
_HEATS = frozenset(
    "reheat reheats reheated reheating warm warming leftover leftovers thermometer inside internal middle thickest "
    "heat heating heated through".split()
)
_READY = frozenset("cook cooked done safe eat ready pull off".split())
_HEATED = frozenset("heat heating heated warm bring poach poached".split())
_HOLDS = frozenset("hold holding held keep".split())  # "hold it at 140"
_SERVED = frozenset("serve serves served serving buffet table guests hot warm".split())
_AGAIN = frozenset(
    "microwave microwaved reheat reheats reheated reheating rewarm leftovers leftover warm again next".split()
)


_DAYS = {"hour": 1 / 24, "day": 1.0, "week": 7.0, "month": 30.4, "year": 365.0, "minute": 1 / 1440}


def read(sentence: Sentence, about: list[About]) -> list[Claim]:
    """Return what a sentence claims about keeping and food safety."""
    words = sentence.words
    claims: list[Claim] = []
    for at, said in list(sentence.quantities()):
        if at in sentence.used:
            continue
        said = _of_the_time_before(sentence, at, said)
        if not said.unit and not said.is_fraction and 100 <= said.value <= 220 and _is_heat(sentence, at, words):
            said = Quantity(said.low, said.high, "degree", said.relation)
        if said.unit in ("degree", "celsius"):
            claims += _degrees(sentence, at, said, words)
        elif said.unit in _DAYS and said.unit not in ("minute",):
            claims += _time(sentence, at, said, words)
    claims += vague(sentence, words)
    return (
        claims + open_ended(sentence, {sentence.clauses[claim.places[0]] for claim in claims}) + thaw(sentence, words)
    )


def _of_the_time_before(sentence: Sentence, at: int, said: Quantity) -> Quantity:
    """Return a number that goes on with the time before it in that time's unit: "three days, four at the most"."""
    before = next((spot for spot in (at - 2, at - 3) if spot >= 0 and sentence.tokens[spot].quantity is not None), None)
    if said.unit or said.is_fraction or before is None or sentence.tokens[before].amount.unit not in _DAYS:
        return said
    between = set(sentence.texts[before + 1 : at])
    goes_on = sentence.text_at(at + 1) in ("", ".", ",", ";", "!", "if", "when", "on", "in", "at", "tops")
    return replace(said, unit=sentence.tokens[before].amount.unit) if goes_on and between <= _JOINTS else said


def _is_heat(sentence: Sentence, at: int, words: frozenset[str]) -> bool:
    """Return whether a bare number is a temperature: "bring it back up to 165 when you reheat it"."""
    told = words & _HEATS or sentence.text_at(at - 1) in _READS
    before = sentence.text_at(at - 1) in ("to", "at", *_READS) or (
        sentence.text_at(at - 1) == "is" and sentence.text_at(at - 3) in ("until", "till")
    )
    core = sentence.text_at(at + 1) == "in" and sentence.text_at(at + 3) in _CORE  # "165 in the middle"
    core = core or "through" in (sentence.text_at(at + 1), sentence.text_at(at + 2), sentence.text_at(at + 4))
    led = sentence.tokens[at].text.startswith(("up to", *_READS)) or before or core
    free = not sentence.is_a(at + 1, "nutrient") and food_at(sentence, at + 1) is None
    held = sentence.text_at(at - 1) == "at" and bool(words & _HOLDS)
    return bool(told or held or words & _READY) and led and free


_JOINTS = frozenset(", or and maybe perhaps even but".split())
_LASTS = frozenset("good fine safe okay ok keep keeps".split())
_IS_OFF = re.compile(r"\b(?:switch|turn)(?:ed|es|s)? (?:\w+ ){0,3}off\b|\boff the (?:heat|stove)\b")
_LEFT_OVER = frozenset("freeze what whatever anything everything if".split())
_EATEN_UP = frozenset("eat eaten finish finished".split())
_REHEATED = frozenset("reheated warmed rewarmed".split())  # then it keeps no four days more
_MORE = ("more", "longer", "extra", "over", "past", "beyond", "too")  # "two hours more than the rule says"


def _time(sentence: Sentence, at: int, said: Quantity, words: frozenset[str]) -> list[Claim]:
    before = [sentence.texts[spot : spot + 2] for spot in sentence.clause_of(at) if spot < at]
    if ("longer", "than") in before:  # "longer than two hours, or one when it is hot"
        said = Quantity(said.low, said.high, said.unit, "over")
    near = clause_words(sentence, at)
    if is_often(sentence, at, said) or (said.unit == "hour" and is_of_cooking(sentence, at, said, near)):
        return []
    place = _place_of(sentence, at, said, words, near)
    if any(lets_be(sentence, spot) for spot in sentence.clause_of(at)) and near & {"off", "bad", "sour"}:
        place, near = place or FRIDGE, near | {"keep"}  # "it does not go off for ten days"
    raw = bool(words & {"raw", "uncooked"})
    if not _tells_keeping(sentence, at, said, words, near, place, raw):
        return []
    thrown = is_thrown(sentence)
    if _is_open(sentence, at, said, words, place, thrown):
        sentence.used.add(at)
        return [asked(sentence, (at,), (at, min(at + 2, len(sentence) - 1)))]
    later = thrown and is_kept_until(sentence, at)
    days = Quantity(
        said.low * _DAYS[said.unit], said.high * _DAYS[said.unit], "day", "over" if later else said.relation
    )
    hot = any(is_hot(sentence, spot) and not hours_between(sentence, at, spot) for spot in sentence.clause_of(at))
    longer = "longer" in " ".join(sentence.texts) or said.relation in ("over", "at most")
    warned = thrown is None and is_warned(sentence, at) and (place == OUT or longer)
    within = is_limit(sentence, at, said.relation)
    place = _place_meant(sentence, at, said, words, place, within)
    if said.unit == "hour" and place == FRIDGE and not within:
        return []
    sentence.used.update(_used_by(sentence, at, words, thrown, hot or place == OUT))
    raw = raw or any("raw" in food.text for food in foods_named(sentence))
    # Of "..., and raw shrimp keep four days" only the shrimp.
    foods = foods_named(sentence, sentence.clause_of(at)) or foods_named(sentence)
    hard = bool(words & {"hard", "hard-boil"}) and bool(words & {"boil", "boiled", "cooked"})
    eggs = hard and bool(foods) and all("egg" in food.text for food in foods)
    limit = within or warned
    return [TimeClaim((at,), THE_DISH, False, place, days, hot, limit, warned, foods, raw, eggs, thrown is True)]


def _place_of(sentence: Sentence, at: int, said: Quantity, words: frozenset[str], near: set[str]) -> str | None:
    """Return where something is kept so long, by the place that is named or by what is done; None where none tells."""
    place = near_place(sentence, at, words)
    if said.unit != "hour":
        return place
    if place is None:
        off = bool(near & _LASTS) and _IS_OFF.search(" ".join(sentence.texts)) is not None
        eaten = is_limit(sentence, at, said.relation) and bool(near & _EATEN_UP)  # "eat it within two hours"
        return OUT if off or eaten or {"put", "away"} <= near else None
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
    return bool(unread or ((again or more) and small) or (place in (FRIDGE, OUT) and in_or_out(sentence, at)))


def _place_meant(
    sentence: Sentence, at: int, said: Quantity, words: frozenset[str], place: str | None, within: bool
) -> str:
    """Return where something is meant to be so long: in the refrigerator where nothing tells otherwise."""
    if said.unit == "month" and words & IN_FREEZER:
        return FREEZER
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


def _degrees(sentence: Sentence, at: int, said: Quantity, words: frozenset[str]) -> list[Claim]:
    near = clause_words(sentence, at)
    celsius = said.unit == "celsius"
    said = Quantity(said.low * 1.8 + 32, said.high * 1.8 + 32, "degree", said.relation) if celsius else said
    foods = foods_of_heat(sentence, at)
    if sentence.text_at(at).startswith("up to"):  # "warm it up to 165 degrees" is no ceiling
        said = Quantity(said.low, said.high, "degree", "about")
    turns = "turn" in near and "they" in near  # "until they turn opaque"
    oven = near & (_OVEN - ({"turn"} if turns else set()) - ({"set", "turn"} if near & IN_FRIDGE else set()))
    if oven and not near & {"inside", "middle", "internal", "thickest"}:
        return []
    if words & IN_FREEZER and said.value < (45 if near & {"freezer", "freeze", "frozen"} else 20):
        what = "freezer"
    elif near & (IN_FRIDGE - {"cold", "chilled"}) and said.value < (115 if celsius else 100):
        what = "fridge"
    elif _is_held(sentence, at, said, words):
        what = "hold"
    elif words & _AGAIN and not near & {"raw"}:
        what = "reheat"
    elif (
        (said.value < 200 or (celsius and foods and (words & _DONE or sentence.text_at(at - 1) in ("to", "is"))))
        and (foods or words & _DONE or near & DONE_THINGS)
        and (
            words & _DONE or words & {"cook", "cooks", "cooked", "to", "brown"} or said.relation in ("at least", "over")
        )
    ):
        what = "done"
    else:
        return _of_what(sentence, at, said, near)
    led = sentence.text_at(at - 1) == "to" or sentence.text_at(at).startswith("up to")
    heated = led and (said.value >= 100 or words & _HEATED) and any(map(of_an_animal, foods))
    if what == "done" and not (words & _DONE or words & {"cook", "cooks", "cooked", "until", "brown"} or heated):
        return _of_what(sentence, at, said, near)
    sentence.used.add(at)
    clause = sentence.clause_of(at)
    thing = next((sentence.text_at(place) for place in clause if sentence.text_at(place) in DONE_THINGS), "")
    of_dish = any(
        is_dish(sentence, place) or sentence.is_a(place, "pronoun") or sentence.text_at(place) in _CORE
        for place in clause
    )
    behind = denied_behind(sentence, at)
    if behind and "enough" not in near:
        return [asked(sentence, (at,), clause)]
    if said.relation in ("under", "well under", "nearly") and _denied(sentence, at):
        said = replace(said, relation="at least")  # "it must not be below 145"
    denied = (behind or _denied(sentence, at)) and said.relation == "about"
    own = thing if what == "done" and not foods else ""
    needed = bool(words & {"has", "must", "needs", "have"}) and bool(words & {"safe", "unsafe", "danger", "dangerous"})
    return [DegreesClaim((at,), THE_DISH, denied, what, said, foods, own, of_dish, needed)]


def _of_what(sentence: Sentence, at: int, said: Quantity, near: set[str]) -> list[Claim]:
    """Return how hot meat, fish or egg gets in words that tell no more: "do not let it get hotter than 140"."""
    foods = foods_named(sentence, sentence.clause_of(at))
    if said.value > 212 or near & _PANS or not any(map(of_an_animal, foods)):
        return []
    sentence.used.add(at)
    return [asked(sentence, (at,))]


def _is_held(sentence: Sentence, at: int, said: Quantity, words: frozenset[str]) -> bool:
    """Return whether hot food is kept at a temperature: "hold it at 140", "keep it above 140 until it is served"."""
    bounded = said.relation not in ("about", "exactly", "between") and bool(words & _SERVED)
    led = sentence.text_at(at - 1) == "at" or bounded
    return bool(words & _HOLDS) and led and 100 <= said.value <= 220 and not words & _READY


def _denied(sentence: Sentence, at: int) -> bool:
    """Return whether "not" stands before a temperature in its own statement; "not until it reads 165" asks for it."""
    awaited = False
    last = at - 1 - (sentence.text_at(at - 1) == ",")  # "not cooked when it's opaque, about 145 degrees"
    for place in range(last, sentence.clause_of(at)[0] - 1, -1):
        if sentence.text_at(place) in (",", "and", "but"):
            return False
        awaited = awaited or sentence.text_at(place) in ("until", "till", "before", "unless")
        if sentence.text_at(place) in ("not", "never"):
            return not awaited or sentence.text_at(place + 1) == "wait"
    return False
