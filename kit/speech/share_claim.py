"""A share of something that is said as a number: "a third", "60 percent"."""

from dataclasses import dataclass

from kit.rules.spoken import fraction_words
from kit.speech.claim import Claim, Edit
from kit.speech.tokens import NO_QUANTITY, Quantity

_SAID = (0.03, 0.97)  # a share nearer to nothing or to all is not said as a fraction


@dataclass(frozen=True, slots=True)
class ShareClaim(Claim):
    """A share that is claimed of a nutrient, and where in the sentence its number stands."""

    nutrient: str = ""
    said: Quantity = NO_QUANTITY
    start: int = 0
    end: int = 0


def with_share(claim: ShareClaim, share: float) -> Edit | None:
    """Return the change of the number that makes the claim hold; None where it is denied or not said as a fraction."""
    return None if claim.negated else share_edit(claim.start, claim.end, share)


def share_edit(start: int, end: int, share: float) -> Edit | None:
    """Return a share in place of the words from one place to another; None where it is not said as a fraction."""
    least, most = _SAID
    return Edit(start, end, fraction_words(share)) if least < share < most and end > start else None
