"""A whole pasted recipe."""

import contextlib
import tomllib
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from kit.errors import AmountError
from kit.lines.recipe_text import read_recipe

FIGURES = Path(__file__).parent / "figures"
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


@pytest.mark.parametrize(
    "folder", ["pages", "more_pages", "cluttered_pages", "other_pages", "busy_pages", "later_pages", "audited_pages"]
)
def test_pasted_pages_give_title_servings_and_every_ingredient_and_no_clutter(folder):
    wrong = []
    for name, page in tomllib.loads((FIGURES / folder / "expected.toml").read_text(encoding="utf-8")).items():
        recipe = read_recipe((FIGURES / folder / f"{name}.txt").read_text(encoding="utf-8"))
        span = recipe.span or (recipe.servings, recipe.servings)
        found = {
            "title": recipe.title,
            "servings": recipe.servings,
            "span": list(span),
            "serving_is": recipe.serving_is,
            "passed_over": list(recipe.passed_over),
            "open": sum(reading.is_open for reading in recipe.readings),
            "lines": list(dict.fromkeys(reading.line for reading in recipe.readings)),
        }
        asked = {"span": [page["servings"]] * 2, "serving_is": "", **page}
        wrong += [f"{name}: {key} is {found[key]!r}" for key in asked if found[key] != asked[key]]
        wrong += [
            f"{name}: only {read} lines are read"
            for read in (sum(not line.is_open for line in recipe.readings),)
            if read < min(7, len(page["lines"]) - page.get("open", 0))
        ]
    assert wrong == []


PLAIN = "Lentil soup\nServes 4\n1 cup lentils, dry\n"


@pytest.mark.parametrize(
    ("text", "title"),
    [
        (PLAIN, "Lentil soup"),
        ("3-bean salad\nServes 4\n1 cup lentils, dry\n", "3-bean salad"),
        ("7 layer dip\n\n1 cup lentils, dry\n", "7 layer dip"),
        ("Title: 2 cups of soup\n1 cup lentils, dry\n", "2 cups of soup"),
        ("Lentil Soup Recipe | A kitchen\nServes 4\n1 cup lentils, dry\n", "Lentil Soup"),
        ("1 cup lentils, dry\n2 carrots", ""),
    ],
)
def test_a_title_is_found(text, title):
    recipe = read_recipe(text)
    assert recipe.title == title
    assert recipe.readings[0].key == "lentils-dry"


@pytest.mark.parametrize(
    ("lines", "read_as"),
    [
        ("2\ncups\nlentils, dry", ["2 cups lentils, dry"]),
        ("1 cup lentils,\nrinsed\n2 carrots", ["1 cup lentils, rinsed", "2 carrots"]),
        ("1 can (15\nounces) black beans, drained", ["1 can (15 ounces) black beans, drained"]),
        ("1 cup lentils, dry,\n2 carrots,\nsalt,", ["1 cup lentils, dry", "2 carrots", "salt"]),
        ("lentils, dry\t2 cups\ncarrots\t2", ["2 cups lentils, dry", "2 carrots"]),
        (
            "1 cup lentils, dry\nmoon dust",
            ["1 cup lentils, dry", "moon dust"],
        ),  # asked, and not hidden in the line above
        ("1 cup lentils, dry\n8 wooden skewers\nparchment paper", ["1 cup lentils, dry"]),
    ],
)
def test_one_ingredient_over_several_lines_or_cells_is_one(lines, read_as):
    recipe = read_recipe(f"Soup\nServes 4\n\nIngredients\n{lines}\n\nMethod\nCook.")
    assert [reading.line for reading in recipe.readings] == read_as


def test_what_names_no_food_is_passed_over_and_said():
    recipe = read_recipe("Kebabs\nServes 4\n1 lb lamb, cubed\n8 wooden skewers\n")
    assert recipe.passed_over == ("8 wooden skewers",)


def test_a_text_longer_than_any_page_is_told():
    with pytest.raises(AmountError, match="paste one recipe"):
        read_recipe("a\n" * 200_000)


def test_a_letter_is_read_without_its_marks_and_a_subject_said_in_passing_is_no_title():
    letter = "Subject: Fwd: that soup\n> Lentil Soup\n> Serves 4\n>\n> 1 cup lentils, dry\n> 4 cups water"
    recipe = read_recipe(letter)
    assert (recipe.title, len(recipe.readings)) == ("Lentil Soup", 2)
    assert read_recipe("Subject: that lentil soup\nServes 4\n1 cup lentils, dry").title == "that lentil soup"


def test_ingredients_among_the_links_of_a_site_are_no_heading():
    links = "Dinners\nIngredients\nOccasions\nNewsletter\nLog In\nRate\nSave\nPrint\nShare\nJoin\n"
    assert read_recipe(f"{links}Lentil Soup\nServes 4\nIngredients\n1 cup lentils, dry").title == "Lentil Soup"
