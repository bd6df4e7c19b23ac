"""Everything that is sent after a talk, written into one folder: each file whole, and none over another unasked."""

from collections.abc import Callable, Iterator
from pathlib import Path

from kit import files
from kit.errors import KitError
from kit.meal.nutrition import Nutrition
from kit.share.contents import contents
from kit.share.handout import handout
from kit.share.mail import ATTACHED, mail
from kit.share.numbers_csv import numbers_csv
from kit.share.pack import pack
from kit.share.page import page
from kit.speech.verdict import Verdict
from kit.talk.talk import Talk

MAIL = "follow-up.eml"
# What each file is for, as the mail and the notebook tell it.
PURPOSES = {**ATTACHED, MAIL: "the mail as a draft, with everything attached: only the addresses are missing"}


def makers(talk: Talk, numbers: Nutrition | None = None, label: bool = False) -> dict[str, Callable[[], bytes]]:
    """Return what makes each file of a follow-up but the mail, by the file's name."""
    says = contents(talk, numbers)
    return {
        "page.html": lambda: page(says).encode(),
        "handout.html": lambda: handout(says, label).encode(),
        "numbers.csv": lambda: numbers_csv(says.numbers, talk.rules).encode("utf-8-sig"),
        "notebook.zip": lambda: pack(talk),
    }


def named_before(talk: Talk, numbers: Nutrition | None = None) -> tuple[tuple[Verdict, ...], tuple[Verdict, ...]]:
    """Return what is named before anything is written: what is left out, and what is sent on her word alone."""
    says = contents(talk, numbers)
    return says.not_sent, says.on_her_word


def follow_up(
    talk: Talk,
    folder: Path,
    numbers: Nutrition | None = None,
    *,
    recording: str = "",
    survey: str = "",
    label: bool = False,
    replace: bool = False,
) -> Iterator[Path]:
    """Write the follow-up of a talk, and yield each file once it is there.

    Everything is made before the first file is written, and a file that is there already stops it before that.

    Parameters
    ----------
    talk : Talk
        The talk.
    folder : pathlib.Path
        Where; it is made when missing.
    numbers : Nutrition, optional
        The dish as it is to be sent; as written by default.
    recording, survey : str
        Links for the mail; a place for each is left where none is given.
    label : bool
        Whether the handout prints a serving in the rounding of a nutrition label too.
    replace : bool
        Whether files of an earlier follow-up may be replaced.

    Raises
    ------
    KitError
        If a file is there and may not be replaced, or the folder cannot be written.
    """
    made = {name: make() for name, make in makers(talk, numbers, label).items()}
    made[MAIL] = mail(contents(talk, numbers), made, recording, survey)
    there = [name for name in made if files.exists(folder / name)]
    if there and not replace:
        raise KitError(f"{folder / there[0]} exists already; choose another folder, or say --force to replace it")
    for name, content in made.items():
        yield files.write_whole(folder / name, content, replace=replace)
