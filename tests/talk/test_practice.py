"""Practising the numbers: what is hidden, what comes up, and that no result is lost."""

import json
from collections import Counter
from random import Random

import pytest
from talks import a_talk

from kit.errors import KitError
from kit.meal.changes import set_grams
from kit.meal.nutrition import nutrition
from kit.speech.cards import cards
from kit.talk.practice import Card, Score, marked, next_card, practice_file, read_scores, record

A, B, C = (Card(name, f"{name} ____", f"{name} 1") for name in "abc")


@pytest.fixture
def file(tmp_path):
    return tmp_path / "practice.json"


def test_a_sentence_that_cannot_be_filled_takes_no_other_card_away():
    assert [card.key for card in cards(a_talk("It has {protien}.", "A {", "It has {protein}."))] == [
        "It has {protein}."
    ]


def test_a_card_hides_every_number_and_shows_it():
    found = cards(a_talk("It has {protein}, and 12 grams of fiber.", "Stir.", "Lentils bring {protein from lentils}."))
    assert [card.asks for card in found] == [
        "It has about ____ grams of protein, and ____ of fiber.",
        "Lentils bring about ____ grams of protein.",
    ]
    assert "grams of protein, and 12 grams" in found[0].answer


@pytest.mark.parametrize(
    ("say", "asks"),
    [
        ("{amount of lentils-dry} of lentils", "____ cups of lentils"),
        ("It is {iron.share_of_day}.", "It is about ____ percent of a day's iron."),
        ("It has {protein.range}.", "It has ____ to ____ grams of protein."),
    ],
)
def test_the_unit_of_a_filled_number_stays_in_sight(say, asks):
    assert cards(a_talk(say))[0].asks == asks


def test_a_serving_alone_is_no_number():
    assert cards(a_talk("We fill {serving} now.")) == ()


def test_answers_follow_the_dish_and_results_do_not_mind():
    talk = a_talk("It has {protein}.")
    more = nutrition(set_grams(talk.recipe, "lentils-dry", 900))
    before, after = cards(talk)[0], cards(talk, more)[0]
    assert before.answer != after.answer
    assert before.key == after.key


def test_a_missed_card_comes_up_more_often_and_a_known_one_less():
    scores = {"a": marked(marked(Score(), False), False), "b": marked(marked(Score(), True), True)}
    drawn = Counter(next_card((A, B, C), scores, Random(seed)).key for seed in range(600))
    assert drawn["a"] > drawn["c"] > drawn["b"] > 0


def test_the_same_card_never_comes_twice_running_unless_it_is_the_only_one():
    chance, last = Random(1), None
    for _ in range(50):
        card = next_card((A, B, C), {}, chance, last)
        assert card != last
        last = card
    assert next_card((A,), {}, chance, A) == A


def test_a_seed_draws_the_same_cards():
    draws = [[next_card((A, B, C), {}, chance).key for _ in range(9)] for chance in (Random(3), Random(3))]
    assert draws[0] == draws[1]


def test_without_a_number_there_is_no_card():
    with pytest.raises(KitError, match="no point of this talk says a number"):
        next_card(cards(a_talk("Stir.")), {}, Random(1))


def test_every_mark_is_written_down_at_once(file):
    record("pot", A, True, file)
    record("pot", A, False, file)
    record("box", B, True, file)
    assert read_scores("pot", file) == ({"a": Score(1, 1, 0)}, "")
    assert read_scores("box", file)[0] == {"b": Score(1, 0, 1)}


def test_two_windows_do_not_lose_each_others_marks(file):
    record("pot", A, True, file)
    assert read_scores("pot", file)[0]
    record("pot", B, True, file)  # as another window, which has read nothing
    assert set(record("pot", A, True, file)) == {"a", "b"}


@pytest.mark.parametrize("text", ["", "{", "[]", '{"talks": {"pot": {"a": {"right": "x"}}}}', '{"talks": 3}', "\x00"])
def test_a_damaged_file_is_kept_aside_and_told(file, text):
    file.write_text(text)
    scores, message = read_scores("pot", file)
    assert scores == {}
    assert "practice.damaged-1.json" in message
    assert (file.parent / "practice.damaged-1.json").read_text() == text
    record("pot", A, True, file)
    assert read_scores("pot", file)[0] == {"a": Score(1, 0, 1)}


def test_a_second_damaged_file_does_not_replace_the_first(file):
    for text in ("one", "two"):
        file.write_text(text)
        read_scores("pot", file)
    assert [(file.parent / f"practice.damaged-{number}.json").read_text() for number in (1, 2)] == ["one", "two"]


def test_a_crash_while_writing_leaves_the_results_as_they_were(file, monkeypatch):
    record("pot", A, True, file)
    before = file.read_text()

    def crash(*_):
        raise OSError("power cut")

    monkeypatch.setattr("kit.files.os.replace", crash)
    with pytest.raises(KitError):
        record("pot", A, True, file)
    assert file.read_text() == before


def test_the_file_can_be_read_by_a_person(file):
    record("pot", Card("It has {protein}.", "", ""), True, file)
    assert json.loads(file.read_text())["talks"]["pot"]["It has {protein}."] == {"right": 1, "missed": 0, "in_a_row": 1}


def test_results_stand_in_the_users_own_folder(tmp_path, monkeypatch):
    monkeypatch.setenv("TALK_KIT_HOME", str(tmp_path))
    assert practice_file() == tmp_path / "practice.json"
