"""What a spoken amount is of: the dish, a part of it, a food, or so much of a food."""

from kit.speech.basis import basis_near, handful, piece_of
from kit.speech.claim import FOOD, THE_DISH, About
from kit.speech.parts import food_part, is_dish, is_food
from kit.speech.sentence import Sentence
from kit.speech.slots import share_at

ENERGY_UNITS = ("kcal", "kJ")
AMOUNT_UNITS = (*ENERGY_UNITS, "g", "mg", "µg", "iu")


def about_of(sentence: Sentence, at: int, subject: About) -> About:
    """Return what an amount at a place is said of, where `subject` is what its statement is about."""
    near = basis_near(sentence, at, subject) or piece_of(sentence, at, subject)
    if near is not None:
        return near
    clause = sentence.clause_of(at)
    if subject.kind != FOOD and (unknown := handful(sentence, at)) is not None:
        return unknown
    if (
        at + 1 < len(sentence)
        and is_dish(sentence, at + 1)
        and sentence.tokens[at].text.split(" ")[-1] in ("calorie", "gram", "kcal", "kilojoule")
    ):
        return THE_DISH  # "a 430-calorie plate"
    for place in range(at + 1, clause[-1] + 1):
        if (
            sentence.tokens[place].quantity is not None
            and place > at + 1
            and sentence.tokens[place].amount.unit in AMOUNT_UNITS
        ) or (place > at + 1 and share_at(sentence, place) is not None):
            break
        counted = sentence.text_at(place - 1) == "is" and sentence.text_at(place - 2) == "what"
        if sentence.text_at(place) in ("from", "in") and subject.kind != FOOD and not counted:
            over = place + 1
            while over < len(sentence) and sentence.text_at(over) in (
                "the",
                "a",
                "an",
                "each",
                "every",
                "those",
                "that",
            ):
                over += 1
            if over < len(sentence) and is_food(sentence, over) and not is_dish(sentence, over):
                return food_part(sentence, over)
    for place in range(at + 1, min(at + 6, clause[-1] + 1)):
        if (
            sentence.text_at(place) in ("a", "per", "each", "every")
            and place + 1 < len(sentence)
            and is_dish(sentence, place + 1)
            and sentence.tokens[place + 1].parts["dish"] == "serving"
        ):
            return subject if subject.kind == FOOD else THE_DISH  # "the chicken brings 20 grams a plate"
    return subject
