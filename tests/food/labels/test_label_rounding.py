"""Label-style rounding at, just under and just over each limit; the rule's paragraph of 21 CFR 101.9 is beside it."""

import math

import pytest
from each import for_each
from hypothesis import given
from hypothesis import strategies as st

from kit.errors import AmountError, UnknownNameError
from kit.food.daily_values import daily_values, vitamins_and_minerals
from kit.food.labels.label_rounding import declared, declared_percent, nearest

AMOUNTS = [
    ("energy", "(c)(1)", [(0, "0"), (4.99, "0"), (5, "5"), (7.49, "5"), (7.5, "10"), (47.5, "50"), (50, "50")]),
    ("energy", "(c)(1)", [(50.01, "50"), (54.99, "50"), (55, "60"), (232, "230"), (1234, "1,230")]),
    ("fat", "(c)(2)", [(0, "0"), (0.499, "0"), (0.5, "0.5"), (0.74, "0.5"), (0.75, "1"), (4.74, "4.5")]),
    ("fat", "(c)(2)", [(4.99, "5"), (5, "5"), (5.49, "5"), (5.5, "6"), (21.5, "22")]),
    ("saturated_fat", "(c)(2)(i)", [(0.499, "0"), (0.5, "0.5"), (1.25, "1.5"), (5.5, "6")]),
    ("monounsaturated_fat", "(c)(2)(iv)", [(0.499, "0"), (2.26, "2.5")]),
    ("polyunsaturated_fat", "(c)(2)(iii)", [(0.499, "0"), (2.24, "2")]),
    ("cholesterol", "(c)(3)", [(0, "0"), (1.99, "0"), (2, "less than 5"), (5, "less than 5"), (5.01, "5")]),
    ("cholesterol", "(c)(3)", [(7.49, "5"), (7.5, "10"), (33, "35")]),
    ("sodium", "(c)(4)", [(4.99, "0"), (5, "5"), (7.49, "5"), (7.5, "10"), (137.5, "140"), (140, "140")]),
    ("sodium", "(c)(4)", [(140.01, "140"), (144.99, "140"), (145, "150"), (848, "850")]),
    ("carbohydrate", "(c)(6)", [(0.499, "0"), (0.5, "less than 1"), (0.999, "less than 1"), (1, "1"), (36.5, "37")]),
    ("fiber", "(c)(6)(i)", [(0.499, "0"), (0.5, "less than 1"), (0.999, "less than 1"), (1, "1"), (1.5, "2")]),
    ("sugars", "(c)(6)(ii)", [(0.499, "0"), (0.5, "less than 1"), (0.999, "less than 1"), (1, "1"), (11.49, "11")]),
    ("protein", "(c)(7)", [(0.499, "0"), (0.5, "less than 1"), (0.999, "less than 1"), (1, "1"), (14.5, "15")]),
    # (c)(8): the step follows the daily value. 18 mg and 20 µg are below 25; the tenth is in the 2016 preamble.
    ("iron", "(c)(8)", [(0.04, "0"), (0.05, "0.1"), (1.55, "1.6"), (8, "8")]),
    ("vitamin_d", "(c)(8)", [(0.14, "0.1"), (0.15, "0.2"), (2, "2")]),
    # 90 mg and 55 µg are from 25 to below 250: the nearest whole.
    ("vitamin_c", "(c)(8)", [(0.49, "0"), (0.5, "1"), (89.5, "90")]),
    ("selenium", "(c)(8)", [(10.4, "10"), (10.5, "11")]),
    # from memory: from 250, the nearest ten (calcium 1,300 mg, folate 400 µg).
    ("calcium", "(c)(8)", [(4.99, "0"), (5, "10"), (264.9, "260"), (265, "270")]),
    ("folate", "(c)(8)", [(94.9, "90"), (95, "100")]),
]
CASES = [(name, paragraph, amount, text) for name, paragraph, pairs in AMOUNTS for amount, text in pairs]


@for_each(("name", "paragraph", "amount", "text"), CASES)
def test_an_amount_is_declared_as_its_paragraph_says(name, paragraph, amount, text):
    assert declared(name, amount).rsplit(" ", 1)[0] == text, paragraph


def test_a_declared_amount_has_its_unit():
    written = [declared("energy", 100), declared("vitamin_d", 2), declared("sodium", 3), declared("fiber", 0.6)]
    assert written == ["100 kcal", "2 µg", "0 mg", "less than 1 g"]


@for_each(
    ("percent", "text"),
    [
        (0.99, "0 %"),
        (1, "2 %"),  # (c)(8)(iii): below 2 %, 0, or 2 % when it is 1 % or more
        (2.99, "2 %"),
        (3, "4 %"),  # halfway goes up
        (9, "10 %"),
        (10, "10 %"),
        (10.01, "10 %"),
        (12.49, "10 %"),
        (12.5, "15 %"),
        (47.5, "50 %"),
        (50, "50 %"),
        (50.01, "50 %"),
        (54.99, "50 %"),
        (55, "60 %"),
        (145, "150 %"),
    ],
)
def test_vitamins_and_minerals_go_in_steps_of_2_then_5_then_10_percent(percent, text):
    assert declared_percent("iron", percent / 100) == text


@for_each(("percent", "text"), [(0.49, "0 %"), (0.5, "1 %"), (6.96, "7 %"), (22.5, "23 %"), (101, "101 %")])
@for_each("name", ["fat", "saturated_fat", "cholesterol", "sodium", "carbohydrate", "fiber", "protein"])
def test_other_percents_are_whole(name, percent, text):
    assert declared_percent(name, percent / 100) == text


def test_what_is_unknown_stays_unknown():
    assert declared("iron", math.nan) == "unknown"
    assert declared_percent("iron", math.nan) == "unknown"


def test_what_a_label_never_declares_is_refused():
    with pytest.raises(UnknownNameError, match='no amount on a label called "water"'):
        declared("water", 12)
    with pytest.raises(UnknownNameError, match='no nutrient "fibre"; did you mean "fiber"'):
        declared("fibre", 12)
    with pytest.raises(UnknownNameError, match='no daily value for the nutrient "sugars"'):
        declared_percent("sugars", 0.1)


def test_a_negative_amount_is_refused():
    with pytest.raises(AmountError, match="fat is -1 g; give 0 g or more"):
        declared("fat", -1)
    with pytest.raises(AmountError, match=r"fat is -0\.1 of a day"):
        declared_percent("fat", -0.1)


@given(st.floats(0, 5000), st.floats(0, 5000))
def test_more_is_never_declared_as_less(one, other):
    low, high = sorted((one, other))
    for name in ("energy", "sodium", *vitamins_and_minerals()):
        written = [float(declared(name, amount).split(" ")[0].replace(",", "")) for amount in (low, high)]
        assert written[0] <= written[1]


@given(st.floats(0, 3))
def test_a_declared_percent_is_within_half_a_step_of_the_share(fraction):
    for name in daily_values():
        percent = float(declared_percent(name, fraction).split(" ")[0].replace(",", ""))
        assert abs(percent - 100 * fraction) <= (0.5 if name not in vitamins_and_minerals() else 5) + 1e-6


@given(st.integers(0, 2000), st.sampled_from([1, 2, 5, 10]))
def test_a_multiple_of_the_step_is_its_own_nearest(count, step):
    assert nearest(count * step, step) == count * step
