"""A practitioner writes her own talk from a blank page, in a browser, without touching code."""

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


def begins_with_a_blank_page(page, kit):
    page.goto(kit.page("1_prepare.ipynb"))
    page.get_by_role("button", name="New talk").click()
    page.get_by_role("textbox", name="Title of the new talk").press("Enter")
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


def saves(page, kit):
    page.get_by_role("button", name="Save the talk").click()
    told = page.get_by_role("status").filter(has_text="Saved: ")
    told.wait_for()
    (path,) = (kit.home / "own" / "talks").iterdir()
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
    page.get_by_role("link", name="3 On screen").click()
    page.wait_for_selector(".talk-desk .talk-large")
    page.wait_for_function("title => document.title === title", arg=TITLE)
    assert page.locator("img[onerror]").count() == 0
    everybody_can_use_it(page, ".talk-desk")


def test_a_talk_is_written_from_a_blank_page_saved_rehearsed_shown_and_found_again(kit, browser):
    with notebook_page(browser, "about:blank", SCREEN) as (page, errors):
        begins_with_a_blank_page(page, kit)
        pastes_a_recipe(page)
        settles_two_lines(page)
        writes_six_sentences(page)
        plans_and_expects_questions(page)
        talk = saves(page, kit)
        everybody_can_use_it(page, ".talk-writing")
        finds_it_all_again_after_a_reload(page, talk)
        rehearses_and_shows(page)
        assert errors == []
