"""Comparisons judged per cup, per 100 g, per 100 kcal and per usual amount, or between two amounts that were said."""

from dataclasses import dataclass, replace
from math import hypot, isfinite

from kit import texts
from kit.errors import UnknownNameError
from kit.food.composition import Food
from kit.meal.certainty import Range
from kit.rules.naming import full_name, is_plural, measure_said
from kit.rules.subjects import of_food
from kit.rules.verdicts import CANNOT_TELL, HOLDS, OFF
from kit.speech.claim import FOOD, UNKNOWN, About, Finding
from kit.speech.figures.comparisons_claim import IN_THE_DISH, ComparisonClaim
from kit.speech.values import (
    Amount,
    alone,
    amount_of,
    choices,
    of_nutrient,
    present,
    said_thing,
    scaled,
    total,
    unit_of,
)
from kit.speech.words.agreement import OF_A_FRACTION, fits
from kit.speech.words.tokens import SHARE, Quantity
from kit.talk.dish import Dish, content, measure_grams
from kit.texts import counted, listing, number

BASES = ("100 g", "cup", "100 kcal", "serving")
LEAST, MOST = 1 - OF_A_FRACTION, 1 + OF_A_FRACTION
_SWELLING = ("grain", "pasta", "pulse")
_NO_DIFFERENCE = 0.03  # two amounts this near are the same for the ear


@dataclass(frozen=True, slots=True)
class _Pair:
    basis: str
    own: Range
    other: Range


def judge_comparison(claim: ComparisonClaim, dish: Dish) -> Finding:
    """Judge a comparison; see `kit.speech.figures.comparisons.judge`."""
    name = "sodium" if claim.nutrient == "salt" and not claim.other_nutrient else claim.nutrient
    if claim.other.kind == UNKNOWN:
        words = f'"{claim.other.words}"' if claim.other.words else "something that is not named"
        return Finding(CANNOT_TELL, f"it compares with {words}: name the food and how much of it")
    if claim.other_nutrient:
        return _two_nutrients(claim, dish)
    pairs = _pairs(claim, dish, name)
    if isinstance(pairs, Finding):
        return pairs
    if not pairs:
        return Finding(CANNOT_TELL, f"the table does not give the {said_thing(name)} of both")
    results = {pair.basis: _test(claim, pair) for pair in pairs}
    because = _because(claim, dish, name, pairs)
    if claim.negated:
        results = {basis: None if result is None else not result for basis, result in results.items()}
    told = set(results.values())
    if told == {True}:
        return Finding(HOLDS, because)
    if told == {False}:
        return Finding(OFF, because, None, _instead(claim, dish, name, pairs[0]))
    if True in told and False in told:
        good = listing([f"per {basis}" for basis, result in results.items() if result])
        return Finding(CANNOT_TELL, f"that holds only {good}; say which is meant: {because}")
    return Finding(CANNOT_TELL, f"too near to tell: {because}")


def _two_nutrients(claim: ComparisonClaim, dish: Dish) -> Finding:
    found = [amount_of(dish, name, claim.about) for name in (claim.nutrient, claim.other_nutrient)]
    amounts = [one for one in found if isinstance(one, Amount)]
    if len(amounts) < 2:
        return next(one for one in found if isinstance(one, Finding))
    units = [unit_of(claim.nutrient), unit_of(claim.other_nutrient)]
    factors = {"g": 1.0, "mg": 1e-3, "µg": 1e-6}
    if not all(unit in factors for unit in units):
        return Finding(CANNOT_TELL, "calories and grams cannot be compared")
    pair = _Pair("serving", scaled(amounts[0].of, factors[units[0]]), scaled(amounts[1].of, factors[units[1]]))
    result = _test(claim, pair)
    because = (
        f"{amounts[0].begin} {number(pair.own.value, 1)} g of {said_thing(claim.nutrient)} and "
        f"{number(pair.other.value, 1)} g of "
        f"{said_thing(claim.other_nutrient)}"
    )
    if claim.negated and result is not None:
        result = not result
    return Finding(CANNOT_TELL if result is None else HOLDS if result else OFF, because)


def _options(about: About, dish: Dish) -> list[Food]:
    return alone(dish, about.foods[0]) if about.foods else []


