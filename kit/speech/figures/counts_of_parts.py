"""How many servings a part of the recipe, or several times of it, make: "half the pan is six", "double it and ..."."""

from collections.abc import Iterator
from dataclasses import dataclass

from kit.rules.verdicts import CANNOT_TELL, HOLDS, OFF
from kit.speech.about.parts import is_dish, is_serving, is_verb
from kit.speech.about.slots import negated
from kit.speech.about.unread import asked
from kit.speech.claim import WHOLE, About, Claim, Finding
from kit.speech.figures.counts_said import PEOPLE
from kit.speech.words.sentence import Sentence, food_at
from kit.speech.words.tokens import NO_QUANTITY, Quantity
from kit.talk.dish import Dish
from kit.texts import counted, number

FAMILY = "servings and weights"
_WORDS = frozenset(  # between the part and how many there are
    "of the a an this that our your whole entire full it cake pan recipe batch and so then you we i will would have "
    "has get gets are is be makes make feeds feed serves serve gives give gave does do comes come to out up at still "
    "yields yield fills fill cuts cut into which means us them just only about exactly already , is that not".split()
)
_MAKES = frozenset(
    "have has get gets are is be makes make feeds feed serves serve gives give does do yields yield fills fill cuts "
    "cut comes come means".split()
)
_FEEDS = frozenset("feeds feed serves serve".split())
_ENDS = frozenset((".", ",", "", "!", ";", ":", "and", "but", "or", "people", "of"))
_EQUALS = frozenset("is are makes make equals equal be".split())
_OF = ("of", "the", "a", "this", "that", "whole", "entire", "our", "your")
_BATCHES = {"half": 0.5, "double": 2.0, "triple": 3.0, "doubled": 2.0, "tripled": 3.0, "halved": 0.5, "halve": 0.5}
_SEVERAL = frozenset("batches recipes pans pots trays loaves casseroles dishes".split())
_BAKED = ("cakes", "pies", "tarts")  # of which fewer make many: "two cakes make twenty-four slices"
_NEAR_ONE = 0.5  # "a third of eight is about three"


@dataclass(frozen=True, slots=True)
class PartCountClaim(Claim):
    """A part of the whole recipe, or several of it, make so many servings."""

    said: Quantity = NO_QUANTITY
    share: float = 1.0


def read(sentence: Sentence) -> list[Claim]:
    """Return how many servings a sentence says that a part of the dish makes, or the recipe made several times.

    Parameters
    ----------
    sentence : Sentence
        The sentence.
    """
    claims: list[Claim] = [*_one_of_them(sentence), *_yields(sentence)]
    for at, said in list(sentence.quantities()):
        if said.unit or said.is_fraction or said.low != said.high or said.value < 2 or at in sentence.used:
            continue
        if any(sentence.text_at(spot) == "of" for spot in (at - 1, at - 2)) and not is_serving(sentence, at - 1):
            continue  # the number of "half of the two dozen"
        found = _behind_part(sentence, at) or _before_part(sentence, at)
        if found is not None:
            part, share = found
            sentence.used.update((part, at))
            denied = "not" in sentence.texts[min(part, at) : max(part, at)] or negated(sentence, at)
            claims.append(PartCountClaim((part, at), About(WHOLE, share), denied, said, share))
    return claims


def _one_of_them(sentence: Sentence) -> Iterator[Claim]:
    """Return what part of the whole one serving is said to be: "a cookie is a twelfth of the batch"."""
    for at in sentence.where(("a", "one", "each", "every")):
        said = Quantity(1.0, 1.0)
        if at == sentence.clause_of(at)[0] and (found := _before_part(sentence, at)) is not None:
            part, share = found
            denied = "not" in sentence.texts[at:part]
            sentence.used.update((at, part))
            yield PartCountClaim((at, part), About(WHOLE, share), denied, said, share)


_VOLUMES = frozenset("quart quarts gallon gallons pint pints liter liters litre litres".split())
_YIELDS = frozenset("makes make yields yield gives give fills fill is comes".split())


def _yields(sentence: Sentence) -> Iterator[Claim]:
    """Return so much of the whole as it is said to make by volume, which is asked about: "it makes two quarts"."""
    for at in sentence.where(_VOLUMES):
        before = sentence.texts[sentence.clause_of(at)[0] : at]
        of_dish = sentence.text_at(at + 1) in (".", ",", "", "!", "and", "of", "altogether", "in") and len(before) < 8
        led = any(is_dish(sentence, spot) or sentence.is_a(spot, "pronoun") for spot in sentence.clause_of(at)[:4])
        if (
            of_dish
            and led
            and not _YIELDS.isdisjoint(before)
            and (food_at(sentence, at + 2) is None or is_dish(sentence, at + 2))
        ):
            yield asked(sentence, (at - 1, at))


def times_made(sentence: Sentence, end: int) -> float:
    """Return how many times the recipe is made by the words up to a place: 2 of "a double batch takes", else 1."""
    places = [place for place in sentence.clause_of(end) if place < end]
    for place in places[:2]:
        share = _share_of_whole(sentence, place)
        if share is not None and _names_whole(sentence, place, share) in places:
            return share
    return 1.0


