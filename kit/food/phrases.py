"""What an ingredient line says: its amount and measure, the words of the food, and what is done to it."""

import math
import re
from dataclasses import dataclass, field, replace

from kit.food.amounts import ONE, Count, plain_characters, read_count
from kit.food.finding import line_words, words
from kit.food.measures import Unit, unit
from kit.food.weighing import Written

LONGEST_LINE = 400  # characters; anything longer is not an ingredient line
LARGEST_COUNT = 100_000
_BULLET = re.compile(r"^\s*(?:[-*+•·▪◦‣□☐✓✔>]+\s*|\[[ xX]?\]\s*|\d{1,2}[.)]\s+)+")
_PARENTHESES = re.compile(r"[(\[]([^()\[\]]*)[)\]]")
_PRODUCT = re.compile(
    r"^(?:the\s+)?(?:(?:finely\s+|freshly\s+)?(?:grated|squeezed)\s+)?(?P<first>juice|zest)"
    r"(?:\s*(?:and|&|\+)\s*(?P<second>juice|zest))?\s+(?:of|from)\s+",
    re.IGNORECASE,
)
_UNMEASURED = re.compile(
    r",?\s*\b(?:to taste|as needed|as required|if desired|(?:for|to)\s+(?:garnish(?:ing)?|serv(?:e|ing)|greas(?:e|ing)|"
    r"drizzl(?:e|ing)|dust(?:ing)?|sprinkl(?:e|ing)|finish(?:ing)?|top(?:ping)?|the (?:pan|tin|dish)))\b.*$",
    re.IGNORECASE,
)
_MORE = re.compile(r",?\s*\b(?:plus|and|with)\s+(?:a (?:little|bit)\s+)?(?:more|extra)\b.*$", re.IGNORECASE)
_ASIDE = re.compile(r",?\s*\b(?:optional|divided|in total|see notes?)\b\.?", re.IGNORECASE)
_SIZE = re.compile(r"^(?:about|approx\.?|approximately|around|net)?\s*", re.IGNORECASE)
_UNIT_WORD = re.compile(r"^-?\s*(fl\.?\s?oz|fluid[ -]ounces?|[A-Za-z]+)\b\.?\s*", re.IGNORECASE)
_LENGTH = re.compile(r"^-?\s*(?:inch(?:es)?|in\b|cm|\")[ -]*", re.IGNORECASE)
_LINK = re.compile(r"^(?:of\s+(?:an?\s+|the\s+)?|x\s+)", re.IGNORECASE)
_PLUS = re.compile(r"^(?:\+|plus|and)\s+(?=[\d.])", re.IGNORECASE)
_HOW_FULL = ("heaping", "heaped", "rounded", "level", "scant", "generous", "good", "about", "approximately", "very")


@dataclass(frozen=True, slots=True)
class Phrase:
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
    others: tuple[str, ...] = ()
    problem: str = ""


def without_bullet(line: str) -> str:
    """Return a line without the bullet, box or number in front of it."""
    return _BULLET.sub("", plain_characters(line)).strip()


def take_apart(line: str, system: str = "us") -> list[Phrase]:
    """Take an ingredient line apart; two phrases where it names two foods ("salt and pepper", "zest and juice of")."""
    text = without_bullet(line)
    if len(line) > LONGEST_LINE:
        return [
            Phrase(problem=f"the line has {len(line):,} characters; write one ingredient, shorter than {LONGEST_LINE}")
        ]
    product = _PRODUCT.match(text)
    if product:
        text = text[product.end() :]
        kinds = [kind.lower() for kind in (product["first"], product["second"]) if kind]
        return [replace(_phrase(text, system), product=kind) for kind in kinds]
    both = re.match(
        r"^(.*?)\b((?:[\w-]+\s+)?salt)\s*(?:and|&|\+)\s*((?:[\w-]+\s+){0,3}pepper)\b(.*)$", text, re.IGNORECASE
    )
    if both:
        head, first, second, tail = both.groups()
        head = re.sub(r"\beach\b(?:\s+of)?\s*", "", head, flags=re.IGNORECASE)
        return [_phrase(f"{head}{food}{tail}", system) for food in (first, second)]
    return [_phrase(text, system)]


def _phrase(text: str, system: str) -> Phrase:
    inside = [part.strip() for part in _PARENTHESES.findall(text)]
    text = re.sub(r"\s+", " ", _PARENTHESES.sub(" ", text)).strip()
    unmeasured = bool(_UNMEASURED.search(text)) or any(_UNMEASURED.search(f" {part}") for part in inside)
    text = _ASIDE.sub("", _MORE.sub("", _UNMEASURED.sub("", text))).strip(" ,;.")
    count, rest = read_count(text)
    if count is None:  # "Olive oil: 2 tbsp", "Feta, 100 g"
        turned = re.match(r"^([^\d]{3,60}?)\s*[,:]\s*(?=[\d.])(.+)$", text) or re.match(
            r"^([^\d]{3,60}?)\s+-\s+(?=[\d.])(.+)$", text
        )
        if turned:
            count, rest = read_count(turned[2])
            rest = f"{rest} {turned[1]}" if count else text
    if count and not (count.value >= 0 and count.high <= LARGEST_COUNT):  # NaN fails the comparison too
        shown = "is no number" if math.isnan(count.value) else f"of {count.high:g} is too large"
        return Phrase(problem=f'the amount in "{text[:40]}" {shown}; write something like "1 1/2 cups"')
    written, rest, found = _amount(count, rest, inside, system)
    parts = re.split(r"\s*[,;]\s*|\s+-\s+", rest, maxsplit=1)
    name, *others = re.split(r"\s+(?:and/or|or)\s+", parts[0], flags=re.IGNORECASE)
    after = " ".join([*parts[1:], *inside])
    product = next((kind for word, kind in (("juiced", "juice"), ("zested", "zest")) if word in words(after)), "")
    return Phrase(
        written=_with_words(written, words(name), words(after)),
        counted=count is not None or found,
        unmeasured=unmeasured,
        product=product,
        name=words(name),
        after=words(after),
        others=tuple(others),
    )


