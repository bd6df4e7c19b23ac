"""Two charts for those who never read a nutrition table: the dish by its parts, and foods side by side."""

from collections.abc import Mapping, Sequence
from typing import Any

from kit.show.escaping import in_chart
from kit.show.look import colours
from kit.show.marks import (
    NAME_SIZE,
    SOFT,
    TEXT_SIZE,
    Drawing,
    as_written_mark,
    bars,
    change_colours,
    chart,
    drawing,
    nothing_as_zero,
    room,
    shorten,
    words,
)
from kit.texts import percent

WEIGHT, ENERGY, PROTEIN, SALT = "weight", "energy", "protein", "sodium"
MEASURES = {
    WEIGHT: colours()["other"],
    ENERGY: colours()["fat"],
    PROTEIN: colours()["protein"],
    SALT: colours()["limit"],
}
COLUMN = 1.75  # from one column of bars to the next, in longest bars
_SIDES = tuple(colours()[name] for name in ("protein", "fat", "carbohydrate"))
Rows = Mapping[str, Sequence[tuple[float, str]]]
_WORTH_SAYING = 0.1  # share by which a part brings more than it weighs


@chart
def plate(
    names: Sequence[str],
    now: Mapping[str, Sequence[float]],
    written: Mapping[str, Sequence[float]] | None = None,
) -> Drawing:
    """Draw the dish by its parts: how much of the weight, the energy, the protein and the sodium each one is.

    Parameters
    ----------
    names : sequence of str, length n
        The parts of the dish: "topping".
    now, written : mapping of str to sequence of float
        By measure, the share of each part; NaN where it is not known. [fraction]

    Returns
    -------
    plotly.graph_objects.Figure
        A row of bars for each part, a column for each measure.
    """
    written = now if written is None else written
    rows = list(range(len(names)))
    traces: list[dict[str, Any]] = []
    for column, (measure, shares) in enumerate(now.items()):
        start = column * COLUMN
        said, before = [percent(share) for share in shares], [percent(share) for share in written[measure]]
        known = [nothing_as_zero(share) for share in shares]
        ends = [start + max(here, nothing_as_zero(there)) for here, there in zip(known, written[measure], strict=True)]
        traces += [
            {**bars(known, rows, MEASURES[measure], 0.5), "base": [start] * len(rows)},
            as_written_mark([start + share for share in written[measure]], rows, 34),
            words(ends, rows, said, NAME_SIZE, colour=change_colours(said, before), weight=700),
            words([start], [-0.75], [f"of the {measure}"], colour=SOFT),
        ]
    labels = [shorten(name[:1].upper() + name[1:], 18) for name in names]
    axis = {"color": colours()["ink"], "width": 2}
    layout: dict[str, Any] = {
        "title": {"text": "What each part brings"},
        "height": 80 + 62 * max(len(rows), 3),
        "margin": {"l": room(labels, TEXT_SIZE + 2, 90), "r": 40, "b": 6},
        "shapes": [
            {"type": "line", "x0": x, "x1": x, "y0": -0.45, "y1": len(rows) - 0.55, "line": axis}
            for x in (column * COLUMN for column in range(len(now)))
        ],
        "xaxis": {"range": [0, (len(now) - 1) * COLUMN + 1.45], "showticklabels": False, "zeroline": False},
        "yaxis": {"tickvals": rows, "ticktext": [*map(in_chart, labels)], "range": [max(len(rows), 3) - 0.5, -1.05]},
        "barmode": "overlay",
    }
    layout["yaxis"]["tickfont"] = {"size": TEXT_SIZE + 2}
    return drawing(
        traces, layout, say_plate(names, now), plate_sentence(names, now), "Upright mark: the recipe as written."
    )


def say_plate(names: Sequence[str], now: Mapping[str, Sequence[float]]) -> str:
    """Say what each part is of each measure.

    Examples
    --------
    >>> say_plate(["base", "topping"], {"weight": [0.9, 0.1], "sodium": [0.5, 0.5]})
    'Parts of the dish: base 90 % of the weight, 50 % of the sodium; topping 10 % of the weight, 50 % of the sodium.'
    """
    parts = [
        f"{name} {', '.join(f'{percent(shares[at])} of the {measure}' for measure, shares in now.items())}"
        for at, name in enumerate(names)
    ]
    return f"Parts of the dish: {'; '.join(parts)}."


