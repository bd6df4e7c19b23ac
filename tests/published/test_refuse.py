"""The inedible part of vegetables and fruit as bought: USDA SR26, refuse, percent as printed.

Of cauliflower SR26 prints 61 % for heads with all their leaves, as they are cut; shops sell them trimmed, of which the
USDA Food Buying Guide gives 38 % (from memory).
"""

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
    "cauliflower-raw": 38,
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


LEAVES = ("spinach-raw", "kale-raw", "parsley-fresh", "lettuce-iceberg-raw")  # by weight they are washed and picked


@for_each("key", sorted(REFUSE.keys() - set(LEAVES)))
def test_a_kilo_bought_is_less_on_the_plate(key):
    reading = read(f"1 kg {FOODS[key].other_names[0]}", food=key)
    assert reading.grams == pytest.approx(1000 - 10 * REFUSE[key])


@pytest.mark.parametrize("line", ["1 avocado", "1 medium banana", "1 cup almonds", "1 cup chopped onion"])
def test_household_measures_weigh_the_edible_part_already(line):
    reading = read(line)
    assert reading.food.refuse > 0
    assert "refuse" not in reading.how


@pytest.mark.parametrize(
    "line",
    [
        "1 kg spinach",
        "1 kg unpeeled potatoes",
        "1 kg small potatoes",
        "1 kg new potatoes",
        "1 kg unpeeled carrots",
        "1 kg potatoes, skin on",
    ],
)
def test_nothing_is_thrown_away_of_leaves_by_weight_and_of_what_keeps_its_skin(line):
    assert read(line).grams == pytest.approx(1000)


@pytest.mark.parametrize("line", ["1 kg shell-on shrimp", "1 kg shrimp, unpeeled"])
def test_shrimp_in_their_shells_lose_them(line):
    assert read(line).grams == pytest.approx(870)  # SR26 15270: tail and shell 13 %


@pytest.mark.parametrize("line", ["1 kg broccoli crowns", "1 kg cauliflower florets", "1 kg peeled shrimp"])
def test_nothing_is_thrown_away_twice(line):
    assert read(line).grams == pytest.approx(1000)


@pytest.mark.parametrize("line", ["1 kg skinless chicken drumsticks", "1 kg chicken drumsticks, skin removed"])
def test_a_skinless_drumstick_loses_its_bone_and_its_skin_not_twice(line):
    assert read(line).grams == pytest.approx(670)  # 05071: bone and cartilage 33 %, skin and separable fat 9 %
