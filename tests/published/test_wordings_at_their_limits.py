"""Every regulated wording just under, at and just over its limit, with the section of law beside it.

The limits were typed here from the rules, not taken from the data tables. Read for them: 21 CFR 101.54-101.62 in
FDA's "A Food Labeling Guide" (2009), appendix A, in the 2006 and 2019 editions of the CFR and in the Institute of
Medicine's reports on front-of-package labeling; Regulation (EC) 1924/2006, Annex. A row that ends in "from memory" is
carried from memory.
"""

import numpy as np
import pytest

from kit.food.composition import nutrients
from kit.rules.claims import judge
from kit.rules.subjects import Subject

# rules, subject, wording, nutrient, measured, basis, must be, limit, unit, section.
# "small": 50 g, where the amount usually eaten is 30 g.
LIMITS = """
us food high                  iron          iron          reference  >= 3.6    mg  21 CFR 101.54(b)
us food high                  fiber         fiber         reference  >= 5.6    g   21 CFR 101.54(b)
us food high                  protein       protein       reference  >= 10     g   21 CFR 101.54(b)
us food good_source           iron          iron          reference  >= 1.8    mg  21 CFR 101.54(c)
us food good_source           iron          iron          reference  <  3.6    mg  21 CFR 101.54(c)
us food good_source           fiber         fiber         reference  >= 2.8    g   21 CFR 101.54(c)
us food good_source           fiber         fiber         reference  <  5.6    g   21 CFR 101.54(c)
us food good_source           protein       protein       reference  >= 5      g   21 CFR 101.54(c)
us food good_source           protein       protein       reference  <  10     g   21 CFR 101.54(c)
us food free                  energy        energy        reference  <  5      kcal 21 CFR 101.60(b)(1)
us food free                  energy        energy        serving    <  5      kcal 21 CFR 101.60(b)(1)
us food low                   energy        energy        reference  <= 40     kcal 21 CFR 101.60(b)(2),(3)
us food low                   energy        energy        small      <= 40     kcal 21 CFR 101.60(b)(2),(3)
us dish low                   energy        energy        100_g      <= 120    kcal 21 CFR 101.60(b)(2),(3)
us food free                  sugars        sugars        reference  <  0.5    g   21 CFR 101.60(c)(1)
us food free                  sugars        sugars        serving    <  0.5    g   21 CFR 101.60(c)(1)
us dish free                  sugars        sugars        serving    <  0.5    g   21 CFR 101.60(c)(1)
us food free                  sodium        sodium        reference  <  5      mg  21 CFR 101.61(b)(1)
us food free                  sodium        sodium        serving    <  5      mg  21 CFR 101.61(b)(1)
us dish free                  sodium        sodium        serving    <  5      mg  21 CFR 101.61(b)(1)
us food very_low              sodium        sodium        reference  <= 35     mg  21 CFR 101.61(b)(2),(3)
us food very_low              sodium        sodium        small      <= 35     mg  21 CFR 101.61(b)(2),(3)
us dish very_low              sodium        sodium        100_g      <= 35     mg  21 CFR 101.61(b)(2),(3)
us food low                   sodium        sodium        reference  <= 140    mg  21 CFR 101.61(b)(4),(5)
us food low                   sodium        sodium        small      <= 140    mg  21 CFR 101.61(b)(4),(5)
us dish low                   sodium        sodium        100_g      <= 140    mg  21 CFR 101.61(b)(4),(5)
us dish light                 sodium        sodium        100_g      <= 140    mg  21 CFR 101.56(c)
us food free                  fat           fat           reference  <  0.5    g   21 CFR 101.62(b)(1)
us food free                  fat           fat           serving    <  0.5    g   21 CFR 101.62(b)(1)
us dish free                  fat           fat           serving    <  0.5    g   21 CFR 101.62(b)(1)
us food low                   fat           fat           reference  <= 3      g   21 CFR 101.62(b)(2),(3)
us food low                   fat           fat           small      <= 3      g   21 CFR 101.62(b)(2),(3)
us dish low                   fat           fat           100_g      <= 3      g   21 CFR 101.62(b)(2),(3)
us dish low                   fat           fat           energy     <= 30     %   21 CFR 101.62(b)(2),(3)
us food percent_fat_free      fat           fat           reference  <= 3      g   21 CFR 101.62(b)(6)
us food percent_fat_free      fat           fat           small      <= 3      g   21 CFR 101.62(b)(6)
us dish percent_fat_free      fat           fat           100_g      <= 3      g   21 CFR 101.62(b)(6)
us dish percent_fat_free      fat           fat           energy     <= 30     %   21 CFR 101.62(b)(6)
us food 100_percent_fat_free  fat           fat           100_g      <  0.5    g   21 CFR 101.62(b)(6)
us dish 100_percent_fat_free  fat           fat           100_g      <  0.5    g   21 CFR 101.62(b)(6)
us food free                  saturated_fat saturated_fat reference  <  0.5    g   21 CFR 101.62(c)(1)
us food free                  saturated_fat saturated_fat serving    <  0.5    g   21 CFR 101.62(c)(1)
us dish free                  saturated_fat saturated_fat serving    <  0.5    g   21 CFR 101.62(c)(1)
us food low                   saturated_fat saturated_fat reference  <= 1      g   21 CFR 101.62(c)(2),(3)
us food low                   saturated_fat saturated_fat energy     <= 15     %   21 CFR 101.62(c)(2),(3)
us dish low                   saturated_fat saturated_fat 100_g      <= 1      g   21 CFR 101.62(c)(2),(3)
us dish low                   saturated_fat saturated_fat energy     <  10     %   21 CFR 101.62(c)(2),(3)
us food free                  cholesterol   cholesterol   reference  <  2      mg  21 CFR 101.62(d)(1)
us food free                  cholesterol   cholesterol   serving    <  2      mg  21 CFR 101.62(d)(1)
us dish free                  cholesterol   cholesterol   serving    <  2      mg  21 CFR 101.62(d)(1)
us food free                  cholesterol   saturated_fat reference  <= 2      g   21 CFR 101.62(d)(1)
us dish free                  cholesterol   saturated_fat serving    <= 2      g   21 CFR 101.62(d)(1)
us food low                   cholesterol   cholesterol   reference  <= 20     mg  21 CFR 101.62(d)(2),(3)
us food low                   cholesterol   cholesterol   small      <= 20     mg  21 CFR 101.62(d)(2),(3)
us food low                   cholesterol   saturated_fat reference  <= 2      g   21 CFR 101.62(d)(2),(3)
us dish low                   cholesterol   cholesterol   100_g      <= 20     mg  21 CFR 101.62(d)(2),(3)
us dish low                   cholesterol   saturated_fat 100_g      <= 2      g   21 CFR 101.62(d)(2),(3)
us food lean                  -             fat           reference  <  10     g   21 CFR 101.62(e)
us food lean                  -             fat           100_g      <  10     g   21 CFR 101.62(e)
us food lean                  -             saturated_fat 100_g      <= 4.5    g   21 CFR 101.62(e)
us food lean                  -             cholesterol   100_g      <  95     mg  21 CFR 101.62(e)
us dish lean                  -             fat           serving    <  10     g   21 CFR 101.62(e)
us dish lean                  -             saturated_fat serving    <= 4.5    g   21 CFR 101.62(e)
us dish lean                  -             cholesterol   serving    <  95     mg  21 CFR 101.62(e)
us food extra_lean            -             fat           reference  <  5      g   21 CFR 101.62(e)
us food extra_lean            -             saturated_fat 100_g      <  2      g   21 CFR 101.62(e)
us food extra_lean            -             cholesterol   100_g      <  95     mg  21 CFR 101.62(e)
us dish extra_lean            -             fat           100_g      <  5      g   21 CFR 101.62(e)
us dish extra_lean            -             saturated_fat serving    <  2      g   21 CFR 101.62(e)
us dish extra_lean            -             cholesterol   serving    <  95     mg  21 CFR 101.62(e)
eu food low                   energy        energy        100_g      <= 40     kcal ANNEX
eu food low                   energy        energy        100_mL     <= 20     kcal ANNEX
eu food free                  energy        energy        100_mL     <= 4      kcal ANNEX
eu food low                   fat           fat           100_g      <= 3      g   ANNEX
eu food low                   fat           fat           100_mL     <= 1.5    g   ANNEX
eu dish free                  fat           fat           100_g      <= 0.5    g   ANNEX
eu food free                  fat           fat           100_mL     <= 0.5    g   ANNEX
eu food low                   saturated_fat saturated_fat 100_g      <= 1.5    g   ANNEX
eu food low                   saturated_fat saturated_fat 100_mL     <= 0.75   g   ANNEX
eu food low                   saturated_fat saturated_fat energy     <= 10     %   ANNEX
eu food free                  saturated_fat saturated_fat 100_g      <= 0.1    g   ANNEX
eu food free                  saturated_fat saturated_fat 100_mL     <= 0.1    g   ANNEX
eu food low                   sugars        sugars        100_g      <= 5      g   ANNEX
eu food low                   sugars        sugars        100_mL     <= 2.5    g   ANNEX
eu dish free                  sugars        sugars        100_g      <= 0.5    g   ANNEX, from memory
eu food free                  sugars        sugars        100_mL     <= 0.5    g   ANNEX, from memory
eu dish low                   sodium        sodium        100_g      <= 120    mg  ANNEX
eu food low                   sodium        sodium        100_mL     <= 120    mg  ANNEX
eu dish very_low              sodium        sodium        100_g      <= 40     mg  ANNEX
eu food very_low              sodium        sodium        100_mL     <= 40     mg  ANNEX
eu food free                  sodium        sodium        100_g      <= 5      mg  ANNEX, from memory
eu food good_source           fiber         fiber         100_g      >= 3      g   ANNEX
eu food good_source           fiber         fiber         100_kcal   >= 1.5    g   ANNEX
eu dish high                  fiber         fiber         100_g      >= 6      g   ANNEX
eu dish high                  fiber         fiber         100_kcal   >= 3      g   ANNEX
eu food good_source           protein       protein       energy     >= 12     %   ANNEX, from memory
eu food high                  protein       protein       energy     >= 20     %   ANNEX
eu food good_source           iron          iron          100_g      >= 2.1    mg  ANNEX
eu food good_source           iron          iron          100_mL     >= 1.05   mg  ANNEX
eu food high                  iron          iron          100_g      >= 4.2    mg  ANNEX, from memory
eu food high                  iron          iron          100_mL     >= 2.1    mg  ANNEX, from memory
eu food high        monounsaturated_fat monounsaturated_fat acids    >= 45     %   ANNEX, from memory
eu food high        monounsaturated_fat monounsaturated_fat energy   >  20     %   ANNEX, from memory
eu food high        polyunsaturated_fat polyunsaturated_fat acids    >= 45     %   ANNEX, from memory
eu food high        polyunsaturated_fat polyunsaturated_fat energy   >  20     %   ANNEX, from memory
"""

