"""Allergens said not to be there: "egg and nuts are all missing", "neither the oats nor the sugar contains milk"."""

from kit.speech.about.parts import DETERMINERS, is_dish
from kit.speech.allergens.allergens_judged import AllergenClaim
from kit.speech.allergens.allergens_together import changes
from kit.speech.claim import FOOD, About
from kit.speech.words.sentence import Sentence, food_at

UP_TO_NO = frozenset(  # what may stand between "no" or "free of" and an allergen
    ", and or nor any of from added the a single drop traces trace hint contain contains have has use both either made"
    " containing need find got kind had put one single ingredient ingredients".split()
) | {"a trace", "a drop", "a bit", "a hint", "a speck", "any kind"}


def stands_between(sentence: Sentence, at: int) -> bool:
    """Return whether a word may stand between "no" or "free of" and an allergen: "nothing in it is made with"."""
    made = sentence.text_at(at) == "with" and sentence.text_at(at - 1) == "made"
    return made or sentence.text_at(at) in UP_TO_NO or sentence.is_a(at, "allergen")


_HERE = ("it", "here", "this", "there")


def nothing_in_it(sentence: Sentence, at: int) -> int:
    """Return the place of "nothing" where it leads to a place: "nothing in it is made from"; else the place itself."""
    over = at - (sentence.text_at(at) in ("is", "are", "was"))
    over -= sentence.text_at(over) in ("that", "which")
    if sentence.text_at(over) in _HERE and sentence.text_at(over - 1) in ("in", "to"):
        over -= 2
    elif (
        is_dish(sentence, over) and sentence.text_at(over - 1) in ("the", "this") and sentence.text_at(over - 2) == "in"
    ):
        over -= 3
    else:
        return at
    return over if over >= 0 and sentence.text_at(over) in ("nothing", "none") else at


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


_HAVE = frozenset("contain contains has have had bring brings carry carries is are".split())
_ANY = frozenset("any a an the bit of trace drop".split())
_OR = ("or", "nor", "and", ",")


def neither_has(sentence: Sentence) -> list[AllergenClaim]:
    """Return foods that are said to lack allergens together: "neither the cherries nor the sugar contains milk".

    Parameters
    ----------
    sentence : Sentence
        The sentence; the tokens that are read are used up.
    """
    claims: list[AllergenClaim] = []
    for at in sentence.where(("neither",)):
        place, foods = at + 1, []
        while food_at(sentence, place) is not None or sentence.text_at(place) in (*DETERMINERS, *_OR):
            foods += [place] if food_at(sentence, place) is not None else []
            place += 1
        if len(foods) < 2 or sentence.text_at(place) not in _HAVE:
            continue
        place += 1
        named: list[int] = []
        while sentence.is_a(place, "allergen") or sentence.text_at(place) in (*_ANY, *_OR):
            named += [place] if sentence.is_a(place, "allergen") else []
            place += 1
        if not named or sentence.is_a(place, "wording"):
            continue
        sentence.used.update((at, *foods, *named))
        for food in foods:
            word = food_at(sentence, food)
            about = About(FOOD, 1.0, (word,) if word is not None else ())
            names = [(one, sentence.tokens[one].parts["allergen"]) for one in named]
            claims += [AllergenClaim((food, one), about, False, name, free=True) for one, name in names]
    return claims
