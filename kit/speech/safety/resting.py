"""How long meat rests when it is done: "cook the pork to 145 and let it rest three minutes"."""

from collections.abc import Sequence
from dataclasses import dataclass

from kit.rules.keeping import doneness_of
from kit.rules.naming import short_name
from kit.rules.verdicts import HOLDS, OFF
from kit.speech.claim import Claim, Finding
from kit.speech.safety.keeping_judged import DegreesClaim
from kit.speech.values import alone, present
from kit.speech.words.foods_said import FoodWord
from kit.speech.words.sentence import Sentence
from kit.speech.words.tokens import NO_QUANTITY, Quantity
from kit.talk.dish import Dish
from kit.texts import number

FAMILY = "keeping and safety"
_RESTS = frozenset("rest rests resting rested stand stands sit sits".split())


@dataclass(frozen=True, slots=True)
class RestClaim(Claim):
    """What was cooked rests so many minutes before it is cut."""

    said: Quantity = NO_QUANTITY
    foods: tuple[FoodWord, ...] = ()


def read(sentence: Sentence, claims: Sequence[Claim]) -> list[Claim]:
    """Return how long meat rests, where a sentence says how hot it gets.

    Parameters
    ----------
    sentence : Sentence
        The sentence.
    claims : sequence of Claim
        What was read of keeping and safety.
    """
    done = [claim for claim in claims if isinstance(claim, DegreesClaim) and claim.what == "done"]
    if not done or _RESTS.isdisjoint(sentence.words):
        return []
    found: list[Claim] = []
    for at, token in enumerate(sentence.tokens):
        led = not _RESTS.isdisjoint(sentence.texts[max(0, at - 5) : at])
        one = token.parts.get("unit") == "minute" and sentence.text_at(at - 1) == "a"  # "let it stand a minute"
        said = Quantity(1.0, 1.0, "minute") if one else token.amount
        if said.unit == "minute" and led and at not in sentence.used:
            sentence.used.add(at)
            found.append(RestClaim((at,), said=said, foods=done[0].foods))
    return found


def judge(claim: RestClaim, dish: Dish) -> Finding:
    """Judge how long meat rests: whole cuts of it 3 minutes (USDA FSIS); what need not rest may."""
    foods = [food for word in claim.foods for food in (present(dish, word) or alone(dish, word))]
    if not foods:
        foods = [part.food for part in dish.numbers.recipe.ingredients]
    needs = [(told, food) for food in foods if (told := doneness_of(food)) is not None and told.rest_minutes]
    if not needs:
        return Finding(HOLDS, "it is safe without resting (USDA FSIS)")
    rule, food = needs[0]
    least = rule.rest_minutes
    because = f"{short_name(food)} rests {number(least)} minutes before it is cut (USDA FSIS)"
    enough = claim.said.low >= least and claim.said.relation not in ("under", "at most", "nearly", "well under")
    degrees = f"{number(rule.fahrenheit)} degrees inside"
    instead = f"Cook the {short_name(food)} to {degrees} and let it rest {number(least)} minutes."
    return Finding(HOLDS, because) if enough else Finding(OFF, because, None, (instead,))
