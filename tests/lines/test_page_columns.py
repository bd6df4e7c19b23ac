"""Two columns side by side, and the small pictures of a page."""

from kit.lines.page_columns import in_one_column, without_pictures

PAGE = """Oat cookies
Ingredients:          Directions:
1 cup oats            1. Heat the oven.
1 egg                 2. Stir, and drop
                         by the spoon.

Keeps 3 days.          Enjoy."""


def test_the_left_column_comes_first_and_every_row_keeps_its_number():
    rows = list(in_one_column(enumerate(PAGE.splitlines())))
    assert [number for number, _ in rows] == [0, 1, 2, 3, 1, 2, 3, 4, 5, 6]
    assert [text.strip() for _, text in rows][:5] == [
        "Oat cookies",
        "Ingredients:",
        "1 cup oats",
        "1 egg",
        "Directions:",
    ]
    assert rows[-1][1] == "Keeps 3 days.          Enjoy."  # behind the empty row there is one column


def test_a_page_of_one_column_stays_as_it_is():
    rows = list(enumerate(["Soup", "Ingredients", "1 cup lentils     (dry)", "", "Method"]))
    assert list(in_one_column(rows)) == rows


def test_stars_and_boxes_are_no_pictures():
    assert without_pictures("★★★ ☐ 1 egg 🥚") == "★★★ ☐ 1 egg "
