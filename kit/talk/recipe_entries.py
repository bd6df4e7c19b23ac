"""The ingredients and package labels of a talk file."""

from collections.abc import Mapping, Sequence
from typing import Any

from kit.errors import KitError, nearest
from kit.food.composition import Food, Foods, foods
from kit.food.cooking import WAYS, treatments
from kit.food.finding import food as food_named
from kit.food.labels.label_food import food_from_table
from kit.lines.reader import read, read_each
from kit.lines.reading import Reading
from kit.meal.recipe import Ingredient, ingredient_from
from kit.talk.faults import Faults, limited, shown
from kit.texts import listing

_MOST_TABLES = 8  # with labels of their own, kept at once
STATED = "grams weighed by hand, as the talk says"

Entry = tuple[str, Mapping[str, Any]]  # the place that a message names, and the entry


def with_labels(entries: Sequence[Entry], faults: Faults) -> Foods:
    """Return the foods at hand with those of the talk file's own labels before them."""
    if not entries:
        return foods()
    made: list[Food] = []
    for place, entry in entries:
        try:
            made.append(food_from_table(entry))
        except KitError as fault:
            faults.extend(f"{place}: {line}" for line in str(fault).splitlines())
    return _table(repr([entry for _, entry in entries]), foods(), made)


_TABLES: dict[tuple[str, int], tuple[Foods, Foods]] = {}


def _table(labels: str, others: Foods, made: Sequence[Food]) -> Foods:
    """Return the foods with some before them: one table for the same labels, so that its names are indexed once."""
    key = labels, id(others)
    if key not in _TABLES:
        if len(_TABLES) >= _MOST_TABLES:
            _TABLES.clear()
        _TABLES[key] = others, Foods([*made, *others.values()])  # the others are held, so that their id stays theirs
    return _TABLES[key][1]


def read_ingredients(
    entries: Sequence[Entry], known: Foods, system: str, faults: Faults
) -> tuple[tuple[Ingredient, ...], tuple[Reading, ...]]:
    """Return the ingredients that could be read, and how every line was read.

    Parameters
    ----------
    entries : sequence of (str, mapping)
        Place and content of each ``[[ingredient]]``.
    known : Foods
        The foods to choose from.
    system : {"us", "metric"}
        Whose cups and spoons.
    faults : Faults
        Where faults are noted; a line whose food or amount has to be asked is none, but an open reading.
    """
    ingredients: list[Ingredient] = []
    readings: list[Reading] = []
    for place, entry in entries:
        line = faults.value(place, entry, "line", str, "")
        if not line.strip():
            faults.append(f'{place}: no line; write line = "1 cup lentils, dry"')
            continue
        facts = _facts(place, entry, known, faults)
        for reading in entry_readings(place, entry, known, system, faults):
            readings.append(reading)
            if not reading.is_open:
                slider = _slider(place, entry, reading, known, system, faults)
                ingredients.append(ingredient_from(reading, slider=slider, **facts))
    return tuple(ingredients), tuple(readings)


def entry_readings(
    place: str, entry: Mapping[str, Any], known: Foods, system: str, faults: Faults
) -> tuple[Reading, ...]:
    """Return how the line of an entry is read: one reading for each food it names.

    Of a line that names several foods, `food` and `grams` are lists, one for each.
    """
    line, part = entry["line"], faults.value(place, entry, "part", str, "")
    keys = _each(place, entry, "food", known, faults)
    plain = read_each(line, table=known, system=system, part=part)
    if isinstance(entry.get("food"), str) and keys:
        plain = (read(line, food=keys[0], table=known, system=system, part=part),)
    elif keys:
        several = [read_each(line, food=key or None, table=known, system=system, part=part) for key in keys]
        plain = tuple(other[min(at, len(other) - 1)] for at, other in enumerate(several))
    amounts = _grams(place, entry, faults)
    if len(amounts) > len(plain):
        faults.append(f"{place}: {len(amounts)} weights for {len(plain)} food(s); give one for each")
    return tuple(
        reading if amount is None or reading.food is None else reading.weighed(amount, STATED)
        for at, reading in enumerate(plain)
        for amount in (amounts[at] if at < len(amounts) else None,)
    )


def _each(place: str, entry: Mapping[str, Any], key: str, known: Foods, faults: Faults) -> tuple[str, ...]:
    """Return the keys of the foods that an entry states, "" for one that is to be read from the line."""
    stated = entry.get(key)
    if stated is None:
        return ()
    keys = stated if isinstance(stated, list) else [stated]
    found = []
    for name in keys:
        if not isinstance(name, str):
            faults.append(f'{place}: food is {shown(name)}; write the key of a food, such as "lentils-dry"')
        elif name and not _is_food(name, known):
            faults.append(f'{place}: no food "{name[:60]}"{nearest(name[:60], known)}')
        else:
            found.append(name)
            continue
        if not isinstance(stated, list):
            return ()
        found.append("")
    return tuple(found)


def _is_food(key: str, known: Foods) -> bool:
    if key in known:
        return True
    try:
        return key.startswith("fdc-") and food_named(key) is not None
    except KitError:
        return False


def _grams(place: str, entry: Mapping[str, Any], faults: Faults) -> tuple[float | None, ...]:
    stated = entry.get("grams")
    if stated is None:
        return ()
    amounts: list[float | None] = []
    for amount in stated if isinstance(stated, list) else [stated]:
        wrong = "" if amount == "" else limited("grams", amount)
        if wrong:
            faults.append(f"{place}: {wrong}")
        amounts.append(None if wrong or amount == "" else float(amount))
    return tuple(amounts)


def _facts(place: str, entry: Mapping[str, Any], known: Foods, faults: Faults) -> dict[str, Any]:
    facts: dict[str, Any] = {}
    swaps = []
    for key in faults.texts(place, entry, "swaps"):
        if _is_food(key, known):
            swaps.append(key)
        else:
            faults.append(f'{place}: no food "{key[:60]}" to swap with{nearest(key[:60], known)}')
    if swaps:
        facts["swaps"] = tuple(swaps)
    treatment = faults.value(place, entry, "treatment", str, "")
    if treatment and treatment not in (*WAYS, *treatments()):
        faults.append(
            f'{place}: no cooking treatment "{treatment[:60]}"; '
            f'write {listing(WAYS, "or")}, or a code of data/retention_factors.csv, such as "3464"'
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
        if str(slider[end]).strip() in ("0", "left out"):
            continue
        amount = f"{slider[end]}"[:40]
        written = read(f"{amount} of it, {cut}", food=reading.key or None, table=known, system=system)
        if written.grams is None or written.grams != written.grams:
            faults.append(f'{place}, slider: {end} is {shown(slider[end])}; write an amount such as "3 cups"')
        else:
            ends[end] = written.grams
    if not 0 <= ends["low"] < ends["high"] < float("inf"):
        faults.append(f'{place}, slider: low is not below high; write for instance low = "1/2 cup", high = "3 cups"')
        return None
    return ends["low"], ends["high"]
