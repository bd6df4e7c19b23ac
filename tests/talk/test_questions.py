"""What a prepared question tries on screen."""

import pytest

from kit.errors import KitError, TalkFileError
from kit.speech.points import validate
from kit.talk.library import bundled_talks, read_talk
from kit.talk.questions import tried

BOX = read_talk("barley_squash_box").recipe
TALK = '[[ingredient]]\nline = "1 cup lentils, dry"\n[[question]]\nasks = "What if?"\ntry = {wish}\n'


def grams(recipe, food):
    return sum(part.grams for part in recipe.ingredients if part.food.key == food)


def test_something_is_left_out_by_its_key_or_its_words():
    assert grams(tried(BOX, {"leave_out": "cheese-feta"}), "cheese-feta") == 0
    assert grams(tried(BOX, {"leave_out": "feta"}), "cheese-feta") == 0


def test_something_is_swapped_cup_for_cup():
    changed = tried(BOX, {"swap": "barley", "for": "rice-brown-dry"})
    assert grams(changed, "barley-pearled-dry") == 0
    assert grams(changed, "rice-brown-dry") == pytest.approx(1.5 * 185)  # USDA SR26 20036: a cup of 185 g


def test_more_is_made_or_the_same_shared_out():
    assert tried(BOX, {"make_more": 12}).grams.sum() == pytest.approx(2 * BOX.grams.sum())
    shared = tried(BOX, {"share_out": 12})
    assert (shared.servings, shared.grams.sum()) == (12, pytest.approx(BOX.grams.sum()))


@pytest.mark.parametrize("name", sorted(bundled_talks()))
def test_every_bundled_question_can_be_tried(name):
    talk = read_talk(name)
    assert all(tried(talk.recipe, question.try_) for question in talk.questions if question.try_)


@pytest.mark.parametrize(
    ("wish", "says"),
    [
        ({"leave_uot": "feta"}, 'no key "leave_uot"; did you mean "leave_out"?'),
        ({"leave_out": "pepperoni"}, "pepperoni"),
        ({"swap": "feta"}, "try one thing"),
        ({"leave_out": "feta", "make_more": 3}, "try one thing"),
        ({"swap": "feta", "for": "tofu-frim"}, 'did you mean "tofu-firm"'),
        ({"make_more": 0}, "make_more is 0; give a number of servings"),
        ({"make_more": "ten"}, "make_more is 'ten'"),
    ],
)
def test_what_cannot_be_tried_is_told(wish, says):
    with pytest.raises(KitError, match=says.replace("(", r"\(")):
        tried(BOX, wish)


def test_a_talk_with_a_question_that_cannot_be_tried_is_not_read(tmp_path):
    path = tmp_path / "pot.toml"
    path.write_text(TALK.replace("{wish}", '{ leave_out = "feta" }'), encoding="utf-8")
    with pytest.raises(TalkFileError, match=r'pot\.toml, question 1 "What if\?": try: no ingredient'):
        validate(read_talk(path))
