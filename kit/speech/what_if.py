"""A question answered live: what a change does to the numbers, the allergens, the kind of dish and what is said."""

from collections.abc import Sequence
from dataclasses import dataclass
from functools import cached_property
from typing import Any

from kit.errors import ChangeError
from kit.food.nutrients import nutrient, nutrients
from kit.meal.certainty import Range, range_of
from kit.meal.changes import Change, change, read_change
from kit.meal.changes_told import StepTold, told
from kit.meal.nutrition import Nutrition
from kit.meal.recipe import Recipe
from kit.meal.steps import Step, applied
from kit.rules.cautions import allergens
from kit.rules.dish_kind import DishKind, kind_of_dish
from kit.speech.points import check_points
from kit.talk.talk import Question, Talk
from kit.texts import listing, number

SHOWN = ("energy", "protein", "fat", "saturated_fat", "carbohydrate", "fiber", "sugars", "sodium")
TOO_SMALL, SAME = "too small to tell", "the same"


@dataclass(frozen=True, slots=True)
class PointChange:
    """A sentence of the script before and after a change: as it is said then, its verdicts, and why the second."""

    say: str
    before: str
    after: str
    say_after: str
    because: str

    @property
    def differs(self) -> bool:
        """Whether the verdict is another one."""
        return self.before != self.after


@dataclass(frozen=True, eq=False)
class WhatIf:
    """A talk's recipe as written beside what a stack of changes makes of it.

    Attributes
    ----------
    talk : Talk
        The talk.
    steps : tuple of Step
        The changes, in their order.
    """

    talk: Talk
    steps: tuple[Step, ...] = ()

    @cached_property
    def recipe(self) -> Recipe:
        """The recipe after the changes."""
        return applied(self.talk.recipe, self.steps)

    @cached_property
    def change(self) -> Change:
        """Its numbers before and after; the rows of both are the same ingredients."""
        return change(self.talk.recipe, self.recipe)

    @cached_property
    def told(self) -> tuple[StepTold, ...]:
        """What each step does, in words."""
        return told(self.talk.recipe, self.steps, self.talk.measures)

    @cached_property
    def kinds(self) -> tuple[DishKind, DishKind]:
        """The kind of dish before and after."""
        return kind_of_dish(self.change.before), kind_of_dish(self.change.after)

    @cached_property
    def allergens_gone(self) -> tuple[str, ...]:
        """Names of the allergens that the changed dish has no more."""
        return self._allergens(self.talk.recipe, self.recipe)

    @cached_property
    def allergens_new(self) -> tuple[str, ...]:
        """Names of the allergens that the changed dish brings in."""
        return self._allergens(self.recipe, self.talk.recipe)

    def _allergens(self, recipe: Recipe, other: Recipe) -> tuple[str, ...]:
        there = {one.allergen for one in allergens(other, self.talk.rules)}
        return tuple(one.name for one in allergens(recipe, self.talk.rules) if one.allergen not in there)

    @cached_property
    def points(self) -> tuple[PointChange, ...]:
        """Every sentence of the script with its verdict before and after."""
        before, after = check_points(self.talk), check_points(self.talk, self.change.after)
        return tuple(
            PointChange(old.say, old.verdict, new.verdict, new.say, new.because)
            for old, new in zip(before, after, strict=True)
        )

    def as_json(self) -> dict[str, Any]:
        """Return it as the command line prints it."""
        return {
            "changes": [
                {
                    "kind": step.kind,
                    "ingredient": step.ingredient or None,
                    "food": step.food or None,
                    "grams_before": step.grams_before,
                    "grams_after": step.grams_after,
                    "text": step.text,
                    "how": step.how,
                    "line": step.line or None,
                    "meaning": step.meaning or None,
                }
                for step in self.told
            ],
            "problem": None,
            "choices": [],
            "servings": self.recipe.servings,
            "before": per_serving(self.change.before),
            "after": per_serving(self.change.after),
            "difference": {name: _ends(self.change.difference(name)) for name in nutrients()},
            "allergens": {"gone": list(self.allergens_gone), "new": list(self.allergens_new)},
            "kind_of_dish": {"before": self.kinds[0].kind, "after": self.kinds[1].kind},
            "points": [{"say": point.say, "before": point.before, "after": point.after} for point in self.points],
        }

    def as_text(self) -> str:
        """Return it in a few aligned lines of text."""
        steps = [f"- {step.text}" + (f" ({step.how})" if step.how else "") for step in self.told]
        served = (
            f"Per serving, of {number(self.talk.recipe.servings, 1)} before and {number(self.recipe.servings, 1)} after"
        )
        parts = [f"{self.talk.title}: what if", *steps, "", served, *_table(self.change), ""]
        gone, new = listing(self.allergens_gone), listing(self.allergens_new)
        if gone:
            parts.append(f"No longer brings: {gone}. Packages and hands still may.")
        if new:
            parts.append(f"Now brings: {new}.")
        if not gone and not new:
            parts.append("Allergens: the same.")
        before, after = self.kinds
        if before.kind != after.kind:
            parts.append(f"Kind of dish: {before.kind} before, {after.kind} after; {after.because}.")
        changed = [point for point in self.points if point.differs]
        for point in changed:
            parts.append(f"{point.before} -> {point.after}: {point.say_after}\n    {point.because}")
        if self.points and not changed:
            parts.append("Every sentence of the script keeps its verdict.")
        return "\n".join(parts)


