"""What is set on screen: a stack of changes to the recipe as written, each in words, each of which can be undone.

A moved slider, a chosen food and a typed what-if are changes alike (`kit.meal.steps`). Amounts are kept for the pot as
written, and the servings scale the whole, so that the order in which she sets things does not matter.
"""

import re
from collections.abc import Iterable, Mapping
from dataclasses import dataclass, replace
from functools import cached_property
from typing import Any

from kit.errors import AmountError, ChangeError, KitError
from kit.food.composition import Food, foods
from kit.food.finding import food as food_by_key
from kit.food.measures import unit
from kit.food.names import short_name
from kit.meal.change_asked import measured_as
from kit.meal.changes import Change, change, read_change
from kit.meal.kitchen_amounts import KitchenStep, nearest_amount, offered_amounts
from kit.meal.nutrition import Nutrition
from kit.meal.portions import MAKE_MORE
from kit.meal.recipe import LEAST_SERVINGS, MOST_SERVINGS, Ingredient, Recipe
from kit.meal.steps import Add, Amount, Row, Servings, Swap, applied, step_as_json, step_from_json
from kit.meal.steps import Step as ChangeStep
from kit.meal.target_words import is_target
from kit.meal.targets import reached
from kit.talk.talk import Talk
from kit.texts import number

AMOUNT, FOOD, SERVINGS = "amount", "food", "servings"  # the controls that a change may come from
_NUMBER_ALONE = re.compile(r"[\d½¼¾⅓⅔⅛⅜⅝⅞][\d\s./,½¼¾⅓⅔⅛⅜⅝⅞]*")


@dataclass(frozen=True, slots=True)
class Made:
    """One change: in words, as steps, and the control it came from, which a later one of that control replaces.

    Attributes
    ----------
    words : str
        As it is shown: "no feta".
    steps : tuple of kit.meal.steps.Step
        What it does.
    control : str
        ``"amount"``, ``"food"`` or ``"servings"``; empty for a what-if.
    at : int
        The ingredient of that control.
    """

    words: str
    steps: tuple[ChangeStep, ...]
    control: str = ""
    at: int = -1


