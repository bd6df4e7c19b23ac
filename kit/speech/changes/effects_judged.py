"""The effect of a change, judged."""

from dataclasses import dataclass, replace

from kit.food.nutrients import nutrients
from kit.meal.certainty import Range
from kit.meal.changes import change
from kit.rules.spoken import HARDLY_ANY
from kit.rules.verdicts import CANNOT_TELL, HOLDS, OFF
from kit.speech.changes.changes_made import changed, each_meant
from kit.speech.changes.changes_said import AMOUNT, AS_TYPED, RINSE, UNRINSED, SaidChange
from kit.speech.claim import SERVING, WHOLE, Claim, Edit, Finding
from kit.speech.figures.amounts import in_unit
from kit.speech.figures.amounts_told import spoken_amount, spoken_quantity
from kit.speech.proportions.share_claim import share_edit
from kit.speech.values import WORKED_OUT, of_nutrient, said_thing, scaled, total, unit_of
from kit.speech.words.agreement import fits
from kit.speech.words.tokens import NO_QUANTITY, Quantity
from kit.talk.dish import Dish
from kit.texts import number, percent

_RINSED = (0.33, 0.46)  # of the sodium of the can: 36 % drained, 41 % drained and rinsed, Duyff 2011; common practice


_HARDLY = 0.10


_SAVED = ("energy", "fat", "saturated_fat", "sodium", "salt", "sugars", "cholesterol")  # less of these is a gain
_UNITS = ("kcal", "kJ", "g", "mg", "µg")


@dataclass(frozen=True, slots=True)
class EffectClaim(Claim):
    """What a change does to a nutrient of a serving.

    Attributes
    ----------
    change : SaidChange
        The change.
    nutrient : str
        The nutrient.
    said : Quantity
        By how much: an amount, or a fraction of what there was.
    sign : int
        -1 when it becomes less, 1 more, 0 hardly changes.
    start, end : int
        Where its amount stands in the sentence.
    halved : bool
        Whether that is "in half", for which other shares are said with "by".
    """

    change: SaidChange | None = None
    nutrient: str = ""
    said: Quantity = NO_QUANTITY
    sign: int = -1
    start: int = 0
    end: int = 0
    halved: bool = False


def judge(claim: EffectClaim, dish: Dish) -> Finding:
    """Judge the effect of a change on a serving; what comes may be several foods that all have it ("tofu")."""
    found = _judged(claim, dish)
    meant = each_meant(claim.change, found) if claim.change is not None else []
    each = [_judged(replace(claim, change=change), dish) for change in meant]
    return each[0] if len({one.verdict for one in each}) == 1 else found


def _judged(claim: EffectClaim, dish: Dish) -> Finding:
    assert claim.change is not None
    name = claim.nutrient
    if claim.change.kind in (RINSE, UNRINSED):
        return _judge_rinse(claim)
    if claim.about.kind not in (SERVING, WHOLE):  # "saves 120 calories a cup"
        return Finding(CANNOT_TELL, f'what "{claim.about.words or "so much of it"}" holds is not known')
    new = changed(claim.change, dish)
    if isinstance(new, Finding):
        return new
    recipe, words = new
    if name not in nutrients() and name not in WORKED_OUT:
        return Finding(CANNOT_TELL, f"the table has no {said_thing(name)}")
    both = change(dish.numbers.recipe, recipe)
    factor = claim.about.count * (1.0 if claim.about.kind == SERVING else dish.numbers.recipe.servings)
    parts = [scaled_signed(both.difference(own), weight * factor) for own, weight in of_nutrient(name)]
    of = parts[0] if len(parts) == 1 else _sum(parts)
    before = total([scaled(dish.range_of(own), weight * factor) for own, weight in of_nutrient(name)])
    gain = "adds" if of.value >= 0 else "saves" if name in _SAVED else "takes away"
    thing = "" if name == "energy" else f" of {said_thing(name)}"
    part = f", {percent(abs(of.value) / before.value)} of {number(before.value, 1)}" if before.value > 0 else ""
    because = f"{words} {gain} {number(abs(of.value), 1)} {unit_of(name)}{thing} a serving{part} ({dish.source})"
    result = _result(claim, of, before.value)
    if result is None:
        return Finding(CANNOT_TELL, f"{because}: too near to tell")
    if result:
        return Finding(HOLDS, because)
    return Finding(OFF, because, _edit(claim, of, before.value), _sentences(claim, words, of, gain))


