"""Parts of a nutrient: "most of the fat is unsaturated", "16 grams of fat, two grams of it saturated"."""

from dataclasses import dataclass

from kit.meal.certainty import Range
from kit.rules.verdicts import CANNOT_TELL
from kit.speech.about.slots import negated
from kit.speech.claim import FOOD, About, Claim, Finding
from kit.speech.proportions.share_claim import Share, ShareClaim, judged_as_said
from kit.speech.values import amount_of, said_thing
from kit.speech.words.sentence import Sentence
from kit.talk.dish import Dish
from kit.texts import percent

FAMILY = "part of a nutrient"
_PARTS = {
    "saturated": "saturated_fat",
    "saturates": "saturated_fat",
    "unsaturated": "unsaturated_fat",
    "monounsaturated": "monounsaturated_fat",
    "polyunsaturated": "polyunsaturated_fat",
    "sugar": "sugars",
    "sugars": "sugars",
    "fiber": "fiber",
    "fibre": "fiber",
}
_WHOLE_OF = {"sugars": "carbohydrate", "fiber": "carbohydrate"}
_BETWEEN = frozenset("is are it of them which that the from in being comes come as".split())


@dataclass(frozen=True, slots=True)
class PartClaim(ShareClaim):
    """So much of a nutrient is one of the parts it is made of."""

    part: str = ""
    other: bool = False  # "most of the fat is not saturated": the rest of it


def read(sentence: Sentence, about: list[About], found: list[Share]) -> list[Claim]:
    """Return the shares of fat that are said to be saturated, of carbohydrate to be sugar."""
    claims: list[Claim] = []
    for share in found:
        if share.place in sentence.used or share.of_day or len(share.whole) != 1:
            continue
        whole = share.whole[0]
        at = max(share.place, whole.place) + 1
        nots: list[int] = []
        while sentence.text_at(at) in _BETWEEN or sentence.text_at(at) == "not":
            nots += [at] if sentence.text_at(at) == "not" else []
            at += 1
        part = _PARTS.get(sentence.text_at(at)) or _fatty(sentence, at)
        if not part or at in sentence.used or whole.nutrient != _WHOLE_OF.get(part, "fat"):
            continue
        sentence.used.update({share.place, at, *share.named_here, *nots})
        token = sentence.tokens[share.place]
        claims.append(
            PartClaim(
                tuple(sorted({share.place, at})),
                about[share.place],
                negated(sentence, share.place),
                whole.nutrient,
                share.said,
                token.start,
                token.end,
                part,
                bool(nots),
            )
        )
    return claims


def _fatty(sentence: Sentence, at: int) -> str:
    named = sentence.tokens[at].parts.get("nutrient", "") if at < len(sentence) else ""
    return named if named in _PARTS.values() else ""


def judge(claim: PartClaim, dish: Dish) -> Finding:
    """Judge a part of a nutrient by the amounts of both."""
    about = claim.about if claim.about.kind != FOOD or claim.about.measure else About()
    whole, part = amount_of(dish, claim.nutrient, about), amount_of(dish, claim.part, about)
    if isinstance(whole, Finding):
        return whole
    if isinstance(part, Finding):
        return part
    if not whole.of.value > 0 or part.open_above or whole.open_above or part.of.value != part.of.value:
        return Finding(CANNOT_TELL, f"how much of the {said_thing(claim.nutrient)} that is has no value in the table")
    share = part.of.value / whole.of.value
    half = share * (part.of.half_width / part.of.value if part.of.value > 0 else 0.0)
    if claim.other:
        share = 1 - share
    of = Range(share, max(0.0, share - half), min(1.0, share + half))
    told = f"{'not ' if claim.other else ''}{said_thing(claim.part)}"
    because = f"{percent(share)} of the {said_thing(claim.nutrient)} is {told} ({whole.source or dish.source})"
    return judged_as_said(claim, of, because)
