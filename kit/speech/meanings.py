"""The forms of `means`: which keys each has, what stands behind them, and what checks it.

What they mean is written down in `kit.speech.points`.
"""

from collections.abc import Callable, Mapping
from dataclasses import dataclass, field
from math import isfinite
from typing import Any

from kit.errors import KitError, UnknownNameError, nearest
from kit.food.allergens import allergens_called
from kit.food.composition import Food, nutrient
from kit.meal.nutrition import ENERGY_SOURCES
from kit.rules.reference import daily_values
from kit.rules.wordings import rules_of, wording_called
from kit.speech.comparing import BASES, check_more, check_times, comparison_faults
from kit.speech.comparing import DISH as THE_DISH
from kit.speech.makeup import KINDS, check_allergens, check_balance, check_keeps, check_kind, check_source
from kit.speech.said_numbers import (
    OF_DAY,
    UNITS,
    check_effect,
    check_grams,
    check_number,
    check_servings,
    number_faults,
)
from kit.speech.said_wordings import check_wording
from kit.speech.verdict import Finding
from kit.talk.dish import Dish, measure_grams
from kit.texts import listing

Kind = Callable[[Dish, Any], Any]
Values = dict[str, Any]


def _number(_dish: Dish, value: Any) -> float:
    if isinstance(value, bool) or not isinstance(value, int | float) or not isfinite(value) or value < 0:
        raise KitError(f"{value!r} is no number of 0 or more")
    return value


def _text(value: Any) -> str:
    if not isinstance(value, str) or not value:
        raise KitError(f"{value!r} is no text; write it in quotes")
    return value


def _nutrient(_dish: Dish, value: Any) -> str:
    return nutrient(_text(value)).id


def _ingredient(dish: Dish, value: Any) -> Food:
    return dish.ingredient(_text(value))


def _ingredients(dish: Dish, value: Any) -> tuple[Food, ...]:
    names = value if isinstance(value, list | tuple) else [value]
    if not names:
        raise KitError("an empty list; name an ingredient")
    return tuple(dish.ingredient(_text(name)) for name in names)


def _food(dish: Dish, value: Any) -> Food:
    name = _text(value)
    try:
        return dish.food(name)
    except UnknownNameError as fault:
        try:
            return dish.ingredient(name)
        except UnknownNameError:
            raise fault from None


def _foods(dish: Dish, value: Any) -> tuple[Food, ...]:
    names = value if isinstance(value, list | tuple) else [value]
    if not names:
        raise KitError("an empty list; name a food")
    return tuple(_food(dish, name) for name in names)


def _food_or_dish(dish: Dish, value: Any) -> Food | None:
    return None if value == THE_DISH else _food(dish, value)


def _one_of(*known: str) -> Kind:
    def kind(_dish: Dish, value: Any) -> str:
        if _text(value) not in known:
            near = nearest(value, known) or f"; write one of {', '.join(known)}"
            raise KitError(f'no "{value}" here{near}')
        return value

    return kind


def _allergens(_dish: Dish, value: Any) -> tuple[str, ...]:
    names = value if isinstance(value, list | tuple) else [value]
    if not names:
        raise KitError("an empty list; name an allergen")
    return tuple(dict.fromkeys(one for name in names for one in allergens_called(_text(name))))


def _wording(dish: Dish, value: Any) -> str:
    return wording_called(_text(value), dish.talk.rules)


def _kind(dish: Dish, value: Any) -> str:
    return KINDS[_one_of(*KINDS)(dish, value)]


def _balance(dish: Dish, value: Any) -> int | tuple[str, ...]:
    if isinstance(value, int) and not isinstance(value, bool) and 0 <= value <= len(ENERGY_SOURCES):
        return value
    if value == "all":
        return ENERGY_SOURCES
    names = [value] if isinstance(value, str) else value
    if not isinstance(names, list | tuple) or not names:
        raise KitError(
            f'{value!r} is no balance; write "all", a number from 0 to 3, or a list of {listing(ENERGY_SOURCES)}'
        )
    return tuple(_one_of(*ENERGY_SOURCES)(dish, name) for name in names)


def _than(dish: Dish, value: Any) -> Food | Values:
    if not isinstance(value, Mapping):
        return _food(dish, value)
    if set(value) == {"leave_out"}:
        return {"leave_out": _ingredient(dish, value["leave_out"])}
    if set(value) == {"swap", "for"}:
        return {"swap": _ingredient(dish, value["swap"]), "for": _food(dish, value["for"])}
    raise KitError('write a food, { leave_out = "feta" } or { swap = "feta", for = "tofu-firm" }')


_COMPARED = {"nutrient": _nutrient, "food": _food_or_dish}
_BROUGHT = {"food": _ingredients}
_EFFECT = {"nutrient": _nutrient}


@dataclass(frozen=True, slots=True)
class Form:
    """One form of `means`: the keys it needs, those it may have, and what checks it."""

    needs: Mapping[str, Kind]
    check: Callable[[Dish, Values, str], Finding]
    may: Mapping[str, Kind] = field(default_factory=dict)


