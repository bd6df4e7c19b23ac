"""Label rounding against labels that the US Food and Drug Administration printed."""

import pytest
from each import for_each

from kit.food.daily_values import daily_values
from kit.food.labels.label_rounding import declared, declared_percent

# FDA, "What's New with the Nutrition Facts Label", sample label, 2/3 cup (55 g); in FDA's burden document 0910-0497.
# Nutrient, declared amount, declared percent.
SAMPLE_LABEL = [
    ("fat", 8, "10 %"),
    ("saturated_fat", 1, "5 %"),
    ("cholesterol", 0, "0 %"),
    ("sodium", 160, "7 %"),
    ("carbohydrate", 37, "13 %"),
    ("fiber", 4, "14 %"),
    ("vitamin_d", 2, "10 %"),
    ("calcium", 260, "20 %"),
    ("iron", 8, "45 %"),
    ("potassium", 235, "6 %"),
]
# from memory: FDA's teaching label for a frozen lasagne: 22.5 goes up to 23, 8.9 to 8 by twos, 10.9 to 10 by fives.
TEACHING_LABEL = [
    ("fat", 9, "12 %"),  # from memory
    ("saturated_fat", 4.5, "23 %"),  # from memory
    ("cholesterol", 35, "12 %"),  # from memory
    ("sodium", 850, "37 %"),  # from memory
    ("carbohydrate", 34, "12 %"),  # from memory
    ("fiber", 4, "14 %"),  # from memory
    ("vitamin_d", 0, "0 %"),  # from memory
    ("calcium", 320, "25 %"),  # from memory
    ("iron", 1.6, "8 %"),  # from memory
    ("potassium", 510, "10 %"),  # from memory
]


@for_each(("name", "amount", "percent"), SAMPLE_LABEL + TEACHING_LABEL)
def test_percents_come_out_as_printed(name, amount, percent):
    assert declared_percent(name, amount / daily_values()[name].amount) == percent


def test_energy_of_the_sample_label_comes_out_as_printed():
    # 8 g fat, 37 g carbohydrate, 3 g protein: 9 x 8 + 4 x 37 + 4 x 3 = 232; the label says 230.
    assert declared("energy", 9 * 8 + 4 * 37 + 4 * 3) == "230 kcal"


@for_each(
    ("name", "amount"),
    [
        ("energy", 230),
        ("fat", 8),
        ("saturated_fat", 1),
        ("sodium", 160),
        ("carbohydrate", 37),
        ("fiber", 4),
        ("sugars", 12),
        ("protein", 3),
        ("vitamin_d", 2),
        ("calcium", 260),
        ("iron", 8),
        ("saturated_fat", 4.5),  # from memory, as are those below: the teaching label
        ("cholesterol", 35),  # from memory
        ("sodium", 850),  # from memory
        ("iron", 1.6),  # from memory
        ("potassium", 510),  # from memory
    ],
)
def test_an_amount_that_a_label_printed_is_declared_as_itself(name, amount):
    # FDA's two labels above. Its first sample printed 235 mg of potassium, before the step of 10 mg was set.
    assert declared(name, amount).split(" ")[0] == f"{amount:g}"


def test_thirty_micrograms_of_three_hundred_are_ten_percent():
    # FDA's own example of a percent daily value: daily value 300 µg, serving 30 µg, 10 %.
    assert declared_percent("folate", 30 / 300) == "10 %"


@pytest.mark.parametrize(
    ("name", "amount", "old_daily_value", "old_percent"),
    [("fat", 8, 65, "12 %"), ("sodium", 160, 2400, "7 %"), ("carbohydrate", 37, 300, "12 %"), ("fiber", 4, 25, "16 %")],
)
def test_the_same_rounding_gives_the_old_label_from_the_old_daily_values(name, amount, old_daily_value, old_percent):
    # The label of before 2016 in the same FDA document.
    assert declared_percent(name, amount / old_daily_value) == old_percent


def test_corrected_protein_halves_the_percent():
    # from memory, 101.9(c)(7): 10 g x PDCAAS 0.52 = 5.2 g, of 50 g: 10 %, not 20 %.
    day = daily_values()["protein"].amount
    assert declared_percent("protein", 10 * 0.52 / day) == "10 %"
    assert declared_percent("protein", 10 / day) == "20 %"
