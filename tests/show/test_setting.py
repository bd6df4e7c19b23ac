import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from kit.errors import AmountError, ChangeError
from kit.meal.nutrition import nutrition
from kit.meal.portions import SHARE_OUT
from kit.show.setting import Setting, restored
from kit.talk.library import read_talk

TALK = read_talk("barley_squash_box")
WRITTEN = Setting(TALK)


def at(words):
    return next(place for place, part in enumerate(TALK.recipe.ingredients) if words in part.line)


def label(setting, place):
    steps, stands = setting.amounts(place)
    return steps[stands].label


def moved(setting, place, by):
    steps, stands = setting.amounts(place)
    return setting.with_amount(place, steps[stands + by])


def test_as_written_nothing_is_changed():
    assert WRITTEN.changed_rows() == set()
    assert WRITTEN.recipe.grams.tolist() == TALK.recipe.grams.tolist()
    assert [label(WRITTEN, place) for place in (0, 3)] == ["1 1/2 cups", "3 tbsp"]


def test_a_moved_slider_is_one_change_however_often_it_is_moved_and_none_where_it_returns():
    setting = moved(moved(WRITTEN, 0, 2), 0, 1)
    assert len(setting.made) == 1
    assert setting.changed_rows() == {0}
    assert moved(setting, 0, -3).made == ()


def test_what_ifs_stack_and_each_can_be_undone():
    setting = WRITTEN.tried("no feta").tried("half the salt")
    assert [made.words for made in setting.made] == ["no feta", "half the salt"]
    assert setting.changed_rows() == {at("feta"), at("salt")}
    assert setting.undone(0).changed_rows() == {at("salt")}
    assert setting.undone(1).undone(0).now["sodium"] == pytest.approx(WRITTEN.now["sodium"])


def test_undoing_what_was_added_takes_with_it_what_was_done_to_it():
    added = WRITTEN.tried("add 1/4 cup almonds")
    more = moved(added, len(TALK.recipe.ingredients), 1)
    assert len(more.made) == 2
    assert more.undone(0).made == ()


def test_before_and_after_hold_the_same_ingredients():
    setting = WRITTEN.tried("add 1/4 cup almonds")
    assert len(setting.written.recipe.ingredients) == len(setting.now.recipe.ingredients)
    assert setting.written["energy"] == pytest.approx(nutrition(TALK.recipe)["energy"])


def test_the_order_of_servings_and_amounts_does_not_matter():
    first = moved(WRITTEN.with_servings(12), 0, 2)
    steps, stands = first.amounts(0)
    scaled = steps[stands].grams
    assert first.recipe.grams[0] == pytest.approx(scaled)
    assert first.with_servings(6).recipe.grams[0] == pytest.approx(scaled / 2)


def test_making_more_leaves_a_serving_alone_and_sharing_out_does_not():
    assert WRITTEN.with_servings(12).now["protein"] == pytest.approx(WRITTEN.now["protein"])
    shared = WRITTEN.with_servings(12, SHARE_OUT)
    assert shared.now["protein"] == pytest.approx(WRITTEN.now["protein"] / 2)
    assert shared.with_servings(6, SHARE_OUT).now["protein"] == pytest.approx(WRITTEN.now["protein"])


def test_a_typed_what_if_of_a_scaled_dish_means_what_it_says():
    setting = WRITTEN.with_servings(12).tried("2 cups of feta")
    assert setting.recipe.grams[at("feta")] == pytest.approx(2 / 0.75 * TALK.recipe.grams[at("feta")], rel=0.01)


@pytest.mark.parametrize(
    ("text", "grams"),
    [("200 g", 200), ("3 cups", 600), ("3", 600), ("1 1/2", 300), ("½ cup", 100), ("0", 0), ("left out", 0)],
)
def test_a_typed_amount_means_what_it_says(text, grams):
    # 1 cup of dry pearled barley is 200 g: USDA SR26 20005
    assert WRITTEN.with_typed(0, text).recipe.grams[0] == pytest.approx(grams)


@pytest.mark.parametrize("text", ["a few", "-3", "cups", "12 llamas", "nan", "1e400"])
def test_what_is_no_amount_is_told_and_changes_nothing(text):
    with pytest.raises((ChangeError, AmountError)):
        WRITTEN.with_typed(0, text)


@pytest.mark.parametrize("servings", [0, -1, float("nan"), 1e9])
def test_impossible_servings_are_told(servings):
    with pytest.raises(AmountError, match="servings is"):
        WRITTEN.with_servings(servings)


def test_another_food_takes_the_place_and_gives_it_back():
    place = at("walnuts")
    setting = WRITTEN.with_food(place, "pumpkin-seeds")
    assert setting.recipe.ingredients[place].food.key == "pumpkin-seeds"
    assert setting.made[0].words == "pumpkin seeds for walnuts"
    assert setting.with_food(place, "walnuts").made == ()


def test_another_food_takes_over_the_amount_that_is_set():
    place = at("kale")
    half = WRITTEN.with_typed(place, "2 cups").with_food(place, "spinach-raw")
    assert half.recipe.ingredients[place].food.key == "spinach-raw"
    assert half.recipe.ingredients[place].count == pytest.approx(2)


def test_a_slider_moved_while_more_is_made_sets_the_amount_it_names():
    more = WRITTEN.with_servings(12).with_typed(3, "2 tbsp")
    assert (more.recipe.grams[3], label(more, 3)) == (pytest.approx(27.0), "2 tbsp")  # USDA SR26 04053: 13.5 g each
    assert more.with_servings(6).recipe.grams[3] == pytest.approx(13.5)


def test_what_was_added_has_a_slider_of_its_own():
    setting = WRITTEN.tried("add 1/4 cup almonds")
    steps, stands = setting.amounts(len(TALK.recipe.ingredients))
    assert stands > 0
    assert setting.with_amount(len(TALK.recipe.ingredients), steps[0]).recipe.grams[-1] == 0


def test_undoing_a_change_takes_along_what_was_about_it_and_nothing_else():
    swapped = WRITTEN.tried("black beans instead of the kidney beans").tried("double the black beans").tried("no feta")
    assert [made.words for made in swapped.undone(0).made] == ["no feta"]
    assert [made.words for made in swapped.undone(1).made] == [swapped.made[0].words, "no feta"]


def test_a_left_out_food_can_be_brought_back_by_its_slider():
    place = at("feta")
    setting = WRITTEN.tried("no feta")
    steps, stands = setting.amounts(place)
    assert steps[stands].label == "left out"
    assert max(step.grams for step in steps) > TALK.recipe.grams[place]


CHANGES = st.lists(
    st.sampled_from(
        ["no feta", "half the salt", "add 1/4 cup almonds", "for ten", "black beans instead of the kidney beans"]
    ),
    max_size=4,
    unique=True,
)


@settings(max_examples=15, deadline=None)
@given(CHANGES, st.integers(-3, 1))
def test_what_is_kept_brings_back_the_same_dish(lines, by):
    setting = moved(WRITTEN, 3, by) if by else WRITTEN
    for line in lines:
        setting = setting.tried(line)
    again = restored(setting.as_json(), TALK)
    assert again.recipe.grams.tolist() == pytest.approx(setting.recipe.grams.tolist())
    assert again.as_json() == setting.as_json()


@pytest.mark.parametrize(
    "values", [{}, {"made": [{"words": "x"}]}, {"made": [{"words": "x", "steps": [{"kind": "?"}]}]}]
)
def test_what_was_kept_wrongly_is_left_out(values):
    assert restored(values, TALK).made == ()
