"""How much an ingredient line says: count, unit or measure, package size, length; what is left is the food's name."""

import re
from collections.abc import Sequence
from dataclasses import replace

from kit.food.amounts import ONE, Count, read_count
from kit.food.measures import Unit, unit
from kit.food.vocabulary import line_words, words
from kit.lines.nearest_measure import Written

LARGEST_COUNT = 100_000
_ABOUT = re.compile(r"^(?:about|approx(?:imately)?\.?|around|roughly|net|x)?\s*", re.IGNORECASE)
_UNIT_WORD = re.compile(r"^-?\s*(fl\.?\s?oz|fluid[ -]ounces?|[A-Za-z]+)\b\.?\s*", re.IGNORECASE)
_FLUID_OUNCE = re.compile(r"fl\.?\s?oz|fluid[ -]ounces?", re.IGNORECASE)
_LENGTH = re.compile(
    r"^-?\s*(?P<inch>inch(?:es)?\b|in\b\.?|\"|”)?(?P<cm>cm\b|centimet(?:er|re)s?\b)?[ -]*", re.IGNORECASE
)
_ACROSS = re.compile(r"^(?:square|round|diameter|long|wide|thick)\b\s*", re.IGNORECASE)
_LINK = re.compile(r"^(?:each\s+(?:of\s+)?|of\s+(?:an?\s+|the\s+)?|x\s+|an?\s+(?=[A-Za-z]{3}))", re.IGNORECASE)
_MORE = re.compile(r"^(?P<sign>\+|plus|and|&|minus|less)?\s*(?=[\d.])", re.IGNORECASE)
_SAME_AGAIN = re.compile(r"^(?:/|or\b)\s*(?=[\d.])", re.IGNORECASE)
_OTHER_SIZE = re.compile(r"^or\s+(?:[\d./]+|an?)\s+(?:extra[- ]large|small|medium|large|big)\s+", re.IGNORECASE)
_DRAINED_WEIGHT = re.compile(r"\bdrained(?:\s+weight)?:?\s*|\s+drained\b", re.IGNORECASE)
_ADDED = re.compile(r",?\s*(?P<sign>\+|\bplus|\bminus|\bless)\s+(?=[\d.])", re.IGNORECASE)
_TAKEN_OFF = ("minus", "less")
_NO_FOOD_FOLLOWS = re.compile(r"\s*(?:$|[,;.(]|for\b|to\b|more\b)", re.IGNORECASE)
_HOW_FULL = {  # a heaped spoon holds a quarter more than a level one, common practice
    **dict.fromkeys(("heaping", "heaped"), 1.25),
    **dict.fromkeys(("rounded", "generous"), 1.1),
    "scant": 0.9,
    **dict.fromkeys(("level", "good", "about", "approximately", "very", "big", "fat"), 1.0),
}
_TO_OF_SIZES = re.compile(r"^(\d+)-? to (\d+)", re.IGNORECASE)  # "15- to 16-oz"
_COVERED = ("ear", "pod")  # weighed with its cob and husk, or its shell
_SPOONS_AND_CUPS = frozenset(("cup", "tablespoon", "teaspoon", "pinch", "dash"))
_POURED_INTO = ("glass", "mug")
_HYPHEN = re.compile(r"(\d)-(?=(?:oz|ounce|g|gram|lb|pound)s?\b)", re.IGNORECASE)
_CM_PER_INCH = 2.54
_ML_PER_FLUID_OUNCE, _NEARLY = 29.5735, 0.02


def quantity(count: Count | None, rest: str, inside: Sequence[str], system: str) -> tuple[Written, str, bool]:
    """Read what is counted, behind the count of an ingredient line.

    Parameters
    ----------
    count : Count or None
        The count, None when the line does not start with one.
    rest : str
        The line behind it, without parentheses.
    inside : sequence of str
        What stood in parentheses.
    system : {"us", "metric"}
        Whose cups and spoons.

    Returns
    -------
    written : Written
        The amount as far as it is told here.
    name : str
        What is left for the food's name.
    told : bool
        Whether a measure was told even where no number stood ("pinch of salt").
    """
    written = Written(count=count or ONE)
    rest = _LINK.sub("", rest)
    stated = next((size for part in inside if (size := _size(_DRAINED_WEIGHT.sub("", part), system))), None)
    length, rest, count_is_length = _length(count, rest, inside)
    written = replace(written, length=length, count=ONE if count_is_length else written.count)
    size = _size(rest, system) if count else None
    if size:
        value, of, rest = size
        measure, rest = take_word(rest, ("container", "measure"))
        if of.kind == "mass" and not _is_container(measure):  # "1 3-lb chicken", "4 6-ounce fillets"
            return replace(written, count=written.count.times(value), unit=of), _LINK.sub("", rest), True
        return replace(written, package=value, package_unit=of, measure=measure), _LINK.sub("", rest), True
    rest, full = _without_fullness(rest)
    unit_said, behind = _take_unit(rest, system, counted=count is not None)
    if unit_said is not None:
        if full != 1.0 and unit_said.name in _SPOONS_AND_CUPS:
            written = replace(written, count=written.count.times(full))
        return _in_units(written, unit_said, behind, stated, system)
    size_word, rest = take_word(rest, ("size",))
    measure, rest = take_word(rest, ("container", "measure"))
    known = line_words().get(measure)
    if known and known.kind == "container":
        written = replace(written, measure=measure, package_size=size_word)
    else:
        written = replace(written, measure=measure, size=size_word)
    held = _size(rest, system) if known and known.kind == "container" and not stated else None
    if held:  # "1 can 14.5 oz diced tomatoes"
        return replace(written, package=held[0], package_unit=held[1]), _LINK.sub("", held[2]), True
    if size_word:
        rest = _OTHER_SIZE.sub("", rest)
    return _counted(written, _LINK.sub("", rest), stated, inside, counted=count is not None)


