"""Wordings and their limits as people say them."""

from collections.abc import Sequence
from dataclasses import dataclass
from math import inf, isfinite

from kit.food.nutrients import nutrient, nutrients
from kit.rules.naming import is_plural, thing_said
from kit.rules.subject import Span, Subject
from kit.rules.wordings import ClaimLimit
from kit.texts import listing, number, quantity

_PHRASES = {
    "high": "high in {}",
    "good source": "a good source of {}",
    "more": "more {}",
    "free": "{} free",
    "very low": "very low in {}",
    "low": "low in {}",
    "reduced": "reduced in {}",
    "light": "light in {}",
}
_OWN_WORDS = {
    "corrected_protein": "protein, corrected for its quality,",
    "unsaturated_fat": "unsaturated fat",
    "added_sodium": "added sodium",
}


@dataclass(frozen=True, slots=True)
class Tried:
    """A limit tried on a subject: what was found there, and whether that keeps it (None: not known)."""

    limit: ClaimLimit
    nutrient: str
    found: Span
    kept: bool | None


def phrase(wording: str, name: str) -> str:
    """Return a wording with its nutrient.

    Examples
    --------
    >>> phrase("good source", "fiber"), phrase("free", "energy"), phrase("lean", "")
    ('a good source of fiber', 'calorie free', 'lean')
    """
    if not name or wording not in _PHRASES:
        return wording
    return _PHRASES[wording].format("calorie" if (wording, name) == ("free", "energy") else thing_said(name))


def quantity_said(name: str) -> str:
    """Return a nutrient, or a quantity made of nutrients, the way it is said."""
    return _OWN_WORDS.get(name) or thing_said(name)


def asked(limit: ClaimLimit, name: str = "") -> str:
    """Return what a limit asks for: "at least 20 % of a day's fiber", "below 5 mg of sodium"."""
    words = "" if limit.say or limit.comparison == "between" else f"{limit.comparison} "
    ends = [number(end, 2) for end in (limit.threshold, limit.upper) if end is not None]
    amount = f"{words}{' to '.join(ends)}"
    spoken = quantity_said(name) if name else ""
    return {
        "% daily value": f"{amount} % of a day's {spoken}",
        "% daily value more": f"{amount} % of a day's {spoken} more",
        "% less": f"{amount} % less {spoken}",
        "% more": f"{amount} % more {spoken}",
        "% of energy": f"{amount} % of the energy from {spoken}",
        "% of fatty acids": f"{amount} % of the fatty acids as {spoken}",
    }.get(limit.unit, f"{amount} {limit.unit} of {spoken}" if spoken and name != "energy" else f"{amount} {limit.unit}")


def _basis(limit: ClaimLimit, subject: Subject) -> str:
    if limit.basis in ("energy", "fatty acids"):
        return ""
    low, high = subject.grams(limit.basis)
    weight = quantity(low, "g", 0 if low >= 10 else 1) if isfinite(low) else "the amount usually eaten"
    if isfinite(high) and high != low:
        return f" in {number(low)} to {number(high)} g, as it may usually be eaten"
    return {
        "reference": f" in {weight}, the amount usually eaten" if isfinite(low) else f" in {weight}",
        "serving": f" in a serving of {weight}",
        "100 g": " in 100 g as eaten" if subject.kind else " in 100 g",
    }.get(limit.basis, f" in {limit.basis}")


def _found(tried: Tried) -> str:
    low, high = tried.found
    limit = tried.limit
    unit = "%" if limit.unit.startswith("%") else limit.unit
    more = f" {limit.unit.split(' ')[-1]}" if limit.is_relative else ""
    digits = 1 if unit == "%" or tried.nutrient not in nutrients() else nutrient(tried.nutrient).decimals
    # As many digits as it takes to tell it from the limit.
    while isfinite(low) and low != limit.threshold and digits < 4 and round(low, digits) == limit.threshold:
        digits += 1
    if low == -inf or (low <= 0 and high == inf):
        return "an amount that is not known"
    if low != high and isfinite(high):
        ends = [number(end, digits) for end in (low, high)]
        return f"{ends[0]} {unit}{more}" if ends[0] == ends[1] else f"{ends[0]} to {ends[1]} {unit}{more}"
    return f"{'at least ' if high == inf else ''}{number(low, digits)} {unit}{more}"


def because_of(words: str, telling: Sequence[Tried], subject: Subject, than: Subject | None, section: str) -> str:
    """Return the sentence behind a judgement: what the wording asks for, what there is, and the section."""
    telling = _each_once(telling)
    asks = listing([asked(one.limit, one.nutrient) + _basis(one.limit, subject) for one in telling])
    has = "have" if is_plural(subject.name) else "has"
    relative = any(one.limit.is_relative for one in telling)
    against = f" against {than.name}" if than is not None and relative else ""
    reason = f'"{words}" asks for {asks}; {subject.name} {has} {listing([_found(one) for one in telling])}{against}'
    if any(one.nutrient == "corrected_protein" for one in telling) and not subject.quality:
        reason += ", since no protein quality (PDCAAS) is published for it"
    return f"{reason} ({section})"


def _each_once(telling: Sequence[Tried]) -> list[Tried]:
    """Return the limits without those that ask the same of the same amount, as a serving and a usual amount may."""
    seen: dict[tuple[object, ...], Tried] = {}
    for one in telling:
        limit = one.limit
        seen.setdefault((one.nutrient, limit.comparison, limit.threshold, limit.unit, one.found), one)
    return list(seen.values())
