"""The plan as rows of a table: a cell is changed in its line of the text, and every other line stays as it is."""

from dataclasses import dataclass, replace

from kit.errors import KitError
from kit.talk.faults import limited
from kit.talk.plain_lines import PlainLine, one_line
from kit.talk.plan_text import minutes_of, read_plan, write_plan
from kit.talk.talk import PlanStep

CELLS = ("title", "hands", "talked", "pots", "needs")
NEW_STEP = "5 min: the next step"


@dataclass(frozen=True, slots=True)
class PlanRow:
    """One step as a row.

    Attributes
    ----------
    place : int
        Which line of the text says it, from 0.
    title, hands, talked, pots, needs : str
        Its cells as they are written: minutes of work and of words, pots as "tray 20 min in the oven at 425".
    problem : str
        What has to be asked about its line first; its cells cannot be changed then.
    """

    place: int
    title: str
    hands: str
    talked: str
    pots: str
    needs: str
    problem: str = ""


def plan_rows(text: str) -> tuple[PlanRow, ...]:
    """Return the steps of a plan as rows.

    Examples
    --------
    >>> (row,) = plan_rows("5 min: cut the squash; tray 20 min in the oven at 425; needs barley")
    >>> row.title, row.hands, row.pots, row.needs
    ('cut the squash', '5', 'tray 20 min in the oven at 425', 'barley')
    """
    steps, lines = read_plan(text)
    return tuple(_row(steps[line.entry], line) for line in lines if line.makes)


def _row(step: PlanStep, line: PlainLine) -> PlanRow:
    pots = write_plan((PlanStep("x", pots=step.pots),)).partition("; ")[2]
    needs = write_plan((PlanStep("x", needs=step.needs),)).partition("; needs ")[2]
    talked = "" if step.say_minutes is None else f"{step.say_minutes:.10g}"
    hands = f"{step.hands_minutes:.10g}" if step.hands_minutes else ""
    return PlanRow(line.place, one_line(step.title), hands, talked, pots, needs, line.problem)


def with_cell(text: str, place: int, cell: str, value: str) -> str:
    r"""Return a plan with another content of one cell.

    Parameters
    ----------
    text : str
        The plan.
    place : int
        The line of the step.
    cell : str
        One of `CELLS`.
    value : str
        What is written into it.

    Raises
    ------
    KitError
        If it cannot be read as that, or the line has to be settled first.

    Examples
    --------
    >>> with_cell("# Cooking\n5 min: cut the squash", 1, "pots", "tray 20 min in the oven at 425")
    '# Cooking\n5 min: cut the squash; tray 20 min in the oven at 425'
    """
    steps, lines = read_plan(text)
    line = lines[place]
    if cell not in CELLS or not line.makes:
        raise KitError(f'no cell "{cell}" in line {place + 1} of the plan')
    if line.problem:
        raise KitError(f"settle the line first: {line.problem}")
    step = _with(replace(steps[line.entry], part="", say=""), cell, one_line(value))
    rows = text.split("\n")
    rows[place] = write_plan((step,))
    return "\n".join(rows)


def _with(step: PlanStep, cell: str, value: str) -> PlanStep:
    if cell == "title":
        if not value:
            raise KitError('a step needs a name, such as "cut the squash"')
        return replace(step, title=value)
    if cell in ("hands", "talked"):
        key = "hands_minutes" if cell == "hands" else "say_minutes"
        minutes = _minutes(value)
        wrong = limited(key, minutes) if minutes is not None else ""
        if wrong:
            raise KitError(wrong)
        return replace(step, hands_minutes=minutes or 0.0) if cell == "hands" else replace(step, say_minutes=minutes)
    clauses = f"needs {value}" if cell == "needs" and value else value
    (read,), (line,) = read_plan(f"1 min: x; {clauses}")
    if line.problem or (cell == "pots" and read.needs):
        raise KitError(line.problem or f'"{value[:60]}" is no pot; write it as "tray 20 min in the oven at 425"')
    return replace(step, pots=read.pots) if cell == "pots" else replace(step, needs=read.needs)


def _minutes(value: str) -> float | None:
    """Return written minutes, None for an empty cell."""
    if not value:
        return None
    try:
        return float(value.replace(",", "."))
    except ValueError:
        (step,), (line,) = read_plan(f"{value}: x")
        if line.problem or step.title != "x" or step.say_minutes is not None:
            raise KitError(f'"{value[:40]}" is no time; write minutes, such as 5') from None
        return minutes_of(value)


def with_step(text: str) -> str:
    """Return a plan with one more step at its end, whose cells are to be filled in."""
    return f"{text.rstrip()}\n{NEW_STEP}".lstrip("\n")


def without_step(text: str, place: int) -> str:
    """Return a plan without the step of a line, and without the words that it says."""
    _, lines = read_plan(text)
    gone = {line.place for line in lines if line.entry == lines[place].entry and lines[place].makes}
    return "\n".join(row for at, row in enumerate(text.split("\n")) if at not in gone)
