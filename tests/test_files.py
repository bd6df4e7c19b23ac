"""A file is written whole or not at all, and never over another unasked."""

import os

import pytest

from kit.errors import KitError
from kit.files import bundled, own_folder, write_whole


def test_a_file_is_written_with_its_folder(tmp_path):
    path = write_whole(tmp_path / "new" / "talk.toml", "title = 'Suppe ½'\n")
    assert path.read_text(encoding="utf-8") == "title = 'Suppe ½'\n"
    assert [file.name for file in path.parent.iterdir()] == ["talk.toml"]


def test_a_file_that_is_there_stays_unless_that_is_said(tmp_path):
    path = write_whole(tmp_path / "talk.toml", "first")
    with pytest.raises(KitError, match="exists already; choose another name"):
        write_whole(path, "second")
    assert path.read_text(encoding="utf-8") == "first"
    assert write_whole(path, "second", replace=True).read_text(encoding="utf-8") == "second"


def test_a_write_that_fails_leaves_the_old_file_and_nothing_beside_it(tmp_path, monkeypatch):
    path = write_whole(tmp_path / "talk.toml", "first")

    def full(*_places):
        raise OSError(28, "No space left on device")

    monkeypatch.setattr(os, "replace", full)
    with pytest.raises(KitError, match="cannot be written"):
        write_whole(path, "second", replace=True)
    assert path.read_text(encoding="utf-8") == "first"
    assert [file.name for file in tmp_path.iterdir()] == ["talk.toml"]


def test_the_users_folder_is_where_the_environment_says(tmp_path, monkeypatch):
    monkeypatch.setenv("TALK_KIT_HOME", str(tmp_path))
    assert own_folder() == tmp_path
    monkeypatch.delenv("TALK_KIT_HOME")
    assert own_folder().name == ".talk-kit"


def test_bundled_files_are_there():
    assert bundled("data/foods.csv").is_file()
