"""Opening the notebooks without a browser: her copies, the door, the port, and what is left when the kit is gone."""

import json
import re
import signal
import socket
import stat
import subprocess
import sys
import time
import urllib.request
from pathlib import Path

import psutil
import pytest
from outside import asked_outside, watched

from kit.__main__ import main
from kit.opening import ON_SCREEN
from kit.opening.workplace import fingerprint, workplace

ROOT = Path(__file__).resolve().parents[1]
BUNDLED = ROOT / "notebooks"
PATIENCE = 30  # [s]


@pytest.fixture
def own(tmp_path, monkeypatch):
    """Make her own folder, and a kit's notebooks that may be upgraded."""
    monkeypatch.setenv("TALK_KIT_HOME", str(tmp_path / "own"))
    shipped = tmp_path / "shipped"
    shipped.mkdir()
    monkeypatch.setattr("kit.files.bundled", lambda _name: shipped)
    return shipped


def notebook(*cells, outputs=()):
    code = [{"cell_type": "code", "source": list(cell), "outputs": list(outputs), "metadata": {}} for cell in cells]
    return json.dumps({"cells": code, "metadata": {}, "nbformat": 4, "nbformat_minor": 5})


def test_her_copies_lie_in_her_own_folder_and_are_the_kits_notebooks(tmp_path, monkeypatch):
    monkeypatch.setenv("TALK_KIT_HOME", str(tmp_path))
    copies = workplace()
    assert copies == tmp_path / "notebooks"
    for shipped in BUNDLED.glob("*.ipynb"):
        assert (copies / shipped.name).read_text(encoding="utf-8") == shipped.read_text(encoding="utf-8")


def test_an_upgraded_notebook_replaces_a_copy_that_was_only_run(own):
    (own / "1_prepare.ipynb").write_text(notebook(["old"]), encoding="utf-8")
    copy = workplace() / "1_prepare.ipynb"
    copy.write_text(notebook(["old"], outputs=[{"output_type": "stream", "text": "run"}]), encoding="utf-8")
    (own / "1_prepare.ipynb").write_text(notebook(["new"]), encoding="utf-8")
    workplace()
    assert copy.read_text(encoding="utf-8") == notebook(["new"])


def test_a_copy_that_she_changed_is_hers_through_every_upgrade(own):
    (own / "1_prepare.ipynb").write_text(notebook(["old"]), encoding="utf-8")
    copy = workplace() / "1_prepare.ipynb"
    copy.write_text(notebook(["hers"]), encoding="utf-8")
    for version in ("new", "newer"):
        (own / "1_prepare.ipynb").write_text(notebook([version]), encoding="utf-8")
        workplace()
        assert copy.read_text(encoding="utf-8") == notebook(["hers"])


@pytest.mark.parametrize("text", ["", "no notebook", '{"cells": 3}', "[]", "\x00"])
def test_a_copy_that_is_no_notebook_is_hers_too(own, text):
    (own / "1_prepare.ipynb").write_text(notebook(["old"]), encoding="utf-8")
    copy = workplace() / "1_prepare.ipynb"
    copy.write_text(text, encoding="utf-8")
    (own / "1_prepare.ipynb").write_text(notebook(["new"]), encoding="utf-8")
    workplace()
    assert copy.read_text(encoding="utf-8") == text


def test_a_copy_that_she_deleted_comes_back_and_a_new_notebook_comes_along(own):
    (own / "1_prepare.ipynb").write_text(notebook(["old"]), encoding="utf-8")
    (workplace() / "1_prepare.ipynb").unlink()
    (own / "4_follow_up.ipynb").write_text(notebook(["new"]), encoding="utf-8")
    assert sorted(path.name for path in workplace().glob("*.ipynb")) == ["1_prepare.ipynb", "4_follow_up.ipynb"]


def test_a_notebook_counts_as_changed_when_any_of_its_cells_does():
    assert fingerprint(notebook(["a"], ["b"])) != fingerprint(notebook(["a"], ["c"]))
    assert fingerprint(notebook(["a"], ["b"])) != fingerprint(notebook(["a", "b"]))


# ---- the server


class Kit:
    """One ``python -m kit`` that runs, with a browser that only notes what it was given."""

    def __init__(self, home, *arguments, browser=True):
        self.home, self.opened = home, home / "opened"
        self.temporary = home / "temporary"
        self.temporary.mkdir(parents=True, exist_ok=True)
        note = home / "browser"
        note.write_text(f'#!/bin/sh\nprintf "%s\\n" "$@" >> {self.opened}\n')
        note.chmod(0o700)
        environment, self.notes = watched(home)
        surroundings = {
            **environment,
            **{"HOME": str(home), "TALK_KIT_HOME": str(home / "own"), "TMPDIR": str(self.temporary)},
            **{"BROWSER": str(note), "PYTHONUNBUFFERED": "1"},
        }
        self.process = subprocess.Popen(
            [sys.executable, "-m", "kit", *arguments, *([] if browser else ["--no-browser"])],
            cwd=home,
            env=surroundings,
            stdout=subprocess.PIPE,
            stderr=subprocess.PIPE,
            text=True,
        )

    def address(self):
        """Return what is printed up to the line that says how to stop, and the address in it."""
        printed = []
        for line in self.process.stdout:
            printed.append(line)
            if line.startswith("Stop"):
                break
        found = re.search(r"^Open (http://127\.0\.0\.1:\d+/\S+)$", "".join(printed), re.MULTILINE)
        assert found, "".join(printed) + self.process.stderr.read()
        return "".join(printed), found[1]

    def below(self):
        return psutil.Process(self.process.pid).children(recursive=True)

    def stop(self, number=signal.SIGINT):
        """Stop it; return its exit code and what it said meanwhile."""
        self.process.send_signal(number)
        printed, complaints = self.process.communicate(timeout=PATIENCE)
        return self.process.returncode, printed, complaints


