"""Foods, or groups of them, that are said not to be in the dish: "no pork", "neither wheat nor cheese"."""

import re
from collections.abc import Iterator
from dataclasses import dataclass

from kit.food.alcohol import alcohol_of
from kit.food.composition import Food
from kit.food.vocabulary import words
from kit.rules.animals import brings
from kit.rules.naming import is_plural, short_name
from kit.rules.verdicts import CANNOT_TELL, HOLDS, OFF
from kit.speech.about.parts import is_dish
from kit.speech.about.slots import foods_from, negated
from kit.speech.about.unread import asked
from kit.speech.claim import THE_DISH, Claim, Finding
from kit.speech.words.foods_said import FoodWord
from kit.speech.words.sentence import Sentence, food_at
from kit.talk.dish import Dish
from kit.texts import listing

FAMILY = "kind"
_GROUPS = {
    "meat": ("meat", "poultry"),
    "red meat": ("meat",),
    "poultry": ("poultry",),
    "added fat": ("oil",),
    "bean": ("pulse",),
    "vegetable": ("vegetable",),
    "fruit": ("fruit",),
    "seed": ("seed",),
    "grain": ("grain", "pasta", "bread"),
    "sweetener": ("sweetener",),
    "spice": ("spice",),
    "herb": ("herb",),
}
_CHEESES = ("cheese", "grated_hard_cheese", "ricotta", "cottage_cheese")
_NO = ("no", "zero", "without", "goes without", "does without", "not any")
_DENIES = frozenset(("not", "none", "neither", "nor", *_NO))
_BIT_OF = frozenset("a an any drop of single bit scrap trace gram hint added the more speck ounce".split()) | {
    "drop of"
}
_ENDS = ("", ".", ",", "!", "in", "here", "anywhere", "or")
_PUT_IN = ("added", "refined", "white", "brown", "table", "extra", "more")
_JOINTS = ("or", "and", ",", "nor")
_ICE = ("pack", "packs", "box", "bath", "bag")
_HAS = ("has", "have", "contains", "contain", "uses", "use")
_IS_THERE = (*_HAS, "is", "are", "with", "of", "goes", "go")
_YOU = ("you", "we", "i", "")  # "do not use cheese" is an order
_MADE = ("made", "cooked", "baked", "thickened", "sweetened")  # "it is not made with butter"


@dataclass(frozen=True, slots=True)
class AbsentClaim(Claim):
    """A food, or a group of foods, is not in the dish."""

    group: str = ""
    foods: tuple[FoodWord, ...] = ()


def read(sentence: Sentence) -> list[Claim]:
    """Return the absent foods that a sentence claims."""
    claims: list[Claim] = []
    for at in range(len(sentence)):
        start = _begins(sentence, at) if at not in sentence.used else None
        if start is not None:
            claims += _things(sentence, at, start)
    return [*claims, *_free_of(sentence)]


_MADE_WITH = re.compile(r"\b(?:is|are) (?:all |only |just )?(?:made|baked|cooked) (?:with|from) ")
_OF_ANOTHER = frozenset(
    "if instead can could would should usually often some most many other not never when or".split()
)


def of_no_family(sentence: Sentence) -> list[Claim]:
    """Return what tells of foods though no family reads it: what the dish is made with and has not, equal amounts.

    Parameters
    ----------
    sentence : Sentence
        The sentence, in which nothing else has been read.
    """
    for at in sentence.places("allergen", 4):
        if sentence.texts[at - 4 : at] == ("nothing", "to", "do", "with"):
            return [asked(sentence, (at - 4, at))]
    for at in sentence.where(("same", "equal"), 2):
        amounts = sentence.text_at(at + 1) in ("amount", "amounts") and sentence.text_at(at + 2) == "of"
        if amounts and sentence.is_a(at + 3, "nutrient"):
            return [asked(sentence, (at, at + 3))]  # "the milk and the cream bring the same amount of fat"
    told = _MADE_WITH.search(sentence.plain)
    if told is None or not sentence.words.isdisjoint(_OF_ANOTHER):
        return []
    first = len(sentence.plain[: told.end()].split())
    starts = [at for at in range(len(sentence)) if len(" ".join(sentence.texts[:at]).split()) == first]
    foods, places = foods_from(sentence, starts[0], len(sentence)) if starts else ([], [])
    lacking = [place for word, place in zip(foods, places, strict=True) if word.exact and not word.inside]
    return [asked(sentence, (place,), (place - 1, place)) for place in lacking]


def _begins(sentence: Sentence, at: int) -> int | None:
    """Return where the things begin that a word says are not there; None for any other word."""
    token = sentence.tokens[at]
    if token.text not in _DENIES and "wording" not in token.parts:
        return None
    before, behind = sentence.text_at(at - 1), sentence.text_at(at + 1)
    if token.is_a("wording", "free") and behind in ("of", "from"):
        return at + 2
    if token.text == "not" and behind in _MADE and sentence.text_at(at + 2) in ("with", "of"):
        return at + 3
    if token.text == "not" and behind in _HAS and before in ("do", "does") and sentence.text_at(at - 2) not in _YOU:
        return at + 2
    if token.text == "none" and behind == "of" and sentence.text_at(at + 3) in _HAS:
        return at + 4
    if token.text == "not" and behind == "find" and " in " in f" {' '.join(sentence.texts[at:])} ":
        return at + 2  # "you will not find cheese in it"
    there = before in ("is", "are") and sentence.text_at(at - 2) == "there"
    not_one = token.text == "not" and (there or _opens(sentence, at))
    if not_one and behind in ("a", "an", "one"):
        return at + 2  # "there is not an almond in it"
    nor = token.text in ("neither", "nor") and any(
        sentence.text_at(place) in _IS_THERE for place in sentence.clause_of(at) if place < at
    )
    return at + 1 if nor or token.text in _NO else None


