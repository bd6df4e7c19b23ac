"""The sets of sentences with their expected verdicts, and what the reader says of each."""

import csv
from functools import cache
from pathlib import Path

from kit.meal.nutrition import nutrition
from kit.meal.recipe import recipe
from kit.speech.checking import check_sentence
from kit.talk.dish import Dish
from kit.talk.talk import Talk

FIGURES = Path(__file__).parent / "figures"
SETS = (
    "own_sentences",
    "read_aloud",
    "stood_beside",
    "passed_over",
    "given_sentences",
    "fresh_first",
    "fresh_second",
    "fresh_third",
    "fresh_fourth",
    "fresh_fifth",
    "fresh_sixth",
    "fresh_seventh",
    "fresh_eighth",
    "fresh_ninth",
    "fresh_tenth",
    "fresh_eleventh",
    "fresh_twelfth",
    "fresh_fourteenth",
    "fresh_fifteenth",
    "fresh_sixteenth",
    "fresh_seventeenth",
    "keeping_and_kinds",
    "said_plainly",
    "said_at_length",
    "talked_through",
    "said_falsely",
    "talked_again",
    "falsely_again",
    "said_side_by_side",
    "turned_about",
    "turned_beside",
    "hunted",
    "heard_later",
    "unknown_words",
    "said_otherwise",
    "told_anew",
    "told_afresh",
    "turned_false",
)
TRAPS = (
    "fresh_thirteenth",
    "fresh_eighteenth",
    "told_wrongly",
)  # put together so that a careless reader vouches wrongly
VERDICTS = ("holds", "off", "cannot tell", "nothing to check")


def rows(name):
    with open(FIGURES / f"{name}.csv", newline="", encoding="utf-8") as file:
        return list(csv.DictReader(file))


@cache
def dish(name):
    """The dish of a recipe file: title, "Serves N", one ingredient a line."""
    text = (FIGURES / f"{name}.txt").read_text(encoding="utf-8")
    title, serves, *lines = [line.strip() for line in text.splitlines() if line.strip()]
    made = recipe(title, lines, servings=int(serves.split()[1]))
    return Dish(Talk(name, made), nutrition(made))


@cache
def checked(name):
    """Each row of a set with what the reader says of it."""
    return [(row, check_sentence(row["say"], dish(row["dish"]))) for row in rows(name)]
