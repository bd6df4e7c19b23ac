"""How long a dish keeps, how it is reheated, and how hot each raw food of it has to get."""

from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache

from kit import files
from kit.food.cells import read_rows
from kit.food.composition import Food
from kit.food.vocabulary import words
from kit.meal.recipe import Ingredient, Recipe
from kit.meal.ways import ways
from kit.rules.naming import short_name
from kit.texts import listing, number

_RAW_STATES = ("raw", "frozen")
_MEATS = ("meat", "poultry")
_SEA = ("fish", "shellfish")
# Dishes of which fish or egg stays raw, or nearly so: common practice.
_RAW_DISHES = frozenset(
    "ceviche tartare poke sushi sashimi crudo carpaccio gravlax mayonnaise aioli mousse tiramisu eggnog sabayon".split()
)
_PRESERVED = ("smoked", "cured", "canned", "cooked", "ready", "dried")


@dataclass(frozen=True, slots=True)
class Doneness:
    """How hot a raw food has to get in the middle.

    Attributes
    ----------
    what : str
        The kind of food: "poultry", "ground meat" ...
    fahrenheit, celsius : float
        The least temperature. [degrees]
    rest_minutes : float
        How long it rests after that. [min]
    foods : tuple of str
        The foods of the dish that it is for.
    section : str
        Who publishes it.
    """

    what: str
    fahrenheit: float
    celsius: float
    rest_minutes: float
    foods: tuple[str, ...]
    section: str

    def sentence(self, measures: str = "us") -> str:
        """Return it as it is read out: "Cook the chicken breast to 165 °F (74 °C) in the middle."."""
        degrees = [f"{number(self.fahrenheit)} °F", f"{number(self.celsius)} °C"]
        first, second = reversed(degrees) if measures == "metric" else degrees
        rest = f", and let it rest {number(self.rest_minutes)} minutes" if self.rest_minutes else ""
        return f"Cook the {listing(self.foods)} to {first} ({second}) in the middle{rest}."


@dataclass(frozen=True, slots=True)
class Keeping:
    """How long a dish keeps in the refrigerator.

    Attributes
    ----------
    days : tuple of float, optional
        The least and the most days, the day it was made counted as day 1; None where that cannot be told.
    because : str
        Why.
    section : str
        Who publishes it.
    raw : bool
        Whether it is no cooked dish, so that it is neither kept, frozen nor reheated.
    """

    days: tuple[float, float] | None
    because: str
    section: str
    raw: bool = False


@cache
def storage_rules() -> Mapping[str, Mapping[str, str]]:
    """Return the rows of ``data/storage.csv`` by their rule."""
    return {row["rule"]: row for row in read_rows(files.bundled("data/storage.csv"))}


def keeping(recipe: Recipe) -> Keeping:
    """Return how long a dish keeps: a cooked one 3 to 4 days; one with raw fish or raw egg is eaten the day it is made.

    References
    ----------
    USDA FSIS, leftovers and food safety; the raw dishes: common practice.
    """
    raw, unsure = _stays_raw(recipe)
    rules = storage_rules()
    if raw:
        row = rules["raw_fish_or_egg_days"]
        because = f"the {listing(raw)} in it stays raw, so it is no cooked dish: eat it the day it is made"
        return Keeping((float(row["value"]), float(row["value"])), because, row["source"], raw=True)
    row = rules["keeps_days"]
    days = (float(row["value"]), float(row["value_high"]))
    if unsure:
        because = f"whether the {listing(unsure)} in it is cooked through is not said; a cooked dish keeps 3 to 4 days"
        return Keeping(None, because, row["source"])
    return Keeping(days, "a cooked dish keeps 3 to 4 days at 40 °F (4 °C) or below", row["source"])


def _stays_raw(recipe: Recipe) -> tuple[list[str], list[str]]:
    """Return the raw fish and eggs that the dish leaves raw, and those of which that is not known."""
    title = set(words(recipe.title))
    raw_dish = bool(title & (_RAW_DISHES | {"raw"}))
    raw, unsure = [], []
    for part, way in zip(recipe.ingredients, ways(recipe.title, recipe.ingredients), strict=True):
        if part.grams <= 0 or not _keeps_less_raw(part, raw_dish):
            continue
        name = short_name(part.food)
        if raw_dish or way.name == "raw":
            raw.append(name)
        elif not way.name:  # "raw shrimp" tells how it is bought
            unsure.append(name)
    return list(dict.fromkeys(raw)), list(dict.fromkeys(unsure))


def _keeps_less_raw(part: Ingredient, raw_dish: bool) -> bool:
    """Whether it is raw fish or egg; in a dish like tartare raw meat too."""
    groups = (*_SEA, "egg", *_MEATS) if raw_dish else (*_SEA, "egg")
    return part.food.group in groups and _is_raw(part.food)


def doneness_of(food: Food, raw_only: bool = True) -> Doneness | None:
    """Return how hot a food has to get; None for food that is not meat, fish or egg, or is not raw.

    Parameters
    ----------
    food : Food
        The food.
    raw_only : bool
        Whether cooked, cured and canned food has none.

    References
    ----------
    USDA FSIS and FoodSafety.gov, safe minimum internal temperatures.

    Examples
    --------
    >>> from kit.food.composition import foods
    >>> doneness_of(foods()["chicken-breast"]).fahrenheit, doneness_of(foods()["kale-raw"])
    (165.0, None)
    """
    what = _doneness_rule(food)
    if what is None or (raw_only and not _is_raw(food)):
        return None
    row = storage_rules()[f"doneness_{what}"]
    resting = storage_rules().get(f"rest_{what}")
    fahrenheit, rest = float(row["value"]), float(resting["value"]) if resting else 0.0
    celsius = round((fahrenheit - 32) / 1.8)
    return Doneness(what.replace("_", " "), fahrenheit, celsius, rest, (short_name(food),), row["source"])


def _is_raw(food: Food) -> bool:
    return food.state in _RAW_STATES and not set(_PRESERVED) & set(words(food.name))


def _doneness_rule(food: Food) -> str | None:
    if food.group == "poultry":
        return "poultry"
    if food.group == "meat":
        of_it = set(words(f"{food.name} {food.key.replace('-', ' ')}"))
        if of_it & {"turkey", "chicken"}:
            return "poultry"
        if of_it & {"ground", "sausage", "patty", "mince"}:
            return "ground_meat"
        return "organ_meats" if of_it & {"liver", "heart", "tongue", "kidney"} else "whole_cuts"
    if food.group in _SEA:
        return "fish"
    return "egg_dishes" if food.group == "egg" else None


def doneness(recipe: Recipe) -> tuple[Doneness, ...]:
    """Return how hot the raw meat, fish and eggs of a dish have to get, hottest first."""
    found: dict[str, Doneness] = {}
    for part in recipe.ingredients:
        one = doneness_of(part.food) if part.grams > 0 else None
        if one is not None:
            foods = (*found[one.what].foods, *one.foods) if one.what in found else one.foods
            found[one.what] = Doneness(
                one.what, one.fahrenheit, one.celsius, one.rest_minutes, tuple(dict.fromkeys(foods)), one.section
            )
    return tuple(sorted(found.values(), key=lambda one: -one.fahrenheit))
