"""How a talk was last set on screen, kept in her own folder: a reload, a closed tab or another day loses nothing."""

import atexit
import hashlib
import json
import re
import threading
from collections.abc import Mapping
from contextlib import suppress
from pathlib import Path
from typing import Any

from kit import files
from kit.errors import KitError

_PAUSE = 0.4  # after which what was kept last is written, so that a slider that is dragged writes once [s]


class Memory:
    """What one kind of panel keeps of each talk.

    Parameters
    ----------
    kind : str
        The panel: ``"screen"``, ``"rehearsal"``.

    Examples
    --------
    >>> Memory("screen").of("a talk that was never shown")
    {}
    """

    def __init__(self, kind: str) -> None:
        self.kind = kind
        self._folder = files.own_folder() / "remembered"
        self._lock = threading.Lock()
        self._waiting: dict[str, Mapping[str, Any]] = {}
        self._timer: threading.Timer | None = None
        atexit.register(self.write)

    def of(self, talk: str) -> dict[str, Any]:
        """Return what was kept of a talk, by its name; empty when there is nothing, or nothing that can be read."""
        with self._lock:
            if talk in self._waiting:
                return dict(self._waiting[talk])
        try:
            kept = json.loads(self._path(talk).read_text(encoding="utf-8"))
        except (OSError, ValueError):
            return {}
        return kept if isinstance(kept, dict) else {}

    def keep(self, talk: str, values: Mapping[str, Any]) -> None:
        """Keep plain values of a talk in the place of those before; they are written within half a second."""
        with self._lock:
            self._waiting[talk] = values
            if self._timer is None:
                self._timer = threading.Timer(_PAUSE, self.write)
                self._timer.daemon = True
                self._timer.start()

    def write(self) -> None:
        """Write what waits; a folder that cannot be written costs the memory, and never the talk."""
        with self._lock:
            waiting, self._waiting, self._timer = self._waiting, {}, None
            for talk, values in waiting.items():
                try:
                    files.write_whole(self._path(talk), json.dumps(values, ensure_ascii=False), replace=True)
                except KitError:
                    continue

    def _path(self, talk: str) -> Path:
        return self._folder / f"{self.kind}_{_file_part(talk)}.json"


def _file_part(talk: str) -> str:
    """Return what stands for a talk in the name of a file."""
    readable = re.sub(r"[^\w-]+", "_", talk)[:40]
    told_apart = hashlib.sha256(talk.encode("utf-8", "surrogatepass")).hexdigest()[:8]
    return f"{readable}_{told_apart}"


def carry_settings(talk: str, to: str) -> None:
    """Let what every panel has kept of a talk be kept of another one too, after it was renamed or copied."""
    folder = files.own_folder() / "remembered"
    for path in sorted(folder.glob(f"*_{_file_part(talk)}.json")):
        kind = path.name.removesuffix(f"_{_file_part(talk)}.json")
        with suppress(KitError):
            files.write_whole(folder / f"{kind}_{_file_part(to)}.json", files.read_text(path))
