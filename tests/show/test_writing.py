"""Her writing desk: what the page is told for each thing that she does."""

import json

import pytest

from kit.show.writing import WritingDesk, prepare
from kit.talk.drafts import drafts
from kit.talk.last_used import last_name
from kit.talk.library import read_talk, talks_folder

BEANS = "Bean pot\nServes 2\n1 cup beans, dry\n2 tbsp olive oil\n"


class Page:
    """The other side of the widget: what it sends, and what it is told."""

    def __init__(self, widget, window="one"):
        self.widget, self.sent = widget, []
        widget.send = lambda message, buffers=None: self.sent.append(json.loads(json.dumps(message)))
        self.does("window", id=window)

    def does(self, act, **what):
        """Send a message; returns what changed."""
        self.widget._hear(self.widget, {"do": act, "number": 1, **what}, [])
        assert self.sent[-1]["done"] == 1
        return self.sent[-1]["changes"]

    def types(self, part, text, **more):
        """Type, and pause."""
        typed = self.does("text", at=part, text=text, **more)
        return {**typed, **self.does("rest")}

    @property
    def content(self):
        return self.widget.content

    def row(self, words):
        return next(row for group in self.content["settle"] for row in group["rows"] if words in row["line"])

    def answers(self, part):
        return {answer["place"]: answer for answer in self.content[part]}


@pytest.fixture(autouse=True)
def her_folder(tmp_path, monkeypatch):
    monkeypatch.setenv("TALK_KIT_HOME", str(tmp_path / "own"))
    return tmp_path / "own"


@pytest.fixture
def page():
    return Page(prepare("pear_oat_jars"))


@pytest.fixture
def blank(page):
    page.does("new", title="")
    return page


def test_it_begins_with_a_talk_its_answers_and_its_numbers(page):
    assert "2 cups rolled oats" in page.content["texts"]["recipe"]
    assert page.content["title"] == read_talk("pear_oat_jars").title
    assert page.row("2 cups rolled oats")["grams"] == "162"
    assert page.content["serving"]["title"].startswith("One of 4")
    assert "Protein" in [row[0] for row in page.content["serving"]["tables"]["serving"]["rows"]]
    assert set(page.content["charts"]) == {"parts", "sources"}


def test_every_line_of_the_recipe_is_answered_and_an_unclear_one_asks_with_foods_to_choose(blank):
    blank.types("recipe", BEANS)
    asked, clear = blank.answers("recipe")[2], blank.answers("recipe")[3]
    assert (asked["kind"], clear["kind"]) == ("ask", "plain")
    assert clear["text"].startswith("Olive oil, 27 g")
    assert "black-beans-dry" in [key for key, _ in asked["choices"][0]["options"]]
    assert "1 line is still to be settled" in blank.content["serving"]["open"]
    blank.does(
        **{"act": "choose", **{k: v for k, v in asked["choices"][0]["send"].items() if k != "do"}},
        value="black-beans-dry",
    )
    assert blank.row("1 cup beans")["grams"] == "194"
    assert blank.content["serving"]["open"] == ""


def test_alternatives_are_of_the_same_kind(page):
    offered = [name for _, name in page.row("2 cups rolled oats")["foods"]]
    assert "Steel-cut oats, dry" in offered
    assert not [name for name in offered if "oat" not in name.lower()]


def test_grams_that_were_weighed_are_taken_and_given_back(page):
    page.does("grams", at=0, which=0, value="170 g", by="settle")
    assert (page.row("2 cups rolled oats")["grams"], page.row("2 cups rolled oats")["weighed"]) == ("170", True)
    page.does("grams", at=0, which=0, value="", by="settle")
    assert (page.row("2 cups rolled oats")["grams"], page.row("2 cups rolled oats")["weighed"]) == ("162", False)


def test_what_makes_no_sense_is_told_beside_what_was_touched_and_changes_nothing(page):
    before = page.widget.desk
    for message, told in (
        ({"act": "grams", "at": 0, "which": 0, "value": "-5", "by": "settle"}, "give a number from 0 to 1,000,000"),
        ({"act": "grams", "at": 0, "which": 0, "value": "much", "by": "settle"}, "is no weight"),
        (
            {"act": "field", "at": "keeps_days", "value": "1000", "by": "field-keeps_days"},
            "cannot be right; give a",
        ),
    ):
        said = page.does(**message)["told"]
        assert (said["by"], said["wrong"]) == (message["by"], True)
        assert told in said["text"]
    assert page.widget.desk is before


