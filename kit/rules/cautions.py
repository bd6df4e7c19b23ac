"""What is said beside the numbers: local codes first, allergens and what brings them, keeping, who should ask."""

import re
from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from kit import files
from kit.errors import UnknownNameError
from kit.food.alcohol import alcohol_of
from kit.food.cells import read_rows
from kit.food.composition import Food
from kit.food.daily_values import daily_values
from kit.food.nutrients import nutrient
from kit.meal.nutrition import Nutrition
from kit.meal.recipe import Recipe
from kit.rules.allergens import allergen_sentence, must_be_asked
from kit.rules.keeping import doneness, keeping, storage_rules
from kit.rules.naming import short_name, thing_said
from kit.texts import listing, number, percent

# Rules of data/storage.csv that are read out after a talk, in this order.
READ_OUT = ("hours_out", "hours_out_hot", "keeps_days", "day_one", "freezer_months", "reheat")
_OF_COOKED_DISHES = ("day_one", "freezer_months", "reheat")
FIRST = ("local_codes", "general_education")
_HIGH = 0.20  # of a day in a serving, from which a nutrient is worth naming: FDA teaches that 20 % is high
_LISTS = ("us", "eu")
_DRY_KIDNEY_BEANS = ("kidney_bean_soak_hours", "kidney_bean_boil_minutes")
_SAUCES = ("dressing", "sauce")


@dataclass(frozen=True, slots=True)
class Allergen:
    """An allergen of the dish: its id and name, and the foods that bring it."""

    allergen: str
    name: str
    foods: tuple[str, ...]

    @property
    def sentence(self) -> str:
        """The allergen with the foods that bring it: "Milk, from the feta cheese"."""
        return allergen_sentence(self.name, self.foods)


@dataclass(frozen=True, slots=True)
class Caution:
    """Something to say beside the numbers: who it is for, the sentence, and why it is said of this dish."""

    caution: str
    who: str
    sentence: str
    why: str = ""


def _used(recipe: Recipe) -> tuple[Food, ...]:
    return tuple({part.food.key: part.food for part in recipe.ingredients if part.grams > 0}.values())


def allergens(recipe: Recipe, rules: str = "us") -> tuple[Allergen, ...]:
    """Return the allergens of a dish that a list names, each with the foods that bring it.

    Parameters
    ----------
    recipe : Recipe
        The dish as it is now; what is left out brings nothing.
    rules : {"us", "eu"}
        The nine major US allergens, or the fourteen of the EU, in the list's order.

    Raises
    ------
    UnknownNameError
        If there is no such list.

    References
    ----------
    21 U.S.C. 321(qq); Regulation (EU) 1169/2011, Annex II.

    Examples
    --------
    >>> from kit.meal.recipe import recipe
    >>> [one.sentence for one in allergens(recipe("Bowl", ["1 cup bulgur, dry", "1/2 cup feta, crumbled"]))]
    ['Milk, from the feta cheese', 'Wheat, from the bulgur']
    """
    if rules not in _LISTS:
        raise UnknownNameError("list of allergens", rules, _LISTS)
    found: dict[str, tuple[str, list[str]]] = {}
    for row in read_rows(files.bundled("data/allergens.csv")):
        bring = [short_name(food) for food in _used(recipe) if row["allergen"] in food.allergens]
        if row[rules] == "yes" and bring:
            found.setdefault(row["name"], (row["allergen"], []))[1].extend(bring)
    return tuple(Allergen(first, name, tuple(dict.fromkeys(bring))) for name, (first, bring) in found.items())


def unknown_allergens(recipe: Recipe) -> tuple[str, ...]:
    """Return the foods whose package has to be read: nothing is known of them, or they differ by maker."""
    return tuple(short_name(food) for food in _used(recipe) if must_be_asked(food))


def storage(measures: str = "us", keeps_days: float | None = None, recipe: Recipe | None = None) -> tuple[str, ...]:
    """Return the sentences about cooking through, keeping and reheating.

    Parameters
    ----------
    measures : {"us", "metric"}
        Degrees Fahrenheit or Celsius first.
    keeps_days : float, optional
        What the talk says; a longer time than the published one is not repeated.
    recipe : Recipe, optional
        The dish, so that what holds for one food or part only is said too.

    References
    ----------
    USDA FSIS, leftovers and food safety; FDA Food Code 3-501.14 and 3-501.17.

    Examples
    --------
    >>> storage()[0], storage("metric")[-1]
    ('Put it into the refrigerator within 2 hours.', 'Reheat it to 74 °C (165 °F) right through.')
    """
    rules = storage_rules()
    told = {rule: rules[rule]["words"] for rule in READ_OUT if rule in rules}
    hot = _degrees("hot_day", measures)
    told["hours_out_hot"] = f"On a day above {hot}, within {rules['hours_out_hot']['value']} hour."
    told["reheat"] = f"Reheat it to {_degrees('reheat', measures)} right through."
    kept = keeping(recipe) if recipe else None
    most = float(rules["keeps_days"]["value_high"])
    if kept and kept.raw:
        told = {rule: words for rule, words in told.items() if rule not in _OF_COOKED_DISHES}
        told["keeps_days"] = rules["raw_fish_or_egg_days"]["words"]
    elif keeps_days is not None and keeps_days <= most:
        days = f"{number(keeps_days, 1)} {'day' if keeps_days == 1 else 'days'}"
        told["keeps_days"] = f"It keeps {days} in the refrigerator, at {_degrees('refrigerator', measures)} or below."
    cook_to = [one.sentence(measures) for one in doneness(recipe)] if recipe and not (kept and kept.raw) else []
    return (*cook_to, *told.values(), *(rules[rule]["words"] for rule in _own_rules(recipe)))


