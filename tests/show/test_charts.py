import math

import plotly.graph_objects as go
import pytest

from kit.show import charts
from kit.show.marks import NAME_LENGTH, TEXT_SIZE

RANGES = {"protein": (0.10, 0.35), "fat": (0.20, 0.35), "carbohydrate": (0.45, 0.65)}
WRITTEN = {"protein": 0.20, "fat": 0.30, "carbohydrate": 0.50}
NOW = {"protein": 0.25, "fat": 0.40, "carbohydrate": 0.35}
NOTHING = dict.fromkeys(WRITTEN, math.nan)
DAY = {"Fiber": 0.48, "Vitamin A": 1.27, "Sodium": 0.36}
SIXTEEN = [f"Sweet potato number {place}, baked in its skin, without salt" for place in range(16)]


def texts(figure):
    return [text.strip() for trace in figure.data for text in trace.text or ()]


def alternative(figure):
    return figure.layout.meta["alternative"]


def everything():
    return [
        charts.energy_shares(NOW, RANGES, WRITTEN),
        charts.balance(NOW, RANGES, WRITTEN),
        charts.sources(["Lentils", "Feta"], [8.0, 3.0], "Protein", "g", [4.0, 3.0], 1),
        charts.share_of_day(DAY, {"Sodium"}),
    ]


def test_every_chart_is_a_figure_with_a_title_and_a_sentence_for_those_who_cannot_see_it():
    for figure in everything():
        assert isinstance(figure, go.Figure)
        assert figure.layout.title.text
        assert alternative(figure).endswith(".")


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
    bars, marks, words = figure.data
    assert bars.x == (25, 40, 35)
    assert marks.x == (20, 30, 50)
    assert [(shape.x0, shape.x1) for shape in figure.layout.shapes] == [(10, 35), (20, 35), (45, 65)]
    assert texts(figure) == ["25 %, was 20 %", "40 %, was 30 %", "35 %, was 50 %"]
    assert words.textfont.size == 24


def test_colours_of_the_nutrients_are_the_ones_assigned():
    assert charts.energy_shares(NOW, RANGES).data[0].marker.color == ("#0072b2", "#e69f00", "#009e73")


def test_words_stand_beyond_both_the_bar_and_the_mark():
    assert charts.energy_shares(NOW, RANGES, WRITTEN).data[2].x == (25, 40, 50)


def test_balance_shades_the_region_where_all_three_ranges_hold():
    region, written, now = charts.balance(NOW, RANGES, WRITTEN).data
    for protein, fat, carbohydrate in zip(region.a, region.b, region.c, strict=True):
        assert protein + fat + carbohydrate == pytest.approx(100)
        assert 10 - 1e-9 <= protein <= 35 + 1e-9
        assert 20 - 1e-9 <= fat <= 35 + 1e-9
        assert 45 - 1e-9 <= carbohydrate <= 65 + 1e-9
    assert (written.a, written.b, written.c) == ((20,), (30,), (50,))
    assert (now.a, now.b, now.c) == ((25,), (40,), (35,))
    assert (written.marker.symbol, now.marker.symbol) == ("circle-open", "circle")


@pytest.mark.parametrize("protein", [0.05, 0.20, 0.45])
def test_the_words_of_the_two_dots_never_meet(protein):
    now = {"protein": protein, "fat": 0.8 - protein, "carbohydrate": 0.2}
    _, written, here = charts.balance(now, RANGES, WRITTEN).data
    assert {written.textposition, here.textposition} == {"top center", "bottom center"}
    assert texts(charts.balance(now, RANGES, WRITTEN)) == ["as written", "now"]


def test_a_dish_without_energy_leaves_the_recipe_as_written_alone_in_the_triangle():
    _, written, now = charts.balance(NOTHING, RANGES, WRITTEN).data
    assert written.text == ("as written",)
    assert (now.a, now.b, now.c) == ((None,),) * 3


def test_one_label_serves_where_the_dish_is_as_written():
    assert texts(charts.balance(WRITTEN, RANGES)) == ["", "now, as written"]


def test_sources_stand_in_the_order_of_the_recipe_as_written_whatever_is_moved():
    still = charts.sources(["Oil", "Lentils", "Feta"], [9, 1, 2], "Protein", "g", [0, 8, 3])
    assert still.layout.yaxis.ticktext == ("Lentils", "Feta", "Oil")
    assert still.data[0].x == (1, 2, 9)
    assert texts(still) == ["1 g, was 8 g", "2 g, was 3 g", "9 g, was 0 g"]


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


def test_a_share_beyond_the_day_stays_on_the_axis_and_the_day_is_marked():
    figure = charts.share_of_day({"Sodium": 3.4}, {"Sodium"})
    assert figure.layout.xaxis.range[1] >= 340
    assert [shape.x0 for shape in figure.layout.shapes] == [100]


def test_only_one_kind_of_nutrient_makes_one_group():
    assert charts.share_of_day({"Fiber": 0.3}, set()).layout.yaxis.ticktext == ("<b>Get enough of</b>", "Fiber")


@pytest.mark.parametrize("amount", [0.0, math.nan])
def test_a_dish_of_nothing_draws_without_a_bar_or_a_nan(amount):
    figures = [
        charts.energy_shares(NOTHING, RANGES, WRITTEN),
        charts.balance(NOTHING, RANGES, WRITTEN),
        charts.sources(["Lentils"], [amount], "Protein", "g"),
        charts.share_of_day({"Fiber": amount}, set()),
    ]
    for figure in figures:
        assert "NaN" not in figure.to_json()
        assert "nan" not in " ".join(texts(figure))
    assert alternative(figures[1]) == "Balance of energy: unknown, since there is no energy to share out."


def test_sixteen_long_names_are_cut_after_a_word_and_keep_their_rows():
    figure = charts.sources(SIXTEEN, list(range(16)), "Protein", "g")
    assert len(figure.layout.yaxis.ticktext) == 16
    assert all(len(name) <= NAME_LENGTH and name.endswith("…") for name in figure.layout.yaxis.ticktext)
    assert figure.layout.height >= 16 * 24
    assert figure.layout.margin.l <= 300


def test_what_a_slider_changes_never_changes_the_traces_of_a_chart():
    for written, now in zip(everything(), [*everything()], strict=True):
        assert len(written.data) == len(now.data)
    assert len(charts.share_of_day({"Fiber": 1}, set()).data) == len(charts.share_of_day(DAY, {"Sodium"}).data)
    assert len(charts.balance(NOTHING, RANGES).data) == len(charts.balance(NOW, RANGES).data)


def test_the_drawing_of_a_chart_is_its_figure_unchecked():
    drawing = charts.energy_shares.drawing(NOW, RANGES, WRITTEN)
    assert go.Figure(drawing) == charts.energy_shares(NOW, RANGES, WRITTEN)
