"""Every regulated wording just under, at and just over its limit, with the section of law beside it.

The limits were typed here from the rules, not taken from the data tables. Read for them: 21 CFR 101.54-101.62 in
FDA's "A Food Labeling Guide" (2009), appendix A, in the 2006 and 2019 editions of the CFR and in the Institute of
Medicine's reports on front-of-package labeling; Regulation (EC) 1924/2006, Annex. A row that ends in "from memory" is
carried from memory.
"""

from dataclasses import replace

import numpy as np

from kit.food.nutrients import nutrient_index, nutrients
from kit.rules.claims import judge
from kit.rules.dish_kind import DishKind
from kit.rules.subject import MIXED_PIECE, Subject

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
SOUP_GRAMS = 245.0  # 21 CFR 101.12(b)
PIECE_GRAMS = 140.0  # the same: mixed dishes not measured by the cup


def rows(text, columns):
    text = text.replace("ANNEX", "Regulation (EC) 1924/2006, Annex")
    return [line.split(None, columns - 1) for line in text.strip().splitlines()]


def subject(kind, basis, values, group="meat"):
    """A subject of which 100 g is the basis that is tested, and 50 g every other that can be."""
    usual = 30.0 if basis == "small" else 100.0 if basis == "reference" else 50.0
    made = Subject(
        name="the food",
        is_dish=kind in ("dish", "meal"),
        per_100g=array(values),
        serving_grams=100.0 if basis == "serving" else 50.0,
        reference=(usual, usual),
        small_reference=basis == "small",
        liquid=basis == "100_mL",
        grams_per_ml=1.0,
        group=group,
        quality=(1.0,),
        added_sodium=(values["sodium"],) * 2,
        kind=DishKind("main dish" if kind == "dish" else "meal", "") if kind in ("dish", "meal") else None,
    )
    if kind == "soup":  # a soup is judged as a food, by its own reference amount
        share = SOUP_GRAMS / usual if basis in ("reference", "small") else 1.0
        return replace(
            made,
            per_100g=made.per_100g / share if share != 1 else made.per_100g,
            reference=(SOUP_GRAMS, SOUP_GRAMS) if share != 1 else made.reference,
            group="",
            kind=DishKind("soup", "", references=("soup",)),
        )
    return made


def array(values):
    return np.array([values[name] for name in nutrients()])


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


def for_eu(values):
    """The same with as much carbohydrate as makes its energy by the EU's factors: Annex XIV of 1169/2011."""
    other = 4 * values["protein"] + 9 * values["fat"] + 2 * values["fiber"]
    return values | {"carbohydrate": values["fiber"] + (values["energy"] - other) / 4}


def kinds_of(rules, kind, wording, basis):
    """A US rule for a food is a soup's too, but for those kept for meat and fish, and for small amounts."""
    return (
        ("food", "soup") if (rules, kind) == ("us", "food") and "lean" not in wording and basis != "small" else (kind,)
    )


def test_a_wording_holds_up_to_its_limit_and_no_further():
    wrong = []
    for rules, stated, wording, name, measured, basis, must, limit, _unit, section in rows(LIMITS, 10):
        for kind in kinds_of(rules, stated, wording, basis):
            for place, factor in WHERE.items():
                values = values_at(measured, basis, float(limit) * factor)
                if basis == "100_g" and name == "fiber":
                    values["energy"] = 1e6  # so that it is not fiber by energy
                if rules == "eu" and basis not in ("energy", "acids"):
                    values = for_eu(values)
                judged = judge(wording.replace("_", " "), name.strip("-"), subject(kind, basis, values), rules)
                expected = (KEPT[must][place], section)
                if (judged.verdict, judged.section) != expected or section.split(", from")[0] not in judged.because:
                    wrong.append((rules, kind, wording, name, measured, basis, place, expected, judged))
    assert not wrong, "\n".join(map(str, wrong))


