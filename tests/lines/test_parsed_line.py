"""An ingredient line taken apart."""

import pytest

from kit.lines.parsed_line import LONGEST_LINE, take_apart


@pytest.mark.parametrize(
    "line",
    ["2 tbsp olive oil", "Olive oil 2 tbsp", "olive oil: 2 tbsp", "Olive oil, 2 tbsp", "olive oil - 2 tbsp"],
)
def test_an_amount_may_stand_behind_the_food(line):
    phrase = take_apart(line)[0]
    assert (phrase.written.count.value, phrase.written.unit.name, phrase.name) == (2, "tablespoon", ("olive", "oil"))


@pytest.mark.parametrize(
    ("line", "parts"),
    [
        ("salt and pepper to taste", [("salt",), ("pepper",)]),
        ("salt and freshly ground black pepper", [("salt",), ("freshly", "ground", "black", "pepper")]),
        ("1 tsp each cumin and paprika", [("cumin",), ("paprika",)]),
        ("1/2 tsp each of cumin, coriander and turmeric", [("cumin",), ("coriander",), ("turmeric",)]),
        ("2 eggs plus 1 egg yolk", [("egg",), ("egg", "yolk")]),
    ],
)
def test_a_line_with_several_foods_is_several_phrases(line, parts):
    assert [phrase.name for phrase in take_apart(line)] == parts


@pytest.mark.parametrize(
    ("line", "products"),
    [
        ("juice of 1 lemon", ["juice"]),
        ("zest and juice of 1 lime", ["zest", "juice"]),
        ("zest and juice 1 lime", ["zest", "juice"]),
        ("1 lemon, juice only", ["juice"]),
        ("1 lemon, zest and juice", ["zest", "juice"]),
        ("2 limes, juiced", ["juice"]),
    ],
)
def test_juice_and_zest_are_parts_of_a_fruit(line, products):
    assert [phrase.product for phrase in take_apart(line)] == products


@pytest.mark.parametrize(
    "line", ["salt to taste", "parsley, for garnish", "oil for frying", "sugar, if desired", "lime wedges, to serve"]
)
def test_what_nobody_measures_is_said(line):
    phrase = take_apart(line)[0]
    assert phrase.unmeasured
    assert not phrase.counted


@pytest.mark.parametrize("aside", [" (optional)", ", divided", ", plus more for serving", " plus extra to garnish"])
def test_an_aside_changes_nothing(aside):
    plain, with_aside = take_apart("2 tbsp olive oil")[0], take_apart(f"2 tbsp olive oil{aside}")[0]
    assert (with_aside.written, with_aside.name) == (plain.written, plain.name)


def test_or_offers_another_food():
    phrase = take_apart("1 cup yogurt or sour cream")[0]
    assert (phrase.name, phrase.others) == (("yogurt",), ("sour cream",))


def test_squeezed_dry_is_no_dry_food():
    assert "dry" not in take_apart("1 cup frozen spinach, thawed and squeezed dry")[0].after


def test_a_weight_before_the_comma_is_of_the_cut_food():
    assert take_apart("200 g diced carrots")[0].written.edible
    assert not take_apart("200 g carrots, diced")[0].written.edible


def test_a_line_that_is_no_line_is_told():
    assert f"shorter than {LONGEST_LINE}" in take_apart("x" * (LONGEST_LINE + 1))[0].problem


@pytest.mark.parametrize(("line", "fault"), [("1/0 cup rice", "is no number"), ("999999 cups rice", "too large")])
def test_an_amount_that_makes_no_sense_is_told(line, fault):
    assert fault in take_apart(line)[0].problem
