"""How sure a number is, and how it can be said."""

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from strategies import dishes

from kit.food.composition import bundled_foods, nutrients
from kit.meal.certainty import (
    composition_sd,
    range_of,
    ranges,
    round_step,
    said_number,
    spoken,
    spoken_per_serving,
    total_sd,
)
from kit.meal.nutrition import nutrition
from kit.meal.portions import make_more
from kit.meal.recipe import recipe

values = st.floats(0.001, 1e5)


@given(dishes())
def test_a_value_lies_in_its_range(dish):
    numbers = nutrition(dish)
    low, high = ranges(numbers)
    assert (low <= numbers.per_serving).all()
    assert (numbers.per_serving <= high).all()
    assert (low >= 0).all()


@given(dishes(), st.sampled_from(list(nutrients())))
def test_one_range_is_the_same_as_in_all(dish, name):
    numbers = nutrition(dish)
    low, high = ranges(numbers)
    found, place = range_of(numbers, name), list(nutrients()).index(name)
    assert (found.low, found.high) == (low[place], high[place])


@given(values, st.floats(0.001, 0.9))
def test_the_spoken_number_lies_in_the_range(value, share):
    half = value * share
    assert value - half - 1e-9 <= said_number(value, half) <= value + half + 1e-9


@given(st.floats(1e-4, 1e5))
def test_the_step_is_the_coarsest_round_one_within_the_half_width(half):
    step = round_step(half)
    assert step <= half * (1 + 1e-9)
    assert step > half / 2.6


@given(dishes(), st.floats(1.5, 20))
def test_making_more_leaves_the_range_of_a_serving(dish, factor):
    one, more = (ranges(nutrition(pot)) for pot in (dish, make_more(dish, min(dish.servings * factor, 1e4))))
    assert np.allclose(one, more, rtol=1e-9, atol=1e-12)


def test_two_unsure_parts_are_surer_together_than_each_alone():
    parts, exact = [[10.0], [10.0]], [[0.0], [0.0]]
    together = total_sd(parts, [0.1, 0.1], exact)[0] / 20
    assert together == pytest.approx(0.1 / np.sqrt(2))


def test_salted_foods_are_less_sure_in_sodium():
    foods = bundled_foods()
    place = list(nutrients()).index("sodium")
    assert composition_sd(foods["cheese-feta"])[place] > composition_sd(foods["carrots-raw"])[place]


@pytest.mark.parametrize(
    ("value", "low", "high", "unit", "words"),
    [
        (431, 401, 461, "kcal", "about 425 calories"),
        (1.02, 0.98, 1.06, "g", "about 1.02 grams"),
        (0.2, 0.0, 0.5, "g", "hardly any"),
        (0.0, 0.0, 0.0, "mg", "hardly any"),
        (float("nan"), float("nan"), float("nan"), "g", "unknown"),
    ],
)
def test_a_number_is_said_with_the_digits_it_has(value, low, high, unit, words):
    assert spoken(value, low, high, unit) == words


def test_at_least_never_says_more_than_is_known():
    assert spoken(8.4, 7.4, 9.4, "g", at_least=True) == "at least 8 grams"
    assert spoken(8.6, 7.6, 9.6, "g", at_least=True) == "at least 8 grams"


def test_every_nutrient_has_words():
    said = spoken_per_serving(nutrition(recipe("Oats", ["1 cup rolled oats", "2 cups milk"], 2)))
    assert said.keys() == nutrients().keys()
    assert said["energy"].startswith("about ")
