"""The plan on the day as plain text: "5 min: cut the squash; tray 20 min in the oven at 425"."""

import re
from collections.abc import Sequence
from dataclasses import replace

from kit.talk.faults import limited
from kit.talk.plain_lines import PlainLine, heading, one_line, quoted, unquoted
from kit.talk.plan_times import SPAN, TALKED, TIMED, TIMED_BEHIND, Asked, clock_times, minutes_of, time_inside
from kit.talk.talk import PlanStep, Pot
from kit.texts import listing, number

_BULLET = re.compile(r"^\s*(?:[-*\u2022]\s+|\d{1,2}[.)]\s+)")
_SAY = re.compile(r"^\s*(?:say|words)\s*:\s*(?P<say>.*)$|^\s*[>\u201c\"](?P<quoted>.*?)[\u201d\"]?\s*$", re.IGNORECASE)
_NEEDS = re.compile(
    r"^(?:this\s+)?(?:needs?|waits? for|when|once|after)\s+(?:the\s+)?(?P<pots>.+?)"
    r"(?:\s+(?:is|are)\s+(?:ready|done|cooked|out))?$",
    re.IGNORECASE,
)
_QUOTED = re.compile(r'"(?:[^"\\]|\\.)*"')
_AT_START = re.compile(
    r"[,(]?\s*(?:at|from)\s+the\s+(?:start|beginning)(?:\s+of\s+(?:this|the)\s+step)?\)?", re.IGNORECASE
)
_BEFORE = re.compile(
    rf"[,(]?\s*(?:started?|put on|on|begun?)?\s*(?P<before>{SPAN})\s+before(?:\s+(?:the|we|i)\b[\w ]*)?\)?",
    re.IGNORECASE,
)
_DEGREES = r"\s*(?:\u00b0|degrees?|deg)?\s*"
_OVEN = re.compile(
    r"[,(]?\s*(?:in(?:to)?\s+(?:the\s+|a\s+)?)?"
    rf"(?:(?P<degrees>\d{{2,3}}){_DEGREES}(?P<scale>[CF]\b)?\s*oven|"
    rf"oven(?:\s*(?:at|of|,)?\s*(?P<after>\d{{2,3}}){_DEGREES}(?P<unit>[CF]\b)?)?|"
    rf"at\s+(?P<at>\d{{2,3}}){_DEGREES}(?P<of>[CF]\b)?)\)?",
    re.IGNORECASE,
)
_POT = re.compile(rf"^(?P<name>.*?)[\s,:(]*(?:for\s+)?(?P<minutes>{SPAN})\s*\)?(?P<rest>.*)$", re.IGNORECASE)
_ON = re.compile(r"^(?:(?:start|put on|pot(?!\s+of\b)|begin|set|now)\s+)?(?:the\s+|a\s+)?", re.IGNORECASE)
_OFF = re.compile(r"\s+(?:goes on|go on|on|in|cooks?|simmers?|bakes?|roasts?|soaks?|into)$", re.IGNORECASE)
_EXAMPLE = 'write a pot as "tray 20 min in the oven at 425", or "needs tray"'


def read_plan(text: str) -> tuple[tuple[PlanStep, ...], tuple[PlainLine, ...]]:
    """Read a plan on the day.

    Parameters
    ----------
    text : str
        A step a line: minutes of work, a colon and a title; behind semicolons the pots that go on at its end and those
        it needs. "10 min talk: ..." are minutes of words; the words themselves stand below, behind "Say:" or in quotes.
        A line with # in front heads a part of the talk.

    Returns
    -------
    steps : tuple of PlanStep
        The steps.
    lines : tuple of PlainLine
        What each line was read as.

    Examples
    --------
    >>> (step,), _ = read_plan("5 min: cut the squash; tray 20 min in the oven at 425; needs barley")
    >>> step.title, step.hands_minutes, step.needs, (step.pots[0].name, step.pots[0].minutes, step.pots[0].oven)
    ('cut the squash', 5.0, ('barley',), ('tray', 20.0, 425.0))
    """
    steps: list[PlanStep] = []
    lines: list[PlainLine] = []
    part = ""
    rows = text.splitlines()
    clocked = clock_times(rows)
    for place, row in enumerate(rows):
        named, said = heading(row), _SAY.match(row)
        if not row.strip():
            lines.append(PlainLine(place))
        elif named is not None:
            part = named
            lines.append(PlainLine(place, f"part: {part}" if part else "no part"))
        elif said and steps:
            words = one_line(said["say"] if said["say"] is not None else said["quoted"])
            steps[-1] = replace(steps[-1], say=f"{steps[-1].say} {words}".strip())
            lines.append(PlainLine(place, f"{len(words.split())} words of this step", entry=len(steps) - 1))
        elif said:
            lines.append(
                PlainLine(place, problem='words without a step; write the step above them, such as "2 min: welcome"')
            )
        else:
            step, asked = _step(row)
            asked = clocked.get(place, asked)
            lines.append(PlainLine(place, _told(step), asked.problem, asked.choices, len(steps), 1))
            steps.append(replace(step, part=part))
    return tuple(steps), tuple(lines)


