"""What is said beside a claim in a few words that no family reads: it is asked about, so that the whole may hold."""

import re
from collections.abc import Iterator, Sequence
from itertools import chain

from kit.speech.about.parts import (
    DETERMINERS,
    after_determiners,
    back,
    is_dish,
    is_food,
    is_serving,
    is_verb,
    with_so_much,
)
from kit.speech.about.unread import asked
from kit.speech.allergens.allergens_judged import AllergenClaim
from kit.speech.claim import FOOD, Claim
from kit.speech.doubting.thanked import thanked
from kit.speech.doubting.unknown_things import not_in_it
from kit.speech.figures.comparisons_claim import ComparisonClaim
from kit.speech.proportions.brought_by import foods_before
from kit.speech.proportions.dish_shares_judged import DishShareClaim
from kit.speech.proportions.the_rest import rest_begins
from kit.speech.safety.keeping_judged import DegreesClaim
from kit.speech.words.sentence import Sentence, food_at

_IN_PLACE = frozenset((".", ",", "", "!", ";", "in", "on", "of", "and", "or", "too", "as", "alone", "together"))
_HAS = frozenset("has have bring brings give gives contribute contributes add adds practically almost".split())
_WHAT_MAKES = (("what", "makes"), ("what", "keeps"), ("what", "make"))
_SO_MUCH = frozenset("none nothing zero little much lots plenty some more less".split()) | {"a lot", "a little"}
_SO_MUCH_OF = frozenset("even maybe also just slice piece cup glass tablespoon teaspoon ounce handful of".split())
_NO_COMPARISON = ("rather", "other", "later", "sooner", "longer", "different")
_SOME = frozenset("more extra bit little of lots plenty".split())
_OPENS_WITH = frozenset("even served eaten topped only just and so but , then made cooked".split())
_LARGE = frozenset("quart quarts pint pints gallon gallons liter liters".split())
_RANKS = ("second", "third")
_LOOKS = re.compile(r"\bor (?:just |simply )?(?:when|once|until|till|as soon as|if)\b")


def beside(sentence: Sentence, claims: Sequence[Claim]) -> list[Claim]:
    """Return what is said beside the claims of a sentence and was not read.

    Parameters
    ----------
    sentence : Sentence
        The sentence, when every family has read it.
    claims : sequence of Claim
        What they have read.
    """
    if not claims:
        return []
    ways = (
        _is_why,
        _with_foods,
        _as_much,
        _one_serving,
        _so_much_each,
        _have_none,
        _more_than,
        _the_rest,
        _ahead,
        _made_otherwise,
    )
    left = chain(
        *(way(sentence) for way in ways),
        _with_others(sentence, claims),
        _ranked(sentence, claims),
        _and_another(sentence, claims),
        _than_another(sentence, claims),
        _for_celiacs(sentence, claims),
    )
    found: list[Claim] = [asked(sentence, places) for places in left]
    return found + _or_by_looks(sentence, claims)


def other_amounts(sentence: Sentence, claims: list[Claim]) -> list[Claim]:
    """Return so much of a food with which something is said to be so: "with two eggs it has 300 calories"."""
    found = [at for at in range(len(sentence)) if claims and food_at(sentence, at) is not None]
    amounts = [(*amount, at) for at in found if (amount := with_so_much(sentence, back(sentence, at)))]
    left = [places for places in amounts if sentence.used.isdisjoint(places)]
    left = [*left[:1], *_in_its_place(sentence), *not_in_it(sentence, claims)]
    return [*(asked(sentence, places) for places in left), *thanked(sentence, claims)]


def _in_its_place(sentence: Sentence) -> Iterator[tuple[int, int]]:
    """Yield one thing for another where a statement begins, which no change has read: "water for the cream adds"."""
    for at in sentence.where(("for",), 1):
        first = sentence.clause_of(at)[0]
        over = after_determiners(sentence, at + 1)
        other = food_at(sentence, over)
        named = food_at(sentence, at - 1) is not None or sentence.is_a(at - 1, "nutrient")
        if named and at - first <= 3 and over > at + 1 and other is not None and is_verb(sentence, over + 1):
            yield (at - 1, over)


