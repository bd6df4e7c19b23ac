"""Whether a weight is that before or after cooking: a pound of pasta, "cooked", is hardly weighed in the colander."""

from kit.food.composition import Food
from kit.food.vocabulary import words
from kit.lines.known_names import kind_of
from kit.lines.parsed_line import ParsedLine

_MEATS = ("meat", "poultry")
_OF_ANIMALS = (*_MEATS, "fish", "shellfish")
_DONE_TO_MEAT = frozenset("grilled roasted baked boiled poached steamed fried broiled braised stewed barbecued".split())
_GROUPS = ("pasta", "grain", "pulse", *_MEATS)  # that weigh much more, or less, when they are cooked


def is_weighed_before_or_after(phrase: ParsedLine, food: Food) -> bool:
    """Whether a weight is followed by "cooked", which may be said of what was weighed, or of what is done with it.

    Parameters
    ----------
    phrase : ParsedLine
        The line, taken apart.
    food : Food
        The food it was read as.
    """
    unit = phrase.written.unit
    in_grams = unit is not None and unit.short in ("g", "kg")
    own = {*words(food.name)}
    if (in_grams and phrase.said <= own) or any(kind_of(word) == "state" for word in phrase.name):
        return False  # our own words, and "cooked chicken, grilled", leave nothing open
    if food.group in _OF_ANIMALS and food.state in ("raw", "cooked") and not _DONE_TO_MEAT.isdisjoint(phrase.after):
        return phrase.written.weight is not None and not own <= phrase.said
    if food.state != "cooked" or food.group not in _GROUPS or "cooked" not in phrase.after:
        return False
    following = phrase.after[phrase.after.index("cooked") + 1 :][:1]
    if food.group in _MEATS and following != ("and",):  # "chicken, cooked, diced" is a kind of chicken
        return False
    return phrase.written.package is not None or phrase.written.weight is not None
