"""The plan on the day as a chart: a bar for each step, below them a hatched bar for each pot, along one clock."""

from typing import Any

from kit.show.escaping import in_chart
from kit.show.look import colours
from kit.show.marks import HATCH, INK, TEXT_SIZE, Drawing, bars, chart, drawing, room, shorten, words
from kit.talk.plan import Plan, PlannedPot, PlannedStep
from kit.talk.plan_told import clock, plan_sentence
from kit.texts import number

STEP_COLOUR, POT_COLOUR, WAIT_COLOUR = (colours()[name] for name in ("enough", "fat", "paper"))
ROW = 36  # height of a bar with its words [px]
_TICKS = (1, 2, 5, 10, 15, 30, 60)
_MOST_TICKS = 12
_WIDTH = 1000  # of the picture beside the names, at least, on a shared screen [px]
_LETTER = 0.58 * TEXT_SIZE  # width of an average letter [px]


@chart
def timeline(plan: Plan) -> Drawing:
    """Draw the plan: each step and pot from its start to its end, what waits, and the end of the slot.

    Parameters
    ----------
    plan : Plan
        From `kit.talk.plan.plan`.

    Returns
    -------
    plotly.graph_objects.Figure
        Steps, waits, pots, the latest moments to start them, words.
    """
    rows = list(range(len(plan.steps)))
    below = list(range(len(plan.steps), len(plan.steps) + len(plan.pots)))
    labels = [f"{place}. {shorten(step.title)}" for place, step in enumerate(plan.steps, 1)]
    labels += [f"Pot: {shorten(pot.name)}" for pot in plan.pots]
    waiting = _from([step.start - step.waits for step in plan.steps], [step.waits for step in plan.steps], rows)
    waiting["marker"] = {
        "color": WAIT_COLOUR,
        "line": {"color": INK, "width": [2 * (step.waits > 0) for step in plan.steps]},
    }
    cooking = _from([pot.start for pot in plan.pots], [pot.ready - pot.start for pot in plan.pots], below, POT_COLOUR)
    cooking["marker"]["pattern"] = HATCH
    first = min([0.0, *(min(pot.latest, pot.start) for pot in plan.pots)])
    last = max(plan.total, plan.slot or 0.0, 1.0)
    ends = [step.end for step in plan.steps] + [pot.ready for pot in plan.pots]
    told = [_step_words(step) for step in plan.steps] + [_pot_words(pot) for pot in plan.pots]
    traces = [
        _from([step.start for step in plan.steps], [step.minutes for step in plan.steps], rows, STEP_COLOUR),
        waiting,
        cooking,
        _latest(plan.pots, below),
        words(ends, [*rows, *below], told),
    ]
    layout = {
        "title": {"text": "The plan on the day, minutes from the first word"},
        "barmode": "overlay",  # a row belongs to one bar; side by side they would share it
        "height": 110 + ROW * max(4, len(labels)),
        "margin": {"l": room(labels), "r": 24, "b": 44},
        "xaxis": {"range": [first, _right_end(first, last, ends, told)], **_ticks(first, last), "showgrid": True},
        "yaxis": {
            "tickvals": [*rows, *below],
            "ticktext": [*map(in_chart, labels)],
            "range": [max(4, len(labels)) - 0.5, -1.0],
        },
        **_slot(plan, len(labels)),
    }
    return drawing(traces, layout, plan_sentence(plan))


def _right_end(first: float, last: float, ends: list[float], words: list[str]) -> float:
    """Return how far the clock runs to the right, so that the words beside every bar stay in the picture. [min]"""
    parts = [min(0.6, (len(text) + 4) * _LETTER / _WIDTH) for text in words]
    lengths = [(end - first) / (1 - part) for end, part in zip(ends, parts, strict=True)]
    return first + max([last - first, *lengths])


def _from(starts: list[float], lengths: list[float], rows: list[int], colour: str = WAIT_COLOUR) -> dict[str, Any]:
    """Make bars that begin at their start."""
    return {**bars(lengths, rows, colour), "base": starts}


def _latest(pots: tuple[PlannedPot, ...], rows: list[int]) -> dict[str, Any]:
    marker = {"symbol": "line-ns", "size": 30, "line": {"color": INK, "width": 3}}
    latest = [pot.latest for pot in pots]
    return {"type": "scatter", "mode": "markers", "x": latest, "y": rows, "marker": marker, "cliponaxis": False}


def _step_words(step: PlannedStep) -> str:
    waits = f", waits {clock(step.waits)}" if step.waits > 0 else ""
    faults = ", see above" if step.faults else ""
    return f"{clock(step.start)} to {clock(step.end)}{waits}{faults}"


def _pot_words(pot: PlannedPot) -> str:
    latest = (
        f"latest start {clock(pot.latest)}" if pot.latest >= 0 else f"start it {clock(-pot.latest)} before the talk"
    )
    late = f", {clock(pot.late)} late" if pot.late > 0 else ""
    return f"ready {clock(pot.ready)}; {latest}{late}"


def _ticks(first: float, last: float) -> dict[str, Any]:
    step = next((step for step in _TICKS if (last - first) / step <= _MOST_TICKS), _TICKS[-1])
    values = [tick * step for tick in range(int(first // step), int(last // step) + 1)]
    return {"tickvals": values, "ticktext": [f"{number(value)}" for value in values]}


def _slot(plan: Plan, rows: int) -> dict[str, Any]:
    if plan.slot is None:
        return {}
    line = {"color": INK, "width": 2, "dash": "dot"}
    end = {
        "type": "line",
        "layer": "below",
        "x0": plan.slot,
        "x1": plan.slot,
        "y0": -0.6,
        "y1": rows - 0.5,
        "line": line,
    }
    words = {"x": plan.slot, "y": -0.8, "text": f"end of the slot, {clock(plan.slot)}", "showarrow": False}
    return {"shapes": [end], "annotations": [{**words, "font": {"size": TEXT_SIZE}}]}
