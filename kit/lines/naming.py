"""Which food, or foods, a phrase names: by its words, by the noun that two share, by an example, by the release."""

from collections.abc import Iterator, Sequence
from dataclasses import replace

from kit.food.amounts import read_count
from kit.food.composition import Foods
from kit.food.finding import food as food_named
from kit.food.finding import imported
from kit.food.vocabulary import SMALL_WORDS, line_words, words
from kit.lines.asking import which_food, which_of_two
from kit.lines.choosing import Choice, choose
from kit.lines.known_names import is_name, kind_of, known_names
from kit.lines.lighter import lighter
from kit.lines.parsed_line import ParsedLine
from kit.lines.quantities import quantity

_SURE_ENOUGH = 90.0  # the score from which a food of an imported release is taken without asking
_MOST_CHOICES = 6
# Classes of foods, of which brackets or a comma may name one: "nuts (walnuts)", "fish, cod".
_MIXTURES = frozenset(("mixed", "assorted", "mix"))
_LESS = frozenset(("fat", "sodium", "salt", "sugar", "free"))
_MADE_OF_FOODS = frozenset("milk butter oil flour juice broth stock sauce bread chip noodle pasta sugar".split())
_NO_KIND_OF_ANOTHER = ("yogurt", "kefir", "buttermilk")  # "yogurt or cottage cheese" is no yogurt cheese
_HOW_RICH = frozenset("whole milk full low reduced light fat free nonfat skim sodium salt unsalted unsweetened".split())
_CLASSES = frozenset(
    "nut cheese fish meat bean berry green fruit herb oil seed squash mushroom lettuce vegetable cracker cereal".split()
)


def foods_named(phrase: ParsedLine, key: str | None, table: Foods) -> list[Choice]:
    """Return the choice of the food that a phrase names; several where it names foods side by side with no amount.

    Parameters
    ----------
    phrase : ParsedLine
        The phrase.
    key : str, optional
        The key of the food, where that is known already.
    table : Foods
        The foods to choose from.
    """
    if key:
        choice = _chosen(phrase.name, phrase, table)
        chosen = table[key] if key in table else food_named(key)
        return [Choice(chosen, choice.notes, spare=phrase.said)]
    if phrase.joined:
        return _side_by_side(phrase, table)
    one_name = not phrase.others or _or_is_in_name(phrase, table)
    if not one_name:
        return [_imported(phrase, _first_offered(phrase, table))]
    name = phrase.whole if phrase.others else phrase.name
    choice = _chosen(name, phrase, table)
    of_a_class = _is_class(phrase) and (phrase.examples or phrase.name == ("meat",))
    if choice.food is None or of_a_class:
        choice = _example(phrase, table) or choice
    elif listed := _kinds_listed(phrase, choice):
        problem, choices = which_food(listed, (), listed[-1], table)
        choice = Choice(None, choice.notes, problem, choices)
    return [_imported(phrase, choice)]


def swaps_of(phrase: ParsedLine, table: Foods) -> tuple[str, ...]:
    """Return the keys of the foods that a phrase offers by "or"."""
    if _or_is_in_name(phrase, table):
        return ()
    found = []
    for other in phrase.others:
        said = words(other)
        choice = choose(said, (), table)
        if choice.food is None:
            shared = (choose((*said, *tail), (), table) for tail in _tails(phrase.others[-1], said))
            choice = next((candidate for candidate in shared if candidate.food is not None), choice)
        if choice.food is not None:
            found.append(choice.food.key)
    return tuple(dict.fromkeys(found))


def _or_is_in_name(phrase: ParsedLine, table: Foods) -> bool:
    """Whether "or" belongs to a name: "polenta or yellow corn grits" is one food."""
    if is_name(phrase.whole, table):
        return True
    telling = set(_telling(phrase.whole))
    near = known_names(table).within((*phrase.whole, *phrase.after))
    return any(" or " in found.text and telling <= found.words for found in near)


def _chosen(name: Sequence[str], phrase: ParsedLine, table: Foods) -> Choice:
    written = phrase.written
    by_weight = written.unit is None or written.unit.kind == "mass"
    measure = written.measure or (written.unit.name if written.unit and written.unit.kind == "volume" else "")
    return choose(name, phrase.after, table, container=measure, by_weight=by_weight)


def _side_by_side(phrase: ParsedLine, table: Foods) -> list[Choice]:
    """Return the choices for "olive oil and lemon juice": two foods with no amount, or how much of each is asked.

    They are one food only where its name says "and", or where one of the words is no food: milk and butter are no
    buttermilk, but "sweet and sour sauce" is one.
    """
    whole = _chosen(phrase.name, phrase, table)
    each = [_chosen(words(part), phrase, table) for part in phrase.joined]
    if _and_is_in_name(phrase, table) or not all(choice.food or choice.choices for choice in each):
        return [_imported(phrase, whole)]
    if not phrase.counted and all(choice.food for choice in each):
        return each
    return [Choice(None, (), which_of_two(phrase.joined), ())]


def _and_is_in_name(phrase: ParsedLine, table: Foods) -> bool:
    """Whether "and" belongs to a name: "peas and carrots" is one food."""
    telling = set(_telling(phrase.name))
    near = known_names(table).within((*phrase.name, *phrase.after))
    return any((" and " in found.text or " & " in found.text) and telling <= found.words for found in near)


