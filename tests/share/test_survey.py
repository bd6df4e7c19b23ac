"""Survey answers are counted, and nobody can be found in what is shown."""

from itertools import chain

import pytest

from kit.errors import KitError
from kit.share.survey import HIDDEN, read_survey
from kit.spreadsheets import table_text

HEADING = [
    *("Timestamp", "Your name", "E-mail address", "How useful was the talk? (1-5)", "Would you cook it again?"),
    *("Which parts did you like?", "What would you like to see next?", "Anything else?"),
]
PEOPLE = [
    [
        "Odile Brandt",
        "odile@f.example",
        "5",
        "Yes",
        "The charts; The tasting",
        "More beans please",
        "Hi odile here",
    ],
    [
        "Marten Quill",
        "mq@f.example",
        "4",
        "Yes",
        "The charts",
        "Soups",
        "Call +1 (555) 010-9999 or mq@f.example",
    ],
    ["Ines Okoro", "ines@fernhill.example", "5", "Maybe", "The tasting; The charts", "Beans again", '=HYPERLINK("x")'],
    ["Paul Stern", "paul@fernhill.example", "3", "Yes", "The tasting", "Oats", "Dear Ines, it was great. - Paul Stern"],
    [""] * 7,
]


@pytest.fixture
def survey(tmp_path):
    path = tmp_path / "answers.csv"
    path.write_text(table_text(HEADING, [["2026-11-20 12:40", *person] for person in PEOPLE]), encoding="utf-8")
    return read_survey(path)


def test_each_question_is_read_by_what_people_answered(survey):
    assert [(question.kind, question.answered) for question in survey.questions] == [
        ("rating", 4),
        ("rating", 4),
        ("several", 4),
        ("text", 4),
        ("text", 4),
    ]
    assert (survey.answers, survey.left_out) == (4, 3)


def test_a_rating_counts_every_step_and_has_a_mean(survey):
    rating = survey.questions[0]
    assert rating.counts == (("1", 0), ("2", 0), ("3", 1), ("4", 1), ("5", 2))
    assert rating.mean == pytest.approx(4.25)


def test_several_choices_are_counted_one_by_one(survey):
    assert dict(survey.questions[2].counts) == {"The charts": 3, "The tasting": 3}


def test_what_people_want_next_is_found(survey):
    assert [question.asks for question in survey.wanted_next] == ["What would you like to see next?"]
    assert survey.wanted_next[0].texts[0] == "More beans please"


def test_nobody_can_be_found_in_what_is_shown(survey):
    shown = " ".join(
        chain.from_iterable([question.asks, *question.texts, *dict(question.counts)] for question in survey.questions)
    )
    for private in ("Odile", "odile", "Brandt", "Marten", "Quill", "Ines", "Paul", "Stern", "@", "555", "2026-11-20"):
        assert private not in shown
    assert HIDDEN in shown


def test_the_share_of_those_invited_who_answered(survey):
    assert survey.response_rate(16) == pytest.approx(0.25)
    with pytest.raises(KitError, match="4 answered and 3 were invited"):
        survey.response_rate(3)


@pytest.mark.parametrize(
    ("cells", "counts"),
    [
        (
            ["Agree", "Strongly agree", "Agree"],
            {"agree": 2, "strongly agree": 1, "disagree": 0, "strongly disagree": 0},
        ),
        (["5 - very useful", "4 - useful", "5 - very useful"], {"1": 0, "2": 0, "3": 0, "4": 1, "5": 2}),
        (["9", "10", "7"], {"9": 1, "10": 1, "7": 1, "1": 0}),
    ],
)
def test_ratings_in_words_and_on_longer_scales(tmp_path, cells, counts):
    path = tmp_path / "answers.csv"
    path.write_text("\n".join(["How was it?", *cells]), encoding="utf-8")
    (question,) = read_survey(path).questions
    assert question.kind == "rating"
    assert counts.items() <= dict(question.counts).items()


def test_a_few_short_answers_that_repeat_are_a_choice_and_sentences_are_not(tmp_path):
    asks = "Pace?,Cook it?,Where?,Else?"
    said = ["Just right,Very likely,At work,Good", "Too fast,Not likely,At home,More time please"]
    said += ["Just right,Somewhat likely,At work,Loved the soup", "Too slow,Very likely,On the bus,Good"]
    path = tmp_path / "survey.csv"
    path.write_text("\n".join([asks, *said, "Just right,Very likely,At work,I could not hear the end of it"]))
    pace, cook, where, other = read_survey(path).questions
    assert pace.counts == (("too slow", 1), ("just right", 3), ("too fast", 1))
    assert [count for _, count in cook.counts] == [1, 1, 0, 3]
    assert (where.kind, where.counts[0]) == ("choice", ("At work", 3))
    assert other.kind == "text"


def test_a_table_without_answers_is_told(tmp_path):
    path = tmp_path / "answers.csv"
    path.write_text("Name,How was it?\nOdile,\n", encoding="utf-8")
    with pytest.raises(KitError, match=r"answers\.csv holds no answers"):
        read_survey(path)
