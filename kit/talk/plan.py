"""The plan on the day: words at her pace, hands-on minutes, and pots in the background, along one clock."""

import re
from collections.abc import Iterator
from contextlib import suppress
from dataclasses import dataclass, replace

from kit.errors import KitError, TalkFileError, nearest
from kit.meal.nutrition import nutrition
from kit.talk.dish import Dish
from kit.talk.placeholders import fill
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


def plan_faults(talk: Talk) -> Iterator[str]:
    """Yield what is wrong with the pots of a plan: one needed that nothing starts, or one started twice."""
    started: list[str] = []
    every = [pot.name for step in talk.steps for pot in step.pots]
    for place, step in enumerate(talk.steps, 1):
        where = f'step {place} "{step.title}"'
        for name in step.needs:
            if name not in every:
                near = nearest(name, every) or "; start it with pots = [{...}] in a step before"
                yield f'{where}: no pot "{name}"{near}'
            elif name not in started:
                yield f'{where}: the pot "{name}" is started only in a later step; start it before'
        for pot in step.pots:
            if pot.name in started:
                yield f'{where}: the pot "{pot.name}" is started twice; give it a name of its own'
            started.append(pot.name)


def plan(talk: Talk) -> Plan:
    """Return the plan of a talk on the clock.

    A step takes as long as its words, its placeholders filled, or its work, whichever is longer: hands move while she
    talks. A pot goes on at the end of its step, at its start, or some minutes before the first word; a step that needs
    it waits until it is ready.

    Raises
    ------
    TalkFileError
        If a step needs a pot that no step before it starts.

    Examples
    --------
    >>> from kit.talk.library import read_talk
    >>> [pot.name for pot in plan(read_talk("barley_squash_box")).pots]
    ['barley', 'tray']
    """
    faults = [*plan_faults(talk)]
    if faults:
        raise TalkFileError(talk.path.name if talk.path else talk.name, faults)
    now = 0.0
    steps: list[PlannedStep] = []
    cooking: dict[str, PlannedPot] = {}
    wanted: dict[str, float] = {}
    for step in _with_words_filled(talk):
        start = max([now, *(cooking[name].ready for name in step.needs)])
        for name in step.needs:
            wanted.setdefault(name, now)
        spoken = talk_minutes(step, talk.words_per_minute)
        end = start + max(spoken, step.hands_minutes)
        waits = start - now
        steps.append(
            PlannedStep(step.title, step.part, step.say, start, end, spoken, step.hands_minutes, waits, step.needs)
        )
        for pot in step.pots:
            on = _goes_on(pot, start, end)
            cooking[pot.name] = PlannedPot(pot.name, step.title, on, on + pot.minutes, 0.0, oven=pot.oven)
        now = end
    pots = tuple(
        replace(pot, needed=wanted.get(name), latest=wanted.get(name, now) - (pot.ready - pot.start))
        for name, pot in cooking.items()
    )
    return Plan(tuple(steps), pots, talk.minutes)


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
