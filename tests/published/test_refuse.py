"""The inedible part of vegetables and fruit as bought: USDA SR26, refuse, percent as printed."""

import pytest
from each import for_each

from kit.food.composition import bundled_foods
from kit.lines.reader import read

FOODS = bundled_foods()
REFUSE = {
    "onions-raw": 10,
    "carrots-raw": 11,
    "garlic-raw": 13,
    "celery-raw": 11,
    "bell-pepper-red-raw": 18,
    "potatoes-raw": 25,
    "sweet-potatoes-raw": 28,
    "broccoli-raw": 39,
    "cauliflower-raw": 61,
    "cabbage-green-raw": 20,
    "spinach-raw": 28,
    "kale-raw": 39,
    "eggplant-raw": 19,
    "zucchini-raw": 5,
    "tomatoes-raw": 9,
    "pumpkin-raw": 30,
    "butternut-squash-raw": 16,
    "leeks-raw": 56,
    "spring-onions-raw": 4,
    "parsley-fresh": 5,
    "lettuce-iceberg-raw": 5,
    "cucumber-raw": 3,
    "radishes-raw": 10,
    "beets-raw": 33,
    "mushrooms-white-raw": 3,
    "artichoke-raw": 60,
    "asparagus-raw": 47,
    "apples-raw": 10,
    "lemons-raw": 47,
    "limes-raw": 16,
    "avocado-raw": 26,
    "oranges-raw": 27,
    "watermelon-raw": 48,
    "mangoes-raw": 29,
    "strawberries-raw": 6,
    "bananas-raw": 36,
}


@for_each("key", REFUSE)
def test_the_table_has_the_refuse_that_was_printed(key):
    assert FOODS[key].refuse == pytest.approx(REFUSE[key] / 100)


@for_each("key", REFUSE)
def test_a_kilo_bought_is_less_on_the_plate(key):
    reading = read(f"1 kg {FOODS[key].other_names[0]}", food=key)
    assert reading.grams == pytest.approx(1000 - 10 * REFUSE[key])


@pytest.mark.parametrize("line", ["1 avocado", "1 medium banana", "1 cup almonds", "1 cup chopped onion"])
def test_household_measures_weigh_the_edible_part_already(line):
    reading = read(line)
    assert reading.food.refuse > 0
    assert "refuse" not in reading.how
