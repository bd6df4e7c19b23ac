"""A talk as one plain text: four parts, read line by line and written back."""

from pathlib import Path

import pytest
from hypothesis import example, given
from hypothesis import strategies as st

from kit.talk.library import bundled_talks, read_talk
from kit.talk.plain_parts import PlainTalk, put_together, take_apart
from kit.talk.plain_talk import plain_text, talk_from_plain
from kit.talk.plan_text import read_plan, write_plan
from kit.talk.questions_text import read_questions, write_questions
from kit.talk.script_text import read_script, write_script
from kit.talk.talk import PlanStep, Point, Pot, Question

TALK = """Lentil pot with feta
Serves 4
Keeps days: 3
Minutes: 30
Dish is: main dish

1 cup lentils, dry
1/2 cup feta, crumbled

Script

What a bowl holds:
A bowl has {energy}. The lentils in it are high in fiber (source: my own notes)

# Salt
The feta brings about half of the salt.

Plan

2 min: welcome; lentils 20 min, 15 min before the talk
5 min: cut the squash; tray 20 min in the oven at 425
Fill the bowls; needs lentils and tray

Questions

Can I leave out the feta? = leave out the feta
Yes. It is milder then, and why not?
Q: No lentils = black beans instead of the lentils
"""


def test_the_four_parts_of_one_text_are_taken_apart():
    talk = talk_from_plain(TALK, Path("pot.txt"))
    assert (talk.title, talk.recipe.servings, talk.keeps_days, talk.minutes) == ("Lentil pot with feta", 4, 3, 30)
    assert talk.recipe.dish_is == "main dish"
    assert [part.food.key for part in talk.recipe.ingredients] == ["lentils-dry", "cheese-feta"]
    assert [(point.say, point.part, point.source) for point in talk.points] == [
        ("A bowl has {energy}.", "What a bowl holds", "my own notes"),
        ("The lentils in it are high in fiber", "What a bowl holds", "my own notes"),
        ("The feta brings about half of the salt.", "Salt", ""),
    ]
    assert [step.title for step in talk.steps] == ["welcome", "cut the squash", "Fill the bowls"]
    assert talk.steps[0].pots == (Pot("lentils", 20, before=15),)
    assert talk.steps[1].pots == (Pot("tray", 20, oven=425),)
    assert talk.steps[2].needs == ("lentils", "tray")
    assert talk.questions[0] == Question(
        "Can I leave out the feta?", "leave out the feta", "Yes. It is milder then, and why not?"
    )
    assert talk.questions[1].try_ == "black beans instead of the lentils"


@pytest.mark.parametrize("name", sorted(bundled_talks()))
def test_a_bundled_talk_comes_back_from_its_plain_text(name):
    talk = read_talk(name)
    again = talk_from_plain(plain_text(talk), Path(f"{name}.txt"))
    assert again.faults == ()
    assert (again.title, again.recipe.servings, again.recipe.serving_is) == (
        talk.title,
        talk.recipe.servings,
        talk.recipe.serving_is,
    )
    assert [(line.line, line.part) for line in again.readings] == [(line.line, line.part) for line in talk.readings]
    assert [(point.say, point.part) for point in again.points] == [(point.say, point.part) for point in talk.points]
    assert (again.steps, again.questions) == (talk.steps, talk.questions)
    assert (again.minutes, again.keeps_days, again.series) == (talk.minutes, talk.keeps_days, talk.series)


def test_questions_at_the_end_of_a_page_are_no_questions_of_hers():
    parts = take_apart("Soup\n1 cup lentils, dry\n\nQuestions\nLog in to ask a question\n")
    assert parts.questions == ""


@pytest.mark.parametrize(
    ("line", "step"),
    [
        ("5 min: cut the squash", PlanStep("cut the squash", hands_minutes=5)),
        ("5 minutes - cut the squash", PlanStep("cut the squash", hands_minutes=5)),
        ("Cut the squash (5 min)", PlanStep("Cut the squash", hands_minutes=5)),
        ("1. 2:30 cut", PlanStep("cut", hands_minutes=2.5)),
        ("1 h 5 min: stew", PlanStep("stew", hands_minutes=65)),
        ("10 min talk: what a box holds", PlanStep("what a box holds", say_minutes=10)),
        ("10 min talk, 3 min hands: stir", PlanStep("stir", say_minutes=10, hands_minutes=3)),
        ("Welcome", PlanStep("Welcome")),
        ("1 min: on; put on the rice, 20 min", PlanStep("on", hands_minutes=1, pots=(Pot("rice", 20),))),
        ("1 min: on; rolls 12 min at 200 C", PlanStep("on", hands_minutes=1, pots=(Pot("rolls", 12, oven=392),))),
        ("1 min: on; tray 20 min; pie 40 min", PlanStep("on", hands_minutes=1, pots=(Pot("tray", 20), Pot("pie", 40)))),
        ('1 min: on; "0H" 1 min', PlanStep("on", hands_minutes=1, pots=(Pot("0H", 1),))),
        ("Fill; when the rice is done", PlanStep("Fill", needs=("rice",))),
        ("Fill; needs rice, the tray and pie", PlanStep("Fill", needs=("rice", "tray", "pie"))),
    ],
)
def test_a_line_of_a_plan_is_a_step(line, step):
    steps, lines = read_plan(line)
    assert steps == (step,)
    assert not any(answer.problem for answer in lines)


