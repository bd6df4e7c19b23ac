"""Foods that are thanked for so much of something: "thanks to the carrots it has 34 grams of protein"."""

from collections.abc import Sequence

from kit.speech.about.parts import after_determiners
from kit.speech.claim import FOOD, About, Claim
from kit.speech.doubting.counted import AMOUNTS
from kit.speech.proportions.dish_shares_judged import DishShareClaim
from kit.speech.words.sentence import Sentence, food_at
from kit.speech.words.tokens import SHARE, Quantity

_CAUSES = ("thanks to", "because of", "due to", "owing to", "on account of", "courtesy of")
_A_GOOD_PART = Quantity(0.3, 0.3, SHARE, "at least", True)  # of all, for what is thanked (common practice)


def thanked(sentence: Sentence, claims: Sequence[Claim]) -> list[Claim]:
    """Return that a food of the dish brings a good part of what it is thanked for.

    Parameters
    ----------
    sentence : Sentence
        The sentence, when every family has read it.
    claims : sequence of Claim
        What they have read.
    """
    counted = [claim for claim in claims if isinstance(claim, AMOUNTS) and claim.about.kind != FOOD]
    found: list[Claim] = []
    for at in sentence.where(_CAUSES) if counted else ():
        over = after_determiners(sentence, at + 1)
        food = food_at(sentence, over)
        if food is None or not food.inside or over in sentence.used or sentence.is_a(over, "nutrient"):
            continue
        about = About(FOOD, 1.0, (food,))
        nutrients = dict.fromkeys(claim.nutrient for claim in counted)
        found += [DishShareClaim((at, over), about, False, one, _A_GOOD_PART, 0, -1, -1) for one in nutrients]
    return found
