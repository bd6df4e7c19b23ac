"""The numbers that the page works with: what each food brings per gram, how sure it is, and its amounts."""

from collections.abc import Sequence
from dataclasses import dataclass, replace
from typing import Any

import numpy as np

from kit.errors import KitError
from kit.food.allergens import allergen_names
from kit.food.cooking import is_loss_known, most_lost, vitamins_that_cooking_takes
from kit.food.daily_values import daily_values
from kit.food.energy import KCAL_PER_GRAM
from kit.food.finding import food as food_by_key
from kit.food.measures import SYSTEMS
from kit.food.names import short_name
from kit.food.nutrients import nutrient, nutrient_index
from kit.lines.weighing import Z90
from kit.meal.certainty import composition_sd
from kit.meal.changes import read_change
from kit.meal.in_place_of import in_place_of
from kit.meal.kitchen_amounts import offered_amounts
from kit.meal.nutrition import A_LITTLE
from kit.meal.portions import MAKE_MORE
from kit.meal.recipe import Ingredient, Recipe
from kit.meal.steps import Servings, Step, Swap, applied
from kit.rules.allergens import must_be_asked
from kit.rules.cautions import allergens
from kit.rules.protein import least_quality_of
from kit.rules.reference import distribution_ranges
from kit.rules.serving import MAIN_NUTRIENTS
from kit.share.contents import Contents
from kit.show.views import COLUMNS, OF_A_DAY, READ_ALOUD, SOURCES_OF

FEWEST_CHOICES = 12  # of servings
NUTRIENTS = tuple(dict.fromkeys((*MAIN_NUTRIENTS, *KCAL_PER_GRAM, *OF_A_DAY)))


@dataclass(frozen=True, eq=False)
class Row:
    """One ingredient of the page: as written first, then what may take its place."""

    options: tuple[Ingredient, ...]


def page_data(contents: Contents) -> dict[str, Any]:
    """Return what the page computes with, as plain values.

    Parameters
    ----------
    contents : Contents
        Whose dish as it is sent is the page's "as written".

    Returns
    -------
    dict
        Nutrients in one order; a row for each ingredient with the foods that may stand there, each with what 100 g of
        it hold, relative standard deviations, its amount as written and the amounts of its slider by measures and
        servings; prepared questions with the setting that each one tries.
    """
    recipe, talk = contents.numbers.recipe, contents.talk
    tried = [_steps(question.try_, recipe) for question in contents.questions]
    rows = page_rows(contents)
    values, at = daily_values(talk.rules), [nutrient_index(name) for name in NUTRIENTS]
    return {
        "title": recipe.title,
        "servings": recipe.servings,
        "choices": _choices(recipe),
        "system": talk.measures,
        "z90": Z90,
        "open": len(recipe.open_lines),
        "a_little": A_LITTLE,
        "protein_by_quality": talk.rules == "us",
        "nutrients": [
            {
                "id": name,
                "name": nutrient(name).name,
                "short": nutrient(name).short_name,
                "unit": nutrient(name).unit,
                "decimals": nutrient(name).decimals,
                "day": values[name].amount if name in values else None,
                "kind": values[name].kind if name in values else "",
                "taken": name in vitamins_that_cooking_takes(),
            }
            for name in NUTRIENTS
        ],
        "shown": {
            "main": MAIN_NUTRIENTS,
            "read_aloud": READ_ALOUD,
            "of_a_day": OF_A_DAY,
            "sources_of": SOURCES_OF,
            "columns": COLUMNS,
        },
        "energy": dict(KCAL_PER_GRAM),
        "ranges": dict(distribution_ranges()),
        "allergens": list(allergen_names().items()),
        "rows": [
            {
                "part": row.options[0].part,
                "options": [_option(option, recipe, place, at, talk.rules) for option in row.options],
            }
            for place, row in enumerate(rows)
        ],
        "questions": [_setting(steps, recipe, rows) for steps in tried],
    }


