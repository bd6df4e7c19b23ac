"""Her copies of the notebooks: the kit's own stay as they are, and an upgrade refreshes what she left alone."""

import hashlib
import json
from pathlib import Path

from kit import files
from kit.errors import KitError

_COPIED = ".copied.json"  # beside the copies: for each, the fingerprint of what was copied


def workplace(folder: Path | None = None) -> Path:
    """Return the folder of notebooks to work in, with the kit's newest in it except where she has changed hers.

    Parameters
    ----------
    folder : pathlib.Path, optional
        Where they are to lie; in the folder of her own files by default.

    Raises
    ------
    KitError
        If the folder of her own files cannot be written.
    """
    copies = folder or files.own_folder() / "notebooks"
    copied = _read_copied(copies / _COPIED)
    now: dict[str, str | None] = {}
    for notebook in sorted(files.bundled("notebooks").glob("*.ipynb")):
        text = notebook.read_text(encoding="utf-8")
        now[notebook.name] = fingerprint(text)
        copy = copies / notebook.name
        before = copied.get(notebook.name)
        present = _fingerprint_of(copy)
        if present is None or before == present != now[notebook.name]:
            files.write_whole(copy, text, replace=True)
        elif present not in (before, now[notebook.name]):
            now[notebook.name] = before  # she has changed it, and keeps it
    if now != copied:
        files.write_whole(copies / _COPIED, json.dumps(now, indent=2), replace=True)
    return copies


def fingerprint(notebook: str) -> str:
    """Return what tells one notebook's content from another's: its cells, not what running or saving adds to them.

    Parameters
    ----------
    notebook : str
        The file's text.

    Examples
    --------
    >>> stored = '{"cells": [{"cell_type": "code", "source": ["1 + 1"], "outputs": []}]}'
    >>> saved = '{"cells": [{"cell_type": "code", "source": "1 + 1", "outputs": [{}], "execution_count": 3}]}'
    >>> fingerprint(stored) == fingerprint(saved)
    True
    """
    cells = [(cell["cell_type"], "".join(cell["source"])) for cell in json.loads(notebook)["cells"]]
    return hashlib.sha256(json.dumps(cells).encode()).hexdigest()


def _fingerprint_of(path: Path) -> str | None:
    """Return a copy's fingerprint: None where there is none, and one of its own kind where it is not a notebook."""
    try:
        return fingerprint(path.read_text(encoding="utf-8"))
    except FileNotFoundError:
        return None
    except OSError as fault:
        raise KitError(f"{path} cannot be read ({fault.strerror}); see to the rights of your own folder") from fault
    except (ValueError, KeyError, TypeError):
        return "not a notebook"  # hers, whatever it is


def _read_copied(path: Path) -> dict[str, str | None]:
    try:
        copied = json.loads(path.read_text(encoding="utf-8"))
    except (OSError, ValueError):
        return {}
    return copied if isinstance(copied, dict) else {}
