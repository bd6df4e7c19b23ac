"""A share of something that is said as a number: "a third", "60 percent"."""

from dataclasses import dataclass

from kit.meal.certainty import Range
from kit.rules.spoken import fraction_words
from kit.rules.verdicts import CANNOT_TELL, HOLDS, OFF
from kit.speech.about.slots import Named
from kit.speech.claim import Claim, Edit, Finding
from kit.speech.words.agreement import fits
from kit.speech.words.foods_said import FoodWord
from kit.speech.words.tokens import NO_QUANTITY, Quantity

_SAID = (0.03, 0.97)  # a share nearer to nothing or to all is not said as a fraction


@dataclass(frozen=True, slots=True)
class Share:
    """A share that a sentence says.

    Attributes
    ----------
    place : int
        Where the share stands.
    said : Quantity
        How much, as a fraction.
    whole : tuple of Named
        What it is a share of: nutrients, energy among them.
    by_nutrient : Named or None
        The nutrient that brings it, for shares of the energy.
    foods : tuple of FoodWord
        The foods that bring it.
    food_places : tuple of int
        Where they stand.
    of_day : bool
        Whether it is a share of what is needed in a day.
    of_amounts : frozenset of int
        The places of nutrients whose amount was said: they are accounted for by that.
    """

    place: int
    said: Quantity
    whole: tuple[Named, ...]
    by_nutrient: Named | None = None
    foods: tuple[FoodWord, ...] = ()
    food_places: tuple[int, ...] = ()
    of_day: bool = False
    of_amounts: frozenset[int] = frozenset()

    @property
    def named_here(self) -> tuple[int, ...]:
        """The places of the nutrients that this share has named; one with an amount of its own is the amount's."""
        return tuple(one.place for one in self.whole if one.place not in self.of_amounts)


@dataclass(frozen=True, slots=True)
class ShareClaim(Claim):
    """A share that is claimed of a nutrient, and where in the sentence its number stands."""

    nutrient: str = ""
    said: Quantity = NO_QUANTITY
    start: int = 0
    end: int = 0


def judged_as_said(claim: ShareClaim, of: Range, because: str, sentences: tuple[str, ...] = ()) -> Finding:
    """Return whether a share is what it was said to be, with its number put right, or sentences, where it is not."""
    result = fits(claim.said, of)
    if result is None:
        return Finding(CANNOT_TELL, f"{because}: too near to tell")
    if result != claim.negated:
        return Finding(HOLDS, because)
    return Finding(OFF, because, with_share(claim, of.value), sentences)


def with_share(claim: ShareClaim, share: float) -> Edit | None:
    """Return the change of the number that makes the claim hold; None where it is denied or not said as a fraction."""
    return None if claim.negated else share_edit(claim.start, claim.end, share)


def share_edit(start: int, end: int, share: float) -> Edit | None:
    """Return a share in place of the words from one place to another; None where it is not said as a fraction."""
    least, most = _SAID
    return Edit(start, end, fraction_words(share)) if least < share < most and end > start else None
