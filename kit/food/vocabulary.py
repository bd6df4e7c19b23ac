"""The words of foods and of recipe lines: one spelling and one form of each."""

import re
import unicodedata
from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache, lru_cache

from kit import files
from kit.food.cells import read_rows

SMALL_WORDS = frozenset(
    "of the a an and with in for or to from into on at about plus each more your our some any".split()
)
_WORD = re.compile(r"(?:[^\W_]|%)+")
_FREE_FROM = re.compile(r"\b(gluten|wheat|dairy|lactose|egg|nut|meat|soy)[- ]free\b")
_NO_TRANS_FAT = re.compile(r"\b(?:(?:no|non|zero|0 ?g|without|free of)[- ])?trans[- ]?fats?(?:[- ]free)?\b")
_PERCENT = re.compile(r"(\d)\s*(?:%|percent\b|per cent\b)")
_SINGULARS = {
    "leaves": "leaf",
    "loaves": "loaf",
    "halves": "half",
    "knives": "knife",
    "cookies": "cookie",
    "pies": "pie",
    "brownies": "brownie",
    "blondies": "blondie",
    "smoothies": "smoothie",
    "veggies": "veggie",
    "hoagies": "hoagie",
    "quiches": "quiche",
    "cassis": "cassis",
}
_ALWAYS_S = ("ss", "us")


@dataclass(frozen=True, slots=True)
class LineWord:
    """What a word of an ingredient line means when it is not the food: a cut, a state, a size, a measure ..."""

    kind: str
    meaning: str


@cache
def line_words() -> Mapping[str, LineWord]:
    """Return the words that say something about a food, by their singular."""
    return {
        row["word"]: LineWord(row["kind"], row["meaning"]) for row in read_rows(files.bundled("data/line_words.csv"))
    }


@lru_cache(maxsize=20_000)
def singular(word: str) -> str:
    """Return a word in the singular, the same way for a line and for a food's names.

    Examples
    --------
    >>> [singular(word) for word in ("berries", "tomatoes", "leaves", "peaches", "asparagus", "cloves")]
    ['berry', 'tomato', 'leaf', 'peach', 'asparagus', 'clove']
    """
    if word in _SINGULARS:
        return _SINGULARS[word]
    if len(word) <= 3 or not word.endswith("s") or word.endswith(_ALWAYS_S):
        return word
    if word.endswith("ies"):
        return f"{word[:-3]}y"
    if word.endswith(("oes", "ches", "shes", "xes", "sses", "zzes")):
        return word[:-2]
    return word[:-1]


@lru_cache(maxsize=20_000)
def words(text: str) -> tuple[str, ...]:
    """Return the words of a text: lower case, without accents, singular, one spelling of each.

    Examples
    --------
    >>> words("Crème-fraîche, 2 TINS of Chillies")
    ('creme', 'fraiche', '2', 'tin', 'of', 'chili')
    """
    plain = text.lower().replace("'", "").replace("’", "")
    if not plain.isascii():
        plain = "".join(
            sign for sign in unicodedata.normalize("NFKD", plain) if not unicodedata.combining(sign)
        ).lower()
    if " free" in plain or "-free" in plain:
        plain = _FREE_FROM.sub(r"\1free", plain)
    if "trans" in plain:  # what is free of it is not free of fat
        plain = _NO_TRANS_FAT.sub("transfatfree", plain)
    if "%" in plain or "per" in plain:
        plain = _PERCENT.sub(r"\1%", plain)
    known_words = line_words()
    found: list[str] = []
    for word in _WORD.findall(plain):
        word = singular(word)
        known = known_words.get(word)
        found += known.meaning.split() if known and known.kind == "spelling" else [word]
    return tuple(found)
