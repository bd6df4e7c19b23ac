"""What a dish weighs when it is eaten."""

from dataclasses import replace

import pytest

from kit.errors import AmountError
from kit.meal.eaten import eaten_grams
from kit.meal.recipe import recipe


def test_oats_cooked_in_listed_milk_take_up_that_milk_and_no_more():
    oats = recipe("Oats", ["1 cup rolled oats", "1 1/8 cups whole milk"])
    eaten = eaten_grams(oats)
    assert eaten.value == pytest.approx(float(oats.grams.sum()))
    assert eaten.low < eaten.value < eaten.high


def test_dry_food_without_liquid_takes_up_water_from_the_tap():
    quinoa = recipe("Quinoa", ["1 cup quinoa, dry"])  # 3.05 times: SR26 20035 and 20137, dry matter conserved
    assert eaten_grams(quinoa).value == pytest.approx(170 * 3.05, rel=0.01)


def test_pasta_boiled_in_a_big_pot_of_listed_water_leaves_it():
    pot = recipe("Spaghetti", ["12 oz spaghetti, dry", "4 quarts water"])
    assert eaten_grams(pot).value == pytest.approx(340 * 2.4, rel=0.05)  # SR26: 2.25 to 2.42


def test_oats_of_a_cookie_stay_dry():
    cookies = recipe("Oat cookies", ["1 cup rolled oats", "1 cup all-purpose flour", "1 egg", "1/2 tsp baking soda"])
    assert eaten_grams(cookies).value < float(cookies.grams.sum())


def test_oats_of_a_granola_or_a_muesli_stay_dry():
    for title in ("Pecan granola", "Apple muesli"):
        dry = recipe(title, ["3 cups rolled oats", "1/2 cup pecans, chopped", "1/4 cup honey"])
        of = eaten_grams(dry)
        assert of.high < 1.1 * float(dry.grams.sum()), title


def test_a_salad_of_raw_food_weighs_what_was_weighed():
    salad = recipe("Tomato salad", ["500 g tomatoes, edible", "20 g olive oil"])
    assert eaten_grams(salad).value == pytest.approx(float(salad.grams.sum()))


def test_the_oven_drives_water_off_and_the_range_says_how_little_is_known():
    tray = recipe("Roast chicken and carrots", ["500 g boneless skinless chicken breast", "500 g peeled carrots"])
    eaten = eaten_grams(tray)
    assert 600 < eaten.low < 700 < eaten.value < 820 < eaten.high < 950


def test_an_unknown_way_has_the_range_of_every_way():
    roast, unknown = (eaten_grams(recipe(title, ["500 g peeled carrots"])) for title in ("Roast carrots", "Monday"))
    assert unknown.low == pytest.approx(roast.low, rel=0.05)
    assert unknown.high >= 500


def test_soup_simmers_down_but_not_to_nothing():
    soup = recipe("Bean soup", ["500 g kidney beans, cooked", "4 cups water"])
    eaten = eaten_grams(soup)
    total = float(soup.grams.sum())
    assert 0.7 * total < eaten.low < eaten.value < total <= eaten.high * 1.01


def test_the_weighed_pot_is_taken_as_it_was_weighed():
    pot = replace(recipe("Chili", ["500 g kidney beans, cooked"]), finished_grams=420.0)
    eaten = eaten_grams(pot)
    assert eaten.value == 420
    assert eaten.high - eaten.low == pytest.approx(2 * 1.645 * 0.02 * 420, rel=0.01)


def test_a_pot_that_weighs_nothing_is_refused():
    with pytest.raises(AmountError, match="finished_grams"):
        replace(recipe("Chili", ["500 g kidney beans, cooked"]), finished_grams=0.0)


def test_leaving_a_food_out_never_makes_the_dish_heavier():
    dish = recipe("Lentil soup", ["1 cup lentils, dry", "4 cups water", "2 carrots", "1 tbsp olive oil"])
    whole = eaten_grams(dish).value
    for place in range(4):
        grams = dish.grams.copy()
        grams[place] = 0
        assert eaten_grams(dish.with_grams(grams)).value <= whole
