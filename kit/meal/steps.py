"""One step of a change: leave out, swap, another amount, something added, other servings; and the recipe after them."""

from collections.abc import Iterable, Mapping
from dataclasses import asdict, dataclass, replace
from typing import Any, ClassVar

from kit.errors import ChangeError
from kit.food.composition import Food, Foods, foods
from kit.food.finding import food as food_by_key
from kit.meal.in_place_of import in_place_of
from kit.meal.portions import MAKE_MORE, make_more, share_out
from kit.meal.recipe import Ingredient, Recipe


@dataclass(frozen=True, slots=True)
class Row:
    """An ingredient that a step is about: its place among the ingredients, and the food that was there at the time.

    Another step may be undone meanwhile: the food then tells whether the place still holds what was meant.
    """

    at: int
    food: str


@dataclass(frozen=True, slots=True)
class Measured:
    """An amount of a food: its grams, how sure they are, the measure it is counted in, and a container that is one."""

    grams: float
    relative_sd: float = 0.0
    noun: str = "g"
    noun_grams: float = 1.0
    cut: str = ""
    line: str = ""
    container: str = ""


def measured_like(part: Ingredient, grams: float, line: str) -> Measured:
    """Return an amount in the measure that an ingredient is counted in. [g]"""
    return Measured(grams, part.relative_sd, part.noun, part.noun_grams, part.cut, line, part.container)


@dataclass(frozen=True, slots=True)
class LeaveOut:
    """Leave an ingredient out: it stays in its place with 0 g."""

    kind: ClassVar[str] = "leave out"
    row: Row


@dataclass(frozen=True, slots=True)
class Amount:
    """Another amount of an ingredient: so many times what there is, and so many grams more (or less, below 0).

    Attributes
    ----------
    row : Row
        The ingredient.
    times : float
        1 when grams are only added; 0 when `plus` is the whole amount.
    plus : float
        [g]
    measured : Measured, optional
        The measure it was said in, where the whole amount was said.
    """

    kind: ClassVar[str] = "amount"
    row: Row
    times: float = 1.0
    plus: float = 0.0
    measured: Measured | None = None


@dataclass(frozen=True, slots=True)
class Swap:
    """Another food in an ingredient's place; as much of its measure as there was, unless an amount is said."""

    kind: ClassVar[str] = "swap"
    row: Row
    food: Food
    measured: Measured | None = None
    note: str = ""


@dataclass(frozen=True, slots=True)
class Add:
    """Something that the recipe does not hold yet: a new ingredient behind the others."""

    kind: ClassVar[str] = "add"
    food: Food
    measured: Measured
    note: str = ""


@dataclass(frozen=True, slots=True)
class Servings:
    """Other servings: more is made, or the same pot shared out differently."""

    kind: ClassVar[str] = "servings"
    servings: float
    meaning: str = MAKE_MORE


Step = LeaveOut | Amount | Swap | Add | Servings
_KINDS = {step.kind: step for step in (LeaveOut, Amount, Swap, Add, Servings)}


def applied(recipe: Recipe, steps: Iterable[Step]) -> Recipe:
    """Return the recipe after some steps, in their order.

    Ingredients keep their places, so that before and after can be set side by side; what is added stands behind them.

    Raises
    ------
    ChangeError
        If a step is about an ingredient that is not there (any more).
    AmountError
        If an amount or the servings make no sense.

    Examples
    --------
    >>> from kit.meal.recipe import recipe
    >>> oats = recipe("Oats", ["1 cup rolled oats", "2 tbsp honey"])
    >>> applied(oats, [LeaveOut(Row(1, "honey")), Amount(Row(0, "oats-rolled-dry"), times=2)]).grams.tolist()
    [162.0, 0.0]
    """
    for step in steps:
        recipe = _after(recipe, step)
    return recipe