def _pairs(claim: ComparisonClaim, dish: Dish, name: str) -> list[_Pair] | Finding:
    own, other = claim.about, claim.other
    for side in (own, other):
        if side.kind == FOOD and not _options(side, dish):
            return Finding(CANNOT_TELL, f"the table has no {side.foods[0].text}")
        if side.kind == FOOD and len(side.foods) == 1:
            options = _options(side, dish)
            if len(options) > 1:
                return Finding(
                    CANNOT_TELL,
                    f"which {side.foods[0].text} is meant?",
                    choices=choices([side.foods[0]], dish, inside=False),
                )
    if claim.basis == IN_THE_DISH:
        brought = [_brought_in(dish, side, name) for side in (own, other)]
        return [_Pair(IN_THE_DISH, brought[0], brought[1])]
    measured = [side.kind != FOOD or bool(side.measure) for side in (own, other)]
    if all(measured):
        return _amounts(dish, name, own, other)
    if own.kind != FOOD and not own.foods and other.kind == FOOD and not claim.basis:
        # "A plate has more protein than chicken": so much of the dish against every usual amount of the food.
        return _dish_pairs(dish, name, other)
    usual = [basis for basis in BASES if (name, basis) != ("energy", "100 kcal")]  # 100 kcal are as many of anything
    bases = (claim.basis,) if claim.basis else usual
    foods = [_options(side, dish)[0] if side.kind == FOOD else None for side in (own, other)]
    if not claim.basis and _swollen(foods):
        return Finding(CANNOT_TELL, "one is dry and the other cooked: say which form is meant, and per what")
    pairs = []
    for basis in bases:
        sides = [_on_basis(dish, food, name, basis) for food in foods]
        if sides[0] is not None and sides[1] is not None:
            pairs.append(_Pair(basis, sides[0], sides[1]))
    return pairs


def _brought_in(dish: Dish, about: About, name: str) -> Range:
    """Return what foods of the dish bring to a serving of it."""
    foods = [food for word in about.foods for food in present(dish, word)]
    return total([scaled(dish.brought(foods, own), factor) for own, factor in of_nutrient(name)])


def _swollen(foods: list[Food | None]) -> bool:
    states = {food.state == "dry" for food in foods if food is not None and food.group in _SWELLING}
    return len(states) > 1


def _amounts(dish: Dish, name: str, own: About, other: About) -> list[_Pair] | Finding:
    found = [amount_of(dish, name, about) for about in (own, other)]
    for one in found:
        if isinstance(one, Finding):
            return one
    amounts = [one for one in found if isinstance(one, Amount)]
    return [_Pair("what was said", amounts[0].of, amounts[1].of)]


def _dish_pairs(dish: Dish, name: str, other: About) -> list[_Pair]:
    food = _options(other, dish)[0]
    pairs = []
    for basis in ("100 g", "100 kcal", "serving"):
        sides = [_on_basis(dish, None, name, basis), _on_basis(dish, food, name, basis)]
        if sides[0] is not None and sides[1] is not None:
            pairs.append(_Pair(basis, sides[0], sides[1]))
    return pairs


def _on_basis(dish: Dish, food: Food | None, name: str, basis: str) -> Range | None:
    if food is None:
        if basis == "cup":
            return None
        parts = [(dish.in_grams(own, dish.subject.grams(basis)[0]), factor) for own, factor in of_nutrient(name)]
        known = [scaled(part, factor) for part, factor in parts if part is not None]
        return total(known) if len(known) == len(parts) else None
    if basis == "cup":
        try:
            grams = measure_grams(food, "cup")
        except UnknownNameError:
            return None
    else:
        grams = of_food(food).grams(basis)[0]
    values = [scaled(content(food, own, grams, dish.talk.rules), factor) for own, factor in of_nutrient(name)]
    of = total(values) if len(values) > 1 else values[0]
    return of if isfinite(of.value) else None


