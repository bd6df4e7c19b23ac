"""The faults of a talk file, gathered while it is read."""

from collections.abc import Mapping, Sequence
from typing import Any

from kit.errors import nearest


class Faults(list[str]):
    """The faults found so far in one file."""

    def keys(self, place: str, table: Mapping[str, Any], known: Sequence[str]) -> None:
        """Note every key that is not known, with the nearest that is."""
        for key in table:
            if key not in known:
                near = nearest(key, known) or f"; write one of {', '.join(known)}"
                self.append(f'{place}: no key "{key}"{near}')

    def value(
        self, place: str, table: Mapping[str, Any], key: str, kind: type | tuple[type, ...], default: Any = None
    ) -> Any:
        """Return a value of the right kind, or note the fault and return the default."""
        value = table.get(key, default)
        fits = isinstance(value, kind) and not isinstance(value, bool)
        if key in table and not fits:
            what = (
                "a number"
                if kind == (int, float)
                else "text"
                if kind is str
                else "a list"
                if kind is list
                else "a table"
            )
            self.append(f"{place}: {key} is {value!r}; write {what}")
            return default
        return value
