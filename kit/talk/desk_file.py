"""Saving what is on her desk: the file changed in place, nothing lost, and never over what another window wrote."""

from collections.abc import Mapping, Sequence
from dataclasses import replace
from pathlib import Path
from typing import Any

from kit import files
from kit.errors import KitError, TalkFileError
from kit.talk.desk import ALL_FIELDS, Desk, desk_from
from kit.talk.desk_reading import IngredientLine
from kit.talk.last_used import use
from kit.talk.library import bin_folder, find_talk, new_path
from kit.talk.likeness import paired
from kit.talk.names import free_name
from kit.talk.original import Original, Settled, settled_in
from kit.talk.plain_lines import one_line
from kit.talk.talk import PlanStep, Point, Pot, Question
from kit.talk.talk_file import talk_from_toml
from kit.talk.toml_edit import Edit, edited


class ConflictError(KitError):
    """A talk file that was changed elsewhere since it was read.

    Parameters
    ----------
    path : pathlib.Path
        The file.
    theirs : str or None
        What it holds now; None when it is gone.
    """

    def __init__(self, path: Path, theirs: str | None) -> None:
        self.path, self.theirs = path, theirs
        what = "is gone" if theirs is None else "was changed in another window"
        super().__init__(
            f"{path.name} {what} since it was opened here; keep this one, or the other one, or save this one beside it"
        )

    def __reduce__(self) -> tuple[type["ConflictError"], tuple[Path, str | None]]:
        """Keep both when the error is pickled."""
        return type(self), (self.path, self.theirs)


def open_desk(talk: str | Path) -> Desk:
    """Open a talk by name, title or path. One that ships with the kit, or a plain text, is saved as a new file of hers.

    Raises
    ------
    KitError
        If there is no such talk, or it cannot be read.
    """
    entry = find_talk(talk)
    text = files.read_text(entry.path)
    if entry.path.suffix != ".toml":
        return Desk().with_pasted(text)
    shipped = entry.path.parent == files.bundled("data/talks")
    desk = desk_from(text, entry.path)
    return replace(desk, path=None) if shipped else desk


def save(desk: Desk, path: Path | None = None, *, over: bool = False) -> Desk:
    """Save the desk, and return it with its file.

    Parameters
    ----------
    desk : Desk
        What is saved.
    path : pathlib.Path, optional
        Another file than that of the desk; without either it is a new one in her folder, named by the title.
    over : bool
        Whether the file may be replaced although it was changed elsewhere, or is another talk's. What it held is kept
        in the bin folder.

    Raises
    ------
    ConflictError
        If the file was changed since it was read; both are kept until she chooses.
    KitError
        If it cannot be written, or the file has mistakes that only a text editor can mend: they are told.
    """
    text = as_toml(desk)
    own = desk.path is not None and path in (None, desk.path)
    path = path or desk.path or new_path(desk.reading.talk.title)
    path = path if path.suffix == ".toml" else path.with_name(f"{path.name}.toml")

    def write(now: str | None) -> str:
        if over:
            into_bin(path, now)
        elif own and now != desk.text:
            raise ConflictError(path, now)
        elif not own and now is not None:
            raise KitError(f"{path.name} is another talk of yours; choose another name, or say that it may be replaced")
        return text

    files.changed(path, write)
    use(str(path))
    return replace(desk, path=path, text=text)


def save_beside(desk: Desk) -> Desk:
    """Save the desk as a new file of hers beside the one that was changed elsewhere."""
    return save(replace(desk, path=None), new_path(desk.reading.talk.title))


def into_bin(path: Path, text: str | None) -> None:
    """Keep what a file held in the bin folder."""
    if text is None:
        return
    try:
        taken = {other.stem.lower() for other in bin_folder().iterdir()}
    except OSError:
        taken = set()
    files.write_whole(bin_folder() / f"{free_name(path.stem, taken)}.toml", text)


def is_changed(desk: Desk) -> bool:
    """Whether the desk holds what its file does not."""
    try:
        return as_toml(desk) != desk.text
    except KitError:
        return True


def as_toml(desk: Desk) -> str:
    """Return the desk as the text of a talk file: the file it came from, changed in place.

    Raises
    ------
    TalkFileError
        If lines of the file are no TOML; they have to be mended first.
    KitError
        If the file could not say what the desk says.
    """
    original, reading = desk.original, desk.reading
    if original.broken:
        raise TalkFileError(desk.path.name if desk.path else "talk file", original.broken)
    entries = {
        "ingredient": _shown(_ingredient_edits(reading.ingredients, original), original, "ingredient"),
        "point": _shown(_point_edits(reading.talk.points, original), original, "point"),
        "step": _shown(_step_edits(reading.talk.steps, original), original, "step"),
        "question": _shown(_question_edits(reading.talk.questions, original), original, "question"),
    }
    text = edited(desk.text, _top(desk, original), entries)
    _check(text, desk)
    return text


