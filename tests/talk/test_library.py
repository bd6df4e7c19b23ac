"""Her own talks beside those that ship with the kit: one list, found by name, title or path, hers to change."""

import os
import shutil
from contextlib import suppress

import pytest

from kit.errors import KitError, UnknownNameError
from kit.food.finding import find
from kit.lines.reader import read_lines
from kit.talk import library
from kit.talk.desk_file import open_desk
from kit.talk.drafts import drafts
from kit.talk.last_used import last_used, use
from kit.talk.library import bundled_talks, find_talk, read_talk, talks, titles
from kit.talk.names import file_name
from kit.talk.own_talks import begin, delete, duplicate, rename
from kit.talk.practice import Card, Score, read_scores, record
from kit.talk.remembering import Memory

SOUP = 'title = "Leek soup"  # a remark\nservings = 4\n\n# the only line\n[[ingredient]]\nline = "2 leeks, sliced"\n'


@pytest.fixture(autouse=True)
def home(tmp_path, monkeypatch):
    monkeypatch.setenv("TALK_KIT_HOME", str(tmp_path / "home"))
    return tmp_path / "home"


def own(name, text=SOUP):
    folder = library.talks_folder()
    folder.mkdir(parents=True, exist_ok=True)
    (folder / name).write_text(text, encoding="utf-8")
    return folder / name


def test_own_and_bundled_talks_stand_in_one_list_by_title():
    own("soup.toml")
    own("chili.txt", "Turkey chili\nServes 4\n1 lb ground turkey\n")
    listed = [(entry.title, entry.own) for entry in talks()]
    assert listed == sorted(listed, key=lambda row: row[0].casefold())
    assert ("Leek soup", True) in listed
    assert ("Turkey chili", True) in listed
    assert len(listed) == 2 + len(bundled_talks())


def test_of_two_talks_of_one_title_hers_is_told_apart_where_she_chooses():
    copy = duplicate("split_pea_soup", "Smoky split pea and tomato soup")
    assert titles()[copy.stem] == "Smoky split pea and tomato soup (yours)"
    assert titles()["split_pea_soup"] == "Smoky split pea and tomato soup"
    own("split_pea_soup.toml")  # a file that she put there: hers goes first
    assert titles()["split_pea_soup"] == "Leek soup"


def test_a_talk_is_found_by_name_title_or_path():
    path = own("soup.toml")
    for asked in ("soup", "Leek soup", "leek SOUP", str(path)):
        assert read_talk(asked).title == "Leek soup"
    assert find_talk("Barley and roasted squash box").name == "barley_squash_box"
    with pytest.raises(UnknownNameError, match='did you mean "Leek soup"'):
        find_talk("Leak soup")


def test_a_title_of_two_talks_is_asked_by_name():
    own("soup.toml")
    own("soup_2.toml")
    with pytest.raises(KitError, match="title of several talks; write the name of one: soup, soup_2"):
        find_talk("Leek soup")


def test_her_practice_and_her_settings_go_with_a_talk_that_is_renamed_or_copied():
    own("soup.toml")
    card = Card("It has {energy}.", "It has ____.", "It has 90 calories.")
    record("soup", card, knew=True)
    screen = Memory("screen")
    screen.keep("soup", {"system": "metric"})
    screen.write()
    copy, renamed = duplicate("soup", "Choir soup"), rename("soup", "Leek and potato soup")
    for path in (copy, renamed):
        assert read_scores(path.stem)[0] == {card.key: Score(right=1, in_a_row=1)}
        assert Memory("screen").of(path.stem) == {"system": "metric"}


def test_a_copy_of_a_bundled_talk_is_hers_to_change_and_loses_nothing():
    path = duplicate("split_pea_soup", "Split pea soup for the choir")
    assert find_talk("Split pea soup for the choir").own
    copied, original = path.read_text(encoding="utf-8"), bundled_talks()["split_pea_soup"].read_text(encoding="utf-8")
    assert copied.splitlines()[3:] == original.splitlines()[3:]
    assert read_talk(path).faults == ()


def test_a_talk_is_renamed_with_its_file_and_remarks_stay():
    own("soup.toml")
    use("soup")
    path = rename("soup", "Soup 2.0")
    assert path.name == "soup_2.0.toml"
    assert path.read_text(encoding="utf-8") == SOUP.replace("Leek soup", "Soup 2.0")
    assert last_used().name == "soup_2.0"
    assert begin("Soup 2.1").name == "soup_2.1.toml"


def test_a_deleted_talk_lies_in_the_bin(home):
    own("soup.toml")
    path = delete("soup")
    assert path == home / "bin" / "soup.toml"
    assert path.read_text(encoding="utf-8") == SOUP
    own("soup.toml")
    assert delete("soup").name == "soup_2.toml"
    with pytest.raises(KitError, match="no talk in your folder and cannot be deleted; make a copy"):
        delete("split_pea_soup")


def test_a_new_talk_takes_no_other_ones_place(tmp_path):
    first, second = begin("Turkey chili"), begin("Turkey  chili")
    assert (first.name, second.name) == ("turkey_chili.toml", "turkey_chili_2.toml")
    assert begin("Barley squash box").name == "barley_squash_box_2.toml"
    assert begin("Pot", tmp_path / "shelf") == tmp_path / "shelf" / "pot.toml"
    with pytest.raises(KitError, match="a talk needs a title"):
        begin("  ")


def test_the_talk_last_used_is_remembered_while_it_is_there():
    assert last_used().name == next(iter(bundled_talks()))
    path = own("soup.toml")
    use("Leek soup")
    assert last_used().path == path
    path.unlink()
    assert last_used().name == next(iter(bundled_talks()))


