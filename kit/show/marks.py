"""What the charts are made of: the look of a figure, its bars, the as-written mark, the words in their column."""

import functools
import math
from collections.abc import Callable, Sequence
from typing import Any

import plotly.graph_objects as go

from kit.show.look import colours, family

Drawing = dict[str, Any]  # what plotly.js draws: {"data": [trace, ...], "layout": {...}}

INK, SOFT, LINE, PAPER, BAND, ACT = (colours()[name] for name in ("ink", "soft", "line", "paper", "band", "act"))
TEXT_SIZE = 18  # smallest text [px]; an audience window draws everything twice as large
NAME_SIZE = 25  # what a bar is of, where few bars stand [px]
SPOKEN_SIZE = 38  # numbers that are read aloud [px]
NAME_LENGTH = 24  # longest name beside a bar [characters]
HATCH = {"shape": "/", "fillmode": "overlay", "fgcolor": PAPER, "size": 8, "solidity": 0.25}
_CHARACTER_WIDTH = 0.53  # of an average letter, as a part of the font size

# Drawn without measuring ("allow", fixed margins, no automatic ranges): measuring took a third of each redraw.
_AXIS = {
    "showgrid": False,
    "gridcolor": LINE,
    "zeroline": False,
    "fixedrange": True,
    "ticks": "",
    "ticklabeloverflow": "allow",
}


class Chart:
    """A function that returns a plotly Figure, checked by plotly, made from one that returns a plain drawing.

    The plain one stays at hand as ``.drawing``: the stage draws on every move of a slider, and four drawings take
    0.4 ms where four checked Figures take 9 ms.
    """

    def __init__(self, draw: Callable[..., Drawing]) -> None:
        functools.update_wrapper(self, draw)
        self.__annotations__ = {**draw.__annotations__, "return": go.Figure}
        self.drawing = draw

    def __call__(self, *args: Any, **kwargs: Any) -> go.Figure:
        """Return the drawing as a plotly Figure."""
        return go.Figure(self.drawing(*args, **kwargs))


def chart(draw: Callable[..., Drawing]) -> Chart:
    """Turn a function that returns a plain drawing into a `Chart`."""
    return Chart(draw)


def drawing(
    traces: Sequence[dict[str, Any]], layout: dict[str, Any], alternative: str, sentence: str = "", key: str = ""
) -> Drawing:
    """Return traces and layout in the kit's look.

    Parameters
    ----------
    traces, layout : sequence of dict, dict
        As plotly takes them.
    alternative : str
        One sentence for those who cannot see the chart.
    sentence : str
        The short sentence that stands with it.
    key : str
        What its marks mean, and whose figures it draws.
    """
    whole = {
        **layout,
        "template": {},
        "meta": {"alternative": alternative, "sentence": sentence, "key": key},
        "font": {"family": family(), "size": TEXT_SIZE, "color": INK},
        "title": {"x": 0, "xref": "container", "pad": {"l": 8}, "font": {"size": TEXT_SIZE + 2}, **layout["title"]},
        "margin": {"t": 44, **layout["margin"]},
        "paper_bgcolor": PAPER,
        "plot_bgcolor": PAPER,
        "showlegend": False,
        "hovermode": False,
        "dragmode": False,
    }
    if "xaxis" in layout:
        line = {"zeroline": True, "zerolinecolor": INK, "zerolinewidth": 2}
        whole |= {name: {**_AXIS, **line, **axis} for name, axis in layout.items() if name.startswith("xaxis")}
        beside = {"ticklabelstandoff": 8}
        whole |= {name: {**_AXIS, **beside, **axis} for name, axis in layout.items() if name.startswith("yaxis")}
    return {"data": list(traces), "layout": whole}


def bars(x: Sequence[float], rows: Sequence[float], colour: str | list[str], width: float = 0.62) -> dict[str, Any]:
    """Make the bars of the dish as it is now; `width` in rows."""
    marker = {"color": colour}
    return {"type": "bar", "orientation": "h", "x": plain(x), "y": list(rows), "width": width, "marker": marker}


def as_written_mark(x: Sequence[float], rows: Sequence[float], size: int) -> dict[str, Any]:
    """Make the thin upright marks of the recipe as written."""
    marker = {"symbol": "line-ns", "size": size, "line": {"color": INK, "width": 3}}
    return {"type": "scatter", "mode": "markers", "x": plain(x), "y": list(rows), "marker": marker, "cliponaxis": False}


def words(
    x: Sequence[float],
    rows: Sequence[float],
    texts: Sequence[str],
    size: int = TEXT_SIZE,
    side: str = "middle right",
    colour: str | list[str] = INK,
    weight: int = 400,
) -> dict[str, Any]:
    """Make words that stand at points: beside them, or as `side` says."""
    space = " " * max(1, round(36 / size))  # as wide for every size
    gap = {"middle right": (space, ""), "middle left": ("", space)}.get(side, ("", ""))
    return {
        "type": "scatter",
        "mode": "text",
        "x": list(x),
        "y": list(rows),
        "text": [f"{gap[0]}{text}{gap[1]}" if text else "" for text in texts],
        "textposition": side,
        "textfont": {"size": size, "color": colour, "weight": weight},
        "cliponaxis": False,
    }


def change_colours(now: Sequence[str], written: Sequence[str]) -> list[str]:
    """Return the colours of words: what changed in the one colour that says so."""
    return [INK if here == there else ACT for here, there in zip(now, written, strict=True)]


def nothing_as_zero(value: float) -> float:
    """Return where an unknown value is drawn, which is nowhere: at the foot of its axis."""
    return 0.0 if math.isnan(value) else float(value)


def plain(values: Sequence[float]) -> list[float | None]:
    """Return numbers as JSON knows them: what is missing becomes None, which plotly leaves out."""
    return [None if math.isnan(value) else float(value) for value in values]


def round_up(highest: float) -> float:
    """Return the end of an axis: the first of a few steps times a power of ten that is not below `highest`.

    Few ends, so that an axis stands still during most of a slider's way; close ones, so that bars use the width.

    Examples
    --------
    >>> round_up(0), round_up(7.6), round_up(120)
    (1.0, 8.0, 120.0)
    """
    if highest <= 0:
        return 1.0
    power = 10.0 ** math.floor(math.log10(highest))
    steps = (1.0, 1.2, 1.5, 2.0, 2.5, 3.0, 4.0, 5.0, 6.0, 8.0, 10.0, 12.0)
    return next(step * power for step in steps if step * power >= highest * (1 - 1e-12))


def shorten(name: str, length: int = NAME_LENGTH) -> str:
    """Cut a long name after a whole word.

    Examples
    --------
    >>> shorten("Sweet potato, baked in its skin, without salt")
    'Sweet potato, baked in…'
    """
    if len(name) <= length:
        return name
    cut = name[: length - 1]
    kept = cut.rsplit(" ", 1)[0] if " " in cut else cut
    return f"{kept.rstrip(' ,;')}…"


def room(labels: Sequence[str], size: int = TEXT_SIZE, least: int = 0) -> int:
    """Return the room that words need, with a little air around them [px]."""
    longest = max((len(label) for label in labels), default=0)
    return max(least, 24 + round(_CHARACTER_WIDTH * size * longest))
