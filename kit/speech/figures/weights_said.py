"""What a serving is said to weigh, and how much of a food it is said to hold."""

from dataclasses import dataclass

from kit.meal.certainty import Range
from kit.rules.naming import measure_said, short_name
from kit.rules.verdicts import CANNOT_TELL, HOLDS, OFF
from kit.speech.about.parts import ONE_PIECE, is_dish, is_serving
from kit.speech.about.slots import negated
from kit.speech.claim import FOOD, THE_DISH, WHOLE, About, Claim, Edit, Finding
from kit.speech.values import called, food_grams, pinned
from kit.speech.words.agreement import fits
from kit.speech.words.foods_said import FoodWord
from kit.speech.words.quantities_said import WEIGHTS
from kit.speech.words.sentence import Sentence, food_at
from kit.speech.words.tokens import NO_QUANTITY, Quantity
from kit.talk.dish import Dish
from kit.texts import listing, number
from kit.texts import one as one_of

_HOLDS_FOOD = frozenset("has have holds hold with gets get contains is comes you gives brings".split())


@dataclass(frozen=True, slots=True)
class WeightClaim(Claim):
    """A serving weighs so much, or holds so much of a food."""

    said: Quantity = NO_QUANTITY
    foods: tuple[FoodWord, ...] = ()
    cooked: bool = False  # "a cup of cooked rice"
    start: int = 0
    end: int = 0


def weight_at(sentence: Sentence, about: list[About], at: int, said: Quantity) -> WeightClaim | None:
    """Return what a serving is said to weigh, or how much of a food it holds, at a quantity; None where neither."""
    if sentence.text_at(at - 1) in ("as", "than", "of", "from"):
        return None
    clause = list(sentence.clause_of(at))
    words = {sentence.text_at(place) for place in clause}
    first = clause[0]
    is_so_much = (
        sentence.text_at(at - 1) in ("is", "are") and at - 2 in (first, first + 1) and is_serving(sentence, at - 2)
    )
    told = is_so_much and said.unit in ("g", "kg", "oz", "lb") and not sentence.is_a(at + 1, "nutrient")
    weighs_in = "weigh in" in sentence.plain or "weighs in" in sentence.plain  # at 160 calories
    counted = said.unit in ("g", "mg") or any(sentence.tokens[place].amount.unit == "kcal" for place in clause)
    told_in = weighs_in and counted  # "the fiber weighs in at six grams", "pistachios at 160 calories an ounce"
    weighs = (words & {"weighs", "weigh", "weight"} and not told_in) or told  # "a slice is about 100 grams"
    if weighs and said.unit in WEIGHTS and sentence.text_at(at + 1) != "of":
        if sentence.text_at(at - 3).endswith(("whole", "entire")):  # "the whole lasagna weighs", of lasagna noodles
            return WeightClaim((at,), About(WHOLE), negated(sentence, at), said)
        if sentence.text_at(first + 1) in ONE_PIECE and sentence.text_at(first) in ("the", "this", "our", "my"):
            return WeightClaim((at,), About(WHOLE), negated(sentence, at), said)  # "the cake weighs"
        if food_at(sentence, at - 2) is not None and about[at].kind == FOOD:
            return WeightClaim((at,), about[at], negated(sentence, at), said, about[at].foods)
        return WeightClaim((at,), about[at], negated(sentence, at), said)
    each = (
        words & {"each", "every", "everyone", "everybody", "apiece", "per", "person"}
        or any(
            sentence.text_at(place) in ("a", "one", "per")
            and place + 1 < len(sentence)
            and is_dish(sentence, place + 1)
            for place in clause
        )
        or any(is_serving(sentence, place) for place in (clause[0], clause[0] + 1))
    )
    over = at + 1
    while sentence.text_at(over) in ("of", "the", "raw", "cooked", "dry"):
        over += 1
    food = food_at(sentence, over)
    if not each or food is None or is_dish(sentence, over) or not food.inside or sentence.is_a(over, "nutrient"):
        return None
    if not words & _HOLDS_FOOD:
        return None
    cooked = any(text in ("cooked", "boiled") for text in sentence.texts[at + 1 : over])
    return WeightClaim((at, over), THE_DISH, negated(sentence, at), said, (food,), cooked)


