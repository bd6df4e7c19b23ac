"""What kind of dish it is taken for, on dishes made up for this; the limits are those of 21 CFR 101.13(l) and (m)."""

from dataclasses import replace

import pytest

from kit.meal.nutrition import nutrition
from kit.meal.recipe import recipe
from kit.rules.claims import judge
from kit.rules.dish_kind import kind_of_dish
from kit.rules.subjects import of_dish

BEANS_AND_RICE = ("300 g cooked brown rice", "300 g cooked black beans", "200 g red bell pepper", "1/2 tsp salt")


def dish(title, lines=BEANS_AND_RICE, servings=2.0, **facts):
    return nutrition(replace(recipe(title, lines, servings=servings), **facts))


# title, lines, servings, kind, whether it may as well be a main dish
KINDS = [
    ("Rice with black beans", BEANS_AND_RICE, 2, "meal", False),
    ("Rice with black beans", BEANS_AND_RICE, 4, "main dish", False),
    ("Rice with black beans", BEANS_AND_RICE, 6, "food", False),
    ("Oven fries", ("800 g potatoes", "2 tbsp olive oil"), 8, "side", False),
    ("Buttered peas", ("500 g green peas", "1 tbsp butter"), 4, "side", False),
    ("Roast chicken", ("500 g chicken breast", "1 tbsp olive oil"), 4, "food", False),
    ("Black bean soup", BEANS_AND_RICE, 2, "soup", True),
    ("Carrot soup with dill", ("800 g carrots", "2 cups water", "2 tbsp dill"), 4, "soup", False),
    ("Warm rice and bean salad", BEANS_AND_RICE, 2, "side", True),
    ("Fennel slaw", ("400 g fennel", "1 tbsp olive oil", "300 g plain yogurt"), 2, "side", False),
    ("Roasted carrots", ("800 g carrots", "2 tbsp olive oil"), 4, "food", False),
    ("Pear crumble", ("800 g pears", "100 g oats", "80 g brown sugar", "60 g butter"), 6, "dessert", False),
    ("Fisherman's pie", ("500 g cod", "600 g potatoes", "1 cup whole milk"), 2, "meal", False),
    ("Plum smoothie", ("2 cups whole milk", "300 g plums"), 2, "drink", False),
    ("Tea-smoked trout with greens", ("400 g trout", "400 g spinach"), 2, "main dish", False),
    ("Something sweet", ("200 g apricots, dried", "100 g honey", "100 g almonds"), 12, "dessert", False),
    ("Herb yogurt dip", ("2 cups plain yogurt", "1/2 cup dill, chopped"), 8, "food", False),
]


def test_the_kind_is_worked_out_from_the_title_and_what_is_in_it():
    wrong = []
    for title, lines, servings, kind, doubt in KINDS:
        taken = kind_of_dish(dish(title, lines, servings))
        if (taken.kind, taken.or_main_dish, taken.stated) != (kind, doubt, False) or not taken.because:
            wrong.append((title, servings, taken))
    assert not wrong, "\n".join(map(str, wrong))


def test_what_the_talk_states_goes_before_what_is_worked_out():
    wrong = []
    for stated in ("soup", "side", "dessert", "drink", "food", "main dish", "meal"):
        taken = kind_of_dish(dish("Black bean soup", dish_is=stated))
        if (taken.kind, taken.stated, taken.or_main_dish) != (stated, True, False):
            wrong.append(taken)
        if taken.by_100_grams != (stated in ("main dish", "meal")) or bool(taken.references) == taken.by_100_grams:
            wrong.append(taken)
    assert not wrong, wrong


def test_a_stated_main_dish_still_has_to_weigh_enough_and_hold_two_food_groups():
    light = kind_of_dish(dish("Rice with black beans", servings=6, dish_is="main dish"))
    assert (light.kind, light.stated) == ("food", True)
    assert "6 oz" in light.because
    alone = kind_of_dish(dish("Roasted carrots", ("900 g carrots",), 4, dish_is="main dish"))
    assert alone.kind == "food"
    assert "fruits and vegetables" in alone.because


@pytest.mark.parametrize(
    ("grams", "kind", "doubt"), [(30, "food", False), (40, "food", True), (55, "main dish", False)]
)
def test_near_40_g_of_the_second_group_it_may_be_either(grams, kind, doubt):
    """Carrots, and as much boiled egg as is said: 101.13(m)(1)(i)(B). A weighed amount is known to 2 %."""
    taken = kind_of_dish(dish("Carrots with egg", ("260 g carrots", f"{grams} g hard-boiled egg"), 1))
    assert (taken.kind, taken.or_main_dish) == (kind, doubt)


def test_a_soup_that_may_be_a_main_dish_holds_only_what_holds_both_ways():
    soup = of_dish(dish("Black bean soup", servings=3))
    assert soup.otherwise.is_dish
    assert not soup.is_dish
    assert judge("low", "cholesterol", soup).verdict == "holds"
    as_soup, as_main_dish = (
        judge("high", "fiber", replace(soup, otherwise=None)),
        judge("high", "fiber", soup.otherwise),
    )
    assert (as_soup.verdict, as_main_dish.verdict) == ("holds", "off")
    both = judge("high", "fiber", soup)
    assert both.verdict == "cannot tell"
    assert "what kind of dish" in both.because


def test_a_soup_that_is_stated_is_judged_by_245_grams_and_a_main_dish_by_100():
    """21 CFR 101.12(b) and 101.61(b)(4), (5): 100 mg of sodium in 100 g are 245 mg in a soup's usual amount."""
    lines = ("800 g carrots", "400 g cooked black beans", "2 cups water", "2 g salt")
    soup, main = (of_dish(dish("Carrot pot", lines, 4, dish_is=kind)) for kind in ("soup", "main dish"))
    assert 60 < main.value("sodium") < 110
    assert judge("low", "sodium", soup).verdict == "off"
    assert judge("low", "sodium", main).verdict == "holds"
