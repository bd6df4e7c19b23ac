"""How a rehearsal went: planned beside actual minutes of every step."""

from collections.abc import Sequence
from dataclasses import dataclass

from kit.errors import KitError
from kit.talk.plan import Plan


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
    >>> from kit.talk.plan import PlannedStep
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
