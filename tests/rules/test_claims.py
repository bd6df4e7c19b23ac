"""Regulated wordings on real foods and dishes; their limits are tried in tests/published."""

from dataclasses import replace

import numpy as np
import pytest
from talks import a_dish

from kit.errors import UnknownNameError
from kit.food.composition import food_from, foods
from kit.food.nutrients import nutrient_index
from kit.rules.claims import judge
from kit.rules.subjects import of_dish, of_food
from kit.rules.wordings import rule_for, wording_called


def test_a_single_food_is_judged_by_the_amount_usually_eaten():
    """Dry lentils: 35 g (21 CFR 101.12(b)) with 30.5 g of fiber in 100 g (SR26 16069) is 38 % of 28 g."""
    judged = judge("high", "fiber", of_food(foods()["lentils-dry"]))
    assert judged.verdict == "holds"
    assert "38.1 %" in judged.because
    assert "35 g" in judged.because
    assert judged.section == "21 CFR 101.54(b)"


def test_a_food_with_a_small_usual_amount_must_be_low_in_50_g_too():
    """Feta would be near enough by 30 g of a milder cheese, but not by 50 g: 300 mg in 100 g is 90 mg, and 150 mg."""
    cheese = food_from({"sodium": 300.0}, name="Mild cheese", reference="cheese")
    judged = judge("low", "sodium", of_food(cheese))
    assert judged.verdict == "off"
    assert "150 mg" in judged.because


def test_a_dish_may_not_be_called_high_itself():
    judged = judge("high", "fiber", a_dish().subject)
    assert judged.verdict == "off"
    assert "naming that food" in judged.because


def test_a_main_dish_is_low_per_100_g_as_eaten():
    dish = a_dish(lines=("1 1/2 cups lentils, dry", "4 cups kale, chopped", "1/8 tsp salt"))
    judged = judge("low", "sodium", dish.subject)
    assert dish.subject.kind.kind == "main dish"
    assert judged.verdict == "holds"
    assert "100 g as eaten" in judged.because
    low, high = judged.measured
    assert low < dish.numbers["sodium"] * 100 / dish.subject.serving_grams < high


def test_protein_counts_by_its_published_quality_and_not_without_one():
    lentils, seeds = (of_food(foods()[key]) for key in ("lentils-boiled", "pumpkin-seeds"))
    assert judge("high", "protein", lentils).verdict == "off"
    judged = judge("good source", "protein", seeds)
    assert judged.verdict == "cannot tell"
    assert "PDCAAS" in judged.because


def test_protein_that_is_too_little_even_uncorrected_is_off_without_a_published_quality():
    """No score is above 1: 30 g of pumpkin seeds hold 9 g, and "high" asks for 10 (21 CFR 101.54(b))."""
    assert judge("high", "protein", of_food(foods()["pumpkin-seeds"])).verdict == "off"


def test_protein_whose_published_qualities_disagree_about_the_limit_cannot_be_told():
    """5 g of corrected protein is a good source: 8 g at 0.52 is 4.2 g, at 0.78 6.2 g."""
    subject = replace(of_food(foods()["chickpeas-boiled"]), quality=(0.52, 0.78))
    values = np.array(subject.per_100g)
    values[nutrient_index("protein")] = 8 / subject.reference_grams * 100
    assert judge("good source", "protein", replace(subject, per_100g=values)).verdict == "cannot tell"


def test_a_missing_value_cannot_be_told_while_a_known_part_above_the_limit_can():
    unknown = food_from({"fat": 1.0}, name="Broth", reference="soup")
    assert judge("low", "sodium", of_food(unknown)).verdict == "cannot tell"
    dish = a_dish().subject
    salty = np.array(dish.per_100g)
    at_least = np.full_like(salty, np.inf)
    for known, verdict in ((200.0, "off"), (20.0, "cannot tell")):
        salty[nutrient_index("sodium")] = known
        assert judge("low", "sodium", replace(dish, per_100g=salty, low=salty, high=at_least)).verdict == verdict


