"""One thing said in many ways: each way is filled with what is true and with what is not."""

import pytest

from kit.rules.verdicts import HOLDS, NOTHING_TO_CHECK, OFF
from kit.speech.checking import check_sentence
from tests.speech.corpus import dish, rows

DAYS = {"three": True, "four": True, "six": False, "ten": False}  # USDA FSIS: 3 to 4 days in the refrigerator
HOURS = {"two": True, "five": False, "eight": False}  # USDA FSIS: 2 hours at room temperature
REHEATED = {"165": True, "140": False, "110": False}  # °F; USDA FSIS
LAMB = {"145": True, "125": False, "110": False}  # °F, whole cuts; USDA FSIS
IN_IT = {"egg": True, "dairy": True, "wheat": True, "nuts": True, "soy": False, "fish": False, "sesame": False}
KINDS = {"vegetarian": True, "vegan": False}
# What is said, the dish, what fills the gap, and whether it is said or denied.
SAID = {
    "days in the refrigerator": ("lambstew", DAYS, True),
    "hours out": ("lambstew", HOURS, True),
    "reheated": ("lambstew", REHEATED, True),
    "lamb done": ("lambstew", LAMB, True),
    "free of": ("bananabread", IN_IT, False),
    "contains": ("bananabread", IN_IT, True),
    "is of a kind": ("bananabread", KINDS, True),
    "is not of a kind": ("bananabread", KINDS, False),
    "grams of fat": ("trout", {"seventeen grams": True, "30 grams": False}, True),
    "share of a day": ("trout", {"two fifths": True, "ten percent": False, "three quarters": False}, True),
    "share of the energy": ("trout", {"38 percent": True, "sixty percent": False, "a tenth": False}, True),
    "brings so much": ("trout", {"three quarters": True, "a third": False, "ten percent": False}, True),
    "left out": ("trout", {"about three grams": True, "about ten grams": False}, True),
    "more than eggs": ("trout", {"two eggs": True, "eight eggs": False}, True),
    "whole recipe": ("beets", {"about 1,830 calories": True, "about 370 calories": False}, True),
    "half a portion": ("beets", {"about 183 calories": True, "about 370 calories": False}, True),
    "an ounce of a food": ("beets", {"about 160 calories": True, "about 370 calories": False}, True),
}


@pytest.mark.parametrize("what", SAID)
def test_every_way_of_saying_it_holds_where_it_is_true_and_is_off_or_asked_where_it_is_not(what):
    name, filled, affirmed = SAID[what]
    wrong = []
    for row in (row for row in rows("ways_of_saying") if row["what"] == what):
        for word, true in filled.items():
            say = row["say"].format(word)
            say = say[:1].upper() + say[1:]
            turned = "does not keep" in say
            expected = (OFF, HOLDS)[(true == affirmed) != turned]
            found = check_sentence(say, dish(name), find_instead=False).verdict
            if found == NOTHING_TO_CHECK or (found in (HOLDS, OFF) and found != expected):
                wrong.append(f"{say} {found}")
    assert wrong == []


def test_no_word_of_health_is_vouched_for_or_passed_over():
    words = [row["say"] for row in rows("ways_of_saying") if row["what"] == "of health"]
    found = {say: check_sentence(say, dish("lambstew"), find_instead=False).verdict for say in words}
    assert {say: verdict for say, verdict in found.items() if verdict in (HOLDS, NOTHING_TO_CHECK)} == {}