@pytest.mark.parametrize(
    ("line", "asks"),
    [
        ("5 min: cut; something odd", 'not sure what "something odd" is; write a pot as "tray 20 min'),
        ("5 min: cut; tray 20 min in the oven", "has no temperature"),
        ("5 min: cut; tray 20 min in the oven at 999", "oven is 999.0; give a number from 100 to 600"),
        ("5000 min: cut", "hands_minutes is 5000.0; give a number from 0 to 600"),
        ("Say: good day", "words without a step"),
    ],
)
def test_what_is_not_understood_in_a_plan_is_asked(line, asks):
    assert asks in read_plan(line)[1][0].problem


def test_a_paragraph_is_as_many_points_as_it_has_sentences():
    points, lines = read_script("It has {sodium.share_of_day}. Add approx. 2.5 g. Done!\n\n- The box is vegan.")
    assert [point.say for point in points] == [
        "It has {sodium.share_of_day}.",
        "Add approx. 2.5 g.",
        "Done!",
        "The box is vegan.",
    ]
    assert [line.read_as for line in lines] == ["3 sentences", "", "sentence"]


def test_a_point_of_two_sentences_that_she_has_stays_one():
    known = Point("It is warm. It is soft.", "oats")
    assert read_script(write_script([known]), [known])[0] == (known,)


def test_what_a_question_tries_may_stand_on_a_line_of_its_own():
    text = "Could I use kale?\nTry: kale instead of the spinach\nOf course.\n\nIs it spicy?\nNo.\nTry: it and see."
    first, second = read_questions(text)[0]
    assert (first.try_, first.answer) == ("kale instead of the spinach", "Of course.")
    assert (second.try_, second.answer) == ("", "No. Try: it and see.")


def test_what_a_question_tries_is_checked_on_the_dish():
    recipe = read_talk("barley_squash_box").recipe
    _, lines = read_questions("Less? = leave out the feta\nMoon? = leave out the moon", recipe)
    assert lines[0].read_as.endswith("(1 change)")
    assert lines[1].problem


words = st.text(st.characters(codec="utf-8", exclude_categories=["C", "Z"]) | st.just(" "), max_size=30)
named = words.map(lambda text: " ".join(text.split())).filter(bool)
minutes = st.floats(0.5, 500).map(lambda value: round(value, 2))
pots = st.builds(
    Pot, named, minutes, st.just(0.0) | minutes, st.none() | st.integers(100, 600).map(float), st.booleans()
)
steps = st.builds(
    PlanStep,
    named,
    st.just(""),
    words.map(lambda text: " ".join(text.split())),
    st.none() | minutes,
    st.just(0.0) | minutes,
    st.lists(pots, max_size=2).map(tuple),
    st.lists(named, max_size=2).map(tuple),
)


@given(st.lists(steps, max_size=3))
def test_a_plan_that_was_written_is_read_back(plan):
    assert read_plan(write_plan(plan))[0] == tuple(plan)


questions = st.builds(
    Question, named, st.just("") | st.just("leave out the feta"), words.map(lambda text: " ".join(text.split()))
)


@given(st.lists(questions, max_size=3))
def test_questions_that_were_written_are_read_back(asked):
    assert read_questions(write_questions(asked))[0] == tuple(asked)


parts = named.filter(lambda text: text[0] != "#" and not text.endswith((":", "#"))) | st.just("")


@given(st.lists(st.builds(Point, named, parts), max_size=4))
@example([Point("#", "0"), Point("0", "")])
@example([Point("# 0", "1"), Point("2", "0")])
def test_a_script_that_was_written_is_read_back(points):
    assert read_script(write_script(points), points)[0] == tuple(points)


@given(st.text(max_size=200), st.text(max_size=80), st.text(max_size=80), st.text(max_size=80))
def test_any_text_is_read_or_asked(recipe, script, plan, asked):
    text = put_together(PlainTalk(recipe, script, plan, asked))
    parts = take_apart(text)
    for lines in (read_script(parts.script)[1], read_plan(parts.plan)[1], read_questions(parts.questions)[1]):
        assert [line.place for line in lines] == list(range(len(lines)))
