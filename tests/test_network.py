"""No command of the kit asks anything beyond this machine."""

import subprocess
import sys
from pathlib import Path

import pytest
from outside import asked_outside, watched

from kit.__main__ import _parser

RELEASE = Path(__file__).parent / "food" / "releases"
COMMANDS = {
    "numbers": ["barley_squash_box", "--json"],
    "read": ["1 (15 oz) can chickpeas, drained and rinsed"],
    "find": ["garbanzo", "beans"],
    "check": ["barley_squash_box"],
    "change": ["barley_squash_box", "no feta"],
    "import-release": ["nowhere"],
    "new": ["Bean soup"],
    "follow-up": ["barley_squash_box", "--to", "sent"],
    "screen": ["barley_squash_box", "--port", "0"],  # what it serves is watched in test_opening
}
# Every command one after another in one process, which takes on the command's words for the notes.
EACH = """
import sys
from kit.__main__ import main
for line in {lines}:
    sys.argv = line
    main(line)
    open({done!r}, "a").write(line[0] + "\\n")
"""


def commands():
    (choices,) = [action.choices for action in _parser()._actions if isinstance(action.choices, dict)]
    return list(choices)


@pytest.fixture
def run(tmp_path):
    surroundings, notes = watched(tmp_path)
    surroundings |= {"HOME": str(tmp_path), "TALK_KIT_HOME": str(tmp_path / "own")}

    def begin(*command):
        subprocess.run([sys.executable, *command], cwd=tmp_path, env=surroundings, capture_output=True, check=False)
        return asked_outside(notes)

    return begin


def test_every_command_is_watched():
    assert set(commands()) <= set(COMMANDS)


def test_no_command_asks_anything_outside(run, tmp_path):
    done = tmp_path / "done"
    lines = [[command, *COMMANDS[command]] for command in commands()]
    assert run("-c", EACH.format(lines=lines, done=str(done))) == ""
    assert done.read_text().split() == commands()


@pytest.mark.parametrize(
    "asking",
    [
        "import socket; socket.create_connection(('192.0.2.1', 80), 0.01)",
        "import urllib.request; urllib.request.urlopen('http://example.invalid', timeout=0.01)",
        "import subprocess, sys; inner = 'import socket; socket.getaddrinfo(\"a.invalid\", 1)';"
        "subprocess.run([sys.executable, '-c', inner])",
    ],
    ids=["connection", "name", "from a process below"],
)
def test_the_watch_sees_what_asks_outside(run, asking):
    assert run("-c", asking) != ""