def _first_offered(phrase: ParsedLine, table: Foods) -> Choice:
    """Read "vegetable or chicken broth" as vegetable broth: the last words belong to both.

    Where the words make no food of the table together but are said together of one ("almond or oat milk"), it is asked.
    """
    alone = _chosen(phrase.name, phrase, table)
    doubts = None
    either = "cooked" in phrase.after and all(kind_of(word) == "state" for word in phrase.name)
    for tail in _tails(phrase.others[-1], phrase.name):
        said = tail if either else (*phrase.name, *tail)  # "fresh or frozen shrimp, cooked" are cooked ones
        shared = _chosen(said, phrase, table)
        if shared.food is not None and not shared.spare.intersection(_telling(said)):
            return shared
        if doubts is None and (shared.problem.startswith('no "') or _said_together(phrase.name, tail, table)):
            doubts = shared if shared.food is None else None
    return doubts or alone


def _tails(last: str, name: Sequence[str]) -> Iterator[tuple[str, ...]]:
    """Yield the words that the last of several foods may share with the first, the longest first."""
    count, rest = read_count(last)
    if count is not None and _telling(name):  # "or 1 tsp dried" is another amount of the same
        return
    if name and name[-1] in _NO_KIND_OF_ANOTHER:
        return
    last = quantity(count, rest, (), "us")[1] if count else last  # "minced fresh or 1/2 tsp dried dill"
    said = tuple(word for word in words(last) if word not in SMALL_WORDS and not word.isdigit())
    again = set(name) <= set(said)  # "sugar or sugar substitute"
    if len(said) > 1 and not again and not set(_telling(name)) - _LESS & set(said):
        yield from (said[start:] for start in range(1, len(said)))


def _telling(said: Sequence[str]) -> list[str]:
    return [word for word in said if kind_of(word) in ("food", "other", "deciding") and word not in SMALL_WORDS]


def _said_together(name: Sequence[str], tail: Sequence[str], table: Foods) -> bool:
    """Whether some name of a food holds the first food's words and is a kind of what the tail says."""
    asked = {*_telling(name), *tail[-1:]}
    if not _telling(name) or not tail:
        return False
    names = known_names(table)
    places = set.intersection(*(set(names.by_word.get(word, ())) for word in asked))
    return any(names.names[place].head == tail[-1] for place in places)


def _is_class(phrase: ParsedLine) -> bool:
    """Whether a phrase names a class of foods only: "berries", "fish fillets"."""
    return not _CLASSES.isdisjoint((*phrase.name[-1:], *_telling(phrase.name)[-1:]))


def _example(phrase: ParsedLine, table: Foods) -> Choice | None:
    """Return the food that is named as an example: cod, for "firm white fish, such as cod"."""
    tells = any(kind_of(word) == "food" and word not in SMALL_WORDS | _HOW_RICH for word in phrase.after)
    said = tuple(word for word in phrase.name if word in _HOW_RICH or word.endswith("%"))  # not lost to an example
    narrower = (" ".join(phrase.after),) if tells and _is_class(phrase) else ()
    for example in (*phrase.examples, *narrower):
        head = phrase.name[-1:]
        own = tuple(word for word in said if word not in words(example))
        choice = _chosen((*own, *words(example), *head), phrase, table)
        if choice.food is None and not own and not _MADE_OF_FOODS.intersection(head):  # almonds are no milk
            choice = _chosen(words(example), phrase, table)
        if choice.food is not None:
            return replace(choice, notes=(*choice.notes, f'read as "{example}", which the line names as an example'))
    return None


def _kinds_listed(phrase: ParsedLine, choice: Choice) -> tuple[str, ...]:
    """Return the foods that brackets list of a mixture, where it was read as another: "mixed greens (kale, chard)"."""
    if _MIXTURES.isdisjoint(phrase.name) or phrase.name[-1] != "green" or choice.food is None:
        return ()
    own = {word for text in (choice.food.name, *choice.food.other_names) for word in words(text)}
    less = lighter(phrase.after)
    small = SMALL_WORDS.union(less[1].split() if less else ())
    said = tuple(word for word in phrase.after if kind_of(word) == "food" and word not in small)
    return said if len(said) > 1 and own.isdisjoint(said) else ()


def _imported(phrase: ParsedLine, choice: Choice) -> Choice:
    """Take a food of an imported release where the kit has none and the release has one that clearly fits."""
    if choice.food is not None:
        return choice
    asked = [
        word
        for word in phrase.name
        if word not in SMALL_WORDS and kind_of(word) in ("food", "other", "state", "deciding")
    ]
    matches = imported(" ".join(asked), 3) if asked else []
    if matches and matches[0].score >= _SURE_ENOUGH:
        return Choice(food_named(matches[0].food), (*choice.notes, "from the imported release"), spare=choice.spare)
    return replace(choice, choices=(*choice.choices, *matches)[:_MOST_CHOICES])


def vague_measure(phrase: ParsedLine, choice: Choice) -> str:
    """Return the word of a line that counts in something of no known size ("1 bowl of grapes"), or nothing."""
    if not phrase.counted or phrase.written.unit or phrase.written.measure or not phrase.name:
        return ""
    first = phrase.name[0]
    known = line_words().get(first)
    if known and known.kind == "vague" and first in choice.spare:
        return first
    # "1 snack box raisins": a container of no size, behind words that only say which one
    return next((word for word in phrase.name[:3] if kind_of(word) == "container" and word in choice.spare), "")
