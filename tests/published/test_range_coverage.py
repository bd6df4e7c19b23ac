"""How often a published figure lies inside our range of nine in ten: labels of cereals and dishes, and whole recipes.

Staples of another country's tables are in `test_indian_tables.py`. The shares are printed; data/README.md tells them.
"""

import csv
import json
from dataclasses import replace
from pathlib import Path

import numpy as np

from kit.food.composition import bundled_foods
from kit.food.energy import ATWATER_GENERAL
from kit.food.nutrients import nutrient_index
from kit.lines.recipe_text import read_recipe
from kit.meal.certainty import Z90, composition_sd, ranges
from kit.meal.nutrition import nutrition
from kit.meal.recipe import recipe_from

FIGURES = Path(__file__).parent / "figures"  # sources and licences: README.md there
RECIPES = json.loads((FIGURES / "government_recipes.json").read_text(encoding="utf-8"))
# What is printed is rounded to this much on either side, 21 CFR 101.9(c).
PRINTED = {
    "energy_kcal": 5.0,
    "protein_g": 0.5,
    "fat_g": 0.5,
    "saturated_fat_g": 0.5,
    "carbohydrate_g": 0.5,
    "fiber_g": 0.5,
    "cholesterol_mg": 2.5,
    "sodium_mg": 5.0,
    "potassium_mg": 5.0,
}


def columns(name):
    with open(FIGURES / name, encoding="utf-8", newline="") as file:
        rows = list(csv.DictReader(file))
    return {heading: np.array([float(row[heading] or "nan") for row in rows]) for heading in rows[0]}


def share_of_energies_inside(grams, energy, like):
    """Return how many energies lie in the range of what the grams of a label give, each as unsure as in such a food."""
    food = bundled_foods()[like]
    unsure = composition_sd(food)[[nutrient_index(name) for name in ("protein", "fat", "carbohydrate")]]
    kcal = np.stack(grams, axis=-1) * ATWATER_GENERAL
    half = Z90 * np.sqrt(np.square(kcal * unsure).sum(axis=-1))
    return float(np.mean(np.abs(kcal.sum(axis=-1) - energy)[~np.isnan(half)] <= half[~np.isnan(half)]))


def test_energy_of_breakfast_cereals_lies_in_the_range_of_their_grams():
    """R package MASS, data frame UScereal; fiber counts 2 kcal a gram (FAO 2003)."""
    labels = columns("uscereal.csv")
    carbohydrate = labels["complex_carbohydrate_g"] + labels["sugars_g"] + labels["fiber_g"] / 2
    grams = (labels["protein_g"], labels["fat_g"], carbohydrate)
    share = share_of_energies_inside(grams, labels["calories_kcal"], "shredded-wheat")
    print(f"energy of 65 cereals inside our 90 % range: {share:.0%}")
    assert 0.80 <= share <= 0.95


def test_energy_of_dishes_sold_ready_to_eat_lies_in_the_range_of_their_grams():
    """R package openintro, data frame fastfood. Energy is worked out from those grams: nearly all lie inside."""
    labels = columns("fastfood.csv")
    grams = (labels["protein_g"], labels["fat_g"], labels["carbohydrate_g"] - np.nan_to_num(labels["fiber_g"]) / 2)
    share = share_of_energies_inside(grams, labels["energy_kcal"], "roll-hamburger")
    print(f"energy of 515 dishes inside our 90 % range: {share:.0%}")
    assert share >= 0.90


def inside(recipe):
    """Return, for each nutrient that is printed, whether it lies in our range of a serving."""
    written = read_recipe("\n".join([recipe["title"], f"Serves {recipe['servings']}", *recipe["lines"]]))
    read = recipe_from(replace(written, readings=tuple(line for line in written.readings if not line.is_open)))
    low, high = ranges(nutrition(read))
    found = {}
    for printed, rounding in PRINTED.items():
        value = recipe["published"].get(printed)
        if value is not None:
            at = nutrient_index(printed.rsplit("_", 1)[0])
            found[printed] = bool(low[at] - rounding <= value <= high[at] + rounding)
    return found


def test_what_government_recipes_print_lies_in_our_range():
    """Of the recipes without a note of doubt: their own tables, brands and cuts are others than ours."""
    found = [hit for recipe in RECIPES if not recipe["note"] for hit in inside(recipe).values()]
    share = float(np.mean(found))
    print(f"{len(found)} printed figures inside our 90 % range: {share:.0%}")
    assert len(found) >= 30
    assert 0.80 <= share <= 0.95
