"""A whole pasted recipe: title, servings, parts and ingredient lines, read in one go."""

from collections.abc import Collection, Sequence
from dataclasses import dataclass
from functools import lru_cache

from kit.errors import AmountError
from kit.food.amounts import Count
from kit.food.composition import Food, Foods, foods
from kit.lines.page_block import Block, BlockLine, ingredient_block
from kit.lines.page_lines import Kind, PageLine, page_lines
from kit.lines.page_title import find_title
from kit.lines.page_yield import LEAST_SERVINGS, MOST_SERVINGS, Yield
from kit.lines.reader import read, read_each
from kit.lines.reading import Reading

LONGEST_TEXT = 200_000  # characters; a page with all its comments has a quarter of that
_MOST_WORDS_OF_A_LINK = 3


@dataclass(frozen=True, slots=True)
class WrittenRecipe:
    """A pasted recipe as it was read.

    Attributes
    ----------
    title : str
        The recipe's name; empty when there is none.
    servings : float or None
        How many it serves, the middle of a span; None when the text does not say.
    serving_is : str
        What a serving is called ("lidded box"), where the text says.
    readings : tuple of Reading
        Its ingredient lines, each with the part it stands in.
    span : tuple of float, optional
        The least and most servings, where the text gives a span: "Serves 6 to 8".
    passed_over : tuple of str
        Lines among the ingredients that name no food: "8 skewers".
    lines : tuple of BlockLine
        The ingredient lines as written, one for each, with the row of the text they stand on.
    """

    title: str
    servings: float | None
    serving_is: str
    readings: tuple[Reading, ...]
    span: tuple[float, float] | None = None
    passed_over: tuple[str, ...] = ()
    lines: tuple[BlockLine, ...] = ()


def read_recipe(
    text: str, *, table: Foods | None = None, system: str = "us", listed: Collection[str] = ()
) -> WrittenRecipe:
    r"""Read a whole recipe: its title, "Serves 4", headings such as "For the dressing:", and its ingredient lines.

    A page may be pasted with everything around the recipe. What stands above the heading "Ingredients" is no food;
    without that heading the lines below the title are read up to the method, or up to the sentences that tell it. A
    line that cannot be read comes back with its problem; one among them that names no food comes back as passed over.

    Parameters
    ----------
    text : str
        The recipe, one ingredient a line, with or without bullets and numbering.
    table : Foods, optional
        The foods to choose from; all at hand by default.
    system : {"us", "metric"}
        Whose cups and spoons.
    listed : collection of str
        Lines, with single spaces, that are known to be ingredients, whatever they look like.

    Raises
    ------
    AmountError
        If the servings are not from 0.1 to 10,000, or the text is longer than any recipe.

    Examples
    --------
    >>> recipe = read_recipe("Warm oats\nServes 2\n- 1 cup rolled oats\n- 2 cups milk")
    >>> recipe.title, recipe.servings, [reading.key for reading in recipe.readings]
    ('Warm oats', 2.0, ['oats-rolled-dry', 'milk-whole'])
    """
    if len(text) > LONGEST_TEXT:
        raise AmountError(f"the text has {len(text):,} characters; paste one recipe, at most {LONGEST_TEXT:,}")
    table = foods() if table is None else table

    @lru_cache(maxsize=2_000)
    def named(line: str) -> Food | None:
        return read(line, table=table, system=system).food

    page = page_lines(text, listed)
    headings = [line.place for line in page if line.kind is Kind.INGREDIENTS]
    heading = next((place for place in headings if not _is_a_link(page, place)), headings[0] if headings else None)
    first = next((line.place for line in page if line.kind in (Kind.FOOD, Kind.CELL, Kind.LISTED)), len(page))
    title, below = find_title(page, first if heading is None else heading, named)
    block = ingredient_block(page, below, named)
    made = _servings(page, block)
    count = made.count if made else None
    return WrittenRecipe(
        title,
        count.value if count else None,
        made.called if made else "",
        tuple(
            reading
            for line in block.lines
            for reading in read_each(line.text, table=table, system=system, part=line.part)
        ),
        (count.low, count.high) if count and count.low < count.high else None,
        block.passed_over,
        block.lines,
    )


def _is_a_link(page: Sequence[PageLine], place: int) -> bool:
    """Whether "Ingredients" is one of a site's links to elsewhere: a word among words, with no food near below it."""
    below = [line for line in page[place + 1 : place + 20] if line.kind is not Kind.BLANK][:8]
    words_only = [line.kind in (Kind.WORDS, Kind.CLUTTER) for line in below]
    return all(words_only) and all(len(line.text.split()) <= _MOST_WORDS_OF_A_LINK for line in below[:3])


def _servings(page: Sequence[PageLine], block: Block) -> Yield | None:
    """Return how many the recipe makes: the surest line that says so, one above the ingredients before one below."""
    said = [line for line in page if line.made and line.kind is not Kind.FOOD]

    def rank(line: PageLine) -> tuple[float, int]:
        assert line.made
        sure = line.made.sure - 2.0 * (line.made.count is None) - 0.5 * (line.place >= block.end)
        return sure, -abs(line.place - block.start)

    best = max(said, key=rank, default=None)
    if best is None or best.made is None:
        return None
    _possible(best.made.count, best.text)
    return best.made


def _possible(count: Count | None, line: str) -> None:
    if count is not None and not LEAST_SERVINGS <= count.value <= MOST_SERVINGS:
        raise AmountError(f'"{line[:60]}" is no number of servings; write for instance "Serves 4"')
