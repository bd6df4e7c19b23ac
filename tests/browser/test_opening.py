"""What the kit opens, in a browser: a quiet document that runs by itself, comes back by itself, and notices silence."""

import json
import re
import shutil
import time

import pytest
from live import PATIENCE, ROOT, notebook_page
from running import Kit
from soak import DRAWN, change_talk, move, over, reload, warm

MOST_GROWTH = 1.05  # of a kernel
SWING = 40  # of the server, which reads the page's scripts into memory and gives them back when it likes [MB]
SMALL, SMALLER = {"width": 1366, "height": 768}, {"width": 1280, "height": 720}
WHOLE = """() => {
  const contains = document.querySelector('.talk-about');
  return contains.scrollWidth <= contains.clientWidth && contains.scrollHeight <= contains.clientHeight;
}"""
GONE = "() => document.documentElement.classList.contains('talk-python-gone')"


@pytest.fixture(scope="module")
def document(tmp_path_factory):
    """The kit as it opens the notebooks."""
    opened = Kit(tmp_path_factory.mktemp("document"))
    yield opened
    opened.stop()


@pytest.fixture(scope="module")
def screen(tmp_path_factory):
    """The kit as it shows one talk full-window."""
    opened = Kit(tmp_path_factory.mktemp("screen"), "screen", "split_pea_soup")
    yield opened
    opened.stop()


def wait_until(holds, patience=PATIENCE):
    until = time.monotonic() + patience
    while time.monotonic() < until and not holds():
        time.sleep(0.2)
    return holds()


def opens_by_itself(page, kit, title):
    """Nothing is pressed, no cell is run by hand, nothing lies over it, and nothing outside is asked."""
    asked = []
    page.on("request", lambda request: asked.append(request.url))
    page.goto(kit.address)
    page.wait_for_selector(DRAWN)
    page.wait_for_function("title => document.title === title", arg=title)
    page.wait_for_timeout(1000)
    assert page.locator(".jp-Dialog, .Toastify__toast, .jp-Notification-Toast").count() == 0
    assert "token" not in page.url
    assert [url for url in asked if not re.match(r"(https?://127\.0\.0\.1|data:|blob:|wss?://127\.0\.0\.1)", url)] == []


