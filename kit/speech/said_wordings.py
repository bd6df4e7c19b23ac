"""Regulated wordings in a sentence: judged, with what must be said beside them and what can be said instead."""

import re
from collections.abc import Mapping, Sequence
from typing import Any

from kit.food.composition import Food
from kit.meal.nutrition import nutrition
from kit.rules.beside import AMOUNT, NOT_LOW
from kit.rules.claim_texts import phrase
from kit.rules.claims import Judgement, judge
from kit.rules.naming import full_name, is_plural, names_food, short_name, thing_said
from kit.rules.subjects import Subject, of_dish, of_food
from kit.rules.verdicts import CANNOT_TELL, HOLDS, OFF
from kit.rules.wordings import DISH, rule_for
from kit.speech.said_numbers import change_words, changed_recipe, gone, plain_number
from kit.speech.verdict import Finding
from kit.talk.dish import Dish
from kit.talk.placeholders import pieces
from kit.talk.talk import Point
from kit.texts import listing

_NOT_LOW = "that it is not low in"


def _of(dish: Dish, food: Food) -> Subject:
    places = dish.places([food])
    grams = dish.grams(food).value if places else None
    return of_food(food, grams)


def _than(dish: Dish, than: Any) -> Subject | None:
    if than is None:
        return None
    if isinstance(than, Food):
        return of_food(than)
    other = nutrition(changed_recipe(dish.numbers.recipe, than))
    return of_dish(
        other,
        f"the dish with {change_words(than)}" if "swap" in than else f"the dish without {change_words(than)[16:]}",
    )


def check_wording(dish: Dish, values: Mapping[str, Any], say: str) -> Finding:
    """Check a regulated wording about the dish, a food in it, or any food."""
    wording, name, food = values["wording"], values.get("nutrient", ""), values.get("food")
    if food is not None and food in {part.food for part in dish.talk.recipe.ingredients} and not dish.places([food]):
        return gone([food], name)
    rules = dish.talk.rules
    than = values.get("than")
    if isinstance(than, Mapping) and not dish.places([than.get("leave_out") or than["swap"]]):
        return Finding(
            CANNOT_TELL, "the dish it is compared with cannot be made from the dish as it is now; which is meant?"
        )
    subject = dish.subject if food is None else _of(dish, food)
    judged = judge(wording, name, subject, rules, _than(dish, than))
    if judged.verdict == OFF:
        return Finding(OFF, judged.because, _instead(dish, values))
    if judged.verdict == CANNOT_TELL:
        return Finding(CANNOT_TELL, judged.because)
    if food is not None and not names_food(say, food):
        point = Point(_sentence(values, food, dish), means=_means(values, food))
        because = f"{judged.because}, but the sentence must name the food"
        return Finding(OFF, because, point)
    unsaid = [
        (one.nutrient, one.words)
        for one in judged.beside
        if one.what in (AMOUNT, NOT_LOW) and not _says(say, one.nutrient, one.words)
    ]
    if unsaid:
        also = listing([words for _, words in unsaid])
        because = f"{judged.because}; the rule wants {also} said beside it"
        return Finding(OFF, because, _with_said(say, values, food, subject, unsaid))
    return Finding(HOLDS, judged.because + _advice(judged))


def _advice(judged: Judgement) -> str:
    return f"; a label would point to {listing(judged.advice)}" if judged.advice else ""


def _says(say: str, name: str, words: str) -> bool:
    """Return whether a sentence says an amount of a nutrient, by number or placeholder, or that it is not low in it."""
    if words.startswith(_NOT_LOW):
        return re.search(r"\bnot (?:a )?low\b", say, re.IGNORECASE) is not None
    if any(piece.in_braces and re.match(rf"{name}\b(?!_)", piece.text) for piece in pieces(say)):
        return True
    unit = r"(?:g|grams?|mg|milligrams?)"
    thing = re.escape(thing_said(name))
    return re.search(rf"\d[\d.,]*\s*{unit}\s+(?:of\s+)?{thing}\b", say, re.IGNORECASE) is not None


def _with_said(
    say: str, values: Mapping[str, Any], food: Food | None, subject: Subject, unsaid: Sequence[tuple[str, str]]
) -> Point:
    also = []
    for name, words in unsaid:
        if words.startswith(_NOT_LOW):
            also.append(f"and it is not low in {thing_said(name)}")
        elif food is None:
            also.append(f"with {{{name}}} in {{serving}}")
        else:
            grams = subject.reference_grams if subject.reference_grams == subject.reference_grams else 100
            also.append(f"with {{{name} in {grams:.4g} g of {food.key}}} in {grams:.0f} grams")
    sentence = f"{say.strip().rstrip('.!')}, {', '.join(also)}."
    return Point(sentence, means=_means(values, food))


def _means(values: Mapping[str, Any], food: Food | None) -> dict[str, Any]:
    """Return the meaning as a talk file writes it."""
    means = {key: values[key] for key in ("wording", "nutrient") if values.get(key)}
    if food is not None:
        means["food"] = food.key
    than = values.get("than")
    if isinstance(than, Food):
        means["than"] = than.key
    elif than:
        means["than"] = {key: one.key for key, one in than.items()}
    return means


def _sentence(values: Mapping[str, Any], food: Food, dish: Dish) -> str:
    inside = bool(dish.places([food]))
    name = short_name(food) if inside else full_name(food)
    begin = f"The {name} in it" if inside else name[:1].upper() + name[1:]
    words = phrase(values["wording"], values.get("nutrient", ""))
    return f"{begin} {'are' if is_plural(name) else 'is'} {words}."


def _instead(dish: Dish, values: Mapping[str, Any]) -> Point:
    """Return the nearest sentence that holds: a food in the dish that qualifies, a weaker wording, or the number."""
    name, food, rules = values.get("nutrient", ""), values.get("food"), dish.talk.rules
    wording = values["wording"]
    nearest = {"good source": ("high",), "high": ("good source",), "free": ("very low", "low"), "very low": ("low",)}
    tries = nearest.get(wording, ())
    rule = rule_for(wording, name, DISH, rules)
    if food is None and rule is not None and rule.food_in_it:
        for word in (wording, *tries):
            for candidate in _by_what_they_bring(dish, name):
                found = _qualified(dish, word, name, candidate)
                if found is not None:
                    return found
    for word in tries:
        found = _qualified(dish, word, name, food)
        if found is not None:
            return found
    if not name:
        return plain_number("fat", {} if food is None else {"food": (food,), "per": "100 g"})
    return plain_number(name, {} if food is None else {"food": (food,), "per": "100 g"})


def _by_what_they_bring(dish: Dish, name: str) -> list[Food]:
    foods = {part.food.key: part.food for part in dish.numbers.recipe.ingredients if part.grams > 0}
    return sorted(foods.values(), key=lambda food: -dish.brought([food], name).value)


def _qualified(dish: Dish, wording: str, name: str, food: Food | None) -> Point | None:
    """Return a sentence with a wording about a food, or the dish, when that holds, else None."""
    rule = rule_for(wording, name, DISH if food is None else "food", dish.talk.rules)
    if rule is None or rule.needs_comparison:
        return None
    subject = dish.subject if food is None else _of(dish, food)
    judged = judge(wording, name, subject, rules=dish.talk.rules)
    if judged.verdict != HOLDS:
        return None
    values = {"wording": wording, "nutrient": name}
    say = f"It is {phrase(wording, name)}." if food is None else _sentence(values, food, dish)
    if judged.beside:
        return _with_said(say, values, food, subject, [(one.nutrient, one.words) for one in judged.beside])
    return Point(say, means=_means(values, food))
