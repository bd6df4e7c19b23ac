"""The four charts of the talk: plain numbers in, plotly Figure out.

All of them speak one language: a bar (or a filled dot) is the dish as it is now, a thin upright mark (or a hollow dot)
is the recipe as written, and every bar carries its own words, so that nothing is told by colour alone. Each figure's
``layout.meta["alternative"]`` is its one sentence from `kit.show.captions`, for those who cannot see it. The number of
traces of a chart never depends on its numbers, so that a change of the dish is only a change of arrays.

Colours: Okabe M. and Ito K., "Color Universal Design: how to make figures and presentations that are friendly to
colorblind people", 2002 (revised 2008); assigned to the nutrients by us.
"""

from collections.abc import Collection, Mapping, Sequence
from typing import Any

from kit.show.captions import CORNERS, changed, day_words, say_balance, say_energy_shares, say_share_of_day, say_sources
from kit.show.escaping import in_chart
from kit.show.look import colours
from kit.show.marks import (
    INK,
    LINE,
    PAPER,
    SOFT,
    TEXT_SIZE,
    Drawing,
    as_written_mark,
    bars,
    beyond,
    chart,
    drawing,
    left_margin,
    nothing_as_zero,
    plain,
    round_up,
    shorten,
    words_beside,
)
from kit.show.region import share_region
from kit.texts import percent, quantity

COLOURS = {name: colours()[name] for name in ("protein", "fat", "carbohydrate", "other")}
LIMIT_COLOUR, ENOUGH_COLOUR, BAND = (colours()[name] for name in ("limit", "enough", "band"))
HATCH = {"shape": "/", "fillmode": "overlay", "fgcolor": PAPER, "size": 8, "solidity": 0.25}
SPOKEN_SIZE = 24  # numbers that are read aloud [px]
WORDS = 220  # room for the words right of the longest bar [px]
ROW = 28  # height of a bar with its words [px]
QUARTERS = (0, 25, 50, 75, 100)

