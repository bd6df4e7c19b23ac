"""Whether a weight is that before or after cooking: a pound of pasta, "cooked", is hardly weighed in the colander."""

from kit.food.composition import Food
from kit.food.vocabulary import words
from kit.lines.known_names import kind_of
from kit.lines.parsed_line import ParsedLine

_MEATS = ("meat", "poultry")
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
    if food.state != "cooked" or food.group not in _GROUPS or "cooked" not in phrase.after:
        return False
    following = phrase.after[phrase.after.index("cooked") + 1 :][:1]
    if food.group in _MEATS and following != ("and",):  # "chicken, cooked, diced" is a kind of chicken
        return False
    unit = phrase.written.unit
    by_weight = phrase.written.package is not None or phrase.written.weight is not None
    in_grams = unit is not None and unit.short in ("g", "kg")
    in_our_words = in_grams and phrase.said <= {*words(food.name)}
    return by_weight and not in_our_words and not any(kind_of(word) == "state" for word in phrase.name)
