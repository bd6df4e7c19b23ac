"""Slips in a label that is typed as printed: it is read, or told in sentences; none ends in a traceback."""

from random import Random

import numpy as np
from slips import TRIES, mutated

from kit.errors import KitError
from kit.food.labels.label_food import food_of
from kit.food.labels.label_text import read_label

TYPED = """Oat squares
Serving size 2/3 cup (55 g)
8 servings per container
Calories 230
Total Fat 8g 10%
Saturated Fat 1g 5%
Cholesterol 0mg
Sodium 160mg 7%
Total Carbohydrate 37g 13%
Dietary Fiber 4g 14%
Total Sugars 12g
Protein 3g
Vitamin D 2mcg 10%
Calcium 260mg 20%
Iron 8mg 45%
Potassium 235mg 6%"""
PIECES = [
    *("nan", "Calories nan", "Calories inf", "Sodium 1e999 mg", f"Protein {'9' * 400} g", "Serving size 0 g", ""),
    *("Serving size 1/0 cup (5 g)", "Total Fat -3 g", "Calcium 1e308 %", "Serving size (g)", "Iron mg", "a" * 3000),
]


def test_any_slip_in_a_label_is_read_or_told():
    chance = Random("slips of labels")
    for _ in range(TRIES * 10):
        try:
            food = food_of(read_label(mutated(TYPED, chance, PIECES)))
        except KitError:  # told
            continue
        known = np.array(food.per_100g)[~np.isnan(food.per_100g)]
        assert np.isfinite(known).all()
        assert (known >= 0).all()
