"""Where the kit's files are, and how it writes one: whole or not at all, and never over another unasked."""

import os
import tempfile
from pathlib import Path

from kit.errors import KitError

TALK_VARIABLE = "TALK_KIT_TALK"  # in the environment: which talk the on-screen notebook was asked for
_HERE = Path(__file__).resolve().parent


def bundled(name: str) -> Path:
    """Return the path of something that ships with the kit, such as ``"data/foods.csv"`` or ``"notebooks"``.

    In a checkout the files lie beside the package; in an installed wheel they lie inside it.
    """
    inside = _HERE / "bundled" / name
    return inside if inside.exists() else _HERE.parent / name


def own_folder() -> Path:
    """Return the folder of the user's own foods, imported release and practice results.

    ``TALK_KIT_HOME`` names it when set; otherwise it is ``.talk-kit`` in the home folder. It need not exist yet.
    """
    return Path(os.environ.get("TALK_KIT_HOME") or Path.home() / ".talk-kit")


def write_whole(path: Path, content: str | bytes, *, replace: bool = False) -> Path:
    """Write a file through a temporary one beside it, so that no reader ever sees half of it.

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
    if path.exists() and not replace:
        raise KitError(f"{path} exists already; choose another name, or say that it may be replaced")
    part = None
    try:
        path.parent.mkdir(parents=True, exist_ok=True)
        with tempfile.NamedTemporaryFile("wb", dir=path.parent, prefix=".", delete=False) as part:
            part.write(content.encode() if isinstance(content, str) else content)
            part.flush()
            os.fsync(part.fileno())
        os.replace(part.name, path)
    except OSError as fault:
        if part is not None:
            Path(part.name).unlink(missing_ok=True)
        raise KitError(f"{path} cannot be written ({fault.strerror}); choose a folder you may write to") from fault
    return path
