"""A nutrition label typed or pasted as plain text, line by line as on the package."""

import re
from collections.abc import Mapping

from kit.errors import LabelError, nearest
from kit.food.allergens import read_allergens
from kit.food.daily_values import daily_values
from kit.food.labels.label import Label
from kit.food.labels.label_food import from_table
from kit.food.labels.printed import LABEL_ONLY, printed_names
from kit.food.nutrients import nutrients

# What a package calls a line, where that is not our name for it.
_CALLED: Mapping[str, str] = {
    "calories": "energy",
    "total fat": "fat",
    "total carbohydrate": "carbohydrate",
    "total carbohydrates": "carbohydrate",
    "carbohydrates": "carbohydrate",
    "total carb": "carbohydrate",
    "dietary fiber": "fiber",
    "dietary fibre": "fiber",
    "fibre": "fiber",
    "total sugars": "sugars",
    "sugar": "sugars",
    "sugar alcohols": "sugar_alcohol",
}
_AMOUNT = (
    r"(?:<|(?:contains\s+)?less\s+than)?\s*\d[\d.,]*(?![\d.,]|\s*%)\s*"
    r"(?:kcal|kj|mcg|µg|μg|ug|mg|g|iu)?(?:\s*(?:rae|dfe|ne))?"
)
_LINE = re.compile(
    rf"(?P<name>[a-z][a-z0-9 -]*?)\s*:?\s+(?P<amount>{_AMOUNT})?\s*(?P<percent>\d+\s*%)?(?:\s*dv)?", re.I
)
_INCLUDES = re.compile(rf"include?s?\s+(?P<amount>{_AMOUNT})\s*added\s+sugars?\s*(?P<percent>\d+\s*%)?", re.I)
_SERVING = re.compile(r"serving\s+size:?\s*(?P<serving>.+)", re.I)
_CONTAINER = re.compile(
    r"(?:about\s+)?(?P<before>\d+(?:\.\d+)?)\s+servings?\s+per\s+\w+|servings?\s+per\s+\w+:?\s*(?:about\s+)?(?P<after>\d+(?:\.\d+)?)",
    re.I,
)
_ALLERGENS = re.compile(r"contains:\s*(?P<allergens>.+)", re.I)
_PASSED_OVER = re.compile(
    r"nutrition facts|amount per.*|amount/serving|.*daily value\*?|\*.*|calories from fat.*|not a significant.*", re.I
)


def read_label(text: str) -> Label:
    r"""Return the label that is typed as the package prints it.

    Parameters
    ----------
    text : str
        The name on the first line; then, a line each and in any order, the serving size, the servings per container,
        and what a serving holds with its amount, its percentage of the daily value or both.

    Raises
    ------
    LabelError
        If a line cannot be read or the label cannot be right; every fault has its line.

    Examples
    --------
    >>> label = read_label("Oat squares\nServing size 2/3 cup (55 g)\nCalories 230\nTotal Fat 8g 10%\nCalcium 20%")
    >>> label.name, label.amounts, label.daily_percent
    ('Oat squares', {'energy': '230', 'fat': '8g'}, {'fat': '10', 'calcium': '20'})
    """
    lines = [(place, line.strip()) for place, line in enumerate(text.splitlines(), start=1) if line.strip()]
    if not lines:
        raise LabelError("the label is empty; write the food's name, the serving size and what a serving holds")
    table: dict[str, object] = {"name": lines[0][1], "amounts": {}, "daily_percent": {}}
    found = [fault for place, line in lines[1:] if (fault := _read(line, table, place))]
    if found:
        raise LabelError("\n".join(found))
    return from_table(table)


def _read(line: str, table: dict, place: int) -> str:
    """Read one line into the table; return what is wrong with it, or nothing."""
    if match := _SERVING.fullmatch(line):
        table["serving"] = match["serving"]
    elif match := _CONTAINER.fullmatch(line):
        table["servings_per_container"] = float(match["before"] or match["after"])
    elif match := _ALLERGENS.fullmatch(line):
        table["allergens"] = list(read_allergens(match["allergens"]))
    elif match := _INCLUDES.fullmatch(line):
        table["amounts"]["added_sugars"] = match["amount"].strip()
    elif not _PASSED_OVER.fullmatch(line):
        match = _LINE.fullmatch(line)
        name = _named(match["name"]) if match else ""
        if not match or not (match["amount"] or match["percent"]) or not name:
            known = sorted({*_CALLED, *_names()})
            hint = nearest(match["name"], known, 75.0) if match and not name else ""
            instead = f"write a nutrient with its amount, or leave the line out{hint}"
            return f'line {place}: "{line}" is not understood; {instead}'
        if match["amount"]:
            table["amounts"][name] = match["amount"].strip()
        if match["percent"] and (name in daily_values()):
            table["daily_percent"][name] = match["percent"].rstrip("% ")
    return ""


def _names() -> dict[str, str]:
    return {name.lower(): known for known, name in printed_names().items()}


def _named(said: str) -> str:
    plain = re.sub(r"[\s-]+", " ", said.lower()).strip()
    plain = re.sub(r"^vit\b", "vitamin", plain)
    spaced = {known.replace("_", " "): known for known in (*nutrients(), *LABEL_ONLY)}
    return _CALLED.get(plain) or spaced.get(plain) or _names().get(plain, "")
