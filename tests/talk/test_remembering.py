import json
import subprocess
import sys
import time

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from kit.talk.remembering import Memory


@pytest.fixture(autouse=True)
def own(tmp_path, monkeypatch):
    monkeypatch.setenv("TALK_KIT_HOME", str(tmp_path / "own"))
    return tmp_path / "own"


def test_what_was_kept_is_there_for_the_next_page_at_once_and_for_the_next_day_soon(own):
    memory = Memory("screen")
    memory.keep("soup", {"servings": 8})
    assert memory.of("soup") == {"servings": 8}
    until = time.monotonic() + 5
    while time.monotonic() < until and not Memory("screen").of("soup"):
        time.sleep(0.05)
    assert Memory("screen").of("soup") == {"servings": 8}


def test_a_dragged_slider_writes_once(own, monkeypatch):
    written = []
    monkeypatch.setattr("kit.files.write_whole", lambda path, text, replace: written.append(json.loads(text)))
    memory = Memory("screen")
    for place in range(500):
        memory.keep("soup", {"place": place})
    time.sleep(0.8)
    assert written == [{"place": 499}]


def test_a_kernel_that_ends_writes_what_waits(own):
    ending = "from kit.talk.remembering import Memory; Memory('screen').keep('soup', {'servings': 3})"
    subprocess.run([sys.executable, "-c", ending], check=True)
    assert Memory("screen").of("soup") == {"servings": 3}


def test_panels_and_talks_are_kept_apart():
    screen, rehearsal = Memory("screen"), Memory("rehearsal")
    screen.keep("soup", {"at": 1})
    rehearsal.keep("soup", {"at": 2})
    screen.keep("../soup", {"at": 3})
    screen.keep("Soup", {"at": 4})
    screen.write()
    rehearsal.write()
    assert [Memory("screen").of(name)["at"] for name in ("soup", "../soup", "Soup")] == [1, 3, 4]
    assert Memory("rehearsal").of("soup") == {"at": 2}


@settings(max_examples=50, deadline=None)
@given(st.text(max_size=400))
def test_any_name_is_kept_inside_her_folder(name):
    memory = Memory("screen")
    memory.keep(name, {"name": name.encode("utf-8", "replace").decode()})
    memory.write()
    assert Memory("screen").of(name) == {"name": name.encode("utf-8", "replace").decode()}


@pytest.mark.parametrize("text", ["", "{", "[1]", "null", "\x00"])
def test_what_cannot_be_read_counts_as_nothing(own, text):
    memory = Memory("screen")
    memory.keep("soup", {"servings": 8})
    memory.write()
    (path,) = (own / "remembered").iterdir()
    path.write_text(text)
    assert Memory("screen").of("soup") == {}


def test_a_folder_that_cannot_be_written_costs_the_memory_and_nothing_else(own):
    own.write_text("a file where the folder should be")
    memory = Memory("screen")
    memory.keep("soup", {"servings": 8})
    memory.write()
    assert memory.of("soup") == {}
