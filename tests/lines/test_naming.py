"""Which food, or foods, a phrase names."""

import pytest
from each import for_each

from kit.lines.reader import read, read_each


@for_each(
    ("line", "key"),
    [
        ("8 corn or flour tortillas", "tortilla-corn"),
        ("2 cups beef or turkey broth, fat removed", "broth-beef"),
        ("1 tbsp peanut or olive oil", "peanut-oil"),
        ("1 cup red or green grapes", "grapes-raw"),
        ("1 tbsp butter or olive oil", "butter-salted"),
        ("1 cup fresh or frozen blueberries", "blueberries-raw"),
        ("1 tbsp vegetable, canola, or olive oil", "soybean-oil"),
        ("2 eggs or 1/2 cup egg substitute", "egg"),
        ("2 tsp minced fresh or 1/2 tsp dried dill", "dill-fresh"),
        ("2 cups chopped fresh or 1 (10 oz) package frozen spinach", "spinach-raw"),
        ("1 cup polenta or yellow corn grits, dry", "grits-yellow-dry"),
    ],
)
def test_the_noun_after_or_belongs_to_both(line, key):
    assert read(line).key == key


def test_words_that_make_no_food_together_are_asked():
    assert read("1 cup vanilla or plain yogurt").key != "vanilla-extract"


def test_foods_side_by_side_with_one_amount_are_asked():
    reading = read("2 tablespoons olive oil and lemon juice")
    assert reading.is_open
    assert "2 foods, olive oil and lemon juice" in reading.problem


def test_foods_side_by_side_with_no_amount_are_several():
    assert [reading.key for reading in read_each("parsley and chives, for garnish")] == [
        "parsley-fresh",
        "chives-fresh",
    ]


def test_an_example_is_read_where_the_name_alone_is_open():
    reading = read("1 lb firm white fish, such as cod")
    assert reading.key == "cod"
    assert "as an example" in reading.how


def test_an_example_changes_nothing_where_the_name_is_clear():
    assert read("2 cups milk, preferably skim").key == "milk-whole"


@pytest.mark.parametrize("line", ["1 bowl of grapes", "one spoon of sugar", "2 blobs butter", "3 glorps flour"])
def test_a_measure_of_no_known_size_is_asked(line):
    assert read(line).grams is None


@pytest.mark.parametrize(
    ("line", "key"),
    [
        ("2 apples or pears, diced", "apples-raw"),  # no apple pears
        ("1 cup dairy-free milk such as almond", "almond-milk-unsweetened"),
        ("2 cups berries, such as strawberries", "strawberries-raw"),
        ("1/3 cup chopped nuts (walnuts, pecans or almonds)", "walnuts"),
        ("1 cup wild mushrooms, sliced", ""),
        ("8 oz edamame in pods", ""),
        ("2 cups low-fat or fat-free milk", "milk-low-fat"),
    ],
)
def test_what_is_offered_or_named_as_an_example_is_read_as_it_is_meant(line, key):
    assert read(line).key == key


PLAIN = "apple butter milk garlic salt corn peanut almond coconut cream yogurt strawberry tomato grape sesame".split()


def test_two_foods_side_by_side_are_never_a_third():
    """Milk and butter are no buttermilk, garlic and salt no garlic salt; of apples or butter the apples are read."""
    pairs = [(first, second) for first in PLAIN for second in PLAIN if first != second]
    one = [f"{first} and {second}" for first, second in pairs if not read(f"1 cup {first} and {second}").problem]
    alone = {first: read(f"1 cup {first}").key for first in PLAIN}
    other = [
        f"{first} or {second}"
        for first, second in pairs
        if read(f"1 cup {first} or {second}").key not in ("", alone[first])
    ]
    assert (one, other) == ([], [])


@pytest.mark.parametrize(
    ("line", "key"),
    [
        ("1 cup peas and carrots, frozen", "peas-and-carrots-frozen"),
        ("1/4 cup sweet and sour sauce", "sauce-sweet-and-sour"),
        ("2 cups half and half", "cream-half-and-half"),
    ],
)
def test_and_may_belong_to_a_name(line, key):
    assert read(line).key == key


def test_an_example_does_not_take_away_how_rich_a_food_is():
    assert read("3/4 cup whole-milk plain strained yogurt, such as Greek-style").key == "yogurt-greek-whole"
    assert read("1 cup low-fat yogurt, such as Greek").key == "yogurt-low-fat"
