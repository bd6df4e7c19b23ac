import pytest

from kit.show.region import share_region


def test_the_region_of_the_adult_ranges_is_the_one_drawn_by_hand():
    # Protein 10-35 %, fat 20-35 %, carbohydrate 45-65 %: five corners, each where two limits meet.
    corners = {(10, 25, 65), (10, 35, 55), (20, 35, 45), (35, 20, 45), (15, 20, 65)}
    region = share_region([(0.10, 0.35), (0.20, 0.35), (0.45, 0.65)])
    assert {tuple(round(100 * share, 6) for share in corner) for corner in region} == corners
    assert region[0] == region[-1]


def test_ranges_that_no_dish_can_meet_together_have_no_region():
    assert share_region([(0.5, 1), (0.5, 1), (0.2, 1)]) == []


def test_without_limits_the_region_is_the_whole_triangle():
    region = share_region([(0, 1)] * 3)
    assert set(region) == {(1, 0, 0), (0, 1, 0), (0, 0, 1)}
    assert [sum(corner) for corner in region] == pytest.approx([1, 1, 1, 1])
