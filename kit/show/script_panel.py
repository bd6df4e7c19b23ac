"""The script: every sentence as it will be said, with its verdict beside it; it follows the dish."""

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
from kit.talk.talk import Talk
from kit.texts import listing

# A sign beside each word, so that nothing is told by colour alone.
SIGNS = {HOLDS: "✓", OFF: "✗", CANNOT_TELL: "?", NOTHING_TO_CHECK: "–"}
CLASSES = {HOLDS: "holds", OFF: "off", CANNOT_TELL: "ask", NOTHING_TO_CHECK: "none"}


def style() -> widgets.HTML:
    """Return the look of the rehearsal's panels, as a widget that stands in each of them."""
    return widgets.HTML(f"<style>{look('rehearsal')}</style>", layout=widgets.Layout(height="0", margin="0"))


def script(talk: Talk | str) -> widgets.Box:
    """Return the script of a talk with the verdict beside every sentence, and controls that it follows.

    Raises
    ------
    TalkFileError
        If a sentence cannot be looked up.
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
    """

    def __init__(self, talk: Talk) -> None:
        self.talk = talk
        self._sentences = widgets.HTML()
        self.box = widgets.VBox([style(), self._sentences], layout=widgets.Layout(width="100%"))
        self.box.add_class("talk-rehearsal")
        self.show()

    def follow(self, controls: Controls) -> None:
        """Show the talk and the dish that are set."""
        self.talk = controls.talk
        self.show(controls.now)

    def show(self, numbers: Nutrition | None = None) -> None:
        """Check every sentence against the dish as it is now, and show what comes out; one message.

        Parameters
        ----------
        numbers : Nutrition, optional
            The dish as it is now; as written by default.
        """
        self.verdicts = check_points(self.talk, numbers)
        self._sentences.value = script_html(self.verdicts)


def count_words(verdicts: tuple[Verdict, ...]) -> str:
    """Return how many sentences have which verdict: "12 hold, 2 are off and 1 cannot be told"."""
    words = {HOLDS: ("holds", "hold"), OFF: ("is off", "are off"), CANNOT_TELL: ("cannot be told", "cannot be told")}
    words[NOTHING_TO_CHECK] = ("has nothing to check", "have nothing to check")
    counts = {verdict: sum(one.verdict == verdict for one in verdicts) for verdict in words}
    told = [f"{SIGNS[key]} {count} {words[key][count != 1]}" for key, count in counts.items() if count]
    return listing(told) if told else "no sentence yet"


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
    said = f'<p class="talk-say">{in_html(verdict.say)}</p><p class="talk-because">{in_html(verdict.because)}</p>'
    return f'<li class="talk-{name}">{label}<div>{said}{instead}</div></li>'
