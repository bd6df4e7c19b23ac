import json

import pytest

from kit.show.scenes import MOST_NUMBERS, NAMES, Shown, frame, numbers_scene, scene
from kit.show.setting import Setting
from kit.talk.library import bundled_talks, read_talk

TALK = read_talk("barley_squash_box")
WRITTEN = Setting(TALK)


@pytest.mark.parametrize("talk", bundled_talks())
@pytest.mark.parametrize("name", [name for name in NAMES if name != "change"])
def test_every_scene_of_every_talk_is_plain_and_has_its_words(talk, name):
    setting = Setting(read_talk(talk))
    made = scene(name, setting.talk, setting.now, setting.written, Shown())
    assert json.loads(json.dumps(made, allow_nan=False))["kind"] in ("numbers", "chart", "list")
    assert made["footer"]


def test_numbers_stand_as_they_are_said_and_as_they_were():
    setting = WRITTEN.tried("no feta")
    energy, sodium = numbers_scene(setting.now, setting.written, ["energy", "sodium"], "no feta")["numbers"]
    assert energy["label"] == "Energy, about"
    assert (energy["value"], energy["unit"]) == ("475", "calories")
    assert sodium["was"] == "was 500: no feta"


def test_four_numbers_at_most_are_shown():
    names = ["energy", "protein", "fiber", "sodium", "iron"]
    assert len(numbers_scene(WRITTEN.now, WRITTEN.written, names)["numbers"]) == MOST_NUMBERS


def test_the_frame_names_the_allergens_of_the_dish_as_it_is_set():
    assert frame(TALK, WRITTEN.now)["aside"].endswith("contains milk and tree nuts")
    without = WRITTEN.tried("no feta").tried("pumpkin seeds instead of the walnuts")
    assert frame(TALK, without.now)["aside"].endswith("none of the major allergens")


def test_the_recipe_stands_as_written_until_something_changes():
    made = scene("recipe", TALK, WRITTEN.now, WRITTEN.written, Shown())
    lines = [line for group in made["groups"] for line in group["lines"]]
    assert sorted(lines) == sorted(part.line for part in TALK.recipe.ingredients)
    setting = WRITTEN.tried("no feta")
    made = scene("recipe", TALK, setting.now, setting.written, Shown())
    assert not any("feta" in line for group in made["groups"] for line in group["lines"])
    assert made["sentence"] == "Contains tree nuts."


def test_keeping_comes_with_what_brings_each_allergen():
    made = scene("keeping", TALK, WRITTEN.now, WRITTEN.written, Shown())
    assert made["groups"][0]["lines"] == ["Milk, from the feta cheese", "Tree nuts, from the walnuts"]
