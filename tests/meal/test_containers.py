"""What goes in each container."""

from dataclasses import replace

import pytest
from hypothesis import given
from strategies import dishes

from kit.meal.containers import container_lines, each_container
from kit.meal.recipe import recipe

BOX = recipe("Box", ["1 cup quinoa", "1/2 cup feta, crumbled", "1 (15 oz) can chickpeas, drained", "1/8 tsp salt"], 4)


def test_grain_goes_in_as_it_is_cooked():
    quinoa = each_container(BOX)[0]
    assert quinoa.text == "2/3 cup cooked quinoa"
    # common practice: dry quinoa about triples; by dry matter of USDA SR26 20035 and 20137 170 g makes 519 g
    assert quinoa.grams == pytest.approx(519 / 4, rel=0.01)


def test_a_part_of_a_can_is_measured_in_cups():
    assert each_container(BOX)[2].text == "1/3 cup chickpeas"


def test_a_pinch_is_left_to_the_stirring():
    assert "and a share of the salt" in container_lines(BOX)


def test_a_soup_is_ladled():
    soup = recipe("Soup", ["1 cup lentils, dry", "6 cups water", "1 tsp salt"], 4)
    (line,) = container_lines(soup)
    assert line.startswith("about 1 2/3 cups (380 g)")  # 192 g of lentils and 1,422 g of water, less what boils off
    assert line.endswith("ladled")


@given(dishes())
def test_shares_of_all_containers_add_up_to_what_is_in_the_pot(dish):
    for own in dish.ingredients:
        for share in each_container(replace(dish, ingredients=(own,))):
            whole = share.grams * dish.servings
            assert whole == pytest.approx(own.grams) if share.food is own.food else whole > own.grams
            assert share.food is own.food or own.food.state == "dry"
