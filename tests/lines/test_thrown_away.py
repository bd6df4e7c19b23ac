"""What a line says is used of an ingredient."""

import pytest

from kit.lines.reader import read
from kit.lines.thrown_away import share_said


def test_a_marinade_is_counted_as_far_as_it_is_used():
    whole, used = read("1/4 cup olive oil"), read("1/4 cup olive oil (marinade: a quarter is used)")
    assert used.key == "olive-oil"
    assert used.grams == pytest.approx(whole.grams / 4)
    assert used.low < 0.7 * used.grams
    assert "25 % is used, as the line says" in used.how


def test_fat_that_is_poured_off_is_not_eaten():
    assert read("2 tbsp olive oil, half is poured off").grams == pytest.approx(13.5)
    assert read("1 cup buttermilk; 80% of it is discarded").grams == pytest.approx(0.2 * read("1 cup buttermilk").grams)


def test_a_line_that_says_nothing_of_it_is_as_it_was():
    assert share_said("1/2 cup olive oil") == (None, "1/2 cup olive oil")
    assert share_said("half a cup of milk") == (None, "half a cup of milk")
    assert share_said("1 can (15 oz) beans, drained")[0] is None
