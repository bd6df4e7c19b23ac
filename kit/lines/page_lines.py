"""What each line of a pasted page is: a heading, a button, a time, a step of the method, or perhaps an ingredient."""

import re
from collections.abc import Sequence
from dataclasses import dataclass
from enum import Enum, auto

from kit.food.amounts import plain_characters, read_count
from kit.food.measures import unit
from kit.food.vocabulary import line_words, singular
from kit.lines.page_words import is_whole, start
from kit.lines.page_yield import Yield, is_label, read_yield
from kit.lines.parsed_line import without_bullet

_BOX = re.compile(
    r"^\s*[\u25a1-\u25ff\u2610-\u2612\u2b1c\u2b1b\u26aa\u2713-\u2718\ufe0e\ufe0f\u2022\u2043\u00b7-]+\s*(?=\S)"
)
_NUMBERED = re.compile(r"^\s*\d{1,2}[.)]\s+\S")
_MARKED = re.compile(
    r"^#{1,6}\s*(?P<hashes>.+?)\s*#*$|^\*\*(?P<stars>[^*]+?):?\*\*\s*:?$|^={2,}\s*(?P<bars>[^=]+?)\s*={2,}$"
)
_URL = re.compile(r"^\W*(?:https?://|www\.)\S+|\.(?:com|org|gov|net|edu|html?)(?:/\S*)?\s*$", re.IGNORECASE)
_MONTH = r"(?:jan|feb|mar|apr|may|june?|july?|aug|sept?|oct|nov|dec)[a-z]*\.?"
_DATE = re.compile(
    rf"^\W*(?:(?:mon|tue|wed|thu|fri|sat|sun)[a-z]*,?\s+)?(?:{_MONTH}\s+\d{{1,2}}(?:,?\s+\d{{4}})?|\d{{1,2}}\s+{_MONTH}(?:\s+\d{{4}})?|"
    r"\d{1,4}[/.-]\d{1,2}[/.-]\d{2,4})(?:[,\s]+(?:at\s+)?\d{1,2}:\d{2}.*)?\W*$",
    re.IGNORECASE,
)
_STAMP = re.compile(r"^\d{1,2}/\d{1,2}/\d{2,4},?\s+\d{1,2}:\d{2}", re.IGNORECASE)
_RATING = re.compile(
    r"^\W*(?:[\u2605\u2606\u2b50]+.*|\d(?:\.\d+)?\s*(?:/\s*5|out of 5|stars?|from\s+[\d,]+\s+votes?|\([\d,]+\)).*|"
    r"\(?[\d,.]+k?\)?\s*(?:reviews?|ratings?|votes?|comments?|photos?|saves?|shares?|likes?|stars?|views?|questions?)\b.*|\d\.\d)\W*$",
    re.IGNORECASE,
)
_PAGE = re.compile(
    r"^\W*(?:page\s+\d{1,3}\s*/|(?:page\s+)?\d{1,3}\s+of)\s*\d{1,3}\W*$|^\W*(?:page|p\.)\s*\d{1,3}\W*$", re.IGNORECASE
)
_SCALES = re.compile(r"^\W*(?:(?:[\d./]+|1/2|half|double)\s*x\b\W*)+$", re.IGNORECASE)
_DURATION = re.compile(
    r"^\W*(?:\d[\d./ ]*(?:(?:-|to)\s*\d+\s*)?|an?\s+)(?:hours?|hrs?|h|minutes?|mins?|m|days?|seconds?|secs?)\b\.?"
    r"(?:[\s,&+]*(?:and\s+)?(?:\d[\d./ ]*)?(?:hours?|hrs?|minutes?|mins?|m|days?))*\W*(?:plus\b.*|or less)?$",
    re.IGNORECASE,
)
_NUTRIENT = re.compile(
    r"^\W*(?:calories|energy|kcal|total fat|fat|saturated fat|sat\.? fat|trans fat|(?:mono|poly)unsaturated fat|cholesterol|sodium|"
    r"(?:total )?carb(?:ohydrate)?s?|(?:dietary )?fib(?:er|re)|(?:total |added |includes )?sugars?|protein|potassium|calcium|iron|"
    r"magnesium|phosphorus|vitamin [a-z]\d*|% daily value.*|calories from fat)\b[\s:.]*(?:<|less than)?\s*[\d.,]+\s*"
    r"(?:g|mg|mcg|\u00b5g|kcal|kj|cal|calories|grams?|milligrams?|iu|%)?\b(?P<more>.*)$",
    re.IGNORECASE,
)
_PER_SERVING = re.compile(
    r"^\W*(?:per serving|each serving|nutrition per|amount per|calories per|% daily)\b", re.IGNORECASE
)
_FOR_THE = re.compile(r"^for\s+(?:the\s+)?(?P<part>[^\d:.]{2,40}?)(?:\s*\([^()]*\))?\s*:?$", re.IGNORECASE)
_COLON = re.compile(r"^(?P<part>(?!.*\d\s*(?:cups?|tsp|tbsp|g|oz|lb))[^:]{2,60}?)\s*:\s*$", re.IGNORECASE)
_INGREDIENTS_OF = re.compile(
    r"^(?P<before>[a-z' -]{3,30}\s)?ingredients?\s*(?:list)?\s*(?:for\s+(?:the\s+)?(?P<of>[^():]{2,40}?))?"
    r"\s*(?:\(.*\)|[-:].{0,60}|\d.{0,40}|you(?:'ll|\u2019ll| will)?\s+need.{0,20}|serves.{0,20}|makes.{0,30}|yields?.{0,20})?\s*:?$",
    re.IGNORECASE,
)
_SENTENCE_END = re.compile(r"[.!?][\"')\u201d]*$")
_STEP_WORDS = re.compile(
    r"\b(?:the|until|minutes?|mins|over|into|degrees|oven|together|well|aside|hours?|then|evenly|each|it|them|your)\b|\d+\s*\u00b0",
    re.IGNORECASE,
)
_TOOL_SHAPE = re.compile(r"\s*(?:,.*|\([^()]*\)[\s.]*)$")


