"""The bundled talks against the sums of USDA SR26, worked apart from the kit.

Grams are those of SR26's household measures (a cup of pearled barley 200 g, a medium onion 110 g, ...), or net weights;
drained cans and the weights marked so are common practice. Contents per 100 g are read from SR26 by its number.
"""

import json
import subprocess
import sys

import pytest

# (grams, protein, fat, carbohydrate, fiber, sodium per 100 g); SR26 numbers beside.
OUNCE = 28.349523125  # [g], NIST Handbook 44
TALKS = {
    "split_pea_soup": (
        8,
        [
            (2 * 197, 24.55, 1.16, 60.37, 25.5, 15),  # 16085 split peas, cup 197 g
            (2 * 13.5, 0, 100, 0, 0, 2),  # 04053 olive oil, tablespoon 13.5 g
            (150, 1.10, 0.10, 9.34, 1.7, 4),  # 11282 onion, large 150 g
            (3 * 61, 0.93, 0.24, 9.58, 2.8, 69),  # 11124 carrots, medium 61 g
            (2 * 40, 0.69, 0.17, 2.97, 1.6, 80),  # 11143 celery, medium stalk 40 g
            (4 * 3, 6.36, 0.50, 33.06, 2.1, 17),  # 11215 garlic, clove 3 g
            (6.8, 14.14, 12.89, 53.99, 34.9, 68),  # 02028 paprika, tablespoon 6.8 g
            (2.1, 17.81, 22.27, 44.24, 10.5, 168),  # 02014 cumin seed, teaspoon 2.1 g
            (28 * OUNCE, 1.64, 0.28, 7.29, 1.9, 186),  # 11693 crushed tomatoes, 28 oz
            (
                15 * OUNCE * 0.60,
                2.46,
                1.11,
                17.77,
                1.9,
                186,
            ),  # 11172 corn, drained: 60 % of net weight, common practice
            (8 * 237, 0, 0, 0, 0, 4),  # 14411 tap water, cup 237 g
            (9, 0, 0, 0, 0, 38758),  # 02047 salt, teaspoon 6 g
            (4 * 30, 2.86, 0.39, 3.63, 2.2, 79),  # 11457 spinach, cup 30 g
            (15.25, 0.35, 0.24, 6.90, 0.3, 1),  # 09152 lemon juice, fluid ounce 30.5 g
        ],
    ),
    "barley_squash_box": (
        6,
        [
            (1.5 * 200, 9.91, 1.16, 77.72, 15.6, 9),  # 20005 barley, pearled, cup 200 g
            (6 * 140, 1.00, 0.10, 11.69, 2.0, 4),  # 11485 butternut squash, cup of cubes 140 g
            (2 * 110, 1.10, 0.10, 9.34, 1.7, 4),  # 11282 onions, medium 110 g
            (3 * 13.5, 0, 100, 0, 0, 2),  # 04053 olive oil, tablespoon 13.5 g
            (3, 0, 0, 0, 0, 38758),  # 02047 salt, teaspoon 6 g
            (15 * OUNCE * 266 / 436, 8.12, 0.93, 20.80, 7.5, 208),  # 16335 kidney beans; can 436 g, drained 266 g
            (4 * 67, 4.28, 0.93, 8.75, 3.6, 38),  # 11233 kale, cup 67 g
            (30.5, 0.35, 0.24, 6.90, 0.3, 1),  # 09152 lemon juice, fluid ounce 30.5 g
            (20, 0.04, 0.06, 67.04, 0, 12),  # 19353 maple syrup, tablespoon 20 g
            (2 * 5, 4.37, 4.01, 5.33, 3.3, 1135),  # 02046 yellow mustard, teaspoon 5 g
            (3, 6.36, 0.50, 33.06, 2.1, 17),  # 11215 garlic, clove 3 g
            (0.75 * 150, 14.21, 21.28, 4.09, 0, 917),  # 01019 feta, cup crumbled 150 g
            (0.5 * 117, 15.23, 65.21, 13.71, 6.7, 2),  # 12155 walnuts, cup chopped 117 g
            (0.25 * 60, 2.97, 0.79, 6.33, 3.3, 56),  # 11297 parsley, cup chopped 60 g
        ],
    ),
    "pear_oat_jars": (
        4,
        [
            (2 * 81, 13.15, 6.52, 67.70, 10.1, 6),  # 08120 oats, cup 81 g
            (2 * 244, 3.37, 0.97, 4.99, 0, 44),  # 01082 milk, 1 % fat, cup 244 g
            (245, 5.25, 1.55, 7.04, 0, 70),  # 01117 yogurt, low fat, cup 245 g
            (4 * 7.0, 18.29, 42.16, 28.88, 27.3, 30),  # 12220 flaxseed, tablespoon ground 7.0 g
            (2.6, 3.99, 1.24, 80.59, 53.1, 10),  # 02010 cinnamon, teaspoon 2.6 g
            (6 / 16, 0, 0, 0, 0, 38758),  # 02047 salt, a sixteenth of a teaspoon of 6 g
            (2 * 178, 0.36, 0.14, 15.23, 3.1, 1),  # 09252 pears, medium 178 g
            (145 / 3, 3.07, 0.46, 79.18, 3.7, 11),  # 09298 raisins, cup 145 g
            (129 / 4, 30.23, 49.05, 10.71, 6.0, 7),  # 12014 pumpkin seed kernels, cup 129 g
            (2 * 21, 0.30, 0, 82.40, 0.2, 4),  # 19296 honey, tablespoon 21 g
        ],
    ),
}


