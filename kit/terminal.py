"""What the command line reads and writes: text in UTF-8, whatever the terminal is and wherever its output goes."""

import contextlib
import io
import os
import sys
from collections.abc import Iterable

from kit.errors import KitError


def write_utf8() -> None:
    """Write UTF-8 whatever the terminal says of itself: recipes are full of fractions and accents."""
    for stream in (sys.stdout, sys.stderr):
        if isinstance(stream, io.TextIOWrapper):
            stream.reconfigure(encoding="utf-8", errors="backslashreplace")


def flush() -> None:
    """Write what is still to be written, so that a fault of it is met here and not when Python ends."""
    if sys.stdout is not None:
        sys.stdout.flush()


def write_no_more() -> None:
    """Let what is still to be written go nowhere, so that nothing is told of it when Python ends."""
    with contextlib.suppress(OSError, ValueError):
        nowhere = os.open(os.devnull, os.O_WRONLY)
        os.dup2(nowhere, sys.stdout.fileno())
        os.close(nowhere)


def tell(what: object) -> None:
    """Say what is wrong; where nobody can be told, the exit code has to do."""
    if sys.stderr is not None:
        with contextlib.suppress(OSError):
            print(what, file=sys.stderr, flush=True)


def as_text(arguments: Iterable[str]) -> list[str]:
    """Return the arguments of a command, in UTF-8 whatever the terminal says of itself.

    Raises
    ------
    KitError
        If one is no text: a byte that is no sign comes as half a sign, which cannot be written again.
    """
    return [_text(argument) for argument in arguments]


def _text(argument: str) -> str:
    try:
        return argument.encode("utf-8", "surrogateescape").decode("utf-8")
    except UnicodeError:
        msg = f"{argument[:60]!r} is no UTF-8 text; write it, or name the file or folder, in other signs"
        raise KitError(msg) from None
