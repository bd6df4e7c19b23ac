"""Which foods bring an allergen, and of which that has to be asked."""

import pytest

from kit.errors import UnknownNameError
from kit.food.allergens import allergen_names, allergens_called, read_allergens
from kit.food.composition import food_from, foods
from kit.meal.recipe import recipe
from kit.rules.allergens import bringing, must_be_asked
from kit.rules.cautions import allergens

CALLED = {
    "nuts": ("tree_nut", "pine_nut", "peanut"),
    "nut": ("tree_nut", "pine_nut", "peanut"),
    "tree nuts": ("tree_nut", "pine_nut"),
    "Peanuts": ("peanut",),
    "shellfish": ("crustacean", "mollusc"),
    "crustaceans": ("crustacean",),
    "dairy": ("milk",),
    "gluten": ("gluten",),
    "soya": ("soy",),
    "sesame": ("sesame",),
    "sulfites": ("sulphites",),
}


def test_words_for_allergens_are_known_and_several_are_meant_where_people_mean_several():
    assert {word: allergens_called(word) for word in CALLED} == CALLED
    assert all(allergens_called(name.split(" (")[0]) for name in allergen_names().values())
    with pytest.raises(UnknownNameError, match='no allergen "glutten"; did you mean "gluten"'):
        allergens_called("glutten")


def test_a_contains_line_is_read_and_what_is_not_known_stays_as_written():
    assert read_allergens("Wheat, Milk, Tree Nuts (almonds) and Soybeans.") == (
        "wheat",
        "milk",
        "tree_nut",
        "pine_nut",
        "soy",
    )
    assert read_allergens("buckwheat") == ("buckwheat",)


# foods, allergen, whether it is brought (True), absent (False) or asked (None)
BROUGHT = [
    ("peanut-butter", "peanut", True),
    ("almonds", "tree_nut", True),
    ("pine-nuts", "pine_nut", True),
    ("chestnuts", "tree_nut", None),
    ("coconut-milk", "tree_nut", False),
    ("oats-rolled-dry", "gluten", None),
    ("oat-bran-dry", "gluten", None),
    ("barley-pearled-dry", "gluten", True),
    ("bulgur-dry", "gluten", True),
    ("quinoa-dry", "gluten", False),
    ("mussels", "mollusc", True),
    ("shrimp", "crustacean", True),
    ("blood-sausage", "gluten", True),
    ("blood-sausage", "milk", None),
    ("egg-fried", "egg", True),
    ("egg-fried", "milk", None),
    ("graham-crackers", "wheat", True),
    ("graham-crackers", "milk", None),
    ("granola-bar", "peanut", None),
    ("margarine", "milk", True),
    ("bread-white", "wheat", True),
    ("bread-white", "sesame", None),
    ("roll-hamburger", "egg", None),
    ("barbecue-sauce", "soy", None),
]


def test_foods_bring_what_the_lists_say_and_are_asked_where_makers_differ():
    found = []
    for key, allergen, _ in BROUGHT:
        brings, asked = bringing([foods()[key]], allergen)
        found.append((key, allergen, True if brings else None if asked else False))
    assert found == BROUGHT


def test_a_food_of_which_nothing_is_known_is_asked():
    assert must_be_asked(food_from({}, name="Mystery mix"))
    assert not must_be_asked(foods()["carrots-raw"])


def test_pine_nuts_are_tree_nuts_on_the_us_list_only_and_chestnuts_on_neither():
    """FDA's guidance of January 2025, from memory; Regulation (EU) 1169/2011, Annex II."""
    mixed = recipe("Nut mix", ["1/4 cup pine nuts", "1/4 cup walnuts", "1/4 cup chestnuts"])
    assert [one.sentence for one in allergens(mixed)] == ["Tree nuts, from the walnuts and pine nuts"]
    assert [one.sentence for one in allergens(mixed, "eu")] == ["Tree nuts, from the walnuts"]
