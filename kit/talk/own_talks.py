"""Her own talks: begun, copied, renamed, put into the bin; nothing is ever replaced or lost."""

import shutil
from contextlib import suppress
from pathlib import Path

import tomlkit

from kit import files
from kit.errors import KitError
from kit.talk.last_used import last_name, use
from kit.talk.library import (
    TalkEntry,
    bin_folder,
    find_talk,
    new_path,
)
from kit.talk.names import file_name, free_name, plain_title
from kit.talk.practice import carry
from kit.talk.remembering import carry_settings
from kit.talk.titles import with_title

_FIRST_LINES = """# {title}: a talk of mine. The notebooks write this file; what they do not show they leave as it is.
"""


def begin(title: str, folder: Path | None = None) -> Path:
    """Begin a talk of a title, in her folder or in another one, and return its file.

    Raises
    ------
    KitError
        If the title is empty, or the file cannot be written.
    """
    title = plain_title(title)
    document = tomlkit.parse(_FIRST_LINES.format(title=title))
    document.add("title", title)
    document.add("servings", 4)
    return files.write_whole(new_path(title, folder), tomlkit.dumps(document))


def duplicate(talk: str | Path, title: str = "") -> Path:
    """Copy a talk into her folder, where it is hers to change, and return the copy; her practice goes with it.

    Raises
    ------
    KitError
        If there is no such talk, or the copy cannot be written.
    """
    entry = find_talk(talk)
    title = plain_title(title if title.strip() else f"{entry.title} (copy)")
    path = new_path(title).with_suffix(entry.path.suffix)
    files.write_whole(path, with_title(files.read_text(entry.path), title, entry.path))
    _carry(entry.name, path.stem)
    return path


def rename(talk: str | Path, title: str) -> Path:
    """Give a talk of hers another title, and its file the name of it; her practice goes with it. Return the file.

    Raises
    ------
    KitError
        If the talk is not hers, or the title is empty, or the file cannot be written.
    """
    entry = _hers(talk, "renamed")
    title = plain_title(title)
    text = with_title(files.read_text(entry.path), title, entry.path)
    if file_name(title) == entry.name:
        return files.write_whole(entry.path, text, replace=True)
    path = files.write_whole(new_path(title).with_suffix(entry.path.suffix), text)
    _carry(entry.name, path.stem)
    entry.path.unlink(missing_ok=True)
    if last_name() == entry.name:
        use(path.stem)
    return path


def delete(talk: str | Path) -> Path:
    """Move a talk of hers to the bin folder, and return where it lies there.

    Raises
    ------
    KitError
        If the talk is not hers, or cannot be moved.
    """
    entry = _hers(talk, "deleted")
    try:
        bin_folder().mkdir(parents=True, exist_ok=True)
        taken = {path.stem.lower() for path in bin_folder().iterdir()}
        path = bin_folder() / f"{free_name(entry.name, taken)}{entry.path.suffix}"
        shutil.move(entry.path, path)
    except OSError as fault:
        raise KitError(f"{entry.path} cannot be moved to {bin_folder()} ({fault.strerror})") from fault
    return path


def _carry(talk: str, to: str) -> None:
    """Let a talk's practice marks, and how it was last set, go with its name; what cannot be kept stays behind."""
    with suppress(KitError):
        carry(talk, to)
    carry_settings(talk, to)


def _hers(talk: str | Path, what: str) -> TalkEntry:
    entry = find_talk(talk)
    if not entry.own:
        raise KitError(f'"{entry.title}" is no talk in your folder and cannot be {what}; make a copy of it first')
    return entry
