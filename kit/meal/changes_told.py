"""A stack of changes in words: what each step does to which ingredient, and how much there is before and after."""

import re
from collections.abc import Sequence
from dataclasses import dataclass, replace

from kit.food.measures import plural
from kit.food.names import lowered, short_name
from kit.food.vocabulary import singular
from kit.lines.nearest_measure import SIZES
from kit.meal.in_place_of import in_place_of_words
from kit.meal.kitchen_amounts import WORTH_SAYING, kitchen_amount
from kit.meal.portions import MAKE_MORE
from kit.meal.recipe import Ingredient, Recipe
from kit.meal.steps import Add, LeaveOut, Servings, Step, Swap, applied, place_of
from kit.texts import number, quantity

_SAME = 0.001  # of an amount: no difference


@dataclass(frozen=True, slots=True)
class StepTold:
    """What one step of a change does.

    Attributes
    ----------
    kind : str
        ``"leave out"``, ``"swap"``, ``"amount"``, ``"add"`` or ``"servings"``.
    text : str
        In words: "1 1/2 cups of brown rice instead of the barley".
    how : str
        What was assumed: by which measure, which stand-in; may be empty.
    ingredient, food : str
        Keys of the food that was there, and of the one that is there now; empty where there is none.
    grams_before, grams_after : float
        Of the ingredient in the recipe; of the whole recipe where the servings change. [g]
    line : str
        The line of the recipe that is changed.
    meaning : str
        What other servings mean.
    """

    kind: str
    text: str
    how: str
    ingredient: str
    food: str
    grams_before: float
    grams_after: float
    line: str = ""
    meaning: str = ""


def told(recipe: Recipe, steps: Sequence[Step], system: str = "us") -> tuple[StepTold, ...]:
    """Return what each step of a stack does, in their order.

    Raises
    ------
    ChangeError
        If a step is about an ingredient that is not there.

    Examples
    --------
    >>> from kit.meal.changes import read_change
    >>> from kit.meal.recipe import recipe
    >>> salad = recipe("Salad", ["4 cups kale, chopped", "1/2 cup feta, crumbled", "1/2 tsp salt"])
    >>> [step.text for step in told(salad, read_change("no feta and half the salt", salad))]
    ['leave out the feta cheese', '1/4 tsp of salt, not 1/2 tsp']
    """
    found = []
    for step in steps:
        after = applied(recipe, (step,))
        found.append(_told(step, recipe, after, system))
        recipe = after
    return tuple(found)


def _told(step: Step, before: Recipe, after: Recipe, system: str) -> StepTold:
    if isinstance(step, Servings):
        return _servings(step, before, after)
    if isinstance(step, Add):
        new = after.ingredients[-1]
        return StepTold(
            step.kind, f"add {_amount(new, _whole(new), system)}", step.note, "", new.food.key, 0.0, new.grams, new.line
        )
    at = place_of(step.row, before)
    old, new = before.ingredients[at], after.ingredients[at]
    name, how = short_name(old.food), ""
    if isinstance(step, LeaveOut):
        text = f"leave out the {name}"
    elif isinstance(step, Swap):
        comes = _amount(new, _whole(new), system)
        text, how = f"{comes}{',' if ',' in comes else ''} instead of the {_told_apart(old, new)}", _assumed(old, new)
    elif new.grams == 0:
        text = f"no {name}"
    elif old.grams == 0:
        text = _amount(new, name, system)
    else:
        text = f"{_amount(new, name, system)}, {_not_as_before(old, new, system)}"
    return StepTold(step.kind, text, how, old.food.key, new.food.key, old.grams, new.grams, old.line)


def _not_as_before(old: Ingredient, new: Ingredient, system: str) -> str:
    """Return how much there was; in grams where a kitchen measures both alike."""
    was, now = kitchen_amount(old, system).text, kitchen_amount(replace(new, slider=None), system).text
    if was != now:
        return f"not {was}"
    if abs(new.grams - old.grams) < _SAME * old.grams:
        return "as before"
    return f"or {quantity(new.grams, 'g', 1)}, not {quantity(old.grams, 'g', 1)}"


def _servings(step: Servings, before: Recipe, after: Recipe) -> StepTold:
    more = step.meaning == MAKE_MORE
    every = f", everything times {number(step.servings / before.servings, 2)}" if more else ", from the same pot"
    text = f"{number(step.servings, 1)} {plural('serving', step.servings)}{every}"
    grams = float(before.grams.sum()), float(after.grams.sum())
    return StepTold(step.kind, text, "", "", "", *grams, meaning=step.meaning)


def _amount(ingredient: Ingredient, name: str, system: str) -> str:
    """Return an amount with its food: "2 tbsp of honey", "3 carrots", "about 1/3 cup of sugar" (half of 3/4 cup)."""
    amount = kitchen_amount(replace(ingredient, slider=None), system)
    text = f"about {amount.text}" if abs(amount.error) > WORTH_SAYING else amount.text
    if ingredient.noun in (*SIZES, "piece"):
        *before, thing = short_name(ingredient.food).split()
        one, many = singular(thing), amount.grams / ingredient.noun_grams
        return " ".join((text, *before, thing if one == thing and thing.endswith("s") else plural(one, many)))
    return f"{text} of {name}"


def _whole(ingredient: Ingredient) -> str:
    """Return the whole name of a food that is new in the recipe; that produce and meat are raw goes without saying."""
    name = lowered(re.sub(r"\s*\([^)]*\)", "", ingredient.food.name))
    return name.removesuffix(", raw") if ingredient.food.state == "raw" else name


def _assumed(old: Ingredient, new: Ingredient) -> str:
    """Return what was assumed about a swap, without that it is one."""
    return new.how.removeprefix(in_place_of_words(old.food)).strip(" ,;")


def _told_apart(old: Ingredient, new: Ingredient) -> str:
    """Return the old food's name, the whole of it where the new one is called the same."""
    short = short_name(old.food)
    return short if short != short_name(new.food) else lowered(old.food.name)
