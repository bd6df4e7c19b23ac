"""Whether a line of a page begins with an amount, or is nothing but one."""

import re

from kit.food.amounts import read_count
from kit.food.measures import unit
from kit.food.vocabulary import line_words, singular

_COMPOUND = re.compile(
    r"\d+-(?!(?:ounce|oz|pound|lb|gram|g|ml|cup|inch|quart|pint|liter|litre|\d))[a-z]", re.IGNORECASE
)  # "3-bean"
_ABOUT = re.compile(r"^(?:about|approximately|approx\.?|~|roughly|scant|heaping|generous)\s+", re.IGNORECASE)


def starts_with_amount(text: str) -> bool:
    """Whether a line begins with an amount; "3-bean" and "9-inch" begin with none."""
    if _COMPOUND.match(text):
        return False
    count, rest = read_count(_ABOUT.sub("", text))
    return count is not None and bool(rest.strip())


def unit_words(text: str) -> bool:
    """Whether a line is only a unit, a measure or a size: "cups", "large", "fl oz"."""
    parts = text.lower().strip(" .()").split()
    if not 1 <= len(parts) <= 3:
        return False
    if unit(" ".join(parts)):
        return True
    kinds = {"measure", "size", "container"}
    return all(
        unit(word) or ((known := line_words().get(singular(word.strip(".")))) and known.kind in kinds) for word in parts
    )


def is_cell(text: str) -> bool:
    """Whether a line is an amount, and perhaps its measure, without a food: "1 1/2", "2 cups", "1 (15 oz) can"."""
    count, rest = read_count(re.sub(r"\([^()]*\)", " ", text).strip())
    return count is not None and (not rest.strip(" .()") or unit_words(rest))
