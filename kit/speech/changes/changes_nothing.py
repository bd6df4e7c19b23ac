"""A change that is said to change nothing, or to do away with a nutrient, in words that no effect is read from."""

import re

from kit.speech.about.unread import asked
from kit.speech.claim import Claim
from kit.speech.words.sentence import Sentence

_NOTHING = re.compile(
    r"\bnothing (?:else |much |really |at all )?(?:changes|moves|happens|is lost|gets lost|will change|would change)\b"
    r"|\bmakes? (?:no|zero|little) (?:\w+ )?difference\b|\b(?:is|stays|comes out) (?:all |exactly )?the same\b"
    r"|\bchanges nothing\b|\bno (?:\w+ )?change\b|\b(?:will|would|do|does) not change (?:a thing|anything|much)\b"
    r"|\b(?:will|would) (?:not|never) (?:notice|miss|matter)\b|\bnone the (?:wiser|worse)\b|\bstays? (?:put|where)\b"
)
_COOKED = re.compile(
    r"\b(?:tast\w*|flavou?r\w*|textur\w*|looks?|smell\w*|colou?r\w*|crunch\w*|cook\w*|time|method|recipe|bake\w*)\b"
)
_GONE = frozenset("gone history vanishes vanish disappears disappear toast nil zero out goodbye".split())
_IS = ("is", "are", "was", "s", "all", "has")
_IN_THE_POT = ("water", "salt", "sugars")


def read(sentence: Sentence, claims: list[Claim]) -> list[Claim]:
    """Return what a change is said to leave as it was, or to do away with, as one claim that is asked about.

    Parameters
    ----------
    sentence : Sentence
        The sentence.
    claims : sequence of Claim
        What every family has read in it.
    """
    changes = sorted({*sentence.places("verb_leave_out"), *sentence.places("verb_swap"), *sentence.where(("whether",))})
    if not changes:
        return []
    foods = sentence.places("food")
    if not foods or max(foods) < min(changes):
        return []
    if any(max(claim.places) >= min(changes) for claim in claims):
        return []  # what follows from it is read
    text = sentence.plain
    if _NOTHING.search(text) and not _COOKED.search(text):
        return [asked(sentence, (changes[0], foods[0]), range(len(sentence)))]
    gone = [at for at in sentence.places("nutrient") if _is_gone(sentence, at)]
    return [asked(sentence, (changes[0], *gone), (*gone, gone[-1] + 1))] if gone else []


def _is_gone(sentence: Sentence, at: int) -> bool:
    over = at + 1
    while sentence.text_at(over) in _IS:
        over += 1
    named = sentence.tokens[at].parts["nutrient"]
    said = over > at + 1 or sentence.tokens[at].possessive or sentence.text_at(over).endswith("s")  # "vanishes"
    return sentence.text_at(over) in _GONE and said and named not in _IN_THE_POT
