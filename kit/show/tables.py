"""Tables for a notebook: how lines were read, what a serving holds, which checks failed."""

from collections.abc import Sequence

import pandas as pd
from pandas.io.formats.style import Styler

from kit.food.three_weights import three_weights
from kit.lines.reading import Reading
from kit.meal.checks import checks
from kit.meal.nutrition import Nutrition
from kit.meal.recipe import Recipe
from kit.rules.allergens import check_the_package
from kit.rules.cautions import allergens, cautions, storage, unknown_allergens
from kit.rules.serving import MAIN_NUTRIENTS, serving_lines
from kit.talk.talk import Talk
from kit.texts import number, percent, quantity, span

Row = dict[str, str]


def readable(table: pd.DataFrame) -> Styler:
    """Return a table as it is shown to people: words whole and to the left, no row numbers, text as text."""
    plain = table.style.hide(axis="index").format(escape="html").format_index(escape="html", axis="columns")
    shown = plain.set_properties(None, **{"text-align": "left", "white-space": "normal"})
    return shown.set_table_styles([{"selector": "th", "props": "text-align: left"}])


def lines_table(readings: Sequence[Reading]) -> Styler:
    """Return how each ingredient line was read, one row a line."""
    rows = [
        {
            "line": reading.line,
            "food": reading.food_name or "?",
            "grams": "?" if reading.grams is None else number(reading.grams, 1),
            "range": "" if reading.low is None or reading.high is None else span(reading.low, reading.high),
            "how": reading.how,
            "to ask": reading.problem,
        }
        for reading in readings
    ]
    return readable(pd.DataFrame(rows, columns=["line", "food", "grams", "range", "how", "to ask"]))


def serving_table(numbers: Nutrition, names: Sequence[str] = MAIN_NUTRIENTS, rules: str = "us") -> Styler:
    """Return what a serving holds, one row a nutrient; no names means all of them.

    Raises
    ------
    UnknownNameError
        If a nutrient is not known.
    """
    return readable(pd.DataFrame(serving_rows(numbers, names, rules)))


def serving_rows(numbers: Nutrition, names: Sequence[str] = MAIN_NUTRIENTS, rules: str = "us") -> list[Row]:
    """Return what a serving holds, one row a nutrient, by the names of the columns; as `serving_table`."""
    return [
        {
            "nutrient": line.name,
            "per serving": f"{line.bound}{number(line.value, line.decimals)} {line.unit}",
            "range": f"{number(line.low, line.decimals)} to {number(line.high, line.decimals)}",
            "of a day": "" if line.day != line.day else percent(line.day),
            "to say": line.spoken,
            "missing from": ", ".join(line.missing_from),
        }
        for line in serving_lines(numbers, names, rules)
    ]


def weights_table(recipe: Recipe) -> Styler:
    """Return each ingredient as bought, edible and as eaten, with our yield beside published ones, one row each."""
    return readable(pd.DataFrame(weights_rows(recipe)))


def weights_rows(recipe: Recipe) -> list[Row]:
    """Return the three weights of each ingredient by the names of the columns; as `weights_table`."""
    rows = []
    for ingredient in recipe.ingredients:
        weights = three_weights(ingredient.food, ingredient.grams)
        ours = ", ".join(f"{fold:.2f} by {kind}" for kind, fold in weights.yields.items())
        printed = {f"{span(row.low, row.high)} by {row.kind} ({row.source})" for row in weights.published}
        rows.append(
            {
                "food": ingredient.food.name,
                "as bought": quantity(weights.as_bought, "g"),
                "edible": quantity(weights.edible, "g"),
                "as eaten": quantity(weights.as_eaten, "g") if weights.cooked else "",
                "cooked form": weights.cooked.name if weights.cooked else "",
                "our yield": ours,
                "published": "; ".join(sorted(printed)),
            }
        )
    return rows


def checks_table(numbers: Nutrition, failed_only: bool = True) -> Styler:
    """Return the checks of a dish and its foods, only those that failed unless all are wanted."""
    rows = checks_rows(numbers, failed_only)
    return readable(pd.DataFrame(rows, columns=["of", "check", "holds", "because"]))


def checks_rows(numbers: Nutrition, failed_only: bool = True) -> list[Row]:
    """Return the checks of a dish and its foods by the names of the columns; as `checks_table`."""
    return [
        {"of": check.of, "check": check.what, "holds": "yes" if check.holds else "no", "because": check.because}
        for check in checks(numbers)
        if not (failed_only and check.holds)
    ]


def cautions_rows(talk: Talk, numbers: Nutrition) -> list[Row]:
    """Return what to say for safety: allergens and what brings them, keeping, who should ask first; by column."""
    told = [("allergen", found.sentence, "") for found in allergens(numbers.recipe, talk.rules)]
    unknown = unknown_allergens(numbers.recipe)
    told += [("allergens not known", check_the_package(unknown), "")] if unknown else []
    told += [("keeping", sentence, "") for sentence in storage(talk.measures, talk.keeps_days, numbers.recipe)]
    told += [("who should ask", caution.sentence, caution.why) for caution in cautions(numbers, talk.rules)]
    return [dict(zip(("about", "to say", "why here"), row, strict=True)) for row in told]
