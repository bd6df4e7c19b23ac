"""Every name that a line may use for a food: its own, what stands in, what is usually meant, what is missing."""

from collections import defaultdict
from collections.abc import Mapping, Sequence
from functools import cache, cached_property, lru_cache

from kit import files
from kit.food.cells import read_rows
from kit.food.composition import Food, Foods
from kit.food.finding import Index, Name
from kit.food.measure import Measure
from kit.food.vocabulary import SMALL_WORDS, line_words, words

LISTED, STAND_IN, USUAL, MISSING = "listed", "stand-in", "usual", "missing"
_FURTHER = {
    STAND_IN: "data/stand_ins.csv",
    USUAL: "data/usual_foods.csv",
    MISSING: "data/missing_foods.csv",
}


_NOTHING: frozenset[str] = frozenset()


class KnownNames(Index):
    """The names by which lines call some foods, by word.

    Parameters
    ----------
    table : Foods
        The foods at hand, with all their names.

    Attributes
    ----------
    kinds : dict of int to str
        What kind of name a place holds, where it is none of the table's own.
    """

    def __init__(self, table: Foods) -> None:
        super().__init__(table.values())
        self.kinds: dict[int, str] = {}
        own = {(name.words, name.head) for name in self.names}
        for kind, path in _FURTHER.items():
            for row in read_rows(files.bundled(path)):
                food = next((table[key] for key in row["food"].split("; ") if key in table), None)
                if food is None:
                    continue
                self._add(food, row["words"])
                if (self.names[-1].words, self.names[-1].head) in own:  # the table has learnt of the food since
                    for word in self.names[-1].words:
                        self.by_word[word].pop()
                    self.names.pop()
                else:
                    self.kinds[len(self.names) - 1] = kind

    def kind(self, name: Name) -> str:
        """Return what kind of name this is: one of the table's own, a stand-in, a usual meaning, or a missing food."""
        return self.kinds.get(name.order, LISTED)

    def lies_in(self, name: Name) -> frozenset[str]:
        """Return the words of what a food lies in, by its name: the oil, of "tuna in oil"; they are not the food."""
        return self._lying.get(name.order, _NOTHING)

    @cached_property
    def _lying(self) -> Mapping[int, frozenset[str]]:
        found = {}
        for name in self.names:
            food, _, liquid = name.text.partition(" in ")
            if liquid and not food.endswith("bone"):
                found[name.order] = frozenset(words(liquid)) - frozenset(words(food))
        return found

    @cached_property
    def words_of(self) -> Mapping[str, frozenset[str]]:
        """The words of all of the table's own names of a food in all its states, by its base."""
        found: dict[str, set[str]] = defaultdict(set)
        for name in self.names:
            if name.order not in self.kinds:
                found[name.food.base] |= name.words
        return {base: frozenset(said) for base, said in found.items()}

    def said_of(self, name: Name) -> list[frozenset[str]]:
        """Return the words of a name, and of the other names of its food that are told in fewer of them."""
        others = [words(text) for text in (name.food.name, *name.food.other_names)] if self.kind(name) == LISTED else []
        return [
            name.words,
            *(said for text in others if len(said := frozenset(text) - SMALL_WORDS) > 1 and said < name.words),
        ]

    def in_order(self, name: Name, said: Sequence[str]) -> bool:
        """Whether a name's words stand side by side and in its order: milk chocolate is no chocolate milk."""
        own = self._written[name.order]
        return any(tuple(said[start : start + len(own)]) == own for start in range(len(said) - len(own) + 1))

    @cached_property
    def _written(self) -> Sequence[tuple[str, ...]]:
        return [tuple(word for word in words(name.text) if word not in SMALL_WORDS) for name in self.names]

    def belongs(self, word: str, name: Name) -> bool:
        """Whether a word is said in any of the names of a name's food: "rotini" is in one of whole-wheat pasta."""
        if word in name.words:
            return True
        return self.kind(name) in (LISTED, USUAL) and word in self.words_of[name.food.base]


@lru_cache(maxsize=4)
def known_names(table: Foods) -> KnownNames:
    """Return the names of a table of foods, made once."""
    return KnownNames(table)


def kind_of(word: str) -> str:
    """Return what kind of word this is in a line, ``"food"`` when it may be part of a food's name."""
    known = line_words().get(word)
    return known.kind if known else "food"


def is_name(said: Sequence[str], table: Foods) -> bool:
    """Whether words are, all together, a name of a food: "hamburger or hot dog bun" is."""
    asked = frozenset(said) - SMALL_WORDS
    names = known_names(table)
    return any(
        found.words == asked
        and names.kind(found) == LISTED
        and said[-1] not in names.lies_in(found)
        and ("or" not in said or " or " in found.text)  # apples or pears are no apple pears
        for found in names.within(asked)
    )


def missing_choices(name: Name, table: Foods) -> tuple[Food, ...]:
    """Return the foods of a table that are nearest to one that it lacks."""
    for row in read_rows(files.bundled(_FURTHER[MISSING])):
        if row["words"] == name.text:
            return tuple(table[key] for key in row["food"].split("; ") if key in table)
    return (name.food,)


@cache
def measures_of_stand_ins() -> Mapping[str, tuple[Measure, ...]]:
    """Return, for the words of a stand-in, what a piece or a bunch of it weighs, where that is another weight."""
    found = {}
    for row in read_rows(files.bundled("data/stand_ins.csv")):
        pairs = (part.rsplit(" ", 1) for part in row["measures"].split("; ") if part)
        found[row["words"]] = tuple(Measure(noun, "", float(grams), row["source"]) for noun, grams in pairs)
    return found


@cache
def differs_in() -> Mapping[str, str]:
    """Return, for the words of a stand-in, in which numbers it is not alike."""
    return {row["words"]: row["differs"] for row in read_rows(files.bundled("data/stand_ins.csv"))}
