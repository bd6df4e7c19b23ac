"""Clauses about how much: leave out, half, more, less, so much, something added."""

import re
from dataclasses import replace

from kit.errors import ChangeError, NotUnderstoodError
from kit.food.amounts import read_count
from kit.food.composition import Food
from kit.food.names import short_name
from kit.food.vocabulary import words
from kit.lines.nearest_measure import SIZES
from kit.lines.reader import read
from kit.meal.change_asked import Asked, as_measured, measured_as, named, one_phrase
from kit.meal.change_foods import newcomer, suggestions, understood
from kit.meal.change_forms import AS_COOKED, ready_to_eat
from kit.meal.change_shapes import Clause
from kit.meal.ingredient_names import held, ingredients_called, is_another_food
from kit.meal.steps import Add, Amount, LeaveOut, Step
from kit.meal.target_words import is_nutrient
from kit.texts import listing, number

_ONE_OF_IT = re.compile(r"^(?:the|that|this|your) (?=\w+ of )")  # "the pinch of salt"
_THE_AMOUNT = re.compile(  # "the half teaspoon of salt"
    r"^(?:the|that|this|those|your|all) (?=(?:\d|half|a quarter|quarter|one|two|three|four|five|six)\b(?! and half))"
)
_WITH_ANOTHER = re.compile(r" with (?!added\b|salt\b|it\b)[a-z\d]")  # "no salsa but with tomatoes"
_OWN_GROUPS = {"nut": frozenset(("nut", "seed")), "dairy": frozenset(("dairy", "oil"))}  # butter is an oil of the table
_ONES = ("breast", "thigh", "fillet", "fruit", "pepper", "head", "stalk", "ear", "leaf")  # measures that are one thing
_A_LITTLE = 0.01  # of one piece
_VAGUE = frozenset("a an bit little some lot lots much slightly way few tad touch good even of far still only".split())


def leave_out(asked: Asked) -> tuple[Step, ...]:
    """Leave out an ingredient, a part of it, or all of a kind."""
    old, recipe = asked.clause.old, asked.recipe
    if asked.clause.how == "behind" and ingredients_called(asked.clause.new, recipe).places:
        raise NotUnderstoodError(f'"{asked.clause.new} without {old}" may be a kind of {asked.clause.new}')
    if _WITH_ANOTHER.search(old) and not any(" with " in part.line for part in recipe.ingredients):
        raise ChangeError(f'"{old}": write what is left out and what comes in, such as "no salsa, add 1 cup tomatoes"')
    so_much = _ONE_OF_IT.sub("1 ", _THE_AMOUNT.sub("", old))
    counted = one_phrase(so_much)
    ahead, _ = read_count(so_much)  # no amount: "feta for 4"
    if ahead and counted.counted and counted.name:  # "leave out 1 egg", "remove 1 tbsp of the oil"
        at = asked.place(" ".join((*counted.name, *counted.after)))
        grams = measured_as(so_much, recipe.ingredients[at], asked.table).grams
        if grams < recipe.ingredients[at].grams:
            return (Amount(asked.row(at), plus=-grams),)
        return (LeaveOut(asked.row(at)),)
    found = ingredients_called(old, recipe)
    places = found.places if found.together and found.places else (asked.place(old),)
    used = [at for at in places if recipe.ingredients[at].grams > 0]
    if found.together:
        _all_are_meant(old, [recipe.ingredients[at].food for at in used])
    if not used:
        raise ChangeError(f'"{old}" is left out already; the recipe holds {held(recipe)}')
    return tuple(LeaveOut(asked.row(at)) for at in used)


def _all_are_meant(kind: str, foods: list[Food]) -> None:
    """Ask whether what only holds something of a kind goes as well: the oil with the nuts, naan with its milk."""
    own = next((groups for word, groups in _OWN_GROUPS.items() if word in words(kind)), frozenset())
    plain = [short_name(one) for one in foods if one.group in own]
    others = [short_name(one) for one in foods if one.group not in own]
    if plain and others:
        choices = [f"leave out the {listing(names)}" for names in (plain, [*plain, *others])]
        shown = listing([f'"{choice}"' for choice in choices], "or")
        raise ChangeError(f'"{kind}": there is {listing(others)} too; write {shown}', choices)


def free_from(asked: Asked) -> tuple[Step, ...]:
    """Ask what to do about a kind of food that should not be there."""
    kind, recipe = asked.clause.old, asked.recipe
    places = ingredients_called(kind, recipe).places
    if not places:
        raise ChangeError(f'nothing in the recipe is known to bring "{kind}"; it holds {held(recipe)}')
    names = [short_name(recipe.ingredients[at].food) for at in places]
    swaps = [
        f"{name} instead of the {short_name(recipe.ingredients[at].food)}"
        for at in places
        for name in suggestions(recipe.ingredients[at], asked.table)
    ]
    raise ChangeError(
        f'"{kind}" comes from {listing(names)}; write whether to leave that out, or what takes its place',
        [f"leave out the {listing(names)}", *swaps],
    )


def needed(asked: Asked) -> tuple[Step, ...]:
    """Ask what to do about something that is lacking or not wanted."""
    at = asked.place(asked.clause.old)
    name = short_name(asked.recipe.ingredients[at].food)
    swaps = [f"{other} instead of the {name}" for other in suggestions(asked.recipe.ingredients[at], asked.table)]
    example = swaps[0] if swaps else f"... instead of the {name}"
    raise ChangeError(
        f'{name} can be left out, or something else used: write "leave out the {name}" or "{example}"',
        [f"leave out the {name}", *swaps],
    )


