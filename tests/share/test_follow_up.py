"""The follow-up is whole, replaces nothing unasked, and tells nothing that is private."""

import csv
import email
import email.policy
import io
import json
import re
import zipfile
from collections import Counter
from dataclasses import replace

import pytest
from hostile import HOSTILE

from kit.__main__ import main
from kit.errors import KitError
from kit.food.labels.label import Label
from kit.meal.nutrition import nutrition
from kit.share.contents import contents
from kit.share.follow_up import follow_up
from kit.share.handout import handout
from kit.share.mail import mail
from kit.share.numbers_csv import numbers_csv
from kit.share.pack import public_text
from kit.talk.library import bundled_talks, read_talk
from kit.talk.talk import Point, Question

FILES = {"handout.html", "follow-up.eml", "numbers.csv", "notebook.zip"}
DEFAULT = email.policy.default


def everything(folder):
    """Every byte of what was written, archives and mails opened up."""
    held = [path.read_bytes() for path in folder.iterdir()]
    with zipfile.ZipFile(folder / "notebook.zip") as archive:
        held += [archive.read(name) for name in archive.namelist() if not name.endswith(".whl")]
    message = email.message_from_bytes((folder / "follow-up.eml").read_bytes(), policy=DEFAULT)
    held += [part.get_payload(decode=True) or b"" for part in message.walk()]
    return held


def test_every_file_is_written_and_nothing_else_is_left(talk, tmp_path):
    written = list(follow_up(talk, tmp_path / "out"))
    assert {path.name for path in written} >= FILES
    assert set(written) == set((tmp_path / "out").iterdir())


def test_what_is_private_is_nowhere_in_what_is_sent(talk, tmp_path):
    list(follow_up(talk, tmp_path / "out"))
    assert not [held[:80] for held in everything(tmp_path / "out") if b"SECRET" in held]
    assert any(b"Start the lentils" in held for held in everything(tmp_path / "out"))


def test_an_earlier_follow_up_is_not_replaced_unasked(talk, tmp_path):
    folder = tmp_path / "out"
    folder.mkdir()
    (folder / "numbers.csv").write_text("mine", encoding="utf-8")
    with pytest.raises(KitError, match=r"numbers\.csv exists already"):
        list(follow_up(talk, folder))
    assert [path.name for path in folder.iterdir()] == ["numbers.csv"]
    list(follow_up(talk, folder, replace=True))
    assert (folder / "numbers.csv").read_text(encoding="utf-8") != "mine"


def test_a_folder_that_cannot_be_made_is_told(talk, tmp_path):
    (tmp_path / "out").write_text("a file", encoding="utf-8")
    with pytest.raises(KitError, match="cannot be written"):
        list(follow_up(talk, tmp_path / "out"))


def test_a_full_disk_is_told_and_leaves_no_half_file(talk, tmp_path, monkeypatch):
    def full(_descriptor):
        raise OSError(28, "No space left on device")

    monkeypatch.setattr("os.fsync", full)
    with pytest.raises(KitError, match="No space left on device"):
        list(follow_up(talk, tmp_path / "out"))
    assert list((tmp_path / "out").iterdir()) == []


def test_the_mail_is_an_unsent_draft_without_an_address(talk):
    message = email.message_from_bytes(mail(contents(talk), {"numbers.csv": b"a,b\r\n"}), policy=DEFAULT)
    assert message["X-Unsent"] == "1"
    assert not {"to", "from", "cc", "bcc"} & {name.lower() for name in message}
    assert [part.get_content_type() for part in message.walk()] == [
        *("multipart/mixed", "multipart/alternative", "text/plain", "text/html", "text/csv"),
    ]
    text = message.get_body(("plain",)).get_content()
    assert "[link to the recording]" in text
    assert not [part for part in message.walk() if part.defects]


