"""How everything on her desk is read: the talk it makes, and an answer for each line of each box."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace
from functools import lru_cache
from typing import Any

from kit.errors import KitError
from kit.food.composition import Foods
from kit.lines.reader import read
from kit.lines.reading import Reading
from kit.lines.recipe_text import WrittenRecipe, read_recipe
from kit.meal.recipe import Ingredient, Recipe
from kit.talk.faults import Faults
from kit.talk.likeness import foods_alike, matched, paired
from kit.talk.original import Original, Settled
from kit.talk.plain_lines import PlainLine, one_line
from kit.talk.plain_talk import checked_fields, of_the_talk
from kit.talk.plan_text import read_plan
from kit.talk.pots import told_pot_faults
from kit.talk.questions_text import read_questions
from kit.talk.recipe_entries import read_ingredients
from kit.talk.script_text import read_script
from kit.talk.talk import Point, Talk
from kit.texts import number, span

_MOST_KEPT = 2_000
_Read = tuple[tuple[Ingredient, ...], tuple[Reading, ...]]
MOST_DORMANT = 200  # lines that are not there now, and whose corrections are kept in case they come back


@dataclass(frozen=True, eq=False)
class IngredientLine:
    """One ingredient line of the recipe.

    Attributes
    ----------
    row : int
        Which line of the box it is, from 0.
    line, part : str
        What it says, and the part of the recipe it stands in.
    readings : tuple of Reading
        How it is read, one for each food that it names.
    ingredients : tuple of Ingredient
        What it brings to the recipe; nothing while it is open.
    settled : Settled or None
        What she has settled about it.
    old : int or None
        Which entry of the file it is.
    """

    row: int
    line: str
    part: str
    readings: tuple[Reading, ...]
    ingredients: tuple[Ingredient, ...] = ()
    settled: Settled | None = None
    old: int | None = None

    @property
    def answer(self) -> PlainLine:
        """What the box answers beside the line."""
        problems = [reading.problem for reading in self.readings if reading.problem]
        said = [
            f"{reading.food_name}, {number(reading.grams, 1)} g ({span(reading.low, reading.high)})"
            for reading in self.readings
            if reading.grams is not None and reading.low is not None and reading.high is not None
        ]
        choices = tuple(match.food for reading in self.readings for match in reading.choices)
        return PlainLine(self.row, "; ".join(said), "; ".join(problems), choices)


@dataclass(frozen=True, eq=False)
class DeskReading:
    """How everything on the desk is read.

    Attributes
    ----------
    talk : Talk
        The talk it makes; lines that are still open are in its recipe's `open_lines`, faults in its `faults`.
    ingredients : tuple of IngredientLine
        The ingredient lines in their order.
    recipe, script, plan, questions : tuple of PlainLine
        An answer for each line of a box that has one.
    settled : tuple of Settled
        What is settled, by the lines as they are now, and of lines that are gone.
    """

    talk: Talk
    ingredients: tuple[IngredientLine, ...]
    recipe: tuple[PlainLine, ...]
    script: tuple[PlainLine, ...]
    plan: tuple[PlainLine, ...]
    questions: tuple[PlainLine, ...]
    settled: tuple[Settled, ...]


def read_desk(
    recipe: str,
    script: str,
    plan: str,
    questions: str,
    fields: Mapping[str, Any],
    settled: Sequence[Settled],
    pins: Mapping[str, Mapping[str, str]],
    original: Original,
) -> DeskReading:
    """Read the four texts with what was settled; nothing here is an error, all of it is told beside its line."""
    faults = Faults(original.broken)
    facts = checked_fields(fields, faults)
    written = _written(recipe, settled, original, facts["measures"], faults)
    lines = _ingredient_lines(written, settled, original, facts["measures"], faults)
    made = _recipe(written, lines, facts, original)
    points, script_lines = read_script(script, [point for _, point in original.points])
    steps, plan_lines = read_plan(plan)
    asked, question_lines = read_questions(questions, made)
    points = tuple(
        _with_unseen(old, point, pins) for _, old, point in paired(original.points, points, lambda point: point.say)
    )
    steps = tuple(
        step if old is None else replace(step, private=old.private)
        for _, old, step in paired(original.steps, steps, lambda step: step.title)
    )
    asked = tuple(
        question if old is None else replace(question, private=old.private)
        for _, old, question in paired(original.questions, asked, lambda question: question.asks)
    )
    talk = Talk(
        name="talk",
        recipe=made,
        readings=tuple(reading for line in lines for reading in line.readings),
        points=points,
        steps=steps,
        questions=asked,
        **of_the_talk(facts),
        span=written.span,
        passed_over=written.passed_over,
        faults=(*faults, *told_pot_faults(steps)),
    )
    texts = {line.line for line in lines}
    dormant = [each for each in settled if each.line not in texts and each.says_something][-MOST_DORMANT:]
    now = [line.settled for line in lines if line.settled is not None]
    carried = {each.line for each in now}
    return DeskReading(
        talk,
        lines,
        tuple(line.answer for line in lines),
        script_lines,
        plan_lines,
        question_lines,
        (*now, *(each for each in dormant if each.line not in carried)),
    )


def _with_unseen(old: Point | None, point: Point, pins: Mapping[str, Mapping[str, str]]) -> Point:
    """Return a point with what its line does not show: its pins, whether it is private, a source with brackets."""
    pinned = {**(old.pins if old else {}), **pins.get(one_line(point.say), {})}
    if old is None:
        return replace(point, pins=pinned)
    unseen = not point.source and any(sign in old.source for sign in "()[]")
    source = old.source if unseen else point.source
    return replace(point, source=source, pins=pinned, private=old.private)


def _written(text: str, settled: Sequence[Settled], original: Original, system: str, faults: Faults) -> WrittenRecipe:
    listed = {each.line for each in settled} | {one_line(entry["line"]) for _, entry in original.ingredients}
    try:
        return _read_recipe(text, original.known, system, frozenset(listed))
    except KitError as fault:
        faults.append(f"recipe: {fault}")
        return WrittenRecipe("", None, "", ())


@lru_cache(maxsize=4)
def _read_recipe(text: str, known: Foods, system: str, listed: frozenset[str]) -> WrittenRecipe:
    """Read a recipe, once while she types elsewhere."""
    return read_recipe(text, table=known, system=system, listed=listed)


def _ingredient_lines(
    written: WrittenRecipe, settled: Sequence[Settled], original: Original, system: str, faults: Faults
) -> tuple[IngredientLine, ...]:
    texts = [one_line(line.text) for line in written.lines]
    entries = [entry for _, entry in original.ingredients]
    from_file = matched([entry["line"] for entry in entries], texts, foods_alike)
    from_before = matched([each.line for each in settled], texts, foods_alike)
    found = []
    for line, text, old, before in zip(written.lines, texts, from_file, from_before, strict=True):
        kept = None if before is None else carried(settled[before], text, original.known, system)
        facts = {} if old is None else {key: entries[old][key] for key in ("swaps", "slider") if key in entries[old]}
        stated = {} if kept is None else {key: value for key, value in kept.values.items() if value is not None}
        entry = {**facts, **stated, "line": text, "part": line.part}
        made, readings = _read_line(entry, original.known, system, faults)
        number_in_file = None if old is None else original.ingredients[old][0]
        found.append(IngredientLine(line.row, text, line.part, readings, made, kept, number_in_file))
    return tuple(found)


_KEPT: dict[tuple[object, ...], tuple[Foods, _Read, tuple[str, ...]]] = {}


def _read_line(entry: Mapping[str, Any], known: Foods, system: str, faults: Faults) -> _Read:
    """Return how an ingredient line is read, from what was kept where she has not touched it since."""
    key = (repr(sorted(entry.items())), id(known), system)
    if key not in _KEPT:
        if len(_KEPT) > _MOST_KEPT:
            _KEPT.clear()
        own = Faults()
        made = read_ingredients([(f'"{entry["line"][:50]}"', entry)], known, system, own)
        _KEPT[key] = known, made, tuple(own)  # the foods are held, so that their id stays theirs
    _, made, told = _KEPT[key]
    faults.extend(told)
    return made


def carried(settled: Settled, line: str, known: Foods, system: str) -> Settled:
    """Return what was settled about a line, for the line as it is now.

    A food stays while the words still mean what they meant. Weighed grams stay with the amount: another count of the
    same measure weighs in proportion, and any other amount is not what was weighed.
    """
    if settled.line == line or not settled.says_something:
        return replace(settled, line=line)
    before, now = (read(text, table=known, system=system) for text in (settled.line, line))
    if before.food is not None and now.food is not None and before.key != now.key:
        return Settled(line, treatment=settled.treatment)
    grams = settled.grams
    if (before.count, before.noun, before.cut) != (now.count, now.noun, now.cut):
        same = before.noun == now.noun and before.count > 0 and now.count > 0
        grams = tuple(None if each is None or not same else each * now.count / before.count for each in grams)
    return replace(settled, line=line, grams=grams)


def _recipe(
    written: WrittenRecipe, lines: Sequence[IngredientLine], facts: Mapping[str, Any], original: Original
) -> Recipe:
    """Return the recipe of the lines that can be read."""
    title, servings = original.table.get("title"), Faults().number("top", original.table, "servings")
    return Recipe(
        title=written.title or (title if isinstance(title, str) and title.strip() else "Untitled recipe"),
        ingredients=tuple(ingredient for line in lines for ingredient in line.ingredients),
        servings=written.servings or servings or 1.0,
        serving_is=facts["serving_is"] or written.serving_is or "serving",
        finished_grams=facts["finished_grams"],
        dish_is=facts["dish_is"],
        open_lines=tuple(reading for line in lines for reading in line.readings if reading.is_open),
    )
