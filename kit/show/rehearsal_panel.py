"""The rehearsal: the plan as a chart, a clock that times each step, and cards that hide the numbers."""

import time
from collections.abc import Callable
from math import isnan
from pathlib import Path
from random import Random

import ipywidgets as widgets

from kit.errors import KitError
from kit.show.escaping import in_html
from kit.show.script_panel import style
from kit.show.stage import Stage
from kit.show.timeline import timeline
from kit.speech.cards import cards
from kit.talk.library import read_talk
from kit.talk.plan import plan
from kit.talk.plan_told import clock, plan_advice, plan_sentence
from kit.talk.practice import Card, next_card, read_scores, record
from kit.talk.rehearsal import Taken, taken
from kit.talk.talk import Talk

TICK = 1000  # how often the clock is told anew [ms]
_WIDE = widgets.Layout(width="100%")


def _read(talk: Talk | str) -> Talk:
    return read_talk(talk) if isinstance(talk, str) else talk


def _panel(*children: widgets.Widget) -> widgets.VBox:
    box = widgets.VBox([style(), *children], layout=_WIDE)
    box.add_class("talk-rehearsal")
    return box


def day_plan(talk: Talk | str) -> widgets.VBox:
    """Return the plan on the day as a chart, under the sentence that says whether it fits.

    Raises
    ------
    TalkFileError
        If a step needs a pot that no step before it starts.
    """
    made = plan(_read(talk))
    told = [
        f'<p class="talk-count">{in_html(plan_sentence(made))}</p>',
        *(f"<p>{in_html(said)}</p>" for said in plan_advice(made)),
    ]
    sentence = widgets.HTML("".join(told))
    return _panel(sentence, Stage([{"plan": timeline.drawing(made)}], layout=_WIDE))


def rehearsal_clock(talk: Talk | str) -> widgets.VBox:
    """Return a clock that times every step of a talk beside its plan."""
    return ClockPanel(_read(talk)).box


class ClockPanel:
    """A clock with one button, pressed when a step is done.

    Attributes
    ----------
    box : ipywidgets.VBox
        What is shown.
    ends : list of float
        Seconds from the start at which each step was done.
    done, undo, again : ipywidgets.Button
        Start or end a step, take the last end back, begin anew.
    """

    def __init__(self, talk: Talk, now: Callable[[], float] = time.monotonic) -> None:
        self.plan, self._now = plan(talk), now
        self.ends: list[float] = []
        self.started: float | None = None
        self.step, self.table = widgets.HTML(layout=_WIDE), widgets.HTML(layout=_WIDE)
        self.done = widgets.Button(description="Start the clock", button_style="primary")
        self.undo = widgets.Button(description="That step is not done yet")
        self.again = widgets.Button(description="Begin again")
        self.done.on_click(lambda _button: self._press())
        self.undo.on_click(lambda _button: self._take_back())
        self.again.on_click(lambda _button: self._begin())
        # The browser ticks, so that no thread runs beside the notebook.
        self.ticker = widgets.Play(interval=TICK, max=10**6, layout=widgets.Layout(display="none"))
        self.ticker.observe(lambda _change: self._show_step(), "value")
        buttons = widgets.HBox([self.done, self.undo, self.again])
        self.box = _panel(self.step, buttons, self.table, self.ticker)
        self._show()

    @property
    def running(self) -> bool:
        """Whether the clock runs."""
        return self.started is not None and len(self.ends) < len(self.plan.steps)

    def _press(self) -> None:
        if self.started is None:
            self.started = self._now()
        elif self.running:
            self.ends.append(self._now() - self.started)
        self._show()

    def _take_back(self) -> None:
        if self.ends:
            self.ends.pop()
        self._show()

    def _begin(self) -> None:
        self.ends, self.started = [], None
        self._show()

    def _show(self) -> None:
        self.ticker.playing = self.running
        self.done.description = "Start the clock" if self.started is None else "This step is done"
        self.done.disabled = self.started is not None and not self.running
        self.undo.disabled = not self.ends
        self._show_step()
        self.table.value = taken_html(taken(self.plan, self.ends), len(self.ends) if self.running else None)

    def _show_step(self) -> None:
        if not self.plan.steps:
            self.step.value = "<p>This talk has no steps yet; write [[step]] into its file.</p>"
            return
        place = min(len(self.ends), len(self.plan.steps) - 1)
        step = self.plan.steps[place]
        passed = self.ends[-1] if self.ends and not self.running else self._passed()
        told = f"Step {place + 1} of {len(self.plan.steps)}: {step.title}" if self.running else "The clock stands"
        says = f"<p>{in_html(step.say)}</p>" if self.running and step.say else ""
        until = f", to be done by {clock(step.end)}" if self.running else ""
        large = f'<p class="talk-clock"><b>{clock(passed / 60)}</b>{until}</p>'
        self.step.value = f'{large}<p class="talk-count">{in_html(told)}</p>{says}'

    def _passed(self) -> float:
        return 0.0 if self.started is None else self._now() - self.started


