"""The plan on the day: words at her pace, hands-on minutes, and pots in the background, along one clock."""

import re
from collections.abc import Iterator
from contextlib import suppress
from dataclasses import dataclass, replace

from kit.errors import KitError
from kit.meal.nutrition import nutrition
from kit.talk.dish import Dish
from kit.talk.placeholders import fill
from kit.talk.pots import pot_faults
from kit.talk.talk import PlanStep, Pot, Talk

_WORD = re.compile(r"[\w'’-]+")


@dataclass(frozen=True, slots=True)
class PlannedStep:
    """One step on the clock; all times in minutes from the start of the talk.

    Attributes
    ----------
    title, part, say : str
        As the talk file gives them.
    start, end : float
        When it begins, after any wait, and when it is over. [min]
    talk_minutes, hands_minutes : float
        The words at her pace, and the work; the longer of the two is how long the step takes. [min]
    waits : float
        How long it has to wait for a pot that it needs. [min]
    needs : tuple of str
        Those pots.
    faults : tuple of str
        What is wrong with its pots; it waits for none that was not started.
    """

    title: str
    part: str
    say: str
    start: float
    end: float
    talk_minutes: float
    hands_minutes: float
    waits: float = 0.0
    needs: tuple[str, ...] = ()
    faults: tuple[str, ...] = ()

    @property
    def minutes(self) -> float:
        """How long it takes, the wait apart. [min]"""
        return self.end - self.start


@dataclass(frozen=True, slots=True)
class PlannedPot:
    """Something that cooks in the background; all times in minutes from the first word, those before it below 0.

    Attributes
    ----------
    name, step : str
        The pot, and the step at whose start or end it goes on.
    start, ready : float
        From when until when it cooks. [min]
    latest : float
        The latest moment to start it so that nothing waits, or the talk is not longer, for it. [min]
    needed : float or None
        When the first step that needs it would begin without waiting; None when none does. [min]
    oven : float or None
        The temperature of the oven it stands in. [degrees Fahrenheit]
    """

    name: str
    step: str
    start: float
    ready: float
    latest: float
    needed: float | None = None
    oven: float | None = None

    @property
    def late(self) -> float:
        """How much too late it goes on. [min]"""
        return max(0.0, self.start - self.latest)

    @property
    def stands(self) -> float:
        """How long it is ready before it is needed; 0 when no step needs it. [min]"""
        return 0.0 if self.needed is None else max(0.0, self.needed - self.ready)


@dataclass(frozen=True, slots=True)
class Plan:
    """The whole plan: steps, pots, how long it takes and how long it may."""

    steps: tuple[PlannedStep, ...]
    pots: tuple[PlannedPot, ...]
    slot: float | None = None

    @property
    def total(self) -> float:
        """From the first word until the last step, and every pot, is done. [min]"""
        return max([0.0, *(step.end for step in self.steps), *(pot.ready for pot in self.pots)])

    @property
    def over(self) -> float | None:
        """How much longer than its slot it takes, below 0 for time to spare; None without a slot. [min]"""
        return None if self.slot is None else self.total - self.slot

    @property
    def late(self) -> tuple[PlannedStep, ...]:
        """The steps that have to wait for a pot."""
        return tuple(step for step in self.steps if step.waits > 0)


def words_in(text: str) -> int:
    """Return how many words are spoken.

    Examples
    --------
    >>> words_in("Toss them with the oil - well.")
    6
    """
    return sum(1 for word in _WORD.findall(text) if word.strip("-"))


def talk_minutes(step: PlanStep, words_per_minute: float) -> float:
    """Return how long the words of a step take: as the talk file says, or counted at her pace. [min]"""
    return words_in(step.say) / words_per_minute if step.say_minutes is None else step.say_minutes


def plan(talk: Talk) -> Plan:
    """Return the plan of a talk on the clock.

    A step takes as long as its words, its placeholders filled, or its work, whichever is longer: hands move while she
    talks. A pot goes on at the end of its step, at its start, or some minutes before the first word; a step that needs
    it waits until it is ready. What is wrong with the pots of a step stands in its `faults`, and hides nothing else.

    Examples
    --------
    >>> from kit.talk.library import read_talk
    >>> [pot.name for pot in plan(read_talk("barley_squash_box")).pots]
    ['barley', 'tray']
    """
    now = 0.0
    steps: list[PlannedStep] = []
    pots: list[PlannedPot] = []
    last: dict[str, int] = {}  # the pot of a name that was started last
    wanted: dict[int, float] = {}
    for step, faults in zip(_with_words_filled(talk), pot_faults(talk.steps), strict=True):
        needed = [last[name] for name in step.needs if name in last]
        start = max([now, *(pots[at].ready for at in needed)])
        for at in needed:
            wanted.setdefault(at, now)
        spoken = talk_minutes(step, talk.words_per_minute)
        end = start + max(spoken, step.hands_minutes)
        names = tuple(pots[at].name for at in needed)
        steps.append(
            PlannedStep(
                step.title, step.part, step.say, start, end, spoken, step.hands_minutes, start - now, names, faults
            )
        )
        for pot in step.pots:
            on = _goes_on(pot, start, end)
            last[pot.name] = len(pots)
            pots.append(PlannedPot(pot.name, step.title, on, on + pot.minutes, 0.0, oven=pot.oven))
        now = end
    placed = (
        replace(pot, needed=wanted.get(at), latest=wanted.get(at, now) - (pot.ready - pot.start))
        for at, pot in enumerate(pots)
    )
    return Plan(tuple(steps), tuple(placed), talk.minutes)


def _goes_on(pot: Pot, start: float, end: float) -> float:
    """Return when a pot of a step goes on. [min]"""
    if pot.before:
        return -pot.before
    return start if pot.at_start else end


def _with_words_filled(talk: Talk) -> Iterator[PlanStep]:
    """Yield the steps with what is said as it will be said; words that cannot be filled stay as they are written."""
    dish: Dish | None = None
    for step in talk.steps:
        if "{" in step.say:
            dish = dish or Dish(talk, nutrition(talk.recipe))
            with suppress(KitError):  # told where sentences are checked
                step = replace(step, say=fill(step.say, dish))
        yield step
