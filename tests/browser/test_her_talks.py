"""Her talks in notebook 1, in a browser: renamed, kept though changed elsewhere, offered where not saved, and written.

One she writes from a blank page, without touching code.
"""

import tomllib

import pytest
from axe_playwright_python.sync_playwright import Axe
from live import notebook_page
from running import Kit

SCREEN = {"width": 1440, "height": 900}
TITLE = "Bean pot <img src=x onerror=alert(1)> & greens"
RECIPE = f"""{TITLE}
Serves 4

1 cup beans, dry
4 cups greens, chopped
1 large onion, chopped
2 tbsp olive oil
1/2 tsp salt
"""
SENTENCES = (
    "A bowl comes to {energy}, with {protein} and {fiber}.",
    "A bowl has 40 grams of protein.",
    "The bowl is vegan.",
    "It is free of gluten.",
    "A bowl has {sodium}.",
    "It keeps for three days in the refrigerator.",
)
NAMED = "Jars <b>of</b> & mine"
HERS, OVER = "\nAll of it is soft.", "\nIt is soft all through."
ELSEWHERE = "# changed elsewhere\n"
PLAN = """2 min: welcome, and the pot goes on; pot of beans 40 min
10 min talk: what a bowl holds
4 min: fill the bowls; needs pot of beans"""
QUESTIONS = """Can I leave out the salt? = leave out the salt
A: Yes. Lemon brings the taste back.

Could it be for ten? = for ten
A: Yes, in a larger pot."""


@pytest.fixture(scope="module")
def kit(tmp_path_factory):
    opened = Kit(tmp_path_factory.mktemp("blank"))
    yield opened
    opened.stop()


def box(page, name):
    return page.get_by_role("textbox", name=name)


def answers(page, name):
    return page.get_by_role("list", name=f"Answers to {name}").get_by_role("listitem")


def answer_to(page, name, words):
    return answers(page, name).filter(has_text=words)


def writes(page, text):
    page.get_by_role("textbox", name="Script").press("Control+End")
    page.keyboard.type(text)
    page.get_by_text("Changed since it was saved; a draft of it is kept").wait_for()


def copies_and_renames(page, talks):
    page.get_by_role("button", name="Make a copy").click()
    page.get_by_role("textbox", name="Title of the copy").press("Enter")
    page.get_by_text("This is the copy").wait_for()
    page.get_by_role("button", name="Rename").click()
    entry = page.get_by_role("textbox", name="New title")
    entry.fill(NAMED)
    entry.press("Enter")
    page.get_by_text("Renamed; its file is").wait_for()
    page.wait_for_function("title => document.title === title", arg=NAMED)
    (path,) = talks.iterdir()
    assert path.name == "jars_b_of_b_&_mine.toml"
    return path


def is_asked_when_the_file_changed_elsewhere(page, path):
    """The file is changed twice behind her back: once hers is saved beside it, once over it."""
    path.write_text(path.read_text(encoding="utf-8") + ELSEWHERE, encoding="utf-8")
    writes(page, HERS)
    page.get_by_role("button", name="Save the talk").click()
    page.get_by_role("button", name="Save mine beside it").click()
    page.get_by_role("status").filter(has_text="Saved: ").wait_for()
    (beside,) = set(path.parent.iterdir()) - {path}
    assert HERS.strip() in beside.read_text(encoding="utf-8")
    assert path.read_text(encoding="utf-8").endswith(ELSEWHERE)

    beside.write_text(beside.read_text(encoding="utf-8") + ELSEWHERE, encoding="utf-8")
    writes(page, OVER)
    page.get_by_role("button", name="Save the talk").click()
    page.get_by_role("button", name="Keep mine; the other goes to the bin").click()
    page.get_by_role("button", name="Keep mine; the other goes to the bin").wait_for(state="hidden")
    text = beside.read_text(encoding="utf-8")
    assert OVER.strip() in text
    assert ELSEWHERE not in text
    binned = path.parent.parent.rglob("bin/**/*.toml")
    assert any(ELSEWHERE in one.read_text(encoding="utf-8") for one in binned)


