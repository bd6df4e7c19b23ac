"""Low-sodium, reduced-fat, unsweetened: the form that the table has, or the plain food and whether that matters."""

import re
from collections.abc import Sequence
from dataclasses import dataclass

from kit.food.composition import Food, nutrient_index


@dataclass(frozen=True, slots=True)
class Lighter:
    """A kind of food with less of one thing.

    Attributes
    ----------
    nutrient : str
        What there is less of.
    said : re.Pattern
        How lines say it.
    forms : tuple of str
        How the table's names say it, the form to try first at the front.
    matters : float
        Content from which a plain food is no match. [the nutrient's unit per 100 g]
    """

    nutrient: str
    said: re.Pattern[str]
    forms: tuple[str, ...]
    matters: float


_LESS = r"(?:very )?(?:low|lower|lowered|reduced|less|no|non|zero)"
KINDS = (
    Lighter(
        "sodium",
        re.compile(rf"\b(?:{_LESS} (?:added )?(?:sodium|salt)(?: added)?|(?:sodium|salt) (?:free|reduced)|unsalted)\b"),
        ("low sodium", "reduced sodium", "unsalted", "no salt added"),
        120.0,
    ),
    Lighter(
        "fat",
        re.compile(rf"\b(?:{_LESS} fat|half fat|fat (?:free|reduced)|skim|light|lite)\b"),
        ("low fat", "reduced fat", "light", "non fat", "fat free"),
        3.0,
    ),
    Lighter(
        "sugars",
        re.compile(rf"\b(?:{_LESS} (?:added )?sugar(?: added)?|sugar (?:free|reduced)|unsweetened)\b"),
        ("unsweetened",),
        8.0,
    ),
)


def lighter(words: Sequence[str]) -> tuple[Lighter, str] | None:
    """Return the kind that words ask for, and the words that say so.

    Examples
    --------
    >>> lighter(["low", "sodium", "vegetable", "broth"])[1]
    'low sodium'
    """
    text = " ".join(words)
    for kind in KINDS:
        found = kind.said.search(text)
        if found:
            return kind, found[0]
    return None


def matters(kind: Lighter, food: Food) -> bool:
    """Whether the plain food holds so much that the lighter form would be another food."""
    return bool(food.per_100g[nutrient_index(kind.nutrient)] >= kind.matters)
