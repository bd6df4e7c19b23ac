"""A whole pasted recipe: title, servings, parts and ingredient lines, read in one go."""

import re
from dataclasses import dataclass

from kit.errors import AmountError
from kit.food.amounts import plain_characters, read_count
from kit.food.composition import Foods, foods
from kit.lines.reader import read_each
from kit.lines.reading import Reading
from kit.lines.tidy import without_bullet

MOST_SERVINGS = 10_000
_SERVINGS = re.compile(
    r"^\W*(?:serves|servings?|serving size|makes|yields?|portions?|for|feeds)\b\s*:?\s*(?:about\s+)?"
    r"(?=\S*\d|a |an |one|two|three|four|five|six|seven|eight|nine|ten|twelve)(?P<amount>.*)$"
    r"|^\W*(?P<first>\d+)\s+(?:servings?|portions?|people)\W*$",
    re.IGNORECASE,
)
_INGREDIENTS = re.compile(r"^\W*(?:the\s+)?ingredients?(?:\s+list)?\W*$", re.IGNORECASE)
_METHOD = re.compile(
    r"^\W*(?:method|directions?|instructions?|preparation|steps?|how to (?:make|prepare).*|to (?:make|prepare)|notes?|"
    r"tips?|nutrition(?:al)?.*|storage|equipment)\W*$",
    re.IGNORECASE,
)
_TIMES = re.compile(
    r"^\W*(?:prep|cook|cooking|total|active|hands-on|ready|time|level|difficulty|author|by|source)\b.*?[:\d]",
    re.IGNORECASE,
)
_HEADING = re.compile(
    r"^(?!.*\d)(?P<name>[^:]{2,60}):\s*$|^#+\s*(?P<marked>.+?)\s*#*$|^\*\*(?P<bold>[^*]+?):?\*\*\s*:?$"
)


@dataclass(frozen=True, slots=True)
class WrittenRecipe:
    """A pasted recipe as it was read.

    Attributes
    ----------
    title : str
        The recipe's name; empty when there is none.
    servings : float or None
        How many it serves; None when the text does not say.
    serving_is : str
        What a serving is called ("lidded boxes"), where the text says.
    readings : tuple of Reading
        Its ingredient lines, each with the part it stands in.
    """

    title: str
    servings: float | None
    serving_is: str
    readings: tuple[Reading, ...]


def read_recipe(text: str, *, table: Foods | None = None, system: str = "us") -> WrittenRecipe:
    r"""Read a whole recipe: its title, "Serves 4", headings such as "For the dressing:", and its ingredient lines.

    The first line is the title unless it starts with an amount. Reading stops at the method. A line that cannot be
    read comes back with its problem; nothing is left out silently but blank lines, headings and times.

    Parameters
    ----------
    text : str
        The recipe, one ingredient a line, with or without bullets and numbering.
    table : Foods, optional
        The foods to choose from; all at hand by default.
    system : {"us", "metric"}
        Whose cups and spoons.

    Raises
    ------
    AmountError
        If the servings are not from above 0 to 10,000.

    Examples
    --------
    >>> recipe = read_recipe("Warm oats\nServes 2\n- 1 cup rolled oats\n- 2 cups milk")
    >>> recipe.title, recipe.servings, [reading.key for reading in recipe.readings]
    ('Warm oats', 2.0, ['oats-rolled-dry', 'milk-whole'])
    """
    table = foods() if table is None else table
    title, servings, serving_is, part = "", None, "", ""
    readings: list[Reading] = []
    listed = False  # whether the ingredients have begun
    for raw in text.splitlines():
        line = plain_characters(raw).strip()
        plain = without_bullet(line)
        if not re.search(r"\w", line):
            continue
        amount = _SERVINGS.match(line)
        heading = _HEADING.match(line)
        if amount:
            servings, serving_is = _servings(line, amount)
        elif _INGREDIENTS.match(line):
            listed = True
        elif _METHOD.match(line):
            if readings:
                break
        elif not readings and not listed and _TIMES.match(line):
            continue
        elif not title and not listed and not readings and read_count(plain)[0] is None and plain == line:
            title = line.strip("# *")
        elif heading:
            part = _part(next(name for name in heading.groups() if name))
        else:
            readings += read_each(raw.strip(), table=table, system=system, part=part)
    return WrittenRecipe(title, servings, serving_is, tuple(readings))


def _servings(line: str, match: re.Match[str]) -> tuple[float, str]:
    count, rest = read_count(match["first"] or match["amount"].strip())
    if count is None or not 0 < count.value <= MOST_SERVINGS:
        raise AmountError(f'"{line[:60]}" is no number of servings; write for instance "Serves 4"')
    name = re.sub(
        r"^(?:servings?|portions?|people|persons?|adults)\b", "", rest.strip(" .,()"), flags=re.IGNORECASE
    ).strip()
    return count.value, name


def _part(heading: str) -> str:
    """Return a part's name without "For the"."""
    return re.sub(r"^for\s+(?:the\s+)?", "", heading.strip(" :*#"), flags=re.IGNORECASE).strip().lower()
