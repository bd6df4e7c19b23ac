"""Which food is meant to come into a recipe, in which form, and whose place it would take."""

import re
from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from functools import cache

from kit import files
from kit.errors import ChangeError, KitError
from kit.food.cells import read_rows
from kit.food.composition import Food, Foods
from kit.food.finding import food as food_by_key
from kit.food.finding import index
from kit.food.names import short_name
from kit.food.vocabulary import SMALL_WORDS, line_words, words
from kit.lines.accounting import FREE_FROM
from kit.lines.choosing import choose
from kit.lines.lighter import lighter
from kit.lines.parsed_line import take_apart
from kit.lines.reader import read
from kit.lines.reading import Reading
from kit.lines.spelling import english_words
from kit.meal.change_forms import AS_COOKED, as_used, drained, ready_to_eat, says_form, used_alike
from kit.meal.ingredient_names import clearer
from kit.meal.recipe import Ingredient

# The words that ask for the form in which the food that goes was used.
_SAME_FORM = {
    "rinsed": ", canned, drained and rinsed",
    "drained": ", canned, drained",
    "canned": ", canned",
    "cooked": ", cooked",
    "dry": ", dry",
    "frozen": ", frozen",
    "raw": ", fresh",
}
_AS_GOOD = {  # states of the food that comes, best first, for each state of the one that goes
    "rinsed": ("rinsed", "drained", "cooked", "canned"),
    "drained": ("drained", "rinsed", "cooked", "canned"),
    "cooked": ("cooked", "rinsed", "drained", "canned"),
    "canned": ("canned", "drained", "rinsed", "cooked"),
    "dry": ("dry",),
    "frozen": ("frozen", "raw"),
    "raw": ("raw", "frozen"),
}
MEATS = {"meat", "poultry"}  # groups that take each other's place, cut for cut
_CUTS = frozenset("ground breast thigh drumstick wing leg stew chop loin tenderloin".split())  # carried over in a swap


@dataclass(frozen=True, slots=True)
class Newcomer:
    """A food that comes into a recipe.

    Attributes
    ----------
    food : Food
        The food.
    note : str
        What was assumed: a stand-in, a spelling.
    """

    food: Food
    note: str = ""


def newcomer(text: str, table: Foods, *, like: Ingredient | None = None, line: str = "") -> Newcomer:
    """Return the food that words mean, in the form of the ingredient whose place it takes.

    Parameters
    ----------
    text : str
        The words, without an amount.
    table : Foods
        The foods to choose from.
    like : Ingredient, optional
        What it takes the place of: without words of its own it comes in that form, dry for dry, canned for canned.
    line : str
        The line the words stand in, so that it can be offered with clearer words.

    Raises
    ------
    ChangeError
        If no food, or more than one, fits the words; then with a choice for each.
    """
    own = _own_swap(text, table, like)
    if own is not None:
        return Newcomer(own)
    food, _ = understood(f"100 g {text}", text, table, line, besides=like.food if like else None)
    if like is not None and not says_form(text) and used_alike(food, like.food):
        food = _in_the_form_of(like, text, food, table)
    food = _in_the_cut_of(like, text, food, table) if like is not None else food
    food = drained(food, text, like, table) if like is not None else food
    ready = ready_to_eat(food, text, table) if like is not None and like.food.state != "dry" else None
    notes = [_notes(text, table), AS_COOKED if ready else ""]
    return Newcomer(ready or food, "; ".join(note for note in notes if note))


def understood(
    amount_and_food: str, text: str, table: Foods, line: str, besides: Food | None = None
) -> tuple[Food, Reading]:
    """Return the food of a line and how it is read, and raise where the reader would have to ask, or left a word out.

    A food that is there already, `besides`, is no choice.

    Raises
    ------
    ChangeError
        See `newcomer`.
    """
    reading = read(amount_and_food, table=table)
    if reading.food is None or reading.problem:
        near = [match for match in reading.choices if _is_named(text, match.name, table)]
        foods = [match.name.lower() for match in near if besides is None or match.food != besides.key]
        free = {FREE_FROM[word] for word in words(text) if word in FREE_FROM}
        if free:
            foods = [match.name.lower() for match in near if not free & set(table[match.food].allergens)]
            raise ChangeError(f'the table has no "{text}"; name a food that is free of it', clearer(line, text, foods))
        if reading.choices and not near:
            raise ChangeError(f'"{text}" is no food of the table; write one as a recipe does')
        raise ChangeError(f'"{text}": {reading.problem}', clearer(line, text, foods))
    strange = {word for word in words(text) if not belongs(word, reading.food, table)}
    left_over = [said for said in text.split() if strange & set(words(said))] or sorted(strange)
    if left_over:
        raise ChangeError(
            f'"{text}" is not all understood: "{" ".join(left_over)}" says nothing of '
            f"{reading.food.name}; write the food as a recipe does",
            clearer(line, text, [reading.food.name.lower()]),
        )
    return reading.food, reading


