"""What a content wording names beside it: the food that follows, what the dish is called, a denial of any."""

import re

from kit.speech.about.parts import is_food
from kit.speech.words.sentence import Sentence

_PRAISES = frozenset("nice lovely good great simple quick easy real true proper tasty delicious filling hearty".split())


def named_behind(sentence: Sentence, last: int) -> int:
    """Return the place of the food of "an excellent source of vitamin D is trout", "rich in iron, that's spinach"."""
    led = " ".join(sentence.texts[last + 1 : last + 4])
    match = re.match(r"(?:is|are|:|, that is|, those are|: that is)(?: the| our)?(?= |$)", led)
    place = last + 1 + len(match[0].split(" ")) if match else -1
    if not match or not is_food(sentence, place) or sentence.is_a(place, "nutrient"):
        return -1
    return place if sentence.text_at(place + 1) in ("", ".", "!", ",") else -1


def is_called(sentence: Sentence, at: int) -> bool:
    """Return whether the dish is called something here: "it's a low-fat bread", "call this a low-fat pasta"."""
    while sentence.text_at(at) in _PRAISES:
        at -= 1
    this = at - 2 if sentence.text_at(at - 1) == "is" else at - 1
    called = this == at - 2 or sentence.text_at(this - 1) in ("call", "calls", "calling", "called")
    led = sentence.text_at(at) in ("a", "an") and called
    return led and sentence.text_at(this) in ("it", "this", "that", "have", "get", "made", "here")


def not_any(sentence: Sentence, at: int) -> tuple[int, ...]:
    """Return the denial of "it doesn't have any fat", "you won't get any sugar"; none where something is put in."""
    verb = sentence.text_at(at - 1)
    denied = sentence.text_at(at - 2) in ("not", "never") and verb in ("have", "has", "contain", "get", "find", "hold")
    ours = sentence.text_at(at - 4) in ("i", "we") or (
        sentence.text_at(at - 4) == "you" and verb not in ("get", "find")
    )
    return (at - 2,) if denied and not ours else ()
