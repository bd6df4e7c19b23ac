"""Finding a food from the words people use for it."""

import re
from collections import defaultdict
from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from functools import cache, cached_property, lru_cache

from kit import files
from kit.errors import KitError
from kit.food.composition import Food, Foods, foods
from kit.food.releases.store import Store
from kit.food.vocabulary import SMALL_WORDS, words
from kit.food.wordindex import WordIndex

_ASIDE = re.compile(r"\([^)]*\)")
_HEAD_ENDS = re.compile(r"[,(]| in ")
_OTHER_HEAD = 8.0  # of 100: what a name loses whose own thing is another one ("tuna in oil" for "oil")
_FITS = 80.0  # a score from which a food of the kit goes before any imported one


@dataclass(frozen=True, slots=True)
class Match:
    """A food that fits what was asked for, and how well, from 0 to 100."""

    food: str
    name: str
    score: float


@dataclass(frozen=True, slots=True)
class Name:
    """One name of a food, and the words that make it up; its head is the word that says what it is ("beans")."""

    food: Food
    text: str
    words: frozenset[str]
    order: int

    @property
    def head(self) -> str:
        """The last word before a comma or "in", parentheses left out."""
        return _head(self.text)


@cache
def _head(text: str) -> str:
    return "".join(words(_HEAD_ENDS.split(_ASIDE.sub(" ", text))[0])[-1:])


class Index:
    """The names of some foods, by word.

    Parameters
    ----------
    table : iterable of Food
        Foods with all their names.
    named : iterable of (Food, str)
        Further names.
    """

    def __init__(self, table: Iterable[Food], named: Iterable[tuple[Food, str]] = ()) -> None:
        self.names: list[Name] = []
        self.by_word: dict[str, list[int]] = defaultdict(list)
        for food in table:
            for text in (food.name, *food.other_names):
                self._add(food, text)
        for food, text in named:
            self._add(food, text)

    def _add(self, food: Food, text: str) -> None:
        name = Name(food, text, frozenset(words(text)) - SMALL_WORDS, len(self.names))
        for word in name.words:
            self.by_word[word].append(name.order)
        self.names.append(name)

    def within(self, asked: Iterable[str]) -> list[Name]:
        """Return the names all of whose words were asked for, in the table's order."""
        said = frozenset(asked)
        found = [name for word in said for name in self._by_rarest.get(word, ()) if name.words <= said]
        return sorted(found, key=lambda name: name.order)

    @cached_property
    def _by_rarest(self) -> Mapping[str, list[Name]]:
        """Each name under the one of its words that the fewest names hold: the only place where it has to be tried."""
        rarest: dict[str, list[Name]] = defaultdict(list)
        for name in self.names:
            if name.words:
                rarest[min(sorted(name.words), key=lambda word: len(self.by_word[word]))].append(name)
        return rarest

    @cached_property
    def by_letter(self) -> Mapping[str, list[str]]:
        """Its words of more than three letters, by their first."""
        letters: dict[str, list[str]] = defaultdict(list)
        for word in self.by_word:
            if len(word) > 3:
                letters[word[0]].append(word)
        return letters

    @lru_cache(maxsize=2_000)  # noqa: B019 - an index lives as long as its table
    def nearest_word(self, word: str, closeness: float = 80.0) -> str | None:
        """Return the known word that a misspelt one is nearest to; few people mistake the first letter."""
        if len(word) < 4 or word.isdigit():
            return None
        from rapidfuzz import fuzz, process  # only a misspelling pays for the import

        alike = self.by_letter.get(word[0], ())
        closeness = max(closeness, 88.0) if len(word) == 4 else closeness
        found = process.extractOne(word, alike, scorer=fuzz.ratio, score_cutoff=closeness)
        return found[0] if found else None

    @cached_property
    def _ranked(self) -> WordIndex:
        return WordIndex.build(name.text for name in self.names)

    def best(self, text: str, limit: int) -> list[Match]:
        """Return the foods that a text names best, however it is ordered or misspelt, best first."""
        asked = set(words(text))
        scores: dict[str, tuple[float, Name]] = {}
        for place, score in self._ranked.find(text, 40 * limit):
            name = self.names[place]
            score -= 0.0 if name.words <= asked or name.head in asked else _OTHER_HEAD
            if score > scores.get(name.food.key, (0.0, name))[0]:
                scores[name.food.key] = (score, name)

        def rank(found: tuple[float, Name]) -> tuple[float, bool, int, int]:
            score, name = found
            return -score, not asked <= {*words(name.food.name)}, len(name.words - asked), name.order

        ranked = sorted(scores.values(), key=rank)
        return [Match(name.food.key, name.food.name, round(score, 1)) for score, name in ranked[:limit]]


@lru_cache(maxsize=4)
def index(table: Foods) -> Index:
    """Return the index of a table of foods, made once."""
    return Index(table.values())


def find(text: str, limit: int = 10, table: Foods | None = None) -> list[Match]:
    """Find foods by words, other names and misspellings, best first.

    The kit's own foods and the user's labels come first where they fit; an imported release, where there is one,
    follows, and only then what fits badly.

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
    if all(word in SMALL_WORDS for word in words(text)):
        raise KitError(f'"{text}" has no word to look for; write a food such as "lentils"')
    own = index(foods() if table is None else table).best(text, limit)
    others = imported(text, limit) if table is None else []
    fitting = [match for match in own if match.score >= _FITS]
    rest = sorted([*own[len(fitting) :], *others], key=lambda match: -match.score)
    return [*fitting, *rest][:limit]


def food(key: str) -> Food:
    """Return a food by key: the kit's own, the user's, or one of an imported release (``fdc-...``).

    Raises
    ------
    UnknownNameError
        If there is none; the nearest key is offered.
    """
    if key.startswith("fdc-"):
        return Store().food(key)
    return foods()[key]


def imported(text: str, limit: int) -> list[Match]:
    """Return the foods of an imported release that fit a text, none when there is no release."""
    if not (files.own_folder() / "release.sqlite").exists():
        return []
    return [Match(key, name, score) for key, name, score in Store().find(text, limit)]
