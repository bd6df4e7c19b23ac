"""Numbers the way they are said: in digits, in words, as fractions; "thirty-four", "two and a half", "nine tenths"."""

import re
from collections.abc import Sequence
from dataclasses import dataclass

from kit.food.measures import FRACTION_GLYPHS

_ONES = (
    "zero one two three four five six seven eight nine ten eleven twelve thirteen fourteen fifteen sixteen seventeen"
)
_UNITS = {word: value for value, word in enumerate([*_ONES.split(), "eighteen", "nineteen"])} | {"nought": 0}
_TENS = dict(zip("twenty thirty forty fifty sixty seventy eighty ninety".split(), range(20, 100, 10), strict=True))
_SCALES = {"hundred": 100, "thousand": 1000}
_PARTS = {"half": 2, "third": 3, "quarter": 4, "fourth": 4, "fifth": 5, "sixth": 6, "seventh": 7, "eighth": 8}
_PARTS |= {"ninth": 9, "tenth": 10, "twelfth": 12, "fifteenth": 15, "twentieth": 20}
_FOLDS = {"twofold": 2.0, "threefold": 3.0, "fourfold": 4.0, "fivefold": 5.0, "tenfold": 10.0}
MULTIPLES = {"twice": 2.0, "double": 2.0, "triple": 3.0, "thrice": 3.0, "quadruple": 4.0}
_SEVERAL = {"dozen": 12.0, "couple": 2.0, "pair": 2.0}
_GLYPHS = {
    sign: eval_top / eval_bottom
    for sign, text in FRACTION_GLYPHS.items()
    for eval_top, eval_bottom in [map(int, text.split("/"))]
}
_BEGINNINGS = frozenset({*_UNITS, *_TENS, *_SCALES, *_FOLDS, *MULTIPLES, *_PARTS, "a", "an", "another", "the", "dozen"})
_ONE_OF = ("good", "full", "solid", "generous", "mere", "bare", "rough", "whole")
_SIGNS = frozenset(_GLYPHS) | {"."}
_DIGITS = re.compile(r"\d{1,3}(?:,\d{3})+(?:\.\d+)?|\d*\.\d+|\d+")
FRACTIONS_OF_DIGITS = re.compile(r"(\d{1,4})/(\d{1,4})")


@dataclass(frozen=True, slots=True)
class Spoken:
    """A number that was said: its value, how many words it took, and whether it is a fraction ("two thirds")."""

    value: float
    length: int
    is_fraction: bool = False


def may_begin(word: str) -> bool:
    """Return whether a number may begin with a word."""
    return word in _BEGINNINGS or word[:1].isdigit() or word[:1] in _SIGNS


def number_at(words: Sequence[str], at: int) -> Spoken | None:
    """Return the number that begins at a word, or None.

    Parameters
    ----------
    words : sequence of str
        Lower-case words, one a piece: "thirty", "four"; digits as they are written.
    at : int
        Where it may begin.

    Examples
    --------
    >>> number_at("two hundred and fifty calories".split(), 0)
    Spoken(value=250.0, length=4, is_fraction=False)
    >>> number_at("two thirds of it".split(), 0).is_fraction, number_at("13 and a half grams".split(), 0).value
    (True, 13.5)
    """
    word = words[at] if at < len(words) else ""
    if not may_begin(word):
        return None
    if word in _PARTS and word != "half" and _word(words, at - 1) in _ONE_OF:
        return Spoken(1 / _PARTS[word], 1, True)  # "a good third"
    if word == "the":
        part_word = _word(words, at + 2) if _word(words, at + 1) == "other" else ""  # "the other third"
        return Spoken(1 / _PARTS[part_word], 3, True) if part_word in _PARTS else None
    part = _fraction(words, at)
    if part:
        return part
    whole = _digits(words, at) or _cardinal(words, at)
    if whole is None:
        return _several(words, at)
    for ends in (("out", "of"), ("in",)):
        place = at + whole.length
        if tuple(words[place : place + len(ends)]) == ends:
            other = _digits(words, place + len(ends)) or _cardinal(words, place + len(ends))
            if (
                other
                and other.value > whole.value
                and whole.value >= 1
                and other.value in (2, 3, 4, 5, 6, 8, 10, 20, 100)
            ):
                return Spoken(whole.value / other.value, whole.length + len(ends) + other.length, True)
    return _and_a_half(words, at, whole)


def _word(words: Sequence[str], at: int) -> str:
    return words[at] if 0 <= at < len(words) else ""


def _digits(words: Sequence[str], at: int) -> Spoken | None:
    word = _word(words, at)
    if word in _GLYPHS:
        return Spoken(_GLYPHS[word], 1, True)
    if match := FRACTIONS_OF_DIGITS.fullmatch(word):
        return Spoken(int(match[1]) / int(match[2]), 1, True) if int(match[2]) else None
    if not _DIGITS.fullmatch(word):
        return None
    value = float(word.replace(",", ""))
    following = _word(words, at + 1)
    if following in _GLYPHS:
        return Spoken(value + _GLYPHS[following], 2)
    if (match := FRACTIONS_OF_DIGITS.fullmatch(following)) and int(match[2]):
        return Spoken(value + int(match[1]) / int(match[2]), 2)
    if following in _SCALES:
        return Spoken(value * _SCALES[following], 2)
    return Spoken(value, 1)


