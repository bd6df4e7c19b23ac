"""What is left over: telling words that no claim has accounted for are asked about, in their own words."""

from collections.abc import Sequence
from dataclasses import dataclass

from kit.rules.verdicts import CANNOT_TELL
from kit.speech.claim import FOOD, Claim, Finding
from kit.speech.parts import is_dish
from kit.speech.sentence import Sentence, food_at
from kit.speech.slots import antecedent, is_day, of_what_went_before, share_at
from kit.talk.dish import Dish

FAMILY = "not understood"
# Nutrients whose names a cook also uses of other things.
_ORDINARY = frozenset("salt sugars fat water iron zinc copper".split())
_GOES_ON = ("for", "in", "altogether", "total", "per", "a", "each", "are", "is", "come", "from", "of")
_TELLING_UNITS = ("kcal", "kJ", "mg", "µg", "iu")
_HAS = frozenset("has have had contains contain holds hold packs pack carries brings bring with".split())
_COOKS = frozenset("i we you i've we've you've ill well".split())
_QUESTIONS = frozenset(
    "who what which how when where why is are does do can could would will should did has have".split()
)


@dataclass(frozen=True, slots=True)
class UnreadClaim(Claim):
    """Telling words that were not understood."""

    words: str = ""


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
    places = tuple(left)
    sentence.used.update(places)
    return [UnreadClaim(places, words=sentence.said(places))]


_HEDGES = frozenset(
    "myth untrue false wrong supposedly allegedly excluding ignoring except besides child childs children kid kids "
    "toddler "
    "toddlers baby babies teenager teenagers athlete athletes smaller larger bigger second seconds refill weekly "
    "week month "
    "year yearly monthly hypothetically pretend imagine suppose once".split()
)
_HEDGED = (
    "not counting",
    "leaving aside",
    "apart from",
    "aside from",
    "used to",
    "other than",
    "not including",
    "setting aside",
    "on top of",
    "on the side",
    "alongside",
    "along with",
    "together with a",
    "plus a",
    "add a",
    "with a side",
    "served with",
    "half size",
    "half portion",
    "before the",
    "before any",
)
_COUNTED = ("AmountClaim", "DayShareClaim", "EnergyShareClaim", "WordingClaim")


def qualifiers(sentence: Sentence, claims: Sequence[Claim], change: object) -> list[Claim]:
    """Return words that change what the other claims are about, and that none of them has accounted for."""
    counted = [claim for claim in claims if type(claim).__name__ in _COUNTED]
    if not counted:
        return []
    text = " ".join(token.text for token in sentence.tokens)
    places = [
        at
        for at, token in enumerate(sentence.tokens)
        if at not in sentence.used and token.text in _HEDGES and sentence.text_at(at - 1) != "of"  # "the time of year"
    ]
    hedged = [words for words in _HEDGED if f" {words} " in f" {text} "]
    others = [
        at
        for at in range(len(sentence))
        if at not in sentence.used
        and change is None
        and _is_other_food(sentence, at)
        and any(type(claim).__name__ == "AmountClaim" and claim.about.kind != FOOD for claim in counted)
    ]
    without = [
        at
        for at in range(len(sentence))
        if at not in sentence.used
        and change is None
        and sentence.text_at(at) == "without"
        and any(sentence.tokens[spot].food is not None for spot in range(at + 1, min(at + 5, len(sentence))))
    ]
    if not (places or hedged or others or without):
        return []
    spots = tuple(sorted({*places, *others, *without})) or tuple(counted[0].places)
    return [UnreadClaim(spots, words=sentence.said(spots) if places or others or without else hedged[0])]


def _is_other_food(sentence: Sentence, at: int) -> bool:
    """Return whether a token names a food that is not in the dish, and so is eaten beside it."""
    food = food_at(sentence, at)
    token = sentence.tokens[at]
    return (
        food is not None
        and food.exact
        and not food.inside
        and not token.is_a("nutrient")
        and not token.is_a("allergen")
        and not is_dish(sentence, at)
    )


