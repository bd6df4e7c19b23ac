"""One written ingredient line as a food and grams."""

import csv
import math
from pathlib import Path

import pytest
from each import for_each
from hypothesis import example, given
from hypothesis import strategies as st
from strategies import texts

from kit.food.composition import bundled_foods
from kit.lines.parsed_line import LONGEST_LINE
from kit.lines.reader import read, read_each, read_lines
from kit.lines.reading import Reading

TABLE = bundled_foods()
# Grams worked by hand from USDA SR26's household measures and refuse, named on each row. "clear": one reading, within
# 1 %; "wide": the line leaves room, and the grams lie in the range that is given.
RECIPE_LINES = list(
    csv.DictReader((Path(__file__).parent / "figures" / "recipe_lines.csv").open(encoding="utf-8", newline=""))
)


@for_each("row", RECIPE_LINES)
def test_a_recipe_line_weighs_what_was_worked_by_hand(row):
    reading = read(row["line"])
    by_hand = float(row["grams"])
    assert reading.key == row["food"]
    assert reading.low - 0.001 <= by_hand <= reading.high + 0.001
    if row["reading"] == "clear":
        assert reading.problem == ""
        assert reading.grams == pytest.approx(by_hand, rel=0.01)


@for_each("key", TABLE)
def test_every_name_of_a_food_reads_back_to_it(key):
    food = TABLE[key]
    small, large = ("5 g", "1 tsp") if food.group == "spice" else ("100 g", "1 cup")
    cooked = food.group == "poultry" or (food.group == "pulse" and food.state == "dry")  # by the cup it may be so
    either = cooked or key.startswith("bouillon-")  # or dissolved
    amounts = (small,) if either else (small, large)
    read_as = {
        line: read(line, table=TABLE).key
        for name in (food.name, *food.other_names)
        for line in (f"{amount} {name}" for amount in amounts)
    }
    assert {line: found for line, found in read_as.items() if found != key} == {}


@for_each("key", TABLE)
def test_a_kilo_of_every_food_has_a_weight_and_a_source(key):
    reading = read(f"1 kg {TABLE[key].name}", table=TABLE)
    assert reading.grams > 0
    assert reading.how


@for_each("line", ["onion", "1 cup", "", "???", "2 cups rice", "1 bell pepper", "1 cup xylophone", "🍅"])
def test_what_is_not_clear_is_asked_and_not_guessed(line):
    reading = read(line)
    assert reading.grams is None
    assert reading.problem


def test_a_missing_amount_names_the_food_and_shows_a_line():
    reading = read("onion")
    assert reading.key == "onions-raw"
    assert reading.problem == 'no amount of "Onion, raw"; write for instance "1 cup onion, raw, chopped (160 g)"'


def test_the_line_that_a_problem_shows_is_clear():
    for food in list(TABLE.values())[::25]:
        shown = read(food.name, table=TABLE).problem
        if shown:
            assert read(shown.split('write for instance "')[1].rstrip('"'), table=TABLE).problem == ""


def test_the_choices_of_a_problem_are_foods():
    choices = read("1 bell pepper").choices
    assert choices
    assert all(choice.food in TABLE for choice in choices)


def test_a_food_that_is_given_is_not_guessed_again():
    reading = read("2 cups rice", food="rice-brown-dry")
    assert (reading.key, reading.grams, reading.problem) == ("rice-brown-dry", 370, "")


def test_to_taste_is_counted_as_a_stated_small_amount():
    salt, pepper = read_each("salt and pepper to taste")
    assert (salt.key, salt.grams, pepper.key, pepper.grams) == ("salt", 1.5, "pepper-black", pytest.approx(0.575))
    assert "counted as 1/4 tsp" in salt.how
    assert salt.low == 0


@pytest.mark.parametrize("line", ["lemon wedges, to serve", "ice cubes", "flour, for dusting"])
def test_what_is_left_out_of_the_numbers_is_said(line):
    reading = read(line)
    assert (reading.grams, reading.problem) == (0, "")
    assert "left out" in reading.how


