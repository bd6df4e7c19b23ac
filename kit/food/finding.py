"""Finding a food from the words people use for it."""

import re
import unicodedata
from collections import defaultdict
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from functools import cache, lru_cache

from kit import files
from kit.errors import KitError
from kit.food.composition import Food, Foods, foods, read_rows

SMALL_WORDS = frozenset(
    [
        "of",
        "the",
        "a",
        "an",
        "and",
        "with",
        "in",
        "for",
        "or",
        "to",
        "from",
        "into",
        "on",
        "at",
        "about",
        "plus",
        "each",
        "more",
        "your",
        "our",
        "some",
        "any",
    ]
)
_WORD = re.compile(r"[a-z0-9%]+")
_PERCENT = re.compile(r"(\d)\s*(?:%|percent\b|per cent\b)")
_SINGULARS = {
    "leaves": "leaf",
    "loaves": "loaf",
    "halves": "half",
    "knives": "knife",
    "cookies": "cookie",
    "pies": "pie",
}
_ALWAYS_S = ("ss", "us", "is")


@dataclass(frozen=True, slots=True)
class Match:
    """A food that fits what was asked for, and how well, from 0 to 100."""

    food: str
    name: str
    score: float


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
    plain = unicodedata.normalize("NFKD", text.lower()).replace("'", "").replace("’", "")
    plain = "".join(sign for sign in plain if not unicodedata.combining(sign))
    plain = _PERCENT.sub(r"\1%", plain)
    found: list[str] = []
    for word in _WORD.findall(plain):
        word = singular(word)
        known = line_words().get(word)
        found += known.meaning.split() if known and known.kind == "spelling" else [word]
    return tuple(found)


@dataclass(frozen=True, slots=True)
class Name:
    """One name of a food, as the words that make it up; its head is the word that says what it is ("beans")."""

    food: Food
    words: frozenset[str]
    head: str
    order: int


class Index:
    """The names of some foods, by word."""

    def __init__(self, table: Iterable[Food], named: Iterable[tuple[Food, str]] = ()) -> None:
        self.names: list[Name] = []
        self.by_word: dict[str, list[int]] = defaultdict(list)
        for food in table:
            for text in (food.name, *food.other_names):
                self._add(food, text)
        for food, text in named:
            self._add(food, text)
        self.vocabulary = tuple(self.by_word)

    def _add(self, food: Food, text: str) -> None:
        name = frozenset(words(text)) - SMALL_WORDS
        head = words(re.split(r"[,(]| in ", text)[0])[-1:]
        for word in name:
            self.by_word[word].append(len(self.names))
        self.names.append(Name(food, name, "".join(head), len(self.names)))

    def within(self, asked: Iterable[str]) -> list[Name]:
        """Return the names all of whose words were asked for, in the table's order."""
        counts: dict[int, int] = defaultdict(int)
        for word in set(asked):
            for place in self.by_word.get(word, ()):
                counts[place] += 1
        return [self.names[place] for place, count in sorted(counts.items()) if count == len(self.names[place].words)]

    @lru_cache(maxsize=2_000)  # noqa: B019 - an index lives as long as its table
    def nearest_word(self, word: str, closeness: float = 80.0) -> str | None:
        """Return the known word that a misspelt one is nearest to."""
        from rapidfuzz import fuzz, process  # only a misspelling pays for the import

        if len(word) < 4 or word.isdigit():
            return None
        long_enough = [known for known in self.vocabulary if len(known) > 3]
        found = process.extractOne(word, long_enough, scorer=fuzz.ratio, score_cutoff=closeness)
        return found[0] if found and found[0][0] == word[0] else None

    def best(self, asked: Sequence[str], limit: int) -> list[Match]:
        """Return the foods whose names share most with the words asked for, best first."""
        hits: dict[int, float] = defaultdict(float)
        for word in dict.fromkeys(asked):
            for known, closeness in self._like(word).items():
                for place in self.by_word[known]:
                    hits[place] += closeness
        scores: dict[str, tuple[float, int]] = {}
        wanted = max(1, len(set(asked)))
        for place, hit in hits.items():
            name = self.names[place]
            score = 68 * min(1.0, hit / wanted) + 28 * min(1.0, hit / len(name.words)) + 4 * (name.head in asked)
            if score > scores.get(name.food.key, (0.0, 0))[0]:
                scores[name.food.key] = (score, name.order)
        table = {name.food.key: name.food for name in self.names}
        ranked = sorted(scores.items(), key=lambda item: (-item[1][0], item[1][1]))
        return [Match(key, table[key].name, round(score, 1)) for key, (score, _) in ranked[:limit]]

    @lru_cache(maxsize=5_000)  # noqa: B019
    def _like(self, word: str) -> dict[str, float]:
        """Return the known words that a word may stand for, with how near each is (1 = the same)."""
        if word in self.by_word:
            return {word: 1.0}
        like = {known: 0.85 for known in self.vocabulary if len(word) >= 3 and known.startswith(word)}
        nearest = self.nearest_word(word, 70.0)
        if nearest and nearest not in like:
            like[nearest] = 0.8
        return like


@lru_cache(maxsize=4)
def index(table: Foods) -> Index:
    """Return the index of a table of foods, made once."""
    return Index(table.values())


def find(text: str, limit: int = 10, table: Foods | None = None) -> list[Match]:
    """Find foods by words, other names and misspellings, best first.

    The kit's own foods and the user's labels come first; an imported release, where there is one, follows.

    Parameters
    ----------
    text : str
        What is looked for, such as ``"garbanzo beans"``.
    limit : int
        How many to return at the most.
    table : Foods, optional
        The foods to look in; all at hand by default.

    Raises
    ------
    KitError
        If there is no word in `text`.
    """
    asked = [word for word in words(text) if word not in SMALL_WORDS]
    if not asked:
        raise KitError(f'"{text}" has no word to look for; write a food such as "lentils"')
    found = index(foods() if table is None else table).best(asked, limit)
    if table is None and len(found) < limit:
        found += _imported(text, limit - len(found))
    return found


def food(key: str) -> Food:
    """Return a food by key: the kit's own, the user's, or one of an imported release (``fdc-...``).

    Raises
    ------
    UnknownNameError
        If there is none; the nearest key is offered.
    """
    if key.startswith("fdc-"):
        from kit.food.release import Store

        return Store().food(key)
    return foods()[key]


def _imported(text: str, limit: int) -> list[Match]:
    if not (files.own_folder() / "release.sqlite").exists():
        return []
    from kit.food.release import Store

    return [Match(key, name, score) for key, name, score in Store().find(text, limit)]
