"""Ranking names by the words they share with a query."""

import pytest
from each import for_each
from hypothesis import given
from hypothesis import strategies as st

from kit.food.wordindex import WordIndex

NAMES = [
    "Lentils, raw",
    "Lentils, pink, raw",
    "Lentils, cooked, with salt",
    "Lentils, cooked, without salt",
    "Soup, lentil, canned",
    "MILLBROOK'S Lentils, cooked",
    "Nuts, almonds",
    "Oil, almond",
    "Egg, white, raw, fresh",
    "Egg, whole, raw, fresh",
    "Soybeans, green, raw",
    "Beans, black, canned",
    "Beef, ground, raw",
    "Beets, raw",
    "Oats",
    "Goat, raw",
]
INDEX = WordIndex.build(NAMES)


def best(query, limit=1):
    return [NAMES[number] for number, _ in INDEX.find(query, limit)]


@for_each(
    ("query", "name"),
    [
        ("lentils", "Lentils, raw"),
        ("pink lentil", "Lentils, pink, raw"),
        ("lentil pink", "Lentils, pink, raw"),
        ("cooked lentils", "Lentils, cooked, with salt"),
        ("lentils cooked without salt", "Lentils, cooked, without salt"),
        ("lentil soup", "Soup, lentil, canned"),
        ("almonds", "Nuts, almonds"),
        ("almond oil", "Oil, almond"),
        ("egg", "Egg, whole, raw, fresh"),
        ("soya beans", "Soybeans, green, raw"),
        ("soy beans", "Soybeans, green, raw"),
        ("blackbeans", "Beans, black, canned"),
        ("almods", "Nuts, almonds"),
        ("lentlis raw", "Lentils, raw"),
        ("hentils", "Lentils, raw"),
        ("alm", "Nuts, almonds"),
    ],
)
def test_the_name_that_was_meant_comes_first(query, name):
    assert best(query) == [name]


def test_a_makers_product_comes_after_the_plain_foods():
    assert best("cooked lentils", 3)[-1] == "MILLBROOK'S Lentils, cooked"


def test_a_known_word_is_not_taken_for_a_misspelling_of_another():
    assert best("beef", 5) == ["Beef, ground, raw"]
    assert best("oats", 5) == ["Oats"]


def test_a_name_with_every_word_scores_more_than_one_with_some():
    (first, full), (_, part) = INDEX.find("pink lentils raw", 2)
    assert NAMES[first] == "Lentils, pink, raw"
    assert full == 100
    assert part < 80


@pytest.mark.parametrize("query", ["", "   ", "xyzzy", "of the", "%$#", "日本"])
def test_nothing_is_found_for_words_that_are_no_food(query):
    assert INDEX.find(query) == []


def test_an_index_of_no_names_finds_nothing():
    empty = WordIndex.build([])
    assert empty.find("lentils") == []
    assert WordIndex.from_parts(empty.parts()).find("lentils") == []


def test_a_name_without_a_word_does_no_harm():
    assert WordIndex.build(["—", "Lentils"]).find("lentils") == [(1, 100.0)]


def test_a_stored_index_finds_the_same():
    stored = WordIndex.from_parts(INDEX.parts())
    for query in ("lentils", "cooked lentils", "almods", "chick pea"):
        assert stored.find(query) == INDEX.find(query)


@given(st.text(max_size=60), st.integers(0, 20))
def test_any_query_gives_falling_scores_within_bounds(query, limit):
    found = INDEX.find(query, limit)
    scores = [score for _, score in found]
    assert len(found) <= limit
    assert scores == sorted(scores, reverse=True)
    assert all(0 < score <= 100 for score in scores)
    assert len({number for number, _ in found}) == len(found)
