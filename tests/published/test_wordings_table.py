"""The wordings that rules define, and their limits, as data/wordings.csv and data/wording_tests.csv write them."""

import re

from each import for_each

from kit import files
from kit.food.cells import read_rows
from kit.food.nutrients import nutrients
from kit.rules.reference import daily_values

# What a test of a wording may measure beside a nutrient.
QUANTITIES = {"", "corrected_protein", "unsaturated_fat", "added_sodium"}
CELL_IS_A_NUMBER = re.compile(r"-?\d+(\.\d+)?")


def table(name):
    return read_rows(files.bundled(f"data/{name}"))


def cell_list(cell):
    return [item for item in cell.split("; ") if item]


def test_each_wording_has_tests_or_says_why_it_has_none():
    tested = {row["rule"] for row in table("wording_tests.csv")}
    for row in table("wordings.csv"):
        without = row["defined"] == "no" or row["food_in_it"] == "yes"
        assert (row["rule"] in tested) != without, row["rule"]
        assert not without or row["note"], row["rule"]
    assert tested <= {row["rule"] for row in table("wordings.csv")}


def test_wordings_are_written_in_their_own_vocabulary():
    known = set(nutrients()) | {"vitamins_minerals"}
    for row in table("wordings.csv"):
        assert row["rules"] in ("us", "eu")
        assert row["rule"].startswith(f"{row['rules']}-")
        assert set(cell_list(row["subject"])) <= {"food", "dish"}
        assert set(cell_list(row["nutrients"])) <= known, row["rule"]
        assert bool(row["said_as"]) == (row["wording"] != "any claim")
        for column in ("defined", "needs_comparison", "other_not_low", "food_in_it"):
            assert row[column] in ("yes", "no"), row["rule"]


def test_tests_of_wordings_are_written_in_their_own_vocabulary():
    bases = {"reference", "serving", "50 g", "100 g", "100 mL", "100 kcal", "energy", "fatty acids"}
    units = {
        "g",
        "mg",
        "kcal",
        "% daily value",
        "% daily value more",
        "% less",
        "% more",
        "% of energy",
        "% of fatty acids",
    }
    for row in table("wording_tests.csv"):
        assert row["role"] in ("holds", "say")
        assert row["nutrient"] in set(nutrients()) | QUANTITIES, row
        assert row["basis"] in bases, row
        assert row["when"] in ("", "small reference amount", "solid", "liquid", "main dish", "meal"), row
        assert row["comparison"] in ("at least", "at most", "above", "below", "between"), row
        assert row["unit"] in units, row
        assert CELL_IS_A_NUMBER.fullmatch(row["threshold"]), row
        assert bool(row["upper"]) == (row["comparison"] == "between"), row
        assert bool(row["say"]) == (row["role"] == "say"), row
        assert (row["basis"] == "50 g") == (row["when"] == "small reference amount"), row
        if row["nutrient"] in nutrients() and row["unit"] in ("g", "mg", "kcal"):
            assert row["unit"] == nutrients()[row["nutrient"]].unit, row


def test_comparisons_are_asked_for_exactly_where_a_test_needs_the_other_food():
    relative = {row["rule"] for row in table("wording_tests.csv") if row["unit"].endswith((" less", " more"))}
    assert relative == {row["rule"] for row in table("wordings.csv") if row["needs_comparison"] == "yes"}


@for_each(
    ("rule", "nutrient", "basis", "comparison", "threshold", "unit"),
    [
        ("us-high-fiber", "fiber", "reference", "at least", 20, "% daily value"),  # 21 CFR 101.54(b)
        ("us-good-source-fiber", "fiber", "reference", "between", 10, "% daily value"),  # 101.54(c)
        ("us-low-sodium-food", "sodium", "reference", "at most", 140, "mg"),  # 101.61(b)(4)
        ("us-low-sodium-food", "sodium", "50 g", "at most", 140, "mg"),
        ("us-very-low-sodium-food", "sodium", "reference", "at most", 35, "mg"),  # 101.61(b)(2)
        ("us-free-sodium-food", "sodium", "serving", "below", 5, "mg"),  # 101.61(b)(1)
        ("us-low-fat-food", "fat", "reference", "at most", 3, "g"),  # 101.62(b)(2)
        ("us-low-fat-dish", "fat", "100 g", "at most", 3, "g"),  # 101.62(b)(3)
        ("us-low-fat-dish", "fat", "energy", "at most", 30, "% of energy"),
        ("us-low-energy-food", "energy", "reference", "at most", 40, "kcal"),  # 101.60(b)(2)
        ("us-low-energy-dish", "energy", "100 g", "at most", 120, "kcal"),  # 101.60(b)(3)
        ("us-low-saturated-fat-food", "saturated_fat", "energy", "at most", 15, "% of energy"),  # 101.62(c)(2)
        ("us-low-cholesterol-food", "saturated_fat", "reference", "at most", 2, "g"),  # 101.62(d)(2)
        ("us-reduced-energy-food", "energy", "reference", "at least", 25, "% less"),  # 101.60(b)(4)
        ("eu-low-fat", "fat", "100 g", "at most", 3, "g"),  # Regulation (EC) 1924/2006, Annex, here and below
        ("eu-low-fat", "fat", "100 mL", "at most", 1.5, "g"),
        ("eu-source-fiber", "fiber", "100 g", "at least", 3, "g"),
        ("eu-high-fiber", "fiber", "100 kcal", "at least", 3, "g"),
        ("eu-low-sodium", "sodium", "100 g", "at most", 120, "mg"),
        ("eu-high-protein", "protein", "energy", "at least", 20, "% of energy"),
        ("eu-source-protein", "protein", "energy", "at least", 12, "% of energy"),  # from memory
        ("eu-low-sugars", "sugars", "100 g", "at most", 5, "g"),
    ],
)
def test_limits_of_wordings_are_those_of_the_rules(rule, nutrient, basis, comparison, threshold, unit):
    found = [
        (row["comparison"], float(row["threshold"]), row["unit"])
        for row in table("wording_tests.csv")
        if (row["rule"], row["nutrient"], row["basis"], row["role"]) == (rule, nutrient, basis, "holds")
    ]
    assert found == [(comparison, threshold, unit)]


def test_a_reference_to_a_daily_value_is_possible_for_what_is_said():
    for row in table("wordings.csv"):
        for name in cell_list(row["nutrients"]):
            percents = [
                t["unit"] for t in table("wording_tests.csv") if t["rule"] == row["rule"] and "daily value" in t["unit"]
            ]
            if percents and name != "vitamins_minerals":
                assert name in daily_values(row["rules"]), row["rule"]
