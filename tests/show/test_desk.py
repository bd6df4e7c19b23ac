import json

import pytest
from each import for_each

from kit.errors import UnknownNameError
from kit.files import TALK_VARIABLE
from kit.show.desk import Desk
from kit.show.panels import on_screen
from kit.speech.points import check_points
from kit.talk.last_used import use
from kit.talk.library import bundled_talks, read_talk
from kit.talk.remembering import Memory


@pytest.fixture
def desk():
    return on_screen("barley_squash_box")


@pytest.fixture
def say(desk, monkeypatch):
    sent = []
    monkeypatch.setattr(desk, "send", lambda content, buffers=None: sent.append(content))

    def say(do, **more):
        """Say something as the page does; returns what comes back."""
        sent.clear()
        desk._hear(desk, {"do": do, "number": 7, **more}, [])
        json.dumps(sent, allow_nan=False)
        assert sent[-1]["done"] == more.get("number", 7)
        assert len(sent) <= 2  # the picture, and its sentences behind it
        return {name: value for message in sent for name, value in message["changes"].items()}

    return say


def at(desk, words):
    return next(place for place, part in enumerate(desk.setting.talk.recipe.ingredients) if words in part.line)


def test_a_moved_slider_is_answered_with_the_scene_the_script_and_its_row(desk, say):
    changes = say("move", at=0, place=3)
    assert [row["at"] for row in changes["some_rows"]] == [0]
    assert changes["scene"]["numbers"][0]["was"].startswith("was 500")
    assert [one["say"] for one in changes["script"]] == [
        verdict.say for verdict in check_points(desk.setting.talk, desk.setting.now)
    ]
    assert "rows" not in changes


def test_of_a_chart_only_what_changed_is_sent(say):
    say("show", name="sources")
    changes = say("move", at=0, place=10)
    assert "scene" not in changes
    assert set(changes["figure"]) <= {"traces", "meta"}


def test_a_move_that_changes_nothing_sends_nothing(desk, say):
    place = desk.setting.amounts(0)[1]
    assert say("move", at=0, place=place) == {}


def test_a_place_beyond_the_slider_is_its_end(desk, say):
    say("move", at=0, place=10**9)
    steps, stands = desk.setting.amounts(0)
    assert stands == len(steps) - 1


def test_a_message_that_comes_again_is_not_done_again(desk, say):
    for line in ("no feta", "half the oil", "no walnuts"):
        say("try", line=line)
    assert say("undo", page="7", number=3)["made"] == ["no feta", "half the oil"]
    assert say("undo", page="7", number=3) == {}
    assert say("undo", page="8", number=3)["made"] == ["no feta"]  # another page, whose third message this is
    assert desk.content["made"] == ["no feta"]


def test_a_change_is_taken_back_by_its_words_where_another_one_was_taken_back_meanwhile(desk, say):
    for line in ("no feta", "half the oil", "no walnuts"):
        say("try", line=line)
    say("undo", place=0, words="no feta")
    assert say("undo", place=1, words="half the oil")["made"] == ["no walnuts"]
    assert say("undo", place=0, words="half the oil") == {}  # it is gone already


def test_an_amount_that_was_named_under_way_is_found_among_the_steps_as_they_are_now(desk, say):
    say("type", at=4, text="1.1 g")
    steps, stands = desk.setting.amounts(4)
    assert (steps[stands].label, steps[stands + 1].label) == ("1.1 g", "1/4 tsp")
    say("move", at=4, place=0, label="left out")
    say("move", at=4, place=stands + 1, label="1/4 tsp")  # as the page knew them when 1.1 g was one of them
    now, place = desk.setting.amounts(4)
    assert (len(now), now[place].label) == (len(steps) - 1, "1/4 tsp")


def test_a_question_shows_before_and_after_with_its_answer(desk, say):
    question = next(one for one in desk.setting.talk.questions if one.try_)
    changes = say("try", line=question.try_, asks=question.asks, answer=question.answer)
    assert changes["shown"] == "change"
    assert changes["scene"]["sentence"] == f"“{question.asks}”"
    assert changes["scene"]["answer"] == question.answer
    assert changes["made"] == [question.try_]


def test_the_change_that_was_asked_for_is_shown_against_the_dish_before_it(say):
    say("try", line="no salt")
    changes = say("try", line="no feta")
    sodium = next(row for row in changes["scene"]["rows"] if row["label"] == "Sodium")
    assert sodium["before"] != "500 milligrams"


