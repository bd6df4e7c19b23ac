"""Comparisons of two foods, or of a food with the dish: worked per cup, per 100 g, per 100 kcal and per serving."""

from collections.abc import Mapping
from dataclasses import dataclass
from math import hypot, isfinite, isnan
from typing import Any

from kit.errors import UnknownNameError
from kit.food.composition import Food, nutrient, nutrient_index
from kit.lines.weighing import Z90
from kit.meal.certainty import Range, composition_sd
from kit.rules.naming import full_name, is_plural, thing_said
from kit.rules.subjects import of_food
from kit.rules.verdicts import CANNOT_TELL, HOLDS, OFF
from kit.speech.said_numbers import plain_number
from kit.speech.verdict import Finding
from kit.talk.dish import Dish, measure_grams
from kit.talk.talk import Point
from kit.texts import listing, number

BASES = ("cup", "100 g", "100 kcal", "serving")
DISH = "dish"
LEAST, MOST = 0.85, 1.15  # "about k times" holds between k times these: common practice


@dataclass(frozen=True, slots=True)
class Side:
    """One side of a comparison on one basis: the amount, its 90 % range, and whose it is."""

    of: Range
    words: str


def _amount(dish: Dish, food: Food | None, name: str, basis: str) -> Range | None:
    """Return what a food, or the dish, holds on a basis; None where that cannot be known."""
    if food is None:
        return None if basis == "cup" else dish.in_grams(name, dish.subject.grams(basis)[0])
    if basis == "cup":
        try:
            grams = measure_grams(food, "cup")
        except UnknownNameError:
            return None
    else:
        grams = of_food(food).grams(basis)[0]
    value = food[name] * grams / 100
    if isnan(value):
        return None
    half = Z90 * float(composition_sd(food)[nutrient_index(name)]) * value
    return Range(value, max(0.0, value - half), value + half)


def _sides(dish: Dish, values: Mapping[str, Any], other: str, basis: str) -> tuple[Side, Side] | None:
    sides = []
    for food in (values["food"], values[other]):
        of = _amount(dish, food, values["nutrient"], basis)
        if of is None:
            return None
        sides.append(Side(of, "the dish" if food is None else full_name(food)))
    return sides[0], sides[1]


def _all_sides(dish: Dish, values: Mapping[str, Any], other: str) -> dict[str, tuple[Side, Side]]:
    found = {basis: _sides(dish, values, other, basis) for basis in BASES}
    return {basis: sides for basis, sides in found.items() if sides is not None}


def comparison_faults(dish: Dish, values: Mapping[str, Any], other: str) -> list[str]:
    """Return what does not fit together in a comparison."""
    per, foods = values.get("per"), (values["food"], values[other])
    if foods[0] is foods[1]:
        return ["a comparison needs two different foods"]
    if per and _sides(dish, values, other, per) is None:
        known = listing([f'"{basis}"' for basis in _all_sides(dish, values, other)], "or")
        known = f"; write per = {known}" if known else ""
        return [f'the {thing_said(values["nutrient"])} of the two cannot be compared per "{per}"{known}']
    return []


def _ratio(sides: tuple[Side, Side]) -> float:
    own, other = (side.of.value for side in sides)
    return own / other if other > 0 else float("inf") if own > 0 else float("nan")


def _told(basis: str, sides: tuple[Side, Side], name: str) -> str:
    about = nutrient(name)
    own, other = (number(side.of.value, about.decimals) for side in sides)
    ratio = _ratio(sides)
    times = f", {number(ratio, 1 if ratio >= 0.95 else 2)} times" if isfinite(ratio) else ""
    usual = " (the amounts usually eaten)" if basis == "serving" else ""
    return f"per {basis}{usual} {own} against {other} {about.unit}{times}"


def _because(sides: Mapping[str, tuple[Side, Side]], chosen: str, name: str) -> str:
    first = next(iter(sides.values()))
    order = [chosen, *(basis for basis in sides if basis != chosen)] if chosen else list(sides)
    told = "; ".join(_told(basis, sides[basis], name) for basis in order)
    return f"{first[0].words} against {first[1].words}, {thing_said(name)}: {told}"


def _sources(values: Mapping[str, Any], other: str, dish: Dish) -> str:
    sources = [dish.source if food is None else food.source for food in (values["food"], values[other])]
    return " and ".join(dict.fromkeys(sources))