# rules, subject, wording, nutrient, what must be less (or more), by how much, unit, section
COMPARED = """
us food reduced        energy        energy        25      % less           21 CFR 101.60(b)(4),(5)
us dish reduced        energy        energy        25      % less           21 CFR 101.60(b)(4),(5)
us food reduced        sugars        sugars        25      % less           21 CFR 101.60(c)(5)
us dish reduced        sugars        sugars        25      % less           21 CFR 101.60(c)(5)
us food reduced        sodium        sodium        25      % less           21 CFR 101.61(b)(6),(7)
us dish reduced        sodium        sodium        25      % less           21 CFR 101.61(b)(6),(7)
us food reduced        fat           fat           25      % less           21 CFR 101.62(b)(4),(5)
us dish reduced        fat           fat           25      % less           21 CFR 101.62(b)(4),(5)
us food reduced        saturated_fat saturated_fat 25      % less           21 CFR 101.62(c)(4),(5), from memory
us dish reduced        saturated_fat saturated_fat 25      % less           21 CFR 101.62(c)(4),(5), from memory
us food reduced        cholesterol   cholesterol   25      % less           21 CFR 101.62(d)(4),(5), from memory
us dish reduced        cholesterol   cholesterol   25      % less           21 CFR 101.62(d)(4),(5), from memory
us food light          sodium        sodium        50      % less           21 CFR 101.56(c)
us food lightly_salted sodium        sodium        50      % less           21 CFR 101.56(g)
us food light          -             energy        33.3333 % less           21 CFR 101.56(b)
us food light          -             fat           50      % less           21 CFR 101.56(b)
us food more           iron          iron          1.8     mg more          21 CFR 101.54(e)
us food more           fiber         fiber         2.8     g more           21 CFR 101.54(e)
us food more           protein       protein       5       g more           21 CFR 101.54(e)
us dish more           iron          iron          1.8     mg more          21 CFR 101.54(e), from memory
us dish more           fiber         fiber         2.8     g more           21 CFR 101.54(e), from memory
eu food reduced        energy        energy        30      % less           ANNEX
eu food reduced        fat           fat           30      % less           ANNEX, from memory
eu food reduced        saturated_fat saturated_fat 30      % less           ANNEX, from memory
eu food reduced        sugars        sugars        30      % less           ANNEX, from memory
eu food reduced        sodium        sodium        25      % less           ANNEX, from memory
eu food light          sodium        sodium        25      % less           ANNEX, from memory
eu food light          -             energy        30      % less           ANNEX, from memory
eu food light          -             fat           30      % less           ANNEX, from memory
eu food more           fiber         fiber         30      % more           ANNEX, from memory
eu food more           protein       protein       30      % more           ANNEX, from memory
"""

