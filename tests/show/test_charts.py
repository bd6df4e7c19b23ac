import math

import plotly.graph_objects as go
import pytest
from each import for_each
from hostile import HOSTILE

from kit.show import charts, parts, triangle
from kit.show.escaping import in_chart
from kit.show.marks import ACT, INK, NAME_LENGTH, TEXT_SIZE

RANGES = {"protein": (0.10, 0.35), "fat": (0.20, 0.35), "carbohydrate": (0.45, 0.65)}
WRITTEN = {"protein": 0.20, "fat": 0.30, "carbohydrate": 0.50}
NOW = {"protein": 0.25, "fat": 0.40, "carbohydrate": 0.35}
NOTHING = dict.fromkeys(WRITTEN, math.nan)
DAY = {"Fiber": 0.48, "Vitamin A": 1.27, "Sodium": 0.36}
SIXTEEN = [f"Sweet potato number {place}, baked in its skin, without salt" for place in range(16)]
PARTS = {"weight": [0.9, 0.1], "energy": [0.7, 0.3], "protein": [0.8, 0.2], "sodium": [0.4, 0.6]}
FOODS = {"Energy": [(222.0, "222 kcal"), (205.0, "205 kcal")], "Fiber": [(5.2, "5.2 g"), (math.nan, "unknown")]}


def texts(figure):
    return [text.strip() for trace in figure.data for text in trace.text or () if text]


def named(figure, text):
    """The trace that carries a text, and the place of the text in it."""
    found = [(trace, at) for trace in figure.data for at, words in enumerate(trace.text or ()) if words.strip() == text]
    assert len(found) == 1, texts(figure)
    return found[0]


def alternative(figure):
    return figure.layout.meta["alternative"]


def everything(name="Feta"):
    return [
        charts.energy_shares(NOW, RANGES, WRITTEN),
        triangle.balance(NOW, RANGES, WRITTEN),
        charts.sources(["Lentils", name], [8.0, 3.0], "Protein", "g", [4.0, 3.0], 1),
        charts.share_of_day(DAY, {"Sodium"}),
        parts.plate(["base", name], PARTS),
        parts.comparison("Two grains", ["quinoa", name], FOODS, "in a cooked cup"),
    ]


def test_every_chart_is_a_figure_with_a_title_its_sentence_and_one_for_those_who_cannot_see_it():
    for figure in everything():
        assert isinstance(figure, go.Figure)
        assert figure.layout.title.text
        assert alternative(figure).endswith(".")
        assert figure.layout.meta["sentence"].endswith(".")
        assert figure.layout.meta["key"]


def test_no_text_is_smaller_than_the_back_row_can_read():
    def sizes(node):
        for key, value in node.items():
            if key.endswith("font"):
                yield value.get("size", TEXT_SIZE)
            yield from (
                size
                for part in (value if isinstance(value, list | tuple) else [value])
                if isinstance(part, dict)
                for size in sizes(part)
            )

    for figure in everything():
        assert min(sizes(figure.to_dict())) >= 18


def test_shares_of_energy_are_bars_over_the_ranges_with_a_mark_where_the_recipe_stands():
    figure = charts.energy_shares(NOW, RANGES, WRITTEN)
    assert figure.data[0].x == (25, 40, 35)
    assert figure.data[1].x == (20, 30, 50)
    assert [(shape.x0, shape.x1) for shape in figure.layout.shapes] == [(10, 35), (20, 35), (45, 65)]


def test_the_words_in_below_and_above_stand_on_the_chart_and_what_changed_is_marked():
    figure = charts.energy_shares(NOW, RANGES, WRITTEN)
    assert {"25 %", "in the range · was 20 %", "above the range · was 30 %", "below the range · was 50 %"} <= set(
        texts(figure)
    )
    trace, at = named(figure, "25 %")
    assert trace.textfont.color[at] == ACT
    still, at = named(charts.energy_shares(NOW, RANGES), "25 %")
    assert still.textfont.color[at] == INK


def test_no_number_reads_as_inside_a_band_it_is_not_in():
    """Every number of a bar stands right of all bands, at the end of the axis."""
    figure = charts.energy_shares(NOW, RANGES, WRITTEN)
    for text in ("25 %", "40 %", "35 %"):
        trace, at = named(figure, text)
        assert trace.x[at] == 100 > max(shape.x1 for shape in figure.layout.shapes)
        assert trace.textposition == "middle right"


def test_colours_of_the_nutrients_are_the_ones_assigned():
    assert charts.energy_shares(NOW, RANGES).data[0].marker.color == ("#0072b2", "#e69f00", "#009e73")


def place_of(figure, text):
    trace, at = named(figure, text)
    return trace.x[at], trace.y[at]


def region_of(figure):
    shaded = next(trace for trace in figure.data if trace.fill == "toself")
    return list(zip(shaded.x, shaded.y, strict=True))


