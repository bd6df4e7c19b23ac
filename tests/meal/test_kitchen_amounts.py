"""The amounts a kitchen can measure."""

import csv
from pathlib import Path

import numpy as np
import pytest
from each import for_each
from hypothesis import given
from hypothesis import strategies as st

from kit.lines.reader import read
from kit.meal.kitchen_amounts import (
    LEFT_OUT,
    kitchen_amount,
    kitchen_line,
    nearest_amount,
    offered_amounts,
    slider_steps,
)
from kit.meal.portions import make_more
from kit.meal.recipe import ingredient_from, recipe

LINES = Path(__file__).parents[1] / "lines" / "figures" / "recipe_lines.csv"
RECIPE_LINES = [row["line"] for row in csv.DictReader(LINES.open(encoding="utf-8", newline=""))]
INGREDIENTS = [ingredient_from(read(line)) for line in RECIPE_LINES]


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


@pytest.mark.parametrize("line", ["20000 sprigs thyme", "2000 cups brown rice, dry", "30000 oz honey", "5000 tsp salt"])
def test_a_slider_of_a_huge_amount_has_few_steps_and_round_ones(line):
    part = ingredient_from(read(line))
    steps = slider_steps(part)
    assert len(steps) <= 70
    assert part.grams in [step.grams for step in steps]
    assert steps[-1].grams >= part.grams * 1.9


@given(st.sampled_from(["olive oil", "lemon juice", "honey", "salt", "brown rice, dry", "milk"]), st.floats(1, 3000))
def test_a_kitchen_measure_is_near_what_it_stands_for(name, grams):
    part = recipe("Pot", [f"1 tbsp {name}"]).with_grams([grams]).ingredients[0]
    assert abs(kitchen_amount(part).error) <= 0.34  # half way between one spoon and two


@given(st.floats(0.5, 20_000))
def test_a_count_is_near_what_it_stands_for(count):
    part = recipe("Pot", ["1 clove garlic"])
    amount = kitchen_amount(part.with_grams(part.grams * count).ingredients[0])
    assert abs(amount.error) <= 0.26


POT = recipe("Pot", ["1 1/2 cups lentils, dry", "3 tbsp olive oil", "4 cups spinach", "1/2 tsp salt"], servings=6)


def present(part, grams, scale=1.0, system="us"):
    """The label of the amount at which the slider of an ingredient stands, and its grams."""
    steps = offered_amounts(part, grams, scale, system)
    step = steps[nearest_amount(steps, grams * scale)]
    return step.label, step.grams


def test_a_slider_stands_at_the_amount_that_is_in_the_pot():
    assert [present(part, part.grams)[0] for part in POT.ingredients] == ["1 1/2 cups", "3 tbsp", "4 cups", "1/2 tsp"]
    assert [present(part, part.grams, 2.0)[0] for part in POT.ingredients[:2]] == ["3 cups", "6 tbsp"]
    assert present(POT.ingredients[0], POT.ingredients[0].grams, system="metric")[0].endswith(" g")
    assert present(POT.ingredients[2], 0.0) == (LEFT_OUT, 0.0)


def test_an_amount_far_from_every_step_gets_one_of_its_own():
    lentils = POT.ingredients[0]
    for share in (2 / 9, 0.01, 3.0):
        grams = share * lentils.grams
        assert present(lentils, grams, 5 / 6)[1] == pytest.approx(grams * 5 / 6, rel=0.05)


def test_huge_servings_make_no_endless_slider():
    assert all(len(offered_amounts(part, part.grams, 10_000 / 6)) <= 70 for part in POT.ingredients)


def test_what_no_spoon_measures_is_weighed_and_a_spoon_and_a_half_stays_one():
    pot = recipe("Pot", ["1/2 tsp salt", "1 1/2 tbsp olive oil"])
    assert [step.label for step in offered_amounts(pot.ingredients[0], 1.1)][2] == "1.1 g"
    assert kitchen_amount(pot.ingredients[1]).text == "1 1/2 tbsp"