def plate_sentence(names: Sequence[str], now: Mapping[str, Sequence[float]]) -> str:
    """Say which part brings far more of something than it weighs.

    Examples
    --------
    >>> plate_sentence(["base", "topping"], {"weight": [0.9, 0.1], "sodium": [0.5, 0.5]})
    'The topping is 10 % of the weight, and brings 50 % of the sodium.'
    """
    weights = now[WEIGHT]
    gaps = [
        (nothing_as_zero(share) - nothing_as_zero(weights[at]), measure, at)
        for measure, shares in now.items()
        for at, share in enumerate(shares)
    ]
    gap, measure, at = max(gaps, default=(0.0, WEIGHT, 0))
    if gap < _WORTH_SAYING:
        return "Every part brings about as much as it weighs."
    brings = f"{percent(now[measure][at])} of the {measure}"
    weighs = percent(weights[at]) if weights[at] >= 0.005 else "less than 1 %"
    return f"The {names[at]} is {weighs} of the weight, and brings {brings}."


@chart
def comparison(title: str, names: Sequence[str], rows: Rows, basis: str) -> Drawing:
    """Draw two or three foods, or dishes, side by side: for each nutrient a bar for each, the longest fills the width.

    Parameters
    ----------
    title : str
        What is compared.
    names : sequence of str, length 2 or 3
        The foods.
    rows : mapping of str to sequence of (float, str)
        By nutrient, how much each holds, as a number and in words; NaN where it is not known.
    basis : str
        What both are taken for: "in a cup", "in 100 g".

    Returns
    -------
    plotly.graph_objects.Figure
        Bars in groups, each with its food's name at the first group and its number at the right.
    """
    pitch = len(names) + 0.7
    traces: list[dict[str, Any]] = []
    for side, name in enumerate(names):
        at = [group * pitch + side for group in range(len(rows))]
        values = [row[side][0] for row in rows.values()]
        tops = [max([nothing_as_zero(value) for value, _ in row], default=0.0) for row in rows.values()]
        parts = [value / top if top > 0 else value * 0 for value, top in zip(values, tops, strict=True)]
        traces += [
            bars(parts, at, _SIDES[side], 0.8),
            words([1.0] * len(at), at, [row[side][1] for row in rows.values()], TEXT_SIZE + 2, weight=600),
            words([0.0], at[:1], [in_chart(shorten(name))], side="middle left", colour=SOFT),
            words(
                [0.0] * (len(at) - 1),
                at[1:],
                [in_chart(shorten(name))] * (len(at) - 1),
                side="middle left",
                colour=SOFT,
            ),
        ]
    heads = [group * pitch - 0.75 for group in range(len(rows))]
    traces.append(words([0.0] * len(rows), heads, [in_chart(nutrient) for nutrient in rows], NAME_SIZE - 3, weight=650))
    told = [[text for _, text in row] for row in rows.values()]
    layout: dict[str, Any] = {
        "title": {"text": title},
        "height": 60 + round(30 * pitch * len(rows)),
        "margin": {
            "l": room([shorten(name) for name in names]),
            "r": room([t for row in told for t in row], 20),
            "b": 6,
        },
        "barmode": "overlay",
        "xaxis": {"range": [0, 1], "showticklabels": False},
        "yaxis": {"showticklabels": False, "range": [pitch * len(rows) - 0.9, -1.3]},
    }
    said = "; ".join(
        f"{nutrient}: {', '.join(f'{name} {text}' for name, (_, text) in zip(names, row, strict=True))}"
        for nutrient, row in rows.items()
    )
    return drawing(traces, layout, f"{title}, {basis}. {said}.", comparison_sentence(names, rows, basis), basis)


def comparison_sentence(names: Sequence[str], rows: Rows, basis: str) -> str:
    """Say where two foods differ most.

    Examples
    --------
    >>> comparison_sentence(["quinoa", "rice"], {"Protein": [(8.1, "8.1 g"), (4.3, "4.3 g")]}, "in a cooked cup")
    'Protein in a cooked cup: 8.1 g in quinoa, 4.3 g in rice.'
    >>> comparison_sentence(["quinoa, dry", "rice"], {"Protein": [(24.0, "24 g"), (4.3, "4.3 g")]}, "in a cup")
    'Protein in a cup: 24 g in quinoa, dry; 4.3 g in rice.'
    """

    def unlike(row: Sequence[tuple[float, str]]) -> float:
        known = [value for value, _ in row if value == value]
        return max(known) / min(known) if known and min(known) > 0 else 0.0

    if not rows:
        return ""
    nutrient = max(rows, key=lambda name: unlike(rows[name]))
    texts = [f"{text} in {name}" for name, (_, text) in zip(names, rows[nutrient], strict=True)]
    return f"{nutrient} {basis}: {('; ' if any(',' in name for name in names) else ', ').join(texts)}."
