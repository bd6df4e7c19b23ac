"""Where "light" and "lean" are said of no dish and no food: "a light hand with the oil", "lean in"."""

from kit.speech.about.parts import TOOLS, is_dish
from kit.speech.about.slots import another_statement
from kit.speech.words.clauses import is_stop
from kit.speech.words.sentence import Sentence, food_at

_BE = frozenset(
    "is are was be being not it they so as very really truly quite a an and , also both fairly pretty naturally".split()
)
_TEXTURE = frozenset(
    "fluffy airy pale creamy foamy batter fold whisk whip crumb hands rise knead beat dough lightly".split()
)
_LIGHT_OTHERWISE = frozenset(
    "hand touch color colour heat flame simmer boil brown oil coat coating dusting sprinkle blush golden as up the "
    "on oven "
    "and in enough to crust crumb dressing sprinkling drizzle spray toast pan glaze".split()
)
_BEFORE_NOUN = frozenset(", little weeknight summer quick easy fresh simple enough cut cuts choice option".split())
_BEHIND_PREDICATE = frozenset(
    ", and but too even enough dish in on because since thanks though by for under according".split()
)


def noun_behind(sentence: Sentence, at: int) -> int:
    """Return the place behind the words between a wording and its noun: "a light, quick summer salad"."""
    noun = at + 1
    while sentence.is_a(noun, "wording") or sentence.is_a(noun, "nutrient") or sentence.text_at(noun) in _BEFORE_NOUN:
        noun += 1
    return noun


def is_meant_otherwise(sentence: Sentence, at: int, wording: str, noun: int | None) -> bool:
    """Return whether "light" or "lean" is said of no dish and no food: "a light hand", "lean in"."""
    following, before = sentence.text_at(at + 1), sentence.text_at(at - 1)
    ends_here = at + 1 >= len(sentence) or is_stop(sentence.tokens[at + 1])
    leads_on = following in _BEHIND_PREDICATE or sentence.is_a(at + 1, "verb_from")  # "light thanks to the yogurt"
    predicate = before in _BE and before != "," and (ends_here or leads_on)
    if {one.text for one in sentence.tokens} & (_TEXTURE | TOOLS):
        return True
    ends = predicate and another_statement(sentence, at + 1)
    if following in _LIGHT_OTHERWISE and not (following == "and" and predicate and (ends or wording == "lean")):
        return True
    if noun is None and not ends and not (predicate and following not in ("and", "on", "in")):
        return True
    if wording == "lean":
        return before in ("i", "we", "you", "to", "they", "can", "just")
    return noun is not None and food_at(sentence, noun) is not None and not is_dish(sentence, noun)
