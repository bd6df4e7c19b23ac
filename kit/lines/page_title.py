"""The title of a pasted page: which of its lines names the dish."""

import re
from collections import Counter
from collections.abc import Sequence
from functools import cache

from kit.food.composition import bundled_foods
from kit.food.vocabulary import words
from kit.lines.choosing import kind_of
from kit.lines.page_amounts import starts_with_amount
from kit.lines.page_lines import Kind, Named, PageLine
from kit.lines.page_words import is_whole, page_words, start

_NAMED = re.compile(
    r"^(?:title|recipe(?: name| title)?|(?:(?:today's|tonight's|featured|our|new|this (?:week|month|day)'?s?) )?recipe"
    r"(?: of the (?:day|week|month))?|subject|name|dish)\s*:\s*(?P<title>[^\s_].*)$",
    re.IGNORECASE,
)
_REPLY = re.compile(r"^(?:re|fwd?|aw|wg)\s*:\s*", re.IGNORECASE)
_CRUMBS = re.compile(r"\s+[\u00bb\u203a>/]\s+")
_GREETING = re.compile(
    r"^(?:hi|hello|hey|dear|good morning|thanks|thank you|love|cheers|best|see you|yours|regards)\b", re.IGNORECASE
)
_JOINING = re.compile(r"^(?:with|and|in|on|over|for)\s", re.IGNORECASE)
_LONG_TITLE = re.compile(r"\s+[-\u2013\u2014]\s+|:\s+")
_COLLECTION = re.compile(r"\b(?:recipes|dinners|lunches|meals|breakfasts|suppers|dishes|cookbook)$", re.IGNORECASE)
_DIET_MARKS = re.compile(r"(?:\s+[\[(]?(?:V|VG|VE|GF|DF|NF|EF|SF|LF)\b[\])]?,?)+$")
_NUTRIENT = re.compile(r"^[a-z]+ \d+(?:\.\d+)? ?m?g$", re.IGNORECASE)  # "salt 0.6g"
_DIETS = re.compile(  # "Gluten-Free Heart-Healthy High-Fiber"
    r"^(?:(?:vegan|vegetarian|[a-z]+[- ](?:free|healthy|friendly|appropriate|safe)|(?:high|low|no|reduced)[- ]"
    r"(?:fiber|protein|carb|sodium|fat|calorie|sugar|added[- ]sugars?))[\s,|]*)+$",
    re.IGNORECASE,
)
_BYLINE = re.compile(  # whose name stands in the line below
    r"^(?:(?:recipe|written|tested|reviewed|photos?|photographed|submitted|developed|styled|edited)\s+)?by\b"
    r"(?: (?:dietitian|editor|our|the)\b.*)?:?$|^authors?:?$",
    re.IGNORECASE,
)
_MOST_WORDS = 14
_MOST_CANDIDATES = 200


