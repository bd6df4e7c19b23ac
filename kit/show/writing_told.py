"""What the page of her writing desk is told: the texts, an answer beside each line, and what a serving holds."""

from collections.abc import Iterator, Mapping
from typing import Any

from kit.errors import KitError
from kit.food.alternatives import alternatives
from kit.food.cooking import WAYS
from kit.food.measures import SYSTEMS
from kit.lines.reading import Reading
from kit.meal.nutrition import Nutrition, nutrition
from kit.meal.recipe import KINDS_OF_DISH, Recipe
from kit.meal.ways import Way, ways
from kit.rules.dish_kind import kind_of_dish
from kit.show import answers
from kit.show.answers import Answer
from kit.show.tables import Row, cautions_rows, checks_rows, serving_rows, weights_rows
from kit.show.views import drawing, plate
from kit.talk.desk import Desk
from kit.talk.desk_reading import IngredientLine
from kit.talk.plain_lines import one_line
from kit.talk.talk_file import RULES
from kit.texts import listing, number, quantity, span

_RULES = {"us": "United States", "eu": "European Union"}
_MEASURES = {"us": "US cups and spoons", "metric": "metric cups and spoons"}
_SETTLE_IT = "Which food is meant ..."
FIELDS = (
    ("serving_is", "What a serving is", "such as: one lidded box", "text"),
    ("dish_is", "What kind of dish it is", "decides by which rules a claim is judged", "choice"),
    (
        "finished_grams",
        "Weight of the finished dish, in grams",
        "weigh the pot after cooking, without the pot",
        "number",
    ),
    ("keeps_days", "Days it keeps in the refrigerator", "as you will say it", "number"),
    ("minutes", "Minutes you have", "the plan is measured against them", "number"),
    ("words_per_minute", "Words you say in a minute", "140 is usual", "number"),
    ("rules", "Whose rules for wordings", "claims and daily values", "choice"),
    ("measures", "Measures of the recipe", "how large a cup and a spoon are", "choice"),
    ("series", "Series and place", "shown beside the title", "line"),
    ("notes", "Notes for yourself", "never sent to anybody", "long"),
)


def recipe_answers(desk: Desk) -> list[Answer]:
    """Return the answers beside the lines of the recipe: how each is read, or what it could mean."""
    found = _title_answer(desk)
    for at, line in enumerate(desk.reading.ingredients):
        clear = [_as_read(reading) for reading in line.readings if not reading.is_open]
        if clear:
            found.append(answers.plain_answer(line.row, "; ".join(clear)))
        for which, reading in enumerate(line.readings):
            if reading.is_open:
                options = [(match.food, match.name) for match in reading.choices]
                send = {"do": "choose", "at": at, "which": which}
                found.append(answers.asked_answer(line.row, reading.problem, options, send, _SETTLE_IT))
    rows = [one_line(row) for row in desk.recipe.splitlines()]
    for passed in desk.reading.talk.passed_over:
        if one_line(passed) in rows:
            found.append(answers.plain_answer(rows.index(one_line(passed)), "names no food, passed over"))
    return sorted(found, key=lambda answer: answer["place"])


def _title_answer(desk: Desk) -> list[Answer]:
    title = one_line(desk.reading.talk.title)
    rows = [one_line(row) for row in desk.recipe.splitlines()]
    return [answers.plain_answer(rows.index(title), "the title")] if title in rows else []


def _as_read(reading: Reading) -> str:
    between = "" if reading.low is None or reading.high is None else f" ({span(reading.low, reading.high)})"
    return f"{reading.food_name}, {_grams(reading)} g{between}"


def _grams(reading: Reading) -> str:
    return "" if reading.grams is None else number(reading.grams, 1)


def settle_groups(desk: Desk) -> list[dict[str, Any]]:
    """Return one row for each food of each ingredient line, in the parts of the recipe, each with how it is cooked."""
    talk = desk.reading.talk
    cooked = iter(ways(talk.title, talk.recipe.ingredients))
    groups: dict[str, dict[str, Any]] = {}
    for at, line in enumerate(desk.reading.ingredients):
        group = groups.setdefault(line.part, {"part": line.part, "rows": [], "stated": set(), "worked_out": {}})
        group["stated"].add(line.settled.treatment if line.settled else "")
        for row, way in _rows(desk, at, line, cooked):
            group["rows"].append(row)
            if way is not None:
                group["worked_out"][way.name or "not known"] = way
    return [_group(group) for group in groups.values()]


def _group(group: Mapping[str, Any]) -> dict[str, Any]:
    stated = next(iter(group["stated"])) if len(group["stated"]) == 1 else ""
    found = [name for name, way in group["worked_out"].items() if not way.stated]
    worked_out = f"as worked out: {listing(found)}" if found and not stated else "as worked out line by line"
    return {
        "part": group["part"],
        "rows": group["rows"],
        "way": stated if stated in WAYS else "",
        "ways": [("", worked_out), *((way, way) for way in WAYS)],
    }


