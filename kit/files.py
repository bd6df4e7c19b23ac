"""Where the kit's files are, and how it writes one: whole or not at all, and never over another unasked."""

import hashlib
import os
import secrets
import stat
import threading
import time
from collections.abc import Callable, Iterator
from contextlib import contextmanager, suppress
from functools import lru_cache
from pathlib import Path

from kit.errors import KitError

try:
    import fcntl
except ImportError:  # no such locks on Windows
    fcntl = None  # type: ignore[assignment]

TALK_VARIABLE = "TALK_KIT_TALK"  # in the environment: which talk the on-screen notebook was asked for
LARGEST_TEXT = 1_000_000  # bytes of a text that the kit reads whole
_HERE = Path(__file__).resolve().parent
_PART = ".part"  # ending of a file that is being written
_LONGEST_WAIT = 10.0  # for another writer [s]
_HELD = threading.local()  # the folders that this thread has locked


def bundled(name: str) -> Path:
    """Return the path of something that ships with the kit, such as ``"data/foods.csv"`` or ``"notebooks"``.

    In a checkout the files lie beside the package; in an installed wheel they lie inside it.
    """
    inside = _HERE / "bundled" / name
    return inside if inside.exists() else _HERE.parent / name


def own_folder() -> Path:
    """Return the folder of the user's own talks, foods, imported release and practice results.

    ``TALK_KIT_HOME`` names it when set; otherwise it is ``.talk-kit`` in the home folder. It need not exist yet.

    Raises
    ------
    KitError
        If there is no home folder.
    """
    return _folder_of(os.environ.get("TALK_KIT_HOME"), os.environ.get("HOME"), os.environ.get("USERPROFILE"))


@lru_cache(maxsize=8)
def _folder_of(named: str | None, *_home: str | None) -> Path:
    """Return the user's own folder where the environment says so; it is asked for with every food that is named."""
    try:
        return Path(named or Path.home() / ".talk-kit")
    except RuntimeError:
        raise KitError("there is no home folder; name a folder of yours in the variable TALK_KIT_HOME") from None


def read_text(path: Path) -> str:
    """Return the text of a file.

    Raises
    ------
    KitError
        If it cannot be read, is no UTF-8 text, or is larger than any text of a talk.
    """
    try:
        if path.stat().st_size > LARGEST_TEXT:
            raise KitError(f"{path.name} has over {LARGEST_TEXT:,} bytes; a talk file is a page or two of text")
        return path.read_bytes().decode("utf-8-sig")
    except UnicodeDecodeError:
        raise KitError(f"{path.name} is no UTF-8 text; save it as plain text") from None
    except (OSError, ValueError) as fault:
        raise KitError(f"{_named(path)} cannot be read ({_reason(fault)})") from fault


def is_file(path: Path) -> bool:
    """Whether there is such a file; a name that no file can have has none."""
    try:
        return path.is_file()
    except (OSError, ValueError):
        return False


def is_folder(path: Path) -> bool:
    """Whether there is such a folder; a name that no folder can have has none."""
    try:
        return path.is_dir()
    except (OSError, ValueError):
        return False


def exists(path: Path) -> bool:
    """Whether something lies at a path; a name that no file can have has nothing."""
    try:
        return path.exists()
    except (OSError, ValueError):
        return False


def refusal(path: Path) -> str:
    """Return why it cannot be seen whether something lies at a path ("Permission denied"); empty where it can."""
    try:
        path.stat()
    except PermissionError as fault:
        return _reason(fault)
    except (OSError, ValueError):
        return ""
    return ""


def write_whole(path: Path, content: str | bytes, *, replace: bool = False) -> Path:
    """Write a file through a temporary one beside it, so that no reader ever sees half of it.

    The file keeps its permissions, and a link goes on pointing where it did. What a write left behind that was killed
    is removed by the next one.

    Parameters
    ----------
    path : pathlib.Path
        The file; its folder is made when missing.
    content : str or bytes
        The whole of it; text is stored as UTF-8.
    replace : bool
        Whether an existing file may be replaced.

    Raises
    ------
    KitError
        If the file exists and `replace` is false, or the folder cannot be written.
    """
    path = Path(path)
    with _writing(path) as target:
        if target.exists() and not replace:
            raise KitError(f"{path} exists already; choose another name, or say that it may be replaced")
        _write_through(target, content.encode() if isinstance(content, str) else content)
    return path


