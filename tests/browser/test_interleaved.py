"""Her window in a page whose messages are held: whatever crosses on the way, it ends as Python computes."""

import contextlib
import json
import random
from collections import deque

import pytest
from plotly.offline import get_plotlyjs

from kit.errors import KitError
from kit.show.desk import Desk
from kit.show.look import script
from kit.show.panels import on_screen
from kit.show.scenes import NAMES
from kit.speech.points import check_points

SEEDS, STEPS = range(5), 40
FOODS = (0, 4, 11)  # ingredients that are moved: the largest, one of a few grams, one that brings protein
# A page with her window and a model that holds what it sends. What the page would do after a pause waits in `later`.
HOLD = """
() => {
  const now = window.setTimeout.bind(window);
  const forget = window.clearTimeout.bind(window);
  let last = 1e6;
  window.later = new Map();
  window.setTimeout = (act, wait, ...more) => {
    if (!(wait > 100)) return now(act, wait, ...more);
    later.set(++last, { act, wait });
    return last;
  };
  window.clearTimeout = (timer) => later.delete(timer) || forget(timer);
}
"""
OPEN = """
async ([script, css, version, content]) => {
  window.leave?.();
  sessionStorage.clear();
  later.clear();
  const parts = { content, _css: css, plotly_version: version };
  const listeners = [];
  window.sent = [];
  const model = {
    get: (name) => parts[name],
    on: (_name, listener) => listeners.push(listener),
    send: (message) => sent.push(JSON.stringify(message)),
  };
  window.hear = (messages) => {
    for (const message of messages) for (const listener of listeners) listener(JSON.parse(message), []);
  };
  window.has = () => parts.content;
  const url = URL.createObjectURL(new Blob([script], { type: "text/javascript" }));
  const widget = (await import(url)).default();
  widget.initialize({ model });
  window.leave = widget.render({ model, el: document.body });
}
"""
PRESS = """
(key) => document.querySelector('.talk-desk')
  .dispatchEvent(new KeyboardEvent('keydown', { key, bubbles: true, cancelable: true }))
"""
SLIDE = """
([at, place]) => {
  const slide = document.querySelector(`[data-control='amount-${at}']`);
  slide.focus();
  slide.value = place;
  slide.dispatchEvent(new Event('input', { bubbles: true }));
}
"""
TRY = """
(line) => {
  const input = document.querySelector('.talk-line input');
  input.value = line;
  input.dispatchEvent(new KeyboardEvent('keydown', { key: 'Enter', bubbles: true }));
}
"""
QUIET = """
() => {
  const acts = [...later.values()].filter(({ wait }) => wait < 2000);
  later.clear();
  for (const { act } of acts) act();
}
"""
FRAMES = "() => new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done)))"
# What is painted, and where the controls stand.
PAINTED = """
() => {
  const drawn = '.point > path, .points > .point, .js-line, .textpoint > text';
  const rounded = (text) => text?.replace(/\\d+\\.\\d+/g, Math.round);
  return {
    kind: document.querySelector('.talk-scene').dataset.kind,
    chart: document.querySelector('[data-chart]')?.dataset.chart ?? '',
    words: document.querySelector('.talk-scene').innerText,
    marks: [...document.querySelectorAll('.talk-scene :is(' + drawn + ')')].map((node) => [
      ...['d', 'transform', 'x', 'y'].map((name) => rounded(node.getAttribute(name))),
      ...[node.textContent, node.style.fill],
    ]),
  };
}
"""
CONTROLS = """
() => [...document.querySelectorAll('.talk-rows .talk-row')].map((row) => [
  Number(row.querySelector('.talk-slide').value), row.querySelector('.talk-amount').value])
"""


