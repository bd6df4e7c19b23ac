"""Practising the numbers: the points one by one with the number hidden, those missed more often than the others."""

import json
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace
from pathlib import Path
from random import Random
from typing import Any

from kit import files
from kit.errors import KitError

FILE = "practice.json"
VERSION = 1
_MOST_TRIES = 1_000_000
_DAMAGED = (ValueError, KeyError, TypeError, AttributeError, RecursionError)
_UNSEEN, _LEAST = 2.0, 0.5  # weights of a card not yet seen, and of one always known


@dataclass(frozen=True, slots=True)
class Card:
    """A sentence with its numbers hidden, and with them.

    Attributes
    ----------
    key : str
        The sentence as the talk file gives it; results are kept under it, so they survive a changed recipe.
    asks, answer : str
        The sentence with gaps, and in full.
    """

    key: str
    asks: str
    answer: str


@dataclass(frozen=True, slots=True)
class Score:
    """How often a card was known and missed, and how often in a row it has been known since."""

    right: int = 0
    missed: int = 0
    in_a_row: int = 0

    @property
    def weight(self) -> float:
        """How likely the card is to come up, against the others."""
        if self.right + self.missed == 0:
            return _UNSEEN
        return max(_LEAST, 1.0 + 2.0 * self.missed / (1 + self.in_a_row) - 0.25 * self.in_a_row)


Scores = Mapping[str, Score]


def practice_file() -> Path:
    """Return where results are kept."""
    return files.own_folder() / FILE


def read_scores(talk: str, path: Path | None = None) -> tuple[dict[str, Score], str]:
    """Return the scores of a talk's cards, and a message when the file of results had to be put aside.

    A file that cannot be understood is renamed, not lost, and a new one begun.

    Raises
    ------
    KitError
        If the file is there and cannot be read or put aside.
    """
    everything, message = _read(path or practice_file())
    return dict(everything.get(talk, {})), message


def _read(path: Path) -> tuple[dict[str, dict[str, Score]], str]:
    if not files.is_file(path):
        return {}, ""
    try:
        return _understood(files.read_text(path)), ""
    except _DAMAGED:
        return {}, _put_aside(path)
    except KitError as fault:
        if isinstance(fault.__cause__, OSError):
            raise
        return {}, _put_aside(path)  # no text, or far too long


def _understood(text: str) -> dict[str, dict[str, Score]]:
    table = json.loads(text)
    return {
        talk: {
            key: Score(*(_count(score[name]) for name in ("right", "missed", "in_a_row"))) for key, score in of.items()
        }
        for talk, of in table["talks"].items()
    }


def _count(value: object) -> int:
    """Return how often something happened; ValueError for what is no such number."""
    if isinstance(value, bool) or not isinstance(value, int) or not 0 <= value <= _MOST_TRIES:
        raise ValueError("no count")
    return value


def _put_aside(path: Path) -> str:
    number = 1
    while (aside := path.with_name(f"{path.stem}.damaged-{number}{path.suffix}")).exists():
        number += 1
    try:
        path.rename(aside)
    except OSError as fault:
        raise KitError(f"{path} is damaged and cannot be put aside ({fault.strerror}); rename it yourself") from fault
    return f"{path.name} was damaged; it is kept as {aside.name}, and a new one is begun"


def marked(score: Score, knew: bool) -> Score:
    """Return a score after one more try.

    Examples
    --------
    >>> marked(Score(right=1, in_a_row=1), knew=False)
    Score(right=1, missed=1, in_a_row=0)
    """
    if knew:
        return replace(score, right=score.right + 1, in_a_row=score.in_a_row + 1)
    return replace(score, missed=score.missed + 1, in_a_row=0)


def record(talk: str, card: Card, knew: bool, path: Path | None = None) -> dict[str, Score]:
    """Mark a card as known or missed and write that down at once, so that a crash loses nothing.

    The file is read again first, so that two windows do not lose each other's marks.

    Returns
    -------
    dict of str to Score
        The scores of the talk's cards.

    Raises
    ------
    KitError
        If the file cannot be read or written.
    """
    scores: dict[str, Score] = {}

    def add(text: str | None) -> str:
        everything = _understood(text) if text is not None else {}
        scores.update(everything.setdefault(talk, {}))
        scores[card.key] = everything[talk][card.key] = marked(scores.get(card.key, Score()), knew)
        return _written(everything)

    path = path or practice_file()
    _read(path)  # a damaged file is put aside first
    files.changed(path, add)
    return scores


def carry(talk: str, to: str, path: Path | None = None) -> None:
    """Give a talk the marks of another one, where it has none of its own: after it was renamed or copied.

    Raises
    ------
    KitError
        If the file cannot be read or written.
    """
    path = path or practice_file()
    if not read_scores(talk, path)[0]:
        return

    def add(text: str | None) -> str:
        everything = _understood(text) if text is not None else {}
        everything[to] = {**everything.get(talk, {}), **everything.get(to, {})}
        return _written(everything)

    files.changed(path, add)


def _written(everything: Mapping[str, Mapping[str, Score]]) -> str:
    table: dict[str, Any] = {
        "version": VERSION,
        "talks": {
            name: {
                key: {"right": score.right, "missed": score.missed, "in_a_row": score.in_a_row}
                for key, score in of.items()
            }
            for name, of in everything.items()
        },
    }
    return json.dumps(table, indent=2, ensure_ascii=False) + "\n"


def next_card(of: Sequence[Card], scores: Scores, chance: Random, last: Card | None = None) -> Card:
    """Return the card to show next: a weighted draw, missed cards more often, never the same twice running.

    Raises
    ------
    KitError
        If there is no card.
    """
    if not of:
        raise KitError('no point of this talk says a number; write one such as "{serving} has {energy}."')
    others = [card for card in of if last is None or card.key != last.key] or list(of)
    return chance.choices(others, [scores.get(card.key, Score()).weight for card in others])[0]
