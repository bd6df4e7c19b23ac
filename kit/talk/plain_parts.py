"""A talk kept or pasted as one plain text: the recipe, then the headings Script, Plan and Questions."""

import re
from collections.abc import Mapping
from dataclasses import dataclass, field

PARTS = ("recipe", "script", "plan", "questions")
_HEADING = re.compile(r"^\W{0,4}(?:(?:the|my)\s+)?(?P<part>script|plan|questions)\s*[:#*=]*\s*$", re.IGNORECASE)
# What else a talk file says of the whole talk, as a line such as "Keeps days: 3".
FIELDS = (
    "series",
    "serving_is",
    "dish_is",
    "finished_grams",
    "keeps_days",
    "minutes",
    "words_per_minute",
    "rules",
    "measures",
)
NUMBERS = ("finished_grams", "keeps_days", "minutes", "words_per_minute")
_FIELD = re.compile(
    rf"^\s*(?P<key>{'|'.join(FIELDS).replace('_', '[ _]')})\s*[:=]\s*(?P<value>\S.*?)\s*$", re.IGNORECASE
)


@dataclass(frozen=True, slots=True)
class PlainTalk:
    """The four texts of a talk, and what it says of the whole.

    Attributes
    ----------
    recipe, script, plan, questions : str
        The texts, as they are written into their boxes.
    fields : mapping of str to str
        Such as ``{"keeps_days": "3"}``.
    """

    recipe: str = ""
    script: str = ""
    plan: str = ""
    questions: str = ""
    fields: Mapping[str, str] = field(default_factory=dict)


def take_apart(text: str) -> PlainTalk:
    r"""Return the four parts of a plain talk; a text without headings is all recipe.

    Examples
    --------
    >>> text = "Oats\nKeeps days: 2\n1 cup oats\n\nScript\nIt is warm.\n\nQuestions\nNo oats? = no oats"
    >>> talk = take_apart(text)
    >>> talk.recipe, talk.script, talk.questions, talk.fields
    ('Oats\n1 cup oats', 'It is warm.', 'No oats? = no oats', {'keeps_days': '2'})
    """
    lines = text.splitlines()
    found: dict[str, list[str]] = {part: [] for part in PARTS}
    fields: dict[str, str] = {}
    now = "recipe"
    for place, line in enumerate(lines):
        heading = _HEADING.match(line)
        if heading and _begins(heading["part"].lower(), found, lines[place + 1 :]):
            now = heading["part"].lower()
            continue
        stated = _FIELD.match(line) if now == "recipe" else None
        if stated:
            fields[re.sub(r"\s", "_", stated["key"].lower())] = stated["value"]
        else:
            found[now].append(line)
    texts = {part: "\n".join(found[part]).strip("\n") for part in PARTS}
    return PlainTalk(**texts, fields=fields)


def _begins(part: str, found: Mapping[str, list[str]], below: list[str]) -> bool:
    """Whether a heading begins a part: "Questions" also ends many a page of the web, with none of hers below it."""
    if part != "questions" or found["script"] or found["plan"]:
        return True
    first = next((line for line in below if line.strip()), "")
    return "?" in first


def put_together(talk: PlainTalk) -> str:
    """Return the four parts as one plain text; `take_apart` gives them back."""
    texts = [talk.recipe.strip("\n")]
    if talk.fields:
        texts.append("\n".join(f"{key.replace('_', ' ').capitalize()}: {value}" for key, value in talk.fields.items()))
    for part in PARTS[1:]:
        written = getattr(talk, part).strip("\n")
        if written.strip():
            texts.append(f"{part.capitalize()}\n\n{written}")
    return "\n\n".join(text for text in texts if text.strip()) + "\n"
