"""Filling a sentence from the dish: what stands in braces is looked up by a fixed grammar and never evaluated.

The grammar is written down in `kit.speech.points`.
"""

import re
from collections.abc import Callable, Iterator
from dataclasses import dataclass
from functools import lru_cache

from kit import files
from kit.errors import KitError, UnknownNameError, nearest
from kit.food.amounts import plain_characters, read_count
from kit.food.cells import read_rows
from kit.food.composition import Food
from kit.food.nutrients import nutrient, nutrients
from kit.meal.certainty import Range, spoken
from kit.meal.kitchen_amounts import kitchen_amount
from kit.meal.nutrition import ENERGY_SOURCES
from kit.rules.naming import thing_said
from kit.rules.reference import daily_values
from kit.rules.spoken import amount_words, range_words, share_words
from kit.talk.dish import Dish, content, measure_grams
from kit.texts import number

PLAIN = ("servings", "serving", "serving grams", "keeps")
FORMS = ("share_of_day", "share_of_energy", "range")
LONGEST = 80  # characters in a pair of braces
_BRACES = re.compile(r"\{([^{}]*)\}")
_SHARE_FROM = re.compile(r"share of (\S+) from (.+)")
_OF = re.compile(r"(grams|amount) of (.+)")
_FROM = re.compile(r"(\S+) from (.+)")
_IN = re.compile(r"(\S+) in (.+) of (\S+)")

Filler = Callable[[Dish], str]


@dataclass(frozen=True, slots=True)
class Piece:
    """A piece of a sentence: text as it stands, or what stands in a pair of braces."""

    text: str
    in_braces: bool = False


@lru_cache(maxsize=2_000)
def pieces(say: str) -> tuple[Piece, ...]:
    """Return a sentence cut at its braces.

    Raises
    ------
    KitError
        If a brace stands alone.

    Examples
    --------
    >>> pieces("It has {energy}.")
    (Piece(text='It has ', in_braces=False), Piece(text='energy', in_braces=True), Piece(text='.', in_braces=False))
    """
    found: list[Piece] = []
    end = 0
    for match in _BRACES.finditer(say):
        found += [Piece(say[end : match.start()]), Piece(match[1].strip(), in_braces=True)]
        end = match.end()
    found.append(Piece(say[end:]))
    for piece in found:
        if not piece.in_braces and ("{" in piece.text or "}" in piece.text):
            raise KitError(
                "a brace stands alone or inside another; write a placeholder such as {energy}, and no other braces"
            )
    return tuple(piece for piece in found if piece.text or piece.in_braces)


def fill(say: str, dish: Dish) -> str:
    """Return a sentence with its placeholders filled from the dish; one that begins with a placeholder gets a capital.

    Raises
    ------
    KitError
        If a brace stands alone, or a pair holds something that the grammar does not have.
    """
    text = "".join(filled(piece, dish) for piece in pieces(say))
    return text[:1].upper() + text[1:] if say.startswith("{") else text


def filled(piece: Piece, dish: Dish) -> str:
    """Return one piece of a sentence as it is said."""
    return filler(piece.text, dish)(dish) if piece.in_braces else piece.text


def faults(say: str, dish: Dish) -> Iterator[str]:
    """Yield what is wrong with each placeholder of a sentence."""
    try:
        found = pieces(say)
    except KitError as fault:
        yield str(fault)
        return
    for piece in found:
        if piece.in_braces:
            try:
                filler(piece.text, dish)
            except KitError as fault:
                yield f"{{{piece.text[:LONGEST]}}}: {fault}"


def filler(text: str, dish: Dish) -> Filler:
    """Return what fills a placeholder, its names looked up.

    Parameters
    ----------
    text : str
        What stands in the braces.
    dish : Dish
        Whose recipe and foods the names belong to.

    Raises
    ------
    KitError
        If the grammar has no such placeholder, or there is no such nutrient, ingredient, food or measure.
    """
    if len(text) > LONGEST:
        raise KitError(f"a placeholder has at most {LONGEST} characters")
    if text in PLAIN:
        return _plain(text)
    if match := _SHARE_FROM.fullmatch(text):
        name, food = nutrient(match[1]).id, dish.ingredient(match[2])
        return lambda dish: share_words(dish.share([food], name), f"the {thing_said(name)}", _lacking(dish, name))
    if match := _OF.fullmatch(text):
        return _of_ingredient(match[1], dish.ingredient(match[2]))
    if match := _IN.fullmatch(text):
        return _in_measure(nutrient(match[1]).id, match[2], dish.food(match[3]))
    if match := _FROM.fullmatch(text):
        name, food = nutrient(match[1]).id, dish.ingredient(match[2])
        return lambda dish: amount_words(name, dish.brought([food], name))
    return _of_serving(text, dish.talk.rules)


