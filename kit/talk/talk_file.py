"""Reading a talk file: TOML to a `Talk`, or every fault of the file at once."""

import tomllib
from collections.abc import Mapping
from pathlib import Path
from typing import Any

from kit.errors import KitError, TalkFileError, nearest
from kit.food.composition import Food, Foods, foods
from kit.food.cooking import treatments
from kit.food.labels.label_food import food_from_table
from kit.food.measures import SYSTEMS
from kit.lines.reader import read, read_each
from kit.lines.reading import Reading
from kit.lines.recipe_text import MOST_SERVINGS
from kit.meal.recipe import KINDS_OF_DISH, Ingredient, Recipe, ingredient_from
from kit.talk.faults import Faults
from kit.talk.talk import PlanStep, Point, Pot, Question, Talk
from kit.texts import listing

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
ENTRY_KEYS = {
    "ingredient": ("line", "food", "grams", "part", "slider", "swaps", "treatment"),
    "point": ("part", "say", "means", "source", "pins", "private"),
    "step": ("part", "title", "say_minutes", "hands_minutes", "say", "pots", "needs", "private"),
    "question": ("asks", "try", "answer", "private"),
    "label": None,  # kit.food.labels.label knows its own keys
}
RULES = ("us", "eu")


def talk_from_toml(text: str, path: Path) -> Talk:
    """Make a talk from the text of a talk file; `path` names it in messages.

    Raises
    ------
    TalkFileError
        If the text has faults.
    """
    try:
        table = tomllib.loads(text)
    except tomllib.TOMLDecodeError as fault:
        raise TalkFileError(path.name, [f"not a TOML file: {fault}"]) from None
    faults = Faults()
    faults.keys("top", table, (*TOP_KEYS, *ENTRY_KEYS))
    entries = {kind: _entries(table, kind, faults) for kind in ENTRY_KEYS}
    known = _with_labels(entries["label"], faults)
    ingredients, readings = _ingredients(entries["ingredient"], table, known, faults)
    servings = faults.value("top", table, "servings", (int, float), 1)
    if not 0 < servings <= MOST_SERVINGS:
        faults.append(f"top: servings is {servings}; give a number from above 0 to {MOST_SERVINGS:,}")
    for key, allowed in (("rules", RULES), ("measures", SYSTEMS), ("dish_is", KINDS_OF_DISH)):
        if table.get(key, allowed[0]) not in allowed:
            faults.append(f'top: {key} is "{table[key]}"; write {listing(allowed, "or")}')
    facts = {key: faults.value("top", table, key, (int, float)) for key in ("keeps_days", "minutes", "finished_grams")}
    pace = faults.value("top", table, "words_per_minute", (int, float), 140)
    for key, value in (*facts.items(), ("words_per_minute", pace)):
        if value is not None and value <= 0:
            faults.append(f"top: {key} is {value}; give a number above 0")
    title = faults.value("top", table, "title", str, path.stem)
    points = tuple(_point(place, entry, faults) for place, entry in entries["point"])
    steps = tuple(_step(place, entry, faults) for place, entry in entries["step"])
    questions = tuple(_question(place, entry, faults) for place, entry in entries["question"])
    serving_is = faults.value("top", table, "serving_is", str, "serving")
    series, notes = (faults.value("top", table, key, str, "") for key in ("series", "notes"))
    if not ingredients and not faults:
        faults.append('no ingredient; write [[ingredient]] and line = "1 cup lentils, dry"')
    if faults:
        raise TalkFileError(path.name, faults)
    return Talk(
        path.stem,
        Recipe(title, ingredients, float(servings), serving_is, facts["finished_grams"], table.get("dish_is", "")),
        readings,
        points,
        steps,
        questions,
        series,
        facts["keeps_days"],
        facts["minutes"],
        float(pace),
        table.get("rules", "us"),
        table.get("measures", "us"),
        notes,
        path,
    )


