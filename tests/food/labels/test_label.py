"""A food typed in from its package label."""

import csv
import math

import numpy as np
import pytest
from each import for_each
from hypothesis import given
from hypothesis import strategies as st

from kit.errors import KitError, LabelError, UnknownNameError
from kit.food.composition import foods, own_table
from kit.food.labels.label import Label
from kit.food.labels.label_checks import faults
from kit.food.labels.label_food import food_from_table, food_of, from_table
from kit.food.labels.label_rounding import Printed, declared
from kit.food.labels.label_text import read_label
from kit.food.labels.own_foods import delete, keep, kept, restore
from kit.food.labels.printed import printed_amount, printed_percent
from kit.food.nutrients import nutrient_index

# FDA's sample label, "What's New with the Nutrition Facts Label" (burden document 0910-0497, appendix III).
SAMPLE = {
    "energy": 230,
    "fat": "8 g",
    "saturated_fat": "1 g",
    "trans_fat": 0,
    "cholesterol": "0 mg",
    "sodium": "160 mg",
    "carbohydrate": "37 g",
    "fiber": "4 g",
    "sugars": "12 g",
    "added_sugars": "10 g",
    "protein": "3 g",
    "vitamin_d": "2 mcg",
    "calcium": "260 mg",
    "iron": "8 mg",
    "potassium": "235 mg",
}
SAMPLE_PERCENT = {"fat": 10, "sodium": 7, "fiber": 14, "vitamin_d": 10, "calcium": 20, "iron": 45, "potassium": 6}


def label(**changes):
    facts = {"name": "Oat squares", "serving": "2/3 cup (55 g)", "amounts": SAMPLE, "daily_percent": SAMPLE_PERCENT}
    lines = {name: value for name, value in changes.items() if name not in Label.__dataclass_fields__}
    facts |= {name: value for name, value in changes.items() if name in Label.__dataclass_fields__}
    facts["amounts"] = {name: value for name, value in {**facts["amounts"], **lines}.items() if value is not None}
    return Label(**facts)


# 21 CFR 101.9(c)(1) to (c)(8), backwards: what is printed, and the least and most that is printed so.
@for_each(
    ("name", "printed", "low", "high"),
    [
        *(("energy", 0, 0, 5), ("energy", 5, 5, 7.5), ("energy", 45, 42.5, 47.5), ("energy", 50, 47.5, 55)),
        *(("energy", 60, 55, 65), ("energy", 230, 225, 235), ("energy", "232", 231.5, 232.5)),
        *(("fat", 0, 0, 0.5), ("fat", 0.5, 0.5, 0.75), ("fat", "4.5 g", 4.25, 4.75), ("fat", 5, 4.75, 5.5)),
        *(("fat", 8, 7.5, 8.5), ("saturated_fat", 1, 0.75, 1.25), ("fat", 8.3, 8.25, 8.35)),
        *(("cholesterol", 0, 0, 2), ("cholesterol", "less than 5 mg", 2, 5), ("cholesterol", 5, 5, 7.5)),
        *(("cholesterol", 35, 32.5, 37.5), ("sodium", 0, 0, 5), ("sodium", 5, 5, 7.5), ("sodium", 135, 132.5, 137.5)),
        *(("sodium", 140, 137.5, 145), ("sodium", 160, 155, 165), ("sodium", "1,240 mg", 1235, 1245)),
        *(("fiber", 0, 0, 0.5), ("fiber", "<1", 0.5, 1), ("fiber", "Less than 1g", 0.5, 1), ("sugars", 1, 1, 1.5)),
        *(("carbohydrate", 37, 36.5, 37.5), ("protein", 1, 0.5, 1.5), ("protein", 3, 2.5, 3.5)),
        *(("iron", 8, 7.95, 8.05), ("calcium", 260, 255, 265), ("vitamin_c", 9, 8.5, 9.5)),
        *(("potassium", 235, 234.5, 235.5), ("iron", 0, 0, 0.36), ("sodium", "0.16 g", 155, 165)),
        *(("vitamin_d", "80 IU", 1.9875, 2.0125), ("fiber", "less than 2 g", 0, 2)),
    ],
)
def test_a_printed_amount_stands_for_all_that_is_rounded_to_it(name, printed, low, high):
    amount = printed_amount(name, printed)
    assert (amount.low, amount.high) == (pytest.approx(low), pytest.approx(high))
    assert amount.low <= amount.value <= amount.high


