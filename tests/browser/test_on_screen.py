"""Notebook 3 in a browser, under Voila and in JupyterLab: what is painted is what Python computes."""

from dataclasses import replace

import pytest
from live import notebook_page, run_all_cells

from kit.meal.nutrition import nutrition
from kit.meal.portions import SHARE_OUT
from kit.meal.scenario import as_written
from kit.show.marks import shorten
from kit.show.views import drawings, read_out
from kit.talk.library import bundled_talks, read_talk
from kit.texts import number

TALK = read_talk(next(iter(bundled_talks())))
WRITTEN = as_written(TALK.recipe, TALK.measures)
FOOD = 11  # the ingredient that is moved


@pytest.fixture(scope="module")
def opened(served, browser):
    kind, address = served
    with notebook_page(browser, address("3_on_screen.ipynb")) as (page, errors):
        if kind == "lab":
            run_all_cells(page)
        page.wait_for_selector("[data-chart=day] .main-svg")
        yield page, errors


@pytest.fixture
def screen(opened):
    """The page with everything as written, and the errors of its scripts so far."""
    page, errors = opened
    page.get_by_role("button", name="Back to the recipe as written").click()
    wait_until_shown(page, WRITTEN)
    servings(page, TALK.recipe.servings).wait_for()
    return page, errors


def servings(page, count):
    return page.locator(".widget-slider", has_text="Servings").get_by_text(number(count), exact=True)


def slider(page, at):
    """Find an ingredient's slider: they stand part by part, below the one for servings."""
    parts = [ingredient.part for ingredient in TALK.recipe.ingredients]
    order = sorted(range(len(parts)), key=lambda place: parts.index(parts[place]))
    return page.locator(".noUi-handle").nth(1 + order.index(at))


def press(page, handle, *keys):
    handle.focus()
    for key in keys:
        page.keyboard.press(key)


def painted_words(trace):
    """Words of a trace that stand somewhere: what is unknown has no place in the triangle."""
    places = trace.get("a", trace.get("x"))
    pairs = zip(trace.get("text", ()), places, strict=False)
    return [text.strip() for text, place in pairs if place is not None and text.strip()]


def wait_until_shown(page, setting):
    """Wait until read-out, words at the bars and text alternatives are what Python computes for a setting."""
    now, written = nutrition(setting.recipe), nutrition(TALK.recipe)
    expected = {
        "values": [number.value for number in read_out(now, written)],
        "charts": {
            name: {
                "sentence": drawing["layout"]["meta"]["alternative"],
                "words": sorted(text for trace in drawing["data"] for text in painted_words(trace)),
            }
            for name, drawing in drawings(now, written, rules=TALK.rules).items()
        },
    }
    page.wait_for_function(
        """(expected) => {
          const texts = (selector) => [...document.querySelectorAll(selector)]
            .map((node) => node.textContent.replaceAll('\\u00a0', ' ').trim()).filter(Boolean);
          const same = (one, other) => JSON.stringify(one) === JSON.stringify(other);
          return same(texts('.talk-value'), expected.values)
            && Object.entries(expected.charts).every(([name, { sentence, words }]) =>
              document.querySelector(`[data-chart=${name}] [role=img]`).ariaLabel === sentence
              && same(texts(`[data-chart=${name}] .textpoint text`).sort(), words));
        }""",
        arg=expected,
    )


def test_charts_and_read_out_follow_a_slider_and_go_back_to_the_recipe_as_written(screen):
    page, errors = screen
    steps = WRITTEN.steps(FOOD)
    press(page, slider(page, FOOD), "ArrowRight", "ArrowRight")
    wait_until_shown(page, WRITTEN.with_amount(FOOD, steps[WRITTEN.place(FOOD, steps) + 2].grams))
    page.get_by_role("button", name="Back to the recipe as written").click()
    wait_until_shown(page, WRITTEN)
    assert errors == []


def test_a_slider_reads_as_an_amount_of_the_kitchen(screen):
    page, _errors = screen
    name = shorten(TALK.recipe.ingredients[FOOD].food.name)
    row = page.locator(".talk-ingredient", has=page.get_by_role("option", name=name))
    press(page, slider(page, FOOD), "End")
    row.get_by_text(WRITTEN.steps(FOOD)[-1].label, exact=True).wait_for()
    press(page, slider(page, FOOD), "Home")
    row.get_by_text("left out", exact=True).wait_for()


