"""An ingredient line taken apart: its amount, the words of the food, and what is done to it."""

import math
import re
from collections.abc import Iterator
from dataclasses import dataclass, field, replace
from itertools import islice

from kit.food.amounts import Count, plain_characters, read_count
from kit.food.vocabulary import SMALL_WORDS, line_words, words
from kit.lines.nearest_measure import Written
from kit.lines.quantities import LARGEST_COUNT, added, quantity

_MOST_FOODS = 4  # named on one line
LONGEST_LINE = 400  # characters; anything longer is not an ingredient line
_BULLET = re.compile(r"^\s*(?:[-*+•·▪◦‣□☐✓✔>]+\s*|\[[ xX]?\]\s*|\d{1,2}[.)]\s+)+")
_PARENTHESES = re.compile(r"[(\[]([^()\[\]]*)[)\]]")
_SQUEEZED = r"(?:(?:finely|freshly|coarsely)\s+)?(?:(?:grated|squeezed|pared)\s+)?"
_PRODUCT = re.compile(
    rf"^(?:the\s+)?{_SQUEEZED}(?P<first>juice|zest|rind)(?:\s*(?:and|&|\+|,)\s*{_SQUEEZED}(?P<second>juice|zest|rind))?"
    r"\s+(?:(?:of|from)\s+(?:about\s+)?|(?=\d|an?\s|half\s|one\s|two\s))",
    re.IGNORECASE,
)
_PRODUCT_BEHIND = re.compile(
    rf"^(?P<fruit>[^,(]+?)\s*[,(]\s*{_SQUEEZED}(?P<first>juice|zest|rind)(?:d|ed)?"
    rf"(?:\s*(?:and|&|\+)\s*{_SQUEEZED}(?P<second>juice|zest|rind)(?:d|ed)?)?(?:\s+only)?\s*\)?$",
    re.IGNORECASE,
)
_PURPOSES = (
    r"the (?:pan|tin|dish|top)|garnish(?:ing)?|serv(?:e|ing)|greas(?:e|ing)|drizzl(?:e|ing)|dust(?:ing)?|"
    r"sprinkl(?:e|ing)|finish(?:ing)?|top(?:ping)?|fry(?:ing)?|brush(?:ing)?|cook(?:ing)?|decorat(?:e|ion|ing)|"
    r"season(?:ing)?|roast(?:ing)?|roll(?:ing)?|coat(?:ing)?|saut[eé](?:ing)?|(?:shallow|deep)[- ]fry(?:ing)?"
)
_UNMEASURED = re.compile(
    r"[,;]?\s*\b(?:(?:or\s+)?(?:to|according to)\s+(?:your\s+)?taste|as\s+(?:needed|required|desired)|"
    rf"if\s+(?:desired|needed|you like)|(?:for|to)\s+(?:{_PURPOSES}))\b.*$",
    re.IGNORECASE,
)
_MORE = re.compile(
    r",?\s*(?:\bplus|\band|\bwith|\+)\s+(?:a\s+(?:little|bit|few)\s+)?(?:more|extra)\b.*$", re.IGNORECASE
)
_ASIDE = re.compile(r",?\s*\b(?:optional|divided|in total|see notes?|roughly|or (?:more|less))\b\.?", re.IGNORECASE)
_DRIED_OFF = re.compile(
    r"\b(?:squeezed|patted|pat|wrung|squeeze|spun|blotted|wiped)\s+(?:very\s+|completely\s+)?dry\b", re.IGNORECASE
)
_NEARLY = re.compile(
    r"^(?:an?\s+)?(?:about|approx(?:imately)?\.?|around|roughly|at least|up to|~|scant|heap(?:ed|ing)|generous|rounded|"
    r"level|good)\s*"
    r"(?=\d|\.\d|an?\s|half\s|one\s|two\s|three\s)",
    re.IGNORECASE,
)
_RANGE_OF_A_CAN = re.compile(
    r"^(\d{1,2})\s*-\s*(\d+(?:\.\d+)?[- ]?(?:oz|ounces?|g|grams?|ml)\b\.?[- ]*"
    r"(?:can|tin|jar|package|pkg|bag|box|bottle|carton)s?\b)",
    re.IGNORECASE,
)
_AND_MORE = re.compile(r"\s*(?:\+|\b(?:and|plus|&|(?:mixed|whisked|blended|combined) with))\s+(?=[\d.])", re.IGNORECASE)
_STIRRED = re.compile(
    r"\s+(?:mixed|dissolved|whisked|blended|stirred|made up|combined)\s+(?:with|in|into)\b.*$", re.IGNORECASE
)
_SEASONING = re.compile(
    r"^(?P<head>.*?)(?P<salt>(?:[\w-]{1,15}\s+)?\bsalt)\s*(?:,|and|&|\+)\s*"
    r"(?P<pepper>(?:[\w-]{1,15}\s+){0,3}pepper)\b(?P<tail>.*)$",
    re.IGNORECASE,
)
_EACH = re.compile(r"^(?P<amount>[^()]*?)\s*\beach\b\s*(?:of\s+)?:?\s*(?P<foods>[^()]+)$", re.IGNORECASE)
_SIZE_OF_EACH = re.compile(
    r"^([\d./ -]+)\(([^()]*\d[^()]*?)(?: each)?\)(?! ?(?:cans?|tins?|jars?|packages?|bags?)\b)(.*)$", re.IGNORECASE
)
_EACH_BEHIND = re.compile(r",\s*((?:about\s+)?[\d./]+\s?-?\s?[A-Za-z]{1,6}\.?) each\b", re.IGNORECASE)
_OR = re.compile(r"\s+(?:and/or|or)\s+", re.IGNORECASE)


