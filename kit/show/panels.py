"""The panel of notebook 3 and of the full-window screen."""

import os
from pathlib import Path

from kit.errors import KitError
from kit.files import TALK_VARIABLE
from kit.show.desk import Desk
from kit.talk.last_used import last_used
from kit.talk.library import bundled_talks, read_talk, titles
from kit.talk.remembering import Memory
from kit.talk.talk import Talk


def on_screen(talk: str | Path | Talk | None = None) -> Desk:
    """Return her window, from which the audience's is opened.

    Parameters
    ----------
    talk : str, pathlib.Path or Talk, optional
        A talk's name or title, a talk file, a recipe, or a talk that was read. By default the one that
        ``python -m kit screen`` was asked for, or else the one last used; it is shown as it was last set.

    Raises
    ------
    UnknownNameError
        If there is no such talk.
    TalkFileError
        If its file has faults.
    """
    asked = talk or os.environ.get(TALK_VARIABLE)
    given = asked if isinstance(asked, Talk) else read_talk(asked) if asked else _last_used()
    return Desk(given, titles(), read_talk, None if talk else Memory("screen"))


def _last_used() -> Talk:
    """Return the talk last used; one that has faults since is told where it is written, and another one is shown."""
    try:
        return read_talk(last_used().path)
    except KitError:
        return read_talk(next(iter(bundled_talks())))
