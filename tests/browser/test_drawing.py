"""The drawing core of the stage in a page without Python, as the page that is sent afterwards uses it."""

import re

import numpy as np
import pytest
from demo_panel import WRITTEN, drawings, read_out
from plotly.offline import get_plotlyjs

from kit.show.look import script, style
from kit.show.stage import ReadOut, Stage, difference

NUMBER = re.compile(r"-?\d+(?:\.\d+)?")
PHONE = {"width": 400, "height": 800}
MOUNT = """
async ([script, content]) => {
  const stage = await import(URL.createObjectURL(new Blob([script], { type: "text/javascript" })));
  window.calls = [];
  const plotly = { ...window.Plotly };
  for (const name of ["restyle", "react"]) {
    plotly[name] = (place, ...rest) => { window.calls.push(name); return window.Plotly[name](place, ...rest); };
  }
  window.loaded = new Promise((resolve) => { window.load = () => resolve(plotly); });
  window.mountStage = stage.mount;
  window.view = stage.mount(document.body, window.loaded, content);
  window.draws = [];
  for (const [name, chart] of view.charts) {
    for (const way of ["drawChanges", "drawWhole"]) {
      const draw = chart[way];
      chart[way] = (...given) => { window.draws.push(name); draw.apply(chart, given); };
    }
  }
}
"""
# What a chart shows: of each bar, mark, line and word its place, form, text and colour.
PICTURE = """
(at) => [...document.querySelectorAll(".talk-stage")[at].querySelectorAll(".talk-chart")].map((chart) => [
  chart.dataset.chart,
  [...chart.querySelectorAll(".point > path, .points > .point, .js-line, .js-fill, .textpoint, .textpoint > text")].map(
    (node) => [
      ...["d", "transform", "x", "y"].map((name) => node.getAttribute(name)),
      ...[node.style.fill.replace(/url.*/, ""), node.textContent],
    ],
  ),
])
"""
FRAMES = "() => new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done)))"


@pytest.fixture(scope="module")
def with_plotly(browser):
    context = browser.new_context()
    opened = context.new_page()
    opened.set_content("<style>body { margin: 0 }</style>")
    opened.add_style_tag(content=style("stage"))
    opened.add_script_tag(content=get_plotlyjs())
    yield opened
    context.close()


@pytest.fixture
def page(with_plotly):
    """An empty page that has plotly's script, which takes seconds to load."""
    with_plotly.set_viewport_size({"width": 1400, "height": 1600})
    yield with_plotly
    with_plotly.evaluate("() => { window.view.remove(); document.body.replaceChildren(); }")


def mount(page, load=True):
    stage = Stage([drawings(WRITTEN)], read_out(WRITTEN))
    page.evaluate(MOUNT, [script("stage"), stage.content])
    if load:
        page.evaluate("() => window.load()")
        page.wait_for_selector("[data-chart=day] .main-svg")
        page.evaluate(FRAMES)


def changes(steps, before=WRITTEN):
    old, new = drawings(before), drawings(steps)
    return {
        "figures": {name: difference(old[name], new[name]) for name in new},
        "read_out": [vars(number) for number in read_out(steps)],
    }


def words(page, chart):
    texts = page.locator(f"[data-chart={chart}] .textpoint").all_text_contents()
    return [text.replace("\u00a0", " ").strip() for text in texts if text.strip()]


def expected_words(steps, chart):
    return [text.strip() for trace in drawings(steps)[chart]["data"] for text in trace.get("text", ()) if text]


def test_of_many_changes_at_once_only_the_newest_is_drawn(page):
    mount(page)
    burst = [changes(WRITTEN + step) for step in range(1, 11)]
    drawn = page.evaluate(
        "(burst) => { window.draws = []; burst.forEach(window.view.update); return draws.length; }", burst
    )
    assert drawn == 4  # the first at once; the nine after it wait for the next frame
    page.evaluate(FRAMES)
    assert page.evaluate("window.draws.length") == 8
    assert words(page, "day") == expected_words(WRITTEN + 10, "day")
    assert page.inner_text(".talk-value >> nth=0") == read_out(WRITTEN + 10)[0].value


def test_an_unchanged_chart_is_not_drawn_again(page):
    mount(page)
    steps = WRITTEN.copy()
    steps[0] += 1
    only = {"figures": {"shares": changes(steps)["figures"]["shares"]}}
    page.evaluate("(only) => { window.draws = []; window.view.update(only); }", only)
    assert page.evaluate("window.draws") == ["shares"]


