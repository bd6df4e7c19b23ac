"""What she types, kept beside her talks until it is saved, and offered after a crash, a reload or a restart."""

import hashlib
import json
import os
import time
from collections.abc import Iterator
from dataclasses import asdict, dataclass
from pathlib import Path

from kit import files
from kit.errors import KitError
from kit.talk.desk import Desk
from kit.talk.desk_file import is_changed
from kit.talk.library import bin_folder
from kit.talk.original import Settled

VERSION = 1
_TEXTS = ("recipe", "script", "plan", "questions", "text")


@dataclass(frozen=True)
class Draft:
    """What was typed and not saved.

    Attributes
    ----------
    desk : Desk
        The desk as it was.
    when : float
        When it was last typed at. [s since 1970]
    place : pathlib.Path
        The file in which it is kept.
    """

    desk: Desk
    when: float
    place: Path


def drafts_folder() -> Path:
    """Return the folder of what was typed and not saved."""
    return files.own_folder() / "drafts"


def keep_draft(desk: Desk, window: str = "") -> None:
    """Keep what is on the desk, in the place of what this window kept before; a desk without changes is not kept.

    Parameters
    ----------
    desk : Desk
        What is kept.
    window : str
        Tells windows on one talk apart; the process by default.

    Raises
    ------
    KitError
        If it cannot be written.
    """
    if not is_changed(desk):
        drop_draft(desk, window)
        return
    table = {
        "version": VERSION,
        **{name: getattr(desk, name) for name in _TEXTS},
        "fields": dict(desk.fields),
        "settled": [asdict(each) for each in desk.settled],
        "pins": {say: dict(pinned) for say, pinned in desk.pins.items()},
        "path": str(desk.path) if desk.path else "",
    }
    files.write_whole(_place(desk.path, window), json.dumps(table, ensure_ascii=False), replace=True)


def drop_draft(desk: Desk, window: str = "") -> None:
    """Forget what this window kept of a talk, once it is saved or given up."""
    try:
        _place(desk.path, window).unlink(missing_ok=True)
    except OSError as fault:
        raise KitError(f"{_place(desk.path, window)} cannot be removed ({fault.strerror})") from fault


def drafts(path: Path | None = None) -> tuple[Draft, ...]:
    """Return what was typed at a talk, or at one not yet saved, and not saved; the latest first."""
    found = (_read(place) for place in _places(_stem(path)))
    return tuple(sorted((draft for draft in found if draft), key=lambda draft: -draft.when))


def draft_of(desk: Desk, window: str) -> Draft | None:
    """Return what a window kept of the talk on a desk; None when there is nothing."""
    place = _place(desk.path, window)
    return _read(place) if files.is_file(place) else None


def discard(draft: Draft) -> None:
    """Put a draft into the bin folder, beside those before it, from where it can be taken back by hand.

    Raises
    ------
    KitError
        If it cannot be moved.
    """
    try:
        bin_folder().mkdir(parents=True, exist_ok=True)
        draft.place.replace(bin_folder() / f"{draft.place.stem}-{time.time_ns()}.json")
    except OSError as fault:
        raise KitError(f"{draft.place} cannot be moved to {bin_folder()} ({fault.strerror})") from fault


def _places(stem: str) -> Iterator[Path]:
    try:
        yield from (
            place for place in drafts_folder().iterdir() if place.name.startswith(stem) and place.suffix == ".json"
        )
    except (OSError, KitError):
        return


def _stem(path: Path | None) -> str:
    return (
        "new-" if path is None else f"{hashlib.sha256(str(path.resolve()).encode(errors='replace')).hexdigest()[:16]}-"
    )


def _place(path: Path | None, window: str) -> Path:
    safe = hashlib.sha256(window.encode()).hexdigest()[:8] if window else str(os.getpid())
    return drafts_folder() / f"{_stem(path)}{safe}.json"


def _read(place: Path) -> Draft | None:
    """Return a draft; None where its file cannot be understood."""
    try:
        table = json.loads(files.read_text(place))
        desk = Desk(
            **{name: str(table[name]) for name in _TEXTS},
            fields=dict(table["fields"]),
            settled=tuple(
                Settled(each["line"], tuple(each["foods"]), tuple(each["grams"]), str(each.get("treatment", "")))
                for each in table["settled"]
            ),
            pins={str(say): dict(pinned) for say, pinned in table["pins"].items()},
            path=Path(table["path"]) if table["path"] else None,
        )
        return Draft(desk, place.stat().st_mtime, place)
    except (KitError, OSError, ValueError, KeyError, TypeError, AttributeError, RecursionError):
        return None
