"""Temperatures that food is kept at, held at, reheated to, or done at; those of ovens and pans claim nothing."""

from dataclasses import replace

from kit.speech.about.parts import is_dish
from kit.speech.about.unread import asked
from kit.speech.claim import THE_DISH, Claim
from kit.speech.safety.doneness import DONE_THINGS
from kit.speech.safety.keeping_judged import DegreesClaim
from kit.speech.safety.keeping_warned import denied_behind
from kit.speech.safety.keeping_words import (
    IN_FREEZER,
    IN_FRIDGE,
    clause_words,
    foods_named,
    foods_of_heat,
    of_an_animal,
)
from kit.speech.words.foods_said import FoodWord
from kit.speech.words.sentence import Sentence, food_at
from kit.speech.words.tokens import Quantity

_DONE = frozenset(
    "okay ok fine enough eat ready pull off hits hit inside middle center centre internal thickest safe done "
    "cooked through reaches reach reached reads read thermometer core".split()
)
_CORE = frozenset("middle center centre inside core thickest".split())
_OVEN = frozenset("oven bake bakes preheat roast broil rack tray turn set gas griddle burner degree-oven sheet".split())
_PANS = frozenset("pan skillet griddle grill fryer oil smoker bath water board".split())
_HEATS = frozenset(
    "reheat reheats reheated reheating warm warming leftover leftovers thermometer inside internal middle thickest "
    "heat heating heated through".split()
)
_READS = ("reads", "hits", "reaches", "read", "reach", "hit", "says", "say", "shows", "show", "registers", "register")
_READY = frozenset("cook cooked done safe eat ready pull off".split())
_HEATED = frozenset("heat heating heated warm bring poach poached".split())
_HOLDS = frozenset("hold holding held keep kept stay stays".split())  # "hold it at 140"
_SERVED = frozenset("serve serves served serving buffet table guests hot warm".split())
_AGAIN = frozenset(
    "microwave microwaved reheat reheats reheated reheating rewarm leftovers leftover warm again next".split()
)


def temperature(sentence: Sentence, at: int, said: Quantity) -> Quantity | None:
    """Return a number that is a temperature, with its unit; None for any other.

    Parameters
    ----------
    sentence : Sentence
        Where it stands.
    at : int
        The place of its token.
    said : Quantity
        The number; a bare one is a temperature behind such words as "reheat it to".
    """
    if not said.unit and not said.is_fraction and 100 <= said.value <= 220 and _is_heat(sentence, at, sentence.words):
        return Quantity(said.low, said.high, "degree", said.relation)
    return said if said.unit in ("degree", "celsius") else None


def read_heat(sentence: Sentence, at: int, said: Quantity) -> list[Claim]:
    """Return what a temperature claims: how cold it is kept, how hot it is held, reheated, or done.

    Parameters
    ----------
    sentence : Sentence
        Where it is said.
    at : int
        The place of its token.
    said : Quantity
        Degrees Fahrenheit or Celsius.
    """
    near = clause_words(sentence, at)
    if _of_the_oven(near) and not _until_it_is(sentence, at):
        return []
    celsius = said.unit == "celsius"
    said = Quantity(said.low * 1.8 + 32, said.high * 1.8 + 32, "degree", said.relation) if celsius else said
    if sentence.text_at(at).startswith("up to"):  # "warm it up to 165 degrees" is no ceiling
        said = replace(said, relation="about")
    foods = foods_of_heat(sentence, at)
    what = _what_for(sentence, at, said, foods, celsius)
    if not what:
        return _of_what(sentence, at, said, near)
    sentence.used.add(at)
    behind = denied_behind(sentence, at)
    if behind and "enough" not in near:
        return [asked(sentence, (at,), sentence.clause_of(at))]
    if said.relation in ("under", "well under", "nearly") and _denied(sentence, at):
        said = replace(said, relation="at least")  # "it must not be below 145"
    denied = (behind or _denied(sentence, at)) and said.relation == "about"
    return [_of_heat(sentence, at, said, foods, what, denied)]


