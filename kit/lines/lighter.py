"""Low-sodium, reduced-fat, unsweetened: the form that the table has, or the plain food and whether that matters."""

import re
from collections.abc import Sequence
from dataclasses import dataclass
from math import isnan

from kit.food.composition import Food
from kit.food.nutrients import nutrient_index


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
    free : re.Pattern or None
        How lines say that there is none at all, where a form with less of it is no match for that.
    forms_free : tuple of str
        How the table's names say that.
    """

    nutrient: str
    said: re.Pattern[str]
    forms: tuple[str, ...]
    matters: float
    free: re.Pattern[str] | None = None
    forms_free: tuple[str, ...] = ()

    def forms_for(self, phrase: str) -> tuple[str, ...]:
        """Return the forms that answer a phrase: "fat free" is not answered by a reduced-fat one."""
        if self.nutrient == "sodium" and _NO_SALT.search(phrase):
            return (*self.forms[2:], *self.forms[:2])  # "no salt" is first of all unsalted
        return self.forms_free if self.free and self.free.search(phrase) else self.forms


_NO_SALT = re.compile(r"\b(?:no|non|zero|free|unsalted)\b")
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
        re.compile(rf"\b(?:{_LESS} fat|half fat|fat (?:free|reduced)|(?<!part )skim|light|lite)\b"),
        ("low fat", "reduced fat", "light"),
        3.0,
        re.compile(r"\b(?:non fat|no fat|zero fat|fat free|skim)\b"),
        ("non fat", "fat free", "skim"),
    ),
    Lighter(
        "sugars",
        re.compile(rf"\b(?:{_LESS} (?:added )?sugar(?: added)?|sugar (?:free|reduced)|unsweetened)\b"),
        ("unsweetened",),
        8.0,
        re.compile(r"\b(?:sugar free|zero sugar|no sugar(?! added))\b"),
        ("sugar free", "diet", "unsweetened"),
    ),
)
_SUGARS = next(kind for kind in KINDS if kind.nutrient == "sugars")
_LIGHT_IN_OTHER_WAYS = (
    "beverage",
    "spice",
    "sweetener",
    "snack",
    "fruit",
    "condiment",
    "bread",
)  # there is no fat in them to be less of
_ITS_OWN_SUGARS = re.compile(r"\badded\b|\bunsweetened\b")  # there is no sugar to be left out of a pure juice
_SWEETENED = frozenset(("cocktail", "nectar", "lemonade"))
_SWEET = ("sweetener", "baking", "snack", "condiment", "beverage", "dairy")  # of no known sugars, their starch tells
_THINGS = frozenset(("fat", "salt", "sodium", "sugar"))
THINGS = _THINGS | {"unsalted", "unsweetened", "skim", "light", "lite"}  # what is said less of, in one word or two


def lighter(words: Sequence[str]) -> tuple[Lighter, str] | None:
    """Return the kind that words ask for, and the words that say so.

    Examples
    --------
    >>> lighter(["low", "sodium", "vegetable", "broth"])[1]
    'low sodium'
    """
    if THINGS.isdisjoint(words):
        return None
    text = " ".join(words)
    for kind in KINDS:
        found = kind.said.search(text)
        if found:
            return kind, found[0]
    return None


def every_lighter(name: Sequence[str], after: Sequence[str]) -> tuple[tuple[Lighter, str], ...]:
    """Return every kind that a line asks for with the words that say so: "light tuna in water, no salt added".

    Parameters
    ----------
    name, after : sequence of str
        Words before the first comma, and behind it; those before it go first where both say one kind.
    """
    if THINGS.isdisjoint(name) and THINGS.isdisjoint(after):
        return ()
    found: dict[str, tuple[Lighter, str]] = {}
    for text in (" ".join(name), " ".join(after)):
        for kind in KINDS:
            said = kind.said.search(text)
            if said:
                found.setdefault(kind.nutrient, (kind, said[0]))
    return tuple(found.values())


def said_less(words: Sequence[str]) -> frozenset[str]:
    """Return the things of which words say that there is little: no fat is meant by "fat free broth".

    Examples
    --------
    >>> sorted(said_less(["chicken", "broth", "fat", "free"])), sorted(said_less(["chicken", "fat"]))
    (['fat'], [])
    """
    if _THINGS.isdisjoint(words):
        return frozenset()
    text = " ".join(words)
    return (
        frozenset(word for kind in KINDS for found in kind.said.finditer(text) for word in found[0].split()) & _THINGS
    )


def _is_pure_juice(food: Food) -> bool:
    return "juice" in food.base.split("-") and _SWEETENED.isdisjoint(food.base.split("-"))


def matters(kind: Lighter, food: Food, phrase: str = "") -> bool:
    """Whether the plain food holds so much that the lighter form, or one with none at all, would be another food."""
    least = kind.matters / 2 if food.group == "beverage" else kind.matters  # a glass is more than a spoonful
    if kind.nutrient == "sugars" and food.group in ("fruit", "vegetable") and food.state in ("raw", "frozen"):
        return False  # what sugars they have are their own
    if kind.nutrient == "sugars" and _ITS_OWN_SUGARS.search(phrase) and _is_pure_juice(food):
        return False
    if kind.free and kind.free.search(phrase):
        least = kind.matters / 3
    content = food.per_100g[nutrient_index(kind.nutrient)]
    if isnan(content) and kind is _SUGARS and food.group in _SWEET:
        content = food.per_100g[nutrient_index("carbohydrate")]
    return bool(content > least)


def lighter_form(kind: Lighter, phrase: str, food: Food) -> str:
    """Return what has to be asked when the table has no lighter form of a food; nothing where that hardly matters."""
    if phrase in ("light", "lite") and food.group == "dairy" and matters(_SUGARS, food):  # it is made with a sweetener
        return f'no "{phrase}" form of "{food.name}" in the table; it has less sugar than the plain one'
    if phrase in ("light", "lite") and food.group in _LIGHT_IN_OTHER_WAYS and not matters(kind, food):
        return f'no "{phrase}" form of "{food.name}" in the table; it has less sugar or salt than the plain one'
    if not matters(kind, food, phrase):
        return ""
    return f'no "{phrase}" form of "{food.name}" in the table; read as the plain one, which has more {kind.nutrient}'
