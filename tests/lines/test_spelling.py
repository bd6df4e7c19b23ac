"""Misspelt food words, and words of English."""

import pytest

from kit.food.composition import bundled_foods
from kit.lines.known_names import known_names
from kit.lines.spelling import english_words, near_word, spelled

NAMES = known_names(bundled_foods())


@pytest.mark.parametrize(
    ("written", "meant"),
    [("brocolli", "broccoli"), ("zuchini", "zucchini"), ("mozarella", "mozzarella"), ("jalepeno", "jalapeno")],
)
def test_a_misspelt_food_is_put_right_and_said(written, meant):
    assert spelled([written], NAMES) == ([meant], (f'"{written}" read as "{meant}"',))


def test_no_word_of_english_becomes_a_food():
    assert spelled(sorted(english_words()), NAMES) == (sorted(english_words()), ())


def test_the_list_of_english_words_is_needed():
    assert sum(near_word(word, NAMES) is not None for word in english_words()) > 500


@pytest.mark.parametrize("word", ["heat", "whisked", "flavour", "washed", "dried", "crust", "saltfish"])
def test_a_word_of_recipes_stays(word):
    assert spelled([word], NAMES)[0] == [word]
