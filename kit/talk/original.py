"""A talk file as it lies there: every entry with its place, so that a save can change one and leave the others."""

from collections.abc import Mapping
from dataclasses import dataclass
from functools import lru_cache
from pathlib import Path
from typing import Any

from kit.food.composition import Foods, foods
from kit.talk import entries as read_entry
from kit.talk.faults import Faults
from kit.talk.plain_lines import one_line
from kit.talk.recipe_entries import with_labels
from kit.talk.talk import PlanStep, Point, Question
from kit.talk.talk_file import ENTRY_KEYS, KEYS, placed_entries
from kit.talk.toml_text import read_table


@dataclass(frozen=True)
class Settled:
    """What she has settled about one ingredient line.

    Attributes
    ----------
    line : str
        The line, with single spaces.
    foods : tuple of str
        The key of the food; of a line that names several, one for each, "" for as it is read.
    grams : tuple of float or None
        The grams that she weighed, None for as it is read; one for each food. [g]
    treatment : str
        How it is cooked, one of `kit.food.cooking.WAYS` or the code of a treatment; empty for as it is worked out.
    """

    line: str
    foods: tuple[str, ...] = ()
    grams: tuple[float | None, ...] = ()
    treatment: str = ""

    @property
    def says_something(self) -> bool:
        """Whether anything is settled."""
        return any(self.foods) or any(grams is not None for grams in self.grams) or bool(self.treatment)

    @property
    def values(self) -> dict[str, Any]:
        """`food`, `grams` and `treatment` as an entry of a talk file has them; None for none."""
        foods = list(self.foods) if any(self.foods) else []
        grams: list[Any] = ["" if each is None else each for each in self.grams]
        while grams and grams[-1] == "":
            grams.pop()
        return {
            "food": None if not foods else foods[0] if len(foods) == 1 else foods,
            "grams": None if not grams else grams[0] if len(grams) == 1 else grams,
            "treatment": self.treatment or None,
        }


def settled_in(entry: Mapping[str, Any]) -> Settled:
    """Return what an entry of a talk file settles."""
    stated, weighed = entry.get("food", []), entry.get("grams", [])
    foods = tuple(key if isinstance(key, str) else "" for key in (stated if isinstance(stated, list) else [stated]))
    amounts = weighed if isinstance(weighed, list) else [weighed]
    grams = tuple(float(each) if _is_weight(each) else None for each in amounts)
    cooked = entry.get("treatment")
    return Settled(one_line(entry["line"]), foods, grams, cooked if isinstance(cooked, str) else "")


def _is_weight(value: object) -> bool:
    return isinstance(value, int | float) and not isinstance(value, bool) and 0 <= value <= 1e6


@dataclass(frozen=True)
class Original:
    """The entries of a talk file that the boxes show, each with its number among those of its kind.

    Attributes
    ----------
    table : mapping
        The whole file.
    broken : tuple of str
        Lines of it that are no TOML, a sentence each.
    ingredients, points, steps, questions : tuple of (int, ...)
        Number and content; what could not be shown is not among them.
    known : Foods
        The foods at hand, the labels of the file among them.
    """

    table: Mapping[str, Any]
    broken: tuple[str, ...]
    ingredients: tuple[tuple[int, Mapping[str, Any]], ...]
    points: tuple[tuple[int, Point], ...]
    steps: tuple[tuple[int, PlanStep], ...]
    questions: tuple[tuple[int, Question], ...]
    known: Foods

    def count(self, kind: str) -> int:
        """Return how many entries of a kind there are, shown or not."""
        entries = self.table.get(kind, [])
        return len(entries) if isinstance(entries, list) else 1


def original_of(text: str) -> Original:
    """Return what the text of a talk file holds, with the foods that are at hand now.

    Raises
    ------
    TalkFileError
        If it is no talk file at all.
    """
    return _original_of(text, foods())


@lru_cache(maxsize=8)
def _original_of(text: str, _known: Foods) -> Original:
    table, broken = read_table(text, KEYS, "talk file")
    faults = Faults()
    entries = {kind: placed_entries(table, kind, faults) for kind in ENTRY_KEYS}
    points = ((at, read_entry.point(place, entry, faults)) for at, (place, entry) in enumerate(entries["point"]))
    asked = ((at, read_entry.question(place, entry, faults)) for at, (place, entry) in enumerate(entries["question"]))
    return Original(
        table,
        broken,
        tuple((at, entry) for at, (_, entry) in enumerate(entries["ingredient"]) if _has_line(entry)),
        tuple((at, point) for at, point in points if point is not None),
        tuple(
            (at, read_entry.step(place, entry, faults))
            for at, (place, entry) in enumerate(entries["step"])
            if isinstance(entry.get("title"), str) and entry["title"].strip()
        ),
        tuple((at, question) for at, question in asked if question is not None),
        with_labels(entries["label"], faults),
    )


def _has_line(entry: Mapping[str, Any]) -> bool:
    return isinstance(entry.get("line"), str) and bool(entry["line"].strip())


def file_faults(text: str, path: Path | None) -> tuple[str, ...]:
    """Return what is wrong with a talk file, a sentence each."""
    from kit.talk.talk_file import talk_from_toml

    return talk_from_toml(text, path or Path("talk.toml")).faults if text.strip() else ()