def _amount(count: Count | None, rest: str, inside: list[str], system: str) -> tuple[Written, str, bool]:
    """Read unit, measure and package after the count; also whether a measure was found where no number stood."""
    written = Written(count=count or ONE)
    rest = _LINK.sub("", rest)
    stated = next((size for part in inside if (size := _package_size(part, system))), None)
    size = _package_size(rest, system) if count else None
    if size and (size[2] != rest):
        value, size_unit, rest = size
        measure, rest = _take(rest, ("container", "measure"))
        return replace(written, package=value, package_unit=size_unit, measure=measure), _LINK.sub("", rest), True
    length = _LENGTH.match(rest)
    if length and count:
        rest = rest[length.end() :]
    rest = _skip_fullness(rest)
    here, after_unit = _take_unit(rest, system, alone=count is not None)
    if here is not None:
        written = replace(written, unit=here)
        rest = _LINK.sub("", after_unit)
        more = _PLUS.match(rest)
        if more:
            extra, tail = read_count(rest[more.end() :])
            extra_unit, tail = _take_unit(tail, system, alone=True)
            if extra and extra_unit and extra_unit.kind == here.kind:
                written = replace(written, count=written.count.plus(extra.times(extra_unit.size / here.size)))
                rest = _LINK.sub("", tail)
        if stated and here.kind == "volume" and stated[1].kind == "mass":
            written = replace(written, count=Count(stated[0], stated[0], stated[0]), unit=stated[1], edible=True)
        return written, rest, True
    size_word, rest = _take(rest, ("size",))
    measure, rest = _take(rest, ("container", "measure"))
    rest = _LINK.sub("", rest)
    written = replace(written, measure=measure, size=size_word)
    if stated and line_words().get(measure, None) and line_words()[measure].kind == "container":
        return replace(written, package=stated[0], package_unit=stated[1]), rest, True
    if stated and stated[1].kind == "mass" and count:  # "1 onion (about 150 g)", "2 fillets (6 oz each)"
        each = any(re.search(r"\beach\b", part) for part in inside)
        grams = Count(stated[0], stated[0], stated[0]).times(written.count.value if each else 1)
        return replace(written, count=grams, unit=stated[1], measure="", size=""), rest, True
    return written, rest, bool(measure)


def _package_size(text: str, system: str) -> tuple[float, Unit, str] | None:
    """Read "15 oz", "15-ounce", "about 400 g", "x 400 g": the number, its unit, and what follows."""
    text = re.sub(r"^x\s*", "", _SIZE.sub("", text))
    count, rest = read_count(text)
    if count is None or not 0 < count.value <= LARGEST_COUNT or not re.match(r"^\d|^\.", text):
        return None
    found, rest = _take_unit(re.sub(r"^-\s*", "", rest), system, alone=True)
    if found is None or found.name in ("cup", "tablespoon", "teaspoon", "pinch", "dash"):
        return None
    return count.value, found, re.sub(r"^-\s*", "", rest)


def _take_unit(text: str, system: str, alone: bool) -> tuple[Unit | None, str]:
    """Take a unit of mass or volume off the front; a one-letter unit only when a number stood before it."""
    match = _UNIT_WORD.match(text)
    if not match:
        return None, text
    word = match[1]
    if re.fullmatch(r"fl\.?\s?oz|fluid[ -]ounces?", word, re.IGNORECASE):
        return unit("fl oz", system), text[match.end() :]
    found = unit(word, system)
    if found is None or (not alone and found.name not in ("pinch", "dash", "smidgen", "cup")):
        return None, text
    return found, text[match.end() :]


def _take(text: str, kinds: tuple[str, ...]) -> tuple[str, str]:
    """Take a word of one of these kinds off the front, and return what it means."""
    match = re.match(r"^(extra[- ]large|[A-Za-z]+)\b[- ]*", text)
    for word in words(match[1]) if match else ():
        known = line_words().get(word)
        if match[1].lower().startswith("extra") and "size" in kinds and "large" in match[1].lower():
            return "extra large", text[match.end() :]
        if known and known.kind in kinds:
            return known.meaning, text[match.end() :]
    return "", text


def _skip_fullness(text: str) -> str:
    first, _, rest = text.partition(" ")
    return rest if first.lower() in _HOW_FULL else text


def _with_words(written: Written, name: tuple[str, ...], after: tuple[str, ...]) -> Written:
    """Add what single words say: sizes, measures behind the food ("garlic cloves"), peeled or with bones."""
    size = written.size
    for word in name:
        known = line_words().get(word)
        if known and known.kind == "size" and not size:
            size = known.meaning
    edible = written.edible or any(line_words()[word].kind == "edible" for word in name if word in line_words())
    boneless = {"boneless", "skinless", "fillet", "filet", "deveined"} & {*name, *after}
    said = " ".join((*name, *after))
    as_bought = bool(
        re.search(r"\bbone in\b|\bskin on\b|\bshell on\b|\bin (?:the |their )?shell\b|\bunshelled\b", said)
    )
    drained = bool({"drained", "rinsed"} & {*name, *after})
    return replace(written, size=size, edible=edible or bool(boneless), as_bought=as_bought, drained=drained)
