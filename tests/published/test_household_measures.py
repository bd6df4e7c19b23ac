"""What household measures weigh: USDA SR26, grams as printed."""

import pytest
from each import for_each

from kit.lines.reader import read


@for_each(
    ("line", "grams"),
    [
        ("1 cup all-purpose flour", 125),  # 20081
        ("1 cup whole wheat flour", 120),  # 20080
        ("1 cup sugar", 200),  # 19335
        ("1 tsp sugar", 4.2),
        ("1 tbsp olive oil", 13.5),  # 04053
        ("1 tsp olive oil", 4.5),
        ("1 cup olive oil", 216),
        ("1 tsp salt", 6.0),  # 02047
        ("1 tbsp salt", 18),
        ("1 cup chopped onion", 160),  # 11282
        ("1 cup sliced onion", 115),
        ("1 medium onion", 110),
        ("1 cup chopped carrots", 128),  # 11124
        ("1 cup grated carrots", 110),
        ("1 medium carrot", 61),
        ("1 cup dry lentils", 192),  # 16069
        ("1 cup cooked lentils", 198),  # 16070
        ("1 cup dry quinoa", 170),  # 20035
        ("1 cup cooked quinoa", 185),  # 20137
        ("1 cup cooked barley", 157),  # 20006
        ("1 cup cooked spaghetti", 140),  # 20121
        ("1 clove garlic", 3),  # 11215
        ("1 avocado", 201),  # 09037
        ("1 cup whole almonds", 143),  # 12061
    ],
)
def test_a_measure_weighs_what_was_printed(line, grams):
    assert read(line).grams == pytest.approx(grams)


def test_a_dash_of_salt_rounds_to_what_was_printed():
    # 02047 prints 0.4 g for a dash; an eighth of a teaspoon of 6.0 g is 0.75 g, and half of that is a pinch of 0.375 g.
    assert round(read("1 pinch salt").grams, 1) == 0.4


def test_a_clove_of_garlic_is_about_a_teaspoon_minced():
    assert read("1 clove garlic").grams == pytest.approx(read("1 tsp minced garlic").grams, rel=0.1)  # common practice


def test_a_quarter_cup_shared_among_four_is_a_tablespoon_each():
    assert read("1/4 cup tahini").grams / 4 == read("1 tbsp tahini").grams  # NIST Handbook 44: 1 cup is 16 tbsp
