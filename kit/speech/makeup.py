"""What the dish is made of: which food brings a nutrient, plant-based or not, allergens, balance, how long it keeps."""

from collections.abc import Callable, Mapping, Sequence
from math import isnan
from typing import Any

import numpy as np

from kit.food.allergens import allergen_names
from kit.food.composition import Food, nutrient, nutrient_index
from kit.meal.nutrition import ENERGY_SOURCES
from kit.rules.allergens import bringing
from kit.rules.naming import is_plural, short_name, thing_said
from kit.rules.reference import distribution_ranges
from kit.rules.verdicts import CANNOT_TELL, HOLDS, OFF
from kit.speech.said_numbers import gone, plain_number
from kit.speech.verdict import Finding
from kit.talk.dish import Dish
from kit.talk.placeholders import keeping_days
from kit.talk.talk import Point
from kit.texts import listing, number, percent

MOST, LITTLE = 0.50, (0.05, 0.20)  # "most of", "a little": common practice
MUCH_UNKNOWN = 0.10  # of a serving's weight without a value, from which the largest source is not known
KINDS = {"plant-based": "plant-based", "vegan": "plant-based", "vegetarian": "vegetarian", "whole grain": "whole grain"}
_GRAINS = ("grain", "pasta", "bread")


def _verb(names: Sequence[str], several: str, one: str) -> str:
    return several if len(names) > 1 or is_plural(names[0]) else one


def check_source(dish: Dish, values: Mapping[str, Any], say: str) -> Finding:
    """Check that ingredients are the main source of a nutrient, bring most of it, or a little of it."""
    form = next(key for key in ("main_source_of", "most_of", "a_little_of") if key in values)
    name, foods = values[form], values["food"]
    if not dish.places(foods):
        return gone(foods, name)
    own, total, of = dish.brought(foods, name), dish.numbers[name], dish.share(foods, name)
    if isnan(of.value):
        return Finding(CANNOT_TELL, f"the dish has no {thing_said(name)} that the table knows; what is meant?")
    names = [short_name(food) for food in foods]
    thing = "" if name == "energy" else f" of {thing_said(name)}"
    bring = f"the {listing(names)} {_verb(names, 'bring', 'brings')} {_amount(own.value, name)}"
    because = f"{bring} of the {_amount(total, name)}{thing} in a serving, {percent(of.value)}"
    unknown = _without_value(dish, name)
    note = f"; no value is known for {listing(dish.numbers.missing_from(name)[:3])}" if unknown else ""
    top, next_best = _largest(dish, name, {food.key for food in foods})
    if form == "main_source_of":
        because += f", {'more' if top is None else 'less'} than {_other(dish, name, top or next_best)}"
    because = f"{because}{note} ({dish.source})"
    right = {"main_source_of": top is None, "most_of": of.value > MOST}.get(form, LITTLE[0] <= of.value <= LITTLE[1])
    if unknown > MUCH_UNKNOWN:
        return Finding(CANNOT_TELL, because)
    if right:
        return Finding(HOLDS, because)
    if form == "main_source_of" and top is not None:
        lead = short_name(top)
        instead = f"The {lead} {_verb([lead], 'are', 'is')} the main source of {thing_said(name)} in it."
        return Finding(OFF, because, Point(instead, means={"main_source_of": name, "food": top.key}))
    return Finding(OFF, because, _share_point(dish, name, foods, of.value))


def _share_point(dish: Dish, name: str, foods: Sequence[Food], share: float) -> Point:
    if len(foods) == 1:
        food = short_name(foods[0])
        say = f"The {food} {_verb([food], 'bring', 'brings')} {{share of {name} from {foods[0].key}}}."
        return Point(say)
    names = [short_name(food) for food in foods]
    said = round(100 * share)
    whole = f"the {thing_said(name)}"
    means = {"number": said, "unit": "% of dish", "nutrient": name, "food": [food.key for food in foods]}
    return Point(f"The {listing(names)} together bring about {said} percent of {whole}.", means=means)


