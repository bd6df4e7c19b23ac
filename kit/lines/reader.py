"""Reading one written ingredient line: its food and grams, the rule used, and what has to be asked."""

from collections.abc import Iterable
from dataclasses import replace

from kit.food.amounts import ONE, Count
from kit.food.composition import Food, Foods, foods
from kit.food.finding import food as food_named
from kit.food.finding import imported
from kit.food.measures import amount_text, fraction_text, unit
from kit.food.vocabulary import SMALL_WORDS, line_words, words
from kit.lines.choosing import Choice, choose, is_name, kind_of
from kit.lines.nearest_measure import CONTAINERS, VOLUMES, Written
from kit.lines.parsed_line import ParsedLine, take_apart
from kit.lines.reading import Reading
from kit.lines.weighing import Weight, weigh
from kit.texts import number

# What "to taste" and "for garnish" are counted as (common practice); other foods are left out, and that is said.
_UNMEASURED = {"spice": (0.25, "tsp"), "herb": (1.0, "tbsp"), "oil": (1.0, "tsp")}


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
    """Read one ingredient line as `read` does, and return a reading for each food it names."""
    table = foods() if table is None else table
    return tuple(replace(_read(phrase, line, food, table), part=part) for phrase in take_apart(line, system))


def read_lines(lines: Iterable[str], *, table: Foods | None = None, system: str = "us") -> list[Reading]:
    """Read several lines."""
    table = foods() if table is None else table
    return [reading for line in lines for reading in read_each(line, table=table, system=system)]


def _read(phrase: ParsedLine, line: str, key: str | None, table: Foods) -> Reading:
    if phrase.problem:
        return Reading(line, problem=phrase.problem)
    written = phrase.written
    by_weight = written.unit is None or written.unit.kind == "mass"
    name = phrase.whole if phrase.others and is_name(phrase.whole, table) else phrase.name
    choice = choose(name, phrase.after, table, container=written.measure, by_weight=by_weight)
    if choice.food is None and not key and phrase.others:
        choice = _shared_head(phrase, table, written, by_weight) or choice
    if key:
        chosen = table[key] if key in table else food_named(key)
        choice = Choice(chosen, choice.notes, spare=frozenset((*phrase.name, *phrase.after)))
    if choice.food is None:
        choice = _imported(phrase, choice)
    if choice.food is None:
        return Reading(line, problem=choice.problem, choices=choice.choices, how="; ".join(choice.notes))
    food = choice.food
    if written.measure == "can" and food.state == "cooked" and food.group == "pulse":
        written = replace(written, drained=True)
    if phrase.product and not key and written.unit is None:
        part = _product(phrase, food, table)
        if part is None:
            what = f"{phrase.product} of {food.name.lower()}"
            return Reading(
                line, problem=f'no food "{what}" in the table; write its amount in spoons of a food that is there'
            )
        food, written = part, replace(written, measure="", size="")
    reading = _weighed(line, phrase, food, _with_cut(written, phrase, choice, food))
    notes = "; ".join(part for part in (reading.how, *choice.notes) if part)
    return replace(
        reading,
        how=notes,
        problem=reading.problem or choice.problem,
        choices=choice.choices,
        swaps=_swaps(phrase, table),
    )


def _weighed(line: str, phrase: ParsedLine, food: Food, written: Written) -> Reading:
    reading = Reading(line, food)
    if not phrase.counted and written.measure == "spray":
        written = replace(written, count=ONE)
    elif not phrase.counted and (phrase.unmeasured or food.group == "spice" or food.key == "water"):
        return _unmeasured(reading, food)
    elif not phrase.counted:
        example = _example(food)
        return replace(reading, problem=f'no amount of "{food.name}"; write for instance "{example}"')
    weight = weigh(food, written)
    if weight is None:
        asked = " ".join(part for part in (written.size, written.measure or "piece") if part)
        return replace(
            reading, problem=f'"{food.name}" has no weight for a {asked}; write for instance "{_example(food)}"'
        )
    trimmed = bool(written.edible and food.refuse and written.unit and written.unit.kind == "mass")
    return replace(_with_weight(reading, weight, written.count), cut="trimmed" if trimmed else written.cut)


