"""The wheel that is sent along is the one that the kit is built as."""

import io
import subprocess
import sys
import zipfile
from pathlib import Path

import pytest

from kit.share.wheel import wheel

ROOT = Path(__file__).parents[2]


@pytest.fixture(scope="module")
def made():
    name, content = wheel()
    return name, zipfile.ZipFile(io.BytesIO(content))


def test_it_holds_what_the_built_one_holds(made, tmp_path):
    build = [sys.executable, "-m", "build", "--wheel", "--no-isolation", "--outdir", str(tmp_path), str(ROOT)]
    subprocess.run(build, check=True, capture_output=True)
    (built,) = tmp_path.glob("*.whl")
    assert made[0] == built.name
    ours, theirs = (
        {entry.filename: entry.CRC for entry in archive.infolist()} for archive in (made[1], zipfile.ZipFile(built))
    )
    differ = {name for name in ours.keys() | theirs.keys() if ours.get(name) != theirs.get(name)}
    assert {name for name in differ if ".dist-info/" not in name} == set()


def test_it_is_the_same_each_time(made):
    assert wheel()[1] == wheel()[1]


def test_pip_installs_it(made, tmp_path):
    path = tmp_path / made[0]
    path.write_bytes(wheel()[1])
    target = [*("--quiet", "--no-deps", "--no-index", "--target"), str(tmp_path / "site")]
    subprocess.run([sys.executable, "-m", "pip", "install", *target, str(path)], check=True, capture_output=True)
    assert (tmp_path / "site" / "kit" / "bundled" / "data" / "foods.csv").is_file()
