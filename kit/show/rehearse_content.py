"""What the rehearsal shows, as plain values that the page places: sentences, plan, clock, what to say for safety."""

from collections.abc import Mapping, Sequence
from dataclasses import asdict, dataclass
from math import isnan
from typing import Any

from kit.errors import KitError
from kit.meal.nutrition import Nutrition
from kit.show.desk_content import plan_rows
from kit.show.judged import judged
from kit.show.tables import cautions_rows
from kit.show.timeline import timeline
from kit.speech.verdict import ANSWER, POINT, STEP, Verdict
from kit.talk.notes import talk_notes
from kit.talk.plan import Plan, plan
from kit.talk.plan_told import clock, plan_advice, plan_sentence
from kit.talk.pots import told_pot_faults
from kit.talk.rehearsal import Taken, taken
from kit.talk.talk import Talk
from kit.texts import listing

GROUPS = {POINT: "", STEP: "The words of the plan", ANSWER: "Prepared answers"}
KINDS_OF_ENTRY = {POINT: "point", STEP: "step", ANSWER: "question"}
NO_SENTENCES = (
    "This talk has no sentences yet. Write what you will say in notebook 1 under Script, one sentence a line; "
    "here each is checked."
)
NO_PLAN = (
    "This talk has no plan yet. Write it in notebook 1 under Plan, one step a line, "
    'such as "5 min: cut the squash; tray 20 min in the oven at 425".'
)

NO_ALLERGEN = "None of the major allergens"
_SAFETY = {
    "Contains": ("allergen", "allergens not known"),
    "Cooking through, keeping, reheating": ("keeping",),
    "Who should ask their own clinician first": ("who should ask",),
}


@dataclass(frozen=True, slots=True)
class Run:
    """One run against the clock.

    Attributes
    ----------
    began : float
        When it began; 0 before it does. [ms since 1970]
    ends : tuple of float
        How long after that each step was done, as far as it went. [min]
    """

    began: float = 0.0
    ends: tuple[float, ...] = ()

    def as_json(self) -> dict[str, Any]:
        """Return the run as the page and the memory keep it."""
        return {**asdict(self), "ends": list(self.ends)}


def run_from(values: object, plan: Plan) -> Run:
    """Return a run as something kept it; none where that does not fit the plan any more.

    Examples
    --------
    >>> run_from({"began": 1.0, "ends": [2.0]}, Plan((), ())), run_from("?", Plan((), ()))
    (Run(began=0.0, ends=()), Run(began=0.0, ends=()))
    """
    try:
        assert isinstance(values, Mapping)
        run = Run(float(values["began"]), tuple(float(end) for end in values["ends"]))
        taken(plan, [60 * end for end in run.ends])
    except (AssertionError, KeyError, TypeError, ValueError, KitError):
        return Run()
    return run


def told_of_talk(talk: Talk) -> list[str]:
    """Return what is to be mended in a talk before it is given, but for its plan, which tells that beside itself."""
    lines = [f'"{reading.line}"' for reading in talk.recipe.open_lines]
    waiting = [f"Not in the numbers yet: {listing(lines)}. Settle this in notebook 1."] if lines else []
    pots = told_pot_faults(talk.steps)
    return [*waiting, *talk_notes(talk), *(fault for fault in talk.faults if fault not in pots)]


def said(talk: Talk, verdicts: Sequence[Verdict]) -> list[dict[str, Any]]:
    """Return everything that is said, in its order, with what was found of it and the heading it stands under."""
    return [
        {
            "id": f"{verdict.where}-{verdict.place}",
            "group": GROUPS[verdict.where],
            "heading": _heading(talk, verdict),
            "pins": verdict.where == POINT,
            **judged(verdict),
        }
        for verdict in verdicts
    ]


def _heading(talk: Talk, verdict: Verdict) -> str:
    if verdict.where == STEP:
        return talk.steps[verdict.place].title
    if verdict.where == ANSWER:
        return talk.questions[verdict.place].asks
    part = talk.points[verdict.place].part
    return part[:1].upper() + part[1:]


def planned(talk: Talk) -> tuple[Plan, dict[str, Any]]:
    """Return the plan of a talk, and how it is shown: its sentence, its faults, what to do, and the chart."""
    made = plan(talk)
    return made, {
        "sentence": plan_sentence(made) if made.steps else NO_PLAN,
        "faults": list(told_pot_faults(talk.steps)),
        "advice": list(plan_advice(made)),
        "figure": timeline.drawing(made),
        **plan_rows(made),
    }


def timed(made: Plan, run: Run) -> list[dict[str, Any]]:
    """Return the table of a run: planned beside actual minutes of each step, the words of the one that goes on."""
    at = len(run.ends) if run.began else -1
    rows = zip(taken(made, [60 * end for end in run.ends]), made.steps, strict=True)
    return [
        {
            "title": row.title,
            "planned": clock(row.planned) + (f" (waits {clock(row.waits)})" if row.waits > 0 else ""),
            "actual": "now" if place == at else "" if isnan(row.actual) else clock(row.actual),
            "difference": difference_words(row),
            "now": place == at,
            "say": step.say if place == at else "",
        }
        for place, (row, step) in enumerate(rows)
    ]


def difference_words(row: Taken) -> str:
    """Return how a step compares with its plan: "0:30 longer", "1:00 shorter", "as planned"; empty when not timed."""
    if isnan(row.actual):
        return ""
    shown = clock(abs(row.over))
    return "as planned" if shown == clock(0) else f"{shown} {'longer' if row.over > 0 else 'shorter'}"


def safety(talk: Talk, now: Nutrition) -> list[dict[str, Any]]:
    """Return what to say for safety of the dish as it is now: allergens, keeping, who should ask a clinician first."""
    rows = cautions_rows(talk, now)
    return [
        {
            "heading": heading,
            "lines": [
                {"say": row["to say"], "why": f"Why here: {row['why here']}" if row["why here"] else ""}
                for row in rows
                if row["about"] in about
            ]
            or [{"say": NO_ALLERGEN, "why": ""}],
        }
        for heading, about in _SAFETY.items()
    ]
