"""The working place: reading, choosing, correcting and saving, as its buttons do it."""

import ipywidgets as widgets
import pytest

from kit.show.prepare_panel import prepare
from kit.talk.library import read_talk


def parts(box, kind):
    """Return all widgets of a kind inside a box, in reading order."""
    found = [box] if isinstance(box, kind) else []
    for child in getattr(box, "children", ()):
        found += parts(child, kind)
    return found


@pytest.fixture
def place(tmp_path, monkeypatch):
    monkeypatch.chdir(tmp_path)
    monkeypatch.setenv("TALK_KIT_HOME", str(tmp_path / "own"))
    return prepare("pear_oat_jars")


def press(place, description):
    next(button for button in parts(place, widgets.Button) if button.description == description).click()


def paste(place, text):
    parts(place, widgets.Textarea)[0].value = text
    press(place, "Read this recipe")


def shown(place):
    return " ".join(part.value for part in parts(place, widgets.HTML))


def row_of(place, line):
    rows = [row for row in parts(place, widgets.HBox) if parts(row, widgets.FloatText)]
    return next(row for row in rows if line in parts(row, widgets.HTML)[0].value)


def test_it_begins_with_a_talk_and_its_numbers(place):
    assert "2 cups rolled oats" in parts(place, widgets.Textarea)[0].value
    assert "One of 4" in shown(place)
    assert "Protein" in shown(place)


def test_a_pasted_recipe_is_read_line_by_line(place):
    paste(place, "Bean pot\nServes 2\n1 cup beans, dry\n2 tbsp olive oil\n")
    assert "1 line(s) still to be settled" in shown(place)
    assert "not sure which food" in shown(place)


def test_a_food_is_picked_among_the_choices(place):
    paste(place, "Bean pot\nServes 2\n1 cup beans, dry\n2 tbsp olive oil\n")
    choice = parts(row_of(place, "1 cup beans"), widgets.Dropdown)[0]
    choice.value = next(value for _name, value in choice.options if value == "black-beans-dry")
    assert "still to be settled" not in shown(place)
    assert parts(row_of(place, "1 cup beans"), widgets.FloatText)[0].value == 194


def test_grams_are_corrected(place):
    paste(place, "Oil\nServes 1\n2 tbsp olive oil\n")
    before = shown(place)
    parts(row_of(place, "2 tbsp olive oil"), widgets.FloatText)[0].value = 54
    assert "weighed by hand" in shown(place)
    assert shown(place) != before


def test_grams_that_make_no_sense_are_told_and_change_nothing(place):
    paste(place, "Oil\nServes 1\n2 tbsp olive oil\n")
    parts(row_of(place, "2 tbsp olive oil"), widgets.FloatText)[0].value = -5
    assert "Please mend" in shown(place)
    assert "give a number from 0 to 1,000,000" in shown(place)


def test_a_talk_is_saved_and_never_over_another_unasked(place, tmp_path):
    paste(place, "Oil\nServes 1\n2 tbsp olive oil\n")
    parts(place, widgets.Text)[0].value = "oil"
    press(place, "Save as a talk")
    path = tmp_path / "own" / "talks" / "oil.toml"
    saved = path.read_text(encoding="utf-8")
    assert 'line = "2 tbsp olive oil"' in saved
    paste(place, "Greens\nServes 1\n4 cups kale, chopped\n")
    press(place, "Save as a talk")
    assert "another talk of yours" in shown(place)
    assert path.read_text(encoding="utf-8") == saved
    parts(place, widgets.Checkbox)[0].value = True
    press(place, "Save as a talk")
    assert "4 cups kale" in path.read_text(encoding="utf-8")
    assert (tmp_path / "own" / "bin" / "oil.toml").read_text(encoding="utf-8") == saved


def test_a_talk_that_was_opened_is_saved_with_all_that_is_not_shown(place, tmp_path):
    parts(row_of(place, "2 cups rolled oats"), widgets.FloatText)[0].value = 170
    press(place, "Save as a talk")
    (path,) = (tmp_path / "own" / "talks").iterdir()
    talk, bundled = read_talk(path), read_talk("pear_oat_jars")
    assert 170 in talk.recipe.grams
    assert (talk.points, talk.steps, talk.questions, talk.series) == (
        bundled.points,
        bundled.steps,
        bundled.questions,
        bundled.series,
    )


def test_absurd_servings_are_told(place):
    paste(place, "Oil\nServes 0\n2 tbsp olive oil\n")
    assert "Please mend" in shown(place)


def test_a_food_from_its_package_label_is_kept_and_then_read(place):
    form = {field.description: field for field in parts(place, widgets.Text)}
    form["Food"].value, form["Serving"].value = "Seed crackers", "30 g"
    for name, value in (("energy", "140"), ("fat", "6"), ("carbohydrate", "16"), ("protein", "5"), ("sodium", "150")):
        form[name].value = value
    press(place, "Keep this food")
    assert 'Kept as "seed-crackers"' in shown(place)
    paste(place, "Snack\nServes 1\n60 g seed crackers\n")
    assert "still to be settled" not in shown(place)


def test_what_is_pasted_is_shown_as_text_and_never_as_page(place):
    paste(place, "Oil\nServes 1\n2 tbsp <img src=x onerror=alert(1)> olive oil\n")
    assert "<img" not in shown(place)
