"""Foods that could stand in the place of one that was read: other forms of the same thing, and things of its name."""

from collections.abc import Mapping
from functools import cache, lru_cache

from kit.food.composition import Food, Foods
from kit.food.finding import Name
from kit.food.vocabulary import SMALL_WORDS, words

MOST = 12


@lru_cache(maxsize=512)
def alternatives(food: Food, table: Foods) -> tuple[Food, ...]:
    """Return the foods that a line read as one food could have meant instead, the nearest first.

    They are the food's other forms (dry, cooked, canned), and foods that are the same kind of thing by their names:
    other beans for beans, but no garlic bread for garlic.

    Parameters
    ----------
    food : Food
        As it was read.
    table : Foods
        The foods to choose from.

    Examples
    --------
    >>> from kit.food.composition import bundled_foods
    >>> table = bundled_foods()
    >>> [other.name for other in alternatives(table["parsley-fresh"], table)]
    ['Parsley, dried']
    """
    head, own = _head(food), _words(food.name)
    near: Mapping[str, tuple[bool, int, int, int]] = {
        other.key: (
            not (bool(food.base) and other.base == food.base),
            -len(_words(other.name) & own),
            len(_words(other.name) - own),
            place,
        )
        for place, other in enumerate(table.values())
        if other.key != food.key and (head == _head(other) or (food.base and other.base == food.base))
    }
    return tuple(table[key] for key in sorted(near, key=near.__getitem__)[:MOST])


@cache
def _head(food: Food) -> str:
    """Return the word that says what a food is: "beans", of "Red kidney beans, canned"."""
    return Name(food, food.name.partition(" with ")[0], frozenset(), 0).head


@cache
def _words(name: str) -> frozenset[str]:
    return frozenset(words(name)) - SMALL_WORDS
