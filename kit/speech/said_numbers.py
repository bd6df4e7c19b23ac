"""Spoken numbers: an amount, a share, a weight, the number of servings, the effect of a change."""

import re
from collections.abc import Mapping, Sequence
from decimal import Decimal
from typing import Any

from kit.errors import KitError
from kit.food.composition import Food, nutrient
from kit.meal.certainty import Range, said_number
from kit.meal.changes import change, leave_out, swap
from kit.meal.nutrition import ENERGY_SOURCES
from kit.meal.recipe import Recipe
from kit.rules.naming import full_name, is_plural, short_name, thing_said
from kit.rules.reference import daily_values
from kit.rules.verdicts import CANNOT_TELL, HOLDS, OFF
from kit.speech.verdict import Finding
from kit.talk.dish import Dish, content, measure_grams
from kit.talk.placeholders import energy_share, pieces
from kit.talk.talk import Point
from kit.texts import listing, number

OF_DAY, OF_ENERGY, OF_DISH = "% of day", "% of energy", "% of dish"
SHARES = (OF_DAY, OF_ENERGY, OF_DISH)
_WEIGHTS = {"g": 1.0, "mg": 1e-3, "µg": 1e-6}
UNITS = ("kcal", *_WEIGHTS, *SHARES)
_UNKNOWN = Range(float("nan"), float("nan"), float("nan"))
_UNIT_WORDS = {
    "kcal": "calories",
    "g": "grams",
    "mg": "milligrams",
    "µg": "micrograms",
    **dict.fromkeys(SHARES, "percent"),
}


def agrees(said: float, of: Range) -> bool:
    """Return whether a number may be said: inside the range, or the value rounded to the digits spoken.

    Examples
    --------
    >>> agrees(425, Range(431, 401, 461)), agrees(400, Range(431, 415, 447)), agrees(500, Range(431, 401, 461))
    (True, True, False)
    """
    return of.low <= said <= of.high or rounds_to(of.value, said)


def rounds_to(value: float, said: float) -> bool:
    """Return whether a value is a said number when rounded to its digits; closing zeros are not digits.

    Examples
    --------
    >>> rounds_to(431, 400), rounds_to(431, 425), rounds_to(8.14, 8.1)
    (True, False, True)
    """
    exponent = Decimal(str(said)).normalize().as_tuple().exponent
    return bool(abs(round(value, -int(exponent)) - said) < 1e-9)


def with_number(say: str, old: float, new: float) -> str | None:
    """Return a sentence with one number for another, or None when it does not stand there exactly once.

    Examples
    --------
    >>> with_number("A box has about 12 grams of {fiber}.", 12, 15), with_number("Twelve grams.", 12, 15)
    ('A box has about 15 grams of {fiber}.', None)
    """
    texts = {number(old, 6), number(old, 6).replace(",", "")}
    pattern = re.compile(rf"(?<![\d.,])(?:{'|'.join(map(re.escape, texts))})(?![\d]|[.,]\d)")
    outside = [piece.text for piece in pieces(say) if not piece.in_braces]
    if sum(len(pattern.findall(text)) for text in outside) != 1:
        return None
    return "".join(
        f"{{{piece.text}}}" if piece.in_braces else pattern.sub(number(new, 6), piece.text) for piece in pieces(say)
    )


def _digits(of: Range) -> int:
    return 0 if abs(of.value) >= 20 else 1 if abs(of.value) >= 1 else 2


def _ends(of: Range, unit: str) -> str:
    digits = _digits(of)
    text = f"{number(of.value, digits)} {unit}"
    return text if of.half_width <= 0 else f"{text} ({number(of.low, digits)} to {number(of.high, digits)})"


def number_faults(values: Mapping[str, Any]) -> list[str]:
    """Return what does not fit together in what a spoken number means."""
    name, unit, foods, per = (values.get(key) for key in ("nutrient", "unit", "food", "per"))
    found = []
    if (unit in _WEIGHTS and nutrient(name).unit not in _WEIGHTS) or (unit == "kcal" and name != "energy"):
        found.append(f"{name} is in {nutrient(name).unit}; leave the unit out")
    if unit == OF_ENERGY and name not in ENERGY_SOURCES:
        found.append(f"only {listing(ENERGY_SOURCES)} have a share of the energy")
    if unit == OF_DISH and (not foods or per):
        found.append(f'"{OF_DISH}" needs food, an ingredient, and no per')
    if unit == OF_ENERGY and (foods or per):
        found.append(f'"{OF_ENERGY}" is of the whole dish; leave food and per out')
    if per and not foods and per not in ("serving", "100 g"):
        found.append(f'per is "{per}"; write "serving" or "100 g", or name the food')
    if per and foods and len(foods) > 1:
        found.append("per goes with one food")
    return found


