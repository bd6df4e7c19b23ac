"""The script: every sentence as it will be said, with its verdict beside it; it follows the dish."""

from collections.abc import Callable, Iterator
from dataclasses import replace
from itertools import groupby

import ipywidgets as widgets

from kit.meal.nutrition import Nutrition
from kit.rules.verdicts import CANNOT_TELL, HOLDS, NOTHING_TO_CHECK, OFF
from kit.show.controls import Controls, beside
from kit.show.escaping import in_html
from kit.show.look import style as look
from kit.speech.points import check_points
from kit.speech.verdict import Verdict
from kit.talk.library import read_talk
from kit.talk.talk import Point, Talk
from kit.texts import listing

# A sign beside each word, so that nothing is told by colour alone.
SIGNS = {HOLDS: "✓", OFF: "✗", CANNOT_TELL: "?", NOTHING_TO_CHECK: "–"}
CLASSES = {HOLDS: "holds", OFF: "off", CANNOT_TELL: "ask", NOTHING_TO_CHECK: "none"}


def style() -> widgets.HTML:
    """Return the look of the rehearsal's panels, as a widget that stands in each of them."""
    return widgets.HTML(f"<style>{look('rehearsal')}</style>", layout=widgets.Layout(height="0", margin="0"))


def script(talk: Talk | str) -> widgets.Box:
    """Return the script of a talk with the verdict beside every sentence, and controls that it follows.

    A sentence that is off offers one that holds, and a word that could mean several foods asks which; both are taken
    over with one click.
    """
    controls = Controls(read_talk(talk) if isinstance(talk, str) else talk)
    panel = ScriptPanel(controls.talk)
    controls.followers.append(lambda: panel.follow(controls))
    return beside(controls, panel.box)


class ScriptPanel:
    """The script as a widget.

    Attributes
    ----------
    box : ipywidgets.VBox
        What is shown.
    verdicts : tuple of Verdict
        What it shows.
    settled : list of callable
        Called with the talk when a sentence was taken over or a word pinned, by whoever keeps the talk.
    """

    def __init__(self, talk: Talk) -> None:
        self._written = talk
        self._settled: dict[tuple[str, int], Point] = {}
        self._offers: tuple[object, ...] = ()
        self._numbers: Nutrition | None = None
        self.settled: list[Callable[[Talk], None]] = []
        self._sentences = widgets.HTML()
        self.to_settle = widgets.VBox()
        self.box = widgets.VBox([style(), self._sentences, self.to_settle], layout=widgets.Layout(width="100%"))
        self.box.add_class("talk-rehearsal")
        self.show()

    @property
    def talk(self) -> Talk:
        """The talk with the sentences that were taken over and the words that were pinned here."""
        points = enumerate(self._written.points)
        return replace(
            self._written,
            points=tuple(self._settled.get((self._written.name, place), point) for place, point in points),
        )

    def follow(self, controls: Controls) -> None:
        """Show the talk and the dish that are set."""
        self._written = controls.talk
        self.show(controls.now)

    def show(self, numbers: Nutrition | None = None) -> None:
        """Check every sentence against the dish as it is now, and show what comes out; one message.

        Parameters
        ----------
        numbers : Nutrition, optional
            The dish as it is now; as written by default.
        """
        self._numbers = numbers
        self.verdicts = check_points(self.talk, numbers)
        self._sentences.value = script_html(self.verdicts)
        offers = tuple((one.place, one.instead, one.choices) for one in self.verdicts if one.instead or one.choices)
        if offers != self._offers:  # the rows stay the same widgets while a slider moves and nothing else is offered
            self._offers = offers
            self.to_settle.children = [row for one in self.verdicts for row in self._rows(one)]

    def _rows(self, verdict: Verdict) -> Iterator[widgets.Widget]:
        point = verdict.point
        if point is None:
            return
        if verdict.instead:
            take = widgets.Button(description="Say this instead", tooltip=f"in place of: {verdict.say}")
            take.on_click(lambda _: self._settle(verdict.place, replace(point, say=verdict.instead)))
            yield _row(take, f"{verdict.instead}")
        for choice in verdict.choices:
            options = [("choose ...", ""), *((name, key) for key, name in choice.options)]
            pick = widgets.Dropdown(options=options, layout=widgets.Layout(width="320px"))

            def pin(move: dict[str, str], word: str = choice.word) -> None:
                if move["new"]:
                    self._settle(verdict.place, replace(point, pins={**point.pins, word: move["new"]}))

            pick.observe(pin, "value")
            yield _row(pick, f'Which "{choice.word}"? {verdict.say}')

    def _settle(self, place: int, point: Point) -> None:
        self._settled[self._written.name, place] = point
        self.show(self._numbers)
        for call in self.settled:
            call(self.talk)


