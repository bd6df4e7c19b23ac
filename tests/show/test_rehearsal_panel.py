"""The clock and the cards, by pressing their buttons."""

import re

import pytest

from kit.meal.recipe import recipe
from kit.show.rehearsal_panel import ClockPanel, PracticePanel, day_plan, difference_words
from kit.talk.practice import Score, read_scores
from kit.talk.rehearsal import Taken
from kit.talk.talk import PlanStep, Point, Pot, Talk

STEPS = (
    PlanStep("Start", say="Welcome.", hands_minutes=1, pots=(Pot("lentils", 3),)),
    PlanStep("Talk", say_minutes=2),
    PlanStep("Fill", hands_minutes=2, needs=("lentils",)),
)
POINTS = (Point("A bowl has {protein}."), Point("It keeps {keeps}."), Point("Stir."))


def a_talk(steps=STEPS, points=POINTS):
    return Talk("pot", recipe("Pot", ["1 cup lentils, dry"], servings=2), points=points, steps=steps)


class Watch:
    """A clock that stands until it is put forward."""

    def __init__(self):
        self.seconds = 100.0

    def __call__(self):
        return self.seconds


@pytest.fixture
def clock():
    return ClockPanel(a_talk(), Watch())


def press(panel, button, after=0.0):
    panel._now.seconds += after
    getattr(panel, button).click()


def cells(panel):
    return [re.findall("<td>(.*?)</td>", row) for row in panel.table.value.split("<tr")[2:]]


def test_the_clock_times_each_step_beside_its_plan(clock):
    press(clock, "done")
    press(clock, "done", 75)
    press(clock, "done", 120)
    assert cells(clock) == [
        ["Start", "1:00", "1:15", "0:15 longer"],
        ["Talk", "2:00", "2:00", "as planned"],
        ["Fill", "3:00 (waits 1:00)", "now", ""],
    ]
    assert "Step 3 of 3: Fill" in clock.step.value


def test_the_words_of_the_step_are_in_sight(clock):
    press(clock, "done")
    assert "Welcome." in clock.step.value
    assert "to be done by 1:00" in clock.step.value


def test_the_clock_ticks_only_while_it_runs(clock):
    assert not clock.ticker.playing
    press(clock, "done")
    assert clock.ticker.playing
    clock._now.seconds += 5
    clock.ticker.value += 1  # as the browser does every second
    assert "0:05" in clock.step.value
    for _ in STEPS:
        press(clock, "done", 10)
    assert not clock.ticker.playing
    assert clock.done.disabled


def test_a_step_ended_too_soon_is_taken_back(clock):
    press(clock, "done")
    press(clock, "done", 10)
    press(clock, "undo")
    press(clock, "done", 50)
    assert clock.ends == [60.0]


def test_begin_again_forgets_the_run(clock):
    press(clock, "done")
    press(clock, "done", 10)
    press(clock, "again")
    assert clock.ends == []
    assert clock.done.description == "Start the clock"
    assert "0:00" in clock.step.value


def test_a_talk_without_steps_says_what_to_write():
    assert "[[step]]" in ClockPanel(a_talk(steps=())).step.value


@pytest.mark.parametrize(
    ("actual", "words"), [(2.5, "0:30 longer"), (1.0, "1:00 shorter"), (2.0, "as planned"), (float("nan"), "")]
)
def test_a_difference_is_told_in_words(actual, words):
    assert difference_words(Taken("Talk", 2.0, actual)) == words


def test_the_plan_is_shown_under_its_sentence():
    box = day_plan(a_talk())
    assert "The plan takes 6:00" in box.children[1].value
    assert "plan" in box.children[2].content["figures"]


@pytest.fixture
def practice(tmp_path):
    return PracticePanel(a_talk(), tmp_path / "practice.json", seed=1)


def test_the_number_is_hidden_until_it_is_asked_for(practice):
    assert "____" in practice.sentence.value
    assert practice.knew.disabled
    practice.reveal.click()
    assert "____" not in practice.sentence.value
    assert not practice.knew.disabled


def test_her_mark_is_written_down_and_the_next_card_comes(practice, tmp_path):
    first = practice.card
    practice.reveal.click()
    practice.missed.click()
    assert read_scores("pot", tmp_path / "practice.json")[0] == {first.key: Score(0, 1, 0)}
    assert practice.card != first
    assert "____" in practice.sentence.value


def test_what_was_known_is_counted_and_kept_for_the_next_time(practice, tmp_path):
    practice.reveal.click()
    practice.knew.click()
    again = PracticePanel(a_talk(), tmp_path / "practice.json")
    assert "1 of 2 known the last time" in again.message.value


def test_a_damaged_file_is_told(tmp_path):
    (tmp_path / "practice.json").write_text("{")
    assert "was damaged" in PracticePanel(a_talk(), tmp_path / "practice.json").message.value


def test_results_that_cannot_be_written_are_told_and_practice_goes_on(tmp_path):
    (tmp_path / "file").write_text("")
    panel = PracticePanel(a_talk(), tmp_path / "file" / "practice.json", seed=1)
    first = panel.card
    panel.reveal.click()
    panel.knew.click()
    assert "cannot be" in panel.message.value
    assert panel.card != first


def test_a_talk_that_says_no_number_tells_what_to_write(tmp_path):
    panel = PracticePanel(a_talk(points=(Point("Stir."),)), tmp_path / "practice.json")
    assert "no point of this talk says a number" in panel.message.value
    assert panel.reveal.disabled