def _with_weight(reading: Reading, weight: Weight, count: Count) -> Reading:
    return replace(
        reading,
        grams=weight.grams,
        low=weight.low,
        high=weight.high,
        relative_sd=weight.relative_sd,
        how=weight.how,
        problem=weight.problem,
        count=count.value,
        noun=weight.noun,
        noun_grams=weight.noun_grams,
    )


def _unmeasured(reading: Reading, food: Food) -> Reading:
    """Count "to taste" as a stated small amount, or leave it out and say so."""
    if food.group not in _UNMEASURED:
        how = "no amount given, left out of the numbers"
        return replace(reading, grams=0.0, low=0.0, high=0.0, how=how, count=0.0)
    count, noun = _UNMEASURED[food.group]
    weight = weigh(food, Written(count=Count(count, 0.0, 2 * count), unit=unit(noun)))
    counted = _with_weight(reading, weight, Count(count, 0.0, 2 * count))
    return replace(
        counted, how=f"no amount given, counted as {amount_text(count, noun)} (common practice); {weight.how}"
    )


def _product(phrase: ParsedLine, food: Food, table: Foods) -> Food | None:
    """Return the juice or zest of a fruit ("juice of 1 lemon"), if the table has it."""
    fruit = [word for word in phrase.name if word in words(food.name)]
    return choose((*fruit, phrase.product), (), table).food


def _with_cut(written: Written, phrase: ParsedLine, choice: Choice, food: Food) -> Written:
    """Add the cut and the measure that the words around the food's name tell."""
    cuts, measure = [], written.measure
    own = {row.cut for row in food.measures}
    if not measure and written.unit is None:  # "10 cherry tomatoes", where the table weighs a cherry tomato
        measure = next((row.measure for row in food.measures if row.measure in phrase.name), "")
    for word in (*phrase.name, *phrase.after):
        known = line_words().get(word)
        if word in own:  # also where the name holds it: "ground flaxseed"
            cuts.append(word)
        if known is None or word not in choice.spare:
            continue
        if known.kind == "cut":
            cuts.append(known.meaning)
        elif known.kind == "measure" and not measure and written.unit is None and word in phrase.name:
            measure = known.meaning
    cut = next((cut for cut in cuts if cut in own), cuts[0] if cuts else "")
    return replace(written, cut=cut, measure=measure)


def _shared_head(phrase: ParsedLine, table: Foods, written: Written, by_weight: bool) -> Choice | None:
    """Read "vegetable or chicken broth" as vegetable broth: the last words belong to both."""
    tails = (words(other)[-many:] for other in phrase.others for many in (1, 2))
    for tail in tails:
        choice = choose((*phrase.name, *tail), phrase.after, table, container=written.measure, by_weight=by_weight)
        if choice.food is not None:
            return choice
    return None


def _swaps(phrase: ParsedLine, table: Foods) -> tuple[str, ...]:
    found = (choose(words(other), (), table).food for other in phrase.others)
    return tuple(food.key for food in found if food is not None)


def _imported(phrase: ParsedLine, choice: Choice) -> Choice:
    """Take a food of an imported release where the kit has none and the release has one that clearly fits."""
    asked = [word for word in phrase.name if word not in SMALL_WORDS and kind_of(word) in ("food", "other", "state")]
    matches = imported(" ".join(asked), 3) if asked else []
    if matches and matches[0].score >= 90:
        return Choice(food_named(matches[0].food), (*choice.notes, "from the imported release"), spare=choice.spare)
    return replace(choice, choices=(*choice.choices, *matches)[:6])


def _example(food: Food) -> str:
    """Return a line that would have been clear for a food."""
    row = next((row for row in food.measures if row.measure not in CONTAINERS), None)
    name = food.name.lower()
    if row is None:
        return f"100 g {name}"
    cut = f", {row.cut}" if row.cut else ""
    size = f"{row.measure} " if row.measure not in ("piece",) else ""
    return (
        f"1 {size}{name}{cut} ({number(row.grams)} g)"
        if row.measure in VOLUMES
        else f"{fraction_text(1)} {size}{name}{cut}"
    )
