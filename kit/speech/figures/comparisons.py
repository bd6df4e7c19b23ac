"""Comparisons: "twice the protein of rice", "45 percent fewer calories than", "as much protein as two eggs"."""

from dataclasses import replace

from kit.speech.about.parts import is_dish
from kit.speech.about.slots import Named, is_day, negated, nutrient_before, nutrients_after, share_at
from kit.speech.claim import FOOD, UNKNOWN, About, Claim, Finding
from kit.speech.figures.comparisons_carried import MORE, MORE_OR_LESS, carried_on, of_so_many_again
from kit.speech.figures.comparisons_claim import IN_THE_DISH, ComparisonClaim
from kit.speech.figures.comparisons_judged import judge_comparison
from kit.speech.figures.comparisons_other import (
    _basis,
    _other,
    beats,
    held_in,
    is_inside,
    needed,
    shared_of,
    source,
    than_amount,
    than_needed,
    that_of,
    times_behind,
)
from kit.speech.words.clauses import is_stop
from kit.speech.words.sentence import Sentence
from kit.speech.words.tokens import Quantity
from kit.talk.dish import Dish

FAMILY = "comparison"


def read(sentence: Sentence, about: list[About]) -> list[Claim]:
    """Return the comparisons that a sentence claims."""
    basis, basis_places = _basis(sentence)
    where = sentence.clauses[basis_places[0]] if basis_places else 0
    claims: list[Claim] = []
    for at in range(len(sentence)):
        if at in sentence.used:
            continue
        claim = (
            _than(sentence, about, at)
            or beats(sentence, about, at)
            or _as_much(sentence, about, at)
            or _times_of(sentence, about, at)
            or that_of(sentence, about, at)
            or needed(sentence, at)
        )
        if claim is not None:
            claim = of_so_many_again(sentence, claim, claims)
            sentence.used.update(claim.places)
            said = basis if sentence.clauses[at] - where in (0, 1) else ""
            claims.append(replace(claim, basis=claim.basis or said))
    if claims:
        sentence.used.update(basis_places)
        claims += carried_on(sentence, claims)
    return claims + _without_other(sentence, about, claims)


def _than(sentence: Sentence, about: list[About], at: int) -> ComparisonClaim | None:
    """Read "more X than Y", "25 percent less X than Y", "lower in X than Y"."""
    token = sentence.tokens[at]
    if token.text not in MORE_OR_LESS or token.quantity is not None:
        return None
    than = _than_behind(sentence, at)
    if than is None:
        return _set_beside(sentence, about, at)
    named = _compared(sentence, at, than)
    if not named:
        return None
    start = than + 1 + (sentence.text_at(than + 1) in ("with", "to"))
    times, times_places = _degree(sentence, at - 1)
    if than_amount(sentence, than):
        return None
    counted = times_behind(sentence, start)
    if counted is not None:
        times, times_places, start = counted[0], [start], counted[1]
    other = _other(sentence, start)
    origin = source(sentence, named[-1].place, than)
    of_dish = origin is not None and origin.kind not in (UNKNOWN, FOOD)
    if other is None or (origin is not None and not of_dish and (origin.kind == UNKNOWN or not is_inside(other[0]))):
        return None
    if any(is_day(sentence, place) for place in range(than + 1, min(than + 6, len(sentence)))):
        return None  # "is more than a full day's worth"
    no_more = sentence.text_at(at - 1) == "no"  # "it has no more sugar than an egg"
    sentence.used.update((at - 1,) if no_more else ())
    places = tuple(sorted({at, than, *times_places, *(one.place for one in named), *other[2]}))
    return ComparisonClaim(
        places,
        origin or held_in(sentence, named[-1].place + 1, than) or about[at],
        negated(sentence, min([at, *times_places])) or no_more,
        named[0].nutrient,
        1 if token.text in MORE else -1,
        times,
        other[0],
        other[1],
        IN_THE_DISH if (origin and not of_dish) or (_brings(sentence, about, at) and is_inside(other[0])) else "",
    )


