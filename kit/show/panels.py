"""The panel of notebook 3: the controls, and the stage that follows them in one message a move."""

import os
from pathlib import Path

import ipywidgets as widgets

from kit.files import TALK_VARIABLE
from kit.show.controls import Controls, beside
from kit.show.stage import Stage
from kit.show.views import COLUMNS, SOURCES_OF, drawings, read_out, short_name
from kit.talk.library import bundled_talks, read_talk
from kit.talk.talk import Talk


def on_screen(talk: str | Path | Talk | None = None) -> widgets.Widget:
    """Return the panel for the shared screen.

    Parameters
    ----------
    talk : str, pathlib.Path or Talk, optional
        A bundled talk's name, a talk file, a recipe, or a talk that was read; by default the one that
        ``python -m kit screen`` was asked for, or else the first bundled one.

    Raises
    ------
    UnknownNameError
        If there is no such talk.
    TalkFileError
        If its file has faults.
    """
    chosen = talk or os.environ.get(TALK_VARIABLE) or next(iter(bundled_talks()))
    return Panel(chosen if isinstance(chosen, Talk) else read_talk(chosen)).panel


class Panel(Controls):
    """The controls with the stage at their side.

    Attributes
    ----------
    panel : ipywidgets.Box
        Both of them.
    stage : Stage
        The charts and the read-out.
    source_of : ipywidgets.Dropdown
        The nutrient whose sources one of the charts shows.
    """

    def __init__(self, talk: Talk) -> None:
        super().__init__(talk)
        self.source_of = widgets.Dropdown(
            options=[(short_name(name), name) for name in SOURCES_OF],
            description="Where from:",
            style={"description_width": "initial"},
            layout=widgets.Layout(flex="1 1 220px"),
        )
        self.source_of.observe(lambda _event: self._draw(), "value")
        self.last_row.children = (*self.last_row.children, self.source_of)
        first = self._drawings()
        columns = [{name: first[name] for name in column} for column in COLUMNS]
        self.stage = Stage(columns, read_out(self.now, self.written), layout=widgets.Layout())
        self.followers.append(self._draw)
        self.panel = beside(self, self.stage)

    def _drawings(self):
        return drawings(self.now, self.written, self.source_of.value, self.talk.rules)

    def _draw(self) -> None:
        """Show the scenario: every chart and the read-out, in one message."""
        self.stage.show(self._drawings(), read_out(self.now, self.written))
