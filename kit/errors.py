"""The kit's errors: each says in one sentence what is wrong, where, and what to write instead."""

from collections.abc import Iterable

FEW = 8  # known names up to this many are listed when none is near


class KitError(Exception):
    """Something given to the kit was wrong; the message is meant for the person who gave it."""


class UnknownNameError(KitError):
    """A name that the kit does not know.

    Parameters
    ----------
    kind : str
        What the name stands for: ``"food"``, ``"nutrient"``, ``"talk"`` ...
    name : str
        The name as it was written.
    known : iterable of str
        The names that would have been right; the nearest is offered.
    where : str, optional
        File and entry, when the name stood in a file.
    """

    def __init__(self, kind: str, name: str, known: Iterable[str] = (), where: str = "") -> None:
        self.kind, self.name, self.known, self.where = kind, name, tuple(known), where
        place = f"{where}: " if where else ""
        few = f"; write one of {', '.join(self.known)}" if 0 < len(self.known) <= FEW else ""
        super().__init__(f'{place}no {kind} "{name}"{nearest(name, self.known) or few}')


class AmountError(KitError):
    """An amount, weight or number of servings that makes no sense."""


class LineError(KitError):
    """An ingredient line that cannot be read."""


class ChangeError(KitError):
    """A what-if that is not understood, or that has to be asked back.

    Parameters
    ----------
    message : str
        What is not clear, and what to write instead.
    choices : iterable of str
        Lines to write instead, each of which is clear.
    """

    def __init__(self, message: str, choices: Iterable[str] = ()) -> None:
        super().__init__(message)
        self.choices = tuple(choices)

    def __reduce__(self) -> tuple[type["ChangeError"], tuple[str, tuple[str, ...]]]:
        """Keep the choices when the error is pickled."""
        return type(self), (str(self), self.choices)


class NotUnderstoodError(ChangeError):
    """A what-if in which no change is recognised at all."""


class TargetError(KitError):
    """A target for a serving that cannot be read, or that no amounts within the limits meet."""


class TalkFileError(KitError):
    """A talk file with faults; all of them are reported at once.

    Parameters
    ----------
    file : str
        The file's name.
    faults : iterable of str
        One sentence for each fault, each beginning with the entry it stands in.
    """

    def __init__(self, file: str, faults: Iterable[str]) -> None:
        self.file, self.faults = file, tuple(faults)
        super().__init__("\n".join(f"{file}, {fault}" for fault in self.faults))


class LabelError(KitError):
    """A package label that cannot be right."""


class ReleaseError(KitError):
    """An official composition release that cannot be read."""


def nearest(name: str, known: Iterable[str], closeness: float = 55.0) -> str:
    """Return ``; did you mean "x"?`` for the known name nearest to `name`, or nothing.

    Examples
    --------
    >>> nearest("protien", ["protein", "potassium"])
    '; did you mean "protein"?'
    >>> nearest("zzz", ["protein"])
    ''
    """
    from rapidfuzz import fuzz, process  # imported here: needed only when something is wrong

    best = process.extractOne(name.lower(), list(known), scorer=fuzz.ratio, score_cutoff=closeness)
    return f'; did you mean "{best[0]}"?' if best else ""