def _set_beside(sentence: Sentence, about: list[About], at: int) -> ComparisonClaim | None:
    """Read "compared with prunes, walnuts have more protein": what is compared with opens the statement."""
    if sentence.text_at(0) != "compared" or sentence.text_at(1) not in ("with", "to"):
        return None
    other = _other(sentence, 2)
    named = nutrients_after(sentence, at + 1, frozenset("in of".split()))
    alone = other is not None and sentence.text_at(max(other[2]) + 1) == ","
    if other is None or not alone or not named or sentence.text_at(named[-1].place + 1) not in ("", ".", "!"):
        return None
    times, times_places = _degree(sentence, at - 1)
    places = tuple(sorted({0, at, *times_places, *(one.place for one in named), *other[2]}))
    sign = 1 if sentence.text_at(at) in MORE else -1
    no_more = sentence.text_at(at - 1) == "no"
    sentence.used.update((at - 1,) if no_more else ())
    denied = negated(sentence, min([at, *times_places])) or no_more
    return ComparisonClaim(places, about[at], denied, named[0].nutrient, sign, times, other[0], other[1])


def _than_behind(sentence: Sentence, at: int) -> int | None:
    """Return the place of "than", or "compared", behind a word of more or less in the same statement."""
    for place in range(at + 1, min(len(sentence), at + 14)):
        if is_stop(sentence.tokens[place]):
            return None
        if sentence.text_at(place) in ("than", "compared"):
            return place
    return None


def _compared(sentence: Sentence, at: int, than: int) -> list[Named]:
    """Return the nutrients that are compared: behind "more", or before it ("the fiber is higher than")."""
    named = nutrients_after(sentence, at + 1, frozenset("in of its the total".split()))
    named = [one for one in named if one.place < than]
    if named:
        return named
    before = nutrient_before(sentence, at)
    return [before] if before is not None and before.place not in sentence.used else []


def _brings(sentence: Sentence, about: list[About], at: int) -> bool:
    """Return whether a food of the dish is said to bring something, and not to have it: in the dish, that is."""
    before = range(sentence.clause_of(at)[0], at)
    brings = any(sentence.text_at(place) in _PUTS_IN for place in before)
    return is_inside(about[at]) and brings


_PUTS_IN = frozenset("brings bring contributes contribute supplies supply adds add puts put".split())


def _degree(sentence: Sentence, at: int) -> tuple[Quantity | None, list[int]]:
    """Return how much more or less: "25 percent less", "three times more", "a third fewer", "10 grams more"."""
    quantity = sentence.tokens[at].quantity if at >= 0 else None
    if quantity is not None and (quantity.unit in ("%", "times", "g", "mg", "kcal") or quantity.is_fraction):
        return quantity, [at]
    return None, []


def _as_much(sentence: Sentence, about: list[About], at: int) -> ComparisonClaim | None:
    """Read "as much X as Y", "twice as much X as Y", "as rich in X as Y", "the same X as Y"."""
    text = sentence.text_at(at)
    same = text == "same" and sentence.text_at(at - 1) == "the"
    if not same and not (text == "as" and sentence.text_at(at + 1) in ("much", "many", "rich", "high", "low")):
        return None
    named = nutrients_after(sentence, at + 1 if same else at + 2, frozenset("in of the amount".split()))
    start = (named[-1].place if named else at + 1) + 1
    second = next(
        (place for place in range(start, min(len(sentence), start + 3)) if sentence.text_at(place) == "as"), None
    )
    if not named:
        before = nutrient_before(sentence, at)
        second = second or next(
            (place for place in range(at + 2, min(len(sentence), at + 4)) if sentence.text_at(place) == "as"), None
        )
        if before is None or before.place in sentence.used:
            return None
        named = [before]
    held = next(
        (place for place in range(start, min(len(sentence), start + 6)) if sentence.text_at(place) == "as"), None
    )
    if second is None and held is not None and sentence.text_at(start) in ("in", "on"):
        second = held if any(is_dish(sentence, place) for place in range(start, held)) else None
    if second is None:
        return None
    times, places = _degree(sentence, at - 1)
    other = _other(sentence, second + 1)
    if other is None:
        return None
    used = tuple(sorted({at, second, *places, *(one.place for one in named), *other[2]}))
    return ComparisonClaim(
        used,
        about[at],
        negated(sentence, min([at, *places])),
        named[0].nutrient,
        0,
        times or Quantity(1, 1, "times"),
        other[0],
        other[1],
    )