def _with_foods(sentence: Sentence) -> Iterator[tuple[int, ...]]:
    """Yield what is told of a food behind a comma: ", with the pecans ahead of the oil"."""
    for at in sentence.where(("with",), 1):
        place = at + 2
        if sentence.text_at(at - 1) != "," or sentence.text_at(at + 1) not in DETERMINERS or place >= len(sentence):
            continue
        food = food_at(sentence, place)
        told = sentence.text_at(place + 1) not in _IN_PLACE and not sentence.is_a(place + 1, "food")
        clause = range(at, sentence.clause_of(place)[-1] + 1)
        if food is not None and food.inside and told and sentence.used.isdisjoint(clause):
            yield (place, place + 1)


def _with_others(sentence: Sentence, claims: Sequence[Claim]) -> Iterator[tuple[int, ...]]:
    """Yield a food that is not in the dish, with which it is said to be so: "with chicken in it it's vegetarian"."""
    told = {at for claim in claims if claim.about.kind != FOOD for at in claim.places}
    for at in sentence.where(("with",)):
        if at in sentence.used or not told:
            continue
        place = after_determiners(sentence, at + 1, _SOME)
        food = food_at(sentence, place)
        if sentence.text_at(place + 1) in ("instead of", "rather than", "in place of", "for"):
            continue
        if food is None or food.inside or place in sentence.used or not is_food(sentence, place):
            continue
        opens = _OPENS_WITH.issuperset(sentence.texts[sentence.clause_of(at)[0] : at])
        if opens or at - 1 in told or sentence.text_at(at - 1) in ("it", "them", "this", "here"):
            yield (at, place)


def _is_why(sentence: Sentence) -> Iterator[tuple[int, ...]]:
    """Yield the food that is said to be why: "the mustard is what makes it gluten-free"."""
    for at in sentence.where(("is", "are"), 1):
        if sentence.texts[at + 1 : at + 3] not in _WHAT_MAKES:
            continue
        told = range(at, len(sentence))
        free = any(sentence.is_a(place, "kind") or sentence.is_a(place, "allergen") for place in told)
        if free and food_at(sentence, at - 1) is not None:
            yield (at - 1, at + 2)


def _as_much(sentence: Sentence) -> Iterator[tuple[int, ...]]:
    """Yield how much is told beside another: "with half as much as the beans"."""
    for at, said in sentence.quantities():
        compared = said.is_fraction or said.unit == "times"
        if compared and sentence.text_at(at + 1) == "as" and sentence.text_at(at + 2) in ("much", "many"):
            yield (at, at + 2)


def _for_celiacs(sentence: Sentence, claims: Sequence[Claim]) -> Iterator[tuple[int, ...]]:
    """Yield those who avoid gluten, where no claim is about it: "fish is the allergen, so a celiac can eat it"."""
    judged = {claim.allergen for claim in claims if isinstance(claim, AllergenClaim)}
    if judged.isdisjoint(("gluten", "wheat")):
        yield from ((at, at) for at in sentence.where(("celiac", "celiacs", "coeliac", "coeliacs")))


def _ranked(sentence: Sentence, claims: Sequence[Claim]) -> Iterator[tuple[int, ...]]:
    """Yield a rank behind the main source that was not read: ", the kale coming in third"."""
    shares = [claim for claim in claims if isinstance(claim, DishShareClaim)]
    taken = {place for claim in claims for place in claim.places}
    for at in sentence.places("rank"):
        behind = sentence.text_at(at + 1) in ("", ".", ",", "!", ";", "in", "for", "to")
        if shares and behind and at not in taken | sentence.used and sentence.text_at(at) in _RANKS:
            yield (at,)


def _one_serving(sentence: Sentence) -> Iterator[tuple[int, ...]]:
    """Yield how many of what the dish is called make a serving: "two tacos are one serving"."""
    for at, said in sentence.quantities():
        verb = at + 2
        several = said.value > 1 and not said.unit and is_dish(sentence, at + 1)
        one = sentence.text_at(verb + 1) in ("a", "one", "each") and is_serving(sentence, verb + 2)
        if several and one and sentence.text_at(verb) in ("are", "is", "make", "makes", "to", "in", "for"):
            yield (at, at + 1, verb, verb + 2)


def _so_much_each(sentence: Sentence) -> Iterator[tuple[int, ...]]:
    """Yield a measure that each is said to get, which no number names: "it serves two, a quart each"."""
    for at in sentence.where(_LARGE, 1):
        if sentence.text_at(at + 1) in ("each", "apiece") and at not in sentence.used:
            yield (at - 1, at + 1)


