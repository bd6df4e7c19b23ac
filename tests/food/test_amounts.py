"""Numbers as people write them."""

import math

import pytest
from each import for_each
from hypothesis import given
from hypothesis import strategies as st

from kit.food.amounts import Count, plain_characters, read_count


@for_each(
    ("text", "value", "rest"),
    [
        ("2 cups", 2, "cups"),
        ("1 1/2 cups", 1.5, "cups"),
        ("1½ cups", 1.5, "cups"),
        ("1 ½ cups", 1.5, "cups"),
        ("⅔ cup", 2 / 3, "cup"),
        ("3/4 cup", 0.75, "cup"),
        ("3⁄4 cup", 0.75, "cup"),
        ("1-1/2 cups", 1.5, "cups"),
        ("1 and 1/2 cups", 1.5, "cups"),
        ("0.75 cup", 0.75, "cup"),
        (".5 l", 0.5, "l"),
        ("1,5 kg", 1.5, "kg"),
        ("1,000 g", 1000, "g"),
        ("two onions", 2, "onions"),
        ("a lemon", 1, "lemon"),
        ("half a lemon", 0.5, "lemon"),
        ("a dozen eggs", 12, "eggs"),
        ("2 dozen eggs", 24, "eggs"),
        ("1/2 dozen eggs", 6, "eggs"),
        ("three quarters of a cup", 0.75, "a cup"),
        ("1 15-ounce can", 1, "15-ounce can"),
        ("2 x 400 g", 2, "x 400 g"),
    ],
)
def test_a_number_is_read_and_the_rest_is_left(text, value, rest):
    count, left = read_count(plain_characters(text))
    assert count == Count(pytest.approx(value), pytest.approx(value), pytest.approx(value))
    assert left == rest


@pytest.mark.parametrize(
    ("text", "low", "high"),
    [
        ("2-3", 2, 3),
        ("2 to 3", 2, 3),
        ("2–3", 2, 3),
        ("3 or 4", 3, 4),
        ("1/2 - 3/4", 0.5, 0.75),
        ("1 to 1 1/2", 1, 1.5),
    ],
)
def test_a_range_is_its_middle_between_its_ends(text, low, high):
    count, _ = read_count(plain_characters(f"{text} cups"))
    assert count == Count((low + high) / 2, low, high)


@pytest.mark.parametrize("text", ["2% milk", "93 percent lean", "lentils", "", "anise", "fourth", "-3"])
def test_what_is_no_count_is_left_alone(text):
    assert read_count(text) == (None, text)


@pytest.mark.parametrize("text", ["1/0 cup", "1e309 g", "0/0"])
def test_a_number_that_is_no_amount_is_nan(text):
    assert math.isnan(read_count(text)[0].value)


@given(st.text(max_size=80))
def test_any_text_is_read_without_an_error(text):
    count, rest = read_count(plain_characters(text))
    assert (count is None) == (rest == plain_characters(text))


@given(st.integers(0, 999), st.sampled_from([2, 3, 4, 8]), st.integers(1, 7))
def test_a_mixed_number_is_its_whole_and_its_part(whole, bottom, top):
    top = top % bottom or 1
    count, _ = read_count(f"{whole} {top}/{bottom} cups")
    assert count.value == pytest.approx(whole + top / bottom)
