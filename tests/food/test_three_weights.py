"""As bought, edible, as eaten."""

import pytest

from kit.food.composition import bundled_foods
from kit.food.three_weights import published_yields, three_weights

FOODS = bundled_foods()


def test_a_whole_vegetable_weighs_more_as_bought():
    carrots = three_weights(FOODS["carrots-raw"], 89)
    assert carrots.as_bought == pytest.approx(100)  # USDA SR26 11124: 11 % refuse


def test_a_dry_pulse_takes_up_water():
    lentils = three_weights(FOODS["lentils-dry"], 100)
    assert lentils.cooked.key == "lentils-boiled"
    assert lentils.as_eaten == pytest.approx(295, abs=1)  # solids of USDA SR26 16069 over 16070


def test_a_food_without_a_cooked_form_is_eaten_as_it_is():
    oil = three_weights(FOODS["olive-oil"], 27)
    assert (oil.as_bought, oil.as_eaten, oil.cooked, oil.yields) == (27, 27, None, {})


def test_dry_quinoa_roughly_triples_in_volume():
    assert three_weights(FOODS["quinoa-dry"], 170).yields["volume"] == pytest.approx(3, rel=0.1)  # common practice


@pytest.mark.parametrize(
    "base", ["lentils", "kidney-beans", "black-beans", "quinoa", "rice-white", "rice-brown", "bulgur"]
)
def test_our_yield_lies_by_the_published_one(base):
    dry = FOODS[f"{base}-dry"]
    ours = three_weights(dry, 100).yields["weight"]
    printed = next(row for row in published_yields(dry) if row.kind == "weight")
    assert printed.low * 0.97 <= ours <= printed.high * 1.03
