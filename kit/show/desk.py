"""Her window: one widget with the controls, the script, the changes, the clock and what the audience sees.

The page draws; here every message of hers makes a new `Setting`, and one message goes back with what changed. Of the
scenes only the one that is shown is worked out at once; the others follow when the page has a quiet moment.
"""

from collections.abc import Callable, Mapping
from functools import partial
from typing import Any

from kit.meal.nutrition import Nutrition, nutrition
from kit.show.answering import Answering
from kit.show.desk_told import FIRST, NUMBERS_OF, Told
from kit.show.look import script, style
from kit.show.moves import Moves
from kit.show.scenes import MOST_NUMBERS, NAMES
from kit.show.setting import restored
from kit.show.side_by_side import asks_to_compare, side_by_side
from kit.show.stage import difference
from kit.show.views import READ_ALOUD, SOURCES_OF
from kit.speech.points import check_points
from kit.talk.last_used import use
from kit.talk.remembering import Memory
from kit.talk.talk import Talk


class Desk(Told, Moves, Answering):
    """Her window, and the audience's that it opens.

    Parameters
    ----------
    talk : Talk
        The talk to begin with.
    talks : mapping of str to str, optional
        Other talks to choose from: titles by name.
    read : callable, optional
        Reads a talk by its name.
    memory : Memory, optional
        Keeps how each talk was last set; without one nothing is kept.

    Attributes
    ----------
    setting : Setting
        What is set.
    shown : str
        The scene that the audience sees.
    verdicts : tuple of Verdict
        The sentences of the script, checked against the dish as it is set.
    """

    _esm = script("desk")
    _css = style("scene", "controls", "buttons", "desk")

    def __init__(
        self,
        talk: Talk,
        talks: Mapping[str, str] | None = None,
        read: Callable[[str], Talk] | None = None,
        memory: Memory | None = None,
    ) -> None:
        self._talks, self._read = {**(talks or {}), talk.name: talk.title}, read
        self._memory = memory
        self._take(talk)
        super().__init__(self._content())

    def _tell(self, number: int | None, **more: Any) -> None:
        """Send what differs from what the page has; `number` is the message of hers that this answers, if it does."""
        before, after = self.content, {**self._parts(), **more}
        changes: dict[str, Any] = {}
        for name, value in after.items():
            if name not in ("scenes", "rows") and before.get(name) != value:
                changes[name] = value
        same = len(before["rows"]) == len(after["rows"]) and "talk" not in changes
        rows = [new for old, new in zip(before["rows"], after["rows"], strict=False) if old != new]
        if rows or not same:
            changes["rows" if not same else "some_rows"] = after["rows"] if not same else rows
        changes |= self._changed_scene(before["scenes"], after["scenes"])
        if self._memory and "kept" in changes:
            self._memory.keep(self.setting.talk.name, after["kept"])
        # Altered in place, which sends nothing: a page that opens later gets it whole.
        self.content.update({name: value for name, value in after.items() if name != "others"})
        self.send({"changes": changes} if number is None else {"done": number, "changes": changes})

    def _changed_scene(self, before: Mapping[str, Any], after: Mapping[str, Any]) -> dict[str, Any]:
        """Return the scene that is shown, or of its chart what changed; the page forgets the other scenes."""
        name = self.shown
        old, new = before.get(name), after[name]
        if old is None or "figure" not in new or "figure" not in old:
            return {} if old == new else {"scene": new, "of": name}
        made = difference(old["figure"], new["figure"])
        return {"figure": made, "of": name} if made else {}

    # ---- what she does

    def _answer(self, number: int, more: Mapping[str, Any]) -> None:
        if self._checked is self.setting:
            self._tell(number, **more)
            return
        # The picture goes first, its sentences right behind it: to check them takes longer than all the rest.
        self._tell(None, **more)
        self.verdicts, self._checked = check_points(self.setting.talk, self.setting.now), self.setting
        self._reply(number, self._script())

    def _do_try(self, message: dict[str, Any]) -> None:
        if asks_to_compare(message["line"]):
            self.compared = side_by_side(message["line"], self.setting.now, self._dishes())
            self.shown = "compare"
            return
        words = " ".join(message["line"].split())
        made = [what for what in self.setting.made if not what.control and what.words == words]
        if not message.get("asks") or not made:  # a prepared question that is asked again is only shown again
            self._set(self.setting.tried(message["line"]))
            made = [self.setting.made[-1]]
        self.asked = (message.get("asks") or message["line"], message.get("answer", ""))
        self.shown, self._asked_of = "change", made[-1]

    def _dishes(self) -> dict[str, Callable[[], Nutrition]]:
        """Return how to get the numbers of each talk's dish, by its title in lower case."""
        read = self._read
        if read is None:
            return {}

        def numbers_of(name: str) -> Nutrition:
            return nutrition(read(name).recipe)

        return {title.lower(): partial(numbers_of, name) for name, title in self._talks.items()}

    def _do_say(self, message: dict[str, Any]) -> None:
        self.asked = (message["asks"], message.get("answer", ""))
        self.shown, self._asked_of = "change", None

    def _do_undo(self, message: dict[str, Any]) -> None:
        super()._do_undo(message)
        if self.shown == "change" and not self.setting.made:
            self.shown = FIRST

    def _do_as_written(self, message: dict[str, Any]) -> None:
        super()._do_as_written(message)
        if self.shown == "change":
            self.shown = FIRST

    def _do_show(self, message: dict[str, Any]) -> None:
        if message["name"] in NAMES:
            self.shown = message["name"]

    def _do_number(self, message: dict[str, Any]) -> None:
        """Show a number, in the place of the one shown longest where there are enough; or show it no more."""
        name, others = message["name"], [other for other in self.numbers if other != message["name"]]
        chosen = [*others[1 - MOST_NUMBERS :], name] if message["shown"] and name in NUMBERS_OF else others
        self.numbers, self.shown = tuple(chosen) or self.numbers, "numbers"

    def _do_source(self, message: dict[str, Any]) -> None:
        if message["name"] in SOURCES_OF:
            self.source_of, self.shown = message["name"], "sources"

    def _do_talk(self, message: dict[str, Any]) -> dict[str, Any]:
        if self._read is None or message["name"] not in self._talks:
            return {}
        self._take(self._read(message["name"]))
        if self._memory:
            use(message["name"])
        return self._content()

    def _do_restore(self, message: dict[str, Any]) -> dict[str, Any]:
        """Bring back what a page kept, after a reload with another kernel."""
        kept = message["kept"]
        talk = self.setting.talk
        if kept.get("talk") != talk.name:
            if self._read is None or kept.get("talk") not in self._talks:
                return {}
            talk = self._read(kept["talk"])
        self._bring_back(talk, kept)
        return self._content()

    def _take(self, talk: Talk) -> None:
        """Take a talk as it was last set."""
        self._bring_back(talk, self._memory.of(talk.name) if self._memory else {})

    def _bring_back(self, talk: Talk, kept: Mapping[str, Any]) -> None:
        """Take a talk as something kept it; as written, where that was not kept by us."""
        try:
            self._set_as(talk, kept)
        except (TypeError, ValueError, LookupError, AttributeError):
            self._set_as(talk, {})

    def _set_as(self, talk: Talk, kept: Mapping[str, Any]) -> None:
        self._begin(restored(kept, talk))
        self.numbers = (
            tuple(name for name in kept.get("numbers", ()) if name in NUMBERS_OF)[:MOST_NUMBERS] or READ_ALOUD
        )
        source_of, shown = str(kept.get("source_of")), str(kept.get("shown"))
        self.source_of = source_of if source_of in SOURCES_OF else "protein"
        self.shown = shown if shown in NAMES else FIRST
        asked = kept.get("asked") or ("", "")
        self.asked = (str(asked[0]), str(asked[1]))
        what_ifs = [made for made in self.setting.made if not made.control]
        self._asked_of = what_ifs[-1] if what_ifs else None

    def _do_rest(self, _message: dict[str, Any]) -> dict[str, Any]:
        """Work out the scenes that are not shown, so that the page has them at hand."""
        return {"others": {name: self._scene(name) for name in NAMES if name != self.shown}}
