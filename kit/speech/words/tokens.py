"""A sentence cut into tokens: words and phrases with the parts they can play, and the quantities among them."""

import re
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from functools import cache
from typing import NamedTuple

from kit import files
from kit.food.cells import read_rows
from kit.food.measures import FRACTION_GLYPHS
from kit.food.vocabulary import singular

SHARE = "share"  # the unit of a part of a whole, as a fraction
_KIND_OF_MILK = (
    r"(?:milk|buttermilk|(?:fat )?(?:milk|cottage|greek|yogurt)|lean (?:ground )?(?:turkey|beef|pork|chicken))\b"
)
_IN_A_NAME = (
    rf"(?:\d{{1,2}}(?: ?%| percent)|\b(?:[Oo]ne|[Tt]wo)[- ]percent)(?= {_KIND_OF_MILK})"  # "2% milk" names a food
)
_PIECE = re.compile(
    rf"{_IN_A_NAME}|\d{{1,4}}/\d{{1,4}}|\d{{1,3}}(?:,\d{{3}})+(?:\.\d+)?|\d*\.\d+|\d+|[{''.join(FRACTION_GLYPHS)}]|%|°\s?[CFcf]?\b|°"
    r"|[A-Za-zÀ-ÖØ-öø-ÿµ]+(?:['’][A-Za-z]+)?|[.,;:!?()\[\]\"“”—–-]"
)
_NOT = {"can": "can", "wo": "will", "sha": "shall", "ai": "is"}
_UNDONE = ("cannot", "percent")
_ENDS = {"re": "are", "ll": "will", "ve": "have", "d": "would", "m": "am"}
_IS_AFTER = frozenset("it that this there here what who where he she everything one which how let".split())


class Word(NamedTuple):
    """One word as it stands: lower case, its singular, its place in the sentence, and what joins it on."""

    text: str
    stem: str
    start: int
    end: int
    hyphen_before: bool = False
    possessive: bool = False


@dataclass(frozen=True, slots=True)
class Quantity:
    """A number with its unit and what was said of it: "about 34 grams", "under 100 mg", "a third", "two to three days".

    Attributes
    ----------
    low, high : float
        The ends; equal unless two numbers were said.
    unit : str
        ``"g"``, ``"mg"``, ``"kcal"``, ``"%"``, ``"day"`` ...; empty for a bare number or a fraction.
    relation : str
        ``"about"``, ``"nearly"``, ``"just over"``, ``"under"``, ``"short of"``, ``"well under"``, ``"at most"``,
        ``"over"``, ``"well over"``, ``"at least"``, ``"between"`` or ``"exactly"``.
    is_fraction : bool
        Whether it is a part of something: "half", "two thirds".
    """

    low: float
    high: float
    unit: str = ""
    relation: str = "about"
    is_fraction: bool = False

    @property
    def value(self) -> float:
        """The number, or the middle of the two."""
        return (self.low + self.high) / 2


NO_QUANTITY = Quantity(0.0, 0.0, relation="")


@dataclass(frozen=True, slots=True)
class Token:
    """A word or a phrase with the parts that it can play in a claim.

    Attributes
    ----------
    text : str
        Its words in lower case.
    start, end : int
        Its place in the sentence.
    parts : mapping of str to str
        By kind, what it means: ``{"nutrient": "fiber"}``, ``{"wording": "high"}``; see ``data/speech_words.csv``.
    quantity : Quantity or None
        When it is one.
    food : object or None
        The foods it may name, see `kit.speech.words.foods_said`.
    clause : int
        Which clause of the sentence it stands in.
    """

    text: str
    start: int
    end: int
    parts: Mapping[str, str] = field(default_factory=dict)
    quantity: Quantity | None = None
    food: object | None = None
    hyphen_before: bool = False
    possessive: bool = False
    number: tuple[int, int] = (0, 0)

    @property
    def amount(self) -> Quantity:
        """Its quantity, or none at all: a zero without a unit."""
        return self.quantity if self.quantity is not None else NO_QUANTITY

    def is_a(self, kind: str, meaning: str = "") -> bool:
        """Return whether it can play a part."""
        return kind in self.parts and (not meaning or self.parts[kind] == meaning)


def words_of(text: str) -> tuple[Word, ...]:
    """Return the words and stops of a text, with contractions undone.

    Examples
    --------
    >>> [word.text for word in words_of("It isn't low-fat, a day's 1,200 mg.")]
    ['it', 'is', 'not', 'low', 'fat', ',', 'a', 'day', '1,200', 'mg', '.']
    """
    found: list[Word] = []
    hyphen = False
    for match in _PIECE.finditer(text):
        piece, start, end = match[0].lower().replace("’", "'"), match.start(), match.end()
        before, after = text[start - 1 : start], text[end : end + 1]
        if piece == "-":
            hyphen = before.strip() != "" and after.strip() != ""
            if not hyphen:
                found.append(Word("—", "—", start, end))
            continue
        if piece.isalpha() and piece not in _UNDONE:
            found.append(Word(piece, singular(piece), start, end, hyphen))
            hyphen = False
            continue
        for part, possessive in _undone(piece):
            found.append(Word(part, singular(part), start, end, hyphen, possessive))
            hyphen = False
    return tuple(found)


def _undone(piece: str) -> list[tuple[str, bool]]:
    head, mark, tail = piece.partition("'")
    if not mark:
        if piece == "cannot":
            return [("can", False), ("not", False)]
        plain = piece.replace("percent", "%").replace("-", "").replace(" ", "")
        return [(plain.replace("one%", "1%").replace("two%", "2%"), False)]
    if tail == "t" and head.endswith("n"):
        return [(_NOT.get(head[:-1], head[:-1] if head != "can" else "can"), False), ("not", False)]
    if tail in _ENDS:
        return [(head, False), (_ENDS[tail], False)]
    if tail == "s" and head in _IS_AFTER:
        return [(head, False), ("us" if head == "let" else "is", False)]
    return [(head, True)] if tail in ("s", "") else [(piece, False)]


Rows = Sequence[tuple[int, str, str]]
Phrases = Mapping[tuple[str, ...], Sequence[tuple[tuple[str, ...], tuple[int, str, str]]]]


@cache
def phrases() -> tuple[Phrases, Mapping[str, Rows]]:
    """Return the phrases of speech by their first two stems, the longest first, and the words by their stem."""
    longer: dict[tuple[str, ...], list[tuple[tuple[str, ...], tuple[int, str, str]]]] = {}
    alone: dict[str, list[tuple[int, str, str]]] = {}
    for row in read_rows(files.bundled("data/speech_words.csv")):
        stems = tuple(word.stem for word in words_of(row["words"]))
        told = (len(stems), row["kind"], row["meaning"])
        if len(stems) > 1:
            longer.setdefault(stems[:2], []).append((stems, told))
        else:
            alone.setdefault(stems[0], []).append(told)
    return {first: sorted(rows, key=lambda row: -len(row[0])) for first, rows in longer.items()}, alone


def phrases_at(stems: tuple[str, ...], at: int) -> Rows:
    """Return the phrases that begin at a word, the longest first: how many words each takes, its kind, its meaning."""
    longer, alone = phrases()
    begun = longer.get(stems[at : at + 2], ())
    found = [told for own, told in begun if stems[at : at + len(own)] == own]
    return [*found, *alone.get(stems[at], ())] if found else alone.get(stems[at], ())