class Kind(Enum):
    """What a line is."""

    BLANK = auto()
    INGREDIENTS = auto()  # the heading of the ingredients
    METHOD = auto()  # the heading of the method
    ASIDE = auto()  # the heading of anything else: notes, equipment, nutrition
    YIELD = auto()
    CLUTTER = auto()  # buttons, times, ratings, addresses
    NUTRITION = auto()
    PART = auto()  # "For the dressing:"
    STEP = auto()  # a sentence of the method or of the story above
    CELL = auto()  # an amount, and perhaps a measure, whose food stands on the next line
    TOOL = auto()  # "8 skewers"
    FOOD = auto()  # begins with an amount
    WORDS = auto()  # anything else


@dataclass(frozen=True, slots=True)
class PageLine:
    """One line of a pasted page.

    Attributes
    ----------
    text : str
        What it says, without the bullet, box or number in front and with single spaces.
    kind : Kind
        What it is, by its own words.
    place : int
        Where it stands in the page.
    indent : int
        How far it is indented. [characters]
    bulleted, numbered, marked, after_blank : bool
        Whether it has a bullet; a number; the marks of a heading; an empty line above.
    made : Yield or None
        How many the recipe makes, where the line says that.
    """

    text: str
    kind: Kind
    place: int = 0
    indent: int = 0
    bulleted: bool = False
    numbered: bool = False
    marked: bool = False
    after_blank: bool = False
    made: Yield | None = None


def page_lines(text: str) -> tuple[PageLine, ...]:
    """Return the lines of a pasted page, each with what it is; cells of one line that belong apart are lines of their own."""
    found: list[PageLine] = []
    after_blank = True
    for raw in text.splitlines():
        plain = plain_characters(raw.expandtabs(4) if "\t" not in raw.strip() else raw)
        cells = _cells(plain)
        for cell in cells:
            line = _line(cell, len(found), after_blank)
            found.append(line)
            after_blank = line.kind is Kind.BLANK
    return _with_awaited_yields(found)


def _cells(raw: str) -> Sequence[str]:
    """Return a line cut where "Prep: 10 min | Serves 4" has several facts, or with the cells of a table joined."""
    parts = [part for part in re.split(r"\s+[|\u2022\u00b7]\s+|\s*\|\s*", raw.strip().strip("|")) if part.strip()]
    if len(parts) > 1:
        facts = [_own_kind(part.strip()) for part in parts]
        if any(kind in (Kind.YIELD, Kind.CLUTTER, Kind.NUTRITION) for kind in facts):
            return parts
        return [_row(parts)]
    if "\t" in raw.strip():
        parts = [part.strip() for part in raw.strip().split("\t") if part.strip()]
        return [_row(parts)] if len(parts) > 1 else parts or [""]
    spaced = re.split(r"\s{3,}", raw.strip())
    if len(spaced) > 1:
        kinds = [_own_kind(part) for part in spaced]
        if any(kind in (Kind.YIELD, Kind.CLUTTER) for kind in kinds):
            return spaced
        if all(kind is Kind.FOOD for kind in kinds) and all(len(part.split()) > 1 for part in spaced):
            return spaced  # two columns of ingredients side by side
    return [raw]