def test_balance_shades_the_region_where_all_three_ranges_hold():
    for x, y in region_of(triangle.balance(NOW, RANGES, WRITTEN)):
        protein = y / (50 * math.sqrt(3)) * 100
        carbohydrate = x - protein / 2
        fat = 100 - protein - carbohydrate
        assert 10 - 1e-9 <= protein <= 35 + 1e-9
        assert 20 - 1e-9 <= fat <= 35 + 1e-9
        assert 45 - 1e-9 <= carbohydrate <= 65 + 1e-9


def test_the_dots_lie_at_their_shares():
    dots = next(trace for trace in triangle.balance(NOW, RANGES, WRITTEN).data if trace.marker.symbol)
    assert dots.marker.symbol == ("circle-open", "circle")
    assert list(zip(dots.x, dots.y, strict=True)) == [
        pytest.approx((60, 10 * math.sqrt(3))),
        pytest.approx((47.5, 12.5 * math.sqrt(3))),
    ]


@for_each("protein", [0.05, 0.20, 0.45])
@for_each("fat", [0.05, 0.35, 0.50])
def test_the_names_of_the_two_dots_meet_neither_each_other_nor_the_region(protein, fat):
    now = {"protein": protein, "fat": fat, "carbohydrate": 1 - protein - fat}
    figure = triangle.balance(now, RANGES, WRITTEN)
    (x, y), (other_x, other_y) = place_of(figure, "now"), place_of(figure, "as written")
    assert x == other_x
    height = figure.layout.yaxis.range[1] - figure.layout.yaxis.range[0]
    assert abs(y - other_y) >= 0.1 * height
    left, right = min(x for x, _ in region_of(figure)), max(x for x, _ in region_of(figure))
    assert x < left or x > right


def test_the_region_fills_the_picture_until_a_dish_lies_far_from_it():
    near, far = (
        triangle.balance(WRITTEN, RANGES),
        triangle.balance({"protein": 0.9, "fat": 0.1, "carbohydrate": 0}, RANGES),
    )
    heights = [figure.layout.yaxis.range[1] - figure.layout.yaxis.range[0] for figure in (near, far)]
    region = [y for _, y in region_of(near)]
    assert (max(region) - min(region)) / heights[0] > 0.5
    assert heights[1] >= 100


def test_a_dish_without_energy_leaves_the_recipe_as_written_alone_in_the_triangle():
    figure = triangle.balance(NOTHING, RANGES, WRITTEN)
    dots = next(trace for trace in figure.data if trace.marker.symbol)
    assert (dots.x[1], dots.y[1]) == (None, None)
    assert "now" not in texts(figure)


def test_one_label_serves_where_the_dish_is_as_written():
    assert {"now", "as written"}.isdisjoint(texts(triangle.balance(WRITTEN, RANGES)))
    assert "now, as written" in texts(triangle.balance(WRITTEN, RANGES))


def test_sources_stand_in_the_order_of_the_recipe_as_written_whatever_is_moved():
    still = charts.sources(["Oil", "Lentils", "Feta"], [9, 1, 2], "Protein", "g", [0, 8, 3])
    assert still.layout.yaxis.ticktext == ("Lentils", "Feta", "Oil")
    assert still.data[0].x == (1, 2, 9)
    assert texts(still) == ["1 g, was 8 g", "2 g, was 3 g", "9 g, was 0 g"]


def test_what_brings_nothing_is_one_line():
    figure = charts.sources(["Lentils", *"abcdef"], [8, 0, 0, 0, 0.2, 0, 0], "Protein", "g")
    assert figure.layout.yaxis.ticktext == ("Lentils",)
    assert texts(figure) == ["8 g", "and six more bring nothing"]


def test_of_sixteen_that_bring_some_the_largest_have_a_bar_and_the_rest_is_summed():
    figure = charts.sources(SIXTEEN, [float(place + 1) for place in range(16)], "Protein", "g")
    assert len(figure.layout.yaxis.ticktext) == charts.MOST_ROWS
    assert texts(figure)[-1] == "and eight more bring 36 g together"  # 1 + 2 + ... + 8


def test_bars_use_the_width():
    for highest in (0.3, 0.7, 1.1, 5.0, 7.9, 23.0, 470.0):
        end = charts.sources(["Lentils"], [highest], "Protein", "g", decimals=1).layout.xaxis.range[1]
        assert 0.62 <= highest / end <= 1 / charts.AIR + 1e-9  # with air for what a slider adds


def test_the_axis_stands_still_while_a_slider_adds_a_little():
    written = [5.0, 3.0]
    ends = {
        charts.sources.drawing(["Lentils", "Rice"], [now, 3.0], "Protein", "g", written)["layout"]["xaxis"]["range"][1]
        for now in (0.0, 4.0, 5.0, 5.5, 6.0)
    }
    assert len(ends) == 1


def test_an_unknown_amount_has_no_bar_and_says_so():
    figure = charts.sources(["Lentils", "Sumac"], [8, math.nan], "Iron", "mg")
    assert figure.data[0].x == (8, None)
    assert texts(figure) == ["8 mg", "unknown"]
    assert "unknown for Sumac" in alternative(figure)


