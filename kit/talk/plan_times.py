"""The times of a plan: how long a step takes, as people write it, and those that have to be asked about."""

import re
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from itertools import pairwise, zip_longest

from kit.texts import number

_MIN = r"m(?:in(?:ute)?s?)?\b\.?"
SPAN = (
    rf"(?:\d+(?:[.,]\d+)?\s*h(?:ours?|rs?)?\b\.?(?:\s*(?:and\s+)?\d+\s*(?:{_MIN})?)?|\d+:\d\d|"
    rf"\d+(?:[.,]\d+)?(?:\s+\d/\d)?\s*(?:{_MIN}|'))"
)
TALKED = re.compile(
    rf"^\s*(?P<minutes>{SPAN})\s*(?:of\s+)?(?:talk(?:ing)?|words|spoken)\b\s*[,;:]?\s*"
    rf"(?:(?:and\s+)?(?P<hands>{SPAN})\s*(?:of\s+)?(?:hands?(?:-on)?|work)\b)?\s*[:,-]?\s*(?P<rest>.*)$",
    re.IGNORECASE,
)
TIMED = re.compile(
    rf"^\s*(?P<minutes>{SPAN})\s*(?:of\s+(?:hands?(?:-on)?\s*)?work\b|hands?-on\b)?\s*(?:[:,\u2013\u2014-]|\s)\s*(?P<rest>\S.*)$",
    re.IGNORECASE,
)
TIMED_BEHIND = re.compile(
    rf"^(?P<rest>[^;]*?)\s*[,(:\u2013\u2014-]\s*(?P<minutes>{SPAN})\s*\)?\s*(?P<more>;.*)?$", re.IGNORECASE
)

_INSIDE = re.compile(rf"[\s,(\u2013\u2014-]*(?:\bfor\s+)?(?<![\w.:/])(?P<minutes>{SPAN})\)?", re.IGNORECASE)
_CLOCK = re.compile(
    r"^\s*(?:[-*\u2022]\s+)?(?P<start>\d{1,2}:\d\d)\s*(?P<half>[ap]\.?m\b\.?)?"
    r"(?:\s*(?:-|\u2013|to)\s*(?P<end>\d{1,2}:\d\d)\s*(?:[ap]\.?m\b\.?)?)?\s*[:,\u2013\u2014-]?\s*(?P<rest>\S.*)$",
    re.IGNORECASE,
)
_HALF_A_DAY = 12 * 60  # minutes; 12:50 is before 1:10


@dataclass(frozen=True, slots=True)
class Asked:
    """What has to be asked about a line, and the lines that could stand in its place."""

    problem: str = ""
    choices: tuple[str, ...] = ()


def minutes_of(text: str) -> float:
    """Return how long a written time is. [min]

    Examples
    --------
    >>> [minutes_of(text) for text in ("5 min", "1 h 15 min", "2:30", "1.5 minutes", "2 1/2 min")]
    [5.0, 75.0, 2.5, 1.5, 2.5]
    """
    text = text.lower().replace(",", ".").strip()
    if ":" in text:
        whole, seconds = text.split(":")
        return int(whole) + int(seconds) / 60
    numbers = re.findall(r"\d+(?:\.\d+)?(?:/\d+)?", text)
    values = [float(part) if "/" not in part else int(part[0]) / max(1, int(part.split("/")[1])) for part in numbers]
    if "h" in text:
        return 60 * values[0] + (values[1] if len(values) > 1 else 0)
    return sum(values)


def time_inside(title: str) -> Asked:
    """Return what to ask about a step without minutes whose name holds a time; nothing for any other name.

    Examples
    --------
    >>> time_inside("Wait 10 minutes").problem
    '"10 minutes" in the name of a step counts for nothing; write "10 min: Wait"'
    >>> time_inside("Rice on (5 min): Rice goes first.").choices[0].splitlines()
    ['5 min: Rice on', '  Say: Rice goes first.']
    """
    match = _INSIDE.search(title)
    if match is None:
        return Asked()
    behind = title[match.end() :].lstrip()
    says = behind.startswith(":")
    name = " ".join((title[: match.start()] if says else f"{title[: match.start()]} {behind}").split()) or "step"
    better = f"{number(minutes_of(match['minutes']), 2)} min: {name}"
    words = behind.lstrip(": ")
    return Asked(
        f'"{match["minutes"]}" in the name of a step counts for nothing; write "{better}"',
        (f"{better}\n  Say: {words}" if says and words else better,),
    )


def clock_times(rows: Sequence[str]) -> Mapping[int, Asked]:
    """Return the lines that begin with a time of day, or of the talk, rather than with how long a step takes.

    Times that only grow from line to line are taken for such, and so is one with "pm", an end, or ten hours and more.

    Examples
    --------
    >>> [asked.choices for asked in clock_times(["12:00 Welcome", "12:05 Rice on", "12:15 Serve"]).values()]
    [('5 min: Welcome',), ('10 min: Rice on',), ()]
    >>> clock_times(["2:30: stir", "1:00: wait"])
    {}
    """
    found = [(place, match) for place, row in enumerate(rows) if (match := _CLOCK.match(row))]
    starts = [_clock(match["start"]) for _, match in found]
    grows = len(found) > 1 and all(
        (later - earlier) % _HALF_A_DAY < _HALF_A_DAY / 2 for earlier, later in pairwise(starts)
    )
    asked = {}
    for (place, match), start, following in zip_longest(found, starts, starts[1:]):
        if grows or match["half"] or match["end"] or start >= 10 * 60:
            end = _clock(match["end"]) if match["end"] else following
            choices = () if end is None else (f"{number((end - start) % _HALF_A_DAY)} min: {match['rest']}",)
            problem = f'"{match["start"]}" may be a time of day; write how long the step takes, "5 min: welcome"'
            asked[place] = Asked(problem, choices)
    return asked


def _clock(text: str) -> int:
    hours, minutes = text.split(":")
    return 60 * int(hours) + int(minutes)
