"""A sentence as it is read: its tokens in clauses, what each clause is about, and which tokens a claim has used."""

from collections.abc import Callable, Collection, Iterator, Sequence
from dataclasses import dataclass, field, replace
from functools import cached_property

from kit.food.vocabulary import words as food_words
from kit.speech.words.clauses import VERBS, _clauses
from kit.speech.words.foods_said import FoodNames, FoodWord
from kit.speech.words.numbers_said import Spoken, may_begin, number_at
from kit.speech.words.pieces import is_counted
from kit.speech.words.quantities_said import UNITS_OF_ONE, with_quantities
from kit.speech.words.tokens import Quantity, Rows, Token, Word, phrases, phrases_at, words_of

_SUBJECTS = ("food", "dish", "pronoun")
_COMPONENTS = frozenset(
    "sauce dressing topping filling batter broth garnish base glaze marinade gravy vinaigrette icing frosting".split()
)
_VERB_KINDS = ("verb_bring", "verb_save", "verb_add")
_ONE_OF = ("good", "full", "solid", "generous", "mere", "bare", "rough")


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
    def verbs(self) -> frozenset[int]:
        """Places of the tokens that are verbs of a statement."""
        return frozenset(
            at
            for at, token in enumerate(self.tokens)
            if token.text in VERBS or any(kind in token.parts for kind in _VERB_KINDS)
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
    words = words_of(text)
    tokens = with_quantities(_with_vitamins(_tokens(words, names)))
    return Sentence(text, tuple(tokens), tuple(_clauses(tokens)))


def _with_vitamins(tokens: Sequence[Token]) -> list[Token]:
    """Return tokens with the letters listed behind a vitamin as vitamins: "vitamins A, C and K"."""
    found = list(tokens)
    of_vitamins = False
    for at, token in enumerate(found):
        letter = token.text in _LETTERS and (token.text != "a" or _ends_list(found, at + 1))
        if token.text.startswith(("vitamin ", "vitamins ")) and "nutrient" in token.parts:
            of_vitamins = True
        elif of_vitamins and letter:
            named = [meaning for _, kind, meaning in phrases_at(("vitamin", token.text), 0) if kind == "nutrient"]
            found[at] = replace(token, parts={"nutrient": named[0]} if named else {"beyond": "nutrient"}, food=None)
        else:
            of_vitamins = of_vitamins and token.text in (",", "and", "or", "&", "plus")
    return found


_LETTERS = frozenset("a c d e k b b1 b2 b3 b5 b6 b7 b9 b12".split())


def _ends_list(tokens: Sequence[Token], at: int) -> bool:
    return at >= len(tokens) or tokens[at].text in (",", "and", "or", "&", ".", "!", ";")


def _tokens(words: Sequence[Word], names: FoodNames) -> list[Token]:
    stems = [(food_words(word.text) or (word.text,))[0] for word in words]
    plain = [word.text for word in words]
    own = tuple(word.stem for word in words)
    longer, alone = phrases()
    found: list[Token] = []
    at = 0
    while at < len(words):
        begins = stems[at] in names.begins or own[at] in alone or own[at : at + 2] in longer
        if not begins and not may_begin(plain[at]):
            found.append(_word(words[at]))
            at += 1
            continue
        number = number_at(plain, at)
        food = names.at(stems, at)
        named = names.at(stems, at + 1) if own[at : at + 2] == ("the", "whole") else None
        rows = _phrase_rows(own, at, named)
        longest = rows[0][0] if rows else 0  # the longest first
        if number and number.length >= longest and not (number.length < (food[0] if food else 0)):
            found.append(_number(words, at, number))
            at += number.length
            continue
        rows = _with_a_number(plain, at, rows, longest)
        length = max(rows[0][0] if rows else 1, food[0] if food else 1)
        parts = {kind: meaning for size, kind, meaning in reversed(rows) if size == length}
        if "relation" in parts and not _number_follows(plain, at + length):
            del parts["relation"]
        word = food[1] if food and food[0] == length else None
        token = _phrase(words[at : at + length], parts, word, stems[at], names)
        if stems[at] in names.pieces and "dish" in parts and is_counted(plain[:at]):
            parts |= {"dish": "part", "piece": token.text}
        if "dish" in parts and "unit" in parts and own[at + length : at + length + 1] != ("of",):
            del parts["unit"]  # "a cup" where each serving is one; "a cup of oats" is a measure all the same
        found.append(token)
        at += length
    return found


def _phrase_rows(own: tuple[str, ...], at: int, named: tuple[int, FoodWord] | None) -> Rows:
    """Return the phrases that begin at a word, without those that are not meant there."""
    rows = phrases_at(own, at)
    if not rows:
        return rows
    if own[at] == "and" and own[at + 2 : at + 3] == ("to",):
        rows = [row for row in rows if row[1] != "after"]  # ", and up to 300" is no "300 and up"
    if own[at] == "or" and own[at + 2 : at + 3] == ("than",):
        rows = [row for row in rows if row[1] != "after"]  # "or more than 300 calories" is no "or more"
    if own[at + 1 : at + 2] == ("one",) and own[at + 2 : at + 3] in (("hundred",), ("thousand",)):
        rows = [row for row in rows if row[0] != 2]  # "for every one hundred calories"
    return [] if named is not None and named[0] >= 2 else rows  # "the whole milk" is a food


def _with_a_number(plain: Sequence[str], at: int, rows: Rows, longest: int) -> Rows:
    """Return the phrases without "close to" and "a good", which are said of a number only when one follows."""
    if rows and rows[0][1] == "relation" and all(row[1] == "relation" for row in rows if row[0] == longest):
        return [row for row in rows if row[1] != "relation" or _number_follows(plain, at + row[0])]
    return rows


def _phrase(words: Sequence[Word], parts: dict[str, str], word: FoodWord | None, stem: str, names: FoodNames) -> Token:
    """Return a word or a phrase as a token, with the food or the part of the dish that it names."""
    text = " ".join(one.text for one in words)
    if word is not None and "nutrient" in parts and not word.inside and not word.exact:
        word = None  # "protein" is no food for being the head of one
    if word is not None:
        word = replace(word, text=text)
        parts["food"] = word.text
    if len(words) == 1 and "dish" in parts and stem in _COMPONENTS and stem not in names.dishes:
        parts["dish"] = "part"  # "the sauce" of a dish that is not called a sauce
        if stem == "broth" and word is not None and word.inside:
            del parts["dish"]  # what is poured in
    if len(words) == 1 and stem in names.dishes and not (word is not None and word.inside):
        if names.dishes[stem] == "serving" or "dish" not in parts:
            parts["dish"] = names.dishes[stem]
        word = None  # what the dish is called is the dish, though a food of the table be called so too
        parts.pop("food", None)
    first, last = words[0], words[-1]
    return Token(text, first.start, last.end, parts, None, word, first.hyphen_before, last.possessive)


def _number_follows(plain: Sequence[str], at: int) -> bool:
    following = plain[at] if at < len(plain) else ""
    if at and plain[at - 1] in _ONE_OF and _is_unit_word(following):
        return True  # "a good year", "a full cup"
    if following in ("a", "an", "the", "all", "another"):
        return number_at(plain, at) is not None or (at + 1 < len(plain) and _is_unit_word(plain[at + 1]))
    return number_at(plain, at) is not None


def _is_unit_word(text: str) -> bool:
    return any(
        kind == "unit" and meaning in UNITS_OF_ONE
        for word in words_of(text)[:1]
        for _, kind, meaning in phrases_at((word.stem,), 0)
    )


def _word(word: Word) -> Token:
    """Return a word that is nothing but itself as a token."""
    return Token(word.text, word.start, word.end, {}, None, None, word.hyphen_before, word.possessive)


def _number(words: Sequence[Word], at: int, spoken: Spoken) -> Token:
    first, last = words[at], words[at + spoken.length - 1]
    text = " ".join(word.text for word in words[at : at + spoken.length])
    quantity = Quantity(spoken.value, spoken.value, is_fraction=spoken.is_fraction)
    return Token(text, first.start, last.end, {"number": text}, quantity, None, first.hyphen_before)


def merged(tokens: Sequence[Token], text: str) -> Token:
    """Return some tokens as one, with the parts of the last."""
    return replace(tokens[-1], text=text, start=tokens[0].start)


def food_at(sentence: Sentence, at: int) -> FoodWord | None:
    """Return the foods that a token names, None when it names none."""
    tokens = sentence.tokens
    if not 0 <= at < len(tokens):
        return None
    food = tokens[at].food
    return food if isinstance(food, FoodWord) else None
