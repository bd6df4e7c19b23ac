"""A day's protein counts by its quality: 21 CFR 101.9(c)(7), FAO/WHO 1991."""

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from kit.meal.nutrition import nutrition
from kit.meal.recipe import recipe
from kit.rules.protein import protein_quality, quality_of_dish
from kit.rules.serving import as_json, serving_lines


def test_a_dish_counts_at_least_the_average_of_its_parts_and_at_most_all_of_its_protein():
    beans = nutrition(recipe("Beans", ["2 cups cooked kidney beans", "1 tbsp olive oil"]))
    assert quality_of_dish(beans) == (min(protein_quality()["kidney-beans"]), 1.0)
    milk = nutrition(recipe("Milk", ["2 cups whole milk"]))
    assert quality_of_dish(milk) == (1.0, 1.0)
    assert quality_of_dish(nutrition(recipe("Oil", ["1 tbsp olive oil"]))) == (0.0, 1.0)


@given(
    st.lists(
        st.tuples(st.floats(0.01, 9), st.lists(st.floats(0.05, 2), min_size=9, max_size=9)), min_size=1, max_size=6
    )
)
def test_the_average_score_is_never_more_than_the_mixtures(parts):
    """The reason for the least: amino acids of 1 g of each protein, as parts of what the reference pattern asks."""
    grams = np.array([amount for amount, _ in parts])
    acids = np.array([ratios for _, ratios in parts])
    average = float(grams @ np.minimum(1, acids.min(axis=1)) / grams.sum())
    mixture = min(1.0, float((grams @ acids / grams.sum()).min()))
    assert average <= mixture + 1e-9


def test_a_share_of_a_days_protein_is_told_only_where_its_quality_is_known():
    milk, beans = (nutrition(recipe("Pot", [line])) for line in ("2 cups whole milk", "2 cups cooked kidney beans"))
    (of_milk,), (of_beans,) = (serving_lines(numbers, ["protein"]) for numbers in (milk, beans))
    assert of_milk.day == milk["protein"] / 50
    assert np.isnan(of_beans.day)
    told = as_json(beans)["nutrients"]["protein"]
    assert told["daily_value_percent"] == pytest.approx(100 * beans["protein"] / 50)
    assert told["corrected_percent"][1] == told["daily_value_percent"]
    assert told["corrected_percent"][0] == min(protein_quality()["kidney-beans"]) * told["daily_value_percent"]
