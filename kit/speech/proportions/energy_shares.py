"""Shares of the energy: "a third of the calories come from fat", "carbohydrate makes up over half of the calories"."""

from collections.abc import Iterator
from dataclasses import dataclass

from kit.food.energy import KCAL_PER_GRAM
from kit.food.nutrients import nutrient_index
from kit.meal.certainty import Range
from kit.meal.nutrition import ATWATER_GENERAL, ENERGY_SOURCES
from kit.rules.spoken import share_words
from kit.rules.verdicts import CANNOT_TELL
from kit.speech.about.parts import is_verb
from kit.speech.about.slots import Named, negated, share_at
from kit.speech.about.unread import asked
from kit.speech.claim import FOOD, About, Claim, Finding
from kit.speech.proportions.share_claim import Share, ShareClaim, judged_as_said
from kit.speech.proportions.shares import MACROS
from kit.speech.values import alone, said_thing
from kit.speech.words.sentence import Sentence
from kit.speech.words.tokens import SHARE, Quantity
from kit.talk.dish import Dish
from kit.talk.placeholders import energy_share
from kit.texts import number, percent

FAMILY = "share of the energy"
_FATS = ("fat", "saturated_fat", "monounsaturated_fat", "polyunsaturated_fat")
_KCAL = dict.fromkeys(_FATS, KCAL_PER_GRAM["fat"])


@dataclass(frozen=True, slots=True)
class EnergyShareClaim(ShareClaim):
    """A share of the energy that comes from a nutrient."""


def read(sentence: Sentence, about: list[About], found: list[Share]) -> list[Claim]:
    """Return the shares of the energy that a sentence claims."""
    claims: list[Claim] = [*_calories_from(sentence)]
    for share in found:
        if share.by_nutrient is None or share.place in sentence.used:
            continue
        places = sorted({share.place, share.by_nutrient.place})
        sentence.used.update({*places, *share.named_here})
        if sentence.is_a(share.by_nutrient.place + 1, "nutrient", "energy"):
            sentence.used.add(share.by_nutrient.place + 1)  # "half of these are fat calories"
        token = sentence.tokens[share.place]
        if share.said.relation == "rest" and _all_named(sentence, share.by_nutrient.place, claims):
            sentence.used.add(share.by_nutrient.place + 2)
            continue  # "half from fat, the rest from carbohydrate and protein": nothing more is told
        said = share.said if share.said.relation != "rest" else _what_is_left(claims)
        if said is None:
            claims.append(asked(sentence, (share.place,)))
            continue
        subject = about[share.place] if about[share.place].kind == FOOD and about[share.place].measure else About()
        denied = negated(sentence, share.place)
        for one in (*_with_each(sentence, share), share.by_nutrient):
            sentence.used.add(one.place)
            spots = tuple(sorted({share.place, one.place}))
            claims.append(EnergyShareClaim(spots, subject, denied, one.nutrient, said, token.start, token.end))
    return claims


def _with_each(sentence: Sentence, share: Share) -> list[Named]:
    """Return the other nutrients that a share is told of too: "fat and protein each bring about a quarter"."""
    by = share.by_nutrient
    if by is None or by.place > share.place or sentence.words.isdisjoint(("each", "apiece")):
        return []
    behind = sentence.clause_of(share.place)[-1] + 1
    each = sentence.text_at(by.place + 1) == "each" or any(
        sentence.text_at(place) in ("each", "apiece") and sentence.text_at(place + 1) in ("", ".", "!", ",")
        for place in range(share.place + 1, behind)
    )
    found, place = [], by.place - 1
    while each and (sentence.text_at(place) in (",", "and", "the") or sentence.is_a(place, "nutrient")):
        name = sentence.tokens[place].parts.get("nutrient", "")
        found += [Named(name, place)] if name in MACROS and place not in sentence.used else []
        place -= 1
    return found if each else []


def _all_named(sentence: Sentence, at: int, claims: list[Claim]) -> bool:
    """Return whether all that brings energy is named, two of them as the rest of it."""
    joined = sentence.text_at(at - 1) in ("from", "is", "are") and sentence.text_at(at + 1) == "and"
    ends = sentence.is_a(at + 2, "nutrient") and sentence.text_at(at + 3) in ("", ".", "!")
    if not (joined and ends) or len(claims) != 1:
        return False
    first = claims[0].nutrient if isinstance(claims[0], EnergyShareClaim) and not claims[0].negated else ""
    rest = [sentence.tokens[place].parts["nutrient"] for place in (at, at + 2)]
    return sorted((first, *rest)) == sorted(ENERGY_SOURCES)


