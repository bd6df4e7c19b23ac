"""The plan as a chart: bars where the plan has them, told in words too."""

import pytest

from kit.show.timeline import timeline
from kit.talk.plan import Plan, PlannedPot, PlannedStep

STEPS = (
    PlannedStep("Start the lentils", "", "", 0, 2, 2, 1),
    PlannedStep("Fill the bowls", "", "", 22, 25, 1, 3, waits=20, needs=("lentils",)),
)
POTS = (PlannedPot("lentils", "Start the lentils", 2, 22, -18),)
PLAN = Plan(STEPS, POTS, 20)


def test_a_bar_runs_from_the_start_to_the_end_of_its_step():
    steps = timeline(PLAN).data[0]
    assert list(zip(steps.base, steps.x, strict=True)) == [(0, 2), (22, 3)]


def test_a_wait_is_an_outlined_bar_before_its_step():
    waits = timeline(PLAN).data[1]
    assert (waits.base[1], waits.x[1]) == (2, 20)
    assert list(waits.marker.line.width) == [0, 2]


def test_pots_are_hatched_and_stand_below_the_steps():
    pots = timeline(PLAN).data[2]
    assert (pots.base[0], pots.x[0], pots.y[0]) == (2, 20, 2)
    assert pots.marker.pattern.shape == "/"


def test_the_latest_moment_to_start_a_pot_is_marked_even_before_the_talk():
    figure = timeline(PLAN)
    assert figure.data[3].x == (-18,)
    assert figure.layout.xaxis.range[0] == -18


def test_every_bar_carries_its_times_in_words():
    words = timeline(PLAN).data[4].text
    assert words[1].strip() == "22:00 to 25:00, waits 20:00"
    assert words[2].strip() == "ready 22:00; start it 18:00 before the talk, 20:00 late"


def test_the_end_of_the_slot_is_a_line_with_words():
    layout = timeline(PLAN).layout
    assert layout.shapes[0].x0 == 20
    assert layout.annotations[0].text == "end of the slot, 20:00"
    assert not timeline(Plan(STEPS, POTS)).layout.shapes


def test_the_words_beside_the_last_bar_have_room():
    figure = timeline(PLAN)
    assert figure.layout.xaxis.range[1] > 25 * 1.2


@pytest.mark.parametrize("plan", [Plan((), ()), Plan((PlannedStep("Talk", "", "", 0, 0, 0, 0),), ())])
def test_an_empty_plan_is_drawn_too(plan):
    assert timeline(plan).layout.meta["alternative"]


def test_the_chart_has_its_sentence_for_those_who_cannot_see_it():
    assert "too long" in timeline(PLAN).layout.meta["alternative"]
