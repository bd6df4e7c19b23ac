"""A pasted recipe is settled line by line and saved as a talk, never over another unasked."""

import tomllib

import pytest

from kit.errors import AmountError, KitError, LineError
from kit.talk.draft import as_recipe_text, draft_from_talk, draft_from_text, save_talk, talk_toml
from kit.talk.library import bundled_talks, read_talk

TEXT = "Bean pot\nServes 4\nFor the pot:\n1 cup beans, dry\n2 tbsp olive oil\n"


def test_a_line_that_could_mean_several_foods_stays_open_until_one_is_chosen():
    draft = draft_from_text(TEXT)
    assert draft.open == (0,)
    settled = draft.choose(0, "black-beans-dry")
    assert settled.open == ()
    assert settled.readings[0].grams == 194  # USDA SR26 16014: a cup of black beans
    assert draft.open == (0,), "the first draft is as it was"


def test_corrected_grams_take_the_place_of_what_was_read():
    draft = draft_from_text(TEXT).choose(0, "black-beans-dry").correct(0, 200)
    assert draft.recipe().grams[0] == 200
    assert draft.readings[0].noun_grams == 200  # still one cup


@pytest.mark.parametrize("grams", [-1, float("nan"), 1e12])
def test_grams_that_make_no_sense_are_refused(grams):
    with pytest.raises(AmountError, match="give 0 g or more"):
        draft_from_text(TEXT).correct(1, grams)


def test_an_open_draft_is_not_saved(tmp_path):
    with pytest.raises(LineError, match="1 cup beans, dry"):
        save_talk(draft_from_text(TEXT), tmp_path / "pot.toml")
    assert list(tmp_path.iterdir()) == []


def test_a_saved_draft_reads_back_as_the_same_recipe(tmp_path):
    draft = draft_from_text(TEXT).choose(0, "black-beans-dry").correct(1, 30)
    talk = read_talk(save_talk(draft, tmp_path / "pot"))
    assert talk.path.name == "pot.toml"
    assert [part.food.key for part in talk.recipe.ingredients] == ["black-beans-dry", "olive-oil"]
    assert talk.recipe.grams.tolist() == [194, 30]
    assert [part.part for part in talk.recipe.ingredients] == ["pot", "pot"]


def test_a_file_that_is_there_is_replaced_only_when_that_is_said(tmp_path):
    draft = draft_from_text("Oil\nServes 1\n2 tbsp olive oil\n")
    path = tmp_path / "oil.toml"
    path.write_text("mine", encoding="utf-8")
    with pytest.raises(KitError, match="exists already"):
        save_talk(draft, path)
    assert path.read_text(encoding="utf-8") == "mine"
    save_talk(draft, path, replace_existing=True)
    assert tomllib.loads(path.read_text(encoding="utf-8"))["title"] == "Oil"


@pytest.mark.parametrize("name", sorted(bundled_talks()))
def test_a_bundled_talk_pasted_as_text_is_read_the_same(name):
    talk = read_talk(name)
    again = draft_from_text(as_recipe_text(draft_from_talk(talk))).recipe()
    assert again.grams.tolist() == pytest.approx(talk.recipe.grams.tolist())
    assert [part.food.key for part in again.ingredients] == [part.food.key for part in talk.recipe.ingredients]


def test_quotes_and_signs_in_a_recipe_survive_the_file():
    draft = draft_from_text('Auntie\'s "best" oil ½\nServes 1\n2 tbsp olive oil\n')
    assert tomllib.loads(talk_toml(draft))["title"] == 'Auntie\'s "best" oil 1/2'
