"""How long one what-if takes: at most 30 bare products of grams and table, 100 times faster than cell by cell."""

import statistics
import time

import numpy as np
import pint
import pytest

from kit.food.nutrients import nutrients
from kit.meal.certainty import ranges
from kit.meal.nutrition import nutrition
from kit.meal.recipe import recipe

LINES = (
    "1 1/2 cups pearled barley, dry",
    "6 cups butternut squash, cubed",
    "2 medium red onions, sliced",
    "3 tbsp olive oil",
    "1/2 tsp salt",
    "1 (15 oz) can red kidney beans, drained and rinsed",
    "4 cups kale, chopped",
    "2 tbsp lemon juice",
    "1 tbsp maple syrup",
    "2 tsp yellow mustard",
    "1 clove garlic, grated",
    "3/4 cup feta, crumbled",
    "1/2 cup walnuts, chopped",
    "1/4 cup parsley, chopped",
    "1 tsp cumin",
)
DISH = recipe("Box", LINES, servings=6)
AS_MANY, FASTER = 30, 100


def median(act, times):
    """Median seconds of one run, over batches long enough for the clock."""
    taken = []
    for _ in range(15):
        begun = time.perf_counter()
        for _ in range(times):
            act()
        taken.append((time.perf_counter() - begun) / times)
    return statistics.median(taken)


def cell_by_cell():
    """The same numbers with a quantity for every cell: contributions, totals, ranges and shares."""
    units = pint.get_application_registry()
    totals = {}
    for name, about in nutrients().items():
        unit = units(about.unit)
        per = [
            (part.grams * units.gram)
            * (0.0 if np.isnan(part.food[name]) else part.food[name])
            * unit
            / (100 * units.gram)
            / DISH.servings
            for part in DISH.ingredients
        ]
        spread = sum((one * part.relative_sd) ** 2 for one, part in zip(per, DISH.ingredients, strict=True)) ** 0.5
        totals[name] = (sum(per), spread)
    return totals


@pytest.mark.bench
def test_one_what_if_is_a_few_products_of_arrays():
    assert len(DISH.ingredients) == 15
    table, grams = np.nan_to_num(DISH.per_100g), DISH.grams
    half_the_salt, scaled = grams.copy(), grams * 0.9
    half_the_salt[4] /= 2

    def what_if(amounts=half_the_salt):
        numbers = nutrition(DISH.with_grams(amounts))
        return numbers.contributions, numbers.per_serving, ranges(numbers), numbers.energy_shares

    what_if()
    bare, own, cells = median(lambda: grams @ table, 2000), median(what_if, 200), median(cell_by_cell, 1)
    every = median(lambda: what_if(scaled), 200)
    print(
        f"\nbare product {bare * 1e6:.1f} us, one what-if {own * 1e6:.0f} us: {own / bare:.0f} times "
        f"({every / bare:.0f} with all amounts others); cell by cell {cells * 1e3:.0f} ms: {cells / own:.0f} times that"
    )
    assert own <= AS_MANY * bare
    assert cells >= FASTER * own