def what_if(talk: Talk, lines: Sequence[str]) -> WhatIf:
    """Read some typed changes, each on top of those before it, and set the dish after them beside the one before.

    Raises
    ------
    ChangeError
        If a line is not understood.

    Examples
    --------
    >>> from kit.talk.library import read_talk
    >>> asked = what_if(read_talk("barley_squash_box"), ["no feta"])
    >>> asked.allergens_gone, asked.told[0].text
    (('milk',), 'leave out the feta cheese')
    """
    steps: tuple[Step, ...] = ()
    for line in lines:
        steps = (*steps, *read_change(line, applied(talk.recipe, steps)))
    return WhatIf(talk, steps)


@dataclass(frozen=True, eq=False)
class Prepared:
    """A prepared question: what it tries on screen, or why that is not understood; neither where it tries nothing."""

    question: Question
    tries: WhatIf | None = None
    problem: str = ""


def prepared(talk: Talk) -> tuple[Prepared, ...]:
    """Return every question of a talk with what it tries, ready for its button."""
    found = []
    for question in talk.questions:
        try:
            found.append(Prepared(question, what_if(talk, [question.try_]) if question.try_ else None))
        except ChangeError as fault:
            found.append(Prepared(question, problem=str(fault)))
    return tuple(found)


def problem_json(talk: Talk, problem: str, choices: Sequence[str]) -> dict[str, Any]:
    """Return what the command line prints where a line is not understood: nothing is changed."""
    return {**WhatIf(talk).as_json(), "problem": problem, "choices": list(choices)}


def per_serving(numbers: Nutrition) -> dict[str, float]:
    """Return every nutrient of a serving by its id."""
    return dict(zip(nutrients(), map(float, numbers.per_serving), strict=True))


def in_words(changed: Change, name: str) -> str:
    """Return a difference in words: "6.1 g less", "too small to tell".

    A difference whose 90 % range includes zero cannot be told from none.
    """
    found = changed.difference(name)
    if found.value == found.low == found.high == 0:
        return SAME
    if found.low <= 0 <= found.high:
        return TOO_SMALL
    about = nutrient(name)
    amount = number(abs(found.value), about.decimals)
    text = "hardly any" if amount == "0" else f"{amount} {about.unit}"
    return f"{text} {'more' if found.value > 0 else 'less'}"


def _ends(found: Range) -> dict[str, float]:
    return {"value": found.value, "low": found.low, "high": found.high}


def _table(changed: Change) -> list[str]:
    rows = [("", "before", "", "after", "", "")]
    for name in SHOWN:
        about = nutrient(name)
        cells = [about.name]
        for numbers in (changed.before, changed.after):
            ends = range_of(numbers, name)
            cells += [
                f"{number(ends.value, about.decimals)} {about.unit}",
                f"{number(ends.low, about.decimals)} to {number(ends.high, about.decimals)}",
            ]
        rows.append((cells[0], cells[1], cells[2], cells[3], cells[4], in_words(changed, name)))
    widths = [max(len(row[column]) for row in rows) for column in range(6)]
    return ["  ".join(cell.ljust(width) for cell, width in zip(row, widths, strict=True)).rstrip() for row in rows]
