"""Quantities among the tokens of a sentence: a number with its unit and what was said of it."""

from collections.abc import Sequence

from kit.speech.numbers_said import MULTIPLES
from kit.speech.tokens import Quantity, Token

WEIGHTS = {"g": 1.0, "mg": 1e-3, "µg": 1e-6, "kg": 1000.0, "oz": 28.349523125, "lb": 453.59237}  # [g]; NIST


_A = ("a", "an", "one")


_UNITS_OF_ONE = ("g", "mg", "µg", "kg", "oz", "lb", "cup", "tbsp", "tsp", "week", "month", "year", "hour", "%", "kcal")


def _with_quantities(tokens: list[Token]) -> list[Token]:
    found: list[Token] = []
    at = 0
    while at < len(tokens):
        read = _quantity(tokens, at)
        if read is None:
            found.append(tokens[at])
            at += 1
        else:
            token, length = read
            found.append(token)
            at += length
    return found


def _quantity(tokens: list[Token], at: int) -> tuple[Token, int] | None:
    """Return the quantity that begins at a token, and how many tokens it takes."""
    start, relation = at, ""
    between = tokens[at].text in ("between", "somewhere between", "anywhere between", "from", "anywhere from")
    place = at
    while place < len(tokens) and (
        tokens[place].is_a("relation") or (between and place == at) or tokens[place].text in ("somewhere", "anywhere")
    ):
        if (
            tokens[place].text in ("somewhere", "anywhere")
            and place + 1 < len(tokens)
            and tokens[place + 1].text in ("between", "from")
        ):
            between = True
            place += 2
            continue
        if tokens[place].text in ("somewhere", "anywhere"):
            return None
        told = tokens[place].parts.get("relation", "")
        relation = told if told and (told != "about" or not relation) else relation
        place += 1
    if (
        (
            place > at
            and place < len(tokens)
            and tokens[place].text in ("a", "an", "the", "another")
            and tokens[place].quantity is None
        )
        and place + 1 < len(tokens)
        and tokens[place + 1].quantity is not None
    ):
        place += 1
    if place >= len(tokens):
        return None
    first = tokens[place]
    or_two = [token.text for token in tokens[place + 2 : place + 4]]
    if (
        first.text in _A
        and _unit(tokens, place + 1) in ("day", "week", "hour", "month")
        and or_two in (["or", "two"], ["or", "so"])
    ):
        most = 2.0 if or_two[1] == "two" else 1.0
        quantity = Quantity(1.0, most, _unit(tokens, place + 1), "between" if most > 1 else "about")
        text = " ".join(token.text for token in tokens[start : place + 4])
        return Token(
            text, tokens[start].start, tokens[place + 3].end, {"quantity": quantity.unit}, quantity
        ), place + 4 - start
    if first.quantity is None:
        led = place > at and tokens[place - 1].text.startswith("a ")  # "a good year": the relation holds its "a"
        one_of = place if led else place + 1
        if not ((led or first.text in _A) and _unit(tokens, one_of) in _UNITS_OF_ONE):
            return None
        value, is_fraction = 1.0, False
        if tokens[one_of].parts.get("unit") == "kcal" or tokens[one_of].hyphen_before:
            return None
        place -= led
    else:
        value, is_fraction = first.quantity.value, first.quantity.is_fraction
    place += 1
    if (
        place + 1 < len(tokens)
        and tokens[place].text in ("odd", "something", "some", "ish", "plus")
        and _unit(tokens, place + 1)
    ):
        place += 1  # "fifteen-odd grams"
    high = value
    joined = tokens[place].text if place < len(tokens) else ""
    unit = ""
    # "25 grams to 40 grams": the unit may be said with both numbers.
    early = _unit(tokens, place) if place < len(tokens) else ""
    shift = (
        1
        if early
        and place + 1 < len(tokens)
        and tokens[place + 1].text in ("to", "and")
        and place + 2 < len(tokens)
        and tokens[place + 2].quantity
        and _unit(tokens, place + 3) == early
        else 0
    )
    joined = tokens[place + shift].text if place + shift < len(tokens) else ""
    second = tokens[place + shift + 1] if place + shift + 1 < len(tokens) else None
    hyphened = place < len(tokens) and tokens[place].quantity is not None and tokens[place].hyphen_before
    if hyphened and tokens[place].amount.value > value:
        high, relation, place = tokens[place].amount.value, "between", place + 1
    elif (second is not None and second.quantity is not None and not is_fraction | second.quantity.is_fraction) or (
        second is not None and second.quantity is not None and between
    ):
        allowed = ("and", "to", "or", "–") if between else ("to", "or", "–")
        if joined in allowed and second.quantity.value > value:
            high, relation, place = second.quantity.value, "between", place + shift + 2
    if between and relation != "between" and tokens[at].text == "from" and first.quantity is not None:
        return None
    after_unit = place
    if is_fraction and place < len(tokens) and tokens[place].text in ("a", "an", "of"):
        over = place + 1
        if tokens[place].text == "of" and over < len(tokens) and tokens[over].text in _A:
            over += 1
        if (
            over > place
            and tokens[over - 1].text in _A
            and _unit(tokens, over)
            and _unit(tokens, over) not in ("day", "%", "kcal", "times")
        ):
            after_unit = over
    unit = _unit(tokens, after_unit)
    if unit == "day" and (tokens[after_unit].possessive or is_fraction):
        unit = ""
    if unit:
        place = after_unit + 1
        if after_unit > 0 and is_fraction:
            is_fraction = False
        if (
            place + 1 < len(tokens)
            and tokens[place].text == "and"
            and tokens[place + 1].quantity
            and tokens[place + 1].amount.is_fraction
            and tokens[place + 1].text.startswith(("a ", "half"))
        ):
            nxt = tokens[place + 2].text if place + 2 < len(tokens) else ""
            if nxt not in ("the", "your", "are", "is", "come", "comes", "from") and not (
                nxt == "of" and tokens[place + 3].text in ("the", "your", "its") if place + 3 < len(tokens) else False
            ):
                value, high, place = (
                    value + tokens[place + 1].amount.value,
                    high + tokens[place + 1].amount.value,
                    place + 2,
                )
    if place < len(tokens) and tokens[place].is_a("after") and not tokens[place].is_a("share"):
        told = tokens[place].parts["after"]
        relation = told if told != "about" or not relation else relation
        place += 1
    if not unit and (first.text in MULTIPLES or first.text.endswith("fold")):
        unit = "times"
    quantity = Quantity(value, high, unit, relation or "about", is_fraction)
    text = " ".join(token.text for token in tokens[start:place])
    token = Token(
        text,
        tokens[start].start,
        tokens[place - 1].end,
        {"quantity": unit or "number"},
        quantity,
        None,
        tokens[start].hyphen_before,
        tokens[place - 1].possessive,
        (first.start, first.end),
    )
    return token, place - start


def _unit(tokens: Sequence[Token], at: int) -> str:
    return tokens[at].parts.get("unit", "") if 0 <= at < len(tokens) else ""
