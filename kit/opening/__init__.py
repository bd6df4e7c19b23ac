"""Opening the notebooks: as one quiet document in JupyterLab to work in, or full-window with Voilà to show.

`workplace` keeps her copies of the notebooks, `host` starts the server and looks after it, and `serving` is that
server, a process of its own. What the page adds lies in ``kit/show/jupyter``.
"""

from pathlib import Path

from kit import files
from kit.errors import KitError
from kit.opening.host import DOCUMENT, FULL_WINDOW, serve
from kit.opening.workplace import workplace

__all__ = ["ON_SCREEN", "open_notebooks", "open_screen"]

ON_SCREEN = "3_on_screen.ipynb"
_PORTS = range(1, 65536)


def open_notebooks(port: int | None = None, browser: bool = True, notebook: str = ON_SCREEN) -> int:
    """Open the notebooks, listening on this machine only, and wait until it is stopped.

    Parameters
    ----------
    port : int, optional
        The port to listen on; a free one by default.
    browser : bool
        Whether to open the browser; the address is printed in any case.
    notebook : str
        The notebook to open first.

    Raises
    ------
    KitError
        If the port is none, or taken by another program; nothing is opened then.
    """
    return serve(workplace(), f"{DOCUMENT}{notebook}", _checked(port), browser)


def open_screen(talk: str, port: int | None = None, browser: bool = True) -> int:
    """Show the on-screen notebook full-window, its code hidden, and wait until it is stopped.

    Parameters
    ----------
    talk : str
        A talk's name, a talk file or a recipe.
    port : int, optional
        The port to listen on; a free one by default.
    browser : bool
        Whether to open the browser.

    Raises
    ------
    KitError
        If the port is none, or taken by another program; nothing is opened then.
    """
    path = Path(talk)
    chosen = str(path.resolve()) if path.is_file() else talk  # the notebook runs in its own folder
    surroundings = {files.TALK_VARIABLE: chosen}
    return serve(workplace(), f"{FULL_WINDOW}{ON_SCREEN}", _checked(port), browser, surroundings)


def _checked(port: int | None) -> int:
    """Return the port, 0 standing for a free one."""
    if port is not None and port not in _PORTS:
        raise KitError(
            f"{port} is no port; give one from {_PORTS[0]} to {_PORTS[-1]}, or leave --port out for a free one"
        )
    return port or 0
