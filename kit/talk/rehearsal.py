"""The plan on the day: words at her pace, hands-on minutes, pots in the background, and how a rehearsal went."""

import re
from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from kit.errors import KitError, TalkFileError, nearest
from kit.talk.talk import PlanStep, Talk

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
    """Something that cooks in the background; all times in minutes from the start of the talk.

    Attributes
    ----------
    name, step : str
        The pot, and the step at whose end it goes on.
    start, ready : float
        From when until when it cooks. [min]
    latest : float
        The latest moment to start it so that nothing waits, or the talk is not longer, for it. [min]
    """

    name: str
    step: str
    start: float
    ready: float
    latest: float

    @property
    def late(self) -> float:
        """How much too late it goes on. [min]"""
        return max(0.0, self.start - self.latest)


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

    A step takes as long as its words or its work, whichever is longer: hands move while she talks. A pot goes on at the
    end of its step; a step that needs it waits until it is ready.

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
    cooking: dict[str, tuple[str, float, float]] = {}
    wanted: dict[str, float] = {}
    for step in talk.steps:
        ready = max([now, *(cooking[name][2] for name in step.needs)])
        for name in step.needs:
            wanted.setdefault(name, now)
        spoken = talk_minutes(step, talk.words_per_minute)
        end = ready + max(spoken, step.hands_minutes)
        steps.append(
            PlannedStep(
                step.title, step.part, step.say, ready, end, spoken, step.hands_minutes, ready - now, step.needs
            )
        )
        for pot in step.pots:
            start = -pot.before if pot.before else end
            cooking[pot.name] = step.title, start, start + pot.minutes
        now = end
    pots = tuple(
        PlannedPot(name, title, start, done, wanted.get(name, now) - (done - start))
        for name, (title, start, done) in cooking.items()
    )
    return Plan(tuple(steps), pots, talk.minutes)


@dataclass(frozen=True, slots=True)
class Taken:
    """One step of a rehearsal: planned and actual minutes, NaN while it has not been timed; both with any wait."""

    title: str
    planned: float
    actual: float
    waits: float = 0.0

    @property
    def over(self) -> float:
        """How much longer than planned it took. [min]"""
        return self.actual - self.planned


def taken(of: Plan, ends: Sequence[float]) -> tuple[Taken, ...]:
    """Return planned beside actual minutes of every step.

    Parameters
    ----------
    of : Plan
        The plan that was rehearsed.
    ends : sequence of float
        Seconds from the start at which each step was done, as far as it went. [s]

    Raises
    ------
    KitError
        If there are more ends than steps, or they do not rise.

    Examples
    --------
    >>> steps = (PlannedStep("Welcome", "", "", 0, 2, 2, 0), PlannedStep("Cut", "", "", 2, 5, 3, 3))
    >>> [(one.title, one.actual) for one in taken(Plan(steps, ()), [150.0])]
    [('Welcome', 2.5), ('Cut', nan)]
    """
    if len(ends) > len(of.steps):
        raise KitError(f"{len(ends)} times for {len(of.steps)} steps; time each step once")
    starts = [0.0, *ends]
    if any(end < start for start, end in zip(starts, ends, strict=False)):
        raise KitError("the times do not rise; give the seconds from the start at which each step was done")
    minutes = [(end - start) / 60 for start, end in zip(starts, ends, strict=False)]
    minutes += [float("nan")] * (len(of.steps) - len(minutes))
    return tuple(
        Taken(step.title, step.waits + step.minutes, actual, step.waits)
        for step, actual in zip(of.steps, minutes, strict=True)
    )


def clock(minutes: float) -> str:
    """Return minutes as a clock shows them.

    Examples
    --------
    >>> clock(2.5), clock(75), clock(-0.5)
    ('2:30', '75:00', '-0:30')
    """
    seconds = round(abs(minutes) * 60)
    return f"{'-' if minutes < 0 and seconds else ''}{seconds // 60}:{seconds % 60:02d}"


def plan_sentence(of: Plan) -> str:
    """Return what the plan comes to, in one or two sentences.

    Examples
    --------
    >>> plan_sentence(Plan((PlannedStep("Welcome", "", "", 0, 2, 2, 0),), (), 10))
    'The plan takes 2:00 of 10:00, 8:00 to spare.'
    """
    told = f"The plan takes {clock(of.total)}"
    if of.slot is not None and of.over is not None:
        rest = f"{clock(of.over)} too long" if of.over > 0 else f"{clock(-of.over)} to spare"
        told += f" of {clock(of.slot)}, {rest}"
    waits = [f'"{step.title}" waits {clock(step.waits)} for the {" and the ".join(step.needs)}' for step in of.late]
    return ". ".join([told, *waits]) + "."
