"""A swap whose words leave open which kind of a food comes: with or without salt, canned, dried or fresh, which cut."""

from collections.abc import Iterator

from kit.errors import ChangeError
from kit.food.composition import Food, foods
from kit.food.names import short_name
from kit.food.vocabulary import words
from kit.lines.lighter import KINDS, every_lighter, matters
from kit.lines.reader import read
from kit.meal.change_forms import says_form
from kit.meal.recipe import Ingredient
from kit.meal.steps import Swap
from kit.texts import listing

_SALT = next(kind for kind in KINDS if kind.nutrient == "sodium")
_AS_IS = frozenset("regular plain normal ordinary usual salted salt sodium unsalted ready".split())
_CANNED = ("canned", "drained", "rinsed")
_FLESH = {"meat", "poultry", "fish", "shellfish"}
_KEPT = ("vegetable", "pulse", "fruit")  # groups whose foods are canned alike


def ask_which_kind(step: Swap, text: str, old: Ingredient) -> None:
    """Ask which kind comes where what goes is low in salt, or canned, and the words say neither of what comes.

    Parameters
    ----------
    step : Swap
        What was read.
    text : str
        The line it was read from.
    old : Ingredient
        What goes.

    Raises
    ------
    ChangeError
        With both kinds as its choices.
    """
    ways = (
        _with_less_salt(step.food, old, text),
        _canned_or_fresh(step, old, text),
        _dried_or_fresh(step, old, text),
        _cuts(step.food, text),
    )
    kinds = next((kinds for way in ways if len(kinds := [*way]) > 1), [])
    if not kinds:
        return
    there, thing = short_name(old.food), short_name(step.food)
    choices = [f"{kind} instead of the {there}" for kind in kinds]
    shown = listing([f'"{choice}"' for choice in choices], "or")
    raise ChangeError(f'"{text}": which {thing}? write {shown}', choices)


def _with_less_salt(food: Food, old: Ingredient, text: str) -> Iterator[str]:
    """Yield the kind with less salt and the plain one, where what goes has less and the words leave it open."""
    if _AS_IS & set(words(text)) or not _is_low(old.food, old.line) or _is_low(food, "") or not matters(_SALT, food):
        return
    thing = short_name(food)
    for form in _SALT.forms:
        reading = read(f"100 g {form} {thing}", table=foods())
        less = None if reading.problem else reading.food
        if less is not None and less is not food and _are_alike(less, food) and _is_low(less, ""):
            as_it_comes = (form for form in foods().forms(less.base) if form.state == food.state and _is_low(form, ""))
            yield to_type(next(as_it_comes, less))
            yield f"regular {thing}"
            return


def _are_alike(less: Food, food: Food) -> bool:
    return less.state == food.state or {less.state, food.state} <= set(_CANNED)


def _is_low(food: Food, line: str) -> bool:
    said = [*every_lighter(words(food.name), ()), *every_lighter(words(line), ())]
    return any(kind.nutrient == "sodium" for kind, _ in said)


def _canned_or_fresh(step: Swap, old: Ingredient, text: str) -> Iterator[str]:
    """Yield the canned and the fresh form of a vegetable in the place of canned beans, where no word decides."""
    if says_form(text) or step.measured is not None or old.food.state not in _CANNED:
        return
    yield from _canned_or_cooked(step.food, old)
    if step.food.group == old.food.group or not {step.food.group, old.food.group} <= set(_KEPT):
        return
    forms = foods().forms(step.food.base)
    canned = next((form for form in forms if form.state in _CANNED), None)
    if step.food.state == "raw" and canned is not None:
        yield f"canned {short_name(canned)}"
        yield f"fresh {short_name(step.food)}"


def _canned_or_cooked(food: Food, old: Ingredient) -> Iterator[str]:
    """Yield the forms of fish or meat in the place of canned fish, but for fish that is usual from a can."""
    if not {food.group, old.food.group} <= _FLESH or food.state in _CANNED:
        return
    states = dict.fromkeys(form.state for form in foods().forms(food.base))
    yield from (f"{state} {short_name(food)}" for state in states if state in ("canned", "cooked", "raw"))


def _dried_or_fresh(step: Swap, old: Ingredient, text: str) -> Iterator[str]:
    """Yield the dried and the fresh form of a fruit in a dried one's place: "cranberries instead of the raisins"."""
    if says_form(text) or step.measured is not None or old.food.state != "dried":
        return
    if {step.food.group, old.food.group} != {"fruit"}:
        return
    thing = short_name(step.food)
    reading = read(f"100 g dried {thing}", table=foods())
    if step.food.state == "raw" and not reading.problem and reading.food is not None and reading.food.state == "dried":
        yield f"dried {thing}"
        yield f"fresh {thing}"


def _cuts(food: Food, text: str) -> Iterator[str]:
    """Yield cuts of a bird of which no cut is said: "turkey instead of the beef"."""
    bird = words(short_name(food))[0]
    if food.group != "poultry" or "whole" not in words(food.name) or "whole" in words(text):
        return
    for kind in (f"ground {bird}", f"{bird} breast", f"{bird} sausage"):
        reading = read(f"100 g {kind}", table=foods())
        if reading.food is not None and not reading.problem:
            yield kind


def to_type(food: Food) -> str:
    """Return the first name of a food that a choice can hold: "no salt added" in it would leave salt out."""
    names = (food.name.lower(), *food.other_names)
    return next((name for name in names if "no" not in words(name) and " or " not in name), names[0])
