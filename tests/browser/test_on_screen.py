"""Notebook 3 in a browser, under Voila and in JupyterLab: what is painted is what Python computes."""

import pytest
from axe_playwright_python.sync_playwright import Axe
from live import SCREEN, run_all_cells

from kit.show.desk_content import shown_name
from kit.show.scenes import Shown, scene
from kit.show.setting import Setting
from kit.talk.library import bundled_talks, read_talk

TALK = read_talk(next(iter(bundled_talks())))
WRITTEN = Setting(TALK, TALK.measures)
FOOD = 11  # the ingredient that is moved
LEAST_TEXT, LEAST_NUMBER = 36, 120  # on 1920 x 1080 [px]
FRAMES = "() => new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done)))"
SIZES = [{"width": width, "height": height} for width, height in ((1920, 1080), (1366, 768), (1280, 720))]
AT_200_PERCENT = [{"width": size["width"] // 2, "height": size["height"] // 2} for size in SIZES[:2]]
CHARTS = [("2", "shares"), ("3", "sources"), ("4", "day"), ("5", "plate"), ("6", "balance")]


@pytest.fixture(scope="module")
def opened(desk_page):
    with desk_page() as opened:
        yield opened


@pytest.fixture
def screen(opened):
    """The page with everything as written, and the errors of its scripts so far."""
    page, errors = opened
    press(page, "1", "r")
    # A move that is still under way has named no change yet; its slider has left its place at once.
    wait_until_named(page, WRITTEN)
    page.wait_for_function("() => !document.querySelector('.talk-made').children.length")
    wait_until_shown(page, WRITTEN)
    return page, errors


def press(page, *keys):
    page.locator(".talk-desk").first.focus()
    for key in keys:
        page.keyboard.press(key)


def slider(page, at):
    return page.locator(f"[data-control='amount-{at}']")


def expected(setting, name="numbers"):
    return scene(name, TALK, setting.now, setting.written, Shown(system=setting.system))


def wait_until_shown(page, setting):
    """Wait until the large numbers are what Python computes for a setting."""
    values = [number["value"] for number in expected(setting)["numbers"]]
    page.wait_for_function(
        "(values) => JSON.stringify([...document.querySelectorAll('.talk-preview .talk-large')]"
        ".map((node) => node.textContent)) === JSON.stringify(values)",
        arg=values,
    )


def moved(setting, at, by):
    steps, stands = setting.amounts(at)
    return setting.with_amount(at, steps[stands + by])


def test_numbers_follow_a_slider_and_go_back_to_the_recipe_as_written(screen):
    page, errors = screen
    slider(page, FOOD).focus()
    page.keyboard.press("ArrowRight")
    page.keyboard.press("ArrowRight")
    wait_until_shown(page, moved(WRITTEN, FOOD, 2))
    press(page, "r")
    wait_until_shown(page, WRITTEN)
    assert errors == []


@pytest.mark.parametrize(("key", "name"), CHARTS)
def test_every_chart_is_painted_as_python_computes_it(screen, key, name):
    page, errors = screen
    press(page, key)
    page.wait_for_selector(f".talk-preview [data-chart={name}] .textpoint")  # as a speaker looks before she moves
    slider(page, FOOD).focus()
    page.keyboard.press("ArrowLeft")
    page.locator(".talk-undo").wait_for()  # the answer is there, also where it changes no word of this chart
    made = expected(moved(WRITTEN, FOOD, -1), name)
    texts = [text.replace("<br>", "").strip() for trace in made["figure"]["data"] for text in trace.get("text", ())]
    words = sorted(filter(None, texts))
    page.wait_for_function(
        """([name, sentence, words]) => {
          const shown = [...document.querySelectorAll(`.talk-preview [data-chart=${name}] .textpoint text`)];
          const texts = shown.map((node) => node.textContent.replaceAll('\\u00a0', ' ').trim()).filter(Boolean);
          return document.querySelector('.talk-sentence-large')?.textContent === sentence
            && JSON.stringify(texts.sort()) === JSON.stringify(words);
        }""",
        arg=[name, made["sentence"], words],
    )
    assert errors == []


def test_a_typed_amount_means_what_it_says(screen):
    page, errors = screen
    amount = slider(page, 0).locator("xpath=following-sibling::input")
    amount.fill("2 cups")
    amount.press("Enter")
    wait_until_shown(page, WRITTEN.with_typed(0, "2 cups"))
    amount.fill("a few llamas")
    amount.press("Enter")
    page.locator(".talk-fault p").wait_for()
    wait_until_shown(page, WRITTEN.with_typed(0, "2 cups"))
    assert errors == []


def test_a_dragged_slider_ends_where_it_is_let_go(screen):
    page, errors = screen
    box = slider(page, FOOD).bounding_box()
    y = box["y"] + box["height"] / 2
    page.mouse.move(box["x"] + box["width"] / 2, y)
    page.mouse.down()
    for step in range(60):  # to and fro, faster than anything can be drawn
        page.mouse.move(box["x"] + box["width"] * (0.2 + 0.6 * (step % 10) / 10), y)
    page.mouse.up()
    place = int(slider(page, FOOD).input_value())
    steps, stands = WRITTEN.amounts(FOOD)
    assert place != stands
    wait_until_shown(page, WRITTEN.with_amount(FOOD, steps[place]))
    assert slider(page, FOOD).input_value() == str(place)
    assert errors == []


def test_a_whole_question_by_keyboard_alone(screen):
    page, errors = screen
    press(page, "q")
    page.keyboard.type("no feta, half the salt and canola oil instead of olive oil")
    page.keyboard.press("Enter")
    setting = WRITTEN.tried("no feta, half the salt and canola oil instead of olive oil")
    page.get_by_role("button", name="Undo: no feta, half the salt and canola oil").wait_for()
    page.get_by_role("slider", name="Canola oil", exact=True).wait_for()
    assert page.locator(".talk-about").inner_text().endswith("contains tree nuts")
    assert "“no feta, half the salt and canola oil instead of olive oil”" in page.locator(".talk-preview").inner_text()
    page.keyboard.press("Escape")
    press(page, "1")
    wait_until_shown(page, setting)
    press(page, "z")
    wait_until_shown(page, WRITTEN)
    assert errors == []


def test_the_buttons_of_the_questions_answer(screen):
    page, errors = screen
    question = next(one for one in TALK.questions if one.try_)
    page.get_by_role("button", name=question.asks).click()
    page.locator(".talk-answer", has_text=question.answer[:40]).wait_for()
    assert errors == []


def test_a_line_that_is_not_understood_gets_a_kind_sentence(screen):
    page, _errors = screen
    press(page, "q")
    page.keyboard.type("flarb the wug")
    page.keyboard.press("Enter")
    page.locator(".talk-fault", has_text="the kit would understand").wait_for()
    press(page, "2")
    page.locator("[data-chart=shares] .main-svg").first.wait_for()


def test_metric_measures_and_another_talk_put_every_slider_at_its_amount(screen):
    page, errors = screen
    other = read_talk(next(name for name in bundled_talks() if name != TALK.name))
    page.get_by_label("Measures").select_option("metric")
    wait_until_named(page, Setting(TALK, "metric"))
    page.get_by_label("Measures").select_option("us")
    wait_until_named(page, WRITTEN)
    page.get_by_label("Talk", exact=True).select_option(other.name)
    wait_until_named(page, Setting(other))
    assert page.locator(".talk-ask-col .talk-choices").first.locator("button").all_inner_texts() == [
        question.asks for question in other.questions
    ]
    assert page.locator(".talk-controls-col > p").inner_text().startswith(other.recipe.serving_is)
    assert page.locator(".talk-step-words").inner_text().startswith(other.steps[0].title)
    page.get_by_label("Talk", exact=True).select_option(TALK.name)
    wait_until_named(page, WRITTEN)
    assert errors == []


def wait_until_named(page, setting):
    """Wait until every slider names, and stands at, the amount that the setting gives its ingredient."""
    places = {str(at): setting.amounts(at) for at in range(len(setting.pot.ingredients))}
    stands = {at: [steps[place].label, str(place)] for at, (steps, place) in places.items()}
    page.wait_for_function(
        """(stands) => Object.entries(stands).every(([at, [label, place]]) => {
          const slide = document.querySelector(`[data-control="amount-${at}"]`);
          return slide && slide.value === place && slide.parentElement.querySelector('.talk-amount').value === label;
        })""",
        arg=stands,
    )


def test_with_every_slider_at_nothing_there_are_zeros_and_no_errors(screen):
    page, errors = screen
    for at in range(len(TALK.recipe.ingredients)):
        slider(page, at).focus()
        page.keyboard.press("Home")
    page.wait_for_function(
        "(count) => document.querySelectorAll('.talk-row-changed').length === count", arg=len(TALK.recipe.ingredients)
    )
    for key in "123456789":
        press(page, key)
        page.wait_for_timeout(100)
        assert "NaN" not in page.locator(".talk-preview").inner_html()
    assert errors == []


def test_the_script_goes_on_and_back_and_blank_covers_the_picture(screen):
    page, _errors = screen
    press(page, "s", "n")
    page.locator(".talk-next", has_text="Next, 2 of").wait_for()
    press(page, "p", "s")
    press(page, "b")
    assert page.locator(".talk-preview .talk-large").count() == 0
    press(page, "b")
    wait_until_shown(page, WRITTEN)


def test_a_control_is_named_by_its_food(screen):
    page, _errors = screen
    name = shown_name(TALK.recipe.ingredients[3].food)
    assert page.get_by_role("slider", name=name, exact=True).count() == 1


LARGE = "[...document.querySelectorAll('.talk-scene .talk-large')].map((node) => node.textContent)"
SMALLEST = """() => {
  const sizes = [];
  const scene = document.querySelector('.talk-scene');
  const walk = document.createTreeWalker(scene, NodeFilter.SHOW_TEXT);
  while (walk.nextNode()) {
    const text = walk.currentNode.textContent.trim();
    const parent = walk.currentNode.parentElement;
    if (!text || parent.closest('style, defs')) continue;
    if (!parent.getBoundingClientRect().width) continue;
    sizes.push([parseFloat(getComputedStyle(parent).fontSize), text]);
  }
  return sizes.sort((a, b) => a[0] - b[0]);
}"""
CUT = """() => {
  const scene = document.querySelector('.talk-scene');
  const frame = scene.getBoundingClientRect();
  const bad = [];
  const boxes = [];
  const walk = document.createTreeWalker(scene, NodeFilter.SHOW_TEXT);
  while (walk.nextNode()) {
    const text = walk.currentNode.textContent.trim();
    const parent = walk.currentNode.parentElement;
    if (!text || parent.closest('style, defs')) continue;
    const range = document.createRange();
    range.selectNodeContents(walk.currentNode);
    for (const box of range.getClientRects()) {
      if (box.width < 1) continue;
      const inset = box.height * 0.2; // between its lines a text may touch another
      boxes.push([text, box.left + 1, box.top + inset, box.right - 1, box.bottom - inset]);
      const cut = box.left < frame.left - 1 || box.right > frame.right + 1 || box.bottom > frame.bottom + 1;
      if (cut) bad.push(['cut', text]);
    }
  }
  boxes.forEach(([text, left, top, right, bottom], at) => {
    for (const [other, l, t, r, b] of boxes.slice(at + 1)) {
      if (left < r && l < right && top < b && t < bottom) bad.push(['over', text, other]);
    }
  });
  return bad;
}"""


@pytest.fixture
def theirs(screen):
    """The audience's window, opened from hers; it stays open for the next test, and the last one closes it."""
    page, errors = screen
    if page.context.pages[1:]:
        press(page, "w")
        other = page.context.pages[1]
    else:
        with page.expect_popup() as popup:
            press(page, "w")
        other = popup.value
        other.set_viewport_size({"width": 1920, "height": 1080})
        other.on("pageerror", lambda error: errors.append(str(error)))
    other.wait_for_selector(".talk-large")
    yield page, other, errors
    press(page, "s")


@pytest.mark.parametrize("line", ["", "no feta, and share it into 4 boxes"])
def test_in_the_audience_window_everything_is_large_and_nothing_cut_or_over_another(theirs, line):
    page, other, errors = theirs
    if line:
        press(page, "q")
        page.keyboard.type(line)
        page.keyboard.press("Enter")
        other.locator(".talk-change-row").first.wait_for()
    for key in "123456789":
        press(page, key)
        other.wait_for_timeout(400)
        other.evaluate(FRAMES)
        sizes = other.evaluate(SMALLEST)
        assert sizes[0][0] >= LEAST_TEXT, (key, sizes[0])
        assert other.evaluate(CUT) == [], key
        if key == "1":
            numbers = [size for size, text in sizes if text.replace(".", "").isdigit()]
            assert min(numbers) >= LEAST_NUMBER
    assert errors == []


def test_the_audience_window_has_no_controls_no_cursor_and_the_look_she_chose(theirs):
    page, other, _errors = theirs
    assert other.locator("button, input, select, a").count() == 0
    assert other.evaluate("getComputedStyle(document.querySelector('.talk-scene')).cursor") == "none"
    light = other.evaluate("getComputedStyle(document.querySelector('.talk-scene')).backgroundColor")
    press(page, "l")
    assert other.evaluate("getComputedStyle(document.querySelector('.talk-scene')).backgroundColor") != light
    press(page, "l")


def test_the_audience_sees_every_change_and_she_sees_what_they_see(theirs):
    page, other, errors = theirs
    slider(page, FOOD).focus()
    page.keyboard.press("ArrowRight")
    values = [number["value"] for number in expected(moved(WRITTEN, FOOD, 1))["numbers"]]
    same = f"(values) => JSON.stringify({LARGE}) === JSON.stringify(values)"
    other.wait_for_function(same, arg=values)
    page.wait_for_function(same, arg=values)
    assert errors == []


def test_a_closed_audience_window_is_told_in_hers_and_opens_again(theirs):
    page, other, errors = theirs
    other.close()
    page.locator(".talk-seen", has_text="Their window is closed").wait_for()
    wait_until_shown(page, WRITTEN)
    with page.expect_popup() as popup:
        press(page, "w")
    popup.value.wait_for_selector(".talk-large")
    popup.value.close()
    page.locator(".talk-seen", has_text="Their window is closed").wait_for()
    assert errors == []


def test_a_chart_is_saved_as_a_picture_with_its_title_source_and_date(screen):
    page, errors = screen
    press(page, "3")
    page.locator("[data-chart=sources] .main-svg").first.wait_for()
    with page.expect_download() as download:
        page.get_by_role("button", name="Save as SVG").click()
    text = download.value.path().read_text(encoding="utf-8")
    assert "Where the protein comes from" in text
    assert TALK.title in text
    assert "@font-face" in text
    with page.expect_download() as download:
        page.get_by_role("button", name="Save as PNG").click()
    assert download.value.path().read_bytes()[:8] == b"\x89PNG\r\n\x1a\n"
    assert errors == []


# Controls that are cut by the desk's edge, lie over one another, or hold more than they show.
OUT_OF_PLACE = """() => {
  const desk = document.querySelector('.talk-desk');
  const frame = desk.getBoundingClientRect();
  const shown = [...desk.querySelectorAll('button, input, select, .talk-next, .talk-clock, h3')]
    .filter((node) => node.offsetParent && !node.closest('.talk-scene'));
  const bad = [];
  const named = (node) => node.ariaLabel || node.textContent || node.className;
  const boxes = shown.map((node) => [named(node), node.getBoundingClientRect(), node]);
  for (const [name, box, node] of boxes) {
    if (box.left < frame.left - 1 || box.right > frame.right + 1) bad.push(['cut', name]);
    if (node.matches('button') && node.scrollWidth > node.clientWidth + 1) bad.push(['spills', name]);
    if (node.matches('button') && box.height > 60) bad.push(['wraps', name]);
  }
  boxes.forEach(([name, box, node], at) => {
    for (const [other, its, second] of boxes.slice(at + 1)) {
      if (node.contains(second) || second.contains(node)) continue;
      const over = Math.min(box.right, its.right) - Math.max(box.left, its.left);
      const under = Math.min(box.bottom, its.bottom) - Math.max(box.top, its.top);
      if (over > 2 && under > 2) bad.push(['over', name, other]);
    }
  });
  for (const node of desk.querySelectorAll('*')) {
    const scrolls = /auto|scroll/.test(getComputedStyle(node).overflowY) && node.scrollHeight > node.clientHeight + 1;
    if (scrolls) bad.push(['scrolls inside', node.className]);
  }
  return bad;
}"""
SMALL_TEXT = """() => Math.min(...[...document.querySelectorAll('.talk-desk *')]
  .filter((node) => node.offsetParent && !node.closest('.talk-scene')
    && [...node.childNodes].some((child) => child.nodeType === 3 && child.textContent.trim()))
  .map((node) => parseFloat(getComputedStyle(node).fontSize)))"""


def test_on_every_screen_nothing_of_hers_is_cut_or_over_another_or_scrolls_inside(screen, served):
    page, errors = screen
    kind, _address = served
    for size in SIZES:
        page.set_viewport_size(size)
        page.locator(".talk-desk").focus()
        for mode in range(2):
            page.wait_for_timeout(300)
            assert page.evaluate(OUT_OF_PLACE) == [], (size, mode)
            assert page.evaluate(SMALL_TEXT) >= 14
            assert page.evaluate("document.documentElement.scrollWidth <= innerWidth")
            picture = page.locator(".talk-preview").bounding_box()
            if kind == "voila" and not mode:  # the picture stands whole beside the controls
                assert picture["y"] + picture["height"] <= size["height"]
                clock = page.locator(".talk-foot").bounding_box()
                assert clock["y"] + clock["height"] <= size["height"], size
            page.keyboard.press("s")
    for size in (
        AT_200_PERCENT if kind == "voila" else []
    ):  # JupyterLab's turn is in test_opening.py, where it is as she has it
        page.set_viewport_size(size)
        page.wait_for_timeout(300)
        moved = page.locator("[data-control=amount-11]")
        moved.scroll_into_view_if_needed()
        moved.focus()
        for part in (moved, page.locator(".talk-preview")):  # a control and what it changes are visible together
            box = part.bounding_box()
            assert box["y"] >= -1, size
            assert box["y"] + box["height"] <= size["height"] + 1, size
    assert errors == []


def test_axe_finds_nothing_serious_in_either_window(screen):
    page, _errors = screen
    page.set_viewport_size(SIZES[1])
    page.locator(".talk-desk").focus()
    for mode in range(2):
        found = Axe().run(page, context=".talk-desk").response["violations"]
        serious = [
            (rule["id"], rule["nodes"][0]["html"][:120]) for rule in found if rule["impact"] in ("serious", "critical")
        ]
        assert serious == [], mode
        page.keyboard.press("s")


def test_a_reload_in_the_middle_of_a_drag_brings_back_what_was_set_and_takes_on_the_open_audience_window(
    screen, served
):
    kind, _address = served
    page, errors = screen
    page.set_viewport_size(SCREEN)
    with page.expect_popup() as popup:
        press(page, "w")
    theirs = popup.value
    theirs.wait_for_selector(".talk-large")
    page.locator(".talk-line input").fill("no feta")
    page.keyboard.press("Enter")
    theirs.locator(".talk-change-row").first.wait_for()
    slide = page.locator("[data-control=amount-0]")
    box = slide.bounding_box()
    y = box["y"] + box["height"] / 2
    page.mouse.move(box["x"] + box["width"] / 2, y)
    page.mouse.down()
    for step in range(20):
        page.mouse.move(box["x"] + box["width"] * (0.5 + step / 50), y)
    place = int(slide.input_value())
    steps, stands = Setting(TALK, TALK.measures).amounts(0)
    assert place > stands
    setting = Setting(TALK, TALK.measures).tried("no feta").with_amount(0, steps[place])
    words = setting.made[-1].words
    page.wait_for_function("(words) => sessionStorage.getItem('talk-kit-desk').includes(words)", arg=words)
    theirs.evaluate(FRAMES)
    picture = theirs.locator("main").inner_text()
    page.reload()
    assert theirs.locator("main").inner_text() == picture  # the last picture stays
    page.mouse.up()
    if kind == "lab":
        run_all_cells(page)
    page.get_by_role("button", name="Undo: no feta").wait_for()
    page.locator(".talk-seen", has_text="in their window").wait_for()
    press(page, "1")
    assert slide.input_value() == str(place)
    theirs.locator(".talk-was", has_text=words).first.wait_for()
    assert errors == []
