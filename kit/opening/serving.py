"""The server of the notebooks, a process of its own, started by `kit.opening.host`.

It reads what to serve from one line of its standard input, reports over its standard output (one JSON object a line),
and ends when its standard input closes, which is when the kit that started it is gone.
"""

import contextlib
import json
import logging
import os
import secrets
import shutil
import sys
import threading
from collections.abc import Callable, Mapping
from pathlib import Path
from pkgutil import get_data
from typing import Any

from jupyter_server.base.handlers import JupyterHandler
from jupyterlab.labapp import LabApp
from tornado.web import authenticated
from traitlets.config import Config

from kit.opening.host import TAKEN
from kit.show.look import style

_LEFT_ALONE = 30  # after which a kernel without a page is ended [s]
_LOOKED_AT = 5  # how often kernels are looked at [s]
_PUTTING_AWAY = 8  # for kernels to end by themselves before this process does [s]
_NO_NETWORK = {"fullMathjaxUrl": "null", "mathjaxConfig": "null"}  # Voila would ask for a script of formulas
_PLOTLY = "package_data/plotly.min.js"  # as plotly.offline.get_plotlyjs reads it, which would import far more
_SETTINGS = Path(__file__).resolve().parents[1] / "show" / "jupyter" / "settings"


def main() -> int:
    """Serve until standard input closes."""
    report = _reporter()
    asked = json.loads(sys.stdin.readline())
    try:
        server = LabApp.initialize_server(argv=[], config=Config(_configuration(asked)))
        _report_faults(server.log, report)
        ours = f"{server.base_url}talk-kit/"
        server.web_app.add_handlers(".*$", [(f"{ours}frame.css", _Style), (f"{ours}plotly.js", _Plotly)])
        # Bound by now or ended: the server's own call was queued before this one.
        server.io_loop.add_callback(lambda: report({"port": server.port}))
        threading.Thread(target=_end_with_the_kit, args=(server, asked["running"]), daemon=True).start()
        server.start()
        return 0
    except SystemExit:
        return TAKEN
    finally:
        shutil.rmtree(asked["running"], ignore_errors=True)


def _configuration(asked: Mapping[str, Any]) -> dict[str, Any]:
    running = Path(asked["running"])
    return {
        "ServerApp": {
            "ip": asked["ip"],
            "port": asked["port"],
            "port_retries": 0,
            "root_dir": asked["folder"],
            "open_browser": False,
            "no_browser_open_file": True,
            "allow_root": True,
            "terminals_enabled": False,
            "cookie_secret": secrets.token_bytes(32),
            "jpserver_extensions": {"voila.server_extension": True},
            "log_level": logging.ERROR,
        },
        "IdentityProvider": {"token": asked["token"]},
        "LabApp": {
            "app_settings_dir": str(_SETTINGS),
            "user_settings_dir": str(running / "settings"),
            "workspaces_dir": str(running / "workspaces"),
            "extension_manager": "readonly",
            "news_url": None,
            "check_for_updates_class": "jupyterlab.NeverCheckForUpdate",
            "log_level": logging.ERROR,
        },
        "KernelManager": {"shutdown_wait_time": 2.0},
        "AsyncMappingKernelManager": {"cull_idle_timeout": _LEFT_ALONE, "cull_interval": _LOOKED_AT},
        "ContentsManager": {"pre_save_hook": without_outputs},
        "VoilaConfiguration": {
            "template": "screen",
            "show_tracebacks": False,
            "page_config_hook": lambda page, **_rest: {**page, "token": asked["token"], **_NO_NETWORK},
        },
    }


def without_outputs(model: dict[str, Any], **_place: Any) -> None:
    """Take from a notebook that is about to be saved what running it added: a page that opens it runs it anew.

    Examples
    --------
    >>> cell = {"cell_type": "code", "source": "1", "outputs": [{"output_type": "stream"}], "execution_count": 1}
    >>> without_outputs({"type": "notebook", "content": {"cells": [cell]}})
    >>> cell["outputs"], cell["execution_count"]
    ([], None)
    """
    if model["type"] != "notebook":
        return
    for cell in model["content"]["cells"]:
        if cell["cell_type"] == "code":
            cell.update(outputs=[], execution_count=None)


class _Style(JupyterHandler):
    """The frame's style sheet, with the tokens and the typeface of every screen."""

    @authenticated
    def get(self) -> None:
        self.xsrf_token  # noqa: B018  sets the cookie without which a page that is left may not end its kernel
        self.set_header("Content-Type", "text/css; charset=utf-8")
        self.finish(style("frame"))


class _Plotly(JupyterHandler):
    """The script of plotly, hidden from the page's module loader."""

    @authenticated
    def get(self) -> None:
        self.set_header("Content-Type", "text/javascript; charset=utf-8")
        self.set_header("Cache-Control", "private, no-cache")  # asked for each time, sent only when it is another one
        self.finish(
            b"(function (define, module, exports) {" + (get_data("plotly", _PLOTLY) or b"") + b"\n}).call(window);"
        )


def _reporter() -> Callable[[Mapping[str, Any]], None]:
    """Keep standard output for reports; what this process or a kernel prints goes nowhere."""
    channel = os.fdopen(os.dup(sys.stdout.fileno()), "w", encoding="utf-8")
    with open(os.devnull, "w") as nowhere:
        os.dup2(nowhere.fileno(), sys.stdout.fileno())

    def report(what: Mapping[str, Any]) -> None:
        with contextlib.suppress(OSError, ValueError):  # the kit is gone, and this process soon will be
            channel.write(json.dumps(what) + "\n")
            channel.flush()

    return report


def _report_faults(log: logging.Logger, report: Callable[[Mapping[str, Any]], None]) -> None:
    class Reports(logging.Handler):
        def emit(self, record: logging.LogRecord) -> None:
            report({"fault": one_sentence(record)})

    log.addHandler(Reports(logging.ERROR))


def one_sentence(record: logging.LogRecord) -> str:
    r"""Return what a log record says, in one line: its first line, and the exception's last.

    Examples
    --------
    >>> one_sentence(logging.LogRecord("", logging.ERROR, "", 0, "no room: %s\nTraceback ...", ("disk",), None))
    'The notebooks met an error: no room: disk'
    """
    said = record.getMessage().strip().splitlines()[:1]
    if record.exc_info and record.exc_info[1] is not None:
        said += [str(record.exc_info[1]) or type(record.exc_info[1]).__name__]
    return f"The notebooks met an error: {': '.join(said)}"


def _end_with_the_kit(server: Any, running: str) -> None:
    while sys.stdin.read(4096):
        pass
    server.stop()
    threading.Event().wait(_PUTTING_AWAY)
    shutil.rmtree(running, ignore_errors=True)
    os._exit(1)
