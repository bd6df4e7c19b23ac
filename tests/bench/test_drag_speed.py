"""How a drag settles, and where a move's milliseconds go: ``python -m pytest tests/bench -k drag -m bench -s``.

A drag is 60 moves of a slider of her talk, a frame apart; it has settled once the last picture is painted. A move is
split where it can be seen: from the key to the message that leaves, until Python's answer arrives (of that, what Python
computes is told by Python's clock), and until the picture is painted.
"""

import statistics

import pytest
from live import notebook_page, open_browser, run_all_cells, serve, write_notebook
from test_stage_speed import TALK_WATCH

DRAGS, EVENTS, SETTLED = 5, 60, 250  # how many; of how many moves; within which time of the last [ms]
MOVES = 20
TIMED = """
import time
import demo_panel
desk = demo_panel.desk_talk_panel()
heard, send, marks = desk._handle_custom_msg, desk.send, []
def timed(content, buffers):
    marks[:] = [time.perf_counter()]
    heard(content, buffers)
    marks.append(time.perf_counter())
    print(f"took {1000 * (marks[1] - marks[0]):.2f} then {1000 * (marks[-1] - marks[1]):.2f} ms")
def sending(*given, **more):
    marks.append(time.perf_counter())
    send(*given, **more)
desk._handle_custom_msg, desk.send = timed, sending
desk
"""
SEEN = """
(() => {
  const sent = WebSocket.prototype.send;
  window.ways = { out: [], back: [] };
  window.took = [];
  const heard = new WeakSet();
  WebSocket.prototype.send = function (data) {
    if (!heard.has(this)) {
      heard.add(this);
      this.addEventListener("message", ({ data }) => {
        const text = typeof data === "string" ? data : new TextDecoder().decode(data);
        if (text.includes("comm_msg")) window.ways.back.push(performance.now());
        const took = /took ([\\d.]+) then ([\\d.]+)/.exec(text);
        if (took) window.took.push(took.slice(1).map(Number));
      });
    }
    const text = typeof data === "string" ? data : new TextDecoder().decode(data);
    if (text.includes("comm_msg")) window.ways.out.push(performance.now());
    return sent.call(this, data);
  };
  // Moves of a slider, a frame apart; then the time from the last until nothing has changed for 400 ms. [ms]
  window.drag = async (slider, events) => {
    const [low, high] = [Number(slider.min), Number(slider.max)];
    let last = 0, changed = 0;
    const seen = new MutationObserver(() => requestAnimationFrame(() => { changed = performance.now(); }));
    const options = { subtree: true, childList: true, attributes: true, characterData: true };
    seen.observe(document.querySelector(".talk-preview"), options);
    for (let at = 0; at < events; at++) {
      await new Promise(requestAnimationFrame);
      slider.value = String(low + (at * 7 + 3) % (high - low + 1));
      slider.dispatchEvent(new Event("input", { bubbles: true }));
      last = performance.now();
    }
    slider.dispatchEvent(new Event("change", { bubbles: true }));
    await new Promise((done) => {
      const look = () => (performance.now() - Math.max(last, changed) > 400 ? done() : requestAnimationFrame(look));
      look();
    });
    seen.disconnect();
    return Math.max(0, changed - last);
  };
})();
"""


BEGIN = """() => {
  Object.assign(window.ways, { out: [], back: [] });
  window.took = [];
  document.addEventListener("keydown", () => { window.start = performance.now(); }, { capture: true, once: true });
  window.move = window.nextMove();
}"""


@pytest.mark.bench
@pytest.mark.parametrize("kind", ["voila", "lab"])
def test_a_drag_settles_and_where_the_time_of_a_move_goes(kind, tmp_path):
    folder = tmp_path / "notebooks"
    folder.mkdir()
    write_notebook(folder / "desk.ipynb", [TIMED.strip()])
    with open_browser() as browser, serve(kind, folder, tmp_path / "home") as address:
        opened = notebook_page(browser, address("desk.ipynb"), script=TALK_WATCH + SEEN)
        with opened as (page, _errors):
            if kind == "lab":
                run_all_cells(page)
            page.wait_for_selector(".talk-preview")
            page.wait_for_timeout(4000)
            moves = [_parts_of_a_move(page, number) for number in range(MOVES + 1)][1:]
            drags = [_drag(page) for _ in range(DRAGS)]
    print(f"\n{kind}: where the milliseconds of a move of the talk go, {MOVES} moves")
    for part in moves[0]:
        times = [move[part] for move in moves]
        print(
            f"  {part:<28} median {statistics.median(times):6.1f}   95th {statistics.quantiles(times, n=20)[18]:6.1f}"
        )
    settled = ", ".join(f"{time:.0f}" for time in drags)
    print(f"  {DRAGS} drags of {EVENTS} events settle {settled} ms after the last; at most {SETTLED} is asked of them")


def _parts_of_a_move(page, number):
    """Return the parts of the time from the key to the picture. [ms]"""
    page.locator(".talk-rows .talk-slide").nth(number % 3).focus()
    page.wait_for_timeout(700)  # the scenes that are not shown are worked out meanwhile
    page.evaluate(BEGIN)
    page.keyboard.press("ArrowRight" if number % 6 < 3 else "ArrowLeft")
    whole = page.evaluate("window.move")
    assert whole is not None, "the picture did not follow its slider"
    start, out, back = page.evaluate("[window.start, window.ways.out[0], window.ways.back[0]]")
    page.wait_for_timeout(200)
    computing, checking = page.evaluate("window.took[0]")
    return {
        "key to message": out - start,
        "kernel (computing)": computing,
        "message to and fro": back - out - computing,
        "drawing (and sentences)": start + whole - back,
        "slider to painted": whole,
        "kernel (sentences, after it)": checking,
    }


def _drag(page):
    return page.evaluate(f"window.drag(document.querySelector('.talk-rows .talk-slide'), {EVENTS})")
