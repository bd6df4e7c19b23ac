"""What is set on screen."""

import json
from dataclasses import replace

import numpy as np
import pytest

from kit.errors import ChangeError
from kit.food.finding import food
from kit.meal.changes import read_change
from kit.meal.nutrition import nutrition
from kit.meal.portions import MAKE_MORE, SHARE_OUT
from kit.meal.recipe import recipe
from kit.meal.scenario import as_written, scenario_from_json


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


POT = recipe("Pot", ["1 1/2 cups lentils, dry", "3 tbsp olive oil", "4 cups spinach", "1/2 tsp salt"], servings=6)


def asked(scenario, line):
    return scenario.with_changes(read_change(line, scenario.recipe))


def test_changes_stack_on_what_is_set_and_are_undone_one_by_one():
    one = asked(as_written(POT), "half the salt")
    two = asked(one, "kale instead of the spinach")
    assert [step.kind for step in two.changes] == ["amount", "swap"]
    alone = asked(as_written(POT), "kale for spinach")
    assert two.without_change(0).recipe.grams.tolist() == alone.recipe.grams.tolist()
    assert two.without_change(1).without_change(0).recipe.grams.tolist() == POT.grams.tolist()


def test_a_change_is_made_to_what_the_sliders_set():
    scenario = asked(as_written(POT).with_amount(3, 1.0), "half the salt")
    assert scenario.recipe.grams[3] == pytest.approx(0.5)
    assert replace(as_written(POT), servings=12.0).with_changes(()).recipe.grams == pytest.approx(2 * POT.grams)


def test_an_amount_that_is_said_is_that_of_the_pot_as_it_is_cooked_now():
    scenario = asked(replace(as_written(POT), servings=12.0), "use 2 tbsp oil")
    assert scenario.recipe.grams[1] == pytest.approx(27.0)  # USDA SR26 04053: a tablespoon of 13.5 g
    assert (scenario.recipe.servings, scenario.servings) == (12, 12)


def test_other_servings_that_are_asked_for_move_the_servings():
    more = asked(as_written(POT), "make it for ten")
    assert (more.servings, more.meaning, more.scale) == (10, MAKE_MORE, 1)
    assert serving(more) == pytest.approx(serving(as_written(POT)))
    shared = asked(more, "serve 20 from the same pot")
    assert (shared.servings, shared.meaning) == (20, SHARE_OUT)
    assert serving(shared) == pytest.approx(serving(as_written(POT)) / 2)
    assert shared.without_change(1).servings == 10


def test_what_was_added_has_a_slider_of_its_own():
    scenario = asked(as_written(POT), "add 1/4 cup walnuts")
    steps = scenario.steps(4)
    assert scenario.place(4, steps) > 0
    assert scenario.with_amount(4, 0.0).recipe.grams[4] == 0


def test_what_is_left_out_can_be_brought_back_by_its_slider():
    scenario = asked(as_written(POT), "no salt")
    steps = scenario.steps(3)
    assert steps[scenario.place(3, steps)].label == "left out"
    assert steps[-1].grams > POT.grams[3]
    assert scenario.with_amount(3, 3.0).recipe.grams[3] == pytest.approx(3.0)


def test_what_is_set_survives_as_json():
    line = "2 cups kale instead of the spinach and add 1 tbsp honey"
    scenario = asked(as_written(POT, "metric").with_amount(0, 100.0), line)
    scenario = replace(scenario.with_amount(1, 20.0), servings=9.0, meaning=SHARE_OUT)
    again = scenario_from_json(json.loads(json.dumps(scenario.as_json())), POT)
    assert again.recipe.grams.tolist() == scenario.recipe.grams.tolist()
    assert again.recipe.ingredients[-1].food is scenario.recipe.ingredients[-1].food
    assert (again.servings, again.meaning, again.system) == (9.0, SHARE_OUT, "metric")
    assert len(again.changes) == len(scenario.changes)


@pytest.mark.parametrize(
    "wrong",
    [
        {},
        {"servings": 0.0},
        {"servings": "many"},
        {"moved": [[17, 3.0]]},
        {"moved": [[0, -3.0]]},
        {"meaning": "eat"},
        {"changes": [{"kind": "leave out", "row": {"at": 0, "food": "egg"}}]},
        {"changes": 3},
    ],
)
def test_what_does_not_fit_the_recipe_is_told(wrong):
    values = {**as_written(POT).as_json(), **wrong} if wrong else {}
    with pytest.raises(ChangeError):
        scenario_from_json(values, POT)


def test_huge_servings_make_no_endless_slider():
    huge = replace(as_written(POT), servings=10_000.0)
    assert all(len(huge.steps(at)) <= 70 for at in range(4))
