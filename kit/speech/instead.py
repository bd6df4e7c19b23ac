"""What may be said instead: her own words with other numbers, else other sentences; only what reads back as true."""

import re
from collections.abc import Callable, Sequence

from kit.errors import KitError
from kit.rules.verdicts import HOLDS, OFF
from kit.speech.claim import Edit, Finding
from kit.speech.smooth import as_she_writes, capital, is_sayable, put_right, together, untold
from kit.talk.dish import Dish
from kit.talk.placeholders import fill
from kit.texts import number

_COUNTED = re.compile(r"\babout (\d+(?:\.\d+)?) (calories|milligrams|micrograms|grams)\b")
_FIVES = (20, 150)  # calories and milligrams between these are said in fives: common practice
_TURNED = 0.095  # of a number: more than that is not rounded away


def instead_of(text: str, pairs: Sequence[tuple[int, Finding]], dish: Dish, reads_back: Callable[[str], bool]) -> str:
    """Return words that hold when they are read back; empty when there are none.

    Parameters
    ----------
    text : str
        What was said.
    pairs : sequence of (int, Finding)
        The finding on each claim, and where the sentence of it begins in the text.
    dish : Dish
        The dish as it is now.
    reads_back : callable
        Whether some words hold.
    """
    off = [(start, finding) for start, finding in pairs if finding.verdict == OFF]
    others_hold = all(finding.verdict in (HOLDS, OFF) for _, finding in pairs)
    if others_hold and all(finding.edit is not None for _, finding in off):
        edits = {
            Edit(start + finding.edit.start, start + finding.edit.end, finding.edit.words)
            for start, finding in off
            if finding.edit is not None
        }
        new = put_right(text, edits)
        good = _good((_rounded(new, text), new), reads_back)
        if good:
            return good
    wrong: list[str] = []
    found: list[str] = []
    for _, finding in pairs:
        if finding.verdict not in (OFF, HOLDS):
            continue
        told = (as_she_writes(sentence, text) for one in finding.sentences if (sentence := _filled(one, dish)))
        good = next((good for one in told if (good := _good((_rounded(one, text), one), reads_back))), "")
        for told_so_far in (found, wrong)[: 1 + (finding.verdict == OFF)]:
            if good and not any(one.startswith(good.rstrip(".")) for one in told_so_far):
                told_so_far.append(good)
    options = (" ".join(together(untold(found))), " ".join(together(wrong)), " ".join(wrong))
    return _good(options, reads_back) if wrong else ""


def _good(options: Sequence[str], reads_back: Callable[[str], bool]) -> str:
    """Return the first sentence that can be said and holds; empty when there is none."""
    return next((one for one in dict.fromkeys(options) if one and is_sayable(one) and reads_back(one)), "")


def _rounded(new: str, hers: str) -> str:
    """Return a sentence with the numbers that are not hers as people say them: "about 90 calories" for 91."""

    def rounded(found: re.Match[str]) -> str:
        value, unit = float(found[1]), found[2]
        step = 0.5 if "." in found[1] else 5 if unit != "grams" and _FIVES[0] < value < _FIVES[1] else 0
        said = round(value / step + 1e-9) * step if step else value
        if found[0] in hers or not said or abs(said - value) > _TURNED * value:
            return found[0]
        if said == 1:
            return f"about 1 {unit.removesuffix('s')}"
        return f"about {number(said, 1)} {unit}"

    return _COUNTED.sub(rounded, new)


def _filled(sentence: str, dish: Dish) -> str:
    try:
        return capital(fill(sentence, dish))
    except KitError:
        return ""
