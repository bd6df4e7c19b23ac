"""What has to be asked when words fit no food or several, with choices of the same kind."""

from collections.abc import Sequence

from kit.food.composition import Food, Foods
from kit.food.finding import Match, Name, find
from kit.food.vocabulary import words
from kit.lines.known_names import KnownNames, kind_of, missing_choices

NEAR_ENOUGH = 40.0
SHOWN = 60  # characters of a food's words in a message
MOST_CHOICES = 5
NO_FOOD = 'no food on this line; write an amount and a food, such as "1 cup lentils, dry"'


def which_food(
    name: Sequence[str], after: Sequence[str], head: str, table: Foods, deciding: Sequence[str] = ()
) -> tuple[str, tuple[Match, ...]]:
    """Return the question which food some words mean, and the foods that are near.

    Parameters
    ----------
    name, after : sequence of str
        Words before the first comma, and behind it.
    head : str
        The word that says what it is: the choices are of its kind where there are any.
    table : Foods
        The foods to choose from.
    deciding : sequence of str
        The words that the nearest food leaves over.
    """
    asked = [word for word in name if kind_of(word) in ("food", "other", "measure", "deciding")] or [*name, *after]
    said = [word for word in deciding if word not in asked]
    text = " ".join(dict.fromkeys((*said, *asked)))[:SHOWN]
    if not text:
        return NO_FOOD, ()
    choices = _of_a_kind(find(" ".join((text, *states_said(name, after))), 4 * MOST_CHOICES, table), head, table)
    if not choices:
        return f'no food "{text}" in the table; write a plainer name, or add it from its package label', ()
    return f'not sure which food "{text}" is; write {_either(choices)}', choices


def which_instead(name: Name, names: KnownNames, table: Foods) -> tuple[str, tuple[Match, ...]]:
    """Return the question what to take for a food that the table is known to lack, and the foods that are near."""
    choices = tuple(Match(food.key, food.name, 80.0) for food in missing_choices(name, table))
    return f'no "{name.text}" in the table; add it from its package label, or write {_either(choices)}', choices


def which_of_two(foods: Sequence[str]) -> str:
    """Return the question how much of each of several foods there is."""
    return f"the line names {len(foods)} foods, {' and '.join(foods)}; write a line with an amount for each"


def states_said(name: Sequence[str], after: Sequence[str]) -> list[str]:
    """Return the states that a line says, fresh left out."""
    return [word for word in (*name, *after) if kind_of(word) == "state" and word != "fresh"]


def _of_a_kind(matches: Sequence[Match], head: str, table: Foods) -> tuple[Match, ...]:
    near = [match for match in matches if match.score >= NEAR_ENOUGH]
    same = [match for match in near if match.food in table and head in _words(table[match.food])] if head else []
    return tuple((same or near)[:MOST_CHOICES])


def _words(food: Food) -> set[str]:
    return {word for text in (food.name, *food.other_names) for word in words(text)}


def _either(choices: Sequence[Match]) -> str:
    return " or ".join(f'"{match.name}"' for match in choices[:4])
