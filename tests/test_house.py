"""The house is in order: style, the order of the rooms, sizes, and what lies at the top."""

import json
import subprocess
import sys
from pathlib import Path

import pytest

ROOT = Path(__file__).parent.parent
NOTEBOOKS = sorted((ROOT / "notebooks").glob("*.ipynb"))
TOP = {"README.md", "DEVELOPERS.md", "pyproject.toml", "notebooks", "kit", "tests", "data"}
LONGEST_MODULE, LONGEST_CELL = 300, 8


def run(*command):
    return subprocess.run(command, cwd=ROOT, capture_output=True, text=True, check=False)


@pytest.mark.parametrize("check", [("check",), ("format", "--check")], ids=["style", "format"])
def test_code_keeps_the_style(check):
    done = run(sys.executable, "-m", "ruff", *check, ".")
    assert done.returncode == 0, done.stdout + done.stderr


def test_a_room_uses_only_the_rooms_before_it():
    done = run(str(Path(sys.executable).with_name("lint-imports")), "--no-cache")
    assert done.returncode == 0, done.stdout + done.stderr


def test_types_are_right(tmp_path):
    done = run(sys.executable, "-m", "mypy", "--cache-dir", str(tmp_path))
    assert done.returncode == 0, done.stdout + done.stderr


def test_no_module_is_longer_than_a_reader_can_hold():
    long = {path.name: len(path.read_text(encoding="utf-8").splitlines()) for path in (ROOT / "kit").rglob("*.py")}
    assert {name: lines for name, lines in long.items() if lines > LONGEST_MODULE} == {}


def test_the_top_level_holds_the_seven_and_dot_files_only():
    tracked = run("git", "ls-files").stdout.split("\n")
    assert {name.split("/")[0] for name in tracked if name and not name.startswith(".")} <= TOP


@pytest.mark.parametrize("notebook", NOTEBOOKS, ids=lambda path: path.stem)
def test_a_notebook_reads_like_something_to_show(notebook):
    """Kernel python3; the first code cell imports only from kit; short cells; nothing run is stored."""
    content = json.loads(notebook.read_text(encoding="utf-8"))
    code = [cell for cell in content["cells"] if cell["cell_type"] == "code"]
    assert content["metadata"]["kernelspec"]["name"] == "python3"
    assert all(line.startswith(("from kit import", "    ", ")")) for line in "".join(code[0]["source"]).splitlines())
    assert max(len(cell["source"]) for cell in code) <= LONGEST_CELL
    assert all(cell["outputs"] == [] and cell["execution_count"] is None for cell in code)
    assert "".join(content["cells"][-1]["source"]).strip()
