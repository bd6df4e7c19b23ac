"""Checks that a table's figures fit together."""

import numpy as np
from each import for_each

from kit.food.composition import bundled_foods, food_from
from kit.food.nutrients import nutrient_index
from kit.meal.checks import ENERGY_TOLERANCE, check_values, checks
from kit.meal.nutrition import nutrition
from kit.meal.recipe import recipe

TABLE = bundled_foods()
FITS = {"water": 60, "protein": 10, "fat": 5, "carbohydrate": 24, "ash": 1, "energy": 181}


def of(**values):
    food = food_from({**FITS, **values}, "bar")
    return {check.what: check for check in check_values(food.per_100g, "bar", food)}


def test_figures_that_fit_hold():
    assert all(check.holds for check in of().values())


def test_energy_off_by_more_than_is_usual_does_not():
    assert not of(energy=181 * (1 + 2 * ENERGY_TOLERANCE))["energy"].holds


def test_parts_that_do_not_make_a_hundred_do_not():
    assert not of(water=70)["parts"].holds


def test_what_is_missing_is_not_checked():
    assert "parts" not in of(ash=np.nan)


@for_each("key", TABLE)
def test_a_food_that_does_not_fit_says_why(key):
    for check in check_values(TABLE[key].per_100g, TABLE[key].name, TABLE[key]):
        assert check.holds or ";" in check.because


def test_nearly_every_food_of_the_table_fits():
    found = [check for food in TABLE.values() for check in check_values(food.per_100g, food.name, food)]
    assert sum(check.holds for check in found) / len(found) > 0.9


def test_a_dish_and_each_of_its_foods_are_checked_once():
    found = checks(nutrition(recipe("Pot", ["1 cup lentils", "1 cup lentils", "2 tbsp olive oil"])))
    assert [check.of for check in found if check.what == "energy"] == ["Pot", "Lentils, dry", "Olive oil"]


def test_the_numbers_are_in_the_reason():
    oil = TABLE["olive-oil"].per_100g
    because = check_values(oil, "Olive oil")[0].because
    assert f"{oil[nutrient_index('energy')]:.0f} kcal" in because
