"""Regulated wordings as rules: whether a food or a dish may be called "high in fiber", and by which law.

A talk is not a label: the kit takes the rules of `kit.rules.wordings` as the careful speaker's standard. Percentages
are compared as they are, not as a label rounds them. What is said of a range that crosses a limit cannot be told.
"""

from collections.abc import Callable
from dataclasses import dataclass, replace
from math import hypot, inf, isfinite, isnan

from kit.food.daily_values import daily_values
from kit.rules.beside import Beside, beside_of, disclosures
from kit.rules.claim_texts import Tried, because_of, phrase
from kit.rules.make_up import MAIN_DISH, MEAL
from kit.rules.naming import thing_said
from kit.rules.subject import Span, Subject
from kit.rules.verdicts import CANNOT_TELL, HOLDS, OFF, outcome
from kit.rules.wordings import DISH, FOOD, ClaimLimit, ClaimRule, rule_for
from kit.rules.worth import too_little
from kit.texts import listing, number, span


@dataclass(frozen=True, slots=True)
class Judgement:
    """What the rules say about a wording.

    Attributes
    ----------
    verdict : str
        ``"holds"``, ``"off"`` or ``"cannot tell"``.
    because : str
        One sentence with the numbers and the section of the law.
    section : str
        The section alone; empty when there is no rule.
    measured : tuple of float, optional
        What was found where the verdict was decided: the least and the most, in the unit of `limit`.
    limit : ClaimLimit, optional
        The limit that decided.
    beside : tuple of Beside
        What must be said beside the wording.
    advice : tuple of str
        What a label would have to point to beside any claim.
    worded : str
        How a label words it of a food that is so by nature, as all of its kind are: "a low-sodium food"; else empty.
    """

    verdict: str
    because: str
    section: str = ""
    measured: Span | None = None
    limit: ClaimLimit | None = None
    beside: tuple[Beside, ...] = ()
    advice: tuple[str, ...] = ()
    worded: str = ""


def judge(
    wording: str,
    nutrient: str,
    subject: Subject,
    rules: str = "us",
    than: Subject | None = None,
    said: float | None = None,
) -> Judgement:
    """Judge a regulated wording about a food or a dish.

    Parameters
    ----------
    wording : str
        A wording of ``data/wordings.csv``: ``"high"``, ``"good source"``, ``"low"``, ``"free"``, ``"reduced"`` ...
    nutrient : str
        The nutrient it is said of; empty for ``"lean"`` and for ``"light"`` without one.
    subject, than : Subject
        What it is said of, and what it is compared with, see `kit.rules.subjects`.
    rules : {"us", "eu"}
        Whose rules.
    said : float, optional
        The percentage that is said with it: "97 percent fat free", "30 percent less sodium".

    Notes
    -----
    A dish that may count as a main dish or as something else is judged both ways; only what both agree on is told.

    Raises
    ------
    UnknownNameError
        If there is no such set of rules, wording or nutrient.

    Examples
    --------
    >>> from kit.food.composition import foods
    >>> from kit.rules.subjects import of_food
    >>> judge("high", "fiber", of_food(foods()["lentils-dry"])).section
    '21 CFR 101.54(b)'
    """
    judged = _judge(wording, nutrient, subject, rules, than, said)
    if subject.otherwise is None:
        return judged
    other = _judge(wording, nutrient, subject.otherwise, rules, than, said)
    if judged.verdict == other.verdict:
        beside = tuple(dict.fromkeys((*judged.beside, *other.beside)))
        return replace(judged, beside=beside, advice=tuple(dict.fromkeys((*judged.advice, *other.advice))))
    if OFF not in (judged.verdict, other.verdict):
        return judged if judged.verdict == CANNOT_TELL else other
    reason = (
        f"as {subject.kind_words} it {_is(judged)}, as {subject.otherwise.kind_words} it {_is(other)}: "
        f"say in the talk what kind of dish it is. {judged.because}. {other.because}"
    )
    return Judgement(CANNOT_TELL, reason, judged.section, judged.measured, judged.limit)


def _is(judged: Judgement) -> str:
    return {HOLDS: "holds", OFF: "does not hold"}.get(judged.verdict, "cannot be told")


