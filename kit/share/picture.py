"""A picture for paper: where the energy of a serving comes from, as SVG that needs no script."""

from collections.abc import Mapping
from html import escape
from math import isnan

from kit.show.captions import say_energy_shares
from kit.show.look import colours
from kit.texts import percent

WIDTH, ROW, NAMES, WORDS = 430, 32, 104, 58  # [px]; names stand left of the bars and words right of them
_RAIL = WIDTH - NAMES - WORDS
_BAR = 16


def energy_picture(shares: Mapping[str, float], ranges: Mapping[str, tuple[float, float]]) -> str:
    """Return the shares of energy as bars on a 0-100 % line, over the ranges for adults.

    Parameters
    ----------
    shares : mapping of str to float
        Share of energy by name; NaN where it is not known. [fraction]
    ranges : mapping of str to (float, float)
        Lowest and highest acceptable share. [fraction]
    """
    colour = colours()
    drawn = []
    for row, (name, share) in enumerate(shares.items()):
        top = row * ROW
        low, high = ranges.get(name, (0.0, 0.0))
        drawn.append(
            f'<rect x="{NAMES + low * _RAIL:.1f}" y="{top + 2}" width="{(high - low) * _RAIL:.1f}" height="{ROW - 4}"'
            f' fill="{colour["band"]}"/>'
        )
        width = 0.0 if isnan(share) else share * _RAIL
        drawn.append(
            f'<rect x="{NAMES}" y="{top + (ROW - _BAR) / 2}" width="{width:.1f}" height="{_BAR}"'
            f' fill="{colour[name]}"/>'
        )
        middle = top + ROW / 2
        drawn.append(_text(NAMES - 10, middle, escape(name.capitalize()), "end"))
        drawn.append(_text(WIDTH - WORDS + 10, middle, percent(share), "start", bold=True))
    height = ROW * len(shares)
    axis = f'<line x1="{NAMES}" y1="0" x2="{NAMES}" y2="{height}" stroke="{colour["ink"]}" stroke-width="1.5"/>'
    words = escape(say_energy_shares(shares, ranges))
    return (
        f'<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 {WIDTH} {height}" role="img" aria-label="{words}">'
        f"{''.join(drawn)}{axis}</svg>"
    )


def _text(x: float, y: float, words: str, anchor: str, bold: bool = False) -> str:
    look = f'text-anchor="{anchor}" dominant-baseline="central" font-size="15" font-weight="{700 if bold else 500}"'
    return f'<text x="{x}" y="{y}" {look}>{words}</text>'
