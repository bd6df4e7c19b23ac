"""Finding a food by the words people use for it."""

from collections import defaultdict

import pytest
from each import for_each
from hypothesis import given
from hypothesis import strategies as st

from kit.errors import KitError, UnknownNameError
from kit.food.composition import bundled_foods
from kit.food.finding import find, food, index
from kit.food.vocabulary import SMALL_WORDS, singular, words

TABLE = bundled_foods()


@for_each("key", TABLE)
def test_a_food_is_found_by_its_name(key):
    assert find(TABLE[key].name, 1, TABLE)[0].food == key


def test_no_name_belongs_to_two_foods():
    """The same words in another order may: milk chocolate is no chocolate milk."""
    owners = defaultdict(set)
    for name in index(TABLE).names:
        owners[words(name.text)].add(name.food.key)
    assert {said: keys for said, keys in owners.items() if len(keys) > 1} == {}


@pytest.mark.parametrize(
    ("asked", "key"),
    [
        ("garbanzo beans", "chickpeas-dry"),
        ("aubergine", "eggplant-raw"),
        ("onoin", "onions-raw"),
        ("blackbeans", "black-beans-dry"),
        ("parmesean", "cheese-parmesan-grated"),
        ("oil olive", "olive-oil"),
        ("Crème fraîche and sour cream", "cream-sour"),
    ],
)
def test_synonyms_misspellings_and_order_do_not_matter(asked, key):
    assert find(asked, 3, TABLE)[0].food == key


def test_the_best_come_first():
    scores = [match.score for match in find("bell pepper", 10, TABLE)]
    assert scores == sorted(scores, reverse=True)
    assert max(scores) <= 100


def test_no_more_are_returned_than_asked_for():
    assert len(find("beans", 3, TABLE)) == 3


@pytest.mark.parametrize("nothing", ["", "  ", "of the", "!?"])
def test_a_text_without_a_word_is_told(nothing):
    with pytest.raises(KitError, match="has no word to look for"):
        find(nothing, 5, TABLE)


def test_a_word_that_is_no_food_finds_nothing():
    assert find("xylophone", 5, TABLE) == []


def test_an_unknown_key_is_told():
    with pytest.raises(UnknownNameError, match="did you mean"):
        food("lentils-dried")


@for_each(
    ("several", "one"),
    [
        ("tomatoes", "tomato"),
        ("leaves", "leaf"),
        ("berries", "berry"),
        ("asparagus", "asparagus"),
        ("kiwis", "kiwi"),
        ("radishes", "radish"),
        ("couscous", "couscous"),
        ("loaves", "loaf"),
        ("peas", "pea"),
    ],
)
def test_a_plural_is_read_as_its_singular(several, one):
    assert singular(several) == one


def test_accents_percents_and_free_from_are_one_word():
    assert words("Gruyère, 2 % fat-free, gluten-free") == ("gruyere", "2%", "fat", "free", "glutenfree")


@given(st.text(max_size=100))
def test_any_text_has_words_or_none(text):
    assert all(word and word == word.lower() for word in words(text))
    if set(words(text)) - SMALL_WORDS:
        assert len(find(text, 3, TABLE)) <= 3
