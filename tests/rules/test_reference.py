"""Reference values as the rest of the kit asks for them."""

import numpy as np
import pytest

from kit.errors import AmountError, UnknownNameError
from kit.food.composition import food_from, foods
from kit.food.daily_values import vitamins_and_minerals
from kit.food.measure import Measure
from kit.food.nutrients import nutrient_index, nutrients
from kit.rules.reference import (
    daily_values,
    distribution_ranges,
    reference_amount,
    reference_amounts,
    reference_of,
    share_of_day,
)


def food(reference, *measures):
    return food_from({}, key="given", name="Given food", reference=reference, measures=tuple(measures))


def test_a_weight_is_taken_as_it_stands():
    assert reference_amount(food("beans_prepared", Measure("cup", "", 198.0, "SR26 1"))) == 90


def test_a_spoon_is_weighed_by_the_foods_own_spoon():
    oil = food("butter_oil", Measure("cup", "", 216.0, "SR26 1"), Measure("tbsp", "", 13.5, "SR26 2"))
    assert reference_amount(oil) == pytest.approx(13.5)


def test_without_that_spoon_the_cup_is_scaled_by_exact_volumes():
    assert reference_amount(food("butter_oil", Measure("cup", "", 216.0, "SR26 1"))) == pytest.approx(216 / 16)
    assert reference_amount(food("spice", Measure("tbsp", "", 6.0, "SR26 1"))) == pytest.approx(6 / 12)


def test_millilitres_become_grams_by_the_foods_own_cup():
    milk = food("milk", Measure("cup", "", 244.0, "SR26 1"))
    assert reference_amount(milk) == pytest.approx(244 * 240 / 236.5882365)


def test_the_food_as_it_is_comes_before_any_cut():
    sprouts = food("sprouts", Measure("cup", "chopped", 120.0, "SR26 1"), Measure("tbsp", "", 2.5, "SR26 2"))
    assert reference_amount(sprouts) == pytest.approx(2.5 * 4)
    assert reference_amount(food("sprouts", Measure("cup", "chopped", 120.0, "SR26 1"))) == pytest.approx(30)


def test_a_volume_without_a_measure_of_volume_is_refused_with_what_to_add():
    with pytest.raises(AmountError, match=r"Given food: its reference amount is 1 tbsp.*add what a cup of it weighs"):
        reference_amount(food("butter_oil", Measure("pat", "", 5.0, "SR26 1")))


def test_a_food_without_a_reference_amount_is_refused():
    with pytest.raises(AmountError, match="Given food has no reference amount"):
        reference_amount(food(""))


def test_a_misspelt_reference_amount_names_the_nearest():
    with pytest.raises(UnknownNameError, match='food "given": no reference amount "yoghurt"; did you mean "yogurt"'):
        reference_amount(food("yoghurt"))


@pytest.mark.parametrize(
    ("reference", "small"),
    [
        ("nuts_seeds", True),  # 30 g, just at the limit
        ("beans_dry", False),  # 35 g, just over
        ("nut_butter", True),  # 2 tbsp, just at the limit
        ("half_and_half", True),  # 30 mL, which a label writes as 2 tbsp
        ("sprouts", False),  # 1/4 cup
        ("salt", True),
        ("milk", False),
    ],
)
def test_a_reference_amount_is_small_up_to_30_g_or_2_tablespoons(reference, small):
    assert reference_amounts()[reference].is_small is small


def test_reference_of_tells_unit_and_source():
    found = reference_of(food("meat_cooked"))
    assert (found.amount, found.unit, found.source) == (85, "g", "9 CFR 317.312 and 381.412")


def test_share_of_day_is_amount_over_daily_value_and_unknown_where_there_is_none():
    values = np.full(len(nutrients()), np.nan)
    values[[nutrient_index("fiber"), nutrient_index("sugars"), nutrient_index("iron")]] = 14, 10, 0
    shares = share_of_day(values)
    assert shares[nutrient_index("fiber")] == pytest.approx(0.5)
    assert shares[nutrient_index("iron")] == 0
    assert np.isnan(shares[nutrient_index("sugars")])  # no daily value for all sugars
    assert np.isnan(shares[nutrient_index("sodium")])  # amount missing


def test_share_of_day_goes_through_any_leading_axes():
    values = np.ones((3, 2, len(nutrients())))
    shares = share_of_day(values, rules="eu")
    assert shares.shape == values.shape
    assert shares[2, 1, nutrient_index("energy")] == pytest.approx(1 / 2000)


def test_share_of_day_refuses_another_number_of_nutrients():
    with pytest.raises(AmountError, match=r"values have shape \(3,\)"):
        share_of_day([1, 2, 3])


def test_unknown_rules_and_groups_are_named():
    with pytest.raises(UnknownNameError, match='no set of rules "uk"'):
        daily_values("uk")
    with pytest.raises(UnknownNameError, match='no group with distribution ranges "adult"; did you mean "adults"'):
        distribution_ranges("adult")


def test_tables_cannot_be_changed_by_a_reader():
    with pytest.raises(TypeError):
        daily_values()["fiber"] = None  # type: ignore[index]
    with pytest.raises(TypeError):
        distribution_ranges()["fat"] = (0, 1)  # type: ignore[index]


def test_vitamins_and_minerals_leave_out_what_is_to_be_limited():
    for rules in ("us", "eu"):
        found = vitamins_and_minerals(rules)
        assert {"iron", "potassium", "folate"} <= set(found)
        assert not {"sodium", "cholesterol", "protein", "fiber"} & set(found)


# A food of the table, and the amount it is customarily eaten in: grams, or a part of a cup; None where it has none.
EATEN_IN = {
    "milk-dry-skim": "milk_dry",  # powders by what they make: 21 CFR 101.12(c), from memory
    "bouillon-chicken-cube": "bouillon",
    "bouillon-beef-powder": "bouillon",
    "coffee-instant": "coffee_dry",
    "lemon-zest": "vegetable_garnish",
    "orange-zest": "vegetable_garnish",
    "pepperoni": "meat_dried",  # 30 g: 9 CFR 317.312
    "salami": "meat_dried",
    "sausage-pork": "sausage_raw",  # 75 g, from memory
    "sausage-pork-cooked": "sausage",
    "worcestershire-sauce": "minor_condiment",
    "chili-sauce-tomato": "dip",
    "bacon-canadian": "sausage",
    "tomatoes-sun-dried-in-oil-drained": "dried_vegetables_oil",
    "wine-red": "",  # alcoholic drinks have none
    "beer": "",
    "spirits": "",
}


def test_foods_are_eaten_in_the_amounts_of_their_kind():
    found = {key: foods()[key].reference for key in EATEN_IN}
    assert found == EATEN_IN
    grams = {"milk_dry": 23, "bouillon": 4, "coffee_dry": 3.6, "meat_dried": 30, "sausage_raw": 75, "sausage": 55}
    grams |= {"vegetable_garnish": 4, "dried_vegetables_oil": 10}
    assert {name: reference_amounts()[name].amount for name in grams} == grams


def test_every_food_that_is_eaten_has_a_known_reference_amount_that_can_be_weighed():
    wrong = []
    for food in foods().values():
        if food.reference:
            try:
                reference_amount(food)
            except AmountError as fault:
                wrong.append(str(fault))
    assert wrong == []
