"""Parts and counts of what is not named again: "half of it has", "a dozen comes to", "have two and you're at"."""

import re
from collections.abc import Container

from kit.speech.about.parts import back, is_serving, is_verb
from kit.speech.words.quantities_said import WEIGHTS
from kit.speech.words.sentence import Sentence

HAVE_IT = ("make", "have", "eat", "take", "finish", "serve", "share", "add", "total", "count")


def eaten(sentence: Sentence, at: int) -> bool:
    """Return whether so many, of what is not said, are eaten: "have half and you're at", "eat two of them and"."""
    said, first = sentence.tokens[at].amount, sentence.clause_of(at)[0]
    led = sentence.text_at(at - 1) in HAVE_IT and at - 1 - first <= 2  # "if you have"
    over = (
        at + 1 + 2 * (sentence.text_at(at + 1) == "of" and sentence.text_at(at + 2) in ("it", "this", "them", "these"))
    )
    weighed = said.unit in WEIGHTS and over > at + 1  # "take a hundred grams of it and you have"
    return led and said.value > 0 and (weighed or not said.unit) and sentence.text_at(over) in ("and", ",")


def bare_part(sentence: Sentence, at: int) -> bool:
    """Return whether a part of the serving begins a statement of what it holds: "half of it has", "a third is"."""
    said = sentence.tokens[at].amount
    over = at + 1
    if sentence.text_at(over) == "of" and sentence.text_at(over + 1) in ("it", "this", "that", "one"):
        over += 2
    opens = back(sentence, at) < sentence.clause_of(at)[0] or sentence.text_at(at - 1) == "any"
    if not (said.is_fraction and said.unit == "" and opens and over < len(sentence) and is_verb(sentence, over)):
        return False
    behind = over + (2 if sentence.text_at(over + 1) in ("not", "only", "just") else 1)
    following = sentence.tokens[behind].amount if behind < len(sentence) else said
    return sentence.text_at(over) not in ("is", "are", "comes", "come") or following.unit not in ("", "%")


def bare_count(sentence: Sentence, at: int) -> bool:
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


def bare_measure(sentence: Sentence, at: int) -> bool:
    """Return whether so much, of what is not said, begins a statement: "two tablespoons have", "an ounce of it has"."""
    quantity = sentence.tokens[at].quantity
    over = at + 1
    if sentence.text_at(over) == "of" and sentence.text_at(over + 1) in ("it", "this", "that", "them", "these"):
        over += 2
    return (
        quantity is not None
        and quantity.unit in ("cup", "tbsp", "tsp", "mL", "L", *WEIGHTS)
        and at == sentence.clause_of(at)[0]
        and over < len(sentence)
        and is_verb(sentence, over)
    )


_IN_ALL = re.compile(
    r"\b(?:in total|in all|all told|altogether|all together|everything together|the total|the sum|all in"
    r"|the (?:whole )?lot|for (?:all of (?:it|this)|everything))\b"
)
_HALVED = re.compile(
    r"\b(?:halve|halving|halves|share|sharing|split|splitting) (?:it|this|(?:your|the|a|this|that|one) \w+)\b"
    r"(?! (?:\w+ )?(?:ways|way|between|among|into|in|over|across)\b)"
    r"|\b(?:cut|cutting|divide) (?:it|this|(?:your|the|a|this|that|one) \w+) in (?:half|two)\b"
    r"|\b(?:manage|eat|have|finish|leave|want|get through"
    r"|taken|had|eaten|ate|finished|managed) (?:only |just )?half\b(?! (?:a|an|of|the|your|as)\b)"
)


def told_in_all(sentence: Sentence, at: int) -> bool:
    """Return whether a number is told of a sum, and no serving is named: "in total it's 370 calories", "... all in"."""
    clause = sentence.clause_of(at)
    if any(is_serving(sentence, place) for place in clause):
        return False
    return _IN_ALL.search(" ".join(sentence.texts[clause[0] : clause[-1] + 1])) is not None


# "Six people can share this" halves nothing.
_SHARED = re.compile(r"\b(?:people|guests|friends) (?:can|could|will|would|may) (?:all )?$")


def is_halved(sentence: Sentence, at: int) -> bool:
    """Return whether what is eaten was said to be halved: "cut your portion in half and it's 180 calories"."""
    match = _HALVED.search(" ".join(sentence.texts[:at]))
    if match is None or _SHARED.search(match.string[: match.start()]):
        return False
    last = match[0].removesuffix(" in half").removesuffix(" in two").split(" ")[-1]
    named = [place for place in range(at) if sentence.text_at(place) == last]
    return last in ("it", "this", "half") or any(is_serving(sentence, place) for place in named)


DONE = frozenset("eat ate have had finish finished make made take took polish polished".split())
TAKES = frozenset("weigh measure take pour scoop have eat drink count".split())


def if_done(sentence: Sentence, at: int, orders: Container[str] = HAVE_IT) -> bool:
    """Return whether an order leads to what it brings: "make the whole batch and you have forty grams"."""
    clause = sentence.clause_of(at)
    following = clause[-1] + 1
    supposed = sentence.text_at(clause[0]) == "if" and sentence.text_at(clause[0] + 2) in DONE
    if supposed:  # "if you ate the whole pot, you'd be at 1,400 calories"
        return not any(sentence.tokens[place].amount.unit for place in clause)
    led = sentence.text_at(clause[0]) in orders
    return led and sentence.text_at(following) in ("and", "you") and sentence.text_at(following + 1) in ("you", "have")


_PARTS = ("cut", "halve", "split", "break", "tear")


def each_half(sentence: Sentence, at: int) -> bool:
    """Return whether a part of one serving is counted, which was cut: "cut one in two and each half is"."""
    said = sentence.tokens[at].amount
    cut = [place for place in range(at) if sentence.text_at(place) in _PARTS]
    one = cut and (sentence.text_at(cut[0] + 1).startswith("one") or is_serving(sentence, cut[0] + 2))
    each = sentence.text_at(at - 1) in ("each", "either", "every")
    return bool(one) and each and said.is_fraction and not said.unit and is_verb(sentence, at + 1)


def eats_all(sentence: Sentence) -> bool:
    """Return whether all of it is said to be eaten: "eat the whole pot and you", "if you ate the whole pot, you"."""
    return sentence.text_at(0) in HAVE_IT or sentence.text_at(2) in DONE
