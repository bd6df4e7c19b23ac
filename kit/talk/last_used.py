"""The talk last used, which opens first everywhere."""

from kit import files
from kit.errors import KitError
from kit.talk.library import TalkEntry, bundled_talks, find_talk, talks

FILE = "last_talk.txt"


def use(talk: str) -> None:
    """Remember a talk as the one last used; where nothing can be written it is not remembered.

    Raises
    ------
    UnknownNameError
        If there is no such talk.
    """
    entry = find_talk(talk)
    name = entry.name if entry in talks() else str(entry.path.resolve())
    try:
        files.write_whole(files.own_folder() / FILE, f"{name}\n", replace=True)
    except KitError:
        return


def last_name() -> str:
    """Return the name of the talk last used, empty when none was."""
    try:
        return files.read_text(files.own_folder() / FILE).strip()
    except KitError:
        return ""


def last_used() -> TalkEntry:
    """Return the talk last used; the first that ships with the kit when there is none, or it is gone."""
    try:
        return find_talk(last_name())
    except KitError:
        return find_talk(next(iter(bundled_talks())))
