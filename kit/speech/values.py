"""How much of a nutrient there is in what a claim is about: the dish, a part of it, a food in it, a food by itself."""

import re
from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from kit.errors import UnknownNameError
from kit.food.composition import Food, foods
from kit.food.nutrients import nutrient, nutrient_index
from kit.food.vocabulary import singular
from kit.meal.certainty import Range
from kit.rules.eu_basis import SALT_PER_SODIUM
from kit.rules.naming import full_name, is_plural, short_name, thing_said
from kit.rules.spoken import FRACTIONS
from kit.rules.verdicts import CANNOT_TELL, OFF
from kit.speech.claim import FOOD, SERVING, UNKNOWN, WEIGHT, WHOLE, About, Choice, Finding
from kit.speech.missing import LITTLE_MISSING, most_missing, with_missing
from kit.speech.words.foods_said import COLLECTIVE, FoodWord
from kit.talk.dish import Dish, content, measure_grams
from kit.texts import listing, number

KJ_PER_KCAL = 4.184
MUCH_UNKNOWN = 0.05  # of the dish's weight without a value, from which an amount is only the least
_PIECES = ("large", "medium", "piece", "each", "whole", "small", "fruit", "item")


@dataclass(frozen=True, slots=True)
class Amount:
    """How much there is, whose it is as the beginning of a sentence, and whether more may be there."""

    of: Range
    begin: str
    open_above: bool = False
    source: str = ""


# What the table does not hold and others give: salt from sodium, unsaturated fat from two fats. [g]
WORKED_OUT = ("salt", "unsaturated_fat")


def said_thing(name: str) -> str:
    """Return a nutrient as it is said, salt among them."""
    if name in WORKED_OUT:
        return name.replace("_", " ")
    return thing_said(name)


def unit_of(name: str) -> str:
    """Return the unit an amount of a nutrient is worked in; salt is in grams."""
    return "g" if name in WORKED_OUT else nutrient(name).unit


def scaled(of: Range, factor: float) -> Range:
    """Return a range multiplied by a number."""
    return Range(of.value * factor, of.low * factor, of.high * factor)


def called(dish: Dish, food: Food) -> str:
    """Return a food of the dish as it is spoken of: in the plural where the recipe's line has it ("8 large eggs")."""
    name = _KIND_BEHIND.sub("", short_name(food))
    first, _, last = name.rpartition(" ")
    for part in dish.numbers.recipe.ingredients:
        if part.food.key == food.key and not is_plural(name):
            several = next((word for word in _WORD.findall(part.line.lower()) if word != last == singular(word)), last)
            return f"{first} {several}".strip()
    return name


_KIND_BEHIND = re.compile(r" for stew$| shapes$")  # "lamb for stew", "whole-wheat pasta shapes"
_WORD = re.compile(r"[a-z]+")


def present(dish: Dish, word: FoodWord) -> list[Food]:
    """Return the foods that a word names and that are in the dish as it is now."""
    parts = {part.food.key: part.food for part in dish.numbers.recipe.ingredients if part.grams > 0}
    return [parts[key] for key in word.inside if key in parts]


def alone(dish: Dish, word: FoodWord) -> list[Food]:
    """Return the foods that a word may mean by itself, those of the dish first."""
    inside = present(dish, word) or [dish.food(key) for key in word.inside]
    if inside and not word.exact:
        return inside
    table = foods()
    outside = [table[key] for key in word.outside if key in table]
    return inside or outside


def not_there(word: FoodWord) -> Finding:
    """Return the finding that a food is not in the dish, or has been taken out of it."""
    return Finding(OFF, f"there {'are' if is_plural(word.text) else 'is'} no {word.text} in the dish as it is now")


def pinned(dish: Dish, words: Sequence[FoodWord]) -> Finding | list[Food]:
    """Return the foods of the dish that some words name together, or the finding that one is not in it."""
    found: list[Food] = []
    for word in words:
        here = present(dish, word)
        if not here:
            return not_there(word)
        found += here
    return list({food.key: food for food in found}.values())


def choices(words: Sequence[FoodWord], dish: Dish, inside: bool = True) -> tuple[Choice, ...]:
    """Return the words among some that could mean several foods, with what each can be pinned to."""
    found = []
    for word in words:
        options = present(dish, word) if inside else alone(dish, word)
        if len(options) > 1 and not (inside and word.text in COLLECTIVE):
            found.append(Choice(word.text, tuple((food.key, food.name) for food in options[:8])))
    return tuple(found)


def of_nutrient(name: str, values: dict[str, Range] | None = None) -> tuple[tuple[str, float], ...]:
    """Return the table's nutrients, each with its factor, that make up one that is said: salt, unsaturated fat."""
    if name == "salt":
        return (("sodium", SALT_PER_SODIUM / 1000),)
    if name == "unsaturated_fat":
        return (("monounsaturated_fat", 1.0), ("polyunsaturated_fat", 1.0))
    return ((name, 1.0),)


def total(parts: Sequence[Range]) -> Range:
    """Return the sum of independent ranges."""
    value = sum(part.value for part in parts)
    half = float(np.hypot.reduce([part.half_width for part in parts])) if parts else 0.0
    return Range(value, max(0.0, value - half), value + half)


