"""Who brings what, judged."""

from dataclasses import dataclass

import numpy as np

from kit.food.composition import Food
from kit.meal.certainty import Range
from kit.rules.naming import is_plural, short_name
from kit.rules.spoken import share_words
from kit.rules.verdicts import CANNOT_TELL, HOLDS, OFF
from kit.speech.claim import Claim, Finding
from kit.speech.proportions.share_claim import share_edit
from kit.speech.values import called, choices, ends, lacking, of_nutrient, pinned, said_thing, scaled, unit_of
from kit.speech.words.agreement import fits
from kit.speech.words.foods_said import FoodWord
from kit.speech.words.tokens import Quantity
from kit.talk.dish import Dish
from kit.texts import listing, percent


@dataclass(frozen=True, slots=True)
class DishShareClaim(Claim):
    """A share of a nutrient that some foods bring, or their rank among those that bring it."""

    nutrient: str = ""
    said: Quantity | None = None
    rank: int = 0
    start: int = 0  # of the words of the share; below 0 where no other share would fit there
    end: int = 0
    besides: tuple[FoodWord, ...] = ()  # the others, whose share is taken off first: "most of the rest"


def judge(claim: DishShareClaim, dish: Dish) -> Finding:
    """Judge what foods of the dish bring of a nutrient."""
    name = "sodium" if claim.nutrient == "salt" else claim.nutrient
    found = pinned(dish, claim.about.foods)
    if isinstance(found, Finding):
        if claim.about.foods and claim.about.foods[0].inside:
            return found
        return Finding(OFF, found.because)
    several = choices(claim.about.foods, dish)
    if several and len(claim.about.foods) == 1:
        each = [_judged(claim, dish, name, [food]) for food in found] + [_judged(claim, dish, name, found)]
        if len({one.verdict for one in each}) > 1:
            return Finding(CANNOT_TELL, f"which {claim.about.foods[0].text} is meant?", choices=several)
        return each[-1]
    return _judged(claim, dish, name, found)


def _judged(claim: DishShareClaim, dish: Dish, name: str, found: list[Food]) -> Finding:
    parts = of_nutrient(name)
    of = dish.share(found, parts[0][0])
    if of.value != of.value:
        return Finding(CANNOT_TELL, f"the dish has no {said_thing(name)} that the table knows")
    names = listing([called(dish, food) for food in found])
    verb = "bring" if len(found) > 1 or is_plural(names) else "brings"
    brought = scaled(dish.brought(found, parts[0][0]), parts[0][1])
    because = (
        f"the {names} {verb} {ends(brought, unit_of(name))} of {said_thing(name)} in a serving, "
        f"{percent(of.value)} of all"
    )
    if claim.rank:
        return _ranked(claim, dish, name, found, of, because)
    assert claim.said is not None
    if claim.said.relation == "rest":
        return Finding(CANNOT_TELL, f'{because}; say how much "the rest" is')
    if len(claim.about.foods) > 1 and not claim.negated and (idle := _bringing_none(dish, parts[0][0], found)):
        return Finding(OFF, f"{because}, none of it from the {short_name(idle)}")
    if claim.besides:
        rest = _rest_of(claim, dish, parts[0][0], found)
        if rest is None:
            return Finding(CANNOT_TELL, f"{because}; say how much of the {said_thing(name)} is meant")
        of = scaled(of, 1 / rest)
        because = f"{because} and {percent(of.value)} of what the others named leave"
    unknown = lacking(dish, name)
    result = fits(claim.said, of)
    if unknown and not (result and of.value >= 0.9):
        # What is missing can only make the share smaller.
        result = False if result is False and claim.said.value > of.value else None
    if claim.negated and result is not None:
        result = not result
    because = f"{because} ({dish.source})"
    if result is None:
        return Finding(
            CANNOT_TELL,
            f"{because}: too near to tell"
            if not unknown
            else f"{because}, but a part of the dish has no value in the table",
        )
    if result:
        return Finding(HOLDS, because)
    words = share_words(of, f"the {said_thing(name)}").replace("about all of", "nearly all of")
    hers = listing([word.text for word in claim.about.foods])
    if names == names.lower() and hers:  # her own words, where no name has a capital letter
        names, verb = hers, "bring" if len(claim.about.foods) > 1 or is_plural(hers) else "brings"
    edit = None if claim.negated or claim.start < 0 else share_edit(claim.start, claim.end, of.value)
    return Finding(OFF, because, edit, (f"The {names} {verb} {words}.",))


def _bringing_none(dish: Dish, nutrient: str, found: list[Food]) -> Food | None:
    """Return one of several foods named together that brings nothing worth naming of a nutrient; None where all do."""
    shares = [(dish.share([food], nutrient).value, food) for food in found]
    return next((food for share, food in shares if share < _NOTHING), None)


_NOTHING = 0.003  # of all there is


def _rest_of(claim: DishShareClaim, dish: Dish, nutrient: str, found: list[Food]) -> float | None:
    """Return the share of a nutrient that the others named before leave; None where it is not known."""
    others = pinned(dish, claim.besides)
    if isinstance(others, Finding) or {food.key for food in others} & {food.key for food in found}:
        return None
    rest = 1 - dish.share(others, nutrient).value
    return rest if rest > 0 else None


def _ranked(claim: DishShareClaim, dish: Dish, name: str, found: list[Food], of: Range, because: str) -> Finding:
    ranking = by_what_they_bring(dish, name)
    own = {food.key for food in found}
    mine = dish.brought(found, of_nutrient(name)[0][0])
    others = [food for food in ranking if food.key not in own]
    above = [food for food in others if dish.brought([food], of_nutrient(name)[0][0]).value > mine.value]
    right = len(above) == claim.rank - 1
    told = f"{because}; first is the {short_name(ranking[0])}" if ranking else because
    close = [
        food
        for food in others
        if abs(dish.brought([food], of_nutrient(name)[0][0]).value - mine.value) < 0.05 * max(mine.value, 1e-9)
    ]
    clearly = [food for food in above if dish.brought([food], of_nutrient(name)[0][0]).value > 1.05 * mine.value]
    if close and len(clearly) < claim.rank:
        return Finding(CANNOT_TELL, f"{told}: too near to the {short_name(close[0])} to tell")
    if right != claim.negated:
        return Finding(HOLDS, f"{told} ({dish.source})")
    sentences: tuple[str, ...] = ()
    if ranking:
        lead = called(dish, ranking[0])
        sentences = (f"The {lead} {'are' if is_plural(lead) else 'is'} the main source of {said_thing(name)} in it.",)
    return Finding(OFF, f"{told} ({dish.source})", None, sentences)


def by_what_they_bring(dish: Dish, name: str) -> list[Food]:
    """Return the foods of the dish as it is now, the one that brings most of a nutrient first."""
    own = of_nutrient(name)[0][0]
    brings: dict[str, float] = {}
    foods = {}
    parts = zip(dish.numbers.recipe.ingredients, np.nan_to_num(dish.numbers.brings(own)).tolist(), strict=True)
    for part, amount in parts:
        if part.grams > 0:
            foods[part.food.key] = part.food
            brings[part.food.key] = brings.get(part.food.key, 0.0) + amount
    return sorted(foods.values(), key=lambda food: -brings[food.key])
