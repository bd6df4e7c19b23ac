"""What each clause is about: the dish, a part of it, a food in it, or a food by itself."""

from dataclasses import replace

from kit.rules.naming import is_plural
from kit.speech.claim import FOOD, SERVING, THE_DISH, UNKNOWN, About
from kit.speech.parts import (
    _GLASSES,
    DETERMINERS,
    MEASURES,
    PLAIN,
    PREPOSITIONS,
    back,
    dish_part,
    food_part,
    is_dish,
    is_food,
    is_verb,
)
from kit.speech.sentence import Sentence


def subjects(sentence: Sentence) -> list[About]:
    """Return what the sentence is about at each of its tokens."""
    found: list[About] = []
    current, seen_verb, clause, since = THE_DISH, False, -1, -1
    for at, token in enumerate(sentence.tokens):
        if sentence.clauses[at] != clause:
            clause, seen_verb = sentence.clauses[at], False
        if _bare_count(sentence, at) and not seen_verb and since != clause:
            current, since = About(SERVING, sentence.tokens[at].amount.value), clause
        elif _bare_measure(sentence, at) and not seen_verb and since != clause:
            current, since = About(UNKNOWN, words=token.text), clause
        before = back(sentence, at)
        led = sentence.text_at(before) in PREPOSITIONS
        measured = led and sentence.text_at(before) == "of" and before > 0 and _is_part(sentence, before - 1)
        if is_dish(sentence, at):
            part = dish_part(sentence, at)
            since = clause
            if (
                (
                    not led
                    or measured
                    or (sentence.text_at(before) in ("for", "in", "on") and before == sentence.clause_of(at)[0])
                )
                and (not seen_verb or _if_done(sentence, at))
                and not _compound(sentence, at)
            ):
                other = _other_dish(sentence, at)
                current = About(UNKNOWN, words=other) if other else part
        elif is_food(sentence, at):
            changed = (
                before >= 0
                and (sentence.is_a(before, "verb_leave_out") or sentence.is_a(before, "verb_swap"))
                and sentence.text_at(before) not in ("hold", "holds")
            )
            none = sentence.text_at(before) in ("no", "zero", "without")  # "no butter went into these"
            if (not led or measured) and not changed and not none and (not seen_verb or _verb_follows(sentence, at)):
                about = food_part(sentence, at)
                joined = (
                    sentence.text_at(before) in ("and", "plus", ",")
                    and current.kind == FOOD
                    and not seen_verb
                    and since == clause
                )
                current = About(FOOD, 1.0, (*current.foods, *about.foods)) if joined and not about.measure else about
                since = clause
        elif token.text in ("it", "they", "this") and not led and _behind_swap(sentence, at):
            current = THE_DISH  # "with maple syrup instead of honey it is vegan"
        elif (
            token.text in ("there", "everything here", "everything", "everything in it")
            and not seen_verb
            and current.kind == FOOD
        ):
            current = THE_DISH
        elif (
            (token.text in ("you", "we", "i") and not seen_verb and since != clause and current.kind == FOOD)
            or (
                token.text in ("there", "it", "you")
                and not seen_verb
                and since != clause
                and (
                    current.words == PLAIN
                    or (token.text in ("there", "it") and current.kind != FOOD and current != THE_DISH)
                )
            )
            or (
                token.is_a("nutrient")
                and not led
                and not seen_verb
                and since != clause
                and current.kind == FOOD
                and not current.measure
                and sentence.text_at(at - 1) in ("and", ",", "but", "the", "its")
            )
            or (
                token.text == "they"
                and not seen_verb
                and since != clause
                and current.kind == FOOD
                and any(is_dish(sentence, spot) and sentence.text_at(spot).endswith("s") for spot in range(at))
            )
        ):
            current = replace(current, or_dish=True)
        elif (
            (token.is_a("verb_swap") or token.is_a("verb_leave_out"))
            and not seen_verb
            and token.text not in ("without", "holds", "hold")
            and since != clause
            and token.text.endswith(("ing", "out", "p", "ace"))
        ):
            current = THE_DISH
        elif (
            token.text in ("this", "that", "these", "those")
            and not led
            and not seen_verb
            and _stands_alone(sentence, at)
        ):
            current = THE_DISH if current.kind == FOOD else current
        elif token.text == "it" and not led and not seen_verb and current.kind == FOOD and since != clause:
            plural = any(is_plural(word.text) for word in current.foods) or len(current.foods) > 1
            current = THE_DISH if plural else replace(current, or_dish=True)
        if token.text in ("make", "makes") and current.kind == FOOD and _it(sentence, at + 1):
            current = THE_DISH  # "the oats make it", "the rice makes this"
        if is_verb(sentence, at) and not sentence.tokens[at].is_a("dish"):
            seen_verb = True
        found.append(current)
    return found


