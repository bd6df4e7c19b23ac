"""Ways of saying a what-if that may mean two things are asked about."""

import pytest

from kit.errors import ChangeError
from kit.meal.change_unclear import ask_if_unclear


def unclear(line):
    try:
        ask_if_unclear(line)
    except ChangeError:
        return True
    return False


def test_what_may_mean_two_things_is_asked_about_and_the_clear_line_beside_it_is_not():
    beside = {
        "barley instead of the rice, but only 1 cup": "1 cup barley instead of the rice",
        "no feta on half": "half the feta",
        "4 times less salt": "4 times the salt",
        "1 cup corn or 2": "1 cup corn or so",
        "no corn, yes peas": "yes, no corn",
        "cod cut in half": "can the salt be cut in half",
        "half the rice, but peas too": "half the rice but all the peas",
        "less corn: 1 cup": "less corn",
        "corn down 1 cup": "corn down to 1 cup",
        "half whole-wheat flour": "half whole-wheat and half white flour",
    }
    assert [line for line in beside if not unclear(line)] == []
    assert [line for line in beside.values() if unclear(line)] == []


def test_the_question_says_what_to_write():
    with pytest.raises(ChangeError, match="write one amount"):
        ask_if_unclear("1 cup corn or 2")