def _of_the_oven(near: set[str]) -> bool:
    """Return whether an oven is set to a temperature, rather than food heated to it."""
    turns = "turn" in near and "they" in near  # "until they turn opaque"
    oven = near & (_OVEN - ({"turn"} if turns else set()) - ({"set", "turn"} if near & IN_FRIDGE else set()))
    return bool(oven) and not near & ({"inside", "internal"} | _CORE)


def _until_it_is(sentence: Sentence, at: int) -> bool:
    """Return whether something is cooked until it is so hot: "bake it until the chicken is at 140 degrees"."""
    before = [place for place in sentence.clause_of(at) if place < at]
    if sentence.text_at(at - 1) in _READS and any(map(of_an_animal, foods_named(sentence, sentence.clause_of(at)))):
        return True  # "the chicken has to hit 165 before it goes into the bake"
    done = sentence.text_at(at - 1) in ("at", "to", "by") and sentence.text_at(at - 2) in ("done", "safe", "cooked")
    if done and any(map(of_an_animal, foods_named(sentence, sentence.clause_of(at)))):
        return True  # "ground beef is done at 145, like a roast"
    until = [place for place in before if sentence.text_at(place) in ("until", "till")]
    return bool(until) and any(
        food_at(sentence, place) is not None or sentence.is_a(place, "pronoun") or is_dish(sentence, place)
        for place in range(until[-1], at)
    )


def _what_for(sentence: Sentence, at: int, said: Quantity, foods: tuple[FoodWord, ...], celsius: bool) -> str:
    """Return what a temperature is said for: "freezer", "fridge", "hold", "reheat", "done" or ""."""
    words, near = sentence.words, clause_words(sentence, at)
    if words & IN_FREEZER and said.value < (45 if near & {"freezer", "freeze", "frozen"} else 20):
        return "freezer"
    if near & (IN_FRIDGE - {"cold", "chilled"}) and said.value < (115 if celsius else 100):
        return "fridge"
    if _is_held(sentence, at, said, words):
        return "hold"
    before = {word for text in sentence.texts[:at] for word in text.split()}
    cooked = bool(before & {"cook", "cooks", "cooked"}) and bool(foods) and not before & _AGAIN
    elsewhere = words & _AGAIN and not near & _DONE  # "beef wants 160, and leftovers keep three days"
    # "Cook the cod to 145, and have the leftovers in the fridge."
    if (near & _AGAIN or elsewhere) and "raw" not in near and not cooked:
        return "reheat"
    return "done" if _is_doneness(sentence, at, said, foods, celsius) else ""


def _is_doneness(sentence: Sentence, at: int, said: Quantity, foods: tuple[FoodWord, ...], celsius: bool) -> bool:
    """Return whether a temperature is that at which something is done, rather than that of a pan or of water."""
    words, near = sentence.words, clause_words(sentence, at)
    done, before = bool(words & _DONE), sentence.text_at(at - 1)
    core = near & (_CORE | {"internal"}) and not near & (_OVEN | _PANS) and any(map(of_an_animal, foods))
    too_hot = said.value > 212 and core and (before == "to" or before in _READS)  # "cook the chicken to 330 inside"
    of_it = bool(foods) or bool(near & _CORE)
    if said.value >= 200 and not too_hot and not (celsius and of_it and (done or before in ("to", "is", *_READS))):
        return False
    if not (foods or done or near & DONE_THINGS.keys()):
        return False
    if foods and near & {"heat", "warm", "simmer"} and not any(map(of_an_animal, foods)):
        return False  # "heat the milk until it reaches 110 degrees"
    led = before == "to" or sentence.text_at(at).startswith("up to")
    heated = led and (said.value >= 100 or words & _HEATED) and any(map(of_an_animal, foods))
    cooks = bool(words & {"cook", "cooks", "cooked", "brown"})
    asks = done or cooks or bool(words & {"to", "until", "till"}) or said.relation in ("at least", "over")
    return asks and (done or cooks or "until" in words or bool(heated) or not near.isdisjoint(DONE_THINGS))


