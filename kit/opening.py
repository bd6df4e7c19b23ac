"""Opening the notebooks: in JupyterLab to work in, or full-window with Voilà to show."""

import json
import os
import secrets
import shutil
import signal
import socket
import subprocess
import sys
import tempfile
import webbrowser
from collections.abc import Sequence
from pathlib import Path

from kit import files

LOOPBACK = "127.0.0.1"
ON_SCREEN = "3_on_screen.ipynb"
# The screen may be shared: nothing may pop up over the notebook.
_QUIET = {
    "@jupyterlab/apputils-extension:notification": {
        "fetchNews": "false",
        "checkForUpdates": False,
        "doNotDisturbMode": True,
    },
    "@jupyterlab/docmanager-extension:plugin": {"renameUntitledFileOnSave": False},
    "@jupyterlab/notebook-extension:tracker": {"windowingMode": "none"},
}


def workplace() -> Path:
    """Return the folder of notebooks to work in: the checkout's own, or copies beside the user's other files.

    An installed kit's notebooks are never written to; copies that are there already are kept as they are.
    """
    source = files.bundled("notebooks")
    if source.parent == Path(__file__).resolve().parent.parent:
        return source
    copies = files.own_folder() / "notebooks"
    copies.mkdir(parents=True, exist_ok=True)
    for notebook in sorted(source.glob("*.ipynb")):
        if not (copies / notebook.name).exists():
            shutil.copyfile(notebook, copies / notebook.name)
    return copies


def free_port() -> int:
    """Return a port of this machine that nothing listens on."""
    with socket.socket() as probe:
        probe.bind((LOOPBACK, 0))
        return probe.getsockname()[1]


def open_notebooks(port: int = 0, browser: bool = True, notebook: str = ON_SCREEN) -> int:
    """Open the notebooks in JupyterLab, listening on this machine only, and wait until it is stopped.

    Parameters
    ----------
    port : int
        The port to listen on; a free one by default.
    browser : bool
        Whether to open the browser; the address is printed in any case.
    notebook : str
        The notebook to open first.
    """
    port = port or free_port()
    token = secrets.token_urlsafe(24)
    folder = workplace()
    with tempfile.TemporaryDirectory(prefix="talk-kit-") as settings:
        (Path(settings) / "overrides.json").write_text(json.dumps(_QUIET), encoding="utf-8")
        # In a file of ours, not on the command line, where other users of the machine would see it.
        secret = Path(settings) / "token.json"
        secret.write_text(json.dumps({"IdentityProvider": {"token": token}}), encoding="utf-8")
        command = [
            *(sys.executable, "-m", "jupyterlab", f"--config={secret}", f"--ServerApp.root_dir={folder}"),
            *(f"--ServerApp.ip={LOOPBACK}", f"--ServerApp.port={port}", "--ServerApp.port_retries=0"),
            "--ServerApp.open_browser=False",
            *(f"--LabApp.app_settings_dir={settings}", f"--LabApp.workspaces_dir={settings}/workspaces"),
            *("--LabApp.news_url=", "--ServerApp.log_level=WARN", "--LabApp.log_level=WARN"),
            *("--LabApp.check_for_updates_class=jupyterlab.NeverCheckForUpdate", *_as_root()),
        ]
        address = f"http://{LOOPBACK}:{port}/lab/tree/{notebook}?token={token}"
        return _serve(command, {"JUPYTER_PATH": _with_our_files()}, port, address, browser)


def open_screen(talk: str, port: int = 0, browser: bool = True) -> int:
    """Show the on-screen notebook full-window, its code hidden, and wait until it is stopped.

    Parameters
    ----------
    talk : str
        A bundled talk's name, a talk file or a recipe.
    port : int
        The port to listen on; a free one by default.
    browser : bool
        Whether to open the browser.
    """
    port = port or free_port()
    token = secrets.token_urlsafe(24)
    command = [
        *(sys.executable, "-m", "voila", str(workplace() / ON_SCREEN), "--no-browser"),
        *(f"--Voila.ip={LOOPBACK}", f"--port={port}"),
        *("--template=screen", "--Voila.port_retries=0", f"--Voila.token={token}", "--Voila.log_level=WARN"),
        "--VoilaConfiguration.show_tracebacks=False",
    ]
    path = Path(talk)
    chosen = str(path.resolve()) if path.is_file() else talk  # the notebook runs in its own folder
    environment = {files.TALK_VARIABLE: chosen, "JUPYTER_PATH": _with_our_files()}
    return _serve(command, environment, port, f"http://{LOOPBACK}:{port}/?token={token}", browser)


def _with_our_files() -> str:
    """Return where Jupyter looks for files: our page's template, and what runs a notebook once it is open, first."""
    own = str(Path(__file__).resolve().parent / "show" / "jupyter")
    return os.pathsep.join([own, *filter(None, [os.environ.get("JUPYTER_PATH")])])


def _as_root() -> Sequence[str]:
    return ("--allow-root",) if hasattr(os, "geteuid") and os.geteuid() == 0 else ()


def _serve(command: Sequence[str], environment: dict[str, str], port: int, address: str, browser: bool) -> int:
    """Run a server until it ends or is interrupted; print the address, and open it once it answers."""
    signal.signal(signal.SIGTERM, _stop)  # so that the server never outlives us
    with subprocess.Popen(command, env={**os.environ, **environment}) as server:
        try:
            answers = _wait_until_it_answers(server, port)
            if answers:
                print(f"\nOpen {address}\nStop with Ctrl+C.", flush=True)
            if answers and browser:
                webbrowser.open(address)
            return server.wait()
        except KeyboardInterrupt:
            server.terminate()
            server.wait()
            return 0


def _stop(_number: int, _frame: object) -> None:
    raise KeyboardInterrupt


def _wait_until_it_answers(server: subprocess.Popen, port: int) -> bool:
    while server.poll() is None:
        with socket.socket() as probe:
            probe.settimeout(0.2)
            if probe.connect_ex((LOOPBACK, port)) == 0:
                return True
        try:
            server.wait(0.1)
        except subprocess.TimeoutExpired:
            continue
    return False
