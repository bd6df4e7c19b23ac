"""Targets for a serving: read, met by the smallest change, or shown how near one gets."""

import numpy as np
import pytest

from kit.errors import TargetError
from kit.food.composition import bundled_foods
from kit.meal.kitchen_amounts import slider_steps
from kit.meal.nutrition import nutrition
from kit.meal.recipe import Ingredient, Recipe, recipe
from kit.meal.steps import applied
from kit.meal.target_words import Target, is_target, read_targets
from kit.meal.targets import TOUCHED, choices, reach, reached

NUTRIENTS = ("energy", "protein", "fat", "fiber", "sodium", "carbohydrate", "calcium", "iron")
TABLE = tuple(food for food in bundled_foods().values() if food["energy"] > 20)


@pytest.mark.parametrize(
    ("line", "expected"),
    [
        ("20 g protein and under 600 mg sodium a serving", [("protein", 20, None), ("sodium", None, 600)]),
        ("at least 8 grams of fiber per bowl", [("fiber", 8, None)]),
        ("between 400 and 500 calories", [("energy", 400, 500)]),
        ("400-500 kcal, protein over 25 g", [("energy", 400, 500), ("protein", 25, None)]),
        ("no more than 3 g saturated fat", [("saturated_fat", None, 3)]),
        ("sodium below 0.5 g", [("sodium", None, 500)]),
        ("salt under 1 g", [("sodium", None, 400)]),
        ("500 calories", [("energy", 475, 525)]),
        ("10 g fibre or more but 1,500 mg sodium or less", [("fiber", 10, None), ("sodium", None, 1500)]),
        ("Can we get 300 mg calcium each?", [("calcium", 300, None)]),
        ("max 12 g sugar", [("sugars", None, 12)]),
        ("vitamin c at least 30 mg", [("vitamin_c", 30, None)]),
    ],
)
def test_targets_are_read_as_they_are_typed(line, expected):
    assert [(one.nutrient, one.low, one.high) for one in read_targets(line)] == [
        (name, low and pytest.approx(low), high and pytest.approx(high)) for name, low, high in expected
    ]


@pytest.mark.parametrize(
    ("line", "says"),
    [
        ("600 mg sodium", "at least or at most"),
        ("make it tastier", "is no target"),
        ("20 g unobtainium", "is no target"),
        ("", "no target"),
        ("between 500 and 400 calories", "smaller number first"),
    ],
)
def test_what_is_no_target_is_told(line, says):
    with pytest.raises(TargetError, match=says):
        read_targets(line)
    assert not is_target(line)


def generated(seed):
    """A recipe of three or four foods with sliders of a few steps, and two targets of which about half can be met."""
    random = np.random.default_rng(seed)
    foods = random.choice(len(TABLE), size=3 + seed % 2, replace=False)
    parts = tuple(
        Ingredient(TABLE[at], float(grams), noun="g", slider=(0.0, float(grams) * float(top)))
        for at, grams, top in zip(foods, random.uniform(20, 400, 4).round(), random.uniform(1.1, 2.0, 4), strict=False)
    )
    dish = Recipe("Any dish", parts, float(random.integers(1, 8)))
    now = nutrition(dish)
    names = random.choice(NUTRIENTS, size=2, replace=False)
    least, most = (now[name] * float(factor) for name, factor in zip(names, random.uniform(0.6, 1.6, 2), strict=True))
    return dish, (Target(names[0], low=max(least, 0.01)), Target(names[1], high=max(most, 0.01)))


def enumerated(dish, targets):
    """The same programme solved by trying every combination of steps: least cost that meets all, and least missed."""
    options = choices(dish, targets)
    cost = sum(np.ix_(*options.costs))
    met, missed = np.ones(cost.shape, dtype=bool), np.zeros(cost.shape)
    for column, target in enumerate(targets):
        value = sum(np.ix_(*(own[column] * grams for own, grams in zip(options.per_gram, options.grams, strict=True))))
        for end, sign in ((target.low, 1.0), (target.high, -1.0)):
            if end is not None:
                met &= sign * value >= sign * end - 1e-9 * end
                missed += np.maximum(0.0, sign * (end - value) / end)
    return (cost[met].min() if met.any() else None), missed.min(), missed


