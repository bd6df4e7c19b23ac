"""Clauses about another food: instead of, could it be, fresh for jarred, rinsed."""

import re
from dataclasses import replace

from kit.errors import ChangeError
from kit.food.composition import Food
from kit.food.finding import index
from kit.food.names import short_name
from kit.food.three_weights import cooked_form
from kit.food.vocabulary import line_words, words
from kit.lines.lighter import lighter
from kit.lines.nearest_measure import VOLUMES
from kit.lines.reader import read
from kit.meal.change_amounts import set_to
from kit.meal.change_asked import Asked, as_measured, measured_as, named, one_phrase
from kit.meal.change_by_form import by_form, only_form
from kit.meal.change_coming import coming
from kit.meal.change_foods import newcomer
from kit.meal.change_forms import says_form
from kit.meal.change_guesses import is_guess
from kit.meal.change_kinds import another_form, another_kind, cooked_form_of, is_kind, one_is_meant
from kit.meal.change_places import does_same_work, instead_of_what, refined, takes_place_of
from kit.meal.change_shapes import Clause
from kit.meal.change_sides import direction, share_of
from kit.meal.in_place_of import in_place_of, poured_off
from kit.meal.ingredient_names import ingredients_called
from kit.meal.recipe import Ingredient
from kit.meal.steps import Add, Amount, Measured, Step, Swap, measured_like

_NO_FOOD = frozenset("who whom whose when where why which how it them".split())  # words of a question, or of a method
_MORE_OF = re.compile(
    r"^(?:[\d/. -]*(?:\w+ ){0,3})(?:more|extra|additional|less|fewer) (?P<what>.+)$"
)  # "1 cup more rice"


def use(asked: Asked) -> tuple[Step, ...]:
    """Use a food, or an amount of one, in the place that suits it."""
    text, recipe = asked.clause.new, asked.recipe
    phrase = one_phrase(text)
    name = named(phrase, text) if phrase.counted else text
    found = ingredients_called(name, recipe).places
    cooked = cooked_form_of(name, found, asked) if phrase.counted else ""
    if cooked and recipe.ingredients[found[0]].food.state == "dry":  # "3 cups cooked barley"
        return _swapped(asked, found[0], cooked, text)
    if found and phrase.counted and not cooked:
        at = asked.place(name)
        measured = measured_as(text, recipe.ingredients[at], asked.table)
        return (Amount(asked.row(at), times=0.0, plus=measured.grams, measured=measured),)
    if found and not another_form(name, found, asked):
        food = short_name(recipe.ingredients[found[0]].food)
        raise ChangeError(
            f"{food} is in the recipe already; write what to change about it",
            [f"leave out the {food}", f"half the {food}", f"double the {food}"],
        )
    if asked.clause.how == "bare" and (
        not any(word in index(asked.table).by_word for word in words(name)) or _NO_FOOD & set(name.split())
    ):
        raise ChangeError(f'"{name}" is no food')
    one_is_meant(name, asked)
    wish = refined(name, recipe, asked.table)
    wished = newcomer(wish[1] if wish else name, asked.table, line=asked.line).food
    places = takes_place_of(wished, recipe)
    if wish and (wish[0] in places or not places):
        places = (wish[0],)
    if wish and wished.base != recipe.ingredients[wish[0]].food.base and lighter(words(name)) and is_kind(name):
        there, lightened = short_name(recipe.ingredients[wish[0]].food), wished.name.lower()
        raise ChangeError(
            f'"{name}" is not {there} with less in it; write for instance "{lightened} instead of the {there}"',
            [f"{lightened} instead of the {there}"],
        )
    if wish and places and wish[0] not in places:  # "cauliflower rice" beside rice and broccoli
        places = (wish[0], *places)
    amount = text if phrase.counted else ""
    sure = wish is not None and wish[1] != name  # "brown" of the rice; a "powder", "seeds" or "cream" say little
    guess = not sure and len(places) == 1 and _is_guess(wished, recipe.ingredients[places[0]])
    if len(places) != 1 or guess or (phrase.counted and asked.clause.how != "verb"):
        raise instead_of_what(name, places, recipe, amount.removesuffix(name).strip() if amount.endswith(name) else "")
    return _swapped(asked, places[0], wish[1] if wish else name, amount)


def _is_guess(food: Food, old: Ingredient) -> bool:
    return food.key not in old.swaps and is_guess(food, old.food)


