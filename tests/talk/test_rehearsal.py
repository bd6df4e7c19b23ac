"""The plan on the clock."""

from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st
from talks import a_talk

from kit.errors import KitError
from kit.talk.plan import plan, talk_minutes, words_in
from kit.talk.plan_told import clock, plan_advice, plan_sentence
from kit.talk.pots import told_pot_faults
from kit.talk.rehearsal import taken
from kit.talk.talk import PlanStep, Pot

STEPS = (
    PlanStep("Start the lentils", say_minutes=2, hands_minutes=1, pots=(Pot("lentils", 20),)),
    PlanStep("Cut", hands_minutes=5, say="word " * 140),
    PlanStep("Numbers", say_minutes=6),
    PlanStep("Fill", hands_minutes=3, needs=("lentils",)),
)


def a_plan(*steps, minutes=None):
    return plan(replace(a_talk(), steps=steps or STEPS, minutes=minutes))


def test_steps_follow_each_other_and_take_the_longer_of_words_and_work():
    steps = a_plan().steps
    assert [(step.start, step.end) for step in steps[:3]] == [(0, 2), (2, 7), (7, 13)]


def test_words_are_counted_at_her_pace():
    """Usual speech is 125-150 words a minute (Lucas, The Art of Public Speaking, 8th ed., p. 300)."""
    step = PlanStep("Talk", say="word " * 280)
    assert talk_minutes(step, 140) == 2
    assert talk_minutes(step, 70) == 4
    assert talk_minutes(replace(step, say_minutes=1.5), 140) == 1.5


def test_a_step_waits_for_the_pot_it_needs():
    late = a_plan().late
    # the lentils go on at 2:00 and take 20 minutes; the step would begin at 13:00
    assert [(step.title, step.waits, step.start) for step in late] == [("Fill", 9, 22)]


def test_a_pot_has_a_latest_moment_from_which_nothing_waits():
    pot = a_plan().pots[0]
    assert (pot.start, pot.ready, pot.latest, pot.late) == (2, 22, -7, 9)
    in_time = a_plan(replace(STEPS[0], pots=(Pot("lentils", 11),)), *STEPS[1:])
    assert in_time.pots[0].late == 0
    assert not in_time.late


def test_a_pot_that_no_step_needs_must_be_done_by_the_end():
    alone = a_plan(PlanStep("On", hands_minutes=1, pots=(Pot("rice", 15),)), PlanStep("Talk", say_minutes=5))
    assert alone.total == 16
    assert alone.pots[0].latest == -9


def test_the_total_is_set_against_the_slot():
    assert a_plan(minutes=20).over == 5
    assert "25:00 of 20:00, 5:00 too long" in plan_sentence(a_plan(minutes=20))
    assert "5:00 to spare" in plan_sentence(a_plan(minutes=30))
    assert a_plan().over is None


@pytest.mark.parametrize(
    ("steps", "told"),
    [
        ((PlanStep("Fill", needs=("lentls",)), STEPS[0]), 'step 1 "Fill": no pot "lentls"; did you mean "lentils"'),
        ((STEPS[3], STEPS[0]), "started only in a later step"),
        ((STEPS[0], STEPS[0]), 'the pot "lentils" is started twice'),
    ],
)
def test_a_pot_that_cannot_be_there_is_told_at_its_step(steps, told):
    assert told in "; ".join(told_pot_faults(steps))
    assert told.split(": ")[-1] in "; ".join(fault for step in a_plan(*steps).steps for fault in step.faults)


def test_a_pot_that_nobody_starts_hides_nothing_else_of_the_plan():
    whole, faulty = a_plan(), a_plan(*STEPS[:3], replace(STEPS[3], needs=("lentils", "rice")))
    assert [(step.start, step.end) for step in faulty.steps] == [(step.start, step.end) for step in whole.steps]
    assert faulty.pots == whole.pots
    assert [step.title for step in faulty.steps if step.faults] == ["Fill"]


def test_of_a_pot_that_is_started_twice_both_are_shown_and_the_later_one_is_waited_for():
    twice = a_plan(*(replace(STEPS[0], title=title) for title in ("One", "Two")), STEPS[3])
    assert [(pot.step, pot.start, pot.needed) for pot in twice.pots] == [("One", 2, None), ("Two", 4, 4)]
    assert twice.steps[2].start == 24