def _check(text: str, desk: Desk) -> None:
    """Make sure that a text reads back as what the desk says."""
    talk, wanted = talk_from_toml(text, Path("talk.toml")), desk.reading.talk
    same = (
        talk.recipe.servings == wanted.recipe.servings
        and [(one_line(each.line), each.key) for each in talk.readings]
        == [(each.line, each.key) for each in wanted.readings]
        and [one_line(point.say) for point in talk.points] == [one_line(point.say) for point in wanted.points]
        and [one_line(step.title) for step in talk.steps][-len(wanted.steps) or 1 :]
        == [one_line(step.title) for step in wanted.steps]
        and [one_line(each.asks) for each in talk.questions] == [one_line(each.asks) for each in wanted.questions]
    )
    if not same:
        raise KitError("the talk could not be written so that it is read back the same; nothing was saved")


def _top(desk: Desk, original: Original) -> dict[str, Any]:
    """Return the keys of the whole talk that have changed."""
    recipe, table = desk.reading.talk.recipe, original.table
    changed: dict[str, Any] = {}
    if one_line(str(table.get("title", ""))) != one_line(recipe.title):
        changed["title"] = recipe.title
    if table.get("servings", 1) != recipe.servings and not (recipe.servings == 1 and "servings" not in table):
        changed["servings"] = recipe.servings
    for key in ALL_FIELDS:
        if desk.fields.get(key) != table.get(key):
            changed[key] = desk.fields.get(key)
    if "serving_is" not in desk.fields and "serving_is" not in table and recipe.serving_is != "serving":
        changed["serving_is"] = recipe.serving_is
    return changed


def _shown(edits: Sequence[Edit], original: Original, kind: str) -> list[Edit]:
    """Return the edits with those entries in their places that the boxes do not show, which stay as they are."""
    shown = {at for at, _ in getattr(original, f"{kind}s")}
    made = list(edits)
    for hidden in (at for at in range(original.count(kind)) if at not in shown):
        before = [place for place, edit in enumerate(made) if edit.old is not None and edit.old < hidden]
        made.insert(before[-1] + 1 if before else 0, Edit(hidden, {}))
    return made


def _ingredient_edits(lines: Sequence[IngredientLine], original: Original) -> list[Edit]:
    by_place = dict(original.ingredients)
    edits = []
    for line in lines:
        settled = line.settled or Settled(line.line)
        if line.old is None:
            edits.append(Edit(None, {"line": line.line, **settled.values, "part": line.part or None}))
            continue
        entry = by_place[line.old]
        before = settled_in(entry)
        values: dict[str, Any] = {} if one_line(entry["line"]) == line.line else {"line": line.line}
        values |= (
            {}
            if tuple(filter(None, before.foods)) == tuple(filter(None, settled.foods)) and before.foods == settled.foods
            else {"food": settled.values["food"]}
        )
        values |= {} if before.grams == settled.grams else {"grams": settled.values["grams"]}
        values |= {} if before.treatment == settled.treatment else {"treatment": settled.values["treatment"]}
        if _part(str(entry.get("part", ""))) != line.part:
            values["part"] = line.part or None
        edits.append(Edit(line.old, values))
    return edits


def _part(part: str) -> str:
    return one_line(part).lower().removeprefix("for ").removeprefix("the ")


def _differences(old: Mapping[str, Any], new: Mapping[str, Any]) -> dict[str, Any]:
    """Return the values that differ, None for one that is empty now; a text with other spaces is the same text."""
    return {
        key: value or None
        for key, value in new.items()
        if (one_line(value) != one_line(old[key]) if isinstance(value, str) else value != old[key])
    }


def _edit(at: int | None, old: Mapping[str, Any] | None, new: Mapping[str, Any]) -> Edit:
    if old is None:
        return Edit(None, {key: value for key, value in new.items() if value})
    return Edit(at, _differences(old, new))


def _point_edits(points: Sequence[Point], original: Original) -> list[Edit]:
    def values(point: Point) -> dict[str, Any]:
        return {"part": point.part, "say": point.say, "source": point.source, "pins": dict(point.pins)}

    return [
        _edit(at, None if old is None else values(old), values(new))
        for at, old, new in paired(original.points, points, lambda point: point.say)
    ]


def _step_edits(steps: Sequence[PlanStep], original: Original) -> list[Edit]:
    def values(step: PlanStep) -> dict[str, Any]:
        return {
            "part": step.part,
            "title": step.title,
            "say": step.say,
            "say_minutes": step.say_minutes,
            "hands_minutes": step.hands_minutes,
            "pots": [_pot(pot) for pot in step.pots],
            "needs": [one_line(name) for name in step.needs],
        }

    return [
        _edit(at, None if old is None else values(old), values(new))
        for at, old, new in paired(original.steps, steps, lambda step: step.title)
    ]


def _pot(pot: Pot) -> dict[str, Any]:
    values = {
        "name": one_line(pot.name),
        "minutes": pot.minutes,
        "before": pot.before,
        "oven": pot.oven,
        "at_start": pot.at_start,
    }
    return {key: value for key, value in values.items() if value}


def _question_edits(questions: Sequence[Question], original: Original) -> list[Edit]:
    def values(question: Question) -> dict[str, Any]:
        return {"asks": question.asks, "try": question.try_, "answer": question.answer}

    return [
        _edit(at, None if old is None else values(old), values(new))
        for at, old, new in paired(original.questions, questions, lambda question: question.asks)
    ]
