"""Words that carry a meaning, and the same words when a cook means something else."""

import pytest

from kit.files import bundled
from kit.food.composition import read_rows
from kit.speech.scanning import health_words, numbers_said, nutrient_named, telling_words


@pytest.mark.parametrize(
    "say",
    [
        "One bowl has 12 grams of fiber.",
        "It has 425 calories.",
        "That is twenty percent of a day.",
        "It is low in sodium.",
        "The lentils are rich in iron.",
        "Lentils contain plenty of iron.",
        "A fat-free dressing.",
        "Twice the protein of rice.",
        "Three times as much iron.",
        "Half of the protein is from beans.",
        "Most of the fiber is from lentils.",
        "A third of a day's iron.",
        "Kale is the main source of vitamin K.",
        "It is entirely plant-based.",
        "It is vegan.",
        "Gluten-free, too.",
        "No dairy in it.",
        "It contains milk.",
        "All whole grain.",
        "It keeps three days.",
        "A balanced lunch.",
        "It has {fat}, nearly all of it unsaturated.",
    ],
)
def test_words_with_a_meaning_of_their_own_are_spotted(say):
    assert telling_words(say)


@pytest.mark.parametrize(
    "say",
    [
        "Cut the squash in half and roast it for 20 minutes.",
        "Double the recipe for a crowd.",
        "Heat 200 g of oil to 180 degrees.",
        "Most of the time it simmers alone.",
        "Add some extra virgin olive oil.",
        "It is rich in flavor.",
        "The pot contains everything we need.",
        "Use a light hand.",
        "Keep the jar in the shade.",
        "It serves {servings}, with {energy} in {serving}.",
        "Wait two days for the pickle.",
    ],
)
def test_a_cooks_words_are_left_alone(say):
    assert not telling_words(say)


def test_every_health_word_of_the_table_is_found_in_a_sentence():
    for row in read_rows(bundled("data/health_words.csv")):
        found = health_words(f"Oats, {row['words'].capitalize()}, and more.")
        assert found is not None
        assert found[2] == row["source"]


def test_a_word_of_health_inside_another_word_is_none():
    assert health_words("The heel of the loaf, cured ham and a treat.") is None


def test_numbers_keep_their_unit_and_the_nutrient_they_count():
    found = numbers_said("About 1,200 mg of sodium, 12 grams of saturated fat, and twice the iron.")
    assert [(one.number, one.unit, one.nutrient) for one in found] == [
        (1200.0, "mg", "sodium"),
        (12.0, "g", "saturated_fat"),
        (2.0, "times", "iron"),
    ]


def test_the_longest_name_of_a_nutrient_counts():
    assert nutrient_named("grams of saturated fat") == "saturated_fat"
    assert nutrient_named("vitamin B12 and more") == "vitamin_b12"
    assert nutrient_named("boiling water") == ""