@pytest.mark.parametrize(
    ("line", "swaps"),
    [("1 cup yogurt or sour cream", ("cream-sour",)), ("2 cups vegetable or chicken broth", ("broth-chicken",))],
)
def test_the_first_of_or_is_read_and_the_other_may_take_its_place(line, swaps):
    reading = read(line)
    assert reading.key in ("yogurt-whole", "broth-vegetable")
    assert reading.swaps == swaps


def test_a_stand_in_is_said_in_how():
    assert "stands in for it" in read("1 tsp garam masala").how


def test_a_range_of_counts_widens_the_range():
    two_to_three, two = read("2-3 cloves garlic"), read("2 cloves garlic")
    assert two_to_three.high - two_to_three.low > two.high - two.low


def test_metric_cups_are_larger():
    assert read("1 cup milk", system="metric").grams == pytest.approx(
        read("1 cup milk").grams * 250 / 236.588, rel=1e-4
    )


def test_a_reading_prints_the_promised_keys():
    asked, clear = read("1 cup rice").as_json(), read("1 cup milk").as_json()
    assert {"line", "food", "food_name", "grams", "low", "high", "how", "problem"} <= asked.keys()
    assert (asked["food"], asked["grams"]) == (None, None)
    assert clear["problem"] is None


def test_a_line_is_kept_as_it_was_written():
    assert read("  - 2 cups  milk ").line == "  - 2 cups  milk "


def test_several_lines_are_read_in_order():
    assert [reading.key for reading in read_lines(["1 cup milk", "salt and pepper"])] == [
        "milk-whole",
        "salt",
        "pepper-black",
    ]


def makes_sense(reading: Reading) -> bool:
    """Whether a reading has grams that can be, in their range, or says what is wrong."""
    if reading.grams is None:
        return bool(reading.problem)
    amounts = (reading.low, reading.grams, reading.high)
    return all(math.isfinite(value) and value >= 0 for value in amounts) and list(amounts) == sorted(amounts)


@given(texts)
@example("1e309 g rice")
@example("1/0 cup milk")
@example("-3 cups milk")
@example("1 cup \u202emilk\x00")
@example("((((1 cup milk")
@example("1 (1 (1 (1 oz) can) beans")
@example("each each each")
@example("or")
def test_any_text_is_read_or_told(text):
    assert all(makes_sense(reading) for reading in read_each(text))


WORDS = (
    "1 1/2 - 2 cup g oz can tin juice of zest salt and pepper or rice lentils black beans drained dry low each , ( )"
)


@given(st.lists(st.sampled_from(WORDS.split()), max_size=15).map(" ".join))
def test_any_order_of_a_recipes_words_is_read_or_told(text):
    assert all(makes_sense(reading) for reading in read_each(text))


@for_each("piece", [" ", "(", ")", "()", "1 ", "1/", "salt ", "each ", ", ", "1 cup ", "½", "x", "or ", "- "])
@for_each("size", [LONGEST_LINE, 10_000])
def test_a_long_line_of_one_piece_is_read_or_told(piece, size):
    line = (piece * size)[:size]
    assert all(makes_sense(reading) for reading in read_each(line))


def test_what_nobody_measures_is_left_out_whichever_it_is():
    reading = read("Olives or capers for garnish, if desired")
    assert (reading.grams, reading.problem) == (0, "")
    assert "whichever it is" in reading.how


@for_each("line", ["1 cup half skim milk, half water", "2 cups half oat flour and half whole wheat flour"])
def test_an_amount_halved_between_two_foods_is_asked_for_each(line):
    assert "halves its amount" in read(line).problem


@for_each("line", ["1 cup half and half", "1/2 cup half-and-half, fat free", "2 chicken breast halves"])
def test_other_halves_are_read(line):
    assert not read(line).problem
