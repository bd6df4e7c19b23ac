"""A clause of a what-if in its surroundings, and the amounts that its words give."""

import re
from dataclasses import dataclass, replace

from kit.errors import ChangeError, KitError
from kit.food.amounts import plain_characters, read_count
from kit.food.composition import Foods, foods
from kit.food.finding import index
from kit.food.names import short_name
from kit.food.vocabulary import SMALL_WORDS, words
from kit.lines.nearest_measure import CONTAINERS, SIZES
from kit.lines.parsed_line import ParsedLine, take_apart
from kit.lines.reader import read
from kit.lines.reading import Reading
from kit.meal.change_foods import belongs
from kit.meal.change_shapes import Clause
from kit.meal.ingredient_names import the_ingredient
from kit.meal.ingredient_words import kinds_of
from kit.meal.recipe import Ingredient, Recipe
from kit.meal.steps import Measured, Row, measured_like
from kit.texts import number

_ANOTHER_CHANGE = re.compile(
    r"(?:[,;:] ?(?:and |but )?|\b(?:and|but|plus) )"
    r"(?:no|without|half|double|skip|omit|leave out|add|use|keep|same|swap)\b"
    r"|\b(?:instead|rather than|in place of|in lieu of|swap|replac\w+|substitut\w+)\b|(?<=[a-z\d,] )make it\b"
    r"|\b(?:but|then)\b|\bfor (?:\d+|two|three|four|five|six|seven|eight|nine|ten|twelve)\b"
    r"|[a-z]{3,}(?:,| and)+ \d+(?:[./]\d+)? ?(?:cups?|tbsp|tsp|oz|lbs?|g|cans?|cloves?|large|medium|small)\b(?= [a-z])"
    r"|\bmake \d"
)
_SIZED = re.compile(rf"\b(?:{'|'.join(SIZES)}|big|little|tiny|huge|baby|mini)\b")


@dataclass(frozen=True)
class Asked:
    """A clause in its surroundings.

    Attributes
    ----------
    clause : Clause
        What it seems to ask for.
    recipe : Recipe
        As it is after the clauses before it.
    table : Foods
        The foods to choose from.
    line : str
        The whole line, so that it can be offered with clearer words.
    """

    clause: Clause
    recipe: Recipe
    table: Foods
    line: str

    def row(self, at: int) -> Row:
        """Return what a step about an ingredient has to know of it."""
        return Row(at, self.recipe.ingredients[at].food.key)

    def place(self, text: str) -> int:
        """Return the place of the one ingredient that words mean."""
        return the_ingredient(text, self.recipe, self.table, self.line)


def one_phrase(text: str) -> ParsedLine:
    """Return a text taken apart as a line of a recipe is.

    Raises
    ------
    ChangeError
        If it names several foods with their amounts.
    """
    phrases = take_apart(text)
    if len(phrases) > 1 or _ANOTHER_CHANGE.search(text):
        raise ChangeError(f'"{text}" names several foods; write one change for each')
    phrase = phrases[0]
    behind = frozenset(words(text.rpartition(",")[2])) - SMALL_WORDS if "," in text else frozenset()
    if phrase.name and any(name.words == behind for name in index(foods()).within(behind)):  # "1/4 cup oil, walnuts"
        raise ChangeError(f'"{text}" may name several foods; write one change for each')
    alone = not phrase.name and not phrase.after and read_count(plain_characters(text))[0] is None  # "thighs"
    return replace(phrase, counted=False) if alone else phrase


def named(phrase: ParsedLine, text: str) -> str:
    """Return the words of a text that name its food, as they are written."""
    named = phrase.said
    return " ".join(word for word in text.split() if named & set(words(word))).strip(" ,")


def measured_as(text: str, old: Ingredient, table: Foods) -> Measured:
    """Return an amount of an ingredient's food, measured as it is in the recipe where nothing else is said."""
    counted = one_phrase(text)
    _all_of_it(counted, old, table)
    if old.container in CONTAINERS and counted.written.measure == old.container and not counted.written.package:
        grams = counted.written.count.value * old.noun_grams  # "two cans" are cans as the recipe has them
        return measured_like(old, grams, text)
    bare = not (counted.written.unit or counted.written.measure or counted.written.package)
    if counted.counted and bare and old.container in CONTAINERS:  # "two tomatoes" beside a can of them
        many, thing = number(counted.written.count.value, 2), short_name(old.food)
        choices = [f"use {many} {old.container}{'' if many == '1' else 's'} of {thing}"]
        raise ChangeError(f'"{text}": {old.container}s, or pieces? write "{choices[0]}", or how much', choices)
    if "," not in text and old.cut and old.cut != "trimmed":
        text = f"{text}, {old.cut}"
    try:
        reading = read(text, food=old.food.key, table=table)
    except KitError as fault:
        raise ChangeError(f'"{text}": {fault}') from fault
    if reading.grams is None or reading.problem or not counted.counted:
        problem = reading.problem or f'write how much, such as "half the {short_name(old.food)}"'
        raise ChangeError(f'"{text}": {problem}')
    measured = as_measured(reading)
    if old.noun in SIZES and measured.noun in (*SIZES, "piece") and not _SIZED.search(text):
        measured = replace(measured, noun=old.noun)  # "two onions" are as large as the one in the recipe
    if measured.noun == old.noun and old.noun_grams > 0:
        return replace(measured, grams=reading.count * old.noun_grams, noun_grams=old.noun_grams)
    return measured


def _all_of_it(counted: ParsedLine, old: Ingredient, table: Foods) -> None:
    """Raise where an amount has words that are not of its ingredient: "8 oz and bump the lentils to 1 cup"."""
    own = {*words(old.line), *words(old.food.name)}
    strange = [
        word for word in (*counted.name, *counted.after) if word not in own and not belongs(word, old.food, table)
    ]
    if strange:
        raise ChangeError(
            f'"{" ".join(strange)}" is no word of {short_name(old.food)}; write one change after the other'
        )


def as_measured(reading: Reading) -> Measured:
    """Return the amount of a line that was read."""
    return Measured(
        float(reading.grams or 0.0),
        reading.relative_sd,
        reading.noun,
        reading.noun_grams,
        reading.cut,
        reading.line,
        reading.container,
    )


def words_of_dish(recipe: Recipe) -> frozenset[str]:
    """Return what the dish and its servings are called, word by word, where no ingredient or its kind is called so."""
    own = {
        word
        for part in recipe.ingredients
        for word in (*words(part.food.name), *words(part.line), *kinds_of(part.food))
    }
    return frozenset(words(f"{recipe.title} {recipe.serving_is}")) - own
