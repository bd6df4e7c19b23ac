"""Who brings what: "most of the fiber comes from the beans", "the oil is the main source of fat"."""

import re
from collections.abc import Set

from kit.speech.about.parts import DETERMINERS, after_determiners, before_determiners, is_food, is_verb
from kit.speech.about.slots import Named, foods_from, negated, nutrients_after
from kit.speech.about.unread import asked
from kit.speech.claim import FOOD, About, Claim
from kit.speech.proportions.dish_shares_judged import DishShareClaim
from kit.speech.proportions.share_claim import Share
from kit.speech.words.foods_said import FoodWord
from kit.speech.words.sentence import Sentence, food_at
from kit.speech.words.tokens import Quantity

FAMILY = "share of the dish"
_RANKS = {"first": 1, "second": 2, "third": 3, "only": 0}
ALL = Quantity(1.0, 1.0, relation="all", is_fraction=True)
OVER_HALF = Quantity(0.5, 0.5, relation="over", is_fraction=True)
MOST = Quantity(0.5, 0.5, relation="most", is_fraction=True)


def read(sentence: Sentence, about: list[About], found: list[Share]) -> list[Claim]:
    """Return the shares of the dish that a sentence claims, and its main sources."""
    claims: list[Claim] = []
    for share in found:
        if share.of_day or share.by_nutrient is not None or not share.foods or share.place in sentence.used:
            continue
        token = sentence.tokens[share.place]
        if share.said.relation == "rest":
            continue  # what it is the rest of is told by the others
        for one in share.whole:
            places = sorted({share.place, one.place, *share.food_places})
            sentence.used.update(set(places) - share.of_amounts)
            apart = len(share.foods) > 1 and _each(sentence, max(places))
            for foods in [(food,) for food in share.foods] if apart else [share.foods]:
                claims.append(
                    DishShareClaim(
                        tuple(places),
                        About(FOOD, 1.0, foods),
                        negated(sentence, share.place) != _is_cleft(sentence, share),
                        one.nutrient,
                        share.said,
                        0,
                        -1 if apart or sentence.words & {"rather", "instead"} else token.start,
                        token.end,
                    )
                )
    of_rests = {one.place for share in found if share.said.relation == "rest" for one in share.whole}
    return claims + _ranks(sentence, about) + _plain_sources(sentence, about, of_rests)


def _each(sentence: Sentence, last: int) -> bool:
    """Return whether a share is of each of several foods: "the pears and the rice bring a third of the fiber each"."""
    return sentence.text_at(last + 1) in ("each", "apiece")


def _is_cleft(sentence: Sentence, share: Share) -> bool:
    """Return whether the food is denied of which the share is told: "it isn't the beef that brings most of"."""
    if len(share.food_places) != 1:
        return False
    at = share.food_places[0]
    before = before_determiners(sentence, at)
    is_not = sentence.text_at(before) == "not" and sentence.text_at(before - 1) in ("is", "are")
    cleft = is_not and sentence.text_at(at + 1) in ("that", "which")
    if cleft:
        sentence.used.add(before)
    return cleft


_TO_ITS_PLACE = frozenset("in a the close as at on coming".split())


def _ranks(sentence: Sentence, about: list[About]) -> list[Claim]:
    claims: list[Claim] = []
    last: list[Named] = []
    for at in sentence.places("rank"):
        if sentence.text_at(at - 1) in ("your", "my", "their"):
            continue  # "if milk is your main source of calcium": in what they eat, not in the dish
        named = nutrients_after(sentence, at + 1)
        if not named and last and sentence.tokens[at].parts["rank"] != "first":
            named = last
        if not named or at in sentence.used:
            continue
        last = named
        foods, places = _after_is(sentence, named[-1].place + 1) if named[-1].place > at else ([], [])
        if not foods and named[-1].place < at and (runner := _in_place(sentence, at)) is not None:
            foods, places = [food for food in [food_at(sentence, runner)] if food], [runner]
        if not foods and about[at].kind == FOOD:
            foods = list(about[at].foods)
        if not foods:
            continue
        for one in named:
            sentence.used.update({at, one.place, *places})
            token = sentence.tokens[at]
            only = token.parts["rank"] == "only"  # for which no share can stand: "is the only source of"
            claims.append(
                DishShareClaim(
                    tuple(sorted({at, one.place})),
                    About(FOOD, 1.0, tuple(foods)),
                    negated(sentence, at),
                    one.nutrient,
                    ALL if only else None,
                    _RANKS[sentence.tokens[at].parts["rank"]],
                    -1 if only else token.start,
                    token.end,
                )
            )
    return claims


