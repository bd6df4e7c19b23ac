"""Talk files are read whole, or every fault of them is told at once."""

import pytest

from kit.errors import KitError, TalkFileError, UnknownNameError
from kit.talk.library import bundled_talks, read_talk, talk_from
from kit.talk.talk import Pot

LENTILS = '[[ingredient]]\nline = "1 cup lentils, dry"\n'


def written(tmp_path, text, name="lunch.toml"):
    path = tmp_path / name
    path.write_text(text, encoding="utf-8")
    return path


@pytest.mark.parametrize("name", sorted(bundled_talks()))
def test_bundled_talks_have_what_a_talk_needs(name):
    talk = read_talk(name)
    assert 9 <= len(talk.recipe.ingredients) <= 16
    assert len(talk.points) >= 12
    assert talk.steps
    assert talk.questions
    assert not [reading.problem for reading in talk.readings if reading.problem]


def test_bundled_talks_show_dairy_nuts_or_seeds_and_a_plant_based_dish():
    foods = {name: [part.food for part in read_talk(name).recipe.ingredients] for name in bundled_talks()}
    assert any("milk" in food.allergens for dish in foods.values() for food in dish)
    assert any(food.group in ("nut", "seed") for dish in foods.values() for food in dish)
    assert any(all(food.origin == "plant" for food in dish) for dish in foods.values())


def test_a_talk_file_gives_recipe_points_steps_and_questions(tmp_path):
    talk = read_talk(
        written(
            tmp_path,
            'title = "Pot"\nservings = 4\nserving_is = "bowl"\nkeeps_days = 3\ndish_is = "soup"\nfinished_grams = 900\n'
            + LENTILS
            + '[[point]]\nsay = "It is my own soup."\nsource = "my notes"\npins = { soup = "lentils-boiled" }\n'
            + '[[step]]\ntitle = "Boil"\npots = [{ name = "lentils", minutes = 20, before = 5 }, '
            + '{ name = "tray", minutes = 30, oven = 425 }]\n'
            + '[[question]]\nasks = "Less?"\ntry = "for two"\n',
        )
    )
    assert (talk.title, talk.recipe.servings, talk.recipe.serving_is, talk.keeps_days) == ("Pot", 4, "bowl", 3)
    assert (talk.recipe.dish_is, talk.recipe.finished_grams) == ("soup", 900)
    point = talk.points[0]
    assert (point.say, point.source, point.pins) == ("It is my own soup.", "my notes", {"soup": "lentils-boiled"})
    assert talk.steps[0].pots == (Pot("lentils", 20, before=5), Pot("tray", 30, oven=425))
    assert talk.questions[0].try_ == "for two"


def test_a_plain_recipe_is_a_talk_without_points(tmp_path):
    talk = read_talk(written(tmp_path, "Serves 2\n1 cup lentils, dry\n", "green_pot.txt"))
    assert (talk.title, talk.points) == ("green pot", ())


@pytest.mark.parametrize(
    ("text", "says"),
    [
        (LENTILS + "servings = 4", "servings belongs to the whole talk; write it above the first [[...]]"),
        ("servigns = 4\n" + LENTILS, 'top: no key "servigns"; did you mean "servings"?'),
        ("servings = 0\n" + LENTILS, "top: servings is 0; give a number from 0.1 to 10,000"),
        ('servings = "four"\n' + LENTILS, "top: servings is 'four'; write a number"),
        ('rules = "uk"\n' + LENTILS, 'top: rules is "uk"; write us or eu'),
        ("keeps_days = -1\n" + LENTILS, "top: keeps_days is -1; give a number from above 0 to 365"),
        (
            '[[ingredient]]\nline = "1 cup lentils"\nfood = "lentil-dry"',
            'no food "lentil-dry"; did you mean "lentils-dry"?',
        ),
        ('[[ingredient]]\nfood = "lentils-dry"', "ingredient 1: no line; write line ="),
        (LENTILS + "[[point]]\n", "point 1: nothing to say"),
        (LENTILS + '[[step]]\nsay = "x"\n', "no title; write title ="),
        (LENTILS + '[[step]]\ntitle = "Boil"\npots = [{ name = "x" }]\n', 'step 1 "Boil", pot 1: write {'),
        (LENTILS + '[[question]]\nasks = "No feta?"\ntry = { leave_out = "feta" }\n', 'try = "leave out the feta"'),
        ('dish_is = "pudding"\n' + LENTILS, 'dish_is is "pudding"; write main dish, meal, soup'),
        (LENTILS + 'slider = { low = "2 cups", high = "1 cup" }\n', "low is not below high"),
        (LENTILS + 'slider = { high = "plenty" }\n', "write an amount such as"),
        (LENTILS + 'swaps = ["lentil-red"]\n', 'no food "lentil-red" to swap with'),
        (LENTILS + 'treatment = "99"\n', 'no cooking treatment "99"'),
        ("point = 3\n" + LENTILS, "point: write each as [[point]]"),
        ("minutes = 1e10\n" + LENTILS, "top: minutes is 10000000000.0; give a number from above 0 to 600"),
        ("minutes = nan\n" + LENTILS, "top: minutes is nan; give a number"),
        ("words_per_minute = inf\n" + LENTILS, "top: words_per_minute is inf; give a number from 30 to 400"),
        ("servings = " + "9" * 400 + "\n" + LENTILS, "top: servings is 999"),
        (LENTILS + "grams = -1\n", "grams is -1; give a number from 0 to 1,000,000"),
        (LENTILS + "swaps = [{ x = 1 }]\n", "swaps holds {'x': 1}; write a text in quotes"),
        (LENTILS + 'food = ["lentils-dry", 3]\n', "food is 3; write the key of a food"),
        ('[ingredient]\nline = "1 cup lentils, dry"\n', "two square brackets; write [[ingredient]]"),
        (
            LENTILS + '[[step]]\ntitle = "Boil"\npots = [{ name = "x", minutes = 3, oven = 4000 }]\n',
            "oven is 4000; give",
        ),
        (LENTILS + '[[question]]\nasks = "Why?"\ntry = "leave out the moon"\n', 'question 1 "Why?": try: '),
        ("title = ", "title has no value"),
    ],
)
def test_a_fault_names_file_entry_and_what_to_write_instead(tmp_path, text, says):
    talk = talk_from(text, tmp_path / "lunch.toml")
    assert any(says in fault for fault in talk.faults), talk.faults