def _after(recipe: Recipe, step: Step) -> Recipe:
    match step:
        case Servings(servings=servings, meaning=meaning):
            return make_more(recipe, servings) if meaning == MAKE_MORE else share_out(recipe, servings)
        case Add(food=food, measured=measured, note=note):
            new = _measured(Ingredient(food, 0.0, line=measured.line, how=note), measured)
            return _with(recipe, len(recipe.ingredients), new)
        case LeaveOut(row=row):
            at = place_of(row, recipe)
            return _with(recipe, at, replace(recipe.ingredients[at], grams=0.0))
        case Amount(row=row):
            at = place_of(row, recipe)
            return _with(recipe, at, _other_amount(recipe.ingredients[at], step))
        case Swap(row=row, food=food, measured=measured, note=note):
            at = place_of(row, recipe)
            new = in_place_of(recipe.ingredients[at], food, measured.grams if measured else None)
            new = _measured(new, measured) if measured else new
            return _with(recipe, at, replace(new, how="; ".join(part for part in (new.how, note) if part)))


def _other_amount(old: Ingredient, step: Amount) -> Ingredient:
    if step.times == 0 and step.measured is not None:
        return _measured(old, step.measured)
    return replace(old, grams=max(0.0, old.grams * step.times + step.plus))


def _measured(ingredient: Ingredient, measured: Measured) -> Ingredient:
    return replace(
        ingredient,
        grams=measured.grams,
        relative_sd=measured.relative_sd,
        noun=measured.noun,
        noun_grams=measured.noun_grams,
        cut=measured.cut or ingredient.cut,
        container=measured.container,
        slider=None,
    )


def _with(recipe: Recipe, at: int, ingredient: Ingredient) -> Recipe:
    """Return the recipe with an ingredient in a place; a finished weight moves in the proportion of the whole."""
    changed = replace(recipe, ingredients=(*recipe.ingredients[:at], ingredient, *recipe.ingredients[at + 1 :]))
    if recipe.finished_grams is None:
        return changed
    before, after = float(recipe.grams.sum()), float(changed.grams.sum())
    finished = recipe.finished_grams * after / before if before > 0 and after > 0 else None
    return replace(changed, finished_grams=finished)


def place_of(row: Row, recipe: Recipe) -> int:
    """Return where the ingredient of a step is now.

    Raises
    ------
    ChangeError
        If it is not there any more.
    """
    keys = [ingredient.food.key for ingredient in recipe.ingredients]
    if row.at < len(keys) and keys[row.at] == row.food:
        return row.at
    if row.food in keys:
        return keys.index(row.food)
    raise ChangeError(f'no "{row.food}" in the recipe any more; undo the changes that were about it too')


def step_as_json(step: Step) -> dict[str, Any]:
    """Return a step as plain values that JSON can hold; foods by their keys."""
    values = {"kind": step.kind}
    for name in step.__dataclass_fields__:
        value = getattr(step, name)
        if isinstance(value, Food):
            value = value.key
        elif isinstance(value, Row | Measured):
            value = asdict(value)
        values[name] = value
    return values


def step_from_json(values: Mapping[str, Any], recipe: Recipe, table: Foods | None = None) -> Step:
    """Return the step that `step_as_json` wrote; foods of the recipe itself go before those of the table.

    Raises
    ------
    ChangeError
        If the values are no step.
    UnknownNameError
        If a food is not known any more.
    """
    own = {ingredient.food.key: ingredient.food for ingredient in recipe.ingredients}
    table = foods() if table is None else table
    try:
        facts = {name: value for name, value in values.items() if name != "kind"}
        if "row" in facts:
            facts["row"] = Row(**facts["row"])
        if facts.get("measured"):
            facts["measured"] = Measured(**facts["measured"])
        if "food" in facts:
            key = facts["food"]
            facts["food"] = own.get(key) or (table[key] if key in table else food_by_key(key))
        return _KINDS[values["kind"]](**facts)
    except (KeyError, TypeError, AttributeError):
        raise ChangeError(f"{dict(values)!r:.120} is no change; begin again from the recipe as written") from None