def test_what_was_moved_is_what_plotly_would_have_drawn(page):
    """One step, large ones, nothing at all, back again, and dark: no trace may stay where it was."""
    mount(page)
    random = np.random.default_rng(5)
    one = WRITTEN + np.eye(12)[0]
    settings = [one, one + 1, np.eye(12)[3], *random.integers(0, 25, (6, 12)).astype(float), WRITTEN, WRITTEN + 3]
    before, plain_moves = WRITTEN, 0
    for number, steps in enumerate(settings):
        page.evaluate("(change) => { window.calls = []; window.view.update(change); }", changes(steps, before))
        page.evaluate(FRAMES)
        plain_moves += not page.evaluate("window.calls.length")
        if number == len(settings) - 2:
            page.evaluate("() => { document.body.dataset.talkLook = 'dark'; window.view.repaint(); }")
        page.evaluate(FRAMES)
        fresh = Stage([drawings(steps)], read_out(steps)).content
        page.evaluate("(content) => { window.other = mountStage(document.body, window.loaded, content); }", fresh)
        page.evaluate(FRAMES)
        moved, drawn = (page.evaluate(PICTURE, at) for at in (0, 1))
        page.evaluate("() => window.other.remove()")
        assert not (off := list(differences(moved, drawn))), off[:3]
        before = steps
    assert plain_moves >= 1


def differences(moved, drawn):
    """The elements of two pictures that differ by more than plotly's own rounding."""
    for (name, here), (_, there) in zip(moved, drawn, strict=True):
        if len(here) != len(there):
            yield name, len(here), len(there)
        for one, other in zip(here, there, strict=False):
            for left, right in zip(one, other, strict=True):
                numbers = [[float(number) for number in NUMBER.findall(text or "")] for text in (left, right)]
                same_form = NUMBER.sub("#", left or "") == NUMBER.sub("#", right or "")
                if not same_form or numbers[0] != pytest.approx(numbers[1], abs=0.03):
                    yield name, left, right


def test_a_change_that_comes_before_plotly_is_drawn_with_it(page):
    mount(page, load=False)
    page.evaluate("(change) => window.view.update(change)", changes(WRITTEN + 2))
    page.evaluate(FRAMES)
    assert page.inner_text(".talk-value >> nth=0") == read_out(WRITTEN + 2)[0].value  # the read-out does not wait
    page.evaluate("() => window.load()")
    page.wait_for_selector("[data-chart=day] .main-svg")
    assert words(page, "day") == expected_words(WRITTEN + 2, "day")


def test_every_chart_is_a_picture_with_a_text_that_follows_it(page):
    mount(page)
    page.evaluate("(change) => window.view.update(change)", changes(WRITTEN + 3))
    for name, drawing in drawings(WRITTEN + 3).items():
        picture = page.locator(f"[data-chart={name}] [role=img]")
        assert picture.get_attribute("aria-label") == drawing["layout"]["meta"]["alternative"]
    assert page.get_attribute(".talk-read-out", "aria-live") == "polite"


def test_the_number_as_written_stands_beside_one_that_changed(page):
    mount(page)
    numbers = [vars(ReadOut("Energy", "about 450 kcal", "about 430 kcal"))]
    page.evaluate("(numbers) => window.view.update({ read_out: numbers })", numbers)
    assert page.inner_text(".talk-read-out").split("\n") == ["Energy", "about 450 kcal", "was about 430 kcal"]


def test_a_phone_shows_one_column_without_scrolling_sideways(page):
    page.set_viewport_size(PHONE)
    mount(page)
    boxes = [page.locator(f"[data-chart={name}]").bounding_box() for name in drawings(WRITTEN)]
    assert all(box["x"] >= 0 and box["x"] + box["width"] <= PHONE["width"] for box in boxes)
    assert [box["y"] for box in boxes] == sorted(box["y"] for box in boxes)
    assert page.evaluate("document.documentElement.scrollWidth") <= PHONE["width"]


def test_charts_follow_the_size_of_the_window(page):
    mount(page)
    page.set_viewport_size(PHONE)
    page.wait_for_function("() => document.querySelector('[data-chart=shares] .main-svg').clientWidth <= 400")


def test_a_chart_that_nobody_sees_follows_when_it_comes_near_or_is_printed(page):
    page.set_viewport_size(PHONE)
    mount(page)
    page.evaluate("(change) => window.view.update(change)", changes(WRITTEN + 2))
    page.evaluate(FRAMES)
    assert words(page, "shares") == expected_words(WRITTEN + 2, "shares")
    assert words(page, "day") == expected_words(WRITTEN, "day")
    page.locator("[data-chart=day]").scroll_into_view_if_needed()
    page.evaluate(FRAMES)
    assert words(page, "day") == expected_words(WRITTEN + 2, "day")
    page.evaluate("(change) => window.view.update(change)", changes(WRITTEN + 5, WRITTEN + 2))
    page.evaluate("() => window.dispatchEvent(new Event('beforeprint'))")
    assert words(page, "shares") == expected_words(WRITTEN + 5, "shares")


def test_a_removed_view_leaves_nothing_behind(page):
    mount(page)
    page.evaluate("(change) => { window.view.update(change); window.view.remove(); }", changes(WRITTEN + 1))
    page.evaluate("(change) => window.view.update(change)", changes(WRITTEN + 2))
    page.evaluate(FRAMES)
    assert page.locator(".talk-stage, .js-plotly-plot").count() == 0
