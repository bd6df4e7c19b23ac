"""How people answered, as bars: one chart for each question that can be counted."""

from kit.share.survey import Question
from kit.show.charts import ROW
from kit.show.escaping import in_chart
from kit.show.look import colours
from kit.show.marks import TEXT_SIZE, Drawing, bars, chart, drawing, room, shorten, words
from kit.texts import listing, number

_LONGEST_ANSWER = 34  # characters beside a bar


@chart
def answers(question: Question) -> Drawing:
    """Draw how many gave each answer to a question.

    Parameters
    ----------
    question : Question
        A rating or a choice.

    Returns
    -------
    plotly.graph_objects.Figure
        A bar for each answer, with its count.
    """
    labels = [shorten(answer, _LONGEST_ANSWER) for answer, _ in question.counts]
    counts = [float(count) for _, count in question.counts]
    rows = list(range(len(counts)))
    most = max([1.0, *counts])
    traces = [
        bars(counts, rows, colours()["act"]),
        words(counts, rows, [number(count) for count in counts], TEXT_SIZE + 2, weight=600),
    ]
    lowest = max(len(rows), 3)
    layout = {
        "title": {"text": in_chart(shorten(question.asks, 70))},
        "height": 50 + ROW * lowest,
        "margin": {"l": room(labels, least=110), "r": 60, "b": 6},
        "xaxis": {"range": [0, most], "showticklabels": False},
        "yaxis": {"tickvals": rows, "ticktext": [*map(in_chart, labels)], "range": [lowest - 0.4, -0.5]},
    }
    return drawing(traces, layout, say_answers(question), answers_sentence(question))


def say_answers(question: Question) -> str:
    """Say how many gave each answer.

    Examples
    --------
    >>> say_answers(Question("Useful?", "choice", (("Yes", 3), ("No", 1)), (), 4))
    'Useful? Yes 3, No 1, of 4 who answered.'
    """
    told = ", ".join(f"{answer} {count}" for answer, count in question.counts)
    return f"{question.asks} {told}, of {question.answered} who answered."


def answers_sentence(question: Question) -> str:
    """Say in one short sentence how a question was answered.

    Examples
    --------
    >>> answers_sentence(Question("Useful?", "rating", (("4", 1), ("5", 3)), (), 4, 4.75))
    'On average 4.8, from 4 answers.'
    >>> answers_sentence(Question("Useful?", "choice", (("Yes", 3), ("No", 1)), (), 4))
    '3 of 4 say "Yes".'
    """
    if question.mean is not None:
        return f"On average {number(question.mean, 1)}, from {question.answered} answers."
    most = max((count for _, count in question.counts), default=0)
    first = listing([f'"{answer}"' for answer, count in question.counts if count == most][:2])
    return f"{most} of {question.answered} say {first}."
