"""What to buy: whole packages, and what is left."""

import pytest
from hypothesis import given
from strategies import dishes

from kit.food.composition import bundled_foods
from kit.meal.buying import to_buy
from kit.meal.portions import make_more
from kit.meal.recipe import recipe


def lines(*of, servings=4, make=None):
    dish = recipe("Pot", of, servings=servings)
    return [one.line for one in to_buy(make_more(dish, make) if make else dish)]


@given(dishes())
def test_enough_is_bought_of_everything_that_is_used_and_nothing_else(dish):
    bought = {one.food.key: one for one in to_buy(dish)}
    used = {part.food.key: part.grams for part in dish.ingredients if part.grams > 0 and part.food.key != "water"}
    assert set(bought) == set(used)
    for key, one in bought.items():
        assert one.used == pytest.approx(used[key])
        assert one.bought >= one.used * 0.97 - 1e-9


def test_cans_are_whole_and_the_rest_is_told():
    assert lines("1 (15 oz) can black beans, drained", make=6) == ["2 cans (15 oz) black beans; 1/2 can (15 oz) left"]
    assert lines("1 (15 oz) can black beans, drained", make=8) == ["2 cans (15 oz) black beans"]


def test_a_bunch_is_bought_whole():
    # common practice: a bunch of parsley of 55 g
    assert lines("1/4 cup parsley, chopped") == ["1 bunch parsley; 40 g left"]


def test_pieces_are_bought_whole():
    assert lines("1 1/2 medium onions, chopped") == ["2 medium onions; 1/2 of one left"]


def test_what_is_peeled_is_bought_with_its_peel():
    # USDA SR26 11485: butternut squash, 16 % refuse; a cup of cubes of 140 g
    squash = bundled_foods()["butternut-squash-raw"]
    assert lines("6 cups butternut squash, cubed") == [
        f"{840 / (1 - squash.refuse) / 453.59237:.1f} lb butternut squash, with what is taken off"
    ]


def test_dry_grain_is_named_in_cups_and_grams():
    assert lines("1 1/2 cups pearled barley, dry") == ["1 1/2 cups (300 g) barley"]  # USDA SR26 20005: a cup of 200 g


def test_the_same_food_twice_is_bought_once_and_water_never():
    assert lines("1 tbsp olive oil", "2 tbsp olive oil", "4 cups water") == ["3 tbsp (41 g) olive oil"]


def test_what_most_kitchens_have_is_marked():
    assert [one.at_hand for one in to_buy(recipe("Pot", ["1 tsp cumin", "1 cup quinoa"]))] == [True, False]
