"""The kit's side of a server: start it, say where it is, and see that neither outlives the other.

The server is told everything over its standard input, the token included, and ends when that closes: however this
process ends, the operating system closes it. So nobody reads a token off a command line, and no server is left behind.
"""

import contextlib
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
from collections.abc import Iterator, Mapping
from html import escape
from pathlib import Path
from typing import Any

from kit.errors import KitError

LOOPBACK = "127.0.0.1"
DOCUMENT, FULL_WINDOW = "doc/tree/", "voila/render/"  # the two ways of showing a notebook
_OURS = Path(__file__).resolve().parents[1] / "show" / "jupyter"
_PATIENCE = 10  # for a server to end by itself before it is ended [s]
# What the start would wait for in vain, half of it: a library that builds 39 grammars to check one kind of address of
# Jupyter's own files, which is left out where it is not found; and Node.js, where there is one, which JupyterLab asks
# from where it may fetch what is never built here.
_SERVE = """
import sys
sys.modules["rfc3987_syntax"] = None
from jupyterlab import commands
commands._yarn_config = lambda _log: {"yarn config": {}}
from kit.opening.serving import main
sys.exit(main())
"""


def serve(folder: Path, page: str, port: int, browser: bool, surroundings: Mapping[str, str] | None = None) -> int:
    """Run a server until it ends or is interrupted; print the address, and open it, once it listens.

    Parameters
    ----------
    folder : pathlib.Path
        The notebooks.
    page : str
        The page to open first.
    port : int
        The port to listen on; 0 for a free one.
    browser : bool
        Whether to open the browser.
    surroundings : mapping of str to str, optional
        Variables for the notebooks' environment.

    Returns
    -------
    int
        0 once it was stopped.

    Raises
    ------
    KitError
        If the server does not start, or ends by itself.
    """
    _check_free(port)
    token = secrets.token_urlsafe(24)
    with _private_folder() as running, _stops_on_signals():
        asked = {"folder": str(folder), "running": str(running), "token": token, "ip": LOOPBACK, "port": port}
        server = _start(_environment(running, surroundings or {}))
        try:
            _tell(server, asked)
            for report in _reports(server):
                if "port" in report:
                    _announce(f"http://{LOOPBACK}:{report['port']}/{page}?token={token}", running, browser)
                else:
                    print(report["fault"], file=sys.stderr, flush=True)
            raise KitError(_why_it_ended(server, port))
        except KeyboardInterrupt:
            return 0
        finally:
            _end(server)


def _check_free(port: int) -> None:
    """Tell a port that another program listens on before anything is started, let alone opened."""
    try:
        socket.create_server((LOOPBACK, port)).close()
    except OSError as fault:
        raise KitError(_taken(port)) from fault


def _taken(port: int) -> str:
    return f"port {port} is taken by another program; give another one, or leave --port out for a free one"


def _start(environment: Mapping[str, str]) -> subprocess.Popen[str]:
    return subprocess.Popen(
        [sys.executable, "-c", _SERVE],
        env=environment,
        stdin=subprocess.PIPE,
        stdout=subprocess.PIPE,
        stderr=subprocess.DEVNULL,  # what Jupyter remarks on; true faults are reported
        text=True,
        encoding="utf-8",
        start_new_session=True,  # Ctrl+C is for us
    )


def _environment(running: Path, surroundings: Mapping[str, str]) -> dict[str, str]:
    """Return the server's environment: our page, this Python, and none of the user's own Jupyter settings."""
    ours = os.pathsep.join(filter(None, [str(_OURS), os.environ.get("JUPYTER_PATH")]))
    places = {"JUPYTER_CONFIG_DIR": "config", "JUPYTER_RUNTIME_DIR": "runtime", "IPYTHONDIR": "ipython"}
    places |= dict.fromkeys(("TMPDIR", "TEMP", "TMP"), "")  # what the server leaves lying goes with the folder
    return {
        **os.environ,
        **{name: str(running / place) for name, place in places.items()},
        **{"JUPYTER_PATH": ours, "JUPYTER_NO_CONFIG": "1", "JUPYTER_PREFER_ENV_PATH": "1"},
        **surroundings,
    }


def _tell(server: subprocess.Popen[str], asked: Mapping[str, Any]) -> None:
    with contextlib.suppress(BrokenPipeError):  # it ended at once; what it reported says why
        assert server.stdin
        server.stdin.write(json.dumps(asked) + "\n")
        server.stdin.flush()


def _reports(server: subprocess.Popen[str]) -> Iterator[dict[str, Any]]:
    """Yield what the server reports, one JSON object a line, until it ends."""
    assert server.stdout
    for line in server.stdout:
        yield json.loads(line)


def _announce(address: str, running: Path, browser: bool) -> None:
    print(f"\nOpen {address}\nStop with Ctrl+C.", flush=True)
    if browser:
        webbrowser.open(_door(address, running).as_uri())


def _door(address: str, running: Path) -> Path:
    """Write the page that the browser is given: it leads on to the address, whose token no command line shows."""
    door = running / "open.html"
    door.write_text(
        f'<!doctype html><meta charset="utf-8"><title>Opening</title><a href="{escape(address)}">Open the notebooks</a>'
        f"<script>location.replace({json.dumps(address)})</script>",
        encoding="utf-8",
    )
    return door


def _why_it_ended(server: subprocess.Popen[str], port: int) -> str:
    code = server.wait()
    if code == TAKEN and port:
        return _taken(port)
    return f"the server of the notebooks has ended by itself (code {code}); start it again"


TAKEN = 3  # the code that the server ends with when it may not listen on its port


def _end(server: subprocess.Popen[str]) -> None:
    """End a server by closing what it listens to, and if need be by force."""
    assert server.stdin
    assert server.stdout
    with contextlib.suppress(OSError):
        server.stdin.close()
    try:
        server.wait(_PATIENCE)
    except subprocess.TimeoutExpired:
        server.kill()
        server.wait()
    server.stdout.close()


@contextlib.contextmanager
def _private_folder() -> Iterator[Path]:
    """Make a folder that only this user may look into; the server removes it too, should we be killed."""
    folder = Path(tempfile.mkdtemp(prefix="talk-kit-"))
    try:
        yield folder
    finally:
        shutil.rmtree(folder, ignore_errors=True)


@contextlib.contextmanager
def _stops_on_signals() -> Iterator[None]:
    """Take being ended or hung up as being interrupted, so that everything is put away."""

    def stop(_number: int, _frame: object) -> None:
        raise KeyboardInterrupt

    named = [getattr(signal, name) for name in ("SIGTERM", "SIGHUP") if hasattr(signal, name)]
    before = {number: signal.signal(number, stop) for number in named}
    try:
        yield
    finally:
        for number, handler in before.items():
            signal.signal(number, handler)
