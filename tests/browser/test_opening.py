"""The README's first command in a browser: numbers are printed, the notebook runs, nothing lies over it."""

import os
import re
import shutil
import signal
import subprocess
import sys

import pytest
from live import ROOT, notebook_page

from kit.meal.nutrition import nutrition
from kit.rules.serving import as_text
from kit.talk.library import bundled_talks, read_talk


def started(home, *arguments):
    """Start the kit as a newcomer does, with copies of the notebooks, so that none of the checkout's is saved over."""
    copies = home / "notebooks"
    if not copies.exists():
        shutil.copytree(ROOT / "notebooks", copies)
    surroundings = {**os.environ, "HOME": str(home), "TALK_KIT_HOME": str(home / "own"), "PYTHONUNBUFFERED": "1"}
    own_copies = (
        "import pathlib, sys; from kit import opening; from kit.__main__ import main;"
        f"opening.workplace = lambda: pathlib.Path({str(copies)!r});"
        "sys.exit(main(sys.argv[1:]))"
    )
    return subprocess.Popen(
        [sys.executable, "-c", own_copies, *arguments, "--no-browser"],
        cwd=home,
        env=surroundings,
        stdout=subprocess.PIPE,
        stderr=subprocess.DEVNULL,
        text=True,
        start_new_session=True,
    )


@pytest.fixture
def kit(tmp_path):
    running = []

    def start(*arguments):
        """Return what is printed up to the address, and the address."""
        running.append(started(tmp_path, *arguments))
        printed = []
        for line in running[-1].stdout:
            printed.append(line)
            address = re.match(r"Open (http://127\.0\.0\.1:\d+/\S+)", line)
            if address:
                return "".join(printed), address[1]
        pytest.fail(f"no address was printed: {''.join(printed)}")

    yield start
    for process in running:
        os.killpg(process.pid, signal.SIGINT)
        process.wait(timeout=20)
        process.stdout.close()


def test_the_first_command_prints_a_serving_and_opens_the_panel_with_nothing_over_it(kit, browser):
    printed, address = kit()
    assert as_text(nutrition(read_talk(next(iter(bundled_talks()))).recipe)) in printed
    with notebook_page(browser, address) as (page, errors):
        page.wait_for_selector("[data-chart=day] .main-svg")  # no key was pressed, no cell was run by hand
        page.wait_for_timeout(1000)
        assert page.locator(".jp-Dialog, .Toastify__toast, .jp-Notification-Toast").count() == 0
        assert errors == []


def test_the_screen_command_shows_the_talk_that_was_asked_for_without_the_network(kit, browser):
    _printed, address = kit("screen", "split_pea_soup")
    with notebook_page(browser, address) as (page, errors):
        asked = []
        page.on("request", lambda request: asked.append(request.url))
        page.reload()
        page.wait_for_selector("[data-chart=day] .main-svg")
        assert page.get_by_text("Smoky split pea and tomato soup").count() > 0
        assert [
            url for url in asked if not re.match(r"(https?://127\.0\.0\.1|data:|blob:|wss?://127\.0\.0\.1)", url)
        ] == []
        assert errors == []
