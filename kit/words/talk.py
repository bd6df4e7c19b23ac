"""The talk file: a recipe, the points that will be said, the plan on the day, and the questions to expect."""

from collections.abc import Mapping
from dataclasses import dataclass, replace
from pathlib import Path
from typing import Any

from kit import files
from kit.errors import KitError, TalkFileError, UnknownNameError
from kit.food.lines import Reading
from kit.food.recipe_text import read_recipe
from kit.meal.recipe import Recipe, recipe_from

LARGEST_FILE = 1_000_000  # bytes


@dataclass(frozen=True, slots=True)
class Point:
    """One sentence that will be spoken; `means` says what it claims, and is empty when nothing is stated."""

    say: str
    part: str = ""
    means: Mapping[str, Any] | None = None


@dataclass(frozen=True, slots=True)
class Pot:
    """Something that cooks in the background."""

    name: str
    minutes: float


@dataclass(frozen=True, slots=True)
class PlanStep:
    """One step of the plan: minutes or words of talk, minutes of hands-on work, a pot started, pots needed."""

    title: str
    part: str = ""
    say: str = ""
    say_minutes: float | None = None
    hands_minutes: float = 0.0
    pot: Pot | None = None
    needs: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class Question:
    """What the audience is likely to ask, what to try on screen, and a prepared answer."""

    asks: str
    try_: Mapping[str, Any] | None = None
    answer: str = ""


@dataclass(frozen=True, eq=False)
class Talk:
    """A talk, ready to be shown.

    Attributes
    ----------
    name : str
        The file's name without its ending.
    recipe : Recipe
        What is cooked.
    readings : tuple of Reading
        How each ingredient line was read.
    points, steps, questions : tuple
        What will be said, the plan on the day, what may be asked.
    series, keeps_days, minutes, words_per_minute, rules, measures
        As the talk file gives them; `rules` is the set of regulated wordings, ``"us"`` or ``"eu"``.
    """

    name: str
    recipe: Recipe
    readings: tuple[Reading, ...] = ()
    points: tuple[Point, ...] = ()
    steps: tuple[PlanStep, ...] = ()
    questions: tuple[Question, ...] = ()
    series: str = ""
    keeps_days: float | None = None
    minutes: float | None = None
    words_per_minute: float = 140.0
    rules: str = "us"
    measures: str = "us"
    path: Path | None = None

    @property
    def title(self) -> str:
        """The recipe's title."""
        return self.recipe.title


def bundled_talks() -> dict[str, Path]:
    """Return the talks that ship with the kit, by name."""
    return {path.stem: path for path in sorted(files.bundled("data/talks").glob("*.toml"))}


def read_talk(talk: str | Path) -> Talk:
    """Read a talk: a bundled talk's name, a ``.toml`` talk file, or a ``.txt`` recipe.

    Raises
    ------
    UnknownNameError
        If there is neither a bundled talk nor a file of that name.
    TalkFileError
        If the file has faults: all of them, each with the entry and what to write instead.
    """
    path = bundled_talks().get(str(talk), Path(talk))
    if not path.is_file():
        raise UnknownNameError("talk or recipe file", str(talk), bundled_talks())
    try:
        if path.stat().st_size > LARGEST_FILE:
            raise KitError(f"{path.name} has over {LARGEST_FILE:,} bytes; a talk file is a page or two of text")
        text = path.read_text(encoding="utf-8-sig")
    except UnicodeDecodeError:
        raise KitError(f"{path.name} is no UTF-8 text; save it as plain text") from None
    except OSError as fault:
        raise KitError(f"{path.name} cannot be read ({fault.strerror})") from fault
    if path.suffix != ".toml":
        return _talk_from_recipe(text, path)
    from kit.words.points import validate  # both make use of the values of this module
    from kit.words.talk_file import talk_from_toml

    talk = talk_from_toml(text, path)
    validate(talk)
    return talk


def _talk_from_recipe(text: str, path: Path) -> Talk:
    try:
        written = read_recipe(text)
        recipe = recipe_from(written)
    except KitError as fault:
        raise TalkFileError(path.name, str(fault).splitlines()) from None
    if written.title == "":
        recipe = replace(recipe, title=path.stem.replace("_", " ").replace("-", " "))
    return Talk(path.stem, recipe, written.readings, path=path)
