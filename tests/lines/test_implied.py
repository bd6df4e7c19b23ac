"""What the measure or the cut tells of a food."""

from each import for_each

from kit.lines.reader import read


@for_each(
    ("line", "key"),
    [
        ("1 tsp thyme", "thyme-dried"),
        ("2 tsp thyme, crushed", "thyme-dried"),
        ("2 tsp fresh thyme", "thyme-fresh"),
        ("1 tbsp thyme, chopped", "thyme-fresh"),
        ("3 sprigs thyme", "thyme-fresh"),
        ("1 tsp coriander", "coriander-seed"),
        ("1 bunch coriander", "cilantro-fresh"),
        ("1 can (5 oz) tuna", "tuna-canned-water"),
    ],
)
def test_the_measure_or_cut_tells_the_form(line, key):
    assert read(line).key == key