def _entries(table: Mapping[str, Any], kind: str, faults: Faults) -> list[tuple[str, Mapping[str, Any]]]:
    """Return the entries of a kind with the place that a message names: ``ingredient 4 "2 cups rice"``."""
    entries = table.get(kind, [])
    if not isinstance(entries, list) or not all(isinstance(entry, dict) for entry in entries):
        faults.append(f"{kind}: write each as [[{kind}]]")
        return []
    placed = []
    for number, entry in enumerate(entries, 1):
        words = next(
            (entry[key] for key in ("line", "say", "title", "asks", "name") if isinstance(entry.get(key), str)), ""
        )
        place = f'{kind} {number} "{words[:50]}"' if words else f"{kind} {number}"
        if ENTRY_KEYS[kind] is not None:
            faults.keys(place, entry, ENTRY_KEYS[kind])
        placed.append((place, entry))
    return placed


def _with_labels(entries: list[tuple[str, Mapping[str, Any]]], faults: Faults) -> Foods:
    if not entries:
        return foods()
    made: list[Food] = []
    for place, entry in entries:
        try:
            made.append(food_from_table(entry))
        except KitError as fault:
            faults.extend(f"{place}: {line}" for line in str(fault).splitlines())
    return Foods([*made, *foods().values()])


def _ingredients(
    entries: list[tuple[str, Mapping[str, Any]]], table: Mapping[str, Any], known: Foods, faults: Faults
) -> tuple[tuple[Ingredient, ...], tuple[Reading, ...]]:
    system = table.get("measures", "us") if table.get("measures", "us") in SYSTEMS else "us"
    ingredients, readings = [], []
    for place, entry in entries:
        found = len(faults)
        line = faults.value(place, entry, "line", str, "")
        key = faults.value(place, entry, "food", str)
        part = faults.value(place, entry, "part", str, "")
        if not line:
            faults.append(f'{place}: no line; write line = "1 cup lentils, dry"')
        if key is not None and key not in known and not key.startswith("fdc-"):
            faults.append(f'{place}: no food "{key}"{nearest(key, known)}')
        if len(faults) > found:
            continue
        facts = _facts(place, entry, known, faults)
        lines = (
            (read(line, food=key, table=known, system=system, part=part),)
            if key
            else read_each(line, table=known, system=system, part=part)
        )
        for reading in lines:
            try:
                reading = _corrected(reading, entry, place, faults)
                slider = _slider(place, entry, reading, known, system, faults)
                ingredients.append(ingredient_from(reading, slider=slider, **facts))
                readings.append(reading)
            except KitError as fault:
                faults.append(f"{place}: {str(fault).split(': ', 1)[-1]}")
    return tuple(ingredients), tuple(readings)


def _corrected(reading: Reading, entry: Mapping[str, Any], place: str, faults: Faults) -> Reading:
    """Return a reading with the grams that the talk file states in its stead."""
    grams = faults.value(place, entry, "grams", (int, float))
    if grams is None:
        return reading
    return reading.weighed(grams, "grams stated in the talk file")


def _facts(place: str, entry: Mapping[str, Any], known: Foods, faults: Faults) -> dict[str, Any]:
    facts: dict[str, Any] = {}
    swaps = faults.value(place, entry, "swaps", list, [])
    for key in swaps:
        if key not in known:
            faults.append(f'{place}: no food "{key}" to swap with{nearest(str(key), known)}')
    if swaps:
        facts["swaps"] = tuple(map(str, swaps))
    treatment = faults.value(place, entry, "treatment", str, "")
    if treatment and treatment not in treatments():
        faults.append(
            f'{place}: no cooking treatment "{treatment}"; write a code of data/retention_factors.csv, such as "3464"'
        )
    elif treatment:
        facts["treatment"] = treatment
    return facts