def test_a_comparison_holds_from_its_difference_on():
    # The food it is compared with is high in everything, so that it is not "low" already.
    other = dict.fromkeys(nutrients(), 100.0) | {"energy": 1500.0, "sodium": 1000.0, "protein": 40.0}
    other |= {"fat": 60.0, "carbohydrate": 200.0, "cholesterol": 400.0}
    wrong = []
    for rules, stated, wording, name, measured, by, unit, sign, section in rows(COMPARED, 9):
        for kind in kinds_of(rules, stated, wording, "reference"):
            for place, factor in WHERE.items():
                own, base = dict(other), dict(other)
                amount = float(by) * factor
                if sign == "less" and unit == "%":
                    own[measured] = other[measured] * (1 - amount / 100)
                elif unit == "%":
                    own[measured] = other[measured] * (1 + amount / 100)
                else:
                    own[measured] = other[measured] + amount
                if wording == "reduced" and name == "cholesterol":
                    own["saturated_fat"] = base["saturated_fat"] = 1.0
                if rules == "eu":
                    own, base = for_eu(own), for_eu(base)
                pair = [subject(kind, "100_g" if kind == "dish" else "reference", values) for values in (own, base)]
                if kind == "soup":  # the table's amounts are those of the amount usually eaten
                    pair = [replace(one, added_sodium=(one.value("sodium"),) * 2) for one in pair]
                judged = judge(wording.replace("_", " "), name.strip("-"), pair[0], rules, pair[1])
                if (judged.verdict, judged.section) != (KEPT[">="][place], section):
                    wrong.append((rules, kind, wording, name, measured, place, judged))
    assert not wrong, "\n".join(map(str, wrong))


def test_a_range_across_a_limit_cannot_be_told_and_one_beside_it_can():
    """The same limits once more, for a dish whose amount is known to 10 % either way."""
    wrong = []
    for rules, kind, wording, name, measured, basis, must, limit, _unit, _section in rows(LIMITS, 10):
        if basis in ("energy", "acids", "100_kcal"):
            continue  # shares: below
        for factor, told in ((1.0, False), (1.2, True), (0.8, True)):
            values = values_at(measured, basis, float(limit) * factor)
            if basis == "100_g" and name == "fiber":
                values["energy"] = 1e6
            if rules == "eu":
                values = for_eu(values)
            exact = subject(kind, basis, values)
            spread = np.ones(len(values))
            spread[nutrient_index(measured)] = 1.1
            unsure = replace(exact, low=exact.per_100g / spread, high=exact.per_100g * spread)
            judged = judge(wording.replace("_", " "), name.strip("-"), unsure, rules)
            if wording == "good_source" and factor != 1:
                continue  # its other end is a limit of its own
            if (judged.verdict != "cannot tell") != told:
                wrong.append((rules, kind, wording, measured, basis, must, factor, judged))
    assert not wrong, "\n".join(map(str, wrong))


def test_a_weight_that_is_not_sure_makes_100_grams_unsure_and_leaves_a_serving_alone():
    values = values_at("sodium", "100_g", 138.0)
    dish = replace(subject("dish", "100_g", values), heavier=(0.9, 1.1))
    assert judge("low", "sodium", dish).verdict == "cannot tell"
    assert judge("low", "sodium", replace(dish, heavier=(1.0, 1.0))).verdict == "holds"
    assert (
        judge("free", "sodium", replace(dish, per_100g=array(values_at("sodium", "serving", 9.8)))).verdict == "holds"
    )


def test_what_may_be_eaten_in_several_amounts_holds_only_by_all_of_them():
    """A bar of 40 g and a cake of 125 g: 6 g of fiber in 100 g are 9 and 27 % of a day."""
    values = values_at("fiber", "reference", 6.0)
    assert judge("high", "fiber", replace(subject("food", "reference", values), reference=(40, 125))).verdict == (
        "cannot tell"
    )
    assert (
        judge("high", "fiber", replace(subject("food", "reference", values), reference=(110, 125))).verdict == "holds"
    )
    assert judge("high", "fiber", replace(subject("food", "reference", values), reference=(40, 80))).verdict == "off"


