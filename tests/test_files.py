"""A file is written whole or not at all, and never over another unasked."""

import os
import signal
import subprocess
import sys
import time

import pytest

from kit.errors import KitError
from kit.files import bundled, changed, locked, own_folder, read_text, write_whole


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


def test_a_file_keeps_its_permissions_and_a_link_its_aim(tmp_path):
    path = write_whole(tmp_path / "talk.toml", "first")
    path.chmod(0o640)
    link = tmp_path / "link.toml"
    link.symlink_to(path)
    write_whole(link, "second", replace=True)
    assert link.is_symlink()
    assert (path.read_text(encoding="utf-8"), path.stat().st_mode & 0o777) == ("second", 0o640)
    path.chmod(0o440)
    with pytest.raises(KitError, match="is write-protected"):
        write_whole(path, "third", replace=True)


@pytest.mark.parametrize("name", ["a" * 300, "a\0b"])
def test_a_name_that_no_file_can_have_is_told(tmp_path, name):
    with pytest.raises(KitError, match="cannot be written"):
        write_whole(tmp_path / name, "x")


def test_a_file_in_the_place_of_a_folder_is_told(tmp_path):
    (tmp_path / "file").write_text("x", encoding="utf-8")
    with pytest.raises(KitError, match="cannot be written"):
        changed(tmp_path / "file" / "talk.toml", lambda _now: "x")
    with pytest.raises(KitError, match="cannot be read"):
        read_text(tmp_path)


# What is written is long enough that a kill meets the middle of it.
WRITER = """
import sys
from pathlib import Path
from kit.files import write_whole
print("ready", flush=True)
for number in range(10_000):
    write_whole(Path(sys.argv[1]), f"{number} " * 40_000, replace=True)
"""


def test_a_write_that_is_killed_leaves_the_old_or_the_new_file_and_the_next_write_leaves_nothing_else(tmp_path):
    path = write_whole(tmp_path / "talk.toml", "0 " * 40_000)
    for moment in range(KILLS):
        writer = subprocess.Popen([sys.executable, "-c", WRITER, str(path)], stdout=subprocess.PIPE)
        writer.stdout.readline()
        time.sleep(0.0005 + 0.0137 * moment % 0.02)
        writer.send_signal(signal.SIGKILL)
        writer.wait()
        writer.stdout.close()
        words = path.read_text(encoding="utf-8").split()
        assert len(words) == 40_000
        assert len(set(words)) == 1
    write_whole(path, "after", replace=True)
    assert os.listdir(tmp_path) == ["talk.toml"]


KILLS = int(os.environ.get("TALK_KIT_KILLS", "6"))  # DEVELOPERS.md says how to try 200
COUNTER = """
import sys
from pathlib import Path
from kit.files import changed
for _ in range(100):
    changed(Path(sys.argv[1]), lambda now: f"{int(now or 0) + 1}")
"""


def test_what_several_write_at_once_is_all_kept(tmp_path):
    path = tmp_path / "count.txt"
    writers = [subprocess.Popen([sys.executable, "-c", COUNTER, str(path)]) for _ in range(4)]
    assert [writer.wait() for writer in writers] == [0] * 4
    assert path.read_text(encoding="utf-8") == "400"
    assert os.listdir(tmp_path) == ["count.txt"]


def test_who_holds_a_folder_writes_into_it_and_others_wait(tmp_path):
    path = tmp_path / "own" / "count.txt"
    with locked(path.parent):
        write_whole(path, "100")
        other = subprocess.Popen([sys.executable, "-c", COUNTER, str(path)])
        with pytest.raises(subprocess.TimeoutExpired):
            other.wait(0.8)
        write_whole(path, "200", replace=True)
    assert other.wait() == 0
    assert path.read_text(encoding="utf-8") == "300"


def test_a_circle_of_links_is_told(tmp_path):
    (tmp_path / "circle.txt").symlink_to("circle.txt")
    with pytest.raises(KitError, match="cannot be written"):
        write_whole(tmp_path / "circle.txt", "x", replace=True)