HAIR = 1e-4
KEPT = {
    ">=": {"under": "off", "at": "holds", "over": "holds"},
    ">": {"under": "off", "at": "off", "over": "holds"},
    "<=": {"under": "holds", "at": "holds", "over": "off"},
    "<": {"under": "holds", "at": "off", "over": "off"},
}
WHERE = {"under": 1 - HAIR, "at": 1.0, "over": 1 + HAIR}
# What keeps every other limit of a wording out of the way.
QUIET = dict.fromkeys(nutrients(), 0.0) | {"carbohydrate": 200.0, "energy": 1000.0}
LITTLE = 0.02  # [g]


def rows(text, columns):
    text = text.replace("ANNEX", "Regulation (EC) 1924/2006, Annex")
    return [line.split(None, columns - 1) for line in text.strip().splitlines()]


def cases():
    return [pytest.param(*row, place, id="-".join([*row[:8], place])) for row in rows(LIMITS, 10) for place in WHERE]


def subject(kind, basis, values, group="meat"):
    """A subject of which 100 g is the basis that is tested, and 50 g every other that can be."""
    per_100g = np.array([values[name] for name in nutrients()])
    return Subject(
        name="the food",
        is_dish=kind == "dish",
        per_100g=per_100g,
        serving_grams=100.0 if basis == "serving" else 50.0,
        reference_grams=30.0 if basis == "small" else 100.0 if basis == "reference" else 50.0,
        small_reference=basis == "small",
        liquid=basis == "100_mL",
        grams_per_ml=1.0,
        group=group,
        quality=(1.0,),
    )


