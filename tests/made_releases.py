"""Composition releases made up for the tests: a small one with every kind of row, and one of the official size."""

import csv
import io
import itertools

FOOD = ["fdc_id", "data_type", "description", "food_category_id", "publication_date"]
FOOD_NUTRIENT = ["id", "fdc_id", "nutrient_id", "amount", "data_points", "derivation_id"]
NUTRIENT = ["id", "name", "unit_name", "nutrient_nbr", "rank"]
PORTION = [
    *("id", "fdc_id", "seq_num", "amount", "measure_unit_id"),
    *("portion_description", "modifier", "gram_weight", "data_points"),
]
NUTRIENTS = [
    [1008, "Energy", "KCAL", "208", 300],
    [1062, "Energy", "kJ", "268", 400],
    [2047, "Energy (Atwater General Factors)", "KCAL", "957", 280],
    [2048, "Energy (Atwater Specific Factors)", "KCAL", "958", 290],
    [1003, "Protein", "G", "203", 600],
    [1005, "Carbohydrate, by difference", "G", "205", 1110],
    [1093, "Sodium, Na", "MG", "307", 5800],
    [1190, "Folate, DFE", "UG", "435", 6900],
    [1110, "Vitamin D (D2 + D3), International Units", "IU", "324", 8650],
    [1057, "Caffeine", "MG", "262", 18300],
]


def table(*rows):
    text = io.StringIO()
    csv.writer(text, quoting=csv.QUOTE_ALL).writerows(rows)
    return text.getvalue()


def small_release():
    """Return the files of a small release with foods of each kind."""
    return {
        "food.csv": table(
            FOOD,
            [11, "sr_legacy_food", "Lentils, raw", 16, "2019-04-01"],
            [12, "foundation_food", 'Beans, black, "turtle", canned', 16, "2020-10-30"],
            [13, "sample_food", "Beans, black, sample 3", 16, "2020-10-30"],
            [14, "sr_legacy_food", "Water with nothing known of it", 16, "2019-04-01"],
            [15, "survey_fndds_food", "Lentil soup, canned", 16, "2022-10-28"],
        ),
        "nutrient.csv": table(NUTRIENT, *NUTRIENTS),
        "food_nutrient.csv": table(
            FOOD_NUTRIENT,
            [1, 11, 1008, 352, 4, 49],
            [2, 11, 1003, 24.63, 4, 49],
            [3, 11, 1093, "", 4, 49],
            [4, 12, 2047, 120, 4, 49],
            [5, 12, 2048, 118, 4, 49],
            [6, 12, 1005, -0.4, 4, 49],
            [7, 12, 1003, -1, 4, 49],
            [8, 13, 1003, 5, 4, 49],
            [9, 14, 1057, 1, 4, 49],
            [10, 15, 1062, 418.4, 4, 49],
            [11, 15, 1110, 40, 4, 49],
            [12, 15, "435", 21, 4, 49],  # the number in the place of the id
        ),
        "food_portion.csv": table(
            PORTION,
            [1, 11, 1, 1, 9999, "", "cup", 192, 3],
            [2, 11, 2, 1, 9999, "", "tbsp", 12, 3],
            [3, 11, 3, 1, 9999, "", "oz", 28.35, 3],
            [4, 12, 1, 0.5, 1000, "", "drained", 120, 3],
            [5, 15, 1, "", 9999, "1 cup, NS as to brand", "10205", 245, ""],
            [6, 15, 2, "", 9999, "Quantity not specified", "90000", 245, ""],
        ),
        "measure_unit.csv": table(["id", "name"], [1000, "cup"], [9999, "undetermined"]),
        "food_category.csv": table(["id", "code", "description"], [16, "1600", "Legumes and Legume Products"]),
    }


def write(folder, release):
    folder.mkdir(exist_ok=True)
    for name, text in release.items():
        (folder / name).write_text(text, encoding="utf-8", newline="")
    return folder


# A release of the official size, made up: every food is a thing in some state, so that many names are alike.
THINGS = [
    *("lentils", "chickpeas", "black beans", "kidney beans", "barley", "quinoa", "brown rice", "bulgur", "spinach"),
    *("broccoli", "carrots", "sweet potatoes", "tomatoes", "peppers", "onions", "mushrooms", "zucchini", "cabbage"),
    *("apples", "pears", "oranges", "yogurt", "cheddar cheese", "chicken breast", "salmon", "eggs", "almonds"),
]
SORTS = ["", "red", "green", "white", "young", "mixed"]
STATES = ["raw", "boiled", "canned", "frozen", "dried", "roasted", "baked", "steamed", "grilled", "pickled"]
ENDS = ["", "with salt", "without salt", "drained", "sliced"]
NAMES = [
    ", ".join(part for part in (thing.capitalize(), sort, state, end) if part)
    for thing, sort, state, end in itertools.product(THINGS, SORTS, STATES, ENDS)
][:8_000]


def large_release(folder):
    """Write a release of 8,000 foods with 150 nutrients each, and return its folder."""
    nutrients = NUTRIENTS + [[5000 + n, "other", "G", str(2000 + n), n] for n in range(150 - len(NUTRIENTS))]
    values = ",".join(["", "{food}", "{nutrient}", "12.5", "1", "49"])
    with open(folder / "food_nutrient.csv", "w", encoding="utf-8") as file:
        file.write(",".join(FOOD_NUTRIENT) + "\n")
        for food in range(len(NAMES)):
            file.writelines(values.format(food=food + 1, nutrient=row[0]) + "\n" for row in nutrients)
    foods = [[number, "sr_legacy_food", name, 16, "2019-04-01"] for number, name in enumerate(NAMES, start=1)]
    write(folder, small_release() | {"food_nutrient.csv": (folder / "food_nutrient.csv").read_text()})
    return write(folder, {"food.csv": table(FOOD, *foods), "nutrient.csv": table(NUTRIENT, *nutrients)})
