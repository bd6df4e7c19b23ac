"""How many a recipe makes, as people write it: "Serves 6 to 8", "Makes 12 muffins", "1 9-inch pie, 8 servings"."""

import re
from dataclasses import dataclass, replace

from kit.food.amounts import Count, plain_characters, read_count
from kit.food.measures import unit
from kit.food.vocabulary import singular

LEAST_SERVINGS, MOST_SERVINGS = 0.1, 10_000
_PEOPLE = r"(?:servings?|serves|portions?|people|persons?|adults?|guests|diners|helpings?)"
_NUMBER = (
    r"(?:\d+(?:\.\d+)?(?:\s+\d/\d)?(?:\s*(?:-|to|or)\s*\d+)?|(?:a |one |two )?(?:half (?:a )?)?dozen"
    r"|one|two|three|four|five|six|seven|eight|nine|ten|eleven|twelve)"
)
_LABEL = re.compile(
    r"^(?:(?:this|the|each|one)\s+)?(?:recipe\s+)?(?:(?:total\s+)?(?:number|no\.?|amount)\s+of\s+|total\s+|per\s+)?"
    r"(?P<label>serves|servings|serving\(s\)|serving(?=\s*:?\s*\d+$)|yields?|makes|portions?|feeds|enough\s+for|quantity)"
    r"(?!\s+(?:size|suggestion|ideas?|with|this|it|immediately|warm|hot|cold|over|on|in|at|as)\b)"
    r"(?:\s+(?:per|in)\s+(?:the\s+|this\s+)?(?:recipe|container))?"
    r"(?:\s+yields?)?(?![^\W\d])\s*(?:[:.=]|-(?=\s))*\s*(?P<amount>.*)$",
    re.IGNORECASE,
)
_FOR = re.compile(rf"^for\s+(?P<amount>{_NUMBER})(?:\s+{_PEOPLE})?\s*[:.]?$", re.IGNORECASE)
_BARE = re.compile(
    rf"^\(?(?:about\s+)?(?P<amount>{_NUMBER})\s*(?:\([^()]*\)\s*|[\d./ -]+-?(?:cup|ounce|oz)\s+)?{_PEOPLE}\b"
    r"(?P<rest>.*)$",
    re.IGNORECASE,
)
_SOME_SERVINGS = re.compile(
    rf"\b(?P<amount>{_NUMBER})\s*(?:\([^()]*\)\s*|[\w./-]*-[\w-]+\s+|(?:small|large|generous|main|hearty)\s+)?{_PEOPLE}\b",
    re.IGNORECASE,
)
_PIECES = re.compile(
    rf"\b(?P<amount>{_NUMBER})\s+(?:[\w-]+\s+)?(?P<called>slices?|wedges|pieces|squares|bars|cookies|muffins|rolls|patties|"
    r"balls|biscuits|tacos|wraps|jars|boxes|bowls|cups|sticks|scones|buns|pancakes|fillets)\b",
    re.IGNORECASE,
)
_IN_PROSE = re.compile(
    rf"\b(?:it|this|recipe|which|that|and|dish|pot|batch)\s+(?:easily\s+|will\s+)?(?:serves?|feeds?)\s+(?:about\s+)?"
    rf"(?P<amount>{_NUMBER})\b|\b(?:makes?|yields?)\s+(?:about\s+)?(?P<made>{_NUMBER})\s+(?:\w+\s+)?{_PEOPLE}\b|"
    rf"\(\s*(?:serves|makes)\s+(?P<bracket>{_NUMBER})\b|\bserves\s+(?P<serves>{_NUMBER})\b",
    re.IGNORECASE,
)
_ABOUT = re.compile(
    r"^(?:about|approx(?:imately)?\.?|around|roughly|up to|at least|enough for|from|for|~|ca\.?)\s*", re.IGNORECASE
)
_WHOLE = re.compile(
    r"\b(?:loaf|loaves|pies?|cakes?|batch|batches|pans?|trays?|skillets?|pots?|casseroles?|dish|dishes|crusts?|jars?|pizzas?|"
    r"tarts?|quiches?|roasts?|recipes?)\b",
    re.IGNORECASE,
)

_SMALL = re.compile(r"(?:mini|miniature|individual|little|tiny|single-serve|personal)\b", re.IGNORECASE)


@dataclass(frozen=True, slots=True)
class Yield:
    """How many a recipe makes.

    Attributes
    ----------
    count : Count or None
        How many servings, with the ends of a span; None when what is made is no number of servings ("2 quarts").
    called : str
        What one is called ("muffin"); empty for a serving.
    sure : int
        3 for a line of its own that says servings, 2 for one that says what is made, 1 for a number inside a sentence.
    """

    count: Count | None
    called: str
    sure: int