def _in_place(sentence: Sentence, at: int) -> int | None:
    """Return where the food stands whose rank is told behind it: ", with the beef in second place"."""
    place = at - 1
    while sentence.text_at(place) in _TO_ITS_PLACE or is_verb(sentence, place):
        place -= 1
    return place if food_at(sentence, place) is not None and is_food(sentence, place) else None


def _after_is(sentence: Sentence, start: int) -> tuple[list, list[int]]:
    end = sentence.clause_of(start - 1)[-1] + 1
    for place in range(start, end):
        if sentence.text_at(place) in ("is", "are", "from", "comes", "being", "remains", ":") or is_verb(
            sentence, place
        ):
            over = place + 1
            while over < end and (
                sentence.text_at(over) in DETERMINERS
                or sentence.text_at(over) in ("from", "easily", "actually", "still")
            ):
                over += 1
            return foods_from(sentence, over, end)
    return [], []


_COMES = ("comes", "come", "here", "in", "it", "coming", "is", "are")


def _plain_sources(sentence: Sentence, about: list[About], of_rests: Set[int]) -> list[Claim]:
    """Return sources said without a share: "the fiber comes from the beans"."""
    claims: list[Claim] = []
    for at in sentence.places("nutrient"):
        token = sentence.tokens[at]
        named_food = token.food is not None and is_food(sentence, at)
        if at in sentence.used or at in of_rests or token.parts["nutrient"] == "water" or named_food:
            continue
        origin = _from_behind(sentence, at)
        foods, places = _foods_of_origin(sentence, about, at, origin) if origin is not None else ([], [])
        if origin is None or not foods:
            continue
        sentence.used.update({at, *places})
        more = "more" in sentence.texts[max(0, at - 4) : at]
        first = more and _than_any(sentence, places[-1] + 1 if places else at + 1)
        if more and not first and "than" in sentence.texts[at:]:
            claims.append(asked(sentence, (at, *places)))  # "more of the fiber comes from the beans than the kale"
            continue
        whole = ALL if sentence.text_at(at - 1) in ("only", "sole") else MOST
        claims.append(
            DishShareClaim(
                tuple(sorted({at, *places})),
                About(FOOD, 1.0, tuple(foods)),
                negated(sentence, origin),
                token.parts["nutrient"],
                None if first else whole,
                1 if first else 0,
                -1 if first else token.start,
                token.start,
            )
        )
    return claims


def _than_any(sentence: Sentence, at: int) -> bool:
    """Return whether a food is set above all others: "than from anything else"."""
    behind = " ".join(sentence.texts[at : at + 6])
    return _ANY_OTHER.match(behind) is not None


_ANY_OTHER = re.compile(r"than (?:it does )?(?:from )?any(?:thing|where)? (?:else|other)\b")


def _from_behind(sentence: Sentence, at: int) -> int | None:
    """Return the place of "from" where a nutrient is said to come from something."""
    follow = at + 1
    if sentence.text_at(follow) in ("mostly", "mainly", "largely"):
        follow += 1
    if (
        sentence.text_at(follow) not in ("comes", "come", "is", "coming", "here")
        and sentence.text_at(follow + 1) != "from"
    ):
        return None
    while sentence.text_at(follow) in _COMES:
        follow += 1
    return follow if sentence.text_at(follow) == "from" else None


def _foods_of_origin(sentence: Sentence, about: list[About], at: int, origin: int) -> tuple[list[FoodWord], list[int]]:
    """Return the foods behind "from" with their places; those the clause is about in "the beans are where ..."."""
    clause = sentence.clause_of(at)
    foods, places = foods_from(sentence, after_determiners(sentence, origin + 1), clause[-1] + 1)
    where = any(sentence.text_at(place) == "where" for place in clause if place < at)
    if not foods and where and about[at].kind == FOOD:
        return list(about[at].foods), []
    return list(foods), list(places)
