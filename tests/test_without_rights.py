"""Files and folders she has no right to: one sentence and exit 2, whatever is asked of them."""

import ctypes
import json
import subprocess
import sys

import pytest

# Commands one after the other in one process that rights apply to: (code, what is said) of each.
RUN = """
import contextlib, io, json, sys
from kit.__main__ import main
told = []
for arguments in json.loads(sys.stdin.read()):
    said = io.StringIO()
    with contextlib.redirect_stderr(said), contextlib.redirect_stdout(io.StringIO()):
        code = main(arguments)
    told.append((code, said.getvalue().strip()))
print(json.dumps(told))
"""
TALK = 'title = "Soup"\nservings = 2\n[[ingredient]]\nline = "1 cup lentils, dry"\n'
PR_CAPBSET_DROP, OVERRIDES = 24, (1, 2)  # CAP_DAC_OVERRIDE, CAP_DAC_READ_SEARCH: capabilities(7)


def heed_rights():
    """Let file rights apply to the administrator too, whom a container often runs as (Linux)."""
    for capability in OVERRIDES if sys.platform == "linux" else ():
        ctypes.CDLL(None).prctl(PR_CAPBSET_DROP, capability, 0, 0, 0)


@pytest.fixture
def closed(tmp_path):
    """A folder of a talk, a closed file, a folder that may not be looked into, and one that may not be written."""
    (tmp_path / "closed").mkdir()
    for path in (tmp_path / "soup.toml", tmp_path / "own.toml", tmp_path / "closed" / "soup.toml"):
        path.write_text(TALK, encoding="utf-8")
    (tmp_path / "kept").mkdir()
    (tmp_path / "own.toml").chmod(0)
    (tmp_path / "closed").chmod(0)
    (tmp_path / "kept").chmod(0o555)
    yield tmp_path
    (tmp_path / "closed").chmod(0o700)
    (tmp_path / "kept").chmod(0o700)


@pytest.mark.skipif(sys.platform == "win32", reason="rights are of another kind there")
def test_what_she_has_no_right_to_is_told_in_one_sentence(closed, monkeypatch):
    monkeypatch.setenv("TALK_KIT_HOME", str(closed / "kept" / "own"))
    commands = {
        "own.toml cannot be read (Permission denied)": ["check", str(closed / "own.toml")],
        "closed/soup.toml cannot be read (Permission denied)": ["numbers", str(closed / "closed" / "soup.toml")],
        "is a folder; write the name of a talk": ["numbers", str(closed)],
        "page.html cannot be written (Permission denied)": [
            "follow-up",
            str(closed / "soup.toml"),
            "--to",
            str(closed / "kept"),
        ],
        "closed cannot be read (Permission denied)": ["import-release", str(closed / "closed")],
        "cannot be written (Permission denied)": ["new", "Mine"],
    }
    done = subprocess.run(
        [sys.executable, "-c", RUN],
        input=json.dumps(list(commands.values())),
        capture_output=True,
        text=True,
        preexec_fn=heed_rights,
    )
    assert done.stderr == ""
    told = json.loads(done.stdout)
    wrong = [
        (said, code, what)
        for said, (code, what) in zip(commands, told, strict=True)
        if code != 2 or said not in what or "Traceback" in what
    ]
    assert wrong == []