def amount_of(dish: Dish, name: str, about: About) -> Amount | Finding:
    """Return how much of a nutrient there is in what a claim is about.

    Returns
    -------
    Amount or Finding
        A finding when it cannot be worked out, or a food is not in the dish.
    """
    if about.kind == UNKNOWN:
        return Finding(CANNOT_TELL, f'what "{about.words}" holds is not known')
    if about.kind == FOOD and about.measure:
        return _measured(dish, name, about)
    if about.kind == FOOD:
        return _brought(dish, name, about)
    parts = []
    for own, factor in of_nutrient(name):
        of = with_missing(dish, own, dish.range_of(own))
        if about.kind == WEIGHT:
            inside = dish.in_grams(own, about.count)
            if inside is None:
                return Finding(CANNOT_TELL, "what the dish weighs is not known")
            of = inside
        elif about.kind == WHOLE:
            of = scaled(of, about.count * dish.numbers.recipe.servings)
        else:
            of = scaled(of, about.count)
        parts.append(scaled(of, factor))
    return Amount(total(parts) if len(parts) > 1 else parts[0], begin_of(dish, about), lacking(dish, name), dish.source)


def begin_of(dish: Dish, about: About) -> str:
    """Return the beginning of a sentence about the dish or a part of it: "a serving has"."""
    if about.kind == WEIGHT:
        return f"{number(about.count)} g of the dish as eaten has"
    if about.kind == WHOLE:
        parts = round(1 / about.count)
        if parts > 4 and abs(1 / parts - about.count) < 1e-9:
            return f"one of {parts} equal parts of the whole recipe has"
        if about.count in FRACTIONS:
            return f"{FRACTIONS[about.count]} of the whole recipe has"
        return "the whole recipe has" if about.count == 1 else f"{number(about.count, 2)} of the whole recipe has"
    if about.kind == SERVING and about.count == 1:
        return "a serving has"
    if about.count == 0.5:
        return "half a serving has"
    return f"{number(about.count, 2)} servings have"


def lacking(dish: Dish, name: str) -> bool:
    """Return whether so much of the dish has no value for a nutrient that an amount is only the least."""
    grams = dish.numbers.recipe.grams
    whole = float(grams.sum())
    for own, _ in of_nutrient(name):
        missing = dish.numbers.missing[:, nutrient_index(own)]
        much = whole and float(grams[missing].sum()) / whole > MUCH_UNKNOWN
        if much and not most_missing(dish, own) <= LITTLE_MISSING * float(
            dish.numbers.per_serving[nutrient_index(own)]
        ):
            return True
    return False


def _brought(dish: Dish, name: str, about: About) -> Amount | Finding:
    found = pinned(dish, about.foods)
    if isinstance(found, Finding):
        if about.foods[0].inside:
            return found
        names = listing([word.text for word in about.foods])
        return Finding(CANNOT_TELL, f"how much of the {names} is meant? Say a cup, an ounce or 100 grams of it")
    several = choices(about.foods, dish)
    parts = [scaled(dish.brought(found, own), factor) for own, factor in of_nutrient(name)]
    names = listing([called(dish, food) for food in found])
    verb = "bring" if len(found) > 1 or is_plural(names) else "brings"
    if several and len(about.foods) == 1:
        return Finding(CANNOT_TELL, f"which {about.foods[0].text} is meant?", choices=several)
    return Amount(total(parts) if len(parts) > 1 else parts[0], f"to a serving the {names} {verb}", False, dish.source)


def food_grams(food: Food, about: About) -> float | None:
    """Return the grams of a food that a claim names; None when a measure of it is not known."""
    if about.measure == "g":
        return about.count
    names = _PIECES if about.measure == "piece" else (about.measure,)
    said = about.foods[0].text.split(" ") if about.foods else []  # "a cup of chopped hazelnuts"
    for row in food.measures:
        if row.measure == about.measure and row.cut and row.cut in said:
            return about.count * row.grams
    for name in names:
        try:
            return about.count * measure_grams(food, name)
        except UnknownNameError:
            continue
    return None


def _measured(dish: Dish, name: str, about: About) -> Amount | Finding:
    word = about.foods[0]
    options = alone(dish, word)
    amounts = []
    for food in options:
        grams = food_grams(food, about)
        if grams is None:
            continue
        values = [content(food, own, grams * factor, dish.talk.rules) for own, factor in of_nutrient(name)]
        if any(value.value != value.value for value in values):
            return Finding(CANNOT_TELL, f"the table has no {said_thing(name)} for {full_name(food)}")
        of = total(values) if len(values) > 1 else values[0]
        amounts.append((food, grams, of))
    if not amounts:
        return Finding(CANNOT_TELL, f"what {number(about.count, 2)} {about.measure} of {word.text} weighs is not known")
    first = amounts[0]
    if len(amounts) > 1 and max(of.value for _, _, of in amounts) > 1.3 * min(of.value for _, _, of in amounts):
        return Finding(CANNOT_TELL, f"which {word.text} is meant?", choices=choices([word], dish, inside=False))
    return Amount(
        first[2],
        f"{number(first[1], 0 if first[1] >= 10 else 1)} g of {full_name(first[0])} has",
        False,
        first[0].source,
    )


def ends(of: Range, unit: str) -> str:
    """Return a value with its range: "431 kcal (401 to 461)"."""
    digits = 0 if abs(of.value) >= 20 else 1 if abs(of.value) >= 1 else 2
    text = f"{number(of.value, digits)} {unit}"
    return text if of.half_width <= 0 else f"{text} ({number(of.low, digits)} to {number(of.high, digits)})"
