"""Notes every connection that Python processes make beyond this machine, and every name that they look up."""

import os
from pathlib import Path

_WATCH = """
import sys
_names = {"localhost", "127.0.0.1", "::1", "", None, "0.0.0.0"}
def _watch(event, arguments):
    if event in ("socket.connect", "socket.sendto"):
        where = arguments[1]
        outside = isinstance(where, tuple) and str(where[0]) not in _names and not str(where[0]).startswith("127.")
    elif event == "socket.getaddrinfo":
        where = arguments[0]
        outside = (where.decode() if isinstance(where, bytes) else where) not in _names
    else:
        return
    if outside:
        with open(%r, "a") as notes:
            notes.write(f"{event} {where} by {sys.argv}\\n")
sys.addaudithook(_watch)
"""


def watched(folder: Path) -> tuple[dict[str, str], Path]:
    """Return surroundings in which every Python notes what it asks outside, and the file it notes that in."""
    notes = folder / "asked_outside"
    (folder / "sitecustomize.py").write_text(_WATCH % str(notes), encoding="utf-8")
    path = os.pathsep.join(filter(None, [str(folder), os.environ.get("PYTHONPATH")]))
    return {**os.environ, "PYTHONPATH": path}, notes


def asked_outside(notes: Path) -> str:
    """Return what was noted."""
    return notes.read_text(encoding="utf-8") if notes.exists() else ""
