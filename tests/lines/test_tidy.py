"""A written line in plain words."""

import pytest
from each import for_each
from hypothesis import given
from strategies import texts

from kit.lines.tidy import tidy, without_bullet


@for_each("bullet", ["- ", "* ", "• ", "1. ", "12) ", "[ ] ", "☐ ", "▢ ", "◻ ", ""])
def test_a_bullet_or_number_is_no_part_of_the_line(bullet):
    assert without_bullet(f"{bullet}2 eggs") == "2 eggs"


@for_each(
    ("line", "plain"),
    [
        ("2# lean ground beef", "2 lb lean ground beef"),
        ("2 TB butter", "2 tbsp butter"),
        ("4 white or brown eggs", "4 eggs"),
        ("3 egg whites", "3 egg whites"),
        ("3 Tbsps. honey", "3 tbsp honey"),
        ("1 cup un-cooked rice", "1 cup uncooked rice"),
        ("1 cup prepared instant oatmeal", "1 cup cooked instant oatmeal"),
        ("1 cup prepared horseradish", "1 cup prepared horseradish"),
        ("1 cup non-salted cashews", "1 cup unsalted cashews"),
        ("8 oz penne, cooked according to package directions, drained", "8 oz penne, drained"),
        ("1 can whole tomatoes, crushed by hand", "1 can whole tomatoes"),
        ("6 oz cooked turkey, no skin", "6 oz cooked turkey, skinless"),
        ("to taste black pepper", "black pepper, to taste"),
        ("1 can tomatoes, not drained", "1 can tomatoes, undrained"),
        ("1 can tomatoes, do not drain", "1 can tomatoes, undrained"),
        ("2 cups kidney beans*", "2 cups kidney beans"),
        ("2 cans 11 oz cans mandarin oranges", "2 11 oz can mandarin oranges"),
        ("6 chicken thighs, skin removed", "6 chicken thighs, skinless deskinned"),
        ("2 peaches, pits removed", "2 peaches, pitted"),
        ("1 lb asparagus, tough ends snapped off", "1 lb asparagus,"),
        ("1 bunch cilantro, washed and dried", "1 bunch cilantro,"),
        ("1 apple, cored (do not peel)", "1 apple, cored (unpeeled)"),
        ("1 can pineapple, drained, juice reserved", "1 can pineapple, drained"),
        ("1 lb beef, cut into 1-inch pieces", "1 lb beef"),
        ("1 cup rice w/o salt", "1 cup rice without salt"),
        ("1 pork tenderloin, silver skin removed", "1 pork tenderloin,"),
        ("2 x 400g/14oz cans tomatoes", "2 x 400g cans tomatoes"),
        ("4 oz 1/3-less-fat cream cheese", "4 oz reduced-fat cream cheese"),
        ("1 (2.6 oz) pouch salmon", "1 (2.6 oz) pouch canned salmon"),
        ("a few shakes of paprika", "a few dashes of paprika"),
        ("2 protein shakes", "2 protein shakes"),
        ("1 lb fresh or frozen (thawed) cod or haddock", "1 lb fresh cod or haddock"),
        ("2 cups fresh or frozen berries", "2 cups fresh or frozen berries"),
        ("1 can tomatoes with basil, garlic, and oregano", "1 can tomatoes"),
        ("1 can tomatoes with garlic and green peppers", "1 can tomatoes with garlic and green peppers"),
        ("15 oz beans, canned (1 can, drained)", "1 (15 oz) can beans, canned (drained)"),
    ],
)
def test_each_way_to_write_it_becomes_the_plain_one(line, plain):
    assert tidy(line) == plain


@pytest.mark.parametrize(
    "line",
    ["2 cups cut green beans", "2 cups corn cut off the cob", "1 cup nonfat milk", "1 (15 oz) can pumpkin", "1 lb cod"],
)
def test_what_is_plain_already_stays(line):
    assert tidy(line) == line


@given(texts)
def test_any_text_becomes_some_text(text):
    assert isinstance(tidy(text), str)


@pytest.mark.parametrize(
    ("line", "plain"),
    [
        ("1 #10 can tomatoes", "1 (106 oz) can tomatoes"),
        ("1 (No. 2) can peaches", "1 (20 oz) can peaches"),
        ("1 lg. onion", "1 large onion"),
        ("2 med. carrots", "2 medium carrots"),
        ("1 doz. eggs", "1 dozen eggs"),
    ],
)
def test_short_forms_and_numbered_cans_are_written_out(line, plain):
    assert tidy(line) == plain


def test_a_root_that_is_peeled_is_not_one_that_is_taken_off():
    assert "root" in tidy("1 celery root, peeled and cut into matchsticks")
    assert "root" not in tidy("2 beets, roots trimmed")
