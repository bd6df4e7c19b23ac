"""Which of the known names fits the words of a line best."""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass

from kit.food.finding import Name
from kit.food.vocabulary import SMALL_WORDS, words
from kit.lines.accounting import unaccounted
from kit.lines.known_names import LISTED, USUAL, KnownNames, kind_of
from kit.lines.lighter import lighter, said_less
from kit.lines.spelling import spelled

_THAWED = ("thawed", "defrosted")
_HOW_RICH = frozenset("reduced low light lite fat free no added salt sodium sugar unsalted unsweetened".split())
_TELLING = ("food", "other", "deciding")
_LYING = frozenset(("in", "with", "from"))  # behind it stands what the food lies in, or comes from


@dataclass(frozen=True, slots=True)
class Asked:
    """The telling words of a phrase: before the comma, behind it, and the one that says what it is."""

    name: tuple[str, ...]
    after: tuple[str, ...]
    head: str
    lying: frozenset[str] = frozenset()

    @property
    def all_words(self) -> tuple[str, ...]:
        """All of them, those before the comma first."""
        return (*self.name, *self.after)


def asked_for(name: Sequence[str], after: Sequence[str], names: KnownNames) -> tuple[Asked, tuple[str, ...]]:
    """Return the telling words of a phrase, misspelt ones corrected, and the notes of that.

    Parameters
    ----------
    name, after : sequence of str
        Words before the first comma, and behind it.
    names : KnownNames
        All names.
    """
    head = head_of(name)
    kept, notes = spelled(_kept(name, names), names)
    behind = _kept(_first_state(after), names)
    lying = frozenset(word for place, word in enumerate(name) if not _LYING.isdisjoint(name[1:place]))
    return Asked(tuple(kept), tuple(behind), head if head in kept else head_of(kept), lying - {head}), notes


def _first_state(said: Sequence[str]) -> list[str]:
    """Return the words without the second state of "fresh or frozen"."""
    pairs = list(zip(("", *said), said, strict=False))
    second = {word for before, word in pairs if before == "or" and kind_of(word) == "state"}
    undone = {word for word in said if word in _THAWED and "fresh" in said}  # "fresh or frozen, thawed"
    return [word for word in said if word not in second | undone]


def _kept(said: Sequence[str], names: KnownNames) -> list[str]:
    """Return the words without the small ones, and without numbers that no name holds."""
    return [word for word in said if word not in SMALL_WORDS and (not word.isdigit() or word in names.by_word)]


def best_name(asked: Asked, names: KnownNames) -> Name | None:
    """Return the name that covers most of the words before the comma, then most of all."""
    before = set(asked.name)
    guarded = said_less(asked.name) | said_less(asked.after)
    richness = guarded | _HOW_RICH

    def cover(found: Name) -> tuple[int, bool, bool, int, int, int, bool, bool, int]:
        own = found.words & before
        foodlike = sum(kind_of(word) == "food" for word in own)
        same_thing = found.head == asked.head or kind_of(found.head) not in ("food", "other")
        listed = names.kind(found) in (LISTED, USUAL)
        in_order = names.in_order(found, asked.name)
        telling = sum(kind_of(word) in _TELLING and word not in richness for word in found.words)  # "ham, lean, diced"
        size = len(found.words)
        return foodlike, asked.head in own, same_thing, telling, len(own), size, in_order, listed, -found.order

    fitting = [
        found
        for found in names.within(asked.all_words)
        if found.words & before
        and not _only_line_words(found, before)
        and (not found.words & guarded or lighter(words(found.text)))
        and asked.head not in names.lies_in(found)
        and (found.head not in asked.lying or " with " in found.text or " from " in found.text)
    ]
    if not fitting:
        return None
    ranked = sorted(fitting, key=cover, reverse=True)
    near = [found for found in ranked if cover(found)[:2] == cover(ranked[0])[:2]]
    # Of names that hold as many words of foods, one that leaves none over: "hot Italian turkey sausage" is turkey.
    return next((found for found in near if not unaccounted(found, asked.name, asked.after, names)), ranked[0])


def _only_line_words(found: Name, before: set[str]) -> bool:
    """Whether a name shares with the words before the comma nothing that names a food, while other words there do."""
    shared = found.words & before
    return all(kind_of(word) != "food" for word in shared) and any(kind_of(word) == "food" for word in before - shared)


def head_of(name: Iterable[str]) -> str:
    """Return the last word that may name a food: the thing itself, in "vegetable broth" and "tuna in oil"."""
    head = ""
    for word in name:
        if word in _LYING and head:
            break
        if word not in SMALL_WORDS and not word.isdigit() and kind_of(word) in ("food", "other"):
            head = word
    return head
