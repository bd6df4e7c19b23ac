"""What the controls tell beside their sliders."""

import pytest

from kit.show.controls import Controls
from kit.talk.library import read_talk


@pytest.mark.parametrize(
    ("name", "brings"), [("barley_squash_box", "milk and tree nuts"), ("split_pea_soup", "none of the major allergens")]
)
def test_the_allergens_of_the_dish_stand_under_its_title(name, brings):
    assert f"Contains {brings}" in Controls(read_talk(name)).heading.value


def test_followers_are_told_once_a_move():
    controls = Controls(read_talk("pear_oat_jars"))
    told = []
    controls.followers.append(lambda: told.append(controls.now["energy"]))
    before = controls.now["energy"]
    controls.sliders[0].index = 0
    assert len(told) == 1
    assert told[0] < before