def _lacking(dish: Dish, name: str) -> bool:
    return bool(dish.numbers.missing_from(name))


def _of_serving(text: str, rules: str) -> Filler:
    name, dot, form = text.partition(".")
    if name not in nutrients():
        known = [*nutrients(), *PLAIN]
        raise KitError(f'no placeholder "{text}"{nearest(name, known) or "; write a nutrient such as {energy}"}')
    if not dot:
        return lambda dish: amount_words(name, dish.range_of(name), _lacking(dish, name))
    if form not in FORMS:
        raise UnknownNameError(f"form of {name}", form, FORMS)
    if form == "range":
        return lambda dish: range_words(name, dish.range_of(name))
    if form == "share_of_energy":
        if name not in ENERGY_SOURCES:
            raise KitError(f"only {', '.join(ENERGY_SOURCES)} have a share of the energy")
        return lambda dish: share_words(energy_share(dish, name), "the energy")
    if name not in daily_values(rules):
        raise KitError(f"{thing_said(name)} has no daily value; write {{{name}}}")
    return lambda dish: share_words(_day_share(dish, name), f"a day's {thing_said(name)}", _lacking(dish, name))


def energy_share(dish: Dish, name: str) -> Range:
    """Return the share of the energy from a nutrient, with its range. [fraction]"""
    share, of = dish.numbers.energy_shares[name], dish.range_of(name)
    # The energy moves with its source, so the share is surer than the source; half of its spread is common practice.
    half = share * of.half_width / of.value / 2 if of.value else 0.0
    return Range(share, max(0.0, share - half), share + half)


def _day_share(dish: Dish, name: str) -> Range:
    of, day = dish.range_of(name), daily_values(dish.talk.rules)[name].amount
    return Range(of.value / day, of.low / day, of.high / day)


def _of_ingredient(what: str, food: Food) -> Filler:
    def grams(dish: Dish) -> str:
        of = dish.grams(food)
        return spoken(of.value, of.low, of.high, "g")

    def amount(dish: Dish) -> str:
        places = dish.places([food])
        ingredients = dish.numbers.recipe.ingredients
        return kitchen_amount(ingredients[places[0]], dish.talk.measures).text if places else "none"

    return grams if what == "grams" else amount


def _in_measure(name: str, amount: str, food: Food) -> Filler:
    count, measure = read_count(plain_characters(amount))
    if count is None or not measure.strip():
        raise KitError(f'"{amount}" is no amount; write such as {{{name} in one cup of {food.key}}}')
    grams = count.value * measure_grams(food, measure.strip())
    return lambda dish: amount_words(name, content(food, name, grams, dish.talk.rules))


def keeping_days() -> tuple[float, float]:
    """Return how many days a cooked dish keeps in the refrigerator, at least and at most."""
    row = next(row for row in read_rows(files.bundled("data/storage.csv")) if row["rule"] == "keeps_days")
    return float(row["value"]), float(row["value_high"])


def _one(thing: str) -> str:
    """Return a serving with its article: "one lidded box", whether the talk writes "lidded box" or "one lidded box"."""
    return thing if thing.lower().startswith(("one ", "a ", "an ", "the ", "1 ")) else f"one {thing}"


def _plain(text: str) -> Filler:
    def serving_grams(dish: Dish) -> str:
        parts = [dish.grams(part.food) for part in dish.numbers.recipe.ingredients]
        half = sum(part.half_width**2 for part in parts) ** 0.5
        value = dish.numbers.serving_grams
        return spoken(value, value - half, value + half, "g")

    def keeps(dish: Dish) -> str:
        days = dish.talk.keeps_days
        if days is not None:
            return f"{number(days, 1)} {'day' if days == 1 else 'days'}"
        return "{} to {} days".format(*map(number, keeping_days()))

    return {
        "servings": lambda dish: number(dish.numbers.recipe.servings, 1),
        "serving": lambda dish: _one(dish.numbers.recipe.serving_is),
        "serving grams": serving_grams,
        "keeps": keeps,
    }[text]
