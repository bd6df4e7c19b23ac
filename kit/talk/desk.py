"""The talk on her desk: four texts, what she settled, and the fields of the whole, as one value."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field, replace
from functools import cached_property
from pathlib import Path
from typing import Any

from kit.errors import AmountError, KitError, UnknownNameError
from kit.food.cooking import WAYS
from kit.talk.desk_reading import DeskReading, read_desk
from kit.talk.faults import limited
from kit.talk.original import Original, Settled, original_of, settled_in
from kit.talk.plain_lines import one_line
from kit.talk.plain_parts import FIELDS, NUMBERS, PARTS, take_apart
from kit.talk.plan_text import write_plan
from kit.talk.questions_text import write_questions
from kit.talk.recipe_box import write_recipe
from kit.talk.script_text import write_script

ALL_FIELDS = (*FIELDS, "notes")


@dataclass(frozen=True, eq=False)
class Desk:
    """A talk in preparation. Every change returns a new one.

    Attributes
    ----------
    recipe, script, plan, questions : str
        The texts of the four boxes.
    fields : mapping of str to str or float
        What is said of the whole talk (`ALL_FIELDS`), as it stands in the file or its field.
    settled : tuple of Settled
        Foods chosen and grams corrected, by line.
    pins : mapping of str to mapping
        By sentence, which food or measure a word of it stands for, where she has chosen since the file was read.
    path : pathlib.Path, optional
        The file; None for a talk that was not saved yet.
    text : str
        The file as it was read or last saved; a save changes it in place.
    """

    recipe: str = ""
    script: str = ""
    plan: str = ""
    questions: str = ""
    fields: Mapping[str, Any] = field(default_factory=dict)
    settled: tuple[Settled, ...] = ()
    pins: Mapping[str, Mapping[str, str]] = field(default_factory=dict)
    path: Path | None = None
    text: str = ""

    @cached_property
    def reading(self) -> DeskReading:
        """How everything on the desk is read now: the talk, and an answer for each line."""
        return read_desk(
            self.recipe, self.script, self.plan, self.questions, self.fields, self.settled, self.pins, self.original
        )

    @property
    def original(self) -> Original:
        """The file as it lies there."""
        return original_of(self.text)

    def with_text(self, part: str, text: str) -> "Desk":
        """Return the desk with another text in a box: ``"recipe"``, ``"script"``, ``"plan"`` or ``"questions"``.

        What was settled about a line of the recipe stays with it, also where the line was changed or moved.
        """
        if part not in PARTS:
            raise KitError(f'no box "{part}"; it is one of {", ".join(PARTS)}')
        new = replace(self, **{part: text})  # type: ignore[arg-type]
        if part != "recipe":
            return new
        settled = new.reading.settled
        return new if settled == self.settled else new._with_settled(settled)  # which has been read already

    def with_pasted(self, text: str) -> "Desk":
        """Return the desk with a pasted text; its parts Script, Plan and Questions, if any, go into their boxes."""
        parts = take_apart(text)
        new = replace(self, fields={**self.fields, **parts.fields})
        for part in PARTS[1:]:
            if getattr(parts, part).strip():
                new = new.with_text(part, getattr(parts, part))
        return new.with_text("recipe", parts.recipe)

    def with_field(self, key: str, value: str | float | None) -> "Desk":
        """Return the desk with another value of a field; None or an empty text takes it away.

        Raises
        ------
        AmountError
            If a number is not within its limits.
        """
        if key not in ALL_FIELDS:
            raise KitError(f'no field "{key}"; it is one of {", ".join(ALL_FIELDS)}')
        empty = value is None or (isinstance(value, str) and not value.strip())
        if key in NUMBERS and not empty:
            value = _number(key, value)
        fields = {name: each for name, each in self.fields.items() if name != key}
        return replace(self, fields=fields if empty else {**fields, key: value})

    def choose(self, at: int, food: str, which: int = 0) -> "Desk":
        """Return the desk with another food for an ingredient line; an empty key lets the line speak again.

        Parameters
        ----------
        at : int
            Which ingredient line, as in `reading.ingredients`.
        food : str
            The key of the food.
        which : int
            Which food of a line that names several.
        """
        settled = self._settled_of(at)
        many = len(self.reading.ingredients[at].readings)
        foods = [*settled.foods, *[""] * many][:many]
        foods[which] = food
        grams = tuple(None if place == which else each for place, each in enumerate(settled.grams))
        return self._settle(at, replace(settled, foods=tuple(foods), grams=grams))

    def correct(self, at: int, grams: float | None, which: int = 0) -> "Desk":
        """Return the desk with the grams of a line as she weighed them; None lets the line speak again. [g]

        Raises
        ------
        AmountError
            If the grams make no sense.
        """
        wrong = "" if grams is None else limited("grams", grams)
        if wrong:
            raise AmountError(f'"{self.reading.ingredients[at].line}": {wrong}')
        settled = self._settled_of(at)
        many = len(self.reading.ingredients[at].readings)
        amounts: list[float | None] = [*settled.grams, *[None] * many][:many]
        amounts[which] = None if grams is None else float(grams)
        return self._settle(at, replace(settled, grams=tuple(amounts)))

    def cook(self, part: str, way: str) -> "Desk":
        """Return the desk with the way in which a part of the recipe is cooked; empty lets it be worked out.

        Parameters
        ----------
        part : str
            The part, as in `reading.ingredients`.
        way : str
            One of `kit.food.cooking.WAYS`.

        Raises
        ------
        UnknownNameError
            If there is no such way.
        """
        if way and way not in WAYS:
            raise UnknownNameError("way of cooking", way, WAYS)
        return self._settle_all(
            [
                replace(line.settled or Settled(line.line), treatment=way) if line.part == part else line.settled
                for line in self.reading.ingredients
            ]
        )

    def pin(self, at: int, word: str, means: str) -> "Desk":
        """Return the desk with a word of a sentence pinned to a food or measure; `at` as in `reading.talk.points`."""
        say = one_line(self.reading.talk.points[at].say)
        return replace(self, pins={**self.pins, say: {**self.pins.get(say, {}), word: means}})

    def _settled_of(self, at: int) -> Settled:
        line = self.reading.ingredients[at]
        return line.settled or Settled(line.line)

    def _settle(self, at: int, settled: Settled) -> "Desk":
        """Return the desk with what is settled about one line; lines of the same text are told apart by their order."""
        lines = self.reading.ingredients
        return self._settle_all([settled if place == at else line.settled for place, line in enumerate(lines)])

    def _settle_all(self, settled: Sequence[Settled | None]) -> "Desk":
        """Return the desk with what is settled about each of its lines, and about those that are not there now."""
        lines = self.reading.ingredients
        texts = {line.line for line in lines}
        others = [each for each in self.reading.settled if each.line not in texts]
        now = (each or Settled(line.line) for each, line in zip(settled, lines, strict=True))
        return self._with_settled((*now, *others))

    def _with_settled(self, settled: tuple[Settled, ...]) -> "Desk":
        return replace(self, settled=settled)


def _number(key: str, value: object) -> float:
    try:
        number: object = float(value) if isinstance(value, str) else value
    except ValueError:
        number = value
    wrong = limited(key, number)
    if wrong:
        raise AmountError(wrong)
    assert isinstance(number, int | float)
    return float(number)


def desk_from(text: str, path: Path | None = None) -> Desk:
    """Return the desk with a talk file on it.

    Raises
    ------
    TalkFileError
        If the text is no talk file at all.
    """
    original = original_of(text)
    table = original.table
    title, servings = table.get("title", ""), table.get("servings", 1)
    lines = [(entry["line"], entry.get("part", "")) for _, entry in original.ingredients]
    return Desk(
        recipe=write_recipe(
            title if isinstance(title, str) and title.strip() else (path.stem if path else "Untitled recipe"),
            servings if not limited("servings", servings) else 1,
            [(line, part if isinstance(part, str) else "") for line, part in lines],
        ),
        script=write_script([point for _, point in original.points]),
        plan=write_plan([step for _, step in original.steps]),
        questions=write_questions([question for _, question in original.questions]),
        fields={key: table[key] for key in ALL_FIELDS if key in table},
        settled=tuple(settled_in(entry) for _, entry in original.ingredients),
        path=path,
        text=text,
    )


def empty_desk(title: str = "", text: str = "") -> Desk:
    """Return the desk for a new talk, with its title or with a pasted text."""
    return Desk().with_pasted(text) if text.strip() else Desk(recipe=f"{one_line(title)}\nServes 4\n" if title else "")