# 21 CFR 101.9(c)(8)(iii): by 2 % to 10, by 5 % to 50, by 10 % above; below 2 % 0, or 2 % from 1 % on.
@for_each(
    ("name", "percent", "low", "high"),
    [
        *(("calcium", 0, 0, 2), ("calcium", 2, 1, 3), ("calcium", 8, 7, 9), ("calcium", 10, 9, 12.5)),
        *(
            ("calcium", 20, 17.5, 22.5),
            ("calcium", 50, 47.5, 55),
            ("calcium", 60, 55, 65),
            ("calcium", "7 %", 6.5, 7.5),
        ),
        ("sodium", 7, 6.5, 7.5),
    ],
)
def test_a_printed_percentage_stands_for_an_amount(name, percent, low, high):
    day = {"calcium": 1300, "sodium": 2300}[name]  # 21 CFR 101.9(c)(8)(iv) and (c)(9)
    amount = printed_percent(name, percent)
    assert (amount.low, amount.high) == (pytest.approx(low * day / 100), pytest.approx(high * day / 100))


@given(
    st.sampled_from(
        ["energy", "fat", "cholesterol", "sodium", "carbohydrate", "protein", "iron", "calcium", "vitamin_c"]
    ),
    st.floats(0, 900),
)
def test_whatever_the_amount_it_lies_in_the_range_of_what_is_printed_for_it(name, amount):
    read = printed_amount(name, declared(name, amount))
    assert read.low - 1e-6 <= amount <= read.high + 1e-6


def test_per_100_grams_is_the_serving_scaled():
    food = food_of(label())
    assert food["energy"] == pytest.approx(230 / 0.55)
    assert food["sodium"] == pytest.approx(160 / 0.55)
    assert food["fat"] == pytest.approx(8 / 0.55)
    low, high = label().range_per_100g()
    at = nutrient_index("fat")
    assert (low[at], high[at]) == (pytest.approx(7.5 / 0.55), pytest.approx(8.5 / 0.55))


def test_what_is_not_printed_is_missing_and_a_printed_zero_is_zero():
    food = food_of(label(vitamin_d=None, daily_percent={}))
    assert math.isnan(food["vitamin_d"])
    assert math.isnan(food["water"])
    assert food["cholesterol"] == 0
    low, high = label().range_per_100g()
    at = nutrient_index("cholesterol")
    assert (low[at], high[at]) == (0, pytest.approx(2 / 0.55))  # 0 mg may be up to 2 mg, 101.9(c)(3)


def test_only_a_percentage_gives_the_amount_by_the_daily_value():
    food = food_of(label(calcium=None))
    assert food["calcium"] == pytest.approx(0.20 * 1300 / 0.55)


def test_the_deviation_joins_rounding_with_the_labels_tolerance():
    food = food_of(label())
    at = nutrient_index("saturated_fat")
    rounding = 0.5 / math.sqrt(12) / 1  # 0.75 to 1.25 g, any as likely
    assert food.relative_sd[at] == pytest.approx(math.hypot(rounding, 0.10))  # 21 CFR 101.9(g): a fifth is two of them
    assert food.relative_sd[nutrient_index("potassium")] == pytest.approx(0.10, abs=0.001)
    assert np.isnan(food.relative_sd[nutrient_index("water")])
    assert food.relative_sd[nutrient_index("cholesterol")] == pytest.approx(0.10)


