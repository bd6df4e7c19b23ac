"""Which food the words of a line mean: its names, then the state it is said to be in."""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass

from kit.food.composition import Food, Foods
from kit.food.finding import SMALL_WORDS, Index, Match, Name, index, line_words

_STATES = {  # the states that answer a wish, best first
    "cooked": ("cooked",),
    "dry": ("dry", "dried"),
    "raw": ("raw", "dry"),
    "fresh": ("raw",),
    "frozen": ("frozen",),
    "canned": ("canned", "drained", "rinsed"),
    "drained": ("drained", "rinsed", "canned"),
    "rinsed": ("rinsed", "drained", "canned"),
}
_STATES_THAT_MATTER = ("cooked", "dry", "frozen", "canned")  # without such a form the weight would be another food's


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
    name = [word for word in name if word not in SMALL_WORDS and not word.isdigit()]
    after = [word for word in after if word not in SMALL_WORDS and not word.isdigit()]
    name, notes = _spelled(name, names)
    best = _best(name, after, names)
    if best is None and after and all(kind_of(word) != "food" for word in name):
        name, after = [*after, *name], []
        best = _best(name, after, names)
    if best is None:
        asked = [word for word in name if kind_of(word) in ("food", "other")] or name
        return _unsure(asked, names, notes)
    doubt = _doubt(name, best, names)
    if doubt:
        return _unsure(name, names, notes)
    food, more, problem = _in_state(best, name, after, table, container, by_weight)
    spare = frozenset(word for word in (*name, *after) if word not in best.words)
    return Choice(food, (*notes, *more), problem, spare=spare)


def _spelled(name: list[str], names: Index) -> tuple[list[str], tuple[str, ...]]:
    """Correct words that no name and no line uses, where one is near."""
    notes, spelled = [], []
    for word in name:
        near = None
        if word not in names.by_word and kind_of(word) == "food":
            near = names.nearest_word(word)
            if near:
                notes.append(f'"{word}" read as "{near}"')
        spelled.append(near or word)
    return spelled, tuple(notes)


def _best(name: Sequence[str], after: Sequence[str], names: Index) -> Name | None:
    """Return the name that covers most of the words before the comma, then most of all."""
    before = set(name)
    head = _head(name)

    def cover(found: Name) -> tuple[int, bool, int, int]:
        own = found.words & before
        foodlike = sum(kind_of(word) == "food" for word in own)
        return foodlike, head in own, len(found.words), -found.order

    fitting = [
        found for found in names.within((*name, *after)) if found.words & before and not _only_line_words(found, before)
    ]
    return max(fitting, key=cover, default=None)


def _only_line_words(found: Name, before: set[str]) -> bool:
    """Whether a name shares with the words before the comma nothing that names a food, while other words there do."""
    shared = found.words & before
    return all(kind_of(word) != "food" for word in shared) and any(kind_of(word) == "food" for word in before - shared)


def _head(name: Iterable[str]) -> str:
    """Return the last word that may name a food: the thing itself, in "vegetable broth" and "garlic cloves"."""
    return next((word for word in reversed(list(name)) if kind_of(word) in ("food", "other")), "")


def _doubt(name: Sequence[str], best: Name, names: Index) -> bool:
    """Whether words that the name leaves over make it another food ("garlic salt", "tomato soup", "vegan butter")."""
    rest = [word for word in name if word not in best.words and kind_of(word) in ("food", "other")]
    if not rest:
        return False
    foods_of_their_own = {word for word in rest if any(found.words == {word} for found in names.within([word]))}
    return bool(foods_of_their_own) or _head(name) in rest or any(kind_of(word) == "other" for word in rest)


def _unsure(name: Sequence[str], names: Index, notes: tuple[str, ...]) -> Choice:
    asked = " ".join(name)
    choices = tuple(names.best(name, 5))
    if not asked:
        return Choice(None, notes, 'no food on this line; write an amount and a food, such as "1 cup lentils, dry"')
    if not choices:
        return Choice(
            None, notes, f'no food "{asked}" in the table; write a plainer name, or add it from its package label'
        )
    near = " or ".join(f'"{match.name}"' for match in choices[:4])
    return Choice(None, notes, f'not sure which food "{asked}" is; write {near}', choices)


def _in_state(
    best: Name, name: Sequence[str], after: Sequence[str], table: Foods, container: str, by_weight: bool
) -> tuple[Food, list[str], str]:
    """Return the form of the food that the line's words of state ask for, with notes, and a problem where there is none."""
    food = best.food
    wishes = []
    for place, word in enumerate((*name, *after)):
        known = line_words().get(word)
        if known is None or known.kind != "state" or word in best.words:
            continue
        method_behind_comma = place >= len(name) and known.meaning == "cooked" and word != "cooked"
        if not (method_behind_comma and by_weight):
            wishes.append((known.meaning, word))
    asked = {wish for wish, _ in wishes}
    if "rinsed" in asked and "drained" in asked:
        wishes = [wish for wish in wishes if wish[0] != "drained"]
    if container == "can" and not asked & {"canned", "drained", "rinsed"}:
        wishes.append(("canned", "can"))
    notes: list[str] = []
    for wish, word in wishes:
        if food.state in _STATES[wish][:1]:
            continue
        forms = table.forms(food.base)
        fitting = [form for state in _STATES[wish] for form in forms if form.state == state]
        if fitting:
            said = [form for form in fitting if word in form.name.lower()]
            food = (said or fitting)[0]
        elif wish in _STATES_THAT_MATTER and food.state not in _STATES[wish] and word != "can" and _matters(wish, food):
            return food, notes, f'no {word} form of "{food.name}" in the table; its weight is read as "{food.name}"'
    if food.state == "canned" and asked & {"drained", "rinsed"}:
        notes.append("the table has it with its liquid only, so protein is a little understated and sodium overstated")
    elif food.state == "canned" and container == "can":
        notes.append("with its liquid")
    return food, notes, ""


def _matters(wish: str, food: Food) -> bool:
    """Whether a form that the table lacks would weigh otherwise: a dried fruit does, frozen berries hardly."""
    if food.state in ("cooked", "ready", "canned", "drained", "rinsed"):
        return wish == "dry"
    return not (wish == "frozen" or (wish == "dry" and food.state == "dry"))
