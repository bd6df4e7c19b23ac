"""Whether a food brings pork or beef, by its name."""

import pytest

from kit.food.composition import foods
from kit.rules.animals import brings

_KEYS = {
    ("ham", "pork"): True,
    ("bacon", "pork"): True,
    ("lard", "pork"): True,
    ("sausage-chorizo", "pork"): True,
    ("turkey-ham", "pork"): False,
    ("turkey-bacon-cooked", "pork"): False,
    ("bacon-meatless", "pork"): False,
    ("graham-crackers", "pork"): False,
    ("roll-hamburger", "beef"): False,
    ("sausage-frankfurter", "pork"): False,
    ("broth-beef", "beef"): True,
    ("veal-shank", "beef"): True,
    ("gelatin", "pork"): None,
    ("marshmallows", "beef"): None,
    ("lentils-dry", "pork"): False,
}


def test_pork_and_beef_are_told_by_the_name_and_gelatin_by_its_package():
    assert {key: brings(foods()[key[0]], key[1]) for key in _KEYS} == _KEYS


@pytest.mark.parametrize("animal", ["pork", "beef"])
def test_only_food_from_animals_or_with_meat_brings_it(animal):
    plants = [food.key for food in foods().values() if brings(food, animal) and food.vegetarian]
    assert plants == []