def values_at(measured, basis, amount):
    """Content of 100 g, so that the basis holds the amount."""
    values = dict(QUIET)
    if basis == "energy":  # so little of it that no limit by weight is reached
        kcal = LITTLE * (9 if measured.endswith("fat") else 4)
        values[measured] = values["fat" if measured.endswith("fat") else measured] = LITTLE
        values["carbohydrate"] = kcal * (100 / amount - 1) / 4
    elif basis == "acids":
        values[measured] = amount
        values |= {"saturated_fat": 100 - amount, "fat": 100.0, "carbohydrate": 0.0}
    elif basis == "100_kcal":
        values |= {measured: amount / 10, "energy": 10.0}
    else:
        values[measured] = amount * (2 if basis == "small" else 1)
    return values


@pytest.mark.parametrize(
    ("rules", "kind", "wording", "name", "measured", "basis", "must", "limit", "unit", "section", "place"), cases()
)
def test_a_wording_holds_up_to_its_limit_and_no_further(
    rules, kind, wording, name, measured, basis, must, limit, unit, section, place
):
    values = values_at(measured, basis, float(limit) * WHERE[place])
    if basis == "100_g" and name == "fiber":
        values["energy"] = 1e6  # so that it is not fiber by energy
    judged = judge(wording.replace("_", " "), name.strip("-"), subject(kind, basis, values), rules=rules)
    assert (judged.verdict, judged.section) == (KEPT[must][place], section), judged.because
    assert section.removesuffix(", from memory") in judged.because


def compared_cases():
    return [
        pytest.param(*row, f"{unit} {sign}", section, place, id="-".join([*row[:6], place]))
        for *row, unit, sign, section in rows(COMPARED, 9)
        for place in WHERE
    ]


@pytest.mark.parametrize(
    ("rules", "kind", "wording", "name", "measured", "by", "unit", "section", "place"), compared_cases()
)
def test_a_comparison_holds_from_its_difference_on(rules, kind, wording, name, measured, by, unit, section, place):
    # The food it is compared with is high in everything, so that it is not "low" already.
    other = dict.fromkeys(nutrients(), 100.0) | {"energy": 1000.0, "sodium": 1000.0, "protein": 40.0}
    other |= {"fat": 60.0, "carbohydrate": 200.0, "cholesterol": 400.0}
    own = dict(other)
    by = float(by) * WHERE[place]
    if unit == "% less":
        own[measured] = other[measured] * (1 - by / 100)
        if wording == "reduced" and name == "cholesterol":
            own["saturated_fat"] = other["saturated_fat"] = 1.0
    elif unit == "% more":
        own[measured] = other[measured] * (1 + by / 100)
    else:
        own[measured] = other[measured] + by
    subjects = [subject(kind, "100_g" if kind == "dish" else "reference", values) for values in (own, other)]
    judged = judge(wording.replace("_", " "), name.strip("-"), *subjects, rules=rules)
    assert (judged.verdict, judged.section) == (KEPT[">="][place], section), judged.because


