"""A content wording as it is claimed."""

from dataclasses import dataclass

from kit.speech.claim import Claim
from kit.speech.words.foods_said import FoodWord


@dataclass(frozen=True, slots=True)
class WordingClaim(Claim):
    """A regulated wording of a nutrient, or of none ("lean")."""

    wording: str = ""
    nutrient: str = ""
    percent: float = 0.0
    start: int = 0
    end: int = 0
    adjective: bool = False
    by_itself: bool = False  # "pecans are a good source": of the food as such, and not of what is in the dish
    excepted: tuple[FoodWord, ...] = ()  # "no added salt other than the soy sauce"
