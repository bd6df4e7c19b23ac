"""What each line of a pasted page is: a heading, a button, a time, a step of the method, or perhaps an ingredient."""

import re
from collections.abc import Callable, Collection, Sequence
from dataclasses import dataclass, replace
from enum import Enum, auto

from kit.food.amounts import plain_characters, read_count
from kit.food.composition import Food
from kit.food.vocabulary import line_words, words
from kit.lines.each_serving import for_each_serving
from kit.lines.page_amounts import is_cell, starts_with_amount, unit_words
from kit.lines.page_clutter import is_clutter, is_nutrition, is_step, is_time, is_tool
from kit.lines.page_columns import in_one_column, without_pictures, without_quoting
from kit.lines.page_words import is_whole
from kit.lines.page_yield import Yield, is_label, read_yield
from kit.lines.parsed_line import LONGEST_LINE
from kit.lines.tidy import without_bullet

Named = Callable[[str], Food | None]  # the food that a written line names, if any
_BOX = re.compile(
    r"^\s*[\u25a1-\u25ff\u2610-\u2612\u2b1c\u2b1b\u26aa\u2713-\u2718\ufe0e\ufe0f\u2022\u2043\u00b7-]+\s*(?=\S)"
)
_LEADERS = re.compile(r"\s*(?:\.\s?){4,}\s*(?=[\d½¼¾⅓⅔])")  # from a food to its amount, at the other edge of the page
_NO_PART = re.compile(r"^\s*#{1,6}\s*[-.]*\s*$")  # ends a part: what follows belongs to none
_EXACT_PART = re.compile(r"^\s*#{1,6}\s*part:\s*(?P<part>\S.*?)\s*$", re.IGNORECASE)  # whatever its name looks like
_SERVING_SIZE = re.compile(r"^(?:serving|portion) size\W*$", re.IGNORECASE)
_NUMBERED = re.compile(r"^\s*\d{1,2}[.)]\s+\S")
_MARKED = re.compile(
    r"^#{1,6}\s*(?P<hashes>.+?)\s*#*$|^\*\*(?P<stars>[^*]+?):?\*\*\s*:?$|^={2,}\s*(?P<bars>[^=]+?)\s*={2,}$"
)
_FOR_THE = re.compile(r"^for\s+(?:the\s+)?(?P<part>[^\d:.]{2,40}?)(?:\s*\([^()]*\))?\s*:?$", re.IGNORECASE)
_COLON = re.compile(r"^(?P<part>(?!.*\d\s*(?:cups?|tsp|tbsp|g|oz|lb))[^:]{2,60}?)\s*:\s*$", re.IGNORECASE)
_INGREDIENTS_OF = re.compile(
    r"^(?P<before>[a-z' -]{3,30}\s)?ingredients?\s*(?:list)?\s*(?:for\s+(?:the\s+)?(?P<of>[^():]{2,40}?))?"
    r"\s*(?:\(.*\)|[-:].{0,60}|\d.{0,40}|you(?:'ll|\u2019ll| will)?\s+need.{0,20}|"
    r"(?:serves|makes|yields?).{0,30})?\s*:?$",
    re.IGNORECASE,
)


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
    LISTED = auto()  # known to be an ingredient
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
        Where it stands among the lines.
    indent : int
        How far it is indented. [characters]
    bulleted, numbered, marked, after_blank : bool
        Whether it has a bullet; a number; the marks of a heading; an empty line above.
    made : Yield or None
        How many the recipe makes, where the line says that.
    row : int
        Which line of the text it stands on, from 0.
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
    row: int = 0


def page_lines(text: str, listed: Collection[str] = ()) -> tuple[PageLine, ...]:
    """Return the lines of a pasted page, each with what it is; facts on one line that belong apart are lines each.

    Parameters
    ----------
    text : str
        The page.
    listed : collection of str
        Lines, with single spaces, that are known to be ingredients, whatever they look like.
    """
    found: list[PageLine] = []
    after_blank, above = True, ""
    for row, raw in in_one_column(enumerate(without_quoting(without_pictures(text).splitlines()))):
        whole = " ".join(raw.split())
        if whole in listed:
            found.append(PageLine(whole, Kind.LISTED, len(found), row=row))
            after_blank = False
            continue
        plain = plain_characters(raw.expandtabs(4) if "\t" not in raw.strip() else raw)
        above, plain = plain, _without_serving_size(above, plain)
        for cell in _cells(plain):
            line = _line(cell, len(found), row, after_blank)
            found.append(line)
            after_blank = line.kind is Kind.BLANK
    return _with_awaited_yields(found)


def _without_serving_size(above: str, raw: str) -> str:
    """Return a row without the cell that stands under the label "serving size", as in a table of times and yields."""
    labels, cells = (re.split(r"\s{3,}|\t", row.strip()) for row in (above, raw))
    sizes = [at for at, label in enumerate(labels) if _SERVING_SIZE.match(label)]
    if not sizes or len(labels) != len(cells) or any(map(starts_with_amount, labels)):
        return raw
    return "   ".join(cell for at, cell in enumerate(cells) if at not in sizes)


