"""How each ingredient is cooked, where nobody says so."""

import pytest
from each import for_each

from kit.errors import UnknownNameError
from kit.food.composition import bundled_foods
from kit.food.cooking import WAYS, kept_when, retention
from kit.food.nutrients import nutrient_index
from kit.meal.eaten import eaten_grams
from kit.meal.nutrition import nutrition
from kit.meal.recipe import cooked_as, recipe
from kit.meal.ways import ways


def way_of(title, *lines):
    dish = recipe(title, lines)
    return [way.name for way in ways(dish.title, dish.ingredients)]


@for_each(
    ("title", "lines", "expected"),
    [
        ("Carrot soup", ("4 carrots", "2 cups water"), ["stewed", "stewed"]),
        ("Roast carrots", ("1 lb carrots",), ["baked"]),
        ("Roasted carrot soup", ("1 lb carrots",), ["stewed"]),
        ("Grilled chicken with green chili sauce", ("1 lb boneless skinless chicken breast",), ["fried"]),
        ("Carrot salad", ("1 lb carrots", "1 lb boneless skinless chicken breast"), ["raw", ""]),
        ("Monday", ("1 lb carrots", "2 cups romaine lettuce, shredded"), ["", "raw"]),
        ("Roast vegetables with barley", ("1 cup pearled barley, dry", "1 lb carrots"), ["boiled", "baked"]),
        ("Monday", ("2 cups all-purpose flour", "2 eggs", "1 tsp baking powder"), ["baked", "baked", "baked"]),
        ("Monday", ("1 lb carrots", "4 cups water"), ["stewed", "stewed"]),
    ],
)
def test_the_title_the_food_and_the_liquid_tell_the_way(title, lines, expected):
    assert way_of(title, *lines) == expected


def test_what_the_cook_says_goes_before_what_the_title_tells():
    dish = cooked_as(recipe("Roast carrots", ["1 lb carrots"]), "", "boiled")
    way = ways(dish.title, dish.ingredients)[0]
    assert (way.name, way.stated) == ("boiled", True)


def test_raw_is_said_of_no_raw_meat():
    dish = recipe("Salad", ["1 lb boneless skinless chicken breast"])
    way = ways(dish.title, dish.ingredients)[0]
    assert way.name == ""
    assert not way.eaten_raw


def test_a_part_is_cooked_in_one_choice_and_keeps_what_the_release_says():
    """USDA Retention 6, 3451: roots, baked, keep 75 % of vitamin C and 80 % of folate."""
    dish = recipe("Monday", ["400 g carrots, edible", "20 g olive oil"])
    baked = cooked_as(dish, "", "baked")
    assert nutrition(baked)["vitamin_c"] == pytest.approx(0.75 * nutrition(dish)["vitamin_c"], rel=0.01)
    assert nutrition(baked)["energy"] == pytest.approx(nutrition(dish)["energy"])
    assert eaten_grams(baked).value < eaten_grams(dish).value
    assert nutrition(cooked_as(baked, "", ""))["vitamin_c"] == nutrition(dish)["vitamin_c"]


def test_a_cooked_food_loses_nothing_twice():
    boiled = bundled_foods()["carrots-boiled"]
    assert (kept_when(boiled, "boiled") == 1).all()


def test_every_way_of_a_family_is_a_treatment_of_the_release():
    for food in bundled_foods().values():
        for way in WAYS:
            kept = kept_when(food, way)
            assert ((kept > 0) & (kept <= 1)).all()
    assert retention("3464")[nutrient_index("vitamin_c")] == 0.75


def test_an_unknown_way_or_part_is_told():
    dish = recipe("Monday", ["400 g carrots, edible"])
    with pytest.raises(UnknownNameError, match="way of cooking"):
        cooked_as(dish, "", "smoked")
    with pytest.raises(UnknownNameError, match="part of the recipe"):
        cooked_as(dish, "sauce", "baked")
