"""How much a line says, apart from its food."""

import pytest
from each import for_each

from kit.food.amounts import read_count
from kit.food.measures import unit
from kit.lines.quantities import added, quantity


def told(text, *inside):
    """Return what is read of "2 cups flour": the amount written, and the words left for the food."""
    written, name, _ = quantity(*read_count(text), inside, "us")
    return written, name


@for_each(
    ("text", "count", "name", "food"),
    [
        ("2 cups flour", 2, "cup", "flour"),
        ("2 cups of flour", 2, "cup", "flour"),
        ("1 lb 4 oz potatoes", 1.25, "pound", "potatoes"),
        ("2 tbsp + 1 tsp oil", 2 + 1 / 3, "tablespoon", "oil"),
        ("1 cup plus 2 tbsp oats", 1.125, "cup", "oats"),
        ("225 g/8 oz butter", 225, "gram", "butter"),
        ("3 fl. oz. cream", 3, "fluid_ounce", "cream"),
        ("1 heaping tsp cumin", 1.25, "teaspoon", "cumin"),
    ],
)
def test_a_unit_is_read_with_what_is_added_to_it(text, count, name, food):
    written, rest = told(text)
    assert (written.count.value, written.unit.name, rest) == (pytest.approx(count), name, food)


@pytest.mark.parametrize(
    ("text", "inside", "count", "measure", "size"),
    [
        ("1 15-ounce can beans", (), 1, "can", 15),
        ("2 x 400 g tins beans", (), 2, "can", 400),
        ("2 cans beans", ("15 oz each",), 2, "can", 15),
        ("400g tin beans", (), 1, "can", 400),
        ("1/2 12-ounce jar beans", (), 0.5, "jar", 12),
        ("1 package beans", ("8 oz",), 1, "package", 8),
    ],
)
def test_a_package_has_a_count_and_a_size(text, inside, count, measure, size):
    written, rest = told(text, *inside)
    assert (written.count.value, written.measure, written.package, rest) == (count, measure, size, "beans")


def test_the_drained_weight_on_a_can_is_what_counts():
    written, _ = told("1 can sweetcorn", "drained weight 260 g")
    assert (written.count.value, written.unit, written.package) == (260, unit("g"), None)


def test_a_weight_in_parentheses_is_of_all_unless_of_each():
    assert told("2 fillets salmon", "about 300 g")[0].count.value == 300
    assert told("2 fillets salmon", "150 g each")[0].count.value == 300


def test_a_volume_in_parentheses_does_not_replace_a_cup():
    assert told("1 cup milk", "240 ml")[0].unit == unit("cup")


@pytest.mark.parametrize(
    ("text", "inside", "count", "length"),
    [
        ("2-inch piece ginger", (), 1, 2),
        ("1 2-inch piece ginger", (), 1, 2),
        ("1 piece ginger", ("1 inch",), 1, 1),
        ("5 cm piece ginger", (), 1, 5 / 2.54),
        ("4 tortillas", ("8-inch",), 4, 8),
    ],
)
def test_a_length_is_not_a_count(text, inside, count, length):
    written, _ = told(text, *inside)
    assert (written.count.value, written.length) == (count, pytest.approx(length))


def test_the_first_size_of_two_is_taken():
    written, rest = told("1 large or 2 small onions")
    assert (written.count.value, written.size, rest) == (1, "large", "onions")


def test_what_is_added_behind_counts_only_without_a_food_of_its_own():
    written, _ = told("1 cup flour")
    assert added("flour, plus 2 tbsp for dusting", written, "us")[1].count.value == pytest.approx(1.125)
    assert added("cornstarch + 1 tbsp water", written, "us")[1].count.value == 1


def test_a_metric_cup_is_250_millilitres():
    assert quantity(*read_count("1 cup milk"), (), "metric")[0].unit.size == 250
