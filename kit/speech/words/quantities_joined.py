"""Two numbers of one thing among the tokens of a sentence: "over 20 grams of protein but under 35"."""

from collections.abc import Sequence
from dataclasses import replace

from kit.speech.words.tokens import NO_QUANTITY, Quantity, Token

COUNTED_WITH = frozenset("of the a per each every in total it here this".split()) | {","}


_JOINS = frozenset((",", "and", "plus", "another", "the", "other", "with"))


def with_percents(tokens: list[Token]) -> list[Token]:
    """Return the tokens with "percent" carried on: "35 percent from protein, 34 from fat and 30 from carbohydrate"."""
    last = -1
    for at, token in enumerate(tokens):
        if token.amount.unit == "%":
            last = at
        elif last >= 0 and token.quantity is not None:
            joined = at > last + 2 and tokens[at - 1].text in _JOINS
            link = tokens[at + 1].text if at + 1 < len(tokens) else ""
            links = [one.text for one in tokens[last + 1 : min(last + 7, at)]]
            same = link in ("from", "of") and link in links and not token.amount.unit
            named = [one for one in tokens[at + 2 : at + 5] if one.is_a("nutrient")]
            if not (joined and same and named and not token.amount.is_fraction and token.amount.value <= 100):
                last = -1
                continue
            tokens[at] = replace(token, parts={"quantity": "%"}, quantity=replace(token.amount, unit="%"))
            last = at
        elif token.text in (".", "!", "?", ";"):
            last = -1
    return tokens


def with_both_bounds(tokens: list[Token]) -> list[Token]:
    """Return the tokens with two bounds of one number made a span, and with "percent" carried on.

    "Over 20 grams of protein but under 35"; "35 percent from protein, 34 from fat".
    """
    at = 0
    while at < len(tokens):
        joint, second = _second_bound(tokens, at)
        if second:
            one, other = tokens[at].amount, tokens[second].amount
            low, high = sorted((one.value, other.value))
            span = Quantity(low, high, one.unit or other.unit, "between", one.is_fraction)
            whole = {"quantity": span.unit or "number"}
            if joint > at + 1:
                tokens[at] = replace(tokens[at], quantity=span)
                tokens[joint : second + 1] = [_joined(tokens[joint : second + 1])]
            else:
                tokens[at : second + 1] = [replace(_joined(tokens[at : second + 1]), parts=whole, quantity=span)]
        at += 1
    return with_percents(tokens)


def _joined(tokens: Sequence[Token]) -> Token:
    return Token(" ".join(token.text for token in tokens), tokens[0].start, tokens[-1].end)


def _second_bound(tokens: Sequence[Token], at: int) -> tuple[int, int]:
    """Return the places of "but" and of the other bound of a number; zeros where only one is said."""
    one = tokens[at].amount
    sides = {_SIDES.get(one.relation)}
    if None in sides:
        return 0, 0
    joint = at + 1
    while one.unit and joint < len(tokens) and (tokens[joint].text in COUNTED_WITH or _names(tokens[joint])):
        joint += 1
    if joint + 1 >= len(tokens) or tokens[joint].text not in ("but", "and", "yet"):
        return 0, 0
    second = joint + 1 + (tokens[joint + 1].text in ("still", "also", "always"))
    other = tokens[second].amount if second < len(tokens) else NO_QUANTITY
    sides.add(_SIDES.get(other.relation))
    behind = tokens[second + 1] if second + 1 < len(tokens) else None
    ends = behind is None or behind.text in _BEHIND_BOUND
    same = one.is_fraction == other.is_fraction and (one.unit == other.unit or not (one.unit and other.unit))
    fits = ends or (joint == at + 1 and bool(other.unit or other.is_fraction))  # "over 30 but under 50 percent of"
    rising = (one.value < other.value) == (_SIDES[one.relation] == "low") and one.value != other.value
    return (joint, second) if sides == {"low", "high"} and same and fits and rising else (0, 0)


def _names(token: Token) -> bool:
    return token.is_a("nutrient") or token.is_a("dish")


_SIDES = {
    "over": "low",
    "at least": "low",
    "well over": "low",
    "under": "high",
    "at most": "high",
    "well under": "high",
}
_BEHIND_BOUND = frozenset(". , ; ! ? a per each every for in on here and but".split())
