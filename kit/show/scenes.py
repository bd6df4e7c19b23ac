"""What the audience sees, one thing at a time, as plain values that the page draws: numbers, a chart, a change, words.

A scene is a mapping with ``kind`` and what that kind needs; `frame` is what stands around all of them. Every text is a
text as it is said or written, formatted by earlier rooms; the page places it and never works anything out.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Any

from kit.food.composition import COMPOSITION
from kit.food.measures import plural
from kit.food.nutrients import nutrient
from kit.meal.buying import to_buy
from kit.meal.certainty import spoken_parts_per_serving
from kit.meal.containers import container_lines
from kit.meal.kitchen_amounts import kitchen_line
from kit.meal.nutrition import Nutrition
from kit.rules.cautions import allergens, cautions, storage
from kit.show import views
from kit.show.marks import Drawing
from kit.talk.talk import Talk
from kit.texts import listing, number

Scene = dict[str, Any]
FIGURES = f"Figures: {COMPOSITION}"
ESTIMATES = "Estimates from a composition table; general education, not individual advice."
BLANK: Scene = {"kind": "blank"}
MOST_NUMBERS = 4
NAMES = {
    "numbers": "Numbers",
    "shares": "Shares of energy",
    "sources": "Where from",
    "day": "Share of a day",
    "plate": "Parts",
    "balance": "Balance",
    "change": "Before and after",
    "recipe": "Recipe",
    "keeping": "Allergens, keeping",
    "cautions": "Who asks first",
    "portions": "Portions, shopping",
}


@dataclass(frozen=True, slots=True)
class Shown:
    """What she chose to show.

    Attributes
    ----------
    numbers : tuple of str
        The nutrients whose numbers are shown, `MOST_NUMBERS` at most.
    source_of : str
        The nutrient whose sources are drawn.
    system : {"us", "metric"}
        The measures of the recipe.
    because : str
        What was changed last, in her words.
    """

    numbers: tuple[str, ...] = views.READ_ALOUD
    source_of: str = "protein"
    system: str = "us"
    because: str = ""


def frame(talk: Talk, now: Nutrition) -> dict[str, str]:
    """Return what stands around every scene: title, what one serving is and contains, the series, whose figures."""
    allergens_in_it = contains(talk, now)
    return {
        "title": talk.title,
        "aside": f"{one_of(now)} · {allergens_in_it}",
        "contains": allergens_in_it,
        "series": talk.series.split(",")[0],
        "figures": FIGURES,
    }


def under_a_picture(talk: Talk) -> tuple[str, ...]:
    """Return the lines that stand under a chart that is kept as a picture."""
    return (" · ".join(filter(None, (talk.title, talk.series))), FIGURES)


def one_of(now: Nutrition) -> str:
    """Return what the numbers are of.

    Examples
    --------
    >>> from kit.meal.nutrition import nutrition
    >>> from kit.meal.recipe import recipe
    >>> one_of(nutrition(recipe("Oats", ["1 cup rolled oats"], servings=2)))
    'one of 2 servings'
    """
    thing = now.recipe.serving_is
    servings = now.recipe.servings
    return f"{'one' if thing == 'serving' else thing} of {_so_many(servings, thing)}"


def _so_many(servings: float, thing: str) -> str:
    """Return how many servings there are; what they are called otherwise stands beside it."""
    return f"{number(servings, 2)} {plural('serving', servings)}" if thing == "serving" else number(servings, 2)


def contains(talk: Talk, now: Nutrition) -> str:
    """Return which major allergens the dish contains as it is set."""
    found = [allergen.name for allergen in allergens(now.recipe, talk.rules)]
    return f"contains {listing(found)}" if found else "none of the major allergens"


def scene(name: str, talk: Talk, now: Nutrition, written: Nutrition, shown: Shown) -> Scene:
    """Return a scene of a dish by its name, one of `NAMES`.

    Parameters
    ----------
    name : str
        Which one.
    talk : Talk
        The talk.
    now, written : Nutrition
        The dish as it is set and as written, with the same number of ingredients.
    shown : Shown
        What she chose to show of it.
    """
    if name == "numbers":
        return numbers_scene(now, written, shown.numbers, shown.because)
    if name == "recipe":
        return recipe_scene(talk, now, written, shown.system)
    if name == "keeping":
        return keeping_scene(talk, now)
    if name == "cautions":
        return _list("Who asks their own clinician first", [("", [c.sentence for c in cautions(now, talk.rules)])])
    if name == "portions":
        return portions_scene(now, shown.system)
    if name == "plate":
        return chart_scene(views.plate(now, written))
    return chart_scene(views.drawing(name, now, written, shown.source_of, talk.rules, views.FEW_OF_A_DAY))


def numbers_scene(now: Nutrition, written: Nutrition, names: Sequence[str], because: str = "") -> Scene:
    """Return the large numbers, one to four, as they are said, beside what they were; `because` names the change."""
    said, before = spoken_parts_per_serving(now), spoken_parts_per_serving(written)
    shown = [
        {
            "label": " ".join(filter(None, (f"{nutrient(name).short_name},", said[name][0]))).rstrip(","),
            "value": said[name][1],
            "unit": said[name][2],
            "was": "" if said[name] == before[name] else _was(before[name], because),
        }
        for name in names[:MOST_NUMBERS]
    ]
    return {"kind": "numbers", "numbers": shown, "footer": ESTIMATES}


def _was(parts: tuple[str, str, str], because: str) -> str:
    return f"was {parts[1]}" + (f": {because}" if because else "")


def chart_scene(drawing: Drawing) -> Scene:
    """Return a chart under its sentence."""
    meta = drawing["layout"]["meta"]
    return {"kind": "chart", "sentence": meta["sentence"], "figure": drawing, "footer": meta["key"]}


def recipe_scene(talk: Talk, now: Nutrition, written: Nutrition, system: str) -> Scene:
    """Return the recipe part by part, in kitchen measures, as written where nothing changed; with its allergens."""
    before = [(part.food.key, part.grams, part.line) for part in written.recipe.ingredients]
    used = [(at, part) for at, part in enumerate(now.recipe.ingredients) if part.grams > 0]
    order = list(dict.fromkeys(part.part for _, part in used))
    groups: list[dict[str, Any]] = [{"heading": part.capitalize(), "lines": []} for part in order]
    for at, part in used:
        key, grams, line = before[at]
        still = system == talk.measures and line and (key, grams) == (part.food.key, part.grams)
        groups[order.index(part.part)]["lines"].append(line if still else kitchen_line(part, system))
    text = contains(talk, now)
    makes = f"Makes {_so_many(now.recipe.servings, talk.recipe.serving_is)}."
    return {"kind": "list", "sentence": f"{text[:1].upper()}{text[1:]}.", "groups": groups, "footer": makes}


def keeping_scene(talk: Talk, now: Nutrition) -> Scene:
    """Return the allergens with what brings them, and how the dish is kept and reheated."""
    brings = [found.sentence for found in allergens(now.recipe, talk.rules)] or ["None of the major allergens"]
    return _list(
        "Allergens, and how it keeps",
        [("Contains", brings), ("Keeping", storage(talk.measures, talk.keeps_days, now.recipe))],
    )


def portions_scene(now: Nutrition, system: str) -> Scene:
    """Return what goes in each container, and what to buy for all of them."""
    recipe = now.recipe
    buying = [thing.line for thing in to_buy(recipe, system) if not thing.at_hand]
    return _list(
        f"For {number(recipe.servings, 2)}: what each gets, and what to buy",
        [("In each", container_lines(recipe, system)), ("To buy", buying)],
    )


def _list(sentence: str, groups: Sequence[tuple[str, Sequence[str]]]) -> Scene:
    told = [{"heading": heading, "lines": list(lines)} for heading, lines in groups if lines]
    return {"kind": "list", "sentence": sentence, "groups": told, "footer": ESTIMATES}
