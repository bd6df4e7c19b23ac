"""Main sources told by comparing: "more of the protein than any other", "the most fiber of all", "nothing has more"."""

from kit.speech.about.parts import after_determiners, is_food, is_verb
from kit.speech.about.slots import foods_from, negated, nutrient_before, nutrients_after
from kit.speech.about.unread import asked
from kit.speech.claim import FOOD, About, Claim
from kit.speech.proportions.dish_shares import OVER_HALF
from kit.speech.proportions.dish_shares_judged import DishShareClaim
from kit.speech.proportions.dish_shares_next import second
from kit.speech.words.foods_said import FoodWord
from kit.speech.words.sentence import Sentence, food_at


def read(sentence: Sentence, about: list[About]) -> list[Claim]:
    """Return sources said to be first by comparing: "more of the protein than any other", "the most fiber of all"."""
    claims: list[Claim] = []
    for at, token in enumerate(sentence.tokens):
        most = token.text == "most" and sentence.text_at(at - 1) == "the"
        if at in sentence.used or not (most or token.text == "more") or sentence.is_a(at + 2, "share", "rest"):
            continue
        named = nutrients_after(sentence, at + 1, frozenset("of the".split()))
        behind = named[-1].place + 1 if named else at + 1
        if not named and sentence.text_at(at + 1) not in ("than", "of", "from"):
            continue  # "more crunch than any slaw"
        if not named and (before := nutrient_before(sentence, at, whole=True)):
            named = [before]  # "more than anything else" goes back to it
        behind += 2 * (sentence.text_at(behind) == "by" and sentence.text_at(behind + 1) == "far")
        words = [sentence.text_at(place) for place in range(behind, min(behind + 3, len(sentence)))]
        if most and named and words[:1] in (["per"], ["for"]):  # "the most calcium per ounce" is told on another basis
            sentence.used.update({at, *(one.place for one in named)})
            claims.append(asked(sentence, (at, named[-1].place, behind)))
            continue
        if most and named and words[:1] in (["after"], ["behind"]) and about[at].kind == FOOD:
            claims += second(sentence, at, behind, about[at], named)
            continue
        rivals = any(word in _RIVALS for word in " ".join(words).split())
        foods, comes_from = (
            foods_from(sentence, behind + 2, len(sentence)) if most and _comes(sentence, behind) else ([], [])
        )
        if not named or not (
            ("than" in words and (rivals or _nothing_more(sentence, behind)))
            or (most and (rivals or comes_from or not words or words[0] in _ENDS_MOST))
        ):
            continue
        if not most and (beaten := _nothing_more(sentence, behind)) is not None:
            foods = [beaten]
            sentence.used.add(0)  # what "nothing" denies is that another brings more
        foods = foods or _that_brings(sentence, at) or (list(about[at].foods) if about[at].kind == FOOD else [])
        if not foods:
            continue
        used = {at, *(one.place for one in named if one.place > at), *range(behind, min(behind + 3, len(sentence)))}
        used.update(comes_from)
        sentence.used.update(used)
        together = _together(sentence, behind)
        for one in named:
            claims.append(
                DishShareClaim(
                    tuple(sorted({at, one.place})),
                    About(FOOD, 1.0, tuple(foods)),
                    negated(sentence, at) and sentence.text_at(0) not in _NOTHING,
                    one.nutrient,
                    OVER_HALF if together else None,
                    0 if together else 1,
                    token.start,
                    token.end,
                )
            )
    return claims


def _nothing_more(sentence: Sentence, than: int) -> FoodWord | None:
    """Return the food that nothing is said to bring more than: "no ingredient brings more sugar than the apples"."""
    opens = sentence.text_at(0) in _NOTHING and any(
        is_verb(sentence, place) and (sentence.is_a(place, "verb_bring") or sentence.text_at(place) in ("has", "have"))
        for place in range(1, than)
    )
    place = after_determiners(sentence, than + 1)
    food = food_at(sentence, place) if opens and sentence.text_at(than) == "than" else None
    return food if food is not None and food.inside else None


_NOTHING = ("nothing", "no", "none", "nothing else")


def _that_brings(sentence: Sentence, at: int) -> list[FoodWord]:
    """Return the food of "it's the ricotta that brings the most calcium"."""
    place = at - 1
    while place > 0 and (sentence.text_at(place) in ("the", "us", "you") or is_verb(sentence, place)):
        place -= 1
    food = food_at(sentence, place - 1) if sentence.text_at(place) in ("that", "which") else None
    return [food] if food is not None and is_food(sentence, place - 1) else []


_ENDS_MOST = frozenset(". , ; ! here in with and by but on to of".split()) | {""}


def _together(sentence: Sentence, at: int) -> bool:
    """Return whether all others are taken together: "more fat than everything else put together"."""
    return any(sentence.text_at(place) in ("together", "combined") for place in range(at + 2, at + 6))


def _comes(sentence: Sentence, at: int) -> bool:
    """Return whether "comes from" stands at a place: "the most sodium comes from the salt"."""
    return sentence.text_at(at) in ("comes", "come", "is", "are") and sentence.is_a(at + 1, "verb_from")


_RIVALS = frozenset("any anything everything else other others all".split())
