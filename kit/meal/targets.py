"""The smallest change of amounts that meets targets, or how near one gets to those that cannot be met."""

from collections.abc import Sequence
from dataclasses import dataclass
from itertools import pairwise

import numpy as np
from numpy.typing import NDArray

from kit.errors import TargetError
from kit.food.names import short_name
from kit.food.nutrients import nutrient, nutrient_index
from kit.meal.kitchen_amounts import slider_steps
from kit.meal.recipe import Ingredient, Recipe
from kit.meal.steps import Amount, LeaveOut, Row, Step, measured_like
from kit.meal.target_words import Target, read_targets
from kit.texts import listing, number

Array = NDArray[np.float64]
TOUCHED = 0.05  # what a changed ingredient costs beside its change, so that few are changed: our choice
_EXACT = 1e-7  # [relative] a target is met to this


@dataclass(frozen=True)
class Choices:
    """The amounts that are tried: for each ingredient its kitchen steps within its slider's ends.

    Attributes
    ----------
    grams : tuple of numpy.ndarray
        For each ingredient, its amounts in the recipe. [g]
    costs : tuple of numpy.ndarray
        What each costs: its relative change, and `TOUCHED` where it is a change.
    per_gram : numpy.ndarray, shape (n_ingredients, n_targets)
        What a gram of each brings to a serving of each target's nutrient; a missing value counts as none.
    """

    grams: tuple[Array, ...]
    costs: tuple[Array, ...]
    per_gram: Array


@dataclass(frozen=True)
class Shortfall:
    """A target that cannot be met with the others, and the nearest that a serving comes to it."""

    target: Target
    nearest: float

    @property
    def text(self) -> str:
        """The shortfall in words."""
        about = nutrient(self.target.nutrient)
        return f"{self.target.text}: the nearest is {number(self.nearest, about.decimals)} {about.unit}"


@dataclass(frozen=True)
class Reached:
    """What comes nearest to some targets.

    Attributes
    ----------
    steps : tuple of Step
        The changes of amounts, smallest that there are; none where the recipe meets the targets as it is.
    cost : float
        The sum of what the changes cost.
    shortfalls : tuple of Shortfall
        Targets that are not met; empty where all are.
    """

    steps: tuple[Step, ...]
    cost: float
    shortfalls: tuple[Shortfall, ...] = ()

    @property
    def met(self) -> bool:
        """Whether every target is met."""
        return not self.shortfalls


def choices(recipe: Recipe, targets: Sequence[Target], system: str = "us") -> Choices:
    """Return the amounts to choose from and what each costs and brings."""
    places = [nutrient_index(target.nutrient) for target in targets]
    per_gram = np.nan_to_num(recipe.per_100g[:, places]) / (100 * recipe.servings)
    grams, costs = [], []
    for part in recipe.ingredients:
        amounts = _amounts(part, system)
        change = np.abs(amounts - part.grams) / part.grams if part.grams > 0 else np.zeros(1)
        grams.append(amounts)
        costs.append(change + TOUCHED * (change > 0))
    return Choices(tuple(grams), tuple(costs), per_gram)


def _amounts(part: Ingredient, system: str) -> Array:
    if part.grams == 0:  # left out stays left out
        return np.zeros(1)
    low, high = part.slider or (0.0, 2 * part.grams)
    steps = [step.grams for step in slider_steps(part, system) if low <= step.grams <= high * (1 + 1e-9)]
    return np.unique([*steps, part.grams])


def reach(recipe: Recipe, targets: Sequence[Target], system: str = "us") -> Reached:
    """Return the smallest change of amounts, in kitchen steps within the sliders' ends, that meets targets.

    Where no amounts meet them all, the ones that miss them least: the sum of what each is missed by, as a part of it,
    is as small as it can be, and among those the change is smallest.

    Parameters
    ----------
    recipe : Recipe
        As it is now.
    targets : sequence of Target
        What a serving should hold.
    system : {"us", "metric"}
        Whose kitchen steps.

    Raises
    ------
    TargetError
        If there is no target, or nothing that could be changed.

    Notes
    -----
    A mixed-integer linear programme, one binary variable for each step of each ingredient (`scipy.optimize.milp`).

    Examples
    --------
    >>> from kit.meal.recipe import recipe
    >>> oats = recipe("Oats", ["1 cup rolled oats", "1 cup milk", "1 tbsp honey"])
    >>> reach(oats, read_targets("under 18 g sugars")).steps[0].row.food
    'honey'
    """
    if not targets or not any(part.grams > 0 for part in recipe.ingredients):
        raise TargetError("nothing to reach: write a target, and a recipe with amounts")
    options = choices(recipe, targets, system)
    picked = _solved(options, targets, slack=False)
    if picked is None:
        picked = _solved(options, targets, slack=True)
    if picked is None:
        raise TargetError("no amounts could be worked out for these targets; write fewer of them")
    grams = np.array([amounts[place] for amounts, place in zip(options.grams, picked, strict=True)])
    cost = float(sum(costs[place] for costs, place in zip(options.costs, picked, strict=True)))
    values = grams @ options.per_gram
    missed = tuple(
        Shortfall(target, float(value))
        for target, value in zip(targets, values, strict=True)
        if _missed(target, value) > _EXACT
    )
    return Reached(_steps(recipe, grams), cost, missed)


