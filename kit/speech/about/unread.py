"""What is left over: telling words that no claim has accounted for are asked about, in their own words."""

import re
from collections.abc import Sequence
from dataclasses import dataclass
from itertools import pairwise

from kit.rules.verdicts import CANNOT_TELL
from kit.speech.about.nutrient_or_food import is_cooking_starch
from kit.speech.about.parts import TOOLS
from kit.speech.about.slots import antecedent, is_day, of_what_went_before, share_at
from kit.speech.about.telling import (
    HAS,
    HERE,
    ORDINARY,
    and_a_half,
    corrects,
    counts_part,
    is_a_few,
    is_animal,
    is_another,
    is_heat,
    is_low,
    nutrient_tells,
    spoons,
)
from kit.speech.about.told_more import tells_more
from kit.speech.about.versions import is_compared, is_lighter_dish, is_lighter_than
from kit.speech.claim import Claim, Finding
from kit.speech.words.sentence import Sentence, food_at
from kit.speech.words.tokens import Quantity
from kit.talk.dish import Dish

FAMILY = "not understood"
_GOES_ON = (",", "to", "for", ")", "in", "altogether", "total", "per", "a", "each", "are", "is", "come", "from", "of")
_TELLING_UNITS = ("kcal", "kJ", "MJ", "mg", "µg", "iu")
_QUESTIONS = frozenset(
    "who what which how when where why is are does do can could would will should did has have".split()
)


@dataclass(frozen=True, slots=True)
class UnreadClaim(Claim):
    """Telling words that were not understood."""

    words: str = ""


def asked(sentence: Sentence, places: Sequence[int], told: Sequence[int] = ()) -> UnreadClaim:
    """Return a claim that asks about some words: those from the first to the last of its places, or of `told`."""
    return UnreadClaim(tuple(places), words=sentence.said(tuple(told or places)).rstrip(" .,;!"))


def is_question(sentence: Sentence) -> bool:
    """Return whether a sentence asks, and so claims nothing by what it leaves open."""
    return sentence.text.rstrip().endswith("?") and sentence.text_at(0) in _QUESTIONS


def read(sentence: Sentence) -> list[Claim]:
    """Return the telling words of a sentence that no claim has used, as one claim."""
    if is_question(sentence):
        return []
    left = [at for at in range(len(sentence)) if at not in sentence.used and _tells(sentence, at)]
    if not left:
        return []
    sentence.used.update(left)
    return [asked(sentence, left)]


_JUDGES = frozenset("low lower high minimal tiny small negligible moderate little big huge great good bad".split())
_BE = frozenset("is are s stays stay very really quite pretty nice nicely so fairly rather too remains remain".split())
_LITTLE = frozenset("hint touch whisper dash pinch smidge smidgen suggestion suspicion shade spot".split())
_SWEETENS = ("sweeten", "sweetens", "sweetened", "sweetener")
_ALONE = frozenset("nothing only just solely purely entirely sole exclusively alone".split())
_LIMITS = ("though", "although", "but", ",")
_MOST_OF_IT = ("saltiest", "fattiest", "sugariest", "starchiest")  # by weight, or in all?
_COUNTS_AS = re.compile(
    r"\b(?:(?:counts?|classed|seen|treated|qualif(?:y|ies)|passes|listed) as|considered|deemed)(?: an?)?$"
)
ONE_THING = re.compile(r"\b(?:one|single) (?:source|form|thing|place|ingredient|food|item|culprit)\b")
_THAT_IS_ALL = re.compile(r"\b(?:that's|that is) (?:it|all|the lot)\b|\bnothing (?:else|more)\b")


