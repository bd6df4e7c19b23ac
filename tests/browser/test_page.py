"""The page that is sent, opened from a file with the network off: it gives Python's numbers, on a phone too."""

import json
from dataclasses import replace
from random import Random

import pytest
from hostile import HOSTILE

from kit.food.nutrients import nutrient
from kit.meal.certainty import spoken_parts_per_serving
from kit.meal.nutrition import Nutrition, nutrition
from kit.meal.portions import make_more, share_out
from kit.rules.serving import serving_lines
from kit.share.contents import contents
from kit.share.handout import number_row
from kit.share.page import page
from kit.share.page_data import NUTRIENTS, page_data, page_rows
from kit.show.views import READ_ALOUD, drawings
from kit.talk.library import bundled_talks, read_talk
from kit.talk.talk import Question

SETTINGS = 200
BARLEY = "barley_squash_box"
OF_THE_PAGE = ("file:", "blob:", "data:")
FRAMES = "() => new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done)))"
PHONE, DESK = {"width": 390, "height": 844}, {"width": 1280, "height": 720}
SEEN = """() => ({
  read_out: [...document.querySelectorAll('[data-talk="read-out"] > div')].map((box) => [
    box.querySelector("b").textContent, box.querySelector(".unit").textContent]),
  table: [...document.querySelectorAll("[data-nutrient]")].map((row) =>
    [row.dataset.nutrient, ...[...row.children].slice(1).map((cell) => cell.textContent)]),
  drawn: Object.fromEntries(Object.entries(window.talkPage.drawn()).map(([name, map]) => [name, plain(map)])),
})"""
PLAIN = """() => { window.plain = (value) => value instanceof Map
  ? Object.fromEntries([...value].map(([key, held]) => [key, plain(held)]))
  : Array.isArray(value) ? value.map(plain) : value; }"""


@pytest.fixture(scope="module")
def written_pages(tmp_path_factory):
    """Return the path of a talk's page."""
    folder = tmp_path_factory.mktemp("pages")

    def write(talk):
        path = folder / f"{talk.name}.html"
        if not path.exists():
            path.write_text(page(contents(talk)), encoding="utf-8")
        return path

    return write


@pytest.fixture(scope="module")
def opened(browser, written_pages):
    """Open a talk's page with the network off; nothing may fail or be asked for."""
    contexts = []

    def open_page(talk, size=DESK, **facts):
        context = browser.new_context(viewport=size, offline=True, **facts)
        contexts.append(context)
        tab = context.new_page()
        tab.faults = []
        tab.on("pageerror", lambda fault: tab.faults.append(str(fault)))
        tab.on("console", lambda message: tab.faults.append(message.text) if message.type == "error" else None)
        tab.on(
            "request", lambda asked: asked.url.startswith(("file:", "blob:", "data:")) or tab.faults.append(asked.url)
        )
        tab.goto(written_pages(talk).as_uri())
        if facts.get("java_script_enabled", True):
            tab.wait_for_selector("[data-chart=day] .main-svg")
        return tab

    yield open_page
    for context in contexts:
        context.close()


@pytest.fixture(scope="module")
def barley(opened):
    """One page that is used for several things; each begins with the recipe as it is written."""
    tab = opened(read_talk(BARLEY))
    tab.evaluate("() => { window.talkAsWritten = structuredClone(window.talkPage.setting()); }")
    return tab


@pytest.fixture
def tab(barley):
    barley.evaluate("() => window.talkPage.set(structuredClone(window.talkAsWritten))")
    yield barley
    assert barley.faults == []


def setting_at_random(data, chance):
    rows = []
    for row in data["rows"]:
        option = chance.randrange(len(row["options"]))
        grams = row["options"][0]["grams"]
        rows.append({"option": option, "grams": chance.choice([0.0, grams, grams * chance.uniform(0, 2.5)])})
    servings = chance.choice(data["choices"])
    meaning = chance.choice(["make more", "share out"])
    source = chance.choice(data["shown"]["sources_of"])
    return {"servings": servings, "meaning": meaning, "system": "us", "source_of": source, "rows": rows}