def _is_container(measure: str) -> bool:
    known = line_words().get(measure)
    return known is not None and known.kind == "container"


def _in_units(
    written: Written, of: Unit, rest: str, stated: tuple[float, Unit, str] | None, system: str
) -> tuple[Written, str, bool]:
    """Finish an amount in a unit: "1 lb 4 oz", "2 tbsp + 1 tsp", "100 g/3 oz", "400 g tin", "1 cup (130 g)"."""
    written = replace(written, unit=of)
    rest = _LINK.sub("", rest)
    same = _SAME_AGAIN.match(rest)
    if same:
        again, tail = read_count(rest[same.end() :])
        unit_again, tail = _take_unit(tail, system, counted=True)
        rest = _LINK.sub("", tail) if again and unit_again else rest
    more = _MORE.match(rest)
    if more:
        extra, tail = read_count(rest[more.end() :])
        extra_unit, tail = _take_unit(tail, system, counted=True)
        if extra and extra_unit and extra_unit.kind == of.kind:
            share = _signed(more["sign"]) * extra_unit.size / of.size
            written = replace(written, count=written.count.plus(extra.times(share)))
            rest = _LINK.sub("", tail)
    container, tail = take_word(rest, ("container",))
    if container and of.name not in _SPOONS_AND_CUPS:
        inside = replace(written, count=ONE, package=written.count.value, package_unit=of, unit=None, measure=container)
        return inside, _LINK.sub("", tail), True
    if stated and of.kind == "volume" and stated[1].kind == "mass" and not _is_fluid(written, stated):
        written = replace(written, count=Count(stated[0], stated[0], stated[0]), unit=stated[1], edible=True)
    return written, rest, True


def _is_fluid(written: Written, stated: tuple[float, Unit, str]) -> bool:
    """Whether ounces in brackets are those of the volume itself: "1 cup (8 oz) milk" says fluid ounces."""
    value, of, _ = stated
    volume = written.count.value * written.unit.size if written.unit else 0.0
    return of.name == "ounce" and abs(volume / _ML_PER_FLUID_OUNCE - value) < _NEARLY * value


def _counted(
    written: Written, rest: str, stated: tuple[float, Unit, str] | None, inside: Sequence[str], counted: bool
) -> tuple[Written, str, bool]:
    """Finish a counted amount: "1 can (15 oz)", "2 fillets (6 oz each)", "1 onion (about 150 g)"."""
    known = line_words().get(written.measure)
    if stated and written.measure in _POURED_INTO and stated[1].name == "ounce":  # "1 glass (8 oz)"
        fluid = unit("fl oz", "us")
        return replace(written, count=written.count.times(stated[0]), unit=fluid, measure=""), rest, True
    drained = any(re.search(r"\bdrained\b.*\d|\d.*\bdrained\b", part, re.IGNORECASE) for part in inside)
    if stated and known and known.kind == "container" and not drained:
        return replace(written, package=stated[0], package_unit=stated[1]), rest, True
    if stated and stated[1].kind == "mass" and counted:
        each = drained or any(re.search(r"\beach\b", part) for part in inside)
        grams = Count(stated[0], stated[0], stated[0]).times(written.count.value if each else 1)
        measure = written.measure if drained or written.measure in _COVERED else ""
        return (
            replace(written, count=grams, unit=stated[1], measure=measure, size="", length=0.0, edible=drained),
            rest,
            True,
        )
    return written, rest, bool(written.measure)


def _length(count: Count | None, rest: str, inside: Sequence[str]) -> tuple[float, str, bool]:
    """Return a length in inches, what follows it, and whether it was the count ("2-inch piece of ginger")."""
    found, behind = _inches(count, rest)
    if found:
        return found, behind, True
    second, behind = read_count(rest) if count else (None, rest)
    found, behind = _inches(second, behind)
    if found:
        return found, behind, False
    for part in inside:
        found, _ = _inches(*read_count(_ABOUT.sub("", part)))
        if found:
            return found, rest, False
    return 0.0, rest, False