def _step(row: str) -> tuple[PlanStep, Asked]:
    """Return a step, and what has to be asked about it."""
    clauses = _clauses(_BULLET.sub("", row) if not TIMED.match(row) else row)
    talked, timed = TALKED.match(clauses[0]), TIMED.match(clauses[0])
    behind = None if talked or timed else TIMED_BEHIND.match(clauses[0])
    problems: list[str] = []
    inside = Asked()
    say_minutes = hands = None
    if talked:
        say_minutes, hands, title = (
            minutes_of(talked["minutes"]),
            minutes_of(talked["hands"] or "0 min"),
            talked["rest"],
        )
        problems.append(limited("say_minutes", say_minutes))
    elif timed or behind:
        match = timed or behind
        assert match is not None
        hands, title = minutes_of(match["minutes"]), match["rest"]
    else:
        title = clauses[0]
        inside = Asked() if _QUOTED.match(title) else time_inside(title)
    problems.append(limited("hands_minutes", hands or 0.0))
    title = unquoted(title.strip().strip(","))
    if not title:
        problems.append('the step has no name; write for instance "5 min: cut the squash"')
    pots, needs = [], []
    for clause in clauses[1:]:
        wants = _NEEDS.match(clause)
        pot, wrong = (None, "") if wants else _pot(clause)
        if wants:
            needs += [unquoted(_ON.sub("", name.strip())) for name in _names(wants["pots"])]
        elif pot:
            pots.append(pot)
            problems.append(wrong)
        else:
            problems.append(f'not sure what "{clause}" is; {_EXAMPLE}')
    step = PlanStep(title or "step", "", "", say_minutes, hands or 0.0, tuple(pots), tuple(filter(None, needs)))
    problem = "; ".join(filter(None, [inside.problem, *problems]))
    return step, Asked(problem, tuple(_with_clauses(line, clauses[1:]) for line in inside.choices))


def _with_clauses(line: str, clauses: Sequence[str]) -> str:
    """Return a step's line with its pots behind it, and its words, if it has any, below."""
    first, *words = line.split("\n")
    return "\n".join(["; ".join([first, *clauses]), *words])


def _clauses(row: str) -> list[str]:
    """Return a row cut at its semicolons; one inside quotes cuts nothing."""
    parts = re.findall(r'(?:"(?:[^"\\]|\\.)*"|[^;"]|")+', row)
    return [part.strip() for part in parts if part.strip()] or [row.strip()]


def _names(text: str) -> list[str]:
    """Return the names of a list: "barley and the tray"; what stands in quotes is one name."""
    names = re.findall(r'"(?:[^"\\]|\\.)*"|(?:(?!,|\s+(?:and|&)\s)[^"])+', text)
    bare = (re.sub(r"^\s*(?:,|and\b|&)*\s*(?:(?:and|&)\s+)?(?:the\s+)?", "", name).strip() for name in names)
    return [name for name in bare if name]


def _pot(clause: str) -> tuple[Pot | None, str]:
    """Return the pot that a clause starts, and what has to be asked about it."""
    text, before, oven = clause, 0.0, None
    exact = _QUOTED.match(text)
    head = exact[0] if exact else ""
    text = text[len(head) :]
    at_once = _AT_START.search(text)
    if at_once:
        text = text.replace(at_once[0], " ", 1)
    early = _BEFORE.search(text)
    if early:
        before, text = minutes_of(early["before"]), text.replace(early[0], " ", 1)
    hot = _OVEN.search(text)
    if hot and (hot["degrees"] or hot["after"] or hot["at"] or "oven" in hot[0].lower()):
        degrees = hot["degrees"] or hot["after"] or hot["at"]
        scale = hot["scale"] or hot["unit"] or hot["of"] or ""
        oven = None if degrees is None else float(degrees) if scale.upper() != "C" else float(degrees) * 9 / 5 + 32
        text = text.replace(hot[0], " ", 1)
        if degrees is None:
            problem = 'the oven of this pot has no temperature; write "in the oven at 425"'
            return _named_pot(head + text, Pot("", 0, before, None, bool(at_once)), problem)
    return _named_pot(head + text, Pot("", 0, before, oven, bool(at_once)), "")


