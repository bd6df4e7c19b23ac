"""A serving as a table: values, ranges, the form that can be said, and the share of a day."""

from collections.abc import Sequence
from dataclasses import dataclass
from math import isnan

from kit.food.nutrients import nutrient, nutrients
from kit.meal.certainty import ranges, spoken_per_serving
from kit.meal.nutrition import Nutrition
from kit.rules.eu_basis import counted, kilojoules_of, salt_grams, share_of_day_in
from kit.rules.protein import protein_share, quality_of_dish
from kit.rules.reference import share_of_day
from kit.texts import number

# What is shown first, and read aloud: common practice.
MAIN_NUTRIENTS = ("energy", "protein", "fat", "saturated_fat", "carbohydrate", "fiber", "sugars", "sodium")


@dataclass(frozen=True, slots=True)
class Line:
    """One nutrient of a serving.

    Attributes
    ----------
    nutrient, name, unit : str
        Our id, its name and unit.
    value, low, high : float
        Per serving, with the 90 % range.
    spoken : str
        The form that can be said.
    day : float
        Share of the daily value, NaN where there is none. [fraction]
    missing_from : tuple of str
        Foods without a value; the value is then "at least".
    up_to : bool
        Whether cooking may have taken some of it, nobody knows how much.
    """

    nutrient: str
    name: str
    unit: str
    value: float
    low: float
    high: float
    spoken: str
    day: float
    missing_from: tuple[str, ...]
    up_to: bool = False

    @property
    def bound(self) -> str:
        """What stands before a value that is a bound only: "at least ", "up to ", or nothing."""
        return "at least " if self.missing_from else "up to " if self.up_to else ""

    @property
    def decimals(self) -> int:
        """Decimals the nutrient is shown with."""
        return nutrient(self.nutrient).decimals


def serving_lines(numbers: Nutrition, names: Sequence[str] = (), rules: str = "us") -> tuple[Line, ...]:
    """Return the nutrients of a serving, all of them or the ones named.

    Raises
    ------
    UnknownNameError
        If a nutrient is not known.
    """
    numbers = counted(numbers, rules)
    low, high = ranges(numbers)
    days = share_of_day(numbers.per_serving, rules)
    said = spoken_per_serving(numbers)
    order = {name: place for place, name in enumerate(nutrients())}
    chosen = [nutrient(name).id for name in names] or list(order)
    return tuple(
        Line(
            name,
            nutrient(name).name,
            nutrient(name).unit,
            float(numbers.per_serving[at]),
            float(low[at]),
            float(high[at]),
            said[name],
            _surely(name, float(days[at]), numbers, rules),
            numbers.missing_from(name) if numbers.at_least[at] else (),
            bool(numbers.up_to[at]),
        )
        for name in chosen
        for at in (order[name],)
    )


def _surely(name: str, share: float, numbers: Nutrition, rules: str) -> float:
    """Return a share of a day; by US rules that of protein only where the quality of its protein is known."""
    if rules != "us" or name != "protein":
        return share
    return protein_share(share, *quality_of_dish(numbers))


def as_json(numbers: Nutrition, rules: str = "us") -> dict[str, object]:
    """Return the numbers of a recipe as the command line prints them.

    By EU rules with kilojoules and salt too; by US rules with the least and most of a day's protein, corrected for its
    quality: `daily_value_percent` is that of all its protein.
    """
    ingredients = numbers.recipe.ingredients
    eu = {"energy_kj": kilojoules_of(numbers), "salt_grams": salt_grams(numbers["sodium"])} if rules == "eu" else {}
    days = dict(zip(nutrients(), share_of_day_in(numbers, rules).tolist(), strict=True))
    corrected = [100 * days["protein"] * quality for quality in quality_of_dish(numbers)]
    return {
        "title": numbers.recipe.title,
        "servings": numbers.recipe.servings,
        "serving_is": numbers.recipe.serving_is,
        "serving_grams": numbers.serving_grams,
        **eu,
        "nutrients": {
            line.nutrient: {
                "value": line.value,
                "unit": line.unit,
                "low": line.low,
                "high": line.high,
                "spoken": line.spoken,
                "daily_value_percent": None if isnan(days[line.nutrient]) else 100 * days[line.nutrient],
                "missing_from": list(line.missing_from),
                "up_to": line.up_to,
            }
            | ({"corrected_percent": corrected} if rules == "us" and line.nutrient == "protein" else {})
            for line in serving_lines(numbers, rules=rules)
        },
        "energy_shares": {name: None if isnan(share) else share for name, share in numbers.energy_shares.items()},
        "ingredients": [
            {
                "line": ingredient.line,
                "food": ingredient.food.key,
                "grams": ingredient.grams,
                "part": ingredient.part,
                "how": ingredient.how,
                "cooked": ingredient.treatment or way.name or None,
                "cooked_because": way.because,
                "source": ingredient.food.source,
                "nutrients": {
                    name: None if isnan(value) else value for name, value in zip(nutrients(), row.tolist(), strict=True)
                },
            }
            for ingredient, way, row in zip(ingredients, numbers.recipe.ways, numbers.contributions, strict=True)
        ],
        "open": [
            {"line": line.line, "problem": line.problem, "choices": [match.food for match in line.choices]}
            for line in numbers.recipe.open_lines
        ],
    }


def as_text(numbers: Nutrition, names: Sequence[str] = MAIN_NUTRIENTS, rules: str = "us") -> str:
    """Return a serving in a few aligned lines of text."""
    recipe = numbers.recipe
    head = f"{recipe.title}: one of {number(recipe.servings, 2)}, {number(numbers.serving_grams)} g"
    rows = [
        (
            line.name,
            f"{line.bound}{number(line.value, line.decimals)} {line.unit}",
            f"{number(line.low, line.decimals)} to {number(line.high, line.decimals)}",
            "" if isnan(line.day) else f"{number(100 * line.day)} % of a day",
            line.spoken,
        )
        for line in serving_lines(numbers, names, rules)
    ]
    if rules == "eu":
        rows += [
            ("Energy", f"{number(kilojoules_of(numbers))} kJ", "", "", ""),
            ("Salt", f"{number(salt_grams(numbers['sodium']), 2)} g", "", "", ""),
        ]
    widths = [max(len(row[column]) for row in rows) for column in range(5)]
    table = ["  ".join(cell.ljust(width) for cell, width in zip(row, widths, strict=True)).rstrip() for row in rows]
    return "\n".join([head, *table, *_open_text(numbers)])


def _open_text(numbers: Nutrition) -> list[str]:
    """Return the lines that are not in the numbers, each with what has to be asked."""
    waiting = numbers.recipe.open_lines
    if not waiting:
        return []
    head = "1 line is not counted yet" if len(waiting) == 1 else f"{len(waiting)} lines are not counted yet"
    return [
        "",
        f"{head}, so that every number is at least:",
        *(f"  {line.line.strip()}\n    {line.problem}" for line in waiting),
    ]