def test_a_prepared_question_that_is_asked_again_is_shown_again(desk, say):
    ask = {"line": "leave out the feta", "asks": "Can I leave out the feta?", "answer": "Yes."}
    say("try", **ask)
    say("try", line="no walnuts")
    say("show", name="numbers")
    say("try", **ask)
    assert desk.content["fault"] is None
    assert (desk.content["shown"], desk.content["made"]) == ("change", ["leave out the feta", "no walnuts"])


def test_a_question_that_tries_nothing_shows_its_answer(say):
    changes = say("say", asks="Where do I find the recipe?", answer="It comes by mail.")
    assert changes["scene"]["answer"] == "It comes by mail."
    assert changes["scene"]["rows"] == []


@for_each(
    ("line", "sides", "basis"),
    [
        ("Compare this with the split pea soup", ["Barley and roasted squash box", "split pea"], "in a serving"),
        ("compare barley and roasted squash box and oat jars by 100 kcal", ["Barley and", "oat jars"], "in 100 kcal"),
        ("compare this with cooked brown rice", ["Barley and roasted squash box", "brown rice"], "in 100 g"),
    ],
)
def test_dishes_are_set_side_by_side_by_their_titles(line, sides, basis):
    desk = Desk(read_talk("barley_squash_box"), {name: read_talk(name).title for name in bundled_talks()}, read_talk)
    desk.send = lambda *_arguments, **_more: None
    desk._hear(desk, {"do": "try", "line": line, "number": 1}, [])
    scene = desk.content["scenes"]["compare"]
    assert scene["footer"] == basis
    told = scene["figure"]["layout"]["meta"]["alternative"]
    assert [side for side in sides if side.lower() not in told.lower()] == []


def test_what_each_gets_and_what_to_buy_is_a_picture_too(desk, say):
    scene = say("show", name="portions")["scene"]
    groups = {group["heading"]: group["lines"] for group in scene["groups"]}
    assert any("barley" in line for line in groups["In each"])
    assert any("can" in line for line in groups["To buy"])


def test_foods_are_set_side_by_side_where_a_line_asks_for_it(desk, say):
    changes = say("try", line="compare quinoa, cooked and white rice, cooked by the cup")
    assert changes["shown"] == "compare"
    # a cooked cup: quinoa 8.1 g of protein, white rice 4.3 g (USDA SR26 20137, 20045)
    texts = [text.strip() for trace in changes["scene"]["figure"]["data"] for text in trace.get("text", ())]
    assert {"8.1 g", "4.3 g"} <= set(texts)
    assert desk.setting.made == ()
    assert say("show", name="numbers")["shown"] == "numbers"


def test_targets_are_met_by_a_change_like_any_other_or_told(desk, say):
    changes = say("try", line="at most 400 mg sodium a serving")
    assert changes["made"] == ["at most 400 mg sodium a serving"]
    assert desk.setting.now["sodium"] <= 400
    assert "nearest" in say("try", line="at least 500 g protein")["fault"]["text"]


def test_a_line_that_is_not_understood_gets_a_kind_sentence_and_changes_nothing(desk, say):
    before = desk.setting
    changes = say("try", line="flarb the wug")
    assert "is not understood" in changes["fault"]["text"]
    assert desk.setting is before
    assert "fault" not in say("rest")  # asked by the page itself, a moment later: what was told stays to be read
    assert say("try", line="no feta")["fault"] is None


@pytest.mark.parametrize(
    "message",
    [
        {"do": "type", "at": 0, "text": "a few"},
        {"do": "servings", "value": 0},
        {"do": "swap", "at": 0, "food": "no-such-food"},
        {"do": "show", "name": "no such scene"},
        {"do": "source", "name": "no such nutrient"},
        {"do": "number", "name": "no such nutrient", "shown": True},
        {"do": "undo", "place": 99},
        {"do": "talk", "name": "no_such_talk"},
    ],
)
def test_nonsense_is_answered_and_changes_nothing(desk, say, message):
    before = desk.setting.recipe.grams.tolist()
    say(message.pop("do"), **message)
    assert desk.setting.recipe.grams.tolist() == before


def test_allergens_follow_every_leave_out_and_swap_at_once(say):
    assert "milk" not in say("try", line="no feta")["frame"]["aside"]
    assert say("as_written")["frame"]["aside"].endswith("contains milk and tree nuts")


def test_back_to_the_recipe_as_written_leaves_nothing_changed(desk, say):
    say("move", at=0, place=2)
    say("try", line="no feta and for ten")
    changes = say("as_written")
    assert changes["made"] == []
    assert changes["shown"] == "numbers"
    assert desk.setting.recipe.grams.tolist() == desk.setting.talk.recipe.grams.tolist()