def _cardinal(words: Sequence[str], at: int) -> Spoken | None:
    total, current, place, last = 0.0, 0.0, at, ""
    if _word(words, at) in ("a", "an") and _word(words, at + 1) in _SCALES:
        current, place, last = 1.0, at + 1, "one"
    elif _word(words, at) in _SCALES and _word(words, at - 1) in (
        "good",
        "full",
        "solid",
        "cool",
        "whole",
        "every",
        "per",
        "each",
        "the",
        "in",
    ):
        current, last = 1.0, "one"
    while True:
        word = _word(words, place)
        if word == "and" and last in _SCALES and _goes_on(words, place + 1):
            place += 1
            continue
        if word in _UNITS and last not in ("unit",) and last != "teen":
            if last == "tens" and _UNITS[word] > 9:
                break
            current, last = current + _UNITS[word], "unit" if _UNITS[word] <= 9 else "teen"
        elif word in _TENS and last in ("", "hundred", "thousand"):
            current, last = current + _TENS[word], "tens"
        elif word in _TENS and last == "unit" and 0 < current < 10:  # "three fifty"
            current, last = 100 * current + _TENS[word], "tens"
        elif word == "hundred" and last:
            current, last = current * 100, "hundred"
        elif word == "thousand" and last:
            total, current, last = total + current * 1000, 0.0, "thousand"
        elif word == "point" and last and _word(words, place + 1) in _UNITS:
            value, step = total + current, 0.1
            place += 1
            while _word(words, place) in _UNITS and _UNITS[_word(words, place)] <= 9:
                value, step, place = value + step * _UNITS[_word(words, place)], step / 10, place + 1
            return Spoken(round(value, 6), place - at)
        else:
            break
        place += 1
    if last == "" or place == at or (last == "one" and place == at + 1):
        return None
    return Spoken(total + current, place - at)


def _goes_on(words: Sequence[str], at: int) -> bool:
    """Return whether a number goes on behind "hundred and"; "four hundred and six hundred" are two."""
    place = at
    while _word(words, place) in (*_UNITS, *_TENS):
        place += 1
    return place > at and _word(words, place) not in _SCALES


def _fraction(words: Sequence[str], at: int) -> Spoken | None:
    word, following = _word(words, at), _word(words, at + 1)
    if word == "half":
        if following in ("a", "an") and _word(words, at + 2) == "dozen":
            return Spoken(6.0, 3)
        return Spoken(0.5, 1, True)
    if word in ("a", "an", "one", "another") and following in _PARTS:
        return Spoken(1 / _PARTS[following], 2, True)
    if (word in _UNITS and 1 < _UNITS[word] < 20) or word.isdigit():
        name = (
            following[:-1]
            if following.endswith("s") and following != "halves"
            else "half"
            if following == "halves"
            else ""
        )
        count = _UNITS.get(word) or (float(word) if word.isdigit() else 0)
        if following in ("quarter", "third") and count < _PARTS[following]:
            name = following  # "one and three quarter grams"
        if name in _PARTS and count:
            return Spoken(count / _PARTS[name], 2, True)
    return None


def _several(words: Sequence[str], at: int) -> Spoken | None:
    word, following = _word(words, at), _word(words, at + 1)
    if word in _FOLDS or word in MULTIPLES:
        return Spoken({**_FOLDS, **MULTIPLES}[word], 1)
    if word == "dozen" and _word(words, at - 1) in ("the", "these", "those", "whole"):
        return Spoken(12.0, 1)
    if word in ("a", "one") and following in _SEVERAL:
        if following == "dozen":
            half = tuple(words[at + 2 : at + 5]) == ("and", "a", "half")
            return Spoken(18.0, 5) if half else Spoken(12.0, 2)
        length = 3 if _word(words, at + 2) == "of" else 2
        scale = _SCALES.get(_word(words, at + length), 0)  # "a couple of hundred"
        return Spoken(_SEVERAL[following] * scale, length + 1) if scale else Spoken(_SEVERAL[following], length)
    return None


def _and_a_half(words: Sequence[str], at: int, whole: Spoken) -> Spoken:
    place = at + whole.length
    if _word(words, place) == "and" and not whole.is_fraction:
        part = _fraction(words, place + 1)
        # "two and a half grams", but "ten percent and a half" or "four and half of it" are two numbers.
        if part and _word(words, place + 1) in ("a", "an", "one", "two", "three") and part.value < 1:
            after = _word(words, place + 1 + part.length)
            if after not in ("of", "the", "your", "as", "has", "is", "gives", "holds", "comes", "makes"):
                return Spoken(whole.value + part.value, whole.length + 1 + part.length)
    if _word(words, place) == "dozen":
        return Spoken(whole.value * 12, whole.length + 1)
    return whole
