"""Times of a plan that have to be asked about: inside a name, and of the day."""

import pytest

from kit.talk.plan_text import read_plan, write_plan
from kit.talk.talk import PlanStep


def problems(text):
    return [line.problem for line in read_plan(text)[1]]


@pytest.mark.parametrize(
    ("line", "better"),
    [
        (
            "Rice on (5 min): Rice takes longest, so it goes first.",
            "5 min: Rice on\n  Say: Rice takes longest, so it goes first.",
        ),
        ("Wait 10 minutes", "10 min: Wait"),
        ("Let it rest for 1 h 15 min before slicing", "75 min: Let it rest before slicing"),
        ("Simmer 12 mins; curry 15 min", "12 min: Simmer; curry 15 min"),
        (
            "Soup (3 min): Nearly there; curry 15 min; needs rice",
            "3 min: Soup; curry 15 min; needs rice\n  Say: Nearly there",
        ),
    ],
)
def test_a_time_inside_the_name_of_a_step_is_asked_about_and_the_line_that_counts_it_offered(line, better):
    _, (read,) = read_plan(line)
    assert "counts for nothing" in read.problem
    assert read.choices == (better,)
    assert problems(better) == [""] * len(better.splitlines())


@pytest.mark.parametrize(
    "line",
    [
        "5 min: wait",
        "Rice on, 5 min",
        "Rice on; rice 40 min",
        "Cut 2 onions",
        "10 min talk: welcome",
        '0 min: "Wait 10 minutes"',
    ],
)
def test_a_step_whose_minutes_are_read_is_not_asked_about(line):
    assert problems(line) == [""]


def test_times_of_day_are_asked_about_and_become_minutes_by_a_choice():
    steps = "12:00 Welcome\n12:05 Rice on; rice 40 min\n12:50 Serve\n1:00 pm Questions"
    _, lines = read_plan(steps)
    assert all("may be a time of day" in line.problem for line in lines)
    assert [line.choices for line in lines] == [
        ("5 min: Welcome",),
        ("45 min: Rice on; rice 40 min",),
        ("10 min: Serve",),
        (),
    ]
    assert problems("12:00 - 12:10: Welcome") != [""]
    assert problems("0:00 Welcome\n0:05 Rice on\n0:20 Serve") != ["", "", ""]


def test_minutes_and_seconds_that_do_not_grow_are_how_long_a_step_takes():
    read, lines = read_plan("2:30: stir\n1:00: wait\n2:00 plate")
    assert [line.problem for line in lines] == ["", "", ""]
    assert [step.hands_minutes for step in read] == [2.5, 1.0, 2.0]


def test_a_step_that_a_file_names_with_a_time_is_written_so_that_it_is_not_asked_about():
    steps = (PlanStep("Wait 10 minutes"), PlanStep("12:05 Rice on"), PlanStep("12:10 Serve", hands_minutes=2.0))
    read, lines = read_plan(write_plan(steps))
    assert read == steps
    assert not any(line.problem for line in lines)
