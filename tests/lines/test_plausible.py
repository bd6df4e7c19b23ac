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


@pytest.mark.parametrize("line", ["1 whole trout", "1 boneless turkey breast"])
def test_what_is_sold_cut_up_is_asked_about_where_it_is_whole(line):
    assert "weight" in read(line).problem


@pytest.mark.parametrize("line", ["2 trout fillets", "2 turkey breast cutlets", "1 (2 lb) boneless turkey breast"])
def test_what_is_cut_from_it_or_weighed_is_read(line):
    assert not read(line).problem
