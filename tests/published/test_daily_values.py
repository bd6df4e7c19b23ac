"""Daily values, distribution ranges and reference amounts as they were published."""

import pytest
from each import for_each

from kit.food.nutrients import nutrients
from kit.rules.reference import daily_values, distribution_ranges, reference_amounts

# 21 CFR 101.9(c)(8)(iv), 2016 revision; 17 of these agree with J Nutr 2013;143:1999, table 2.
RDI = {
    "vitamin_a": 900,
    "vitamin_c": 90,
    "calcium": 1300,
    "iron": 18,
    "vitamin_d": 20,
    "vitamin_e": 15,
    "vitamin_k": 120,
    "thiamin": 1.2,
    "riboflavin": 1.3,
    "niacin": 16,
    "vitamin_b6": 1.7,
    "folate": 400,
    "vitamin_b12": 2.4,
    "pantothenic_acid": 5,
    "phosphorus": 1250,
    "magnesium": 420,
    "zinc": 11,
    "selenium": 55,
    "copper": 0.9,
    "manganese": 2.3,
    "potassium": 4700,
    "choline": 550,
}
# 21 CFR 101.9(c)(9), 2016 revision.
DRV = {
    "fat": 78,
    "saturated_fat": 20,
    "cholesterol": 300,
    "carbohydrate": 275,
    "sodium": 2300,
    "fiber": 28,
    "protein": 50,
}
# The values of 1993 to 2016, in the units of today where they did not change: not to be used any more.
SUPERSEDED = {
    "fat": 65,
    "carbohydrate": 300,
    "fiber": 25,
    "sodium": 2400,
    "potassium": 3500,
    "calcium": 1000,
    "vitamin_c": 60,
    "magnesium": 400,
    "zinc": 15,
    "vitamin_b12": 6,
}
# Regulation (EU) 1169/2011, Annex XIII, Official Journal L 304, p. 61; salt 6 g is 2,400 mg of sodium (Annex I).
EU = {
    "vitamin_a": 800,
    "vitamin_d": 5,
    "vitamin_e": 12,
    "vitamin_k": 75,
    "vitamin_c": 80,
    "thiamin": 1.1,
    "riboflavin": 1.4,
    "niacin": 16,
    "vitamin_b6": 1.4,
    "folate": 200,
    "vitamin_b12": 2.5,
    "pantothenic_acid": 6,
    "potassium": 2000,
    "calcium": 800,
    "phosphorus": 700,
    "magnesium": 375,
    "iron": 14,
    "zinc": 10,
    "copper": 1,
    "manganese": 2,
    "selenium": 55,
    "energy": 2000,
    "fat": 70,
    "saturated_fat": 20,
    "carbohydrate": 260,
    "sugars": 90,
    "protein": 50,
    "sodium": 2400,
}


@pytest.mark.parametrize(("rules", "published"), [("us", RDI | DRV), ("eu", EU)])
def test_each_value_is_the_published_one_and_none_is_missing(rules, published):
    assert {name: value.amount for name, value in daily_values(rules).items()} == published


@pytest.mark.parametrize("rules", ["us", "eu"])
def test_each_value_is_in_the_unit_of_its_nutrient(rules):
    assert {name: value.unit for name, value in daily_values(rules).items()} == {
        name: nutrients()[name].unit for name in daily_values(rules)
    }


@for_each(("name", "old"), SUPERSEDED.items())
def test_no_value_of_before_2016_is_left(name, old):
    assert daily_values()[name].amount != old


