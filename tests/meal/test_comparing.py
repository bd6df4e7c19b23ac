"""Foods and dishes side by side on one basis."""

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from strategies import dishes, foods

from kit.errors import AmountError
from kit.food.composition import bundled_foods
from kit.food.nutrients import nutrient_index
from kit.meal.comparing import BASES, compare
from kit.meal.nutrition import nutrition
from kit.meal.recipe import recipe

TABLE = bundled_foods()
QUINOA, RICE = TABLE["quinoa-boiled"], TABLE["rice-white-boiled"]
OATS = nutrition(recipe("Oats", ["1 cup rolled oats", "1 cup milk"], servings=2))


def test_a_cup_beside_a_cup():
    found = compare([QUINOA, RICE], "cup")
    # USDA SR26 20137: 185 g a cup, 4.40 g protein in 100 g; 20045: 158 g, 2.69 g
    assert [side.grams for side in found.sides] == [185, 158]
    assert [side["protein"].value for side in found.sides] == pytest.approx([8.14, 4.25], abs=0.005)
    times = found.times("protein")
    assert times.value == pytest.approx(1.915, abs=0.005)
    assert times.low < 1.915 < times.high
    assert found.differ("protein")


def test_what_ranges_cannot_tell_apart_is_not_said_to_differ():
    found = compare([QUINOA, RICE], "100 kcal")
    assert [side["energy"].value for side in found.sides] == pytest.approx([100, 100])
    assert not compare([QUINOA, QUINOA], "100 g").differ("protein")
    assert compare([QUINOA, QUINOA], "100 g").times("protein").value == 1


def test_two_dishes_by_a_serving_and_by_100_g_as_eaten():
    other = nutrition(recipe("More oats", ["1 1/2 cups rolled oats", "1 cup milk"], servings=2))
    found = compare([OATS, other], "serving")
    assert found.sides[0]["protein"].value == OATS["protein"]
    assert found.sides[1]["protein"].value > found.sides[0]["protein"].value
    assert compare([OATS, other], "100 g").sides[0].grams == pytest.approx(100)


@given(foods, foods, st.sampled_from(["100 g", "100 kcal"]))
def test_values_lie_in_their_ranges_and_scale_with_the_basis(one, other, basis):
    if basis == "100 kcal" and not min(one["energy"], other["energy"]) > 0:
        return
    for side, food in zip(compare([one, other], basis).sides, (one, other), strict=True):
        known = ~np.isnan(side.values)
        assert (side.low[known] <= side.values[known]).all()
        assert (side.values[known] <= side.high[known]).all()
        assert side.values[known] == pytest.approx(food.per_100g[known] * side.grams / 100)


@given(dishes())
def test_100_kcal_of_a_dish_hold_100_kcal(dish):
    numbers = nutrition(dish)
    if numbers["energy"] > 0:
        side = compare([numbers, numbers], "100 kcal").sides[0]
        at = nutrient_index("energy")
        assert (side.values[at], side.low[at], side.high[at]) == pytest.approx((100, 100, 100))


def test_what_has_no_such_basis_is_told():
    for things, basis, says in (
        ([QUINOA, RICE], "serving", "has no serving"),
        ([OATS, OATS], "cup", "weighs is not known"),
        ([QUINOA, TABLE["egg"]], "cup", None),
        ([QUINOA], "cup", "choose two or three"),
        ([QUINOA] * 4, "cup", "choose two or three"),
        ([QUINOA, RICE], "handful", "no basis"),
        ([QUINOA, TABLE["water"]], "100 kcal", "no energy"),
        ([QUINOA, TABLE["bay-leaf"]], "100 g", None),
    ):
        if says:
            with pytest.raises(AmountError, match=says):
                compare(things, basis)
        else:
            assert compare(things, basis).basis in BASES
