"""What people said afterwards: a survey's answers counted, with nobody's name or address in what is shown."""

import re
from collections import Counter
from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from pathlib import Path

from kit.errors import KitError
from kit.spreadsheets import Table, read_table

# Column headings that hold who someone is or when they answered, not what they think; any of these words in one.
_WHO = frozenset(
    "name surname nickname email mail e-mail phone telephone mobile tel address street city zip postcode ip id"
    " respondent user username account contact employee department signature birthday age gender".split()
)
_WHEN = frozenset("timestamp time date submitted started completed start end duration created updated".split())
_NEXT = re.compile(
    r"\b(next|future|upcoming|wish|suggest\w*|another (talk|session)|more of|would you like (to|us))\b", re.IGNORECASE
)
_EMAIL = re.compile(r"[^\s@<>]+@[^\s@<>]+\.\w+")
_LINK = re.compile(r"(?:https?://|www\.)\S+", re.IGNORECASE)
_PHONE = re.compile(r"\+?\d[\d ()./-]{6,}\d")
_GREETED = re.compile(
    r"(\b(?:[Tt]hanks?(?: you)?|[Hh]i|[Hh]ello|[Dd]ear|[Rr]egards|[Cc]heers|[Mm]y name is|[Ii] am|[Ii]'m|[Ss]igned)"
    r"[,:]?\s+|[-–—]\s*)([A-Z][\w'’]+(?:\s+[A-Z][\w'’.]+)*)"
)
_LABELLED_NUMBER = re.compile(r"(\d{1,2})\s*(?:[-–:.)(=]|stars?\b|of\b|/|out\b|$)", re.IGNORECASE)
_WORD = re.compile(r"[^\W\d_][\w'’-]*")
_HIGHEST_RATING = 10
_FEWEST_REPEATS = 0.5  # of the answers: below this share of differing ones a column is a choice, not free text
_SHORT, _SHORT_REPEATS = 3, 0.67  # words; of answers so short a larger share may differ
_MOST_CHOICES = 12
_LONGEST_CHOICE = 60  # characters
# First names that are words too: in small letters they are taken for the word.
_ALSO_WORDS = frozenset(
    "art basil bill daisy dawn dill ginger grace hazel herb holly hope iris ivy jack joy june mark may olive pat rob"
    " rose rosemary sage sue summer will".split()
)
HIDDEN = "…"
# Words that say how people agree, from least to most: common practice in surveys.
_SCALES = (
    ("strongly disagree", "disagree", "neither agree nor disagree", "neutral", "agree", "strongly agree"),
    ("very dissatisfied", "dissatisfied", "neutral", "satisfied", "very satisfied"),
    ("very unlikely", "unlikely", "neutral", "likely", "very likely"),
    ("not likely", "somewhat likely", "likely", "very likely"),
    ("not likely at all", "not very likely", "somewhat likely", "very likely", "extremely likely"),
    ("very poor", "poor", "fair", "good", "very good", "excellent"),
    ("not at all", "a little", "somewhat", "mostly", "very much", "completely"),
    ("never", "rarely", "sometimes", "often", "always"),
    ("no", "not sure", "maybe", "yes"),
    *(
        (least, middle, most)
        for least, most in (("too slow", "too fast"), ("too short", "too long"), ("too easy", "too hard"))
        for middle in ("just right", "about right")
    ),
)


@dataclass(frozen=True, slots=True)
class Question:
    """One column of a survey.

    Attributes
    ----------
    asks : str
        Its heading.
    kind : str
        ``"rating"``, ``"choice"``, ``"several"`` (several choices a person) or ``"text"``.
    counts : tuple of (str, int)
        How many gave each answer: a rating's from lowest to highest, others most first; empty for free text.
    texts : tuple of str
        What people wrote, without names, addresses and numbers to call.
    answered : int
        How many answered it.
    mean : float or None
        Of a rating in numbers.
    """

    asks: str
    kind: str
    counts: tuple[tuple[str, int], ...]
    texts: tuple[str, ...]
    answered: int
    mean: float | None = None


@dataclass(frozen=True, slots=True)
class Survey:
    """The answers to a survey.

    Attributes
    ----------
    questions : tuple of Question
        In the order of the columns; those that tell who someone is or when they answered are left out.
    answers : int
        How many people answered anything.
    left_out : int
        How many columns were left out.
    """

    questions: tuple[Question, ...]
    answers: int
    left_out: int

    @property
    def wanted_next(self) -> tuple[Question, ...]:
        """The questions about what people want next."""
        return tuple(question for question in self.questions if _NEXT.search(question.asks))

    def response_rate(self, invited: int) -> float:
        """Return how many of those invited answered. [fraction]

        Raises
        ------
        KitError
            If nobody, or fewer than answered, were invited.
        """
        if invited < max(1, self.answers):
            raise KitError(f"{self.answers} answered and {invited} were invited; give the number of people invited")
        return self.answers / invited


def read_survey(path: Path) -> Survey:
    """Read the answers to a survey from a table that a form program saved, whatever its headings.

    A row is a person and a column a question. Columns of names, addresses and times are left out, and what they hold is
    hidden wherever it stands in a free text.

    Raises
    ------
    KitError
        If the file cannot be read as a table, or holds no answers.
    """
    path = Path(path)
    return survey_of(read_table(path), path.name)