def _choices(recipe: Recipe) -> list[float]:
    """Return the servings to choose from: whole ones to twice as many as written, and the recipe's own."""
    most = max(FEWEST_CHOICES, int(2 * recipe.servings))
    return sorted({recipe.servings, *map(float, range(1, min(most, 60) + 1))})


def _steps(line: str, recipe: Recipe) -> tuple[Step, ...]:
    """Return what a prepared question tries; nothing where it cannot be read, which `check` tells her."""
    if not line:
        return ()
    try:
        return read_change(line, recipe)
    except KitError:
        return ()


def page_rows(contents: Contents) -> list[Row]:
    """Return a row for each ingredient, with the foods that the talk or a question puts in its place."""
    recipe = contents.numbers.recipe
    steps = [step for question in contents.questions for step in _steps(question.try_, recipe)]
    rows = []
    for part in recipe.ingredients:
        swapped = [step.food for step in steps if isinstance(step, Swap) and step.row.food == part.food.key]
        others = {food.key: food for food in (*map(food_by_key, part.swaps), *swapped) if food.key != part.food.key}
        rows.append(Row((part, *(in_place_of(part, food) for food in others.values()))))
    return rows


def _option(option: Ingredient, recipe: Recipe, place: int, at: list[int], rules: str) -> dict[str, Any]:
    food = option.food
    others = (*recipe.ingredients[:place], option, *recipe.ingredients[place + 1 :])
    base = replace(recipe, ingredients=others)
    per_100g = base.per_100g[place][at]
    return {
        "food": food.key,
        "name": food.name,
        "said": short_name(food),
        "grams": option.grams,
        "amount_sd": option.relative_sd,
        "per_100g": [None if np.isnan(value) else float(value) for value in per_100g],
        "protein_score": least_quality_of(food),
        "may_lose": _may_lose(option, base.ways[place].name, at),
        "content_sd": composition_sd(food)[at].tolist(),
        "allergens": [one.allergen for one in allergens(Recipe("", (replace(option, grams=1.0),)), rules)],
        "unknown": must_be_asked(food),
        "source": food.source,
        "amounts": {system: _amounts(recipe, base, place, system) for system in SYSTEMS},
    }


def _may_lose(option: Ingredient, way: str, at: list[int]) -> list[float] | None:
    """Return what cooking may take of the nutrients of a food, in fractions; None where it is known what it takes."""
    treatment = option.treatment or way
    return None if is_loss_known(option.food, treatment) else most_lost(option.food, treatment)[at].tolist()


def _amounts(written: Recipe, base: Recipe, place: int, system: str) -> dict[str, list[list[Any]]]:
    """Return the amounts of a slider, each as its words and its grams in the pot as written, by servings made."""
    amounts, part = {}, base.ingredients[place]
    for servings in _choices(written):
        scale = servings / base.servings
        offered = offered_amounts(part, part.grams, scale, system)
        amounts[f"{servings:g}"] = [[step.label, step.grams / scale] for step in offered]
    return amounts


def _setting(steps: Sequence[Step], recipe: Recipe, rows: Sequence[Row]) -> dict[str, Any] | None:
    """Return the setting that a question tries: the food and the grams of each row; None where the page cannot."""
    if not steps:
        return None
    try:
        after = applied(recipe, steps)
    except KitError:
        return None
    if len(after.ingredients) != len(rows):
        return None
    last = next((step for step in reversed(steps) if isinstance(step, Servings)), None)
    scale = after.servings / recipe.servings if last and last.meaning == MAKE_MORE else 1.0
    keys = [[option.food.key for option in row.options] for row in rows]
    foods = [part.food.key for part in after.ingredients]
    if not all(food in known for food, known in zip(foods, keys, strict=True)):
        return None
    return {
        "servings": after.servings,
        "meaning": last.meaning if last else MAKE_MORE,
        "foods": [known.index(food) for food, known in zip(foods, keys, strict=True)],
        "grams": [part.grams / scale for part in after.ingredients],
    }
