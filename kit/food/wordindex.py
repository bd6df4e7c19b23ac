"""Names ranked by the words they share with a query, however the query is ordered or misspelt."""

import re
from bisect import bisect_left
from collections import Counter
from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from itertools import pairwise

import numpy as np
from numpy.typing import NDArray
from rapidfuzz import process
from rapidfuzz.distance import OSA

from kit.food.vocabulary import SMALL_WORDS, words

_MOST_WORDS = 12  # of a query; a longer one is a sentence, not a name

# How much a word of a name sets it apart from the plain food: not at all for the plain form and for the class that
# opens many official names ("Nuts, almonds"), twice for what is made out of the food.
_PLAIN_WORDS = frozenset(
    (
        "raw",
        "whole",
        "fresh",
        "dry",
        "plain",
        "uncooked",
        "nut",
        "spice",
        "seed",
        "fish",
        "cheese",
        "crustacean",
        "mollusk",
        "beverage",
    )
)
_MADE_WORDS = frozenset(
    (
        "babyfood",
        "bread",
        "cake",
        "candy",
        "flour",
        "imitation",
        "juice",
        "oil",
        "powder",
        "restaurant",
        "sauce",
        "snack",
        "soup",
    )
)
_TRADE_NAME, _TRADE_NAME_WEIGHT = re.compile(r"\b[A-Z][A-Z'&-]{3,}\b"), 3.0  # official names write a maker in capitals

# How much a word counts that is not the query's own: the start of a longer word, or a likely misspelling.
_START_OF_WORD, _SHORTEST_START = 0.85, 3
_LIKENESS_NEEDED, _SHORTEST_GUESS = 0.7, 4
# Parts of a score: the query's words found; the name opens with what was asked for; it says little else.
_FOUND, _HEAD, _LITTLE_ELSE = 80.0, 12.0, 8.0
_LOWEST_SCORE = 45.0


def words_of(text: str) -> list[str]:
    """Return the telling words of a name, as the kit reads words everywhere, in the order written.

    Examples
    --------
    >>> words_of("Lentils, cooked with Jalapeño peppers")
    ['lentil', 'cooked', 'jalapeno', 'pepper']
    """
    return [word for word in words(text) if word not in SMALL_WORDS]


def _weight(word: str) -> float:
    return 0.0 if word in _PLAIN_WORDS else 2.0 if word in _MADE_WORDS else 1.0