_ROUNDED = 0.025  # what each share that is said may leave for the rest, being rounded: common practice


def _what_is_left(claims: list[Claim]) -> Quantity | None:
    """Return the share that those before leave: "a third from fat, the rest from carbohydrate"; None where it is open.

    A bound leaves a bound, and what is denied leaves nothing that can be told.
    """
    said = [claim.said for claim in claims if isinstance(claim, EnergyShareClaim) and not claim.negated]
    counted = all(one.relation in ("about", "exactly", "nearly", "just over") for one in said)
    rest, rounded = 1 - sum(one.value for one in said), _ROUNDED * len(said)
    if not said or not counted or rest <= 0:
        return None
    return Quantity(max(0.0, rest - rounded), rest + rounded, SHARE, "between", True)


def _calories_from(sentence: Sentence) -> Iterator[EnergyShareClaim]:
    """Yield shares said turned round: "calories from fat are under a third of the total"."""
    for at in sentence.places("nutrient"):
        name = sentence.tokens[at + 2].parts.get("nutrient", "") if at + 4 < len(sentence) else ""
        led = sentence.tokens[at].parts["nutrient"] == "energy" and sentence.text_at(at + 1) == "from"
        if not led or name not in MACROS or not is_verb(sentence, at + 3):
            continue
        place = at + 4 + (sentence.text_at(at + 4) in ("up", "just", "only"))
        said = share_at(sentence, place) if place < len(sentence) else None
        behind = sentence.texts[place + 1 : place + 4]
        of_all = behind[:1] == (".",) or (
            behind[:1] == ("of",) and not {"total", "whole", "calories"}.isdisjoint(behind)
        )
        if said is not None and of_all:
            sentence.used.update(range(at, place + 1 + 3 * (behind[:1] == ("of",))))
            token = sentence.tokens[place]
            places = (at, at + 2, place)
            yield EnergyShareClaim(places, About(), negated(sentence, place), name, said, token.start, token.end)


def share_of_energy(dish: Dish, name: str, about: About) -> Range | None:
    """Return the share of the energy from a nutrient by the general factors; None when it is not known. [fraction]"""
    if about.kind == FOOD:
        food = alone(dish, about.foods[0])[0]
        kcal = [
            factor * float(food.per_100g[nutrient_index(one)])
            for one, factor in zip(ENERGY_SOURCES, ATWATER_GENERAL, strict=True)
        ]
        whole = sum(kcal)
        own = _KCAL.get(name, 4.0) * food[name]
        return (
            Range(own / whole, 0.93 * own / whole, min(1.0, 1.07 * own / whole))
            if whole == whole and whole > 0
            else None
        )
    if name in ENERGY_SOURCES:
        of = energy_share(dish, name)
    else:
        grams = dish.range_of(name)
        whole = sum(factor * dish.numbers[one] for one, factor in zip(ENERGY_SOURCES, ATWATER_GENERAL, strict=True))
        factor = _KCAL.get(name, 4.0) / whole if whole > 0 else float("nan")
        of = Range(grams.value * factor, grams.low * factor, grams.high * factor)
    return None if of.value != of.value else of


def judge(claim: EnergyShareClaim, dish: Dish) -> Finding:
    """Judge a share of the energy."""
    name = claim.nutrient
    if claim.about.kind == FOOD and not alone(dish, claim.about.foods[0]):
        return Finding(CANNOT_TELL, f"the table has no {claim.about.foods[0].text}")
    of = share_of_energy(dish, name, claim.about)
    if of is None:
        return Finding(CANNOT_TELL, "the shares of the energy are not known, since an amount is missing")
    because = (
        f"{said_thing(name)} gives {percent(of.value)} of the energy ({number(100 * of.low)} to "
        f"{number(100 * of.high)}) by the factors 4, 9 and 4 ({dish.source})"
    )
    gives = f"{said_thing(name).capitalize()} gives {share_words(of, 'the energy')}."
    return judged_as_said(claim, of, because, (gives,))
