"""The detailed numbers as a table: a serving with its range and share of a day, and what each ingredient brings."""

from math import isfinite

import numpy as np

from kit.food.nutrients import nutrients
from kit.meal.certainty import ranges
from kit.meal.nutrition import Nutrition
from kit.rules.eu_basis import share_of_day_in
from kit.spreadsheets import table_text

_FIGURES = 6  # significant figures: more than any of them deserves, and enough to add up
_A_SERVING = "A serving"


def numbers_csv(numbers: Nutrition, rules: str = "us") -> str:
    """Return the numbers of a dish as CSV text, with the unit of every column in its heading.

    The first rows are a serving, the low and high ends of its 90 % range, and its share of a day; each ingredient
    follows with what it brings to a serving. A missing value is an empty cell, not 0; a total that a missing value is
    part of is marked "at least" in the row below the total. Every cell is safe to open in a spreadsheet.

    Parameters
    ----------
    numbers : Nutrition
        The dish as it is now.
    rules : {"us", "eu"}
        Whose daily values.
    """
    facts = ["row", "food", "weight in the recipe, g", "weight in a serving, g", "source"]
    columns = [*facts, *(f"{nutrient.name}, {nutrient.unit}" for nutrient in nutrients().values())]
    low, high = ranges(numbers)
    grams, servings = numbers.recipe.grams, numbers.recipe.servings
    day = share_of_day_in(numbers, rules)
    lacking = ["at least" if lacks else "" for lacks in numbers.at_least]
    rows = [
        [_A_SERVING, "", _cell(float(grams.sum())), _cell(numbers.serving_grams), "", *_cells(numbers.per_serving)],
        [f"{_A_SERVING}: a value is missing", "", "", "", "", *lacking],
        [f"{_A_SERVING}: low end of the range", "", "", "", "", *_cells(low)],
        [f"{_A_SERVING}: high end of the range", "", "", "", "", *_cells(high)],
        [f"{_A_SERVING}: percent of a day", "", "", "", "", *_cells(100 * day)],
    ]
    for part, brings in zip(numbers.recipe.ingredients, numbers.contributions, strict=True):
        weights = [_cell(part.grams), _cell(part.grams / servings)]
        rows.append([part.line or part.food.name, part.food.name, *weights, part.food.source, *_cells(brings)])
    rows += [[reading.line, "not in the numbers", *[""] * (len(columns) - 2)] for reading in numbers.recipe.open_lines]
    return table_text(columns, rows)


def _cells(values: np.ndarray) -> list[str]:
    return [_cell(float(value)) for value in values]


def _cell(value: float) -> str:
    return f"{value:.{_FIGURES}g}" if isfinite(value) else ""