def test_one_to_four_numbers_are_chosen(desk, say):
    say("number", name="fat", shown=True)
    assert desk.numbers == ("protein", "fiber", "sodium", "fat")  # in the place of the one shown longest
    for name in ("protein", "sodium", "fat"):
        changes = say("number", name=name, shown=False)
    assert [number["label"] for number in changes["scene"]["numbers"]] == ["Fiber, about"]
    say("number", name="fiber", shown=False)
    assert desk.numbers == ("fiber",)


def test_the_scenes_that_are_not_shown_are_worked_out_when_asked_for(say):
    others = say("rest")["others"]
    assert "numbers" not in others
    assert {"shares", "sources", "day", "plate", "balance", "change", "recipe"} <= set(others)


def test_another_talk_brings_its_own_rows_script_and_plan(desk, say):
    other = next(name for name in bundled_talks() if name != desk.setting.talk.name)
    changes = say("talk", name=other)
    assert len(changes["rows"]) == len(read_talk(other).recipe.ingredients)
    assert changes["frame"]["title"] == read_talk(other).title
    assert changes["plan"]["steps"]


def test_what_a_page_kept_brings_everything_back_in_a_new_kernel(desk, say):
    say("move", at=0, place=2)
    say("try", line="no feta")
    say("source", name="iron")
    kept = json.loads(json.dumps(desk.content["kept"]))
    fresh = on_screen(next(name for name in bundled_talks() if name != desk.setting.talk.name))
    fresh.send = lambda content, buffers=None: None
    fresh._hear(fresh, {"do": "restore", "kept": kept, "number": 1}, [])
    assert fresh.setting.talk.name == desk.setting.talk.name
    assert fresh.setting.recipe.grams.tolist() == desk.setting.recipe.grams.tolist()
    assert (fresh.shown, fresh.source_of) == ("sources", "iron")


@pytest.mark.parametrize(
    "kept", [{}, {"talk": 3}, {"talk": "gone"}, {"talk": "barley_squash_box", "made": "junk", "numbers": [1]}]
)
def test_what_was_kept_wrongly_brings_no_fault(say, kept):
    say("restore", kept=kept)


def test_a_page_that_opens_later_gets_what_is_shown_now(desk, say):
    say("try", line="no feta")
    assert desk.content["made"] == ["no feta"]
    assert desk.content["scenes"]["change"]["rows"]


def test_the_talk_that_was_asked_for_on_the_command_line_is_shown(monkeypatch):
    monkeypatch.setenv(TALK_VARIABLE, "pear_oat_jars")
    assert on_screen().setting.talk.name == "pear_oat_jars"


def test_a_panel_that_is_opened_again_shows_the_talk_last_used_as_it_was_last_set(tmp_path, monkeypatch):
    monkeypatch.setenv("TALK_KIT_HOME", str(tmp_path))
    first = on_screen()
    first.send = lambda content, buffers=None: None
    other = next(name for name in bundled_talks() if name != first.setting.talk.name)
    for did in ({"do": "move", "at": 0, "place": 2}, {"do": "talk", "name": other}, {"do": "try", "line": "for ten"}):
        first._hear(first, {"number": 1, **did}, [])
    first._memory.write()
    again = on_screen()
    assert again.setting.talk.name == other
    assert again.setting.servings == 10
    again.send = lambda content, buffers=None: None
    again._hear(again, {"do": "talk", "name": next(iter(bundled_talks())), "number": 1}, [])
    assert [made.control for made in again.setting.made] == ["amount"]


@pytest.mark.parametrize("kept", ["junk", [], {"shown": [], "source_of": {}, "numbers": 3, "asked": 5, "made": 1}])
def test_what_was_remembered_wrongly_brings_no_fault(tmp_path, monkeypatch, kept):
    monkeypatch.setenv("TALK_KIT_HOME", str(tmp_path))
    memory = Memory("screen")
    memory.keep("barley_squash_box", kept)
    memory.write()
    assert on_screen().setting.made == ()


def test_a_talk_last_used_that_has_faults_since_gives_way_to_another(tmp_path, monkeypatch):
    monkeypatch.setenv("TALK_KIT_HOME", str(tmp_path))
    (tmp_path / "talks").mkdir()
    (tmp_path / "talks" / "mine.toml").write_text('title = "Mine"\nservings = 2\n[[ingredient]]\nline = "1 cup milk"\n')
    use("mine")
    assert on_screen().setting.talk.title == "Mine"
    (tmp_path / "talks" / "mine.toml").write_text("title = ")
    assert on_screen().setting.talk.name in bundled_talks()


def test_an_unknown_talk_is_told_with_the_nearest():
    with pytest.raises(UnknownNameError, match="barley_squash_box"):
        on_screen("barley_squash_bok")
