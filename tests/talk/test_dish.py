"""Shares, parts and measures of the dish as it is now."""

import math

import numpy as np
import pytest
from talks import a_dish, a_talk

from kit.errors import UnknownNameError
from kit.food.composition import foods
from kit.meal.changes import leave_out
from kit.meal.nutrition import nutrition
from kit.rules.naming import full_name, ingredient_called, short_name
from kit.talk.dish import Dish, content, measure_grams


def test_the_shares_of_all_ingredients_add_to_one():
    dish = a_dish()
    shares = [dish.share([part.food], "protein").value for part in dish.numbers.recipe.ingredients]
    assert sum(shares) == pytest.approx(1)


def test_the_range_of_a_share_agrees_with_a_draw_of_many_dishes():
    """First-order propagation against 20,000 draws of normal contributions."""
    dish = a_dish()
    at = list(dish.numbers.recipe.ingredients)
    lentils = at[0].food
    share = dish.share([lentils], "protein")
    parts = dish.numbers.brings("protein")
    spread = [dish.brought([part.food], "protein").half_width / 1.6449 for part in at]
    drawn = np.random.default_rng(7).normal(parts, spread, size=(20_000, len(at)))
    drawn_shares = drawn[:, 0] / drawn.sum(axis=1)
    low, high = np.quantile(drawn_shares, [0.05, 0.95])
    assert (share.low, share.high) == pytest.approx((low, high), abs=0.01)


def test_a_food_that_is_left_out_is_nowhere():
    talk = a_talk()
    dish = Dish(talk, nutrition(leave_out(talk.recipe, "cheese-feta")))
    feta = dish.ingredient("feta")
    assert dish.places([feta]) == []
    assert dish.brought([feta], "protein").value == 0
    assert dish.grams(feta).value == 0


@pytest.mark.parametrize(
    ("food", "measure", "grams"),
    [
        ("lentils-boiled", "cup", 198.0),  # SR26
        ("lentils-boiled", "cups", 198.0),
        ("lentils-boiled", "oz", 28.349523125),  # NIST
        ("egg", "large", 50.0),  # SR26
    ],
)
def test_a_measure_is_the_foods_own(food, measure, grams):
    assert measure_grams(foods()[food], measure) == pytest.approx(grams)


def test_content_has_the_range_of_the_composition():
    of = content(foods()["lentils-boiled"], "protein", 198)
    assert of.value == pytest.approx(17.86, abs=0.01)
    # a pulse: 9.8 % and, for what varies in a trace, 0.2 g in 100 g, which hold 9.02 g
    assert of.half_width == pytest.approx(1.6449 * math.hypot(0.098, 0.2 / 9.02) * of.value, rel=1e-3)


def test_words_that_fit_two_ingredients_are_not_guessed():
    talk = a_talk(lines=("1 cup brown rice, dry", "1 cup white rice, cooked", "1 egg"))
    with pytest.raises(UnknownNameError, match="single ingredient"):
        ingredient_called("rice", talk.recipe)
    assert ingredient_called("egg", talk.recipe) == 2


def test_foods_are_called_what_people_call_them():
    assert short_name(foods()["kidney-beans-canned-rinsed"]) == "red kidney beans"
    assert full_name(foods()["kidney-beans-canned-rinsed"]) == "canned red kidney beans"
    assert full_name(foods()["lima-beans-boiled"]) == "cooked Lima beans"


def test_every_food_of_the_table_has_a_name_to_say():
    for food in foods().values():
        assert short_name(food).strip()
        assert "(" not in full_name(food)


def test_by_the_rules_of_the_eu_carbohydrate_is_without_fiber_and_fiber_gives_2_kcal():
    """Regulation (EU) 1169/2011, Annex I and Annex XIV."""
    us, eu = a_dish(), a_dish(rules="eu")
    fiber = us.range_of("fiber").value
    assert us.range_of("carbohydrate").value - eu.range_of("carbohydrate").value == pytest.approx(fiber)
    grams = {name: us.range_of(name).value for name in ("protein", "fat", "carbohydrate")}
    energy = 4 * grams["protein"] + 9 * grams["fat"] + 4 * (grams["carbohydrate"] - fiber) + 2 * fiber
    assert eu.range_of("energy").value == pytest.approx(energy)
    lentils = foods()["lentils-boiled"]
    assert content(lentils, "carbohydrate", 100, "eu").value == pytest.approx(
        lentils["carbohydrate"] - lentils["fiber"]
    )
