"""What takes a place that nobody named: sure where it is of one kind, a guess where it only looks so."""

from kit.food.composition import foods
from kit.meal.change_guesses import is_guess


def test_near_in_kind_is_sure_and_of_its_own_is_a_guess():
    sure = ["walnuts pecans", "rice-brown-dry quinoa-dry", "cheese-feta cheese-goat-soft", "chia-seeds flaxseed"]
    sure += ["cream-sour yogurt-greek-nonfat", "soy-sauce soy-sauce-low-sodium", "paprika paprika"]
    guesses = ["garlic-powder chili-powder", "fish-sauce pasta-sauce", "mangoes-raw avocado-raw", "walnuts chia-seeds"]
    guesses += ["cream-heavy yogurt-greek-nonfat", "milk-skim yogurt-whole", "oats-rolled-dry spaghetti-dry"]
    guesses += ["bread-whole-wheat tortilla-corn", "walnuts coconut-dried"]
    table = foods()
    found = {pair: is_guess(*(table[key] for key in pair.split())) for pair in (*sure, *guesses)}
    assert found == dict.fromkeys(sure, False) | dict.fromkeys(guesses, True)