def test_a_part_is_cooked_as_she_says_or_as_is_worked_out(blank):
    blank.types("recipe", "Carrots\nServes 2\n## tray\n4 carrots, sliced\n## dressing\n1 tbsp olive oil\n")
    tray = blank.content["settle"][0]
    assert (tray["part"], tray["way"], tray["ways"][0][0]) == ("tray", "", "")
    blank.does("cook", at="tray", part="tray", value="boiled")
    assert blank.content["settle"][0]["way"] == "boiled"
    assert blank.row("4 carrots")["way"] == "boiled"
    assert blank.content["settle"][1]["way"] == ""
    blank.does("save")
    (path,) = talks_folder().iterdir()
    assert [each.treatment for each in read_talk(path).recipe.ingredients] == ["boiled", ""]


def test_a_sentence_is_answered_with_a_verdict_and_words_to_take(page):
    page.types("script", "The jar is vegan.\nA jar has {protein}. It is free of oats.")
    answers = page.content["script"]
    assert [(answer["place"], answer["kind"]) for answer in answers] == [(0, "off"), (1, "holds"), (1, "off")]
    take = answers[0]["acts"][0]["replace"]
    assert take["from"] == "The jar is vegan."
    page.types("script", take["to"])
    assert page.content["script"][0]["kind"] == "holds"


def test_plan_and_questions_are_answered_line_by_line(page):
    page.types("plan", "5 min: stir; pot of oats 20 min\nSay: The jar is vegan.\n3 min: eat; soup 1")
    plan = page.answers("plan")
    assert "starts pot of oats" in plan[0]["text"]
    assert plan[1]["kind"] == "off"
    assert plan[2]["kind"] == "ask"
    page.types("questions", "Can I leave out the pears? = leave out the pearz\nYes.")
    assert page.answers("questions")[0]["kind"] in ("ask", "plain")
    assert page.answers("questions")[1]["text"] == "answer"


def test_the_plan_is_a_table_too_whose_cells_change_their_lines(blank):
    blank.types("plan", "# Start\n5 min: stir; pot of oats 20 min\n3 min: eat; needs pot of oats")
    assert [row["title"] for row in blank.content["plan_rows"]] == ["stir", "eat"]
    blank.does("plan_cell", place=1, cell="hands", value="7", by="plan")
    assert blank.content["texts"]["plan"].split("\n")[1] == "7 min: stir; pot of oats 20 min"
    assert blank.does("plan_cell", place=1, cell="hands", value="much", by="plan")["told"]["wrong"]
    blank.does("plan_add", by="plan")
    blank.does("plan_remove", place=2, by="plan")
    assert [row["title"] for row in blank.content["plan_rows"]] == ["stir", "the next step"]


def test_a_pasted_talk_is_taken_apart_and_what_was_written_stays(blank):
    blank.types("script", "Hello and welcome.")
    text = f"{BEANS}\nKeeps days: 3\n\nScript\n\nIt is vegan.\n\nPlan\n\n5 min: cut\n\nQuestions\n\nNo oil? = no oil\n"
    changes = blank.types("recipe", text, pasted=True)
    assert changes["texts"]["script"] == "Hello and welcome.\n\nIt is vegan."
    assert changes["texts"]["plan"] == "5 min: cut"
    assert changes["texts"]["questions"] == "No oil? = no oil"
    assert "Script" not in changes["texts"]["recipe"]
    assert {field["key"]: field["value"] for field in blank.content["fields"]}["keeps_days"] == "3"


def test_a_talk_is_saved_in_her_folder_with_the_place_told_and_opens_first(blank):
    blank.types("recipe", "Oil\nServes 1\n2 tbsp olive oil\n")
    told = blank.does("save", by="save")["told"]
    path = talks_folder() / "oil.toml"
    assert told == {"by": "save", "text": f"Saved: {path}", "wrong": False}
    assert last_name() == "oil"
    assert blank.content["state"] == "Saved as oil.toml."
    assert str(path) in [talk["path"] for talk in blank.content["talks"] if talk["own"]]


