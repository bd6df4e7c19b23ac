"""Shares of a day: "30 percent of a day's fiber", "a third of your daily iron", "more than a day's worth"."""

import re
from dataclasses import dataclass

from kit.meal.certainty import Range
from kit.rules.reference import daily_values
from kit.rules.spoken import fraction_words, share_words
from kit.rules.verdicts import CANNOT_TELL, HOLDS, OFF
from kit.speech.about.basis import basis_near
from kit.speech.about.parts import back, is_serving, is_verb
from kit.speech.about.slots import Named, is_day, negated, nutrient_before, nutrients_after
from kit.speech.claim import FOOD, SERVING, About, Claim, Edit, Finding
from kit.speech.figures.comparisons_other import than_of
from kit.speech.proportions.share_claim import Share, ShareClaim
from kit.speech.values import Amount, amount_of, said_thing, scaled
from kit.speech.words.agreement import fits
from kit.speech.words.sentence import Sentence
from kit.speech.words.tokens import SHARE, Quantity
from kit.talk.dish import Dish
from kit.texts import number, percent

FAMILY = "share of a day"
_BEFORE_DAY = (  # of words before "a day's worth"; the first that is found
    ("at most", "at most"),
    ("at least", "at least"),
    ("more than|over", "over"),
    ("less than|under|below|short of", "under"),
    ("nearly|almost|close to", "nearly all"),
)
_ALL_OF_IT = frozenset("cover covers meet meets all enough whole full entire".split())
_MULTIPLES = {"twice": 2.0, "double": 2.0, "triple": 3.0}


@dataclass(frozen=True, slots=True)
class DayShareClaim(ShareClaim):
    """A share of what is needed of a nutrient in a day."""


def read(sentence: Sentence, about: list[About], found: list[Share]) -> list[Claim]:
    """Return the shares of a day that a sentence claims."""
    claims: list[Claim] = []
    for share in found:
        if not share.of_day or share.by_nutrient is not None or share.place in sentence.used:
            continue
        claims += [_claim(sentence, about, share.place, share.said, one, share) for one in share.whole]
    return claims + _more_than_needed(sentence, about) + _whole_days(sentence, about)


def _claim(
    sentence: Sentence, about: list[About], at: int, said: Quantity, named: Named, share: Share | None = None
) -> Claim:
    subject = basis_near(sentence, at, about[at]) or about[at]
    takes = _takes(sentence, at)
    if takes is not None:
        sentence.used.update((takes, takes + 1))
        subject = About(SERVING, sentence.tokens[takes].amount.value)
    if share is not None and share.foods and share.food_places:
        thanked = sentence.text_at(back(sentence, min(share.food_places))) == "thanks to"  # it may not bring all of it
        subject = About(FOOD, 1.0, share.foods, or_dish=thanked)
    days = [
        place
        for place in sentence.clause_of(at)
        if is_day(sentence, place) and not _is_another_worth(sentence, place, at, named.place)
    ]
    own = () if share is not None and named.place in share.of_amounts else (named.place,)
    sentence.used.update({at, *own, *days, *(share.food_places if share else ())})
    token = sentence.tokens[at]
    return DayShareClaim(
        tuple(sorted({at, named.place})), subject, negated(sentence, at), named.nutrient, said, token.start, token.end
    )


def _more_than_needed(sentence: Sentence, about: list[About]) -> list[Claim]:
    """Return claims of more or less than a day needs: "more vitamin C than you need in a whole day"."""
    claims: list[Claim] = []
    for at in range(len(sentence)):
        if sentence.text_at(at) not in ("more", "less") or at in sentence.used:
            continue
        named = nutrients_after(sentence, at + 1, frozenset("of the".split()))
        than = than_of(sentence, named[-1].place + 1) if named else at
        needed = named and sentence.text_at(than) == "than" and sentence.text_at(than + 1) in ("you", "anyone", "a")
        if needed and any(is_day(sentence, place) for place in range(than + 2, min(than + 9, len(sentence)))):
            said = Quantity(1, 1, SHARE, "over" if sentence.text_at(at) == "more" else "under", True)
            claims += [_claim(sentence, about, at, said, one) for one in named]
    return claims


def _takes(sentence: Sentence, at: int) -> int | None:
    """Return where it is said how many servings it takes: "a day's worth of iron would take two slices"."""
    for place in sentence.clause_of(at)[:-1]:
        counted = sentence.tokens[place].quantity is not None and is_serving(sentence, place + 1)
        if counted and place != at and sentence.text_at(place - 1) in ("take", "takes", "need", "needs"):
            return place
    return None


def _is_another_worth(sentence: Sentence, day: int, at: int, named: int) -> bool:
    """Return whether "a day's worth" is of another nutrient: "a fifth of the sodium and a day's worth of iron"."""
    worth = "worth" in sentence.text_at(day).split(" ") or sentence.text_at(day + 1) == "worth"
    return worth and not min(at, named) <= day <= max(at, named) + 3