def _named_pot(text: str, pot: Pot, problem: str) -> tuple[Pot | None, str]:
    """Return a pot with its name and minutes, and what has to be asked about it."""
    exact = _QUOTED.match(text)  # what stands in quotes is the name, whatever it looks like
    match = _POT.match(one_line(text[exact.end() :] if exact else text))
    if match is None:
        return None, ""
    written = (match["name"] or match["rest"]).strip(" ,:()")
    name = unquoted(exact[0]) if exact else _OFF.sub("", _ON.sub("", written)).strip()
    minutes = minutes_of(match["minutes"])
    if not name:
        return None, ""
    wrong = [
        limited("pot minutes", minutes),
        limited("before", pot.before),
        limited("oven", pot.oven) if pot.oven is not None else "",
        problem,
    ]
    return replace(pot, name=name, minutes=minutes), "; ".join(filter(None, wrong))


def _told(step: PlanStep) -> str:
    """Return what a line was read as."""
    spoken = [f"{number(step.say_minutes, 1)} min of words"] if step.say_minutes is not None else []
    worked = [f"{number(step.hands_minutes, 1)} min of work"] if step.hands_minutes else []
    pots = [f"starts {pot.name} ({number(pot.minutes, 1)} min{_oven_told(pot)})" for pot in step.pots]
    needs = [f"needs {listing(step.needs)}"] if step.needs else []
    return ", ".join(["step", *spoken, *worked, *pots, *needs])


def _oven_told(pot: Pot) -> str:
    hot = "" if pot.oven is None else f", oven {number(pot.oven)} F"
    hot += ", at the start of the step" if pot.at_start else ""
    return hot + (f", {number(pot.before, 1)} min before the first word" if pot.before else "")


def write_plan(steps: Sequence[PlanStep]) -> str:
    """Return steps as plain text; `read_plan` gives them back, spaces and all but what it does not show."""
    lines: list[str] = []
    part = ""
    for step in steps:
        if one_line(step.part) != part:
            part = one_line(step.part)
            lines += ["", f"# {part}"] if lines else [f"# {part}"]
        title = _title_written(step.title)
        times = _times_written(step) or ("0 min: " if title.startswith('"') else "")
        clauses = [f"{times}{title}"]
        clauses += [_pot_written(pot) for pot in step.pots]
        clauses += [f"needs {', '.join(map(_name_written, step.needs))}"] if step.needs else []
        lines.append("; ".join(clauses))
        if step.say.strip():
            lines.append(f"  Say: {one_line(step.say)}")
    return "\n".join(lines)


def _times_written(step: PlanStep) -> str:
    hands = f"{_minutes_written(step.hands_minutes)} min"
    if step.say_minutes is None:
        return f"{hands}: " if step.hands_minutes else ""
    talked = f"{_minutes_written(step.say_minutes)} min talk"
    return f"{talked}, {hands} hands: " if step.hands_minutes else f"{talked}: "


def _minutes_written(minutes: float) -> str:
    return f"{minutes:.10g}" if minutes < 1e6 else f"{minutes:.0f}"


def _title_written(title: str) -> str:
    plain = one_line(title)
    read, timed = _step(f"0 min: {plain}") if plain else (PlanStep(""), Asked("no name"))
    alone, asked = _step(plain) if plain else (PlanStep(""), Asked())
    same = (
        re.match(r"\w", plain) is not None
        and not re.search(r'["\\]', plain)
        and read == PlanStep(plain) == alone
        and not timed.problem
        and not asked.problem
        and heading(plain) is None
        and _SAY.match(plain) is None
    )
    return plain if same else quoted(plain)


def _name_written(name: str) -> str:
    plain = one_line(name)
    wants = None if re.search(r'[";\\]', plain) else _NEEDS.match(f"needs {plain}")
    same = wants is not None and [unquoted(_ON.sub("", part)) for part in _names(wants["pots"])] == [plain]
    return plain if same else quoted(plain)


def _pot_written(pot: Pot) -> str:
    rest = f" {_minutes_written(pot.minutes)} min"
    rest += "" if pot.oven is None else f" in the oven at {_minutes_written(pot.oven)}"
    rest += f", {_minutes_written(pot.before)} min before the talk" if pot.before else ""
    rest += ", at the start" if pot.at_start else ""
    plain = one_line(pot.name)
    clause = f"{plain}{rest}"
    plainly = not re.search(r'[";\\]', plain) and _NEEDS.match(clause) is None
    return clause if plainly and _pot(clause)[0] == replace(pot, name=plain) else f"{quoted(plain)}{rest}"
