"""What a piece weighs whose length or width is told; the sizes are those of USDA SR26."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from kit.food.amounts import Count
from kit.food.composition import bundled_foods
from kit.lines.by_length import of_length
from kit.lines.nearest_measure import Written
from kit.lines.reader import read_each

SIZES = (  # a line; its grams, or what is asked
    ("4 (4-inch) whole-wheat pitas", 4 * 28),  # SR26 18042, small
    ("2 (6 1/2-inch) pitas", 2 * 60),  # SR26 18041, large
    ("1 3-inch bagel", 69),  # SR26 18001, small
    ("1 3-inch apple", 182),  # SR26 09003, medium
    ("1 (6-inch) head cabbage", 908),  # SR26 11109, medium
    ("1 6-inch cucumber", 301 * (6 / 8.25) ** 2),  # SR26 11205, worked out from the large one
    ("6 (5-inch) corn tortillas", 6 * 24 * (5 / 6) ** 2),
    ("1 (4-inch) piece daikon, peeled", 338 * 4 / 7),  # SR26 11430, cut off a 7-inch one
    ("2-inch piece of ginger", 12),
    ("1/2-inch piece of ginger", 3),
    ("1 (3-inch) cinnamon stick", 3),
    ("4 1-inch-thick pork chops", 4 * 185),  # how thick is no length
    ("2 (1/2-inch-thick) slices red onion", 28),
    ("1 4-inch piece of watermelon", "has no weight for a 4-inch piece"),
    ("1 8-inch baguette", "has no weight for an 8-inch baguette"),  # too far from a usual one
    ("6 3-inch round whole wheat crackers", "has no weight for a 3-inch piece"),
    ("12 2-inch asparagus spears", "has no weight for a 2-inch spear"),
)


def test_a_length_decides_what_a_piece_weighs_or_is_asked_about():
    wrong = []
    for line, expected in SIZES:
        (reading,) = read_each(line)
        if isinstance(expected, str):
            held = reading.is_open and expected in reading.problem
        else:
            held = reading.grams == pytest.approx(expected, rel=0.01)
        if not held:
            wrong.append((line, reading.grams, reading.problem))
    assert wrong == []


@given(inches=st.floats(0.5, 40))
def test_a_longer_one_never_weighs_less(inches):
    table = bundled_foods()
    for key in ("tortilla-flour", "apples-raw", "carrots-raw", "ginger-raw"):
        shorter, longer = (
            of_length(table[key], Written(count=Count(1.0, 1.0, 1.0), length=length))
            for length in (inches, inches * 1.3)
        )
        if shorter and longer:
            assert shorter.measure.grams * shorter.times <= longer.measure.grams * longer.times
