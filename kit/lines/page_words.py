"""The words that pasted pages carry around a recipe: headings, buttons, times, tools and the verbs of a method."""

import re
from collections import defaultdict
from collections.abc import Mapping
from functools import cache

from kit import files
from kit.food.cells import read_rows

_EDGE = re.compile(r"^[\W_]+|[^\w)]+$")


@cache
def page_words() -> Mapping[str, tuple[str, ...]]:
    """Return the words of each kind; one that ends in ``*`` stands for everything that begins with it."""
    found: dict[str, list[str]] = defaultdict(list)
    for row in read_rows(files.bundled("data/page_words.csv")):
        found[row["kind"]].append(row["words"])
    return {kind: tuple(words) for kind, words in found.items()}


@cache
def _whole_line(kind: str) -> re.Pattern[str]:
    return re.compile(rf"(?:{'|'.join(map(_pattern, _longest_first(kind)))})$", re.IGNORECASE)


@cache
def _start_of_line(kind: str) -> re.Pattern[str]:
    words = "|".join(re.escape(words.rstrip("*")) for words in _longest_first(kind))
    return re.compile(rf"(?:{words})(?![\w-])", re.IGNORECASE)


def _longest_first(kind: str) -> list[str]:
    return sorted(page_words()[kind], key=len, reverse=True)


def _pattern(words: str) -> str:
    """Return the pattern of some words: an apostrophe of either kind; ``*`` at the end is anything, in it one gap."""
    text = re.escape(words.rstrip("*")).replace("'", "['\u2019]").replace(r"\*", ".*")
    if not words.endswith("*"):
        return text
    return text + (r".*" if words[-2] in ":. " else r"(?![\w-]).*")


def is_whole(kind: str, line: str) -> bool:
    """Whether a line is some words of a kind and nothing else; marks around it and a colon behind it do not count.

    Examples
    --------
    >>> is_whole("method", "DIRECTIONS:"), is_whole("site", "Jump to the recipe"), is_whole("site", "printed cotton")
    (True, True, False)
    """
    return _whole_line(kind).match(_EDGE.sub("", line)) is not None


def start(kind: str, line: str) -> str:
    """Return the words of a kind that a line starts with, or nothing.

    Examples
    --------
    >>> start("verb", "Preheat the oven"), start("verb", "Brownies")
    ('Preheat', '')
    """
    match = _start_of_line(kind).match(line)
    return match[0] if match else ""
