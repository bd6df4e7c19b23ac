"""Tables for notebooks."""

import html
import re

import pandas as pd
import pytest
from hostile import HOSTILE

from kit.lines.recipe_text import read_recipe
from kit.meal.nutrition import nutrition
from kit.show.escaping import in_html
from kit.show.tables import checks_table, lines_table, readable, serving_table, weights_table
from kit.talk.library import read_talk

TALK = read_talk("barley_squash_box")


def test_each_line_has_a_row_with_what_has_to_be_asked():
    table = lines_table(read_recipe("Pot\nServes 2\n1 cup lentils, dry\n1 cup beans\n").readings).data
    assert table["grams"].tolist() == ["192", "?"]
    assert "not sure which food" in table["to ask"][1]


def test_a_serving_has_its_ranges_and_what_can_be_said():
    table = serving_table(nutrition(TALK.recipe)).data.set_index("nutrient")
    assert table.loc["Energy", "to say"] == "about 500 calories"
    assert table.loc["Sodium", "of a day"] == "22 %"


def test_all_nutrients_are_shown_when_none_is_named():
    assert len(serving_table(nutrition(TALK.recipe), ()).data) == 35


def test_dry_barley_is_eaten_cooked_and_squash_is_bought_whole():
    table = weights_table(TALK.recipe).data.set_index("food")
    assert table.loc["Barley, pearled, dry", "as eaten"] == "865 g"
    assert table.loc["Butternut squash, raw", "as bought"] == "1,000 g"


@pytest.mark.parametrize("failed_only", [True, False])
def test_checks_are_shown_whole(failed_only):
    table = checks_table(nutrition(TALK.recipe), failed_only)
    assert len(table.data) == (0 if failed_only else 30)
    assert "..." not in table.to_html()


def test_what_somebody_wrote_shows_its_characters_and_never_acts():
    markup = readable(pd.DataFrame([{"line": text, "<b>how": text} for text in HOSTILE])).to_html()
    page = html.unescape(markup)
    assert all(in_html(text) in markup.replace("&#34;", "&quot;").replace("&#39;", "&#x27;") for text in HOSTILE)
    assert all(text in page for text in HOSTILE)
    assert re.findall(r"<(?!/?(?:table|thead|tbody|tr|th|td|style)\b)[^>]*>", markup) == []