def swap(asked: Asked) -> tuple[Step, ...]:
    """Put a food in the place of another."""
    old, new = direction(asked)
    recipe = asked.recipe
    besides = _MORE_OF.match(new)
    if besides:
        raise ChangeError(f'how much {new}? write two changes, such as "no {old}, add 1/2 cup {besides["what"]}"')
    phrase = one_phrase(new)
    new_name = named(phrase, new) if phrase.counted else new
    old_phrase = one_phrase(old)
    if old_phrase.counted and not old_phrase.name and phrase.counted:  # "2 cups of kale instead of 4"
        return use(replace(asked, clause=Clause("use", new=new, how="verb")))
    if old.split(" ")[0] in ("each", "every"):
        raise ChangeError(f'write how much in all, such as "{new} instead of the {old.split(" ", 1)[-1]}"')
    share, old_name = share_of(old)
    if share is None and old_phrase.counted and old_phrase.name:
        old_name = named(old_phrase, old)
    if phrase.counted and not new_name:  # "1 tbsp instead of 3 tbsp olive oil"
        return set_to(replace(asked, clause=Clause("set", old_name, new)))
    at, new_name = _goes(asked, old_name, new_name)
    cooked = cooked_form_of(new_name, (at,), asked) if phrase.counted else ""
    same = not cooked and phrase.counted and ingredients_called(new_name, recipe).places == (at,)
    cans = phrase.written.measure == recipe.ingredients[at].container != ""
    other = another_kind(old_name, new_name, at, asked) if same and cans else None
    if other is not None:
        return (Swap(asked.row(at), other, as_measured(read(new, food=other.key, table=asked.table))),)
    if same:
        return _another_amount(asked, at, new_name, new)
    if share is None and old_phrase.counted and old_phrase.name:
        part = measured_as(old, recipe.ingredients[at], asked.table).grams / max(recipe.ingredients[at].grams, 1e-9)
        share = None if part > 0.98 else part
    if share is not None:
        return _partly(asked, at, new_name, share, new if phrase.counted else "")
    return _swapped(asked, at, new_name, new if phrase.counted else "")


def _from_can(name: str, amount: str) -> str:
    """Return a name with the word for its form, where the amount is in cans: "a can of black beans"."""
    return f"canned {name}" if amount and one_phrase(amount).written.measure == "can" and not says_form(name) else name


def _another_amount(asked: Asked, at: int, name: str, amount: str) -> tuple[Step, ...]:
    """Set another amount; one that does not measure the food as it is there means another form of it.

    "2 large tomatoes instead of the crushed tomatoes" are fresh ones.
    """
    try:
        return set_to(replace(asked, clause=Clause("set", name, amount)))
    except ChangeError:
        came = newcomer(name, asked.table, line=asked.line)
        reading = read(amount, food=came.food.key, table=asked.table)
        if came.food is asked.recipe.ingredients[at].food or reading.grams is None or reading.problem:
            raise
        return (Swap(asked.row(at), came.food, as_measured(reading), came.note),)


def halves(asked: Asked) -> tuple[Step, ...]:
    """Take half of an ingredient, and for its other half another food: "half kale half spinach"."""
    sides = (asked.clause.old, asked.clause.new)
    there = [bool(ingredients_called(side, asked.recipe).places) for side in sides]
    if all(there):
        return tuple(Amount(asked.row(asked.place(side)), times=0.5) for side in sides)
    if not any(there):
        raise ChangeError(
            f'"half {sides[0]}, half {sides[1]}" instead of what? write one change for each, such as '
            f'"{sides[0]} instead of half the ..."'
        )
    stays, comes = sides if there[0] else sides[::-1]
    at = asked.place(stays)
    return _partly(asked, at, comes, 0.5, "")


def _goes(asked: Asked, old: str, new: str) -> tuple[int, str]:
    """Return the ingredient that goes, and the words for what comes; a kind of it may be all that is said.

    "White rice not brown" means the brown rice, though "brown" alone names other foods.
    """
    if len(ingredients_called(old, asked.recipe).places) != 1 or only_form(old):
        return by_form(asked, old, new) or (asked.place(old), new)
    found = by_form(asked, old, new)
    try:
        at = asked.place(old)
    except ChangeError:
        if found is None or set(words(old)) <= set(words(short_name(asked.recipe.ingredients[found[0]].food))[-1:]):
            raise
        return found
    # "Flour tortillas instead of corn" are in the place of the tortillas, though there is corn too.
    return found if found and found[0] != at and not _does_its_work(asked, at, new) else (at, new)


def _does_its_work(asked: Asked, at: int, name: str) -> bool:
    """Whether what a name means does the same work in a dish as an ingredient."""
    try:
        return does_same_work(newcomer(name, asked.table).food, asked.recipe.ingredients[at].food)
    except ChangeError:
        return True


