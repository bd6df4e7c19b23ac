import math

import pytest

from kit.errors import UnknownNameError
from kit.meal.changes import set_grams
from kit.meal.nutrition import nutrition
from kit.meal.recipe import recipe
from kit.show.views import COLUMNS, SOURCES_OF, drawings, read_out


@pytest.fixture(scope="module")
def written():
    return nutrition(recipe("Pot", ["1 cup lentils, dry", "2 tbsp olive oil", "1/2 tsp salt"], servings=4))


@pytest.fixture(scope="module")
def more(written):
    return nutrition(set_grams(written.recipe, written.recipe.ingredients[1].food.key, 54.0))


def test_the_stage_has_a_place_for_every_chart(written):
    assert sorted(name for column in COLUMNS for name in column) == sorted(drawings(written, written))


def test_charts_show_the_numbers_of_the_dish_beside_those_as_written(written, more):
    sources = drawings(more, written, "fat")["sources"]["data"]
    assert sorted(sources[0]["x"]) == pytest.approx(sorted(more.brings("fat"))[1:])  # salt brings none, and has no bar
    assert sorted(sources[1]["x"]) == pytest.approx(sorted(written.brings("fat"))[1:])
    shares = drawings(more, written)["shares"]["data"]
    assert shares[0]["x"] == pytest.approx([100 * share for share in more.energy_shares.values()])


def test_sodium_and_saturated_fat_are_to_be_kept_down_and_fiber_is_not(written):
    labels = drawings(written, written)["day"]["layout"]["yaxis"]["ticktext"]
    down = labels.index("<b>Keep down</b>")
    assert labels.index("Fiber") < down < min(labels.index("Sodium"), labels.index("Saturated fat"))


@pytest.mark.parametrize("rules", ["us", "eu"])
def test_only_nutrients_with_a_daily_value_are_shares_of_a_day(written, rules):
    assert "unknown" not in str(drawings(written, written, rules=rules)["day"]["data"])


@pytest.mark.parametrize("name", SOURCES_OF)
def test_every_nutrient_of_the_list_can_be_asked_for(written, name):
    assert drawings(written, written, name)["sources"]["layout"]["title"]["text"].startswith("Where the ")


def test_an_unknown_nutrient_is_told_with_the_nearest(written):
    with pytest.raises(UnknownNameError, match='no nutrient "protien"; did you mean "protein"'):
        drawings(written, written, "protien")


def test_the_read_out_says_what_can_be_said_and_what_it_was(written, more):
    energy, protein = read_out(more, written)[:2]
    assert energy.value.startswith("about ")
    assert energy.value.endswith("calories")
    assert energy.before.startswith("about ")
    assert protein.before == ""


def test_a_pot_of_nothing_is_drawn_without_a_number_that_is_none(written):
    nothing = nutrition(written.recipe.with_grams([0, 0, 0]))
    assert math.isnan(nothing.energy_shares["fat"])
    assert "nan" not in str(drawings(nothing, written)).lower()
