"""What the kit itself writes of a dish passes the reader of sentences: nothing that it says of a dish is off."""

import pytest

from kit.meal.changes import read_change
from kit.meal.changes_told import told
from kit.meal.nutrition import nutrition
from kit.rules.verdicts import OFF
from kit.share.contents import Contents
from kit.show.views import SOURCES_OF, drawing
from kit.speech.checking import check_sentence
from kit.talk.dish import Dish
from kit.talk.library import bundled_talks, read_talk


def sent(contents):
    """The sentences of a follow-up: allergens, keeping, cautions, steps; what is left out of it is not sent."""
    points = contents.points
    answers = [question.answer for question in contents.questions]
    return [*contents.allergens, *contents.keeping, *contents.cautions, *contents.steps, *points, *answers]


def captions(numbers, rules):
    """The sentences with the charts, a source chart for every nutrient that can be chosen."""
    drawn = [drawing(name, numbers, numbers, rules=rules) for name in ("shares", "balance", "day")]
    drawn += [drawing("sources", numbers, numbers, name, rules) for name in SOURCES_OF]
    return [words for one in drawn for words in (one["layout"]["meta"]["sentence"],)]


@pytest.mark.parametrize("name", bundled_talks())
def test_nothing_that_the_kit_writes_of_a_dish_is_off(name):
    talk = read_talk(name)
    numbers = nutrition(talk.recipe)
    dish = Dish(talk, numbers)
    tries = [question.try_ for question in talk.questions if question.try_]
    changes = [step.text for line in tries for step in told(talk.recipe, read_change(line, talk.recipe), talk.measures)]
    wrong = []
    for say in [*sent(Contents(talk, numbers)), *captions(numbers, talk.rules), *changes]:
        found = check_sentence(say, dish, find_instead=False)
        # An answer is about the dish as its question tries it; it was judged on that.
        if found.verdict == OFF and say not in [one.answer for one in Contents(talk, numbers).questions]:
            wrong.append(f"{say} ({found.because})")
    assert wrong == []