def _own_rules(recipe: Recipe | None) -> list[str]:
    """Return the rules that only some dishes give cause for."""
    parts = [part for part in recipe.ingredients if part.grams > 0] if recipe else []
    dry_beans = any(part.food.base == "kidney-beans" and part.food.state == "dry" for part in parts)
    apart = any(part.part in _SAUCES for part in parts)
    return [*(_DRY_KIDNEY_BEANS if dry_beans else ()), *(("sauce_apart",) if apart else ())]


def _degrees(rule: str, measures: str) -> str:
    fahrenheit, celsius = (f"{storage_rules()[f'{rule}_{scale}']['value']} °{scale.upper()}" for scale in "fc")
    first, second = (celsius, fahrenheit) if measures == "metric" else (fahrenheit, celsius)
    return f"{first} ({second})"


def cautions(numbers: Nutrition, rules: str = "us") -> tuple[Caution, ...]:
    """Return who should ask their own clinician, and why this dish gives cause; local codes come first.

    Parameters
    ----------
    numbers : Nutrition
        The dish as it is now.
    rules : {"us", "eu"}
        Whose allergens and daily values.

    Returns
    -------
    tuple of Caution
        In the order to be read out.

    References
    ----------
    ``data/cautions.csv``: common practice. A nutrient is named from 20 % of its daily value in a serving.
    """
    rows = read_rows(files.bundled("data/cautions.csv"))
    found = [caution for row in rows if (caution := _caution(row, numbers, rules)) is not None]
    return tuple(sorted(found, key=lambda one: FIRST.index(one.caution) if one.caution in FIRST else len(FIRST)))


def _caution(row: Mapping[str, str], numbers: Nutrition, rules: str) -> Caution | None:
    why = {
        "always": _why_always,
        "allergen": lambda _row, numbers: _why_allergen(numbers, rules),
        "nutrient": lambda row, numbers: _why_nutrient(row, numbers, rules),
        "food": _why_food,
        "alcohol": _why_alcohol,
    }[row["shown"]](row, numbers)
    if why is None:
        return None
    return Caution(row["caution"], row["who"], row["words"], why)


def _why_always(row: Mapping[str, str], numbers: Nutrition) -> str:
    return _why_food(row, numbers) or ""


def _why_allergen(numbers: Nutrition, rules: str) -> str | None:
    there, unknown = allergens(numbers.recipe, rules), unknown_allergens(numbers.recipe)
    told = [one.sentence[:1].lower() + one.sentence[1:] for one in there]
    told += [f"read the package of the {listing(unknown)}"] if unknown else []
    return "; ".join(told) or None


def _why_nutrient(row: Mapping[str, str], numbers: Nutrition, rules: str) -> str | None:
    told = []
    for name in row["nutrients"].split("; "):
        value, day = numbers[name], daily_values(rules).get(name)
        if day is not None and value / day.amount >= _HIGH:
            about = nutrient(name)
            amount = f"{number(value, about.decimals)} {about.unit}"
            leading = _leading(numbers, name)
            told.append(f"{thing_said(name)} {amount}, {percent(value / day.amount)} of a day{leading}")
    return f"a serving has {listing(told)}" if told else None


def _leading(numbers: Nutrition, name: str) -> str:
    brings = [0.0 if value != value else float(value) for value in numbers.brings(name)]
    if not brings or max(brings) < 0.3 * numbers[name]:
        return ""
    food = numbers.recipe.ingredients[brings.index(max(brings))].food
    return (
        f" (most from the {short_name(food)})"
        if max(brings) > 0.5 * numbers[name]
        else f" (the {short_name(food)} first)"
    )


def _why_food(row: Mapping[str, str], numbers: Nutrition) -> str | None:
    asked = [words for words in row["food_words"].split("; ") if words]
    named = [short_name(food) for food in _used(numbers.recipe) if _named(food, asked)]
    return f"it holds {listing(list(dict.fromkeys(named)))}" if named else None


def _why_alcohol(_row: Mapping[str, str], numbers: Nutrition) -> str | None:
    named = [short_name(food) for food in _used(numbers.recipe) if alcohol_of(food) > 0]
    return f"it holds {listing(named)}" if named else None


def _named(food: Food, asked: Sequence[str]) -> bool:
    name = food.name.lower()
    return any(re.search(rf"\b{re.escape(words)}s?(?:es)?\b", name) for words in asked)
