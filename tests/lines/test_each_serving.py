"""Amounts for one serving are asked about, never taken for the whole recipe's."""

import pytest

from kit.lines.each_serving import for_each_serving
from kit.lines.reader import read
from kit.lines.recipe_text import read_recipe


@pytest.mark.parametrize(
    ("line", "part", "one"),
    [
        ("1 tbsp chia seeds per bowl", "", "per bowl"),
        ("1 large egg for each person", "", "for each person"),
        ("1/2 cup cooked brown rice per serving", "", "per serving"),
        ("1 to 2 tablespoons plain yogurt per serving", "", "per serving"),
        ("1/4 cup granola", "Toppings (per bowl)", "per bowl"),
        ("1 oz feta, crumbled", "For each plate", "For each plate"),
        ("4 cod fillets (5 ounces each), 1 per person", "", ""),
        ("1 1/2 lb cod (about 4 oz per person)", "", ""),
        ("1 pound pasta, 2 ounces per serving", "", ""),
        ("2 tbsp olive oil", "Dressing (makes 2 tbsp per serving)", ""),
        ("2 tbsp olive oil", "For the dressing", ""),
        ("2 cups frozen peppers", "", ""),
    ],
)
def test_it_is_told_when_an_amount_is_that_of_one_serving(line, part, one):
    assert for_each_serving(line, part) == one


def test_an_amount_for_one_serving_is_asked_and_the_food_is_kept():
    reading = read("1 slice whole wheat bread per serving")
    assert (reading.is_open, reading.food.key, reading.grams) == (True, "bread-whole-wheat", None)
    assert '"per serving" is the amount for one' in reading.problem


def test_what_stands_below_a_heading_for_one_serving_is_asked_and_the_rest_is_read():
    text = "Oat bowls\nServes 4\nBase\n2 cups rolled oats\n4 cups milk\nToppings (per bowl)\n1 tablespoon chia seeds\n"
    assert [(line.line, line.is_open) for line in read_recipe(text).readings] == [
        ("2 cups rolled oats", False),
        ("4 cups milk", False),
        ("1 tablespoon chia seeds", True),
    ]
