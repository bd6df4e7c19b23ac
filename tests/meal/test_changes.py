"""What changes when an amount does."""

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from strategies import dishes, foods

from kit.errors import AmountError, UnknownNameError
from kit.food.composition import bundled_foods
from kit.meal.changes import change, leave_out, set_count, set_grams, swap, swap_back
from kit.meal.nutrition import nutrition
from kit.meal.recipe import Recipe, recipe

TABLE = bundled_foods()
OATS = recipe("Oats", ["1 cup rolled oats", "2 cups milk", "2 tbsp honey"], servings=2)


@given(dishes(), foods)
def test_swapping_there_and_back_restores_the_recipe(dish, other):
    first = dish.ingredients[0].food.key
    restored = swap_back(swap(dish, first, other), dish, first)
    assert restored.ingredients == dish.ingredients
    assert np.array_equal(nutrition(restored).per_serving, nutrition(dish).per_serving)


@given(dishes(), foods, st.floats(0, 2000))
def test_a_swap_by_weight_weighs_what_was_said(dish, other, grams):
    changed = swap(dish, dish.ingredients[0].food.key, other, grams)
    assert changed.ingredients[0].food is other
    assert changed.grams[0] == grams
    assert changed.ingredients[1:] == dish.ingredients[1:]


def test_a_cup_is_swapped_for_a_cup():
    changed = swap(OATS, "milk-whole", TABLE["soy-milk"])
    assert changed.grams[1] == 2 * 243  # USDA SR26 16139: a cup of 243 g


def test_what_has_no_such_measure_is_swapped_by_weight():
    changed = swap(recipe("Eggs", ["2 large eggs"]), "egg", TABLE["tofu-firm"])
    assert changed.grams[0] == 100
    assert "by weight" in changed.ingredients[0].how


@given(dishes())
def test_leaving_out_takes_away_what_it_brought(dish):
    numbers, first = nutrition(dish), dish.ingredients[0].food.key
    without = nutrition(leave_out(dish, first))
    brought = np.nan_to_num(numbers.contributions[0])
    assert without.per_serving == pytest.approx(numbers.per_serving - brought, rel=1e-7, abs=1e-6)
    assert len(without.recipe.ingredients) == len(dish.ingredients)


def test_an_amount_is_set_in_grams_or_in_its_own_measure():
    assert set_grams(OATS, "honey", 30).grams.tolist() == [81, 488, 30]
    assert set_count(OATS, "milk-whole", 1).grams.tolist() == [81, 244, 42]


def test_a_food_that_is_not_in_the_recipe_is_told():
    for act in (lambda: leave_out(OATS, "egg"), lambda: swap(OATS, "egg", TABLE["tofu-firm"])):
        with pytest.raises(UnknownNameError, match='no ingredient "egg"'):
            act()


def test_a_difference_is_after_less_before():
    found = change(OATS, leave_out(OATS, "honey")).difference("sugars")
    assert found.value == pytest.approx(-42 * 82.12 / 100 / 2)  # USDA SR26 19296: 82.12 g sugars
    assert found.low < found.value < found.high < 0


def test_the_same_recipe_differs_in_nothing_for_sure():
    found = change(OATS, OATS).difference("protein")
    assert (found.value, found.low, found.high) == (0, 0, 0)


def test_recipes_that_lost_ingredients_cannot_be_set_side_by_side():
    with pytest.raises(AmountError, match="fewer ingredients"):
        change(OATS, Recipe("Less", OATS.ingredients[:2]))
    with pytest.raises(AmountError, match="not the same ingredients"):
        swap_back(Recipe("Less", OATS.ingredients[:2]), OATS, "honey")