def test_daily_values_share_energy_as_the_rule_that_set_them_says():
    """50 g protein, 78 g fat and 275 g carbohydrate are 10, 35 and 55 % of 2,000 kcal."""
    # 81 FR 33742 (27 May 2016): 35 % of energy from fat, 10 % from saturated fat and from protein; the general factors
    # 4, 9, 4 are those of 101.9(c)(1)(i)(B). Whole percents are printed.
    day = {name: value.amount for name, value in daily_values().items()}
    shares = [day["protein"] * 4 / 2000, day["fat"] * 9 / 2000, day["carbohydrate"] * 4 / 2000]
    assert shares == pytest.approx([0.10, 0.35, 0.55], abs=0.005)
    assert day["saturated_fat"] * 9 / 2000 == pytest.approx(0.10, abs=0.015)  # from memory: 22 g rounded down to 20 g
    assert day["fiber"] == 14 * 2  # from memory: 14 g for 1,000 kcal (IOM 2002/2005)


@pytest.mark.parametrize(
    ("who", "protein", "fat", "carbohydrate"),
    [
        ("adults", (0.10, 0.35), (0.20, 0.35), (0.45, 0.65)),
        ("4-18 y", (0.10, 0.30), (0.25, 0.35), (0.45, 0.65)),
        ("1-3 y", (0.05, 0.20), (0.30, 0.40), (0.45, 0.65)),
    ],
)
def test_distribution_ranges_are_those_of_the_institute_of_medicine(who, protein, fat, carbohydrate):
    # IOM, Dietary Reference Intakes for Energy, Carbohydrate, Fiber, Fat ..., 2002/2005.
    assert distribution_ranges(who) == {"protein": protein, "fat": fat, "carbohydrate": carbohydrate}


def test_distribution_ranges_leave_room_for_a_whole():
    for who in ("adults", "4-18 y", "1-3 y"):
        lows, highs = zip(*distribution_ranges(who).values(), strict=True)
        assert sum(lows) <= 1 <= sum(highs)


@for_each(
    ("reference", "amount", "unit"),
    [
        # 9 CFR 317.312 and 381.412
        ("egg_mixture", 110, "g"),
        ("meat_cooked", 85, "g"),
        ("meat_raw", 114, "g"),
        ("meat_canned", 55, "g"),
        ("sausage", 55, "g"),
        ("bacon_cooked", 15, "g"),
        ("bacon_raw", 54, "g"),
        # 21 CFR 101.12(b), table 2, 2016 revision, as transcribed by others
        ("beans_canned", 130, "g"),
        ("beans_prepared", 90, "g"),
        ("beans_dry", 35, "g"),
        ("tofu_tempeh", 85, "g"),
        ("grain_prepared", 140, "g"),
        ("grain_dry", 45, "g"),
        ("pasta_dry", 55, "g"),
        ("bread", 50, "g"),
        ("bagel_muffin", 110, "g"),
        ("tortilla_biscuit", 55, "g"),
        ("nuts_seeds", 30, "g"),
        ("nut_butter", 2, "tbsp"),
        ("milk", 240, "mL"),
        ("yogurt", 170, "g"),
        ("cheese", 30, "g"),
        ("cottage_cheese", 110, "g"),
        ("grated_hard_cheese", 5, "g"),
        ("butter_oil", 1, "tbsp"),
        ("egg", 50, "g"),
        ("fish_raw", 110, "g"),
        ("fish_cooked", 85, "g"),
        ("fruit", 140, "g"),
        ("dried_fruit", 40, "g"),
        ("vegetables", 85, "g"),
        ("vegetables_canned", 130, "g"),
        ("potatoes", 110, "g"),
        ("potatoes_canned", 160, "g"),
        ("soup", 245, "g"),
        ("mixed_dish", 1, "cup"),
        ("salad", 100, "g"),
        ("sugar", 8, "g"),
        ("salt", 0.25, "tsp"),
        ("tomato_paste", 30, "g"),  # from memory
        ("tomato_sauce", 60, "g"),  # from memory
        ("sprouts", 0.25, "cup"),  # from memory
    ],
)
def test_reference_amounts_are_those_of_the_regulation(reference, amount, unit):
    found = reference_amounts()[reference]
    assert (found.amount, found.unit) == (amount, unit)
