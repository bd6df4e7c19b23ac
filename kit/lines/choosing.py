"""Which food the words of a line mean: its names, what stands in for it, then the state it is said to be in."""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from functools import lru_cache

from kit import files
from kit.food.composition import Food, Foods, read_rows
from kit.food.finding import Index, Match, Name, find, index
from kit.food.vocabulary import SMALL_WORDS, line_words, words
from kit.lines.lighter import lighter, matters
from kit.lines.states import in_state


@dataclass(frozen=True, slots=True)
class Choice:
    """The food chosen for some words.

    Attributes
    ----------
    food : Food or None
        None when the words fit several foods, or none.
    notes : tuple of str
        What was assumed on the way.
    problem : str
        What has to be asked, or empty.
    choices : tuple of Match
        The foods that are near, where there is a problem.
    spare : frozenset of str
        Words of the line that are no part of the food's name: its cuts, sizes and measures.
    """

    food: Food | None
    notes: tuple[str, ...] = ()
    problem: str = ""
    choices: tuple[Match, ...] = ()
    spare: frozenset[str] = frozenset()


def kind_of(word: str) -> str:
    """Return what kind of word this is in a line, ``"food"`` when it may be part of a food's name."""
    known = line_words().get(word)
    return known.kind if known else "food"


def is_name(said: Sequence[str], table: Foods) -> bool:
    """Whether words are, all together, a name of a food: "hamburger or hot dog bun" is."""
    asked = frozenset(said) - SMALL_WORDS
    return any(found.words == asked for found in index(table).within(asked))


def choose(
    name: Sequence[str], after: Sequence[str], table: Foods, *, container: str = "", by_weight: bool = False
) -> Choice:
    """Choose the food that the words of a line mean.

    Parameters
    ----------
    name, after : sequence of str
        Words before the first comma, and behind it, as `kit.food.finding.words` gives them.
    table : Foods
        The foods to choose from.
    container : str
        ``"can"`` and the like, when the line counts them.
    by_weight : bool
        Whether the amount is a weight or a count, so that "roasted" behind a comma says what is done with the raw food.
    """
    names = index(table)
    head = _head(name)
    name, after = _kept(name, names), _kept(_first_state(after), names)
    name, notes = _spelled(name, names)
    head = head if head in name else _head(name)
    best = _best(name, after, names, head)
    if best is None and after and all(kind_of(word) != "food" for word in name):
        name, after = [*after, *name], []
        best = _best(name, after, names, head)
    implied = "canned" if container == "can" else "fresh" if container in _FRESH else ""
    if implied and implied not in (*name, *after) and _open(best, name, names, head, table, implied):
        told = _best(name, [*after, implied], names, head)
        best = told if told and implied in told.words else best
    stand_in = _stand_in(name, after, table, best)
    if stand_in:
        best = stand_in
        lacking = " ".join(word for word in (*name, *after) if word in best.words)
        notes = (*notes, f'no "{lacking}" in the table, {best.food.name.lower()} stands in for it (common practice)')
    elif best is None or _doubt(name, best, names, head):
        return _unsure(name, after, names, notes, table)
    best, light_notes, problem = _lighter(best, name, after, names, head)
    food, more, state_problem = in_state(best, name, after, table, container, by_weight)
    spare = frozenset(word for word in (*name, *after) if word not in best.words)
    return Choice(food, (*notes, *light_notes, *more), problem or state_problem, spare=spare)


_FRESH = ("bunch", "sprig", "handful", "leaf", "stalk")


def _open(best: Name | None, name: Sequence[str], names: Index, head: str, table: Foods, implied: str) -> bool:
    """Whether the measure has to tell which food is meant: "1 bunch coriander", "1 can tuna"."""
    if best is None or _doubt(name, best, names, head):
        return True
    canned = any(form.state in ("canned", "drained", "rinsed") for form in (best.food, *table.forms(best.food.base)))
    return implied == "canned" and not canned


def _first_state(said: Sequence[str]) -> list[str]:
    """Return the words without the second state of "fresh or frozen"."""
    pairs = zip(("", *said), said, strict=False)
    return [word for before, word in pairs if not (before == "or" and kind_of(word) == "state")]


def _kept(said: Sequence[str], names: Index) -> list[str]:
    """Return the words without the small ones, and without numbers that no name holds."""
    return [word for word in said if word not in SMALL_WORDS and (not word.isdigit() or word in names.by_word)]


def _spelled(name: list[str], names: Index) -> tuple[list[str], tuple[str, ...]]:
    """Correct words that no name and no line uses, where one is near."""
    notes, spelled = [], []
    for word in name:
        near = None
        if word not in names.by_word and kind_of(word) == "food" and word not in _stand_in_words():
            near = names.nearest_word(word)
            if near and near.startswith(word):  # "crust" is no misspelt "crusty"
                near = None
            if near:
                notes.append(f'"{word}" read as "{near}"')
        spelled.append(near or word)
    return spelled, tuple(notes)


def _best(name: Sequence[str], after: Sequence[str], names: Index, head: str) -> Name | None:
    """Return the name that covers most of the words before the comma, then most of all."""
    before = set(name)

    def cover(found: Name) -> tuple[int, bool, bool, int, int, int]:
        own = found.words & before
        foodlike = sum(kind_of(word) == "food" for word in own)
        same_thing = found.head == head or kind_of(found.head) not in ("food", "other")
        return foodlike, head in own, same_thing, len(own), len(found.words), -found.order

    fitting = [
        found for found in names.within((*name, *after)) if found.words & before and not _only_line_words(found, before)
    ]
    return max(fitting, key=cover, default=None)


