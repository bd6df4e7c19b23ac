"""Which line of a text is which one of before, when lines were added, changed, moved or taken away."""

from collections import defaultdict, deque
from collections.abc import Callable, Sequence
from typing import TypeVar

from rapidfuzz import fuzz

from kit.food.amounts import plain_characters, read_count
from kit.food.measures import unit
from kit.talk.plain_lines import one_line

Value = TypeVar("Value")
_ALIKE = 62.0  # of 100, from where two sentences count as one that was changed
_ALIKE_FOODS = 72.0
_FEWEST_LETTERS = 3


def matched(
    old: Sequence[str], new: Sequence[str], alike: Callable[[str, str], float] | None = None
) -> list[int | None]:
    """Return for each new line which old one it is: the same text first, then the likest that is left.

    Parameters
    ----------
    old, new : sequence of str
        The lines before and now.
    alike : callable, optional
        How alike two lines are, 0 for not at all; by their letters by default.

    Examples
    --------
    >>> matched(["It is warm.", "It keeps three days."], ["It keeps four days.", "Hello.", "It is warm."])
    [1, None, 0]
    """
    alike = alike or sentences_alike
    places: dict[str, deque[int]] = defaultdict(deque)
    for at, line in enumerate(old):
        places[one_line(line)].append(at)
    found: list[int | None] = [
        places[text].popleft() if (text := one_line(line)) in places and places[text] else None for line in new
    ]
    left = sorted(at for waiting in places.values() for at in waiting)
    pairs = sorted(
        (-score, abs(at - before), at, before)
        for at, line in enumerate(new)
        if found[at] is None
        for before in left
        if (score := alike(one_line(old[before]), one_line(line))) > 0
    )
    for _score, _far, at, before in pairs:
        if found[at] is None and before in left:
            found[at] = before
            left.remove(before)
    return found


def paired(
    old: Sequence[tuple[int, Value]], new: Sequence[Value], name: Callable[[Value], str]
) -> list[tuple[int | None, Value | None, Value]]:
    """Return each new value with the number and value of the old one that it is, None for neither."""
    places = matched([name(value) for _, value in old], [name(value) for value in new])
    return [(None, None, value) if at is None else (*old[at], value) for at, value in zip(places, new, strict=True)]


def sentences_alike(one: str, other: str) -> float:
    """Return how alike two sentences are, 0 when they are two."""
    score = float(fuzz.ratio(one.lower(), other.lower()))
    return score if score >= _ALIKE else 0.0


def foods_alike(one: str, other: str) -> float:
    """Return how alike the foods of two ingredient lines are, whatever their amounts; 0 when they are two.

    Examples
    --------
    >>> foods_alike("1 cup milk", "1 cup rice"), foods_alike("1 cup lentils", "2 1/2 cups lentils, dry") > 0
    (0.0, True)
    """
    first, second = _food(one), _food(other)
    if min(len(first), len(second)) < _FEWEST_LETTERS:
        return 0.0
    if first.startswith(second) or second.startswith(first):  # as she types
        return 100.0
    score = max(float(fuzz.ratio(first, second)), float(fuzz.token_set_ratio(first, second)) - 5)
    return score if score >= _ALIKE_FOODS else 0.0


def _food(line: str) -> str:
    """Return a line without its amount and unit."""
    _, rest = read_count(plain_characters(line.strip()))
    first, _, others = rest.partition(" ")
    return (others if others and unit(first) else rest).strip().lower()
