import pytest

from kit.show.before_after import asked_for, change_scene, done
from kit.show.desk_content import allergens_changed, points_changed, row, rows, servings
from kit.show.setting import Setting
from kit.speech.verdict import Verdict
from kit.speech.what_if import TOO_SMALL
from kit.talk.library import bundled_talks, read_talk

TALK = read_talk("barley_squash_box")
WRITTEN = Setting(TALK)


def told(line):
    return {one["label"]: one for one in change_scene(WRITTEN.tried(line).both, line)["rows"]}


def test_a_change_shows_what_differs_most_on_top_with_words_that_fit_its_numbers():
    rows = change_scene(WRITTEN.tried("no feta").both, "no feta")["rows"]
    assert len(rows) == 4
    sodium = told("no feta")["Sodium"]
    assert (sodium["before"], sodium["value"], sodium["by"]) == ("500 milligrams", "325", "about a third less")
    protein = told("no feta")["Protein"]
    assert (protein["before"], protein["value"], protein["by"]) == ("16 grams", "14", "2 less")


def test_targets_show_what_was_asked_for_first_and_what_was_done():
    line = "20 g protein and under 500 mg sodium"
    setting = WRITTEN.tried(line)
    words = done(WRITTEN.pot, setting.made[0].steps, "us")
    made = change_scene(setting.both, line, did=words, first=asked_for(line))
    assert [one["label"] for one in made["rows"]][:2] == ["Protein", "Sodium"]
    assert "barley, not 1 1/2 cups" in made["answer"]


def test_where_a_serving_stays_the_same_it_is_said():
    setting = WRITTEN.tried("make it for ten")
    made = change_scene(setting.both, "make it for ten", did=done(WRITTEN.pot, setting.made[0].steps, "us"))
    assert made["rows"] == []
    assert made["answer"] == "10 servings, everything times 1.67. What one serving holds stays the same."


def test_what_the_ranges_cannot_tell_apart_is_too_small_to_tell():
    assert told("pumpkin seeds instead of walnuts")["Energy"]["by"] == TOO_SMALL
    assert told("pumpkin seeds instead of walnuts")["Energy"]["same"]


def test_what_does_not_change_at_all_is_not_shown():
    assert set(told("no salt")) == {"Sodium"}


def test_allergens_gone_and_new_are_named():
    assert allergens_changed(WRITTEN) == ""
    assert allergens_changed(WRITTEN.tried("no feta")) == "Milk gone"
    assert allergens_changed(WRITTEN.tried("almonds instead of the feta")) == "Milk gone"
    assert allergens_changed(WRITTEN.tried("add 2 tbsp tahini")) == "Sesame new"


@pytest.mark.parametrize("talk", bundled_talks())
@pytest.mark.parametrize("system", ["us", "metric"])
def test_every_ingredient_has_a_row_that_stands_where_the_recipe_does(talk, system):
    setting = Setting(read_talk(talk), system)
    made = rows(setting)
    assert sorted(one["at"] for one in made) == list(range(len(setting.talk.recipe.ingredients)))
    for one in made:
        assert one["steps"][0] == "left out"
        assert 0 < one["place"] < len(one["steps"])
        assert not one["changed"]


def test_rows_stand_part_by_part():
    parts = [one["part"] for one in rows(WRITTEN)]
    assert parts == sorted(parts, key=parts.index)


def test_a_row_offers_the_foods_that_the_talk_names():
    place = next(at for at, part in enumerate(TALK.recipe.ingredients) if "walnuts" in part.line)
    assert [key for key, _ in row(WRITTEN, place)["foods"]] == ["walnuts", "pumpkin-seeds"]


def test_a_food_that_was_typed_stands_among_those_of_its_row():
    made = row(WRITTEN.tried("almonds instead of the walnuts"), 12)
    assert (made["food"], [key for key, _ in made["foods"]]) == ("almonds", ["walnuts", "pumpkin-seeds", "almonds"])


def test_the_servings_stand_at_the_recipes_own():
    made = servings(WRITTEN)
    assert made["values"][made["place"]] == TALK.recipe.servings
    assert not made["changed"]
    assert servings(WRITTEN.with_servings(7))["changed"]


def test_the_first_sentence_that_turned_is_told_and_how_many_more():
    def said(*verdicts):
        return [Verdict(f"Sentence {place}.", verdict, "") for place, verdict in enumerate(verdicts)]

    written = said("holds", "holds", "off")
    assert points_changed(written, written) == ""
    assert points_changed(written, said("holds", "off", "off")) == "Now otherwise: \u2717 Sentence 1."
    assert points_changed(written, said("off", "off", "off")) == "Now otherwise: \u2717 Sentence 0. and 1 more"
