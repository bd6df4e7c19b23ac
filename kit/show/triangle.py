"""The balance of protein, fat and carbohydrate as a point in a triangle: near by, with the whole of it small beside.

Drawn on plain axes rather than plotly's triangular ones, which can neither show a part of the triangle nor keep words
clear of it, and take three times as long to redraw. One unit of the picture is one percent of the energy.
"""

import math
from collections.abc import Mapping, Sequence
from itertools import pairwise
from typing import Any

from kit.show.captions import CORNERS, balance_sentence, say_balance
from kit.show.marks import BAND, INK, LINE, NAME_SIZE, SOFT, Drawing, chart, drawing, words
from kit.show.region import share_region

WIDE = 2.7  # width of the picture, in heights
MIDDLE = (
    70.0  # what the picture is centred on from left to right, right of the region, with room for the whole triangle
)
HEIGHTS = (40.0, 62.0, 100.0)  # of the picture: near, farther, and all of the triangle [% of the energy]
_RISE = math.sqrt(3) / 2
_UNKNOWN = (None, None)
Point = tuple[float | None, float | None]


def place(shares: Sequence[float]) -> Point:
    """Return where shares of protein, fat and carbohydrate lie, protein upward, carbohydrate to the right. [%]

    Examples
    --------
    >>> place([0.0, 0.0, 1.0]), place([float("nan")] * 3)
    ((100.0, 0.0), (None, None))
    """
    protein, _fat, carbohydrate = shares
    if any(map(math.isnan, shares)):
        return _UNKNOWN
    return 100 * (carbohydrate + protein / 2), 100 * protein * _RISE


