from dataclasses import replace

import numpy as np
import pytest

from kit.food.finding import food
from kit.meal.nutrition import nutrition
from kit.meal.portions import MAKE_MORE, SHARE_OUT
from kit.meal.recipe import recipe
from kit.meal.scenario import as_written


@pytest.fixture
def written():
    return as_written(recipe("Pot", ["1 1/2 cups lentils, dry", "3 tbsp olive oil", "4 cups spinach"], servings=6))


def serving(scenario):
    return nutrition(scenario.recipe).per_serving


def test_a_recipe_as_written_is_itself(written):
    assert written.recipe.grams.tolist() == written.written.grams.tolist()
    labels = [written.steps(at)[written.place(at, written.steps(at))].label for at in range(3)]
    assert labels == ["1 1/2 cups", "3 tbsp", "4 cups"]


def test_making_more_scales_every_amount_and_leaves_a_serving_alone(written):
    more = replace(written, servings=12.0, meaning=MAKE_MORE)
    assert serving(more) == pytest.approx(serving(written))
    assert more.recipe.grams == pytest.approx(2 * written.recipe.grams)
    assert more.steps(0)[more.place(0, more.steps(0))].label == "3 cups"


def test_making_more_keeps_a_changed_serving_too(written):
    changed = written.with_amount(0, 0.5 * written.pot[0])
    assert serving(replace(changed, servings=7.0)) == pytest.approx(serving(changed))


def test_sharing_out_leaves_the_pot_alone_and_a_serving_shrinks(written):
    shared = replace(written, servings=12.0, meaning=SHARE_OUT)
    assert shared.recipe.grams.tolist() == written.recipe.grams.tolist()
    assert serving(shared) == pytest.approx(serving(written) / 2)


def test_a_slider_moved_while_more_is_made_sets_the_amount_it_names(written):
    more = replace(written, servings=12.0).with_amount(1, 27.0)
    assert more.recipe.grams[1] == pytest.approx(27.0)
    assert replace(more, servings=6.0).recipe.grams[1] == pytest.approx(13.5)


def test_nothing_is_left_out_and_stays_so(written):
    without = written.with_amount(2, 0.0)
    steps = without.steps(2)
    assert steps[without.place(2, steps)].label == "left out"
    assert replace(without, servings=11.0).recipe.grams[2] == 0


def test_an_amount_far_from_every_step_gets_one_of_its_own(written):
    odd = replace(written.with_amount(0, written.pot[0] / 1.5 / 3), servings=5.0)  # 1/3 cup for six, made for five
    steps = odd.steps(0)
    assert steps[odd.place(0, steps)].grams == pytest.approx(odd.recipe.grams[0], rel=0.05)


def test_another_food_takes_a_place_by_the_same_measure_and_gives_it_back(written):
    kale = written.with_food(2, food("kale-raw"))
    assert kale.recipe.ingredients[2].food.key == "kale-raw"
    assert kale.recipe.ingredients[2].count == pytest.approx(4)
    spinach = kale.with_food(2, written.written.ingredients[2].food)
    assert serving(spinach) == pytest.approx(serving(written))


def test_another_food_takes_over_the_amount_that_is_set(written):
    half = written.with_amount(2, written.pot[2] / 2).with_food(2, food("kale-raw"))
    assert half.recipe.ingredients[2].count == pytest.approx(2)


def test_metric_names_amounts_in_grams_and_changes_none(written):
    metric = replace(written, system="metric")
    assert metric.steps(0)[metric.place(0, metric.steps(0))].label.endswith(" g")
    assert np.array_equal(serving(metric), serving(written))
