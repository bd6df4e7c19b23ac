"""Which food the words of a line mean: its names, what stands in for it, then the state it is said to be in."""

from collections.abc import Sequence
from dataclasses import dataclass

from kit.food.composition import Food, Foods
from kit.food.finding import Match, Name
from kit.food.measure import Measure
from kit.lines.accounting import is_missing, unaccounted
from kit.lines.alike import unlike
from kit.lines.asking import nearest_to, states_said, which_food, which_instead
from kit.lines.fitting import Asked, asked_for, best_name, head_of
from kit.lines.implied import implied_state, is_open_in
from kit.lines.known_names import (
    LISTED,
    STAND_IN,
    USUAL,
    KnownNames,
    differs_in,
    kind_of,
    known_names,
    measures_of_stand_ins,
)
from kit.lines.lighter_names import as_light_as_said
from kit.lines.states import in_state


@dataclass(frozen=True, slots=True)
class Choice:
    """The food chosen for some words.

    Attributes
    ----------
    food : Food or None
        None when the words fit several foods, or none.
    notes : tuple of str
        What was assumed on the way.
    problem : str
        What has to be asked, or empty.
    choices : tuple of Match
        The foods that are near, where there is a problem.
    spare : frozenset of str
        Words of the line that are no part of the food's name: its cuts, sizes and measures.
    measures : tuple of Measure
        What a piece or a bunch of the food meant weighs, where another food stands in for it.
    """

    food: Food | None
    notes: tuple[str, ...] = ()
    problem: str = ""
    choices: tuple[Match, ...] = ()
    spare: frozenset[str] = frozenset()
    measures: tuple[Measure, ...] = ()


def choose(
    name: Sequence[str], after: Sequence[str], table: Foods, *, container: str = "", by_weight: bool = False
) -> Choice:
    """Choose the food that the words of a line mean.

    A food is chosen only when its name accounts for every word that may make another food of it.

    Parameters
    ----------
    name, after : sequence of str
        Words before the first comma, and behind it, as `kit.food.vocabulary.words` gives them.
    table : Foods
        The foods to choose from.
    container : str
        ``"can"``, ``"bunch"``, ``"teaspoon"`` and the like, when the line counts in them.
    by_weight : bool
        Whether the amount is a weight or a count, so that "roasted" behind a comma says what is done with the raw food.
    """
    names = known_names(table)
    asked, notes = asked_for(name, after, names)
    best = best_name(asked, names)
    if best is None and asked.after and all(kind_of(word) != "food" for word in asked.name):
        everything = (*asked.after, *asked.name)
        asked = Asked(everything, (), head_of(everything))
        best = best_name(asked, names)
    measured_first = {word for word in asked.after if word == "soaked" or (word == "toasted" and _is_nut(best))}
    if "toasted" in measured_first:
        measured_first.add("dry")  # without oil
    if best and measured_first:
        asked = Asked(asked.name, tuple(word for word in asked.after if word not in measured_first), asked.head)
        best = best_name(asked, names)
    best = _as_measured(best, asked, names, table, container)
    left = unaccounted(best, asked.name, asked.after, names) if best else []
    if best is not None and is_missing(best, names):
        problem, choices = which_instead(best, names, table)
        return Choice(None, notes, problem, choices)
    if best is None or left:
        return _unsure(asked, left, names, notes, table)
    found, light_notes, problem = as_light_as_said(best, asked, names)
    food, more, state_problem = in_state(found, asked.name, asked.after, table, container, by_weight)
    usual = names.kind(found) == USUAL  # whose words may tell the cut as well: "grated cheese"
    spare = frozenset(word for word in asked.all_words if word not in found.words or (usual and kind_of(word) == "cut"))
    assumed = _assumed(found, food, names)
    notes = (*notes, *assumed, *light_notes, *more)
    problem = problem or state_problem
    choices = nearest_to(food, asked.name, asked.after, asked.head, table) if problem else ()
    own = measures_of_stand_ins().get(found.text, ()) if names.kind(found) == STAND_IN else ()
    return Choice(food, notes, problem, choices, spare, own)


def _as_measured(best: Name | None, asked: Asked, names: KnownNames, table: Foods, container: str) -> Name | None:
    """Return the food that the measure tells, where words alone leave it open: "1 bunch coriander", "1 can tuna"."""
    spare = [word for word in asked.all_words if best is None or word not in best.words]
    if container == "cup" and "leaf" in asked.all_words and not states_said(asked.name, asked.after):
        spare.append("leaf")  # "oregano leaves" may be dried ones, but not by the cup
    implied = implied_state(spare, container, best.food if best else None)
    if not implied or implied in asked.all_words:
        return best
    if best and not unaccounted(best, asked.name, asked.after, names) and not is_open_in(best.food, implied, table):
        return best
    told = best_name(Asked(asked.name, (*asked.after, implied), asked.head), names)
    if told and best and container == "teaspoon" and names.kind(told) == STAND_IN:
        return best  # "1 tsp marjoram leaves": the dried ones are there
    return told if told and implied in told.words else best


def _is_nut(found: Name | None) -> bool:
    return found is not None and found.food.group == "nut"


def _assumed(found: Name, food: Food, names: KnownNames) -> tuple[str, ...]:
    """Return what was assumed about the name: that another food stands in, or the usual one is meant."""
    kind = names.kind(found)
    if kind == STAND_IN:
        unlike_in = differs_in().get(found.text, "")
        note = f'no "{found.text}" in the table, {found.food.name.lower()} stands in for it (common practice)'
        return (f"{note}: {unlike_in}" if unlike_in else note,)
    if kind == USUAL:
        return (f'"{found.text}" read as {food.name.lower()}, which is usually meant (common practice)',)
    return ()


def _unsure(asked: Asked, left: Sequence[str], names: KnownNames, notes: tuple[str, ...], table: Foods) -> Choice:
    """Return the question which food is meant; or the first of several that are alike in the numbers that matter."""
    if not left:
        several = _of_that_name(asked, names)
        if len(several) > 1 and not any(unlike(several[0].food, other.food) for other in several[1:]):
            food, more, problem = in_state(several[0], asked.name, asked.after, table, "", True)
            note = f"read as {food.name.lower()}; {several[1].food.name.lower()} is alike in the numbers that matter"
            spare = frozenset(word for word in asked.all_words if word not in several[0].words)
            return Choice(food, (*notes, note, *more), problem, spare=spare)
    problem, choices = which_food(asked.name, asked.after, asked.head, table, left)
    return Choice(None, notes, problem, choices)


def _of_that_name(asked: Asked, names: KnownNames) -> list[Name]:
    """Return the raw foods of which each has a name that holds all words asked for, the same head among them."""
    telling = {word for word in asked.name if kind_of(word) in ("food", "other", "measure", "deciding")}
    if not telling or states_said(asked.name, asked.after):
        return []
    holding = set.intersection(*(set(names.by_word.get(word, ())) for word in telling))
    found: dict[str, Name] = {}
    for place in sorted(holding):
        name = names.names[place]
        if names.kind(name) == LISTED and name.head == asked.head and name.food.state in ("raw", "ready", "dried"):
            found.setdefault(name.food.key, name)
    return list(found.values())
