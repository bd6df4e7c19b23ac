"""Where talks are found: those that ship with the kit, her own, and files."""

import os
import re
from collections import Counter
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path

from kit import files
from kit.errors import KitError, TalkFileError, UnknownNameError
from kit.talk.names import file_name, free_name
from kit.talk.plain_talk import talk_from_plain
from kit.talk.talk import Talk
from kit.talk.talk_file import talk_from_toml
from kit.talk.titles import title_of

ENDINGS = (".toml", ".txt")


@dataclass(frozen=True, slots=True)
class TalkEntry:
    """One talk of the list.

    Attributes
    ----------
    title, name : str
        Its title, and the name of its file without the ending.
    path : pathlib.Path
        The file.
    own : bool
        Whether it is hers; the others ship with the kit.
    """

    title: str
    name: str
    path: Path
    own: bool


def bundled_talks() -> dict[str, Path]:
    """Return the talks that ship with the kit, by name."""
    return {path.stem: path for path in sorted(files.bundled("data/talks").glob("*.toml"))}


def talks_folder() -> Path:
    """Return the folder of her own talks; it need not exist yet."""
    return files.own_folder() / "talks"


def bin_folder() -> Path:
    """Return the folder where deleted talks lie."""
    return files.own_folder() / "bin"


def talks() -> tuple[TalkEntry, ...]:
    """Return every talk, her own and those that ship with the kit, by title."""
    own = (TalkEntry(title_of(path), path.stem, path, own=True) for path in _own_files())
    others = (TalkEntry(title_of(path), name, path, own=False) for name, path in bundled_talks().items())
    return tuple(sorted((*own, *others), key=lambda entry: (entry.title.casefold(), not entry.own, entry.name)))


def titles() -> dict[str, str]:
    """Return the titles to choose from by the names of the talks; of two that are alike, hers is told apart."""
    every = talks()
    alike = Counter(entry.title for entry in every)
    labels = {
        entry.name: f"{entry.title} (yours)" if entry.own and alike[entry.title] > 1 else entry.title
        for entry in sorted(every, key=lambda entry: entry.own)  # hers go first where a name is taken twice
    }
    return dict(sorted(labels.items(), key=lambda pair: pair[1].casefold()))


def _own_files() -> Iterator[Path]:
    try:
        found = sorted(talks_folder().iterdir())
    except (OSError, KitError):  # no folder yet, or none that may be read
        return
    yield from (path for path in found if path.suffix in ENDINGS and path.name[0] != "." and files.is_file(path))


def find_talk(talk: str | Path) -> TalkEntry:
    """Return the talk that a name, a title or a path stands for; her own go first.

    Raises
    ------
    UnknownNameError
        If there is none; the nearest is offered.
    KitError
        If a title belongs to several talks.
    """
    path = _path_of(talk)
    if path is not None:
        is_hers = Path(os.path.realpath(path)).parent == Path(
            os.path.realpath(talks_folder())
        )  # stands a circle of links
        return TalkEntry(title_of(path), path.stem, path, is_hers)
    asked = str(talk)
    every = sorted(talks(), key=lambda entry: not entry.own)
    plain = _plain(asked)
    titled = [entry for entry in every if plain and plain in (_plain(entry.title), _plain(entry.name))]
    own = [entry for entry in titled if entry.own]
    if len(own or titled) > 1:
        names = ", ".join(entry.name for entry in own or titled)
        raise KitError(f'"{asked}" is the title of several talks; write the name of one: {names}')
    if titled:
        return (own or titled)[0]
    shown = asked if len(asked) <= 80 else f"{asked[:80]}..."
    place = asked if len(asked) <= 200 else f"...{asked[-200:]}"
    if refused := files.refusal(Path(asked)):
        raise KitError(f"{place} cannot be read ({refused}); choose a file you may read")
    if files.is_folder(Path(asked)):
        raise KitError(f"{place} is a folder; write the name of a talk, or of a file in the folder")
    raise UnknownNameError(
        "talk or recipe file", shown, dict.fromkeys(word for entry in every for word in (entry.name, entry.title))
    )


def _path_of(talk: str | Path) -> Path | None:
    """Return the file that a name or a path stands for, her own first; None where only the titles can tell."""
    asked = str(talk)
    named = (path for path in (*_own_files(), *bundled_talks().values()) if path.stem == asked)
    path = next(named, Path(asked))
    return path if files.is_file(path) else None


def _plain(text: str) -> str:
    return re.sub(r"[\W_]+", " ", text).strip().casefold()


def read_talk(talk: str | Path) -> Talk:
    """Read a talk: its name or title, a ``.toml`` talk file, or a plain ``.txt``.

    What is wrong with single entries stands in the talk's `faults`; the rest can be used.

    Raises
    ------
    UnknownNameError
        If there is no such talk or file.
    TalkFileError
        If there is nothing in it that could be shown: every fault, each with the entry and what to write instead.
    """
    path = _path_of(talk) or find_talk(talk).path  # titles, for which files are read, only where nothing else tells
    found = talk_from(files.read_text(path), path)
    if not found.recipe.ingredients and not found.recipe.open_lines:
        none = 'no ingredient; write [[ingredient]] and line = "1 cup lentils, dry"'
        raise TalkFileError(path.name, [*found.faults, none] if path.suffix == ".toml" else found.faults)
    return found


def talk_from(text: str, path: Path) -> Talk:
    """Return the talk that the text of a file holds, by the ending of its name.

    Raises
    ------
    TalkFileError
        If it is no talk at all.
    """
    return talk_from_toml(text, path) if path.suffix == ".toml" else talk_from_plain(text, path)


def own_path(title: str) -> Path:
    """Return where a talk of a title lies, or would lie, in her folder."""
    return talks_folder() / f"{file_name(title)}.toml"


def new_path(title: str, folder: Path | None = None) -> Path:
    """Return a place for a new talk that is not taken, in her folder or in another one."""
    folder = folder or talks_folder()
    try:
        taken = {path.stem.lower() for path in folder.iterdir()}
    except OSError:
        taken = set()
    if folder == talks_folder():
        taken |= set(bundled_talks())
    return folder / f"{free_name(title, taken)}.toml"