def worked_out(talk, rows, setting) -> Nutrition:
    """The numbers of a setting by Python."""
    pot = tuple(
        replace(row.options[at["option"]], grams=at["grams"]) for row, at in zip(rows, setting["rows"], strict=True)
    )
    scale = make_more if setting["meaning"] == "make more" else share_out
    return nutrition(scale(replace(talk.recipe, ingredients=pot), setting["servings"]))


def close(ours, theirs):
    """Whether two drawings are the same, numbers to within what adding in another order makes of them."""
    if isinstance(ours, dict) and isinstance(theirs, dict):
        return ours.keys() == theirs.keys() and all(close(ours[key], theirs[key]) for key in ours)
    if isinstance(ours, list) and isinstance(theirs, list):
        return len(ours) == len(theirs) and all(map(close, ours, theirs))
    if isinstance(ours, float | int) and isinstance(theirs, float | int):
        return ours == pytest.approx(theirs, rel=1e-9, abs=1e-9)
    return ours == theirs


@pytest.mark.parametrize("name", bundled_talks())
def test_settings_at_random_give_the_numbers_that_python_gives(opened, request, name):
    talk = read_talk(name)
    tab = request.getfixturevalue("tab") if name == BARLEY else opened(talk)
    sent, chance = contents(talk), Random(name)
    data, options = page_data(sent), page_rows(sent)
    tab.evaluate(PLAIN)
    written = nutrition(talk.recipe)
    wrong = []
    settings = [setting_at_random(data, chance) for _ in range(SETTINGS // len(bundled_talks()) + 1)]
    shown = tab.evaluate(
        f"(settings) => settings.map((to) => {{ window.talkPage.set(to); return ({SEEN})(); }})", settings
    )
    for setting, seen in zip(settings, shown, strict=True):
        numbers = worked_out(talk, options, setting)
        said = spoken_parts_per_serving(numbers)
        rows = [number_row(line) for line in serving_lines(numbers, NUTRIENTS, talk.rules)]
        table = [[row[cell] for cell in ("nutrient", "value", "range", "day")] for row in rows]
        drawn = json.loads(json.dumps(drawings(numbers, written, setting["source_of"], talk.rules)))
        if seen["read_out"] != [list(said[name][1:]) for name in READ_ALOUD]:
            wrong.append((setting, seen["read_out"]))
        wrong += [(setting, row, other) for row, other in zip(seen["table"], table, strict=True) if row != other]
        wrong += [(setting, chart) for chart in drawn if not close(seen["drawn"][chart], drawn[chart])]
    assert wrong == []
    assert tab.faults == []


def test_a_slider_a_button_and_a_swap_change_the_numbers_and_back(tab):
    before = tab.evaluate(SEEN.replace("plain(map)", "0"))["read_out"]
    slider = tab.get_by_role("slider", name="Feta cheese")
    slider.focus()
    slider.press("Home")
    assert slider.get_attribute("aria-valuetext") == "left out"
    assert "Milk" not in tab.locator('[data-talk="allergens"]').text_content()
    assert tab.evaluate(SEEN.replace("plain(map)", "0"))["read_out"] != before
    tab.get_by_role("button", name="Back to the recipe").click()
    assert tab.evaluate(SEEN.replace("plain(map)", "0"))["read_out"] == before
    tab.get_by_role("button", name="More feta cheese").click()
    assert tab.locator(".row.changed").count() == 1


def test_a_prepared_question_is_tried_with_one_touch(tab):
    tab.get_by_role("button", name="Try it").first.click()
    assert tab.get_by_role("slider", name="Feta cheese").get_attribute("aria-valuetext") == "left out"


@pytest.mark.parametrize("size", [PHONE, DESK], ids=["phone", "desk"])
def test_nothing_scrolls_sideways_and_everything_can_be_touched(opened, request, size):
    on_desk = size == DESK  # as the page is that others use
    tab = request.getfixturevalue("tab") if on_desk else opened(read_talk(BARLEY), size, is_mobile=True, has_touch=True)
    assert tab.evaluate("document.documentElement.scrollWidth <= innerWidth")
    small = tab.evaluate("""() => [...document.querySelectorAll("button:not([hidden]), select, input")]
      .map((node) => [node.textContent || node.ariaLabel, node.getBoundingClientRect()])
      .filter(([, box]) => box.height < 44 || box.width < 44).map(([name]) => name)""")
    assert small == []
    cut = tab.evaluate("""() => [...document.querySelectorAll(".row .name, .row .amount, .strip b")]
      .filter((node) => node.scrollWidth > node.clientWidth + 1).map((node) => node.textContent)""")
    assert cut == []


def test_controls_have_names_and_work_by_keyboard(tab):
    unnamed = tab.evaluate("""() => [...document.querySelectorAll("button, select, input")]
      .filter((node) => !(node.ariaLabel || node.textContent.trim() || node.labels?.length)).length""")
    assert unnamed == 0
    tab.locator("[data-talk=servings]").focus()
    tab.keyboard.press("ArrowDown")
    assert tab.locator("[data-talk=servings]").input_value() == "7"


def test_without_script_it_is_a_recipe_with_its_numbers(opened):
    tab = opened(read_talk(BARLEY), java_script_enabled=False)
    assert tab.locator("[data-nutrient=energy]").text_content().startswith("Energy")
    assert "pearled barley" in tab.locator(".recipe").text_content()
    assert not tab.locator(".try").is_visible()


def test_its_policy_forbids_the_network_and_every_other_script(tab):
    tried = tab.evaluate("""async () => {
      const fetched = await fetch("https://fernhill.example/").then(() => "sent", () => "refused");
      const script = document.createElement("script");
      script.textContent = "window.ran = true";
      document.body.append(script);
      return [fetched, Boolean(window.ran)];
    }""")
    assert tried == ["refused", False]
    tab.faults.clear()  # the browser has told of both


def test_it_is_small_enough_to_be_mailed(written_pages):
    sizes = {name: written_pages(read_talk(name)).stat().st_size for name in bundled_talks()}
    assert {name: size for name, size in sizes.items() if size > 6_000_000} == {}


def test_the_handout_has_two_pages_at_the_most(browser, tmp_path):
    from kit.share.handout import handout

    long = {}
    for name in bundled_talks():
        tab = browser.new_page()
        tab.set_content(handout(contents(read_talk(name))))
        for paper in ("Letter", "A4"):
            pages = tab.pdf(format=paper).count(b"/Type /Page\n")
            if not 1 <= pages <= 2:
                long[name, paper] = pages
        tab.close()
    assert long == {}


def test_what_somebody_wrote_is_text_on_the_page(opened):
    talk = read_talk("split_pea_soup")
    everything = " ".join(HOSTILE)
    first, *rest = talk.recipe.ingredients
    hostile = [
        replace(part, food=replace(part.food, name=text), line=text, part=text)
        for part, text in zip((first, *rest), HOSTILE, strict=False)
    ]
    recipe = replace(talk.recipe, title=everything, serving_is=everything, ingredients=tuple(hostile))
    questions = tuple(Question(text, "", "Yes.") for text in HOSTILE)
    tab = opened(replace(talk, name="hostile", recipe=recipe, series=everything, points=(), questions=questions))
    tab.wait_for_timeout(300)
    assert tab.evaluate("window.talkHacked") is None
    assert tab.faults == []
    assert tab.locator("h1").text_content().startswith(HOSTILE[0][:10])
    assert nutrient("energy").name in tab.locator("[data-nutrient=energy]").text_content()