def _inches(count: Count | None, rest: str) -> tuple[float, str]:
    match = _LENGTH.match(rest)
    if count is None or match is None or not (match["inch"] or match["cm"]) or not 0 < count.value <= LARGEST_COUNT:
        return 0.0, rest
    return count.value / (_CM_PER_INCH if match["cm"] else 1.0), _ACROSS.sub("", rest[match.end() :])


def added(text: str, written: Written, system: str) -> tuple[str, Written]:
    """Take "plus 2 tbsp" or "minus 2 tbsp" off a text and reckon it in; the text stays when the two do not add up."""
    found = _ADDED.search(text)
    if not found or written.unit is None:
        return text, written
    extra, tail = read_count(text[found.end() :])
    of, tail = _take_unit(tail, system, counted=True)
    if extra is None or of is None or of.kind != written.unit.kind or not _NO_FOOD_FOLLOWS.match(tail):
        return text, written
    total = written.count.plus(extra.times(_signed(found["sign"]) * of.size / written.unit.size))
    return f"{text[: found.start()]}, {tail}", replace(written, count=total)


def _signed(sign: str | None) -> int:
    return -1 if sign and sign.lower() in _TAKEN_OFF else 1


def volume_in(remarks: Sequence[str], system: str) -> Written | None:
    """Return the volume that brackets give of what is counted: "1 small cabbage, shredded (about 6 cups)".

    Examples
    --------
    >>> found = volume_in(["about 6 cups shredded"], "us")
    >>> found.count.value, found.unit.name, found.cut
    (6.0, 'cup', 'shredded')
    """
    for remark in remarks:
        count, rest = read_count(_ABOUT.sub("", remark))
        of, rest = _take_unit(rest, system, counted=True) if count else (None, "")
        if count and of and of.name == "cup":  # how many spoons a clove makes says little of the clove
            said = words(rest)
            known = [line_words().get(word) for word in said]
            cut = next((found.meaning for found in known if found and found.kind == "cut"), "")
            cut = cut or (said[0] if len(said) == 1 and known[0] is None else "")  # "3 cups noodles", of zucchini
            return Written(count=count, unit=of, cut=cut)
    return None


def is_amount(text: str) -> bool:
    """Whether a text is an amount and nothing else: "about 1 pound", "8 oz each"."""
    size = _size(re.sub(r"\s+(?:each|total|in all)$", "", text), "us") if re.search(r"\d", text[:12]) else None
    return size is not None and not size[2]


def _size(text: str, system: str) -> tuple[float, Unit, str] | None:
    """Read "15 oz", "15-ounce", "about 400 g", "x 400 g": the number, its unit, and what follows."""
    text = _HYPHEN.sub(r"\1 ", _TO_OF_SIZES.sub(r"\1 to \2", _ABOUT.sub("", text)))
    if not text[:1].isdigit() and not text.startswith("."):
        return None
    count, rest = read_count(text)
    if count is None or not 0 < count.value <= LARGEST_COUNT:
        return None
    of, rest = _take_unit(rest.lstrip("- "), system, counted=True)
    if of is None or of.name in _SPOONS_AND_CUPS:
        return None
    return count.value, of, rest.lstrip("- ")


def _take_unit(text: str, system: str, counted: bool) -> tuple[Unit | None, str]:
    """Take a unit of mass or volume off the front; without a count before it only a pinch, a cup and the like."""
    match = _UNIT_WORD.match(text)
    if not match:
        return None, text
    word = match[1]
    found = unit("fl oz", system) if _FLUID_OUNCE.fullmatch(word) else unit(word, system)
    if found is None or (not counted and (found.name not in _UNCOUNTED or len(word) < 3)):
        return None, text
    return found, text[match.end() :]


_UNCOUNTED = frozenset(
    ("pinch", "dash", "smidgen", "drop", "drizzle", "squeeze", "splash", "glug", "dollop", "sprinkle", "cup")
)


def take_word(text: str, kinds: tuple[str, ...]) -> tuple[str, str]:
    """Take a word of one of these kinds off the front, and return what it means."""
    match = re.match(r"^(extra[- ]large|[A-Za-z]+)\b[- ]*", text, re.IGNORECASE)
    if not match:
        return "", text
    if match[1].lower().startswith("extra") and len(match[1]) > 5:
        return ("extra large", text[match.end() :]) if "size" in kinds else ("", text)
    for word in words(match[1]):
        known = line_words().get(word)
        if known and known.kind in kinds:
            return known.meaning, text[match.end() :]
    return "", text


def _without_fullness(rest: str, full: float = 1.0) -> tuple[str, float]:
    """Return a text without the words that say how full a measure is, and the share of a level one that they mean."""
    first, _, behind = rest.partition(" ")
    share = _HOW_FULL.get(first.lower()) if behind else None
    return (rest, full) if share is None else _without_fullness(behind, full * share)
