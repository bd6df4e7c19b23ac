"""A talk with private entries, notes and a comment, as somebody saved it."""

import pytest

from kit.talk.library import read_talk

TALK = """# SECRET comment
title = "Lentil pot"
notes = "SECRET notes"
servings = 4
serving_is = "one bowl"

[[ingredient]]
line = "1 1/2 cups lentils, dry"
part = "pot"

[[ingredient]]
line = "1/2 cup feta, crumbled"

[[point]]
say = "A bowl holds {protein}."

[[point]]
say = "SECRET joke."
private = true

[[step]]
title = "Start the lentils"
pots = [{ name = "lentils", minutes = 20 }]

[[step]]
title = "SECRET breath"
hands_minutes = 1
private = true

[[question]]
asks = "Can I leave out the feta?"
try = "leave out the feta"
answer = "Yes, then a bowl has {sodium} less."

[[question]]
asks = "SECRET question"
answer = "SECRET answer"
private = true
"""


@pytest.fixture
def talk(tmp_path):
    path = tmp_path / "lentil_pot.toml"
    path.write_text(TALK, encoding="utf-8")
    return read_talk(path)
