"""Seventeen recipes of the US government, pasted as they are printed, with the nutrition it prints."""

import csv
import json
from dataclasses import replace
from pathlib import Path

import pytest

from kit.lines.reader import read_each
from kit.lines.recipe_text import read_recipe
from kit.meal.nutrition import nutrition
from kit.meal.recipe import recipe_from

FIGURES = Path(__file__).parent / "figures"
RECIPES = json.loads((FIGURES / "government_recipes.json").read_text(encoding="utf-8"))
with open(FIGURES / "government_lines.csv", encoding="utf-8", newline="") as file:
    LINES = list(csv.DictReader(file))
NEED_NO_ANSWER = 14
MOST_SILENTLY_WRONG = 1  # of all their lines
ENERGY = 0.20  # of the printed energy, where nothing is noted that the list does not say


def pasted(recipe):
    return read_recipe("\n".join([recipe["title"], f"Serves {recipe['servings']}", *recipe["lines"]]))


def numbers(recipe):
    """Return the numbers of the lines that were read."""
    written = pasted(recipe)
    return nutrition(recipe_from(replace(written, readings=[line for line in written.readings if not line.is_open])))


def test_most_need_no_answer():
    asked = [
        recipe["id"] for recipe in RECIPES if any(line.is_open or line.problem for line in pasted(recipe).readings)
    ]
    assert len(RECIPES) == 17
    assert len(RECIPES) - len(asked) >= NEED_NO_ANSWER, asked


@pytest.mark.parametrize("recipe", RECIPES, ids=[recipe["id"] for recipe in RECIPES])
def test_each_shows_the_numbers_of_what_was_read(recipe):
    shown = numbers(recipe)
    assert shown.recipe.servings == recipe["servings"]
    assert shown["energy"] > 0


def test_hardly_a_line_is_read_wrong_without_a_word():
    wrong = []
    for row in LINES:
        readings = read_each(row["line"])
        if any(reading.is_open or reading.problem for reading in readings):
            continue
        read = " + ".join(reading.key for reading in readings)
        if read not in row["food"].split("|"):
            wrong.append((row["line"], read))
    assert len(LINES) > 190
    assert len(wrong) <= MOST_SILENTLY_WRONG, wrong


@pytest.mark.parametrize("recipe", [one for one in RECIPES if not one["note"]], ids=lambda one: one["id"])
def test_energy_is_the_printed_one_where_nothing_is_noted(recipe):
    assert numbers(recipe)["energy"] == pytest.approx(recipe["published"]["energy_kcal"], rel=ENERGY)
