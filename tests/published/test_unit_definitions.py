"""The kitchen's units against their definitions and against two general libraries."""

import pint
import pytest
from each import for_each
from scipy import constants

from kit.food.measures import convert, units

# NIST Handbook 44 (2024), appendix C: exact.
NIST = {
    "gallon": 3785.411784,
    "quart": 946.352946,
    "pint": 473.176473,
    "cup": 236.5882365,
    "fl oz": 29.5735295625,
    "tbsp": 14.78676478125,
    "tsp": 4.92892159375,
    "oz": 28.349523125,
    "lb": 453.59237,
}


@for_each(("word", "size"), NIST.items())
def test_a_unit_is_as_large_as_nist_defines_it(word, size):
    assert units()[word].size == pytest.approx(size, rel=1e-12)


def test_volumes_and_weights_agree_with_scipy():
    assert units()["gallon"].size == pytest.approx(constants.gallon * 1e6, rel=1e-12)  # 231 cubic inches
    assert units()["gallon"].size == pytest.approx(231 * constants.inch**3 * 1e6, rel=1e-12)
    assert units()["fl oz"].size == pytest.approx(constants.fluid_ounce * 1e6, rel=1e-12)
    assert units()["lb"].size == pytest.approx(constants.pound * 1e3, rel=1e-12)
    assert units()["oz"].size == pytest.approx(constants.ounce * 1e3, rel=1e-12)


@pytest.mark.parametrize("name", ["gallon", "quart", "pint", "cup", "fluid_ounce", "tablespoon", "teaspoon"])
def test_volumes_agree_with_pints_own_registry(name):
    assert units()[name].size == pytest.approx(pint.UnitRegistry()(name).to("milliliter").magnitude, rel=1e-9)


def test_spoons_and_cups_are_in_nists_proportions():
    # NIST SP 430: teaspoon : tablespoon : fluid ounce : cup as 1 : 3 : 6 : 48.
    assert [convert(1, word, "tsp") for word in ("tbsp", "fl oz", "cup")] == pytest.approx([3, 6, 48])


def test_the_rounded_kitchen_equivalents_are_within_their_own_rounding():
    # NIST metric household table: teaspoon 4.9, tablespoon 15, quarter cup 59, cup 237 mL, as printed.
    for count, word, printed, rounding in [
        (1, "tsp", 4.9, 0.05),
        (1, "tbsp", 15, 0.5),
        (0.25, "cup", 59, 0.5),
        (1, "cup", 237, 0.5),
    ]:
        assert convert(count, word, "mL") == pytest.approx(printed, abs=rounding)


def test_metric_cups_and_spoons_are_250_15_and_5_millilitres():
    # Metric cup and spoons: common practice.
    assert [units("metric")[word].size for word in ("cup", "tbsp", "tsp")] == [250, 15, 5]
