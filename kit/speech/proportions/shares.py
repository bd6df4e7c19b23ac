"""Shares in a sentence: of what, by whom. "A third of the fiber comes from the beans", "half your daily iron"."""

from kit.speech.about.parts import is_food, is_verb
from kit.speech.about.slots import (
    Named,
    antecedent,
    day_opens,
    is_day,
    nutrient_before,
    nutrients_after,
    of_what_went_before,
    share_at,
    topic,
)
from kit.speech.claim import About
from kit.speech.proportions.brought_by import foods_of, out_of
from kit.speech.proportions.share_claim import Share
from kit.speech.proportions.shares_joined import with_its_foods, with_the_day, with_those_before
from kit.speech.words.clauses import is_stop
from kit.speech.words.quantities_said import WEIGHTS
from kit.speech.words.sentence import Sentence, food_at
from kit.speech.words.tokens import Quantity

MACROS = ("protein", "fat", "carbohydrate", "saturated_fat", "sugars", "monounsaturated_fat", "polyunsaturated_fat")
_SKIP = frozenset("of the a an your our its all that this these in total dish s for whole full up what".split())
_GOES_BACK = frozenset("from comes come is are with by being".split())


def shares(sentence: Sentence, about: list[About]) -> list[Share]:
    """Return the shares of a sentence that no claim has used, in order."""
    found: list[Share] = []
    for at in range(len(sentence)):
        said = None if at in sentence.used else share_at(sentence, at)
        if said is not None and "least" not in sentence.texts[max(0, at - 3) : at]:  # "the least fat of all"
            share = _share(sentence, at, said, about, found)
            if share is not None:
                found.append(share)
    found = [with_the_day(sentence, *pair) for pair in zip(found, [*found[1:], None], strict=False)]
    found = [with_its_foods(sentence, *pair) for pair in zip(found, [*found[1:], None], strict=False)]
    return [with_those_before(sentence, *pair) for pair in zip(found, [None, *found], strict=False)]


def _share(sentence: Sentence, at: int, said: Quantity, about: list[About], earlier: list[Share]) -> Share | None:
    if _of_a_rest(sentence, at):
        return None
    whole, day, following = _whole(sentence, at, earlier)
    if not whole or (said.relation == "much" and whole[0].nutrient == "water"):  # "it holds a lot of water"
        return None
    end = where_it_ends(sentence, following, at)
    day = day or _day_after(sentence, following, end) or day_opens(sentence, at)
    if all(one.nutrient == "energy" for one in whole):
        by = _macro(sentence, at, following, end, whole[0])
        if by is not None:
            return Share(at, said, tuple(whole), by_nutrient=by, of_amounts=_of_amounts(sentence, whole))
    foods, places = foods_of(sentence, at, following, end, about[at], earlier)
    if (
        not foods
        and earlier
        and not day
        and earlier[-1].of_day
        and sentence.text_at(at - 1) in ("and", ",", "about", "plus")
    ):
        day = True
    of = at + 1 + (sentence.text_at(at + 1) == "of")
    if sentence.text_at(of) == "your" and _gives(sentence, at):
        day = True  # "the rice gives you a fifth of your magnesium"
    yours = sentence.text_at(at + 1) == "your" or sentence.text_at(at + 2) in ("your", "my")
    if not foods and yours and sentence.text_at(at + 1) in ("your", "of"):
        day = True
    return Share(at, said, tuple(whole), None, tuple(foods), tuple(places), day, _of_amounts(sentence, whole))


def _of_a_rest(sentence: Sentence, at: int) -> bool:
    """Return whether a share is of what others leave: ", the rest of it nearly all from the butter"."""
    place = at - 1
    while sentence.text_at(place) in ("of", "it", "them", ",", "is", "comes", "that"):
        place -= 1
    return place != at - 1 and sentence.is_a(place, "share", "rest")


def _gives(sentence: Sentence, at: int) -> bool:
    """Return whether a share is what something gives the eater, and not what it is of the dish."""
    before = range(max(sentence.clause_of(at)[0], at - 4), at)
    return any(is_verb(sentence, place) and sentence.text_at(place) not in ("comes", "come", "is") for place in before)


def _of_amounts(sentence: Sentence, whole: list[Named]) -> frozenset[int]:
    """Return the places of the nutrients among some whose amount is said: "34 grams of protein, half of it ..."."""
    return frozenset(
        one.place
        for one in whole
        if sentence.tokens[one.place].quantity is not None
        or (sentence.text_at(one.place - 1) == "of" and _is_amount(sentence, one.place - 2))
        or _is_amount(sentence, one.place - 1)
        or (sentence.text_at(one.place + 1) in _AMOUNT_FOLLOWS and _is_amount(sentence, one.place + 2))
    )


_AMOUNT_FOLLOWS = ("is", "are", "at", ",", ":", "comes to")


def _is_amount(sentence: Sentence, at: int) -> bool:
    quantity = sentence.tokens[at].quantity if 0 <= at < len(sentence) else None
    return quantity is not None and (quantity.unit in WEIGHTS or quantity.unit in ("kcal", "kJ"))


