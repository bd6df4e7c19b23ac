"""What a colleague gets: the talk without what is private, the notebooks, the kit itself, and one command to begin."""

import json
from typing import Any

import tomlkit

from kit import files
from kit.errors import KitError
from kit.share.wheel import wheel, zipped
from kit.talk.talk import Talk

PRIVATE_ENTRIES = ("point", "step", "question")
_START = """\
{title}
{line}

This folder holds a talk, the notebooks to prepare, rehearse and show it, and the kit that they need.
One command, with Python 3.11 or later and a connection for the packages that the kit uses. It makes an environment
beside these files, installs the kit into it, and opens the notebooks.

On macOS and Linux, in a terminal in this folder:

    python3 -m venv .venv && .venv/bin/python -m pip install --quiet {wheel} && .venv/bin/python -m kit screen {talk}

On Windows:

    py -m venv .venv; .venv\\Scripts\\python -m pip install --quiet {wheel}; .venv\\Scripts\\python -m kit screen {talk}

General education, not individual advice. Local food-safety codes and licensed practice come first.
"""


def pack(talk: Talk) -> bytes:
    """Return a zip archive of a talk with all it needs; the same talk gives the same archive.

    Raises
    ------
    KitError
        If the talk has no file, or the kit is not installed.
    """
    if talk.path is None:
        raise KitError(f'"{talk.title}" is not saved; save it first, and then pack it')
    name, content = wheel()
    held = {
        "START_HERE.txt": _start(talk, name),
        name: content,
        talk.path.name: public_text(talk.path.read_text(encoding="utf-8-sig"), talk.path.suffix).encode(),
    }
    for notebook in sorted(files.bundled("notebooks").glob("*.ipynb")):
        held[f"notebooks/{notebook.name}"] = without_outputs(notebook.read_text(encoding="utf-8")).encode()
    return zipped(held)


def _start(talk: Talk, wheel_name: str) -> bytes:
    assert talk.path
    title = talk.title
    text = _START.format(title=title, line="=" * len(title), wheel=wheel_name, talk=f'"{talk.path.name}"')
    return text.encode()


def public_text(text: str, suffix: str = ".toml") -> str:
    r"""Return the text of a talk file without what is marked as private: entries, her notes, and every comment.

    Examples
    --------
    >>> public_text('title = "Pot"  # for Ines\nnotes = "big pot"\n[[point]]\nsay = "A"\nprivate = true\n')
    'title = "Pot"\n'
    """
    if suffix != ".toml":
        return text
    table: dict[str, Any] = tomlkit.parse(text).unwrap()  # plain values: comments may be private too
    table.pop("notes", None)
    for kind in PRIVATE_ENTRIES:
        kept = [entry for entry in table.get(kind, []) if not entry.get("private")]
        if kept:
            table[kind] = kept
        else:
            table.pop(kind, None)
    return tomlkit.dumps(table)


def without_outputs(text: str) -> str:
    """Return a notebook without what its cells showed."""
    notebook = json.loads(text)
    for cell in notebook["cells"]:
        if cell["cell_type"] == "code":
            cell["outputs"], cell["execution_count"] = [], None
    return json.dumps(notebook, indent=1, ensure_ascii=False) + "\n"
