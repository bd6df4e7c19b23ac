"""Every table in data/: a source on each row that data/README.md names, and ids that resolve."""

import csv
import re

import pytest
from each import for_each

from kit import files
from kit.food.cells import read_rows
from kit.food.composition import bundled_foods
from kit.food.nutrients import nutrients
from kit.meal.recipe import KINDS_OF_DISH
from kit.rules.reference import reference_amounts

DATA = files.bundled("data")
TABLES = sorted(path.name for path in DATA.glob("*.csv"))
FAMILIES = {"legumes", "greens", "roots", "other_vegetables", "tomato", "potato", "pasta", "rice", "cereal", "flour"}
FAMILIES |= {"egg", "poultry", "fish", "nuts", "milk"}
STATUSES = {"published", "from memory", "common practice"}


def table(name):
    return read_rows(DATA / name)


def cell_list(cell):
    return [item for item in cell.split("; ") if item]


def source_keys():
    """Return the keys in the table under "## Sources" of data/README.md."""
    readme = (DATA / "README.md").read_text(encoding="utf-8")
    section = readme.split("## Sources")[1].split("\n## ")[0]
    return re.findall(r"^\| `([^`]+)` \|", section, re.MULTILINE)


def test_the_readme_names_every_table():
    readme = (DATA / "README.md").read_text(encoding="utf-8")
    assert [name for name in TABLES if f"`{name}`" not in readme] == []


@for_each("name", [name for name in TABLES if name != "foods.csv"])
def test_each_row_has_a_source_that_the_readme_names(name):
    keys = tuple(source_keys())
    for row in table(name):
        sources = cell_list(row["source"])
        assert sources, row
        assert [source for source in sources if not source.startswith((*keys, "from memory"))] == [], row


def test_each_food_has_its_number_in_the_source():
    for row in table("foods.csv"):
        assert re.fullmatch(r"\d{5}", row["sr26"]), row["food"]


@for_each("name", [name for name in TABLES if "status" in (table(name) or [{}])[0]])
def test_each_status_is_one_of_the_three(name):
    assert {row["status"] for row in table(name)} <= STATUSES


@for_each("name", TABLES)
def test_a_table_is_plain_utf8_with_as_many_cells_in_each_row(name):
    text = (DATA / name).read_bytes().decode("utf-8")
    assert "\r" not in text
    assert text.endswith("\n")
    rows = list(csv.reader(text.splitlines()))
    assert {len(row) for row in rows} == {len(rows[0])}
    assert [row for row in rows if row != [cell.strip() for cell in row]] == []


@for_each(
    ("name", "columns"),
    [
        ("daily_values.csv", ["nutrient"]),
        ("reference_intakes_eu.csv", ["nutrient"]),
        ("distribution_ranges.csv", ["nutrient", "who"]),
        ("reference_amounts.csv", ["reference"]),
        ("dish_kinds.csv", ["words"]),
        ("wordings.csv", ["rule"]),
        ("protein_quality.csv", ["base", "source"]),
        ("allergens.csv", ["allergen"]),
        ("retention_factors.csv", ["code"]),
        ("storage.csv", ["rule"]),
        ("cautions.csv", ["caution"]),
        ("health_words.csv", ["words"]),
        ("amount_uncertainty.csv", ["how"]),
        ("composition_uncertainty.csv", ["nutrient", "group"]),
        ("foods.csv", ["food"]),
        ("nutrients.csv", ["nutrient"]),
    ],
)
def test_no_two_rows_have_the_same_key(name, columns):
    keys = [tuple(row[column] for column in columns) for row in table(name)]
    assert sorted(keys) == sorted(set(keys))


@pytest.mark.parametrize(
    ("name", "column"),
    [
        ("daily_values.csv", "nutrient"),
        ("reference_intakes_eu.csv", "nutrient"),
        ("distribution_ranges.csv", "nutrient"),
        ("composition_uncertainty.csv", "nutrient"),
        ("cautions.csv", "nutrients"),
    ],
)
def test_nutrients_resolve(name, column):
    assert {item for row in table(name) for item in cell_list(row[column])} <= set(nutrients())


def test_dish_kinds_name_known_kinds_and_reference_amounts():
    rows = table("dish_kinds.csv")
    assert {row["kind"] for row in rows} <= set(KINDS_OF_DISH)
    assert {row["main_dish"] for row in rows} == {"yes", "maybe", "no"}
    assert {name for row in rows for name in cell_list(row["references"])} <= set(reference_amounts())


def test_every_nutrient_has_its_uncertainty_in_the_same_order():
    plain = [row["nutrient"] for row in table("composition_uncertainty.csv") if not row["group"]]
    assert plain == list(nutrients())


@pytest.mark.parametrize(
    ("name", "columns"),
    [
        ("composition_uncertainty.csv", ["relative_sd", "relative_sd_salted"]),
        ("amount_uncertainty.csv", ["relative_sd"]),
    ],
)
def test_uncertainties_are_fractions(name, columns):
    for row in table(name):
        assert all(0 <= float(row[column]) < 1 for column in columns), row


