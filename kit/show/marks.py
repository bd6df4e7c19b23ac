"""What the charts are made of: the look of a figure, its bars, the as-written mark, the words beside a bar."""

import functools
import math
from collections.abc import Callable, Sequence
from typing import Any

import plotly.graph_objects as go

from kit.show.look import colours, family

Drawing = dict[str, Any]  # what plotly.js draws: {"data": [trace, ...], "layout": {...}}

INK, SOFT, LINE, PAPER = (colours()[name] for name in ("ink", "soft", "line", "paper"))
TEXT_SIZE = 18  # smallest text on a 1920 x 1080 screen [px]
NAME_LENGTH = 24  # longest name beside a bar [characters]
_CHARACTER_WIDTH = 0.58  # of an average letter, as a part of the font size

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


def drawing(traces: Sequence[dict[str, Any]], layout: dict[str, Any], alternative: str) -> Drawing:
    """Return traces and layout in the kit's look; `alternative` is their one sentence for those who cannot see them."""
    whole = {
        **layout,
        "template": {},
        "meta": {"alternative": alternative},
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
        whole["xaxis"] = {**_AXIS, **line, **layout["xaxis"]}
        whole["yaxis"] = {**_AXIS, "ticklabelstandoff": 8, **layout["yaxis"]}
    return {"data": list(traces), "layout": whole}


def bars(x: Sequence[float], rows: Sequence[int], colour: str | list[str], width: float = 0.62) -> dict[str, Any]:
    """Make the bars of the dish as it is now; `width` in rows."""
    marker = {"color": colour}
    return {"type": "bar", "orientation": "h", "x": plain(x), "y": list(rows), "width": width, "marker": marker}


def as_written_mark(x: Sequence[float], rows: Sequence[int], size: int) -> dict[str, Any]:
    """Make the thin upright marks of the recipe as written."""
    marker = {"symbol": "line-ns", "size": size, "line": {"color": INK, "width": 3}}
    return {"type": "scatter", "mode": "markers", "x": plain(x), "y": list(rows), "marker": marker, "cliponaxis": False}


def words_beside(
    x: Sequence[float], rows: Sequence[int], texts: Sequence[str], size: int = TEXT_SIZE
) -> dict[str, Any]:
    """Make the words that stand to the right of `x`."""
    return {
        "type": "scatter",
        "mode": "text",
        "x": list(x),
        "y": list(rows),
        "text": [f"  {text}" for text in texts],
        "textposition": "middle right",
        "textfont": {"size": size},
        "cliponaxis": False,
    }


def beyond(now: Sequence[float], written: Sequence[float]) -> list[float]:
    """Return where words clear both the bar and the mark; 0 where both are unknown."""
    return [max(map(nothing_as_zero, pair)) for pair in zip(now, written, strict=True)]


def nothing_as_zero(value: float) -> float:
    """Return where an unknown value is drawn, which is nowhere: at the foot of its axis."""
    return 0.0 if math.isnan(value) else float(value)


def plain(values: Sequence[float]) -> list[float | None]:
    """Return numbers as JSON knows them: what is missing becomes None, which plotly leaves out."""
    return [None if math.isnan(value) else float(value) for value in values]


def round_up(highest: float) -> float:
    """Return the end of an axis: the first of 1, 1.5, 2, 3, 5, 7.5 times a power of ten that is not below `highest`.

    Few ends, so that an axis stands still during most of a slider's way.

    Examples
    --------
    >>> round_up(0), round_up(7.6), round_up(120)
    (1.0, 10.0, 150.0)
    """
    if highest <= 0:
        return 1.0
    power = 10.0 ** math.floor(math.log10(highest))
    return next(step * power for step in (1.0, 1.5, 2.0, 3.0, 5.0, 7.5, 10.0, 15.0) if step * power >= highest)


def shorten(name: str) -> str:
    """Cut a long name after a whole word.

    Examples
    --------
    >>> shorten("Sweet potato, baked in its skin, without salt")
    'Sweet potato, baked in…'
    """
    if len(name) <= NAME_LENGTH:
        return name
    cut = name[: NAME_LENGTH - 1]
    kept = cut.rsplit(" ", 1)[0] if " " in cut else cut
    return f"{kept.rstrip(' ,;')}…"


def left_margin(labels: Sequence[str]) -> int:
    """Return the room that names need left of their bars, at least that of a short name [px]."""
    longest = max((len(label.replace("<b>", "").replace("</b>", "")) for label in labels), default=0)
    return 24 + round(_CHARACTER_WIDTH * TEXT_SIZE * max(longest, 8))
