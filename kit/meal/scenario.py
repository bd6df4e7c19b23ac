"""What is set on screen: the stack of changes, sliders and servings on a recipe, and the recipe that this makes."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace
from functools import cached_property
from typing import Any

from kit.errors import ChangeError
from kit.food.composition import Food, Foods
from kit.lines.recipe_text import MOST_SERVINGS
from kit.meal.kitchen_amounts import WORTH_SAYING, KitchenStep, slider_steps
from kit.meal.portions import MAKE_MORE, SHARE_OUT, make_more, share_out
from kit.meal.recipe import MOST_GRAMS, Recipe
from kit.meal.steps import (
    Amount,
    LeaveOut,
    Measured,
    Row,
    Servings,
    Step,
    Swap,
    applied,
    step_as_json,
    step_from_json,
    without,
)


@dataclass(frozen=True, eq=False)
class Scenario:
    """A recipe as it is tried out on screen; every change returns a new scenario.

    Attributes
    ----------
    written : Recipe
        As written.
    servings : float
        How many are made, or shared out.
    meaning : {"make more", "share out"}
        Whether other servings scale every amount, or share out the same pot differently.
    system : {"us", "metric"}
        The measures that amounts are named in.
    changes : tuple of Step
        The stack of changes, in their order.
    moved : tuple of (int, float)
        Ingredients whose sliders were moved, by place, and their grams in the pot of `base`. [g]
    """

    written: Recipe
    servings: float
    meaning: str = MAKE_MORE
    system: str = "us"
    changes: tuple[Step, ...] = ()
    moved: tuple[tuple[int, float], ...] = ()

    @cached_property
    def base(self) -> Recipe:
        """The recipe after the stack of changes, before sliders and other servings."""
        return applied(self.written, self.changes)

    @cached_property
    def pot(self) -> tuple[float, ...]:
        """Grams of each ingredient in the pot of `base`, as the sliders stand. [g]"""
        grams = self.base.grams.tolist()
        for at, moved in self.moved:
            grams[at] = moved
        return tuple(grams)

    @cached_property
    def recipe(self) -> Recipe:
        """The recipe as it is set."""
        pot = self.base.with_grams(self.pot) if self.moved else self.base
        return make_more(pot, self.servings) if self.meaning == MAKE_MORE else share_out(pot, self.servings)

    @property
    def scale(self) -> float:
        """How many times the pot of `base` is cooked."""
        return self.servings / self.base.servings if self.meaning == MAKE_MORE else 1.0

    def steps(self, at: int) -> tuple[KitchenStep, ...]:
        """Return the amounts that the slider of an ingredient runs through, its present one among them or near by."""
        base = self.base.ingredients[at]
        if base.grams == 0 and at < len(self.written.ingredients):
            base = replace(base, grams=self.written.ingredients[at].grams)  # left out: the slider can bring it back
        low, high = base.slider or (0.0, 2 * base.grams or 2 * base.noun_grams)
        grams = self.pot[at] * self.scale
        ends = low * self.scale, max(high * self.scale, grams)
        scaled = replace(base, grams=min(MOST_GRAMS, base.grams * self.scale), slider=ends)
        steps = slider_steps(scaled, self.system)
        if abs(steps[self._nearest(steps, grams)].grams - grams) <= WORTH_SAYING * grams:
            return steps
        own = slider_steps(replace(scaled, grams=grams), self.system)
        present = own[self._nearest(own, grams)]
        return tuple(sorted((*steps, present), key=lambda step: step.grams))

    def place(self, at: int, steps: tuple[KitchenStep, ...]) -> int:
        """Return where on its slider an ingredient stands."""
        return self._nearest(steps, self.pot[at] * self.scale)

    def with_amount(self, at: int, grams: float) -> "Scenario":
        """Return the scenario with an ingredient's slider at some grams. [g]"""
        moved = [(place, old) for place, old in self.moved if place != at]
        return replace(self, moved=(*moved, (at, grams / self.scale)))

    def with_food(self, at: int, food: Food) -> "Scenario":
        """Return the scenario with another food in an ingredient's place, as much of its measure as there was."""
        kept = self.changes
        for place in reversed(range(len(kept))):
            step = kept[place]
            if isinstance(step, Swap) and step.row.at == at:
                kept = without(self.written, kept, place)
        there = applied(self.written, kept).ingredients[at]
        if food.key != there.food.key:
            kept = (*kept, Swap(Row(at, there.food.key), food))
        changed = replace(self, changes=kept, moved=tuple(pair for pair in self.moved if pair[0] != at))
        share = self.pot[at] / self.base.grams[at] if self.base.grams[at] > 0 else 1.0
        if share == 1.0:
            return changed
        return replace(changed, moved=(*changed.moved, (at, share * float(changed.base.grams[at]))))

    def with_changes(self, steps: Sequence[Step]) -> "Scenario":
        """Return the scenario with more changes on top of what is set: they were read of `recipe` as it is now."""
        stack = (*self.changes, *self._moves(), *self._served(), *steps)
        last = [step for step in steps if isinstance(step, Servings)]
        servings = applied(self.written, stack).servings
        meaning = last[-1].meaning if last else self.meaning
        return replace(self, changes=stack, moved=(), servings=servings, meaning=meaning)

    def without_change(self, place: int) -> "Scenario":
        """Return the scenario with one change of the stack undone; what was set by hand stays where it can."""
        stack = without(self.written, self.changes, place)
        base = applied(self.written, stack)
        keys = [part.food.key for part in base.ingredients]
        own = [part.food.key for part in self.base.ingredients]
        moved = tuple((at, grams) for at, grams in self.moved if at < len(keys) and keys[at] == own[at])
        same = self.servings == self.base.servings
        return replace(self, changes=stack, moved=moved, servings=base.servings if same else self.servings)

    def _moves(self) -> list[Step]:
        """Return what the sliders set, as changes of `base`."""
        moves: list[Step] = []
        for at, grams in self.moved:
            part = self.base.ingredients[at]
            row = Row(at, part.food.key)
            told = Measured(grams, part.relative_sd, part.noun, part.noun_grams, part.cut, part.line)
            moves.append(LeaveOut(row) if grams == 0 else Amount(row, times=0.0, plus=grams, measured=told))
        return moves

    def _served(self) -> list[Step]:
        return [] if self.servings == self.base.servings else [Servings(self.servings, self.meaning)]

    @staticmethod
    def _nearest(steps: tuple[KitchenStep, ...], grams: float) -> int:
        return min(range(len(steps)), key=lambda place: abs(steps[place].grams - grams))

    def as_json(self) -> dict[str, Any]:
        """Return what is set, as plain values that JSON can hold; `scenario_from_json` brings it back."""
        return {
            "changes": [step_as_json(step) for step in self.changes],
            "moved": [[at, grams] for at, grams in self.moved],
            "servings": self.servings,
            "meaning": self.meaning,
            "system": self.system,
        }


