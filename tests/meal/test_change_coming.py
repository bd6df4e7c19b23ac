"""Names that what goes completes: a kind of it where the word says only the kind, asked about where it says a food."""

import pytest

from kit.errors import ChangeError
from kit.meal.changes import read_change
from kit.meal.recipe import recipe

TABLE = recipe(
    "Table",
    [
        "1 cup white rice",
        "6 oz egg noodles",
        "2 tbsp lemon juice",
        "1/4 cup olive oil",
        "8 slices whole wheat bread",
        "1 lb boneless skinless chicken breast",
        "6 slices bacon",
        "1 cup low-fat yogurt",
    ],
    servings=4,
)


def test_a_word_for_a_kind_means_that_kind_of_what_goes():
    comes = {
        "brown instead of the white rice": "rice-brown-dry",
        "lime instead of the lemon juice": "lime-juice",
        "rye instead of the wheat bread": "bread-rye",
        "thighs instead of the breasts": "chicken-thigh",
        "skim milk instead of the yogurt": "milk-skim",
    }
    assert {line: read_change(line, TABLE)[0].food.key for line in comes} == comes


@pytest.mark.parametrize(
    "line",
    [
        "avocado instead of the olive oil",
        "tempeh instead of the bacon",
        "cream instead of the yogurt",
    ],
)
def test_a_word_for_a_food_of_its_own_is_asked_about(line):
    with pytest.raises(ChangeError, match=r"which|not sure"):
        read_change(line, TABLE)


def test_rice_instead_of_noodles_is_no_rice_noodles():
    with pytest.raises(ChangeError, match="not sure"):
        read_change("rice instead of the egg noodles", recipe("Soup", ["6 oz egg noodles"]))
