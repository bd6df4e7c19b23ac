"""The plan as a table: cells change their own line, and nothing else."""

import pytest

from kit.errors import KitError
from kit.talk.library import bundled_talks, read_talk
from kit.talk.plan_rows import plan_rows, with_cell, with_step, without_step
from kit.talk.plan_text import read_plan, write_plan

PLAN = """# Start
2 min: welcome; pot of rice 20 min
  Say: Good day.

10 min talk: what a bowl holds
soup 1; x
4 min: fill the bowls; needs pot of rice"""


def test_a_cell_changes_its_own_line():
    for cell, value, line in (
        ("title", "hello", "2 min: hello; pot of rice 20 min"),
        ("hands", "3,5", "3.5 min: welcome; pot of rice 20 min"),
        ("hands", "1 h 5 min", "65 min: welcome; pot of rice 20 min"),
        ("talked", "4", "4 min talk, 2 min hands: welcome; pot of rice 20 min"),
        (
            "pots",
            "tray 20 min in the oven at 425; rice 9 min",
            "2 min: welcome; tray 20 min in the oven at 425; rice 9 min",
        ),
        ("pots", "", "2 min: welcome"),
        ("needs", "broth", "2 min: welcome; pot of rice 20 min; needs broth"),
    ):
        after = with_cell(PLAN, 1, cell, value).split("\n")
        assert (after[1], after[:1] + after[2:]) == (line, PLAN.split("\n")[:1] + PLAN.split("\n")[2:])


def test_what_a_cell_cannot_hold_is_told_and_a_line_that_is_not_clear_is_settled_first():
    for place, cell, value, told in (
        (1, "title", " ", "a step needs a name"),
        (1, "hands", "much", "is no time"),
        (1, "hands", "100000", "hands_minutes"),
        (1, "pots", "soup", "not sure what"),
        (1, "pots", "needs rice", "is no pot"),
        (5, "hands", "3", "settle the line first"),
        (0, "hands", "3", "no cell"),
    ):
        with pytest.raises(KitError, match=told):
            with_cell(PLAN, place, cell, value)


def test_a_step_is_added_and_taken_away_with_its_words():
    assert without_step(PLAN, 1).split("\n")[:2] == ["# Start", ""]
    assert with_step("").split("\n") == ["5 min: the next step"]
    assert len(read_plan(with_step(PLAN))[0]) == len(read_plan(PLAN)[0]) + 1


def test_every_cell_of_a_bundled_plan_written_again_says_the_same():
    for name in bundled_talks():
        text = write_plan(read_talk(name).steps)
        for row in plan_rows(text):
            for cell in ("title", "hands", "talked", "pots", "needs"):
                again = with_cell(text, row.place, cell, getattr(row, cell))
                assert read_plan(again)[0] == read_plan(text)[0]
