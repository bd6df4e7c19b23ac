"""Energy of the table's foods against the factors printed for them, and against the general factors."""

import pytest
from each import for_each
from scipy import constants

from kit.food.composition import Food, bundled_foods
from kit.rules.reference import daily_values

# Lentils dry and boiled, egg, long-grain white rice dry, almonds, olive oil, apple with skin, lemon, cocoa powder.
# SR26 number, energy printed per 100 g, the food-specific factors of protein, fat and carbohydrate printed beside it.
# [kcal, kcal/g] Both from USDA SR26; the factors are those of USDA Agriculture Handbook 74.
SPECIFIC = [
    ("16069", 343, (3.47, 8.37, 4.07)),
    ("16070", 116, (3.47, 8.37, 4.07)),
    ("01123", 143, (4.36, 9.02, 3.68)),
    ("20044", 365, (3.82, 8.37, 4.16)),
    ("12061", 579, (3.47, 8.37, 4.07)),
    ("04053", 884, (0, 8.84, 0)),
    ("09003", 52, (3.36, 8.37, 3.60)),
    ("09150", 29, (3.36, 8.37, 2.48)),
    ("19165", 228, (1.83, 8.37, 1.33)),
]
# The same foods by the general factors 4, 9, 4 of 21 CFR 101.9(c)(1)(i)(B), and with fiber at 2 kcal as Regulation (EU)
# 1169/2011, Annex XIV, counts it: computed from the protein, fat, carbohydrate and fiber printed in SR26.
GENERAL = [
    ("16069", 353.1, 292.1),
    ("16070", 120.0, 104.2),
    ("01123", 138.7, 138.7),
    ("20044", 354.3, 351.7),
    ("12061", 620.2, 595.2),
    ("04053", 900.0, 900.0),
    ("09003", 57.8, 53.0),
    ("09150", 44.4, 38.8),
    ("19165", 433.3, 366.9),
]


def food(number: str) -> Food:
    return next(food for food in bundled_foods().values() if food.source == f"SR26 {number}")


@for_each(("number", "printed", "factors"), SPECIFIC)
def test_the_table_carries_the_energy_that_its_specific_factors_give(number, printed, factors):
    found = food(number)
    grams = [found[name] for name in ("protein", "fat", "carbohydrate")]
    assert found["energy"] == printed
    assert sum(g * factor for g, factor in zip(grams, factors, strict=True)) == pytest.approx(printed, abs=0.6)


@for_each(("number", "by_4_9_4", "fiber_at_2"), GENERAL)
def test_the_general_factors_give_their_published_estimate(number, by_4_9_4, fiber_at_2):
    found = food(number)
    estimate = 4 * found["protein"] + 9 * found["fat"] + 4 * found["carbohydrate"]
    assert estimate == pytest.approx(by_4_9_4, abs=0.06)
    assert estimate - 2 * found["fiber"] == pytest.approx(fiber_at_2, abs=0.06)


def test_lawful_estimates_of_one_food_may_differ_by_ninety_percent():
    cocoa = food("19165")
    estimate = 4 * cocoa["protein"] + 9 * cocoa["fat"] + 4 * cocoa["carbohydrate"]
    assert estimate / cocoa["energy"] == pytest.approx(1.9, abs=0.01)


def test_the_european_day_is_the_same_in_kilocalories_and_kilojoules():
    # Regulation (EU) 1169/2011, Annex XIII B: 8,400 kJ / 2,000 kcal, printed to the hundred.
    # A kilocalorie is 4.184 kJ (FAO Food and Nutrition Paper 77, 2003).
    assert constants.calorie == pytest.approx(4.184, abs=1e-12)
    assert daily_values("eu")["energy"].amount * constants.calorie == pytest.approx(8400, abs=50)


def test_each_european_factor_in_kilojoules_is_near_its_kilocalories():
    # Regulation (EU) 1169/2011, Annex XIV: the two sums are made apart, each with its own whole factors.
    factors = {"carbohydrate": (17, 4), "protein": (17, 4), "fat": (37, 9), "fiber": (8, 2), "alcohol": (29, 7)}
    for kilojoules, kilocalories in factors.values():
        assert kilojoules == pytest.approx(kilocalories * constants.calorie, rel=0.05)


def test_the_european_kilojoules_of_lentils_come_from_its_own_factors():
    # Computed from SR26: carbohydrate less fiber, as Annex I defines it, by the factors of Annex XIV.
    for number, expected in [("16069", 1225), ("16070", 439)]:
        found = food(number)
        available = found["carbohydrate"] - found["fiber"]
        kilojoules = 17 * found["protein"] + 37 * found["fat"] + 17 * available + 8 * found["fiber"]
        assert kilojoules == pytest.approx(expected, abs=0.5)