def scaled_signed(of: Range, factor: float) -> Range:
    """Return a range that may lie below 0, multiplied."""
    return Range(of.value * factor, of.low * factor, of.high * factor)


def _sum(parts: list[Range]) -> Range:
    value = sum(part.value for part in parts)
    half = sum(part.half_width**2 for part in parts) ** 0.5
    return Range(value, value - half, value + half)


def _result(claim: EffectClaim, of: Range, before: float) -> bool | None:
    said = claim.said
    if said.relation == "hardly" and claim.sign == 0:
        return abs(of.value) <= _HARDLY * before if before > 0 else abs(of.value) < 1e-9
    value = claim.sign * of.value
    if said.relation == "any":
        if abs(of.value) <= 0.01 * max(before, 1e-9):
            return False
        return None if of.low < 0 < of.high else value > 0
    if value < 0 and said.relation not in ("hardly", "none"):
        return False
    ends = sorted((claim.sign * of.low, claim.sign * of.high))
    if said.unit in _UNITS:
        own = in_unit(said, claim.nutrient)
        return None if own is None else fits(own, Range(value, ends[0], ends[1]))
    if before <= 0:
        return None
    share = value / before
    half = max(0.02, 0.07 * share)
    return fits(said, Range(share, share - half, share + half))


def _edit(claim: EffectClaim, of: Range, before: float) -> Edit | None:
    if claim.end == 0 or claim.sign * of.value <= 0 or of.low < 0 < of.high:
        return None
    size = Range(abs(of.value), *sorted((abs(of.low), abs(of.high))))
    if claim.said.unit in _UNITS:
        words = spoken_quantity(claim.nutrient, size)
        if words == HARDLY_ANY or claim.said.unit != unit_of(claim.nutrient):
            return None
        return Edit(claim.start, claim.end, words)
    share = abs(of.value) / before if before else 0.0
    edit = share_edit(claim.start, claim.end, share)
    return replace(edit, words=f"by {edit.words}") if edit is not None and claim.halved else edit


def _sentences(claim: EffectClaim, words: str, of: Range, gain: str) -> tuple[str, ...]:
    size = Range(abs(of.value), *sorted((abs(of.low), abs(of.high))))
    begin = words[:1].upper() + words[1:]
    kind = claim.change.kind if claim.change is not None else ""
    if of.low < 0 < of.high or kind in (AS_TYPED, AMOUNT):
        return ()
    if spoken_quantity(claim.nutrient, size) == HARDLY_ANY:
        return (f"{begin} makes hardly any difference to the {said_thing(claim.nutrient)}.",)
    return (f"{begin} {gain} {spoken_amount(claim.nutrient, size)} a serving.",)


def _judge_rinse(claim: EffectClaim) -> Finding:
    because = (
        "draining takes off about 36 percent of the can's sodium, draining and rinsing about 41 (published "
        "measurement, Duyff 2011; common practice)"
    )
    if claim.nutrient not in ("sodium", "salt"):
        return Finding(CANNOT_TELL, "what rinsing takes off is only known of the sodium")
    said = claim.said
    if said.unit in _UNITS:
        return Finding(CANNOT_TELL, f"{because}; say it as a part of the can's")
    unrinsed = claim.change is not None and claim.change.kind == UNRINSED
    if (claim.sign > 0) != unrinsed:
        return Finding(OFF, because)
    if said.relation == "any":
        return Finding(HOLDS, because)
    if unrinsed:
        return Finding(CANNOT_TELL, f"{because}; say it of the rinsed beans")
    if said.relation in ("all", "nearly all", "most"):
        return Finding(
            OFF, because, None, ("Draining and rinsing the beans takes off about 40 percent of the sodium of the can.",)
        )
    mid = Range(0.39, *_RINSED)
    result = fits(said, mid)
    if said.relation in ("over", "at least", "well over", "under", "at most", "well under"):
        result = fits(said, Range(0.39, 0.36, 0.41))
    return Finding(
        CANNOT_TELL if result is None else HOLDS if result else OFF,
        because,
        None,
        () if result else ("Draining and rinsing the beans takes off about 40 percent of the sodium of the can.",),
    )
