"""Doneness by its look: "a little pink is fine", "runny eggs are good"; a thermometer tells it, and not the eye."""

from dataclasses import dataclass

from kit.food.composition import Food, foods
from kit.rules.naming import is_plural, short_name
from kit.rules.verdicts import CANNOT_TELL
from kit.speech.claim import THE_DISH, Claim, Finding
from kit.speech.safety.doneness import DONE_THINGS, doneness
from kit.speech.safety.keeping_words import OF_ANIMALS, foods_named, is_of_an_animal, of_an_animal
from kit.speech.values import alone, present
from kit.speech.words.foods_said import FoodWord
from kit.speech.words.sentence import Sentence, food_at
from kit.talk.dish import Dish
from kit.texts import number

FAMILY = "keeping and safety"
_LOOKS = frozenset(
    "pink pinkish rosy runny wet gooey jammy oozing oozy undercooked underdone jiggly bloody rare translucent".split()
)
_COLORS = frozenset("white brown grey gray golden clear opaque".split())
_TURNS = frozenset("turns turn goes go looks look gets run runs is are".split())
_KEPT = frozenset("fridge refrigerator freezer days day".split())
_RAW = "raw"
_SEEN = _LOOKS | _COLORS | {"soft", _RAW}
_RAW_MEANT = frozenset("eat eaten taste tasting lick serve served drink".split())
_INSIDE = frozenset("middle center centre inside yolk yolks juices".split())
_ALLOWED = frozenset(
    "fine okay ok safe good great best better perfect lovely delicious can may leave keep like love prefer want little "
    "bit still serve enjoy alright worry problem matter should eat eaten".split()
)
_RULED_OUT = frozenset("no not never longer without until avoid gone nothing cannot".split())
_NO_WORRY = frozenset("worry problem matter mind".split())  # "not a problem" allows


@dataclass(frozen=True, slots=True)
class LooksClaim(Claim):
    """Meat, fish or egg is said to be done, or good to eat, by how it looks."""

    foods: tuple[FoodWord, ...] = ()


def read(sentence: Sentence) -> list[Claim]:
    """Return the looks by which a sentence lets meat, fish or egg be eaten."""
    told = sentence.words
    if not told & (_LOOKS | {"soft", "done", _RAW}):
        return []
    looks = [at for at in range(len(sentence)) if at not in sentence.used and _looks(sentence, at, told)]
    until = bool(told & {"done", "safe", "ready"}) and bool(
        told & {"when", "once", "until", "till"}
    )  # "done when it is no longer pink"
    ruled_out = any(_is_ruled_out(sentence, at) for at in looks) and not told & _NO_WORRY and not until
    if not looks or ruled_out or not told & (_ALLOWED | {"done"}):
        return []
    named = foods_named(sentence)
    hot = any(120 <= token.amount.value <= 212 for token in sentence.tokens if token.quantity is not None)
    if not (named or hot or told & (_INSIDE | DONE_THINGS.keys())):
        return []
    if named and not _names_animal(sentence):
        return []  # "eat the carrots raw"
    sentence.used.update(looks)
    return [LooksClaim(tuple(looks), THE_DISH, False, named)]


def _is_ruled_out(sentence: Sentence, at: int) -> bool:
    """Return whether words about a look say that it will not do: "no longer pink", "pink is not okay"."""
    near = range(max(0, at - 8), min(len(sentence), at + 6))
    return any(not _RULED_OUT.isdisjoint(sentence.text_at(place).split()) for place in near)


def _looks(sentence: Sentence, at: int, told: frozenset[str]) -> bool:
    pieces = set(sentence.text_at(at).split())
    if pieces.isdisjoint(_SEEN):
        return False
    behind = food_at(sentence, at) or food_at(sentence, at + 1)
    if behind is not None and not of_an_animal(behind):
        return False  # "pink salt"
    if pieces & _LOOKS:
        return True
    if "soft" in pieces and told & {"boiled", "poached"} and told & {"egg", "eggs", "yolk", "yolks"}:
        return True
    if pieces & _COLORS and "done" in told and sentence.text_at(at - 1) in _TURNS:
        return _names_animal(sentence) or bool(told & {"juices"})
    if _RAW in pieces and told & {"fine", "safe", "okay", "ok"} and not told & _KEPT:
        return True
    return _RAW in pieces and bool(told & _RAW_MEANT)


def _names_animal(sentence: Sentence) -> bool:
    """Return whether a sentence names meat, fish or egg; a food that no table has may be one."""
    return any(
        is_of_an_animal(key) or key not in foods()
        for word in foods_named(sentence)
        for key in (word.inside or word.outside)
    )


def judge(claim: LooksClaim, dish: Dish) -> Finding:
    """Ask for the temperature: the look of meat, fish or egg tells nothing that is published as safe.

    References
    ----------
    USDA FSIS, "Color of Meat and Poultry", and its safe minimum internal temperatures.
    """
    named = [food for word in claim.foods for food in (present(dish, word) or alone(dish, word))]
    known = [food for food in named if food.group in OF_ANIMALS and doneness(food)]
    return Finding(CANNOT_TELL, _thermometer(known))


def _thermometer(known: list[Food]) -> str:
    if not known:
        return "a thermometer tells whether it is done, and not its look (USDA FSIS); say how hot it is inside"
    food = max(known, key=doneness)
    name = short_name(food)
    verb = "are" if is_plural(name) else "is"
    told = f"{name} {verb} done at {number(doneness(food))} °F inside (USDA FSIS)"
    return f"a thermometer tells whether it is done, and not its look: {told}"
