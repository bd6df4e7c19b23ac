"""Numbers in the statement of a claim that no family has read: what they may mean is asked."""

from collections.abc import Sequence

from kit.speech.about.parts import MEASURES, is_serving, is_verb
from kit.speech.about.unread import asked
from kit.speech.claim import SERVING, THE_DISH, WEIGHT, Claim
from kit.speech.figures.amounts import AmountClaim
from kit.speech.figures.amounts_of import AMOUNT_UNITS
from kit.speech.figures.comparisons_claim import ComparisonClaim
from kit.speech.figures.counts import IngredientsClaim, ServingsClaim
from kit.speech.figures.foods_counted import FoodCountClaim
from kit.speech.figures.weights_said import WeightClaim
from kit.speech.proportions.day_shares import DayShareClaim
from kit.speech.safety.keeping_judged import DegreesClaim
from kit.speech.words.quantities_said import WEIGHTS
from kit.speech.words.sentence import Sentence
from kit.speech.words.tokens import Quantity

_OF_TIME_OR_HEAT = ("minute", "second", "hour", "degree", "celsius", "day", "week", "month", "year")
_PLAIN_THINGS = frozenset(  # counted in kitchen talk, and nothing that a claim is about
    "ways way things thing reasons reason notes words points times minutes steps step batches batch pots pans pieces "
    "forks spoons hands layers inch inches inch-pan seconds tricks kinds sorts rounds go goes".split()
)
_ON_CONDITION = frozenset("if need needs".split())
_HOT = (100, 220)  # degrees Fahrenheit inside of food
_EATS = frozenset("eat have finish drink take had".split())


def with_numbers_left(sentence: Sentence, claims: Sequence[Claim], change: Sequence[int] = ()) -> list[Claim]:
    """Return the claims with the numbers of their statements asked about that nothing has accounted for.

    An amount of the dish goes where such a number may say what it is an amount of: "three teaspoons of salt come to".

    Parameters
    ----------
    sentence : Sentence
        The sentence, when every family has read it.
    claims : sequence of Claim
        What they have read.
    change : sequence of int, optional
        The tokens that name a change of the dish.
    """
    told = {sentence.clauses[at] for claim in claims for at in claim.places}
    places = {*change, *(at for claim in claims for at in claim.places)}
    left = [
        at
        for at, said in sentence.quantities()
        if at not in places
        and (
            sentence.clauses[at] in told
            or _of_heat(said, claims)
            or _if_eaten(sentence, at)
            or (claims and _goes_on(sentence, at, change))
        )
        and not any(_takes_up(claim, said) for claim in claims)
        and not _is_kitchen_talk(sentence, at, said)
        and not _says_again(sentence, at, claims)
    ]
    sentence.used.update(left)
    foods = [claim.places for claim in claims if isinstance(claim, (FoodCountClaim, WeightClaim))]
    leads = [at for at, *rest in foods if at == sentence.clause_of(at)[0] or _is_told_more(sentence, max((at, *rest)))]
    sure = [claim for claim in claims if not any(_may_be_of(sentence, claim, at) for at in (*left, *leads))]
    if len(sure) < len(claims) and not left:
        left = leads
    return [*sure, *(asked(sentence, (at,)) for at in left)]


def _says_again(sentence: Sentence, at: int, claims: Sequence[Claim]) -> bool:
    """Return whether a count is only said once more: "it serves six, exactly six"."""
    counted = [claim for claim in claims if isinstance(claim, (ServingsClaim, IngredientsClaim))]
    before = [place for claim in counted for place in claim.places if place < at]
    said = sentence.tokens[at].amount
    again = any(sentence.tokens[place].amount.value == said.value for place in before)
    return again and sentence.text_at(at - 1) == "," and not said.unit and said.relation in ("about", "exactly")


def _goes_on(sentence: Sentence, at: int, change: Sequence[int]) -> bool:
    """Return whether a bare number ends a statement with a change: "230 milligrams, and without the feta 50"."""
    return at - 1 in change and not sentence.tokens[at].amount.unit and sentence.text_at(at + 1) in ("", ".", ",", "!")


def _of_heat(said: Quantity, claims: Sequence[Claim]) -> bool:
    """Return whether a bare number may be degrees, after others: "the chicken is done at 165, the beans need 180"."""
    hot = not said.unit and not said.is_fraction and _HOT[0] <= said.value <= _HOT[1]
    return hot and any(isinstance(claim, DegreesClaim) for claim in claims)


def _takes_up(claim: Claim, said: Quantity) -> bool:
    """Return whether a claim is about so much: "half a plate has", "two eggs give you"."""
    others = [claim.other] if isinstance(claim, ComparisonClaim) else []
    for about in (claim.about, *others):
        of_weight = about.kind == WEIGHT and said.unit in WEIGHTS
        count = said.value * WEIGHTS[said.unit] if of_weight else said.value
        rest = about.count % 1 if said.is_fraction and about.count > 1 else about.count  # "a bowl and a half"
        if abs(rest - count) < 1e-6 and (about.kind != SERVING or not said.unit or said.unit == "times"):
            return True
    return False


def _is_kitchen_talk(sentence: Sentence, at: int, said: Quantity) -> bool:
    one = said.value == 1 and not said.unit and not said.is_fraction  # "in this one"
    return one or said.unit in _OF_TIME_OR_HEAT or sentence.text_at(at + 1) in _PLAIN_THINGS


def _is_told_more(sentence: Sentence, at: int) -> bool:
    """Return whether an amount stands behind so much of a food without a verb: "a cup of oil in all, 240 calories"."""
    for place in range(at + 1, sentence.clause_of(at)[-1] + 1):
        if is_verb(sentence, place) or sentence.text_at(place) == "and":
            return False
        if sentence.tokens[place].amount.unit in AMOUNT_UNITS:
            return sentence.text_at(place - 1) == ","
    return False


def _if_eaten(sentence: Sentence, at: int) -> bool:
    """Return whether so many are eaten in a condition: "if you eat all four", "you'd need to eat three"."""
    first = sentence.clause_of(at)[0]
    before = [sentence.text_at(place) for place in range(first, at)]
    if before[:1] == ["with"] and is_serving(sentence, at + 1) and not sentence.tokens[at].amount.unit:
        return True  # "with two slices each, that's"
    return not _ON_CONDITION.isdisjoint(before) and not _EATS.isdisjoint(before) and not sentence.tokens[at].amount.unit


def _may_be_of(sentence: Sentence, claim: Claim, at: int) -> bool:
    """Return whether an amount said of the dish may be of so much that is named before it, or of so many eaten."""
    if not isinstance(claim, (AmountClaim, DayShareClaim)) or claim.about != THE_DISH:
        return False
    same = sentence.clauses[at] == sentence.clauses[claim.places[0]] and at < min(claim.places)
    named = sentence.tokens[at].amount.unit in MEASURES or sentence.text_at(at + 1) == "of"
    return _if_eaten(sentence, at) or (same and named)
