"""The table of foods."""

import numpy as np
import pytest

from kit.errors import KitError, UnknownNameError
from kit.files import bundled
from kit.food.composition import Food, Foods, bundled_foods, food_from, read_foods
from kit.food.nutrients import nutrient, nutrient_index, nutrients

TABLE = bundled_foods()


def test_every_food_has_a_value_or_a_gap_for_every_nutrient():
    assert {food.per_100g.shape for food in TABLE.values()} == {(len(nutrients()),)}


def test_no_content_is_negative():
    assert not any((food.per_100g < 0).any() for food in TABLE.values())


def test_a_gap_in_the_table_is_missing_and_not_zero():
    vitamin_d = [food["vitamin_d"] for food in TABLE.values()]
    assert np.isnan(vitamin_d).any()
    assert 0.0 in vitamin_d


def test_a_food_cannot_be_changed():
    with pytest.raises(ValueError, match="read-only"):
        TABLE["lentils-dry"].per_100g[0] = 1.0


def test_an_unknown_food_names_the_nearest():
    with pytest.raises(UnknownNameError, match='no food "lentil-dry"; did you mean "lentils-dry"'):
        TABLE["lentil-dry"]


def test_an_unknown_nutrient_names_the_nearest():
    with pytest.raises(UnknownNameError, match='did you mean "protein"'):
        nutrient("protien")


def test_a_nutrient_has_one_place_in_every_array():
    assert [nutrient_index(name) for name in nutrients()] == list(range(len(nutrients())))


def test_forms_of_a_food_share_its_base():
    assert {"lentils-dry", "lentils-boiled"} <= {food.key for food in TABLE.forms("lentils")}
    assert TABLE.forms("") == []


def test_every_measure_weighs_something():
    assert all(row.grams > 0 for food in TABLE.values() for row in food.measures)


def test_a_food_made_from_values_lacks_what_was_not_given():
    made = food_from({"protein": 8.0}, "bar")
    assert made["protein"] == 8.0
    assert np.isnan(made["fat"])


def test_a_food_needs_a_value_for_each_nutrient():
    with pytest.raises(KitError, match=r'food "bar" has \(2,\) values'):
        Food("bar", "Bar", np.zeros(2))


def test_a_cell_that_is_no_number_is_named(tmp_path):
    head = ",".join(("food", "name", *nutrients()))
    table = tmp_path / "foods.csv"
    table.write_text(f"{head}\noats,Oats,lots{',' * (len(nutrients()) - 1)}\n", encoding="utf-8")
    with pytest.raises(KitError, match=r'foods.csv, food "oats": energy is "lots"'):
        read_foods(table, bundled("data/measures.csv"))


def test_a_table_that_is_not_there_is_named(tmp_path):
    with pytest.raises(KitError, match="cannot be read"):
        read_foods(tmp_path / "foods.csv", bundled("data/measures.csv"))


def test_tables_are_themselves_and_not_their_content():
    foods = list(TABLE.values())[:2]
    assert Foods(foods) != Foods(foods)
