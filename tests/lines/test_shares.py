"""How much of an ingredient is eaten."""

import pytest
from hypothesis import given
from strategies import texts

from kit.lines.reader import read
from kit.lines.shares import share_used


@pytest.mark.parametrize(
    ("line", "text", "share"),
    [
        ("1/2 cup dressing (for marinade, a quarter is used)", "1/2 cup dressing", 0.25),
        ("1/2 cup soy sauce, marinade: a quarter is used", "1/2 cup soy sauce", 0.25),
        ("1/2 cup soy sauce (only 1/4 of the marinade is used)", "1/2 cup soy sauce", 0.25),
        ("2 cups oil for frying, 90% is poured off", "2 cups oil", 0.1),
        ("1 cup flour for dredging (half is used)", "1 cup flour for dredging", 0.5),
        ("1 cup brine, none is used", "1 cup brine", 0.0),
        ("1 cup milk", "1 cup milk", 1.0),
        ("half a cup of milk", "half a cup of milk", 1.0),
        ("1 cup oil, of which half is drained off", "1 cup oil", 0.5),
        ("1 cup beans (these are used)", "1 cup beans (these are used)", 1.0),
        ("1 egg, two are used", "1 egg, two are used", 1.0),
    ],
)
def test_the_share_that_a_line_says_is_taken_off_it(line, text, share):
    assert share_used(line) == (text, share)


def test_a_quarter_of_a_marinade_weighs_a_quarter_and_less_surely():
    whole, quarter = read("1/2 cup soy sauce"), read("1/2 cup soy sauce (marinade: a quarter is used)")
    assert quarter.key == whole.key
    assert quarter.grams == pytest.approx(whole.grams / 4)
    assert quarter.count * quarter.noun_grams == pytest.approx(quarter.grams)
    assert quarter.relative_sd > whole.relative_sd
    assert "of it 25 % is used, as the line says" in quarter.how


def test_fat_that_is_poured_off_is_not_eaten():
    assert read("2 tbsp olive oil, half is poured off").grams == pytest.approx(13.5)
    assert read("1 cup buttermilk; 80% of it is discarded").grams == pytest.approx(0.2 * read("1 cup buttermilk").grams)


@given(texts)
def test_any_share_is_one_of_a_whole(text):
    assert 0.0 <= share_used(f"{text} is used")[1] <= 1.0
