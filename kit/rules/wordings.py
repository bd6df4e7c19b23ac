"""The table of regulated wordings: what each is said of, the limits it keeps, and the section of law."""

from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache
from typing import Any

from kit import files
from kit.errors import UnknownNameError
from kit.food.cells import read_rows
from kit.food.daily_values import vitamins_and_minerals
from kit.food.nutrients import nutrients

ANY_CLAIM = "any claim"
DISH, FOOD = "dish", "food"
MEMORY = "from memory"


@dataclass(frozen=True, slots=True)
class ClaimLimit:
    """One test that a wording stands on, a row of ``data/wording_tests.csv``."""

    way: str
    nutrient: str
    basis: str
    when: str
    comparison: str
    threshold: float
    upper: float | None
    unit: str
    say: str
    source: str
    status: str

    @property
    def is_relative(self) -> bool:
        """Whether it compares with another food."""
        return self.unit.endswith((" less", " more"))


@dataclass(frozen=True, slots=True)
class ClaimRule:
    """One wording for the nutrients it is said of, a row of ``data/wordings.csv`` with its limits.

    `needs` are the limits that it has to keep, `says` those that make something else be said beside it.
    """

    id: str
    wording: str
    subjects: tuple[str, ...]
    nutrients: tuple[str, ...]
    said_as: tuple[str, ...]
    defined: bool
    needs_comparison: bool
    other_not_low: bool
    food_in_it: bool
    groups: tuple[str, ...]
    note: str
    source: str
    status: str
    needs: tuple[ClaimLimit, ...]
    says: tuple[ClaimLimit, ...]

    @property
    def section(self) -> str:
        """The section of law, and whether it is carried from memory."""
        return self.source + (f", {MEMORY}" if self.status == MEMORY else "")


def _cell(text: str) -> tuple[str, ...]:
    return tuple(part for part in text.split("; ") if part)


@cache
def rules_of(rules: str = "us") -> tuple[ClaimRule, ...]:
    """Return every rule of a set, ``"us"`` or ``"eu"``.

    Raises
    ------
    UnknownNameError
        If there is no such set.
    """
    rows = read_rows(files.bundled("data/wordings.csv"))
    if rules not in {row["rules"] for row in rows}:
        raise UnknownNameError("set of rules", rules, dict.fromkeys(row["rules"] for row in rows))
    limits: dict[tuple[str, str], list[ClaimLimit]] = {}
    for row in read_rows(files.bundled("data/wording_tests.csv")):
        told = ("way", "nutrient", "basis", "when", "comparison", "unit", "say", "source", "status")
        upper = float(row["upper"]) if row["upper"] else None
        facts: dict[str, Any] = {name: row[name] for name in told}
        limit = ClaimLimit(threshold=float(row["threshold"]), upper=upper, **facts)
        limits.setdefault((row["rule"], row["role"]), []).append(limit)
    return tuple(_rule(row, rules, limits) for row in rows if row["rules"] == rules)


def _rule(row: Mapping[str, str], rules: str, limits: Mapping[tuple[str, str], list[ClaimLimit]]) -> ClaimRule:
    every = dict.fromkeys(_cell(row["nutrients"]))
    names = tuple(
        name for cell in every for name in (vitamins_and_minerals(rules) if cell == "vitamins_minerals" else (cell,))
    )
    flags = {name: row[name] == "yes" for name in ("needs_comparison", "other_not_low", "food_in_it")}
    return ClaimRule(
        id=row["rule"],
        wording=row["wording"],
        subjects=_cell(row["subject"]),
        nutrients=names,
        said_as=_cell(row["said_as"]),
        defined=row["defined"] == "yes",
        groups=_cell(row["groups"]),
        note=row["note"],
        source=row["source"],
        status=row["status"],
        needs=tuple(limits.get((row["rule"], "holds"), ())),
        says=tuple(limits.get((row["rule"], "say"), ())),
        **flags,
    )


@cache
def wordings(rules: str = "us") -> tuple[str, ...]:
    """Return the wordings a set of rules knows, in the table's order."""
    return tuple(dict.fromkeys(rule.wording for rule in rules_of(rules) if rule.wording != ANY_CLAIM))


@cache
def rule_for(wording: str, nutrient: str, subject: str, rules: str = "us", group: str = "") -> ClaimRule | None:
    """Return the rule for a wording about a nutrient, said of a ``"food"`` or a ``"dish"``, or None.

    A rule kept for the group of foods that it is said of goes before any other.

    Raises
    ------
    UnknownNameError
        If the set of rules has no such wording, or there is no such nutrient.
    """
    if wording not in (*wordings(rules), ANY_CLAIM):
        raise UnknownNameError("wording", wording, wordings(rules))
    if nutrient and nutrient not in nutrients():
        raise UnknownNameError("nutrient", nutrient, nutrients())
    fitting = [rule for rule in rules_of(rules) if rule.wording == wording and subject in rule.subjects]
    # "Light" without a nutrient is about calories and fat; "lean" names none.
    named = [rule for rule in fitting if nutrient in rule.nutrients or not (nutrient and rule.nutrients)]
    own = [rule for rule in named if group and group in rule.groups]
    return next(iter([*own, *named]), None)


@cache
def wording_called(words: str, rules: str = "us") -> str:
    """Return the wording that some words stand for: itself, or one it is said as.

    Raises
    ------
    UnknownNameError
        If there is none.

    Examples
    --------
    >>> wording_called("rich in"), wording_called("good source of"), wording_called("low")
    ('high', 'good source', 'low')
    """
    if words in wordings(rules):
        return words
    for rule in rules_of(rules):
        if words in rule.said_as or f"{words} in" in rule.said_as or f"{words} of" in rule.said_as:
            return rule.wording
    raise UnknownNameError("wording", words, wordings(rules))
