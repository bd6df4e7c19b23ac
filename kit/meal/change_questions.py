"""What is asked back about a typed what-if as a whole, and what the kit would understand."""

import re

from kit.errors import ChangeError, NotUnderstoodError
from kit.food.names import short_name
from kit.meal.change_servings import SOME_OF_THEM, wholes_named
from kit.meal.change_shapes import Clause
from kit.meal.change_words import without_politeness
from kit.meal.recipe import Recipe
from kit.meal.steps import Amount, Step, Swap
from kit.texts import listing, number

_HALF_AND_HALF = re.compile(r"\b(?:50 ?[/-] ?50|fifty[- ]fifty)\b")
_VAGUE = re.compile(
    r"\b(?:some|part|most|much|a bit|a little|a portion) of (?:the|my|that|your)\b(?! (?:time|box|jar|serv|bowl|plate))"
    r"|\b(?:under|(?<!spread )(?<!spread it )(?<!spread out )over|above|below|(?:less|more) than)"
    r" (?:\d|an? |half|one|two)"
)
_EXCEPT = re.compile(
    r"\b(?:all|everything|anything|nothing)\b(?: \w+){0,3} (?:but|save)\b"
    r"|\b(?:except|excluding|apart from|other than)\b"
)


def of_what_is_not_alike(text: str, dish: frozenset[str]) -> ChangeError | None:
    """Return the question about a line that changes some of the servings, all but something, or whole loaves.

    Parameters
    ----------
    text : str
        The line in plain characters.
    dish : frozenset of str
        What the dish and its servings are called.
    """
    if _EXCEPT.search(text):
        return ChangeError(f'"{text}" leaves something out of what changes; write what changes, one after the other')
    if SOME_OF_THEM.search(text):
        return ChangeError(f'"{text}" is of some of the servings; the numbers are of all alike, so write what all get')
    whole = wholes_named(without_politeness(text), dish)
    if not whole:
        return None
    said = f'"{text}": {whole} may be whole recipes or servings'
    return ChangeError(f'{said}; write "double the recipe", or how many servings')


def of_how_much(text: str) -> ChangeError | None:
    """Return the question about an amount that is none: "some of the oil", "fifty-fifty"."""
    if _VAGUE.search(text):
        return ChangeError(f'"{text}" says no amount; write how much, such as "half", "a third" or "8 oz"')
    if _HALF_AND_HALF.search(text):
        return ChangeError(f'"{text}": write how much of each, such as "half beef, half lentils"')
    return None


def of_which_kind(first: str, rest: str) -> ChangeError:
    """Return the question whether a food is of the kind without salt, or the salt is left out as well."""
    apart = f"{first}, and {re.sub('^without', 'no', rest)}"
    return ChangeError(
        f'"{first} {rest}" may be one food or two changes; write "{apart}", or the food in full', [apart]
    )


def says_instead(less: Clause, rest: str) -> bool:
    """Return whether a clause puts something else in the place of what a part was taken of."""
    less_of_it = less.kind == "leave out" or (less.kind == "times" and less.number < 1)
    return less_of_it and rest.endswith(" instead")


def of_which_half(half: tuple[Step, ...], after: tuple[Step, ...], less: Clause, recipe: Recipe) -> ChangeError | None:
    """Return the question what a food replaces: "half the beans, lentils instead" may mean the half that goes."""
    swap = after[0]
    if not isinstance(swap, Swap):
        return None
    name, old = short_name(swap.food), short_name(recipe.ingredients[swap.row.at].food)
    thing = less.old.removeprefix("the ")
    if less.kind == "leave out":  # "no onion, use avocado oil instead" where there is olive oil
        choices = [f"{name} instead of the {thing}", f"leave out the {thing}, {name} instead of the {old}"]
        return ChangeError(f'"{name}" instead of what? write "{choices[0]}" or "{choices[1]}"', choices)
    choices = [f"{name} instead of {number(100 * (1 - less.number))} % of the {thing}"]
    if swap.row not in [step.row for step in half if isinstance(step, Amount)]:
        choices.append(f"{number(100 * less.number)} % of the {thing}, {name} instead of the {old}")
    shown = listing([f'"{one}"' for one in choices], "or")
    return ChangeError(f'"{name}" instead of what? write {shown}', choices)


def same_place_twice(first: tuple[Step, ...], then: tuple[Step, ...], text: str) -> ChangeError | None:
    """Return the question what is meant where two foods would take one place: "spinach and kale"."""
    swapped = {step.row.at for step in first if isinstance(step, Swap)}
    if not swapped & {step.row.at for step in then if isinstance(step, Swap)}:
        return None
    return ChangeError(f'"{text}" puts two foods in the place of one; write how much of each, such as "add 1 cup ..."')


def stays_as_it_is(name: str, ahead: Clause | None) -> ChangeError | None:
    """Return the question how much stays where all the rest is multiplied: "double it but keep the salt the same"."""
    if ahead is None or ahead.kind not in ("servings", "batch"):
        return None
    name = name.removeprefix("the ")
    return ChangeError(f'how much {name} should there be then? write the amount, such as "1/2 tsp {name}"')


def not_understood(line: str, recipe: Recipe) -> ChangeError:
    """Return the error that says what would be understood, of this recipe's own ingredients."""
    names = [short_name(part.food) for part in recipe.ingredients if part.grams > 0 and part.food.key != "water"]
    first, last = (names[0], names[-1]) if names else ("oats", "salt")
    examples = [
        f"no {last}",
        f"half the {first}",
        f"... instead of the {first}",
        "add 1/4 cup walnuts",
        "make it for 10",
    ]
    shown = " ".join(line.split())[:60]
    would = listing([f'"{example}"' for example in examples], "or")
    return NotUnderstoodError(f'"{shown}" is not understood; the kit would understand {would}')
