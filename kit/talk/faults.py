"""The faults of a talk file, gathered while it is read, and how large its numbers may be."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from typing import Any

from kit.errors import nearest
from kit.lines.recipe_text import LEAST_SERVINGS, MOST_SERVINGS
from kit.meal.recipe import MOST_GRAMS
from kit.texts import number

_SHOWN = 40  # characters of a value in a message
_KINDS: dict[type, str] = {str: "text", list: "a list", dict: "a table"}


@dataclass(frozen=True, slots=True)
class Limit:
    """How large a number of a talk file may be: plausible for a talk, and no slip of the pen."""

    low: float
    high: float
    zero: bool = True  # whether the low end itself is allowed

    def holds(self, value: float) -> bool:
        """Whether a number is allowed; NaN is not."""
        return self.low <= value <= self.high and (self.zero or value > self.low)

    @property
    def words(self) -> str:
        """What to write instead."""
        least = number(self.low, 2) if self.zero else f"above {number(self.low)}"
        return f"give a number from {least} to {number(self.high)}"


LIMITS: Mapping[str, Limit] = {
    "servings": Limit(LEAST_SERVINGS, MOST_SERVINGS),
    "keeps_days": Limit(0, 365, zero=False),
    "minutes": Limit(0, 600, zero=False),  # of a talk
    "words_per_minute": Limit(30, 400),
    "finished_grams": Limit(0, MOST_GRAMS, zero=False),
    "grams": Limit(0, MOST_GRAMS),
    "say_minutes": Limit(0, 600),
    "hands_minutes": Limit(0, 600),
    "pot minutes": Limit(0, 2_880, zero=False),  # two days of soaking
    "before": Limit(0, 2_880),
    "oven": Limit(100, 600),  # degrees Fahrenheit
}


def limited(name: str, value: object) -> str:
    """Return what is wrong with a number of a talk, empty when nothing is.

    Examples
    --------
    >>> limited("minutes", 1e10), limited("minutes", 45)
    ('minutes is 10000000000.0; give a number from above 0 to 600', '')
    """
    key = name.removeprefix("pot ")
    if isinstance(value, bool) or not isinstance(value, int | float):
        return f"{key} is {shown(value)}; write a number"
    try:
        fits = LIMITS[name].holds(float(value))
    except OverflowError:  # a whole number of 400 digits
        fits = False
    return "" if fits else f"{key} is {shown(value)}; {LIMITS[name].words}"


def shown(value: object) -> str:
    """Return a value as a message shows it, cut where it is long."""
    try:
        text = repr(value)
    except ValueError:  # a whole number of over 4,300 digits
        text = "a number with thousands of digits"
    return text if len(text) <= _SHOWN else f"{text[:_SHOWN]}..."


class Faults(list[str]):
    """The faults found so far in one file."""

    def keys(self, place: str, table: Mapping[str, Any], known: Sequence[str], top: Sequence[str] = ()) -> None:
        """Note every key that is not known, with the nearest that is; `top` are the keys of the whole talk."""
        for key in table:
            if key in known:
                continue
            if key in top:
                self.append(f"{place}: {key} belongs to the whole talk; write it above the first [[...]]")
            else:
                near = nearest(key[:_SHOWN], known) or f"; write one of {', '.join(known)}"
                self.append(f'{place}: no key "{key[:_SHOWN]}"{near}')

    def value(self, place: str, table: Mapping[str, Any], key: str, kind: type, default: Any = None) -> Any:
        """Return a value of the right kind, or note the fault and return the default."""
        value = table.get(key, default)
        if key in table and not isinstance(value, kind):
            self.append(f"{place}: {key} is {shown(value)}; write {_KINDS[kind]}")
            return default
        return value

    def number(
        self, place: str, table: Mapping[str, Any], key: str, default: float | None = None, limit: str = ""
    ) -> float | None:
        """Return a number within its limits, or note the fault and return the default."""
        if key not in table:
            return default
        wrong = limited(limit or key, table[key])
        if wrong:
            self.append(f"{place}: {wrong}")
            return default
        return float(table[key])

    def texts(self, place: str, table: Mapping[str, Any], key: str) -> tuple[str, ...]:
        """Return a list of texts, without those that are none, which are noted."""
        values = self.value(place, table, key, list, [])
        self.extend(
            f"{place}: {key} holds {shown(value)}; write a text in quotes"
            for value in values
            if not isinstance(value, str)
        )
        return tuple(value for value in values if isinstance(value, str))

    def choice(self, place: str, table: Mapping[str, Any], key: str, allowed: Sequence[str], default: str) -> str:
        """Return one of the allowed words, or note the fault and return the default."""
        value = table.get(key, default)
        if value != default and value not in allowed:
            said = f'"{value}"' if isinstance(value, str) and len(value) <= _SHOWN else shown(value)
            words = f"{', '.join(allowed[:-1])} or {allowed[-1]}"
            self.append(f"{place}: {key} is {said}; write {words}")
            return default
        return str(value)
