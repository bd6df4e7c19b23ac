import pytest

from kit.errors import UnknownNameError
from kit.files import TALK_VARIABLE
from kit.meal.nutrition import nutrition
from kit.show.panels import Panel, on_screen
from kit.show.views import drawings, read_out
from kit.talk.library import read_talk


@pytest.fixture
def panel():
    return Panel(read_talk("barley_squash_box"))


@pytest.fixture
def sent(panel, monkeypatch):
    messages = []
    monkeypatch.setattr(panel.stage, "send", lambda content, buffers=None: messages.append(content["changes"]))
    return messages


def shown(panel):
    return panel.stage.content["figures"], [number["value"] for number in panel.stage.content["read_out"]]


def expected(panel, source_of="protein"):
    now, written = nutrition(panel.scenario.recipe), nutrition(panel.talk.recipe)
    return drawings(now, written, source_of), [number.value for number in read_out(now, written)]


def at(panel, words):
    return next(place for place, part in enumerate(panel.talk.recipe.ingredients) if words in part.line)


def label(panel, words):
    return panel.sliders[at(panel, words)].label


def test_every_ingredient_has_a_slider_that_stands_where_the_recipe_does(panel):
    assert len(panel.sliders) == len(panel.talk.recipe.ingredients)
    assert label(panel, "barley") == "1 1/2 cups"
    assert label(panel, "olive oil") == "3 tbsp"
    assert shown(panel) == expected(panel)


def test_every_slider_can_leave_its_ingredient_out(panel):
    assert {slider.options[0] for slider in panel.sliders} == {("left out", 0.0)}


def test_a_moved_slider_sends_every_chart_and_the_read_out_in_one_message(panel, sent):
    panel.sliders[at(panel, "barley")].index += 3
    [message] = sent
    assert message["figures"].keys() == {"shares", "balance", "sources", "day"}
    assert "read_out" in message
    assert shown(panel) == expected(panel)


def test_a_moved_slider_sends_nothing_but_the_stages_message(panel, monkeypatch):
    others = [panel.heading, panel.hint, panel.servings, *panel.sliders[1:]]
    for widget in others:
        monkeypatch.setattr(widget, "send_state", lambda *_args, **_more: pytest.fail("a message of its own"))
    panel.sliders[0].index += 1


def test_the_button_goes_back_to_the_recipe_as_written(panel):
    before = shown(panel)
    panel.sliders[at(panel, "feta")].index = 0
    panel.servings.value = 10.0
    panel.foods[at(panel, "kale")].value = "spinach-raw"
    panel.reset.click()
    assert shown(panel) == before
    assert panel.servings.value == 6
    assert label(panel, "feta") == "3/4 cup"
    assert panel.foods[at(panel, "kale")].value == "kale-raw"


def test_making_more_renames_the_amounts_and_leaves_the_charts_alone(panel, sent):
    panel.servings.value = 12.0
    assert label(panel, "barley") == "3 cups"
    assert sent == []


def test_sharing_out_keeps_the_amounts_and_changes_the_charts(panel, sent):
    panel.servings.value = 12.0
    panel.meaning.value = "share out"
    assert label(panel, "barley") == "1 1/2 cups"
    assert len(sent) == 1
    assert shown(panel) == expected(panel)


def test_metric_measures_rename_the_amounts(panel, sent):
    panel.measures.value = "metric"
    assert label(panel, "barley").endswith(" g")
    assert sent == []


def test_another_food_takes_a_place_where_the_talk_names_one(panel):
    panel.foods[at(panel, "kale")].value = "spinach-raw"
    assert panel.scenario.recipe.ingredients[at(panel, "kale")].food.key == "spinach-raw"
    assert label(panel, "kale") == "4 cups"
    assert shown(panel) == expected(panel)


def test_the_chooser_draws_the_sources_of_another_nutrient(panel, sent):
    panel.source_of.value = "fiber"
    assert sent[0]["figures"].keys() == {"sources"}
    assert shown(panel) == expected(panel, "fiber")


def test_another_talk_brings_its_own_sliders_and_charts(panel):
    panel.talk_choice.value = "split_pea_soup"
    assert panel.talk.name == "split_pea_soup"
    assert len(panel.sliders) == len(panel.talk.recipe.ingredients)
    assert shown(panel) == expected(panel)
    panel.sliders[0].index = 0
    assert shown(panel) == expected(panel)


def test_the_screen_opens_with_the_talk_that_was_asked_for(monkeypatch):
    monkeypatch.setenv(TALK_VARIABLE, "split_pea_soup")
    assert "split pea" in on_screen().children[0].children[1].value.lower()


def test_a_recipe_of_ones_own_is_shown_too(tmp_path):
    (tmp_path / "oats.txt").write_text("Oats & <berries>\nServes 2\n1 cup rolled oats\n2 cups whole milk\n")
    panel = Panel(read_talk(tmp_path / "oats.txt"))
    assert "Oats &amp; &lt;berries&gt;" in panel.heading.value
    assert panel.talk_choice.label == "Oats & <berries>"
    panel.talk_choice.value = "barley_squash_box"
    panel.talk_choice.value = "oats"
    assert shown(panel) == expected(panel)


def test_a_talk_that_is_not_there_is_told():
    with pytest.raises(UnknownNameError, match="no talk or recipe file"):
        on_screen("no_such_talk")