def taken_html(rows: tuple[Taken, ...], now: int | None = None) -> str:
    """Return planned beside actual times of each step as an HTML table; `now` is the step that is going on."""
    head = "<tr><th>Step</th><th>Planned</th><th>Actual</th><th>Difference</th></tr>"
    return f"<table>{head}{''.join(_row(row, place == now) for place, row in enumerate(rows))}</table>"


def _row(row: Taken, now: bool) -> str:
    actual = "now" if now else "" if isnan(row.actual) else clock(row.actual)
    mark = ' class="talk-now"' if now else ""
    waits = f" (waits {clock(row.waits)})" if row.waits > 0 else ""
    cells = (in_html(row.title), clock(row.planned) + waits, actual, difference_words(row))
    return f"<tr{mark}>{''.join(f'<td>{cell}</td>' for cell in cells)}</tr>"


def difference_words(row: Taken) -> str:
    """Return how a step compares with its plan: "0:30 longer", "1:00 shorter", "as planned"; empty when not timed."""
    if isnan(row.actual):
        return ""
    shown = clock(abs(row.over))
    return "as planned" if shown == clock(0) else f"{shown} {'longer' if row.over > 0 else 'shorter'}"


def practice_cards(talk: Talk | str, seed: int | None = None) -> widgets.VBox:
    """Return cards that hide the numbers of a talk; she marks herself, and missed ones come up more often."""
    return PracticePanel(_read(talk), seed=seed).box


class PracticePanel:
    """One card at a time.

    Attributes
    ----------
    box : ipywidgets.VBox
        What is shown.
    card : Card or None
        The card on show; None when no sentence of the talk says a number.
    reveal, knew, missed : ipywidgets.Button
        Show the number; mark the card.
    """

    def __init__(self, talk: Talk, path: Path | None = None, seed: int | None = None) -> None:
        self.talk, self.path, self._chance = talk, path, Random(seed)
        self.cards = cards(talk)
        self.card: Card | None = None
        self.sentence, self.message = widgets.HTML(layout=_WIDE), widgets.HTML(layout=_WIDE)
        self.reveal = widgets.Button(description="Show the number", button_style="primary")
        self.knew, self.missed = widgets.Button(description="✓ I knew it"), widgets.Button(description="✗ I missed it")
        self.reveal.on_click(lambda _button: self._reveal())
        self.knew.on_click(lambda _button: self._mark(True))
        self.missed.on_click(lambda _button: self._mark(False))
        self.box = _panel(self.sentence, widgets.HBox([self.reveal, self.knew, self.missed]), self.message)
        self.scores: dict = {}
        try:
            self.scores, message = read_scores(talk.name, path)
        except KitError as fault:
            message = str(fault)
        self._next(message)

    def _next(self, message: str = "") -> None:
        try:
            self.card = next_card(self.cards, self.scores, self._chance, self.card)
        except KitError as fault:
            message = str(fault)
        self._show(self.card.asks if self.card else "", hidden=True)
        self._say(message)

    def _show(self, text: str, hidden: bool) -> None:
        self.sentence.value = f'<div class="talk-card" role="status">{in_html(text)}</div>'
        self.reveal.disabled = not hidden or self.card is None
        self.knew.disabled = self.missed.disabled = hidden

    def _reveal(self) -> None:
        if self.card is not None:
            self._show(self.card.answer, hidden=False)

    def _mark(self, knew: bool) -> None:
        if self.card is None:
            return
        message = ""
        try:
            self.scores = record(self.talk.name, self.card, knew, self.path)
        except KitError as fault:
            message = str(fault)
        self._next(message)

    def _say(self, message: str) -> None:
        known = sum(self._is_known(card) for card in self.cards)
        told = f"{known} of {len(self.cards)} known the last time" if self.cards else ""
        self.message.value = f"<p>{in_html(told)}</p>" + (f"<p><b>{in_html(message)}</b></p>" if message else "")

    def _is_known(self, card: Card) -> bool:
        return card.key in self.scores and self.scores[card.key].in_a_row > 0