def _judge(
    wording: str, nutrient: str, subject: Subject, rules: str, than: Subject | None, said: float | None
) -> Judgement:
    subject, than = subject.under(rules), than.under(rules) if than else None
    kind = DISH if subject.is_dish else FOOD
    rule = rule_for(wording, nutrient, kind, rules, subject.group)
    words = phrase(wording, nutrient)
    if rule is None:
        reason = f'the {rules.upper()} rules have no "{words}" for {subject.kind_words}; give the number instead'
        return Judgement(CANNOT_TELL, reason)
    section = rule.section
    barred = _barred(rule, words, nutrient, subject, rules, than)
    if barred is not None:
        return Judgement(*barred, section)
    tried = [_try(limit, nutrient, subject, than, rules) for limit in rule.needs if _applies(limit, subject)]
    if not tried:
        return Judgement(OFF, f'"{words}" is {rule.note or "not defined for this kind of food"} ({section})', section)
    result, telling = _any_way(tried)
    because = because_of(words, telling, subject, than, section)
    wrong = _wrong_number(said, rule, nutrient, subject, telling) if said is not None and result is not False else ""
    if wrong:
        return Judgement(OFF, f"{wrong} ({section})", section, telling[0].found, telling[0].limit)
    if result is False:
        return Judgement(OFF, because, section, telling[0].found, telling[0].limit)
    needed = [_try(limit, nutrient, subject, than, rules) for limit in rule.says if _applies(limit, subject)]
    beside = beside_of(rule, [one for one in needed if one.kept is not False], telling, subject, than, result is True)
    told = {one.words for one in beside}
    advice = disclosures(_over(subject, rules), told) if rules == "us" else ()
    worded = _worded(rule, nutrient, subject, rules) if result else ""
    return Judgement(outcome(result), because, section, telling[0].found, telling[0].limit, beside, advice, worded)


def _worded(rule: ClaimRule, nutrient: str, subject: Subject, rules: str) -> str:
    """Return "a low-sodium food", as 21 CFR 101.13(e)(2) has a naturally low or free food worded, from memory."""
    if rules != "us" or subject.kind or subject.altered or rule.wording not in ("low", "very low", "free"):
        return ""
    thing = "calorie" if nutrient == "energy" else thing_said(nutrient).replace(" ", "-")
    what = f"{thing}-free" if rule.wording == "free" else f"{rule.wording.replace(' ', '-')}-{thing}"
    return f"a {what} food"


def _barred(
    rule: ClaimRule, words: str, nutrient: str, subject: Subject, rules: str, than: Subject | None
) -> tuple[str, str] | None:
    """Return the verdict and why, where a rule does not come to its limits at all."""
    section = rule.section
    if not rule.defined:
        return OFF, f'"{words}" {rule.note} ({section})'
    if rule.food_in_it:
        return OFF, f'{subject.kind_words} may say "{words}" {rule.note} ({section})'
    if rule.groups and subject.group not in rule.groups:
        return OFF, f'"{words}" is kept for {listing(rule.groups)}, and {subject.name} is none of them ({section})'
    if rule.needs_comparison and than is None:
        return CANNOT_TELL, f'"{words}" compares: name the food it is compared with ({section})'
    if rule.other_not_low and than is not None and _is_low(nutrient, than, rules):
        what = "it" if nutrient else "fat and calories"
        return OFF, f"{than.name}, which it is compared with, is low in {what} already ({section})"
    little = too_little(rule, nutrient, subject, rules)
    return (OFF, little) if little else None


def _is_low(nutrient: str, other: Subject, rules: str) -> bool:
    """Return whether the other food is low in it; for "light", in fat and in calories both, 101.56(b)."""
    kind = DISH if other.is_dish else FOOD
    names = [nutrient] if nutrient else ["energy", "fat"]
    low = [name for name in names if rule_for("low", name, kind, rules, other.group)]
    return bool(low) and all(judge("low", name, other, rules).verdict == HOLDS for name in low)


def _applies(limit: ClaimLimit, subject: Subject) -> bool:
    kind = subject.kind.kind if subject.kind else ""
    return {
        "": True,
        "small reference amount": subject.small_reference,
        "solid": not subject.liquid,
        "liquid": subject.liquid,
        MAIN_DISH: kind != MEAL,
        MEAL: kind == MEAL,
    }[limit.when]


def _try(limit: ClaimLimit, nutrient: str, subject: Subject, than: Subject | None, rules: str) -> Tried:
    name = limit.nutrient or nutrient
    found = _measured(limit, name, subject, rules)
    if limit.is_relative and than is not None:
        other = _measured(limit, name, than, rules)
        found = _difference(limit, found, other, both_dishes=subject.kind is not None and than.kind is not None)
    return Tried(limit, name, found, _keeps(limit, found))