def _rows(
    desk: Desk, at: int, line: IngredientLine, cooked: Iterator[Way]
) -> Iterator[tuple[dict[str, Any], Way | None]]:
    for which, reading in enumerate(line.readings):
        way = None if reading.is_open else next(cooked)
        yield (
            {
                "at": at,
                "which": which,
                "line": line.line if which == 0 else "",
                "open": reading.is_open,
                "problem": reading.problem,
                "food": reading.key,
                "foods": _foods(desk, reading),
                "grams": _grams(reading),
                "range": "" if reading.low is None or reading.high is None else span(reading.low, reading.high),
                "weighed": bool(
                    line.settled and which < len(line.settled.grams) and line.settled.grams[which] is not None
                ),
                "chosen": bool(line.settled and which < len(line.settled.foods) and line.settled.foods[which]),
                "how": reading.how,
                "way": "" if way is None else (way.name or "raw or cooked, not known"),
                "way_because": "" if way is None else way.because,
            },
            way,
        )


def _foods(desk: Desk, reading: Reading) -> list[tuple[str, str]]:
    """Return the foods to choose from: the one that was read, what the line offers, then others of its kind."""
    known = desk.original.known
    offered = [(match.food, match.name) for match in reading.choices]
    offered += [(key, known[key].name) for key in reading.swaps if key in known]
    if reading.food is not None:
        first = (reading.key, reading.food_name)
        offered = [first, *offered, *((food.key, food.name) for food in alternatives(reading.food, known))]
    return list(dict(offered).items())


def fields(desk: Desk, numbers: Nutrition | None) -> list[dict[str, Any]]:
    """Return the fields of the whole talk, each with its label, one line of help, and what stands in it."""
    kinds = _kinds(numbers)
    options = {
        "dish_is": [("", kinds), *((kind, kind) for kind in KINDS_OF_DISH)],
        "rules": [(key, _RULES[key]) for key in RULES],
        "measures": [(key, _MEASURES.get(key, key)) for key in SYSTEMS],
    }
    talk = desk.reading.talk
    taken = {"rules": talk.rules, "measures": talk.measures}
    return [
        {
            "key": key,
            "label": label,
            "help": help_,
            "kind": kind,
            "value": _written(desk.fields.get(key, taken.get(key, ""))),
            "options": options.get(key, []),
        }
        for key, label, help_, kind in FIELDS
    ]


def _kinds(numbers: Nutrition | None) -> str:
    """Return what leaving the kind of dish open comes to."""
    if numbers is None:
        return "as worked out"
    found = kind_of_dish(numbers)
    return "as worked out" if found.stated else f"as worked out: {found.kind}"


def _written(value: object) -> str:
    return f"{value:.12g}" if isinstance(value, int | float) else str(value)


def serving(desk: Desk, numbers: Nutrition | None) -> dict[str, Any]:
    """Return what a serving holds: its numbers, the three weights, the checks, and what to say for safety."""
    talk = desk.reading.talk
    recipe = talk.recipe
    count = len(recipe.open_lines)
    if numbers is None:
        return {"title": "", "nothing": "Nothing yet: write one ingredient a line in step 1.", "tables": {}, "open": ""}
    lines = "1 line is" if count == 1 else f"{count} lines are"
    failed = len(checks_rows(numbers))
    return {
        "title": _one_of(recipe, numbers),
        "nothing": "",
        "open": f"{lines} still to be settled and not in these numbers: each is at least that much." if count else "",
        "tables": {
            "serving": _table(serving_rows(numbers, rules=talk.rules)),
            "weights": _table(weights_rows(recipe)),
            "checks": _table(checks_rows(numbers, failed_only=False)),
            "cautions": _table(cautions_rows(talk, numbers)),
        },
        "checked": "all hold" if not failed else "1 to look at" if failed == 1 else f"{failed} to look at",
    }


def _one_of(recipe: Recipe, numbers: Nutrition) -> str:
    least = "at least " if recipe.open_lines else ""
    return f"One of {number(recipe.servings, 2)} ({recipe.serving_is}): {least}{quantity(numbers.serving_grams, 'g')}"


def _table(rows: list[Row]) -> dict[str, Any]:
    """Return rows as columns and cells; a column that is empty throughout is left out."""
    columns = [name for name in (rows[0] if rows else ()) if any(row[name] for row in rows)]
    return {"columns": columns, "rows": [[row[name] for name in columns] for row in rows]}


def charts(numbers: Nutrition | None) -> dict[str, Any]:
    """Return the two charts beside the table: the parts of the recipe, and where the energy comes from."""
    if numbers is None:
        return {}
    return {"parts": plate(numbers, numbers), "sources": drawing("sources", numbers, numbers, "energy")}


def nutrition_of(desk: Desk) -> Nutrition | None:
    """Return the numbers of what is on the desk; None while no line can be read."""
    recipe = desk.reading.talk.recipe
    try:
        return nutrition(recipe) if recipe.ingredients else None
    except KitError:
        return None
