"""Units, and amounts as a kitchen writes and measures them."""

import numpy as np
import pytest
from each import for_each
from hypothesis import given
from hypothesis import strategies as st

from kit.errors import AmountError, UnknownNameError
from kit.food.amounts import read_count
from kit.food.measures import amount_text, convert, fraction_text, kitchen_steps, kitchen_volumes, plural, unit, units


@pytest.mark.parametrize("word", ["tbsp", "Tbsp.", "T", "tablespoons", "TBSP", "tbs"])
def test_every_way_to_write_a_tablespoon_is_one(word):
    assert unit(word).name == "tablespoon"


def test_a_capital_tells_a_tablespoon_from_a_teaspoon():
    assert (unit("T").name, unit("t").name) == ("tablespoon", "teaspoon")


def test_metric_cups_and_spoons_are_their_own():
    assert [unit(word, "metric").size for word in ("cup", "tbsp", "tsp")] == [250.0, 15.0, 5.0]


def test_an_unknown_system_is_told():
    with pytest.raises(UnknownNameError, match='no system of measures "imperial"'):
        units("imperial")


def test_a_mass_is_not_converted_to_a_volume_without_a_food():
    with pytest.raises(AmountError, match="is a mass"):
        convert(1, "oz", "cup")


def test_an_unknown_unit_names_the_nearest():
    with pytest.raises(UnknownNameError, match="did you mean"):
        convert(1, "cupz", "ml")


@given(st.floats(0.01, 1e4), st.sampled_from(["cup", "tbsp", "tsp", "pint", "mL", "L"]), st.sampled_from(["tsp", "L"]))
def test_converting_there_and_back_gives_the_same(amount, one, other):
    assert convert(convert(amount, one, other), other, one) == pytest.approx(amount)


@given(st.floats(0.02, 900))
def test_reading_what_was_written_gives_the_same_amount(value):
    written = read_count(fraction_text(value))[0].value
    assert written == pytest.approx(value, abs=0.0051)


@for_each(
    ("noun", "several"),
    [
        ("cup", "cups"),
        ("bunch", "bunches"),
        ("leaf", "leaves"),
        ("tbsp", "tbsp"),
        ("can (15 oz)", "cans (15 oz)"),
        ("cherry", "cherry"),
        ("medium", "medium"),
        ("8-inch", "8-inch"),
    ],
)
def test_a_measure_has_its_plural(noun, several):
    assert plural(noun, 2) == several


def test_a_piece_needs_no_word():
    assert amount_text(2, "piece") == "2"


@given(st.floats(1, 3000))
def test_kitchen_volumes_rise_and_reach_the_top(top):
    sizes = [count * unit(noun).size for count, noun in kitchen_volumes(top)]
    assert all(np.diff(sizes) > 0)
    assert sizes[-1] <= top * 1.03


@given(st.sampled_from(["g", "mL", "oz", "lb", "clove", "medium"]), st.floats(0.5, 2000))
def test_kitchen_steps_start_at_nothing_and_reach_the_top(noun, top):
    steps = kitchen_steps(noun, top)
    assert steps[0] == 0
    assert steps[-1] >= top - 1e-6
    assert (np.diff(steps) > 0).all()