def test_nutrients_to_limit_stand_apart_by_heading_and_hatching():
    figure = charts.share_of_day(DAY, {"Sodium"}, at_least={"Vitamin A"})
    enough, less = figure.data[:2]
    assert figure.layout.yaxis.ticktext == (
        *("<b>Get enough of</b>", "Fiber", "Vitamin A"),
        *("<b>Keep down</b>", "Sodium"),
    )
    assert (enough.y, less.y) == ((1, 2), (4,))
    assert enough.marker.pattern.shape is None
    assert less.marker.pattern.shape == "/"


def test_a_share_with_a_missing_part_is_at_least_that():
    assert texts(charts.share_of_day(DAY, {"Sodium"}, at_least={"Vitamin A"}))[1] == "at least 127 %"


def test_a_share_far_beyond_the_day_ends_with_the_axis_and_its_number_says_how_far_it_goes():
    figure = charts.share_of_day({"Sodium": 3.4}, {"Sodium"})
    assert figure.data[1].x == (figure.layout.xaxis.range[1],) == (200,)
    assert "340 %" in texts(figure)
    assert [shape.x0 for shape in figure.layout.shapes] == [100]


@pytest.mark.parametrize("share", [0.95, 1.0, 1.05, 1.27, 3.0])
def test_numbers_never_meet_the_line_of_the_day(share):
    figure = charts.share_of_day({"Fiber": share}, set(), {"Fiber": share - 0.2})
    trace, at = next((t, 0) for t in figure.data if t.text and "was" in t.text[0])
    assert trace.x[at] >= figure.layout.xaxis.range[1] >= 100
    assert trace.textposition == "middle right"


def test_only_one_kind_of_nutrient_makes_one_group():
    assert charts.share_of_day({"Fiber": 0.3}, set()).layout.yaxis.ticktext == ("<b>Get enough of</b>", "Fiber")


def test_the_plate_says_which_part_brings_more_than_it_weighs():
    figure = parts.plate(["base", "topping"], PARTS)
    assert figure.layout.meta["sentence"] == "The topping is 10 % of the weight, and brings 60 % of the sodium."
    assert texts(figure).count("60 %") == 1
    even = parts.plate(["base", "topping"], {"weight": [0.5, 0.5], "sodium": [0.55, 0.45]})
    assert even.layout.meta["sentence"] == "Every part brings about as much as it weighs."


def test_in_a_comparison_the_longest_bar_of_each_nutrient_fills_the_width():
    figure = parts.comparison("Two grains", ["quinoa", "rice"], FOODS, "in a cooked cup")
    quinoa, rice = (trace for trace in figure.data if trace.type == "bar")
    assert quinoa.x == (1.0, 1.0)
    assert rice.x == (pytest.approx(205 / 222), None)
    assert "unknown" in texts(figure)


@pytest.mark.parametrize("amount", [0.0, math.nan])
def test_a_dish_of_nothing_draws_without_a_bar_or_a_nan(amount):
    figures = [
        charts.energy_shares(NOTHING, RANGES, WRITTEN),
        triangle.balance(NOTHING, RANGES, WRITTEN),
        charts.sources(["Lentils"], [amount], "Protein", "g"),
        charts.share_of_day({"Fiber": amount}, set()),
        parts.plate(["base"], {"weight": [amount], "sodium": [amount]}),
        parts.comparison("Two", ["a", "b"], {"Fiber": [(amount, "unknown"), (amount, "unknown")]}, "in 100 g"),
    ]
    for figure in figures:
        assert "NaN" not in figure.to_json()
        assert "nan" not in " ".join(texts(figure))
    assert alternative(figures[1]) == "Balance of energy: unknown, since there is no energy to share out."


def test_long_names_are_cut_after_a_word():
    figure = charts.sources(SIXTEEN[:4], [1, 2, 3, 4], "Protein", "g")
    assert all(len(name) <= NAME_LENGTH and name.endswith("…") for name in figure.layout.yaxis.ticktext)
    assert figure.layout.margin.l <= 300


@for_each("text", HOSTILE)
def test_a_name_shows_its_characters(text):
    shown = everything(text)[2].layout.yaxis.ticktext
    assert any(name in in_chart(text) or name.rstrip("…").rstrip() in in_chart(text) for name in shown)
    for figure in everything(text):
        loose = str(figure.to_dict()["data"]) + str(figure.layout.yaxis.ticktext)
        for ours in ("<b>Get enough of</b>", "<b>Keep down</b>", "their<br>usual"):
            loose = loose.replace(ours, "")
        assert "<" not in loose


def test_what_a_slider_changes_never_changes_the_traces_of_a_chart():
    assert len(charts.share_of_day({"Fiber": 1}, set()).data) == len(charts.share_of_day(DAY, {"Sodium"}).data)
    assert len(triangle.balance(NOTHING, RANGES).data) == len(triangle.balance(NOW, RANGES).data)
    assert len(charts.sources([], [], "Protein", "g").data) == len(charts.sources(["a"], [1], "Protein", "g").data)


def test_the_drawing_of_a_chart_is_its_figure_unchecked():
    drawing = charts.energy_shares.drawing(NOW, RANGES, WRITTEN)
    assert go.Figure(drawing) == charts.energy_shares(NOW, RANGES, WRITTEN)
