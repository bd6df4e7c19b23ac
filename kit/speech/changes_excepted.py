"""Changes that are named to say what is so without them: "it is not vegan unless you leave out the feta"."""

import re

from kit.speech.changes_said import SaidChange
from kit.speech.sentence import Sentence

_BUT_FOR = ("unless", "until", "till", "except if", "except when", "but not if", "but not when", "not if", "not when")


def is_excepted(sentence: Sentence, change: SaidChange) -> bool:
    """Return whether something is said of the dish as it is, not with the change: "unless you leave out the feta"."""
    if not change.places:
        return False
    first = min(change.places)
    before = " ".join(sentence.texts[max(0, first - 6) : first])
    return re.search(rf"\b(?:{'|'.join(_BUT_FOR)})(?: \w+){{0,3}}$", before) is not None
