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
        Each ingredient line with its part.
    """
    written = [_title_written(one_line(title), lines), f"Serves {servings:.12g}", "", "Ingredients"]
    now = ""
    for line, part in lines:
        if one_line(part) != now:
            now = one_line(part)
            written += ["", _part_written(now)]
        written.append(one_line(line))
    return "\n".join(written)


def _part_written(part: str) -> str:
    """Return the heading that gives a part back, marked where it could be taken for something else."""
    if not part:
        return "## -"
    line = page_lines(f"## {part}")[0]
    return f"## {part}" if line.kind is Kind.PART and line.text == part else f"## part: {part}"


def _title_written(title: str, lines: Sequence[tuple[str, str]]) -> str:
    """Return the line that gives a title back: the title, marked where it could be taken for something else."""
    page = page_lines(f"{title}\nServes 4\n\nIngredients\n1 egg")
    plain = page[0].kind is Kind.WORDS and find_title(page, 3, lambda _line: None)[0] == title
    return title if plain and title not in {one_line(line) for line, _ in lines} else f"Title: {title}"
