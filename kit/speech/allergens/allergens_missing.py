"""Allergens that are said not to be there by what stands behind them: "egg and nuts are all missing"."""

from kit.speech.allergens.allergens_together import changes
from kit.speech.words.sentence import Sentence

UP_TO_NO = frozenset(  # what may stand between "no" or "free of" and an allergen
    ", and or nor any of from added the a single drop traces trace hint contain contains have has use both either made"
    " containing need find got kind had put one single ingredient ingredients".split()
) | {"a trace", "a drop", "a bit", "a hint", "a speck", "any kind"}


LOSES = ("lose", "loses", "losing", "goes", "go")
_NO_PART = ("ingredient", "of", "used", "added", "included", "present", "involved", "needed")


def missing(sentence: Sentence, at: int) -> int | None:
    """Return the place of what says that allergens are not there behind them: "egg and nuts are all missing"."""
    over = at + 1 + (sentence.text_at(at + 1) in ("all", "both"))
    if sentence.text_at(at) in ("play", "plays") and sentence.text_at(at + 1) == "no":
        return at + 1  # "egg plays no part in it"
    is_so = sentence.text_at(at) in ("is", "are")
    if is_so and sentence.text_at(over) in ("missing", "absent", "lacking"):
        return over
    goes = sentence.text_at(at) in ("goes", "go") and sentence.text_at(at + 1) in ("too", "with", "as")
    if goes and changes(sentence, at):
        return at  # "leave out the cheddar and the milk goes with it"
    if is_so and sentence.text_at(over) in ("gone", "out") and changes(sentence, at):
        return over  # "leave out the butter and the milk is gone"
    if is_so and sentence.text_at(at + 1) == "not":  # "egg is not an ingredient", "egg is not used"
        over = at + 2 + (sentence.text_at(at + 2) in ("an", "one", "part"))
        return at + 1 if sentence.text_at(over) in _NO_PART else None
    first = at - 2
    while sentence.text_at(first) in (*UP_TO_NO, "out") or sentence.is_a(first, "allergen"):
        first -= 1
    return at if sentence.text_at(at) == "out" and sentence.text_at(first) == "left" else None