def _opens(sentence: Sentence, at: int) -> bool:
    """Return whether a clause begins with what is not there: "not a drop of oil in it", no "not an avocado person"."""
    place = at + 1
    while sentence.text_at(place) in _BIT_OF or sentence.text_at(place) == "one":
        place += 1
    return at == sentence.clause_of(at)[0] and sentence.text_at(place + 1) in _ENDS


def _things(sentence: Sentence, at: int, place: int) -> Iterator[Claim]:
    """Return the foods and groups that a word says are not there: "no butter, oil or cheese"."""
    while sentence.text_at(place) in _BIT_OF:
        place += 1
    while place < len(sentence) and place not in sentence.used and _is_thing(sentence, place):
        food = food_at(sentence, place)
        sentence.used.update({at, place})
        group = sentence.tokens[place].parts.get("group", "")
        yield AbsentClaim((at, place), THE_DISH, False, group, (food,) if food is not None else ())
        place += 1
        if sentence.text_at(place) not in _JOINTS:
            return
        while sentence.text_at(place) in _JOINTS or sentence.text_at(place) in ("no", "any"):
            place += 1


def _is_a_nutrient(sentence: Sentence, at: int) -> bool:
    """Return whether sugar is said not to be in what is eaten, and not in the bowl: "it doesn't have any sugar"."""
    return sentence.text_at(at) in ("sugar", "sugars") and sentence.text_at(at - 1) not in _PUT_IN


def _is_thing(sentence: Sentence, at: int) -> bool:
    """Return whether a food or a group of foods stands at a place; allergens have a reader of their own."""
    token = sentence.tokens[at]
    if token.is_a("allergen") or token.quantity is not None or _is_a_nutrient(sentence, at):
        return False
    ice = token.text == "ice" or sentence.text_at(at + 1) in _ICE  # "an ice pack", "all day without ice"
    food = food_at(sentence, at) is not None and not is_dish(sentence, at) and not token.is_a("nutrient")
    return token.is_a("group") or (food and not ice)


def _free_of(sentence: Sentence) -> list[Claim]:
    """Return foods of which it is said to be free behind them: "pork-free", "onion-free"."""
    found: list[Claim] = []
    for at in sentence.places("wording"):
        food, group = food_at(sentence, at - 1), sentence.tokens[at - 1].parts.get("group", "") if at else ""
        told = sentence.is_a(at, "wording", "free") and not sentence.used & {at - 1, at} and (food or group)
        if not told or sentence.is_a(at - 1, "nutrient") or sentence.is_a(at - 1, "allergen") or at == 0:
            continue
        sentence.used.update({at - 1, at})
        found.append(AbsentClaim((at - 1, at), THE_DISH, negated(sentence, at - 1), group, (food,) if food else ()))
    return found


def _is_of(food: Food, group: str) -> bool | None:
    """Return whether a food is of a group that its name or its kind tells; None where its package has to."""
    if group in ("pork", "beef"):
        return brings(food, group)
    if group == "cheese":
        return food.reference in _CHEESES or "cheese" in food.name.lower()
    return group == "gelatin" and not {"gelatin", "marshmallow"}.isdisjoint(words(food.name))


def judge(claim: AbsentClaim, dish: Dish) -> Finding:
    """Judge that a food is absent by what is in the recipe."""
    found = _absent(claim, dish)
    if not claim.negated or found.verdict == CANNOT_TELL:
        return found
    return Finding(HOLDS if found.verdict == OFF else OFF, found.because)


def _absent(claim: AbsentClaim, dish: Dish) -> Finding:
    used = list({part.food.key: part.food for part in dish.numbers.recipe.ingredients if part.grams > 0}.values())
    inside = {key for word in claim.foods for key in word.inside}
    outside = {key for word in claim.foods for key in word.outside}
    groups = _GROUPS.get(claim.group, ())
    named = claim.group if claim.group and not claim.foods else listing([word.text for word in claim.foods])
    there = [
        food
        for food in used
        if food.key in inside | outside or food.group in groups or _is_of(food, claim.group) is True
    ]
    drinks = [food for food in used if alcohol_of(food) > 0]
    if claim.group == "alcohol" and drinks:
        names = listing([short_name(food) for food in drinks])
        return Finding(OFF, f"there is {names} in it, and cooking leaves some of the alcohol")
    if claim.group == "alcohol":
        return Finding(
            CANNOT_TELL, "whether there is alcohol in it (vanilla extract, vinegar, sauces) is told by the package"
        )
    if there:
        names = listing([short_name(food) for food in there])
        be = "are" if len(there) > 1 or is_plural(names) else "is"
        return Finding(OFF, f"there {be} {names} in it", None, (f"There {be} {names} in it.",))
    unsure = listing([short_name(food) for food in used if _is_of(food, claim.group) is None])
    if unsure:
        verb = "brings" if not is_plural(unsure) and " and " not in unsure else "bring"
        return Finding(CANNOT_TELL, f"whether the {unsure} {verb} {claim.group} is told by the package")
    unknown = [food for food in used if groups and not food.group]
    if unknown:
        return Finding(CANNOT_TELL, f"nothing is known about the {short_name(unknown[0])}")
    return Finding(HOLDS, f"there is no {named} in the recipe")
