"""What is settled in a rehearsal stands in the talk's file, and nothing else of it has changed."""

import difflib

import pytest
from talks import own_talk

from kit.errors import KitError
from kit.talk.desk_file import ConflictError
from kit.talk.library import bin_folder, bundled_talks, read_talk, talks_folder
from kit.talk.settling import Settlement, open_talk, settled, with_settlement, written, written_beside

FILE = """# For the choir.
title = "Lentil pot"
servings = 4
colour = "green"

[[ingredient]]
line = "1 cup lentils, dry"   # from the tin

[[point]]
say = ""

# the heart of it
[[point]]
say = "It is vegan."  # said slowly
private = true
pins = { it = "lentils-boiled" }
note = "hers"

[[point]]
say = "It is warm."

[[step]]
title = "Stir"
say = "It is vegan, so stir."

[[question]]
asks = "Vegan?"
answer = "It is vegan."
"""
VEGAN = Settlement("point", 0, "It is vegan.", say="Everything in it comes from plants.")


@pytest.fixture(autouse=True)
def home(tmp_path, monkeypatch):
    monkeypatch.setenv("TALK_KIT_HOME", str(tmp_path / "home"))


@pytest.fixture
def pot():
    return own_talk("pot", FILE)


def changed_lines(before, after):
    rows = difflib.ndiff(before.splitlines(), after.splitlines())
    return [row for row in rows if row.startswith(("- ", "+ "))]


@pytest.mark.parametrize(
    ("made", "line"),
    [
        (VEGAN, 'say = "Everything in it comes from plants."  # said slowly'),
        (Settlement("step", 0, "It is vegan, so stir.", say="Stir."), 'say = "Stir."'),
        (Settlement("question", 0, "It is vegan.", say="Yes."), 'answer = "Yes."'),
        (Settlement("point", 1, "It is warm.", pins={"it": "milk"}), "milk"),
    ],
    ids=["point", "step", "answer", "pin"],
)
def test_one_entry_changes_and_everything_else_stays_sign_for_sign(pot, made, line):
    before, now = settled(open_talk("pot"), made)
    assert before.text == FILE
    changed = changed_lines(FILE, pot.read_text(encoding="utf-8"))
    assert len([row for row in changed if row[0] == "-"]) <= 1
    assert line in changed[-1]
    assert now.text == pot.read_text(encoding="utf-8")


def test_a_sentence_keeps_what_stands_beside_it_however_different_the_new_words_are(pot):
    _, now = settled(open_talk("pot"), VEGAN)
    point = now.talk.points[0]
    assert (point.say, point.private, point.pins) == (VEGAN.say, True, {"it": "lentils-boiled"})
    assert 'note = "hers"' in now.text


def test_a_talk_that_ships_with_the_kit_becomes_a_copy_of_hers_and_stays_itself():
    name = next(iter(bundled_talks()))
    shipped = bundled_talks()[name].read_bytes()
    point = read_talk(name).points[2]
    before, now = settled(open_talk(name), Settlement("point", 2, point.say, say="It is warm."))
    assert now.entry.own
    assert now.talk.title == read_talk(bundled_talks()[name]).title
    assert (before.entry, before.talk.points[2]) == (now.entry, point)
    assert now.talk.points[2].say == "It is warm."
    assert bundled_talks()[name].read_bytes() == shipped


def test_a_plain_text_becomes_a_talk_file_beside_it(pot):
    text = "Pot\nServes 2\n1 cup lentils, dry\n\nScript\nIt is vegan.\n"
    plain = talks_folder() / "plain.txt"
    plain.write_text(text, encoding="utf-8")
    _, now = settled(open_talk("plain"), VEGAN)
    assert (now.entry.path.suffix, now.talk.points[0].say) == (".toml", VEGAN.say)
    assert plain.read_text(encoding="utf-8") == text


def test_what_was_changed_elsewhere_is_kept_beside_what_is_settled_here(pot):
    opened = open_talk("pot")
    pot.write_text(FILE.replace("It is warm.", "It is hot."), encoding="utf-8")
    before, now = settled(opened, VEGAN)
    assert [point.say for point in before.talk.points] == ["It is vegan.", "It is hot."]
    assert [point.say for point in now.talk.points] == [VEGAN.say, "It is hot."]


def test_a_sentence_that_was_changed_elsewhere_is_a_conflict_and_nothing_is_written(pot):
    opened = open_talk("pot")
    theirs = FILE.replace("It is vegan.", "It is meatless.")
    pot.write_text(theirs, encoding="utf-8")
    with pytest.raises(ConflictError, match="changed in another window"):
        settled(opened, VEGAN)
    assert pot.read_text(encoding="utf-8") == theirs
    mine = with_settlement(opened.text, VEGAN)
    beside = written_beside(opened, mine)
    assert (beside.text, pot.read_text(encoding="utf-8")) == (mine, theirs)
    assert written(opened, mine, over=True).talk.points[0].say == VEGAN.say
    assert [path.read_text(encoding="utf-8") for path in bin_folder().iterdir()] == [theirs]


def test_a_file_that_is_gone_is_a_conflict_too(pot):
    opened = open_talk("pot")
    pot.unlink()
    with pytest.raises(ConflictError, match="is gone"):
        settled(opened, VEGAN)


def test_a_file_with_a_mistake_is_not_written(pot):
    pot.write_text(f"{FILE}\n[[point]\nsay = 'x'\n", encoding="utf-8")
    before = pot.read_text(encoding="utf-8")
    with pytest.raises(KitError):
        settled(open_talk("pot"), VEGAN)
    assert pot.read_text(encoding="utf-8") == before
