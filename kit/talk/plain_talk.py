"""A talk read from one plain text, and written as one."""

from collections.abc import Mapping
from pathlib import Path
from typing import Any

from kit.errors import KitError, TalkFileError
from kit.food.composition import Foods
from kit.food.measures import SYSTEMS
from kit.lines.parsed_line import take_apart as take_apart_line
from kit.lines.recipe_text import WrittenRecipe, read_recipe
from kit.meal.recipe import KINDS_OF_DISH, Recipe, ingredient_from
from kit.talk.faults import Faults
from kit.talk.plain_lines import PlainLine, one_line
from kit.talk.plain_parts import NUMBERS, PlainTalk, put_together, take_apart
from kit.talk.plan_text import read_plan, write_plan
from kit.talk.pots import told_pot_faults
from kit.talk.questions_text import read_questions, write_questions
from kit.talk.recipe_box import write_recipe
from kit.talk.script_text import read_script, write_script
from kit.talk.talk import Talk
from kit.talk.talk_file import RULES


def talk_from_plain(text: str, path: Path, table: Foods | None = None) -> Talk:
    """Make a talk from a plain text: the recipe, and if there are any, the parts Script, Plan and Questions.

    Parameters
    ----------
    text : str
        The text.
    path : pathlib.Path
        The file; it names the talk, and titles it where the text has no title.
    table : Foods, optional
        The foods to choose from; all at hand by default.

    Raises
    ------
    TalkFileError
        If there is no ingredient line.
    """
    parts = take_apart(text)
    faults = Faults()
    fields = checked_fields(parts.fields, faults)
    try:
        written = read_recipe(parts.recipe, table=table, system=fields["measures"])
    except KitError as fault:
        raise TalkFileError(path.name, str(fault).splitlines()) from None
    if not written.readings:
        none = 'no ingredient lines; write a title, "Serves 4", and one ingredient a line'
        raise TalkFileError(path.name, [*faults, none])
    recipe = recipe_of(written, fields, path.stem.replace("_", " ").replace("-", " "))
    points, _ = read_script(parts.script)
    steps, planned = read_plan(parts.plan)
    questions, asked = read_questions(parts.questions, recipe)
    told = [*_told("plan", planned, parts.plan), *_told("questions", asked, parts.questions)]
    return Talk(
        name=path.stem,
        recipe=recipe,
        readings=written.readings,
        points=points,
        steps=steps,
        questions=questions,
        **of_the_talk(fields),
        path=path,
        span=written.span,
        passed_over=written.passed_over,
        faults=(*faults, *told, *told_pot_faults(steps)),
    )


def checked_fields(stated: Mapping[str, Any], faults: Faults) -> dict[str, Any]:
    """Return what a talk says of the whole, each within its limits; what is wrong is noted and takes the default."""
    table = {key: _number(value) if key in NUMBERS else value for key, value in stated.items()}
    return {
        "series": faults.value("top", table, "series", str, ""),
        "notes": faults.value("top", table, "notes", str, ""),
        "serving_is": faults.value("top", table, "serving_is", str, ""),
        "dish_is": faults.choice("top", table, "dish_is", KINDS_OF_DISH, ""),
        "finished_grams": faults.number("top", table, "finished_grams"),
        "keeps_days": faults.number("top", table, "keeps_days"),
        "minutes": faults.number("top", table, "minutes"),
        "words_per_minute": faults.number("top", table, "words_per_minute", 140.0) or 140.0,
        "rules": faults.choice("top", table, "rules", RULES, "us"),
        "measures": faults.choice("top", table, "measures", tuple(SYSTEMS), "us"),
    }


def of_the_talk(fields: Mapping[str, Any]) -> dict[str, Any]:
    """Return those of the checked fields that a talk holds itself; the others are its recipe's."""
    names = ("series", "keeps_days", "minutes", "words_per_minute", "rules", "measures", "notes")
    return {name: fields[name] for name in names}


def _number(value: object) -> object:
    """Return the number that a text is, or the text."""
    try:
        return float(value) if isinstance(value, str) else value
    except ValueError:
        return value


def recipe_of(written: WrittenRecipe, fields: Mapping[str, Any], title: str) -> Recipe:
    """Return the recipe of a text that was read, with what the talk says of the whole."""
    return Recipe(
        title=written.title or title,
        ingredients=tuple(ingredient_from(reading) for reading in written.readings if not reading.is_open),
        servings=written.servings or 1.0,
        serving_is=fields["serving_is"] or written.serving_is or "serving",
        finished_grams=fields["finished_grams"],
        dish_is=fields["dish_is"],
        open_lines=tuple(reading for reading in written.readings if reading.is_open),
    )


def _told(part: str, lines: tuple[PlainLine, ...], text: str) -> list[str]:
    rows = text.splitlines()
    return [f'{part}, "{one_line(rows[line.place])[:60]}": {line.problem}' for line in lines if line.problem]


def plain_parts(talk: Talk) -> PlainTalk:
    """Return a talk as its four texts and what it says of the whole."""
    recipe = talk.recipe
    fields = {
        "series": talk.series,
        "serving_is": "" if recipe.serving_is == "serving" else recipe.serving_is,
        "dish_is": recipe.dish_is,
        "finished_grams": _written(recipe.finished_grams),
        "keeps_days": _written(talk.keeps_days),
        "minutes": _written(talk.minutes),
        "words_per_minute": "" if talk.words_per_minute == 140 else _written(talk.words_per_minute),
        "rules": "" if talk.rules == "us" else talk.rules,
        "measures": "" if talk.measures == "us" else talk.measures,
    }
    return PlainTalk(
        write_recipe(recipe.title, recipe.servings, _lines(talk)),
        write_script(talk.points),
        write_plan(talk.steps),
        write_questions(talk.questions),
        {key: one_line(value) for key, value in fields.items() if value.strip()},
    )


def _lines(talk: Talk) -> list[tuple[str, str]]:
    """Return the ingredient lines with their parts; one that names several foods, and has a reading for each, once."""
    found: list[tuple[str, str]] = []
    left = 0
    for reading in talk.readings:
        left -= 1
        if left <= 0:
            found.append((reading.line, reading.part))
            left = len(take_apart_line(reading.line, talk.measures))
    return found


def _written(value: float | None) -> str:
    return "" if value is None else f"{value:.12g}"


def plain_text(talk: Talk) -> str:
    """Return a talk as one plain text; `talk_from_plain` gives it back, but what only a talk file can hold."""
    return put_together(plain_parts(talk))