def read_yield(line: str) -> Yield | None:
    """Read how many a recipe makes from a line of it; None when the line says nothing about that.

    Examples
    --------
    >>> read_yield("Serves 6 to 8").count
    Count(value=7.0, low=6.0, high=8.0)
    >>> read_yield("Makes 12 muffins"), read_yield("Serving size: 1 1/2 cups")
    (Yield(count=Count(value=12.0, low=12.0, high=12.0), called='muffin', sure=2), None)
    >>> read_yield("Yield: 1 9-inch pie, 8 servings").count.value
    8.0
    """
    text = plain_characters(line).strip(" *_#>|\t.")
    if len(text) > 400:
        return None
    labelled = _LABEL.match(text)
    if labelled and _says_an_amount(labelled["amount"]):
        served = labelled["label"].lower().startswith(("serv", "portion", "feed", "enough"))
        return _amount(labelled["amount"], served)
    if labelled and re.match(r"-\d", labelled["amount"]):  # told as no number of servings
        return Yield(Count(-1.0, -1.0, -1.0), "", 3)
    if labelled and _LABEL.match(labelled["amount"]):  # "Yield: Serves 6"
        return read_yield(labelled["amount"])
    bare = _BARE.match(text) or _FOR.match(text)
    if bare and len(text.split()) <= 12:
        return Yield(read_count(bare["amount"])[0], "", 3)
    sentences = re.split(r"(?<=[.!?])\s+", text) if len(text) > 30 else ()
    if len(sentences) > 1:
        told = [made for sentence in sentences if (made := read_yield(sentence))]
        best = max(told, key=lambda made: (made.count is not None, made.sure), default=None)
        return replace(best, sure=1) if best else None
    prose = _IN_PROSE.search(text)
    if prose:
        return Yield(read_count(next(filter(None, prose.groups())))[0], "", 1)
    return None


def is_label(line: str) -> bool:
    """Whether a line is only the label of a yield, whose number stands on the next one: "Servings"."""
    labelled = _LABEL.match(plain_characters(line).strip(" *_#>|\t."))
    return labelled is not None and not labelled["amount"].strip(" :.")


def _says_an_amount(text: str) -> bool:
    amount = _ABOUT.sub("", text.lstrip("( "))
    return read_count(amount)[0] is not None and not re.match(
        r"an?\s+(?:crowd|group|family|few)\b", amount, re.IGNORECASE
    )


def _amount(text: str, served: bool) -> Yield:
    """Read what stands behind "Serves" or "Makes"."""
    count, rest = read_count(_ABOUT.sub("", text.lstrip("( ")))
    assert count is not None
    first = rest.lstrip("-( ")
    said = _SOME_SERVINGS.search(text)
    if re.match(rf"{_PEOPLE}\b", first, re.IGNORECASE) or (served and not _measured(rest)):
        called = "" if re.match(rf"(?:{_PEOPLE}|as|with|generously)\b", first, re.IGNORECASE) else _called(rest)
        return Yield(count, called, 3)
    if said:
        return Yield(read_count(said["amount"])[0], "", 3)
    pieces = _PIECES.search(rest)
    if pieces and (_WHOLE.search(rest[: pieces.start()]) or _measured(rest)):
        return Yield(read_count(pieces["amount"])[0], _called(pieces["called"]), 2)
    small = _SMALL.match(first)  # "2 dozen mini loaves"
    if _measured(rest) or (_WHOLE.search(rest) and not small and not _PIECES.match(f"1 {rest}")):
        return Yield(None, "", 2)
    return Yield(count, _called(rest), 2)


def _measured(rest: str) -> bool:
    """Whether what follows a number is a measure: "quarts of soup" is, "cups" of muffins is not told from it."""
    word = re.match(r"\(?\s*([A-Za-z]+\.?)(?:\s+([A-Za-z]+))?", rest.strip())
    if word is None:
        return False
    known = unit(word[1]) or (unit(f"{word[1]} {word[2]}") if word[2] else None)
    return known is not None and known.kind in ("volume", "mass")


def _called(rest: str) -> str:
    """Return what one serving is called: "lidded box" of "lidded boxes (350 g each)"."""
    name = re.split(
        r"[,;(|.]|\s(?:of|each|about|per|or|to|with|as|for|at)\s", re.sub(r"^\s*\([^()]*\)", "", rest), maxsplit=1
    )[0]
    name = re.sub(rf"^[\s:-]*(?:{_PEOPLE}\b)?", "", name, flags=re.IGNORECASE).strip(" -:")
    parts = name.lower().split()
    if not parts or len(parts) > 4 or not re.fullmatch(r"[^\d+=*/]*[^\W\d_][^\d+=*/]*", name):
        return ""
    return " ".join([*parts[:-1], singular(parts[-1])])
