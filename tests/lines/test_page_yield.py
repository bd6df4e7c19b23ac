"""How many a recipe makes, as people write it."""

from kit.lines.page_yield import is_label, read_yield

SERVINGS = {
    "Serves 6": 6,
    "Serves: 6 to 8": 7,
    "Servings:4": 4,
    "Number of servings: 4": 4,
    "4 servings": 4,
    "For 4 people": 4,
    "for four": 4,
    "Yield 9 servings": 9,
    "Recipe yields 6": 6,
    "Yield: Serves 6 to 8": 7,
    "Servings Per Recipe: 4": 4,
    "9 servings per container": 9,
    "Feeds 4": 4,
    "Makes 1 9-inch pie, 8 servings": 8,
    "Makes 4 cups (8 half-cup servings)": 8,
    "Makes 8 1-cup servings": 8,
    "Yield: 4 (1 1/4 cup) servings": 4,
    "Yield: 12 servings, 1/2 cup each": 12,
    "6 servings (serving size: 1 cup)": 6,
    "Serves 4 as a main, 6 as a side": 4,
    "SERVES: 4–6 PEOPLE": 5,
    "Makes enough for 6": 6,
    "Serving(s): 4": 4,
    "Makes 4 main-dish servings": 4,
    "Hi, it serves 5.": 5,
    "Pour into two pans. Yield: 2 loaves (24 slices).": 24,
}
MADE = {
    "Makes 12 muffins": (12, "muffin"),
    "Makes one skillet, 8 wedges. Good with 1 tablespoon of honey.": (8, "wedge"),
    "Yield: 1 loaf (12 slices)": (12, "slice"),
    "Makes: 24 (2-inch) cookies": (24, "cookie"),
    "Makes 2 dozen cookies": (24, "cookie"),
    "Makes about 12 (1/4 cup) pancakes": (12, "pancake"),
    "Serves 4 lidded boxes": (4, "lidded box"),
}
NO_SERVINGS = ["Yield: about 2 quarts", "Yield: 1 loaf", "Makes 3 cups"]
NOTHING = [
    "Serving size: 1 1/2 cups",
    "Serving Size 1 square (128g)",
    "Serve with 2 lemon wedges",
    "For the dressing",
    "1 cup oats",
]
NOTHING += ["Serves a crowd", "Serving: 1bowl"]


def test_servings_are_counted_as_they_are_written():
    found = {line: made.count.value if (made := read_yield(line)) and made.count else None for line in SERVINGS}
    assert found == SERVINGS


def test_what_is_made_is_counted_and_named():
    found = {line: (made.count.value, made.called) for line in MADE if (made := read_yield(line)) and made.count}
    assert found == MADE


def test_quarts_and_loaves_are_no_number_of_servings():
    assert [made.count for line in NO_SERVINGS if (made := read_yield(line))] == [None] * len(NO_SERVINGS)


def test_other_lines_say_nothing_about_servings():
    assert {line: read_yield(line) for line in NOTHING} == dict.fromkeys(NOTHING)


def test_a_label_alone_waits_for_its_number():
    assert [is_label(line) for line in ("Servings", "Yield:", "Makes", "Serving size", "Serves 4")] == [
        *[True] * 3,
        *[False] * 2,
    ]