@chart
def balance(
    now: Mapping[str, float],
    ranges: Mapping[str, tuple[float, float]],
    written: Mapping[str, float] | None = None,
) -> Drawing:
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
        Shaded region, hollow dot as written, filled dot now, their names beside the region, the whole triangle small.
    """
    written = now if written is None else written
    here, there = (place([shares[name] for name in CORNERS]) for shares in (now, written))
    region = [place(corner) for corner in share_region([ranges[name] for name in CORNERS])]
    whole = [place(corner) for corner in ((1, 0, 0), (0, 1, 0), (0, 0, 1), (1, 0, 0))]
    height = _height([here, there])
    low, left, right = -0.1 * height, MIDDLE - WIDE * height / 2, MIDDLE + WIDE * height / 2
    top = low + height
    dots = _dots(here, there)
    names = _names([(point, text) for point, text, _ in dots], low, top, left, right)
    small = _small((right - 0.68 * height, low + 0.5 * height), 0.47 * height / 100)
    traces = [
        _line(_grid(left), LINE, 1),
        _line(whole, SOFT, 2),
        {**_line(region, SOFT, 2), "fill": "toself", "fillcolor": BAND},
        _line([point for start, end, _ in names for point in (start, end, _UNKNOWN)], SOFT, 1),
        _marks([(point, symbol) for point, _, symbol in dots], 20),
        words(
            [x for _, (x, _y), _t in names],
            [y for _, (_x, y), _t in names],
            [text for *_, text in names],
            NAME_SIZE,
            "middle left" if names and names[0][1][0] < MIDDLE else "middle right",
            weight=600,
        ),
        _hints(region, left, top, low),
        _line([small(point) for point in whole], SOFT, 2),
        {**_line([small(point) for point in region], SOFT, 1), "fill": "toself", "fillcolor": BAND},
        _marks([(small(point), symbol) for point, _, symbol in dots[-1:]], 9),
        _corners([small(point) for point in whole[:3]], height),
    ]
    layout: dict[str, Any] = {
        "title": {"text": "Balance of protein, fat and carbohydrate"},
        "height": 380,
        "margin": {"l": 4, "r": 4, "t": 40, "b": 4},
        "xaxis": {"range": [left, right], "showticklabels": False, "zeroline": False},
        "yaxis": {"range": [low, top], "showticklabels": False, "scaleanchor": "x"},
    }
    key = "Full dot: now. Hollow dot: as written. Ranges for adults (IOM)."
    return drawing(traces, layout, say_balance(now, ranges), balance_sentence(now, ranges), key)


def _height(dots: Sequence[Point]) -> float:
    """Return the height of the picture that shows the dots, as near as may be."""
    known = [(x, y) for x, y in dots if x is not None and y is not None]
    fits = [
        height
        for height in HEIGHTS
        if all(
            y < 0.8 * height and MIDDLE - WIDE * height / 2 + 0.2 * height < x < MIDDLE + 0.75 * height
            for x, y in known
        )
    ]
    return fits[0] if fits else HEIGHTS[-1]


def _dots(here: Point, there: Point) -> list[tuple[Point, str, str]]:
    """Return the dots with their names and symbols, the one as written first; one where both are the same."""
    apart = here == _UNKNOWN or there == _UNKNOWN or math.dist(here, there) >= 0.5  # type: ignore[arg-type]
    names = ("as written", "now") if apart else ("", "now, as written")
    return [(there, names[0], "circle-open"), (here, names[1], "circle")]


def _names(
    dots: Sequence[tuple[Point, str]], low: float, top: float, left: float, right: float
) -> list[tuple[Point, tuple[float, float], str]]:
    """Return for each dot its place, where its name stands, clear of the region and of the other name, and the name."""
    known = [(point, text) for point, text in dots if point != _UNKNOWN and text]
    leftmost = min((point[0] or 0.0 for point, _ in known), default=0.0)
    x = 50.0 if leftmost > 53 else 78.0
    height = top - low
    levels = sorted(known, key=lambda pair: pair[0][1] or 0.0)
    places = [(point[1] or 0.0) + 0.06 * height for point, _ in levels]
    for lower, upper in pairwise(range(len(places))):
        places[upper] = max(places[upper], places[lower] + 0.13 * height)
    return [(point, (x, y), text) for (point, text), y in zip(levels, places, strict=True)]


def _grid(left: float) -> list[Point]:
    """Return the lines of equal protein, every tenth."""
    points: list[Point] = []
    for protein in range(10, 100, 10):
        y = protein * _RISE
        points += [(max(protein / 2, left), y), (100 - protein / 2, y), _UNKNOWN]
    return points


def _hints(region: Sequence[Point], left: float, top: float, low: float) -> dict[str, Any]:
    """Name the region above it, and say at the edges which way what grows."""
    height = top - low
    tip = max(region, key=lambda point: point[1] or 0.0, default=(60.0, 30.0))
    points = [
        (tip[0], (tip[1] or 0.0) + 0.09 * height, "all three in their<br>usual ranges"),
        (left + 0.2 * height, low + 0.05 * height, "← more fat"),
        (MIDDLE + 0.3 * height, low + 0.05 * height, "more carbohydrate →"),
        (left + 0.42 * height, low + 0.92 * height, "↑ more protein"),
    ]
    return words(
        [x or 0.0 for x, _, _ in points], [y for _, y, _ in points], [t for *_, t in points], 18, "middle center", SOFT
    )


def _small(corner: tuple[float, float], scale: float) -> Any:
    """Return the function that places a point in the small triangle, whose lower left corner is given."""

    def there(point: Point) -> Point:
        x, y = point
        return _UNKNOWN if x is None or y is None else (corner[0] + scale * x, corner[1] + scale * y)

    return there


def _corners(corners: Sequence[Point], height: float) -> dict[str, Any]:
    """Name the corners of the small triangle."""
    shifts = ((0.0, 0.05), (0.0, -0.05), (0.0, -0.05))
    points = [
        ((x or 0.0) + dx * height, (y or 0.0) + dy * height) for (x, y), (dx, dy) in zip(corners, shifts, strict=True)
    ]
    names = [CORNERS[0], CORNERS[1], "carbohydrate"]
    return words([x for x, _ in points], [y for _, y in points], names, 18, "middle center", SOFT)


def _line(points: Sequence[Point], colour: str, width: float) -> dict[str, Any]:
    return {
        "type": "scatter",
        "mode": "lines",
        "x": [x for x, _ in points],
        "y": [y for _, y in points],
        "line": {"color": colour, "width": width},
    }


def _marks(points: Sequence[tuple[Point, str]], size: int) -> dict[str, Any]:
    symbols = [symbol for _, symbol in points]
    marker = {"symbol": symbols, "size": size, "color": INK, "line": {"width": 3, "color": INK}}
    x, y = [x for (x, _), _ in points], [y for (_, y), _ in points]
    return {"type": "scatter", "mode": "markers", "x": x, "y": y, "marker": marker, "cliponaxis": False}
