"""Every name that a line may use for a food."""

from each import for_each

from kit import files
from kit.food.cells import read_rows
from kit.food.composition import bundled_foods
from kit.food.vocabulary import words
from kit.lines.known_names import is_name, known_names
from kit.lines.reader import read

TABLE = bundled_foods()
USUAL = read_rows(files.bundled("data/usual_foods.csv"))
MISSING = read_rows(files.bundled("data/missing_foods.csv"))


def test_what_is_usually_meant_is_a_food_and_no_other_name():
    assert [row["words"] for row in USUAL if row["food"] not in TABLE or is_name(words(row["words"]), TABLE)] == []


def test_what_is_usually_meant_is_said():
    assert '"vinegar" read as' in read("2 tbsp vinegar").how


def test_every_choice_for_a_missing_food_is_a_food():
    assert [row["words"] for row in MISSING if not all(key in TABLE for key in row["food"].split("; "))] == []


@for_each("row", MISSING)
def test_a_missing_food_is_asked_with_its_choices(row):
    if not is_name(words(row["words"]), TABLE):
        reading = read(f"1 cup {row['words']}")
        assert reading.is_open
        assert [choice.food for choice in reading.choices] == row["food"].split("; ")


def test_a_food_lies_in_its_oil_and_is_none():
    names = known_names(TABLE)
    tuna = next(name for name in names.names if name.text == "tuna in oil")
    assert names.lies_in(tuna) == {"oil"}
