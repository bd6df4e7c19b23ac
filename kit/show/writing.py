"""Her writing desk, the screen of notebook 1: one widget on which a talk is written, settled, saved and looked at.

The page draws and holds what she types; here every message of hers makes a new `kit.talk.desk.Desk`, and what changed
goes back. The box she types in is answered at once; the rest follows when she pauses, and with it a draft is kept.
"""

import threading
import time
from collections.abc import Mapping
from dataclasses import asdict
from pathlib import Path
from typing import Any

from kit.errors import AmountError, KitError
from kit.food.finding import find
from kit.show import answers, writing_told
from kit.show.answering import Answering
from kit.show.look import script, style
from kit.show.verdicts_kept import VerdictsKept
from kit.show.writing_labels import Labels
from kit.show.writing_talks import Talks
from kit.speech.verdict import ANSWER, STEP
from kit.talk.desk import Desk
from kit.talk.drafts import keep_draft
from kit.talk.faults import LIMITS
from kit.talk.plain_parts import PARTS, take_apart
from kit.talk.plan_rows import plan_rows, with_cell, with_step, without_step

_LONGEST_WITHOUT_DRAFT = 5.0  # while she types without a pause [s]
_UNASKED = 0.6  # after which a draft is kept though the page did not ask, as when it is closed while she types [s]
_LINKS = (("2_rehearse.ipynb", "Rehearse it"), ("3_on_screen.ipynb", "Show it on screen"))


