"""Typed what-ifs: what each changes, and what is asked back."""

import csv
import re
from functools import cache
from pathlib import Path

import pytest

from kit.errors import ChangeError
from kit.lines.recipe_text import read_recipe
from kit.meal.changes import applied, read_change
from kit.meal.recipe import recipe_from
from kit.talk.library import bundled_talks, read_talk

FIGURES = Path(__file__).parent / "figures"
CLOSE = 0.05  # of an amount: the figures were worked out by hand from SR26's measures


@cache
def dish(name):
    if name in bundled_talks():
        return read_talk(name).recipe
    return recipe_from(read_recipe((FIGURES / "dishes" / f"{name}.txt").read_text(encoding="utf-8")))


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


@pytest.mark.parametrize("table", ["what_ifs.csv", *(f"what_ifs_{round}.csv" for round in range(2, 10))])
def test_what_an_audience_asks_changes_what_it_says(table):
    assert wrong(table) == []


def test_what_is_not_understood_gets_a_kind_sentence():
    off = []
    for row in rows("not_understood.csv"):
        kind, says, _ = changed(row["line"], dish(row["dish"]))[0]
        if kind != "problem" or row["says"] not in says:
            off.append((row["line"], kind, says))
    assert off == []
