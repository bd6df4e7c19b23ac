"""How fast the page that is sent follows a slider: ``python -m pytest tests/bench/test_page_speed.py -m bench -s``.

From a key on a slider to the frame in which the last chart and number had changed; nothing here fails for being slow.
"""

import statistics

import pytest
from live import open_browser

from kit.share.contents import contents
from kit.share.page import page
from kit.talk.library import bundled_talks, read_talk

MOVES = 40
WATCH = """() => { window.nextMove = () => new Promise((resolve) => {
  let start = null, last = null, quiet = 0;
  const observer = new MutationObserver(() => { last = null; quiet = 0; });
  const look = () => {
    if (last === null) last = performance.now();
    else if ((quiet += 1) === 3) { observer.disconnect(); resolve(last - start); return; }
    requestAnimationFrame(look);
  };
  document.addEventListener("keydown", () => {
    start = performance.now();
    observer.observe(document.body, { subtree: true, childList: true, attributes: true, characterData: true });
    requestAnimationFrame(look);
  }, { capture: true, once: true });
}); }"""


@pytest.mark.bench
def test_time_from_a_slider_to_the_painted_page(tmp_path):
    print()
    with open_browser() as browser:
        for name in bundled_talks():
            path = tmp_path / f"{name}.html"
            path.write_text(page(contents(read_talk(name))), encoding="utf-8")
            tab = browser.new_page(viewport={"width": 1280, "height": 720})
            tab.goto(path.as_uri())
            tab.wait_for_selector("[data-chart=day] .main-svg")
            tab.evaluate(WATCH)
            times = [_time_of_move(tab, number) for number in range(MOVES + 2)][2:]
            late = statistics.quantiles(times, n=20)[18]
            print(f"{name}: median {statistics.median(times):.0f} ms, 95th percentile {late:.0f} ms of {MOVES} moves")
            assert all(time > 0 for time in times)
            tab.close()


def _time_of_move(tab, number):
    sliders = tab.get_by_role("slider")
    sliders.nth(number % sliders.count()).focus()
    tab.wait_for_timeout(60)
    tab.evaluate("() => { window.move = window.nextMove(); }")
    tab.keyboard.press("ArrowRight" if number % 4 < 2 else "ArrowLeft")
    return tab.evaluate("window.move")