def test_a_comparison_needs_the_other_food_and_one_that_is_not_low_already():
    less_salt, soy_sauce = (of_food(foods()[key]) for key in ("soy-sauce-low-sodium", "soy-sauce"))
    assert judge("reduced", "sodium", less_salt).verdict == "cannot tell"
    assert judge("reduced", "sodium", less_salt, than=soy_sauce).verdict == "holds"
    kale, oil = (of_food(foods()[key]) for key in ("kale-raw", "olive-oil"))
    judged = judge("reduced", "sodium", oil, than=kale)
    assert judged.verdict == "off"
    assert "low in it already" in judged.because


def test_a_wording_without_a_definition_is_off_and_one_without_a_rule_cannot_be_told():
    assert "no US definition" in judge("low", "sugars", of_food(foods()["honey"])).because
    assert judge("low", "sugars", of_food(foods()["honey"])).verdict == "off"
    assert judge("high", "sodium", of_food(foods()["salt"])).verdict == "cannot tell"


def test_lean_is_kept_for_meat_poultry_and_fish():
    judged = judge("lean", "", of_food(foods()["tofu-firm"]))
    assert judged.verdict == "off"
    assert "meat, poultry, fish and shellfish" in judged.because


def test_a_wording_for_drinks_only_is_off_for_what_is_eaten():
    """Regulation (EC) 1924/2006, Annex: energy-free is defined in 100 ml."""
    assert judge("free", "energy", of_food(foods()["kale-raw"]), rules="eu").verdict == "off"


def test_in_the_eu_a_dish_may_be_high_in_fiber_and_fat_is_weighed_in_100_g():
    assert judge("high", "fiber", a_dish().subject, rules="eu").verdict == "holds"
    judged = judge("low", "fat", of_food(foods()["lentils-boiled"]), rules="eu")
    assert judged.verdict == "holds"
    assert "1924/2006" in judged.section


def test_a_verdict_on_a_limit_from_memory_says_so():
    judged = judge("reduced", "fat", of_food(foods()["milk-skim"]), "eu", of_food(foods()["milk-whole"]))
    assert judged.section.endswith("from memory")


def test_what_a_label_points_to_is_advice_and_changes_no_verdict():
    """Feta has over 4 g of saturated fat in 30 g: 21 CFR 101.13(h)."""
    judged = judge("good source", "calcium", of_food(foods()["cheese-feta"]))
    assert judged.verdict == "holds"
    assert any("saturated fat" in words for words in judged.advice)


@pytest.mark.parametrize(
    ("words", "wording"), [("rich in", "high"), ("excellent source of", "high"), ("lite", "light")]
)
def test_a_wording_is_known_by_how_it_is_said(words, wording):
    assert wording_called(words) == wording


def test_a_food_that_is_low_by_nature_is_worded_as_a_kind_of_food():
    """21 CFR 101.13(e)(2), from memory: "celery, a low-sodium food"; skim milk was made low in fat, feta is not low."""
    worded = [
        judge("low", "sodium", of_food(foods()["celery-raw"])).worded,
        judge("free", "fat", of_food(foods()["milk-skim"])).worded,
        judge("low", "sodium", of_food(foods()["cheese-feta"])).worded,
    ]
    assert worded == ["a low-sodium food", "", ""]


def test_unknown_names_are_told_with_the_nearest():
    with pytest.raises(UnknownNameError, match='no wording "hihg"; did you mean "high"'):
        wording_called("hihg")
    with pytest.raises(UnknownNameError, match='no nutrient "fibre"; did you mean "fiber"'):
        rule_for("high", "fibre", "food")
    with pytest.raises(UnknownNameError, match='no set of rules "uk"'):
        rule_for("high", "fiber", "food", "uk")


def test_a_dish_that_weighs_nothing_cannot_be_told():
    dish = a_dish()
    empty = of_dish(
        type(dish.numbers)(dish.numbers.recipe.with_grams([0.0] * 5), np.zeros_like(dish.numbers.contributions))
    )
    assert judge("low", "sodium", empty).verdict == "cannot tell"
