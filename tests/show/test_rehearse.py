"""The rehearsal answers its page: what follows the dish, what is settled, the clock, the cards."""

import json

import pytest
from talks import TWO_BEANS, own_talk

from kit.show.rehearse import Rehearsal, rehearse
from kit.show.rehearse_content import Run, difference_words, run_from, safety, timed, told_of_talk
from kit.show.setting import Setting
from kit.speech.points import check_talk
from kit.talk.last_used import last_used, use
from kit.talk.library import bundled_talks, read_talk, talks_folder
from kit.talk.own_talks import begin
from kit.talk.plan import plan
from kit.talk.practice import Score, read_scores
from kit.talk.rehearsal import Taken
from kit.talk.remembering import Memory
from kit.talk.settling import open_talk

BOX, SOUP = "barley_squash_box", "split_pea_soup"


@pytest.fixture(autouse=True)
def home(tmp_path, monkeypatch):
    monkeypatch.setenv("TALK_KIT_HOME", str(tmp_path / "home"))


@pytest.fixture
def beans():
    return own_talk("beans", TWO_BEANS)


def a_panel(name=BOX):
    return Rehearsal(open_talk(name))


def do(panel, what, **more):
    """Do what a message of the page asks for, and return what the page is told of it."""
    sent = []
    panel.send = lambda message, buffers=None: sent.append(message)
    panel._hear(panel, {"do": what, "number": 7, **more}, [])
    assert [message["done"] for message in sent] == [7]
    json.dumps(sent, allow_nan=False)
    return sent[0]["changes"]


def verdicts(panel):
    return {one["id"]: one["verdict"] for one in panel.content["said"]}


def without_feta(panel):
    feta = next(at for at, part in enumerate(panel.setting.recipe.ingredients) if part.food.key == "cheese-feta")
    return do(panel, "move", at=feta, place=0)


def test_the_talk_last_used_opens_first():
    use(SOUP)
    assert rehearse().content["talk"] == SOUP
    assert set(bundled_talks()) <= {name for name, _ in rehearse().content["talks"]}


def test_a_talk_that_was_only_begun_is_told_and_another_one_is_shown():
    use(str(begin("Turkey chili")))
    panel = rehearse()
    assert panel.content["talk"] in bundled_talks()
    assert "“Turkey chili” cannot be rehearsed yet; write it in notebook 1." in panel.content["fault"]["text"]


def test_another_talk_changes_everything_below_the_choice():
    panel = a_panel()
    changes = do(panel, "talk", name=SOUP)
    soup = read_talk(SOUP)
    assert {"frame", "rows", "said", "plan", "timed", "card", "safety", "talk"} <= changes.keys()
    assert [one["say"] for one in changes["said"]] == [verdict.say for verdict in check_talk(soup)]
    assert [step["title"] for step in changes["plan"]["steps"]] == [step.title for step in soup.steps]
    assert panel.card.key in {point.say for point in soup.points}


def test_a_talk_that_is_not_there_is_told_and_the_one_before_stays():
    panel = a_panel()
    assert "no talk" in do(panel, "talk", name="moon")["fault"]["text"]
    assert panel.content["talk"] == BOX


def test_points_words_of_the_plan_and_answers_are_all_judged():
    groups = [one["group"] for one in a_panel().content["said"]]
    assert list(dict.fromkeys(groups)) == ["", "The words of the plan", "Prepared answers"]


def test_a_moved_slider_is_answered_with_every_sentence_checked_again_and_only_those_that_differ_are_sent():
    panel = a_panel()
    before = verdicts(panel)
    changes = without_feta(panel)
    turned = {one["id"] for one in changes["some_said"]}
    assert "said" not in changes
    assert {key for key, verdict in verdicts(panel).items() if verdict != before[key]} <= turned
    vegan = next(one for one in panel.content["said"] if one["say"] == "The box is entirely plant-based.")
    assert (before[vegan["id"]], vegan["verdict"]) == ("off", "holds")
    assert "tree nuts" in changes["frame"]["aside"]
    assert all("Milk" not in line["say"] for line in changes["safety"][0]["lines"])
    do(panel, "as_written")
    assert verdicts(panel) == before


