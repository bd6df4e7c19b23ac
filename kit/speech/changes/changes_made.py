"""A change that was said, made: the recipe after it, or why it cannot be made."""

import re
from collections.abc import Sequence
from dataclasses import replace

from kit.errors import KitError, UnknownNameError
from kit.food.composition import Food
from kit.food.vocabulary import words
from kit.meal.changes import leave_out, read_change, set_grams, swap
from kit.meal.changes_told import told
from kit.meal.recipe import Recipe
from kit.meal.steps import applied
from kit.rules.naming import full_name, lowered, short_name
from kit.rules.verdicts import CANNOT_TELL
from kit.speech.changes.changes_said import AMOUNT, AS_TYPED, LEAVE_OUT, SWAP, TRIED, SaidChange
from kit.speech.claim import Finding
from kit.speech.values import alone, choices, not_there, present
from kit.speech.words.foods_said import FoodWord
from kit.speech.words.tokens import NO_QUANTITY
from kit.talk.dish import Dish, measure_grams
from kit.talk.placeholders import fill
from kit.texts import listing


def changed(said: SaidChange, dish: Dish) -> tuple[Recipe, str] | Finding:
    """Return the changed recipe and the change in words, or why it cannot be made."""
    recipe = dish.numbers.recipe
    if said.kind in (AS_TYPED, TRIED):
        return _as_typed(said, recipe)
    olds = [_one(word, dish) for word in said.foods]
    for one in olds:
        if isinstance(one, Finding):
            return one
    foods = [one for one in olds if isinstance(one, Food)]
    names = listing([short_name(food) for food in foods])
    try:
        if said.kind == LEAVE_OUT:
            for food in foods:
                recipe = leave_out(recipe, food.key)
            return recipe, f"leaving out the {names}"
        if said.kind == AMOUNT:
            if (other := _is_another(said, foods, recipe)) is not None:
                return other
            for food in foods:
                recipe = set_grams(recipe, food.key, said.factor * recipe.ingredients[recipe.position(food.key)].grams)
            return recipe, f"changing the {names}"
        if said.other is None:
            return Finding(CANNOT_TELL, f"what that changes about the {names} is not in the numbers of the dish")
        others = alone(dish, said.other)
        outside = [food for food in others if food.key != foods[0].key]
        if not outside:
            return Finding(CANNOT_TELL, f"the table has no {said.other.text}: which food is meant?")
        new = min(outside, key=lambda food: food.state != foods[0].state)
        if len(outside) > 1 and not said.other.exact:
            return Finding(
                CANNOT_TELL, f"which {said.other.text} is meant?", choices=choices([said.other], dish, inside=False)
            )
        told, gone = full_name(new), names
        if told == names:  # "skim milk in place of milk"
            told, gone = _with_its_kind(new), _with_its_kind(foods[0])
        return swap(recipe, foods[0].key, new), f"{told} in place of {gone}"
    except KitError as fault:
        return Finding(CANNOT_TELL, f"that change cannot be worked out: {fault}")


def _is_another(said: SaidChange, foods: Sequence[Food], recipe: Recipe) -> Finding | None:
    """Return the finding that the recipe has another amount than the one that is said to be changed; None if it has it.

    Two amounts are the same within a tenth, since a measure of the table is rounded.
    """
    if said.was is NO_QUANTITY or len(foods) != 1:
        return None
    if said.factor == 1:
        return Finding(CANNOT_TELL, f"that is as much {short_name(foods[0])} as before: what is changed?")
    try:
        grams = said.was.value * measure_grams(foods[0], said.was.unit or "piece")
    except UnknownNameError:
        return None
    there = sum(part.grams for part in recipe.ingredients if part.food.key == foods[0].key)
    if abs(there - grams) <= 0.1 * there:
        return None
    return Finding(CANNOT_TELL, f"the recipe has another amount of the {short_name(foods[0])}: which is changed?")


def each_meant(said: SaidChange, found: Finding) -> list[SaidChange]:
    """Return a change with each of the foods that its words for what comes may mean; empty where that is not open."""
    other = said.other
    if other is None or not found.choices or found.choices[0].word != other.text:
        return []
    foods = [replace(other, outside=(key,), inside=(), exact=True) for key, _ in found.choices[0].options]
    return [replace(said, other=food) for food in foods]


def said_of_changed(sentences: Sequence[str], change: SaidChange, words: str, dish: Dish) -> tuple[str, ...]:
    """Return sentences about a changed dish as they are said of it: "Without the feta, it still contains milk."

    Parameters
    ----------
    sentences : sequence of str
        Sentences about the dish as it is.
    change : SaidChange
        What was changed.
    words : str
        The change in words, as `changed` returns it.
    dish : Dish
        The changed dish.
    """
    gone = f"the {listing([word.text for word in change.foods])}"
    told = tuple(lowered(fill(one, dish)) for one in sentences)
    if change.kind == LEAVE_OUT:
        still = (("it contains", "it still contains"), ("it is not", "it is still not"))
        for plain, with_still in still:
            told = tuple(one.replace(plain, with_still, 1) if one.startswith(plain) else one for one in told)
        return tuple(f"Without {gone}, {one}" for one in told)
    if change.kind == SWAP and change.other is not None:
        said = (f"With {change.other.text} in place of {gone}", f"With {words}")
        return tuple(f"{begin}, {one}" for one in told for begin in said)
    return ()


def _with_its_kind(food: Food) -> str:
    """Return a food's name with the kind before the thing, as it is spoken: "skim milk" for "Milk, skim"."""
    pieces = re.sub(r"\s*\([^)]*\)", "", food.name).split(", ")
    return " ".join(lowered(piece) for piece in reversed(pieces))


def _one(word: FoodWord, dish: Dish) -> Food | Finding:
    here = present(dish, word)
    if not here and not word.inside:
        here = [
            part.food
            for part in dish.numbers.recipe.ingredients
            if part.grams > 0 and frozenset(words(word.text)) <= frozenset(words(f"{part.food.name} {part.line}"))
        ]
    if not here:
        return not_there(word)
    if len({food.key for food in here}) > 1:
        return Finding(CANNOT_TELL, f"which {word.text} is meant?", choices=choices([word], dish))
    return here[0]


def _as_typed(said: SaidChange, recipe: Recipe) -> tuple[Recipe, str] | Finding:
    try:
        steps = read_change(said.words, recipe)
    except KitError as fault:
        return Finding(CANNOT_TELL, f'what "{said.words}" changes was not understood: {fault}')
    if said.kind == TRIED:
        return applied(recipe, steps), "that"
    return applied(recipe, steps), listing([f"to {step.text}" for step in told(recipe, steps)])
