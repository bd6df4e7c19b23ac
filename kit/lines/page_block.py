"""Which lines of a pasted page are the ingredients, joined where one is spread over several lines."""

import re
from collections.abc import Sequence
from dataclasses import dataclass, replace
from itertools import islice

from kit.food.amounts import read_count
from kit.food.vocabulary import words
from kit.lines.page_amounts import starts_with_amount, unit_words
from kit.lines.page_lines import Kind, Named, PageLine, part_of, without_bracket
from kit.lines.page_words import is_whole

_OPEN_END = re.compile(r"(?:\b(?:and|or|of|with|in|a|the|plus|to)|[-/&%(])$", re.IGNORECASE)
_NOT_FOOD = (Kind.METHOD, Kind.BLANK, Kind.YIELD, Kind.CLUTTER, Kind.NUTRITION)
_MOST_PART_WORDS = 6
_LEAST_TWICE = 3  # foods told again, before the lines without amounts are taken for a list of what to buy
_LEAST_PAIRS = 3  # of a food with its amount below it, before a page is taken to be written so
_MOST_HEADINGS = 20  # "Ingredients" on one page


@dataclass(frozen=True, slots=True)
class BlockLine:
    """One ingredient as the page writes it, with the part it stands in and the row of the text it begins on."""

    text: str
    part: str = ""
    row: int = 0


@dataclass(frozen=True, slots=True)
class Block:
    """The ingredients of a page.

    Attributes
    ----------
    lines : tuple of BlockLine
        The ingredients.
    passed_over : tuple of str
        Lines among them that name no food.
    start, end : int
        Where they begin and end in the page; the heading belongs to them.
    """

    lines: tuple[BlockLine, ...]
    passed_over: tuple[str, ...]
    start: int
    end: int

    @property
    def amounts(self) -> int:
        """How many lines begin with an amount."""
        return sum(1 for line in self.lines if starts_with_amount(line.text))


def ingredient_block(page: Sequence[PageLine], first: int, named: Named) -> Block:
    """Return the ingredients of a page.

    They stand under the heading "Ingredients" where there is one, under the one with most amounts where there are
    several; a later one with ingredients of its own adds a part. Without a heading everything counts from `first` on,
    up to the method or the sentences that tell it.

    Parameters
    ----------
    page : sequence of PageLine
        The page.
    first : int
        Where a recipe without a heading may begin: below its title.
    named : callable
        Returns the food that a line names, or None.
    """
    headings = islice((line for line in page if line.kind is Kind.INGREDIENTS), _MOST_HEADINGS)
    headed = [_gather(page, line.place + 1, named, heading=line) for line in headings]
    headed = [block for block in headed if block.lines]
    plain = _gather(page, first, named)
    best = max(headed, key=lambda block: (block.amounts, block.start), default=plain)
    if best is plain or (best.amounts == 0 and plain.amounts > 1):
        return plain
    return _with_later_parts(best, headed)


def _with_later_parts(best: Block, headed: Sequence[Block]) -> Block:
    """Add the ingredients of later headings whose lines are others than those before."""
    for block in headed:
        known = {_letters(line.text) for line in best.lines}
        new = [line for line in block.lines if _letters(line.text) not in known]
        if block.start >= best.end and block.amounts >= 2 and len(new) > len(block.lines) / 2:
            best = Block((*best.lines, *block.lines), (*best.passed_over, *block.passed_over), best.start, block.end)
    return best


def _letters(text: str) -> str:
    return re.sub(r"\W", "", text).lower()


