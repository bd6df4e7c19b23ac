"""Which food the words of a line mean: its names, what stands in for it, then the state it is said to be in."""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass

from kit.food.composition import Food, Foods
from kit.food.finding import Match, Name
from kit.food.measure import Measure
from kit.food.nutrients import nutrient_index
from kit.food.vocabulary import SMALL_WORDS, words
from kit.lines.accounting import is_missing, unaccounted
from kit.lines.alike import unlike
from kit.lines.asking import states_said, which_food, which_instead
from kit.lines.implied import implied_state, is_open_in
from kit.lines.known_names import (
    LISTED,
    STAND_IN,
    USUAL,
    KnownNames,
    differs_in,
    kind_of,
    known_names,
    measures_of_stand_ins,
)
from kit.lines.lighter import Lighter, lighter, lighter_form, matters, said_less
from kit.lines.spelling import spelled
from kit.lines.states import in_state

_SAME_FAT = 0.6  # [g per 100 g]: labels round, and the table's foods are means
_THAWED = ("thawed", "defrosted")
_LYING = frozenset(("in", "with", "from"))  # behind it stands what the food lies in, or comes from


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
    measures : tuple of Measure
        What a piece or a bunch of the food meant weighs, where another food stands in for it.
    """

    food: Food | None
    notes: tuple[str, ...] = ()
    problem: str = ""
    choices: tuple[Match, ...] = ()
    spare: frozenset[str] = frozenset()
    measures: tuple[Measure, ...] = ()


@dataclass(frozen=True, slots=True)
class _Asked:
    """The telling words of a phrase: before the comma, behind it, and the one that says what it is."""

    name: tuple[str, ...]
    after: tuple[str, ...]
    head: str
    lying: frozenset[str] = frozenset()

    @property
    def all_words(self) -> tuple[str, ...]:
        return (*self.name, *self.after)


def choose(
    name: Sequence[str], after: Sequence[str], table: Foods, *, container: str = "", by_weight: bool = False
) -> Choice:
    """Choose the food that the words of a line mean.

    A food is chosen only when its name accounts for every word that may make another food of it.

    Parameters
    ----------
    name, after : sequence of str
        Words before the first comma, and behind it, as `kit.food.vocabulary.words` gives them.
    table : Foods
        The foods to choose from.
    container : str
        ``"can"``, ``"bunch"``, ``"teaspoon"`` and the like, when the line counts in them.
    by_weight : bool
        Whether the amount is a weight or a count, so that "roasted" behind a comma says what is done with the raw food.
    """
    names = known_names(table)
    asked, notes = _asked(name, after, names)
    best = _best(asked, names)
    if best is None and asked.after and all(kind_of(word) != "food" for word in asked.name):
        everything = (*asked.after, *asked.name)
        asked = _Asked(everything, (), _head(everything))
        best = _best(asked, names)
    measured_first = {word for word in asked.after if word == "soaked" or (word == "toasted" and _is_nut(best))}
    if best and measured_first:
        asked = _Asked(asked.name, tuple(word for word in asked.after if word not in measured_first), asked.head)
        best = _best(asked, names)
    best = _as_measured(best, asked, names, table, container)
    left = unaccounted(best, asked.name, asked.after, names) if best else []
    if best is None or left:
        return _unsure(asked, left, names, notes, table)
    if is_missing(best, names):
        problem, choices = which_instead(best, names, table)
        return Choice(None, notes, problem, choices)
    found, light_notes, problem = _lighter(best, asked, names)
    food, more, state_problem = in_state(found, asked.name, asked.after, table, container, by_weight)
    usual = names.kind(found) == USUAL  # whose words may tell the cut as well: "grated cheese"
    spare = frozenset(word for word in asked.all_words if word not in found.words or (usual and kind_of(word) == "cut"))
    assumed = _assumed(found, food, names)
    notes = (*notes, *assumed, *light_notes, *more)
    problem = problem or state_problem
    choices = which_food(asked.name, asked.after, asked.head, table)[1] if problem else ()
    choices = choices or (which_food(words(food.name), (), "", table)[1] if problem else ())
    own = measures_of_stand_ins().get(found.text, ()) if names.kind(found) == STAND_IN else ()
    return Choice(food, notes, problem, choices, spare, own)


def _asked(name: Sequence[str], after: Sequence[str], names: KnownNames) -> tuple[_Asked, tuple[str, ...]]:
    """Return the telling words of a phrase, misspelt ones corrected, and the notes of that."""
    head = _head(name)
    kept, notes = spelled(_kept(name, names), names)
    behind = _kept(_first_state(after), names)
    lying = frozenset(word for place, word in enumerate(name) if not _LYING.isdisjoint(name[1:place]))
    return _Asked(tuple(kept), tuple(behind), head if head in kept else _head(kept), lying - {head}), notes


def _as_measured(best: Name | None, asked: _Asked, names: KnownNames, table: Foods, container: str) -> Name | None:
    """Return the food that the measure tells, where words alone leave it open: "1 bunch coriander", "1 can tuna"."""
    spare = [word for word in asked.all_words if best is None or word not in best.words]
    implied = implied_state(spare, container, best.food if best else None)
    if not implied or implied in asked.all_words:
        return best
    if best and not unaccounted(best, asked.name, asked.after, names) and not is_open_in(best.food, implied, table):
        return best
    told = _best(_Asked(asked.name, (*asked.after, implied), asked.head), names)
    if told and best and container == "teaspoon" and names.kind(told) == STAND_IN:
        return best  # "1 tsp marjoram leaves": the dried ones are there
    return told if told and implied in told.words else best


def _first_state(said: Sequence[str]) -> list[str]:
    """Return the words without the second state of "fresh or frozen"."""
    pairs = list(zip(("", *said), said, strict=False))
    second = {word for before, word in pairs if before == "or" and kind_of(word) == "state"}
    undone = {word for word in said if word in _THAWED and "fresh" in said}  # "fresh or frozen, thawed"
    return [word for word in said if word not in second | undone]


def _kept(said: Sequence[str], names: KnownNames) -> list[str]:
    """Return the words without the small ones, and without numbers that no name holds."""
    return [word for word in said if word not in SMALL_WORDS and (not word.isdigit() or word in names.by_word)]


def _best(asked: _Asked, names: KnownNames) -> Name | None:
    """Return the name that covers most of the words before the comma, then most of all."""
    before = set(asked.name)
    guarded = said_less(asked.name) | said_less(asked.after)

    def cover(found: Name) -> tuple[int, bool, bool, int, int, bool, bool, int]:
        own = found.words & before
        foodlike = sum(kind_of(word) == "food" for word in own)
        same_thing = found.head == asked.head or kind_of(found.head) not in ("food", "other")
        listed = names.kind(found) in (LISTED, USUAL)
        in_order = names.in_order(found, asked.name)
        return foodlike, asked.head in own, same_thing, len(own), len(found.words), in_order, listed, -found.order

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


def _is_nut(found: Name | None) -> bool:
    return found is not None and found.food.group == "nut"


def _only_line_words(found: Name, before: set[str]) -> bool:
    """Whether a name shares with the words before the comma nothing that names a food, while other words there do."""
    shared = found.words & before
    return all(kind_of(word) != "food" for word in shared) and any(kind_of(word) == "food" for word in before - shared)


def _head(name: Iterable[str]) -> str:
    """Return the last word that may name a food: the thing itself, in "vegetable broth" and "tuna in oil"."""
    head = ""
    for word in name:
        if word in _LYING and head:
            break
        if word not in SMALL_WORDS and not word.isdigit() and kind_of(word) in ("food", "other"):
            head = word
    return head


def _assumed(found: Name, food: Food, names: KnownNames) -> tuple[str, ...]:
    """Return what was assumed about the name: that another food stands in, or the usual one is meant."""
    kind = names.kind(found)
    if kind == STAND_IN:
        unlike_in = differs_in().get(found.text, "")
        note = f'no "{found.text}" in the table, {found.food.name.lower()} stands in for it (common practice)'
        return (f"{note}: {unlike_in}" if unlike_in else note,)
    if kind == USUAL:
        return (f'"{found.text}" read as {food.name.lower()}, which is usually meant (common practice)',)
    return ()


def _unsure(asked: _Asked, left: Sequence[str], names: KnownNames, notes: tuple[str, ...], table: Foods) -> Choice:
    """Return the question which food is meant; or the first of several that are alike in the numbers that matter."""
    if not left:
        several = _of_that_name(asked, names)
        if len(several) > 1 and not any(unlike(several[0].food, other.food) for other in several[1:]):
            food, more, problem = in_state(several[0], asked.name, asked.after, table, "", True)
            note = f"read as {food.name.lower()}; {several[1].food.name.lower()} is alike in the numbers that matter"
            spare = frozenset(word for word in asked.all_words if word not in several[0].words)
            return Choice(food, (*notes, note, *more), problem, spare=spare)
    problem, choices = which_food(asked.name, asked.after, asked.head, table, left)
    return Choice(None, notes, problem, choices)


def _of_that_name(asked: _Asked, names: KnownNames) -> list[Name]:
    """Return the raw foods of which each has a name that holds all words asked for, the same head among them."""
    telling = {word for word in asked.name if kind_of(word) in ("food", "other", "measure", "deciding")}
    if not telling or states_said(asked.name, asked.after):
        return []
    holding = set.intersection(*(set(names.by_word.get(word, ())) for word in telling))
    found: dict[str, Name] = {}
    for place in sorted(holding):
        name = names.names[place]
        if names.kind(name) == LISTED and name.head == asked.head and name.food.state in ("raw", "ready", "dried"):
            found.setdefault(name.food.key, name)
    return list(found.values())


def _lighter(best: Name, asked: _Asked, names: KnownNames) -> tuple[Name, tuple[str, ...], str]:
    """Return the low-sodium, reduced-fat or unsweetened form where one is asked for, with notes, or the problem."""
    percent = next((word for word in asked.all_words if word.endswith("%") and not names.belongs(word, best)), None)
    if percent and percent != "100%" and best.food.group in ("dairy", "meat", "poultry", "beverage", "nut", "baking"):
        if other := _of_percent(percent, best, names):
            return other, (), ""
        if _holds_percent(best.food, percent):
            return best, (f'"{percent}" read as {best.food.name.lower()}',), ""
        return best, (), f'no {percent} form of "{best.food.name}" in the table; read as that one'
    said = lighter(asked.name) or lighter(asked.after)
    if said is None:
        return best, (), ""
    kind, phrase = said
    if set(phrase.split()) & best.words or (best.food.state == "cooked" and not matters(kind, best.food)):
        return best, (), ""
    plain = tuple(word for word in asked.name if word not in phrase.split())
    own = [{word for word in said if kind_of(word) in ("food", "deciding")} for said in names.said_of(best)]
    for form in kind.forms_for(phrase):
        other = _best(_Asked((*form.split(), *plain), asked.after, asked.head), names)
        if other and kind.free and kind.free.search(phrase) and _is_sweet_drink(kind, other):
            continue
        if (
            other
            and any(said <= {*other.words, *(names.lies_in(best) & {*words(other.food.name)})} for said in own)
            and set(form.split()) <= other.words
        ):
            return other, (f'"{phrase}" read as "{form}"',) if form != phrase else (), ""
    return best, (), lighter_form(kind, phrase, best.food)


def _is_sweet_drink(kind: Lighter, found: Name) -> bool:
    """Whether a drink has sugars of its own: a cranberry juice that is unsweetened is not one without sugar."""
    return kind.nutrient == "sugars" and found.food.group == "beverage" and matters(kind, found.food)


def _of_percent(percent: str, best: Name, names: KnownNames) -> Name | None:
    """Return the name of the same meat with that percentage: ground sirloin of 95 % is ground beef of 95 %."""
    same = {"lean", percent, *words(best.food.name)}
    own = (
        {word for word in best.words if kind_of(word) in ("food", "deciding")} if best.food.group == "dairy" else set()
    )
    near = (names.names[place] for place in names.by_word.get(percent, ()))
    return next((found for found in near if own <= found.words <= same and found.food.state == best.food.state), None)


def _holds_percent(food: Food, percent: str) -> bool:
    """Whether a milk food holds about as much fat as is said: low-fat yogurt is the one of 1 and of 2 %."""
    held = float(food.per_100g[nutrient_index("fat")])
    return food.group == "dairy" and abs(held - float(percent.rstrip("%"))) <= _SAME_FAT
