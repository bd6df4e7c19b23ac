"""The heartbeat by itself, on a clock that the test sets: a kernel that answers, is silent, or is lost."""

import pytest
from live import ROOT

SCRIPT = (ROOT / "kit/show/jupyter/labextensions/talk-kit-opening/static/heartbeat.js").read_text(encoding="utf-8")
PANEL = """
<div class="widget-box"><div class="widget-slider">servings</div><div data-without-python>clock</div>
<div class="widget-html">words</div></div>
"""
BEGIN = """
window.answers = true;
window.did = [];
const kernel = () => ({ requestKernelInfo: () => window.answers ? Promise.resolve() : new Promise(() => {}) });
const noting = (what) => async () => void window.did.push(what);
window.lose = listen({ kernel, look: noting("looked"), mend: noting("mended") });
addEventListener("talk-python", ({ detail }) => window.did.push(detail));
"""


@pytest.fixture
def page(browser):
    page = browser.new_page()
    page.clock.install()
    page.set_content(PANEL)
    page.add_script_tag(content=SCRIPT + BEGIN, type="module")
    page.wait_for_function("() => Boolean(window.lose)")
    yield page
    page.close()


def is_gone(page):
    return page.evaluate("document.documentElement.classList.contains('talk-python-gone')")


def test_a_kernel_that_answers_is_never_called_gone(page):
    page.clock.run_for(60_000)
    assert not is_gone(page)
    assert page.evaluate("window.did") == []


def test_silence_is_noticed_in_two_seconds_and_so_is_its_end(page):
    page.clock.run_for(5_000)
    page.evaluate("window.answers = false")
    page.clock.run_for(2_000)
    assert is_gone(page)
    assert page.locator(".talk-python-note").text_content().startswith("Python does not answer.")
    assert page.locator("[inert]").all_text_contents() == ["servings"]  # neither the clock nor words
    page.evaluate("window.answers = true")
    page.clock.run_for(2_000)
    assert not is_gone(page)
    assert page.locator("[inert]").count() == 0
    assert page.evaluate("window.did") == [False, "looked", True]


def test_a_kernel_that_is_lost_is_mended_before_anything_may_be_moved(page):
    page.evaluate("window.lose()")
    assert is_gone(page)
    page.clock.run_for(2_000)
    assert not is_gone(page)
    assert page.evaluate("window.did") == [False, "mended", True]