def _is_named(text: str, name: str, table: Foods) -> bool:
    """Whether some words name the thing that a food's name begins with: not "vegan" for bacon, nor "freeze it"."""
    thing = set(words(name.split(",")[0]))
    return any(word in thing or index(table).nearest_word(word) in thing for word in words(text))


def belongs(word: str, food: Food, table: Foods) -> bool:
    """Return whether a word is of lines in general, of the food's names, of a stand-in's, or misspelt from one."""
    if word in SMALL_WORDS or word in line_words() or word.isdigit() or lighter([word]):
        return True
    names = {own for name in (food.name, *food.other_names, *_stand_ins().get(food.key, ())) for own in words(name)}
    return word in names or (word not in english_words() and index(table).nearest_word(word) in names)


@cache
def _stand_ins() -> Mapping[str, tuple[str, ...]]:
    found: dict[str, tuple[str, ...]] = {}
    for row in read_rows(files.bundled("data/stand_ins.csv")):
        found[row["food"]] = (*found.get(row["food"], ()), row["words"])
    return found


def _notes(text: str, table: Foods) -> str:
    """Return what was assumed about a food: a stand-in, a spelling, a form that the table lacks."""
    phrase = take_apart(f"100 g {text}")[0]
    return "; ".join(choose(phrase.name, phrase.after, table, by_weight=True).notes)


def _own_swap(text: str, table: Foods, like: Ingredient | None) -> Food | None:
    """Return the food that the recipe itself offers for an ingredient, where the words mean it."""
    asked = frozenset(words(text)) - SMALL_WORDS
    fitting = []
    for key in like.swaps if like else ():
        food = table[key] if key in table else food_by_key(key)
        names = [frozenset(words(name)) - SMALL_WORDS for name in (food.name, *food.other_names, short_name(food))]
        if asked in names:
            fitting.append(food)
    return fitting[0] if len(fitting) == 1 else None


def _in_the_form_of(like: Ingredient, text: str, food: Food, table: Foods) -> Food:
    used = as_used(like)
    good = _AS_GOOD.get(used, ())
    if food.group in ("vegetable", "fruit") and used in ("canned", "drained", "rinsed"):
        good = tuple(state for state in good if state != "cooked")
    if not good or food.state == good[0]:
        return food
    try:
        asked, _ = understood(f"100 g {text}{_SAME_FORM[used]}", text, table, "")
    except ChangeError:
        asked = food
    thing = re.split(r"[,(]", asked.name)[0]
    if asked.base != food.base and not set(words(short_name(food))) & set(words(thing)):
        asked = food  # "ham, fresh" is a leg of pork
    forms = [asked, food, *table.forms(food.base)]
    fitting = (form for state in good for form in forms if form.state == state)
    return next((form for form in fitting if form is asked or form.base == food.base), food)


def _in_the_cut_of(like: Ingredient, text: str, food: Food, table: Foods) -> Food:
    """Return the ground turkey where turkey takes the place of ground beef; the food itself where there is none."""
    if not {food.group, like.food.group} <= MEATS or _CUTS & set(words(food.name)) & set(words(text)):
        return food
    cut = next((word for word in words(like.food.name) if word in _CUTS), None)
    if cut is None or cut in words(food.name):
        return food
    try:
        came, _ = understood(f"100 g {text} {cut}", f"{text} {cut}", table, "")
    except ChangeError:
        return food
    return came if came.group == food.group and came.state == food.state and cut in words(came.name) else food


def suggestions(ingredient: Ingredient, table: Foods) -> Iterable[str]:
    """Return names of foods that the recipe offers for an ingredient."""
    for key in ingredient.swaps:
        try:
            yield (table[key] if key in table else food_by_key(key)).name.lower()
        except KitError:
            continue
