"""How fast the stage is beside plotly's own widgets: ``python -m pytest tests/bench -m bench -s``.

Same sliders, same charts, same numbers; the plain panel's callback only assigns arrays, one message a figure. Timed are
the run of the cell until all four charts are painted, the page from its being asked for, and a key on a slider until
all four charts have changed and the page has drawn a frame after the last change. The two panels take turns;
full-window they are on the server that `python -m kit` starts. Nothing here fails for being slow.
"""

import contextlib
import os
import re
import signal
import statistics
import subprocess
import sys

import pytest
from live import PATIENCE, ROOT, notebook_page, open_browser, run_all_cells, serve, write_notebook

from kit.opening.host import FULL_WINDOW

ROUNDS, MOVES = 2, 20  # a round opens the page anew
MOVED = 6  # sliders, the first, whose steps change every chart; the stage leaves alone a chart that stays as it is
# anywidget gives a widget two seconds to start; then no message reaches it, and the chart is drawn and never follows.
# Four FigureWidgets, each with plotly's script of its own, need longer than that on two cores. Here they get a minute.
PATIENT = """
(() => {
  const within = AbortSignal.timeout.bind(AbortSignal);
  AbortSignal.timeout = (time) => within(Math.max(time, 60000));
})();
"""
WATCH = (
    PATIENT
    + """
(() => {
  const CHARTS = 4;
  const plots = () => [...document.querySelectorAll('.js-plotly-plot')];
  const drawn = (plot) => plot.querySelector('.scatterlayer .trace path, .scatterlayer .trace text');
  window.firstPainted = null;
  const first = () => {
    const all = plots();
    if (all.length === CHARTS && all.every(drawn)) requestAnimationFrame(() => { window.firstPainted = Date.now(); });
    else requestAnimationFrame(first);
  };
  requestAnimationFrame(first);
  // From a key on a slider to the frame after the last change, once all charts have changed and two frames were quiet.
  window.nextMove = () => new Promise((resolve) => {
    const changed = new Set();
    let start = null, last = null, quiet = 0;
    const observer = new MutationObserver((records) => {
      for (const record of records) {
        const plot = (record.target.closest ? record.target : record.target.parentElement)?.closest('.js-plotly-plot');
        if (plot) { changed.add(plot); last = null; quiet = 0; }
      }
    });
    const options = { subtree: true, childList: true, attributes: true, characterData: true };
    const look = () => {
      if (performance.now() - start > 5000) { observer.disconnect(); resolve(null); return; }
      if (changed.size === CHARTS) {
        if (last === null) last = performance.now();
        else if (++quiet === 2) { observer.disconnect(); resolve(last - start); return; }
      }
      requestAnimationFrame(look);
    };
    document.addEventListener('keydown', () => {
      start = performance.now();
      for (const plot of plots()) observer.observe(plot, options);
      requestAnimationFrame(look);
    }, { capture: true, once: true });
  });
})();
"""
)


@contextlib.contextmanager
def as_she_has_it(folder, home):
    """Run the kit's own server; yields the address of a notebook full-window."""
    home.mkdir()
    serving = "import sys, pathlib, kit.opening.host as host; host.serve(pathlib.Path(sys.argv[1]), '', 0, False)"
    path = os.pathsep.join(map(str, [ROOT, ROOT / "tests" / "browser"]))
    surroundings = {**os.environ, "HOME": str(home), "TALK_KIT_HOME": str(home / "own"), "PYTHONPATH": path}
    command = [sys.executable, "-u", "-c", serving, str(folder)]
    process = subprocess.Popen(command, env=surroundings, stdout=subprocess.PIPE, text=True)
    try:
        root, token = next(
            filter(None, (re.search(r"(http://[\d.:]+/)(\?token=\S+)", line) for line in process.stdout))
        ).groups()
        yield lambda name: f"{root}{FULL_WINDOW}{name}{token}"
    finally:
        process.send_signal(signal.SIGINT)
        process.wait(PATIENCE)


@pytest.mark.bench
@pytest.mark.parametrize("kind", ["voila", "lab"])
def test_time_to_charts_and_time_of_a_move_beside_plotlys_own_widgets(kind, tmp_path):
    folder = tmp_path / "notebooks"
    folder.mkdir()
    for name in ("plain", "stage"):
        start = 'import time; print(f"started at {time.time()}")'
        write_notebook(folder / f"{name}.ipynb", ["import demo_panel", f"{start}\ndemo_panel.{name}_panel()"])
    starts: dict[str, list[float]] = {"plain": [], "stage": []}
    opened: dict[str, list[float]] = {"plain": [], "stage": []}
    moves: dict[str, list[float]] = {"plain": [], "stage": []}
    home = tmp_path / "home"
    server = serve("lab", folder, home) if kind == "lab" else as_she_has_it(folder, home)
    with open_browser() as browser, server as address:
        for name in ("plain", "stage") * ROUNDS:
            with notebook_page(browser, address(f"{name}.ipynb"), script=WATCH) as (page, _errors):
                starts[name].append(_time_to_charts(page, kind))
                opened[name].append(page.evaluate("(window.firstPainted - performance.timeOrigin) / 1000"))
                moves[name] += [_time_of_move(page, number) for number in range(MOVES + 1)][1:]
    print(f"\n{kind}: medians of {ROUNDS} starts, and of {ROUNDS * MOVES} moves")
    _report("cell run to charts", starts, "s")
    _report("page asked for to charts", opened, "s")
    _report("slider to painted", moves, "ms")


