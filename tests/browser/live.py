"""Live notebooks for tests: a browser, and JupyterLab and Voila on free ports of this machine."""

import contextlib
import os
import secrets
import shutil
import signal
import socket
import subprocess
import sys
import time
import urllib.error
import urllib.request
from collections.abc import Callable, Iterator
from pathlib import Path
from typing import Any

import nbformat
from playwright.sync_api import Browser, Page, sync_playwright

ROOT = Path(__file__).resolve().parents[2]
BROWSERS = ("chromium", "chromium-browser", "google-chrome", "google-chrome-stable", "chrome")
MAC_CHROME = Path("/Applications/Google Chrome.app/Contents/MacOS/Google Chrome")
SWITCHES = [
    "--no-sandbox",
    "--disable-gpu",
    "--disable-quic",
    "--no-first-run",
    "--disable-background-networking",
    "--disable-component-update",
    "--disable-sync",
    # Playwright's own list, which this one takes the place of, and after it the pages that the browser would draw for
    # its address bar in every window, though nobody sees one: a second of a processor for each.
    "--disable-features=AvoidUnnecessaryBeforeUnloadCheckSync,DestroyProfileOnBrowserClose,HttpsUpgrades,"
    "HttpsFirstBalancedModeAutoEnable,LensOverlay,MediaRouter,PaintHolding,ThirdPartyStoragePartitioning,"
    "OptimizationHints,NetworkTimeServiceQuerying,AimEnabled,PreconnectToSearch,"
    "WebUIOmniboxPopup,WebUIOmniboxAimPopup,WebUIOmniboxFullPopup",
]
SCREEN = {"width": 1920, "height": 1080}
PATIENCE = 60  # [s]
# Runs a module with its arguments, without the grammars that tests/without_grammars.py tells of.
RUN = """
import runpy, sys
sys.modules["rfc3987_syntax"] = None
del sys.argv[0]
runpy.run_module(sys.argv[0], run_name="__main__", alter_sys=True)
"""
NEWS = "settings/@jupyterlab/apputils-extension/notification.jupyterlab-settings"


def browser_path(own: Path) -> str:
    """Return the browser that is installed here, or else playwright's own, installed now if need be.

    Parameters
    ----------
    own : pathlib.Path
        Where playwright's own browser lies, or would lie.

    Raises
    ------
    RuntimeError
        If there is none and none can be had; without one these tests fail rather than pass unseen.
    """
    found = next(filter(None, map(shutil.which, BROWSERS)), str(MAC_CHROME) if MAC_CHROME.exists() else None)
    if found:
        return found
    if not own.exists():
        tried = subprocess.run(
            [sys.executable, "-m", "playwright", "install", "chromium"], capture_output=True, text=True, check=False
        )
        if tried.returncode or not own.exists():
            said = (tried.stderr or tried.stdout).strip().splitlines()[-1:]
            msg = (
                f"no browser found, and playwright cannot install its own ({' '.join(said)}); install Chromium or "
                f"Chrome, so that one of {', '.join(BROWSERS)} is on the PATH"
            )
            raise RuntimeError(msg)
    return str(own)


@contextlib.contextmanager
def open_browser() -> Iterator[Browser]:
    """Start the browser without a window."""
    with sync_playwright() as playwright:
        path = browser_path(Path(playwright.chromium.executable_path))
        browser = playwright.chromium.launch(executable_path=path, args=SWITCHES)
        try:
            yield browser
        finally:
            browser.close()


def write_notebook(path: Path, cells: list[str]) -> None:
    """Write a notebook of code cells."""
    notebook = nbformat.v4.new_notebook(cells=[nbformat.v4.new_code_cell(cell) for cell in cells])
    notebook.metadata["kernelspec"] = {"name": "python3", "display_name": "Python 3", "language": "python"}
    nbformat.write(notebook, path)


