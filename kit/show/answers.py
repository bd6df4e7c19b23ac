"""What a box of plain text answers beside its lines, as plain values for `web/answered.js`."""

from collections.abc import Mapping, Sequence
from typing import Any

from kit.rules.verdicts import CANNOT_TELL, NOTHING_TO_CHECK
from kit.show.judged import KINDS, SIGNS
from kit.speech.verdict import POINT, Verdict
from kit.talk.plain_lines import PlainLine

Answer = dict[str, Any]
ASK, PLAIN, NONE = KINDS[CANNOT_TELL], "plain", KINDS[NOTHING_TO_CHECK]


def line_answers(lines: Sequence[PlainLine]) -> list[Answer]:
    """Return the answers of a plan or of questions: what each line is read as, or what is asked, with lines to take.

    Examples
    --------
    >>> line_answers([PlainLine(0, "step, 5 min of work", entry=0, makes=1), PlainLine(1)])
    [{'place': 0, 'kind': 'plain', 'sign': '', 'said': '', 'text': 'step, 5 min of work', 'acts': [], 'choices': []}]
    """
    return [_line_answer(line) for line in lines if line.read_as or line.problem]


def _line_answer(line: PlainLine) -> Answer:
    if not line.problem:
        return _answer(line.place, PLAIN if line.entry >= 0 else NONE, text=line.read_as)
    said = f"{line.problem[:1].upper()}{line.problem[1:]}"
    choices = []
    if line.choices:
        options = [(choice, choice) for choice in line.choices]
        choices.append({"label": "Write instead ...", "options": options, "replace": True})
    return _answer(line.place, ASK, sign="?", said="to settle", text=said, choices=choices)


def verdict_answers(lines: Sequence[PlainLine], verdicts: Sequence[Verdict]) -> list[Answer]:
    """Return the answers of a script: the verdict on each sentence beside the line that says it.

    Parameters
    ----------
    lines : sequence of PlainLine
        How each line of the box was read.
    verdicts : sequence of Verdict
        The verdicts on the points of the talk, in their order.
    """
    by_place = {verdict.place: verdict for verdict in verdicts if verdict.where == POINT}
    found: list[Answer] = []
    for line in lines:
        said = [by_place[at] for at in range(line.entry, line.entry + line.makes) if at in by_place]
        found += [verdict_answer(line.place, verdict) for verdict in said]
        if not line.makes and (line.read_as or line.problem):
            found.append(_line_answer(line))
    return found


def said_answers(lines: Sequence[PlainLine], verdicts: Sequence[Verdict], where: str) -> list[Answer]:
    """Return the answers of a plan or of questions, with the verdict on the words of a step or an answer below it.

    Parameters
    ----------
    lines : sequence of PlainLine
        How each line of the box was read.
    verdicts : sequence of Verdict
        The verdicts of the whole talk.
    where : {"step", "answer"}
        Which of them are said in this box.
    """
    of = {verdict.place: verdict for verdict in verdicts if verdict.where == where}
    last = {line.entry: line.place for line in lines if line.entry >= 0 and not line.makes}  # where it is said in full
    found = line_answers(lines)
    for entry, place in last.items():
        verdict = of.get(entry)
        if verdict is not None and verdict.verdict != NOTHING_TO_CHECK:
            found = [answer for answer in found if answer["place"] != place]
            found.append(verdict_answer(place, verdict, can_pin=False))
    return sorted(found, key=lambda answer: answer["place"])


def verdict_answer(place: int, verdict: Verdict, *, can_pin: bool = True) -> Answer:
    """Return the verdict on one sentence as the answer beside its line.

    What holds instead takes the place of the sentence with one click; a word that could be several foods asks which.
    """
    acts = []
    point = verdict.point
    if verdict.instead and point is not None:
        swap = {"from": point.say, "to": verdict.instead}
        acts.append({"label": "Say this instead", "detail": verdict.instead, "replace": swap})
    choices = [
        {
            "label": f"Which {choice.word}?",
            "options": [list(option) for option in choice.options],
            "send": {"do": "pin", "at": verdict.place, "word": choice.word},
        }
        for choice in verdict.choices
        if can_pin
    ]
    said = verdict.verdict
    text = verdict.because if verdict.verdict != NOTHING_TO_CHECK else ""
    if verdict.on_her_word and point is not None:
        return _answer(place, PLAIN, "–", f"on your own word, {point.source}", text, choices=choices)
    return _answer(place, KINDS[verdict.verdict], SIGNS[verdict.verdict], said, text, acts, choices)


def asked_answer(
    place: int, asks: str, options: Sequence[tuple[str, str]], send: Mapping[str, Any], label: str
) -> Answer:
    """Return a question beside a line, with what settles it; what can be chosen needs no further words."""
    choices = [{"label": label, "options": [list(option) for option in options], "send": dict(send)}] if options else []
    text = "" if options else f"{asks[:1].upper()}{asks[1:]}"
    return _answer(place, ASK, "?", "to settle", text, choices=choices)


def plain_answer(place: int, text: str, kind: str = PLAIN) -> Answer:
    """Return what a line is read as."""
    return _answer(place, kind, text=text)


def _answer(
    place: int,
    kind: str,
    sign: str = "",
    said: str = "",
    text: str = "",
    acts: Sequence[Any] = (),
    choices: Sequence[Any] = (),
) -> Answer:
    return {
        "place": place,
        "kind": kind,
        "sign": sign,
        "said": said,
        "text": text,
        "acts": list(acts),
        "choices": list(choices),
    }