def test_light_asks_for_half_the_fat_where_half_the_energy_is_from_fat():
    """21 CFR 101.56(b): a third fewer calories is not enough then."""
    fatty = dict(QUIET) | {"fat": 60.0, "energy": 600.0, "carbohydrate": 10.0}
    third_fewer = fatty | {"fat": 40.0, "energy": 390.0}
    half_the_fat = fatty | {"fat": 30.0, "energy": 390.0}
    other = subject("food", "reference", fatty)
    assert judge("light", "", subject("food", "reference", third_fewer), other).verdict == "off"
    assert judge("light", "", subject("food", "reference", half_the_fat), other).verdict == "holds"


def test_a_light_dish_is_low_in_calories_or_low_in_fat():
    """21 CFR 101.56(d)."""
    low_fat = dict(QUIET) | {"fat": 3.0, "carbohydrate": 60.0, "energy": 400.0}
    low_calorie = dict(QUIET) | {"fat": 10.0, "carbohydrate": 5.0, "energy": 120.0}
    neither = low_calorie | {"energy": 121.0}
    verdicts = [
        judge("light", "", subject("dish", "100_g", values)).verdict for values in (low_fat, low_calorie, neither)
    ]
    assert verdicts == ["holds", "holds", "off"]


@pytest.mark.parametrize(
    ("kind", "basis", "name", "limit"),
    [
        ("food", "reference", "fat", 3),  # 21 CFR 101.54(d): fiber of a food that is not low in fat
        ("food", "small", "fat", 3),
    ],
)
@pytest.mark.parametrize("wording", ["high", "good source"])
def test_a_fiber_wording_asks_for_the_fat_above_three_grams(kind, basis, name, limit, wording):
    fiber = {"high": 8.0, "good source": 4.0}[wording] * (100 / 30 if basis == "small" else 1)
    for amount, said in ((limit, ()), (limit + HAIR, (("fat", "the fat in a serving"),))):
        values = values_at(name, basis, amount) | {"fiber": fiber}
        judged = judge(wording, "fiber", subject(kind, basis, values))
        assert (judged.verdict, judged.say) == ("holds", said)


@pytest.mark.parametrize(
    ("wording", "name", "measured", "kind", "basis", "limit"),
    [
        ("free", "sugars", "energy", "food", "reference", 40),  # 21 CFR 101.60(c)(1): "not a low calorie food"
        ("free", "sugars", "energy", "dish", "100_g", 120),
        ("low", "saturated_fat", "fat", "food", "reference", 3),  # 101.62(c)
        ("low", "cholesterol", "fat", "food", "reference", 13),  # 101.62(d)
        ("low", "cholesterol", "fat", "dish", "serving", 19.5),
        ("free", "cholesterol", "fat", "dish", "serving", 19.5),
    ],
)
def test_what_must_be_said_beside_a_wording_from_above_its_limit(wording, name, measured, kind, basis, limit):
    quiet = {"carbohydrate": 500.0, "energy": 0.0} if measured != "energy" else {}
    for factor, wanted in ((1, False), (1 + HAIR, True)):
        values = values_at(measured, basis, limit * factor) | quiet
        judged = judge(wording, name, subject(kind, basis, values))
        assert judged.verdict == "holds", judged.because
        assert (measured in {what for what, _ in judged.say}) == wanted


@pytest.mark.parametrize(
    ("measured", "food", "dish"),
    # 21 CFR 101.13(h): fat read in FDA's guide, the other three from memory
    [("fat", 13, 19.5), ("saturated_fat", 4, 6), ("cholesterol", 60, 90), ("sodium", 480, 720)],
)
@pytest.mark.parametrize("kind", ["food", "dish"])
def test_a_label_points_to_what_is_above_the_disclosure_level(measured, food, dish, kind):
    limit = food if kind == "food" else dish
    for factor, wanted in ((1, False), (1 + HAIR, True)):
        values = values_at(measured, "serving", limit * factor) | {"carbohydrate": 500.0, "energy": 0.0}
        judged = judge("free", "sugars", subject(kind, "serving", values))
        assert (len(judged.advice) == 1) == wanted, judged.advice
