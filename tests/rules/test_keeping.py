"""How long dishes keep, and how hot raw foods have to get: USDA FSIS and FoodSafety.gov, temperatures from memory."""

from kit.food.composition import foods
from kit.meal.recipe import recipe
from kit.rules.cautions import storage
from kit.rules.keeping import doneness, doneness_of, keeping

# A food of the table, and its safe temperature in degrees Fahrenheit; None for what is not cooked for safety.
DONE_AT = {
    "chicken-breast": 165,
    "turkey-ground": 165,
    "beef-ground-85": 160,
    "beef-sirloin": 145,
    "pork-chop": 145,
    "salmon": 145,
    "shrimp": 145,
    "egg": 160,
    "salmon-smoked": None,
    "tuna-canned-water": None,
    "tofu-firm": None,
    "lentils-dry": None,
    "ham-lean": None,
}


def test_raw_meat_fish_and_eggs_have_a_temperature_each_and_nothing_else_has():
    known = {key: wanted for key, wanted in DONE_AT.items() if key in foods()}
    assert len(known) >= 9
    found = {key: one.fahrenheit if (one := doneness_of(foods()[key])) else None for key in known}
    assert found == known


def test_every_raw_meat_poultry_and_fish_of_the_table_has_one():
    without = [
        food.key
        for food in foods().values()
        if food.group in ("meat", "poultry", "fish", "shellfish") and food.state == "raw" and not doneness_of(food)
    ]
    assert [key for key in without if not any(word in key for word in ("smoked", "cured", "dried", "canned"))] == []


def test_whole_cuts_rest_and_the_hottest_comes_first():
    dish = recipe("Mixed grill", ["1 lb boneless skinless chicken breast", "1 lb pork tenderloin", "2 cups kale"])
    told = doneness(dish)
    assert [(one.fahrenheit, one.rest_minutes) for one in told] == [(165, 0), (145, 3)]
    assert told[1].sentence() == "Cook the pork tenderloin to 145 °F (63 °C) in the middle, and let it rest 3 minutes."
    assert "74 °C (165 °F)" in told[0].sentence("metric")


def test_a_cooked_dish_keeps_three_to_four_days_the_first_of_them_the_day_it_was_made():
    stew = recipe("Lentil stew", ["1 cup lentils, dry", "4 cups water"])
    assert keeping(stew).days == (3, 4)
    assert "Count the day it was made as day 1." in storage(recipe=stew)


def test_raw_fish_and_raw_egg_are_no_cooked_dishes():
    for title, line in (
        ("Cod ceviche", "1 lb cod"),
        ("Lemon mousse", "4 large eggs"),
        ("Salmon tartare", "1 lb salmon"),
    ):
        kept = keeping(recipe(title, [line, "1/4 cup lime juice"]))
        assert (kept.raw, kept.days) == (True, (1, 1)), title
        told = " ".join(storage(recipe=recipe(title, [line])))
        assert "the day it is made" in told
        assert "freez" not in told.lower()
        assert "Reheat" not in told
    baked = keeping(recipe("Baked cod with potatoes", ["1 lb cod", "1 lb potatoes"]))
    assert (baked.raw, baked.days) == (False, (3, 4))


def test_what_holds_raw_meat_is_told_with_its_temperature():
    told = storage(recipe=recipe("Turkey chili", ["1 lb ground turkey", "2 cups canned tomatoes"]))
    assert any("165 °F (74 °C) in the middle" in sentence for sentence in told)