@for_each(
    ("serving", "container", "measures"),
    [
        ("2/3 cup (55 g)", None, [("cup", 82.5)]),
        ("2/3 cup (55g)", 8, [("cup", 82.5), ("package", 440)]),
        ("2 Tbsp. (30 g)", None, [("tbsp", 15)]),
        ("1 slice 28 g", None, [("slice", 28)]),
        ("3 pieces (1 oz/28 g)", None, [("piece", 9.33333)]),
        ("1 package (40 g)", 1, [("package", 40)]),
        ("55 g", None, []),
        (55, 2, [("package", 110)]),
    ],
)
def test_the_serving_and_the_container_become_household_measures(serving, container, measures):
    grams = label(serving=serving).serving_grams
    amounts = {"energy": round(4 * grams, -1), "carbohydrate": round(grams)}
    food = food_of(Label("Crispbread", serving, amounts, servings_per_container=container))
    assert [(row.measure, pytest.approx(row.grams)) for row in food.measures] == measures


def test_wheat_brings_gluten():
    assert food_of(label(allergens=("wheat", "milk"))).allergens == ("wheat", "milk", "gluten")


def test_a_right_label_has_no_faults():
    assert faults(label()) == ()


@for_each(
    ("changes", "words"),
    [
        ({"saturated_fat": 9}, "saturated fat come to 9 g, more than the 8 g of fat that they are part of; check"),
        (
            {"fiber": 30, "daily_percent": {}},
            "fiber and sugars come to 42 g|sugars and fiber come to 42 g, more than the 37 g",
        ),
        ({"added_sugars": 14}, "added sugars come to 14 g, more than the 12 g of sugars"),
        (
            {"energy": 2300},
            "energy is 2,300 kcal in 55 g, more than pure fat holds; check the calories and the serving",
        ),
        (
            {"energy": 320},
            "320 kcal are printed, but 3 g protein, 8 g fat and 37 g carbohydrate give about 232 kcal by 4, 9",
        ),
        ({"energy": 120}, "120 kcal are printed"),
        (
            {"carbohydrate": 53, "energy": 300},
            "protein, fat and carbohydrate come to 62.5 g or more in a serving of 55 g",
        ),
        (
            {"sodium": "160 g", "daily_percent": {}},
            "sodium is 160,000 mg in a serving of 55 g; check the amount and its unit",
        ),
        (
            {"calcium": 20},
            r"calcium of 20 mg is 2 % of the daily value, not 20 %; check both, or leave the percentage out",
        ),
        ({"fat": -8}, 'fat is "-8"; write it as printed, such as 8, "8 g" or "less than 1 g"'),
        ({"fat": "a lot"}, 'fat is "a lot"; write it as printed'),
        ({"fat": "8 kcal"}, 'fat is in "kcal"; write it in g'),
        ({"vitamin_a": "500 IU"}, r'vitamin a \(rae\) is in "IU"; write it in µg'),
        ({"protien": 3}, 'no nutrient "protien"; did you mean "protein"?'),
        ({"daily_percent": {"sugars": 10}}, "sugars has no daily value; write its amount instead of a percentage"),
        ({"daily_percent": {"iron": -3}}, 'iron is "-3" percent of the daily value; write a number such as 10'),
        ({"serving": "2/3 cup"}, 'serving is "2/3 cup"; write its weight too, such as "2/3 cup (55 g)", or weigh one'),
        ({"serving": 0}, "a serving of 0 g makes no sense"),
        ({"servings_per_container": -2}, "-2 servings per container makes no sense"),
        ({"name": "  "}, "it has no name"),
        ({"allergens": ("milc",)}, 'no allergen "milc"; did you mean "milk"?'),
        ({"amounts": {}, "daily_percent": {}}, "nothing is typed in"),
    ],
)
def test_each_fault_is_told_in_a_sentence(changes, words):
    found = faults(label(**changes))
    assert len(found) == 1
    assert any(part.replace("\\", "") in found[0] for part in words.split("|"))
    with pytest.raises(LabelError, match="label"):
        food_of(label(**changes))


