"""A wheel carries the data and the notebooks, and works away from the checkout."""

import json
import os
import subprocess
import sys
from pathlib import Path

import pytest

ROOT = Path(__file__).parent.parent


@pytest.fixture(scope="module")
def installed(tmp_path_factory):
    """Build the wheel and unpack it where nothing of the checkout is near."""
    place = tmp_path_factory.mktemp("wheel")
    build = [sys.executable, "-m", "build", "--wheel", "--no-isolation", "--outdir", str(place), str(ROOT)]
    subprocess.run(build, check=True, capture_output=True)
    (wheel,) = place.glob("*.whl")
    site = place / "site"
    pip = [
        sys.executable,
        "-m",
        "pip",
        "install",
        "--quiet",
        "--no-deps",
        "--no-index",
        "--target",
        str(site),
        str(wheel),
    ]
    subprocess.run(pip, check=True, capture_output=True)
    return site


def run(installed, *arguments):
    away = installed.parent
    environment = {**os.environ, "PYTHONPATH": str(installed), "TALK_KIT_HOME": str(away / "own")}
    command = [sys.executable, *arguments]
    return subprocess.run(command, cwd=away, env=environment, capture_output=True, text=True, check=True).stdout


def test_the_installed_kit_is_the_one_that_runs(installed):
    assert Path(run(installed, "-c", "import kit; print(kit.__file__)").strip()).is_relative_to(installed)


def test_it_works_out_a_bundled_talk(installed):
    numbers = json.loads(run(installed, "-m", "kit", "numbers", "split_pea_soup", "--json"))
    assert numbers["nutrients"]["protein"]["value"] > 10


def test_it_brings_the_notebooks_as_copies_and_keeps_those_that_are_there(installed):
    where = "from kit.opening import workplace; print(workplace())"
    folder = Path(run(installed, "-c", where).strip())
    notebook = folder / "3_on_screen.ipynb"
    assert folder == installed.parent / "own" / "notebooks"
    notebook.write_text("mine", encoding="utf-8")
    run(installed, "-c", where)
    assert notebook.read_text(encoding="utf-8") == "mine"


def test_it_brings_what_the_screen_needs(installed):
    kit = installed / "kit"
    assert (kit / "show" / "web" / "stage.js").is_file()
    assert (kit / "show" / "jupyter" / "voila" / "templates" / "screen" / "index.html.j2").is_file()
