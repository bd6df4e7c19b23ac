"""The talks on her writing desk: choosing, copying, renaming, deleting and saving one; drafts kept and offered."""

import time
from collections.abc import Callable
from datetime import datetime
from pathlib import Path
from typing import Any

from kit.errors import KitError
from kit.talk import own_talks
from kit.talk.desk import Desk, empty_desk
from kit.talk.desk_file import ConflictError, is_changed, open_desk, save, save_beside
from kit.talk.drafts import Draft, discard, draft_of, drafts, drop_draft, keep_draft
from kit.talk.last_used import last_used, use
from kit.talk.library import bundled_talks, find_talk, talks, talks_folder
from kit.talk.plain_parts import PARTS

Parts = dict[str, Any]
_CHOICES = (("save", "Save it first"), ("draft", "Keep it as a draft"), ("discard", "Throw the changes away"))


class Talks:
    """What a writing desk does with whole talks; the desk itself is that of `kit.show.writing.WritingDesk`."""

    desk: Desk
    opened: str
    content: dict[str, Any]
    _texts: Callable[[], Parts]
    _all: Callable[[], Parts]

    @staticmethod
    def first(talk: str | Path | None) -> tuple[Desk, str]:
        """Return the desk to begin with, and where it was opened; a talk that cannot be read makes way for another."""
        if talk is not None:
            return open_desk(talk), str(find_talk(talk).path)
        for path in (last_used().path, *bundled_talks().values()):
            try:
                return open_desk(path), str(path)
            except KitError:
                continue
        return empty_desk(), ""

    def _begin_talks(self) -> None:
        self._window = ""
        self._no_draft = ""  # why no draft could be kept
        self._waiting: Parts | None = None  # what she asked for while changes were not saved
        self._offered: tuple[Draft, ...] = ()

    @property
    def _draft_name(self) -> str:
        """Tells windows apart, and in each of them talks that have no file yet."""
        return f"{self._window} {'' if self.desk.path else self.opened}"

    def _holds_text(self) -> bool:
        return any(getattr(self.desk, part).strip() for part in PARTS)

    def _path(self, what: str) -> Path:
        """Return the file that the talk was opened from."""
        if self.opened.startswith("new "):
            raise KitError(f"this talk is not saved yet; save it before you {what} it")
        return Path(self.opened)

    # ---- what the page is told

    def _head(self) -> Parts:
        """Return the title, whether all is saved, and the list of talks."""
        return {
            "title": self.desk.reading.talk.title if self.desk.recipe.strip() else "A new talk",
            "state": self._state(),
            "own": self.desk.path is not None,
            "talks": self._listed(),
            "folder": str(talks_folder()),
        }

    def _state(self) -> str:
        changed = is_changed(self.desk)
        if changed and self._no_draft:
            return f"Not saved, and no draft can be kept: {self._no_draft}"
        if self.desk.path is None:
            shipped = bool(self.desk.text)
            if not changed:
                return "This talk comes with the kit; saving makes a copy of your own." if shipped else "Not saved yet."
            return "Not saved yet; a draft of it is kept."
        return "Changed since it was saved; a draft of it is kept." if changed else f"Saved as {self.desk.path.name}."

    def _listed(self) -> list[Parts]:
        listed = [
            {"path": str(entry.path), "title": entry.title, "own": entry.own}
            for entry in sorted(talks(), key=lambda entry: not entry.own)
        ]
        if self.opened not in [entry["path"] for entry in listed]:
            title = self.desk.reading.talk.title if self.desk.recipe.strip() else "A new talk"
            listed.insert(0, {"path": self.opened, "title": title, "own": True})
        return listed

    def _offers(self) -> Parts:
        return {
            "drafts": [
                {"title": draft.desk.reading.talk.title, "when": f"{datetime.fromtimestamp(draft.when):%d %B, %H:%M}"}
                for draft in self._offered
            ]
        }

    def _look_for_drafts(self) -> None:
        """Find what was typed and not saved, at this talk and at new ones, in other windows or before a restart."""
        mine = draft_of(self.desk, self._draft_name)
        found = [*drafts(self.desk.path), *(drafts(None) if self.desk.path else ())]
        self._offered = tuple(draft for draft in found if mine is None or draft.place != mine.place)[:5]

    def _take(self, desk: Desk, opened: str, told: str = "", by: str = "talk") -> Parts:
        """Put another talk on the desk."""
        self.desk, self.opened, self._waiting = desk, opened, None
        mine = draft_of(desk, self._draft_name)
        if mine is not None:
            self.desk = mine.desk
            told = " ".join(filter(None, (told, "What you had typed and not saved is here again.")))
        self._look_for_drafts()
        said = {"by": by, "text": told, "wrong": False} if told else None
        return {**self._texts(), **self._all(), **self._offers(), "told": said, "asking": None}

    # ---- what she does

    def _do_window(self, message: Parts) -> Parts:
        """Learn which window of hers this is, and bring back what it had on the desk before a reload."""
        self._window = str(message["id"])[:64]
        opened = str(message.get("opened") or self.opened)
        if opened == self.opened:
            return self._take(self.desk, self.opened)
        try:
            if opened.startswith("new "):
                desk = empty_desk()
            else:
                desk = open_desk(opened)
                use(opened)
        except KitError:
            return self._take(self.desk, self.opened)
        return self._take(desk, opened)

    def _asks_first(self, message: Parts) -> Parts | None:
        """Return the question what becomes of changes that are not saved; None when there are none."""
        if message.get("settled") or not self._holds_text() or not is_changed(self.desk):
            return None
        self._waiting = message
        title = self.desk.reading.talk.title
        return {
            "asking": {"text": f"“{title}” has changes that are not saved.", "choices": [list(one) for one in _CHOICES]}
        }

    def _do_unsaved(self, message: Parts) -> Parts:
        """Do with the changes what she chose, then what she had asked for."""
        waiting, self._waiting = self._waiting, None
        how = message["how"]
        if waiting is None or how == "stay":
            return {"asking": None}
        if how == "save":
            self._save()
        elif how == "draft":
            keep_draft(self.desk, self._draft_name)
        else:
            self._put_away()
        return getattr(self, f"_do_{waiting['do']}")({**waiting, "settled": True})

    def _put_away(self) -> None:
        """Put what was typed and not saved into the bin."""
        keep_draft(self.desk, self._draft_name)
        draft = draft_of(self.desk, self._draft_name)
        if draft is not None:
            discard(draft)

    def _do_open(self, message: Parts) -> Parts:
        path = str(message["path"])
        if path == self.opened:
            return {"asking": None}
        asks = self._asks_first(message)
        if asks:
            return asks
        if path.startswith("new "):
            return self._take(empty_desk(), path)
        desk = open_desk(path)
        use(path)
        return self._take(desk, path)

    def _do_new(self, message: Parts) -> Parts:
        asks = self._asks_first(message)
        if asks:
            return asks
        title = str(message.get("title", "")).strip()
        return self._take(empty_desk(title), f"new {time.time_ns()}", "A new talk: begin with its recipe in step 1.")

    def _do_duplicate(self, message: Parts) -> Parts:
        asks = self._asks_first(message)
        if asks:
            return asks
        path = own_talks.duplicate(self._path("copy"), str(message.get("title", "")))
        use(str(path))
        return self._take(open_desk(path), str(path), f"This is the copy, {path}.")

    def _do_rename(self, message: Parts) -> Parts:
        asks = self._asks_first(message)
        if asks:
            return asks
        path = own_talks.rename(self._path("rename"), str(message.get("title", "")))
        return self._take(open_desk(path), str(path), f"Renamed; its file is {path}.")

    def _do_delete(self, _message: Parts) -> Parts:
        """Put a talk of hers into the bin with what was typed last, and open another one."""
        if self.opened.startswith("new "):
            self._put_away()
            desk, opened = self.first(None)
            return self._take(desk, opened, "Deleted; what was typed lies in the bin.")
        if self.desk.path is not None and is_changed(self.desk):
            self._save()
        path = own_talks.delete(self._path("delete"))
        desk, opened = self.first(None)
        return self._take(desk, opened, f"Deleted; it lies in the bin as {path}.")

    # ---- saving

    def _save(self, *, over: bool = False) -> None:
        before, name = self.desk, self._draft_name
        self.desk = save(before, over=over)
        drop_draft(before, name)
        self.opened = str(self.desk.path)
        drop_draft(self.desk, self._draft_name)

    def _saved(self) -> Parts:
        told = {"by": "save", "text": f"Saved: {self.desk.path}", "wrong": False}
        return {**self._texts(), **self._all(), "told": told, "conflict": False}

    def _do_save(self, message: Parts) -> Parts:
        if not self.desk.recipe.strip():
            raise KitError("there is nothing to save yet; write the recipe in step 1, its title on the first line")
        try:
            self._save(over=bool(message.get("over")))
        except ConflictError as fault:
            return {"told": {"by": "save", "text": str(fault), "wrong": True}, "conflict": True}
        return self._saved()

    def _do_beside(self, _message: Parts) -> Parts:
        before, name = self.desk, self._draft_name
        self.desk = save_beside(before)
        drop_draft(before, name)
        self.opened = str(self.desk.path)
        return self._saved()

    def _do_theirs(self, _message: Parts) -> Parts:
        """Open what another window has written; what lies here is kept as a draft beside it."""
        keep_draft(self.desk, f"{self._draft_name} before the other one was opened")
        drop_draft(self.desk, self._draft_name)
        return {**self._take(open_desk(self.opened), self.opened), "conflict": False}

    # ---- drafts that are offered

    def _do_draft(self, message: Parts) -> Parts:
        """Go on with what was typed and not saved, or put it into the bin."""
        at = int(message["at"])
        if at >= len(self._offered):
            return self._offers()
        draft = self._offered[at]
        if message["how"] == "bin":
            discard(draft)
            self._look_for_drafts()
            return {**self._offers(), "told": {"by": "drafts", "text": "It lies in the bin now.", "wrong": False}}
        asks = self._asks_first(message)
        if asks:
            return asks
        self.desk, self.opened = draft.desk, str(draft.desk.path or f"new {time.time_ns()}")
        keep_draft(self.desk, self._draft_name)
        draft.place.unlink(missing_ok=True)
        return self._take(self.desk, self.opened)