def fits(page):
    """The clock is whole, what the dish contains too, and at 200 % zoom a control stands with what it changes."""
    for size in (SMALL, SMALLER):
        page.set_viewport_size(size)
        for mode in range(2):
            page.wait_for_timeout(300)
            clock = page.locator(".talk-foot").bounding_box()
            assert clock["y"] + clock["height"] <= size["height"] + 1, (size, mode)
            line = page.locator(".talk-line").bounding_box()
            assert line["y"] + line["height"] <= clock["y"], (size, mode)
            assert page.evaluate(WHOLE), (size, mode)
            page.locator(".talk-desk").focus()
            page.keyboard.press("s")
    size = {"width": SMALL["width"] // 2, "height": SMALL["height"] // 2}
    page.set_viewport_size(size)
    page.wait_for_timeout(300)
    assert page.locator(".talk-head").bounding_box()["height"] < 100  # two rows
    moved = page.locator("[data-control=amount-11]")
    moved.scroll_into_view_if_needed()
    moved.focus()
    for part in (moved, page.locator(".talk-preview")):
        box = part.bounding_box()
        assert box["y"] >= -1
        assert box["y"] + box["height"] <= size["height"] + 1
    page.set_viewport_size(SMALL)


def comes_back_when_reloaded(page, kit):
    page.reload()
    page.wait_for_selector(DRAWN)
    assert wait_until(lambda: len(kit.kernels()) == 1)


def notices_silence(page, kit):
    """Python is silent for a while, which is said; then its kernel dies, and another takes its place.

    The audience keeps its picture all the while, and is told nothing.
    """
    page.wait_for_timeout(1500)
    page.locator(".talk-desk").focus()
    with page.expect_popup() as popup:
        page.keyboard.press("w")
    theirs = popup.value
    theirs.wait_for_selector(".talk-large")
    picture = theirs.locator("main").inner_text()
    (kernel,) = kit.kernels()
    kernel.suspend()
    page.wait_for_function(GONE)  # after how long, test_heartbeat tells
    assert page.get_by_text("Python does not answer").is_visible()
    assert page.locator("[inert] .talk-slide").count() == page.locator(".talk-slide").count() > 0
    assert theirs.locator("main").inner_text() == picture
    page.keyboard.press("q")
    page.keyboard.type("half the salt")  # what she types meanwhile is not lost
    kernel.resume()
    page.wait_for_function(f"() => !({GONE})()")
    assert page.locator("[inert]:not(.talk-scene)").count() == 0  # but the small copy of what they see
    assert page.get_by_label("What if").input_value() == "half the salt"
    kernel.kill()
    page.wait_for_function(GONE)
    assert theirs.locator("main").inner_text() == picture
    page.wait_for_function(f"() => document.querySelector('{DRAWN}') && !({GONE})()")
    assert page.locator(".jp-Dialog").count() == 0
    assert wait_until(lambda: len(kit.kernels()) == 1)
    assert [found.pid for found in kit.kernels()] != [kernel.pid]
    page.locator(".talk-seen", has_text="in their window").wait_for()
    assert theirs.locator("main").inner_text() == picture


def test_the_full_window_runs_by_itself_whatever_happens_to_page_and_python(screen, browser):
    with notebook_page(browser, "about:blank", SMALL) as (page, errors):
        opens_by_itself(page, screen, "Smoky split pea and tomato soup")
        comes_back_when_reloaded(page, screen)
        assert errors == []
        notices_silence(page, screen)
        draws_without_asking_python_for_plotly(page)
        page.goto("about:blank")
        assert wait_until(lambda: screen.kernels() == [])  # told by the page as it is left


def draws_without_asking_python_for_plotly(page):
    """The page's head has loaded it while the kernel was starting, and their window loads its own."""
    page.locator(".talk-desk").focus()
    page.keyboard.press("2")
    theirs = page.context.pages[-1]
    theirs.wait_for_selector(".main-svg")
    assert theirs.evaluate("Plotly.version") == page.evaluate("Plotly.version")
    assert page.evaluate("window.talkKitPlotly") is None


def shows_no_bars_and_the_code_on_demand(page):
    bars = "#jp-MainMenu, .jp-NotebookPanel-toolbar, .jp-SideBar, #jp-bottom-panel, .jp-InputPrompt, .cm-editor"
    assert [bar for bar in page.locator(bars).all() if bar.is_visible()] == []
    page.get_by_role("button", name="Show the code").click()
    assert page.locator(".cm-editor").first.is_visible()
    page.get_by_role("button", name="Hide the code").click()
    assert not page.locator(".cm-editor").first.is_visible()


def has_no_key_that_changes_a_cell(page):
    cells = page.locator(".jp-Cell").count()
    page.locator(".jp-RenderedMarkdown").first.click()
    for key in ("d", "d", "x", "a", "b", "Enter"):  # what would delete, cut and insert cells
        page.keyboard.press(key)
    page.wait_for_timeout(500)
    assert page.locator(".jp-Cell").count() == cells


def is_not_changed_by_running_it(page, copies, shipped):
    page.wait_for_timeout(3000)
    page.keyboard.press("Control+s")
    page.wait_for_timeout(1000)
    assert {path.name: path.read_bytes() for path in (ROOT / "notebooks").glob("*.ipynb")} == shipped
    saved = json.loads((copies / "3_on_screen.ipynb").read_text(encoding="utf-8"))
    assert all(not cell.get("outputs") and cell.get("execution_count") is None for cell in saved["cells"])


def names_every_notebook(page):
    """What a click on one of them does, ``test_her_talks`` tells."""
    links = page.get_by_role("navigation", name="Notebooks").get_by_role("link")
    shown = [path.name for path in sorted((ROOT / "notebooks").glob("[0-9]_*.ipynb"))]
    assert [link.get_attribute("href").split("/")[-1] for link in links.all()] == shown


def holds_no_more_after_an_hour(page, kit):
    """A short hour on stage ends with what it began with; ``tests/bench/test_soak.py`` is the long one."""
    warm(page)
    worked = over(kit, lambda: (move(page, 200), change_talk(page, 3)))
    comes_back_when_reloaded(page, kit)
    reloaded = over(kit, lambda: reload(page, 2))
    for before, after in (worked, reloaded):
        assert after.kernels == before.kernels == 1
        assert after.kernel_memory <= before.kernel_memory * MOST_GROWTH
        assert after.server_memory <= before.server_memory + SWING


def shows_a_text_file_too(page, kit, copies):
    (copies / "shopping.txt").write_text("2 lemons\n", encoding="utf-8")
    page.goto(kit.page("shopping.txt"))
    page.get_by_text("2 lemons").wait_for()
    page.wait_for_timeout(1000)


def keeps_code_that_she_changes(page, kit, copies):
    copy = copies / "my_own.ipynb"
    shutil.copy(ROOT / "notebooks" / "3_on_screen.ipynb", copy)
    page.goto(kit.page(copy.name))
    page.wait_for_selector(DRAWN)
    page.get_by_role("button", name="Show the code").click()
    page.locator(".cm-content").nth(1).click()
    page.keyboard.press("Control+End")
    page.keyboard.type("  # mine")
    assert wait_until(lambda: "# mine" in copy.read_text(encoding="utf-8"))


def test_the_notebooks_run_by_themselves_keep_what_is_hers_and_hold_nothing_more_after_use(document, browser):
    copies = document.home / "own" / "notebooks"
    shipped = {path.name: path.read_bytes() for path in (ROOT / "notebooks").glob("*.ipynb")}
    with notebook_page(browser, "about:blank", SMALL) as (page, errors):
        opens_by_itself(page, document, "Barley and roasted squash box")
        fits(page)
        shows_no_bars_and_the_code_on_demand(page)
        has_no_key_that_changes_a_cell(page)
        is_not_changed_by_running_it(page, copies, shipped)
        names_every_notebook(page)
        holds_no_more_after_an_hour(page, document)
        assert errors == []
        notices_silence(page, document)
        left_behind = {kernel.pid for kernel in document.kernels()}
        assert left_behind
    left = time.monotonic()
    with notebook_page(browser, "about:blank", SMALL) as (page, errors):  # while nobody needs those kernels
        shows_a_text_file_too(page, document, copies)
        keeps_code_that_she_changes(page, document, copies)
        assert errors == []
        in_use = max(document.kernels(), key=lambda kernel: kernel.create_time()).pid

        def only_what_is_used_is_left():
            return left_behind.isdisjoint(pids := {kernel.pid for kernel in document.kernels()}) and in_use in pids

        assert wait_until(only_what_is_used_is_left, left + 60 - time.monotonic())
