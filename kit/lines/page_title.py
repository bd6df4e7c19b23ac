"""The title of a pasted page: which of its lines names the dish."""

import re
from collections import Counter
from collections.abc import Sequence

from kit.food.vocabulary import words
from kit.lines.page_lines import Kind, PageLine, is_cell, starts_with_amount
from kit.lines.page_words import is_whole, start

_NAMED = re.compile(r"^(?:title|recipe(?: name| title)?|subject|name|dish)\s*:\s*(?P<title>\S.*)$", re.IGNORECASE)
_REPLY = re.compile(r"^(?:re|fwd?|aw|wg)\s*:\s*", re.IGNORECASE)
_CRUMBS = re.compile(r"\s+[\u00bb\u203a>/]\s+")
_SITE = re.compile(r"\s+[|\u2013\u2014-]\s+[^|]*$")
_GREETING = re.compile(
    r"^(?:hi|hello|hey|dear|good morning|thanks|thank you|love|cheers|best|see you|yours|regards)\b", re.IGNORECASE
)
_JOINING = re.compile(r"^(?:with|and|in|on|over|for)\s", re.IGNORECASE)
_DISH = frozenset(
    "soup stew salad bowl box bake casserole chili chilli curry pie cake bread muffin cookie bar pancake smoothie dip salsa sauce "
    "slaw wrap taco burrito quesadilla pizza pasta noodle risotto pilaf skillet traybake roast stir fry burger patty meatball "
    "meatloaf sandwich toast oatmeal granola porridge parfait pudding crisp crumble tart quiche frittata omelet scramble hash "
    "dressing hummus pesto jar tray pot supper dinner lunch breakfast ratatouille enchilada fajita kebab skewer sheet pan "
    "gumbo jambalaya paella stroganoff lasagna fritter biscuit scone".split()
)
_MOST_WORDS = 14


def find_title(page: Sequence[PageLine], until: int) -> tuple[str, int]:
    """Return the title of a page, "" where none can be found, and the place below it.

    Parameters
    ----------
    page : sequence of PageLine
        The page.
    until : int
        Where the ingredients begin; the title stands above.
    """
    for line in page[:until]:
        named = _NAMED.match(line.text)
        if named:
            return cleaned(_REPLY.sub("", named["title"])), line.place + 1
    above = [line for line in page[:until] if line.kind is not Kind.BLANK]
    candidates = [line for line in above if _may_be_title(line)]
    if not candidates:
        numbered = above[0] if above and above[0].kind in (Kind.FOOD, Kind.TOOL, Kind.PART) else None
        return (cleaned(numbered.text), numbered.place + 1) if numbered and _stands_apart(page, numbered) else ("", 0)
    card = _card_start(page, candidates[0].place, until)
    seen = _seen(page)
    best = max(candidates, key=lambda line: (_score(line, candidates, card, seen), line.place))
    title, place = cleaned(best.text), best.place
    below = page[place + 1] if place + 1 < len(page) else None
    if (
        below
        and below.place < until
        and below.kind is Kind.WORDS
        and _JOINING.match(below.text)
        and below.text[0].islower()
    ):
        title, place = f"{title} {below.text}", below.place
    return title, place + 1


def cleaned(title: str) -> str:
    """Return a title without the name of a site and the word "recipe" behind it.

    Examples
    --------
    >>> cleaned("Lentil Soup Recipe | A Kitchen"), cleaned("Soups » Lentil Soup")
    ('Lentil Soup', 'Lentil Soup')
    """
    title = _CRUMBS.split(title.strip(" *#_:"))[-1]
    title = title.split(" | ")[0]
    return re.sub(r"(?<=\w)\s+recipe$", "", title, flags=re.IGNORECASE).strip()


def _may_be_title(line: PageLine) -> bool:
    text = line.text
    if line.kind not in (Kind.WORDS, Kind.PART) and not (line.kind is Kind.FOOD and line.marked):
        return False
    if line.bulleted or line.numbered or len(text.split()) > _MOST_WORDS or len(text) > 120:
        return False
    if line.kind is Kind.PART and not line.marked:
        return False
    return not (
        _GREETING.match(text) or is_whole("part", text) or is_whole("site", text) or text.endswith((",", ";", "..."))
    )


def _stands_apart(page: Sequence[PageLine], line: PageLine) -> bool:
    """Whether a first line that begins with a number is a title: "7 layer dip" above "Serves 8"."""
    if is_cell(line.text):
        return False
    below = page[line.place + 1] if line.place + 1 < len(page) else None
    return below is not None and below.kind in (Kind.YIELD, Kind.BLANK, Kind.INGREDIENTS, Kind.CLUTTER)


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
    known = set(words(text))
    score = 3.0 * (seen[_plain(cleaned(text))] > 1) + 3.0 * line.marked
    score += 2.0 * bool(known & _DISH) + 1.5 * _names_food(text)
    score += 1.0 * (text.istitle() or text.isupper() or _capitals(text) > 0.6)
    score += 1.5 * (line is candidates[0])
    after = [other for other in candidates if line.place < other.place < card]
    score += max(0.0, 3.0 - len(after))
    score -= (
        2.0 * bool(re.search(r"[.!?]$", text))
        + 1.0 * (len(text.split()) == 1)
        + 1.0 * text.startswith(("Why", "How", "What"))
    )
    score -= 2.0 * (start("site", text) != "" and not known & _DISH)
    return score - 3.0 * starts_with_amount(text)


def _capitals(text: str) -> float:
    parts = [word for word in text.split() if word[:1].isalpha() and len(word) > 3]
    return sum(word[0].isupper() for word in parts) / len(parts) if parts else 0.0


def _names_food(text: str) -> bool:
    from kit.food.finding import find

    return any(match.score >= 60 for match in find(text, 1)) if len(text) < 100 else False