def test_sharing_out_changes_a_serving_and_making_more_does_not(screen):
    page, errors = screen
    press(page, page.locator(".noUi-handle").first, "ArrowRight")
    servings(page, TALK.recipe.servings + 1).wait_for()
    wait_until_shown(page, WRITTEN)
    page.get_by_role("button", name="Share out differently").click()
    wait_until_shown(page, replace(WRITTEN, meaning=SHARE_OUT, servings=TALK.recipe.servings + 1))
    assert errors == []


def test_metric_measures_and_another_talk_put_every_slider_at_its_amount(screen):
    page, errors = screen
    talk, measures = page.locator(".talk-controls .talk-choices select").all()[:2]
    other = read_talk(next(name for name in bundled_talks() if name != TALK.name))
    measures.select_option(label="Grams and milliliters")
    wait_until_named(page, as_written(TALK.recipe, "metric"))
    measures.select_option(label="Cups and ounces")
    wait_until_named(page, WRITTEN)
    talk.select_option(label=other.title)
    wait_until_named(page, as_written(other.recipe))
    measures.select_option(label="Grams and milliliters")
    wait_until_named(page, as_written(other.recipe, "metric"))
    talk.select_option(label=TALK.title)
    wait_until_named(page, WRITTEN)
    assert errors == []


def wait_until_named(page, setting):
    """Wait until every slider names, and stands at, the amount that the setting gives its ingredient."""
    parts = [ingredient.part for ingredient in setting.written.ingredients]
    order = sorted(range(len(parts)), key=lambda at: parts.index(parts[at]))
    steps = {at: setting.steps(at) for at in order}
    labels = [steps[at][setting.place(at, steps[at])].label for at in order]
    places = [str(float(setting.place(at, steps[at]))) for at in order]
    page.wait_for_function(
        """([labels, places]) => {
          const texts = [...document.querySelectorAll('.widget-readout')].slice(1).map((node) => node.textContent);
          const handles = [...document.querySelectorAll('.noUi-handle')].slice(1);
          return JSON.stringify(texts) === JSON.stringify(labels)
            && JSON.stringify(handles.map((handle) => handle.ariaValueNow)) === JSON.stringify(places);
        }""",
        arg=[labels, places],
    )


def test_with_every_slider_at_nothing_there_are_zeros_and_no_errors(screen):
    page, errors = screen
    nothing = WRITTEN
    for at in range(len(WRITTEN.pot)):
        press(page, slider(page, at), "Home")
        nothing = nothing.with_amount(at, 0.0)
    wait_until_shown(page, nothing)
    assert "NaN" not in page.locator(".talk-stage").inner_html()
    assert errors == []


def test_everything_stands_on_a_shared_screen_without_scrolling(screen, served):
    page, _errors = screen
    kind, _address = served
    bottom = page.viewport_size["height"] - (30 if kind == "lab" else 0)  # JupyterLab's status bar
    for name in ("shares", "balance", "sources", "day"):
        box = page.locator(f"[data-chart={name}]").bounding_box()
        assert box["y"] >= 0
        assert box["y"] + box["height"] <= bottom
        assert box["x"] + box["width"] <= page.viewport_size["width"]
    last = page.get_by_role("button", name="Back to the recipe as written").bounding_box()
    assert last["y"] + last["height"] <= bottom


def test_a_dragged_slider_ends_where_it_is_let_go(screen):
    page, errors = screen
    handle = slider(page, FOOD)
    box = handle.bounding_box()
    x, y = box["x"] + box["width"] / 2, box["y"] + box["height"] / 2
    page.mouse.move(x, y)
    page.mouse.down()
    for step in range(40):  # to and fro, faster than anything can be drawn
        page.mouse.move(x + (step % 10) * 8 - 60, y)
    page.mouse.up()
    steps = WRITTEN.steps(FOOD)
    place = int(float(handle.get_attribute("aria-valuenow")))
    assert place != WRITTEN.place(FOOD, steps)
    wait_until_shown(page, WRITTEN.with_amount(FOOD, steps[place].grams))
    assert errors == []