def test_a_talk_without_steps_takes_no_time():
    assert plan(a_talk()).total == 0
    assert plan_sentence(plan(a_talk())) == "The plan takes 0:00."


@given(
    st.lists(st.tuples(st.floats(0, 30), st.floats(0, 30), st.floats(0.1, 60), st.booleans()), min_size=1, max_size=8)
)
def test_no_step_begins_before_its_pots_are_ready_nor_before_the_last_is_done(rows):
    steps = [
        PlanStep(f"s{place}", say_minutes=say, hands_minutes=hands, pots=(Pot(f"p{place}", minutes),))
        for place, (say, hands, minutes, _) in enumerate(rows)
    ]
    steps += [PlanStep(f"n{place}", needs=(f"p{place}",)) for place, row in enumerate(rows) if row[3]]
    made = a_plan(*steps)
    ready = {pot.name: pot.ready for pot in made.pots}
    for before, step in zip(made.steps, made.steps[1:], strict=False):
        assert step.start >= before.end
    for step in made.steps:
        assert all(step.start >= ready[name] for name in step.needs)
    assert made.total >= max(ready.values())


def test_planned_and_actual_minutes_of_each_step():
    found = taken(a_plan(), [150.0, 450.0])
    assert [(one.title, one.planned, one.actual) for one in found[:2]] == [("Start the lentils", 2, 2.5), ("Cut", 5, 5)]
    assert found[0].over == 0.5
    assert found[2].actual != found[2].actual  # not timed yet


def test_times_that_cannot_be_are_refused():
    with pytest.raises(KitError, match="do not rise"):
        taken(a_plan(), [300.0, 200.0])
    with pytest.raises(KitError, match="5 times for 4 steps"):
        taken(a_plan(), [1.0, 2.0, 3.0, 4.0, 5.0])


@pytest.mark.parametrize(("minutes", "shown"), [(0, "0:00"), (0.999, "1:00"), (61.25, "61:15"), (-0.001, "0:00")])
def test_a_clock_shows_minutes_and_seconds(minutes, shown):
    assert clock(minutes) == shown


def test_a_dash_is_no_word():
    assert words_in("Stir - it's a well-made pot.") == 5


def test_a_pot_goes_on_before_the_first_word_or_at_the_start_of_its_step():
    early = PlanStep(
        "On", hands_minutes=4, pots=(Pot("rice", 30, before=20), Pot("tray", 10, at_start=True), Pot("tea", 5))
    )
    rice, tray, tea = a_plan(early, PlanStep("Fill", hands_minutes=1, needs=("rice", "tray", "tea"))).pots
    assert [(pot.start, pot.ready) for pot in (rice, tray, tea)] == [(-20, 10), (0, 10), (4, 9)]


def test_placeholders_are_filled_in_the_words_and_counted():
    step = a_plan(PlanStep("Numbers", say="A serving has {energy} and {protein}.")).steps[0]
    assert "{" not in step.say
    assert step.talk_minutes == words_in(step.say) / a_talk().words_per_minute
    assert a_plan(PlanStep("Odd", say="It has {moon}.")).steps[0].say == "It has {moon}."


def test_late_food_is_told_with_what_to_do():
    late = a_plan(
        PlanStep("On", hands_minutes=2, pots=(Pot("rice", 20),)), PlanStep("Fill", hands_minutes=1, needs=("rice",))
    )
    (told,) = plan_advice(late)
    assert told.startswith("The rice keeps a step waiting for 20:00: start it 18:00 before the first word, or move")


def test_food_that_stands_about_is_told_with_what_to_do():
    steps = (PlanStep("On", hands_minutes=1, pots=(Pot("rice", 10),)), PlanStep("Talk", say_minutes=30))
    (told,) = plan_advice(a_plan(*steps, PlanStep("Fill", hands_minutes=1, needs=("rice",))))
    assert told.startswith("The rice is ready 20:00 before it is needed: start it that much later")
    assert "135 °F" in told  # FDA Food Code 2017, 3-501.16(A)(1), from memory


def test_two_temperatures_in_one_oven_are_told_and_one_is_not():
    def pots(heat):
        return PlanStep("On", hands_minutes=1, pots=(Pot("tray", 20, oven=425), Pot("pie", 30, oven=heat)))

    rest = PlanStep("Talk", say_minutes=40)
    assert any("share the oven from 1:00 to 21:00" in told for told in plan_advice(a_plan(pots(350), rest)))
    assert plan_advice(a_plan(pots(425), rest)) == ()
