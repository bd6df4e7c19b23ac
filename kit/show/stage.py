"""One widget that holds every chart on screen and the large read-out, and changes them all with one message.

plotly's own FigureWidget brings plotly's whole script once a figure; the stage brings it once a page, and only when
the page asks for it. Then it sends drawings from `kit.show.charts`, compared with what the page has already, so that a
move of a slider carries the arrays and texts that changed and nothing else. ``tests/bench`` measures the two together.
"""

import functools
from collections.abc import Mapping, Sequence
from dataclasses import asdict, dataclass
from typing import Any

import anywidget
import traitlets
from plotly.basedatatypes import BaseFigure
from plotly.offline import get_plotlyjs, get_plotlyjs_version

from kit.show.look import script, style
from kit.show.marks import Drawing


@dataclass(frozen=True)
class ReadOut:
    """One number of the large read-out, in words.

    Parameters
    ----------
    label : str
        What it is: ``"Energy"``.
    value : str
        The number as it is said: ``"about 430 kcal"``.
    before : str
        The number as written, when it differs; else empty.
    """

    label: str
    value: str
    before: str = ""


class Stage(anywidget.AnyWidget):
    """The charts and the read-out on screen.

    Parameters
    ----------
    columns : sequence of mapping of str to (plotly Figure or drawing)
        The charts by name, in the columns of a wide screen; a narrow one shows them below each other.
    read_out : sequence of ReadOut
        The large numbers above them.
    under_a_picture : sequence of str
        What stands under a chart that is kept as a picture; without it no button offers to keep one.

    Examples
    --------
    >>> stage = Stage([{"left": {"data": [], "layout": {}}}], [ReadOut("Energy", "about 430 kcal")])
    >>> stage.content["read_out"]
    [{'label': 'Energy', 'value': 'about 430 kcal', 'before': ''}]
    """

    _esm = script("stage_widget")
    _css = style("stage")
    content = traitlets.Dict().tag(sync=True)
    plotly_version = traitlets.Unicode().tag(sync=True)

    def __init__(
        self,
        columns: Sequence[Mapping[str, BaseFigure | Drawing]],
        read_out: Sequence[ReadOut] = (),
        under_a_picture: Sequence[str] = (),
        **kwargs: Any,
    ) -> None:
        pictures = {"under_a_picture": list(under_a_picture)} if under_a_picture else {}
        super().__init__(
            content={
                "columns": [list(column) for column in columns],
                "figures": {name: _plain(chart) for column in columns for name, chart in column.items()},
                "read_out": [asdict(number) for number in read_out],
                **pictures,
            },
            plotly_version=get_plotlyjs_version(),
            # All the room beside the sliders: a stage has no width of its own.
            **{"layout": {"flex": "1 1 0", "width": "auto", "min_width": "0"}, **kwargs},
        )
        self.on_msg(self._answer)

    def show(
        self,
        figures: Mapping[str, BaseFigure | Drawing] | None = None,
        read_out: Sequence[ReadOut] | None = None,
    ) -> None:
        """Show other figures or another read-out: one message with what changed, or none when nothing did.

        Parameters
        ----------
        figures : mapping of str to (plotly Figure or drawing), optional
            Charts by the names that the stage was made with; one that is left out stays as it is.
        read_out : sequence of ReadOut, optional
            The whole read-out; left out, it stays as it is.
        """
        # The content is altered in place, which sends nothing: a page that opens later gets it whole.
        changes: dict[str, Any] = {}
        for name, chart in (figures or {}).items():
            after = _plain(chart)
            if change := difference(self.content["figures"][name], after):
                changes.setdefault("figures", {})[name] = change
                self.content["figures"][name] = after
        if read_out is not None:
            numbers = [asdict(number) for number in read_out]
            if numbers != self.content["read_out"]:
                changes["read_out"] = self.content["read_out"] = numbers
        if changes:
            self.send({"changes": changes})

    def _answer(self, _widget: Any, message: dict[str, Any], _buffers: list[Any]) -> None:
        if message.get("ask") == "plotly":
            self.send({"answer": "plotly"}, buffers=[plotly_script()])


@functools.cache
def plotly_script() -> bytes:
    """Return the script of the installed plotly."""
    return get_plotlyjs().encode()


def _plain(chart: BaseFigure | Drawing) -> Drawing:
    return chart.to_plotly_json() if isinstance(chart, BaseFigure) else chart


def difference(before: Drawing, after: Drawing) -> dict[str, Any]:
    """Return what turns one drawing into another, as ``stage.js`` merges it.

    Parameters
    ----------
    before, after : dict
        Drawings with ``data`` and ``layout``.

    Returns
    -------
    dict
        ``{"traces": {"0": {"x": [...]}}, "meta": {...}}`` while only traces and the words around them differ;
        ``{"drawing": after}`` when anything else does; empty when nothing does.

    Examples
    --------
    >>> difference({"data": [{"x": [1], "y": [0]}], "layout": {}}, {"data": [{"x": [2], "y": [0]}], "layout": {}})
    {'traces': {'0': {'x': [2]}}}
    """
    if before == after:
        return {}
    same_kinds = [trace.keys() for trace in before["data"]] == [trace.keys() for trace in after["data"]]
    if not same_kinds or _without_meta(before) != _without_meta(after):
        return {"drawing": after}
    change: dict[str, Any] = {}
    for place, (old, new) in enumerate(zip(before["data"], after["data"], strict=True)):
        if changed := _changed(old, new):
            change.setdefault("traces", {})[str(place)] = changed
    if words := _changed(_meta(before), _meta(after)):
        change["meta"] = words
    return change


def _changed(before: dict[str, Any], after: dict[str, Any]) -> dict[str, Any]:
    """Return what differs, group by group."""
    changed: dict[str, Any] = {}
    for key, value in after.items():
        old = before.get(key)
        if old != value:
            if isinstance(value, dict) and isinstance(old, dict) and value.keys() == old.keys():
                changed[key] = _changed(old, value)
            else:
                changed[key] = value
    return changed


def _without_meta(drawing: Drawing) -> dict[str, Any]:
    return {key: value for key, value in drawing["layout"].items() if key != "meta"}


def _meta(drawing: Drawing) -> dict[str, Any]:
    return drawing["layout"].get("meta", {})