def is_offered_what_another_window_did_not_save(page):
    offer = page.get_by_text("Typed and not saved, ")
    offer.wait_for()
    page.get_by_role("button", name="Go on with it").click()
    offer.wait_for(state="hidden")
    page.wait_for_function(
        "said => [...document.querySelectorAll('textarea')].some((one) => one.value.endsWith(said))", arg=HERS
    )
    asks_for_a_new_talk(page)
    page.get_by_role("button", name="Keep it as a draft").wait_for()
    assert page.evaluate("() => document.activeElement.textContent") == "Save it first"
    page.get_by_role("button", name="Stay here").click()
    page.get_by_role("button", name="Keep it as a draft").wait_for(state="hidden")


def asks_for_a_new_talk(page):
    page.get_by_role("button", name="New talk").click()
    page.get_by_role("textbox", name="Title of the new talk").press("Enter")


def begins_with_a_blank_page(page):
    asks_for_a_new_talk(page)
    page.get_by_role("button", name="Keep it as a draft").click()
    page.wait_for_function("() => document.title === 'A new talk'")
    assert box(page, "Recipe").input_value() == ""


def pastes_a_recipe(page):
    box(page, "Recipe").click()
    page.evaluate(  # as a paste comes in: the event, then the text
        """text => {
          const area = document.activeElement;
          area.dispatchEvent(new ClipboardEvent('paste', { bubbles: true }));
          document.execCommand('insertText', false, text);
        }""",
        RECIPE,
    )
    answer_to(page, "recipe", "Olive oil, 27 g").wait_for()
    page.wait_for_function("title => document.title === title", arg=TITLE)  # shown as text
    assert page.locator(".talk-writing img").count() == 0
    assert page.get_by_text("2 lines are still to be settled").is_visible()


def settles_two_lines(page):
    beside = answers(page, "recipe").filter(has_text="to settle").first.get_by_role("combobox")
    beside.select_option(label="Black beans, dry")
    row = page.get_by_role("row").filter(has=page.get_by_role("rowheader", name="4 cups greens, chopped"))
    assert row.get_by_role("textbox", name="Grams").input_value() == ""
    row.get_by_role("combobox").select_option(label="Collard greens, raw")
    page.get_by_text("still to be settled").wait_for(state="hidden")
    grams = row.get_by_role("textbox", name="Grams")
    page.wait_for_function("entry => entry.value !== ''", arg=grams.element_handle())
    grams.fill("150")
    grams.press("Enter")
    row.get_by_role("cell", name="weighed", exact=True).wait_for()
    page.get_by_role("combobox", name="How the recipe is cooked").select_option("stewed")
    row.get_by_role("cell", name="stewed", exact=True).wait_for()


def writes_six_sentences(page):
    script = box(page, "Script")
    script.click()
    page.keyboard.insert_text("\n".join(SENTENCES[:-1]))
    page.keyboard.press("Enter")
    page.keyboard.type(SENTENCES[-1])
    answers(page, "script").nth(5).get_by_text("holds").wait_for()
    assert answers(page, "script").count() == 6
    off = answer_to(page, "script", "off")
    assert off.count() >= 1
    page.wait_for_timeout(600)  # what follows a pause has been told
    before = script.input_value()
    off.first.get_by_role("button", name="Say this instead").click()
    page.wait_for_function(
        "({ before, area }) => area.value !== before", arg={"before": before, "area": script.element_handle()}
    )
    assert page.evaluate("() => document.activeElement.tagName") == "TEXTAREA"  # she goes on where she was


def plans_and_expects_questions(page):
    box(page, "Plan").fill(PLAN)
    answer_to(page, "plan", "starts pot of beans (40 min)").wait_for()
    answer_to(page, "plan", "needs pot of beans").wait_for()
    box(page, "Questions").fill(QUESTIONS)
    answer_to(page, "questions", "to try: leave out the salt").wait_for()
    keeps = page.get_by_role("textbox", name="Days it keeps in the refrigerator")
    keeps.fill("-1")
    keeps.press("Tab")
    page.get_by_text('"-1" cannot be right; give a number from above 0 to 365').wait_for()
    keeps.fill("3")
    keeps.press("Tab")
    page.get_by_text('"-1" cannot be right; give a number from above 0 to 365').wait_for(state="hidden")


