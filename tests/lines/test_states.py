"""The form of a food that a line asks for."""

import pytest
from each import for_each

from kit.lines.reader import read


@for_each(
    ("line", "key"),
    [
        ("1 cup lentils", "lentils-dry"),
        ("1 cup lentils, cooked", "lentils-boiled"),
        ("1 cup cooked lentils", "lentils-boiled"),
        ("1 cup dried black beans, soaked overnight and drained", "black-beans-dry"),
        ("1 cup black beans, drained and rinsed", "black-beans-canned-drained"),
        ("1 cup chickpeas, drained", "chickpeas-canned-drained"),
        ("1 cup cooked chickpeas (canned are fine)", "chickpeas-boiled"),
        ("1 cup black beans, cooked or canned", "black-beans-boiled"),
        ("1 cup cooked or canned black beans", "black-beans-boiled"),
        ("1 cup corn, fresh or frozen", "corn-raw"),
        ("1 cup frozen corn, thawed", "corn-frozen"),
        ("1 (15 oz) can corn, drained", "corn-canned-drained"),
        ("2 beets, roasted", "beets-raw"),
        ("2 beets, cooked", "beets-boiled"),
        ("1 cup mashed sweet potato", "sweet-potatoes-boiled"),
        ("1 cup mashed banana", "bananas-raw"),
        ("1 cup quinoa, rinsed and drained", "quinoa-dry"),
        ("1 tsp dried basil", "basil-dried"),
        ("1 cup fresh basil", "basil-fresh"),
    ],
)
def test_the_state_said_is_the_form_taken(line, key):
    assert read(line).key == key


def test_a_food_with_its_liquid_is_said_when_it_is_drained():
    assert "with its liquid only" in read("1 cup navy beans, drained").how


def test_a_form_that_weighs_otherwise_and_is_missing_is_a_problem():
    assert "no dried form" in read("1 cup dried mango").problem


def test_canned_beans_without_a_row_are_read_as_cooked_and_drained():
    reading = read("1 x 400 g can adzuki beans, drained")
    assert (reading.key, reading.grams) == ("adzuki-beans-boiled", pytest.approx(240))
    assert "read as cooked: a can may hold much more salt" in reading.how


def test_beans_by_the_cup_are_asked_about_unless_the_line_tells_whether_they_are_dry():
    assert read("1/2 cup black beans").is_open
    assert "black-beans-boiled" in [choice.food for choice in read("1/2 cup black beans").choices]
    assert read("1 cup black beans, soaked overnight").key == "black-beans-dry"
    assert read("1 lb black beans").key == "black-beans-dry"
    assert read("1 cup brown lentils").key == "lentils-dry"


def test_beans_that_are_sorted_and_rinsed_are_dry():
    assert read("1 cup pinto beans, sorted and rinsed").key == "pinto-beans-dry"
    assert read("1 cup pinto beans, drained and rinsed").key.startswith("pinto-beans-canned")
    assert read("1 cup brown lentils, rinsed").key == "lentils-dry"
    assert read("1 (15 oz) can lentils, rinsed").key == "lentils-canned"
    assert read("1 cup French lentils, rinsed and drained").is_open
