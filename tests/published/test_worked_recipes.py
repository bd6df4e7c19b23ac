"""Complete recipe calculations that others published, through the kit's own recipe and nutrition."""

import numpy as np
import pytest
from each import for_each

from kit.food.composition import food_from
from kit.food.nutrients import nutrient_index
from kit.meal.nutrition import nutrition, per_100g
from kit.meal.recipe import Ingredient, Recipe

# Indian Nutrient Databank, open data set, University of Edinburgh and partners, 2024; its ingredient values per 100 g
# are those of the UK composition data set 2021. Energy kcal; carbohydrate, protein, fat g; the others mg.
# A trace counts as nothing there and so here; what is present in an unknown amount is missing: sums are least amounts.
NAMES = ("energy", "carbohydrate", "protein", "fat", "sodium", "calcium", "vitamin_c")
FOODS = {
    "yogurt, whole milk": (79, 7.8, 5.7, 3.0, 80, 200, 1),
    "sugar, white": (394, 105.0, 0, 0, 5, 10, 0),
    "lemon, weighed with peel and pips": (9, 1.4, 0.5, 0.2, 2, 17, 34),
    "tea, infusion": (0, 0, 0.1, 0, 0, 0, 0),
    "cocoa powder": (312, 11.5, 18.5, 21.7, None, 130, 0),
    "butter, unsalted": (744, 0.6, 0.6, 82.2, 8, 18, 0),
    "shallot": (20, 3.3, 1.5, 0.2, 10, 24, 13),
    "chilli powder": (None, None, 13.5, 14.3, 4000, 330, 1),
    "salt": (0, 0, 0, 0, 39300, 10, 0),
    "water": (0,) * len(NAMES),
    "ice": (0,) * len(NAMES),
}
# The recipes, from Khanna et al., Art & Science of Cooking (2007), and Raina et al., Basic Food Preparation (2011),
# with the grams, servings and results that the data set prints: per 100 g, then per serving, in the order of NAMES.
LASSI = {"yogurt, whole milk": 100, "sugar, white": 20, "ice": 202.5, "water": 120}
ICED_TEA = {
    "lemon, weighed with peel and pips": 17.5,
    "sugar, white": 8,
    "tea, infusion": 2,
    "ice": 112.5,
    "water": 180,
}
CHOCOLATE_SAUCE = {"cocoa powder": 5, "sugar, white": 20, "water": 20, "butter, unsalted": 5}
ONION_PICKLE = {"shallot": 250, "chilli powder": 10.5, "lemon, weighed with peel and pips": 75, "salt": 1}
RECIPES = {
    "sweet lassi": (
        LASSI,
        1,
        (35.661, 6.508, 1.288, 0.678, 18.305, 45.650, 0.226),
        (157.8, 28.8, 5.7, 3.0, 81, 202, 1),
    ),
    "iced tea": (
        ICED_TEA,
        1,
        (10.342, 2.702, 0.028, 0.011, None, None, 1.859),
        (33.095, 8.645, 0.0895, 0.035, None, None, 5.95),
    ),
    "chocolate sauce": (
        CHOCOLATE_SAUCE,
        3,
        (263.2, 43.21, 1.91, 10.39, 2.8, 18.8, None),
        (43.867, 7.202, 0.318, 1.732, None, None, None),
    ),
    "small onion pickle": (
        ONION_PICKLE,
        3,
        (16.865, 2.764, 1.647, 0.639, 249.480, 31.947, 17.267),
        (18.917, 3.1, 1.847, 0.717, 279.833, 35.833, 19.368),
    ),
}


def recipe(title, grams, servings):
    foods = {
        name: food_from({key: value for key, value in zip(NAMES, FOODS[name], strict=True) if value is not None}, name)
        for name in grams
    }
    return Recipe(title, tuple(Ingredient(foods[name], amount) for name, amount in grams.items()), servings)


def results():
    for title, (grams, servings, for_100_g, for_a_serving) in RECIPES.items():
        for name, of_100_g, of_a_serving in zip(NAMES, for_100_g, for_a_serving, strict=True):
            yield title, grams, servings, name, of_100_g, of_a_serving


def printed(value):
    """Return a printed value with half of its last digit as tolerance."""
    decimals = len(f"{value}".partition(".")[2].rstrip("0"))
    return pytest.approx(value, abs=0.5 * 10.0**-decimals + 1e-9)


@for_each(("title", "grams", "servings", "name", "of_100_g", "of_a_serving"), list(results()))
def test_a_published_recipe_comes_out_as_printed(title, grams, servings, name, of_100_g, of_a_serving):
    numbers = nutrition(recipe(title, grams, servings))
    assert of_100_g is None or per_100g(numbers)[nutrient_index(name)] == printed(of_100_g)
    assert of_a_serving is None or numbers[name] == printed(of_a_serving)


@pytest.mark.parametrize(
    ("title", "total"), [("sweet lassi", 442.5), ("iced tea", 320.0), ("small onion pickle", 336.5)]
)
def test_the_ingredients_weigh_what_is_printed(title, total):
    grams, servings, _, _ = RECIPES[title]
    assert recipe(title, grams, servings).grams.sum() == pytest.approx(total)


def test_what_the_publication_counted_as_nothing_is_told_as_missing():
    """Cocoa's sodium and chilli's energy are unknown there: the printed sums are least amounts."""
    sauce = nutrition(recipe("chocolate sauce", CHOCOLATE_SAUCE, 3))
    assert sauce.missing_from("sodium") == ("cocoa powder",)
    pickle = nutrition(recipe("small onion pickle", ONION_PICKLE, 3))
    assert pickle.missing_from("energy") == ("chilli powder",)
    assert np.isnan(list(pickle.energy_shares.values())).all()


# UK Department of Health, Nutrient Profiling Technical Guidance, January 2011, worked example 4: 25 g of soup powder
# are made up with 230 g of water. What the powder holds; what is printed per 100 g made up, and half its last digit.
SOUP = {
    "energy": (395 / 4.184, 155 / 4.184, 0.5 / 4.184),  # printed as 395 and 155 kJ
    "saturated_fat": (0.9, 0.4, 0.05),
    "sugars": (9.2, 3.6, 0.05),
    "sodium": (1200, 471, 0.5),
    "fiber": (0.5, 0.2, 0.05),
    "protein": (0.8, 0.3, 0.05),
}


@pytest.mark.parametrize("name", SOUP)
def test_adding_water_thins_a_powder_as_printed(name):
    powder = food_from({key: 100 / 25 * amount for key, (amount, _, _) in SOUP.items()}, "soup powder")
    water = food_from(dict.fromkeys(SOUP, 0.0), "water")
    made_up = nutrition(Recipe("Cup soup", (Ingredient(powder, 25), Ingredient(water, 230))))
    amount, of_100_g, rounding = SOUP[name]
    assert made_up[name] == pytest.approx(amount)
    assert per_100g(made_up)[nutrient_index(name)] == pytest.approx(of_100_g, abs=rounding)