def test_what_holds_instead_is_written_into_the_file_and_taken_back(beans):
    panel = a_panel("beans")
    instead = panel.content["said"][1]["instead"]
    changes = do(panel, "instead", id="point-1")
    assert changes["note"]["undo"]
    assert read_talk(beans).points[1].say == instead
    assert verdicts(panel)["point-1"] == "holds"
    do(panel, "instead", id="question-0")  # no such thing is said
    do(panel, "instead", id="answer-0")
    assert read_talk(beans).questions[0].answer == instead
    do(panel, "take_back")
    do(panel, "take_back")
    assert beans.read_text(encoding="utf-8") == TWO_BEANS
    assert panel.content["note"] == {"text": "The talk is as it was before.", "undo": False}


def test_a_number_that_is_filled_in_stays_one_when_other_words_are_taken_over(beans):
    panel = a_panel("beans")
    do(panel, "instead", id="point-2")
    assert "{energy}" in read_talk(beans).points[2].say


def test_nothing_is_settled_by_a_dish_that_is_not_as_written(beans):
    panel = a_panel("beans")
    do(panel, "move", at=0, place=0)
    assert "as written" in do(panel, "instead", id="point-1")["fault"]["text"]
    assert beans.read_text(encoding="utf-8") == TWO_BEANS


def test_a_word_that_could_mean_several_foods_is_pinned_by_a_choice(beans):
    panel = a_panel("beans")
    (choice,) = panel.content["said"][0]["choices"]
    key, name = choice["options"][-1]
    assert name in do(panel, "pin", id="point-0", word="beans", key=key)["note"]["text"]
    assert read_talk(beans).points[0].pins == {"beans": key}
    assert panel.content["said"][0]["choices"] == []


def test_the_first_change_of_a_talk_that_ships_with_the_kit_makes_a_copy_of_hers_and_says_so():
    panel = a_panel()
    assert panel.content["ships"]
    off = next(one for one in panel.content["said"] if one["instead"])
    changes = do(panel, "instead", id=off["id"])
    assert "This is now a talk of your own" in changes["note"]["text"]
    assert not changes["ships"]
    assert panel.opened.entry.own
    assert last_used().path == panel.opened.entry.path
    assert (changes["talk"], "Barley and roasted squash box (yours)") in [tuple(row) for row in changes["talks"]]
    do(panel, "take_back")
    assert [one["say"] for one in panel.content["said"]] == [verdict.say for verdict in check_talk(read_talk(BOX))]


@pytest.mark.parametrize(("keep", "talks"), [("theirs", 1), ("mine", 1), ("both", 2)])
def test_a_conflict_is_told_and_she_chooses(beans, keep, talks):
    panel = a_panel("beans")
    instead = panel.content["said"][1]["instead"]
    theirs = TWO_BEANS.replace("It is vegan.", "It is meatless.")
    beans.write_text(theirs, encoding="utf-8")
    assert "was changed elsewhere" in do(panel, "instead", id="point-1")["conflict"]["text"]
    assert beans.read_text(encoding="utf-8") == theirs
    assert do(panel, "conflict", keep=keep)["conflict"] is None
    assert panel.opened.talk.points[1].say == ("It is meatless." if keep == "theirs" else instead)
    assert len(list(talks_folder().glob("*.toml"))) == talks


def test_a_talk_that_was_changed_in_another_notebook_is_shown_anew_when_she_comes_back(beans):
    panel = a_panel("beans")
    assert "said" not in do(panel, "look")
    beans.write_text(TWO_BEANS.replace("It is vegan.", "It is warm."), encoding="utf-8")
    changes = do(panel, "look")
    assert changes["said"][1]["say"] == "It is warm."
    assert "changed elsewhere" in changes["note"]["text"]


def test_how_a_talk_was_set_and_its_clock_are_there_after_a_restart():
    first = Rehearsal(open_talk(BOX), Memory("rehearsal"))
    without_feta(first)
    do(first, "measures", system="metric")
    do(first, "clock", run={"began": 1000.0, "ends": [2.0]})
    first._memory.write()
    again = Rehearsal(open_talk(BOX), Memory("rehearsal"))
    assert again.content == {**first.content, "card": again.content["card"]}


def test_a_pot_that_nobody_starts_is_told_and_the_rest_of_the_plan_is_there(beans):
    shown = a_panel("beans").content["plan"]
    assert shown["faults"] == ['step 2 "Fill": no pot "peas"; name it in the step that starts it']
    assert [step["title"] for step in shown["steps"]] == ["Boil", "Fill"]
    assert shown["sentence"].startswith("The plan takes")
    assert a_panel("beans").content["told"] == []  # it is told beside the plan


