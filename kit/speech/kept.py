"""What holds in a sentence of which another part does not, told in a sentence of its own."""

from kit.speech.allergens.allergens_judged import AllergenClaim, plain_name
from kit.speech.claim import SERVING, UNKNOWN, Claim
from kit.speech.descriptions.kinds import KindClaim
from kit.speech.descriptions.wordings_claim import WordingClaim
from kit.speech.descriptions.wordings_judged import as_worded
from kit.speech.figures.amounts import AmountClaim
from kit.speech.figures.amounts_told import sentences
from kit.speech.values import Amount, amount_of
from kit.talk.dish import Dish


def kept(claim: Claim, dish: Dish) -> str:
    """Return a claim that holds in a sentence of its own; empty where it is not told again.

    Parameters
    ----------
    claim : Claim
        A claim that holds of the dish.
    dish : Dish
        The dish as it is now.
    """
    if isinstance(claim, AmountClaim):
        return "" if claim.negated else _amount(claim, dish)
    if isinstance(claim, WordingClaim):
        return "" if claim.negated else as_worded(claim, dish)
    if claim.about.kind != SERVING:
        return ""
    if isinstance(claim, KindClaim):
        return "" if claim.negated or claim.but else f"It is {claim.said}."
    return _allergen(claim) if isinstance(claim, AllergenClaim) else ""


def _amount(claim: AmountClaim, dish: Dish) -> str:
    if claim.about.kind == UNKNOWN:
        return ""
    found = amount_of(dish, claim.nutrient, claim.about)
    told = sentences(claim.nutrient, claim.about, found, claim.given_by) if isinstance(found, Amount) else ()
    return told[0] if told else ""


def _allergen(claim: AllergenClaim) -> str:
    said_plainly = not (claim.safe or claim.packages or claim.only or claim.but or claim.perhaps or claim.lost)
    if not said_plainly or claim.allergen == "any":
        return ""
    free = claim.free != claim.negated
    return f"It {'is free of' if free else 'contains'} {plain_name(claim.allergen)}."