_PER = {"per": _one_of(*BASES)}
# The key that leads a form; the first of these that a meaning has names its form.
FORMS: Mapping[str, Form] = {
    "grams_of": Form({"grams_of": _ingredient, "number": _number}, check_grams),
    "wording": Form({"wording": _wording}, check_wording, {"nutrient": _nutrient, "food": _food, "than": _than}),
    "times": Form({"times": _number, **_COMPARED, "than": _food_or_dish}, check_times, _PER),
    "more_than": Form({"more_than": _food_or_dish, **_COMPARED}, check_more, _PER),
    "less_than": Form({"less_than": _food_or_dish, **_COMPARED}, check_more, _PER),
    "main_source_of": Form({"main_source_of": _nutrient, **_BROUGHT}, check_source),
    "most_of": Form({"most_of": _nutrient, **_BROUGHT}, check_source),
    "a_little_of": Form({"a_little_of": _nutrient, **_BROUGHT}, check_source),
    "kind": Form({"kind": _kind}, check_kind, {"food": _food, "but": _ingredients}),
    "free_from": Form({"free_from": _allergens}, check_allergens, {"food": _food}),
    "contains": Form({"contains": _allergens}, check_allergens, {"food": _food}),
    "keeps_days": Form({"keeps_days": _number}, check_keeps),
    "leave_out": Form({"leave_out": _ingredient, **_EFFECT}, check_effect, {"saves": _number, "adds": _number}),
    "swap": Form({"swap": _ingredient, "for": _food, **_EFFECT}, check_effect, {"saves": _number, "adds": _number}),
    "balance": Form({"balance": _balance}, check_balance),
    "servings": Form({"servings": _number}, check_servings),
    "number": Form(
        {"number": _number, "nutrient": _nutrient},
        check_number,
        {"unit": _one_of(*UNITS), "food": _foods, "per": lambda _dish, value: _text(value)},
    ),
}


def read_meaning(means: Mapping[str, Any], dish: Dish) -> tuple[Form | None, Values, list[str]]:
    """Return the form of a meaning, its values looked up, and what is wrong with it.

    Parameters
    ----------
    means : mapping
        As the talk file gives it.
    dish : Dish
        Whose ingredients and foods its names are.

    Returns
    -------
    form : Form or None
        None when nothing leads it.
    values : dict
        Nutrient ids, foods, numbers, by key.
    faults : list of str
        One sentence for each fault; empty when it can be checked.
    """
    lead = next((key for key in FORMS if key in means), None)
    if lead is None:
        written = next(iter(means), "")
        near = nearest(str(written), FORMS) or f"; write one of {', '.join(FORMS)}"
        return None, {}, [f'means: no meaning "{written}"{near}' if written else f"means: it is empty{near}"]
    form = FORMS[lead]
    known = {**form.needs, **form.may}
    found: list[str] = []
    values: Values = {}
    for key, value in means.items():
        if key not in known:
            found.append(
                f'means: no key "{key}" beside "{lead}"{nearest(key, known) or f"; write {listing(list(known))}"}'
            )
            continue
        try:
            values[key] = known[key](dish, value)
        except KitError as fault:
            found.append(f"means, {key}: {fault}")
    found += [f'means: "{lead}" needs {key} too' for key in form.needs if key not in means]
    if not found:
        found = [f"means: {fault}" for fault in _together(lead, values, dish)]
    return form, values, found


def _together(lead: str, values: Values, dish: Dish) -> list[str]:
    """Return what does not fit together though each value is right."""
    if lead in ("times", "more_than", "less_than"):
        return comparison_faults(dish, values, "than" if lead == "times" else lead)
    if lead in ("leave_out", "swap") and ("saves" in values) == ("adds" in values):
        return ["write saves = 90 or adds = 90"]
    if lead == "wording":
        return _wording_faults(values, dish)
    if lead != "number":
        return []
    found = number_faults(values)
    if values.get("unit") == OF_DAY and values["nutrient"] not in daily_values(dish.talk.rules):
        found.append(f"{values['nutrient']} has no daily value")
    foods, per = values.get("food", ()), values.get("per", "")
    written = {part.food.key for part in dish.talk.recipe.ingredients}
    if not found and foods and per in ("", "serving"):
        found += [
            f'no ingredient "{food.key}"{nearest(food.key, written)}' for food in foods if food.key not in written
        ]
    elif not found and foods and per != "100 g":
        try:
            measure_grams(foods[0], per)
        except UnknownNameError as fault:
            found.append(str(fault))
    return found


def _wording_faults(values: Values, dish: Dish) -> list[str]:
    named = [rule for rule in rules_of(dish.talk.rules) if rule.wording == values["wording"]]
    if "nutrient" not in values and all(rule.nutrients for rule in named) and values["wording"] != "light":
        return [f'"{values["wording"]}" needs nutrient too']
    if isinstance(values.get("than"), dict) and "food" in values:
        return ["than is a change of the dish; leave food out, or name a food in than"]
    return []