def test_a_hundred_generated_recipes_are_changed_as_little_as_trying_everything_finds():
    met = 0
    for seed in range(100):
        dish, targets = generated(seed)
        least, least_missed, _ = enumerated(dish, targets)
        found = reach(dish, targets)
        if least is None:
            values = nutrition(applied(dish, found.steps))
            own = sum(
                max(0.0, (one.low - values[one.nutrient]) / one.low if one.low else 0.0)
                + max(0.0, (values[one.nutrient] - one.high) / one.high if one.high else 0.0)
                for one in targets
            )
            assert not found.met, seed
            assert own == pytest.approx(least_missed, abs=1e-5), seed
        else:
            met += 1
            assert found.met, seed
            assert found.cost == pytest.approx(least, abs=1e-6), seed
    assert 30 <= met <= 95  # both kinds are tried


def test_no_smaller_change_of_a_whole_recipe_is_possible_even_between_the_steps():
    from scipy.optimize import linprog

    lines = ["1 1/2 cups lentils, dry", "3 tbsp olive oil", "4 cups spinach", "1 tsp salt", "1 cup feta, crumbled"]
    dish = recipe("Pot", [*lines, "2 medium carrots, sliced", "1 large onion, chopped", "1 cup brown rice, dry"], 6)
    targets = read_targets("at least 26 g protein and under 500 mg sodium and under 12 g fat")
    found = reach(dish, targets)
    now = nutrition(applied(dish, found.steps))
    assert now["protein"] >= 26
    assert now["sodium"] <= 500
    assert now["fat"] <= 12
    options = choices(dish, targets)
    grams = dish.grams
    # Amounts anywhere between their ends, each change split into more and less: a relaxation, so a bound from below.
    per = options.per_gram.T * grams
    rows = np.array([-per[0], per[1], per[2]])
    limits = np.array([-26, 500, 12.0]) - rows.sum(axis=1)
    bound = linprog(
        np.ones(2 * len(grams)),
        A_ub=np.hstack([rows, -rows]),
        b_ub=limits,
        bounds=[(0, max(0.0, own.max() / part - 1)) for own, part in zip(options.grams, grams, strict=True)]
        + [(0, 1.0)] * len(grams),
    )
    changed = sum(TOUCHED for step in found.steps)
    assert bound.fun <= found.cost - changed + 1e-9
    assert found.cost - changed <= bound.fun + 0.5  # and the kitchen's steps cost little more


def test_changed_amounts_are_steps_of_the_sliders():
    dish = recipe("Oats", ["1 cup rolled oats", "1 cup milk", "2 tbsp honey"], 2)
    for step in reach(dish, read_targets("at least 10 g protein and under 12 g sugars")).steps:
        grams = applied(dish, [step]).grams[step.row.at]
        assert any(abs(kitchen.grams - grams) < 1e-9 for kitchen in slider_steps(dish.ingredients[step.row.at]))


def test_what_cannot_be_met_is_named_with_how_near_one_gets():
    dish = recipe("Oats", ["1 cup rolled oats", "1 cup milk"], 2)
    with pytest.raises(TargetError, match="at least 80 g protein: the nearest is 18") as fault:
        reached("80 g protein", dish)
    assert "milk" not in str(fault.value)


def test_a_recipe_that_meets_its_targets_is_left_alone():
    dish = recipe("Oats", ["1 cup rolled oats", "1 cup milk"], 2)
    assert reach(dish, read_targets("at least 5 g protein")).steps == ()
    with pytest.raises(TargetError, match="as it is"):
        reached("at least 5 g protein", dish)


def test_there_has_to_be_something_to_change():
    with pytest.raises(TargetError, match="nothing to reach"):
        reach(recipe("Oats", ["1 cup rolled oats"]).with_grams([0]), read_targets("5 g protein"))
