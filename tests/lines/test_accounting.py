"""Whether a name accounts for every word that may decide."""

import pytest
from each import for_each

from kit.lines.reader import read


@for_each(
    "line",
    [
        "1 lb ground turkey breast wings",
        "1 cup smoked almonds",
        "1 cup almonds, smoked",
        "4 oz trout, smoked, flaked",
        "1/4 cup chickpea flour crackers",
        "12 oz plant-based ground beef",
        "8 shishito peppers",
        "2 bratwurst powder",
        "1 cup xyzzy lentils",
    ],
)
def test_a_word_that_may_decide_and_is_not_used_is_asked(line):
    reading = read(line)
    assert reading.is_open
    assert reading.problem


@pytest.mark.parametrize(
    ("line", "key"),
    [
        ("2 tbsp flaxseed, ground", "flaxseed"),
        ("2 cups cooked whole wheat elbow macaroni", "macaroni-whole-wheat-boiled"),
        ("2 cups kale, washed and torn", "kale-raw"),
        ("1 cup rinsed green peas", "green-peas-raw"),
        ("1 lb lean pork tenderloin", "pork-tenderloin"),
        ("2 organic free-range eggs", "egg"),
    ],
)
def test_a_word_that_changes_nothing_is_passed_over(line, key):
    assert read(line).key == key


def test_fat_free_is_no_fat():
    assert read("1 cup chicken broth, fat-free").key.startswith("broth-chicken")