def _row(control: widgets.Widget, text: str) -> widgets.HBox:
    row = widgets.HBox([control, widgets.HTML(f"<p>{in_html(text)}</p>")])
    row.add_class("talk-settle")
    return row


def count_words(verdicts: tuple[Verdict, ...]) -> str:
    """Return how many sentences have which verdict: "12 hold, 2 are off and 1 cannot be told"."""
    words = {HOLDS: ("holds", "hold"), OFF: ("is off", "are off"), CANNOT_TELL: ("cannot be told", "cannot be told")}
    words[NOTHING_TO_CHECK] = ("has nothing to check", "have nothing to check")
    counts = {verdict: sum(one.verdict == verdict for one in verdicts) for verdict in words}
    hers = sum(one.on_her_word for one in verdicts)
    told = [f"{SIGNS[key]} {count} {words[key][count != 1]}" for key, count in counts.items() if count]
    if not told:
        return "no sentence yet: write what you will say, one sentence a line, under Script"
    return listing(told) + (f"; {hers} of these on your own word" if hers else "")


def script_html(verdicts: tuple[Verdict, ...]) -> str:
    """Return the script as HTML: parts in their order, each sentence with verdict, reason and what holds instead."""
    parts = groupby(verdicts, key=lambda one: one.point.part if one.point else "")
    body = "".join(_part(part, list(members)) for part, members in parts)
    return f'<p class="talk-count">{in_html(count_words(verdicts))}.</p>{body}'


def _part(part: str, verdicts: list[Verdict]) -> str:
    heading = f"<h3>{in_html(part.capitalize())}</h3>" if part else ""
    return f"{heading}<ol class='talk-script'>{''.join(map(_sentence, verdicts))}</ol>"


def _sentence(verdict: Verdict) -> str:
    sign, name = SIGNS[verdict.verdict], CLASSES[verdict.verdict]
    label = f'<span class="talk-verdict"><span aria-hidden="true">{sign}</span> {verdict.verdict}</span>'
    instead = ""
    if verdict.instead:
        instead = f'<p class="talk-instead"><b>Say instead:</b> {in_html(verdict.instead)}</p>'
    hers = ""
    if verdict.on_her_word and verdict.point is not None:
        hers = f'<p class="talk-hers"><b>On your own word:</b> {in_html(verdict.point.source)}</p>'
    said = f'<p class="talk-say">{marked(verdict)}</p><p class="talk-because">{in_html(verdict.because)}</p>'
    return f'<li class="talk-{name}">{label}<div>{said}{instead}{hers}{_claims(verdict)}</div></li>'


def marked(verdict: Verdict) -> str:
    """Return a sentence as HTML with the words that carry a claim marked by what was found of it."""
    kinds: dict[int, str] = {}
    worst = (HOLDS, CANNOT_TELL, OFF)
    for claim in sorted(verdict.claims, key=lambda one: worst.index(one.verdict) if one.verdict in worst else 0):
        for start, end in claim.spans:
            kinds.update(dict.fromkeys(range(start, end), claim.verdict))
    pieces = groupby(enumerate(verdict.say), key=lambda pair: kinds.get(pair[0], ""))
    return "".join(_mark("".join(sign for _, sign in signs), kind) for kind, signs in pieces)


def _mark(text: str, kind: str) -> str:
    return f'<mark class="talk-{CLASSES[kind]}" title="{kind}">{in_html(text)}</mark>' if kind else in_html(text)


def _claims(verdict: Verdict) -> str:
    """Return what was found of each claim, to be opened; nothing when the reason above says it all."""
    if len(verdict.claims) < 2:
        return ""
    rows = "".join(
        f'<li class="talk-{CLASSES[one.verdict]}"><b>{SIGNS[one.verdict]} {in_html(one.words)}</b> '
        f"({in_html(one.family)}, {in_html(one.about)}): {one.verdict}. {in_html(one.because)}</li>"
        for one in verdict.claims
    )
    return f'<details class="talk-claims"><summary>Claim by claim</summary><ul>{rows}</ul></details>'