def changed(path: Path, change: Callable[[str | None], str]) -> Path:
    """Change a file while nobody else does: it is read, changed and written under one lock.

    Parameters
    ----------
    path : pathlib.Path
        The file; it need not exist yet.
    change : callable
        Is given the present text, None for a file that is not there, and returns the new one.

    Raises
    ------
    KitError
        If it cannot be read or written.
    """
    path = Path(path)
    with _writing(path) as target:
        _write_through(target, change(read_text(target) if is_file(target) else None).encode())
    return path


@contextmanager
def _writing(path: Path) -> Iterator[Path]:
    """Give the file that a path stands for, its folder locked; what goes wrong is told in one sentence."""
    try:
        target = path.resolve() if path.is_symlink() else path
        with locked(target.parent):
            if target.exists() and not target.stat().st_mode & 0o222:
                raise KitError(f"{path} is write-protected; allow writing to it, or choose another name")
            yield target
    except (OSError, ValueError, RuntimeError) as fault:  # a circle of links is a RuntimeError before Python 3.13
        raise KitError(_unwritable(path, fault)) from fault


@contextmanager
def locked(folder: Path) -> Iterator[None]:
    """Keep every other writer to a folder waiting, in this process and in others, while several files change together.

    The lock is on the folder itself, so that nothing is left behind; where the system has no such locks there is none.
    Files that are written meanwhile by the one that holds it do not wait for it. The folder is made when missing.

    Raises
    ------
    KitError
        If the folder cannot be made.
    """
    try:
        folder.mkdir(parents=True, exist_ok=True)
    except (OSError, ValueError) as fault:
        raise KitError(_unwritable(folder, fault)) from fault
    held = _HELD.__dict__.setdefault("folders", set())
    if folder.resolve() in held:
        yield
        return
    held.add(folder.resolve())
    try:
        with _locked(folder):
            yield
    finally:
        held.discard(folder.resolve())


@contextmanager
def _locked(folder: Path) -> Iterator[None]:
    if fcntl is None:
        yield
        return
    lock = os.open(folder, os.O_RDONLY)
    try:
        until = time.monotonic() + _LONGEST_WAIT
        while True:
            try:
                fcntl.flock(lock, fcntl.LOCK_EX | fcntl.LOCK_NB)
                break
            except BlockingIOError:
                if time.monotonic() > until:
                    raise KitError(f"another window is writing to {folder}; try again in a moment") from None
                time.sleep(0.005)
            except OSError:  # a file system without locks
                break
        yield
    finally:
        os.close(lock)


def _write_through(target: Path, content: bytes) -> None:
    """Write a temporary file and move it into place; the folder is locked, so that what lies there is left over."""
    start = f".{hashlib.sha256(target.name.encode(errors='replace')).hexdigest()[:12]}-"
    for left in target.parent.glob(f"{start}*{_PART}"):
        left.unlink(missing_ok=True)
    part = target.parent / f"{start}{secrets.token_hex(4)}{_PART}"
    file = os.open(part, os.O_WRONLY | os.O_CREAT | os.O_EXCL, 0o666)
    try:
        with suppress(FileNotFoundError):
            os.chmod(part, stat.S_IMODE(target.stat().st_mode))
        view = memoryview(content)
        while view:
            view = view[os.write(file, view) :]
        os.fsync(file)
        os.replace(part, target)
    except BaseException:
        part.unlink(missing_ok=True)
        raise
    finally:
        os.close(file)


def _unwritable(path: Path, fault: Exception) -> str:
    return f"{_named(path)} cannot be written ({_reason(fault)}); choose a folder you may write to"


def _named(path: Path) -> str:
    text = str(path)
    return text if len(text) <= 200 else f"{text[:100]}...{text[-40:]}"


def _reason(fault: Exception) -> str:
    return getattr(fault, "strerror", None) or str(fault)
