"""How a line of a plain text of a talk was read: what the boxes answer in place."""

import re
from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class PlainLine:
    """One line of a box and its answer.

    Attributes
    ----------
    place : int
        Which line it is, from 0.
    read_as : str
        What it was read as: "step of 5 minutes, starts tray"; empty for a line without meaning.
    problem : str
        What has to be asked; empty when the line is clear.
    choices : tuple of str
        Lines that could stand in its place.
    entry : int
        Which sentence, step or question of the talk it makes or belongs to, from 0; of several the first. -1 for none.
    makes : int
        How many of these it makes; 0 for a line that belongs to one above it.
    """

    place: int
    read_as: str = ""
    problem: str = ""
    choices: tuple[str, ...] = ()
    entry: int = -1
    makes: int = 0


_HASHED = re.compile(r"^\s*#+(?:\s+(?P<name>.*?))?\s*$|^\s*#+(?P<close>\w.*?)\s*#*\s*$")


def heading(line: str) -> str | None:
    """Return the part that a line with # in front heads, None for any other line; "#" alone ends a part."""
    match = _HASHED.match(line)
    return re.sub(r"(?<=\w)\s*:$", "", match["name"] or match["close"] or "").strip() if match else None


def one_line(text: str) -> str:
    """Return a text on one line, with single spaces."""
    return " ".join(text.split())


def quoted(text: str) -> str:
    """Return a text in quotes, in which any sign may stand."""
    return '"{}"'.format(text.replace("\\", "\\\\").replace('"', '\\"'))


def unquoted(text: str) -> str:
    """Return what stands in quotes; a text without them stays.

    Examples
    --------
    >>> unquoted(quoted('a "pot"; or two')), unquoted("pot")
    ('a "pot"; or two', 'pot')
    """
    match = re.fullmatch(r'"((?:[^"\\]|\\.)*)"', text)
    return re.sub(r"\\(.)", r"\1", match[1]) if match else text
