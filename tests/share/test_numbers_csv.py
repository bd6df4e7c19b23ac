"""The table of numbers adds up, has its units in its heading, and opens safely."""

import csv
import io
from dataclasses import replace

import pytest

from kit.food.nutrients import nutrients
from kit.meal.nutrition import nutrition
from kit.meal.recipe import Recipe
from kit.share.numbers_csv import numbers_csv
from kit.talk.library import bundled_talks, read_talk


def table(recipe: Recipe):
    return list(csv.DictReader(io.StringIO(numbers_csv(nutrition(recipe)), newline="")))


@pytest.mark.parametrize("name", bundled_talks())
def test_the_ingredients_add_up_to_the_serving(name):
    serving, *rest = table(read_talk(name).recipe)
    ingredients = rest[4:]
    for nutrient in nutrients().values():
        column = f"{nutrient.name}, {nutrient.unit}"
        total = sum(float(row[column] or 0) for row in ingredients)
        assert total == pytest.approx(float(serving[column]), rel=1e-4, abs=1e-9), column


def test_a_missing_value_is_empty_and_its_total_at_least():
    recipe = read_talk("split_pea_soup").recipe
    numbers = nutrition(recipe)
    ids = list(nutrients())
    at = next(place for place in range(len(ids)) if numbers.missing[:, place].any())
    column = f"{nutrients()[ids[at]].name}, {nutrients()[ids[at]].unit}"
    rows = table(recipe)
    assert rows[1][column] == "at least"
    assert [row[column] == "" for row in rows[5:]] == numbers.missing[:, at].tolist()


def test_a_line_that_looks_like_a_formula_is_text():
    recipe = read_talk("split_pea_soup").recipe
    first = replace(recipe.ingredients[0], line='=HYPERLINK("http://x")')
    rows = table(replace(recipe, ingredients=(first, *recipe.ingredients[1:])))
    assert rows[5]["row"] == '\'=HYPERLINK("http://x")'
