"""What is settled while a talk is rehearsed is written at once: one entry of its file is changed, all else is kept."""

from collections.abc import Mapping
from dataclasses import dataclass
from pathlib import Path
from typing import Any

from kit import files
from kit.errors import KitError, TalkFileError
from kit.talk.desk_file import ConflictError, into_bin, open_desk, save
from kit.talk.library import TalkEntry, find_talk, new_path, read_talk
from kit.talk.original import Original, original_of
from kit.talk.own_talks import duplicate
from kit.talk.plain_lines import one_line
from kit.talk.talk import Talk
from kit.talk.talk_file import talk_from_toml
from kit.talk.toml_edit import Edit, edited

_SAID = {"point": "say", "step": "say", "question": "answer"}  # the key of an entry that holds what is said


@dataclass(frozen=True, eq=False)
class OpenTalk:
    """A talk, and the text of its file as it was read.

    Attributes
    ----------
    entry : TalkEntry
        Where it lies.
    text : str
        The file.
    talk : Talk
        The talk it makes.
    """

    entry: TalkEntry
    text: str
    talk: Talk

    @property
    def is_hers(self) -> bool:
        """Whether its file may be changed: it is a talk file, and none that ships with the kit."""
        return self.entry.path.suffix == ".toml" and self.entry.path.parent != files.bundled("data/talks")


@dataclass(frozen=True, slots=True)
class Settlement:
    """Something settled about one thing that is said.

    Attributes
    ----------
    kind : {"point", "step", "question"}
        What kind of entry says it.
    place : int
        Which one it is in the talk, from 0.
    was : str
        What it says now, so that nothing else is changed by mistake.
    say : str, optional
        What it says from now on.
    pins : mapping of str to str, optional
        What words of it stand for from now on; of a point.
    """

    kind: str
    place: int
    was: str
    say: str | None = None
    pins: Mapping[str, str] | None = None

    @property
    def values(self) -> dict[str, Any]:
        """The keys of the entry that change."""
        said = {} if self.say is None else {_SAID[self.kind]: self.say}
        return said if self.pins is None else {**said, "pins": dict(self.pins)}


def open_talk(talk: str | Path) -> OpenTalk:
    """Open a talk by name, title or path.

    Raises
    ------
    KitError
        If there is no such talk, or nothing in it that could be shown.
    """
    entry = find_talk(talk)
    text = files.read_text(entry.path)
    return OpenTalk(entry, text, read_talk(entry.path))


def settled(opened: OpenTalk, made: Settlement) -> tuple[OpenTalk, OpenTalk]:
    """Write what was settled into the file of a talk, and return the talk as it lay before and as it is now.

    A talk that ships with the kit, or a plain text, becomes a talk file of hers first. Where the file was changed
    elsewhere meanwhile, and still says what was settled about, both changes are in it.

    Raises
    ------
    ConflictError
        If the file was changed elsewhere, and does not say that any more.
    KitError
        If it cannot be written.
    """
    opened = opened if opened.is_hers else _made_hers(opened)
    try:
        return opened, written(opened, with_settlement(opened.text, made))
    except ConflictError as conflict:
        try:
            there = open_talk(opened.entry.path)
            text = with_settlement(there.text, made)
        except KitError:
            raise conflict from None
        return there, written(there, text)


def written(opened: OpenTalk, text: str, *, over: bool = False) -> OpenTalk:
    """Write another text into the file of a talk, and return the talk as it is now.

    Parameters
    ----------
    opened : OpenTalk
        The talk as it was read.
    text : str
        The new text.
    over : bool
        Whether a file that was changed elsewhere is replaced; what it held is kept in the bin folder.

    Raises
    ------
    ConflictError
        If the file is not what was read.
    KitError
        If it cannot be written.
    """
    path = opened.entry.path

    def change(now: str | None) -> str:
        if now != opened.text and over:
            into_bin(path, now)
        elif now != opened.text:
            raise ConflictError(path, now)
        return text

    files.changed(path, change)
    return open_talk(path)


def written_beside(opened: OpenTalk, text: str) -> OpenTalk:
    """Write a text as a new talk of hers beside the one that was changed elsewhere."""
    return open_talk(files.write_whole(new_path(opened.talk.title), text))


def with_settlement(text: str, made: Settlement) -> str:
    """Return the text of a talk file with what was settled; every other entry stays sign for sign.

    Raises
    ------
    TalkFileError
        If lines of the file are no TOML.
    KitError
        If the file does not say what was settled about.
    """
    original = original_of(text)
    if original.broken:
        raise TalkFileError("talk file", original.broken)
    at = _entry_of(original, made)
    edits = [Edit(number, made.values if number == at else {}) for number in range(original.count(made.kind))]
    changed = edited(text, {}, {made.kind: edits})
    if made.say is not None and made.say not in _said(talk_from_toml(changed, Path("talk.toml")), made.kind):
        raise KitError("the talk could not be written so that it is read back the same; nothing was saved")
    return changed


def _entry_of(original: Original, made: Settlement) -> int:
    """Return which entry of its kind in the file says what was settled about: in its place, or else where it is now."""
    rows = getattr(original, f"{made.kind}s")
    says = [(at, one_line(getattr(entry, _SAID[made.kind]))) for at, entry in rows]
    there = [at for at, say in says if say == one_line(made.was)]
    if not there:
        raise KitError(f'the file does not say "{made.was[:60]}" any more; look at it again')
    in_place = made.place < len(says) and says[made.place][0] in there
    return says[made.place][0] if in_place else there[0]


def _said(talk: Talk, kind: str) -> list[str]:
    return [getattr(entry, _SAID[kind]) for entry in getattr(talk, f"{kind}s")]


def _made_hers(opened: OpenTalk) -> OpenTalk:
    """Return a talk as a talk file in her folder."""
    if opened.entry.path.suffix == ".toml":
        return open_talk(duplicate(opened.entry.path, opened.entry.title))
    made = save(open_desk(opened.entry.path))
    assert made.path is not None
    return open_talk(made.path)
