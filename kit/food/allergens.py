"""The allergens that rules name, and the words that packages and people use for them."""

import re
from collections.abc import Mapping
from functools import cache
from types import MappingProxyType

from kit import files
from kit.errors import UnknownNameError
from kit.food.cells import read_rows
from kit.food.vocabulary import words

# What people mean by a word that stands for several; those who say "nut-free" mean peanuts too (common practice).
SEVERAL: Mapping[str, tuple[str, ...]] = MappingProxyType(
    {
        "nut": ("tree_nut", "pine_nut", "peanut"),
        "tree nut": ("tree_nut", "pine_nut"),
        "shellfish": ("crustacean", "mollusc"),
    }
)


@cache
def allergen_names() -> Mapping[str, str]:
    """Return every allergen's name by its id."""
    return {row["allergen"]: row["name"] for row in read_rows(files.bundled("data/allergens.csv"))}


@cache
def _words() -> Mapping[str, tuple[str, ...]]:
    found: dict[str, tuple[str, ...]] = {}
    for row in read_rows(files.bundled("data/allergens.csv")):
        for name in (row["allergen"], row["name"], *row["other_names"].split("; ")):
            if name:
                found.setdefault(_plain(name), (row["allergen"],))
    return {**found, **SEVERAL}


def _plain(name: str) -> str:
    return " ".join(words(re.sub(r"\([^)]*\)", "", name.replace("_", " "))))


def allergens_called(name: str) -> tuple[str, ...]:
    """Return the ids of the allergens that a word stands for.

    Raises
    ------
    UnknownNameError
        If there is none.

    Examples
    --------
    >>> allergens_called("dairy"), allergens_called("gluten"), allergens_called("shellfish")
    (('milk',), ('gluten',), ('crustacean', 'mollusc'))
    >>> allergens_called("nuts")
    ('tree_nut', 'pine_nut', 'peanut')
    """
    found = _words().get(_plain(name))
    if found is None:
        raise UnknownNameError("allergen", name.strip(), [*allergen_names(), *_words()])
    return found


def read_allergens(text: str) -> tuple[str, ...]:
    """Return the allergens of a package's "contains" line; one that is not known, as it is written.

    Examples
    --------
    >>> read_allergens("Wheat, Milk and Soybeans (soy lecithin)")
    ('wheat', 'milk', 'soy')
    """
    found: list[str] = []
    for part in re.split(r",|;|\band\b|&", re.sub(r"\([^)]*\)", "", text)):
        plain = _plain(part)
        if plain:
            found += _words().get(plain, (plain.replace(" ", "_"),))
    return tuple(dict.fromkeys(found))
