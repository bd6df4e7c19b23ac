"""The points, steps and questions of a talk file."""

from collections.abc import Mapping
from typing import Any

from kit.talk.faults import Faults
from kit.talk.talk import PlanStep, Point, Pot, Question


def point(place: str, entry: Mapping[str, Any], faults: Faults) -> Point | None:
    """Return a sentence that will be spoken; None when there is none."""
    say = faults.value(place, entry, "say", str, "")
    if not say.strip():
        faults.append(f'{place}: nothing to say; write say = "One serving comes to {{energy}}."')
        return None
    pins = faults.value(place, entry, "pins", dict, {})
    return Point(
        say,
        faults.value(place, entry, "part", str, ""),
        faults.value(place, entry, "source", str, ""),
        {word: faults.value(f"{place}, pins", pins, word, str, "") for word in pins},
        _truth(place, entry, "private", faults),
    )


def step(place: str, entry: Mapping[str, Any], faults: Faults) -> PlanStep:
    """Return a step of the plan; one without a title is named by its number."""
    title = faults.value(place, entry, "title", str, "")
    if not title.strip():
        faults.append(f'{place}: no title; write title = "Start the lentils"')
        title = place
    pots = faults.value(place, entry, "pots", list, [])
    made = [_pot(f"{place}, pot {number}", pot, faults) for number, pot in enumerate(pots, 1)]
    return PlanStep(
        title,
        faults.value(place, entry, "part", str, ""),
        faults.value(place, entry, "say", str, ""),
        faults.number(place, entry, "say_minutes"),
        faults.number(place, entry, "hands_minutes", 0.0) or 0.0,
        tuple(pot for pot in made if pot is not None),
        faults.texts(place, entry, "needs"),
        _truth(place, entry, "private", faults),
    )


def _pot(place: str, entry: object, faults: Faults) -> Pot | None:
    if not isinstance(entry, dict):
        faults.append(f'{place}: write pots = [{{ name = "lentils", minutes = 20 }}]')
        return None
    faults.keys(place, entry, ("name", "minutes", "before", "oven", "at_start"))
    name = faults.value(place, entry, "name", str, "")
    minutes = faults.number(place, entry, "minutes", limit="pot minutes")
    before, oven = faults.number(place, entry, "before", 0.0), faults.number(place, entry, "oven")
    if not name.strip() or "minutes" not in entry:
        faults.append(f'{place}: write {{ name = "lentils", minutes = 20 }}')
    if not name.strip() or minutes is None:
        return None
    return Pot(name, minutes, before or 0.0, oven, _truth(place, entry, "at_start", faults))


def question(place: str, entry: Mapping[str, Any], faults: Faults) -> Question | None:
    """Return a question to expect; None when there is none."""
    asks = faults.value(place, entry, "asks", str, "")
    if not asks.strip():
        faults.append(f'{place}: no question; write asks = "Can I leave out the feta?"')
        return None
    if isinstance(entry.get("try"), dict):
        faults.append(f'{place}: try is a table; write what you would type on screen: try = "leave out the feta"')
        entry = {key: value for key, value in entry.items() if key != "try"}
    wish, answer = (faults.value(place, entry, key, str, "") for key in ("try", "answer"))
    return Question(asks, wish, answer, _truth(place, entry, "private", faults))


def _truth(place: str, entry: Mapping[str, Any], key: str, faults: Faults) -> bool:
    value = entry.get(key, False)
    if not isinstance(value, bool):
        faults.append(f"{place}: {key} is {str(value)[:40]}; write true or false")
    return value is True
