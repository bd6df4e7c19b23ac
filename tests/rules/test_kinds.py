"""Vegetarian, vegan and whole grain, by the facts of foods."""

import pytest

from kit.errors import UnknownNameError
from kit.food.composition import food_from, foods
from kit.meal.recipe import recipe
from kit.rules.kinds import fits, is_grain, part_fits

# food, vegetarian, vegan
KINDS = [
    ("honey", True, False),
    ("gelatin", False, False),
    ("marshmallows", False, False),
    ("egg", True, False),
    ("cheese-feta", True, False),
    ("lentils-dry", True, True),
    ("chicken-breast", False, False),
    ("worcestershire-sauce", False, False),
]


def test_honey_and_gelatin_are_from_animals():
    found = [(key, fits(foods()[key], "vegetarian"), fits(foods()[key], "vegan")) for key, *_ in KINDS]
    assert found == KINDS


def test_what_differs_by_maker_or_is_unknown_is_asked():
    unknown = food_from({}, name="Mystery loaf")
    by_maker = food_from({}, name="Loaf", origin="plant", vegetarian=True, check_package=True)
    assert fits(unknown, "vegan") is None
    assert fits(unknown, "vegetarian") is None
    assert fits(by_maker, "vegan") is None


def test_pearled_grain_is_not_whole_and_breads_and_snacks_are_grain():
    assert fits(foods()["barley-hulled"], "whole grain") is True
    assert fits(foods()["barley-pearled-dry"], "whole grain") is False
    pearled = food_from({}, name="Farro, pearled, dry", whole_grain=True, group="grain")
    assert fits(pearled, "whole grain") is False
    grains = {key: is_grain(foods()[key]) for key in ("bread-white", "rice-cakes", "oats-rolled-dry", "chickpeas-dry")}
    assert grains == {"bread-white": True, "rice-cakes": True, "oats-rolled-dry": True, "chickpeas-dry": False}


def test_farro_is_asked_and_pearled_farro_is_not_whole():
    lines = ["1 cup farro", "1 cup pearled farro", "1 cup whole farro", "1 cup spelt", "1 cup pearled spelt"]
    parts = recipe("Grain pot", lines).ingredients
    assert [part_fits(part, "whole grain") for part in parts] == [None, False, True, True, False]
    assert [part_fits(part, "vegan") for part in parts] == [True] * 5


def test_an_unknown_kind_is_told():
    with pytest.raises(UnknownNameError, match='no kind of food "vegann"; did you mean "vegan"'):
        fits(foods()["honey"], "vegann")