def _share_of_whole(sentence: Sentence, at: int) -> float | None:
    """Return how much of the recipe a word says: "half", "two thirds", "double", "two" of "two pans"."""
    token = sentence.tokens[at]
    if token.text in _BATCHES:
        return _BATCHES[token.text]
    if token.quantity is None or token.amount.relation != "about" or token.amount.low != token.amount.high:
        return None
    if token.amount.is_fraction:
        return token.amount.value if token.amount.value < 1 else None
    if token.amount.unit == "times" or (not token.amount.unit and token.amount.value >= 2):
        return token.amount.value
    return None


def _names_whole(sentence: Sentence, at: int, share: float) -> int | None:
    """Return where the whole dish is named that a share at a place is of; None where none is."""
    spot = at + 1
    while sentence.text_at(spot) in _OF:
        spot += 1
    text = sentence.text_at(spot)
    if text in ("them", "those", "these") and spot > at + 1:  # "two dozen cookies, and a third of them is eight"
        return spot if any(_counts_servings(sentence, place) for place in range(at)) else None
    if sentence.tokens[spot].quantity is not None if spot < len(sentence) else False:
        return spot if sentence.text_at(spot - 1) == "the" and not sentence.tokens[spot].amount.unit else None
    if text in ("it", "this", "that", "everything"):
        return spot if sentence.text_at(spot - 1) in ("of", sentence.text_at(at)) else None
    if not is_dish(sentence, spot) or is_serving(sentence, spot):
        return None
    several = share >= 2 and sentence.tokens[at].amount.unit != "times" and sentence.text_at(at) not in _BATCHES
    if several and not ((text in _SEVERAL or text in _BAKED) and spot == at + 1):
        return None
    return spot


def _counts_servings(sentence: Sentence, at: int) -> bool:
    """Return whether a count of servings stands at a place: "two dozen cookies"."""
    said = sentence.tokens[at].amount
    return sentence.tokens[at].quantity is not None and not said.unit and is_serving(sentence, at + 1)


def _is_counted(sentence: Sentence, at: int, verbs: set[str]) -> bool:
    """Return whether a number counts servings, or people that are fed: "six slices", "feeds six"."""
    behind = sentence.text_at(at + 1)
    return is_serving(sentence, at + 1) or behind in PEOPLE or (bool(verbs) and behind in _ENDS and behind != "of")


def _behind_part(sentence: Sentence, at: int) -> tuple[int, float] | None:
    """Return the part before a number, and its share of the recipe: "half the pan is six"."""
    verbs: set[str] = set()
    for spot in range(at - 1, max(-1, at - 11), -1):
        share = _share_of_whole(sentence, spot)
        if share is not None and share >= 2 and sentence.text_at(spot - 1) == "the":
            continue  # "half of the two dozen is"
        if share is not None and spot not in sentence.used:
            whole = _names_whole(sentence, spot, share)
            if whole is None or whole >= at or not verbs:
                return None
            pronoun = sentence.text_at(whole) in ("it", "this", "that", "everything")
            plainly = is_serving(sentence, at + 1) or bool(verbs & _FEEDS) or not pronoun
            calories = any(token.amount.unit in ("kcal", "kJ") for token in sentence.tokens)
            plainly = plainly and (is_serving(sentence, at + 1) or not calories)  # "half of it is over a thousand"
            fewer = sentence.text_at(whole) not in _BAKED or share < sentence.tokens[at].amount.value
            told = _is_counted(sentence, at, verbs) and plainly and fewer
            return (spot, share) if told else None
        text = sentence.text_at(spot)
        if text not in _WORDS and not (is_dish(sentence, spot) and not is_serving(sentence, spot)):
            return None
        verbs |= {text} & _MAKES
    return None


def _before_part(sentence: Sentence, at: int) -> tuple[int, float] | None:
    """Return the part behind a count of servings: "four slices are a third of the cake"."""
    if not is_serving(sentence, at + 1) or sentence.text_at(at + 2) not in _EQUALS:
        return None
    spot = sentence.after(at + 3, lambda token: token.text in ("about", "just", "only", "exactly", "up", "not"))
    if not 0 <= spot < len(sentence):
        return None
    share = _share_of_whole(sentence, spot)
    if share is None or share >= 1:
        return None
    whole = _names_whole(sentence, spot, share)
    ends = whole is not None and sentence.text_at(whole + 1) in _ENDS - {"of"}
    return (spot, share) if ends and not any(is_verb(sentence, one) for one in range(spot, whole or spot)) else None


def judge(claim: PartCountClaim, dish: Dish) -> Finding:
    """Judge how many servings a part of the recipe makes."""
    makes = dish.numbers.recipe.servings
    of = makes * claim.share
    said = claim.said
    if said.relation in ("over", "well over", "at least"):
        right = of > said.value or (said.relation == "at least" and of >= said.value)
    elif said.relation in ("under", "well under", "at most"):
        right = of < said.value or (said.relation == "at most" and of <= said.value)
    else:
        right = abs(of - said.value) < 1e-6
    because = f"the recipe makes {number(makes, 1)}, and {_share_said(claim.share)} of that {number(of, 1)}"
    if not right and abs(of - said.value) < _NEAR_ONE and of % 1:
        return Finding(CANNOT_TELL, because)
    return Finding(HOLDS if right != claim.negated else OFF, because)


def _share_said(share: float) -> str:
    return f"{counted(share)} times" if share >= 2 else _PARTS.get(round(share, 3), f"{number(100 * share)} percent")


_PARTS = {0.5: "half", 0.333: "a third", 0.25: "a quarter", 0.667: "two thirds", 0.75: "three quarters"}
