"""Misspelt food words put right, and known words of English left alone."""

from collections.abc import Sequence
from functools import cache, lru_cache

from kit import files
from kit.lines.known_names import KnownNames, kind_of

_SHORTEST = 5  # letters; a shorter word is too near to too many
_LONG = 8  # letters from which two may be wrong


@cache
def english_words() -> frozenset[str]:
    """Return the words of English that are near to a word of foods and mean something else: "heat", "whisked"."""
    return frozenset(files.bundled("data/english_words.txt").read_text(encoding="utf-8").split())


def spelled(said: Sequence[str], names: KnownNames) -> tuple[list[str], tuple[str, ...]]:
    """Return words with the misspelt ones put right, and a note of each that was.

    Only a word that no food, no recipe and no dictionary knows is taken for a misspelling, and only of a word that
    starts with the same letter and differs in one letter, in a long word two.

    Parameters
    ----------
    said : sequence of str
        Words as `kit.food.vocabulary.words` gives them.
    names : KnownNames
        The names of the foods at hand.
    """
    notes, put_right = [], []
    for word in said:
        near = None
        if len(word) >= _SHORTEST and word not in names.by_word and kind_of(word) == "food" and word.isalpha():
            near = _near(word, names)
        if near:
            notes.append(f'"{word}" read as "{near}"')
        put_right.append(near or word)
    return put_right, tuple(notes)


@lru_cache(maxsize=2_000)
def _near(word: str, names: KnownNames) -> str | None:
    """Return the food word that a misspelt one is nearest to."""
    if word in english_words() or _is_compound(word, names):
        return None
    return near_word(word, names)


def _is_compound(word: str, names: KnownNames) -> bool:
    """Whether a word is two food words in one: "saltfish" is no misspelt sablefish."""
    return any(word[:at] in names.by_word and word[at:] in names.by_word for at in range(3, len(word) - 2))


def near_word(word: str, names: KnownNames) -> str | None:
    """Return the food word that differs from a word in one letter, or two in a long one; None when there is none."""
    from rapidfuzz import process  # only a misspelling pays for the import
    from rapidfuzz.distance import OSA

    alike = [
        known
        for known in names.by_letter.get(word[0], ())
        if not known.startswith(word) and kind_of(known) == "food"  # "crust" is no misspelt "crusty"
    ]
    most = 2 if len(word) >= _LONG else 1
    found = process.extractOne(word, alike, scorer=OSA.distance, score_cutoff=most)
    return found[0] if found else None
