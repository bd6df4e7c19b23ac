"""What cooking takes: by default as each part is worked out to be cooked, and "up to" where that is not known."""

import numpy as np
import pytest

from kit.food.cooking import is_loss_known, retention, vitamins_that_cooking_takes
from kit.food.nutrients import nutrient_index, nutrients
from kit.lines.recipe_text import read_recipe
from kit.meal.certainty import ranges, spoken_per_serving
from kit.meal.nutrition import nutrition
from kit.meal.recipe import cooked_as, recipe, recipe_from
from kit.meal.steps import LeaveOut, Row, applied
from kit.rules.serving import as_json, as_text
from kit.show.tables import serving_rows
from kit.talk.library import read_talk

SOUP = recipe("Carrot soup", ["4 carrots", "4 cups vegetable broth"], servings=4)
CHOPS = recipe("Pork chops with apples", ["1 lb boneless pork chops", "2 apples, sliced", "1 tsp salt"], servings=4)
MACRONUTRIENTS = ("energy", "water", "protein", "fat", "saturated_fat", "carbohydrate", "fiber", "sugars")


def all_raw(dish):
    for part in {one.part for one in dish.ingredients}:
        dish = cooked_as(dish, part, "raw")
    return dish


def test_a_soup_keeps_of_its_carrots_what_the_published_factor_says_without_being_told():
    raw, cooked = nutrition(all_raw(SOUP)), nutrition(SOUP)
    place = nutrient_index("vitamin_c")
    kept = retention("3456")[place]  # USDA Retention 6: roots boiled, the water used, keep 75 %
    assert kept == 0.75
    assert cooked.contributions[0, place] == pytest.approx(kept * raw.contributions[0, place])


def test_a_choice_goes_before_what_is_worked_out():
    place = nutrient_index("folate")
    baked = nutrition(cooked_as(SOUP, "", "baked")).contributions[0, place]
    raw = nutrition(all_raw(SOUP)).contributions[0, place]
    assert baked == pytest.approx(retention("3451")[place] * raw)


@pytest.mark.parametrize("name", ["barley_squash_box", "split_pea_soup", "pear_oat_jars"])
def test_energy_and_macronutrients_are_the_same_however_a_dish_is_cooked(name):
    dish = read_talk(name).recipe
    as_cooked, raw = nutrition(dish), nutrition(all_raw(dish))
    for nutrient in MACRONUTRIENTS:
        assert as_cooked[nutrient] == pytest.approx(raw[nutrient], rel=1e-12)


def test_leaving_the_broth_out_does_not_make_the_carrots_raw():
    without = applied(SOUP, [LeaveOut(Row(1, "broth-vegetable"))])
    assert without.ways[0].name == "stewed"
    assert all(way.name == "stewed" for way in SOUP.ways)


def test_a_vitamin_that_cooking_may_have_taken_is_up_to():
    numbers = nutrition(CHOPS)
    told = dict(zip(nutrients(), numbers.up_to, strict=True))
    assert told["thiamin"]  # of pork there is no factor
    assert told["vitamin_c"]  # nobody says how the apples go in
    assert not any(told[name] for name in MACRONUTRIENTS)
    assert {name for name, lost in told.items() if lost} <= vitamins_that_cooking_takes()
    assert spoken_per_serving(numbers)["thiamin"].startswith("up to ")
    assert spoken_per_serving(numbers)["protein"].startswith("about ")


def test_the_low_end_of_a_vitamin_that_is_up_to_lies_lower_by_what_cooking_may_take():
    unsure, raw = nutrition(CHOPS), nutrition(all_raw(CHOPS))
    at = nutrient_index("thiamin")  # 40 %: the most that is published of any family, since of pork there is nothing
    (low, high), (low_raw, high_raw) = ranges(unsure), ranges(raw)
    value = unsure.per_serving[at]
    assert high[at] == pytest.approx(high_raw[at])
    assert value - low[at] > value - low_raw[at]
    assert 0 < low[at] < 0.65 * value
    protein = nutrient_index("protein")
    assert low[protein] == pytest.approx(low_raw[protein])


def test_up_to_stands_in_the_numbers_and_the_table_of_a_serving():
    numbers = nutrition(CHOPS)
    printed = as_json(numbers)
    assert printed["nutrients"]["thiamin"]["up_to"] is True
    assert printed["nutrients"]["protein"]["up_to"] is False
    assert printed["ingredients"][1]["cooked"] is None
    assert printed["ingredients"][1]["cooked_because"] == "raw or cooked is not said"
    assert as_json(nutrition(SOUP))["ingredients"][0]["cooked"] == "stewed"
    (row,) = serving_rows(numbers, ["thiamin"])
    assert row["per serving"].startswith("up to ")
    assert "up to " in as_text(numbers, ["thiamin"])


def test_nothing_is_up_to_where_all_of_it_was_settled_or_is_of_cooked_food():
    assert not nutrition(all_raw(CHOPS)).up_to.any()
    assert not nutrition(recipe("Bowl", ["1 cup cooked brown rice", "1 tbsp olive oil"])).up_to.any()
    assert is_loss_known(SOUP.ingredients[0].food, "boiled")


def test_an_open_line_makes_every_number_at_least_and_none_up_to():
    numbers = nutrition(recipe_from(read_recipe("Chops\nServes 4\n1 lb boneless pork chops\n1 cup gochujang\n")))
    assert numbers.at_least.all()
    assert not numbers.up_to.any()


def test_what_is_kept_is_never_more_than_what_was_there():
    for dish in (SOUP, CHOPS):
        cooked, raw = nutrition(dish).per_serving, nutrition(all_raw(dish)).per_serving
        assert np.all(cooked <= raw + 1e-9)