def survey_of(table: Table, name: str) -> Survey:
    """Count the answers in a table, as `read_survey` does; `name` tells in messages which one.

    Raises
    ------
    KitError
        If it holds no answers.
    """
    columns = {column: [row[place].strip() for row in table.rows] for place, column in enumerate(table.columns)}
    private = {column for column, cells in columns.items() if _tells_who(column, cells)}
    times = {column for column, cells in columns.items() if column not in private and _tells_when(column, cells)}
    names = {word for column in private for cell in columns[column] for word in _names(cell)}
    asked = {column: cells for column, cells in columns.items() if column not in private | times and any(cells)}
    answers = sum(any(row) for row in zip(*asked.values(), strict=True)) if asked else 0
    if not answers:
        raise KitError(f"{name} holds no answers; save the table with a row for each person")
    questions = tuple(_question(column, cells, names) for column, cells in asked.items())
    return Survey(questions, answers, len(private) + len(times))


def _heading_words(name: str) -> set[str]:
    return set(re.findall(r"[a-z-]+", re.sub(r"(?<=[a-z])(?=[A-Z])", " ", name).lower()))


def _tells_who(name: str, cells: Sequence[str]) -> bool:
    filled = [cell for cell in cells if cell]
    with_address = sum(bool(_EMAIL.search(cell)) for cell in filled)
    short_heading = len(name.split()) <= 4 or "your name" in name.lower() or "your email" in name.lower()
    return (short_heading and bool(_heading_words(name) & _WHO)) or bool(filled and with_address / len(filled) > 0.5)


def _tells_when(name: str, cells: Sequence[str]) -> bool:
    filled = [cell for cell in cells if cell]
    dated = sum(bool(re.match(r"\d{1,4}[-/.]\d{1,2}[-/.]\d{1,4}\b", cell)) for cell in filled)
    return (len(name.split()) <= 3 and bool(_heading_words(name) & _WHEN)) or bool(filled and dated > len(filled) / 2)


def _names(cell: str) -> Iterable[str]:
    """Return the words of a cell that may be somebody's name."""
    return (word for word in _WORD.findall(cell.split("@")[0].replace(".", " ")) if len(word) > 2)


def _question(asks: str, cells: Sequence[str], names: set[str]) -> Question:
    filled = [cell for cell in cells if cell]
    ratings = [_rating(cell) for cell in filled]
    if all(rating is not None for rating in ratings):
        numbers = [rating for rating in ratings if rating is not None]
        # Every step of the scale is there, also those that nobody chose.
        highest = 5 if max(numbers) <= 5 else _HIGHEST_RATING
        tally = Counter(numbers)
        counts = tuple((str(step), tally[step]) for step in range(min(1, *numbers), highest + 1))
        return Question(asks, "rating", counts, (), len(filled), sum(numbers) / len(numbers))
    scale = next((scale for scale in _SCALES if {cell.lower() for cell in filled} <= set(scale)), None)
    if scale:
        said = Counter(cell.lower() for cell in filled)
        present = [step for step in scale if said[step] or step not in ("neutral", "neither agree nor disagree")]
        return Question(asks, "rating", tuple((step, said[step]) for step in present), (), len(filled))
    several = [[part.strip() for part in re.split(r"[;|]|,(?=\s)", cell) if part.strip()] for cell in filled]
    for kind, answers in (("choice", [[cell] for cell in filled]), ("several", several)):
        if _are_choices(answers):
            counted = Counter(_without_people(part, names) for parts in answers for part in parts)
            return Question(asks, kind, tuple(counted.most_common()), (), len(filled))
    return Question(asks, "text", (), tuple(_without_people(cell, names) for cell in filled), len(filled))


def _rating(cell: str) -> int | None:
    """Return a rating from 0 to 10, with or without words beside it: "4", "5 - very useful", "3 out of 5"."""
    found = _LABELLED_NUMBER.match(cell)
    value = int(found[1]) if found else _HIGHEST_RATING + 1
    return value if value <= _HIGHEST_RATING else None


def _are_choices(answers: Sequence[Sequence[str]]) -> bool:
    parts = [part for answer in answers for part in answer]
    kinds = {part.lower() for part in parts}
    short = all(len(part.split()) <= _SHORT for part in parts)
    repeats = _SHORT_REPEATS if short else _FEWEST_REPEATS
    return (
        len(kinds) <= min(_MOST_CHOICES, max(2, repeats * len(parts)))
        and all(len(part) <= _LONGEST_CHOICE for part in parts)
        and len(parts) > len(kinds)
    )


def _without_people(text: str, names: set[str]) -> str:
    """Return a text without addresses, numbers to call and names."""
    for pattern in (_EMAIL, _LINK, _PHONE):
        text = pattern.sub(HIDDEN, text)
    text = _GREETED.sub(lambda found: f"{found[1]}{HIDDEN}", text)
    known = {name.lower() for name in names}
    return _WORD.sub(lambda word: HIDDEN if word[0].lower() in known and word[0] not in _ALSO_WORDS else word[0], text)
