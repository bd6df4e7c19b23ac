"""The pots of a plan: which steps start them, which need them, and what is wrong between the two."""

from collections.abc import Sequence

from kit.errors import nearest
from kit.talk.talk import PlanStep


def pot_faults(steps: Sequence[PlanStep]) -> tuple[tuple[str, ...], ...]:
    """Return for each step what is wrong with its pots: one needed that nothing has started, or one started twice.

    Examples
    --------
    >>> from kit.talk.talk import Pot
    >>> pot_faults([PlanStep("On", pots=(Pot("rice", 20),)), PlanStep("Fill", needs=("rise",))])
    ((), ('no pot "rise"; did you mean "rice"?',))
    """
    every = [pot.name for step in steps for pot in step.pots]
    started: list[str] = []
    found = []
    for step in steps:
        faults = [_missing(name, every) for name in step.needs if name not in started]
        for pot in step.pots:
            if pot.name in started:
                faults.append(f'the pot "{pot.name}" is started twice; give it a name of its own')
            started.append(pot.name)
        found.append(tuple(faults))
    return tuple(found)


def _missing(name: str, every: Sequence[str]) -> str:
    if name in every:
        return f'the pot "{name}" is started only in a later step; start it before'
    return f'no pot "{name}"{nearest(name, every) or "; name it in the step that starts it"}'


def told_pot_faults(steps: Sequence[PlanStep]) -> tuple[str, ...]:
    """Return what is wrong with the pots of a plan, a sentence each that begins with the step."""
    return tuple(
        f'step {place} "{step.title[:50]}": {fault}'
        for place, (step, faults) in enumerate(zip(steps, pot_faults(steps), strict=True), 1)
        for fault in faults
    )
