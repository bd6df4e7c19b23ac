import shutil
import time

import pytest
from live import ROOT, open_browser, serve, write_notebook

DEMO = {
    "two_views.ipynb": ["import demo_panel", "panel = demo_panel.stage_panel()", "panel", "panel"],
}


@pytest.fixture(scope="session")
def browser():
    with open_browser() as opened:
        yield opened


@pytest.fixture(scope="session")
def notebooks(tmp_path_factory):
    folder = tmp_path_factory.mktemp("notebooks")
    for name, cells in DEMO.items():
        write_notebook(folder / name, cells)
    shutil.copy(ROOT / "notebooks" / "3_on_screen.ipynb", folder)
    return folder


@pytest.fixture(scope="session", params=["voila", "lab"])
def served(request, notebooks, tmp_path_factory):
    """The kind of server, and how to make the address of a notebook on it."""
    with serve(request.param, notebooks, tmp_path_factory.mktemp(request.param)) as address:
        yield request.param, address


@pytest.fixture(autouse=True)
def nothing_remembered(tmp_path_factory):
    """Let every test begin with the recipe as written: what an earlier one had set on screen is forgotten."""
    time.sleep(1.0)  # what is set is written once a pause, which a page that was just closed may still be in
    for folder in tmp_path_factory.getbasetemp().glob("*/talk-kit/remembered"):
        shutil.rmtree(folder, ignore_errors=True)
