"""An amount of one serving said of more or less: of a dish and a food together, of several, of a piece of it."""

from itertools import product

from kit.speech.about.parts import back, is_dish, is_verb
from kit.speech.about.unread import asked
from kit.speech.claim import FOOD, SERVING, Claim
from kit.speech.figures.amounts import AmountClaim
from kit.speech.figures.comparisons_claim import ComparisonClaim
from kit.speech.proportions.day_shares import DayShareClaim
from kit.speech.words.sentence import Sentence, food_at

_INSIDE = ("in", "of", "per", "for", "to")
_OF_THEM = ("these", "those", "them", "the", "our", "my", "your")
_JOINTS = frozenset(("and", "plus", "&"))


def of_both(sentence: Sentence, claim: Claim) -> Claim:
    """Return an amount of dish and food together as one that is asked about: "a bowl and a glass of milk make"."""
    if not isinstance(claim, (AmountClaim, DayShareClaim)):
        return claim
    before = [at for at in sentence.clause_of(min(claim.places)) if at < min(claim.places)]
    dishes = [at for at in before if is_dish(sentence, at) and sentence.text_at(back(sentence, at)) not in _INSIDE]
    foods = [at for at in before if food_at(sentence, at) is not None and at not in dishes]
    for one, other in ((min(pair), max(pair)) for pair in product(dishes, foods)):
        between = sentence.texts[one + 1 : other]
        joined = not _JOINTS.isdisjoint(between) and not any(is_verb(sentence, at) for at in range(one + 1, other))
        if joined and (other + 1 == min(claim.places) or is_verb(sentence, other + 1)):
            return asked(sentence, (one, other, *claim.places), (one, other))
    return claim


def of_several(sentence: Sentence, claim: Claim) -> Claim:
    """Return an amount of one serving as asked about where several are named: "any two of these muffins have"."""
    if not isinstance(claim, (AmountClaim, DayShareClaim)) or claim.about.kind == FOOD or claim.about.count != 1:
        return claim
    for at, said in sentence.quantities():
        several = not said.unit and not said.is_fraction and said.low > 1 and at < min(claim.places)
        if several and sentence.text_at(at + 1) == "of" and sentence.text_at(at + 2) in _OF_THEM:
            return asked(sentence, (at, *claim.places), (at, at + 2))
    return claim


def of_a_piece(sentence: Sentence, claim: Claim) -> Claim:
    """Return what is said of one of the pieces of a serving as asked about: "fifteen grams a taco"."""
    if not isinstance(claim, (AmountClaim, ComparisonClaim, DayShareClaim)) or claim.about.kind != SERVING:
        return claim
    pieces = [
        at for at in sentence.places("piece") if abs(sentence.clauses[at] - sentence.clauses[claim.places[0]]) < 2
    ]
    return asked(sentence, (*pieces, *claim.places), pieces) if pieces else claim