def _row(cells: Sequence[str]) -> str:
    """Return the cells of a row as a written line: the amount first, a second weight in brackets."""
    amounts = [cell for cell in cells if is_cell(cell)]
    words = [cell for cell in cells if not is_cell(cell)]
    if not amounts or not words:
        return " ".join(cells)
    loose = len(amounts) > 1 and unit_words(amounts[1]) and read_count(amounts[1])[0] is None
    first = " ".join(amounts[:2]) if loose else amounts[0]
    others = amounts[2:] if loose else amounts[1:]
    return " ".join([first, *words, *(f"({other})" for other in others)])


def _line(raw: str, place: int, after_blank: bool) -> PageLine:
    indent = len(raw) - len(raw.lstrip())
    boxed = _BOX.match(raw)
    marked = _MARKED.match(raw.strip())
    plain = next(filter(None, marked.groups())) if marked else raw[boxed.end() :] if boxed else raw
    text = re.sub(r"\s+", " ", without_bullet(plain)).strip(" *_") if not marked else plain.strip()
    numbered = _NUMBERED.match(raw) is not None
    bulleted = not marked and not numbered and (boxed is not None or without_bullet(plain) != plain.strip())
    made = read_yield(text)
    kind = _own_kind(text, numbered=numbered, marked=marked is not None)
    return PageLine(text, kind, place, indent, bulleted, numbered, marked is not None, after_blank, made)


def _own_kind(text: str, *, numbered: bool = False, marked: bool = False) -> Kind:
    """Return what a line is by its own words."""
    if not re.search(r"\w", text):
        return Kind.BLANK
    bare = text.strip(" *_#:")
    if is_whole("ingredients", text) or (len(text) < 80 and _ingredients_of(text)):
        return Kind.INGREDIENTS
    if is_whole("method", text) or re.match(r"^step\s+\d+\W*$", bare, re.IGNORECASE):
        return Kind.METHOD
    if is_time(text) or is_clutter(text):
        return Kind.CLUTTER
    made = read_yield(text)
    if made and made.sure > 1:
        return Kind.YIELD
    if is_label(text):
        return Kind.CLUTTER
    if is_whole("aside", text) and not _reads_on(text):
        return Kind.ASIDE
    if _is_nutrition(text):
        return Kind.NUTRITION
    if is_whole("site", text):
        return Kind.CLUTTER
    if marked or _FOR_THE.match(bare) or (_COLON.match(text) and read_count(text)[0] is None):
        return Kind.PART
    if is_cell(text):
        return Kind.CELL
    if is_tool(text):
        return Kind.TOOL
    if is_step(text, numbered=numbered):
        return Kind.STEP
    return Kind.FOOD if starts_with_amount(text) else Kind.WORDS


def _reads_on(text: str) -> bool:
    return len(text.split()) > 9 or read_count(text)[0] is not None


def _ingredients_of(text: str) -> re.Match[str] | None:
    return _INGREDIENTS_OF.match(text.strip(" *_#"))


def part_of(line: PageLine) -> str:
    """Return the part of a recipe that a heading names, in lower case and without "For the"; "" for none.

    Examples
    --------
    >>> part_of(PageLine("For the dressing:", Kind.PART)), part_of(PageLine("Ingredients for the soup", Kind.INGREDIENTS))
    ('dressing', 'soup')
    """
    text = line.text.strip(" :*#_")
    if line.kind is Kind.INGREDIENTS:
        of = _ingredients_of(text)
        named = ((of["of"] or of["before"] or "") if of else "").strip()
        text = "" if re.match(r"(?:the|all|main|recipe|your|our|about)?$|\d", named, re.IGNORECASE) else named
    text = re.sub(r"\s*\([^()]*\)$", "", text)
    return re.sub(r"^for\s+(?:the\s+)?", "", text, flags=re.IGNORECASE).strip().lower()


def starts_with_amount(text: str) -> bool:
    """Whether a line begins with an amount; "3-bean" and "9-inch" begin with none."""
    if re.match(
        r"\d+-(?!(?:ounce|oz|pound|lb|gram|g|ml|cup|inch|quart|pint|liter|litre|\d))[a-z]", text, re.IGNORECASE
    ):
        return False
    count, rest = read_count(
        re.sub(r"^(?:about|approximately|approx\.?|~|roughly|scant|heaping|generous)\s+", "", text, flags=re.IGNORECASE)
    )
    return count is not None and bool(rest.strip())


