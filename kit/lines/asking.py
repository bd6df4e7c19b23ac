"""What has to be asked when words fit no food or several, with choices of the same kind."""

import re
from collections.abc import Sequence
from collections.abc import Set as AbstractSet

from kit.food.composition import Food, Foods
from kit.food.finding import Match, Name, find
from kit.food.vocabulary import words
from kit.lines.accounting import FREE_FROM
from kit.lines.known_names import KnownNames, kind_of, missing_choices
from kit.lines.lighter import every_lighter, matters

Doubt = tuple[str, tuple[Match, ...]]  # what has to be asked, and the choices

NEAR_ENOUGH = 40.0
_OFFERED = 80.0  # how near a food is that is offered by name
SHOWN = 60  # characters of a food's words in a message
MOST_CHOICES = 5
_FREE = re.compile(rf"\b({'|'.join(word.removesuffix('free') for word in FREE_FROM)})free\b")
_NOTHING_OF_ANIMALS = frozenset(("vegan", "dairyfree", "eggfree", "meatfree"))
NO_FOOD = 'no food on this line; write an amount and a food, such as "1 cup lentils, dry"'


def which_food(
    name: Sequence[str], after: Sequence[str], head: str, table: Foods, deciding: Sequence[str] = ()
) -> tuple[str, tuple[Match, ...]]:
    """Return the question which food some words mean, and the foods that are near.

    Parameters
    ----------
    name, after : sequence of str
        Words before the first comma, and behind it.
    head : str
        The word that says what it is: the choices are of its kind where there are any.
    table : Foods
        The foods to choose from.
    deciding : sequence of str
        The words that the nearest food leaves over.
    """
    asked = [word for word in name if kind_of(word) in ("food", "other", "measure", "deciding")] or [*name, *after]
    said = [word for word in deciding if word not in asked]
    text = " ".join(dict.fromkeys((*said, *asked)))[:SHOWN]
    if not text:
        return NO_FOOD, ()
    found = find(_looked_for(text, name, after), 4 * MOST_CHOICES, table)
    left = _not_excluded(found, name, after, table)
    choices = _of_a_kind(left, head, table, strictly=_excludes({*name, *after}))
    if not choices:
        return (
            f'no food "{_shown(text, name)}" in the table; write a plainer name, or add it from its package label',
            (),
        )
    return f'not sure which food "{_shown(text, name)}" is; write {_either(choices)}', choices


def _looked_for(text: str, name: Sequence[str], after: Sequence[str]) -> str:
    """Return the words to find foods by: what there is less of orders them, and finds none."""
    less = {word for _, phrase in every_lighter(name, after) for word in phrase.split()}
    plain = [word for word in text.split() if word not in less]
    return " ".join((*(plain or text.split()), *states_said(name, after)))


def _shown(text: str, name: Sequence[str]) -> str:
    """Return the words of a question as people write them: "no salt added tomato", "gluten-free flour"."""
    missing = [phrase for _, phrase in every_lighter(name, ()) if phrase not in text]
    for phrase in missing:
        rest = [word for word in text.split() if word not in phrase.split()]
        text = " ".join((phrase, *rest))
    return _FREE.sub(r"\1-free", text)[:SHOWN]


def nearest_to(food: Food, name: Sequence[str], after: Sequence[str], head: str, table: Foods) -> tuple[Match, ...]:
    """Return a food and those of its kind that are near some words, where it is not in the form that is asked for.

    Feta comes with other cheeses, and not with a milk that is called as light as the feta that was asked for.

    Parameters
    ----------
    food : Food
        The food that fits, but for its form.
    name, after, head, table
        As of `which_food`.
    """
    kind = food.base.partition("-")[0]
    near = (match for match in which_food(name, after, head, table)[1] if match.food in table)
    others = [match for match in near if match.food != food.key and table[match.food].base.partition("-")[0] == kind]
    return (_offered(food), *others)[:MOST_CHOICES]


def matches(keys: Sequence[str], table: Foods) -> tuple[Match, ...]:
    """Return foods as choices, those that the table has."""
    return tuple(_offered(table[key]) for key in keys if key in table)


def forms_of(food: Food, table: Foods) -> tuple[Match, ...]:
    """Return every form of a food as a choice: dry, cooked, canned."""
    return tuple(_offered(form) for form in table.forms(food.base))


def _offered(food: Food) -> Match:
    return Match(food.key, food.name, _OFFERED)


def which_instead(name: Name, names: KnownNames, table: Foods) -> tuple[str, tuple[Match, ...]]:
    """Return the question what to take for a food that the table is known to lack, and the foods that are near."""
    choices = tuple(_offered(food) for food in missing_choices(name, table))
    return f'no "{name.text}" in the table; add it from its package label, or write {_either(choices)}', choices


def which_of_two(foods: Sequence[str]) -> str:
    """Return the question how much of each of several foods there is."""
    return f"the line names {len(foods)} foods, {' and '.join(foods)}; write a line with an amount for each"


def states_said(name: Sequence[str], after: Sequence[str]) -> list[str]:
    """Return the states that a line says, fresh left out."""
    return [word for word in (*name, *after) if kind_of(word) == "state" and word != "fresh"]


def _not_excluded(matches: Sequence[Match], name: Sequence[str], after: Sequence[str], table: Foods) -> list[Match]:
    """Return the foods that hold nothing of what the words exclude, those with less of what they want less of first.

    No wheat flour is offered for "gluten-free flour".
    """
    said = {*name, *after}
    allergens = {FREE_FROM[word] for word in said if word in FREE_FROM} | {
        "gluten" for word in said if word == "glutenfree"
    }
    vegan = _is_vegan(said)
    less = [kind for kind, _ in every_lighter(name, after)]

    def fits(food: Food) -> bool:
        if allergens.intersection(food.allergens) or (vegan and food.origin == "animal"):
            return False
        return not ("vegetarian" in said and food.vegetarian is False)

    left = [match for match in matches if match.food not in table or fits(table[match.food])]
    return sorted(
        left, key=lambda match: match.food in table and any(matters(kind, table[match.food]) for kind in less)
    )


def _is_vegan(said: AbstractSet[str]) -> bool:
    return not _NOTHING_OF_ANIMALS.isdisjoint(said) or {"plant", "based"} <= said


def _excludes(said: AbstractSet[str]) -> bool:
    """Whether words say what a food must not hold."""
    return not FREE_FROM.keys().isdisjoint(said) or _is_vegan(said)


def _of_a_kind(matches: Sequence[Match], head: str, table: Foods, *, strictly: bool) -> tuple[Match, ...]:
    near = [match for match in matches if match.score >= NEAR_ENOUGH]
    same = [match for match in near if match.food in table and head in _words(table[match.food])] if head else []
    return tuple((same if same or strictly else near)[:MOST_CHOICES])


def _words(food: Food) -> set[str]:
    return {word for text in (food.name, *food.other_names) for word in words(text)}


def _either(choices: Sequence[Match]) -> str:
    return " or ".join(f'"{match.name}"' for match in choices[:4])