@pytest.fixture
def start(tmp_path):
    running = []

    def begin(*arguments, browser=True):
        running.append(Kit(tmp_path, *arguments, browser=browser))
        return running[-1]

    yield begin
    for kit in running:
        if kit.process.poll() is None:
            kit.stop(signal.SIGKILL)


def wait_until(holds):
    until = time.monotonic() + PATIENCE
    while time.monotonic() < until and not holds():
        time.sleep(0.1)
    return holds()


def with_a_kernel(address):
    """Start a kernel as the page does."""
    port, token = re.search(r":(\d+)/.*token=(.+)$", address).groups()
    session = {"path": ON_SCREEN, "name": ON_SCREEN, "type": "notebook", "kernel": {"name": "python3"}}
    headers = {"Authorization": f"token {token}"}
    asked = urllib.request.Request(f"http://127.0.0.1:{port}/api/sessions", json.dumps(session).encode(), headers)
    return json.load(urllib.request.urlopen(asked, timeout=PATIENCE))


def is_kernel(process):
    try:
        return any("ipykernel" in word for word in process.cmdline())
    except psutil.NoSuchProcess:
        return False


def test_the_terminal_shows_little_and_no_command_line_shows_the_token(start):
    kit = start()
    printed, address = kit.address()
    serving, told = printed.split("\n\n")
    assert serving.startswith("Barley and roasted squash box")
    assert told == f"Open {address}\nStop with Ctrl+C.\n"
    token = address.split("token=")[1]
    with_a_kernel(address)
    assert any(map(is_kernel, kit.below()))
    lines = [word for process in kit.below() for word in process.cmdline()]
    assert wait_until(kit.opened.exists)
    door = Path(kit.opened.read_text().strip().removeprefix("file://"))
    assert token not in " ".join([*lines, str(door)])
    assert address in door.read_text(encoding="utf-8")
    assert stat.S_IMODE(door.parent.stat().st_mode) == 0o700
    assert kit.stop() == (0, "", "")
    assert asked_outside(kit.notes) == ""  # neither kit nor server nor kernel has asked anything beyond this machine
    assert list(kit.temporary.iterdir()) == []


@pytest.mark.parametrize("ending", ["SIGKILL", "SIGHUP"])
def test_when_the_kit_is_gone_so_are_its_server_its_kernels_and_its_folder(start, ending):
    kit = start(browser=False)
    with_a_kernel(kit.address()[1])
    below = kit.below()
    assert any(map(is_kernel, below))
    assert any(kit.temporary.iterdir())
    kit.process.send_signal(getattr(signal, ending))
    kit.process.wait(PATIENCE)
    assert wait_until(lambda: not any(process.is_running() for process in below))
    assert wait_until(lambda: list(kit.temporary.iterdir()) == [])


def test_a_server_that_ends_by_itself_is_told_in_one_sentence(start):
    kit = start(browser=False)
    kit.address()
    kit.below()[0].kill()
    printed, complaints = kit.process.communicate(timeout=PATIENCE)
    assert (kit.process.returncode, printed) == (2, "")
    assert complaints == "the server of the notebooks has ended by itself (code -9); start it again\n"
    assert list(kit.temporary.iterdir()) == []


@pytest.mark.parametrize("command", [[], ["screen"]], ids=["notebooks", "screen"])
def test_a_port_that_is_taken_is_told_and_nothing_is_opened_there(start, command):
    asked = []
    with socket.create_server(("127.0.0.1", 0)) as another:
        another.settimeout(0.1)
        port = another.getsockname()[1]
        kit = start(*command, "--port", str(port))
        printed, complaints = kit.process.communicate(timeout=PATIENCE)
        with pytest.raises(TimeoutError):
            asked.append(another.accept())  # nobody has knocked
    assert kit.process.returncode == 2
    assert complaints == (
        f"port {port} is taken by another program; give another one, or leave --port out for a free one\n"
    )
    assert "Open" not in printed
    assert not kit.opened.exists()


@pytest.mark.parametrize("port", ["0", "-1", "65536", "99999999999999999999"])
def test_a_number_that_is_no_port_is_told_in_one_sentence(capsys, port):
    assert main(["screen", f"--port={port}"]) == 2
    told = f"{port} is no port; give one from 1 to 65535, or leave --port out for a free one\n"
    assert capsys.readouterr() == ("", told)