def _gather(page: Sequence[PageLine], start: int, named: Named, heading: PageLine | None = None) -> Block:
    """Return the ingredients from a place on, up to the method."""
    part = part_of(heading) if heading else ""
    chosen: list[tuple[PageLine, str]] = []
    passed: list[str] = []
    aside = begun = False  # inside a section such as "Equipment"; whether an amount has been met
    end = len(page)
    awaited = _awaited_method(page, start)
    for line in page[start:]:
        sentence = line.kind is Kind.STEP and not _reads_as_food(line, named)
        if _ends(page, line, begun=begun, headed=heading is not None, sentence=sentence, awaited=awaited):
            end = line.place
            break
        if line.kind is Kind.INGREDIENTS or _is_part(page, line, named, aside=aside):
            part, aside = part_of(line), False
        elif line.kind is Kind.ASIDE:
            aside = begun or not re.search(r":\s*\S", line.text)  # "Each serving: 1 cup" opens no section
        elif aside or line.kind in _NOT_FOOD or (sentence and not begun):
            continue
        elif sentence or (line.kind is Kind.TOOL and named(line.text) is None):
            passed.append(line.text)
        else:
            chosen.append((line, part))
            begun = begun or starts_with_amount(line.text) or line.kind in (Kind.CELL, Kind.LISTED)
    lines = _joined(_with_amounts_first(chosen), named)
    sure = {" ".join(line.text.split()) for line, _ in chosen if line.kind is Kind.LISTED}
    kept, other = _without_words(lines, named, sure, strict=heading is not None)
    return Block(tuple(kept), (*passed, *other), heading.place if heading else start, end)


def _ends(page: Sequence[PageLine], line: PageLine, *, begun: bool, headed: bool, sentence: bool, awaited: int) -> bool:
    """Whether the ingredients end above a line: at the method, at another section, or where sentences begin."""
    if line.kind is Kind.INGREDIENTS:
        return headed and begun and not part_of(line)
    if line.kind is Kind.METHOD:
        return headed or begun
    if line.kind in (Kind.ASIDE, Kind.NUTRITION):
        return begun
    return sentence and begun and (line.place >= awaited or _only_steps_follow(page, line.place, awaited))


def _awaited_method(page: Sequence[PageLine], start: int) -> int:
    """Return where the heading of the method stands, or the end of the page."""
    return next((line.place for line in page[start:] if line.kind is Kind.METHOD), len(page))


def _only_steps_follow(page: Sequence[PageLine], place: int, until: int) -> bool:
    """Whether hardly an ingredient stands between a sentence and the method."""
    rest = page[place + 1 : until]
    return sum(1 for line in rest if line.kind is Kind.FOOD and len(line.text.split()) <= 10) < 2 or until == len(page)


def _reads_as_food(line: PageLine, named: Named) -> bool:
    return len(line.text.split()) <= 6 and not line.numbered and named(line.text) is not None


def _is_part(page: Sequence[PageLine], line: PageLine, named: Named, *, aside: bool) -> bool:
    """Whether a line is the heading of a part of the recipe."""
    if line.kind is Kind.PART:
        return True
    if line.kind is not Kind.WORDS or line.bulleted or len(line.text.split()) > _MOST_PART_WORDS:
        return False
    if re.search(r"[\d,.;]|^(?:and|or|but|then) ", line.text):
        return False
    following = (other for other in islice(page, line.place + 1, None) if other.kind is not Kind.BLANK)
    below, next_one = next(following, None), next(following, None)
    if below is None or below.kind not in (Kind.FOOD, Kind.CELL, Kind.LISTED):
        return False
    if below.kind is Kind.CELL and (next_one is None or next_one.kind in _NOT_FOOD):
        return False  # an amount under its food
    if is_whole("part", without_bracket(line.text)):
        return True
    capitals = line.text.isupper() and not below.text.isupper()
    return (line.after_blank or capitals or aside) and (capitals or named(line.text) is None)


def _with_amounts_first(chosen: Sequence[tuple[PageLine, str]]) -> Sequence[tuple[PageLine, str]]:
    """Return the lines of a page that writes each amount under its food as lines that begin with the amount."""
    under = [at for at in range(1, len(chosen)) if _amount_under(chosen, at)]
    starts_so = bool(chosen) and chosen[0][0].kind is Kind.WORDS and chosen[-1][0].kind is Kind.CELL
    if not starts_so or len(under) < _LEAST_PAIRS:
        return chosen
    turned: list[tuple[PageLine, str]] = []
    for at, (line, part) in enumerate(chosen):
        if at in under:
            food, _ = turned.pop()
            turned.append((replace(food, text=f"{line.text} {food.text}", kind=Kind.FOOD), part))
        else:
            turned.append((line, part))
    return turned


def _amount_under(chosen: Sequence[tuple[PageLine, str]], at: int) -> bool:
    return chosen[at][0].kind is Kind.CELL and chosen[at - 1][0].kind is Kind.WORDS


