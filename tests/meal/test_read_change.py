"""Typed what-ifs: what each changes, and what is asked back."""

import csv
import re
from functools import cache
from pathlib import Path

import pytest

from kit.errors import ChangeError
from kit.lines.recipe_text import read_recipe
from kit.meal.changes import applied, read_change
from kit.meal.changes_told import told
from kit.meal.recipe import recipe, recipe_from
from kit.talk.library import bundled_talks, read_talk

FIGURES = Path(__file__).parent / "figures"
DISHES, TALKED_OF = FIGURES / "dishes", Path(__file__).parents[1] / "speech" / "figures"
CLOSE = 0.05  # of an amount: the figures were worked out by hand from SR26's measures


@cache
def dish(name):
    if name in bundled_talks():
        return read_talk(name).recipe
    shelf = DISHES if (DISHES / f"{name}.txt").exists() else TALKED_OF
    return recipe_from(read_recipe((shelf / f"{name}.txt").read_text(encoding="utf-8")))


def rows(name):
    with open(FIGURES / name, encoding="utf-8", newline="") as file:
        return list(csv.DictReader(file))


def changed(line, recipe):
    """What a line changes: ("leave out", key, None), ("swap", "old > new", grams) ... or ("problem", message, None)."""
    try:
        steps = read_change(line, recipe)
    except ChangeError as fault:
        return [("problem", str(fault), None)]
    found = []
    for place, step in enumerate(steps):
        before, after = applied(recipe, steps[:place]), applied(recipe, steps[: place + 1])
        if step.kind == "servings":
            found.append((step.meaning, "", step.servings))
        elif step.kind == "add":
            found.append(("add", step.food.key, after.grams[-1]))
        else:
            at = step.row.at
            old, new = before.ingredients[at].food.key, after.ingredients[at].food.key
            what = f"{old} > {new}" if step.kind == "swap" else old
            found.append((step.kind, what, after.grams[at]))
    return found


def fits(wanted, found, recipe):
    if wanted.startswith("problem"):
        return len(found) == 1 and found[0][0] == "problem"
    parts = wanted.split(" + ")
    return len(parts) == len(found) and all(_fits(*pair, recipe) for pair in zip(parts, found, strict=True))


def _fits(wanted, found, recipe):
    kind, what, number = found
    if not wanted.startswith(kind):
        return False
    words = wanted.removeprefix(kind).split()
    if kind in ("make more", "share out"):
        return number == float(words[0])
    amount = words.pop() if re.fullmatch(r"x?[\d.]+", words[-1]) else ""
    if what != " ".join(words):
        return False
    if amount.startswith("x"):
        written = next(part.grams for part in recipe.ingredients if part.food.key == what)
        return number == pytest.approx(float(amount[1:]) * written, rel=0.01)
    return not amount or number == pytest.approx(float(amount), rel=CLOSE)


def wrong(name):
    """The rows of a table that are not read as expected, with what came instead."""
    found = {(row["dish"], row["line"]): changed(row["line"], dish(row["dish"])) for row in rows(name)}
    return [
        (row["dish"], row["line"], row["expected"], found[row["dish"], row["line"]])
        for row in rows(name)
        if not any(
            fits(wanted, found[row["dish"], row["line"]], dish(row["dish"])) for wanted in row["expected"].split("||")
        )
    ]


@pytest.mark.parametrize("table", ["what_ifs.csv", *(f"what_ifs_{round}.csv" for round in range(2, 28))])
def test_what_an_audience_asks_changes_what_it_says(table):
    assert wrong(table) == []


def test_what_is_not_understood_gets_a_kind_sentence():
    off = []
    for row in rows("not_understood.csv"):
        kind, says, _ = changed(row["line"], dish(row["dish"]))[0]
        if kind != "problem" or row["says"] not in says:
            off.append((row["line"], kind, says))
    assert off == []


def test_a_misspelt_nutrient_is_a_target_all_the_same():
    box = dish("barley_squash_box")
    assert read_change("20 g protien", box) == read_change("20 g protein", box)


def test_what_only_stays_is_no_change_of_its_own_and_each_of_several_is_asked_about():
    says = {"keep the squash": "not understood", "1 cup each kale and spinach": "its own amount"}
    found = {line: changed(line, dish("barley_squash_box"))[0][:2] for line in says}
    off = [line for line, (kind, text) in found.items() if kind != "problem" or says[line] not in text]
    assert off == []


def test_what_a_step_does_is_told_as_it_is_said():
    told_of = {
        ("hummus", "one can of chickpeas"): "1 can (15 oz) of chickpeas, not 2 cans (15 oz)",
        ("hummus", "canned black beans instead of the chickpeas"): "2 cans (15 oz) of black beans, canned, drained, "
        "instead of the chickpeas",
        (
            "hummus",
            "white beans instead of the chickpeas",
        ): "2 2/3 cups of white beans, cooked, instead of the chickpeas",
        ("muffins", "4 eggs"): "4 large eggs, not 2 large",
        ("muffins", "apples instead of bananas"): "2 medium apples instead of the banana",
        ("muffins", "a cup and a half of oats"): "1 1/2 cups of rolled oats, as before",
        ("slaw", "pear instead of apple"): "1 medium pear instead of the apple",
        ("slaw", "asparagus instead of carrots"): "8 medium asparagus instead of the carrot",
        ("bolognese", "half the lentils"): "about 1/3 cup of lentils, not 3/4 cup",
        ("chili", "double the batch"): "12 servings, everything times 2",
        ("chili", "lentils instead of the turkey"): "1 lb of lentils, cooked, instead of the ground turkey",
    }
    found = {(name, line): told(dish(name), read_change(line, dish(name)))[0].text for name, line in told_of}
    assert found == told_of


def test_what_stands_free_of_something_or_beside_a_half_is_asked_back():
    asked = {
        ("muffins", "gluten-free flour"): (
            "white rice flour",
            "brown rice flour",
            "sorghum flour",
            "buckwheat flour",
        ),
        ("chili", "half the beans, lentils instead"): ("lentils instead of 50 % of the beans",),
    }
    found = {}
    for name, line in asked:
        with pytest.raises(ChangeError) as fault:
            read_change(line, dish(name))
        found[name, line] = tuple(fault.value.choices)
    assert found == asked


def test_more_of_a_fruit_is_not_more_of_its_oil():
    salad = recipe("Salad", ["2 cups romaine, shredded", "2 tbsp olive oil"], servings=2)
    with pytest.raises(ChangeError, match="not sure which food"):
        read_change("add 1/4 cup olives", salad)
    (step,) = read_change("add 1 tbsp olive oil", salad)
    assert step.plus == 13.5