def test_light_asks_for_half_the_fat_where_half_the_energy_is_from_fat():
    """21 CFR 101.56(b): a third fewer calories is not enough then."""
    fatty = dict(QUIET) | {"fat": 60.0, "energy": 600.0, "carbohydrate": 10.0}
    third_fewer = fatty | {"fat": 40.0, "energy": 390.0}
    half_the_fat = fatty | {"fat": 30.0, "energy": 390.0}
    other = subject("food", "reference", fatty)
    assert judge("light", "", subject("food", "reference", third_fewer), than=other).verdict == "off"
    assert judge("light", "", subject("food", "reference", half_the_fat), than=other).verdict == "holds"


def test_light_is_barred_against_a_food_that_is_low_in_fat_and_calories_both():
    """21 CFR 101.56(b): low in one of them only is no bar."""
    lean_but_rich = dict(QUIET) | {"fat": 2.0, "energy": 600.0, "carbohydrate": 150.0}
    low_in_both = dict(QUIET) | {"fat": 2.0, "energy": 39.0, "carbohydrate": 5.0}
    for base, verdict in ((lean_but_rich, "holds"), (low_in_both, "off")):
        own = base | {"fat": base["fat"] / 2, "energy": base["energy"] / 2}
        judged = judge("light", "", subject("food", "reference", own), than=subject("food", "reference", base))
        assert judged.verdict == verdict, judged.because


def test_a_light_dish_is_low_in_calories_or_low_in_fat_and_says_which():
    """21 CFR 101.56(d)."""
    low_fat = dict(QUIET) | {"fat": 3.0, "carbohydrate": 60.0, "energy": 400.0}
    low_calorie = dict(QUIET) | {"fat": 10.0, "carbohydrate": 5.0, "energy": 120.0}
    neither = low_calorie | {"energy": 121.0}
    judged = [judge("light", "", subject("dish", "100_g", values)) for values in (low_fat, low_calorie, neither)]
    assert [one.verdict for one in judged] == ["holds", "holds", "off"]
    assert [[(b.what, b.nutrient) for b in one.beside] for one in judged] == [
        [("which", "fat")],
        [("which", "energy")],
        [],
    ]


# wording, nutrient, measured, kind, basis, limit, what must be said beside it from above the limit on
BESIDE = """
high         fiber         fat         food reference 3    amount   21 CFR 101.54(d)
high         fiber         fat         soup reference 3    amount   21 CFR 101.54(d)
high         fiber         fat         food small     3    amount   21 CFR 101.54(d)
good_source  fiber         fat         food reference 3    amount   21 CFR 101.54(d)
good_source  fiber         fat         food small     3    amount   21 CFR 101.54(d)
free         sugars        energy      food reference 40   not_low  21 CFR 101.60(c)(1)
free         sugars        energy      soup reference 40   not_low  21 CFR 101.60(c)(1)
free         sugars        energy      dish 100_g     120  not_low  21 CFR 101.60(c)(1)
low          saturated_fat fat         food reference 3    amount   21 CFR 101.62(c)
low          saturated_fat fat         dish 100_g     3    amount   21 CFR 101.62(c)
low          cholesterol   fat         food reference 13   amount   21 CFR 101.62(d)
low          cholesterol   fat         soup reference 13   amount   21 CFR 101.62(d)
low          cholesterol   fat         dish serving   19.5 amount   21 CFR 101.62(d)
low          cholesterol   fat         meal serving   26   amount   21 CFR 101.62(d)
free         cholesterol   fat         dish serving   19.5 amount   21 CFR 101.62(d)
free         cholesterol   fat         meal serving   26   amount   21 CFR 101.62(d)
"""


