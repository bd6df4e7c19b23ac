"""A serving as it is shown: its numbers as the charts and the read-out take them."""

from kit.food.composition import nutrient, nutrient_index
from kit.meal.certainty import spoken_per_serving
from kit.meal.nutrition import Nutrition
from kit.rules.reference import daily_values, distribution_ranges, share_of_day
from kit.show import charts
from kit.show.marks import Drawing
from kit.show.stage import ReadOut

COLUMNS = (("shares", "balance"), ("sources", "day"))
READ_ALOUD = ("energy", "protein", "fiber", "sodium")
# About ten that a general audience knows: common practice.
OF_A_DAY = (
    *("fiber", "potassium", "calcium", "iron", "magnesium", "vitamin_a", "vitamin_c", "folate"),
    *("sodium", "saturated_fat", "cholesterol", "sugars"),
)
SOURCES_OF = ("protein", "energy", "fiber", "carbohydrate", "sugars", "fat", "saturated_fat", "sodium", *OF_A_DAY[1:8])


def drawings(now: Nutrition, written: Nutrition, source_of: str = "protein", rules: str = "us") -> dict[str, Drawing]:
    """Return the four charts of a serving beside the serving as written.

    Parameters
    ----------
    now, written : Nutrition
        The dish as it is and as its recipe is written, with the same number of ingredients.
    source_of : str
        The nutrient whose sources are drawn.
    rules : {"us", "eu"}
        Whose daily values.

    Raises
    ------
    UnknownNameError
        If the nutrient or the set of rules is not known.
    """
    about, ranges = nutrient(source_of), distribution_ranges()
    values = daily_values(rules)
    of_a_day = [name for name in OF_A_DAY if name in values and values[name].kind]
    here, there = (share_of_day(numbers.per_serving, rules) for numbers in (now, written))
    return {
        "shares": charts.energy_shares.drawing(now.energy_shares, ranges, written.energy_shares),
        "balance": charts.balance.drawing(now.energy_shares, ranges, written.energy_shares),
        "sources": charts.sources.drawing(
            [ingredient.food.name for ingredient in now.recipe.ingredients],
            now.brings(source_of).tolist(),
            about.name,
            about.unit,
            written.brings(source_of).tolist(),
            about.decimals,
            charts.COLOURS.get(source_of, charts.COLOURS["other"]),
        ),
        "day": charts.share_of_day.drawing(
            {short_name(name): float(here[nutrient_index(name)]) for name in of_a_day},
            {short_name(name) for name in of_a_day if values[name].kind == "limit"},
            {short_name(name): float(there[nutrient_index(name)]) for name in of_a_day},
            {short_name(name) for name in of_a_day if now.at_least[nutrient_index(name)]},
        ),
    }


def read_out(now: Nutrition, written: Nutrition) -> list[ReadOut]:
    """Return the large numbers of a serving in the form that can be said, beside the serving as written."""
    said, before = spoken_per_serving(now), spoken_per_serving(written)
    return [
        ReadOut(short_name(name), said[name], "" if said[name] == before[name] else before[name]) for name in READ_ALOUD
    ]


def short_name(name: str) -> str:
    """Return a nutrient's name without the form it is counted in.

    Examples
    --------
    >>> short_name("vitamin_a")
    'Vitamin A'
    """
    return nutrient(name).name.split(" (")[0]