def as_written(recipe: Recipe, system: str = "us") -> Scenario:
    """Return the scenario of a recipe as written.

    Examples
    --------
    >>> from kit.meal.recipe import recipe
    >>> scenario = as_written(recipe("Oats", ["1 cup rolled oats"], servings=2))
    >>> scenario.with_amount(0, 40.5).recipe.grams.tolist()
    [40.5]
    """
    return Scenario(recipe, recipe.servings, system=system)


def scenario_from_json(values: Mapping[str, Any], recipe: Recipe, table: Foods | None = None) -> Scenario:
    """Return the scenario that `Scenario.as_json` wrote, on a recipe that may have been edited since.

    Raises
    ------
    ChangeError
        If the values are no scenario, or no longer fit the recipe: show it as written then.
    UnknownNameError
        If a food is not known any more.

    Examples
    --------
    >>> from kit.meal.recipe import recipe
    >>> oats = recipe("Oats", ["1 cup rolled oats"], servings=2)
    >>> scenario_from_json(as_written(oats).with_amount(0, 40.5).as_json(), oats).recipe.grams.tolist()
    [40.5]
    """
    try:
        changes = tuple(step_from_json(step, recipe, table) for step in values["changes"])
        moved = tuple((int(at), float(grams)) for at, grams in values["moved"])
        servings, meaning, system = float(values["servings"]), values["meaning"], values["system"]
    except (KeyError, TypeError, ValueError) as fault:
        raise ChangeError(
            f"what was set on screen cannot be read ({fault}); begin from the recipe as written"
        ) from None
    count = len(applied(recipe, changes).ingredients)
    fits = all(0 <= at < count and 0 <= grams <= MOST_GRAMS for at, grams in moved)
    known = meaning in (MAKE_MORE, SHARE_OUT) and system in ("us", "metric")
    if not (fits and known and 0 < servings <= MOST_SERVINGS):
        raise ChangeError("what was set on screen does not fit this recipe any more; begin from the recipe as written")
    return Scenario(recipe, servings, meaning, system, changes, moved)
