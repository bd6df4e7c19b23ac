"""Servings, and the amounts a kitchen can measure."""

import csv
from pathlib import Path

import numpy as np
import pytest
from each import for_each
from hypothesis import given
from hypothesis import strategies as st
from strategies import dishes

from kit.errors import AmountError
from kit.lines.reader import read
from kit.meal.nutrition import nutrition
from kit.meal.portions import (
    LEFT_OUT,
    kitchen_amount,
    kitchen_line,
    make_more,
    share_out,
    slider_steps,
)
from kit.meal.recipe import ingredient_from, recipe

LINES = Path(__file__).parents[1] / "lines" / "figures" / "recipe_lines.csv"
RECIPE_LINES = [row["line"] for row in csv.DictReader(LINES.open(encoding="utf-8", newline=""))]
INGREDIENTS = [ingredient_from(read(line)) for line in RECIPE_LINES]


@given(dishes(), st.floats(0.5, 1e4))
def test_making_more_leaves_a_serving_as_it_was(dish, wanted):
    more = make_more(dish, min(wanted, dish.servings * 100))
    assert nutrition(more).per_serving == pytest.approx(nutrition(dish).per_serving, rel=1e-9, abs=1e-9)


@given(dishes(), st.floats(0.5, 1e4))
def test_sharing_out_changes_a_serving_by_the_number(dish, wanted):
    shared = nutrition(share_out(dish, wanted))
    assert shared.per_serving * wanted == pytest.approx(nutrition(dish).per_serving * dish.servings, rel=1e-9, abs=1e-9)
    assert np.array_equal(shared.recipe.grams, dish.grams)


@pytest.mark.parametrize("servings", [0, -1, float("nan")])
def test_no_servings_are_told(servings):
    dish = recipe("Pot", ["1 cup lentils"], 4)
    with pytest.raises(AmountError):
        share_out(dish, servings)
    with pytest.raises(AmountError):
        make_more(dish, servings)


@for_each("factor", [1, 0.5, 2.5, 7])
@for_each("part", INGREDIENTS)
def test_reading_the_line_to_cook_from_gives_its_amount(part, factor):
    pot = make_more(recipe("Pot", [part.line]), factor)
    ingredient = pot.ingredients[0]
    amount, line = kitchen_amount(ingredient), kitchen_line(ingredient)
    reading = read(line, food=ingredient.food.key)
    # SR26's measures of one food need not agree: 1/4 cup of grated Parmesan is 25 g, 4 tbsp are 20 g.
    assert reading.grams == pytest.approx(amount.grams, rel=0.05 if reading.noun == part.noun else 0.25, abs=0.02)
    assert amount.grams == pytest.approx(ingredient.grams * (1 + amount.error))


def test_a_large_rounding_error_is_said():
    pot = make_more(recipe("Pot", ["1 tsp salt"], servings=4), 5.3)
    assert "by rounding" not in kitchen_line(make_more(pot, 8).ingredients[0])
    assert "% by rounding" in kitchen_line(recipe("Pot", ["7/16 tsp salt"]).ingredients[0])


@for_each("system", ["us", "metric"])
@for_each("part", INGREDIENTS)
def test_a_slider_rises_from_left_out_and_holds_the_recipes_own_amount(part, system):
    steps = slider_steps(part, system)
    grams = [step.grams for step in steps]
    assert (steps[0].label, grams[0]) == (LEFT_OUT, 0)
    assert all(np.diff(grams) > 0)
    assert part.grams == 0 or part.grams in grams


def test_a_slider_keeps_within_the_ends_it_was_given():
    part = ingredient_from(read("1 cup lentils"), slider=(96.0, 288.0))
    grams = [step.grams for step in slider_steps(part)][1:]
    assert min(grams) >= 96
    assert max(grams) <= 288 * 1.03


def test_nothing_is_left_out_in_words():
    pot = recipe("Pot", ["1 cup lentils"]).with_grams([0])
    assert kitchen_amount(pot.ingredients[0]).text == LEFT_OUT
