"""Household measures as official tables word them, as the kit's own measure and cut."""

import math
import re
from collections.abc import Iterable
from dataclasses import dataclass
from functools import cache

from kit.food.amounts import plain_characters, read_count
from kit.food.measures import unit, unit_named
from kit.food.vocabulary import line_words, words

# A yield, a portion of no fixed size, or a part with its bone is no measure that a recipe would name.
_NO_MEASURE = re.compile(r"serving|nlea|racc|not specified|amount to|cubic|refuse|\bbone|\bskin\b|without|guideline")
_BRACKETS = re.compile(r"\([^)]*\)?")
_SIZES_IN_INCHES = re.compile(r"[\d/.\s-]+(?:\"|inch(?:es)?\b|in\.)(?:\s*(?:dia|long|thick|square|sq|high|wide)\b)?")
_MORE_CUTS = {word: word for word in ("whole", "cooked", "drained", "ground")}
_MORE_CUTS |= {"puree": "pureed", "flake": "flakes", "mash": "mashed", "unpacked": "not packed"}
_NOUN_AND_CUT = ("slice", "half", "strip", "ring", "cube", "floret")  # "cup slices" names a cut, "slice" a measure
_WHOLE_THINGS = ("piece", "fruit", "vegetable", "item", "each", "unit", "whole")
_KITCHEN_VOLUMES = {"cup": "cup", "tablespoon": "tbsp", "teaspoon": "tsp", "fluid_ounce": "fl oz"}


@dataclass(frozen=True, slots=True)
class WordedMeasure:
    """How many of which measure, in which cut: 1 of ``cup``, ``chopped``."""

    count: float
    measure: str
    cut: str


@cache
def _nouns() -> frozenset[str]:
    named = {word for word, known in line_words().items() if known.kind in ("measure", "container")}
    return frozenset(named | set(_NOUN_AND_CUT))


def read_measure(text: str, food_name: str = "") -> WordedMeasure | None:
    """Read a household measure as a table words it.

    Parameters
    ----------
    text : str
        Such as ``"1 cup, chopped"`` or ``'slice, large (1/4" thick)'``; one is meant when it starts with no number.
    food_name : str, optional
        The food's name, so that ``"onion, medium"`` is known to be one onion.

    Returns
    -------
    WordedMeasure or None
        None for a weight, and for words that are no measure a recipe names.

    Examples
    --------
    >>> read_measure("1/2 cup, chopped or diced")
    WordedMeasure(count=0.5, measure='cup', cut='chopped')
    >>> read_measure('slice, large (1/4" thick)'), read_measure("onion, medium", "Onions, raw").measure
    (WordedMeasure(count=1.0, measure='slice', cut='large'), 'medium')
    >>> read_measure("NLEA serving") is None
    True
    """
    written = plain_characters(text).lower()
    plain = _SIZES_IN_INCHES.sub(" ", _BRACKETS.sub(" ", written)).strip()
    if "yield" in written or _NO_MEASURE.search(plain):
        return None
    count, rest = read_count(plain) if re.match(r"[\d.]", plain) else (None, plain)  # "half" is a measure here
    number = count.value if count else 1.0
    said = words(rest.replace("fl oz", "floz"))
    if not said or not math.isfinite(number) or number <= 0:
        return None
    volume = unit(said[0])
    if volume:
        if volume.kind == "mass":
            return None
        measure = _KITCHEN_VOLUMES.get(volume.name, "cup")
        cups = 1.0 if volume.name in _KITCHEN_VOLUMES else volume.size / unit_named("cup").size
        return WordedMeasure(number * cups, measure, _cut(said[1:]))
    return _counted(number, said, frozenset(words(food_name)) | set(_WHOLE_THINGS))


def _counted(number: float, said: tuple[str, ...], things: frozenset[str]) -> WordedMeasure | None:
    """Read a measure that is counted: a slice, a clove, a large one."""
    sizes = [known.meaning for word in said if (known := line_words().get(word)) and known.kind == "size"]
    if "extra" in said and "large" in sizes:
        sizes = ["extra large"]
    nouns = [word for word in said if word in _nouns()]
    opening = said[0] in _nouns() or said[0] in things or said[0] == "extra"
    if not opening and not (line_words().get(said[0]) and line_words()[said[0]].kind == "size"):
        return None
    if nouns:
        known = line_words().get(nouns[0])
        measure = known.meaning if known and known.kind in ("measure", "container") else nouns[0]
        return WordedMeasure(number, measure, sizes[0] if sizes else _cut(word for word in said if word != nouns[0]))
    return WordedMeasure(number, sizes[0] if sizes else "piece", "")


def _cut(said: Iterable[str]) -> str:
    before = ""
    for word in said:
        known = line_words().get(word)
        cut = known.meaning if known and known.kind == "cut" else _MORE_CUTS.get(word)
        if cut:
            return "not packed" if cut == "packed" and before == "not" else cut
        before = word
    return ""
