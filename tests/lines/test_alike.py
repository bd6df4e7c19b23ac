"""Whether two foods are alike in the numbers that matter."""

import pytest

from kit.food.composition import bundled_foods
from kit.lines.alike import unlike

TABLE = bundled_foods()


@pytest.mark.parametrize("key", ["lentils-dry", "olive-oil", "salt"])
def test_a_food_is_like_itself(key):
    assert unlike(TABLE[key], TABLE[key]) == ()


def test_brown_rice_has_more_fiber_than_white():
    assert "fiber" in unlike(TABLE["rice-brown-dry"], TABLE["rice-white-dry"])


def test_the_difference_is_the_same_either_way():
    pairs = [(TABLE["salt"], TABLE["sugar-white"]), (TABLE["milk-whole"], TABLE["milk-skim"])]
    assert all(unlike(one, other) == unlike(other, one) for one, other in pairs)