class Crossing:
    """Her window, Python, and what is under way between them; to `plain`, another Python, everything comes at once."""

    def __init__(self, page, seed):
        self.page, self.random = page, random.Random(seed)
        self.python, self.plain = (on_screen("barley_squash_box") for _ in range(2))
        self.under_way = deque()
        self.python.send = lambda content, buffers=None: self.under_way.append(json.dumps(content))
        page.evaluate(OPEN, [script("desk"), self.python._css, self.python.plotly_version, self.python.content])
        self.did = []

    def step(self):
        act = self.random.choice((self.key, self.key, self.slide, self.slide, self.both, self.line))
        way = self.random.choice((self.page_hears, self.python_hears, self.quiet, self.frame, self.back))
        self.random.choice((act, act, way, way, way))()

    def key(self):
        self._press(self.random.choice("12233445567891rzz"))

    def slide(self):
        self._slide(*self._place())

    def both(self):
        """A key and a slider within one turn of the page."""
        key, (at, place) = self.random.choice("23456"), self._place()
        self.page.evaluate(f"([key, at, place]) => {{ ({PRESS})(key); ({SLIDE})([at, place]); }}", [key, at, place])
        self._plain("show", name=list(NAMES)[int(key) - 1])
        self._plain("move", at=at, place=place)

    def line(self):
        line = self.random.choice(("no walnuts", "half the oil", "flarb the wug"))
        self.page.evaluate(TRY, line)
        self._plain("try", line=line)

    def _place(self):
        at = self.random.choice(FOODS)
        return at, self.random.randrange(len(self.plain.setting.amounts(at)[0]))

    def _press(self, key):
        self.page.evaluate(PRESS, key)
        if key in "rz":
            self._plain({"r": "as_written", "z": "undo"}[key])
        else:
            self._plain("show", name=list(NAMES)[int(key) - 1])

    def _slide(self, at, place):
        self.page.evaluate(SLIDE, [at, place])
        self._plain("move", at=at, place=place)

    def _plain(self, do, **more):
        self.did.append((do, *more.values()))
        with contextlib.suppress(KitError):
            getattr(self.plain, f"_do_{do}")({"do": do, **more})

    def python_hears(self):
        for message in self.page.evaluate("() => sent.splice(0)"):
            self.python._hear(self.python, json.loads(message), [])

    def page_hears(self):
        count = self.random.randint(0, len(self.under_way))
        self.page.evaluate("(messages) => hear(messages)", [self.under_way.popleft() for _ in range(count)])

    def quiet(self):
        self.page.evaluate(QUIET)

    def frame(self):
        self.page.evaluate(FRAMES)

    def back(self):
        """Python was silent and is back: what the page has no answer to is told once more."""
        self.page.evaluate("() => window.dispatchEvent(new CustomEvent('talk-python', { detail: true }))")

    def settle(self):
        """Let everything arrive, twice: the page asks for more once it is quiet."""
        for _ in range(2):
            while self.under_way or self.page.evaluate("sent.length"):
                self.python_hears()
                self.page.evaluate("(messages) => hear(messages)", [*self.under_way])
                self.under_way.clear()
            self.quiet()
        self.frame()


def state(content):
    return {name: content[name] for name in ("shown", "scenes", "rows", "made", "script", "frame", "allergens")}


@pytest.fixture(scope="module")
def page(browser):
    context = browser.new_context(viewport={"width": 1400, "height": 900})
    opened = context.new_page()
    opened.route("http://her.window/", lambda route: route.fulfill(body="<!doctype html>", content_type="text/html"))
    opened.goto("http://her.window/")
    opened.add_style_tag(content=Desk._css)
    opened.add_script_tag(content=get_plotlyjs())
    opened.evaluate(HOLD)
    yield opened
    context.close()


@pytest.mark.parametrize("seed", SEEDS)
def test_whatever_crosses_on_the_way_the_page_ends_where_python_does(page, seed):
    crossing = Crossing(page, seed)
    for _ in range(STEPS):
        crossing.step()
    crossing.settle()
    crossing.plain.verdicts = check_points(crossing.plain.setting.talk, crossing.plain.setting.now)
    told = state(crossing.python.content)
    assert told == state(crossing.plain._content()), crossing.did
    shown = told["shown"]
    scene = json.loads(json.dumps(told["scenes"][shown]))
    content = page.evaluate("() => has()")
    assert (content["shown"], content["scenes"][shown]) == (shown, scene), crossing.did
    rows = [[row["place"], row["steps"][row["place"]]] for row in told["rows"]]
    assert page.evaluate(CONTROLS) == rows, crossing.did
    painted = page.evaluate(PAINTED)
    assert scene.get("sentence", "") in painted["words"]
    for _ in range(2):  # dark and light again: everything is drawn anew
        page.evaluate(PRESS, "l")
        page.evaluate(FRAMES)
    assert painted == page.evaluate(PAINTED), crossing.did