def _only_line_words(found: Name, before: set[str]) -> bool:
    """Whether a name shares with the words before the comma nothing that names a food, while other words there do."""
    shared = found.words & before
    return all(kind_of(word) != "food" for word in shared) and any(kind_of(word) == "food" for word in before - shared)


def _head(name: Iterable[str]) -> str:
    """Return the last word that may name a food: the thing itself, in "vegetable broth" and "tuna in oil"."""
    head = ""
    for word in name:
        if word in ("in", "with") and head:
            break
        if word not in SMALL_WORDS and not word.isdigit() and kind_of(word) in ("food", "other"):
            head = word
    return head


def _doubt(name: Sequence[str], best: Name, names: Index, head: str) -> bool:
    """Whether words that the name leaves over make it another food ("garlic salt", "bell pepper", "vegan butter")."""
    asked = lighter(name)
    known = best.words | set(asked[1].split() if asked else ())
    rest = [word for word in name if word not in known and kind_of(word) in ("food", "other")]
    if not rest:
        return False
    if head in rest or any(kind_of(word) == "other" for word in rest):
        return True
    if any(_FREE_FROM.get(word) in best.food.allergens for word in rest):
        return True
    foods_of_their_own = any(found.words == {word} for word in rest for found in names.within([word]))
    return foods_of_their_own or any(_qualifies(word, best, head, names) for word in rest)


_FREE_FROM = {
    "glutenfree": "wheat",
    "wheatfree": "wheat",
    "dairyfree": "milk",
    "eggfree": "egg",
    "soyfree": "soy",
    "nutfree": "tree_nut",
}


def _qualifies(word: str, best: Name, head: str, names: Index) -> bool:
    """Whether a word tells another food of the same head apart: "bell" does so with "pepper"."""
    own = {part for part in best.words if kind_of(part) == "food"}
    found = [names.names[place] for place in names.by_word.get(word, ()) if own <= names.names[place].words]
    return bool(found) and all(name.food.base != best.food.base for name in found)


@lru_cache(maxsize=4)
def _stand_ins(table: Foods) -> Index:
    rows = read_rows(files.bundled("data/stand_ins.csv"))
    return Index((), ((table[row["food"]], row["words"]) for row in rows if row["food"] in table))


@lru_cache(maxsize=1)
def _stand_in_words() -> frozenset[str]:
    return frozenset(word for row in read_rows(files.bundled("data/stand_ins.csv")) for word in words(row["words"]))


def _stand_in(name: Sequence[str], after: Sequence[str], table: Foods, best: Name | None) -> Name | None:
    """Return what stands in for a food that the table lacks, unless the table's own name says as much."""
    found = _best(name, after, _stand_ins(table), _head(name))
    if found is None or (best is not None and (found.words <= best.words or not found.words > best.words)):
        return None if best is not None else found
    return found


def _unsure(name: Sequence[str], after: Sequence[str], names: Index, notes: tuple[str, ...], table: Foods) -> Choice:
    asked = [word for word in name if kind_of(word) in ("food", "other", "measure")] or [*name, *after]
    text = " ".join(dict.fromkeys(asked))[:_SHOWN]
    if not text:
        return Choice(None, notes, 'no food on this line; write an amount and a food, such as "1 cup lentils, dry"')
    choices = tuple(
        match for match in find(" ".join((text, *_states_said(name, after))), 5, table) if match.score >= _NEAR_ENOUGH
    )
    if not choices:
        problem = f'no food "{text}" in the table; write a plainer name, or add it from its package label'
        return Choice(None, notes, problem)
    near = " or ".join(f'"{match.name}"' for match in choices[:4])
    return Choice(None, notes, f'not sure which food "{text}" is; write {near}', choices)


_NEAR_ENOUGH = 40.0
_SHOWN = 60  # characters of a food's words in a message


def _states_said(name: Sequence[str], after: Sequence[str]) -> list[str]:
    return [word for word in (*name, *after) if kind_of(word) == "state" and word != "fresh"]


def _lighter(
    best: Name, name: Sequence[str], after: Sequence[str], names: Index, head: str
) -> tuple[Name, tuple[str, ...], str]:
    """Return the low-sodium, reduced-fat or unsweetened form where one is asked for, with notes, or the problem."""
    percent = next((word for word in (*name, *after) if word.endswith("%") and word not in best.words), None)
    if percent and best.food.group in ("dairy", "meat", "poultry"):
        return best, (), f'no {percent} form of "{best.food.name}" in the table; read as that one'
    asked = lighter(name) or lighter(after)
    if asked is None:
        return best, (), ""
    kind, said = asked
    if set(said.split()) & best.words:
        return best, (), ""
    plain = [word for word in name if word not in said.split()]
    own = {word for word in best.words if kind_of(word) == "food"}
    for form in kind.forms:
        other = _best([*form.split(), *plain], after, names, head)
        if other and own <= other.words and set(form.split()) <= other.words:
            return other, (f'"{said}" read as "{form}"',) if form != said else (), ""
    if not matters(kind, best.food):
        return best, (), ""
    return (
        best,
        (),
        f'no "{said}" form of "{best.food.name}" in the table; read as the plain one, which has more {kind.nutrient}',
    )
