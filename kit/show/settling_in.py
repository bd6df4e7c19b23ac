"""What she settles in the rehearsal: words taken over or pinned, written into the talk, taken back; conflicts told."""

from collections.abc import Callable, Mapping
from typing import Any

from kit.errors import KitError
from kit.show.rehearse_content import KINDS_OF_ENTRY, Run
from kit.show.setting import Setting
from kit.speech.points import instead_as_written
from kit.speech.verdict import POINT, Verdict
from kit.talk.desk_file import ConflictError
from kit.talk.dish import Dish
from kit.talk.last_used import use
from kit.talk.settling import (
    OpenTalk,
    Settlement,
    open_talk,
    settled,
    with_settlement,
    written,
    written_beside,
)

AS_WRITTEN_FIRST = "This is about the dish as it is set; put the recipe back as written, then it can go into the talk"


class Settling:
    """What is settled about the talk that is open.

    Attributes
    ----------
    undoable : tuple of OpenTalk
        The talk as it was before each settlement, which one click brings back.
    """

    opened: OpenTalk
    setting: Setting
    verdicts: tuple[Verdict, ...]
    run: Run
    undoable: tuple[OpenTalk, ...]
    _waiting: Settlement | None = None  # what could not be written, since the file was changed elsewhere
    _show: Callable[[OpenTalk, Mapping[str, Any]], None]
    _begin_practice: Callable[[], None]
    _everything: Callable[[], dict[str, Any]]
    _key: Callable[[OpenTalk], str]

    def _do_instead(self, message: dict[str, Any]) -> dict[str, Any]:
        """Say what holds instead."""
        verdict = self._verdict(message["id"])
        if not verdict.instead or verdict.point is None:
            return {}
        say = instead_as_written(verdict, Dish(self.opened.talk, self.setting.now))
        return self._settle(self._settlement(verdict, say=say), f"Written into the talk: “{verdict.instead}”")

    def _do_pin(self, message: dict[str, Any]) -> dict[str, Any]:
        """Let a word of a sentence stand for one food or measure."""
        verdict = self._verdict(message["id"])
        choice = next((choice for choice in verdict.choices if choice.word == message["word"]), None)
        meant = dict(choice.options).get(message["key"]) if choice else None
        if verdict.where != POINT or verdict.point is None or meant is None:
            return {}
        pins = {**verdict.point.pins, message["word"]: message["key"]}
        return self._settle(self._settlement(verdict, pins=pins), f"“{message['word']}” here means {meant}.")

    def _verdict(self, key: str) -> Verdict:
        if self.setting.made:
            raise KitError(AS_WRITTEN_FIRST)
        found = next((one for one in self.verdicts if f"{one.where}-{one.place}" == key), None)
        if found is None:
            raise KitError("this sentence is not in the talk any more; look at it again")
        return found

    @staticmethod
    def _settlement(verdict: Verdict, **made: Any) -> Settlement:
        assert verdict.point is not None
        return Settlement(KINDS_OF_ENTRY[verdict.where], verdict.place, verdict.point.say, **made)

    def _settle(self, made: Settlement, told: str) -> dict[str, Any]:
        try:
            before, now = settled(self.opened, made)
        except ConflictError as conflict:
            self._waiting = made
            return {"conflict": {"text": f"{_told(conflict)}."}}
        if now.entry.path != self.opened.entry.path:
            told = f"{told} This is now a talk of your own; the one that was opened stays as it is."
        elif before.text != self.opened.text:  # what it was before that is not hers alone to bring back
            self.undoable = ()
            told = f"{told} The talk was changed elsewhere too, and both changes are in it."
        self.undoable = (*self.undoable, before)
        return self._now(now, told)

    def _now(self, now: OpenTalk, told: str) -> dict[str, Any]:
        """Show the talk as it is now, set as it was."""
        use(self._key(now))
        self._waiting = None
        self._show(now, {**self.setting.as_json(), "run": self.run.as_json()})
        self._begin_practice()
        return {**self._everything(), "note": {"text": told, "undo": bool(self.undoable)}}

    def _do_take_back(self, _message: dict[str, Any]) -> dict[str, Any]:
        """Bring the talk's file back as it was before the last settlement."""
        if not self.undoable:
            return {}
        *others, before = self.undoable
        try:
            now = written(self.opened, before.text)
        except ConflictError as conflict:
            raise KitError(f"{_told(conflict)}; nothing was taken back") from None
        self.undoable = tuple(others)
        return self._now(now, "The talk is as it was before.")

    def _do_conflict(self, message: dict[str, Any]) -> dict[str, Any]:
        """End a conflict as she chose: hers, the other one, or both."""
        if self._waiting is None:
            return {}
        chosen, made, before = message.get("keep"), self._waiting, self.opened
        self.undoable = ()
        if chosen == "mine":
            now = written(before, with_settlement(before.text, made), over=True)
            return self._now(now, "Yours is in the file; the other one lies in the bin folder.")
        if chosen == "both":
            now = written_beside(before, with_settlement(before.text, made))
            return self._now(now, f"Yours is a new talk now, {now.entry.path.name}; the other one stays as it is.")
        return self._now(open_talk(before.entry.path), "This is the talk as it was changed elsewhere.")


def _told(conflict: ConflictError) -> str:
    what = "is gone" if conflict.theirs is None else "was changed elsewhere, at this very place,"
    return f"{conflict.path.name} {what} since it was opened here"