def _tells(sentence: Sentence, at: int) -> bool:
    """Return whether a word that no claim has used tells something."""
    token = sentence.tokens[at]
    if tells_more(sentence, at):
        return True
    if token.quantity is not None:
        return _number_tells(sentence, at, token.quantity)
    if "share" in token.parts and (_goes_back(sentence, at) or _says_of(sentence, at) or _is_of(sentence, at)):
        return True
    shared = "share" in token.parts
    if shared and sentence.text_at(at + 1) == "of" and any(is_day(sentence, at + by) for by in (2, 3, 4)):
        return True  # "a smidgen of a day's"
    if shared and "which" in sentence.texts[at + 1 : at + 3]:
        return True  # "the chicken, most of which is fat"
    if (
        "wording" in token.parts
        and sentence.text_at(at + 1) == "in"
        and sentence.text_at(at + 2) in ("everything", "all", "it", "them")
    ):
        return True  # "low in everything"
    behind = sentence.text_at(at - 1) in _BE or sentence.is_a(at - 1, "nutrient")
    if token.text in _JUDGES and sentence.counted and behind:
        return True  # "the sodium is low, at 700 milligrams"
    if _says_little(sentence, at) or is_compared(sentence, at) or is_another(sentence, at) or is_low(sentence, at):
        return True
    if token.text in _MOST_OF_IT:
        return True
    if "nutrient" in token.parts:
        return nutrient_tells(sentence, at)
    if "allergen" in token.parts and sentence.text_at(at + 1) not in TOOLS and _allergen_tells(sentence, at):
        return True
    if "allergen" in token.parts and sentence.text_at(at - 1) == "only" and sentence.text_at(at - 2) in _LIMITS:
        return True  # "there are nuts in it, though only peanuts"
    if is_lighter_than(sentence, at) or is_lighter_dish(sentence, at):
        return True
    if token.text in _SWEETENS and not sentence.words.isdisjoint(_ALONE):
        return True  # "sweetened only with maple syrup"
    if token.text == "salted" and sentence.text_at(at - 1) in _BE and _is_eaten(sentence, at - 2):
        return True  # "the tomatoes are salted"
    if (
        "wording" in token.parts
        and sentence.text_at(at + 1) in ("in", "of")
        and sentence.text_at(at + 2) in (".", "", "!", ",")
    ):
        return True  # "sugar is what it's rich in"
    if is_a_few(sentence, at):
        return True
    beyond = ("beyond" in token.parts and not is_cooking_starch(sentence, at)) or is_animal(sentence, at)
    return beyond or token.is_a("allergen", "any") or token.text in ("allergy", "allergies", "allergic")


def _is_eaten(sentence: Sentence, at: int) -> bool:
    return food_at(sentence, at) is not None and not sentence.is_a(at, "nutrient")


def _says_little(sentence: Sentence, at: int) -> bool:
    """Return whether a word belittles what is counted behind it: "a hint of sugar, about 22 grams"."""
    if at + 1 + (sentence.text_at(at + 1) == "of") not in sentence.counted:
        return False
    return sentence.is_a(at, "share", "a little") or not _LITTLE.isdisjoint(sentence.text_at(at).split())


def _number_tells(sentence: Sentence, at: int, said: Quantity) -> bool:
    if said.unit in _TELLING_UNITS or (not said.unit and corrects(sentence, at)):
        return True
    if sentence.text_at(at - 1) == "not exactly" and sentence.is_a(at + 1, "dish"):
        return True  # "there are not exactly twelve slices in the loaf"
    if counts_part(sentence, at):
        return False
    if is_heat(sentence, at, said):
        return True
    tells = (_goes_back, _says_of, spoons, and_a_half, _more_of_it, _is_it, _goes_on)
    if any(one(sentence, at) for one in tells) or sentence.text_at(at - 1).endswith("give or take"):
        return True
    if said.unit not in ("%", "g") and not (said.is_fraction and not said.unit):
        return False
    clause = sentence.clause_of(at)
    named = [sentence.tokens[place].parts["nutrient"] for place in clause if sentence.is_a(place, "nutrient")]
    if any(sentence.text_at(place) == "sugars" for place in clause):
        return True  # those that are counted, and not what is put in
    of_day = any(is_day(sentence, place) for place in clause)
    if any(name not in ORDINARY for name in named) or (said.unit == "%" and (named or of_day)):
        return True
    day = any(is_day(sentence, place) and sentence.text_at(place) not in ("day", "today") for place in clause)
    return said.unit == "" and day


