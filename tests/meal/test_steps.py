"""Steps of a change: applied, stacked, undone, kept as JSON."""

import json
from dataclasses import replace

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from strategies import dishes, foods

from kit.errors import ChangeError
from kit.food.composition import bundled_foods
from kit.meal.nutrition import nutrition
from kit.meal.portions import MAKE_MORE, SHARE_OUT
from kit.meal.recipe import recipe
from kit.meal.steps import (
    Add,
    Amount,
    LeaveOut,
    Measured,
    Row,
    Servings,
    Swap,
    applied,
    step_as_json,
    step_from_json,
)

TABLE = bundled_foods()
OATS = recipe("Oats", ["1 cup rolled oats", "2 cups milk", "2 tbsp honey"], servings=2)
MILK, HONEY = Row(1, "milk-whole"), Row(2, "honey")
STEPS = (
    LeaveOut(HONEY),
    Swap(MILK, TABLE["soy-milk"], note="asked"),
    Amount(Row(0, "oats-rolled-dry"), times=0.0, plus=40.0, measured=Measured(40.0, 0.06, "cup", 81.0)),
    Amount(Row(1, "soy-milk"), times=0.5),
    Add(TABLE["walnuts"], Measured(30.0, 0.02)),
    Servings(6.0, MAKE_MORE),
    Servings(3.0, SHARE_OUT),
)


def test_steps_do_what_they_say_in_their_order():
    made = applied(OATS, STEPS)
    assert [part.food.key for part in made.ingredients] == ["oats-rolled-dry", "soy-milk", "honey", "walnuts"]
    assert made.grams.tolist() == pytest.approx([120, 3 * 243, 0, 90])  # USDA SR26 16139: a cup of 243 g
    assert made.servings == 3


@given(dishes(), foods, st.floats(0.1, 500))
def test_what_is_added_stands_behind_and_the_others_keep_their_places(dish, other, grams):
    made = applied(dish, [Add(other, Measured(grams))])
    assert made.ingredients[:-1] == dish.ingredients
    before, after = nutrition(dish).contributions, nutrition(made).contributions
    assert np.array_equal(before, after[:-1], equal_nan=True)


def test_a_step_finds_its_ingredient_where_it_is_now():
    stack = (Add(TABLE["walnuts"], Measured(10.0)), Add(TABLE["raisins"], Measured(20.0)), LeaveOut(Row(4, "raisins")))
    assert applied(OATS, stack[1:]).grams.tolist() == [*OATS.grams.tolist(), 0.0]


def test_a_step_about_nothing_that_is_there_is_told():
    with pytest.raises(ChangeError, match='no "egg" in the recipe any more'):
        applied(OATS, [LeaveOut(Row(0, "egg"))])


def test_less_than_there_is_leaves_nothing():
    assert applied(OATS, [Amount(HONEY, plus=-1000.0)]).grams[2] == 0


def test_steps_come_back_from_json_as_they_were():
    text = json.dumps([step_as_json(step) for step in STEPS])
    assert tuple(step_from_json(values, OATS) for values in json.loads(text)) == STEPS


@pytest.mark.parametrize("values", [{}, {"kind": "melt"}, {"kind": "leave out"}, {"kind": "amount", "row": 3}])
def test_json_that_is_no_step_is_told(values):
    with pytest.raises(ChangeError, match="is no change"):
        step_from_json(values, OATS)


def test_a_weighed_finished_dish_moves_with_what_goes_into_it():
    weighed = replace(OATS, finished_grams=600.0)
    made = applied(weighed, [LeaveOut(HONEY)])
    assert made.finished_grams == pytest.approx(600 * (OATS.grams.sum() - 42) / OATS.grams.sum())