@pytest.mark.parametrize(
    "changes",
    [
        {"saturated_fat": 8, "daily_percent": {}},  # the whole and its part both rounded
        {"fiber": 26, "energy": 150, "daily_percent": {}},  # fiber may be left out of the calories, 101.9(c)(1)(i)(C)
        {"energy": 270},  # 15 % and the rounding of the parts
        {"sugar_alcohol": 20, "energy": 160},
        {"alcohol": 5, "energy": 300},
    ],
)
def test_what_rounding_or_the_law_allows_is_no_fault(changes):
    assert faults(label(**changes)) == ()


def test_all_faults_of_a_label_come_at_once():
    with pytest.raises(LabelError) as caught:
        food_of(label(fat="x", sodium="y", serving="a cup"))
    assert [line.split(":")[0] for line in str(caught.value).splitlines()] == ['label "Oat squares"'] * 3


def test_an_entry_of_a_talk_file_becomes_a_food():
    table = {
        "name": "Oat squares",
        "serving": "2/3 cup (55 g)",
        "servings_per_container": 8,
        "other_names": ["oat cereal"],
    }
    food = food_from_table(table | {"amounts": SAMPLE, "daily_percent": SAMPLE_PERCENT, "vegetarian": True})
    assert food.key == "oat-squares"
    assert food.other_names == ("oat cereal",)
    assert food.vegetarian is True
    assert food["protein"] == pytest.approx(3 / 0.55)
    assert from_table(table | SAMPLE) == from_table(table | {"amounts": SAMPLE})


def test_every_fault_of_an_entry_is_told_on_its_own_line():
    entry = {"serving": True, "amuonts": {}, "allergens": "milk", "vegetarian": "yes", "servings_per_container": "8"}
    with pytest.raises(LabelError) as caught:
        from_table(entry)
    assert str(caught.value).splitlines() == [
        "name is missing; write it as the package prints it",
        'serving is "True"; write a text or a number',
        'no entry "amuonts"; did you mean "amounts"?',
        'allergens is "milk"; write a list in brackets',
        'vegetarian is "yes"; write true or false',
        'servings_per_container is "8"; write a number',
    ]


TEXT = """Oat squares
Nutrition Facts
8 servings per container
Serving size    2/3 cup (55g)
Amount per serving
Calories 230
% Daily Value*
Total Fat 8g 10%
  Saturated Fat 1g 5%
  Trans Fat 0g
Cholesterol 0mg 0%
Sodium 160mg 7%
Total Carbohydrate 37g 13%
  Dietary Fiber 4g 14%
  Total Sugars 12g
    Includes 10g Added Sugars 20%
Protein 3g
Vitamin D 2mcg 10%
Calcium 260mg 20%
Iron 8mg 45%
Potassium 235mg 6%
Contains: Wheat, Milk and Soybeans.
"""


def test_a_label_typed_as_the_package_prints_it_is_the_same_food():
    read = read_label(TEXT)
    assert np.allclose(food_of(read).per_100g, food_of(label()).per_100g, equal_nan=True)
    assert read.servings_per_container == 8
    assert read.allergens == ("wheat", "milk", "soy")
    assert {name: float(value) for name, value in read.daily_percent.items()}.items() >= SAMPLE_PERCENT.items()
    assert read.printed["added_sugars"] == Printed(10, 9.5, 10.5)


def test_a_line_of_text_that_is_not_understood_is_named():
    with pytest.raises(LabelError, match=r'line 6: "Calroies 230" is not understood; .*; did you mean "calories"'):
        read_label(TEXT.replace("Calories", "Calroies"))
    with pytest.raises(LabelError, match="the label is empty"):
        read_label(" \n ")


@pytest.fixture
def own(tmp_path, monkeypatch):
    monkeypatch.setenv("TALK_KIT_HOME", str(tmp_path / "own"))
    return own_table()


def test_a_kept_food_is_found_like_the_kits_own(own):
    food = keep(label(servings_per_container=8, allergens=("wheat",)))
    read = foods()["oat-squares"]
    assert np.allclose(read.per_100g, food.per_100g, rtol=1e-5, equal_nan=True)
    assert [(row.measure, row.grams) for row in read.measures] == [("cup", 82.5), ("package", 440)]
    assert read.allergens == ("wheat", "gluten")
    assert read.source == "package label"
    assert read.vegetarian is None


