"""What is said to go has to go: a step that takes something else away, or nothing, is asked about."""

import pytest

from kit.errors import ChangeError
from kit.food.composition import foods
from kit.meal.change_taken import ask_what_goes
from kit.meal.recipe import recipe
from kit.meal.steps import Amount, LeaveOut, Row

BREAD = recipe("Bread", ["2 cups whole-wheat flour", "1 cup all-purpose flour", "1/2 cup walnuts"], servings=8)
WALNUTS = Row(2, "walnuts")


def test_something_else_that_goes_is_no_answer():
    ask_what_goes("no walnuts", BREAD, [LeaveOut(WALNUTS)], foods())
    ask_what_goes("only half, no more walnuts", BREAD, [Amount(WALNUTS, times=0.5)], foods())
    with pytest.raises(ChangeError, match="should not be there"):
        ask_what_goes("no walnuts and no butter", BREAD, [LeaveOut(WALNUTS)], foods())


def test_another_amount_takes_away_only_where_it_is_less():
    more = Amount(WALNUTS, times=0.0, plus=100.0)
    with pytest.raises(ChangeError, match="should not be there"):
        ask_what_goes("1 cup walnuts and no walnut", BREAD, [more], foods())
    ask_what_goes("a cup of walnuts, not 1/2", BREAD, [more], foods())
