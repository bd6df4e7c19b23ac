"""What a serving holds."""

from dataclasses import replace

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from strategies import dishes

from kit.food.composition import food_from
from kit.food.nutrients import nutrient_index, nutrients
from kit.lines.reader import read
from kit.meal.certainty import spoken_per_serving
from kit.meal.nutrition import contributions, energy_shares, nutrition, per_100g
from kit.meal.recipe import Ingredient, Recipe, recipe

amounts = st.floats(0, 1e3)


@given(dishes())
def test_contributions_add_up_to_the_total(dish):
    numbers = nutrition(dish)
    assert numbers.contributions.shape == (len(dish.ingredients), len(nutrients()))
    assert np.nansum(numbers.contributions, axis=0) == pytest.approx(numbers.per_serving, rel=1e-9, abs=1e-9)


@given(dishes())
def test_a_contribution_is_grams_times_content_over_servings(dish):
    numbers, place = nutrition(dish), nutrient_index("protein")
    by_hand = [part.grams * part.food["protein"] / 100 / dish.servings for part in dish.ingredients]
    assert numbers.contributions[:, place] == pytest.approx(by_hand, rel=1e-12)


@given(dishes())
def test_the_order_of_the_ingredients_does_not_matter(dish):
    turned = Recipe(dish.title, dish.ingredients[::-1], dish.servings)
    assert nutrition(turned).per_serving == pytest.approx(nutrition(dish).per_serving, rel=1e-9, abs=1e-12)


@given(st.tuples(amounts, amounts, amounts).filter(lambda grams: sum(grams) > 1e-6))
def test_energy_shares_add_to_one(grams):
    shares = energy_shares(grams)
    assert shares.sum() == pytest.approx(1)
    assert (shares >= 0).all()


@given(dishes())
def test_a_dish_has_all_energy_shares_or_none(dish):
    shares = nutrition(dish).energy_shares
    total = sum(shares.values())
    assert np.isnan(total) or total == pytest.approx(1)


def test_shares_of_no_energy_are_unknown():
    assert np.isnan(energy_shares([0, 0, 0])).all()


@pytest.mark.parametrize(("grams", "fault"), [([1, 2], "make its last axis"), ([1, -2, 3], "fat at .* is -2 g")])
def test_grams_that_cannot_be_shared_are_told(grams, fault):
    with pytest.raises(ValueError, match=fault):
        energy_shares(grams)


def test_a_missing_value_is_missing_and_not_zero():
    some = Ingredient(food_from({"protein": 10.0}, "some"), 100)
    none = Ingredient(food_from({"fat": 1.0}, "none", "The other"), 100)
    numbers = nutrition(Recipe("Pot", (some, none)))
    assert numbers["protein"] == 10
    assert numbers.missing_from("protein") == ("The other",)
    assert numbers.missing_from("fat") == ("some",)
    assert np.isnan(numbers.energy_shares["protein"])


def test_a_food_that_is_not_used_lacks_nothing():
    numbers = nutrition(Recipe("Pot", (Ingredient(food_from({"fat": 1.0}, "none"), 0),)))
    assert numbers.missing_from("protein") == ()


def test_zero_grams_bring_nothing_even_where_content_is_missing():
    assert contributions([0, 10], [[np.nan], [5.0]]).tolist() == [[0.0], [0.5]]


@given(dishes())
def test_a_hundred_grams_do_not_depend_on_the_servings(dish):
    other = Recipe(dish.title, dish.ingredients, 7)
    assert per_100g(nutrition(other)) == pytest.approx(per_100g(nutrition(dish)), rel=1e-9, nan_ok=True)


def test_a_dish_that_weighs_nothing_has_no_hundred_grams():
    empty = recipe("Pot", ["1 cup lentils"]).with_grams([0])
    assert np.isnan(per_100g(nutrition(empty))).all()


def test_a_serving_weighs_its_ingredients():
    assert nutrition(recipe("Oats", ["1 cup rolled oats", "2 cups milk"], 2)).serving_grams == (81 + 488) / 2


def test_a_line_that_is_still_open_makes_every_total_at_least():
    oats = recipe("Oats", ["1 cup rolled oats", "2 cups milk"], 2)
    numbers = nutrition(replace(oats, open_lines=(read("2 scoops moon dust"),)))
    assert numbers.at_least.all()
    assert numbers.missing_from("energy") == ('"2 scoops moon dust"',)
    assert np.isnan(numbers.energy_shares["fat"])
    assert spoken_per_serving(numbers)["energy"].startswith("at least ")
    assert nutrition(numbers.recipe.with_grams([40, 0])).at_least.all()


def test_a_finished_weight_moves_in_the_proportion_of_the_whole():
    oats = replace(recipe("Oats", ["1 cup rolled oats", "2 cups milk"], 2), finished_grams=500)
    assert oats.with_grams(oats.grams * 2, 4).finished_grams == 1000
    assert oats.with_grams([0, 0]).finished_grams is None