def _measured(limit: ClaimLimit, name: str, subject: Subject, rules: str) -> Span:
    found = subject.amount(name, limit.basis)
    if limit.unit.startswith("% daily value"):
        day = daily_values(rules)[name.removeprefix("corrected_")].amount
        return 100 * found[0] / day, 100 * found[1] / day
    return found


def _difference(limit: ClaimLimit, own: Span, other: Span, both_dishes: bool) -> Span:
    """Return by how much one amount is more or less than another, in the unit of the limit, with its range.

    Two versions of one dish share what is not changed, so only what the change takes or adds is unsure; a food and a
    dish are unsure each on its own.
    """
    if not all(isfinite(end) for end in (*own, *other)):
        return -inf, inf
    value, half = (sum(own) / 2, (own[1] - own[0]) / 2)
    base, half_base = (sum(other) / 2, (other[1] - other[0]) / 2)
    if limit.unit == "% daily value more":
        spread = hypot(half, half_base) if not both_dishes else abs(value - base) * (half_base / base if base else 0)
        return value - base - spread, value - base + spread
    if base <= 0:
        return 0.0, 0.0
    ratio = value / base
    relative, relative_base = (half / value if value else 0.0), half_base / base
    spread = (
        ratio * hypot(relative, relative_base)
        if not both_dishes
        else abs(1 - ratio) * ratio * (hypot(relative, relative_base))
    )
    less = 100 * (1 - ratio) if limit.unit == "% less" else 100 * (ratio - 1)
    return less - 100 * spread, less + 100 * spread


def _keeps(limit: ClaimLimit, found: Span) -> bool | None:
    if isnan(found[0]) or isnan(found[1]):
        return None
    low, high = (round(end, 9) for end in found)  # 20 % of 28 g is 5.6000000000000005 g
    top = (limit.upper or 0) + 1
    tests: dict[str, Callable[[float], bool]] = {
        "at least": lambda value: value >= limit.threshold,
        "above": lambda value: value > limit.threshold,
        "at most": lambda value: value <= limit.threshold,
        "below": lambda value: value < limit.threshold,
        # 10 to 19 % leaves no gap below 20 %: the upper end is a whole percent.
        "between": lambda value: limit.threshold <= value < top,
    }
    ends = [tests[limit.comparison](value) for value in (low, high)]
    if limit.comparison == "between" and low < limit.threshold and high >= top:
        return None
    return ends[0] if ends[0] == ends[1] else None


def _any_way(tried: list[Tried]) -> tuple[bool | None, list[Tried]]:
    """Return whether one way is kept in all its limits, and the limits that tell it."""
    always = [one for one in tried if not one.limit.way]
    ways = list(dict.fromkeys(one.limit.way for one in tried if one.limit.way)) or [""]
    results: dict[str, tuple[bool | None, list[Tried]]] = {}
    for way in ways:
        belonging = [*always, *(one for one in tried if one.limit.way == way and way)]
        kept = [one.kept for one in belonging]
        result = False if False in kept else None if None in kept else True
        results[way] = result, [one for one in belonging if one.kept is result]
    for wanted in (True, None):
        for result, telling in results.values():
            if result is wanted:
                return result, telling
    return False, next(telling for _, telling in results.values())


def _wrong_number(said: float, rule: ClaimRule, nutrient: str, subject: Subject, telling: list[Tried]) -> str:
    """Return what is wrong with a percentage that is said with a wording; empty when it is right or cannot be told."""
    if "percent fat free" in rule.wording:
        low, high = (100 - end for end in reversed(subject.amount("fat", "100 g")))
        if round(low, 1) - 0.5 <= said <= round(high, 1) + 0.5:
            return ""
        words, fat = f'"{number(said, 1)} percent fat free"', number(100 - (low + high) / 2, 1)
        return f"{words} asks for its number to be right; 100 g hold {fat} g of fat, so it is {span(low, high)}"
    relative = [one for one in telling if one.limit.is_relative and one.limit.unit != "% daily value more"]
    if not relative or not all(isfinite(end) for end in relative[0].found):
        return ""
    low, high = relative[0].found
    if low * 0.93 - 0.5 <= said <= high * 1.07 + 0.5:
        return ""
    return f'"{number(said, 1)} percent": {subject.name} differs by {span(low, high)} percent'


def _over(subject: Subject, rules: str) -> list[ClaimLimit]:
    """Return the levels of 101.13(h) that a food or dish goes beyond."""
    rule = rule_for("any claim", "", DISH if subject.is_dish else FOOD, rules)
    return [
        limit
        for limit in (rule.says if rule else ())
        if _applies(limit, subject) and _try(limit, "", subject, None, rules).kept
    ]