def _whole(sentence: Sentence, at: int, earlier: list[Share]) -> tuple[list[Named], bool, int]:
    """Return what a share is a share of, whether a day was named before it, and the place that follows."""
    opened = _opened_with(sentence, at)
    if opened is not None and opened.place not in sentence.used:
        return [opened], True, at + 1
    place, day = at + 1, False
    while place < len(sentence) and (
        sentence.text_at(place) in _SKIP
        or is_day(sentence, place)
        or sentence.tokens[place].text in ("day's", "worth", "amount", "recommended")
        or (sentence.tokens[place].possessive and sentence.is_a(place, "dish"))
    ):
        day = day or is_day(sentence, place)
        place += 1
    named = nutrients_after(sentence, place, frozenset())
    if named and named[0].place == place:
        following = named[-1].place + 1
        rest = sentence.is_a(at, "share", "rest")
        gapped = earlier and place == at + 1 and not rest and earlier[-1].by_nutrient is not None  # ", a quarter fat"
        led = sentence.text_at(place - 1) in ("from", "is", "as") or gapped
        if earlier and named[0].nutrient in MACROS and led and not day:
            return list(earlier[-1].whole), False, at + 1
        return named, day, following
    back = of_what_went_before(sentence, at)
    if back and _goes_on_with(sentence, at, earlier):
        return list(earlier[-1].whole), False, at + 1
    if back or sentence.text_at(at + 1) in _GOES_BACK or out_of(sentence, at + 1):
        before = antecedent(sentence, at) if back or not earlier else None
        if earlier and not back:
            return list(earlier[-1].whole), False, at + 1
        if before is not None:
            return [before], False, at + 1
    # "Its fiber is a third of what you need in a day."
    if day or any(is_day(sentence, spot) for spot in range(at + 1, where_it_ends(sentence, at + 1, at))):
        first = sentence.clause_of(at)[0]
        told_of = next((word for word in sentence.texts[first:at] if word not in (",", "and", "but")), "")
        alone = first == at and sentence.text_at(at - 1) in (":", "?")  # "Vitamin C: 39 percent of the daily value"
        before = nutrient_before(sentence, at, whole=alone or told_of in ("that", "which", "it"))
        before = before or topic(sentence, at)
        if before is not None and before.place not in sentence.used:
            return [before], True, place
    if _goes_on_with(sentence, at, earlier):
        return list(earlier[-1].whole), False, at + 1
    if sentence.text_at(at + 1) in ("", ".", ",", ";", "!"):  # "Sugar-wise, the apples bring a bit over half."
        before = nutrient_before(sentence, at, whole=True)
        if before is not None and before.place not in sentence.used:
            return [before], False, at + 1
    # "The fiber comes mostly from the beans."
    if sentence.tokens[at].is_a("share") and sentence.text_at(at + 1) in ("from", "in", "saturated", "unsaturated"):
        before = nutrient_before(sentence, at)
        if before is not None:
            return [before], False, at + 1
    return [], day, place


def _opened_with(sentence: Sentence, at: int) -> Named | None:
    """Return the nutrient of "of the day's magnesium, a plate brings about a third"; None where it opens nothing."""
    first = 0 if sentence.text_at(0) == "of" else -1
    comma = next((place for place in range(2, min(at, 8)) if sentence.text_at(place) == ","), 0)
    if first or not comma or sentence.text_at(at + 1) not in ("", ".", "!", ",", "and"):
        return None
    day = any(sentence.is_a(place, "day") for place in range(1, comma))
    named = sentence.tokens[comma - 1].parts.get("nutrient", "")
    return Named(named, comma - 1) if day and named else None


def _goes_on_with(sentence: Sentence, at: int, earlier: list[Share]) -> bool:
    """Return whether another nutrient's share of the energy goes on without its verb: ", and fat about a quarter"."""
    name = sentence.tokens[at - 1].parts.get("nutrient", "") if at else ""
    ends = sentence.text_at(at + 1) in ("", ".", ",", ";", "!", "and") or of_what_went_before(sentence, at)
    return bool(earlier) and earlier[-1].by_nutrient is not None and name in MACROS and ends


def where_it_ends(sentence: Sentence, start: int, at: int) -> int:
    """Return where the reach of a share ends: at the next share, or with its clause."""
    last = sentence.clause_of(at)[-1] + 1
    for place in range(max(start, at + 1), last):
        if is_stop(sentence.tokens[place]) or (share_at(sentence, place) is not None and place > at):
            return place
    return last


def _day_after(sentence: Sentence, start: int, end: int) -> bool:
    return any(is_day(sentence, place) for place in range(start, end))


def _macro(sentence: Sentence, at: int, start: int, end: int, whole: Named) -> Named | None:
    """Return the nutrient that a share of the energy comes from."""
    for place in range(start, end):
        token = sentence.tokens[place]
        if token.is_a("nutrient") and token.parts["nutrient"] in MACROS and place != whole.place:
            if sentence.text_at(place - 1) in (",", "and") and share_at(sentence, min(place + 1, len(sentence) - 1)):
                break  # "carbohydrate supplies half of the energy, and fat about a third"
            return Named(token.parts["nutrient"], place)
        food = food_at(sentence, place)
        if food is not None and is_food(sentence, place) and not token.is_a("nutrient"):
            return None
    first = sentence.clause_of(at)[0]
    if at >= 3 and sentence.texts[at - 2 : at] == (",", "at"):  # "fat, at 37 percent of the calories, is above"
        named = sentence.tokens[at - 3].parts.get("nutrient", "")
        if named in MACROS and at - 3 not in sentence.used:
            return Named(named, at - 3)
    for place in range(at - 1, first - 1, -1):
        token = sentence.tokens[place]
        if (
            token.is_a("nutrient")
            and token.parts["nutrient"] in MACROS
            and place not in sentence.used
            and not sentence.is_a(place + 1, "wording")
        ):
            return Named(token.parts["nutrient"], place)
        if share_at(sentence, place) is not None:
            break
    if sentence.text_at(first) in ("at", "with"):  # "At over half of the calories, fat is above the range."
        for place in range(end, len(sentence)):
            token = sentence.tokens[place]
            if token.is_a("nutrient") and token.parts["nutrient"] in MACROS:
                return Named(token.parts["nutrient"], place)
            if is_stop(token):
                break
    return None