@contextlib.contextmanager
def serve(kind: str, notebooks: Path, home: Path) -> Iterator[Callable[[str], str]]:
    """Serve a folder of notebooks with ``voila`` or ``lab``; yields the address of a notebook by its name."""
    port, token = _free_port(), secrets.token_hex(16)
    home.mkdir(parents=True, exist_ok=True)
    _write(home / NEWS, '{"fetchNews": "false"}')  # no question about it over the charts
    _write(home / "config/labconfig/page_config.json", '{"buildAvailable": false, "buildCheck": false}')
    common = ["--no-browser", "--allow-root"] if kind == "lab" else ["--no-browser"]
    command = {
        "lab": [
            *("jupyterlab", f"--ServerApp.port={port}", "--ServerApp.port_retries=0", "--ServerApp.ip=127.0.0.1"),
            *(f"--IdentityProvider.token={token}", f"--ServerApp.root_dir={notebooks}"),
            *("--LabApp.expose_app_in_browser=True", "--LabApp.extension_manager=readonly"),
            *(f"--LabApp.workspaces_dir={home / 'workspaces'}", f"--LabApp.user_settings_dir={home / 'settings'}"),
        ],
        "voila": [
            *("voila", str(notebooks), f"--port={port}", "--Voila.ip=127.0.0.1", f"--token={token}"),
            "--template=screen",
        ],
    }[kind]
    surroundings = {
        **os.environ,
        "HOME": str(home),
        "TALK_KIT_HOME": str(home / "talk-kit"),
        "JUPYTER_CONFIG_DIR": str(home / "config"),
        "JUPYTER_DATA_DIR": str(home / "data"),
        "JUPYTER_RUNTIME_DIR": str(home / "runtime"),
        "JUPYTER_PATH": str(ROOT / "kit" / "show" / "jupyter") if kind == "voila" else "",
        "PYTHONPATH": os.pathsep.join([str(ROOT), str(ROOT / "tests"), str(Path(__file__).parent)]),
    }
    log_path = home / f"{kind}.log"
    with log_path.open("wb") as log:
        process = subprocess.Popen(
            [sys.executable, "-c", RUN, *command, *common],
            env=surroundings,
            stdout=log,
            stderr=subprocess.STDOUT,
            start_new_session=True,  # so that its kernels can be stopped with it
        )
        try:
            _wait_for(
                f"http://127.0.0.1:{port}/{'api' if kind == 'lab' else 'voila/static/main.js'}", process, log_path
            )
            tree = "doc/tree" if kind == "lab" else "voila/render"
            yield lambda name: f"http://127.0.0.1:{port}/{tree}/{name}?token={token}"
        finally:
            _stop(process)


@contextlib.contextmanager
def notebook_page(
    browser: Browser, address: str, viewport: dict[str, int] = SCREEN, script: str = ""
) -> Iterator[tuple[Page, list[str]]]:
    """Open a page, with a script of the test's own; yields it with the list in which errors of its scripts gather."""
    context = browser.new_context(viewport=viewport)
    context.set_default_timeout(PATIENCE * 1000)  # for the windows that the page opens too
    page = context.new_page()
    page.add_init_script(script)
    errors: list[str] = []
    page.on("pageerror", lambda error: errors.append(str(error)))
    page.on("console", lambda message: errors.append(message.text) if _is_error(message) else None)
    try:
        page.goto(address)
        yield page, errors
    finally:
        context.close()


def run_all_cells(page: Page) -> None:
    """Run every cell of the notebook that is open in JupyterLab."""
    page.wait_for_selector(".jp-Notebook .jp-CodeCell")
    page.wait_for_function("() => window.jupyterapp")
    page.evaluate(
        """async () => {
          const panel = window.jupyterapp.shell.currentWidget;
          await panel.context.ready;
          await panel.sessionContext.ready;
          await window.jupyterapp.commands.execute('notebook:run-all-cells');
        }"""
    )


def _is_error(message: Any) -> bool:
    """Whether a console message is an error of a script, rather than of a picture or font that is not there."""
    return message.type == "error" and "Failed to load resource" not in message.text


def _write(path: Path, text: str) -> None:
    path.parent.mkdir(parents=True, exist_ok=True)
    path.write_text(text, encoding="utf-8")


def _free_port() -> int:
    with socket.socket() as listener:
        listener.bind(("127.0.0.1", 0))
        return listener.getsockname()[1]


def _wait_for(address: str, process: subprocess.Popen[bytes], log: Path) -> None:
    until = time.monotonic() + PATIENCE
    while time.monotonic() < until and process.poll() is None:
        try:
            urllib.request.urlopen(address, timeout=5).close()
            return
        except urllib.error.HTTPError:
            return  # it answers, if only to ask for the token
        except OSError:
            time.sleep(0.1)
    msg = f"{address} does not answer:\n{log.read_text(errors='replace')[-2000:]}"
    raise RuntimeError(msg)


def _stop(process: subprocess.Popen[bytes]) -> None:
    for number in (signal.SIGTERM, signal.SIGKILL):
        with contextlib.suppress(ProcessLookupError):
            os.killpg(process.pid, number)
        with contextlib.suppress(subprocess.TimeoutExpired):
            process.wait(timeout=5)
            return
