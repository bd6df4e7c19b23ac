"""Whether what a what-if says to take away is taken away, by name; if not, it is asked about."""

import re
from collections.abc import Iterable, Iterator, Sequence

from kit.errors import ChangeError
from kit.food.composition import Foods
from kit.food.finding import index
from kit.food.vocabulary import SMALL_WORDS, words
from kit.lines.spelling import english_words
from kit.meal.ingredient_words import words_of, words_of_food
from kit.meal.recipe import Recipe
from kit.meal.steps import Add, Amount, LeaveOut, Servings, Step, Swap, applied

_TAKES = re.compile(
    r"\b(?:no|without|not|omit|skip|leave out|leaving out|minus|drop|remove|hold)\b"
    r"(?! (?:more than|\d|one|two|three|four|five|six|half)\b)"
    r"(?: (?:the|any|my|your|all|use))*(?P<what>[a-z' -]*?)"
    r"(?=$|[^a-z' -]|\b(?:and|or|but|with|then|instead|in place|use|add|put|for|to|from|by|at|in|on|because|so)\b)"
)
_NOT = re.compile(r"\bnot (?:the |my |any )?(?P<what>[a-z' -]+)$")


def ask_what_goes(told: str, recipe: Recipe, steps: Sequence[Step], table: Foods) -> None:
    """Raise where a line says that something should not be there, and no step takes that away.

    Parameters
    ----------
    told : str
        The words of the line that ask for a change.
    recipe : Recipe
        As it was before.
    steps : sequence of Step
        What was read.
    table : Foods
        The foods at hand.
    """
    named = {word for step in steps if isinstance(step, Swap | Add) for word in words_of_food(step.food)}
    if {"no", "not", "without"} & named or any(isinstance(step, Servings) for step in steps):
        return
    gone = set(_gone(steps, recipe))
    for found in _TAKES.finditer(told):
        what = {word for word in words(found["what"]) if word not in SMALL_WORDS and word in index(table).by_word}
        if not gone or (what and not any(_is_of(word, gone, table) for word in what)):
            raise ChangeError(
                f'"{told.strip()}" says that something should not be there; write what, such as "leave out the ..."'
            )


def ask_what_stays(text: str, recipe: Recipe, steps: Sequence[Step]) -> None:
    """Raise where "X, not Y" swaps something else than Y: then Y may be meant to stay, or to go."""
    found = _NOT.search(text)
    if found is None or not any(isinstance(step, Swap) for step in steps):
        return
    what = set(words(found["what"])) - SMALL_WORDS
    there = any(what <= words_of(part) for part in recipe.ingredients)
    if what and there and not what & set(_gone(steps, recipe)):
        raise ChangeError(
            f'"{text}": does the {found["what"]} stay or go? write "leave out the {found["what"]}" if it goes'
        )


def _gone(steps: Iterable[Step], recipe: Recipe) -> Iterator[str]:
    """Yield the words of every ingredient that goes, or of which there is less."""
    now = recipe
    for step in steps:
        after = applied(now, [step])
        if isinstance(step, LeaveOut | Swap) or (
            isinstance(step, Amount) and after.grams[step.row.at] < now.grams[step.row.at]
        ):
            yield from words_of(now.ingredients[step.row.at])
        now = after


def _is_of(word: str, gone: set[str], table: Foods) -> bool:
    return word in gone or (word not in english_words() and index(table).nearest_word(word) in gone)