def _cells(raw: str) -> Sequence[str]:
    """Return a line cut where "Prep: 10 min | Serves 4" has several facts, or with the cells of a table joined."""
    if len(raw) > LONGEST_LINE:
        return [raw]
    parts = [part for part in re.split(r"\s+[|\u2022\u00b7\u22c5]\s+|\s*\|\s*", raw.strip().strip("|")) if part.strip()]
    if len(parts) > 1:
        facts = [_own_kind(part.strip()) for part in parts]
        if any(kind in (Kind.YIELD, Kind.CLUTTER, Kind.NUTRITION) for kind in facts):
            return parts
        return [_row(parts)] if any(map(is_cell, parts)) else [raw]
    if "\t" in raw.strip():
        parts = [part.strip() for part in raw.strip().split("\t") if part.strip()]
        if len(parts) == 2 and _own_kind(fact := ": ".join(parts)) in (Kind.YIELD, Kind.CLUTTER):
            return [fact]
        return [_row(parts)] if len(parts) > 1 else parts or [""]
    spaced = re.split(r"\s{3,}", raw.strip())
    if len(spaced) > 1:
        kinds = [_own_kind(part) for part in spaced]
        if any(kind in (Kind.YIELD, Kind.CLUTTER) for kind in kinds):
            return spaced
        if not is_cell(spaced[0]) and all(map(is_cell, spaced[1:])):
            return [_row(spaced)]
        if all(kind is Kind.FOOD for kind in kinds) and all(len(part.split()) > 1 for part in spaced):
            return spaced  # two columns of ingredients side by side
    return [raw]


def _row(cells: Sequence[str]) -> str:
    """Return the cells of a row as a written line: the amount first, a second weight in brackets."""
    amounts = [cell for cell in cells if is_cell(cell)]
    named = [cell for cell in cells if not is_cell(cell)]
    if not amounts or not named:
        return " ".join(cells)
    loose = len(amounts) > 1 and unit_words(amounts[1]) and read_count(amounts[1])[0] is None
    first = " ".join(amounts[:2]) if loose else amounts[0]
    others = amounts[2:] if loose else amounts[1:]
    return " ".join([first, _told(named), *(f"({other})" for other in others)])


def _told(cells: Sequence[str]) -> str:
    """Return the cells of a food in words, with a comma before what a column behind the food says: "onion, minced"."""
    told = ""
    for cell in cells:
        named = bool(told) and not unit_words(told) and any(word not in line_words() for word in words(told))
        told = f"{told}{', ' if named else ' ' if told else ''}{cell}"
    return told


def _line(raw: str, place: int, row: int, after_blank: bool) -> PageLine:
    if _NO_PART.match(raw):
        return PageLine("", Kind.PART, place, marked=True, row=row)
    exact = _EXACT_PART.match(raw)
    if exact:
        return PageLine(exact["part"], Kind.PART, place, marked=True, row=row)
    indent = len(raw) - len(raw.lstrip())
    boxed = _BOX.match(raw)
    marked = _MARKED.match(raw.strip())
    plain = next(filter(None, marked.groups())) if marked else raw[boxed.end() :] if boxed else raw
    plain = re.sub(r"\*\*|(?<!_)__(?!_)", "", plain)
    text = re.sub(r"\s+", " ", _LEADERS.sub(": ", without_bullet(plain))).strip(" *_") if not marked else plain.strip()
    numbered = _NUMBERED.match(raw) is not None
    bulleted = not marked and not numbered and (boxed is not None or without_bullet(plain) != plain.strip())
    made = read_yield(text) if len(text) <= LONGEST_LINE else None
    kind = _own_kind(text, numbered=numbered, marked=marked is not None)
    if kind is Kind.INGREDIENTS and made is None and "(" in text:  # "Ingredients (6 servings)"
        made = read_yield(text[text.index("(") + 1 :].rstrip(") "))
    return PageLine(text, kind, place, indent, bulleted, numbered, marked is not None, after_blank, made, row)


def _own_kind(text: str, *, numbered: bool = False, marked: bool = False) -> Kind:
    """Return what a line is by its own words."""
    if not re.search(r"\w", text):
        return Kind.BLANK
    if len(text) > LONGEST_LINE:
        return Kind.STEP
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
    if is_label(text) or _SERVING_SIZE.match(text):
        return Kind.CLUTTER
    if is_whole("aside", text) and not _reads_on(text):
        return Kind.ASIDE
    if is_nutrition(text):
        return Kind.NUTRITION
    if is_whole("site", text) and not marked:
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
    >>> part_of(PageLine("For the dressing:", Kind.PART)), part_of(PageLine("Soup ingredients", Kind.INGREDIENTS))
    ('dressing', 'soup')
    """
    text = line.text.strip(" :*#_")
    if line.kind is Kind.INGREDIENTS:
        of = _ingredients_of(text)
        named = ((of["of"] or of["before"] or "") if of else "").strip()
        text = "" if re.match(r"(?:the|all|main|recipe|your|our|about)?$|\d", named, re.IGNORECASE) else named
    if for_each_serving("", text):  # kept, since it makes every amount below that of one serving
        return text.lower()
    return re.sub(r"^for\s+(?:the\s+)?", "", without_bracket(text), flags=re.IGNORECASE).strip().lower()


def without_bracket(text: str) -> str:
    """Return a heading without the remark in brackets behind it: "Toppings (optional)"."""
    return re.sub(r"\s*\([^()]*\)$", "", text)


def _with_awaited_yields(lines: Sequence[PageLine]) -> tuple[PageLine, ...]:
    """Return the lines with a yield on each that stands under its label: "Servings" above "6"."""
    found = list(lines)
    for place, line in enumerate(lines):
        size = _SERVING_SIZE.match(line.text)
        if line.kind is not Kind.CLUTTER or not (is_label(line.text) or size):
            continue
        below = next((other for other in lines[place + 1 : place + 3] if other.kind is not Kind.BLANK), None)
        if below and size and below.kind in (Kind.FOOD, Kind.CELL, Kind.WORDS) and len(below.text.split()) <= 10:
            found[below.place] = replace(below, kind=Kind.CLUTTER)
            continue
        made = read_yield(f"{line.text.strip(' :')}: {below.text}") if below else None
        if below and made and len(below.text.split()) <= 10:
            found[below.place] = replace(below, kind=Kind.YIELD, made=made)
    return tuple(found)
