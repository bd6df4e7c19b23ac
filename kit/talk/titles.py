"""The title of a talk's file: read without reading the rest, and changed with the rest as it stands."""

import re
from functools import lru_cache
from pathlib import Path

import tomlkit
from tomlkit.exceptions import TOMLKitError

from kit import files
from kit.errors import KitError
from kit.talk.plain_talk import talk_from_plain

_TITLE = re.compile(r"""^\s*title\s*=\s*(?:"((?:[^"\\]|\\.)*)"|'([^']*)')""", re.MULTILINE)


def title_of(path: Path) -> str:
    """Return the title of a talk's file; one that cannot be read is called by its name."""
    try:
        return _title_of(path, path.stat().st_mtime_ns)
    except OSError:
        return _from_name(path.stem)


@lru_cache(maxsize=1_000)
def _title_of(path: Path, _changed: int) -> str:
    """Return the title of a talk; the time of its last change keeps the answer fresh."""
    try:
        text = files.read_text(path)
        if path.suffix == ".txt":
            return talk_from_plain(text, path).title
    except KitError:
        return _from_name(path.stem)
    match = _TITLE.search(text.partition("\n[")[0])
    if match is None:
        return _from_name(path.stem)
    try:
        title = match[2] if match[1] is None else str(tomlkit.parse(match[0])["title"])
    except TOMLKitError:  # a sign that TOML does not know; reading the talk tells it
        return _from_name(path.stem)
    return title.strip() or _from_name(path.stem)


def _from_name(stem: str) -> str:
    return stem.replace("_", " ").replace("-", " ")


def with_title(text: str, title: str, path: Path) -> str:
    """Return the text of a talk with another title, everything else as it was."""
    if path.suffix == ".txt":
        old = talk_from_plain(text, path).title
        lines = text.splitlines(keepends=True)
        at = next((at for at, line in enumerate(lines) if old and old in line), None)
        if at is None:
            return f"Title: {title}\n{text}"
        lines[at] = f"Title: {title}\n"
        return "".join(lines)
    try:
        document = tomlkit.parse(text)
    except TOMLKitError as fault:
        raise KitError(f"{path.name} has faults; mend them first: {fault}") from fault
    document["title"] = title
    return tomlkit.dumps(document)
