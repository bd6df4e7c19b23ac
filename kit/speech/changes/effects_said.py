"""What is said beside the effect of a change: what is left then, what is gone, and what it passes."""

import re
from itertools import pairwise

from kit.speech.about.slots import SHARES
from kit.speech.words.sentence import Sentence
from kit.speech.words.tokens import Quantity

_TO = ("to", "down to", "up to")
_VANISHES = ("disappears", "disappear", "vanishes", "vanish")
_GONE = re.compile(
    r"(?:is |are |will be |would be )?(?:all |completely |entirely |totally |pretty much )?"
    r"(?:gone|history|no more|nil|zero|vanishe[sd]|disappear)\b"
)
_NOTHING_LEFT = re.compile(
    r"(?:down )?to (almost |practically |next to |virtually |nearly |close to |hardly )?"
    r"(?:nothing|zero|none|anything)\b"
)
_PASSES = frozenset(
    "drop drops fall falls go goes sink sinks dip dips come comes get gets stay stays rise rises".split()
)
_REMAINS = ("left", "there", "kept")


def passes(sentence: Sentence, at: int) -> bool:
    """Return whether a number is a limit that something goes below or above: "the sodium drops below 100"."""
    limit = sentence.text_at(at).startswith(("below ", "under ", "above ", "over "))
    return limit and sentence.text_at(at - 1) in _PASSES


def remains(sentence: Sentence, at: int) -> bool:
    """Return whether a share is of what is left, and not what the change does: "60 percent of the calcium is left"."""
    behind = sentence.texts[at + 1 : sentence.clause_of(at)[-1] + 1]
    if behind[:2] == ("of", "what"):
        return False  # "three fifths of what's there"
    return any(word in _REMAINS and other in ("is", "are", "stays") for other, word in pairwise(behind)) or (
        not {"remains", "remain"}.isdisjoint(behind)
    )


def ends_at(sentence: Sentence, at: int) -> bool:
    """Return whether how much there is then follows: "takes the fat down to six grams", "the fat drops to six"."""
    over = at + 1 + (sentence.text_at(at + 1) in ("down", "up"))
    number = over + 1
    return sentence.text_at(over) in _TO and number < len(sentence) and sentence.tokens[number].quantity is not None


def to_nothing(sentence: Sentence, at: int) -> Quantity | None:
    """Return the share that is gone where nothing is said to be left: "brings the sodium down to almost nothing"."""
    match = _NOTHING_LEFT.match(" ".join(sentence.texts[at : at + 5]))
    return SHARES["nearly all" if match[1] else "all"] if match else None


def is_gone(sentence: Sentence, verb: int, at: int) -> bool:
    """Return whether a nutrient at a place is said to be gone: "the sodium's gone", "the sodium disappears"."""
    return sentence.text_at(verb) in _VANISHES or _GONE.match(" ".join(sentence.texts[at + 1 : at + 6])) is not None