def times(asked: Asked) -> tuple[Step, ...]:
    """Take so many times an ingredient."""
    found = ingredients_called(asked.clause.old, asked.recipe)
    places = found.places if found.together and found.places else (asked.place(asked.clause.old),)
    if asked.clause.how == "bare part" and len(places) == 1:
        return (_part_of_one(asked, places[0]),)
    return tuple(Amount(asked.row(at), times=asked.clause.number) for at in places)


def _part_of_one(asked: Asked, at: int) -> Step:
    """Take a part of an ingredient; of two onions "half an onion" is half of one, and "half onion" is asked."""
    old, said, part = asked.recipe.ingredients[at], asked.clause.old, asked.clause.number
    of_one = re.sub("^an? ", "", said)
    if one_phrase(f"1 {of_one}").written.measure or one_phrase(f"1 {of_one}").written.unit:  # "half a stick of butter"
        measured = measured_as(f"{number(part, 3)} {of_one}", old, asked.table)
        return Amount(asked.row(at), times=0.0, plus=measured.grams, measured=measured)
    if re.match(r"an? ", said) and old.noun not in (*SIZES, "piece") and old.food.measure(*SIZES, "piece", *_ONES):
        thing = short_name(old.food)
        choices = [f"half the {thing}" if part == 0.5 else f"{number(100 * part)} % of the {thing}"]
        raise ChangeError(f'"half {said}": of one, or of all there is? write "{choices[0]}", or how much', choices)
    counted = old.noun in (*SIZES, "piece") and old.count > 1 + _A_LITTLE
    if not counted or said.endswith("s") or said.startswith("the "):
        return Amount(asked.row(at), times=part)
    if re.match(r"an? ", said):
        return Amount(asked.row(at), times=0.0, plus=part * old.noun_grams)
    thing = short_name(old.food)
    raise ChangeError(
        f"a part of one {thing}, or of the {number(old.count, 2)} there are? write which is meant",
        [f"use {number(part, 2)} {thing}", f"{number(100 * part, 1)} % of the {thing}"],
    )


def set_to(asked: Asked) -> tuple[Step, ...]:
    """Set the amount of an ingredient."""
    at = asked.place(asked.clause.old)
    measured = measured_as(asked.clause.new, asked.recipe.ingredients[at], asked.table)
    return (Amount(asked.row(at), times=0.0, plus=measured.grams, measured=measured),)


def changed_by(asked: Asked) -> tuple[Step, ...]:
    """Take so much more or less of an ingredient."""
    at = asked.place(asked.clause.old)
    return (_more_by(asked, at, asked.clause.new),)


def _more_by(asked: Asked, at: int, amount: str) -> Step:
    old = asked.recipe.ingredients[at]
    grams = measured_as(amount, old, asked.table).grams
    if asked.clause.number < 0 and grams > old.grams * 1.001:
        raise ChangeError(
            f"that is more {short_name(old.food)} than there is; write a smaller amount, or "
            f'"leave out the {short_name(old.food)}"'
        )
    return Amount(asked.row(at), plus=asked.clause.number * grams)


def more(asked: Asked) -> tuple[Step, ...]:
    """Take more or less of an ingredient, and ask how much where no amount is said."""
    clause = asked.clause
    amount = [word for word in clause.new.split() if word not in _VAGUE or word in ("a", "an")]
    text = f"{' '.join(amount)} {clause.old}" if amount and set(amount) - {"a", "an"} else clause.old
    phrase = one_phrase(text)
    name = " ".join((*phrase.name, *phrase.after)) if phrase.counted else clause.old
    if clause.number > 0 and phrase.counted and not ingredients_called(name, asked.recipe).places:
        return add(replace(asked, clause=Clause("add", new=text)))
    if is_nutrient(name) and not ingredients_called(name, asked.recipe).places:
        raise ChangeError(
            f'{name} is in many foods; write a target, such as "at least 20 g protein" or "under 600 mg sodium"'
        )
    at = asked.place(name)
    if not phrase.counted:
        food = short_name(asked.recipe.ingredients[at].food)
        less = clause.number < 0
        raise ChangeError(
            f"how much {'less' if less else 'more'} {food}? write for instance "
            f'"{"half" if less else "double"} the {food}", or how much of it',
            [f"half the {food}", f"leave out the {food}"]
            if less
            else [f"1 1/2 times the {food}", f"double the {food}"],
        )
    return (_more_by(asked, at, text),)


def add(asked: Asked) -> tuple[Step, ...]:
    """Add an amount of a food: more of it where the recipe holds it already."""
    text = asked.clause.new
    phrase = one_phrase(text)
    name = named(phrase, text)
    places = ingredients_called(name, asked.recipe).places
    if len(places) == 1 and is_another_food(name, asked.recipe.ingredients[places[0]], asked.table):
        places = ()  # "add 1/4 cup olives" where there is olive oil
    if not phrase.counted:
        thing = name if places else newcomer(name, asked.table, line=asked.line).food.name.lower()
        raise ChangeError(f'how much {thing}? write for instance "add 1/4 cup {thing}"', [f"add 1/4 cup {thing}"])
    if len(places) > 1:
        asked.place(name)
    if places and asked.clause.how == "put":
        raise ChangeError(f"{text} in all, or {text} more? write which is meant", [f"use {text}", f"add {text}"])
    if places:
        grams = measured_as(text, asked.recipe.ingredients[places[0]], asked.table).grams
        return (Amount(asked.row(places[0]), plus=grams),)
    food, reading = understood(text, name, asked.table, asked.line)
    note = newcomer(name, asked.table).note
    ready = ready_to_eat(food, name, asked.table)
    if ready is not None:
        reading = read(text, food=ready.key, table=asked.table)
        food, note = ready, "; ".join(part for part in (note, AS_COOKED) if part)
    return (Add(food, as_measured(reading), note),)
