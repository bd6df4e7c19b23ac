"""As bought, edible, drained, cooked."""

import numpy as np
import pytest

from kit.errors import AmountError, UnknownNameError
from kit.food.composition import bundled_foods, food_from
from kit.food.cooking import drained_share, edible_grams, retention, treatments, volume_yield, weight_yield
from kit.food.nutrients import nutrient_index

TABLE = bundled_foods()


@pytest.mark.parametrize("refuse", [-0.1, 1.0, float("nan")])
def test_refuse_is_a_fraction(refuse):
    with pytest.raises(AmountError, match="give a fraction from 0 to below 1"):
        edible_grams(100, refuse)


def test_dry_matter_is_the_same_before_and_after():
    dry, cooked = TABLE["lentils-dry"], TABLE["lentils-boiled"]
    assert weight_yield(dry, cooked) * (100 - cooked["water"]) == pytest.approx(100 - dry["water"])


def test_a_food_without_a_water_value_has_no_yield():
    with pytest.raises(AmountError, match="a water value is missing"):
        weight_yield(TABLE["lentils-dry"], food_from({"protein": 8}, "stew"))


def test_a_food_without_a_cup_has_no_volume_yield():
    with pytest.raises(AmountError, match="no weight for a cup"):
        volume_yield(TABLE["lentils-dry"], food_from({"water": 70}, "stew"))


def test_the_drained_share_is_of_the_can_the_table_knows():
    share, source = drained_share(TABLE["chickpeas-canned-drained"])
    assert share == pytest.approx(253 / 448)  # USDA SR26 16358 and 16360
    assert "SR26" in source


def test_without_one_it_is_what_is_usual():
    assert drained_share(TABLE["black-beans-canned"]) == (0.60, "common practice")


def test_every_family_of_the_table_has_a_treatment():
    families = {food.retention for food in TABLE.values() if food.retention}
    assert all(treatments(family) for family in families)


def test_nothing_is_gained_by_cooking():
    for code in treatments():
        kept = retention(code)
        assert ((kept > 0) & (kept <= 1)).all()
        assert kept[nutrient_index("energy")] == 1


def test_an_unknown_treatment_is_told():
    with pytest.raises(UnknownNameError, match="cooking treatment"):
        retention("microwaved twice")


def test_a_retention_has_one_factor_a_nutrient():
    assert {retention(code).shape for code in treatments()} == {np.shape(TABLE["salt"].per_100g)}