def test_a_bundled_talk_is_saved_as_a_copy_with_all_that_is_not_touched(page):
    page.does("grams", at=0, which=0, value="170", by="settle")
    page.does("save", by="save")
    (path,) = talks_folder().iterdir()
    talk, bundled = read_talk(path), read_talk("pear_oat_jars")
    assert 170 in talk.recipe.grams
    assert (talk.points, talk.steps, talk.questions, talk.series) == (
        bundled.points,
        bundled.steps,
        bundled.questions,
        bundled.series,
    )


def test_a_talk_with_changes_is_left_only_after_asking(page, her_folder):
    other = next(talk["path"] for talk in page.content["talks"] if "soup" in talk["path"])
    page.types("script", "The jar is warm.")
    changes = page.does("open", path=other)
    assert "has changes that are not saved" in changes["asking"]["text"]
    assert page.content["texts"]["script"] == "The jar is warm."
    page.does("unsaved", how="draft")
    assert page.content["opened"] == other
    assert last_name() == "split_pea_soup"
    page.does("open", path=str(next(talk["path"] for talk in page.content["talks"] if "pear" in talk["path"])))
    assert page.content["texts"]["script"] == "The jar is warm."
    assert "is here again" in page.content["told"]["text"]
    page.does("open", path=other)
    page.does("unsaved", how="discard")
    assert [path.suffix for path in (her_folder / "bin").iterdir()] == [".json"]  # thrown away, and not lost
    page.does("open", path=str(next(talk["path"] for talk in page.content["talks"] if "pear" in talk["path"])))
    assert page.content["texts"]["script"] != "The jar is warm."


def test_what_was_typed_is_back_after_a_reload_and_offered_in_another_window(blank):
    blank.types("recipe", BEANS)
    blank.does("rest")
    opened = blank.content["opened"]
    again = Page(prepare("pear_oat_jars"), "another")
    assert [draft["title"] for draft in again.content["drafts"]] == ["Bean pot"]
    reloaded = WritingDesk(again.widget.desk, again.widget.opened)
    page = Page(reloaded)
    page.does("window", id="one", opened=opened)
    assert page.content["texts"]["recipe"] == BEANS
    again.does("draft", at=0, how="open")
    assert again.content["texts"]["recipe"] == BEANS
    assert again.content["drafts"] == []


def test_a_page_that_is_closed_while_she_types_leaves_a_draft(blank):
    blank.does("text", at="recipe", text=BEANS)  # and no pause
    blank.widget._soon.join()
    assert [draft.desk.recipe for draft in drafts()] == [BEANS]


def test_a_draft_that_cannot_be_kept_is_told(blank, her_folder):
    her_folder.mkdir(exist_ok=True)
    (her_folder / "drafts").write_text("in the way", encoding="utf-8")
    blank.types("recipe", BEANS)
    assert "no draft can be kept" in blank.content["state"]


@pytest.fixture
def other(blank):
    """Another window on a talk of hers, which wrote the script and saved it before the first window did."""
    blank.types("recipe", "Oil\nServes 1\n2 tbsp olive oil\n")
    blank.does("save")
    other = Page(prepare("oil"), "two")
    other.types("script", "It is vegan.")
    other.does("save")
    blank.types("script", "It is oil.")
    return other


def test_two_windows_on_one_talk_lose_nothing(blank, other):
    changes = blank.does("save", by="save")
    assert changes["conflict"] is True
    assert "changed in another window" in changes["told"]["text"]
    blank.does("beside")
    assert [point.say for point in read_talk("oil").points] == ["It is vegan."]
    assert [point.say for point in read_talk("oil_2").points] == ["It is oil."]
    other.types("script", "It is vegan. It is oil.")
    other.does("save")
    assert "It is vegan. It is oil." not in other.content["told"]["text"]


@pytest.mark.usefixtures("other")
def test_the_other_one_is_opened_where_two_windows_wrote_and_hers_stays_as_a_draft(blank):
    assert blank.does("save")["conflict"] is True
    assert blank.does("theirs")["conflict"] is False
    assert blank.content["texts"]["script"] == "It is vegan."
    assert len(blank.content["drafts"]) == 1
    blank.does("draft", at=0, how="open")
    assert blank.content["texts"]["script"] == "It is oil."
    blank.does("draft", at=7, how="open")  # of a list that is no longer there
    assert blank.content["texts"]["script"] == "It is oil."


