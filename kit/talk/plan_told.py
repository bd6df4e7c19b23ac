"""What a plan comes to, and what to do where food is late, stands about, or shares an oven it cannot share."""

from collections.abc import Iterator
from itertools import combinations

from kit.talk.plan import Plan
from kit.texts import number

STANDS = 5.0  # minutes that food may stand about before it is worth a word (common practice)
_SHARED = 0.5  # minutes in one oven that are worth a word


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
    >>> from kit.talk.plan import PlannedStep
    >>> plan_sentence(Plan((PlannedStep("Welcome", "", "", 0, 2, 2, 0),), (), 10))
    'The plan takes 2:00 of 10:00, 8:00 to spare.'
    """
    told = f"The plan takes {clock(of.total)}"
    if of.slot is not None and of.over is not None:
        rest = f"{clock(of.over)} too long" if of.over > 0 else f"{clock(-of.over)} to spare"
        told += f" of {clock(of.slot)}, {rest}"
    waits = [f'"{step.title}" waits {clock(step.waits)} for the {" and the ".join(step.needs)}' for step in of.late]
    return ". ".join([told, *waits]) + "."


def plan_advice(of: Plan) -> tuple[str, ...]:
    """Return what to do about a plan, a sentence each; nothing where all goes well.

    Examples
    --------
    >>> from kit.talk.plan import PlannedPot
    >>> tray, pie = PlannedPot("tray", "", 2, 22, 2, oven=425), PlannedPot("pie", "", 12, 52, 12, oven=350)
    >>> plan_advice(Plan((), (tray, pie)))[0]
    'The tray (425 °F) and the pie (350 °F) share the oven from 12:00 to 22:00: bake them in turn, or alike.'
    """
    return (*_late(of), *_standing(of), *_ovens(of))


def _late(of: Plan) -> Iterator[str]:
    for pot in of.pots:
        if pot.late <= 0:
            continue
        ahead = (
            f"put it on {clock(pot.late)} earlier"
            if pot.latest >= 0
            else f"start it {clock(-pot.latest)} before the first word"
        )
        if pot.needed is None:
            yield f"The {pot.name} is done {clock(pot.ready - _last_step(of))} after the last step: {ahead}."
        else:
            yield f"The {pot.name} keeps a step waiting for {clock(pot.late)}: {ahead}, or move words before that step."


def _last_step(of: Plan) -> float:
    return max((step.end for step in of.steps), default=0.0)


def _standing(of: Plan) -> Iterator[str]:
    """Yield what stands about; what is kept hot is kept at 135 °F or above, FDA Food Code 3-501.16(A)."""
    for pot in of.pots:
        if pot.stands > STANDS:
            yield (
                f"The {pot.name} is ready {clock(pot.stands)} before it is needed: start it that much later, "
                "or keep it at 135 °F or above."
            )


def _ovens(of: Plan) -> Iterator[str]:
    hot = [(pot, pot.oven) for pot in of.pots if pot.oven is not None]
    for (one, heat), (other, other_heat) in combinations(hot, 2):
        start, end = max(one.start, other.start), min(one.ready, other.ready)
        if heat != other_heat and end - start > _SHARED:
            yield (
                f"The {one.name} ({number(heat)} °F) and the {other.name} ({number(other_heat)} °F) share the oven "
                f"from {clock(start)} to {clock(end)}: bake them in turn, or alike."
            )
