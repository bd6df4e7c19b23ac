"""How sure a number is, and how it can be said."""

import re

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from strategies import dishes

from kit.food.composition import bundled_foods
from kit.food.nutrients import nutrients
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
def test_the_step_is_one_that_people_count_in_and_fits_the_half_width(half):
    step = round_step(half)
    assert step / 2 <= half * (1 + 1e-9)
    assert step > half / 5.1
    first = step / 10 ** np.floor(np.log10(step) + 1e-9)
    assert any(abs(first - digit) < 1e-6 for digit in (1, 2.5, 5)), "no steps of two"


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


SAID = [
    (431, 401, 461, "kcal", "about 425 calories"),
    (512, 476, 548, "kcal", "about 500 calories"),
    (16.9, 15.6, 18.2, "g", "about 17 grams"),
    (18.8, 17.3, 20.3, "g", "about 19 grams"),
    (12.2, 11.3, 13.1, "g", "about 12 grams"),
    (1.02, 0.98, 1.06, "g", "about 1 gram"),
    (1.24, 1.1, 1.38, "mg", "about 1.2 milligrams"),
    (0.98, 0.9, 1.06, "g", "about 1 gram"),
    (0.46, 0.42, 0.5, "g", "about half a gram"),
    (0.65, 0.6, 0.7, "g", "about two thirds of a gram"),
    (0.4, 0.38, 0.42, "g", "about 400 milligrams"),
    (0.08, 0.06, 0.1, "mg", "about 80 micrograms"),
    (0.05, 0.04, 0.06, "µg", "less than a tenth of a microgram"),
    (0.7, 0.6, 0.8, "kcal", "about 1 calorie"),
    (0.2, 0.0, 0.5, "g", "hardly any"),
    (0.0, 0.0, 0.0, "mg", "hardly any"),
    (float("nan"), float("nan"), float("nan"), "g", "unknown"),
]


def test_a_number_is_said_as_people_say_it():
    said = {row: spoken(*row[:4]) for row in SAID}
    assert {row: words for row, words in said.items() if words != row[4]} == {}


@given(st.floats(1e-3, 1e4), st.floats(0.01, 0.6), st.sampled_from(["g", "mg", "µg", "kcal"]))
def test_no_needless_digit_and_no_single_plural_is_said(value, share, unit):
    words = spoken(value, value * (1 - share), value * (1 + share), unit)
    assert " 1 grams" not in words
    assert not re.search(r"\d\.\d{3,}", words)
    if value * share >= 0.5:
        assert not re.search(r"\.\d", words.replace(".5", "")), words


def test_at_least_never_says_more_than_is_known():
    assert spoken(8.4, 7.4, 9.4, "g", at_least=True) == "at least 8 grams"
    assert spoken(8.6, 7.6, 9.6, "g", at_least=True) == "at least 8 grams"


def test_every_nutrient_has_words():
    said = spoken_per_serving(nutrition(recipe("Oats", ["1 cup rolled oats", "2 cups milk"], 2)))
    assert said.keys() == nutrients().keys()
    assert said["energy"].startswith("about ")