@dataclass(frozen=True, eq=False)
class Setting:
    """A talk's recipe as it is tried out on screen; every change returns a new setting.

    Attributes
    ----------
    talk : Talk
        The talk.
    system : {"us", "metric"}
        The measures that amounts are named in.
    made : tuple of Made
        The changes, in order.
    """

    talk: Talk
    system: str = "us"
    made: tuple[Made, ...] = ()

    @cached_property
    def _steps(self) -> list[ChangeStep]:
        return [step for change in self.made for step in change.steps if not isinstance(step, Servings)]

    @cached_property
    def _serving(self) -> Servings:
        said = [step for change in self.made for step in change.steps if isinstance(step, Servings)]
        return said[-1] if said else Servings(self.talk.recipe.servings)

    @cached_property
    def pot(self) -> Recipe:
        """The recipe with all changes but that of the servings."""
        return applied(self.talk.recipe, self._steps)

    @cached_property
    def recipe(self) -> Recipe:
        """The recipe as it is set."""
        return applied(self.pot, [self._serving])

    @cached_property
    def both(self) -> Change:
        """The dish as written and as it is set, with the same ingredients in both."""
        return change(self.talk.recipe, self.recipe)

    @property
    def now(self) -> Nutrition:
        """The dish as it is set."""
        return self.both.after

    @property
    def written(self) -> Nutrition:
        """The dish as written."""
        return self.both.before

    @property
    def servings(self) -> float:
        """How many are made, or shared out."""
        return self._serving.servings

    @property
    def meaning(self) -> str:
        """What other servings mean: make more, or share out."""
        return self._serving.meaning

    @property
    def scale(self) -> float:
        """How many times the pot as written is cooked."""
        return self.servings / self.talk.recipe.servings if self.meaning == MAKE_MORE else 1.0

    def changed_rows(self) -> set[int]:
        """Return the places of the ingredients that are not as written."""
        written = self.talk.recipe.ingredients
        return {
            at
            for at, part in enumerate(self.pot.ingredients)
            if at >= len(written) or part.food.key != written[at].food.key or part.grams != written[at].grams
        }

    @cached_property
    def _base(self) -> Recipe:
        """The recipe with all changes but those of the sliders and the servings: what the sliders run around."""
        kept = _valid(self.talk.recipe, [made for made in self.made if made.control != AMOUNT])
        return applied(self.talk.recipe, [s for made in kept for s in made.steps if not isinstance(s, Servings)])

    def states(self) -> list[tuple[Any, ...]]:
        """Return for each ingredient what its control depends on."""
        base = self._base.ingredients
        common = (self.talk.name, self.scale, self.system)
        return [
            (*common, part.food.key, part.grams, before.food.key, before.grams)
            for part, before in zip(self.pot.ingredients, base, strict=True)
        ]

    def amounts(self, at: int) -> tuple[tuple[KitchenStep, ...], int]:
        """Return the amounts that the slider of an ingredient runs through, and where among them it stands."""
        base, written = self._base.ingredients[at], self.talk.recipe.ingredients
        if base.grams == 0 and at < len(written):
            base = replace(base, grams=written[at].grams)  # left out: the slider can bring it back
        grams = float(self.pot.grams[at])
        steps = offered_amounts(base, grams, self.scale, self.system)
        return steps, nearest_amount(steps, grams * self.scale)

    def with_amount(self, at: int, step: KitchenStep) -> "Setting":
        """Return the setting with an ingredient at an amount of its slider."""
        food = self.pot.ingredients[at].food
        made = Made(f"{short_name(food)}: {step.label}", self._amount(at, step.grams), AMOUNT, at)
        without = replace(self, made=self._without(AMOUNT, at))
        near = abs(without.pot.grams[at] * self.scale - step.grams) < 1e-6 if at < len(without.pot.grams) else False
        return without if near else replace(self, made=(*without.made, made))

    def _amount(self, at: int, grams: float) -> tuple[ChangeStep, ...]:
        return (Amount(Row(at, self.pot.ingredients[at].food.key), times=0.0, plus=grams / self.scale),)

    def with_typed(self, at: int, text: str) -> "Setting":
        """Return the setting with an ingredient at an amount as it was typed: "1 1/2 cups", "200 g", "2".

        Raises
        ------
        ChangeError
            If it is no amount of that ingredient.
        """
        part = self.recipe.ingredients[at]
        said = text.strip()
        if not said or said in ("0", "left out", "none"):
            return self.with_amount(at, KitchenStep("left out", 0.0))
        if said.startswith(("-", "−")) or unit(said) is not None:
            raise ChangeError(f'"{said}" is no amount; write how much, such as "1 1/2 cups" or "200 g"')
        said = f"{said} {part.noun}" if _NUMBER_ALONE.fullmatch(said) and part.noun else said
        measured = measured_as(said, part, foods())
        return self.with_amount(at, KitchenStep(f"{number(measured.grams, 1)} g", measured.grams))

    def with_food(self, at: int, key: str) -> "Setting":
        """Return the setting with another food in an ingredient's place.

        Raises
        ------
        UnknownNameError
            If there is no such food.
        """
        before = replace(self, made=self._without(FOOD, at))
        old = before.pot.ingredients[at].food
        if old.key == key:
            return before
        own = {part.food.key: part.food for part in self.talk.recipe.ingredients}
        new = own.get(key) or food_by_key(key)
        made = Made(f"{short_name(new)} for {short_name(old)}", (Swap(Row(at, old.key), new),), FOOD, at)
        return replace(before, made=(*before.made, made))

    def with_servings(self, servings: float, meaning: str | None = None) -> "Setting":
        """Return the setting for other servings.

        Raises
        ------
        AmountError
            If they make no sense.
        """
        if not LEAST_SERVINGS <= servings <= MOST_SERVINGS:
            raise AmountError(f"servings is {servings:g}; give a number from {LEAST_SERVINGS:g} to {MOST_SERVINGS:,}")
        meaning = meaning or self.meaning
        kept = self._without(SERVINGS)
        kept = tuple(made for made in kept if not all(isinstance(step, Servings) for step in made.steps))
        if servings == self.talk.recipe.servings and meaning == MAKE_MORE:
            return replace(self, made=kept)
        words = f"for {number(servings, 2)}" if meaning == MAKE_MORE else f"shared among {number(servings, 2)}"
        return replace(self, made=(*kept, Made(words, (Servings(servings, meaning),), SERVINGS)))

    def tried(self, line: str) -> "Setting":
        """Return the setting after a typed what-if or typed targets, asked of the dish as it is set.

        Raises
        ------
        TargetError
            If the targets cannot be met: then with how near one gets.
        ChangeError
            If it is not understood, or has to be asked back: then with choices.
        """
        wished = reached(line, self.recipe, self.system) if is_target(line) else read_change(line, self.recipe)
        steps = tuple(self._for_the_pot(step) for step in wished)
        setting = replace(self, made=(*self.made, Made(" ".join(line.split()), steps)))
        setting.both  # noqa: B018 - what cannot be worked out is told now, and the setting stays as it was
        return setting

    def _for_the_pot(self, step: ChangeStep) -> ChangeStep:
        """Return a step that was asked of the scaled dish as one for the pot as written."""
        if self.scale == 1.0 or not isinstance(step, Amount | Swap | Add):
            return step
        if step.measured is not None:
            step = replace(step, measured=replace(step.measured, grams=step.measured.grams / self.scale))
        return replace(step, plus=step.plus / self.scale) if isinstance(step, Amount) else step

    def undone(self, place: int) -> "Setting":
        """Return the setting without one of its changes, and without those that were about what it had brought."""
        return replace(self, made=_valid(self.talk.recipe, [*self.made[:place], *self.made[place + 1 :]]))

    def as_written(self) -> "Setting":
        """Return the setting without any change."""
        return replace(self, made=())

    def _without(self, control: str, at: int = -1) -> tuple[Made, ...]:
        return _valid(self.talk.recipe, [made for made in self.made if (made.control, made.at) != (control, at)])

    def as_json(self) -> dict[str, Any]:
        """Return what is set as plain values; the talk by its name."""
        made = [
            {"words": m.words, "steps": [step_as_json(s) for s in m.steps], "control": m.control, "at": m.at}
            for m in self.made
        ]
        return {"talk": self.talk.name, "system": self.system, "made": made}


def restored(values: Mapping[str, Any], talk: Talk) -> Setting:
    """Return the setting that `Setting.as_json` wrote; changes that make no sense any more are left out."""
    made = []
    for row in values.get("made", ()):
        try:
            steps = tuple(step_from_json(step, talk.recipe) for step in row["steps"])
            made.append(Made(str(row["words"]), steps, str(row.get("control", "")), int(row.get("at", -1))))
        except (KitError, KeyError, TypeError, ValueError):
            continue
    system = values.get("system") if values.get("system") in ("us", "metric") else talk.measures
    return Setting(talk, str(system), _valid(talk.recipe, made))


def _valid(recipe: Recipe, changes: Iterable[Made]) -> tuple[Made, ...]:
    """Return those changes that can be made one after another."""
    kept: list[Made] = []
    for made in changes:
        try:
            recipe = applied(recipe, [step for step in made.steps if not isinstance(step, Servings)])
        except (ChangeError, AmountError):
            continue
        kept.append(made)
    return tuple(kept)


def swaps_of(ingredient: Ingredient) -> tuple[Food, ...]:
    """Return the foods that may stand in an ingredient's place, its own first."""
    return (ingredient.food, *(food_by_key(key) for key in ingredient.swaps))
