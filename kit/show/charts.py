"""The bar charts of the talk: plain numbers in, plotly Figure out.

All of them speak one language: a bar is the dish as it is now, a thin upright mark is the recipe as written, and the
words of every bar stand in a column of their own, at the right, so that none reads as lying inside a band. Each figure
carries in ``layout.meta`` the sentence that stands with it, what its marks mean, and its one sentence for those who
cannot see it (`kit.show.captions`). The number of traces of a chart never depends on its numbers.

Colours: Okabe M. and Ito K., "Color Universal Design: how to make figures and presentations that are friendly to
colorblind people", 2002 (revised 2008); assigned to the nutrients by us.
"""

import math
from collections.abc import Collection, Mapping, Sequence
from typing import Any

from kit.show.captions import (
    changed,
    day_sentence,
    day_words,
    energy_sentence,
    range_words,
    rest_words,
    say_energy_shares,
    say_share_of_day,
    say_sources,
    sources_sentence,
)
from kit.show.escaping import in_chart
from kit.show.look import colours
from kit.show.marks import (
    BAND,
    HATCH,
    NAME_SIZE,
    SOFT,
    SPOKEN_SIZE,
    TEXT_SIZE,
    Drawing,
    as_written_mark,
    bars,
    change_colours,
    chart,
    drawing,
    nothing_as_zero,
    room,
    round_up,
    shorten,
    words,
)
from kit.texts import number, percent, quantity

COLOURS = {name: colours()[name] for name in ("protein", "fat", "carbohydrate", "other")}
LIMIT_COLOUR, ENOUGH_COLOUR = colours()["limit"], colours()["enough"]
KEY = "Bar: now. Upright mark: as written."
ROW = 30  # height of a bar with its words [px]
MOST_ROWS = 8  # ingredients with a bar of their own
AIR = 1.2  # by which the axis of sources reaches beyond the longest bar as written
LONGEST = 2.0  # days, where the axis of their shares ends at the latest; the number tells how far a longer bar goes

Shares = Mapping[str, float]
Ranges = Mapping[str, tuple[float, float]]


def source_colour(nutrient: str) -> str:
    """Return the colour of the bars that show where a nutrient comes from."""
    return COLOURS.get(nutrient, COLOURS["other"])


@chart
def energy_shares(now: Shares, ranges: Ranges, written: Shares | None = None) -> Drawing:
    """Draw each share of energy as a bar on a 0-100 % line, over the range that is acceptable for adults.

    Parameters
    ----------
    now, written : mapping of str to float
        Share of energy by name (``"protein"``, ``"fat"``, ``"carbohydrate"``), as the dish is now and as its recipe is
        written; NaN for a dish without energy. [fraction]
    ranges : mapping of str to (float, float)
        Lowest and highest acceptable share; a name may be missing. [fraction]

    Returns
    -------
    plotly.graph_objects.Figure
        Bars, as-written marks, names with their ranges, percents, and where each lies.
    """
    written = now if written is None else written
    names, rows = list(now), list(range(len(now)))
    here, there = [now[name] * 100 for name in names], [written[name] * 100 for name in names]
    said, before = [percent(now[name]) for name in names], [percent(written[name]) for name in names]
    known = [(row, *ranges[name]) for row, name in enumerate(names) if name in ranges]
    titles = [in_chart(name.capitalize()) for name in names]
    limits = {row: f"usual {number(100 * low)}–{percent(high)}" for row, low, high in known}
    usual = [limits.get(row, "") for row in rows]
    where = [
        " · ".join(filter(None, (range_words(now[name], ranges.get(name)), "" if a == b else f"was {b}")))
        for name, a, b in zip(names, said, before, strict=True)
    ]
    colour = change_colours(said, before)
    left, right = [0.0] * len(rows), [100.0] * len(rows)
    traces = [
        bars(here, rows, [COLOURS.get(name, COLOURS["other"]) for name in names], width=0.36),
        as_written_mark(there, rows, 52),
        words(left, [row - 0.13 for row in rows], titles, NAME_SIZE, "middle left", weight=650),
        words(left, [row + 0.17 for row in rows], usual, side="middle left", colour=SOFT),
        words(right, [row - 0.13 for row in rows], said, SPOKEN_SIZE, colour=colour, weight=700),
        words(right, [row + 0.23 for row in rows], where, colour=colour),
        _first_band(known),
    ]
    bands = [
        {"x0": low * 100, "x1": high * 100, "y0": row - 0.32, "y1": row + 0.32, "fillcolor": BAND, "line": {"width": 0}}
        for row, low, high in known
    ]
    layout: dict[str, Any] = {
        "title": {"text": "Shares of energy"},
        "height": 76 + 92 * len(names),
        "margin": {"l": 190, "r": 250, "b": 6},
        "shapes": [{"type": "rect", "layer": "below", **band} for band in bands],
        "xaxis": {"range": [0, 100], "showticklabels": False},
        "yaxis": {"showticklabels": False, "range": [len(rows) - 0.6, -0.62]},
    }
    key = f"{KEY} Shaded: usual for adults (IOM)."
    return drawing(traces, layout, say_energy_shares(now, ranges), energy_sentence(now, ranges), key)