def _times_of(sentence: Sentence, about: list[About], at: int) -> ComparisonClaim | None:
    """Read "twice the X of Y", "half of the X of a glass of Y", "three times the X in Y"."""
    quantity = sentence.tokens[at].quantity
    if quantity is None:
        return None
    share = share_at(sentence, at)
    if not (quantity.unit == "times" or (share is not None and quantity.is_fraction)):
        return None
    place = at + 1
    while sentence.text_at(place) in ("of", "the", "its", "as", "much", "amount", "more"):
        place += 1
    named = nutrients_after(sentence, place, frozenset())
    if not named or named[0].place != place:
        return None
    after = named[-1].place + 1
    if any(is_day(sentence, spot) for spot in sentence.clause_of(at)):
        return None
    if sentence.text_at(after) in ("content",):
        after += 1
    if sentence.text_at(after) not in ("of", "in", "found", "you", "that", "as", "than", "compared"):
        return None
    other = _other(sentence, after + 1) if quantity.unit == "times" else shared_of(sentence, after)
    if other is None:
        return None
    first = about[at]
    link = other[2][-1] + 1
    if sentence.text_at(link) in ("as", "than") and (held := held_in(sentence, after, link)) is not None:
        second = _other(sentence, link + 1)  # "twice the fiber in the beans as in the corn"
        if second is None:
            return None
        first, other = held, second
    used = tuple(sorted({at, named[0].place, *other[2]}))
    times = Quantity(quantity.low, quantity.high, "times", quantity.relation, quantity.is_fraction)
    basis = IN_THE_DISH if _brings(sentence, about, at) and is_inside(other[0]) else ""
    denied = negated(sentence, at)
    return ComparisonClaim(used, first, denied, named[0].nutrient, 0, times, other[0], other[1], basis)


def _without_other(sentence: Sentence, about: list[About], claims: list[Claim]) -> list[Claim]:
    """Return comparisons with nothing named: "less salt", "higher in protein"."""
    found: list[Claim] = []
    for at, token in enumerate(sentence.tokens):
        if at in sentence.used or token.text not in MORE_OR_LESS or claims:
            continue
        named: list[Named] = nutrients_after(sentence, at + 1, frozenset("in of".split()))
        if not named or named[0].place > at + 2 or named[0].place in sentence.used:
            continue
        if than_needed(sentence, named[-1].place + 1) or than_amount(sentence, named[-1].place + 1):
            continue
        if (
            named[0].nutrient in ("salt", "water", "sugars", "fat")
            and sentence.text_at(at - 1)
            in ("no", "any", "some", "little", "add", "use", "with", "need", "needs", "a", "put", "bit", "want", "much")
            and not any(sentence.text_at(spot) in ("has", "have", "contains", "is", "it") for spot in range(at))
        ):
            continue
        degree, places = _degree(sentence, at - 1)
        sentence.used.update({at, named[0].place, *places})
        found.append(
            ComparisonClaim(
                tuple(sorted({at, named[0].place, *places})),
                about[at],
                False,
                named[0].nutrient,
                1 if token.text in MORE else -1,
                degree,
                About(UNKNOWN),
            )
        )
    return found


def judge(claim: ComparisonClaim, dish: Dish) -> Finding:
    """Judge a comparison on the basis that is said, or else on every usual one."""
    return judge_comparison(claim, dish)