@dataclass(frozen=True, slots=True)
class ParsedLine:
    """One ingredient line taken apart.

    Attributes
    ----------
    written : Written
        Amount and measure, as far as the line gives them.
    counted : bool
        Whether the line gives an amount at all.
    unmeasured : bool
        Whether it says "to taste", "for garnish" or the like.
    product : str
        ``"juice"`` or ``"zest"`` when that part of the food is meant.
    name, after : tuple of str
        Words of the food before the first comma, and what follows it.
    whole : tuple of str
        The words before the first comma with those of every "or".
    others : tuple of str
        Foods offered by "or".
    problem : str
        Why the amount cannot be read, or empty.
    """

    written: Written = field(default_factory=Written)
    counted: bool = False
    unmeasured: bool = False
    product: str = ""
    name: tuple[str, ...] = ()
    after: tuple[str, ...] = ()
    whole: tuple[str, ...] = ()
    others: tuple[str, ...] = ()
    problem: str = ""


def without_bullet(line: str) -> str:
    """Return a line without the bullet, box or number in front of it."""
    return _RANGE_OF_A_CAN.sub(r"\1 x \2", _BULLET.sub("", plain_characters(line)).strip())


def take_apart(line: str, system: str = "us") -> list[ParsedLine]:
    """Take an ingredient line apart; several phrases where it names several foods ("salt and pepper")."""
    if len(line) > LONGEST_LINE:
        problem = f"the line has {len(line):,} characters; write one ingredient, shorter than {LONGEST_LINE}"
        return [ParsedLine(problem=problem)]
    text = re.sub(r"\s+", " ", without_bullet(line))
    return [
        replace(_phrase(part, system), product=product) if product else _phrase(part, system)
        for part, product in _parts(text)
    ]


def _parts(text: str) -> Iterator[tuple[str, str]]:
    """Yield the parts of a line, each naming one food, and the product of it that is meant."""
    product = _PRODUCT.match(text)
    behind = None if product else _PRODUCT_BEHIND.match(text)
    if product or behind:
        fruit = text[product.end() :] if product else behind["fruit"]
        for kind in (product or behind).group("first", "second"):
            if kind:
                yield fruit, "juice" if kind.lower() == "juice" else "zest"
        return
    lower = text.lower()
    each = _EACH.match(text) if " each" in lower else None
    foods = re.split(r"\s*,\s*(?:and\s+)?|\s+(?:and|&)\s+", each["foods"]) if each else ()
    seasoning = _SEASONING.match(text) if "pepper" in lower and "salt" in lower else None
    if each and len(foods) > 1 and read_count(_NEARLY.sub("", each["amount"]) or "1")[0]:
        yield from ((f"{each['amount']} {food}", "") for food in foods if food)
    elif seasoning:
        head = re.sub(r"\beach\b(?:\s+of)?\s*", "", seasoning["head"], flags=re.IGNORECASE)
        yield from ((f"{head}{food}{seasoning['tail']}", "") for food in seasoning.group("salt", "pepper"))
    else:
        yield from ((part, "") for part in _amounts_of_foods(text))


def _amounts_of_foods(text: str) -> Iterator[str]:
    """Yield the parts of "1 tbsp cornstarch + 1 tbsp water", each with an amount and a food; else the text."""
    for link in islice(_AND_MORE.finditer(text), _MOST_FOODS):
        left, right = text[: link.start()], text[link.end() :]
        if _names_food(left) and _names_food(right) and left.count("(") == left.count(")"):
            yield left
            yield right
            return
    yield text


