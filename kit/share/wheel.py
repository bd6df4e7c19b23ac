"""The kit itself as a wheel, made from the files that are installed, so that whoever gets a notebook can run it."""

import base64
import hashlib
import io
import zipfile
from collections.abc import Iterator
from importlib.metadata import PackageNotFoundError, distribution
from pathlib import Path

from kit import files
from kit.errors import KitError

NAME = "nutrition-talk-kit"
_LEFT_OUT = {"__pycache__", ".ipynb_checkpoints"}
_TOGETHER = ("data", "notebooks")  # beside the package in a checkout, inside it in a wheel
_WHEEL = "Wheel-Version: 1.0\nGenerator: kit.share.wheel\nRoot-Is-Purelib: true\nTag: py3-none-any\n"
_EARLIEST = (1980, 1, 1, 0, 0, 0)  # one date for every file: the same kit gives the same wheel


def wheel() -> tuple[str, bytes]:
    """Return the kit's wheel: its file name and its content.

    Raises
    ------
    KitError
        If the kit is not installed, so that nothing is known about its version and what it needs.

    References
    ----------
    PyPA, "Binary distribution format": a zip archive with the package, its metadata, and a record of every file.
    """
    try:
        installed = distribution(NAME)
    except PackageNotFoundError:
        raise KitError("the kit is not installed; run the first command of its README") from None
    stem = f"{NAME.replace('-', '_')}-{installed.version}"
    content = dict(_files())
    content[f"{stem}.dist-info/METADATA"] = (installed.read_text("METADATA") or "").encode()
    content[f"{stem}.dist-info/WHEEL"] = _WHEEL.encode()
    content[f"{stem}.dist-info/entry_points.txt"] = (installed.read_text("entry_points.txt") or "").encode()
    record = [f"{name},{_digest(of)},{len(of)}" for name, of in content.items()]
    content[f"{stem}.dist-info/RECORD"] = "\n".join([*record, f"{stem}.dist-info/RECORD,,", ""]).encode()
    return f"{stem}-py3-none-any.whl", zipped(content)


def zipped(content: dict[str, bytes]) -> bytes:
    """Return files by name as a zip archive; the same files give the same archive."""
    archive = io.BytesIO()
    with zipfile.ZipFile(archive, "w", zipfile.ZIP_DEFLATED) as into:
        for name, of in content.items():
            entry = zipfile.ZipInfo(name, _EARLIEST)
            entry.compress_type, entry.external_attr = zipfile.ZIP_DEFLATED, 0o644 << 16
            into.writestr(entry, of)
    return archive.getvalue()


def _files() -> Iterator[tuple[str, bytes]]:
    package = Path(files.__file__).parent
    for path in _under(package):
        yield f"kit/{path.relative_to(package).as_posix()}", path.read_bytes()
    for folder in _TOGETHER:
        inside = files.bundled(folder)
        if not inside.is_relative_to(package):
            for path in _under(inside):
                yield f"kit/bundled/{folder}/{path.relative_to(inside).as_posix()}", path.read_bytes()


def _under(folder: Path) -> Iterator[Path]:
    for path in sorted(folder.rglob("*")):
        if path.is_file() and not _LEFT_OUT & set(path.parts) and path.suffix != ".pyc":
            yield path


def _digest(content: bytes) -> str:
    return "sha256=" + base64.urlsafe_b64encode(hashlib.sha256(content).digest()).rstrip(b"=").decode()