def _per(dish: Dish, name: str, foods: Sequence[Food], per: str) -> tuple[Range, str]:
    """Return an amount in the nutrient's own unit, and the beginning of the sentence about it."""
    if foods and per and per != "serving":
        food = foods[0]
        count, measure = (100.0, "g") if per == "100 g" else (1.0, per)
        amount = "100 g" if per == "100 g" else f"a {per}"
        return content(food, name, count * measure_grams(food, measure)), f"{amount} of {full_name(food)} has"
    if foods:
        names = listing([short_name(food) for food in foods])
        verb = "bring" if len(foods) > 1 or is_plural(names) else "brings"
        return dish.brought(foods, name), f"to a serving the {names} {verb}"
    if per == "100 g":
        return dish.in_grams(name, 100) or _UNKNOWN, "100 g of the dish as eaten has"
    return dish.range_of(name), "a serving has"


def check_number(dish: Dish, values: Mapping[str, Any], say: str) -> Finding:
    """Check a spoken number."""
    said, name = float(values["number"]), values["nutrient"]
    foods, per = values.get("food", ()), values.get("per", "")
    unit = values.get("unit") or nutrient(name).unit
    if foods and not dish.places(foods) and per in ("", "serving"):
        return gone(foods, name)
    of, begin = _per(dish, name, foods, per)
    source = foods[0].source if foods and per not in ("", "serving") else dish.source
    if unit == OF_ENERGY:
        of = energy_share(dish, name)
    elif unit == OF_DISH:
        of = dish.share(foods, name)
    elif unit == OF_DAY:
        day = daily_values(dish.talk.rules)[name]
        of, source = _scaled(of, 1 / day.amount), f"{source}; {day.source}"
    if unit in SHARES:
        of = _scaled(of, 100)
        whole = {OF_DAY: "a day's ", OF_ENERGY: "the energy from ", OF_DISH: "the dish's "}[unit]
        shown = f"% of {whole}{thing_said(name)}"
    else:
        own = nutrient(name).unit
        of = of if unit == own else _scaled(of, _WEIGHTS[own] / _WEIGHTS[unit])
        shown = "kcal" if unit == "kcal" else f"{unit} of {thing_said(name)}"
    return _number_finding(dish, values, say, said, of, f"{begin} {_ends(of, shown)}", source)


def _scaled(of: Range, by: float) -> Range:
    return Range(of.value * by, of.low * by, of.high * by)


def _number_finding(
    dish: Dish, values: Mapping[str, Any], say: str, said: float, of: Range, because: str, source: str
) -> Finding:
    name = values["nutrient"]
    if of.value != of.value:  # NaN
        return Finding(CANNOT_TELL, f"the tables do not give the {thing_said(name)} here ({source}); what is it from?")
    lacking = () if values.get("food") else dish.numbers.missing_from(name)
    note = f", at least, since no value is known for {listing(lacking[:3])}" if lacking else ""
    if agrees(said, of):
        return Finding(HOLDS, f"{because}{note} ({source})")
    if lacking and said > of.high:
        return Finding(CANNOT_TELL, f"{because}{note}, and {number(said, 2)} may or may not be right ({source})")
    right = said_number(of.value, of.half_width)
    changed = with_number(say, said, right)
    means = {**values, "number": right, **_keys(values)}
    instead = Point(changed, means=means) if changed else plain_number(name, values)
    return Finding(OFF, f"{because}{note}, and {number(said, 2)} lies outside ({source})", instead)


def _keys(values: Mapping[str, Any]) -> dict[str, Any]:
    """Return foods as the keys that a talk file writes."""
    foods = values.get("food")
    return {"food": [food.key for food in foods] if len(foods) > 1 else foods[0].key} if foods else {}


def plain_number(name: str, values: Mapping[str, Any] | None = None) -> Point:
    """Return a sentence that gives the number itself, filled from the recipe."""
    values = values or {}
    foods, per, unit = values.get("food", ()), values.get("per", ""), values.get("unit", "")
    if foods and per not in ("", "serving"):
        food = foods[0]
        if per == "100 g":
            own = full_name(food)
            has = "have" if is_plural(own) else "has"
            return Point(f"{own[:1].upper()}{own[1:]} {has} {{{name} in 100 g of {food.key}}} in 100 grams.")
        amount = f"one {per}"
        return Point(f"{amount.capitalize()} of {full_name(food)} has {{{name} in {amount} of {food.key}}}.")
    if foods:
        food = foods[0]
        verb = "bring" if is_plural(short_name(food)) else "brings"
        what = f"share of {name} from" if unit == OF_DISH else f"{name} from"
        return Point(f"The {short_name(food)} {verb} {{{what} {food.key}}}.")
    form = {OF_DAY: ".share_of_day", OF_ENERGY: ".share_of_energy"}.get(unit, "")
    if form == ".share_of_energy":
        return Point(f"{name.capitalize()} is {{{name}{form}}}.")
    return Point(f"{{serving}} has {{{name}{form}}}.")