def _names_food(text: str) -> bool:
    count, rest = read_count(text)
    if count is None:
        return False
    name = words(_UNMEASURED.sub("", quantity(count, _PARENTHESES.sub("", rest), (), "us")[1]))
    return any(line_words().get(word) is None and word not in SMALL_WORDS for word in name)


def _phrase(text: str, system: str) -> ParsedLine:
    text = _SIZE_OF_EACH.sub(r"\1 (\2 each)\3", _EACH_BEHIND.sub(r" (\1 each)", text))
    inside: list[str] = []
    for _ in range(3):  # parentheses within parentheses
        inside += [part.strip() for part in _PARENTHESES.findall(text)]
        text = _PARENTHESES.sub(" ", text)
    text = _DRIED_OFF.sub("", re.sub(r"\s+", " ", text)).strip()
    unmeasured = bool(_UNMEASURED.search(text)) or any(_UNMEASURED.search(part) for part in inside)
    text = _ASIDE.sub("", _MORE.sub("", _UNMEASURED.sub("", text))).strip(" ,;.")
    text = _NEARLY.sub("", text)
    count, rest = read_count(text)
    if count is None:
        count, rest = _behind(text)
    if count and not (count.value >= 0 and count.high <= LARGEST_COUNT):  # NaN fails the comparison too
        shown = "is no number" if math.isnan(count.value) else f"of {count.high:g} is too large"
        return ParsedLine(problem=f'the amount in "{text[:40]}" {shown}; write something like "1 1/2 cups"')
    written, rest, told = quantity(count, _STIRRED.sub("", rest), inside, system)
    rest, written = added(rest, written, system)
    parts = re.split(r"\s*[,;:]\s*|\s+-\s+|\s+/\s+", rest.strip(" ,;:"), maxsplit=1)
    name, *others = _OR.split(parts[0])
    after = _DRIED_OFF.sub("", " ".join([*parts[1:], *inside]))
    return ParsedLine(
        written=_with_words(written, words(name), words(after)),
        counted=count is not None or told,
        unmeasured=unmeasured,
        name=words(name),
        after=words(after),
        whole=words(parts[0]),
        others=tuple(other for other in others if other)[:_MOST_FOODS],
    )


def _behind(text: str) -> tuple[Count | None, str]:
    """Read an amount that stands behind the food: "Olive oil: 2 tbsp", "Feta, 100 g", "Eggs x 3"."""
    turned = re.match(r"^([^\d.(]{3,60}?)\s*(?:[,:=-]|\bx\b)?\s*(?=\d|\.\d)(.+)$", text, re.IGNORECASE)
    if not turned or re.search(r"\b(?:into|in|to|from|about|no|of|at|with)\s*$", turned[1], re.IGNORECASE):
        return None, text
    count, rest = read_count(turned[2])
    if count is None or re.match(r"\s*-?\s*(?:grain|inch|cm\b|minute|hour|day|to\b)", rest, re.IGNORECASE):
        return None, text
    amount, _, tail = re.sub(r"\s*;\s*", ",", rest).partition(",")
    return count, f"{amount.strip()} {turned[1]}, {tail}".strip(" ,")


def _with_words(written: Written, name: tuple[str, ...], after: tuple[str, ...]) -> Written:
    """Add what single words say: sizes, measures behind the food ("garlic cloves"), peeled or with bones."""
    size = written.size
    for word in name:
        known = line_words().get(word)
        if known and known.kind == "size" and not size:
            size = known.meaning
    said = {*name, *after}
    # What is cut, picked or peeled before the comma is weighed so: "200 g diced carrot", not "200 g carrots, diced".
    kinds = {known.kind for word in name if (known := line_words().get(word))}
    edible = written.edible or bool({"edible", "cut"} & kinds) or not _READY_TO_EAT.isdisjoint(name)
    boneless = said & {"boneless", "skinless", "fillet", "filet", "deveined", "boned"}
    phrase = f" {' '.join((*name, *after))} "
    as_bought = any(f" {words_} " in phrase for words_ in _WITH_BONES)
    drained = bool(said & {"drained", "rinsed"}) and "undrained" not in said
    return replace(written, size=size, edible=edible or bool(boneless), as_bought=as_bought, drained=drained)


_READY_TO_EAT = frozenset("mixed salad mesclun leaf tenderstem sprouting".split())
_WITH_BONES = (
    "bone in",
    "skin on",
    "shell on",
    "in shell",
    "in the shell",
    "in their shell",
    "unshelled",
    "on the bone",
)