def _time_to_charts(page, kind):
    if kind == "lab":
        run_all_cells(page)
    page.wait_for_function("() => window.firstPainted")
    started = re.search(r"started at ([\d.]+)", page.inner_text("body"))
    page.wait_for_timeout(1500)
    return page.evaluate("window.firstPainted") / 1000 - float(started[1])


def _time_of_move(page, number):
    """Return the time from the key to the last chart painted. [ms]"""
    page.locator(".noUi-handle").nth(number % MOVED).focus()
    page.wait_for_timeout(120)
    page.evaluate("() => { window.move = window.nextMove(); }")
    page.keyboard.press("ArrowRight" if number % (2 * MOVED) < MOVED else "ArrowLeft")
    time = page.evaluate("window.move")
    assert time is not None, "a chart did not follow its slider"
    return time


def _report(what, times, unit):
    for title, value in (("median", statistics.median), ("95th percentile", _late)):
        if len(times["stage"]) > 5 or value is statistics.median:
            stage, plain = value(times["stage"]), value(times["plain"])
            print(f"  {what}, {title}: stage {stage:.3g} {unit}, plain {plain:.3g} {unit}, ratio {stage / plain:.2f}")


def _late(times):
    return statistics.quantiles(times, n=20)[18]


# The talk's own panel: from a key on a slider until the pictures, and the script, have changed and a frame was drawn.
TALK_WATCH = (
    PATIENT
    + """
(() => {
  const watched = () => document.querySelector('.talk-desk')
    ? [document.querySelector('.talk-preview'), document.querySelector('.talk-next')]
    : [...document.querySelectorAll('.js-plotly-plot'), document.querySelector('.talk-script')?.parentElement];
  window.nextMove = () => new Promise((resolve) => {
    let start = null, last = null, quiet = 0;
    const changed = new Set();
    const parts = watched();
    const observer = new MutationObserver((records) => {
      for (const { target } of records) {
        for (const part of parts) if (part?.contains(target)) { changed.add(part); last = null; quiet = 0; }
      }
    });
    const look = () => {
      if (performance.now() - start > 5000) { observer.disconnect(); resolve(null); return; }
      if (changed.size === parts.length) {
        if (last === null) last = performance.now();
        else if (++quiet === 2) { observer.disconnect(); resolve(last - start); return; }
      }
      requestAnimationFrame(look);
    };
    document.addEventListener('keydown', () => {
      start = performance.now();
      const options = { subtree: true, childList: true, attributes: true, characterData: true };
      for (const part of parts) if (part) observer.observe(part, options);
      requestAnimationFrame(look);
    }, { capture: true, once: true });
  });
})();
"""
)
SLIDERS = ".noUi-handle, .talk-rows .talk-slide"


@pytest.mark.bench
@pytest.mark.parametrize("kind", ["voila", "lab"])
def test_time_of_a_move_of_the_talk_with_its_sentences_checked(kind, tmp_path):
    folder = tmp_path / "notebooks"
    folder.mkdir()
    for name in ("plain", "desk"):
        write_notebook(folder / f"{name}.ipynb", ["import demo_panel", f"demo_panel.{name}_talk_panel()"])
    moves = {"plain": [], "stage": []}
    with open_browser() as browser, serve(kind, folder, tmp_path / "home") as address:
        for name in ("plain", "desk") * ROUNDS:
            with notebook_page(browser, address(f"{name}.ipynb"), script=TALK_WATCH) as (page, _errors):
                if kind == "lab":
                    run_all_cells(page)
                page.wait_for_selector(".js-plotly-plot .main-svg")
                page.wait_for_timeout(5000 if name == "plain" else 2000)
                times = [_time_of_talk_move(page, number) for number in range(MOVES + 1)][1:]
                moves["plain" if name == "plain" else "stage"] += times
    print(f"\n{kind}: the talk's panel, {ROUNDS * MOVES} moves each")
    _report("slider to painted and checked", moves, "ms")


def _time_of_talk_move(page, number):
    page.locator(SLIDERS).nth((0, 1, 2, 11)[number % 4]).focus()
    page.wait_for_timeout(700)  # the scenes that are not shown are worked out meanwhile
    page.evaluate("() => { window.move = window.nextMove(); }")
    page.keyboard.press("ArrowRight" if number % 8 < 4 else "ArrowLeft")
    time = page.evaluate("window.move")
    assert time is not None, "a part of the panel did not follow its slider"
    return time