def _of_heat(
    sentence: Sentence, at: int, said: Quantity, foods: tuple[FoodWord, ...], what: str, denied: bool
) -> DegreesClaim:
    """Return the claim of a temperature: of which foods, or of the dish itself."""
    words, clause = sentence.words, sentence.clause_of(at)
    thing = next((sentence.text_at(place) for place in clause if sentence.text_at(place) in DONE_THINGS), "")
    of_dish = any(
        is_dish(sentence, place) or sentence.is_a(place, "pronoun") or sentence.text_at(place) in _CORE
        for place in clause
    )
    own = thing if what == "done" and not foods else ""
    needed = bool(words & {"has", "must", "needs", "have"}) and bool(words & {"safe", "unsafe", "danger", "dangerous"})
    return DegreesClaim((at,), THE_DISH, denied, what, said, foods, own, of_dish, needed)


def _is_heat(sentence: Sentence, at: int, words: frozenset[str]) -> bool:
    """Return whether a bare number is a temperature: "bring it back up to 165 when you reheat it"."""
    told = words & _HEATS or sentence.text_at(at - 1) in _READS
    before = sentence.text_at(at - 1) in ("to", "at", *_READS) or (
        sentence.text_at(at - 1) == "is" and sentence.text_at(at - 3) in ("until", "till")
    )
    core = sentence.text_at(at + 1) == "in" and sentence.text_at(at + 3) in _CORE  # "165 in the middle"
    core = core or "through" in (sentence.text_at(at + 1), sentence.text_at(at + 2), sentence.text_at(at + 4))
    led = sentence.tokens[at].text.startswith(("up to", *_READS)) or before or core
    free = not sentence.is_a(at + 1, "nutrient") and food_at(sentence, at + 1) is None
    bounded = sentence.tokens[at].amount.relation not in ("about", "exactly", "between") and bool(words & _SERVED)
    held = (sentence.text_at(at - 1) == "at" or bounded) and bool(words & _HOLDS)
    led = led or bounded
    return bool(told or held or words & _READY or _until_it_is(sentence, at)) and led and free


def _of_what(sentence: Sentence, at: int, said: Quantity, near: set[str]) -> list[Claim]:
    """Return how hot meat, fish or egg gets in words that tell no more: "do not let it get hotter than 140"."""
    foods = foods_named(sentence, sentence.clause_of(at))
    if said.value > 212 or near & _PANS or not any(map(of_an_animal, foods)):
        return []
    sentence.used.add(at)
    return [asked(sentence, (at,))]


def _is_held(sentence: Sentence, at: int, said: Quantity, words: frozenset[str]) -> bool:
    """Return whether hot food is kept at a temperature: "hold it at 140", "keep it above 140 until it is served"."""
    bounded = said.relation not in ("about", "exactly", "between") and bool(words & _SERVED)
    led = sentence.text_at(at - 1) == "at" or bounded
    return bool(words & _HOLDS) and led and 100 <= said.value <= 220 and not words & _READY


def _denied(sentence: Sentence, at: int) -> bool:
    """Return whether "not" stands before a temperature in its own statement; "not until it reads 165" asks for it."""
    awaited = False
    last = at - 1 - (sentence.text_at(at - 1) == ",")  # "not cooked when it's opaque, about 145 degrees"
    for place in range(last, sentence.clause_of(at)[0] - 1, -1):
        if sentence.text_at(place) in (",", "and", "but"):
            return False
        awaited = awaited or sentence.text_at(place) in ("until", "till", "before", "unless")
        if sentence.text_at(place) in ("not", "never"):
            return not awaited or sentence.text_at(place + 1) == "wait"
    return False
