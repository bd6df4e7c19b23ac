"""The README's test command needs nothing installed by hand, unless nothing can be had."""

import subprocess

import pytest
from live import browser_path


@pytest.fixture
def bare(monkeypatch, tmp_path):
    """A machine without a browser; yields what is run on it, and where playwright's own browser would lie."""
    monkeypatch.setattr("shutil.which", lambda _name: None)
    monkeypatch.setattr("live.MAC_CHROME", tmp_path / "none")
    return tmp_path / "own" / "chrome"


def test_an_installed_browser_is_taken_first(monkeypatch, tmp_path):
    monkeypatch.setattr("shutil.which", lambda name: f"/bin/{name}" if name == "google-chrome" else None)
    assert browser_path(tmp_path / "own") == "/bin/google-chrome"


def test_where_there_is_none_playwright_installs_its_own(bare, monkeypatch):
    ran = []

    def install(command, **_how):
        ran.append(command[1:])
        bare.parent.mkdir()
        bare.touch()
        return subprocess.CompletedProcess(command, 0, "", "")

    monkeypatch.setattr("subprocess.run", install)
    assert browser_path(bare) == str(bare)
    assert browser_path(bare) == str(bare)
    assert ran == [["-m", "playwright", "install", "chromium"]]  # once


def test_where_none_can_be_had_it_says_what_to_install(bare, monkeypatch):
    failed = subprocess.CompletedProcess([], 1, "", "trying\nError: no network")
    monkeypatch.setattr("subprocess.run", lambda *_command, **_how: failed)
    with pytest.raises(RuntimeError, match=r"own \(Error: no network\); install Chromium or Chrome, so that one of"):
        browser_path(bare)