def saves(page, talks):
    others = set(talks.iterdir())
    page.get_by_role("button", name="Save the talk").click()
    told = page.get_by_role("status").filter(has_text="Saved: ")
    told.wait_for()
    (path,) = set(talks.iterdir()) - others
    assert str(path) in told.text_content()
    talk = tomllib.loads(path.read_text(encoding="utf-8"))
    assert talk["title"] == TITLE
    assert [len(talk[kind]) for kind in ("ingredient", "point", "step", "question")] == [5, 6, 3, 2]
    assert talk["step"][0]["pots"] == [{"name": "pot of beans", "minutes": 40}]
    assert (talk["ingredient"][0]["food"], talk["ingredient"][1]["grams"]) == ("black-beans-dry", 150)
    assert {entry["treatment"] for entry in talk["ingredient"]} == {"stewed"}
    assert talk["keeps_days"] == 3
    return talk


def everybody_can_use_it(page, part):
    page.evaluate("part => document.querySelectorAll(`${part} details`).forEach((one) => (one.open = true))", part)
    found = Axe().run(page, context=part).response["violations"]
    assert [
        (one["id"], [node["target"] for node in one["nodes"]])
        for one in found
        if one["impact"] in ("serious", "critical")
    ] == []


def finds_it_all_again_after_a_reload(page, talk):
    said = [point["say"] for point in talk["point"]]
    box(page, "Script").press("Control+End")
    page.keyboard.type("\nThis one is not saved.")
    page.get_by_text("Changed since it was saved; a draft of it is kept").wait_for()
    page.reload()
    page.get_by_text("is here again").wait_for()
    assert box(page, "Script").input_value().splitlines() == [*said, "This one is not saved."]
    assert box(page, "Plan").input_value() == PLAN
    assert box(page, "Questions").input_value() == QUESTIONS
    assert box(page, "Recipe").input_value().startswith(TITLE)
    row = page.get_by_role("row").filter(has=page.get_by_role("rowheader", name="4 cups greens, chopped"))
    assert row.get_by_role("textbox", name="Grams").input_value() == "150"


def rehearses_and_shows(page):
    page.get_by_role("link", name="Rehearse it").first.click()
    page.wait_for_function("title => document.title === title", arg=TITLE)
    page.get_by_text("welcome, and the pot goes on").first.wait_for()
    everybody_can_use_it(page, ".talk-rehearse")
    page.get_by_role("navigation", name="Notebooks").get_by_role("link", name="3 On screen").click()
    page.wait_for_selector(".talk-desk .talk-large")
    page.wait_for_function("title => document.title === title", arg=TITLE)
    assert page.locator("img[onerror]").count() == 0
    everybody_can_use_it(page, ".talk-desk")


def test_her_talks_are_renamed_kept_offered_and_written_from_a_blank_page_saved_rehearsed_and_shown(kit, browser):
    address, talks = kit.page("1_prepare.ipynb"), kit.home / "own" / "talks"
    with notebook_page(browser, address, SCREEN) as (page, errors):
        box(page, "Recipe").wait_for()
        path = copies_and_renames(page, talks)
        is_asked_when_the_file_changed_elsewhere(page, path)
        writes(page, HERS)
        assert errors == []
    with notebook_page(browser, address, SCREEN) as (page, errors):
        is_offered_what_another_window_did_not_save(page)
        begins_with_a_blank_page(page)
        pastes_a_recipe(page)
        settles_two_lines(page)
        writes_six_sentences(page)
        plans_and_expects_questions(page)
        talk = saves(page, talks)
        everybody_can_use_it(page, ".talk-writing")
        finds_it_all_again_after_a_reload(page, talk)
        rehearses_and_shows(page)
        assert errors == []
