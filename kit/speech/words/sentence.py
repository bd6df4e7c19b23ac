"""A sentence as it is read: its tokens in clauses, what each clause is about, and which tokens a claim has used."""

from collections.abc import Callable, Collection, Iterator, Sequence
from dataclasses import dataclass, field
from functools import cached_property

from kit.speech.words.clauses import VERBS, _clauses
from kit.speech.words.foods_said import FoodNames, FoodWord
from kit.speech.words.quantities_said import with_quantities
from kit.speech.words.recognised import tokens_of
from kit.speech.words.tokens import Quantity, Token

# Words of every sentence, which stand for nothing.
_JOINTS = frozenset(
    "which who whom whose "
    "a an the and or nor but so if as at by for from in into of off on onto out over per than that this to up with "
    "without it its is are was were be been has have had do does did not no we you they i all any some here there "
    "apart both except when while because since though although either too also just only even then else".split()
)
_VERB_KINDS = frozenset(("verb_bring", "verb_save", "verb_add"))


class _Texts(dict[int, str]):
    """Words by place; empty outside the sentence."""

    def __missing__(self, _at: int) -> str:
        return ""


@dataclass(eq=False)
class Sentence:
    """The tokens of what is said, with the clause and the sentence each stands in.

    Attributes
    ----------
    text : str
        As it is said.
    tokens : tuple of Token
        In order, stops among them.
    clauses : tuple of int
        The clause of each token.
    used : set of int
        Places of the tokens that a claim has accounted for.
    counted : set of int
        Those of them that name a nutrient before its amount: a word may judge it too ("very little sodium, 600 mg").
    """

    text: str
    tokens: tuple[Token, ...]
    clauses: tuple[int, ...]
    used: set[int] = field(default_factory=set)
    counted: set[int] = field(default_factory=set)

    def __len__(self) -> int:
        return len(self.tokens)

    @cached_property
    def texts(self) -> tuple[str, ...]:
        """The words of each token."""
        return tuple(token.text for token in self.tokens)

    @cached_property
    def plain(self) -> str:
        """The words of all tokens, a space between them."""
        return " ".join(self.texts)

    @cached_property
    def words(self) -> frozenset[str]:
        """Every word of it, those of phrases and quantities one by one too."""
        return frozenset(word for token in self.tokens for word in token.text.split())

    def is_a(self, at: int, kind: str, meaning: str = "") -> bool:
        """Return whether there is a token at a place and it can play a part."""
        tokens = self.tokens
        if not 0 <= at < len(tokens):
            return False
        parts = tokens[at].parts
        return kind in parts and (not meaning or parts[kind] == meaning)

    @cached_property
    def text_at(self) -> Callable[[int], str]:
        """What returns the words of a token; empty outside the sentence. Asked most of all, so it is a bare look-up."""
        return _Texts(enumerate(self.texts)).__getitem__

    def where(self, texts: Collection[str], start: int = 0) -> list[int]:
        """Return the places of the tokens with one of some texts."""
        if self._said.isdisjoint(texts):
            return []
        return [at for at, text in enumerate(self.texts) if text in texts and at >= start]

    @cached_property
    def _said(self) -> frozenset[str]:
        return frozenset(self.texts)

    def places(self, kind: str, start: int = 0, end: int | None = None) -> list[int]:
        """Return the places of the tokens that can play a part."""
        found = self._by_kind.get(kind, ())
        return [at for at in found if at >= start and (end is None or at < end)]

    @cached_property
    def _by_kind(self) -> dict[str, list[int]]:
        found: dict[str, list[int]] = {}
        for at, token in enumerate(self.tokens):
            for kind in token.parts:
                found.setdefault(kind, []).append(at)
        return found

    @cached_property
    def unknown(self) -> tuple[int, ...]:
        """Places of the words that play no part here: no food, no number, no phrase of speech."""
        return tuple(
            at
            for at, token in enumerate(self.tokens)
            if not token.parts
            and token.food is None
            and token.quantity is None
            and token.text not in _JOINTS
            and token.text[:1].isalpha()
        )

    @cached_property
    def verbs(self) -> frozenset[int]:
        """Places of the tokens that are verbs of a statement."""
        return frozenset(
            at for at, token in enumerate(self.tokens) if token.text in VERBS or not _VERB_KINDS.isdisjoint(token.parts)
        )

    @cached_property
    def dishes(self) -> frozenset[int]:
        """Places of the tokens that name the dish or a part of it, and no food."""
        named = ((at, food_at(self, at)) for at in self.places("dish") if not self._shares_out(at))
        return frozenset(at for at, food in named if food is None or not food.exact)

    def _shares_out(self, at: int) -> bool:
        """Return whether a word is what somebody does with it: "before I share it out", "we dish it up"."""
        who = self.text_at(at - 1) in ("i", "we", "you", "they", "to")
        done = who and self.text_at(at) in ("share", "dish", "serve")
        return done and self.text_at(at + 1) in ("it", "them", "this", "that", "out", "up")

    def clause_of(self, at: int) -> range:
        """Return the places of the clause that a token stands in."""
        return self._clause_places[self.clauses[at]]

    @cached_property
    def _clause_places(self) -> dict[int, range]:
        found: dict[int, range] = {}
        for at, number in enumerate(self.clauses):
            found[number] = range(found[number].start if number in found else at, at + 1)
        return found

    def after(self, at: int, skip: Callable[[Token], bool]) -> int:
        """Return the first place from `at` on whose token is not skipped."""
        while at < len(self.tokens) and skip(self.tokens[at]):
            at += 1
        return at

    def quantities(self) -> Iterator[tuple[int, Quantity]]:
        """Return the quantities that no claim has used yet, with their places."""
        for at, token in enumerate(self.tokens):
            if token.quantity is not None and at not in self.used:
                yield at, token.quantity

    def said(self, places: Sequence[int]) -> str:
        """Return the words from the first to the last of some places, as they stand in the sentence."""
        return self.text[self.tokens[min(places)].start : self.tokens[max(places)].end] if places else ""


def sentence(text: str, names: FoodNames) -> Sentence:
    """Return a text as tokens: phrases, foods and quantities recognised, clauses told apart."""
    tokens = with_quantities(tokens_of(text, names))
    return Sentence(text, tuple(tokens), tuple(_clauses(tokens)))


def food_at(sentence: Sentence, at: int) -> FoodWord | None:
    """Return the foods that a token names, None when it names none."""
    tokens = sentence.tokens
    if not 0 <= at < len(tokens):
        return None
    food = tokens[at].food
    return food if isinstance(food, FoodWord) else None