def test_what_must_be_said_beside_a_wording_from_above_its_limit():
    wrong = []
    for wording, name, measured, kind, basis, limit, what, section in rows(BESIDE, 8):
        quiet = {"carbohydrate": 500.0, "energy": 0.0} if measured != "energy" else {}
        fiber = {"high": 8.0, "good_source": 4.0}.get(wording, 0.0) * (100 / 30 if basis == "small" else 1)
        for factor, wanted in ((1, False), (1 + HAIR, True)):
            values = values_at(measured, basis, float(limit) * factor) | quiet | {"fiber": fiber}
            judged = judge(wording.replace("_", " "), name, subject(kind, basis, values))
            said = (measured, what.replace("_", " "), section) in {
                (b.nutrient, b.what, b.section) for b in judged.beside
            }
            if (judged.verdict, said) != ("holds", wanted):
                wrong.append((wording, name, measured, kind, basis, factor, judged))
    assert not wrong, "\n".join(map(str, wrong))


def test_a_comparison_says_by_how_much_and_than_what():
    """21 CFR 101.13(j)(2)."""
    base = dict(QUIET) | {"sodium": 1000.0}
    own = base | {"sodium": 700.0}
    other = replace(subject("food", "reference", base), name="the usual broth")
    judged = judge("reduced", "sodium", subject("food", "reference", own), than=other)
    assert [(b.what, b.section) for b in judged.beside] == [("difference", "21 CFR 101.13(j)(2)")]
    assert "30 percent less sodium than the usual broth" in judged.beside[0].words


def test_a_percentage_said_with_a_wording_is_compared_with_the_number():
    """21 CFR 101.62(b)(6): 2.6 g of fat in 100 g is 97 % fat free, and neither 99 nor 90 %."""
    made = subject("food", "reference", values_at("fat", "reference", 2.6))
    verdicts = {said: judge("percent fat free", "fat", made, said=said).verdict for said in (97, 97.4, 99, 90)}
    assert verdicts == {97: "holds", 97.4: "holds", 99: "off", 90: "off"}


def test_lean_has_limits_of_its_own_for_a_mixed_dish_that_no_cup_measures():
    """21 CFR 101.62(e)(2), from memory: under 8 g of fat, 3.5 g saturated, under 80 mg of cholesterol in 140 g."""
    wrong = []
    for measured, limit, must in (("fat", 8, "<"), ("saturated_fat", 3.5, "<="), ("cholesterol", 80, "<")):
        for place, factor in WHERE.items():
            values = values_at(measured, "reference", limit * factor * 100 / PIECE_GRAMS)
            pie = replace(subject("food", "reference", values, group=MIXED_PIECE), reference=(PIECE_GRAMS, PIECE_GRAMS))
            judged = judge("lean", "", pie)
            if (judged.verdict, judged.section) != (KEPT[must][place], "21 CFR 101.62(e)(2), from memory"):
                wrong.append((measured, place, judged))
    assert not wrong, "\n".join(map(str, wrong))


def test_a_label_points_to_what_is_above_the_disclosure_level():
    """21 CFR 101.13(h): fat read in FDA's guide, the other three from memory."""
    wrong = []
    levels = {
        "fat": (13, 19.5, 26),
        "saturated_fat": (4, 6, 8),
        "cholesterol": (60, 90, 120),
        "sodium": (480, 720, 960),
    }
    for measured, limits in levels.items():
        for kind, limit in zip(("food", "dish", "meal"), limits, strict=True):
            for factor, wanted in ((1, 0), (1 + HAIR, 1)):
                values = values_at(measured, "serving", limit * factor) | {"carbohydrate": 500.0, "energy": 0.0}
                judged = judge("free", "sugars", subject(kind, "serving", values))
                if len(judged.advice) != wanted:
                    wrong.append((measured, kind, factor, judged.advice))
    assert not wrong, wrong