def gone(foods: Sequence[Food], name: str) -> Finding:
    """Return the finding about a food that was left out or swapped on screen."""
    names = listing([short_name(food) for food in foods])
    return Finding(OFF, f"there is no {names} in the dish as it is now", plain_number(name) if name else None)


def check_grams(dish: Dish, values: Mapping[str, Any], say: str) -> Finding:
    """Check the grams of an ingredient in a serving."""
    food, said = values["grams_of"], float(values["number"])
    of = dish.grams(food)
    because = f"a serving holds {_ends(of, 'g')} of {short_name(food)}, by the recipe"
    if agrees(said, of):
        return Finding(HOLDS, because)
    instead = Point(f"{{serving}} holds {{grams of {food.key}}} of {short_name(food)}.")
    return Finding(OFF, f"{because}, and {number(said, 1)} g lies outside", instead)


def check_servings(dish: Dish, values: Mapping[str, Any], say: str) -> Finding:
    """Check how many servings the recipe makes."""
    said, makes = float(values["servings"]), dish.numbers.recipe.servings
    because = f"the recipe makes {number(makes, 1)}"
    if said == makes:
        return Finding(HOLDS, because)
    return Finding(OFF, f"{because}, not {number(said, 1)}", Point("The recipe makes {servings}."))


def changed_recipe(recipe: Recipe, values: Mapping[str, Any]) -> Recipe:
    """Return a recipe with the change that some values describe: ``leave_out``, or ``swap`` and ``for``."""
    if "leave_out" in values:
        return leave_out(recipe, values["leave_out"].key)
    return swap(recipe, values["swap"].key, values["for"])


def change_words(values: Mapping[str, Any]) -> str:
    """Return a change in words: "leaving out the feta cheese", "lentils in place of split peas"."""
    if "leave_out" in values:
        return f"leaving out the {short_name(values['leave_out'])}"
    return f"{full_name(values['for'])} in place of {full_name(values['swap'])}"


def check_effect(dish: Dish, values: Mapping[str, Any], say: str) -> Finding:
    """Check what a change saves or adds in a serving."""
    name = values["nutrient"]
    out = values.get("leave_out") or values["swap"]
    if not dish.places([out]):
        return gone([out], name)
    try:
        of = change(dish.numbers.recipe, changed_recipe(dish.numbers.recipe, values)).difference(name)
    except KitError as fault:
        return Finding(CANNOT_TELL, f"{change_words(values)} cannot be worked out: {fault}")
    key, sign = ("saves", -1) if "saves" in values else ("adds", 1)
    said = float(values[key])
    if sign < 0:
        of = Range(-of.value, -of.high, -of.low)
    unit = nutrient(name).unit
    amount = f"{number(abs(of.value), _digits(of))} {unit} of {thing_said(name)}"
    verb = key if of.value >= 0 else {"saves": "adds", "adds": "saves"}[key]
    ends = [number(end, 0 if abs(of.value) >= 20 else 1) for end in sorted((abs(of.low), abs(of.high)))]
    range_words = f" ({ends[0]} to {ends[1]})" if of.low * of.high > 0 else ""
    because = f"{change_words(values)} {verb} {amount}{range_words} a serving"
    if agrees(said, of):
        return Finding(HOLDS, f"{because} ({dish.source})")
    return Finding(
        OFF, f"{because}, and {number(said, 1)} lies outside ({dish.source})", _effect_instead(values, say, of, key)
    )


def _effect_instead(values: Mapping[str, Any], say: str, of: Range, key: str) -> Point:
    name = values["nutrient"]
    keys = {one: values[one].key for one in ("leave_out", "swap", "for") if one in values}
    verb = key if of.value >= 0 else {"saves": "adds", "adds": "saves"}[key]
    right = abs(said_number(abs(of.value), of.half_width))
    means = {**keys, "nutrient": name, verb: right}
    changed = with_number(say, float(values[key]), right) if verb == key else None
    words = change_words(values)
    begin = words[:1].upper() + words[1:]
    if right == 0:
        return Point(f"{begin} makes hardly any difference to the {thing_said(name)}.", means=means)
    unit = _UNIT_WORDS[nutrient(name).unit]
    what = unit if name == "energy" else f"{unit} of {thing_said(name)}"
    return Point(changed or f"{begin} {verb} about {number(right, 6)} {what} a serving.", means=means)
