"""The region of a three-way balance in which all three ranges hold."""

from collections.abc import Sequence

Corner = tuple[float, float, float]
_WHOLE: tuple[Corner, ...] = ((1.0, 0.0, 0.0), (0.0, 1.0, 0.0), (0.0, 0.0, 1.0))  # the triangle of all shares


def share_region(ranges: Sequence[tuple[float, float]]) -> list[Corner]:
    """Return the corners of the region where three shares that add to one lie in their ranges.

    The triangle of all shares is cut by one straight line for each end of each range (the polygon clipping of [1]_).

    Parameters
    ----------
    ranges : sequence of (float, float), length 3
        Lowest and highest share of each part. [fraction]

    Returns
    -------
    list of (float, float, float)
        Corners in order around the region, the first repeated at the end; empty when no shares meet all ranges.

    References
    ----------
    .. [1] Sutherland I. E. and Hodgman G. W., "Reentrant polygon clipping", Communications of the ACM 17(1), 1974.

    Examples
    --------
    >>> share_region([(0.5, 1), (0, 1), (0, 1)])
    [(0.5, 0.0, 0.5), (1.0, 0.0, 0.0), (0.5, 0.5, 0.0), (0.5, 0.0, 0.5)]
    """
    corners = list(_WHOLE)
    for axis, (low, high) in enumerate(ranges):
        corners = _cut(corners, axis, low, 1.0)
        corners = _cut(corners, axis, high, -1.0)
    rounded = [(_tidy(first), _tidy(second), _tidy(third)) for first, second, third in corners]
    kept = [corner for place, corner in enumerate(rounded) if corner != rounded[place - 1]]
    return [*kept, kept[0]] if kept else []


def _tidy(share: float) -> float:
    return round(share, 12) + 0.0  # no -0


def _cut(corners: Sequence[Corner], axis: int, limit: float, sign: float) -> list[Corner]:
    """Keep the part of a polygon where ``sign * (share - limit) >= 0`` on one axis."""
    kept: list[Corner] = []
    for place, corner in enumerate(corners):
        before = corners[place - 1]
        here, there = sign * (corner[axis] - limit), sign * (before[axis] - limit)
        if (here < 0) != (there < 0):
            part = there / (there - here)
            first, second, third = (old + (new - old) * part for old, new in zip(before, corner, strict=True))
            kept.append((first, second, third))
        if here >= 0:
            kept.append(corner)
    return kept
