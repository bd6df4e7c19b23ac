"""A weight with "cooked" behind it, by what a cook may have weighed."""

from each import for_each

from kit.lines.reader import read


@for_each(
    "line",
    [
        "8 oz spaghetti, cooked and drained",
        "1 lb lean ground beef, cooked and drained",
        "1/2 lb bacon, cooked and crumbled",
        "1 bag (1 lb) brown rice, cooked",
    ],
)
def test_what_is_cooked_behind_its_weight_is_asked_about(line):
    assert "before or after cooking" in read(line).problem


@for_each(
    "line, key",
    [
        ("8 oz cooked spaghetti", "spaghetti-boiled"),
        ("2 cups macaroni, cooked", "macaroni-boiled"),
        ("12 oz turkey breast, cooked", "turkey-breast-cooked"),
        ("100 g Spaghetti, cooked", "spaghetti-boiled"),
        ("6 slices bacon, cooked and crumbled", "bacon-cooked"),
    ],
)
def test_what_is_said_to_be_cooked_or_measured_so_is(line, key):
    reading = read(line)
    assert (reading.key, reading.problem) == (key, "")
