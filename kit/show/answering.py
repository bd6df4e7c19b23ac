"""A widget that answers its page: each message of hers is done, and one message goes back with what changed."""

from collections.abc import Mapping
from typing import Any

import anywidget
import traitlets
from plotly.offline import get_plotlyjs_version

from kit.errors import ChangeError, KitError
from kit.show.stage import plotly_script

_BY_ITSELF = ("rest", "look")  # what the page asks for without her


class Answering(anywidget.AnyWidget):
    """What a page shows, its `content`, and the messages between them.

    The page sends ``{"do": NAME, "page": ID, "number": 7, ...}`` by ``asking.js``; the method ``_do_NAME`` does it and
    may return what the page is told of it. A message that comes again, because Python was silent, is not done again.

    Attributes
    ----------
    content : dict
        Everything that the page shows, altered in place: that sends nothing, and a page that opens later gets it whole.
    """

    content = traitlets.Dict().tag(sync=True)
    plotly_version = traitlets.Unicode().tag(sync=True)

    def __init__(self, content: Mapping[str, Any]) -> None:
        super().__init__(content=dict(content), plotly_version=get_plotlyjs_version())
        self._heard: tuple[str, int] | None = None  # the page, and its message that was heard last
        self.on_msg(self._hear)

    def _hear(self, _widget: Any, message: dict[str, Any], _buffers: list[Any]) -> None:
        if message.get("ask") == "plotly":
            self.send({"answer": "plotly"}, buffers=[plotly_script()])
            return
        number = message.get("number", 0)
        if "page" in message:
            heard, self._heard = self._heard, (message["page"], number)
            if heard == self._heard:
                self.send({"done": number, "changes": {}})
                return
        act = getattr(self, f"_do_{message.get('do', '')}", None)
        if act is None:
            return
        try:
            more = {**self._went_well(message["do"]), **(act(message) or {})}
        except KitError as fault:
            more = self._faulted(message, fault)
        self._answer(number, more)

    def _went_well(self, do: str) -> dict[str, Any]:
        """Return what the page is told besides; a fault stays to be read when the page asks by itself."""
        return {} if do in _BY_ITSELF else {"fault": None}

    def _faulted(self, _message: dict[str, Any], fault: KitError) -> dict[str, Any]:
        """Return what the page is told of something that could not be done."""
        choices = list(fault.choices) if isinstance(fault, ChangeError) else []
        return {"fault": {"text": str(fault), "choices": choices}}

    def _answer(self, number: int, more: Mapping[str, Any]) -> None:
        """Tell the page what a message of hers has changed."""
        raise NotImplementedError

    def _reply(self, number: int, parts: Mapping[str, Any], **also: Any) -> None:
        """Send those of some parts that differ from what the page has, and what the page merges into what it has."""
        changes = {name: value for name, value in parts.items() if self.content.get(name) != value}
        self.content.update(changes)
        self.send({"done": number, "changes": {**changes, **also}})
