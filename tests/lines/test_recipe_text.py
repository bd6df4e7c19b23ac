"""A whole pasted recipe."""

import contextlib

import pytest
from hypothesis import given
from hypothesis import strategies as st

from kit.errors import AmountError
from kit.lines.recipe_text import read_recipe

STEW = """# Barley pot

Prep time: 10 minutes
Serves 4 lidded boxes

Ingredients:
For the pot:
- 1 cup pearl barley
- 2 carrots, diced

For the dressing:
1. 2 tbsp olive oil
2. salt and pepper to taste

Method
Cook 1 cup of everything.
"""


def test_a_recipe_has_a_title_servings_parts_and_lines():
    recipe = read_recipe(STEW)
    assert (recipe.title, recipe.servings, recipe.serving_is) == ("Barley pot", 4, "lidded box")
    assert [(reading.key, reading.part) for reading in recipe.readings] == [
        ("barley-pearled-dry", "pot"),
        ("carrots-raw", "pot"),
        ("olive-oil", "dressing"),
        ("salt", "dressing"),
        ("pepper-black", "dressing"),
    ]


@pytest.mark.parametrize(
    ("line", "servings"),
    [
        ("Serves 4", 4),
        ("Serves: 6", 6),
        ("Makes 12 patties", 12),
        ("Yield: 8 servings", 8),
        ("4 servings", 4),
        ("Serves 4-6", 5),
        ("Serves six", 6),
    ],
)
def test_servings_are_read_as_they_are_written(line, servings):
    assert read_recipe(f"Soup\n{line}\n1 cup lentils").servings == servings


def test_servings_that_make_no_sense_are_told():
    with pytest.raises(AmountError, match="no number of servings"):
        read_recipe("Soup\nServes 0\n1 cup lentils")


def test_without_servings_none_are_made_up():
    assert read_recipe("Soup\n1 cup lentils").servings is None


def test_a_line_that_cannot_be_read_is_kept_with_its_problem():
    readings = read_recipe("Soup\n1 cup lentils\n1 cup rice").readings
    assert [bool(reading.problem) for reading in readings] == [False, True]


def test_nothing_after_the_method_is_an_ingredient():
    assert len(read_recipe("Soup\n1 cup lentils\nMethod\n2 cups milk").readings) == 1


@given(st.text(max_size=300))
def test_any_text_is_a_recipe_or_told(text):
    with contextlib.suppress(AmountError):  # "Serves 0"
        assert all(reading.problem or reading.grams is not None for reading in read_recipe(text).readings)
