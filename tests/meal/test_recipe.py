"""A recipe as frozen values."""

import dataclasses

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from strategies import dishes

from kit.errors import AmountError, LineError, UnknownNameError
from kit.food.composition import bundled_foods
from kit.food.nutrients import nutrient_index
from kit.lines.reader import read
from kit.lines.recipe_text import read_recipe
from kit.meal.recipe import Ingredient, Recipe, ingredient_from, recipe, recipe_from

LENTILS = bundled_foods()["lentils-dry"]


def test_a_recipe_is_made_from_lines():
    dish = recipe("Oats", ["1 cup rolled oats", "2 cups milk"], servings=2)
    assert [part.food.key for part in dish.ingredients] == ["oats-rolled-dry", "milk-whole"]
    assert dish.grams.tolist() == [81, 488]


def test_lines_that_cannot_be_read_are_all_told_at_once():
    with pytest.raises(LineError, match=r'(?s)"1 cup rice".*"onion": no amount'):
        recipe("Pot", ["1 cup rice", "1 cup milk", "onion"])


def test_a_text_without_ingredients_is_told():
    with pytest.raises(LineError, match="no ingredient lines"):
        recipe_from(read_recipe("Soup\nServes 4"))


def test_an_unread_line_is_no_ingredient():
    with pytest.raises(LineError, match='not sure which food "rice" is'):
        ingredient_from(read("1 cup rice"))


@pytest.mark.parametrize("grams", [-1, float("nan"), float("inf"), 1e9])
def test_grams_that_make_no_sense_are_told(grams):
    with pytest.raises(AmountError, match="give 0 g or more"):
        Ingredient(LENTILS, grams)


@pytest.mark.parametrize("servings", [0, -2, float("nan"), 1e6])
def test_servings_that_make_no_sense_are_told(servings):
    with pytest.raises(AmountError, match=r"give a number from 0\.1"):
        Recipe("Pot", (Ingredient(LENTILS, 100),), servings)


def test_a_recipe_cannot_be_changed():
    with pytest.raises(dataclasses.FrozenInstanceError):
        recipe("Pot", ["1 cup lentils"]).servings = 2


def test_an_ingredient_that_is_not_there_names_the_nearest():
    with pytest.raises(UnknownNameError, match='no ingredient "lentils"; did you mean "lentils-dry"'):
        recipe("Pot", ["1 cup lentils"]).position("lentils")


def test_other_amounts_are_one_for_each_ingredient():
    with pytest.raises(AmountError, match="3 amounts for 1 ingredients"):
        recipe("Pot", ["1 cup lentils"]).with_grams([1, 2, 3])


def test_a_treatment_takes_its_losses():
    raw = Ingredient(bundled_foods()["spinach-raw"], 100)
    boiled = dataclasses.replace(raw, treatment=_any_treatment(raw))
    place = nutrient_index("vitamin_c")
    plain, lossy = (Recipe("Pot", (part,)).per_100g[0, place] for part in (raw, boiled))
    assert lossy < plain


def _any_treatment(ingredient: Ingredient) -> str:
    from kit.food.cooking import treatments

    return next(iter(treatments(ingredient.food.retention)))


@given(dishes(), st.data())
def test_a_changed_recipe_leaves_the_first_as_it_was(dish, data):
    before = dish.grams.copy()
    new = data.draw(st.lists(st.floats(0, 1e4), min_size=len(before), max_size=len(before)))
    changed = dish.with_grams(new)
    assert np.array_equal(dish.grams, before)
    assert np.array_equal(changed.grams, new)
    assert np.array_equal(changed.per_100g, dish.per_100g, equal_nan=True)
