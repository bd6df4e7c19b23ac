"""The panel of notebook 3 and of the full-window screen."""

import os
from pathlib import Path

from kit.files import TALK_VARIABLE
from kit.show.desk import Desk
from kit.talk.library import bundled_talks, read_talk
from kit.talk.talk import Talk


def on_screen(talk: str | Path | Talk | None = None) -> Desk:
    """Return her window, from which the audience's is opened.

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
    given = chosen if isinstance(chosen, Talk) else read_talk(chosen)
    known = {name: read_talk(name).title for name in bundled_talks()}
    return Desk(given, known, read_talk)
