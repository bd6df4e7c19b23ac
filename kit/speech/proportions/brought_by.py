"""Who brings a share: the foods behind it, before it, or those that are spoken of."""

from collections.abc import Sequence

from kit.speech.about.exceptions import set_against
from kit.speech.about.parts import DETERMINERS, back, is_dish, is_food, is_verb
from kit.speech.about.slots import foods_from
from kit.speech.claim import FOOD, About
from kit.speech.proportions.share_claim import Share
from kit.speech.words.foods_said import FoodWord
from kit.speech.words.sentence import Sentence, food_at

_LEADS = {
    **{"out": "of", "thanks": "to", "courtesy": "of", "down": "to", "due": "to", "because": "of"},
    **{"comes": "off", "come": "off"},
}
_LINKS = frozenset("from is are being as with in by come comes coming through via".split())


def out_of(sentence: Sentence, at: int) -> bool:
    """Return whether two words that say where something comes from begin at a place: "out of", "thanks to"."""
    return _LEADS.get(sentence.text_at(at)) == sentence.text_at(at + 1) != ""


_BEHIND_LINK = (
    _LINKS | DETERMINERS | {"just", "only", "mainly", "mostly", "here", "actually", "simply", "really", "plain"}
)
_BEFORE_SHARE = frozenset(
    "that which about you i we us where for up in it together between them alone already not also the only just"
    " easily".split()
)
_JOINTS = ("and", "plus", ",")


def foods_of(
    sentence: Sentence, at: int, start: int, end: int, about: About, earlier: list[Share]
) -> tuple[list[FoodWord], list[int]]:
    """Return the foods that a share comes from, and their places: behind it, before it, or what is spoken of."""
    behind = foods_behind(sentence, start, end)
    if behind[0]:
        return behind
    before = foods_before(sentence, at, earlier)
    if before[0]:
        return (list(about.foods), before[1]) if about.kind == FOOD and len(about.foods) > len(before[0]) else before
    of_food = about.kind == FOOD and not about.measure and sentence.text_at(at - 1) != "with"
    return (list(about.foods), []) if of_food else ([], [])  # ", with a bit of protein" may be of the dish


def foods_behind(sentence: Sentence, start: int, end: int) -> tuple[list[FoodWord], list[int]]:
    """Return those of "most of it comes from the beans and the feta"."""
    for place in range(start, end):
        gone = out_of(sentence, place)
        if sentence.text_at(place) in _LINKS or sentence.is_a(place, "verb_from") or gone:
            over = place + 1 + gone
            while over < end and (sentence.text_at(over) in _BEHIND_LINK or sentence.is_a(over, "verb_from")):
                over += 1
            foods, places = foods_from(sentence, over, end)
            if foods:
                return foods, places
    return [], []


def foods_before(sentence: Sentence, at: int, earlier: Sequence[Share] = ()) -> tuple[list[FoodWord], list[int]]:
    """Return those of "the carrots bring most of the fiber", "the beans and the feta together bring half of it".

    Those that an earlier share comes from are no more: "half is from the beans, and the feta brings a third".
    """
    taken = {place for share in earlier for place in share.food_places if place > share.place}
    place = at - 1
    while place >= 0 and (
        is_verb(sentence, place) or sentence.text_at(place) in _BEFORE_SHARE or sentence.text_at(place).endswith("ly")
    ):
        place -= 1
    against = back(sentence, place)
    if food_at(sentence, place) is not None and set_against(sentence, against):  # "the beans, not the pork, bring"
        place = against - 1 - (sentence.text_at(against - 1) == ",")
    food = food_at(sentence, place)
    if food is None or not _is_source(sentence, place):
        return [], []
    foods, places = [food], [place]
    for over in range(place - 1, -1, -1):
        word, behind = sentence.text_at(over), sentence.text_at(over + 1)
        if word in DETERMINERS or word in _JOINTS:
            continue
        other = food_at(sentence, over)
        if other is None or over in sentence.used or over in taken or not _is_source(sentence, over):
            break
        if set_against(sentence, back(sentence, over)):
            break
        joined = any(sentence.text_at(spot) in _JOINTS for spot in range(over + 1, place))
        if not joined or (behind in DETERMINERS and behind != "and"):
            break
        foods.insert(0, other)
        places.insert(0, over)
    return foods, places


def _is_source(sentence: Sentence, at: int) -> bool:
    """Return whether a food stands as a thing, not as the dish nor as a nutrient: "the salt", not "low in salt"."""
    salt = sentence.is_a(at, "nutrient", "salt") and sentence.text_at(at - 1) == "the" and "sodium" in sentence.words
    return not is_dish(sentence, at) and (not sentence.is_a(at, "nutrient") or is_food(sentence, at) or salt)