def _first_band(known: Sequence[tuple[int, float, float]]) -> dict[str, Any]:
    """Name the first band where it stands."""
    at = [(100 * low, row - 0.46) for row, low, _ in known[:1]]
    return words([x for x, _ in at], [y for _, y in at], ["usual range"] * len(at), side="middle right", colour=SOFT)


@chart
def sources(
    names: Sequence[str],
    now: Sequence[float],
    nutrient: str,
    unit: str,
    written: Sequence[float] | None = None,
    decimals: int = 0,
    colour: str = COLOURS["other"],
    said: Sequence[str] | None = None,
) -> Drawing:
    """Draw where a nutrient comes from: a bar for each ingredient that brings some, the largest as written on top.

    Parameters
    ----------
    names, said : sequence of str, length n
        Ingredients, and their names within a sentence; a name may occur twice.
    now, written : sequence of float, length n
        What each brings to a serving; NaN where its food was never analysed for it. [unit]
    nutrient, unit : str
        What is drawn, in words.
    decimals : int
        Digits after the point in the words.
    colour : str
        Colour of the bars.

    Returns
    -------
    plotly.graph_objects.Figure
        Bars, as-written marks, words, and what the others bring.
    """
    written = now if written is None else written
    # The order is the recipe's as written, so that no bar jumps while a slider is dragged.
    order = sorted(range(len(names)), key=lambda at: (-nothing_as_zero(written[at]), -nothing_as_zero(now[at])))
    nothing = quantity(0, unit, decimals)
    here, there = ([quantity(values[at], unit, decimals) for at in order] for values in (now, written))
    brings = [place for place in range(len(order)) if here[place] != nothing or there[place] != nothing]
    if len(brings) > MOST_ROWS + 1:
        brings = brings[:MOST_ROWS]
    kept, rows = [order[place] for place in brings], list(range(len(brings)))
    rest = [0.0 if here[at] == nothing else now[order[at]] for at in range(len(order)) if at not in brings]
    texts = [changed(here[place], there[place]) for place in brings]
    labels = [shorten(names[at]) for at in kept]
    lowest = max(len(rows) + bool(rest), 4)  # a dish of one ingredient gets a bar, not a wall
    values, before = [now[at] for at in kept], [written[at] for at in kept]
    # Some air above the recipe as written: with another end of its axis a chart is drawn anew, not moved.
    end = round_up(max([0.0, *map(nothing_as_zero, values), *(AIR * nothing_as_zero(value) for value in before)]))
    folded = rest_words(rest, unit, decimals)
    traces = [
        bars(values, rows, colour),
        as_written_mark(before, rows, 22),
        words(
            [end] * len(rows),
            rows,
            texts,
            TEXT_SIZE + 2,
            colour=change_colours([here[place] for place in brings], [there[place] for place in brings]),
            weight=600,
        ),
        words([0.0] if rest else [], [len(rows)] if rest else [], [f"and {folded}"] if rest else [], colour=SOFT),
    ]
    layout: dict[str, Any] = {
        "title": {"text": f"Where the {nutrient[:1].lower()}{nutrient[1:]} comes from"},
        "height": 50 + ROW * lowest,
        "margin": {"l": room(labels, least=110), "r": room([*texts, "100 mg, was 100 mg"], TEXT_SIZE + 2), "b": 6},
        "xaxis": {"range": [0, end], "showticklabels": False},
        "yaxis": {"tickvals": rows, "ticktext": [*map(in_chart, labels)], "range": [lowest - 0.4, -0.5]},
    }
    sentence = sources_sentence(said or names, now, nutrient)
    key = f"Per serving. {KEY}"
    return drawing(traces, layout, say_sources(names, now, nutrient, unit, decimals), sentence, key)