def test_salted_foods_are_less_certain_in_sodium_alone():
    differing = [
        row["nutrient"]
        for row in table("composition_uncertainty.csv")
        if row["relative_sd"] != row["relative_sd_salted"]
    ]
    assert set(differing) == {"sodium"}


def test_kinds_of_daily_value_are_three():
    for name in ("daily_values.csv", "reference_intakes_eu.csv"):
        assert {row["kind"] for row in table(name)} == {"enough", "limit", ""}


def test_the_foods_point_at_rows_that_exist():
    allergens = {row["allergen"] for row in table("allergens.csv")}
    for food in bundled_foods().values():
        assert food.reference in {"", *reference_amounts()}, food.key  # some are only ever part of a dish
        assert food.retention in {"", *FAMILIES}, food.key
        assert set(food.allergens) <= allergens, food.key


def test_the_families_of_retention_factors_are_those_the_foods_use():
    assert {row["family"] for row in table("retention_factors.csv")} == FAMILIES


def test_retention_is_a_percentage_of_nutrients_the_kit_knows():
    for row in table("retention_factors.csv"):
        factors = {name: row[name] for name in row if name in nutrients()}
        assert len(factors) == 17
        assert all(0 < float(percent) <= 100 for percent in factors.values() if percent), row
        assert row["cooking_water"] in ("used", "drained", "")


def test_retention_keeps_at_least_as_much_when_the_water_is_used():
    rows = {row["code"]: row for row in table("retention_factors.csv")}
    for drained, used in [
        ("501", "502"),
        ("521", "522"),
        ("541", "542"),
        ("3005", "3006"),
        ("3455", "3456"),
        ("431", "432"),
    ]:
        assert rows[drained]["cooking_water"] == "drained"
        assert rows[used]["cooking_water"] == "used"
        assert all(float(rows[used][name]) >= float(rows[drained][name]) for name in nutrients() if name in rows[used])


def test_published_retention_of_legumes_and_potatoes():
    # USDA Table of Nutrient Retention Factors, Release 6 (2007): iron, folate, vitamin C and potassium.
    rows = {row["code"]: row for row in table("retention_factors.csv")}
    assert [rows["521"][name] for name in ("iron", "folate", "vitamin_c", "potassium")] == ["80", "45", "65", "70"]
    assert [rows["3308"][name] for name in ("iron", "folate", "vitamin_c", "potassium")] == ["95", "75", "75", "90"]


def test_nine_allergens_are_on_the_us_list_and_fourteen_on_the_eus():
    # 21 U.S.C. 321(qq), with sesame since 2023; Regulation (EU) 1169/2011, Annex II.
    rows = table("allergens.csv")
    assert len({row["name"] for row in rows if row["us"] == "yes"}) == 9
    assert len({row["name"] for row in rows if row["eu"] == "yes"}) == 14
    assert {row["allergen"] for row in rows if row["us"] == "no"} == {
        "chestnut",
        "mollusc",
        "gluten",
        "celery",
        "mustard",
        "sulphites",
        "lupin",
    }


def test_bases_of_yields_and_protein_quality_are_bases_of_foods():
    bases = {food.base for food in bundled_foods().values()}
    groups = {food.group for food in bundled_foods().values()}
    assert {row["base"] for row in table("protein_quality.csv")} <= bases
    assert {row["base"] for row in table("yields.csv")} <= bases | {""}
    assert {row["group"] for row in table("yields.csv")} <= groups | {""}


def test_yields_and_protein_quality_are_sober_numbers():
    for row in table("yields.csv"):
        assert 0 < float(row["low"]) <= float(row["high"]) < 8, row
        assert bool(row["base"]) != bool(row["group"]), row
    for row in table("protein_quality.csv"):
        assert 0.2 <= float(row["pdcaas"]) <= 1, row


@for_each(
    ("rule", "value"),
    [
        ("keeps_days", 3),  # USDA FSIS: 3 to 4 days
        ("hours_out", 2),  # USDA FSIS
        ("hours_out_hot", 1),  # USDA FSIS: above 90 °F
        ("reheat_f", 165),  # USDA FSIS
        ("refrigerator_f", 40),  # USDA FSIS
        ("cool_stage_one_hours", 2),  # FDA Food Code 3-501.14: 135 to 70 °F
        ("cool_total_hours", 6),  # FDA Food Code 3-501.14: 135 to 41 °F
        ("cold_holding_f", 41),  # FDA Food Code 3-501.16
        ("hot_holding_f", 135),  # FDA Food Code 3-501.16
    ],
)
def test_rules_for_keeping_are_the_published_ones(rule, value):
    assert float(next(row["value"] for row in table("storage.csv") if row["rule"] == rule)) == value


def test_both_temperature_scales_tell_the_same():
    rules = {row["rule"]: row["value"] for row in table("storage.csv")}
    pairs = [
        (rules[rule], rules[f"{rule[:-2]}_c"]) for rule in rules if rule.endswith("_f") and f"{rule[:-2]}_c" in rules
    ]
    assert len(pairs) == 9
    for fahrenheit, celsius in pairs:
        assert (float(fahrenheit) - 32) / 1.8 == pytest.approx(float(celsius), abs=0.6)
