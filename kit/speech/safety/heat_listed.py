"""Temperatures told one after the other, each of what stands before it: "chicken to 165, steaks to 145"."""

from dataclasses import replace

from kit.speech.claim import THE_DISH, Claim
from kit.speech.safety.keeping_judged import DegreesClaim
from kit.speech.safety.keeping_words import of_an_animal
from kit.speech.words.foods_said import FoodWord
from kit.speech.words.sentence import Sentence, food_at
from kit.speech.words.tokens import Quantity

_LEADS = frozenset(  # between what is cooked and how hot it gets
    "to at is are be needs need wants want gets get goes go comes come reaches reach hits hit reads read done cooked "
    "safe fine until till it they that about must should can only just okay ready when takes take asks ask for be "
    "heated up brought cook inside around under over beside within already even still once "
    "before again well".split()
)
_COLD_LEADS = frozenset("at to is below under set stays stay kept be should runs reads of or colder".split())
_FRIDGES = frozenset("fridge refrigerator fridges refrigerators".split())
_FREEZERS = frozenset("freezer freezers".split())
_GROUPS = {  # what is cooked, where no food is named
    "poultry": "poultry",
    "meat": "whole cuts",
    "cuts": "whole cuts",
    "seafood": "fish",
    "burgers": "burgers",
    "meatballs": "meatballs",
    "sausages": "sausages",
    "steaks": "steaks",
    "chops": "chops",
    "roasts": "roasts",
    "quiche": "quiche",
    "casseroles": "egg dishes",
    "dishes": "egg dishes",
}
_OVEN = frozenset("oven bake roast broil preheat griddle pan skillet grill fryer smoker oil water".split())
_DENIED = frozenset("not never no neither nor than".split())


def read_listed(sentence: Sentence) -> list[Claim]:
    """Return temperatures that are told one after the other, each of the food or place before it.

    Parameters
    ----------
    sentence : Sentence
        The sentence; the tokens that are read are used up.
    """
    hot = [at for at, said in sentence.quantities() if _is_heat(sentence, at, said)]
    claims = [_cold(sentence, at, said) for at, said in sentence.quantities() if at not in hot]
    found: list[Claim] = [claim for claim in claims if claim is not None]
    if len(hot) > 1 and sentence.words.isdisjoint(_OVEN | _DENIED):
        cooked = [_cooked(sentence, at) for at in hot]
        done = [claim for claim in cooked if claim is not None]
        found += done if len(done) == len(cooked) else []
    sentence.used.update(place for claim in found for place in claim.places)
    return found


def _is_heat(sentence: Sentence, at: int, said: Quantity) -> bool:
    """Return whether a number may be how hot food gets: "165 degrees", "74 Celsius", a bare "160"."""
    if said.is_fraction:
        return False
    if said.unit == "celsius":
        return 50 <= said.value <= 100
    bare = not said.unit and not sentence.is_a(at + 1, "nutrient") and food_at(sentence, at + 1) is None
    return (said.unit == "degree" or bare) and 100 <= said.value <= 212


def _cooked(sentence: Sentence, at: int) -> DegreesClaim | None:
    """Return the claim of how hot what stands before a temperature gets; None where nothing cooked stands there."""
    place = at - 1
    while place >= 0 and sentence.text_at(place) in _LEADS:
        place -= 1
    word, said = food_at(sentence, place), _fahrenheit(sentence.tokens[at].amount)
    if sentence.text_at(at).startswith("up to"):
        said = replace(said, relation="about")
    if sentence.text_at(place) == "leftovers":
        return DegreesClaim((at,), THE_DISH, False, "reheat", said)
    ground = sentence.text_at(place - 1) in ("ground", "minced")
    if word is not None and of_an_animal(word):
        text = f"ground {word.text}" if ground and not word.text.startswith("ground") else word.text
        foods = () if text == "ground meat" else (FoodWord(text, word.inside, word.outside),)
        return DegreesClaim((at,), THE_DISH, False, "done", said, foods, "", False)
    thing = _GROUPS.get(sentence.text_at(place), "")
    if thing == "whole cuts" and ground:
        thing = "ground meat"
    if thing == "egg dishes" and "egg" not in sentence.plain:
        thing = ""
    return DegreesClaim((at,), THE_DISH, False, "done", said, (), thing, False) if thing else None


def _cold(sentence: Sentence, at: int, said: Quantity) -> DegreesClaim | None:
    """Return how cold a refrigerator or freezer is kept by a bare number right behind it: "the fridge at 40"."""
    place = at - 1
    while place >= 0 and sentence.text_at(place) in _COLD_LEADS:
        place -= 1
    kind = sentence.text_at(place)
    plain = not said.unit and not said.is_fraction and said.value <= 80
    behind = sentence.text_at(at + 1) in ("", ".", ",", "and", "or", "!", ";", "degrees", "is")
    bounded = said.relation not in ("about", "exactly")
    led = (place < at - 1 or bounded) and _DENIED.isdisjoint(sentence.texts)
    if kind not in _FRIDGES | _FREEZERS or not (plain and behind and led):
        return None
    return DegreesClaim((at,), THE_DISH, False, "fridge" if kind in _FRIDGES else "freezer", said)


def _fahrenheit(said: Quantity) -> Quantity:
    celsius = said.unit == "celsius"
    return Quantity(said.low * 1.8 + 32, said.high * 1.8 + 32, "degree", said.relation) if celsius else said
