"""Comparisons that go on with what was named before: "and less than two", "and far less cholesterol than one"."""

from dataclasses import replace

from kit.food.vocabulary import singular
from kit.speech.about.slots import nutrients_after
from kit.speech.claim import UNKNOWN, Claim
from kit.speech.figures.comparisons_claim import ComparisonClaim
from kit.speech.figures.comparisons_other import than_in
from kit.speech.words.sentence import Sentence

MORE = frozenset("more higher richer greater larger bigger heavier extra ahead".split())
LESS = frozenset("less fewer lower leaner lighter smaller poorer".split())
MORE_OR_LESS = MORE | LESS


def carried_on(sentence: Sentence, claims: list[Claim]) -> list[Claim]:
    """Return comparisons that go on with what was named before: "and less than two", "with far less cholesterol"."""
    found: list[Claim] = []
    last = claims[-1]
    assert isinstance(last, ComparisonClaim)
    for at, token in enumerate(sentence.tokens):
        if at in sentence.used or at < last.places[-1]:
            continue
        quantity = token.quantity
        if (
            quantity is not None
            and quantity.unit == ""
            and not quantity.is_fraction
            and quantity.relation in ("under", "over")
            and last.other.measure
            and not sentence.is_a(at + 1, "nutrient")
        ):
            sentence.used.add(at)
            sign = 1 if quantity.relation == "over" else -1
            found.append(
                replace(last, places=(at,), sign=sign, times=None, other=replace(last.other, count=quantity.value))
            )
        elif token.text in MORE_OR_LESS and (counted := than_in(sentence, at)) and last.other.measure:
            sentence.used.update(range(at, counted + 1))
            other = replace(last.other, count=sentence.tokens[counted].amount.value)
            sign = 1 if token.text in MORE else -1
            found.append(replace(last, places=(at, counted), sign=sign, times=None, other=other))
        elif token.text in MORE_OR_LESS:
            named = nutrients_after(sentence, at + 1, frozenset("in of".split()))
            if named and named[0].place not in sentence.used:
                sentence.used.update({at, named[0].place})
                found.append(
                    replace(
                        last,
                        places=(at, named[0].place),
                        nutrient=named[0].nutrient,
                        sign=1 if token.text in MORE else -1,
                        times=None,
                    )
                )
    return found


def of_so_many_again(sentence: Sentence, claim: ComparisonClaim, before: list[Claim]) -> ComparisonClaim:
    """Return a comparison with so many of what was named before: "than three eggs, and less cholesterol than one"."""
    last = before[-1] if before else None
    behind = max(claim.places)
    said = sentence.tokens[behind].amount
    alone = not said.unit and said.value >= 1 and not said.is_fraction
    if claim.other.kind != UNKNOWN or not alone or not isinstance(last, ComparisonClaim) or not last.other.measure:
        return claim
    ends = sentence.text_at(behind + 1) in ("", ".", "!", ",", ";") and sentence.text_at(behind - 1) == "than"
    if not ends:
        return claim
    foods = tuple(replace(word, text=singular(word.text)) for word in last.other.foods) if said.value == 1 else None
    return replace(claim, other=replace(last.other, count=said.value, foods=foods or last.other.foods))