def _slider(
    place: str, entry: Mapping[str, Any], reading: Reading, known: Foods, system: str, faults: Faults
) -> tuple[float, float] | None:
    """Return the ends of an ingredient's slider in grams, where the entry gives them."""
    slider = faults.value(place, entry, "slider", dict)
    if slider is None:
        return None
    faults.keys(f"{place}, slider", slider, ("low", "high"))
    cut = reading.line.partition(",")[2]
    ends = {"low": 0.0, "high": 2 * (reading.grams or 0.0)}
    for end in ends.keys() & slider.keys():
        written = read(f"{slider[end]} of it, {cut}", food=reading.key or None, table=known, system=system)
        if str(slider[end]).strip() not in ("0", "left out"):
            if written.grams is None:
                faults.append(f'{place}, slider: {end} is {slider[end]!r}; write an amount such as "3 cups"')
            else:
                ends[end] = written.grams
    if not ends["low"] < ends["high"]:
        faults.append(f'{place}, slider: low is not below high; write for instance low = "1/2 cup", high = "3 cups"')
    return ends["low"], ends["high"]


def _point(place: str, entry: Mapping[str, Any], faults: Faults) -> Point:
    say = faults.value(place, entry, "say", str, "")
    if not say:
        faults.append(f'{place}: nothing to say; write say = "One serving comes to {{energy}}."')
    pins = faults.value(place, entry, "pins", dict, {})
    return Point(
        say,
        faults.value(place, entry, "part", str, ""),
        faults.value(place, entry, "means", dict),
        faults.value(place, entry, "source", str, ""),
        {word: faults.value(f"{place}, pins", pins, word, str, "") for word in pins},
        _private(place, entry, faults),
    )


def _private(place: str, entry: Mapping[str, Any], faults: Faults) -> bool:
    value = entry.get("private", False)
    if not isinstance(value, bool):
        faults.append(f"{place}: private is {value!r}; write true or false")
    return value is True


def _step(place: str, entry: Mapping[str, Any], faults: Faults) -> PlanStep:
    title = faults.value(place, entry, "title", str, "")
    if not title:
        faults.append(f'{place}: no title; write title = "Start the lentils"')
    pots = faults.value(place, entry, "pots", list, [])
    minutes = {key: faults.value(place, entry, key, (int, float)) for key in ("say_minutes", "hands_minutes")}
    for key, value in minutes.items():
        if value is not None and value < 0:
            faults.append(f"{place}: {key} is {value}; give 0 or more")
    needs = faults.value(place, entry, "needs", list, [])
    return PlanStep(
        title,
        faults.value(place, entry, "part", str, ""),
        faults.value(place, entry, "say", str, ""),
        minutes["say_minutes"],
        float(minutes["hands_minutes"] or 0),
        tuple(_pot(f"{place}, pot {number}", pot, faults) for number, pot in enumerate(pots, 1)),
        tuple(map(str, needs)),
        _private(place, entry, faults),
    )


def _pot(place: str, entry: object, faults: Faults) -> Pot:
    if not isinstance(entry, dict):
        faults.append(f'{place}: write pots = [{{ name = "lentils", minutes = 20 }}]')
        return Pot("", 0)
    faults.keys(place, entry, ("name", "minutes", "before", "oven"))
    name = faults.value(place, entry, "name", str, "")
    minutes = faults.value(place, entry, "minutes", (int, float), 0)
    before = faults.value(place, entry, "before", (int, float), 0)
    oven = faults.value(place, entry, "oven", (int, float))
    if not name or minutes <= 0:
        faults.append(f'{place}: write {{ name = "lentils", minutes = 20 }}')
    if before < 0:
        faults.append(f"{place}: before is {before}; give the minutes before the first word, 0 or more")
    return Pot(name, float(minutes), float(before), None if oven is None else float(oven))


def _question(place: str, entry: Mapping[str, Any], faults: Faults) -> Question:
    asks = faults.value(place, entry, "asks", str, "")
    if not asks:
        faults.append(f'{place}: no question; write asks = "Can I leave out the feta?"')
    if isinstance(entry.get("try"), dict):
        faults.append(f'{place}: try is a table; write what you would type on screen: try = "leave out the feta"')
        return Question(asks)
    wish, answer = (faults.value(place, entry, key, str, "") for key in ("try", "answer"))
    return Question(asks, wish, answer, _private(place, entry, faults))
