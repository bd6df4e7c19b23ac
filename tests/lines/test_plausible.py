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


def test_a_turkey_breast_heavier_than_any_without_its_bone_is_asked_about():
    reading = read("1 turkey breast (6 pounds)")
    assert "on its bone" in reading.problem
    assert {choice.food for choice in reading.choices} == {"turkey-breast", "turkey-breast-skin"}
    for line in (
        "1 boneless turkey breast (5 lb)",
        "2 lb turkey breast, cut in strips",
        "1 (6-lb) bone-in turkey breast",
    ):
        assert not read(line).problem, line


@pytest.mark.parametrize(
    ("line", "choices"),
    [
        ("1/4 cup oregano", {"oregano-dried", "mint-fresh"}),
        ("1 cup chicken bouillon", {"broth-chicken", "bouillon-chicken-powder"}),
        ("2 lb fava beans in the pod", {"fava-beans-dry", "fava-beans-green-raw"}),
    ],
)
def test_what_so_much_of_it_leaves_open_is_asked_about(line, choices):
    reading = read(line)
    assert reading.is_open
    assert choices <= {choice.food for choice in reading.choices}


@pytest.mark.parametrize(
    ("line", "key"),
    [
        ("1/4 cup dried oregano leaves", "oregano-dried"),
        ("1/4 cup rosemary leaves", "rosemary-fresh"),
        ("2 tsp chicken bouillon", "bouillon-chicken-powder"),
    ],
)
def test_what_is_told_of_it_is_read(line, key):
    assert read(line).key == key


def test_bread_crumbs_of_a_kind_and_cheese_by_the_cup_weigh_as_they_are_used():
    assert (read("1/2 cup panko").grams, read("1 cup cheddar").grams) == (30, 113)


def test_nothing_is_poured_off_a_jar_of_dried_beef_and_no_bone_taken_from_boneless_meat():
    assert round(read("1 jar (2.5 oz) dried beef, rinsed").grams) == 71
    assert round(read("4 boneless, skin-on chicken breasts (6 oz each)").grams) == 680


@pytest.mark.parametrize("line", ["4 chicken breast strips", "2 slices roast chicken breast"])
def test_slices_of_a_piece_are_no_pieces(line):
    reading = read(line)
    assert reading.grams is None
    assert "has no weight for a" in reading.problem


@pytest.mark.parametrize("line", ["1 lb potato skins", "6 baby artichokes", "2 baby eggplants"])
def test_what_is_else_taken_off_and_what_is_smaller_than_usual_is_asked_about(line):
    assert read(line).is_open


@pytest.mark.parametrize(
    ("line", "grams"),
    [("3 chicken thighs with skin", 579), ("1 tbsp orange peel", 6), ("3 baby bok choy", 345), ("4 baby zucchini", 44)],
)
def test_what_the_table_weighs_so_is_read(line, grams):
    assert read(line).grams == pytest.approx(grams)
