"""The two sides of a swap: which words are of what goes, which of what comes, and how much of it goes."""

from kit.errors import ChangeError, NotUnderstoodError
from kit.food.amounts import read_count
from kit.meal.change_asked import Asked, named, one_phrase
from kit.meal.change_shapes import Clause
from kit.meal.change_words import part_in
from kit.meal.ingredient_names import ingredients_called


def direction(asked: Asked) -> tuple[str, str]:
    """Return the words of what goes and of what comes; what the recipe holds tells where the words leave it open."""
    clause, recipe = asked.clause, asked.recipe
    if clause.how == "unmarked":
        return _unmarked(asked)
    if not clause.how:
        return clause.old, clause.new
    if clause.how == "not":
        if not ingredients_called(_thing(clause.old), recipe).places and not _only_amount(clause.old):
            raise NotUnderstoodError(f'"{clause.old}" is not in the recipe')
        return clause.old, clause.new
    there = [bool(ingredients_called(_thing(side), recipe).places) for side in (clause.old, clause.new)]
    if clause.how == "weak" and "," in f"{clause.old}{clause.new}":  # "salt down to 1/2 tsp, lemon up to 2 tbsp"
        raise NotUnderstoodError(f'"{clause.old} {clause.new}" may be two changes')
    if clause.how in ("weak", "use for") and (there[0] == there[1] or _is_range(clause)):
        raise NotUnderstoodError(f'"{clause.old} {clause.new}" says no change')
    if there == [False, True] and clause.how in ("swap with", "swap by", "substitute by"):
        raise ChangeError(
            f'no "{clause.old}" in the recipe; write "{clause.old} instead of the {clause.new}" if it comes'
        )
    if (there == [False, True] and not _only_amount(clause.old)) or (all(there) and clause.how == "substitute for"):
        return clause.new, clause.old
    if all(there) and clause.how == "substitute with":
        raise ChangeError(f'both are in the recipe; write "{clause.new} instead of the {clause.old}"')
    return clause.old, clause.new


def _is_range(clause: Clause) -> bool:
    """Whether the two sides are the ends of a range: "8 to 10 oz beef", not "from 4 to 2 cups of kale"."""
    low, high = read_count(clause.old), read_count(clause.new)[0]
    return bool(low[0] and not low[1].strip() and high and low[0].value < high.value)


def _only_amount(side: str) -> bool:
    """Whether a side is an amount of nothing that is named: "from 4 to 2 cups of kale"."""
    phrase = one_phrase(side)
    return phrase.counted and not phrase.name


def _thing(side: str) -> str:
    """Return the words of a side that name its food: "1 tbsp of the oil" is of oil."""
    phrase = one_phrase(side)
    return named(phrase, side) if phrase.counted and phrase.name else share_of(side)[1]


def _unmarked(asked: Asked) -> tuple[str, str]:
    said = asked.clause.old.split()
    for split in range(len(said) - 1, 0, -1):
        old, new = " ".join(said[:split]), " ".join(said[split:])
        if ingredients_called(old, asked.recipe).places:
            return old, new
    raise ChangeError(f'"{asked.clause.old}" does not say what goes and what comes')


def share_of(text: str) -> tuple[float | None, str]:
    """Return the part of an ingredient that words ask for, and the words for it: "half of the beef"."""
    said = text.split()
    for many in (3, 2, 1):
        part = part_in(" ".join(said[:many])) if len(said) > many else None
        rest = " ".join(said[many:]).removeprefix("of ")
        if (
            part is not None
            and said[many - 1].endswith("%")
            and rest == " ".join(said[many:])
            and not rest.startswith("the ")
        ):
            continue  # "2% milk" is a kind of milk
        if part is not None and 0 < part < 1 and not one_phrase(text).written.unit:
            return part, rest.removeprefix("the ")
    return None, text
