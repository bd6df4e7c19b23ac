"""What is said beside the numbers: by dish, by list, in the right order."""

from dataclasses import replace

import pytest
from talks import a_talk

from kit.errors import UnknownNameError
from kit.food.composition import food_from
from kit.meal.changes import leave_out
from kit.meal.nutrition import nutrition
from kit.meal.recipe import Ingredient
from kit.rules.cautions import allergens, cautions, storage, unknown_allergens

LINES = ("1 cup bulgur, dry", "1 cup kale, chopped", "1/2 cup feta, crumbled", "2 tsp yellow mustard", "2 tbsp tahini")


def recipe(*lines):
    return a_talk(lines=lines or LINES).recipe


def test_the_us_list_names_wheat_and_sesame_and_no_mustard():
    """21 U.S.C. 321(qq): the nine major allergens."""
    assert [one.allergen for one in allergens(recipe())] == ["milk", "wheat", "sesame"]


def test_the_eu_list_names_cereals_with_gluten_and_mustard():
    """Regulation (EU) 1169/2011, Annex II: the fourteen."""
    assert [one.allergen for one in allergens(recipe(), "eu")] == ["milk", "gluten", "sesame", "mustard"]


def test_an_allergen_comes_with_the_food_that_brings_it():
    assert allergens(recipe())[0].sentence == "Milk, from the feta cheese"


def test_what_is_left_out_brings_nothing():
    without = leave_out(recipe(), "cheese-feta")
    assert "milk" not in [one.allergen for one in allergens(without)]


def test_a_food_of_which_nothing_is_known_is_named():
    unknown = food_from({"energy": 100.0}, key="fdc-1", name="Mystery mix")
    dish = replace(recipe(), ingredients=(*recipe().ingredients, Ingredient(unknown, 50.0)))
    assert unknown_allergens(dish) == ("mystery mix",)
    allergy = next(one for one in cautions(nutrition(dish)) if one.caution == "allergy")
    assert "read the package of the mystery mix" in allergy.why


def test_an_unknown_list_is_refused():
    with pytest.raises(UnknownNameError, match='no list of allergens "uk"'):
        allergens(recipe(), "uk")


def test_local_codes_come_first_and_general_education_second():
    assert [one.caution for one in cautions(nutrition(recipe()))][:2] == ["local_codes", "general_education"]


def test_vitamin_k_is_named_with_its_leafy_green():
    found = {one.caution: one for one in cautions(nutrition(recipe("4 cups kale, chopped", "1 cup bulgur, dry")))}
    assert "vitamin K" in found["anticoagulants"].why
    assert "kale" in found["anticoagulants"].why


def test_a_nutrient_below_a_fifth_of_a_day_gives_no_cause():
    """FDA teaches that 5 % of a day is low and 20 % high."""
    found = [one.caution for one in cautions(nutrition(recipe("1 apple", "1 tsp sugar")))]
    assert "kidney_disease" not in found
    assert "anticoagulants" not in found


def test_acid_and_spice_are_named_for_reflux():
    found = {one.caution: one for one in cautions(nutrition(recipe("1 cup crushed tomatoes", "1 tsp cayenne")))}
    assert "tomatoes" in found["reflux"].why
    assert "cayenne" in found["reflux"].why


def test_every_caution_is_a_sentence_for_someone():
    for one in cautions(nutrition(recipe())):
        assert one.who
        assert one.sentence.endswith(".")


@pytest.mark.parametrize(
    ("measures", "reheat"),
    [("us", "165 °F (74 °C)"), ("metric", "74 °C (165 °F)")],  # USDA FSIS
)
def test_reheating_is_told_in_the_degrees_of_the_audience(measures, reheat):
    assert reheat in " ".join(storage(measures))


def test_two_hours_out_and_three_to_four_days():
    """USDA FSIS: leftovers."""
    told = " ".join(storage())
    assert "within 2 hours" in told
    assert "3 to 4 days" in told
    assert "above 90 °F (32 °C), within 1 hour" in told


@pytest.mark.parametrize(("days", "told"), [(1, "keeps 1 day "), (3, "keeps 3 days"), (9, "3 to 4 days")])
def test_the_talks_own_days_are_told_unless_they_are_too_many(days, told):
    assert told in " ".join(storage("us", days))


def test_dry_kidney_beans_are_soaked_and_boiled_and_a_sauce_kept_apart():
    """FDA Bad Bug Book, from memory."""
    dish = recipe("1 cup red kidney beans, dry")
    dressed = replace(dish, ingredients=(replace(dish.ingredients[0], part="dressing"),))
    told = " ".join(storage("us", None, dressed))
    assert "30 minutes" in told
    assert "sauce apart" in told
    assert "30 minutes" not in " ".join(storage("us", None, recipe()))


def test_a_dish_with_alcohol_says_so_and_wine_vinegar_holds_none():
    """The alcohol is what is left of 100 g beside water, protein, fat, carbohydrate and ash: red wine about 10.6 g."""
    braise, dressed = (
        nutrition(recipe(line, "1 lb mushrooms")) for line in ("1 cup red wine", "2 tbsp red wine vinegar")
    )
    (told,) = [one for one in cautions(braise) if one.caution == "alcohol"]
    assert told.why.startswith("it holds wine")
    assert "alcohol" not in {one.caution for one in cautions(dressed)}
