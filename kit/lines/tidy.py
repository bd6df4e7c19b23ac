"""A written line in plain words: no bullet, one spelling of each unit, and what is said not to be so."""

import re

from kit.food.amounts import plain_characters, with_half_ahead
from kit.lines.denied_words import denied
from kit.lines.parts_meant import PARTS_MEANT
from kit.lines.parts_off import without_parts
from kit.lines.plain_packages import PACKAGES
from kit.lines.plain_words import DEEDS, WORDS
from kit.lines.rewriting import Rewriting, rewritten

_BULLET = re.compile(r"^\s*(?:[-*+•·▪◦‣◻◽▫■□▢☐☑✓✔●○>–]+\s*|\[[ xX]?\]\s*|\d{1,2}[.)]\s+)+")
_RANGE_OF_A_CAN = re.compile(
    r"^(\d{1,2})\s*-\s*(\d+(?:\.\d+)?[- ]?(?:oz|ounces?|g|grams?|ml)\b\.?[- ]*"
    r"(?:can|tin|jar|package|pkg|bag|box|bottle|carton)s?\b)",
    re.IGNORECASE,
)
_ABOUT_FIRST = re.compile(r"^(?:about|approx(?:imately|\.)?|roughly|around)\s+(?=\d)", re.IGNORECASE)
_PAUSE = re.compile(
    r"\s*;\s*|(?<=[A-Za-z)])\s+-{1,2}\s+(?=[A-Za-z])|(?<=^\d)(\S*(?: [\d./]+)*(?: [a-z(]\S+){2,}) --? (?=\d)"
)  # a comma, in another hand
_FULL_STOP = re.compile(r"(?<=[a-z]{4})\.$")  # of no unit
_WRITTEN_LARGE = re.compile(r"(?<![\d)] )(?<![\d)])\b(?!T\b)[A-Z][A-Za-z']*")  # but behind a number: "1 T" is no "1 t"
_COUNT_IN_BRACKETS = re.compile(
    r"^\((\d{1,2})\)\s*(?=[a-z]|[\d. /-]+(?:oz|ounces?|g|grams?|lb|pounds?)\b\.?[ -])", re.IGNORECASE
)
_SORTED = re.compile(  # what is done to dry beans; rinsed ones are else out of a can
    r"\b(sorted|picked (?:over|through))(?:\s*,)?\s*(?:and\s+|&\s*)?rinsed\b|"
    r"\brinsed(?:\s*,)?\s*(?:and\s+|&\s*)?(?=sorted\b|picked (?:over|through)\b)",
    re.IGNORECASE,
)
_MINCED = re.compile(r"\bminced (?=(?:lean )?(?:beef|lamb|pork|veal)\b)", re.IGNORECASE)
_MINCE = re.compile(
    r"\b(beef|lamb|pork|turkey|chicken|venison|veal)((?: breast| thigh| steak)?) mince\b", re.IGNORECASE
)
_MEAT = re.compile(r"\b(?:minced|ground) (?:beef|lamb|pork|turkey|chicken|veal)\b", re.IGNORECASE)
_FAT_OF_MEAT = re.compile(r"\b(\d{1,2})\s?% fat\b(?! free)", re.IGNORECASE)
_DRIED_OFF = re.compile(
    r"\b(?:squeezed|patted|pat|wrung|squeeze|spun|blotted|wiped|towel|pressed)[- ]?\s*"
    r"(?:very\s+|completely\s+|until\s+)?dr(?:y|ied)\b"
    r"|\b(?:washed|rinsed)(?:\s+well)?(?:,)?(?:\s+and)?\s+(?:patted\s+)?dried\b",
    re.IGNORECASE,
)
_WASHED = re.compile(
    r",?\s*\b(?:well[- ]|thoroughly\s+|carefully\s+)?(?:washed|cleaned)(?:\s+(?:well|thoroughly))?\b",
    re.IGNORECASE,
)
_OF_MEAT_AND_BEANS = (
    Rewriting(_SORTED, lambda found: found[1] or "", "rinsed"),
    Rewriting(_MINCED, "ground ", "minced"),
    Rewriting(_MINCE, r"ground \1\2", "mince"),
)
_LAST = (
    Rewriting(_DRIED_OFF, ""),
    Rewriting(_WASHED, " "),
)


def without_bullet(line: str) -> str:
    """Return a line without the bullet, box or number in front of it."""
    return _RANGE_OF_A_CAN.sub(r"\1 x \2", _BULLET.sub("", plain_characters(line)).strip())


def _one_space(found: re.Match[str]) -> str:
    return found[1] or " "  # none before a comma


def tidy(line: str) -> str:
    """Return a line in the words that the reader knows.

    Bullets, footnote marks and what was washed off are gone; units have one spelling; "not drained" is "undrained";
    what was taken off is said of the food: "skin and fat removed" is "skinless deskinned trimmed".

    Examples
    --------
    >>> tidy("▢ 2# un-cooked chicken, skin removed*")
    '2 lb uncooked chicken, skinless deskinned'
    >>> tidy("1 can tomatoes, not drained"), tidy("to taste black pepper")
    ('1 can tomatoes, undrained', 'black pepper, to taste')
    """
    text = with_half_ahead(without_bullet(re.sub(r"\s+(,?)", _one_space, line)))
    text = _FULL_STOP.sub("", text)
    text = _PAUSE.sub(r"\1, ", _ABOUT_FIRST.sub("", _WRITTEN_LARGE.sub(lambda found: found[0].lower(), text)))
    text = rewritten(_COUNT_IN_BRACKETS.sub(r"\1 x ", text), WORDS).strip()
    text = rewritten(rewritten(rewritten(text, PACKAGES), PARTS_MEANT), DEEDS)
    text = rewritten(denied(text), _OF_MEAT_AND_BEANS)
    if "%" in text and _MEAT.search(text):
        text = _FAT_OF_MEAT.sub(lambda found: f"{100 - int(found[1])}% lean", text)
    return rewritten(without_parts(text), _LAST).strip()