@chart
def share_of_day(
    now: Shares,
    limit: Collection[str],
    written: Shares | None = None,
    at_least: Collection[str] = (),
) -> Drawing:
    """Draw what a serving is of the daily value: first the nutrients to get enough of, then, hatched, those to limit.

    Parameters
    ----------
    now, written : mapping of str to float
        Share of the daily value by the nutrient's name; NaN when unknown. [fraction]
    limit : collection of str
        Names of the nutrients to keep down.
    at_least : collection of str
        Names whose total lacks a food that was never analysed for it: shown as "at least".

    Returns
    -------
    plotly.graph_objects.Figure
        Bars in two groups, as-written marks, words and the 100 % line.
    """
    written = now if written is None else written
    groups = {
        "Get enough of": [name for name in now if name not in limit],
        "Keep down": [*filter(limit.__contains__, now)],
    }
    labels: list[str] = []
    where: dict[str, int] = {}
    for heading, members in groups.items():
        if members:
            where |= {name: len(labels) + 1 + place for place, name in enumerate(members)}
            labels += [f"<b>{heading}</b>", *(in_chart(shorten(name)) for name in members)]
    texts = [day_words(now[name], written[name], name in at_least) for name in where]
    highest = max([1.0, *(nothing_as_zero(shares[name]) for shares in (now, written) for name in where)])
    end = round_up(100 * min(LONGEST, highest))
    enough, less = (
        bars([_cut(now[name], end) for name in members], [where[name] for name in members], colour)
        for members, colour in zip(groups.values(), (ENOUGH_COLOUR, LIMIT_COLOUR), strict=True)
    )
    less["marker"]["pattern"] = HATCH
    rows, lowest = list(where.values()), max(len(labels), 4)
    colour = change_colours([percent(now[name]) for name in where], [percent(written[name]) for name in where])
    traces = [
        enough,
        less,
        as_written_mark([_cut(written[name], end) for name in where], rows, 22),
        words([end] * len(rows), rows, texts, TEXT_SIZE + 2, colour=colour, weight=600),
        words([100.0], [0], ["100 % of a day"], side="middle left" if end < 125 else "middle right", colour=SOFT),
    ]
    line = {"color": SOFT, "width": 2, "dash": "dot"}
    layout: dict[str, Any] = {
        "title": {"text": "One serving as a share of the day"},
        "height": 50 + ROW * lowest,
        "margin": {"l": room([shorten(name) for name in now], least=110), "r": _day_room(texts), "b": 6},
        "shapes": [
            {"type": "line", "layer": "below", "x0": 100, "x1": 100, "y0": 0.5, "y1": lowest - 0.5, "line": line}
        ],
        "xaxis": {"range": [0, end], "showticklabels": False},
        "yaxis": {"tickvals": list(range(len(labels))), "ticktext": labels, "range": [lowest - 0.4, -0.5]},
    }
    return drawing(traces, layout, say_share_of_day(now, limit, at_least), day_sentence(now, limit), KEY)


def _cut(share: float, end: float) -> float:
    """Return how long a bar is drawn, at most to the end of its axis; NaN stays unknown. [%]"""
    return share if math.isnan(share) else min(100 * share, end)


def _day_room(texts: Sequence[str]) -> int:
    return room([*texts, "at least 100 %, was 100 %"], TEXT_SIZE + 2)