def judge_weight(claim: WeightClaim, dish: Dish) -> Finding:
    """Judge a weight against the recipe, or against what a serving weighs as eaten."""
    if claim.foods:
        found = pinned(dish, claim.foods)
        if isinstance(found, Finding):
            return found
        if len({food.key for food in found}) > 1:
            names = listing([short_name(food) for food in found])
            return Finding(CANNOT_TELL, f"{names} are all meant: say it of one of them")
        food = found[0]
        if food.state == "dry" and (claim.cooked or any(word in claim.foods[0].text for word in ("cooked", "boiled"))):
            return Finding(CANNOT_TELL, f"the recipe weighs the {short_name(food)} dry; say which is meant")
        grams = food_grams(food, About(FOOD, 1.0, claim.foods, claim.said.unit))
        if grams is None:
            return Finding(CANNOT_TELL, f"what a {claim.said.unit} of {short_name(food)} weighs is not known")
        of, because = (
            dish.grams(food),
            f"a serving holds {number(dish.grams(food).value)} g of {short_name(food)}, by the recipe",
        )
    else:
        grams = WEIGHTS[claim.said.unit]
        whole = dish.subject.serving_grams * (
            dish.numbers.recipe.servings if claim.about.kind == WHOLE else claim.about.count
        )
        if whole != whole or whole <= 0:
            return Finding(CANNOT_TELL, "what the dish weighs is not known")
        lightest, heaviest = dish.subject.heavier
        of = Range(whole, min(0.85, lightest) * whole, max(1.15, heaviest) * whole)
        because = f"it weighs about {number(whole)} g ({number(of.low)} to {number(of.high)}) as eaten"
    said = Quantity(claim.said.low * grams, claim.said.high * grams, "g", claim.said.relation)
    near = Range(of.value, min(of.low, 0.93 * of.value), max(of.high, 1.07 * of.value))
    result = fits(said, near if claim.foods else of)
    if claim.said.relation == "exactly":
        result = False
    if claim.negated and result is not None:
        result = not result
    if result is None:
        return Finding(CANNOT_TELL, f"{because}: too near to tell")
    if result:
        return Finding(HOLDS, because)
    words = in_unit(of.value / grams, claim.said.unit)
    edit = Edit(claim.start, claim.end, words) if words and not claim.negated else None
    held = [called(dish, food) for food in found] if claim.foods and not isinstance(found, Finding) else []
    told = (words, in_unit(of.value, "g"))
    return Finding(
        OFF, because, edit, tuple(f"{{serving}} holds {one} of {name}." for name in held for one in told if one)
    )


def in_unit(value: float, unit: str) -> str:
    """Return a weight or volume in a unit as it is said: a part of one, halves, whole ones, fives; empty for no more.

    Examples
    --------
    >>> in_unit(4.02, "oz"), in_unit(0.26, "lb"), in_unit(0.51, "tsp"), in_unit(113, "g")
    ('about 4 ounces', 'about a quarter of a pound', 'about half a teaspoon', 'about 110 grams')
    """
    if unit == "cup" and value < _SPOONED:
        return in_unit(_SPOONS_TO_A_CUP * value, "tbsp")
    single = measure_said(unit)
    if value < _PARTS_BELOW:
        fraction, part = min(_PARTS_SAID.items(), key=lambda one: abs(one[0] - value))
        return (
            f"about {part} {'' if part == 'half' else 'of '}{one_of(single)}"
            if abs(fraction - value) <= _NEAR_PART * value
            else ""
        )
    step = next(step for least, step in _STEPS if value >= least)
    said = round(value / step + 1e-9) * step
    return f"about {number(said, 1)} {single}{'' if said == 1 else 's'}"


_PARTS_SAID = {0.25: "a quarter", 1 / 3: "a third", 0.5: "half", 2 / 3: "two thirds"}
_PARTS_BELOW, _NEAR_PART = 0.75, 0.13  # common practice, as the steps are
_STEPS = ((100, 10), (40, 5), (4, 1), (0, 0.5))
_SPOONED, _SPOONS_TO_A_CUP = 0.22, 16
