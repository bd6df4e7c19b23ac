import contextlib
import shutil
import time

import pytest
from live import ROOT, SCREEN, notebook_page, open_browser, run_all_cells, serve, write_notebook

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


@pytest.fixture(scope="session")
def desk_page(served, browser, tmp_path_factory):
    """Return how to open a notebook that shows her window, with nothing remembered of what an earlier page had set."""
    kind, address = served

    @contextlib.contextmanager
    def open_desk(notebook="3_on_screen.ipynb", viewport=SCREEN):
        time.sleep(0.6)  # what is set is written once a pause, which a page that was just closed may still be in
        for folder in tmp_path_factory.getbasetemp().glob("*/talk-kit/remembered"):
            shutil.rmtree(folder, ignore_errors=True)
        with notebook_page(browser, address(notebook), viewport) as (page, errors):
            if kind == "lab":
                run_all_cells(page)
            page.wait_for_selector(".talk-desk .talk-large")
            yield page, errors

    return open_desk