Shares = Mapping[str, float]
Ranges = Mapping[str, tuple[float, float]]


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
        Bars, as-written marks, words.
    """
    written = now if written is None else written
    names, rows = list(now), list(range(len(now)))
    here, there = [now[name] * 100 for name in names], [written[name] * 100 for name in names]
    texts = [changed(percent(now[name]), percent(written[name])) for name in names]
    traces = [
        bars(here, rows, [COLOURS.get(name, COLOURS["other"]) for name in names], width=0.4),
        as_written_mark(there, rows, 34),
        words_beside(beyond(here, there), rows, texts, SPOKEN_SIZE),
    ]
    known = [(row, *ranges[name]) for row, name in enumerate(names) if name in ranges]
    bands = [
        {"x0": low * 100, "x1": high * 100, "y0": row - 0.4, "y1": row + 0.4, "fillcolor": BAND, "line": {"width": 0}}
        for row, low, high in known
    ]
    limits = {row: f"{percent(low)[:-2]}–{percent(high)}" for row, low, high in known}
    labels = [f"<b>{in_chart(name.capitalize())}</b><br>{limits.get(row, '')}" for row, name in enumerate(names)]
    layout: dict[str, Any] = {
        "title": {"text": "Shares of energy, over the ranges for adults"},
        "height": 60 + 84 * len(names),
        "margin": {"l": 160, "r": 190, "b": 36},
        "shapes": [{"type": "rect", "layer": "below", **band} for band in bands],
        "xaxis": {
            "range": [0, 100],
            "tickvals": QUARTERS,
            "ticktext": ["0 %", "", "50 %", "", "100 %"],
            "tickangle": 0,
        },
        "yaxis": {"tickvals": rows, "ticktext": labels, "range": [len(rows) - 0.5, -0.5]},
    }
    layout["xaxis"]["showgrid"] = True
    return drawing(traces, layout, say_energy_shares(now, ranges))


@chart
def balance(now: Shares, ranges: Ranges, written: Shares | None = None) -> Drawing:
    """Draw the dish in the triangle of protein, fat and carbohydrate, with the region where all three ranges hold.

    Parameters
    ----------
    now, written : mapping of str to float
        Share of energy from ``"protein"``, ``"fat"`` and ``"carbohydrate"``; NaN draws no dot. [fraction]
    ranges : mapping of str to (float, float)
        Lowest and highest acceptable share of each. [fraction]

    Returns
    -------
    plotly.graph_objects.Figure
        A ternary plot: shaded region, hollow dot as written, filled dot now.
    """
    written = now if written is None else written
    here, there = ([100 * shares[name] for name in CORNERS] for shares in (now, written))
    apart = not all(abs(a - b) < 0.5 for a, b in zip(here, there, strict=True))  # so is what is unknown
    region = [[100 * corner[axis] for corner in share_region([ranges[name] for name in CORNERS])] for axis in range(3)]
    # The higher dot's words stand above it, the other's below, so that they never meet.
    side, other = ("top", "bottom") if not here[0] < there[0] else ("bottom", "top")
    shaded = {
        "type": "scatterternary",
        "mode": "lines",
        **dict(zip("abc", region, strict=True)),
        "fill": "toself",
        "fillcolor": BAND,
        "line": {"color": SOFT, "width": 2},
    }
    traces = [
        shaded,
        _dot(there, "as written" if apart else "", other, "circle-open"),
        _dot(here, "now" if apart else "now, as written", side, "circle"),
    ]
    axis = {"tickvals": [20, 40, 60, 80], "gridcolor": LINE, "linecolor": INK}
    axes = {
        f"{letter}axis": {**axis, "title": {"text": name.capitalize(), "font": {"size": TEXT_SIZE}}}
        for letter, name in zip("abc", CORNERS, strict=True)
    }
    layout = {
        "title": {"text": "Balance (shaded: all three ranges hold)"},
        "height": 440,
        "margin": {"l": 100, "r": 100, "t": 80, "b": 50},
        "ternary": {"sum": 100, "bgcolor": PAPER, **axes},
    }
    return drawing(traces, layout, say_balance(now, ranges))


@chart
def sources(
    names: Sequence[str],
    now: Sequence[float],
    nutrient: str,
    unit: str,
    written: Sequence[float] | None = None,
    decimals: int = 0,
    colour: str = COLOURS["other"],
) -> Drawing:
    """Draw where a nutrient comes from: a bar for each ingredient, the largest as written on top.

    Parameters
    ----------
    names : sequence of str, length n
        Ingredients; a name may occur twice.
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
        Bars, as-written marks, words.
    """
    written = now if written is None else written
    # The order is the recipe's as written, so that no bar jumps while a slider is dragged.
    order = sorted(range(len(names)), key=lambda at: (-nothing_as_zero(written[at]), -nothing_as_zero(now[at])))
    here, there, rows = [now[at] for at in order], [written[at] for at in order], list(range(len(order)))
    texts = [
        changed(quantity(a, unit, decimals), quantity(b, unit, decimals)) for a, b in zip(here, there, strict=True)
    ]
    labels = [shorten(names[at]) for at in order]
    lowest = max(len(rows), 4)  # a dish of one ingredient gets a bar, not a wall
    layout = {
        "title": {"text": f"Where the {nutrient[:1].lower()}{nutrient[1:]} comes from, {unit} a serving"},
        "height": 56 + ROW * lowest,
        "margin": {"l": left_margin(labels), "r": WORDS, "b": 8},
        "xaxis": {"range": [0, round_up(max([0.0, *beyond(here, there)]))], "showticklabels": False},
        "yaxis": {"tickvals": rows, "ticktext": [*map(in_chart, labels)], "range": [lowest - 0.5, -0.5]},
    }
    traces = [
        bars(here, rows, colour),
        as_written_mark(there, rows, 20),
        words_beside(beyond(here, there), rows, texts),
    ]
    return drawing(traces, layout, say_sources(names, now, nutrient, unit, decimals))


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
    end = beyond([100 * now[name] for name in where], [100 * written[name] for name in where])
    texts = [day_words(now[name], written[name], name in at_least) for name in where]
    enough, less = (
        bars([100 * now[name] for name in members], [where[name] for name in members], colour)
        for members, colour in zip(groups.values(), (ENOUGH_COLOUR, LIMIT_COLOUR), strict=True)
    )
    less["marker"]["pattern"] = HATCH
    rows = list(where.values())
    traces = [
        enough,
        less,
        as_written_mark([100 * written[name] for name in where], rows, 20),
        words_beside(end, rows, texts),
    ]
    layout = {
        "title": {"text": "One serving as a share of the day"},
        "height": 56 + ROW * len(labels),
        "margin": {"l": left_margin(labels), "r": WORDS, "b": 8},
        "shapes": [
            {
                "type": "line",
                "layer": "below",
                "x0": 100,
                "x1": 100,
                "y0": 0.5,
                "y1": len(labels) - 0.5,
                "line": {"color": SOFT, "width": 2, "dash": "dot"},
            }
        ],
        "annotations": [{"x": 100, "y": 0, "text": "100 % of the day", "xanchor": "left", "showarrow": False}],
        "xaxis": {"range": [0, round_up(max([100.0, *end]))], "showticklabels": False},
        "yaxis": {"tickvals": list(range(len(labels))), "ticktext": labels, "range": [len(labels) - 0.5, -0.5]},
    }
    return drawing(traces, layout, say_share_of_day(now, limit, at_least))


def _dot(shares: Sequence[float], text: str, side: str, symbol: str) -> dict[str, Any]:
    return {
        "type": "scatterternary",
        "mode": "markers+text",
        **{axis: plain([share]) for axis, share in zip("abc", shares, strict=True)},
        "text": [text],
        "textposition": f"{side} center",
        "textfont": {"size": SPOKEN_SIZE - 2},
        "marker": {"symbol": symbol, "size": 18, "color": INK, "line": {"width": 3, "color": INK}},
        "cliponaxis": False,
    }