def _allergen_tells(sentence: Sentence, at: int) -> bool:
    all_but = sentence.tokens[at].food is None and _all_but(sentence, at)
    all_but = all_but or _COUNTS_AS.search(" ".join(sentence.texts[max(0, at - 4) : at])) is not None
    named = sentence.words & {"missing", "lacking", "lacks", "absent"} or " some in it" in sentence.plain
    return all_but or _only_one(sentence, at) or _little(sentence, at) or _comes_from(sentence, at) or bool(named)


def _comes_from(sentence: Sentence, at: int) -> bool:
    """Return whether an allergen is said to be in a food, or to come from it: "the wheat is in the bulgur"."""
    led = sentence.text_at(at + 1) in ("is", "are", "comes", "come") and sentence.text_at(at + 2) in ("in", "from")
    named = (food_at(sentence, place) for place in range(at + 3, at + 6))
    return led and any(food is not None and food.inside for food in named)


def _says_of(sentence: Sentence, at: int) -> bool:
    """Return whether something is said of a share of a nutrient: "most of the fat is ..."."""
    if share_at(sentence, at) is None:
        return False
    over = at + 1
    while sentence.text_at(over) in ("of", "the", "your", "its", "this"):
        over += 1
    if not sentence.is_a(over, "nutrient") or sentence.tokens[over].parts["nutrient"] in ("salt", "water"):
        return False
    verb, behind = sentence.text_at(over + 1), sentence.text_at(over + 2)
    return verb in ("is", "are", "comes", "come", "has", "have") and behind not in (
        "for",
        "in",
        "on",
        "done",
        "already",
    )


def _is_of(sentence: Sentence, at: int) -> bool:
    """Return whether something is said to be a share of a nutrient: "the sauce is most of the fat"."""
    over = at + 1
    while sentence.text_at(over) in ("of", "the", "your", "its", "this"):
        over += 1
    led = sentence.text_at(at - 1) in ("is", "are") and sentence.text_at(at + 1) == "of"
    return led and share_at(sentence, at) is not None and sentence.is_a(over, "nutrient")


def _is_it(sentence: Sentence, at: int) -> bool:
    """Return whether so much of the dish is said to be a nutrient: "half of it is fat"."""
    amount, over = sentence.tokens[at].amount, at + 3
    of_it = sentence.text_at(at + 1) == "of" and sentence.text_at(at + 2) in ("it", "this", "that")
    while sentence.text_at(over) in ("is", "are", "just", "pure", "plain", "only"):
        over += 1
    return amount.is_fraction and of_it and over > at + 3 and sentence.is_a(over, "nutrient")


def _goes_on(sentence: Sentence, at: int) -> bool:
    """Return whether a number tells more of what was said: "ten of them saturated", "another three", "fat is five"."""
    said = sentence.tokens[at].amount
    before, behind = sentence.text_at(at - 1), sentence.text_at(at + 2)
    if said.is_fraction and before in ("is", "are") and sentence.is_a(at + 1, "nutrient"):
        return True  # "it's half fat"
    if sentence.text_at(at + 1) == "of" and said.is_fraction:
        return behind in ("ours", "one") and sentence.text_at(at + 3) in ("of", "ours", ",")  # "half of one of ours"
    if said.is_fraction and before == "at" and (sentence.is_a(at - 3, "nutrient") or sentence.is_a(at - 2, "nutrient")):
        return True  # "so the fat's at half"
    if said.unit or said.is_fraction:
        return False
    units = {sentence.tokens[place].amount.unit for place in range(at) if sentence.tokens[place].quantity is not None}
    of_them = sentence.text_at(at + 1) == "of" and behind in ("them", "those", "these", "which", "that", "it")
    if of_them and not units.isdisjoint(("g", "mg", "kcal")):
        return True
    if before == "another" and not units.isdisjoint(("day", "week", "month", "hour")):
        return True
    return before in ("is", "are") and sentence.is_a(at - 2, "nutrient") and not sentence.is_a(at + 1, "dish")


