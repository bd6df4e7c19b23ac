"""Which food comes where what goes completes its name: "lime" instead of lemon juice, "brown" instead of white."""

from collections.abc import Iterable

from kit.errors import ChangeError
from kit.food.composition import foods
from kit.food.finding import index
from kit.food.names import short_name
from kit.food.vocabulary import SMALL_WORDS, words
from kit.meal.change_asked import Asked
from kit.meal.change_foods import MEATS, Newcomer, newcomer
from kit.meal.change_places import does_same_work, same_kind
from kit.meal.ingredient_names import ingredients_called
from kit.meal.recipe import Ingredient
from kit.texts import listing

_OFTEN = 0.2  # of the names that hold a word end in it, where it is what they name


def coming(asked: Asked, name: str, old: Ingredient) -> Newcomer:
    """Return the food that comes; "brown" instead of white rice is brown rice, "milk" the milk that is there.

    Raises
    ------
    ChangeError
        If no food, or more than one, fits; then with a choice for each.
    """
    there = ingredients_called(name, asked.recipe).places
    own = asked.recipe.ingredients[there[0]].food if len(there) == 1 else old.food
    if own is not old.food and own.state == old.food.state:
        return Newcomer(own)
    try:
        came = newcomer(name, asked.table, like=old, line=asked.line)
    except ChangeError as fault:
        asks = bool(fault.choices) and _is_thing(name) and old.food.group not in MEATS and _says_thing(asked, name, old)
        found = None if asks else _completed(asked, name, old, strictly=False)
        if found is None:  # "rice instead of egg noodles" are no rice noodles
            raise fault
        return found
    if does_same_work(came.food, old.food) or own is not old.food:  # strawberries that are there are no yogurt
        return came
    found = _completed(asked, name, old, strictly=True)
    if found is None or len(name.split()) > 1 or _is_plural(name):
        return came
    named_too = _says_thing(asked, name, old) and "juice" not in words(found.food.name)
    if named_too and (came.food.group != found.food.group or _says_thing_alone(asked, name, old)):
        raise _which(name, (came, found), old)
    return found


def _which(name: str, found: Iterable[Newcomer], old: Ingredient) -> ChangeError:
    """Return the question whether corn comes, or corn tortillas."""
    choices = [f"{one.food.name.lower()} instead of the {short_name(old.food)}" for one in found]
    shown = listing([f'"{choice}"' for choice in choices], "or")
    return ChangeError(f'"{name}": which is meant? write {shown}', choices)


def _is_thing(name: str) -> bool:
    """Whether a word is the head of a food's name, so that it says more than which kind: "rice", not "brown"."""
    said = words(name)
    known = index(foods())
    heads = [known.names[place].head for place in known.by_word.get(said[0], ())] if len(said) == 1 else []
    return bool(heads) and heads.count(said[0]) > _OFTEN * len(heads)


def _is_plural(name: str) -> bool:
    """Whether a name is of things themselves: "almonds" are no almond butter."""
    return name.endswith("s") and words(name)[-1] != name.split()[-1]


def _says_thing(asked: Asked, name: str, old: Ingredient) -> bool:
    return words(short_name(old.food))[-1] in _said_besides(asked, name)


def _says_thing_alone(asked: Asked, name: str, old: Ingredient) -> bool:
    """Whether of what goes only the thing is named, "noodles": then a word for a kind of it is one by itself."""
    said = _said_besides(asked, name)
    thing = words(short_name(old.food))
    return thing[-1] in said and not said & ((set(thing[:-1]) | set(words(old.line))) - {thing[-1]})


def _said_besides(asked: Asked, name: str) -> set[str]:
    return set(words(f"{asked.clause.old} {asked.clause.new}")) - set(words(name)) - SMALL_WORDS


def _completed(asked: Asked, name: str, old: Ingredient, *, strictly: bool) -> Newcomer | None:
    """Return the food that a name means together with what the old one is: thighs of the chicken, brown rice."""
    thing = short_name(old.food).split()
    tails = (thing[-1:], thing[-2:], thing)
    wishes = [f"{thing[0]} {name}"] if old.food.group in MEATS else [f"{name} {' '.join(tail)}" for tail in tails]
    for wish in wishes:
        try:
            came = newcomer(wish, asked.table, like=old)
        except ChangeError:
            continue
        own = [set(words(one)) for one in (came.food.name, *came.food.other_names)]
        named_so = (
            any(set(words(wish)) == one for one in own) if strictly else any(set(words(name)) <= one for one in own)
        )
        alike = does_same_work(came.food, old.food) if strictly else same_kind(came.food, old.food)
        if named_so and alike and came.food is not old.food:
            return came
    return None
