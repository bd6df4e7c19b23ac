"""The stage in a running notebook, under Voila and in JupyterLab: what is painted is what Python computes."""

import pytest
from demo_panel import NAMES, WRITTEN, drawings, read_out
from live import notebook_page, run_all_cells


@pytest.fixture
def opened(served, browser):
    kind, address = served
    opening = notebook_page(browser, address("stage.ipynb"))
    with opening as (page, errors):
        if kind == "lab":
            run_all_cells(page)
        page.wait_for_selector("[data-chart=day] .main-svg")
        yield page, errors


def press(page, ingredient, key, times=1):
    page.locator(".noUi-handle").nth(NAMES.index(ingredient)).focus()
    for _ in range(times):
        page.keyboard.press(key)


def painted_words(trace):
    """Words of a trace that stand somewhere: what is unknown has no place in the triangle."""
    places = trace.get("a", trace.get("x"))
    pairs = zip(trace.get("text", ()), places, strict=False)
    return [text.strip() for text, place in pairs if place is not None and text.strip()]


def wait_until_shown(page, steps):
    """Wait until read-out, words at the bars and text alternatives are what Python computes for the steps."""
    for number in read_out(steps):
        page.locator(".talk-value", has_text=number.value).first.wait_for()
    for name, drawing in drawings(steps).items():
        sentence = drawing["layout"]["meta"]["alternative"]
        page.wait_for_function(
            "([name, sentence]) => document.querySelector(`[data-chart=${name}] [role=img]`).ariaLabel === sentence",
            arg=[name, sentence],
        )
        words = sorted(text for trace in drawing["data"] for text in painted_words(trace))
        page.wait_for_function(
            """([name, words]) => {
              const shown = [...document.querySelectorAll(`[data-chart=${name}] .textpoint text`)];
              const texts = shown.map((text) => text.textContent.replaceAll('\\u00a0', ' ').trim()).filter(Boolean);
              return JSON.stringify(texts.sort()) === JSON.stringify(words);
            }""",
            arg=[name, words],
        )


def test_charts_and_read_out_follow_the_sliders_and_go_back_to_the_recipe_as_written(opened):
    page, errors = opened
    wait_until_shown(page, WRITTEN)
    press(page, "Olive oil", "ArrowRight", 5)
    steps = WRITTEN.copy()
    steps[NAMES.index("Olive oil")] += 5
    wait_until_shown(page, steps)
    page.get_by_role("button", name="Back to the recipe").click()
    wait_until_shown(page, WRITTEN)
    assert errors == []


def test_with_every_slider_at_nothing_the_charts_are_empty_and_say_so(opened):
    page, errors = opened
    for name in NAMES:
        press(page, name, "Home")
    wait_until_shown(page, WRITTEN * 0)
    assert "NaN" not in page.locator(".talk-stage").inner_html()
    assert errors == []


def test_two_views_follow_together_and_share_one_script(served, browser):
    kind, address = served
    with notebook_page(browser, "about:blank") as (page, errors):
        large = []
        page.on(
            "websocket",
            lambda socket: socket.on("framereceived", lambda data: large.append(data) if len(data) > 4e6 else None),
        )
        page.goto(address("two_views.ipynb"))
        if kind == "lab":
            run_all_cells(page)
        page.locator("[data-chart=day] .main-svg").nth(5).wait_for()
        press(page, "Olive oil", "ArrowRight", 2)
        steps = WRITTEN.copy()
        steps[NAMES.index("Olive oil")] += 2
        for view in range(2):
            page.locator(".talk-stage").nth(view).get_by_text(read_out(steps)[0].value).wait_for()
        assert len(large) == 1
        assert errors == []