def test_links_stand_in_the_mail_where_they_are_given(talk):
    message = email.message_from_bytes(
        mail(contents(talk), {}, "https://a.example/r", "https://a.example/s"), policy=DEFAULT
    )
    for kind in ("plain", "html"):
        assert "https://a.example/r" in message.get_body((kind,)).get_content()


def test_sentences_that_do_not_hold_are_left_out_and_named(talk):
    talk = replace(talk, points=(*talk.points, Point("This pot is vegan."), Point("It cures the flu.")))
    says = contents(talk)
    assert {verdict.say for verdict in says.not_sent} >= {"This pot is vegan.", "It cures the flu."}
    page = handout(says)
    assert "cures" not in page
    assert "vegan" not in page


def test_an_answer_of_hers_has_its_numbers_filled(talk):
    assert "{sodium}" not in handout(contents(talk))


def with_text(talk, text):
    """The talk with one text in every place where somebody writes one."""
    first, *rest = talk.recipe.ingredients
    named = replace(first, line=text, part=text, food=replace(first.food, name=text))
    recipe = replace(talk.recipe, title=text, serving_is=text, ingredients=(named, *rest))
    return replace(talk, recipe=recipe, series=text, points=(Point(text),), questions=(Question(text, "", text),))


def test_what_somebody_wrote_is_text_in_the_handout():
    talk = read_talk("split_pea_soup")
    plain = elements_of(with_text(talk, "plain"))
    assert [text for text in HOSTILE if elements_of(with_text(talk, text)) != plain] == []


def elements_of(talk):
    return Counter(re.findall(r"<[a-z0-9]+", handout(contents(talk))))


def test_what_somebody_wrote_cannot_break_the_mail_or_the_table():
    talk = read_talk("split_pea_soup")
    for text in HOSTILE:
        says = contents(with_text(talk, text))
        message = email.message_from_bytes(mail(says, {}), policy=DEFAULT)
        assert message["Bcc"] is None
        assert not message.defects
        rows = list(csv.reader(io.StringIO(numbers_csv(says.numbers), newline="")))
        assert len({len(row) for row in rows}) == 1
        assert not any(cell.startswith(("=", "@", "\t", "\r")) for row in rows for cell in row)


def test_the_pack_holds_the_talk_the_notebooks_the_kit_and_where_to_start(talk, tmp_path):
    list(follow_up(talk, tmp_path / "out"))
    with zipfile.ZipFile(tmp_path / "out" / "notebook.zip") as archive:
        names = archive.namelist()
        start = archive.read("START_HERE.txt").decode()
        notebooks = [json.loads(archive.read(name)) for name in names if name.endswith(".ipynb")]
    assert {"START_HERE.txt", "lentil_pot.toml"} < set(names)
    (kit,) = (name for name in names if name.endswith(".whl"))
    assert f"pip install --quiet {kit}" in start
    cells = [cell for notebook in notebooks for cell in notebook["cells"] if cell["cell_type"] == "code"]
    assert cells
    assert all(cell["outputs"] == [] and cell["execution_count"] is None for cell in cells)


def test_a_packed_talk_gives_the_same_numbers(talk, tmp_path):
    path = tmp_path / "packed.toml"
    path.write_text(public_text(talk.path.read_text(encoding="utf-8")), encoding="utf-8")
    assert nutrition(read_talk(path).recipe).per_serving.tolist() == nutrition(talk.recipe).per_serving.tolist()


def test_a_packed_label_stays(tmp_path):
    assert Label  # the entry of a label is the talk file's own
    text = '[[label]]\nname = "Oat squares"\nserving = "55 g"\nenergy = 230\n'
    assert "Oat squares" in public_text(text)


@pytest.mark.parametrize("name", bundled_talks())
def test_the_command_writes_the_follow_up_of_each_talk(name, tmp_path, capsys):
    assert main(["follow-up", name, "--to", str(tmp_path / "out")]) == 0
    assert capsys.readouterr().out.count("wrote ") == len(list((tmp_path / "out").iterdir()))