def test_a_fault_hides_nothing_else(tmp_path):
    text = "servings = -1\n" + LENTILS + '[[point]]\nsya = "Hello."\n[[point]]\nsay = "Good day."\n'
    talk = read_talk(written(tmp_path, text))
    assert len(talk.faults) == 3  # servings, the unknown key, nothing to say
    assert talk.recipe.servings == 1
    assert [point.say for point in talk.points] == ["Good day."]
    assert talk.recipe.grams.tolist() == [192]


def test_a_file_without_anything_to_show_is_told(tmp_path):
    with pytest.raises(TalkFileError, match=r"lunch\.toml, no ingredient; write \[\[ingredient\]\]"):
        read_talk(written(tmp_path, 'title = "Pot"\n'))


def test_lines_that_cannot_be_read_wait_beside_the_others(tmp_path):
    text = '[[ingredient]]\nline = "2 cups moon dust"\n' + LENTILS + '[[ingredient]]\nline = "lentils"\n'
    talk = read_talk(written(tmp_path, text))
    assert talk.recipe.grams.tolist() == [192]
    assert [line.line for line in talk.recipe.open_lines] == ["2 cups moon dust", "lentils"]
    assert all(line.problem for line in talk.recipe.open_lines)
    assert talk.faults == ()


def test_a_line_with_two_foods_takes_a_food_and_a_weight_for_each(tmp_path):
    line = '[[ingredient]]\nline = "1 tsp each salt and pepper"\n'
    plain = read_talk(written(tmp_path, line)).recipe
    assert [part.food.key for part in plain.ingredients] == ["salt", "pepper-black"]
    talk = read_talk(written(tmp_path, line + 'food = ["salt", "pepper-white"]\ngrams = ["", 3]\n'))
    assert [part.food.key for part in talk.recipe.ingredients] == ["salt", "pepper-white"]
    assert talk.recipe.grams.tolist() == [plain.grams[0], 3]


def test_a_talk_with_a_label_of_its_own_is_read_with_it(tmp_path):
    label = '[[label]]\nname = "Hilltop crackers"\nserving = "5 crackers (30 g)"\n[label.amounts]\nenergy = 130\n'
    talk = read_talk(written(tmp_path, '[[ingredient]]\nline = "10 Hilltop crackers"\n' + label))
    assert talk.recipe.grams.tolist() == [60]


def test_an_unknown_talk_is_told_with_the_nearest():
    with pytest.raises(UnknownNameError, match='no talk or recipe file "pear_oat_jar"; did you mean "pear_oat_jars"'):
        read_talk("pear_oat_jar")


def test_a_file_that_is_no_text_is_refused(tmp_path):
    path = tmp_path / "picture.toml"
    path.write_bytes(b"\x89PNG\xff\xfe")
    with pytest.raises(KitError, match=r"picture.toml is no UTF-8 text"):
        read_talk(path)


def test_stated_grams_take_the_place_of_the_line(tmp_path):
    talk = read_talk(written(tmp_path, LENTILS + "grams = 200\n"))
    assert talk.recipe.grams.tolist() == [200]
    assert "weighed by hand" in talk.readings[0].how


def test_a_slider_runs_between_the_ends_that_the_file_gives(tmp_path):
    talk = read_talk(written(tmp_path, LENTILS + 'slider = { low = "1/2 cup", high = "3 cups" }\n'))
    assert talk.recipe.ingredients[0].slider == pytest.approx((96, 576))


def test_stated_grams_of_nothing_leave_the_ingredient_out(tmp_path):
    talk = read_talk(written(tmp_path, LENTILS + "grams = 0\n"))
    assert (talk.recipe.ingredients[0].grams, talk.recipe.ingredients[0].count) == (0, 0)


def test_entries_and_notes_can_be_kept_for_herself(tmp_path):
    text = 'notes = "ask for the big pot"\n' + LENTILS
    text += '[[point]]\nsay = "Slowly."\nprivate = true\n[[question]]\nasks = "Why?"\nprivate = true\n'
    talk = read_talk(written(tmp_path, text + '[[step]]\ntitle = "Breathe"\nprivate = true\n'))
    assert talk.notes == "ask for the big pot"
    assert (talk.points[0].private, talk.steps[0].private, talk.questions[0].private) == (True, True, True)
    talk = read_talk(written(tmp_path, LENTILS + '[[point]]\nsay = "Slowly."\nprivate = "yes"\n'))
    assert talk.faults == ('point 1 "Slowly.": private is yes; write true or false',)