class WritingDesk(Talks, Labels, Answering):
    """The desk as a widget.

    Parameters
    ----------
    desk : Desk
        What lies on it.
    opened : str
        The path it was opened from; of a new talk any text that tells it from others.

    Attributes
    ----------
    desk : Desk
        What lies on it now.
    content : dict
        What the page shows.
    """

    _esm = script("writing")
    _css = style("stage", "buttons", "answered", "writing")

    def __init__(self, desk: Desk, opened: str = "") -> None:
        self.desk, self.opened = desk, opened or f"new {time.time_ns()}"
        self._verdicts, self._drafted = VerdictsKept(), time.monotonic()
        self._soon: threading.Timer | None = None
        self._begin_talks()
        content = {**self._texts(), **self._all(), **self._labels(), "links": [list(link) for link in _LINKS]}
        super().__init__(content)

    # ---- what the page is told

    def _texts(self) -> dict[str, Any]:
        """Return what is written, which the page takes over only when another talk is opened or a text taken apart."""
        return {"texts": {part: getattr(self.desk, part) for part in PARTS}, "opened": self.opened}

    def _all(self) -> dict[str, Any]:
        """Return all that follows from what lies on the desk."""
        return {**self._dish(), **self._said(), **self._head()}

    def _dish(self) -> dict[str, Any]:
        """Return what follows from the recipe and the fields."""
        numbers = writing_told.nutrition_of(self.desk)
        return {
            **self._lines(),
            "fields": writing_told.fields(self.desk, numbers),
            "serving": writing_told.serving(self.desk, numbers),
            "charts": writing_told.charts(numbers),
        }

    def _lines(self) -> dict[str, Any]:
        """Return how the lines of the recipe are read."""
        return {
            "recipe": writing_told.recipe_answers(self.desk),
            "settle": writing_told.settle_groups(self.desk),
            "faults": list(self.desk.reading.talk.faults),
        }

    def _said(self) -> dict[str, Any]:
        """Return the answers beside all that is said."""
        reading = self.desk.reading
        verdicts = self._verdicts.of(self.desk, writing_told.nutrition_of(self.desk))
        return {
            "plan_rows": [asdict(row) for row in plan_rows(self.desk.plan)],
            "script": answers.verdict_answers(reading.script, verdicts)
            if verdicts
            else answers.line_answers(reading.script),
            "plan": answers.said_answers(reading.plan, verdicts, STEP),
            "questions": answers.said_answers(reading.questions, verdicts, ANSWER),
        }

    # ---- what she does

    def _went_well(self, _do: str) -> dict[str, Any]:
        return {}

    def _faulted(self, message: dict[str, Any], fault: KitError) -> dict[str, Any]:
        return {"told": {"by": str(message.get("by", "")), "text": str(fault), "wrong": True}}

    def _answer(self, number: int, more: Mapping[str, Any]) -> None:
        self._reply(number, more)

    def _do_text(self, message: dict[str, Any]) -> dict[str, Any]:
        """Take over what she typed into a box, and answer that box; the rest follows."""
        part, text = str(message["at"]), str(message["text"])
        if part == "recipe" and message.get("pasted") and _has_parts(text):
            self.desk = _with_parts(self.desk, text)
            return {**self._texts(), **self._all()}
        self.desk = self.desk.with_text(part, text)
        # What the page has typed it has; told again only to a page that opens later.
        self.content["texts"] = {**self.content["texts"], part: text}
        if time.monotonic() - self._drafted > _LONGEST_WITHOUT_DRAFT:
            self._keep()
        else:
            self._keep_soon()
        if part == "recipe":
            return {**self._lines(), "told": None}
        said = self._said()
        return {name: said[name] for name in (part, *(("plan_rows",) if part == "plan" else ()))} | {"told": None}

    def _do_rest(self, _message: dict[str, Any]) -> dict[str, Any]:
        """Tell everything, and keep a draft, when she pauses."""
        self._keep()
        return self._all()

    def _keep_soon(self) -> None:
        if self._soon is not None:
            self._soon.cancel()
        self._soon = threading.Timer(_UNASKED, self._keep)
        self._soon.daemon = True
        self._soon.start()

    def _keep(self) -> None:
        if self._soon is not None:
            self._soon.cancel()
        self._drafted = time.monotonic()
        if not self._holds_text():
            return
        try:
            keep_draft(self.desk, self._draft_name)
        except KitError as fault:
            self._no_draft = str(fault)
        else:
            self._no_draft = ""

    def _do_choose(self, message: dict[str, Any]) -> dict[str, Any]:
        self.desk = self.desk.choose(int(message["at"]), str(message["value"]), int(message["which"]))
        return {**self._dish(), "told": None}

    def _do_grams(self, message: dict[str, Any]) -> dict[str, Any]:
        said = str(message["value"]).strip().removesuffix("g").strip().replace(",", ".")
        try:
            grams = float(said) if said else None
        except ValueError:
            raise KitError(f'"{said[:40]}" is no weight; write grams as a number, such as 250') from None
        self.desk = self.desk.correct(int(message["at"]), grams, int(message["which"]))
        return {**self._dish(), "told": None}

    def _do_cook(self, message: dict[str, Any]) -> dict[str, Any]:
        self.desk = self.desk.cook(str(message["part"]), str(message["value"]))
        return {**self._dish(), "told": None}

    def _do_find(self, message: dict[str, Any]) -> dict[str, Any]:
        found = find(str(message["words"]), 8) if str(message["words"]).strip() else ()
        return {"found": {"row": message["row"], "foods": [[match.food, match.name] for match in found]}}

    def _do_field(self, message: dict[str, Any]) -> dict[str, Any]:
        key, said = str(message["at"]), str(message["value"])
        try:
            self.desk = self.desk.with_field(key, said.replace(",", ".") if _is_decimal(said) else said)
        except AmountError as fault:  # whose words name the key of the file, where she sees the label of the field
            raise KitError(f'"{said[:40]}" cannot be right; {LIMITS[key].words}') from fault
        return {**self._dish(), "told": None}

    def _do_plan_cell(self, message: dict[str, Any]) -> dict[str, Any]:
        place, cell, value = int(message["place"]), str(message["cell"]), str(message["value"])
        return self._with_plan(with_cell(self.desk.plan, place, cell, value))

    def _do_plan_add(self, _message: dict[str, Any]) -> dict[str, Any]:
        return self._with_plan(with_step(self.desk.plan))

    def _do_plan_remove(self, message: dict[str, Any]) -> dict[str, Any]:
        return self._with_plan(without_step(self.desk.plan, int(message["place"])))

    def _with_plan(self, text: str) -> dict[str, Any]:
        self.desk = self.desk.with_text("plan", text)
        return {**self._texts(), **self._said(), "told": None}

    def _do_pin(self, message: dict[str, Any]) -> dict[str, Any]:
        self.desk = self.desk.pin(int(message["at"]), str(message["word"]), str(message["value"]))
        return self._said()


def _is_decimal(value: str) -> bool:
    return value.replace(",", "", 1).strip().isdigit()


def _has_parts(text: str) -> bool:
    """Whether a pasted text is more than a recipe: a script, a plan, questions, or fields of the whole talk."""
    parts = take_apart(text)
    return bool(parts.script.strip() or parts.plan.strip() or parts.questions.strip() or parts.fields)


def _with_parts(desk: Desk, text: str) -> Desk:
    """Return the desk with a pasted text taken apart; what stands in the other boxes already stays above it."""
    parts = take_apart(text)
    new = desk.with_pasted(text)
    for part in PARTS[1:]:
        before, pasted = getattr(desk, part).strip("\n"), getattr(parts, part)
        if before.strip() and pasted.strip() and before.strip() != pasted.strip():
            new = new.with_text(part, f"{before}\n\n{pasted}")
    return new


def prepare(talk: str | Path | None = None) -> WritingDesk:
    """Return the writing desk of notebook 1.

    Parameters
    ----------
    talk : str or pathlib.Path, optional
        The talk to begin with, by name, title or path; the one last used by default.

    Raises
    ------
    KitError
        If there is no such talk, or it cannot be read.
    """
    return WritingDesk(*Talks.first(talk))