def find_title(page: Sequence[PageLine], until: int, named: Named) -> tuple[str, int]:
    """Return the title of a page, "" where none can be found, and the place below it.

    Parameters
    ----------
    page : sequence of PageLine
        The page.
    until : int
        Where the ingredients begin; the title stands above.
    named : callable
        Returns the food that a line names, or None.
    """
    letter = None
    for line in page[:until]:
        stated = _NAMED.match(line.text)
        if stated and _is_said_in_passing(stated):
            letter = line
        elif stated and not _says_nothing(stated):
            return _stated(line), line.place + 1
    above = [line for line in page[:until] if line.kind is not Kind.BLANK]
    bylines = {line.place + 1 for line in above if _BYLINE.match(line.text)}
    candidates = [line for line in above if line.place not in bylines and _may_be_title(line)]
    if letter and not candidates:
        return _stated(letter), letter.place + 1
    if not candidates:
        first = next((line for line in page if line.kind is not Kind.BLANK), None)
        return (cleaned(first.text), first.place + 1) if first and _stands_apart(page, first, named) else ("", 0)
    if len(candidates) > _MOST_CANDIDATES:
        candidates = [*candidates[: _MOST_CANDIDATES // 2], *candidates[-_MOST_CANDIDATES // 2 :]]
    card = _card_start(page, candidates[0].place, until)
    seen = _seen(page)
    best = max(candidates, key=lambda line: (_score(line, candidates, card, seen), line.place))
    if letter and not (_says_dish(best.text) or _names_food(best.text)):
        return _stated(letter), letter.place + 1
    first, last = _over_lines(page, best, until)
    title = " ".join(cleaned(line.text) for line in page[first.place : last.place + 1])
    short = _LONG_TITLE.split(title)[
        0
    ]  # "Overnight Oats - 5 Minute Breakfast", where the recipe calls itself the first
    if short != title and seen[_plain(short)]:
        title = short
    return title, last.place + 1


def _stated(line: PageLine) -> str:
    """Return the title that a line states: "Subject: Fwd: Lentil soup"."""
    stated = _NAMED.match(line.text)
    return cleaned(_REPLY.sub("", stated["title"])) if stated else ""


def _is_said_in_passing(stated: re.Match[str]) -> bool:
    """Whether the subject of a letter speaks of the dish without naming it as a title: "that tuna salad"."""
    title = _REPLY.sub("", stated["title"])
    return stated[0].lower().startswith("subject") and title[:1].islower()


def _says_nothing(stated: re.Match[str]) -> bool:
    """Whether the subject of a letter names no dish: "Subject: Recipe from today"."""
    letter = stated[0].lower().startswith("subject")
    return letter and not (_says_dish(stated["title"]) or _names_food(stated["title"]))


def _over_lines(page: Sequence[PageLine], line: PageLine, until: int) -> tuple[PageLine, PageLine]:
    """Return the first and last line of a title: one line, or two that stand apart from the rest and make one name."""
    above = page[line.place - 1] if line.place else None
    below = page[line.place + 1] if line.place + 1 < until else None
    if below and below.kind is Kind.WORDS and below.text[0].islower() and _JOINING.match(below.text):
        return line, below
    if below and _makes_one(page, line, below):
        return line, below
    if above and _makes_one(page, above, line):
        return above, line
    return line, line


def _makes_one(page: Sequence[PageLine], first: PageLine, second: PageLine) -> bool:
    """Whether two lines are one name: set apart by empty lines, and only the second says what kind of dish it is."""
    after = page[second.place + 1] if second.place + 1 < len(page) else None
    apart = first.after_blank and (after is None or after.kind in (Kind.BLANK, Kind.YIELD))
    if not (apart and first.kind is second.kind is Kind.WORDS and not second.marked):
        return False
    return _names_food(first.text) and not _says_dish(first.text) and _says_dish(second.text)


def cleaned(title: str) -> str:
    """Return a title without the name of a site and the word "recipe" behind it.

    Examples
    --------
    >>> cleaned("Lentil Soup Recipe | A Kitchen"), cleaned("Soups » Lentil Soup")
    ('Lentil Soup', 'Lentil Soup')
    """
    title = _CRUMBS.split(title.strip(" *#_:"))[-1]
    title = _DIET_MARKS.sub("", title.split(" | ")[0])
    title = re.sub(r"\s*\((?:serves|makes|yields?|servings)\b[^()]*\)", "", title, flags=re.IGNORECASE)
    return re.sub(r"(?<=\w)\s+recipe$", "", title, flags=re.IGNORECASE).strip()


def _may_be_title(line: PageLine) -> bool:
    text = line.text
    if line.kind not in (Kind.WORDS, Kind.PART) and not (line.kind is Kind.FOOD and line.marked):
        return False
    if line.bulleted or line.numbered or len(text.split()) > _MOST_WORDS or len(text) > 120:
        return False
    if (line.kind is Kind.PART and not line.marked) or _NUTRIENT.search(text) or _DIETS.match(text):
        return False
    return not (
        _GREETING.match(text) or _NAMED.match(text) or is_whole("site", text) or text.endswith((",", ";", "..."))
    )


def _stands_apart(page: Sequence[PageLine], line: PageLine, named: Named) -> bool:
    """Whether a first line that begins with a number is a title: "7 layer dip" above "Serves 8"."""
    if line.kind not in (Kind.FOOD, Kind.TOOL) or line.bulleted or line.numbered:
        return False
    below = page[line.place + 1] if line.place + 1 < len(page) else None
    if below is None or below.kind not in (Kind.YIELD, Kind.BLANK, Kind.INGREDIENTS, Kind.CLUTTER):
        return False
    return below.kind in (Kind.YIELD, Kind.INGREDIENTS) or named(line.text) is None


def _card_start(page: Sequence[PageLine], first: int, until: int) -> int:
    """Return where the recipe itself begins: the yields, times and headings that stand just above the ingredients."""
    place = until
    while place > first + 1 and page[place - 1].kind in (
        Kind.BLANK,
        Kind.YIELD,
        Kind.CLUTTER,
        Kind.NUTRITION,
        Kind.STEP,
        Kind.ASIDE,
    ):
        place -= 1
    return place


def _seen(page: Sequence[PageLine]) -> Counter[str]:
    """Return how often each text stands in the page, as a line or as the end of a path of links."""
    return Counter(_plain(cleaned(line.text)) for line in page if line.kind is not Kind.BLANK)


def _plain(text: str) -> str:
    return re.sub(r"\W+", " ", text).strip().lower()


def _score(line: PageLine, candidates: Sequence[PageLine], card: int, seen: Counter[str]) -> float:
    """Return how likely a line is the title."""
    text = line.text
    score = 3.0 * (seen[_plain(cleaned(text))] > 1) + 3.0 * line.marked
    score += 2.0 * _says_dish(text) + 1.5 * _names_food(text)
    score += 1.0 * (text.istitle() or text.isupper() or _capitals(text) > 0.6)
    score += 1.0 * (line is candidates[0])
    after = [other for other in candidates if line.place < other.place < card]
    score += max(0.0, 3.0 - len(after))
    score -= (
        2.0 * bool(re.search(r"[.!?]$", text))
        + 1.0 * (len(text.split()) == 1)
        + 1.0 * text.startswith(("Why", "How", "What"))
    )
    score -= 2.0 * (start("site", text) != "" and not _says_dish(text))
    score -= 3.0 * bool(_COLLECTION.search(text))
    score -= 3.0 * (len(_CRUMBS.split(text)) > 2 and seen[_plain(cleaned(text))] < 2)  # the page's place on its site
    return score - 3.0 * starts_with_amount(text) - 4.0 * is_whole("part", text)


def _capitals(text: str) -> float:
    parts = [word for word in text.split() if word[:1].isalpha() and len(word) > 3]
    return sum(word[0].isupper() for word in parts) / len(parts) if parts else 0.0


def _says_dish(text: str) -> bool:
    """Whether a line says what kind of dish it is: "soup", "tacos"."""
    return not set(page_words()["dish"]).isdisjoint(words(text))


@cache
def _food_words() -> frozenset[str]:
    """Return the words of food names, but those that say little alone: "whole", "new"."""
    names = (words(food.name.split(",")[0]) for food in bundled_foods().values())
    return frozenset(word for name in names for word in name if kind_of(word) == "food") - {*page_words()["loose"]}


def _names_food(text: str) -> bool:
    return not _food_words().isdisjoint(words(text))