def _swapped(asked: Asked, at: int, name: str, amount: str) -> tuple[Step, ...]:
    old = asked.recipe.ingredients[at]
    came = coming(asked, _from_can(name, amount), old)
    if came.food.key == old.food.key:
        if not amount:
            raise ChangeError(f"that is {short_name(old.food)} as the recipe has it; write what should be different")
        measured = measured_as(amount, old, asked.table)
        return (Amount(asked.row(at), times=0.0, plus=measured.grams, measured=measured),)
    if amount:
        reading = read(amount, food=came.food.key, table=asked.table)
        if reading.problem:  # "2 large tomatoes" in the place of canned ones are fresh
            came = newcomer(name, asked.table, line=asked.line)
            reading = read(amount, food=came.food.key, table=asked.table)
        if reading.grams is None or reading.problem:
            raise ChangeError(f'"{amount}": {reading.problem}')
        return (Swap(asked.row(at), came.food, as_measured(reading), came.note),)
    cut = _as_cut(name, came.food, old, asked)
    if cut is not None:
        return (Swap(asked.row(at), came.food, cut, came.note),)
    if _asks_how_much(came.food, name, old.food):
        measure = "1/2 cup" if came.food.state in ("dry", "dried") and came.food.group != "spice" else "1/4 tsp"
        example = f"{measure} {name} instead of the {short_name(old.food)}"
        raise ChangeError(f'how much {name}? write for instance "{example}"', [example])
    return (Swap(asked.row(at), came.food, None, came.note),)


def _as_cut(name: str, food: Food, old: Ingredient, asked: Asked) -> Measured | None:
    """Return as many cups of a food as went of the old one, cut as its name says: mashed banana is no sliced one."""
    said = [line_words().get(word) for word in words(name)]
    if old.noun not in VOLUMES or not any(known and known.kind == "cut" for known in said):
        return None
    reading = read(f"{old.count:g} {old.noun} {name}", food=food.key, table=asked.table)
    return None if reading.grams is None or reading.problem else as_measured(reading)


def _asks_how_much(food: Food, name: str, old: Food) -> bool:
    """Whether a food is too strong, or too dry, to take another's place by its measure or weight."""
    if food.group == "spice":
        return old.group not in ("spice", "herb")
    if food.state == "dried" and food.group in ("fruit", "vegetable"):
        return old.state != "dried" and old.group not in ("nut", "seed", "baking")  # raisins for chocolate chips
    powder = food.state == "dry" and old.state != "dry" and cooked_form(food) is None
    return "spray" in words(name) or (powder and food.group != old.group)


def _partly(asked: Asked, at: int, name: str, share: float, amount: str) -> tuple[Step, ...]:
    """Swap a part of an ingredient, for as much of its measure or for the amount that is said."""
    old = asked.recipe.ingredients[at]
    came = newcomer(name, asked.table, like=old, line=asked.line)
    if amount:
        measured = as_measured(read(amount, food=came.food.key, table=asked.table))
    else:
        new = in_place_of(replace(old, grams=old.grams * share), came.food)
        measured = measured_like(new, new.grams, came.food.name)
    return Amount(asked.row(at), times=1 - share), Add(came.food, measured, came.note)


def rinse(asked: Asked) -> tuple[Step, ...]:
    """Take a canned food drained, rinsed or with its liquid."""
    at = asked.place(asked.clause.old)
    old = asked.recipe.ingredients[at]
    name = short_name(old.food)
    undone, rinses = asked.clause.how.startswith("not"), "rins" in asked.clause.how
    wanted = ("canned" if not rinses else "drained") if undone else ("rinsed" if rinses else "drained")
    if old.food.state not in ("canned", "drained", "rinsed"):
        raise ChangeError(f"{name} that is not from a can changes nothing in the numbers by rinsing or draining")
    if old.food.state == wanted or (wanted == "drained" and not undone and old.food.state == "rinsed"):
        raise ChangeError(f"{name}: taken as {wanted} already")
    form = next((form for form in asked.table.forms(old.food.base) if form.state == wanted), None)
    if form is None:
        raise ChangeError(f"the table has no {wanted} {name}; the numbers stay those of {old.food.name.lower()}")
    grams = poured_off(old, form, asked.table)
    each = grams / old.count if old.count else 1.0
    measured = replace(measured_like(old, grams, old.line), noun_grams=each)
    return (Swap(asked.row(at), form, measured),)
