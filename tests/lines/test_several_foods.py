"""Several foods on one line."""

import pytest

from kit.lines.several_foods import parts_of


@pytest.mark.parametrize(
    ("line", "parts"),
    [
        ("2 tbsp each parsley and chives, chopped", ["2 tbsp parsley, chopped", "2 tbsp chives, chopped"]),
        ("1 tsp each: cumin, coriander and turmeric", ["1 tsp cumin", "1 tsp coriander", "1 tsp turmeric"]),
        ("cumin and paprika, 1 tsp each", ["1 tsp cumin", "1 tsp paprika"]),
        ("1 tbsp cornstarch plus 2 tbsp water", ["1 tbsp cornstarch", "2 tbsp water"]),
        (
            "8 pieces chicken, skinless (4 breasts, 4 drumsticks)",
            ["4 chicken breasts, skinless", "4 chicken drumsticks, skinless"],
        ),
        ("For the salad: 2 cups arugula", ["2 cups arugula"]),
        ("Olive oil: 2 tbsp", ["Olive oil: 2 tbsp"]),
        ("1 cup onion, peeled and chopped", ["1 cup onion, peeled and chopped"]),
    ],
)
def test_each_food_gets_its_amount_and_what_is_done_to_it(line, parts):
    assert [part for part, _ in parts_of(line)] == parts


def test_juice_and_zest_of_a_fruit_are_two():
    assert list(parts_of("zest and juice of 1 lime")) == [("1 lime", "zest"), ("1 lime", "juice")]