def _it(sentence: Sentence, at: int) -> bool:
    return sentence.text_at(at) in ("it", "them", "this", "these", "that") or (
        sentence.text_at(at) in ("the", "your", "our") and at + 1 < len(sentence) and is_dish(sentence, at + 1)
    )


def _behind_swap(sentence: Sentence, at: int) -> bool:
    """Return whether a change stands before a place in its clause: "with this instead of that"."""
    first = sentence.clause_of(at)[0]
    swapped = ("instead of", "in place of", "rather than")
    return any(sentence.text_at(place) in swapped for place in range(first, at))


def _bare_count(sentence: Sentence, at: int) -> bool:
    """Return whether so many, of what is not said, begin a statement: "a dozen comes to", "two of them have"."""
    quantity = sentence.tokens[at].quantity
    over = at + 1
    if sentence.text_at(over) == "of" and sentence.text_at(over + 1) in ("them", "these", "those"):
        over += 2
    return (
        quantity is not None
        and quantity.unit == ""
        and not quantity.is_fraction
        and quantity.low == quantity.high
        and at == sentence.clause_of(at)[0]
        and over < len(sentence)
        and is_verb(sentence, over)
    )


def _bare_measure(sentence: Sentence, at: int) -> bool:
    """Return whether so many cups or spoons, of what is not said, begin a statement: "two tablespoons have"."""
    quantity = sentence.tokens[at].quantity
    return (
        quantity is not None
        and quantity.unit in ("cup", "tbsp", "tsp", "mL", "L")
        and at == sentence.clause_of(at)[0]
        and at + 1 < len(sentence)
        and is_verb(sentence, at + 1)
    )


def _stands_alone(sentence: Sentence, at: int) -> bool:
    return at + 1 < len(sentence) and (is_verb(sentence, at + 1) or sentence.text_at(at + 1) in ("one", "is", "are"))


def _other_dish(sentence: Sentence, at: int) -> str:
    """Return what is named where that is another dish: "chili sauce is", "hollandaise sauce is"; empty for this one."""
    first = sentence.clause_of(at)[0]
    plain = sentence.tokens[at].parts["dish"] == "dish" and at + 1 < len(sentence) and is_verb(sentence, at + 1)
    if not plain or not 1 <= at - first <= 2 or sentence.text_at(at) not in _MADE_OF_MANY:
        return ""
    before = [sentence.tokens[place] for place in range(first, at)]
    if any(token.text in (*DETERMINERS, "and", "but", "so") or token.possessive or token.quantity for token in before):
        return ""
    if any(token.parts and set(token.parts) - {"food", "dish", "group", "allergen"} for token in before):
        return ""
    return sentence.said(range(first, at + 1))


_MADE_OF_MANY = frozenset(
    "sauce dressing soup stew salad curry dip spread filling topping broth cake pie pudding".split()
)


def _if_done(sentence: Sentence, at: int) -> bool:
    """Return whether an order leads to what it brings: "make the whole batch and you have forty grams"."""
    clause = sentence.clause_of(at)
    following = clause[-1] + 1
    led = sentence.text_at(clause[0]) in ("make", "have", "eat", "take", "finish", "serve", "share")
    return led and sentence.text_at(following) in ("and", "you") and sentence.text_at(following + 1) in ("you", "have")


def _compound(sentence: Sentence, at: int) -> bool:
    """Return whether a word of the dish only says which other thing is meant ("the bowl lids")."""
    return at + 1 < len(sentence) and sentence.text_at(at + 1) in ("lid", "lids", "handle", "rim", "shelf")


def _is_part(sentence: Sentence, at: int) -> bool:
    quantity = sentence.tokens[at].quantity
    return (quantity is not None and (quantity.unit in MEASURES or quantity.is_fraction)) or sentence.text_at(
        at
    ) in _GLASSES


def _verb_follows(sentence: Sentence, at: int) -> bool:
    following = at + 1
    if sentence.text_at(following) == "in":  # "the eggs in it are"
        following += 2 if sentence.text_at(following + 1) not in DETERMINERS else 3
    return following < len(sentence) and is_verb(sentence, following)