def _have_none(sentence: Sentence) -> Iterator[tuple[int, ...]]:
    """Yield the food that is said to have none of what went before: ", the beans have none"."""
    for at in sentence.where(_SO_MUCH, 1):
        if sentence.text_at(at + 1) not in (".", ",", "", "!", ";", "at") or at in sentence.used:
            continue
        place = at - 1
        while sentence.text_at(place) in _HAS:
            place -= 1
        named = food_at(sentence, place) is not None or sentence.is_a(place, "dish", "part")
        if named and place < at - 1 and place not in sentence.used:
            yield (place, at)


def _more_than(sentence: Sentence) -> Iterator[tuple[int, ...]]:
    """Yield a food that is said to have more than another, without its verb: ", and the egg more than the oil"."""
    for at in sentence.where(("more", "less", "fewer"), 1):
        if at in sentence.used:
            continue
        over = at + 1 + 2 * (sentence.text_at(at + 1) == "of" and sentence.is_a(at + 2, "pronoun"))  # "more of it than"
        place = at - 1
        while over > at + 1 and sentence.text_at(place) in _HAS:
            place -= 1
        food = food_at(sentence, place)
        if sentence.text_at(over) == "than" and food is not None and food.inside:
            yield (at - 1, at + 1)


def _the_rest(sentence: Sentence) -> Iterator[tuple[int, ...]]:
    """Yield the rest that a food is said to bring where no share was: "170 of 270 calories, the oats the rest"."""
    for at in sentence.places("share"):
        if at not in sentence.used and sentence.is_a(at, "share", "rest"):
            first = rest_begins(sentence, at)
            if foods_before(sentence, first)[0]:
                yield (first, at)


def _ahead(sentence: Sentence) -> Iterator[tuple[int, ...]]:
    """Yield two foods that are ranked without a nutrient: ", and the beans come in just ahead of the pasta"."""
    for at in sentence.where(("ahead", "behind"), 1):
        if at in sentence.used:
            continue
        over = after_determiners(sentence, at + 1 + (sentence.text_at(at + 1) == "of"))
        other = food_at(sentence, over)
        led = [place for place in range(max(0, at - 5), at) if food_at(sentence, place) and place not in sentence.used]
        if led and other is not None and other.inside and over not in sentence.used:
            yield (led[-1], over)


def _made_otherwise(sentence: Sentence) -> Iterator[tuple[int, ...]]:
    """Yield half of the recipe, or twice as much, of which something is said: "cut in half, the recipe has"."""
    made = _OTHERWISE.match(" ".join(sentence.texts[:6]))
    if made:
        yield tuple(range(len(made[0].split())))


_OTHERWISE = re.compile(r"(?:if )?(?:cut in half|halved|doubled|tripled)(?= ,| the| it)")


def _and_another(sentence: Sentence, claims: Sequence[Claim]) -> Iterator[tuple[int, ...]]:
    """Yield the second of those that a food is compared with: "more iron than the cumin and the beans together"."""
    for claim in claims:
        last = max(claim.places, default=-1)
        if not isinstance(claim, ComparisonClaim) or sentence.text_at(last + 1) not in ("and", "plus", "or"):
            continue
        place = after_determiners(sentence, last + 2, _SO_MUCH_OF)
        food = food_at(sentence, place)
        if food is not None and place not in sentence.used and not is_verb(sentence, place + 1):
            yield (last, place)


def _than_another(sentence: Sentence, claims: Sequence[Claim]) -> Iterator[tuple[int, ...]]:
    """Yield a second comparison that was not read: "more sodium than a slice of bread, but less than a pickle"."""
    compared = [claim for claim in claims if isinstance(claim, ComparisonClaim)]
    taken = {place for claim in claims for place in claim.places} | sentence.used
    for at in range(max((max(claim.places) for claim in compared), default=len(sentence)) + 1, len(sentence)):
        if sentence.text_at(at) == "than" and at not in taken and sentence.text_at(at - 1) not in _NO_COMPARISON:
            yield (at - 1, min(after_determiners(sentence, at + 1), len(sentence) - 1))


def _or_by_looks(sentence: Sentence, claims: Sequence[Claim]) -> list[Claim]:
    """Return another sign beside a temperature that is asked about: "to 165, or until it's no longer pink"."""
    hot = [claim for claim in claims if isinstance(claim, DegreesClaim)]
    for claim in hot[:1]:
        last = max(claim.places)
        if _LOOKS.search(" ".join(sentence.texts[last + 1 :])):
            return [asked(sentence, (last, len(sentence) - 1))]
    return []