def test_a_food_without_an_allergen_list_is_to_be_checked_also_when_it_is_read_again(own):
    assert keep(label(origin="plant", vegetarian=True, allergens=())).check_package
    assert foods()["oat-squares"].check_package


def test_a_kept_label_can_be_corrected_deleted_and_brought_back(own):
    keep(label(servings_per_container=8, allergens=("wheat",)))
    (found,) = kept()
    assert found.label == label(servings_per_container=8, allergens=("wheat",))
    before = foods()["oat-squares"]
    delete("oat-squares")
    assert (kept(), "oat-squares" in foods()) == ((), False)
    assert not [row for row in csv.DictReader(own.with_name("measures.csv").open()) if row["food"] == "oat-squares"]
    with pytest.raises(UnknownNameError, match='no food of yours "oat-squares"'):
        delete("oat-squares")
    restore("oat-squares")
    again = foods()["oat-squares"]
    assert (again.measures, again.allergens, again["protein"]) == (before.measures, before.allergens, before["protein"])
    delete("oat-squares")
    keep(label())
    with pytest.raises(LabelError, match="was kept meanwhile"):
        restore("oat-squares")


def test_a_row_that_was_written_by_hand_is_listed_without_its_label(own):
    keep(label())
    rows = list(csv.reader(own.open(encoding="utf-8")))
    rows[1][rows[0].index("label")] = "{"
    with own.open("w", encoding="utf-8", newline="") as file:
        csv.writer(file).writerows(rows)
    assert [(each.key, each.label) for each in kept()] == [("oat-squares", None)]


def test_the_own_table_has_the_columns_of_the_kits_table(own):
    keep(label())
    keep(label(name="Oat hoops"))
    with open(own, encoding="utf-8", newline="") as file:
        rows = list(csv.DictReader(file))
    assert [row["food"] for row in rows] == ["oat-squares", "oat-hoops"]
    assert rows[0]["water"] == ""  # missing, not zero
    assert rows[0]["cholesterol"] == "0"
    assert "energy 0.10" in rows[0]["relative_sd"]


def test_a_food_is_never_replaced_unasked(own):
    keep(label())
    before = own.read_bytes()
    with pytest.raises(LabelError, match=r'foods.csv holds "oat-squares" already; give another key, or say that'):
        keep(label(protein=4))
    assert own.read_bytes() == before
    keep(label(protein=4), replace=True)
    assert foods()["oat-squares"]["protein"] == pytest.approx(4 / 0.55, rel=1e-5)
    assert len(foods()["oat-squares"].measures) == 1


def test_a_key_of_the_kits_own_is_refused(own):
    with pytest.raises(LabelError, match='the kit has a food "olive-oil" of its own; give the label another key'):
        keep(label(key="olive-oil"))
    assert not own.exists()


def test_a_wrong_label_leaves_the_table_alone(own):
    keep(label())
    before = own.read_bytes()
    with pytest.raises(LabelError):
        keep(label(name="Oat hoops", energy=999))
    assert own.read_bytes() == before


def test_what_the_user_added_to_the_table_stays(own):
    keep(label())
    text = own.read_text(encoding="utf-8").splitlines()
    own.write_text(f"{text[0]},shelf\n{text[1]},top\n", encoding="utf-8")
    keep(label(name="Oat hoops"))
    with open(own, encoding="utf-8", newline="") as file:
        assert [row["shelf"] for row in csv.DictReader(file)] == ["top", ""]


def test_a_folder_that_cannot_be_written_is_told(tmp_path, monkeypatch):
    (tmp_path / "own").write_text("a file where the folder should be")
    monkeypatch.setenv("TALK_KIT_HOME", str(tmp_path / "own"))
    with pytest.raises(KitError, match="cannot be written"):
        keep(label())


def test_a_kept_label_keeps_how_sure_its_figures_are(own):
    kept = keep(label())
    assert foods()[kept.key].relative_sd == pytest.approx(food_of(label()).relative_sd, rel=1e-4, nan_ok=True)