def _amount(value: float, name: str) -> str:
    about = nutrient(name)
    return f"{number(value, about.decimals)} {about.unit}"


def _without_value(dish: Dish, name: str) -> float:
    grams = dish.numbers.recipe.grams
    total = float(grams.sum())
    return float(grams[dish.numbers.missing[:, nutrient_index(name)]].sum()) / total if total else 0.0


def _largest(dish: Dish, name: str, own: set[str]) -> tuple[Food | None, Food | None]:
    """Return the food that brings more than those of `own` together, if any, and the largest of the others."""
    brings: dict[str, float] = {}
    foods = {part.food.key: part.food for part in dish.numbers.recipe.ingredients}
    for part, amount in zip(dish.numbers.recipe.ingredients, np.nan_to_num(dish.numbers.brings(name)), strict=True):
        brings[part.food.key] = brings.get(part.food.key, 0.0) + float(amount)
    mine = sum(brings.get(key, 0.0) for key in own)
    others = [key for key in brings if key not in own]
    best = max(others, key=brings.__getitem__, default=None)
    largest = foods[best] if best is not None else None
    return (largest if best is not None and brings[best] >= mine else None), largest


def _other(dish: Dish, name: str, food: Food | None) -> str:
    if food is None:
        return "any other"
    return f"the {short_name(food)} with {_amount(dish.brought([food], name).value, name)}"


def _used(dish: Dish, food: Food | None) -> list[Food]:
    if food is not None:
        return [food]
    return list({part.food.key: part.food for part in dish.numbers.recipe.ingredients if part.grams > 0}.values())


def check_kind(dish: Dish, values: Mapping[str, Any], say: str) -> Finding:
    """Check that the dish, or a food, is plant-based, vegetarian or whole grain."""
    kind, food = values["kind"], values.get("food")
    but = {one.key for one in values.get("but", ())}
    foods = [one for one in _used(dish, food) if one.key not in but]
    if kind == "whole grain":
        foods = [one for one in foods if one.group in _GRAINS]
        if not foods:
            return Finding(OFF, "there is no grain in it", plain_number("fiber", _alone(food)))
    fits: Callable[[Food], bool | None] = {
        "plant-based": lambda one: one.origin == "plant" if one.origin else None,
        "vegetarian": lambda one: one.vegetarian,
        "whole grain": lambda one: one.whole_grain,
    }[kind]
    against = [one for one in foods if fits(one) is False]
    unknown = [one for one in foods if fits(one) is None]
    if against:
        names = [short_name(one) for one in against]
        because = f"the {listing(names)} {_verb(names, 'are', 'is')} not {kind}, by the facts of each food"
        share = dish.share(against, "protein").value
        if kind == "plant-based" and food is None and share > 0:
            because += f", and {percent(share)} of the protein in it is theirs"
        return Finding(OFF, because, _kind_instead(kind, food, [*against, *unknown], foods))
    if unknown:
        names = [short_name(one) for one in unknown]
        return Finding(CANNOT_TELL, f"nothing is known about the {listing(names)}: what does the package say?")
    told = f"all {number(len(foods))} foods" if len(foods) > 1 else short_name(foods[0]) if foods else "an empty dish"
    return Finding(
        HOLDS, f"{told} {'are' if len(foods) > 1 or is_plural(told) else 'is'} {kind}, by the facts of each food"
    )


def _kind_instead(kind: str, food: Food | None, against: Sequence[Food], foods: Sequence[Food]) -> Point:
    names = [short_name(one) for one in against]
    if food is not None or len(against) == len(foods):
        return plain_number("fiber" if kind == "whole grain" else "protein", _alone(food))
    what = "All its grain" if kind == "whole grain" else "Everything in it"
    but = [one.key for one in against]
    return Point(f"{what} is {kind} but the {listing(names)}.", means={"kind": kind, "but": but})


def _alone(food: Food | None) -> dict[str, Any]:
    return {} if food is None else {"food": (food,), "per": "100 g"}