def _test(claim: ComparisonClaim, pair: _Pair) -> bool | None:
    own, other, times = pair.own, pair.other, claim.times
    if claim.sign == 0:
        assert times is not None
        ratio = own.value / other.value if other.value > 0 else float("inf")
        return _ratio(times, ratio)
    difference = claim.sign * (own.value - other.value)
    if times is None:
        if max(own.value, other.value) <= 0:
            return False
        if abs(difference) <= _NO_DIFFERENCE * max(own.value, other.value):
            return None
        unsure = hypot(own.half_width, other.half_width)
        return (
            None
            if abs(difference) <= unsure and abs(difference) < 0.15 * max(own.value, other.value)
            else difference > 0
        )
    if other.value <= 0:
        return None
    if times.unit == "times":
        ratio = own.value / other.value if claim.sign > 0 else other.value / own.value if own.value else float("inf")
        return _ratio(times, ratio)
    if times.unit in ("g", "mg", "kcal"):
        return fits(replace(times, unit=""), Range(difference, 0.9 * difference, 1.1 * difference))
    said = (
        replace(times, low=times.low / 100, high=times.high / 100, unit=SHARE)
        if times.unit == "%"
        else replace(times, unit=SHARE)
    )
    share = difference / other.value
    if share <= 0:
        return False
    return fits(said, Range(share, share - 0.04, share + 0.04))


def _ratio(times: Quantity, ratio: float) -> bool | None:
    number_said = times.value
    if times.relation in ("over", "at least", "well over"):
        return True if ratio >= number_said * 1.001 else False if ratio < number_said * 0.97 else None
    if times.relation in ("under", "at most", "well under"):
        return True if ratio <= number_said * 0.999 else False if ratio > number_said * 1.03 else None
    if times.relation == "just over":
        return number_said * 0.985 <= ratio <= number_said * 1.2
    return LEAST * number_said <= ratio <= MOST * number_said


def _words(about: About, dish: Dish) -> str:
    if about.kind != FOOD:
        return "the dish"
    name = about.foods[0].text
    if about.measure:
        unit = measure_said(about.measure)
        measure = "" if about.measure == "piece" else f"{unit}{'' if about.count <= 1 else 's'} of "
        if about.count == 0.5:
            return f"half {texts.one(f'{measure}{name}')}"
        return f"{counted(about.count, 2)} {measure}{name}"
    food = _options(about, dish)[0]
    return name if about.foods[0].inside or len(name) > len(full_name(food)) else full_name(food)


def _because(claim: ComparisonClaim, dish: Dish, name: str, pairs: list[_Pair]) -> str:
    unit, digits = unit_of(name), 1
    told = "; ".join(
        f"{'' if pair.basis == 'what was said' else f'per {pair.basis} '}{number(pair.own.value, digits)} against "
        f"{number(pair.other.value, digits)} {unit}"
        for pair in pairs
    )
    return (
        f"{_words(claim.about, dish)} against {_words(claim.other, dish)}, {said_thing(name)}: {told} ({dish.source})"
    )


def _instead(claim: ComparisonClaim, dish: Dish, name: str, pair: _Pair) -> tuple[str, ...]:
    own, other = _words(claim.about, dish), _words(claim.other, dish)
    if claim.basis == IN_THE_DISH:
        return (f"The {other} {'bring' if is_plural(other) else 'brings'} more {said_thing(name)} than the {own}.",)
    own = "{serving}" if own == "the dish" else own[:1].upper() + own[1:]
    has = "has" if own == "{serving}" or claim.about.measure else "have" if is_plural(own) else "has"
    usual = {"100 g": ", weight for weight", "cup": ", cup for cup", "100 kcal": ", calorie for calorie"}.get(
        pair.basis, ""
    )
    if usual and (claim.about.measure or claim.other.measure):
        return ()  # "a cup of milk" against butter of no measure: nobody says "weight for weight" of that
    ratio = pair.own.value / pair.other.value if pair.other.value > 0 else 0.0
    more = "more" if pair.own.value > pair.other.value else "less"
    if name == "energy" and more == "less":
        more = "fewer"
    found = []
    if 1.5 <= ratio <= 20:
        times = round(2 * ratio) / 2 if ratio < 3.75 else float(round(ratio))
        as_much = "twice" if times == 2 else f"{counted(times, 1)} times"
        found.append(f"{own} {has} about {as_much} the {said_thing(name)} of {other}{usual}.")
    found.append(f"{own} {has} {more} {said_thing(name)} than {other}{usual}.")
    return tuple(found)