def reached(line: str, recipe: Recipe, system: str = "us") -> tuple[Step, ...]:
    """Return the steps that meet typed targets.

    Raises
    ------
    TargetError
        If they cannot be read, or not be met: then it says which, and how near one gets.
    """
    found = reach(recipe, read_targets(line), system)
    if not found.met:
        raise TargetError(f"not within these amounts: {listing([short.text for short in found.shortfalls])}")
    if not found.steps:
        raise TargetError("the recipe meets that as it is; nothing has to change")
    return found.steps


def _missed(target: Target, value: float) -> float:
    """Return by how much a value misses a target, as a part of the target."""
    low = 0.0 if target.low is None else (target.low - value) / max(target.low, 1e-9)
    high = 0.0 if target.high is None else (value - target.high) / max(target.high, 1e-9)
    return max(0.0, low, high)


def _solved(options: Choices, targets: Sequence[Target], slack: bool) -> list[int] | None:
    """Return which step of each ingredient is taken, None where no choice keeps the targets.

    With slack, the sum of what is missed is made as small as can be first; then, at that, the cost.
    """
    rules, total = _rules(options, targets), sum(map(len, options.grams))
    cost = np.concatenate([*options.costs, np.zeros(len(targets))])
    if not slack:
        found = _milp(cost, rules, total, len(targets), 0.0)
    else:
        missed = np.concatenate([np.zeros(total), np.ones(len(targets))])
        least = _milp(missed, rules, total, len(targets), np.inf)
        if least is None:
            return None
        bound = (missed, -np.inf, float(missed @ least) + _EXACT)
        found = _milp(cost, [*rules, bound], total, len(targets), np.inf)
        found = least if found is None else found
    if found is None:
        return None
    starts = np.cumsum([0, *map(len, options.grams)])
    return [int(np.argmax(found[start:end])) for start, end in pairwise(starts)]


_Rule = tuple[Array, float, float]  # coefficients of every variable, least and greatest value of their sum


def _rules(options: Choices, targets: Sequence[Target]) -> list[_Rule]:
    """Return the rules: one step of each ingredient, and each target's ends, as parts of them, less what is missed."""
    sizes = [len(amounts) for amounts in options.grams]
    total = sum(sizes)
    rules: list[_Rule] = []
    for start, end in pairwise(np.cumsum([0, *sizes])):
        one = np.zeros(total + len(targets))
        one[start:end] = 1.0
        rules.append((one, 1.0, 1.0))
    pairs = zip(options.per_gram, options.grams, strict=True)
    brings = np.concatenate([np.outer(own, amounts) for own, amounts in pairs], axis=1)
    for row, target in enumerate(targets):
        missing = np.zeros(len(targets))
        missing[row] = 1.0
        for limit, sign in ((target.low, 1.0), (target.high, -1.0)):
            if limit is not None:
                scale = max(limit, 1e-9)
                rules.append((np.concatenate([sign * brings[row] / scale, missing]), sign * limit / scale, np.inf))
    return rules


def _milp(cost: Array, rules: Sequence[_Rule], binary: int, free: int, most_missed: float) -> Array | None:
    from scipy.optimize import Bounds, LinearConstraint, milp  # here: only targets pay for it

    matrix, lows, highs = (np.array(column) for column in zip(*rules, strict=True))
    found = milp(
        cost,
        constraints=LinearConstraint(matrix, lows, highs),
        integrality=np.concatenate([np.ones(binary), np.zeros(free)]),
        bounds=Bounds(0.0, np.concatenate([np.ones(binary), np.full(free, most_missed)])),
        options={"mip_rel_gap": 0.0},
    )
    return None if found.x is None else np.asarray(found.x)


def _steps(recipe: Recipe, grams: Array) -> tuple[Step, ...]:
    steps: list[Step] = []
    for at, (part, new) in enumerate(zip(recipe.ingredients, grams.tolist(), strict=True)):
        row = Row(at, part.food.key)
        if new == part.grams:
            continue
        if new == 0:
            steps.append(LeaveOut(row))
        else:
            steps.append(Amount(row, times=0.0, plus=new, measured=measured_like(part, new, short_name(part.food))))
    return tuple(steps)