def check_times(dish: Dish, values: Mapping[str, Any], say: str) -> Finding:
    """Check "about k times as much"."""
    times, per, name = float(values["times"]), values.get("per", ""), values["nutrient"]
    sides = _all_sides(dish, values, "than")
    if not sides:
        return Finding(
            CANNOT_TELL, f"the table does not give the {thing_said(name)} of both; what is the sentence from?"
        )
    because = f"{_because(sides, per, name)} ({_sources(values, 'than', dish)})"
    kept = {basis: LEAST * times <= _ratio(pair) <= MOST * times for basis, pair in sides.items()}
    wanted = [kept[per]] if per else list(kept.values())
    if all(wanted):
        return Finding(HOLDS, because)
    if any(wanted):
        good = listing([f"per {basis}" for basis, holds in kept.items() if holds])
        return Finding(CANNOT_TELL, f"{number(times, 2)} times holds only {good}: which is meant? {because}")
    basis = per or next(iter(sides))
    return Finding(OFF, because, _times_instead(values, basis, sides[basis]))


def _times_instead(values: Mapping[str, Any], basis: str, sides: tuple[Side, Side]) -> Point:
    name, ratio = values["nutrient"], _ratio(sides)
    if not isfinite(ratio) or ratio == 0:
        return plain_number(name, _alone(values, basis))
    foods = [values["food"], values["than"]]
    if ratio < LEAST:
        foods, ratio = foods[::-1], 1 / ratio
    times = 1.0 if ratio <= MOST else _speakable(ratio)
    words = [_portion(food, basis) for food in foods]
    has = "have" if is_plural(words[0]) and basis != "cup" and foods[0] is not None else "has"
    begin = words[0][:1].upper() + words[0][1:]
    amount = (
        f"about as much {thing_said(name)} as"
        if times == 1
        else f"about {number(times, 1)} times the {thing_said(name)} of"
    )
    keys = {key: DISH if food is None else food.key for key, food in zip(("food", "than"), foods, strict=True)}
    means = {"times": times, "nutrient": name, **keys, "per": basis}
    usual = "" if basis == "cup" else f", {_basis_words(basis)}"
    return Point(f"{begin} {has} {amount} {words[1]}{usual}.", means=means)


def _alone(values: Mapping[str, Any], basis: str) -> dict[str, Any]:
    food = values["food"]
    return {} if food is None else {"food": (food,), "per": basis if basis == "cup" else "100 g"}


def _basis_words(basis: str) -> str:
    return {"100 kcal": "calorie for calorie", "100 g": "weight for weight"}.get(basis, "in the amounts usually eaten")


def _portion(food: Food | None, basis: str) -> str:
    name = "the dish" if food is None else full_name(food)
    return f"a cup of {name}" if basis == "cup" else name


def _speakable(ratio: float) -> float:
    """Return a ratio as it is said: 1.3, 1.5, 2, 2.5, 3, 4 ..."""
    return round(ratio, 1) if ratio < 1.75 else round(2 * ratio) / 2 if ratio < 3.75 else float(round(ratio))


def check_more(dish: Dish, values: Mapping[str, Any], say: str) -> Finding:
    """Check that one holds more, or less, of a nutrient than another."""
    other = "more_than" if "more_than" in values else "less_than"
    per, name = values.get("per", ""), values["nutrient"]
    sides = _all_sides(dish, values, other)
    if not sides:
        return Finding(
            CANNOT_TELL, f"the table does not give the {thing_said(name)} of both; what is the sentence from?"
        )
    because = f"{_because(sides, per, name)} ({_sources(values, other, dish)})"
    signs = {basis: _sign(pair) * (1 if other == "more_than" else -1) for basis, pair in sides.items()}
    wanted = [signs[per]] if per else list(signs.values())
    if all(sign > 0 for sign in wanted):
        return Finding(HOLDS, because)
    if all(sign < 0 for sign in wanted):
        basis = per or next(iter(sides))
        return Finding(OFF, because, _more_instead(values, other, basis))
    if 1 in wanted and -1 in wanted:
        good = listing([f"per {basis}" for basis, sign in signs.items() if sign > 0])
        return Finding(CANNOT_TELL, f"that holds only {good}: which is meant? {because}")
    return Finding(CANNOT_TELL, f"the two are too near for the table to tell: {because}")


def _sign(sides: tuple[Side, Side]) -> int:
    difference = sides[0].of.value - sides[1].of.value
    unsure = hypot(sides[0].of.half_width, sides[1].of.half_width)
    return 0 if abs(difference) <= unsure else 1 if difference > 0 else -1


def _more_instead(values: Mapping[str, Any], other: str, basis: str) -> Point:
    right = "less_than" if other == "more_than" else "more_than"
    foods = (values["food"], values[other])
    words = [_portion(food, basis) for food in foods]
    has = "have" if is_plural(words[0]) and basis != "cup" and foods[0] is not None else "has"
    keys = [DISH if food is None else food.key for food in foods]
    usual = "" if basis == "cup" else f", {_basis_words(basis)}"
    begin = words[0][:1].upper() + words[0][1:]
    say = f"{begin} {has} {right.split('_')[0]} {thing_said(values['nutrient'])} than {words[1]}{usual}."
    return Point(say, means={right: keys[1], "nutrient": values["nutrient"], "food": keys[0], "per": basis})
