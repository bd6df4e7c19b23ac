"""What is set on screen: servings, amounts and foods, and the recipe that this makes."""

from dataclasses import dataclass, replace

from kit.food.composition import Food
from kit.meal.changes import swap
from kit.meal.portions import MAKE_MORE, WORTH_SAYING, Step, make_more, share_out, slider_steps
from kit.meal.recipe import Recipe


@dataclass(frozen=True, eq=False)
class Scenario:
    """A recipe as it is tried out on screen; every change returns a new scenario.

    Attributes
    ----------
    written : Recipe
        As written.
    base : Recipe
        The same amounts, with other foods in the place of those that were swapped.
    pot : tuple of float
        Grams of each ingredient in a pot for the servings as written. [g]
    servings : float
        How many are made, or shared out.
    meaning : {"make more", "share out"}
        Whether other servings scale every amount, or share out the same pot differently.
    system : {"us", "metric"}
        The measures that amounts are named in.
    """

    written: Recipe
    base: Recipe
    pot: tuple[float, ...]
    servings: float
    meaning: str = MAKE_MORE
    system: str = "us"

    @property
    def recipe(self) -> Recipe:
        """The recipe as it is set."""
        pot = self.base.with_grams(self.pot)
        return make_more(pot, self.servings) if self.meaning == MAKE_MORE else share_out(pot, self.servings)

    @property
    def scale(self) -> float:
        """How many times the pot as written is cooked."""
        return self.servings / self.written.servings if self.meaning == MAKE_MORE else 1.0

    def steps(self, at: int) -> tuple[Step, ...]:
        """Return the amounts that the slider of an ingredient runs through, its present one among them or near by."""
        base = self.base.ingredients[at]
        low, high = base.slider or (0.0, 2 * base.grams or 2 * base.noun_grams)
        scaled = replace(base, grams=base.grams * self.scale, slider=(low * self.scale, high * self.scale))
        steps = slider_steps(scaled, self.system)
        grams = self.pot[at] * self.scale
        if abs(steps[self._nearest(steps, grams)].grams - grams) <= WORTH_SAYING * grams:
            return steps
        own = slider_steps(replace(scaled, grams=grams), self.system)
        present = own[self._nearest(own, grams)]
        return tuple(sorted((*steps, present), key=lambda step: step.grams))

    def place(self, at: int, steps: tuple[Step, ...]) -> int:
        """Return where on its slider an ingredient stands."""
        return self._nearest(steps, self.pot[at] * self.scale)

    def with_amount(self, at: int, grams: float) -> "Scenario":
        """Return the scenario with an ingredient's slider at some grams. [g]"""
        return replace(self, pot=(*self.pot[:at], grams / self.scale, *self.pot[at + 1 :]))

    def with_food(self, at: int, food: Food) -> "Scenario":
        """Return the scenario with another food in an ingredient's place, as much of its measure as there was."""
        old, written = self.base.ingredients[at], self.written.ingredients[at]
        new = written if food.key == written.food.key else swap(self.written, written.food.key, food).ingredients[at]
        base = replace(self.base, ingredients=(*self.base.ingredients[:at], new, *self.base.ingredients[at + 1 :]))
        part = self.pot[at] / old.grams if old.grams else 0.0
        return replace(self, base=base, pot=(*self.pot[:at], part * new.grams, *self.pot[at + 1 :]))

    @staticmethod
    def _nearest(steps: tuple[Step, ...], grams: float) -> int:
        return min(range(len(steps)), key=lambda place: abs(steps[place].grams - grams))


def as_written(recipe: Recipe, system: str = "us") -> Scenario:
    """Return the scenario of a recipe as written.

    Examples
    --------
    >>> from kit.meal.recipe import recipe
    >>> scenario = as_written(recipe("Oats", ["1 cup rolled oats"], servings=2))
    >>> scenario.with_amount(0, 40.5).recipe.grams.tolist()
    [40.5]
    """
    return Scenario(recipe, recipe, tuple(recipe.grams.tolist()), recipe.servings, system=system)
