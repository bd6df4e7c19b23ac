"""Another way to write something, and the plain one that the reader knows."""

import re
from collections.abc import Callable, Iterable
from typing import NamedTuple


class Rewriting(NamedTuple):
    """A pattern and the plain words for what it finds; with a cue, only in a text that holds it (in small letters)."""

    pattern: re.Pattern[str]
    plain: str | Callable[[re.Match[str]], str]
    cue: str = ""


def rewritten(text: str, rewritings: Iterable[Rewriting]) -> str:
    """Return a text after each rewriting in turn.

    Examples
    --------
    >>> rewritten("1 thumb-sized piece ginger", [Rewriting(re.compile("thumb-sized piece"), "thumb", "thumb")])
    '1 thumb ginger'
    """
    small = text.lower()
    for pattern, plain, cue in rewritings:
        if cue in small:
            text = pattern.sub(plain, text)
            small = text.lower()
    return text