def unit_words(text: str) -> bool:
    """Whether a line is only a unit, a measure or a size: "cups", "large", "fl oz"."""
    parts = text.lower().strip(" .()").split()
    if not 1 <= len(parts) <= 3:
        return False
    if unit(" ".join(parts)):
        return True
    kinds = {"measure", "size", "container"}
    return all(
        unit(word) or ((known := line_words().get(singular(word.strip(".")))) and known.kind in kinds) for word in parts
    )


def is_cell(text: str) -> bool:
    """Whether a line is an amount, and perhaps its measure, without a food: "1 1/2", "2 cups", "1 (15 oz) can"."""
    count, rest = read_count(re.sub(r"\([^()]*\)", " ", text).strip())
    return count is not None and (not rest.strip(" .()") or unit_words(rest))


def is_tool(text: str) -> bool:
    """Whether a line names a thing of the kitchen and no food: "8 wooden skewers", "parchment paper"."""
    _, rest = read_count(text)
    words = [word.strip(".,") for word in _TOOL_SHAPE.sub("", rest).lower().split()]
    while words and (
        start("tool adjective", words[0]) == words[0] or re.match(r"[\dx/-]+(?:-?(?:inch|quart|cup|by))?", words[0])
    ):
        words = words[1:]
    if not words or len(words) > 4:
        return False
    name = " ".join([*words[:-1], singular(words[-1])])
    return is_whole("tool", name) or is_whole("tool", " ".join(words))


def is_step(text: str, *, numbered: bool = False) -> bool:
    """Whether a line is a sentence: of the method, or of what is told around a recipe."""
    many = len(text.split())
    ends = _SENTENCE_END.search(text) is not None
    if starts_with_amount(text):
        return many > 25 or (ends and many > 14)
    if many >= 3 and start("verb", text):
        return many > 5 or ends or numbered or _STEP_WORDS.search(text) is not None
    return (ends and many > 7) or many > 22 or (numbered and ends and many > 4)


def is_time(text: str) -> bool:
    """Whether a line tells a time: "Prep Time: 10 minutes", "Total", "35 mins"."""
    bare = text.strip(" *_#:")
    word = start("time", bare)
    if word:
        rest = bare[len(word) :].strip()
        timed = re.sub(r"^(?:time|prep|minutes|mins)\b", "", rest, flags=re.IGNORECASE).strip(" :-.")
        if not timed and (rest or text.strip().endswith(":")):
            return True
        if _DURATION.match(timed) or re.match(r"^(?:about\s+)?[\d:./ -]+\s*(?:h|m)", timed, re.IGNORECASE):
            return True
        if rest.lower().startswith("time") and len(rest.split()) <= 12:
            return True
    return _DURATION.match(bare) is not None


def is_clutter(text: str) -> bool:
    """Whether a line is an address, a date, a rating, a page number, a scale or "Cuisine: ..."."""
    if any(pattern.search(text) for pattern in (_URL, _DATE, _STAMP, _RATING, _PAGE, _SCALES)):
        return True
    label, colon, rest = text.partition(":")
    return bool(colon) and len(text) < 120 and is_whole("label", label) and (bool(rest.strip()) or len(label) > 3)


def _is_nutrition(text: str) -> bool:
    if _PER_SERVING.match(text) and not starts_with_amount(text):
        return True
    match = _NUTRIENT.match(text)
    if match is None:
        return False
    more = match["more"].strip(" |,;*")
    return not more or bool(re.match(r"^[\d.<%]", more)) or _NUTRIENT.match(more) is not None or "%" in more


def _with_awaited_yields(lines: Sequence[PageLine]) -> tuple[PageLine, ...]:
    """Return the lines with a yield on each that stands under its label: "Servings" above "6"."""
    found = list(lines)
    for place, line in enumerate(lines):
        if line.kind is not Kind.CLUTTER or not is_label(line.text):
            continue
        below = next((other for other in lines[place + 1 : place + 3] if other.kind is not Kind.BLANK), None)
        made = read_yield(f"{line.text.strip(' :')}: {below.text}") if below else None
        if below and made and len(below.text.split()) <= 10:
            found[below.place] = PageLine(below.text, Kind.YIELD, below.place, made=made)
    return tuple(found)
