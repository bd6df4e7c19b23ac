"""How long checking a whole talk takes: at most 50 ms for 30 points, read afresh, judged again, or after a slider."""

import statistics
import time
from dataclasses import replace

import pytest

from kit.meal.changes import set_grams
from kit.meal.nutrition import nutrition
from kit.speech import reading
from kit.speech.points import check_points
from kit.talk.library import bundled_talks, read_talk
from kit.talk.talk import Point
from tests.speech.corpus import dish, rows

LIMIT = 0.050  # [s]


@pytest.mark.bench
@pytest.mark.parametrize("name", bundled_talks())
def test_thirty_points_are_checked_within_fifty_milliseconds(name):
    talk = read_talk(name)
    talk = replace(talk, points=(talk.points * 30)[:30])
    numbers = nutrition(talk.recipe)
    check_points(talk, numbers)  # tables are read once, when the talk is loaded
    taken = []
    for _ in range(20):
        begun = time.perf_counter()
        check_points(talk, numbers)
        taken.append(time.perf_counter() - begun)
    print(f"\n{name}: 30 points in {statistics.median(taken) * 1000:.1f} ms, at most {max(taken) * 1000:.1f} ms")
    assert statistics.median(taken) <= LIMIT


@pytest.mark.bench
def test_thirty_different_sentences_are_read_and_judged_within_fifty_milliseconds():
    says = [row["say"] for row in rows("given_sentences") if row["dish"] == "main"][:30]
    talk = replace(dish("main").talk, points=tuple(map(Point, says)))
    numbers, oil = nutrition(talk.recipe), talk.recipe.ingredients[0]
    moved = [nutrition(set_grams(talk.recipe, oil.food.key, oil.grams + step)) for step in range(1, 21)]
    check_points(talk, numbers)
    for what, states, forget in (
        ("afresh", [numbers] * 7, True),
        ("again", [numbers] * 20, False),
        ("moved", moved, False),
    ):
        taken = []
        for state in states:
            if forget:
                reading._read.cache_clear()
            begun = time.process_time()  # of this process alone, whatever else the machine does
            check_points(talk, state)
            taken.append(time.process_time() - begun)
        print(f"\n30 different sentences, {what}: {statistics.median(taken) * 1000:.1f} ms")
        assert statistics.median(taken) <= LIMIT