@pytest.mark.parametrize(
    "title",
    [
        "../../x",
        "/etc/passwd",
        "..",
        ".hidden",
        "CON",
        "a" * 400,
        "é" * 400,
        "a/b\\c:d",
        "\x00\n",
        "~",
        "",
        "🍲" * 99,
        "x.",
    ],
)
def test_any_title_is_the_name_of_a_file_in_her_folder(title):
    name = file_name(title)
    path = library.talks_folder() / f"{name}.toml"
    assert path.resolve().parent == library.talks_folder().resolve()
    assert not name.startswith((".", "-"))
    assert 0 < len(name.encode()) <= 90
    path.parent.mkdir(parents=True, exist_ok=True)
    path.write_text("x", encoding="utf-8")
    assert os.listdir(path.parent) == [f"{name}.toml"]


def test_names_that_differ_in_a_number_stay_two():
    assert len({file_name(title) for title in ("Soup 2.0", "Soup 2.1", "Soup 20", "Soup")}) == 4
    assert file_name("my.talk") == "my.talk"


def test_a_folder_that_cannot_be_used_is_told_in_one_sentence(tmp_path, monkeypatch):
    (tmp_path / "file").write_text("x", encoding="utf-8")
    monkeypatch.setenv("TALK_KIT_HOME", str(tmp_path / "file" / "home"))
    assert len(talks()) == len(bundled_talks())
    use("split_pea_soup")  # not remembered, and no harm
    with pytest.raises(KitError, match="cannot be written"):
        begin("Turkey chili")


def test_without_a_home_the_variable_is_named(monkeypatch):
    monkeypatch.delenv("TALK_KIT_HOME")
    monkeypatch.setattr(library.files.Path, "home", lambda: (_ for _ in ()).throw(RuntimeError("no home")))
    assert len(talks()) == len(bundled_talks())
    with pytest.raises(KitError, match="TALK_KIT_HOME"):
        begin("Turkey chili")


@pytest.mark.parametrize("name", ["a" * 300, "a\x00b", "/" * 5000, "\ud800"])
def test_names_that_no_file_can_have_are_told(name):
    with pytest.raises(KitError, match=r"no talk or recipe file|is a folder"):
        read_talk(name)


def test_a_title_that_cannot_be_read_hides_no_talk():
    library.talks_folder().mkdir(parents=True)
    damaged = [
        r'title = "a\qb"',
        'title = "a\x01b"',
        r'title = "\ud800"',
        "title = 3",
        "\x00",
        b"\xff".decode("latin-1"),
    ]
    for number, text in enumerate(damaged):
        (library.talks_folder() / f"soup_{number}.toml").write_text(text, encoding="latin-1")
    begin("Turkey chili")
    hers = {entry.title for entry in talks() if entry.own}
    assert hers == {"Turkey chili", *(f"soup {number}" for number in range(len(damaged)))}


def test_a_plain_talk_is_copied_and_renamed_with_all_but_its_title_as_it_was():
    library.talks_folder().mkdir(parents=True)
    plain = library.talks_folder() / "soup.txt"
    for text in ("Leek soup\nServes 4\n\n1 cup leeks\n", "1 cup leeks\n2 cups milk\n"):
        plain.write_text(text, encoding="utf-8")
        copy = duplicate(plain, "Thick soup")
        assert read_talk(copy).title == "Thick soup"
        assert [line.line for line in read_talk(copy).readings] == [line.line for line in read_talk(plain).readings]
        assert copy.suffix == ".txt"


def test_a_talk_with_faults_is_not_renamed_before_they_are_mended():
    library.talks_folder().mkdir(parents=True)
    faulty = library.talks_folder() / "soup.toml"
    faulty.write_text('title = "Soup"\nservings = = 4\n', encoding="utf-8")
    with pytest.raises(KitError, match=r"soup\.toml has faults; mend them first"):
        rename(faulty, "Stew")
    assert faulty.read_text(encoding="utf-8") == 'title = "Soup"\nservings = = 4\n'


PLACES = (
    *("talks", "drafts", "bin", "remembered", "foods.csv", "release.sqlite", "practice.json", "last_talk.txt"),
    *("talks/x.toml", "talks/x.txt", "drafts/x.json", "remembered/on_screen.json"),
)
JUNK = (b"", b"\x00\xff\xfe", b'{"a": 1e999}', b"[[[]]]", b"null", b"a;b\n1;2", b"SQLite format 3\x00\x01")


def put(path, junk):
    path.parent.mkdir(parents=True, exist_ok=True)
    if junk == "folder":
        path.mkdir()
    elif junk == "circle":
        path.symlink_to(path.name)
    else:
        path.write_bytes(junk)


def test_whatever_lies_where_her_files_are_is_passed_over_or_told(home):
    asked = (
        *(talks, last_used, drafts, lambda: drafts(find_talk("pear_oat_jars").path), lambda: read_talk("x")),
        *(lambda: open_desk("pear_oat_jars"), lambda: read_scores("pear_oat_jars"), lambda: read_lines(["1 cup qqq"])),
        *(
            lambda: find("zzz bananas", 3),
            lambda: Memory("on_screen").of("pear_oat_jars"),
            lambda: use("pear_oat_jars"),
        ),
    )
    for place in PLACES:
        for junk in (*JUNK, "folder", "circle"):
            shutil.rmtree(home, ignore_errors=True)
            put(home / place, junk)
            for ask in asked:
                with suppress(KitError):
                    ask()
            assert {entry.name for entry in talks()} >= set(bundled_talks()), (place, junk)
