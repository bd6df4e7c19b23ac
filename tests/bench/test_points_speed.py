"""How long checking a whole talk takes: at most 50 ms for 30 points, once it has been read."""

import statistics
import time
from dataclasses import replace

import pytest

from kit.meal.nutrition import nutrition
from kit.speech.points import check_points
from kit.talk.library import bundled_talks, read_talk

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
