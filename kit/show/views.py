"""A serving as it is shown: its numbers as the charts and the read-out take them."""

from collections.abc import Sequence

import numpy as np

from kit.food.nutrients import nutrient, nutrient_index
from kit.meal.certainty import spoken_per_serving
from kit.meal.nutrition import Nutrition
from kit.rules.eu_basis import share_of_day_in
from kit.rules.naming import short_name
from kit.rules.reference import daily_values, distribution_ranges
from kit.show import charts, parts, triangle
from kit.show.marks import Drawing
from kit.show.stage import ReadOut

COLUMNS = (("shares", "balance"), ("sources", "day"))
# What an audience window has room for.
FEW_OF_A_DAY = ("fiber", "potassium", "calcium", "iron", "magnesium", "vitamin_c", "sodium", "saturated_fat")
MOST_PARTS = 5
READ_ALOUD = ("energy", "protein", "fiber", "sodium")
# About ten that a general audience knows: common practice.
OF_A_DAY = (
    *("fiber", "potassium", "calcium", "iron", "magnesium", "vitamin_a", "vitamin_c", "folate"),
    *("sodium", "saturated_fat", "cholesterol", "sugars"),
)
SOURCES_OF = ("protein", "energy", "fiber", "carbohydrate", "sugars", "fat", "saturated_fat", "sodium", *OF_A_DAY[1:8])


def drawings(now: Nutrition, written: Nutrition, source_of: str = "protein", rules: str = "us") -> dict[str, Drawing]:
    """Return the four charts of a serving beside the serving as written, by name; arguments as those of `drawing`."""
    return {name: drawing(name, now, written, source_of, rules) for column in COLUMNS for name in column}


def drawing(
    name: str,
    now: Nutrition,
    written: Nutrition,
    source_of: str = "protein",
    rules: str = "us",
    of_a_day: Sequence[str] = OF_A_DAY,
) -> Drawing:
    """Return a chart of a serving beside the serving as written.

    Parameters
    ----------
    name : {"shares", "balance", "sources", "day"}
        Which chart.
    now, written : Nutrition
        The dish as it is and as its recipe is written, with the same number of ingredients.
    source_of : str
        The nutrient whose sources are drawn.
    rules : {"us", "eu"}
        Whose daily values.
    of_a_day : sequence of str
        The nutrients whose share of the day is drawn, where they have a daily value.

    Raises
    ------
    UnknownNameError
        If the nutrient or the set of rules is not known.
    """
    if name == "sources":
        return _sources(now, written, source_of)
    if name == "day":
        return _day(now, written, rules, of_a_day)
    draw = charts.energy_shares if name == "shares" else triangle.balance
    return draw.drawing(now.energy_shares, distribution_ranges(), written.energy_shares)


def _sources(now: Nutrition, written: Nutrition, source_of: str) -> Drawing:
    about = nutrient(source_of)
    foods = [ingredient.food for ingredient in now.recipe.ingredients]
    return charts.sources.drawing(
        [food.name for food in foods],
        now.brings(source_of).tolist(),
        about.name,
        about.unit,
        written.brings(source_of).tolist(),
        about.decimals,
        charts.source_colour(source_of),
        [short_name(food) for food in foods],
    )


def _day(now: Nutrition, written: Nutrition, rules: str, of_a_day: Sequence[str]) -> Drawing:
    values = daily_values(rules)
    wanted = [name for name in of_a_day if name in values and values[name].kind]
    here, there = (share_of_day_in(numbers, rules) for numbers in (now, written))
    return charts.share_of_day.drawing(
        {nutrient(name).short_name: float(here[nutrient_index(name)]) for name in wanted},
        {nutrient(name).short_name for name in wanted if values[name].kind == "limit"},
        {nutrient(name).short_name: float(there[nutrient_index(name)]) for name in wanted},
        {nutrient(name).short_name for name in wanted if now.at_least[nutrient_index(name)]},
    )


def plate(now: Nutrition, written: Nutrition) -> Drawing:
    """Return the chart of what each part of the dish brings, now and as written."""
    names, brought = dish_parts(now)
    before_names, before = dish_parts(written)
    return parts.plate.drawing(names, brought, before if names == before_names else None)


def dish_parts(numbers: Nutrition) -> tuple[list[str], dict[str, list[float]]]:
    """Return the parts of a dish, and which share of its weight, energy, protein and sodium each one is.

    The parts are the recipe's own; where it names fewer than two, the groups of its foods; small ones together.

    Returns
    -------
    list of str, dict of str to list of float
        Names, and by measure the share of each; NaN where nothing of it is in the dish. [fraction]
    """
    ingredients = numbers.recipe.ingredients
    own = [ingredient.part for ingredient in ingredients]
    labels = own if len({part for part in own if part}) > 1 else [part.food.group for part in ingredients]
    labels = [label or "other" for label in labels]
    order = list(dict.fromkeys(labels))
    kept = order if len(order) <= MOST_PARTS else order[: MOST_PARTS - 1]
    names = [*kept, *(["rest"] if len(kept) < len(order) else [])]
    belongs = [[(label if label in kept else "rest") == name for label in labels] for name in names]
    amounts = {"weight": numbers.recipe.grams} | {
        name: np.nan_to_num(numbers.brings(name)) for name in ("energy", "protein", "sodium")
    }
    shares = {}
    for measure, values in amounts.items():
        total = values.sum()
        parted = np.array(belongs, dtype=float).reshape(len(names), len(labels)) @ values
        shares[measure] = (parted / total if total > 0 else parted * np.nan).tolist()
    return names, shares


def read_out(now: Nutrition, written: Nutrition) -> list[ReadOut]:
    """Return the large numbers of a serving in the form that can be said, beside the serving as written."""
    said, before = spoken_per_serving(now), spoken_per_serving(written)
    return [
        ReadOut(nutrient(name).short_name, said[name], "" if said[name] == before[name] else before[name])
        for name in READ_ALOUD
    ]
