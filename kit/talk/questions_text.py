"""Questions to expect as plain text: "Can I leave out the feta? = leave out the feta", the answer below."""

import re
from collections.abc import Sequence
from dataclasses import replace

from kit.errors import ChangeError, KitError
from kit.meal.changes import read_change
from kit.meal.recipe import Recipe
from kit.talk.plain_lines import PlainLine, one_line, quoted, unquoted
from kit.talk.script_text import sentences
from kit.talk.talk import Question

_MARKED = re.compile(r"^\s*(?:[-*\u2022]\s+|\d{1,2}[.)]\s+)?(?:q(?:uestion)?\s*[:.]\s*)(?P<rest>.*)$", re.IGNORECASE)
_ANSWER = re.compile(r"^\s*(?:[-*\u2022]\s+)?(?:a(?:nswer)?\s*[:.]|\u2192|->|=>)\s*(?P<rest>.*)$", re.IGNORECASE)
_TRY = re.compile(r"^\s*(?:[-*\u2022]\s+)?(?:to\s+)?try(?:\s+on\s+screen)?\s*:\s*(?P<wish>\S.*)$", re.IGNORECASE)
_BULLET = re.compile(r"^\s*(?:[-*\u2022]\s+|\d{1,2}[.)]\s+)")
_ASKED = re.compile(r"^(?P<asks>.*?\?[\"\u201d')]*)\s*(?:=\s*(?P<wish>.*))?$")
_QUOTED = re.compile(r'^(?P<asks>"(?:[^"\\]|\\.)*")\s*(?:=\s*(?P<wish>.*))?$')
_EQUALS = re.compile(r"^(?P<asks>[^=]+?)\s+=\s+(?P<wish>.+)$")


def read_questions(text: str, recipe: Recipe | None = None) -> tuple[tuple[Question, ...], tuple[PlainLine, ...]]:
    r"""Read questions to expect.

    Parameters
    ----------
    text : str
        A question a line, with what to try on screen behind = or on a line "Try: ..." below it, and the answer on the
        lines below. "Q:" and "A:" in front are allowed, and needed only where a question has no question mark or an
        answer has one.
    recipe : Recipe, optional
        The dish, on which each try is checked.

    Returns
    -------
    questions : tuple of Question
        The questions.
    lines : tuple of PlainLine
        What each line was read as.

    Examples
    --------
    >>> (question,), _ = read_questions("Can I leave out the feta? = leave out the feta\nYes. It is milder then.")
    >>> question.asks, question.try_, question.answer
    ('Can I leave out the feta?', 'leave out the feta', 'Yes. It is milder then.')
    """
    found: list[Question] = []
    lines: list[PlainLine] = []
    for place, row in enumerate(text.splitlines()):
        if not row.strip():
            lines.append(PlainLine(place))
            continue
        answer, wish = _ANSWER.match(row), _TRY.match(row)
        below = bool(found) and place > 0 and lines[place - 1].read_as != ""
        asked = None if answer else _question(row, below=below)
        if wish and found and not found[-1].try_ and not found[-1].answer:
            found[-1] = replace(found[-1], try_=one_line(wish["wish"]))
            lines.append(replace(_tried(place, found[-1], recipe), entry=len(found) - 1))
        elif asked is not None:
            lines.append(replace(_tried(place, asked, recipe), entry=len(found), makes=1))
            found.append(asked)
        elif found:
            words = one_line(answer["rest"] if answer else row)
            found[-1] = replace(found[-1], answer=f"{found[-1].answer} {words}".strip())
            lines.append(PlainLine(place, "answer", entry=len(found) - 1))
        else:
            problem = 'an answer without a question; write the question above it, such as "Can I leave out the feta?"'
            lines.append(PlainLine(place, problem=problem, choices=(f"Q: {one_line(row)}",)))
    return tuple(found), tuple(lines)


def _question(row: str, *, below: bool = False) -> Question | None:
    """Return the question that a line asks; None for a line of an answer, which stands below another line."""
    marked = _MARKED.match(row)
    line = one_line(marked["rest"] if marked else _BULLET.sub("", row))
    exact = _QUOTED.match(line) if marked else None
    if exact:
        return Question(unquoted(exact["asks"]), (exact["wish"] or "").strip())
    match = _ASKED.match(line)
    if match and (marked or match["wish"] is not None or _is_asked(line, match["asks"], below)):
        return Question(match["asks"].strip(), (match["wish"] or "").strip())
    equals = _EQUALS.match(line)
    if equals:
        return Question(equals["asks"].strip(), equals["wish"].strip())
    return Question(line) if marked and line else None


def _is_asked(line: str, asks: str, below: bool) -> bool:
    """Whether a line without any mark is a question: it ends with its question mark, and is no answer of sentences."""
    return line == asks and bool(asks.strip(" ?")) and not (below and len(sentences(line)) > 1)


def _tried(place: int, question: Question, recipe: Recipe | None) -> PlainLine:
    """Answer a question's line: what is tried on screen, or what has to be asked."""
    if not question.try_:
        return PlainLine(place, "question")
    if recipe is None or not recipe.ingredients:
        return PlainLine(place, f"question, to try: {question.try_}")
    try:
        steps = read_change(question.try_, recipe)
    except ChangeError as fault:
        return PlainLine(
            place, problem=str(fault), choices=tuple(f"{question.asks} = {line}" for line in fault.choices)
        )
    except KitError as fault:
        return PlainLine(place, problem=str(fault))
    return PlainLine(place, f"question, to try: {question.try_} ({len(steps)} change{'' if len(steps) == 1 else 's'})")


def _reads(line: str, question: Question) -> bool:
    """Whether a line is read as a question, and as this one, wherever it stands."""
    return _ANSWER.match(line) is None and _question(line, below=True) == question


def write_questions(questions: Sequence[Question]) -> str:
    """Return questions as plain text; `read_questions` gives them back."""
    blocks = []
    for question in questions:
        asks, wish = one_line(question.asks), one_line(question.try_)
        written = (asks, f"Q: {asks}", f"Q: {quoted(asks)}")
        tried = f" = {wish}" if wish else ""
        read_back = Question(asks, wish)
        line = next(text + tried for text in written if _reads(text + tried, read_back) or text is written[-1])
        answer = one_line(question.answer)
        blocks.append(f"{line}\nA: {answer}" if answer else line)
    return "\n\n".join(blocks)
