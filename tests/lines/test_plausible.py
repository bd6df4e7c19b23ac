"""Whether an amount suits a food."""

import pytest

from kit.lines.reader import read


@pytest.mark.parametrize("line", ["1 pepper, diced", "2 peppers, seeded", "1 cup pepper, chopped"])
def test_a_pepper_that_is_cut_up_is_a_vegetable_and_its_kind_is_asked(line):
    reading = read(line)
    assert reading.is_open
    assert {"bell-pepper-green-raw", "bell-pepper-red-raw"} <= {choice.food for choice in reading.choices}


@pytest.mark.parametrize("line", ["1 tsp pepper", "pepper, to taste", "1/4 teaspoon ground pepper"])
def test_a_pepper_by_the_spoon_is_the_spice(line):
    assert read(line).key == "pepper-black"


def test_pieces_of_a_bird_are_no_birds():
    reading = read("6 pieces of chicken")
    assert reading.is_open
    assert "chicken-thigh" in {choice.food for choice in reading.choices}
