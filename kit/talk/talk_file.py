"""Reading a talk file: TOML to a `Talk`, with every fault of the file beside it."""

from collections.abc import Iterator, Mapping, Sequence
from pathlib import Path
from typing import Any

from kit.errors import KitError
from kit.food.measures import SYSTEMS
from kit.meal.changes import read_change
from kit.meal.recipe import KINDS_OF_DISH, Recipe
from kit.talk import entries as read_entry
from kit.talk.faults import Faults
from kit.talk.pots import told_pot_faults
from kit.talk.recipe_entries import Entry, read_ingredients, with_labels
from kit.talk.talk import Question, Talk
from kit.talk.toml_text import read_table

TOP_KEYS = (
    "title",
    "series",
    "notes",
    "servings",
    "serving_is",
    "dish_is",
    "finished_grams",
    "keeps_days",
    "minutes",
    "words_per_minute",
    "rules",
    "measures",
)
ENTRY_KEYS: Mapping[str, tuple[str, ...] | None] = {
    "ingredient": ("line", "food", "grams", "part", "slider", "swaps", "treatment"),
    "point": ("part", "say", "source", "pins", "private"),
    "step": ("part", "title", "say_minutes", "hands_minutes", "say", "pots", "needs", "private"),
    "question": ("asks", "try", "answer", "private"),
    "label": None,  # kit.food.labels.label knows its own keys
}
KEYS = tuple(dict.fromkeys((*TOP_KEYS, *(key for keys in ENTRY_KEYS.values() for key in keys or ()))))
MOST_ENTRIES = 500  # of a kind
RULES = ("us", "eu")


def talk_from_toml(text: str, path: Path) -> Talk:
    """Make a talk from the text of a talk file; what is wrong with it stands in the talk's `faults`.

    Parameters
    ----------
    text : str
        The text.
    path : pathlib.Path
        The file; it names the talk.

    Raises
    ------
    TalkFileError
        If it is no talk file at all.
    """
    table, broken = read_table(text, KEYS, path.name)
    faults = Faults(broken)
    faults.keys("top", table, (*TOP_KEYS, *ENTRY_KEYS))
    entries = {kind: placed_entries(table, kind, faults) for kind in ENTRY_KEYS}
    known = with_labels(entries["label"], faults)
    measures = faults.choice("top", table, "measures", tuple(SYSTEMS), "us")
    ingredients, readings = read_ingredients(entries["ingredient"], known, measures, faults)
    recipe = Recipe(
        title=faults.value("top", table, "title", str, path.stem),
        ingredients=ingredients,
        servings=faults.number("top", table, "servings", 1.0) or 1.0,
        serving_is=faults.value("top", table, "serving_is", str, "serving"),
        finished_grams=faults.number("top", table, "finished_grams"),
        dish_is=faults.choice("top", table, "dish_is", KINDS_OF_DISH, ""),
        open_lines=tuple(reading for reading in readings if reading.is_open),
    )
    steps = tuple(read_entry.step(place, entry, faults) for place, entry in entries["step"])
    questions = tuple(filter(None, (read_entry.question(place, entry, faults) for place, entry in entries["question"])))
    return Talk(
        name=path.stem,
        recipe=recipe,
        readings=readings,
        points=tuple(filter(None, (read_entry.point(place, entry, faults) for place, entry in entries["point"]))),
        steps=steps,
        questions=questions,
        series=faults.value("top", table, "series", str, ""),
        keeps_days=faults.number("top", table, "keeps_days"),
        minutes=faults.number("top", table, "minutes"),
        words_per_minute=faults.number("top", table, "words_per_minute", 140.0) or 140.0,
        rules=faults.choice("top", table, "rules", RULES, "us"),
        measures=measures,
        notes=faults.value("top", table, "notes", str, ""),
        faults=(*faults, *told_pot_faults(steps), *question_faults(questions, recipe)),
        path=path,
    )


def question_faults(questions: Sequence[Question], recipe: Recipe) -> Iterator[str]:
    """Yield what is wrong with what the questions of a talk try, a sentence each."""
    for place, question in enumerate(questions, 1):
        if question.try_ and recipe.ingredients:
            try:
                read_change(question.try_, recipe)
            except KitError as fault:
                yield f'question {place} "{question.asks[:40]}": try: {fault}'


def placed_entries(table: Mapping[str, Any], kind: str, faults: Faults) -> list[Entry]:
    """Return the entries of a kind with the place that a message names: ``ingredient 4 "2 cups rice"``."""
    entries = table.get(kind, [])
    if isinstance(entries, dict):
        faults.append(f"{kind}: write [[{kind}]] with two brackets")
        entries = [entries]
    if not isinstance(entries, list) or not all(isinstance(entry, dict) for entry in entries):
        faults.append(f"{kind}: write each as [[{kind}]]")
        return []
    if len(entries) > MOST_ENTRIES:
        faults.append(f"{kind}: {len(entries):,} entries; only the first {MOST_ENTRIES} are read")
        entries = entries[:MOST_ENTRIES]
    placed = []
    for number, entry in enumerate(entries, 1):
        words = next(
            (entry[key] for key in ("line", "say", "title", "asks", "name") if isinstance(entry.get(key), str)), ""
        )
        place = f'{kind} {number} "{words[:50]}"' if words else f"{kind} {number}"
        keys = ENTRY_KEYS[kind]
        if keys is not None:
            faults.keys(place, entry, keys, top=TOP_KEYS)
        placed.append((place, entry))
    return placed