def check_allergens(dish: Dish, values: Mapping[str, Any], say: str) -> Finding:
    """Check that the dish, or a food, is free from allergens, or contains them."""
    free = "free_from" in values
    foods = _used(dish, values.get("food"))
    there, absent, open_ = {}, [], []
    for allergen in values["free_from" if free else "contains"]:
        brings, unknown = bringing(foods, allergen)
        if brings:
            there[allergen] = brings
        elif unknown:
            open_.append((allergen, unknown))
        else:
            absent.append(allergen)
    told = listing([_bring(brings, one) for one, brings in there.items()])
    missing = listing([_name(one) for one in absent], "or")
    if free and there:
        instead = Point(f"It contains {listing([_name(one) for one in there])}.", means={"contains": [*there]})
        return Finding(OFF, f"{told}, by the facts of each food", _with_food(instead, values))
    if not free and absent:
        instead = Point(f"No food in it brings {missing}.", means={"free_from": absent})
        return Finding(OFF, f"no food in it brings {missing}", _with_food(instead, values))
    if open_:
        names = listing([short_name(food) for food in open_[0][1]])
        return Finding(CANNOT_TELL, f"the allergens of the {names} are not known: what does the package say?")
    if free:
        return Finding(HOLDS, f"no food in it brings {missing}; read every package for traces all the same")
    return Finding(HOLDS, f"{told}, by the facts of each food")


def _bring(foods: Sequence[Food], allergen: str) -> str:
    names = [short_name(food) for food in foods]
    return f"the {listing(names)} {_verb(names, 'bring', 'brings')} {_name(allergen)}"


def _name(allergen: str) -> str:
    return allergen_names()[allergen].split(" (")[0]


def _with_food(point: Point, values: Mapping[str, Any]) -> Point:
    food = values.get("food")
    return point if food is None else Point(point.say, means={**(point.means or {}), "food": food.key})


def check_balance(dish: Dish, values: Mapping[str, Any], say: str) -> Finding:
    """Check that shares of the energy lie inside the acceptable ranges for adults."""
    shares, ranges, wanted = dish.numbers.energy_shares, distribution_ranges(), values["balance"]
    if any(isnan(share) for share in shares.values()):
        return Finding(
            CANNOT_TELL, "the shares of the energy are not known, since an amount is missing; what is meant?"
        )
    inside = [name for name in ENERGY_SOURCES if ranges[name][0] <= round(shares[name], 4) <= ranges[name][1]]
    spans = {name: f"{number(100 * low)} to {percent(high)}" for name, (low, high) in ranges.items()}
    told = listing([f"{name} {percent(shares[name])} (range {spans[name]})" for name in ENERGY_SOURCES])
    because = f"of the energy, {told}; ranges for adults: IOM 2002/2005"
    right = len(inside) == wanted if isinstance(wanted, int) else set(wanted) <= set(inside)
    if right:
        return Finding(HOLDS, because)
    if not inside:
        instead = Point("None of the three shares of energy lies inside the range for adults.", means={"balance": 0})
    else:
        verb, noun = ("lie", "ranges") if len(inside) > 1 else ("lies", "range")
        say = f"{listing(inside).capitalize()} {verb} inside the {noun} for adults, as a share of the energy."
        instead = Point(say, means={"balance": inside})
    return Finding(OFF, because, instead)


def check_keeps(dish: Dish, values: Mapping[str, Any], say: str) -> Finding:
    """Check how many days the dish keeps in the refrigerator."""
    days, (least, most) = float(values["keeps_days"]), keeping_days()
    span = f"{number(least)} to {number(most)} days"
    because = f"a cooked dish keeps {span} in the refrigerator at 40 °F (4 °C) or below (USDA FSIS)"
    if days <= most:
        return Finding(HOLDS, because)
    instead = Point(f"It keeps {span} in the refrigerator.", means={"keeps_days": int(most)})
    return Finding(OFF, f"{because}, not {number(days, 1)}", instead)
