"""Servings: more is made, or the same shared out."""

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from strategies import dishes

from kit.errors import AmountError
from kit.meal.nutrition import nutrition
from kit.meal.portions import make_more, share_out
from kit.meal.recipe import recipe


@given(dishes(), st.floats(0.5, 1e4))
def test_making_more_leaves_a_serving_as_it_was(dish, wanted):
    more = make_more(dish, min(wanted, dish.servings * 100))
    assert nutrition(more).per_serving == pytest.approx(nutrition(dish).per_serving, rel=1e-9, abs=1e-9)


@given(dishes(), st.floats(0.5, 1e4))
def test_sharing_out_changes_a_serving_by_the_number(dish, wanted):
    shared = nutrition(share_out(dish, wanted))
    assert shared.per_serving * wanted == pytest.approx(nutrition(dish).per_serving * dish.servings, rel=1e-9, abs=1e-9)
    assert np.array_equal(shared.recipe.grams, dish.grams)


@pytest.mark.parametrize("servings", [0, -1, float("nan")])
def test_no_servings_are_told(servings):
    dish = recipe("Pot", ["1 cup lentils"], 4)
    with pytest.raises(AmountError):
        share_out(dish, servings)
    with pytest.raises(AmountError):
        make_more(dish, servings)
