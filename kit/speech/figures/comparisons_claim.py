"""A comparison as it is claimed."""

from dataclasses import dataclass

from kit.speech.claim import THE_DISH, About, Claim
from kit.speech.words.tokens import Quantity

IN_THE_DISH = "serving of this dish"  # the basis of "the yogurt brings more fat than the nuts"


@dataclass(frozen=True, slots=True)
class ComparisonClaim(Claim):
    """More, less, as much as or so many times as much of a nutrient as something else has.

    Attributes
    ----------
    nutrient : str
        What is compared.
    sign : int
        1 for more, -1 for less, 0 for as much or so many times as much.
    times : Quantity or None
        So many times as much, or so much more or less as a fraction of the other.
    other : About
        What it is compared with.
    other_nutrient : str
        When two nutrients of the same thing are compared.
    basis : str
        ``"100 g"``, ``"cup"``, ``"100 kcal"``, ``"serving"``, `IN_THE_DISH`; empty when none was said.
    """

    nutrient: str = ""
    sign: int = 0
    times: Quantity | None = None
    other: About = THE_DISH
    other_nutrient: str = ""
    basis: str = ""
