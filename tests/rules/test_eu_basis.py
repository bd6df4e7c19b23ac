"""Amounts as the EU counts them: Regulation (EU) 1169/2011, Annex I and Annex XIV."""

import numpy as np
import pytest

from kit.food.alcohol import alcohol_of
from kit.food.composition import food_from, foods
from kit.food.nutrients import nutrient_index
from kit.meal.nutrition import nutrition
from kit.meal.recipe import recipe
from kit.rules.claims import judge
from kit.rules.eu_basis import as_eu, counted, kilojoules, kilojoules_of, salt_grams, share_of_day_in
from kit.rules.serving import as_json, as_text, serving_lines
from kit.rules.subjects import of_dish, of_food


def per_100g(**values):
    return food_from({"protein": 0, "fat": 0, "carbohydrate": 0, "fiber": 0, "energy": 0, **values}).per_100g


def test_fiber_gives_2_kcal_and_8_kj_and_is_no_carbohydrate():
    """10 g protein, 5 g fat, 60 g carbohydrate of which 20 g fiber: 4 x 10 + 9 x 5 + 4 x 40 + 2 x 20 = 285 kcal."""
    values = per_100g(protein=10, fat=5, carbohydrate=60, fiber=20, energy=400)
    made = as_eu(values)
    assert made[nutrient_index("carbohydrate")] == 40
    assert made[nutrient_index("energy")] == pytest.approx(285)
    assert kilojoules(values) == pytest.approx(17 * 10 + 37 * 5 + 17 * 40 + 8 * 20)


def test_alcohol_gives_7_kcal_and_is_what_is_left_of_100_g():
    wine = foods()["wine-red"]
    assert alcohol_of(wine) == pytest.approx(10.6, abs=0.1)
    energy = as_eu(wine.per_100g, alcohol_of(wine))[nutrient_index("energy")]
    assert energy == pytest.approx(wine["energy"], abs=3)
    assert [alcohol_of(foods()[key]) for key in ("apple-juice", "lentils-dry", "vinegar-wine")] == [0, 0, 0]


def test_salt_is_sodium_times_two_and_a_half():
    assert salt_grams(2400) == 6.0


def test_an_unanalysed_fiber_leaves_energy_and_carbohydrate_unknown():
    made = as_eu(food_from({"protein": 1.0, "fat": 1.0, "carbohydrate": 9.0, "energy": 50}).per_100g)
    assert np.isnan(made[[nutrient_index("energy"), nutrient_index("carbohydrate")]]).all()


def test_the_numbers_of_a_dish_are_counted_by_the_rules_chosen():
    numbers = nutrition(recipe("Lentil pot", ["2 cups lentils, dry", "1 tsp salt"], servings=4))
    by_us, by_eu = (serving_lines(numbers, ["carbohydrate", "energy", "fiber"], rules) for rules in ("us", "eu"))
    assert by_us[0].value - by_eu[0].value == pytest.approx(by_us[2].value)
    assert by_eu[1].value < by_us[1].value
    assert counted(numbers) is numbers
    at = nutrient_index("carbohydrate")
    assert share_of_day_in(numbers, "eu")[at] == pytest.approx(by_eu[0].value / 260)
    told = as_json(numbers, "eu")
    assert told["salt_grams"] == pytest.approx(2.5 * numbers["sodium"] / 1000)
    assert told["energy_kj"] == kilojoules_of(numbers)
    assert "kJ" in as_text(numbers, rules="eu")
    assert "kJ" not in as_text(numbers)


def test_wordings_of_the_eu_count_its_energy():
    """1924/2006, "low energy": 40 kcal in 100 g. 2 g protein, 9 g carbohydrate of which 6 g fiber: 32 kcal, not 44."""
    food = food_from({"protein": 2.0, "fat": 0.0, "carbohydrate": 9.0, "fiber": 6.0, "energy": 44.0}, name="Leaves")
    judged = judge("low", "energy", of_food(food), "eu")
    assert (judged.verdict, judged.measured) == ("holds", (32.0, 32.0))


def test_a_dish_keeps_its_range_when_it_is_counted_for_the_eu():
    dish = of_dish(nutrition(recipe("Bean pot", ["2 cups cooked black beans", "2 cups cooked brown rice"], 2)))
    made = dish.under("eu")
    for name in ("energy", "carbohydrate"):
        low, high = made.content(name)
        assert low < made.value(name) < high
        assert made.value(name) < dish.value(name)
