"""A question answered live: numbers, allergens, kind of dish and sentences, before and after."""

import json

import numpy as np
import pytest

from kit.__main__ import main
from kit.errors import ChangeError
from kit.food.nutrients import nutrients
from kit.meal.nutrition import nutrition
from kit.meal.steps import applied
from kit.speech.points import check_points
from kit.speech.what_if import SAME, TOO_SMALL, WhatIf, in_words, prepared, what_if
from kit.talk.library import bundled_talks, read_talk

BOX = read_talk("barley_squash_box")


@pytest.mark.parametrize("name", sorted(bundled_talks()))
def test_every_prepared_question_answers(name):
    for asked in prepared(read_talk(name)):
        assert asked.problem == ""
        assert asked.question.try_ == "" or asked.tries.steps


def test_a_question_that_is_not_understood_says_why_at_that_question():
    from dataclasses import replace

    from kit.talk.talk import Question

    talk = replace(BOX, questions=(Question("What if?", "leave out the pepperoni"), Question("Salt?", "no salt")))
    first, second = prepared(talk)
    assert "pepperoni" in first.problem
    assert first.tries is None
    assert second.problem == ""
    assert second.tries is not None


def test_numbers_are_those_of_the_changed_recipe():
    asked = what_if(BOX, ["no feta and half the salt", "add 1/4 cup raisins"])
    now = nutrition(applied(BOX.recipe, asked.steps))
    assert np.array_equal(asked.change.after.per_serving, now.per_serving)
    assert np.array_equal(asked.change.before.per_serving, nutrition(BOX.recipe).per_serving)
    assert asked.change.before.contributions.shape == asked.change.after.contributions.shape
    for name in nutrients():
        found = asked.change.difference(name)
        assert found.value == pytest.approx(now[name] - nutrition(BOX.recipe)[name], abs=1e-9)
        assert found.low <= found.value <= found.high


def test_allergens_that_go_and_come_are_told():
    asked = what_if(BOX, ["no feta", "add 2 tbsp tahini"])
    assert (asked.allergens_gone, asked.allergens_new) == (("milk",), ("sesame",))
    assert "No longer brings: milk." in asked.as_text()
    assert "Now brings: sesame." in asked.as_text()


def test_a_sentence_that_no_longer_holds_is_named_with_why():
    asked = what_if(BOX, ["no feta"])
    changed = {point.say: (point.before, point.after) for point in asked.points if point.differs}
    assert changed["The box is entirely plant-based."] == ("off", "holds")
    verdicts = check_points(BOX, asked.change.after)
    assert [point.after for point in asked.points] == [verdict.verdict for verdict in verdicts]


def test_a_difference_that_its_range_cannot_tell_from_none_is_not_claimed():
    asked = what_if(BOX, ["black beans instead of the kidney beans"])
    assert in_words(asked.change, "carbohydrate") == TOO_SMALL
    assert in_words(WhatIf(BOX).change, "protein") == SAME
    assert in_words(what_if(BOX, ["no feta"]).change, "sodium").endswith("mg less")


def test_lines_stack_each_on_the_recipe_after_those_before_it():
    asked = what_if(
        BOX, ["make it for 12", "half the salt", "brown rice instead of the barley", "double the brown rice"]
    )
    rice = asked.recipe.ingredients[0]
    assert (rice.food.key, rice.grams) == ("rice-brown-dry", pytest.approx(2 * 2 * 277.5))  # USDA SR26 20036: 185 g
    assert asked.recipe.grams[4] == pytest.approx(3.0)  # twice the pot, half the salt
    assert asked.recipe.servings == 12


def test_a_line_that_is_not_understood_changes_nothing():
    with pytest.raises(ChangeError):
        what_if(BOX, ["no feta", "make it tastier"])


def run(capsys, *arguments):
    code = main(["change", *arguments])
    out, err = capsys.readouterr()
    return code, out, err


def test_the_command_prints_what_changes_before_and_after(capsys):
    code, out, _ = run(capsys, "barley_squash_box", "swap the kale for spinach", "serve 8 from the same pot", "--json")
    told = json.loads(out)
    assert code == 0
    assert told["problem"] is None
    first, second = told["changes"]
    assert (first["kind"], first["ingredient"], first["food"]) == ("swap", "kale-raw", "spinach-raw")
    assert (first["grams_before"], first["grams_after"]) == (268, 120)  # USDA SR26 11457: a cup of 30 g
    assert (second["kind"], told["servings"]) == ("servings", 8)
    assert list(told["before"]) == list(told["after"]) == list(nutrients())
    assert told["allergens"] == {"gone": [], "new": []}
    assert {point["say"] for point in told["points"]} == {verdict.say for verdict in check_points(BOX)}


def test_the_command_tells_a_line_that_is_not_understood(capsys):
    code, out, err = run(capsys, "barley_squash_box", "swap the feta for cheese", "--json")
    told = json.loads(out)
    assert code == 2
    assert told["changes"] == []
    assert "cheese" in told["problem"]
    assert told["before"] == told["after"]
    assert told["choices"]
    assert "cheese" in err
    for line in told["choices"]:
        assert run(capsys, "barley_squash_box", line)[0] == 0


def test_the_command_in_words(capsys):
    code, out, _ = run(capsys, "split_pea_soup", "would red lentils do?")
    assert code == 0
    assert "2 cups of red lentils, dry, instead of the split peas" in out
    assert "Allergens: the same." in out


def test_targets_are_changes_like_others():
    asked = what_if(BOX, ["20 g protein and under 400 mg sodium a serving"])
    assert asked.change.after["protein"] >= 20
    assert asked.change.after["sodium"] <= 400
    with pytest.raises(ChangeError, match="the nearest is"):
        what_if(BOX, ["at least 90 g protein"])
