import json
import math

import plotly.graph_objects as go
import pytest

from kit.show import charts, triangle
from kit.show.marks import ACT, INK
from kit.show.stage import ReadOut, Stage, difference

RANGES = {"protein": (0.10, 0.35), "fat": (0.20, 0.35), "carbohydrate": (0.45, 0.65)}
WRITTEN = {"protein": 0.20, "fat": 0.30, "carbohydrate": 0.50}
NOW = {"protein": 0.25, "fat": 0.25, "carbohydrate": 0.50}


def drawings(now):
    return {
        "shares": charts.energy_shares.drawing(now, RANGES, WRITTEN),
        "balance": triangle.balance.drawing(now, RANGES, WRITTEN),
    }


@pytest.fixture
def stage():
    return Stage([drawings(WRITTEN)], [ReadOut("Energy", "about 430 kcal")])


@pytest.fixture
def sent(stage, monkeypatch):
    messages = []
    monkeypatch.setattr(stage, "send", lambda content, buffers=None: messages.append((content, buffers)))
    return messages


def test_a_change_of_every_chart_and_the_read_out_is_one_message(stage, sent):
    stage.show(drawings(NOW), [ReadOut("Energy", "about 450 kcal", "about 430 kcal")])
    [(message, _)] = sent
    assert message["changes"]["figures"].keys() == {"shares", "balance"}
    assert message["changes"]["read_out"][0]["value"] == "about 450 kcal"


def test_only_arrays_and_texts_that_changed_are_sent(stage, sent):
    stage.show(drawings(NOW))
    change = sent[0][0]["changes"]["figures"]["shares"]
    assert change.keys() == {"traces", "meta"}
    assert change["traces"]["0"] == {"x": [25, 25, 50]}
    assert change["traces"]["4"] == {"text": [" 25 %", " 25 %", " 50 %"], "textfont": {"color": [ACT, ACT, INK]}}
    assert "key" not in change["meta"]
    assert len(json.dumps(sent[0][0])) < 3000


def test_what_did_not_change_sends_nothing(stage, sent):
    stage.show(drawings(WRITTEN), [ReadOut("Energy", "about 430 kcal")])
    assert sent == []


def test_a_page_that_opens_later_gets_what_is_shown_now(stage, sent):
    stage.show(drawings(NOW), [ReadOut("Energy", "about 450 kcal")])
    content = stage.get_state()["content"]
    assert content["figures"] == drawings(NOW)
    assert content["read_out"][0]["value"] == "about 450 kcal"


def test_a_change_of_layout_sends_the_chart_whole(stage, sent):
    other = charts.energy_shares.drawing(NOW, RANGES | {"fat": (0.1, 0.3)}, WRITTEN)
    stage.show({"shares": other})
    assert sent[0][0]["changes"]["figures"] == {"shares": {"drawing": other}}


def test_checked_figures_are_shown_as_well_as_drawings():
    figure = charts.energy_shares(WRITTEN, RANGES)
    assert Stage([{"shares": figure}]).content["figures"]["shares"] == figure.to_plotly_json()
    assert isinstance(figure, go.Figure)


def test_plotlys_script_is_sent_when_a_page_asks_and_is_no_part_of_the_state(stage, sent):
    assert "Plotly" not in str(stage.get_state()["content"])
    stage._handle_custom_msg({"ask": "plotly"}, [])
    [(answer, buffers)] = sent
    assert answer == {"answer": "plotly"}
    assert b"Plotly" in buffers[0][-1000:]


def test_another_message_is_not_answered(stage, sent):
    stage._handle_custom_msg({"ask": "something else"}, [])
    assert sent == []


def test_a_dish_without_energy_is_sent_without_nan(stage, sent):
    stage.show(drawings(dict.fromkeys(WRITTEN, math.nan)))
    assert "NaN" not in json.dumps(sent[0][0])


def test_a_chart_with_other_traces_is_sent_whole():
    before, after = {"data": [{"x": [1]}], "layout": {}}, {"data": [{"x": [1], "text": ["a"]}], "layout": {}}
    assert difference(before, after) == {"drawing": after}