@pytest.mark.parametrize("name", sorted(TALKS))
def test_a_serving_is_grams_times_content_over_servings(name):
    servings, rows = TALKS[name]
    command = [sys.executable, "-m", "kit", "numbers", name, "--json"]
    numbers = json.loads(subprocess.run(command, capture_output=True, text=True, check=True).stdout)["nutrients"]
    for place, nutrient in enumerate(("protein", "fat", "carbohydrate", "fiber", "sodium"), 1):
        expected = sum(row[0] * row[place] for row in rows) / 100 / servings
        assert numbers[nutrient]["value"] == pytest.approx(expected, rel=0.005), nutrient


# Vitamin C per 100 g, SR26, and what of it is left: USDA Table of Nutrient Retention Factors, Release 6, by its code.
VITAMIN_C = [
    (6 * 140, 21.0, 0.85),  # 11485 butternut squash, roasted: 3771, other vegetables, baked
    (2 * 110, 7.4, 0.85),  # 11282 onions, roasted: 3771
    (15 * OUNCE * 266 / 436, 0.2, 1.0),  # 16335 kidney beans, cooked already
    (4 * 67, 120.0, 1.0),  # 11233 kale, rubbed with the dressing and eaten raw
    (30.5, 38.7, 1.0),  # 09152 lemon juice, in the dressing
    (2 * 5, 1.5, 1.0),  # 02046 mustard
    (3, 31.2, 1.0),  # 11215 garlic, grated into the dressing
    (0.5 * 117, 1.3, 1.0),  # 12155 walnuts, on top
    (0.25 * 60, 133.0, 1.0),  # 11297 parsley, on top
]


def test_a_vitamin_is_what_cooking_leaves_of_it():
    """Without the oven the box would hold 91.4 mg: its squash and onions lose 15 % of their vitamin C."""
    command = [sys.executable, "-m", "kit", "numbers", "barley_squash_box", "--json"]
    numbers = json.loads(subprocess.run(command, capture_output=True, text=True, check=True).stdout)["nutrients"]
    expected = sum(grams * content * kept for grams, content, kept in VITAMIN_C) / 100 / 6
    assert numbers["vitamin_c"]["value"] == pytest.approx(expected, rel=0.005)
    raw = sum(grams * content for grams, content, _ in VITAMIN_C) / 100 / 6
    assert raw == pytest.approx(91.4, abs=0.05)
