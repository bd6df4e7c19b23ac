"""Kinds of what comes that the words leave open are asked about, with lines that are read."""

import pytest

from kit.errors import ChangeError
from kit.meal.changes import read_change
from kit.meal.recipe import recipe

POT = recipe(
    "Pot",
    ["4 cups low-sodium chicken broth", "1 (15 oz) can black beans, drained", "8 oz beef flank steak", "3 oz almonds"],
    servings=4,
)


@pytest.mark.parametrize(
    ("line", "comes"),
    [
        ("vegetable broth instead of the chicken broth", ["broth-vegetable-low-sodium", "broth-vegetable"]),
        ("mushrooms instead of the black beans", ["mushrooms-canned-drained", "mushrooms-white-raw"]),
        ("turkey instead of the beef", ["turkey-ground", "turkey-breast", "sausage-turkey"]),
    ],
)
def test_the_kinds_that_may_be_meant_are_choices_that_are_read(line, comes):
    with pytest.raises(ChangeError, match="which") as fault:
        read_change(line, POT)
    assert [read_change(choice, POT)[0].food.key for choice in fault.value.choices] == comes


def test_a_word_for_the_kind_is_answered():
    said = {
        "regular vegetable broth instead of the chicken broth": "broth-vegetable",
        "chickpeas instead of the black beans": "chickpeas-canned-drained",
        "2 cups mushrooms instead of the black beans": "mushrooms-white-raw",
    }
    assert {line: read_change(line, POT)[0].food.key for line in said} == said
