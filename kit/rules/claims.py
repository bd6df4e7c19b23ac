"""Regulated wordings as rules: whether a food or a dish may be called "high in fiber", and by which law.

A talk is not a label: the kit takes the rules of `kit.rules.wordings` as the careful speaker's standard. Percentages
are compared as they are, not as a label rounds them.
"""

from dataclasses import dataclass

from kit.rules.claim_texts import Tried, asked, because_of, phrase
from kit.rules.reference import daily_values
from kit.rules.subjects import Span, Subject
from kit.rules.verdicts import CANNOT_TELL, HOLDS, OFF, outcome
from kit.rules.wordings import ANY_CLAIM, DISH, FOOD, ClaimLimit, rule_for
from kit.texts import listing


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
    say : tuple of (str, str)
        What must be said beside the wording: the nutrient and the words.
    advice : tuple of str
        What a label would have to point to beside any claim.
    """

    verdict: str
    because: str
    section: str = ""
    say: tuple[tuple[str, str], ...] = ()
    advice: tuple[str, ...] = ()


def judge(wording: str, nutrient: str, subject: Subject, than: Subject | None = None, rules: str = "us") -> Judgement:
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
    kind = DISH if subject.is_dish else FOOD
    rule = rule_for(wording, nutrient, kind, rules)
    words = phrase(wording, nutrient)
    if rule is None:
        reason = f'the {rules.upper()} rules have no "{words}" for a {kind}; give the number instead'
        return Judgement(CANNOT_TELL, reason)
    section = rule.section
    if not rule.defined:
        return Judgement(OFF, f'"{words}" {rule.note} ({section})', section)
    if rule.food_in_it:
        reason = f'a dish may say "{words}" {rule.note} ({section})'
        return Judgement(OFF, reason, section)
    if rule.groups and subject.group not in rule.groups:
        reason = f'"{words}" is kept for {listing(rule.groups)}, and {subject.name} is none of them ({section})'
        return Judgement(OFF, reason, section)
    if rule.needs_comparison and than is None:
        reason = f'"{words}" compares: name the food it is compared with ({section})'
        return Judgement(CANNOT_TELL, reason, section)
    if rule.other_not_low and than is not None and _is_low(nutrient, than, rules):
        return Judgement(OFF, f"{than.name}, which it is compared with, is low in it already ({section})", section)
    tried = [_try(limit, nutrient, subject, than, rules) for limit in rule.needs if _applies(limit, subject)]
    if not tried:
        return Judgement(OFF, f'"{words}" is {rule.note or "not defined for this kind of food"} ({section})', section)
    result, telling = _any_way(tried)
    because = because_of(words, telling, subject, than, section)
    say = tuple(
        (one.nutrient, one.limit.say)
        for one in (_try(limit, nutrient, subject, than, rules) for limit in rule.says if _applies(limit, subject))
        if one.kept
    )
    return Judgement(outcome(result), because, section, tuple(dict.fromkeys(say)), _advice(subject, say, rules))


def _is_low(nutrient: str, other: Subject, rules: str) -> bool:
    kind = DISH if other.is_dish else FOOD
    names = [nutrient] if nutrient else ["energy", "fat"]
    low = [name for name in names if rule_for("low", name, kind, rules)]
    return any(judge("low", name, other, rules=rules).verdict == HOLDS for name in low)


def _applies(limit: ClaimLimit, subject: Subject) -> bool:
    return {
        "": True,
        "small reference amount": subject.small_reference,
        "solid": not subject.liquid,
        "liquid": subject.liquid,
    }[limit.when]


def _try(limit: ClaimLimit, nutrient: str, subject: Subject, than: Subject | None, rules: str) -> Tried:
    name = limit.nutrient or nutrient
    found = _measured(limit, name, subject, rules)
    if limit.is_relative and than is not None:
        other = _measured(limit, name, than, rules)
        exact = found[0] == found[1] and other[0] == other[1]
        if limit.unit == "% daily value more":
            difference = found[0] - other[0]
        else:
            less = 100 * (other[0] - found[0]) / other[0] if other[0] else 0.0
            difference = less if limit.unit == "% less" else -less
        found = (difference, difference) if exact else (float("-inf"), float("inf"))
    return Tried(limit, name, found, _keeps(limit, found))


def _measured(limit: ClaimLimit, name: str, subject: Subject, rules: str) -> Span:
    span = subject.amount(name, limit.basis)
    if limit.unit.startswith("% daily value"):
        day = daily_values(rules)[name.removeprefix("corrected_")].amount
        return 100 * span[0] / day, 100 * span[1] / day
    return span


def _keeps(limit: ClaimLimit, found: Span) -> bool | None:
    low, high = (round(end, 9) for end in found)  # 20 % of 28 g is 5.6000000000000005 g
    tests = {
        "at least": lambda value: value >= limit.threshold,
        "above": lambda value: value > limit.threshold,
        "at most": lambda value: value <= limit.threshold,
        "below": lambda value: value < limit.threshold,
        # 10 to 19 % leaves no gap below 20 %: the upper end is a whole percent.
        "between": lambda value: limit.threshold <= value < (limit.upper or 0) + 1,
    }
    ends = [tests[limit.comparison](value) for value in (low, high)]
    if limit.comparison == "between" and low < limit.threshold and high >= (limit.upper or 0) + 1:
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


def _advice(subject: Subject, said: tuple[tuple[str, str], ...], rules: str) -> tuple[str, ...]:
    rule = rule_for(ANY_CLAIM, "", DISH if subject.is_dish else FOOD, rules) if rules == "us" else None
    told = {words for _, words in said}
    over = [
        limit
        for limit in (rule.says if rule else ())
        if limit.say not in told and _applies(limit, subject) and _try(limit, "", subject, None, rules).kept
    ]
    return tuple(dict.fromkeys(f"{limit.say} (over {asked(limit)}, {limit.source})" for limit in over))
