"""Reading one written ingredient line: its food and grams, the rule used, and what has to be asked."""

from collections.abc import Iterable
from dataclasses import replace
from functools import lru_cache

from kit.food.composition import Food, Foods, foods
from kit.food.vocabulary import words
from kit.lines.choosing import Choice, choose
from kit.lines.each_serving import for_each_serving
from kit.lines.measuring import measured
from kit.lines.naming import foods_named, swaps_of, vague_measure
from kit.lines.parsed_line import ParsedLine, take_apart
from kit.lines.plausible import doubtful
from kit.lines.reading import Reading


def read(
    line: str, *, food: str | None = None, table: Foods | None = None, system: str = "us", part: str = ""
) -> Reading:
    """Read one ingredient line; where it names two foods ("salt and pepper"), the first.

    Parameters
    ----------
    line : str
        Such as ``"1 1/2 cups brown lentils, dry"``.
    food : str, optional
        The key of the food, where that is known already; the words then only tell the amount and the cut.
    table : Foods, optional
        The foods to choose from; all at hand by default.
    system : {"us", "metric"}
        Whose cups and spoons.
    part : str
        The part of the recipe the line stands in.

    Examples
    --------
    >>> reading = read("2 tbsp olive oil")
    >>> reading.key, reading.grams
    ('olive-oil', 27.0)
    """
    return read_each(line, food=food, table=table, system=system, part=part)[0]


def read_each(
    line: str, *, food: str | None = None, table: Foods | None = None, system: str = "us", part: str = ""
) -> tuple[Reading, ...]:
    """Read one ingredient line as `read` does, and return a reading for each food it names.

    A food is read only when every word of the line that may decide which it is was used; what is not sure is asked,
    with choices of the same kind.
    """
    readings = _readings(line, food, foods() if table is None else table, system)
    if one := for_each_serving(line, part):
        readings = tuple(_of_one(reading, one) for reading in readings)
    return tuple(replace(reading, part=part) for reading in readings) if part else readings


def _of_one(reading: Reading, one: str) -> Reading:
    """Return what is asked of an amount that is only that of one serving, in the words that say so."""
    if reading.is_open or not reading.grams:
        return reading
    problem = f'"{one}" is the amount for one of them; write the amount for the whole recipe, without these words'
    return Reading(reading.line, reading.food, problem=problem)


def read_lines(lines: Iterable[str], *, table: Foods | None = None, system: str = "us") -> list[Reading]:
    """Read several lines."""
    table = foods() if table is None else table
    return [reading for line in lines for reading in read_each(line, table=table, system=system)]


@lru_cache(maxsize=500)  # a recipe's lines are read again with every change of one of them
def _readings(line: str, key: str | None, table: Foods, system: str) -> tuple[Reading, ...]:
    """Return the readings of a line, in no part of a recipe."""
    return tuple(reading for phrase in take_apart(line, system) for reading in _read(phrase, line, key, table))


def _read(phrase: ParsedLine, line: str, key: str | None, table: Foods) -> list[Reading]:
    """Return the readings of a phrase, one for each food it names."""
    if phrase.problem:
        return [Reading(line, problem=phrase.problem)]
    swaps = swaps_of(phrase, table) if phrase.others else ()
    return [
        replace(_of_choice(phrase, line, choice, table, known=bool(key)), swaps=swaps)
        for choice in foods_named(phrase, key, table)
    ]


def _of_choice(phrase: ParsedLine, line: str, choice: Choice, table: Foods, *, known: bool) -> Reading:
    """Return the reading of a phrase for the food that was chosen, `known` where she has chosen it herself."""
    food, written = choice.food, phrase.written
    if food is None and phrase.unmeasured and not phrase.counted:
        offered = [table[match.food] for match in choice.choices if match.food in table]
        near = min(offered, key=lambda one: len(one.allergens), default=None)
        if near:  # olives for garnish: whichever they are, nobody can tell how many
            how = "no amount given, left out of the numbers whichever it is"
            return Reading(line, near, grams=0.0, low=0.0, high=0.0, how=how)
    if food is None:
        return Reading(line, problem=choice.problem, choices=choice.choices, how="; ".join(choice.notes))
    if vague := vague_measure(phrase, choice):
        problem = f'how much a {vague} is, nobody can tell; write the amount of "{food.name}" in cups, spoons or grams'
        return Reading(line, food, problem=problem)
    if not known and (doubt := doubtful(phrase, choice, table))[0]:
        return Reading(line, problem=doubt[0], choices=doubt[1])
    if written.measure == "can" and food.state == "cooked" and food.group == "pulse":
        written = replace(written, drained=True)
    if phrase.product and not known and written.unit is None:
        part = _product(phrase, food, table)
        if part is None:
            what = f"{phrase.product} of {food.name.lower()}"
            problem = f'no food "{what}" in the table; write its amount in spoons of a food that is there'
            return Reading(line, problem=problem)
        food, written = part, replace(written, measure="", size="")
    reading = measured(line, phrase, choice, food, written)
    return replace(
        reading,
        how="; ".join(part for part in (reading.how, *choice.notes) if part),
        problem=reading.problem or choice.problem,
        choices=choice.choices,
    )


def _product(phrase: ParsedLine, food: Food, table: Foods) -> Food | None:
    """Return the juice or zest of a fruit ("juice of 1 lemon"), if the table has it."""
    fruit = [word for word in phrase.name if word in words(food.name)]
    return choose((*fruit, phrase.product), (), table).food
