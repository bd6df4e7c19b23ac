"""The rehearsal: one panel with the script and its verdicts, the plan, the clock, practice cards and cautions.

The page draws; here every message of hers changes the setting, the talk or the clock, and one message goes back with
what changed. A sentence taken over or a word pinned is written into the talk's file at once.
"""

from collections.abc import Mapping
from pathlib import Path
from typing import Any

from kit.errors import KitError
from kit.show import desk_content
from kit.show.answering import Answering
from kit.show.judged import counted
from kit.show.look import script, style
from kit.show.moves import Moves
from kit.show.practising import Practising
from kit.show.rehearse_content import NO_SENTENCES, planned, run_from, safety, said, timed, told_of_talk
from kit.show.scenes import frame
from kit.show.setting import restored
from kit.show.settling_in import Settling
from kit.speech.points import check_talk
from kit.talk.last_used import last_used, use
from kit.talk.library import bundled_talks, talks, titles
from kit.talk.remembering import Memory
from kit.talk.settling import OpenTalk, open_talk

_LISTS = {"rows": "at", "said": "id"}  # of which only what differs is sent, told apart by this: {"some_rows": [...]}


def rehearse(talk: str | Path | None = None) -> "Rehearsal":
    """Return the rehearsal of a talk.

    Parameters
    ----------
    talk : str or pathlib.Path, optional
        A talk's name, title or file; by default the one last used. Another one is chosen on the panel.

    Raises
    ------
    UnknownNameError
        If there is no such talk.
    TalkFileError
        If there is nothing in it that could be shown.
    """
    memory = Memory("rehearsal")
    if talk:
        return Rehearsal(open_talk(talk), memory)
    entry = last_used()
    try:
        return Rehearsal(open_talk(entry.path), memory)
    except KitError as fault:  # another talk is shown, and why
        panel = Rehearsal(open_talk(next(iter(bundled_talks()))), memory)
        told = f"“{entry.title}” cannot be rehearsed yet; write it in notebook 1. {fault}"
        panel.content["fault"] = {"text": told, "choices": []}
        return panel


class Rehearsal(Settling, Practising, Moves, Answering):
    """The panel of notebook 2.

    Parameters
    ----------
    opened : OpenTalk
        The talk to begin with.
    memory : Memory, optional
        Keeps how each talk was last set; without one nothing is kept.

    Attributes
    ----------
    opened : OpenTalk
        The talk and its file.
    setting : Setting
        The dish as it is set.
    verdicts : tuple of Verdict
        Everything that is said, checked against the dish as it is set.
    run : Run
        The run against the clock.
    """

    _esm = script("rehearse")
    _css = style("stage", "controls", "buttons", "rehearse")

    def __init__(self, opened: OpenTalk, memory: Memory | None = None) -> None:
        self._memory = memory
        self._take(opened)
        super().__init__(self._everything())

    def _take(self, opened: OpenTalk) -> None:
        """Take a talk as it was last set."""
        self.undoable, self._waiting = (), None
        self._show(opened, self._memory.of(opened.talk.name) if self._memory else {})
        self._begin_practice()

    def _show(self, opened: OpenTalk, kept: Mapping[str, Any]) -> None:
        """Take a talk as something kept it; as written, where that was not kept by us."""
        self.opened = opened
        self._plan, self._planned = planned(opened.talk)
        try:
            self._set(restored(kept, opened.talk))
        except (KitError, TypeError, ValueError, LookupError, AttributeError):
            self._set(restored({}, opened.talk))
        self.run = run_from(kept.get("run"), self._plan)
        self._rows = desk_content.Rows()
        self._check()

    def _check(self) -> None:
        self.verdicts = check_talk(self.opened.talk, self.setting.now)
        self._checked = self.setting

    # ---- what the page is told

    def _everything(self) -> dict[str, Any]:
        """Return everything that the page shows."""
        talk, listed = self.opened.talk, titles()
        key = self._key(self.opened)
        return {
            **self._follows(),
            "talks": list({**listed, key: listed.get(key, talk.title)}.items()),
            "talk": key,
            "ships": not self.opened.is_hers,
            "measures": list(desk_content.MEASURES.items()),
            "told": told_of_talk(talk),
            "no_sentences": "" if self.verdicts else NO_SENTENCES,
            "plan": self._planned,
            "card": self._card(),
            "note": None,
            "conflict": None,
            "fault": None,
        }

    def _follows(self) -> dict[str, Any]:
        """Return what follows the dish as it is set, and the clock."""
        setting = self.setting
        return {
            "frame": frame(setting.talk, setting.now),
            "rows": self._rows.of(setting),
            "servings": desk_content.servings(setting),
            "system": setting.system,
            "made": [made.words for made in setting.made],
            "said": said(setting.talk, self.verdicts),
            "counted": counted(self.verdicts),
            "safety": safety(setting.talk, setting.now),
            "run": self.run.as_json(),
            "timed": timed(self._plan, self.run),
        }

    def _answer(self, number: int, more: Mapping[str, Any]) -> None:
        if self._checked is not self.setting:
            self._check()
        parts = {**self._follows(), **more}
        if self._memory:
            self._memory.keep(self.opened.talk.name, {**self.setting.as_json(), "run": self.run.as_json()})
        some = {}
        for name, by in _LISTS.items():
            old, new = self.content[name], parts[name]
            if "plan" not in more and [row[by] for row in old] == [row[by] for row in new]:
                self.content[name] = parts.pop(name)
                some[f"some_{name}"] = [after for before, after in zip(old, new, strict=True) if before != after]
        self._reply(number, parts, **{name: rows for name, rows in some.items() if rows})

    @staticmethod
    def _key(opened: OpenTalk) -> str:
        """Return what the chooser calls a talk: its name, or the path of one that lies elsewhere."""
        return opened.entry.name if opened.entry.path in {entry.path for entry in talks()} else str(opened.entry.path)

    # ---- what she does

    def _do_talk(self, message: dict[str, Any]) -> dict[str, Any]:
        opened = open_talk(message["name"])
        if self._memory:
            use(message["name"])
        self._take(opened)
        return self._everything()

    def _do_look(self, _message: dict[str, Any]) -> dict[str, Any]:
        """Show the talk anew where its file was changed elsewhere, as in notebook 1, while she was there."""
        now = open_talk(self.opened.entry.path)
        if now.text == self.opened.text:
            return {"talks": self._everything()["talks"]}
        self.undoable = ()
        self._show(now, {**self.setting.as_json(), "run": self.run.as_json()})
        self._begin_practice()
        return {**self._everything(), "note": {"text": "The talk was changed elsewhere; this is how it is now."}}

    def _do_clock(self, message: dict[str, Any]) -> None:
        self.run = run_from(message.get("run"), self._plan)

    def _do_rest(self, _message: dict[str, Any]) -> None:
        """Answer that Python is there."""
