"""Another dish than this one, named by what it is made of: "chili sauce is", "hollandaise sauce is"."""

from kit.speech.about.parts import DETERMINERS, is_verb
from kit.speech.words.sentence import Sentence

_MADE_OF_MANY = frozenset(
    "sauce dressing soup stew salad curry dip spread filling topping broth cake pie pudding".split()
)


def other_dish(sentence: Sentence, at: int) -> str:
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
