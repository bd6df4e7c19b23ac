"""What stands in brackets: an amount, something done to the food, an example, or a wish that changes nothing."""

import re
from collections.abc import Iterable
from dataclasses import dataclass

from kit.food.vocabulary import SMALL_WORDS, line_words, words

_BRACKETS = re.compile(r"[(\[]([^()\[\]]*)[)\]]")
_EXAMPLE = re.compile(
    r"^(?:such as|like|e\.?\s?g\.?,?|for example,?|preferably|ideally|i used|i like|try)\s+", re.IGNORECASE
)
_WISH = re.compile(
    r"^(?:or|and/or)\b|\b(?:subs?|substitut\w*|if|optional\w*|can|could|may|use|used|using|prefer\w*|recommend\w*|see|"
    r"notes?|recipe|favou?rite|available|also|instead|depending|as needed|works?|fine|okay|ok|choice|desired|omit|"
    r"made(?! (?:from|with|of) (?!\d|an?\b|one\b|the\b|your\b))|"
    r"leave|it's|you|your|i|will|should|would)\b",
    re.IGNORECASE,
)
_ORIGIN = re.compile(r"^(?:from|for|equals?|makes?|yields?|see|note|any|at|to)\b", re.IGNORECASE)
_AT_LEAST = re.compile(r"^(?:at least|minimum)\s+(?=\d)", re.IGNORECASE)
_SECOND = re.compile(r"(?<=[a-z%])\s*,?\s+or\s+.*$", re.IGNORECASE)
_OR_OUT_OF_A_CAN = re.compile(  # what is poured off is said of that: "fresh, or canned in juice, drained"
    r"(?:^|,\s*|(?<=fresh)\s+|(?<=frozen)\s+)(?:and/)?or (?:canned|frozen|jarred|bottled)\b[^,;]*"
    r"(?:[,;]\s*(?:well )?(?:drained|rinsed|thawed)(?: and (?:drained|rinsed))?)*",
    re.IGNORECASE,
)
_ONE_OF = re.compile(r"^([^,;\d]+?)(?:,\s*(?:\d%|[^,;\d])+?){1,4},?\s+(?:and/)?or\s+[^,;]+$", re.IGNORECASE)
_PURPOSE = re.compile(
    r"^(?:for|equals?|makes?|yields?|see|note|any|from (?:about |the )?(?:\d|an?\b|one\b))", re.IGNORECASE
)
_AMOUNT = re.compile(
    r"^(?:about|approx\w*\.?|around|roughly|net|drained weight:?|total(?:ing)?|~|x)?\s*(?:of\s+)?"
    r"(?![\d.]+\s*(?:%|percent)|[789]\d/\d)[\d.]",
    re.IGNORECASE,
)
_EXAMPLE_BEHIND = re.compile(
    r",?\s+\b(?:such as|like|e\.?\s?g\.?,?|for example,?|preferably|ideally)\s+(?P<example>[^,;()]+)", re.IGNORECASE
)


@dataclass(frozen=True, slots=True)
class Remarks:
    """What the brackets of a line say.

    Attributes
    ----------
    amounts : tuple of str
        Amounts and sizes: "15 oz", "about 2 lbs", "4 oz each".
    said : tuple of str
        What is said of the food: "chopped", "drained", "cooked".
    examples : tuple of str
        Foods that are named as an example.
    """

    amounts: tuple[str, ...] = ()
    said: tuple[str, ...] = ()
    examples: tuple[str, ...] = ()


def without_wishes(text: str) -> str:
    """Return what is said behind a comma without wishes and purposes: "; for less spice, use bell pepper"."""
    pieces = re.split(r"\s*[,;]\s*", _OR_OUT_OF_A_CAN.sub("", text))
    said = [piece for piece in map(first_of_two, pieces) if not (_WISH.search(piece) or _PURPOSE.match(piece))]
    return ", ".join(piece for piece in said if piece)


def first_of_two(text: str) -> str:
    """Return what is said without the second of two: "fresh" for "fresh or canned, drained"."""
    return _SECOND.sub("", text)


def without_brackets(text: str) -> tuple[str, list[str]]:
    """Return a text without its brackets, and what stood in them."""
    inside: list[str] = []
    for _ in range(3):  # brackets within brackets
        inside += [part.strip() for part in _BRACKETS.findall(text)]
        text = _BRACKETS.sub(" ", text)
    return re.sub(r"\s+", " ", text).strip(), [part for part in inside if part]


def without_examples(text: str) -> tuple[str, tuple[str, ...]]:
    """Return a text without "such as cod", and the foods so named."""
    examples = tuple(found["example"].strip() for found in _EXAMPLE_BEHIND.finditer(text))
    return (_EXAMPLE_BEHIND.sub("", text), examples) if examples else (text, ())


def _first_food(remark: str) -> str:
    """Return the first of several foods that a remark offers: "walnuts" for "walnuts, pecans or almonds"."""
    listed = _ONE_OF.match(remark)
    if listed is None:
        return remark
    telling = [word for word in words(remark) if word not in SMALL_WORDS]
    return listed[1] if all(line_words().get(word) is None for word in telling) else remark


def _names_parts(remark: str) -> bool:
    """Whether a remark only names parts of the food: "breast, drumstick and thigh"."""
    said = [word for word in words(remark) if word not in SMALL_WORDS]
    return all((known := line_words().get(word)) is not None and known.kind == "measure" for word in said)


def sort_remarks(inside: Iterable[str]) -> Remarks:
    """Sort what stood in brackets by what it may tell.

    A wish or an alternative ("or canned", "low sodium if you prefer", "can use frozen") tells nothing that is counted.

    Examples
    --------
    >>> sort_remarks(["chopped, 16 ounces", "or canned, drained", "such as cod"])
    Remarks(amounts=('16 ounces',), said=('chopped',), examples=('cod',))
    """
    amounts: list[str] = []
    said: list[str] = []
    examples: list[str] = []
    for remark in inside:
        remark = _AT_LEAST.sub("", first_of_two(_first_food(remark)))
        example = _EXAMPLE.match(remark)
        pieces = [piece.strip() for piece in re.split(r"[,;]\s*", remark)]
        counts = [piece for piece in pieces if _AMOUNT.match(piece)]
        if example:
            examples.append(re.split(r"\s*(?:,|\bor\b|\band\b)\s*", remark[example.end() :])[0])
        elif re.match(r"^(?:or|and/or|can|sub\w*)\b", remark, re.IGNORECASE) or _ORIGIN.match(remark):
            continue
        elif counts:
            amounts += counts
            said += [piece for piece in pieces if piece not in counts and not _WISH.search(piece)]
        elif not _WISH.search(remark) and not _names_parts(remark):
            said.append(remark)
    return Remarks(tuple(amounts), tuple(said), tuple(examples))