def _whole_days(sentence: Sentence, about: list[About]) -> list[Claim]:
    """Return claims of whole days: "a day's worth of vitamin C", "twice your daily iron", "covers your daily fiber"."""
    claims: list[Claim] = []
    for at in range(len(sentence)):
        if not is_day(sentence, at) or at in sentence.used or sentence.text_at(at) in ("recommended",):
            continue
        named = [
            one
            for one in nutrients_after(
                sentence, at + 1, frozenset("worth of the your a s supply amount dose intake need".split())
            )
            if one.place not in sentence.used
        ]
        clause = sentence.clause_of(at)
        if named and sentence.text_at(at) in ("need", "needs"):
            continue  # "you need vitamin C, and a plate has"
        if not named:
            alone = clause[0] > 0 and not any(is_verb(sentence, place) for place in clause)
            before = nutrient_before(sentence, at, whole=alone)  # "Iron? A day's worth."
            covers = any(
                sentence.text_at(place) in ("all", "enough", "whole", "covers", "cover", "meets", "meet")
                or "worth" in sentence.text_at(place).split(" ")
                for place in clause
            )
            if before is None or before.place in sentence.used or not covers:
                continue
            named = [before]
        start, said = _times_before(sentence, at, named[0].place)
        if start is None:
            continue
        for one in named:
            claims.append(_claim(sentence, about, start, said, one))
            sentence.used.add(at)
    return claims


def _times_before(sentence: Sentence, at: int, nutrient_place: int) -> tuple[int | None, Quantity]:
    clause = sentence.clause_of(at)
    for place in range(max(at, nutrient_place) - 1, clause[0] - 1, -1):
        token = sentence.tokens[place]
        if token.text in _MULTIPLES:
            return place, Quantity(_MULTIPLES[token.text], _MULTIPLES[token.text], SHARE, is_fraction=True)
        if (token.quantity is not None and token.quantity.unit in ("times", "day")) or (
            token.quantity is not None and token.quantity.unit == "" and sentence.is_a(place + 1, "day")
        ):
            q = token.quantity
            return place, Quantity(q.low, q.high, SHARE, q.relation, True)
        if token.is_a("relation"):
            return place, Quantity(1, 1, SHARE, token.parts["relation"], True)
    text = sentence.text[sentence.tokens[clause[0]].start : sentence.tokens[at].end].lower()
    relation = next((relation for words, relation in _BEFORE_DAY if re.search(rf"\b(?:{words})\b", text)), "about")
    if re.search(r"\bno (?:more|less) than\b", text) and not negated(sentence, at):
        relation = {"over": "at most", "under": "at least"}.get(relation, relation)
    worth = sentence.text_at(at + 1) == "worth" or "worth" in sentence.text_at(at)
    words = {sentence.text_at(place) for place in clause}
    if relation == "about" and words & _ALL_OF_IT:
        relation = "all"
    if worth or words & (_ALL_OF_IT | {"need", "needs", "supply"}):
        return at, Quantity(1, 1, SHARE, relation, True)
    return None, Quantity(0, 0)


def day_share(dish: Dish, name: str, about: About) -> tuple[Range, Amount] | Finding:
    """Return the share of a day that there is of a nutrient, and the amount; or why that cannot be told."""
    own = "sodium" if name == "salt" else name
    values = daily_values(dish.talk.rules)
    if own not in values:
        return Finding(CANNOT_TELL, f"{said_thing(own)} has no daily value; say the amount")
    amount = amount_of(dish, own, about)
    if isinstance(amount, Finding):
        return amount
    return scaled(amount.of, 1 / values[own].amount), amount


def judge(claim: DayShareClaim, dish: Dish) -> Finding:
    """Judge a share of a day."""
    name = "sodium" if claim.nutrient == "salt" else claim.nutrient
    found = day_share(dish, name, claim.about)
    if isinstance(found, Finding):
        return found
    of, amount = found
    day = daily_values(dish.talk.rules)[name]
    because = (
        f"{amount.begin} {percent(of.value)} ({number(100 * of.low)} to {percent(of.high)}) of a day's "
        f"{said_thing(name)} ({day.source}; "
        f"{amount.source})"
    )
    if name == "protein":
        return _protein(claim, of, because)
    result = fits(claim.said, of, amount.open_above)
    if claim.negated and result is not None:
        result = not result
    if result is None:
        return Finding(CANNOT_TELL, f"{because}: too near to tell")
    if result:
        return Finding(HOLDS, because)
    return Finding(OFF, because, _edit(claim, of), _sentences(claim, name, of))


def _protein(claim: DayShareClaim, of: Range, because: str) -> Finding:
    """Judge protein: a share of a day counts it corrected for quality, which can only make it less."""
    said = claim.said
    floor = said.relation in (
        "about",
        "nearly",
        "just over",
        "over",
        "at least",
        "well over",
        "exactly",
        "nearly all",
        "all",
        "most",
    )
    if floor and not claim.negated and said.value > 1.15 * of.high:
        return Finding(OFF, f"{because}, even before it is corrected for quality")
    return Finding(
        CANNOT_TELL,
        f"{because}, uncorrected; a share of the day counts protein corrected for its quality (21 CFR "
        f"101.9(c)(7)), which "
        "is not known of a mixture: give the grams",
    )


def _edit(claim: DayShareClaim, of: Range) -> Edit | None:
    if claim.negated or of.value < 0.03 or of.value >= 1.75:
        return None
    return Edit(claim.start, claim.end, fraction_words(of.value))


def _sentences(claim: DayShareClaim, name: str, of: Range) -> tuple[str, ...]:
    if claim.about.kind == SERVING and claim.about.count == 1:
        return (f"{{serving}} has {{{name}.share_of_day}}.", f"{{serving}} has {{{name}}}.")
    words = share_words(of, f"a day's {said_thing(name)}")
    return (f"That is {words}.",)
