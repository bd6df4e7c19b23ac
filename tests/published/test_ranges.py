"""Ranges of a dish against a general library and against chance itself."""

import numpy as np
import pytest
from hypothesis import given, settings
from strategies import dishes
from uncertainties import ufloat

from kit.food.nutrients import nutrient_index
from kit.meal.certainty import Z90, composition_sd, ranges, total_sd
from kit.meal.nutrition import nutrition
from kit.meal.recipe import recipe

POT = recipe(
    "Lentil pot",
    [
        "1 1/2 cups lentils",
        "2 carrots, diced",
        "1 large onion, chopped",
        "2 tbsp olive oil",
        "1 tsp salt",
        "3/4 cup feta",
    ],
    servings=4,
)
NEARLY_NOTHING = 1e-12  # the package asks for a deviation above 0
NUTRIENTS = ("energy", "protein", "fat", "fiber", "sodium", "vitamin_c")


@settings(max_examples=40, deadline=None)
@given(dishes(most=6))
def test_the_standard_deviation_is_the_one_the_uncertainties_package_gives(dish):
    """The package multiplies to first order; the product of the two relative deviations of a part comes on top."""
    numbers, place = nutrition(dish), nutrient_index("protein")
    total = 0
    for part in dish.ingredients:
        held = np.nan_to_num(part.food["protein"])
        amount = ufloat(part.grams, max(part.relative_sd * part.grams, NEARLY_NOTHING))
        content = ufloat(held, max(_sd(part, place) * held, NEARLY_NOTHING))
        total = total + amount * content / (100 * dish.servings)
    content_sd = np.stack([composition_sd(part.food) for part in dish.ingredients])
    ours = total_sd(numbers.contributions, [part.relative_sd for part in dish.ingredients], content_sd)[place]
    both = [part.relative_sd * _sd(part, place) for part in dish.ingredients]
    second_order = float(np.linalg.norm(np.nan_to_num(numbers.contributions[:, place]) * both))
    assert ours == pytest.approx(np.hypot(total.std_dev, second_order), rel=1e-6, abs=1e-9)


def _sd(part, place):
    return float(composition_sd(part.food)[place])


@pytest.mark.parametrize("name", NUTRIENTS)
def test_the_range_holds_nine_of_ten_dishes_made_by_chance(name):
    rng = np.random.default_rng(20140601)
    numbers, place = nutrition(POT), nutrient_index(name)
    size = (40_000, len(POT.ingredients))
    amount_sd = np.array([part.relative_sd for part in POT.ingredients])
    content_sd = np.array([_sd(part, place) for part in POT.ingredients])
    chance = rng.normal(1, amount_sd, size) * rng.normal(1, content_sd, size)
    totals = (chance * np.nan_to_num(numbers.contributions[:, place])).sum(axis=1)
    low, high = (end[place] for end in ranges(numbers))
    if numbers.up_to[place]:  # the low end is lower, by what cooking may take; the high end is that of the table
        assert np.mean(totals <= high) == pytest.approx(0.95, abs=0.015)
        assert np.mean(totals >= low) > 0.95
    else:
        assert np.mean((totals >= low) & (totals <= high)) == pytest.approx(0.90, abs=0.01)
    assert totals.std() == pytest.approx((high - numbers.per_serving[place]) / Z90, rel=0.02)
    assert totals.mean() == pytest.approx(numbers.per_serving[place], rel=0.005)


def test_ninety_of_a_hundred_lie_within_z():
    # Standard normal table: 1.645 standard deviations hold 90 %.
    assert pytest.approx(1.645, abs=0.0005) == Z90
