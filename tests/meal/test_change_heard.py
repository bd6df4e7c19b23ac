"""What a typed what-if says that none of its steps answers is asked about."""

import pytest

from kit.errors import ChangeError
from kit.food.composition import foods
from kit.meal.change_heard import all_heard
from kit.meal.changes import read_change
from kit.meal.recipe import recipe
from kit.meal.steps import LeaveOut, Row, Swap

SOUP = recipe("Soup", ["2 cups corn, frozen", "4 cups spinach", "3 cups vegetable broth", "1/2 tsp salt"], servings=4)
NO_CORN = LeaveOut(Row(0, "corn-frozen"))


def heard(text, *steps):
    return all_heard(text, text, SOUP, steps, foods())


@pytest.mark.parametrize(
    ("text", "lost"),
    [
        ("no corn but with tomatoes", "tomato"),
        ("no corn, 3 of them", "3"),
        ("no corn, dried", "dried"),
        ("no vegan corn", "vegan"),
        ("no corn, a can of it", "a can of"),
    ],
)
def test_a_food_a_number_or_a_state_that_no_step_answers_is_named(text, lost):
    with pytest.raises(ChangeError, match=f'"{lost}" would be lost'):
        heard(text, NO_CORN)


def test_what_only_stays_or_says_why_asks_for_nothing():
    for text in ("no corn but keep the spinach", "no corn because of the salt", "leave out the frozen corn"):
        assert heard(text, NO_CORN) == (NO_CORN,)


def test_chicken_does_not_come_for_vegetables_unnamed():
    chicken = Swap(Row(2, SOUP.ingredients[2].food.key), foods()["broth-chicken-low-sodium"])
    with pytest.raises(ChangeError, match="should chicken broth"):
        heard("low sodium broth", chicken)
    assert heard("low sodium chicken broth", chicken) == (chicken,)


def test_a_measure_that_weighs_far_more_is_asked_about_with_amounts_that_are_read():
    with pytest.raises(ChangeError, match="how much spinach") as fault:
        read_change("frozen spinach instead of fresh", SOUP)
    assert [read_change(choice, SOUP)[0].measured.grams for choice in fault.value.choices] == [624.0, 120.0]
