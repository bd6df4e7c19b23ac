"""A recipe as the text of its box: title, servings, parts and a line for each ingredient."""

from collections.abc import Sequence

from kit.lines.page_lines import Kind, page_lines
from kit.lines.page_title import find_title
from kit.talk.plain_lines import one_line


def write_recipe(title: str, servings: float, lines: Sequence[tuple[str, str]]) -> str:
    """Return a recipe as text.

    Parameters
    ----------
    title, servings : str, float
        As they are.
    lines : sequence of (str, str)
        Each ingredient line with its part; a line that names two foods and follows itself is written once.
    """
    written = [_title_written(one_line(title)), f"Serves {servings:.12g}", "", "Ingredients"]
    now, before = "", None
    for line, part in lines:
        if (line, part) == before:
            continue
        before = line, part
        if one_line(part) != now:
            now = one_line(part)
            written += ["", f"## {now}"]
        written.append(f"- {one_line(line)}" if _needs_bullet(line) else one_line(line))
    return "\n".join(written)


def _title_written(title: str) -> str:
    """Return the line that gives a title back: the title, marked where it could be taken for something else."""
    page = page_lines(f"{title}\nServes 4\n\nIngredients\n1 egg")
    plain = page and page[0].kind is Kind.WORDS and find_title(page, 3, lambda _line: None)[0] == title
    return title if plain else f"Title: {title}"


def _needs_bullet(line: str) -> bool:
    return False
