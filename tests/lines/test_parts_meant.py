"""The part of a food that a line means where it names the whole beside it."""

import pytest
from each import for_each

from kit.lines.reader import read_each

PARTS = (
    ("kernels from 3 ears corn", "corn-raw", 306),  # SR26 11167: 102 g an ear
    ("kernels cut from 2 ears of fresh corn", "corn-raw", 204),
    ("leaves from 1 bunch mint", "mint-fresh", 30),
    ("cloves from 1 head garlic", "garlic-raw", 36),
    ("flesh of 1 mango", "mangoes-raw", 336),
    ("yolks of 2 large eggs", "egg-yolk", 34),
    ("white of 1 egg", "egg-white", 33),
    ("1 lemon, peel only", "lemon-zest", 6),
    ("1 bunch beets, tops only", "beet-greens-raw", 130),
)


@for_each(("line", "food", "grams"), PARTS)
def test_a_part_is_weighed_and_not_the_whole(line, food, grams):
    (reading,) = read_each(line)
    assert (reading.key, reading.grams) == (food, pytest.approx(grams, rel=0.01))


def test_seeds_and_leaves_are_taken_only_of_what_they_are_eaten_of():
    assert all(reading.problem for reading in read_each("seeds from 1 vanilla bean"))
    assert all(reading.problem for reading in read_each("meat from 1 rotisserie chicken"))