def _tells(sentence: Sentence, at: int) -> bool:
    token = sentence.tokens[at]
    clause = sentence.clause_of(at)
    if token.quantity is not None:
        unit = token.quantity.unit
        if unit in _TELLING_UNITS:
            return True
        named = any(sentence.tokens[place].is_a("nutrient") for place in clause)
        if _counts_part(sentence, at):
            return False
        if _goes_back(sentence, at) or _says_of(sentence, at) or _spoons(sentence, at):
            return True
        if _more_of_it(sentence, at):
            return True
        if unit == "%" or (token.quantity.is_fraction and not unit) or unit == "g":
            strict = any(
                sentence.tokens[place].is_a("nutrient") and sentence.tokens[place].parts["nutrient"] not in _ORDINARY
                for place in clause
            )
            day = any(is_day(sentence, place) and sentence.text_at(place) not in ("day", "today") for place in clause)
            return strict or (unit == "%" and named) or (unit == "" and day)
        return False
    if token.is_a("share") and (_goes_back(sentence, at) or _says_of(sentence, at)):
        return True
    if token.is_a("nutrient"):
        name = token.parts["nutrient"]
        if name == "energy" and token.text == "energy":
            return False
        if name not in _ORDINARY:
            return True
        if name == "water":
            return False
        if name in ("iron", "zinc", "copper") and any(is_day(sentence, place) for place in clause):
            return True
        if _has_share_of(sentence, at):
            return True
        return any(
            place not in sentence.used
            and (
                sentence.tokens[place].is_a("rank")
                or (
                    sentence.tokens[place].is_a("wording")
                    and sentence.text_at(place + 1) == "in"
                    and abs(place - at) < 4
                )
            )
            for place in clause
        )
    if token.text.startswith("animal product"):
        return True
    if token.is_a("allergen") and token.food is None and _all_but(sentence, at):
        return True
    return token.is_a("beyond") or token.is_a("allergen", "any") or token.text in ("allergy", "allergies", "allergic")


def _has_share_of(sentence: Sentence, at: int) -> bool:
    """Return whether something has a share of fat, salt or sugar: "it has half the fat of ..."; not one put into it."""
    over = at - 1
    while sentence.text_at(over) in ("of", "the", "as", "much"):
        over -= 1
    if over < 0 or over == at - 1 or sentence.tokens[over].quantity is None:
        return False
    if sentence.text_at(at + 1) == "of" and sentence.text_at(at + 2) in ("a", "an", "my", "your", "most", "regular"):
        return True
    first = sentence.clause_of(at)[0]
    # "With half the salt it would be": what is put in, not what there is.
    before = [place for place in range(first, over) if not (place == first and sentence.text_at(place) == "with")]
    return any(sentence.text_at(place) in _HAS and sentence.text_at(place - 1) not in _COOKS for place in before)


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


def _spoons(sentence: Sentence, at: int) -> bool:
    """Return whether a serving is said to have so many spoons of sugar, salt or fat; what goes in is no claim."""
    if sentence.tokens[at].amount.unit not in ("tsp", "tbsp") or sentence.text_at(at + 1) != "of":
        return False
    if not (sentence.is_a(at + 2, "nutrient") and sentence.tokens[at + 2].parts["nutrient"] in _ORDINARY):
        return False
    before = [place for place in sentence.clause_of(at) if place < at]
    has = any(sentence.text_at(place) in ("has", "have", "holds", "hides", "hold", "is", "comes") for place in before)
    of_serving = any(is_dish(sentence, place) and sentence.tokens[place].parts["dish"] == "serving" for place in before)
    return has and of_serving


def _more_of_it(sentence: Sentence, at: int) -> bool:
    """Return whether a bare number goes on with an amount: "230 calories a bowl, 1,400 for the lot"."""
    amount = sentence.tokens[at].amount
    before = [sentence.tokens[place].amount.unit for place in range(at) if sentence.tokens[place].quantity is not None]
    goes_on = sentence.text_at(at + 1) in (*_GOES_ON, ".", "")
    return not amount.unit and not amount.is_fraction and amount.low >= 20 and "kcal" in before and goes_on


def _all_but(sentence: Sentence, at: int) -> bool:
    """Return whether one thing is set apart from all: "it's got everything but dairy", "the only dairy in it"."""
    before = [sentence.text_at(place) for place in range(max(0, at - 3), at)]
    return before[-1:] == ["only"] or (
        before[-1:] == ["but"] and before[-2:-1] in (["everything"], ["anything"], ["all"])
    )


def _goes_back(sentence: Sentence, at: int) -> bool:
    """Return whether a share is of an amount said before: "230 calories, two thirds of them from fat"."""
    before = antecedent(sentence, at)
    if before is None or share_at(sentence, at) is None or not of_what_went_before(sentence, at):
        return False
    told = sentence.tokens[before.place].parts.get("nutrient", "")
    return told not in _ORDINARY or any(sentence.tokens[spot].quantity is not None for spot in range(before.place))


def _counts_part(sentence: Sentence, at: int) -> bool:
    """Return whether a fraction is of a serving or of the dish: "half a plate"."""
    place = at + 1
    while sentence.text_at(place) in ("a", "an", "of", "the", "your", "this", "that"):
        place += 1
    return place < len(sentence) and is_dish(sentence, place)


def judge(claim: UnreadClaim, _dish: Dish) -> Finding:
    """Ask what the words mean."""
    return Finding(
        CANNOT_TELL, f'what "{claim.words}" claims was not understood: say it in a plainer way, or name your source'
    )
