"""What changes when an amount does: leave out, swap, use more, as typed or step by step; before beside after."""

from dataclasses import dataclass, replace

from kit.errors import AmountError
from kit.food.composition import Food
from kit.food.nutrients import nutrient_index
from kit.lines.weighing import Z90
from kit.meal.certainty import Range, composition_sd, total_sd
from kit.meal.change_reader import read_change
from kit.meal.in_place_of import in_place_of
from kit.meal.nutrition import Nutrition, nutrition
from kit.meal.recipe import Recipe
from kit.meal.steps import Step, applied

__all__ = [
    "Change",
    "Step",
    "applied",
    "change",
    "leave_out",
    "read_change",
    "set_count",
    "set_grams",
    "swap",
    "swap_back",
]


def set_grams(recipe: Recipe, food: str, grams: float) -> Recipe:
    """Return the recipe with another amount of one food. [g]

    Raises
    ------
    UnknownNameError
        If the recipe does not hold that food.
    """
    amounts = recipe.grams.copy()
    amounts[recipe.position(food)] = grams
    return recipe.with_grams(amounts)


def set_count(recipe: Recipe, food: str, count: float) -> Recipe:
    """Return the recipe with another amount of one food, counted in that ingredient's own measure."""
    return set_grams(recipe, food, count * recipe.ingredients[recipe.position(food)].noun_grams)


def leave_out(recipe: Recipe, food: str) -> Recipe:
    """Return the recipe without a food: every ingredient of it at 0 g, so that the places stay the same."""
    recipe.position(food)
    kept = [0.0 if part.food.key == food else part.grams for part in recipe.ingredients]
    return recipe.with_grams(kept)


def swap(recipe: Recipe, food: str, other: Food, grams: float | None = None) -> Recipe:
    """Return the recipe with another food in one food's place.

    The same measure of the other food is used where both have it ("a cup for a cup"), otherwise the same weight, unless
    `grams` says how much.

    Raises
    ------
    UnknownNameError
        If the recipe does not hold the food that is to go.
    """
    at = recipe.position(food)
    new = in_place_of(recipe.ingredients[at], other, grams)
    return replace(recipe, ingredients=(*recipe.ingredients[:at], new, *recipe.ingredients[at + 1 :]))


def swap_back(changed: Recipe, written: Recipe, food: str) -> Recipe:
    """Return a changed recipe with the ingredient that was `food` as it is in the written one."""
    at = written.position(food)
    if len(changed.ingredients) != len(written.ingredients):
        raise AmountError("the two recipes have not the same ingredients; swap back in the recipe that was swapped")
    old = written.ingredients[at]
    return replace(changed, ingredients=(*changed.ingredients[:at], old, *changed.ingredients[at + 1 :]))


@dataclass(frozen=True, eq=False)
class Change:
    """A recipe before and after a change, per serving."""

    before: Nutrition
    after: Nutrition

    def difference(self, name: str) -> Range:
        """Return how much of a nutrient a serving gains (or loses, below 0), with the 90 % range of the difference.

        The ingredients that stay the same are the same on both sides, so only what changed makes the difference unsure.
        """
        at = nutrient_index(name)
        before, after = self.before.contributions[:, at], self.after.contributions[:, at]
        pairs = zip(self.before.recipe.ingredients, self.after.recipe.ingredients, before, after, strict=True)
        parts, amount, content = [], [], []
        for old, new, was, now in pairs:
            steps = [(old, now - was)] if old.food.key == new.food.key else [(old, -was), (new, now)]
            for ingredient, part in steps:
                parts.append([part])
                amount.append(ingredient.relative_sd)
                content.append([composition_sd(ingredient.food)[at]])
        value = self.after[name] - self.before[name]
        half = Z90 * float(total_sd(parts, amount, content)[0]) if parts else 0.0
        return Range(value, value - half, value + half)


def change(before: Recipe, after: Recipe) -> Change:
    """Set a recipe beside a changed one; what was added stands in both, with 0 g before.

    Raises
    ------
    AmountError
        If the changed one has lost ingredients: one that is left out stays, with 0 g.
    """
    new = after.ingredients[len(before.ingredients) :]
    if len(before.ingredients) + len(new) != len(after.ingredients):
        raise AmountError("the changed recipe has fewer ingredients; change one with kit.meal.changes")
    if new:
        before = replace(before, ingredients=(*before.ingredients, *(replace(part, grams=0.0) for part in new)))
    return Change(nutrition(before), nutrition(after))
