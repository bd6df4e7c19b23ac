"""Household measures as official tables word them."""

import pytest
from each import for_each

from kit.food.household import read_measure


@for_each(
    ("text", "measure", "cut"),
    [
        ("cup", "cup", ""),
        ("cups, chopped", "cup", "chopped"),
        ("cup slices", "cup", "sliced"),
        ("cup, chopped or diced", "cup", "chopped"),
        ("cup, not packed", "cup", "not packed"),
        ("cup packed", "cup", "packed"),
        ("cup, whole", "cup", "whole"),
        ('cup (1" pieces)', "cup", ""),
        ("cup, NS as to form", "cup", ""),
        ("tablespoon", "tbsp", ""),
        ("tsp, ground", "tsp", "ground"),
        ("fl oz", "fl oz", ""),
        ("medium", "medium", ""),
        ('medium (2-1/4" dia)', "medium", ""),
        ("extra large", "extra large", ""),
        ("onion, large", "large", ""),
        ("onion", "piece", ""),
        ("fruit", "piece", ""),
        ("slice", "slice", ""),
        ('slice, medium (1/8" thick)', "slice", "medium"),
        ("large slice", "slice", "large"),
        ("half, with liquid", "half", ""),
        ("clove", "clove", ""),
        ("leaves", "leaf", ""),
        ("can (15 oz)", "can", ""),
        ("strip", "strip", ""),
    ],
)
def test_a_measure_and_its_cut_are_told_apart(text, measure, cut):
    read = read_measure(text, "Onions, raw")
    assert (read.count, read.measure, read.cut) == (1, measure, cut)


@pytest.mark.parametrize(
    ("text", "count", "measure"),
    [("1 cup", 1, "cup"), ("1/2 cup, cooked", 0.5, "cup"), ("1 1/2 tbsp", 1.5, "tbsp"), ("2 slices", 2, "slice"),
     ("1 quart", 4, "cup")],
)  # fmt: skip
def test_a_number_at_the_start_counts(text, count, measure):
    read = read_measure(text)
    assert (read.count, read.measure) == (pytest.approx(count), measure)


@for_each(
    "text",
    [
        *("", "oz", "lb", "100 g", "NLEA serving", "serving (3 oz)", "Quantity not specified", "RACC", "cubic inch"),
        *("breast, bone and skin removed", "piece (yield from 1 lb raw meat)", "package yields", "scoop", "0 cup"),
    ],
)
def test_weights_and_what_no_recipe_names_are_left_out(text):
    assert read_measure(text, "Onions, raw") is None