@dataclass(frozen=True, eq=False)
class WordIndex:
    """The words of a list of names, laid out for ranking: for each word, the names that hold it.

    Attributes
    ----------
    vocabulary : tuple of str
        Every different word, in alphabetical order.
    ends : numpy.ndarray, shape (n_words + 1,)
        The names of word ``w`` stand at ``ends[w]`` to ``ends[w + 1]`` of the three arrays that follow.
    names, weights, head_weights : numpy.ndarray, shape (n_pairs,)
        A name's number; how much the word weighs in it; the part of that in the name's opening.
    totals, head_totals : numpy.ndarray, shape (n_names,)
        The weight of all words of each name, and of all words of its opening.
    """

    vocabulary: tuple[str, ...]
    ends: NDArray[np.int32]
    names: NDArray[np.int32]
    weights: NDArray[np.float32]
    head_weights: NDArray[np.float32]
    totals: NDArray[np.float32]
    head_totals: NDArray[np.float32]

    def __len__(self) -> int:
        return len(self.totals)

    @classmethod
    def build(cls, names: Iterable[str]) -> "WordIndex":
        """Return the index of names, whose numbers are their places in the order given."""
        pairs: dict[str, list[tuple[int, float, float]]] = {}
        totals, head_totals = [], []
        for number, name in enumerate(names):
            counts, head_counts = _counts(name)
            for word, count in counts.items():
                # A word of no weight still tells which of the names that hold it was asked for.
                pairs.setdefault(word, []).append((number, count * _weight(word), head_counts[word] * _weight(word)))
            trade_name = _TRADE_NAME_WEIGHT if _TRADE_NAME.search(name) else 0.0
            totals.append(sum(count * _weight(word) for word, count in counts.items()) + trade_name)
            head_totals.append(sum(count * _weight(word) for word, count in head_counts.items()))
        vocabulary = sorted(pairs)
        table = np.array([pair for word in vocabulary for pair in pairs[word]], dtype=float).reshape(-1, 3)
        ends = np.cumsum([0] + [len(pairs[word]) for word in vocabulary])
        arrays = (ends.astype("<i4"), table[:, 0].astype("<i4"), table[:, 1].astype("<f4"), table[:, 2].astype("<f4"))
        return cls(tuple(vocabulary), *arrays, np.array(totals, "<f4"), np.array(head_totals, "<f4"))

    def parts(self) -> dict[str, bytes]:
        """Return the index as named byte strings, to be stored."""
        arrays = {name: getattr(self, name).tobytes() for name in _ARRAYS}
        return {"vocabulary": "\n".join(self.vocabulary).encode(), **arrays}

    @classmethod
    def from_parts(cls, parts: Mapping[str, bytes]) -> "WordIndex":
        """Return the index that `parts` stored."""
        words = tuple(parts["vocabulary"].decode().split("\n")) if parts["vocabulary"] else ()
        return cls(words, *(np.frombuffer(parts[name], kind) for name, kind in _ARRAYS.items()))

    def find(self, query: str, limit: int = 10) -> list[tuple[int, float]]:
        """Return the numbers of the names that fit a query best, each with a score of 0 to 100, best first.

        Names of equal score keep the order in which they were given.

        Examples
        --------
        >>> names = ["Rice, brown", "Chickpeas, dry", "Soup, chickpea"]
        >>> [names[number] for number, _ in WordIndex.build(names).find("dry chick peas", 2)]
        ['Chickpeas, dry', 'Soup, chickpea']
        """
        wanted = self._wanted(query)
        if not wanted or limit < 1:
            return []
        found = np.zeros(len(self), np.float32)
        named, in_head = np.zeros_like(found), np.zeros_like(found)
        counted: dict[int, float] = {}
        for likeness in wanted:
            best = np.zeros_like(found)
            for word, like in sorted(likeness.items(), key=lambda pair: pair[1]):  # the best likeness is set last
                best[self.names[self.ends[word] : self.ends[word + 1]]] = like
                counted[word] = max(like, counted.get(word, 0.0))
            found += best
        for word, like in counted.items():
            span = slice(self.ends[word], self.ends[word + 1])
            named[self.names[span]] += like * self.weights[span]
            in_head[self.names[span]] += like * self.head_weights[span]
        near = np.flatnonzero(found >= 0.4 * len(wanted))
        scores = _FOUND * found[near] / len(wanted)
        scores += _HEAD * _share(in_head[near], self.head_totals[near])
        scores += _LITTLE_ELSE * _share(named[near], self.totals[near])
        order = np.argsort(-scores.round(2), kind="stable")[:limit]
        return [(int(near[at]), round(float(scores[at]), 1)) for at in order if scores[at] >= _LOWEST_SCORE]

    def _wanted(self, query: str) -> list[dict[int, float]]:
        """Return, for each word of the query, the known words that may stand for it, with a likeness 0 to 1."""
        asked = list(dict.fromkeys(words_of(query)))[:_MOST_WORDS]
        asked = [piece for word in asked for piece in self._pieces(word)]
        wanted = [self._alike(word) for word in asked]
        for place, pair in enumerate(pairwise(asked)):
            whole = "".join(pair)  # "chick pea" is "chickpea" too, for both of its words
            if (known := self._place(whole)) is not None:
                alike = {known: 1.0}
            elif not all(map(self._known, pair)):
                alike = self._misspelt(whole, whole[0], chr(ord(whole[0]) + 1))
            else:
                continue
            for word, like in alike.items():
                if like > _START_OF_WORD:
                    for row in wanted[place : place + 2]:
                        row[word] = max(like, row.get(word, 0.0))
        return wanted

    def _place(self, word: str) -> int | None:
        place = bisect_left(self.vocabulary, word)
        return place if place < len(self.vocabulary) and self.vocabulary[place] == word else None

    def _known(self, word: str) -> bool:
        return self._place(word) is not None

    def _pieces(self, word: str) -> list[str]:
        """Return an unknown word's two halves when both are known ("blackbeans"), else the word itself."""
        for cut in range(3, len(word) - 2):
            if not self._known(word) and self._known(word[:cut]) and self._known(word[cut:]):
                return [word[:cut], word[cut:]]
        return [word]

    def _alike(self, word: str) -> dict[int, float]:
        place = bisect_left(self.vocabulary, word)
        alike: dict[int, float] = {}
        if not self._known(word) and len(word) >= _SHORTEST_GUESS:
            # Few people mistake the first letter: the whole vocabulary is only gone through when that finds nothing.
            alike = self._misspelt(word, word[0], chr(ord(word[0]) + 1)) or self._misspelt(word, "", "\U0010ffff")
        while len(word) >= _SHORTEST_START and place < len(self.vocabulary) and self.vocabulary[place].startswith(word):
            whole_word = len(self.vocabulary[place]) == len(word)
            alike[place] = 1.0 if whole_word else max(_START_OF_WORD, alike.get(place, 0.0))
            place += 1
        if (known := self._place(word)) is not None:
            alike[known] = 1.0
        return alike

    def _misspelt(self, word: str, low: str, high: str) -> dict[int, float]:
        """Return the words from `low` up to `high` that `word` may be a misspelling of, with how like it they are."""
        first, last = bisect_left(self.vocabulary, low), bisect_left(self.vocabulary, high)
        close = process.extract(
            word, self.vocabulary[first:last], scorer=OSA.normalized_similarity, score_cutoff=_LIKENESS_NEEDED, limit=20
        )
        return {first + number: like for _, like, number in close}


_ARRAYS = {
    "ends": "<i4",
    "names": "<i4",
    "weights": "<f4",
    "head_weights": "<f4",
    "totals": "<f4",
    "head_totals": "<f4",
}


def _counts(name: str) -> tuple[Counter[str], Counter[str]]:
    """Return the words of a name, and those of its opening: up to the comma after its first word of any weight."""
    counts: Counter[str] = Counter()
    head: Counter[str] | None = None
    for part in name.split(","):
        counts.update(words_of(part))
        if head is None and any(_weight(word) for word in counts):
            head = counts.copy()
    return counts, head if head is not None else counts.copy()


def _share(part: NDArray[np.float32], whole: NDArray[np.float32]) -> NDArray[np.float32]:
    return np.divide(part, whole, out=np.ones_like(part), where=whole > 0)