def test_a_sentence_that_cannot_be_filled_is_told_there_and_hides_nothing(beans):
    beans.write_text(TWO_BEANS.replace("{energy}", "{enrgy}"), encoding="utf-8")
    content = a_panel("beans").content
    assert [one["verdict"] for one in content["said"]] == ["cannot tell", "off", "cannot tell", "off", "off"]
    assert 'no placeholder "enrgy"' in content["said"][2]["because"]
    assert content["card"]["text"]


def test_a_talk_without_sentences_plan_or_numbers_says_what_to_do(beans):
    beans.write_text(TWO_BEANS[: TWO_BEANS.index("[[point]]")], encoding="utf-8")
    content = a_panel("beans").content
    assert "Write what you will say in notebook 1" in content["no_sentences"]
    assert "Write it in notebook 1 under Plan" in content["plan"]["sentence"]
    assert "No sentence of this talk says a number" in content["card"]["text"]
    assert content["card"]["none"]


def test_what_has_to_be_mended_is_told(beans):
    beans.write_text(f"servins = 3\n{TWO_BEANS.replace('1 cup black beans, cooked', 'a llama')}", encoding="utf-8")
    told = " ".join(told_of_talk(read_talk(beans)))
    assert 'Not in the numbers yet: "a llama"' in told
    assert 'no key "servins"' in told


def test_the_clock_times_each_step_beside_its_plan(beans):
    made = plan(read_talk(beans))
    rows = timed(made, Run(1000.0, (1.25,)))
    assert [(row["title"], row["planned"], row["actual"], row["difference"]) for row in rows] == [
        ("Boil", "1:00", "1:15", "0:15 longer"),
        ("Fill", "5:00 (waits 3:00)", "now", ""),
    ]
    assert [row["say"] for row in timed(made, Run(1000.0))] == ["Start. It is vegan.", ""]
    assert [row["now"] for row in timed(made, Run())] == [False, False]


def test_a_run_that_does_not_fit_the_plan_any_more_is_forgotten(beans):
    made = plan(read_talk(beans))
    assert run_from({"began": 1.0, "ends": [1.0, 2.0]}, made) == Run(1.0, (1.0, 2.0))
    for values in ({"began": 1.0, "ends": [1.0] * 9}, {"began": 1.0, "ends": [2.0, 1.0]}, {"ends": []}, None, "x"):
        assert run_from(values, made) == Run()


@pytest.mark.parametrize(
    ("actual", "words"), [(2.5, "0:30 longer"), (1.0, "1:00 shorter"), (2.0, "as planned"), (float("nan"), "")]
)
def test_a_difference_is_told_in_words(actual, words):
    assert difference_words(Taken("Talk", 2.0, actual)) == words


def test_a_number_is_hidden_until_it_is_asked_for_and_her_mark_is_written_down():
    panel = a_panel()
    first = panel.card
    assert "____" in panel.content["card"]["text"]
    assert do(panel, "mark", knew=True).get("card") is None  # not before she has seen it
    assert do(panel, "reveal")["card"]["text"] == first.answer
    changes = do(panel, "mark", knew=True)
    assert panel.card != first
    assert "____" in changes["card"]["text"]
    assert changes["card"]["known"] == f"1 of {len(panel.cards)} known the last time"
    assert read_scores(BOX)[0] == {first.key: Score(right=1, in_a_row=1)}


def test_results_that_cannot_be_read_or_written_are_told_and_practice_goes_on(tmp_path):
    (tmp_path / "home").mkdir()
    (tmp_path / "home" / "practice.json").write_text("{")
    panel = a_panel()
    assert "was damaged" in panel.content["card"]["told"]
    (tmp_path / "home" / "practice.json").mkdir()
    do(panel, "reveal")
    assert "cannot be" in do(panel, "mark", knew=False)["card"]["told"]


def test_what_is_said_for_safety_follows_the_dish():
    talk = read_talk(BOX)
    groups = safety(talk, Setting(talk).now)
    assert [line["say"] for line in groups[0]["lines"]][:2] == [
        "Milk, from the feta cheese",
        "Tree nuts, from the walnuts",
    ]
    assert "It keeps 3 days in the refrigerator, at 40 °F (4 °C) or below." in [
        row["say"] for row in groups[1]["lines"]
    ]
    assert any("allergy" in line["say"] and line["why"] for line in groups[2]["lines"])
    bare = Setting(talk).tried("no feta").tried("no walnuts")
    assert safety(talk, bare.now)[0]["lines"][0]["say"] == "None of the major allergens"