def _little(sentence: Sentence, at: int) -> bool:
    """Return whether there is said to be none or little of an allergen: "hardly any dairy in it"."""
    before = [at - 1, at - 2, at - 3] if sentence.text_at(at - 1) in ("of", "any", "the") else [at - 1]
    words = [sentence.text_at(place) for place in sentence.clause_of(at)]
    if any(pair in (("not", "one"), ("not", "a")) for pair in pairwise(words)) and not HAS.isdisjoint(words):
        return True  # "not one of these has wheat in it"
    return any(sentence.is_a(place, "share", "none") or sentence.is_a(place, "share", "hardly any") for place in before)


def _more_of_it(sentence: Sentence, at: int) -> bool:
    """Return whether a bare number goes on with an amount: "230 calories a bowl, 1,400 for the lot"."""
    amount = sentence.tokens[at].amount
    before = [sentence.tokens[place].amount.unit for place in range(at) if sentence.tokens[place].quantity is not None]
    goes_on = sentence.text_at(at + 1) in (*_GOES_ON, ".", "")
    if amount.unit or amount.is_fraction:
        return False
    doubled = sentence.text_at(at - 1) in ("or", "and") and sentence.text_at(at + 1) in ("if", "when", "for", "with")
    return ("kcal" in before and amount.low >= 20 and goes_on) or (doubled and bool({"g", "mg"} & set(before)))


def _all_but(sentence: Sentence, at: int) -> bool:
    """Return whether one thing is set apart from all: "it's got everything but dairy", "the only dairy in it"."""
    before = [sentence.text_at(place) for place in range(max(0, at - 3), at)]
    return before[-1:] == ["only"] or (
        before[-1:] == ["but"] and before[-2:-1] in (["everything"], ["anything"], ["all"])
    )


def _only_one(sentence: Sentence, at: int) -> bool:
    """Return whether allergens are said to be all there are: "the only nuts in it", "egg and soy, that's the lot"."""
    words = [sentence.text_at(place) for place in sentence.clause_of(at)]
    inside = any(one == "in" and two in HERE for one, two in pairwise(words)) and bool({"is", "are"} & set(words))
    several = len(sentence.places("allergen")) > 1
    text = sentence.text.lower().replace("’", "'")
    only = "only" in words and (inside or "find" in words)
    return only or bool(ONE_THING.search(text)) or (several and bool(_THAT_IS_ALL.search(text)))


def _goes_back(sentence: Sentence, at: int) -> bool:
    """Return whether a share is of an amount said before: "230 calories, two thirds of them from fat"."""
    before = antecedent(sentence, at)
    if before is None or share_at(sentence, at) is None or not of_what_went_before(sentence, at):
        return False
    told = sentence.tokens[before.place].parts.get("nutrient", "")
    verb = at + (2 if sentence.text_at(at).endswith(" of") else 3)
    if sentence.text_at(verb) in _EACH_HAS:
        return False  # "no bowl has more than ten grams of fat, and all of them have 250 milligrams of calcium"
    return told not in ORDINARY or any(sentence.tokens[spot].quantity is not None for spot in range(before.place))


_EACH_HAS = frozenset("have hold contain carry pack offer".split())


def judge(claim: UnreadClaim, _dish: Dish) -> Finding:
    """Ask what the words mean."""
    return Finding(
        CANNOT_TELL, f'what "{claim.words}" claims was not understood: say it in a plainer way, or name your source'
    )
