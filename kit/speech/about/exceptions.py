"""What is set apart from a statement about everything: "nut-free except the almonds", "vegan apart from the honey"."""

from kit.speech.about.slots import foods_from
from kit.speech.words.foods_said import FoodWord
from kit.speech.words.sentence import Sentence

_EXCEPT = frozenset("except but besides bar excepting".split())
_OF_TWO_WORDS = {"apart": "from", "aside": "from", "other": "than"}
EVERYTHING = ("everything", "all", "everything here", "everything in it", "anything", "every ingredient")
_WHATS_IN = ("what", "whatever", "is", "in")  # "other than what's in the soy sauce"
_REACH = 6  # words behind the statement


def excepted(sentence: Sentence, at: int) -> tuple[list[FoodWord], list[int]]:
    """Return the foods that are set apart from what is said at a place, and where they stand."""
    for place in range(at + 1, min(len(sentence), at + _REACH)):
        if _excepts(sentence, place):
            return foods_from(sentence, _over(sentence, place), len(sentence))
    if _excepts(sentence, 0):  # "except for the turkey it is vegetarian"
        return foods_from(sentence, _over(sentence, 0), at)
    for place in range(sentence.clause_of(at)[0], at):  # "everything but the turkey is vegan"
        if _excepts(sentence, place) and sentence.text_at(place - 1) in EVERYTHING:
            return foods_from(sentence, _over(sentence, place), at)
    return [], []


_ONLY = frozenset(("only", "sole", "one", "single"))
_CAUSE = frozenset("reason reasons thing things part ingredient food".split())
_KEEPS_FROM = frozenset("keeps keep stops stop prevents prevent keeping stopping".split())


def only_reason(sentence: Sentence, at: int) -> tuple[list[FoodWord], list[int]]:
    """Return the foods that are the only reason why something is not so: "the honey is the only reason it isn't vegan".

    Parameters
    ----------
    sentence : Sentence
        The sentence.
    at : int
        Where that stands which the dish is not.
    """
    for place in range(at):
        words = sentence.text_at(place).split()
        said = words[:1] != [] and words[0] in _ONLY and sentence.text_at(place - 1) == "the"
        if not said or _CAUSE.isdisjoint((*words, sentence.text_at(place + 1))):
            continue
        between = sentence.texts[place + 1 : at]
        if "not" not in between and _KEEPS_FROM.isdisjoint(between):
            continue
        denials = [spot for spot in range(place, at) if sentence.text_at(spot) == "not"]
        verb = place - 2
        if sentence.text_at(verb) in ("is", "are"):
            foods, places = foods_from(sentence, sentence.clause_of(verb)[0], verb)
        elif sentence.text_at(at + 1) in ("is", "are"):
            foods, places = foods_from(sentence, at + 2, len(sentence))
        else:
            continue
        if foods:
            return foods, [*places, *denials]
    return [], []


def sets_apart(sentence: Sentence, at: int) -> bool:
    """Return whether a food behind a place is set apart from everything: "everything but the turkey"."""
    place = at if sentence.text_at(at) in _EXCEPT else at - 1
    return _excepts(sentence, place) and sentence.text_at(place - 1) in EVERYTHING


def _excepts(sentence: Sentence, place: int) -> bool:
    word, following = sentence.text_at(place), sentence.text_at(place + 1)
    return word in _EXCEPT or _OF_TWO_WORDS.get(word) == following


def _over(sentence: Sentence, place: int) -> int:
    over = place + 1
    while over < len(sentence) and sentence.text_at(over) in ("for", "from", "than", "the", "with", "of", *_WHATS_IN):
        over += 1
    return over


def set_against(sentence: Sentence, at: int) -> bool:
    """Return whether a food is only what another is told from: "the barley, not the walnuts", "unlike the rice"."""
    against = sentence.text_at(at) == "not" and sentence.text_at(at - 1) in (",", "and", "but")
    unlike = sentence.text_at(at) in ("unlike", "versus") or sentence.texts[max(0, at - 2) : at + 1] == _OPPOSED
    return against or unlike or sentence.text_at(at) in ("rather than", "instead of")


_OPPOSED = ("as", "opposed", "to")


def eaten_beside(sentence: Sentence, at: int, before: int) -> bool:
    """Return whether a food is had beside the dish: "with a glass of milk it's 240 calories"."""
    led = sentence.text_at(before) == "of" and sentence.text_at(before - 2) == "a"
    return led and sentence.text_at(before - 3) == "with" and sentence.text_at(at + 1) in ("it", "you")


def is_every_thing(sentence: Sentence, at: int) -> bool:
    """Return whether all that is in the dish is named: "every last thing in the pot", "each ingredient"."""
    over = at - 1
    while sentence.text_at(over) in ("last", "single", "other"):
        over -= 1
    return sentence.text_at(at) in ("thing", "ingredient") and sentence.text_at(over) in ("every", "each")
