"""Filling a sentence: right numbers in speakable form, and nothing that could run."""

from dataclasses import replace

import pytest
from each import for_each
from hypothesis import given
from hypothesis import strategies as st
from talks import a_dish, a_talk

from kit.errors import KitError
from kit.food.composition import food_from
from kit.meal.certainty import Range
from kit.meal.nutrition import nutrition
from kit.meal.recipe import Ingredient
from kit.rules.spoken import amount_words, share_words
from kit.talk.dish import Dish
from kit.talk.placeholders import faults, fill

DISH = a_dish()


@for_each(
    ("say", "begins"),
    [
        ("It has {energy}.", "It has about "),
        ("It has {protein}.", "It has about "),
        ("{serving} makes it.", "One bowl makes it."),
        ("It serves {servings}.", "It serves 4."),
        ("It keeps {keeps}.", "It keeps 3 to 4 days."),
        ("{protein in one cup of lentils-boiled}", "About 18 grams of protein"),  # SR26: 198 g with 9.02 g in 100 g
        ("{iron in 100 g of lentils-boiled}", "About 3.5 milligrams of iron"),  # SR26: 3.33 mg
        ("{amount of lentils-dry}", "1 1/2 cups"),
        ("{grams of lentils-dry}", "About 70 grams"),  # 288 g for four
        ("{share of protein from lentils-dry}", "About "),
        ("{fat from olive oil}", "About 7 grams of fat"),
        ("{protein.share_of_energy}", "About "),
        ("{sugars}", "About 3.5 grams of sugar"),
    ],
)
def test_placeholders_are_filled_in_the_form_that_can_be_said(say, begins):
    assert fill(say, DISH).startswith(begins)


def test_a_filled_number_is_the_recipes_own():
    kcal = DISH.numbers["energy"]
    said = float(fill("{energy}", DISH).split()[1])
    of = DISH.range_of("energy")
    assert of.low <= said <= of.high
    assert abs(said - kcal) < of.half_width


@for_each(
    "say",
    [
        "{__class__}",
        "{energy.__init__}",
        "{energy.__class__.__mro__}",
        "{energy!r}",
        "{energy:>10}",
        "{energy:{protein}}",
        "{0}",
        "{}",
        "{{energy}}",
        "{{ 7 * 7 }}",
        "{% for x in y %}",
        "{energy[0]}",
        "{energy()}",
        "{energy",
        "energy}",
        "{servings.real}",
        "{serving.__len__}",
        "{grams of __import__('os')}",
        "{protein in __import__('os') cup of egg}",
        "{" + "a" * 200 + "}",
    ],
)
def test_nothing_in_braces_is_evaluated(say):
    assert [*faults(say, DISH)]
    with pytest.raises(KitError):
        fill(say, DISH)


@pytest.mark.parametrize("say", ["100 %s done", "%(energy)s", "$energy ${energy_} `id`".replace("{energy_}", "energy")])
def test_signs_of_other_template_languages_stay_as_they_are(say):
    assert fill(say, DISH) == say


@given(st.text(alphabet="{}.energy_ofinfrom[]()!:%'\" 0123456789", max_size=40))
def test_any_text_is_filled_or_refused_with_a_message(say):
    told = [*faults(say, DISH)]
    if told:
        with pytest.raises(KitError):
            fill(say, DISH)
    else:
        assert isinstance(fill(say, DISH), str)


@pytest.mark.parametrize(
    ("say", "message"),
    [
        ("{protien}", 'no placeholder "protien"; did you mean "protein"'),
        ("{energy.share_of_dya}", 'no form of energy "share_of_dya"; did you mean "share_of_day"'),
        ("{protein from lentls-dry}", 'no ingredient "lentls-dry"; did you mean "lentils-dry"'),
        ("{protein in one cup of lentils-boild}", 'no food "lentils-boild"; did you mean "lentils-boiled"'),
        ("{protein in one barrel of lentils-boiled}", 'no measure of lentils-boiled called "barrel"'),
        ("{sugars.share_of_day}", "sugar has no daily value"),
        ("{fiber.share_of_energy}", "only protein, fat, carbohydrate have a share of the energy"),
    ],
)
def test_what_cannot_be_looked_up_is_told_with_the_nearest(say, message):
    assert message in " ".join(faults(say, DISH))


def test_the_eu_has_a_reference_intake_of_sugars():
    assert "of a day's sugar" in fill("{sugars.share_of_day}", a_dish(rules="eu"))


@for_each(
    ("of", "at_least", "words"),
    [
        (Range(0.199, 0.16, 0.24), False, "about a fifth of a day's iron"),
        (Range(0.335, 0.3, 0.37), False, "about a third of a day's iron"),
        (Range(0.44, 0.43, 0.45), False, "about 44 percent of a day's iron"),
        (Range(0.004, 0.003, 0.005), False, "hardly any of a day's iron"),
        (Range(1.0, 0.8, 1.2), False, "about all of a day's iron"),
        (Range(3.1, 2.5, 3.7), False, "about three times a day's iron"),
        (Range(0.199, 0.16, 0.24), True, "at least 19 percent of a day's iron"),
        (Range(float("nan"), float("nan"), float("nan")), False, "an unknown part of a day's iron"),
    ],
)
def test_shares_are_said_as_fractions_where_one_is_near(of, at_least, words):
    assert share_words(of, "a day's iron", at_least) == words


def test_a_total_without_a_foods_value_is_said_as_at_least():
    missing = food_from({"energy": 100.0}, key="mix", name="Mix")
    talk = a_talk()
    dish = replace(talk.recipe, ingredients=(*talk.recipe.ingredients, Ingredient(missing, 100.0)))
    assert "at least" in fill("It has {iron}.", Dish(replace(talk, recipe=dish), nutrition(dish)))


def test_an_unknown_amount_is_not_said_as_none():
    assert amount_words("iron", Range(float("nan"), float("nan"), float("nan"))) == "an unknown amount of iron"
