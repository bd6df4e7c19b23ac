"""Which food the words of a line mean."""

import pytest
from each import for_each

from kit import files
from kit.food.cells import read_rows
from kit.food.composition import bundled_foods
from kit.food.vocabulary import words
from kit.lines.choosing import choose
from kit.lines.known_names import is_name

TABLE = bundled_foods()


def chosen(name, after="", **facts):
    return choose(words(name), words(after), TABLE, **facts)


@for_each(
    ("name", "key"),
    [
        ("lentils", "lentils-dry"),
        ("brown lentils", "lentils-dry"),
        ("green bell pepper", "bell-pepper-green-raw"),
        ("freshly ground black pepper", "pepper-black"),
        ("boneless skinless chicken breasts", "chicken-breast"),
        ("93% lean ground turkey", "turkey-ground-93"),
        ("dry white wine", "wine-white"),
        ("canned tomatoes in juice", "tomatoes-canned"),
        ("tomato juice", "tomato-juice"),
        ("gluten-free rolled oats", "oats-rolled-dry"),
        ("smooth peanut butter", "peanut-butter"),
    ],
)
def test_the_longest_name_is_meant(name, key):
    choice = chosen(name)
    assert (choice.food.key, choice.problem) == (key, "")


@for_each(
    "name",
    [
        "beans",
        "rice",
        "bell pepper",
        "lettuce",
        "oil",
        "tofu",
        "bread",
        "onion dip",
        "coriander",
        "lobster bisque",
        "pizza crust",
    ],
)
def test_words_that_fit_several_foods_are_asked(name):
    choice = chosen(name)
    assert choice.food is None
    assert 'which food "' in choice.problem
    assert choice.choices


@for_each(
    ("name", "never"),
    [
        ("gluten-free flour", lambda food: {"wheat", "gluten"}.intersection(food.allergens)),
        ("gluten-free cookies", lambda food: {"wheat", "gluten"}.intersection(food.allergens)),
        ("dairy-free cheese", lambda food: "milk" in food.allergens),
        ("vegan cheese", lambda food: food.origin == "animal"),
        ("no salt added petite tomatillos in sauce", lambda food: food.key.endswith("-salted")),
    ],
)
def test_no_choice_holds_what_the_words_exclude(name, never):
    choice = chosen(name)
    assert choice.food is None
    assert not [match.food for match in choice.choices if never(TABLE[match.food])]


def test_a_form_that_is_not_there_is_asked_with_foods_of_the_same_kind():
    choice = chosen("reduced-fat feta")
    assert [match.food.partition("-")[0] for match in choice.choices] == ["cheese"] * len(choice.choices)
    assert choice.choices[0].food == "cheese-feta"


@for_each(
    ("name", "after", "key"),
    [
        ("light tuna in water", "no salt added", "tuna-canned-water-unsalted"),
        ("fat-free low-sodium cottage cheese", "", "cheese-cottage-1-unsalted"),
        ("low-sodium light soy sauce", "", "soy-sauce-low-sodium"),
    ],
)
def test_two_things_of_which_there_is_less_are_both_heeded(name, after, key):
    choice = chosen(name, after)
    assert (choice.food.key, choice.problem) == (key, "")


@for_each("name", ["low-fat tahini", "low-fat whipping cream", "2% oat milk"])
def test_a_name_that_says_light_of_something_else_is_no_lighter_form(name):
    assert chosen(name).problem


def test_a_food_that_is_low_in_one_of_two_things_only_is_asked_about():
    assert 'no "low fat" form of "Cheddar, low-sodium"' in chosen("low-fat low-sodium cheddar").problem


def test_a_food_that_is_not_there_is_told():
    choice = chosen("xylophone")
    assert choice.problem.startswith('no food "xylophone" in the table')


def test_no_word_at_all_is_told():
    assert chosen("").problem.startswith("no food on this line")


def test_a_misspelling_is_corrected_and_said():
    choice = chosen("brocolli")
    assert choice.food.key == "broccoli-raw"
    assert choice.notes == ('"brocolli" read as "broccoli"',)


def test_a_stand_in_is_said():
    choice = chosen("garam masala")
    assert choice.food.key == "curry-powder"
    assert 'no "garam masala" in the table' in choice.notes[0]


@pytest.mark.parametrize(
    ("container", "name", "key"), [("can", "tuna", "tuna-canned-water"), ("bunch", "coriander", "cilantro-fresh")]
)
def test_the_measure_tells_which_food_is_meant(container, name, key):
    assert chosen(name, container=container).food.key == key


def test_a_name_with_or_in_it_is_one_name():
    assert is_name(words("hamburger or hot dog bun"), TABLE)
    assert not is_name(words("yogurt or sour cream"), TABLE)


def test_a_lighter_form_is_taken_where_there_is_one():
    assert chosen("low-sodium soy sauce").food.key == "soy-sauce-low-sodium"
    other = chosen("no-salt-added black beans")
    assert (other.food.key, other.notes) == ("black-beans-canned-low-sodium", ('"no salt added" read as "low sodium"',))


@pytest.mark.parametrize("name", ["reduced-fat feta", "low-sodium miso"])
def test_a_lighter_form_that_is_not_there_is_a_problem(name):
    choice = chosen(name)
    assert choice.food is not None
    assert " form of " in choice.problem


def test_a_lighter_form_that_would_not_matter_is_none():
    assert chosen("low-fat lentils").problem == ""


STAND_INS = read_rows(files.bundled("data/stand_ins.csv"))


@for_each("row", STAND_INS)
def test_a_stand_in_is_a_food_and_stands_for_none_of_the_table(row):
    assert row["food"] in TABLE
    assert not is_name(words(row["words"]), TABLE)