def test_a_draft_is_put_into_the_bin_and_gone_on_with_only_after_asking(page, her_folder):
    other = Page(prepare("pear_oat_jars"), "two")
    other.types("script", "The jar is warm.")
    third = Page(prepare("pear_oat_jars"), "three")
    third.types("script", "The jar is cold.")
    changes = third.does("draft", at=0, how="open")
    assert "has changes that are not saved" in changes["asking"]["text"]
    third.does("unsaved", how="stay")
    assert third.content["texts"]["script"] == "The jar is cold."
    assert third.content["asking"] is None
    third.does("draft", at=0, how="bin")
    assert third.content["drafts"] == []
    assert "bin" in third.content["told"]["text"]
    assert [path.suffix for path in (her_folder / "bin").iterdir()] == [".json"]


def test_a_new_talk_is_deleted_into_the_bin_and_copied_only_once_it_is_saved(blank, her_folder):
    blank.types("recipe", BEANS)
    for act in ("duplicate", "rename", "new"):  # each would lose what was typed
        assert blank.does(act, title="Other")["asking"]
        blank.does("unsaved", how="stay")
    blank.does("duplicate", title="Other", settled=True)
    assert "this talk is not saved yet; save it before you copy it" in blank.content["told"]["text"]
    blank.does("delete")
    assert blank.content["told"]["text"] == "Deleted; what was typed lies in the bin."
    assert [path.suffix for path in (her_folder / "bin").iterdir()] == [".json"]


def test_a_talk_that_vanished_makes_way_for_another_and_nothing_typed_is_lost(page):
    page.does("duplicate", title="Pears for ten")
    page.types("script", "The jar is warm.")
    (path,) = talks_folder().iterdir()
    path.unlink()
    again = Page(prepare(), "two")
    again.does("window", id="two", opened=str(path))
    assert again.content["opened"] != str(path)
    assert str(path) not in [talk["path"] for talk in again.content["talks"]]
    assert again.does("open", path=str(path))["told"]["wrong"] is True
    assert page.does("save", by="save")["conflict"] is True
    page.does("beside")
    assert [point.say for point in read_talk("Pears for ten").points] == ["The jar is warm."]


def test_a_talk_is_copied_renamed_and_put_into_the_bin(page, her_folder):
    page.does("duplicate", title="Pears for ten")
    assert (page.content["title"], page.content["own"]) == ("Pears for ten", True)
    page.does("rename", title="Pears for twelve")
    assert page.content["title"] == "Pears for twelve"
    assert [path.name for path in talks_folder().iterdir()] == ["pears_for_twelve.toml"]
    page.does("delete")
    assert list(talks_folder().iterdir()) == []
    assert [path.name for path in (her_folder / "bin").iterdir()] == ["pears_for_twelve.toml"]
    assert page.content["title"] != "Pears for twelve"


def test_a_label_is_kept_read_corrected_deleted_and_brought_back(blank):
    amounts = {"energy": "140", "fat": "6", "carbohydrate": "16", "protein": "5", "sodium": "150"}
    label = {"name": "Seed crackers", "serving": "30 g", "amounts": amounts, "contains": "", "origin": "plant"}
    told = blank.does("label", label=label, by="label")["told"]
    assert "check the package" in told["text"]
    blank.types("recipe", "Snack\nServes 1\n60 g seed crackers\n")
    assert blank.row("seed crackers")["food"] == "seed-crackers"
    cautions = [row[:2] for row in blank.content["serving"]["tables"]["cautions"]["rows"]]
    assert ["allergens not known", "Check the package of the seed crackers"] in cautions
    (kept,) = blank.content["labels"]
    typed = {**kept["typed"], "contains": "Contains: sesame, wheat."}
    assert typed["amounts"] == amounts
    blank.does("label", label=typed, key=kept["key"], by="label")
    cautions = [row[1] for row in blank.content["serving"]["tables"]["cautions"]["rows"]]
    assert "Sesame, from the seed crackers" in cautions
    told = blank.does("label_delete", key="seed-crackers", by="label")["told"]
    assert blank.content["labels"] == []
    assert blank.row("seed crackers")["food"] != "seed-crackers"
    blank.does("label_back", key=told["back"], by="label")
    assert blank.row("seed crackers")["food"] == "seed-crackers"