def _joined(chosen: Sequence[tuple[PageLine, str]], named: Named) -> list[BlockLine]:
    """Return the lines with those joined that are one ingredient: cells under each other, broken lines."""
    commas = sum(1 for line, _ in chosen if line.text.endswith((",", ";")))
    with_commas = commas > 0.5 * len(chosen)
    found: list[BlockLine] = []
    pending: BlockLine | None = None
    before: PageLine | None = None
    for line, part in chosen:
        text = line.text.rstrip(",;") if with_commas and line.kind is not Kind.LISTED else line.text
        if line.kind is Kind.LISTED:
            found += [pending] if pending is not None and read_count(pending.text)[1] else []
            found.append(BlockLine(text, part, line.row))
            pending, before = None, None
            continue
        if pending is not None:
            bare = read_count(pending.text)[1] == ""
            if line.kind is Kind.CELL and bare:  # a scale to choose from: "1", "2", "3"
                pending = BlockLine(text, part, line.row)
                continue
            if unit_words(text) and line.kind is Kind.WORDS:
                pending = replace(pending, text=f"{pending.text} {text}")
                continue
            if line.kind is not Kind.CELL and not starts_with_amount(text):
                found.append(replace(pending, text=f"{pending.text} {text}"))
                pending, before = None, line
                continue
            found += [] if bare else [pending]
            pending = None
        if line.kind is Kind.CELL and named(text) is None:
            pending = BlockLine(text, part, line.row)
        elif found and before and found[-1].part == part and _goes_on(found[-1].text, before, line, text, named):
            found[-1] = replace(found[-1], text=_glued(found[-1].text, text))
        else:
            found.append(BlockLine(text, part, line.row))
            before = line
    if pending is not None and read_count(pending.text)[1]:
        found.append(pending)
    return found


def _glued(text: str, more: str) -> str:
    if more[0] in ",;.)":
        return f"{text}{more}"
    broken = re.search(r"[a-z]-$", text) and more[:1].islower()
    return f"{text[:-1]}{more}" if broken else f"{text} {more}"


def _goes_on(text: str, before: PageLine, line: PageLine, more: str, named: Named) -> bool:
    """Whether a line goes on with the ingredient above it."""
    if text.count("(") > text.count(")") or more[0] in ",;)":
        return True
    if starts_with_amount(more) or line.bulleted or line.after_blank:
        return False
    if _OPEN_END.search(text) or text.endswith((",", ";")) or line.indent > before.indent:
        return True
    if not (more[0].islower() or more[0] == "("):
        return False
    alone = named(text) is not None and named(more) is not None
    return not alone and named(_glued(text, more)) is not None  # "rinsed"; "tomatoes" under "1 can crushed"


def _without_words(
    lines: Sequence[BlockLine], named: Named, sure: set[str], *, strict: bool
) -> tuple[list[BlockLine], list[str]]:
    """Return the ingredients, and apart from them the lines without an amount that name no food.

    Above the first amount of a recipe such a line tells about the dish; in a page with headings five words without a
    food are a remark. Anywhere else a line is kept, and asked about.
    """
    first = next((at for at, line in enumerate(lines) if starts_with_amount(line.text) or line.text in sure), 0)
    kept: list[BlockLine] = []
    other: list[BlockLine] = []
    for at, line in enumerate(lines):
        amount = starts_with_amount(line.text)
        remark = not amount and (at < first or (strict and len(line.text.split()) > 4)) and named(line.text) is None
        (other if remark and line.text not in sure else kept).append(line)
    twice = _told_without_amounts(kept)
    return [line for line in kept if line not in twice], [line.text for line in (*twice, *other)]


def _told_without_amounts(lines: Sequence[BlockLine]) -> list[BlockLine]:
    """Return the lines of a list without amounts whose foods stand in another one with them: what to buy, above."""
    measured = [frozenset(words(line.text)) for line in lines if starts_with_amount(line.text)]
    bare = [line for line in lines if not starts_with_amount(line.text)]
    twice = [line for line in bare if any(frozenset(words(line.text)) <= said for said in measured)]
    return twice if len(twice) >= _LEAST_TWICE else []
