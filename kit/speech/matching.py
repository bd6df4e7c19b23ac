"""Whether a sentence and its meaning say the same, and what to ask when something in it has no meaning stated."""

from collections.abc import Mapping
from typing import Any

from kit.errors import UnknownNameError
from kit.food.composition import nutrient
from kit.rules.naming import thing_said
from kit.rules.wordings import wording_called
from kit.speech.scanning import (
    BALANCE,
    KEEPS,
    KIND,
    NUMBER,
    SHARE,
    TIMES,
    WORDING,
    Spotted,
    numbers_said,
    telling_words,
)
from kit.texts import number

_SOURCES = ("main_source_of", "most_of", "a_little_of")
_EFFECTS = ("saves", "adds")
# Which forms of meaning a telling word of each kind belongs to.
_BELONGS = {
    SHARE: (*_SOURCES, "number"),
    KIND: ("kind", "free_from", "contains"),
    KEEPS: ("keeps_days",),
    BALANCE: ("balance",),
    TIMES: ("times", "number"),
}


def asks_for(spotted: Spotted) -> str:
    """Return the question about a word whose meaning is not stated, with what could be written.

    Examples
    --------
    >>> asks_for(Spotted(NUMBER, "12 grams", "fiber", 12.0, "g"))
    'what does "12 grams" mean? Write means = { number = 12, nutrient = "fiber" }, or {fiber} in its place'
    """
    name = spotted.nutrient or "..."
    hint = {
        WORDING: f'{{ wording = "{_wording(spotted.words)}", nutrient = "{name}", food = "..." }}',
        TIMES: f'{{ times = {number(spotted.number, 1)}, nutrient = "{name}", food = "...", than = "..." }}',
        SHARE: f'{{ most_of = "{name}", food = "..." }}',
        KIND: '{ kind = "plant-based" } or { free_from = "milk" }',
        KEEPS: "{ keeps_days = 3 }",
        BALANCE: '{ balance = "all" }',
        NUMBER: f'{{ number = {number(spotted.number, 2).replace(",", "")}, nutrient = "{name}" }}',
    }[spotted.kind]
    instead = f", or {{{name}}} in its place" if spotted.kind == NUMBER and spotted.nutrient else ""
    return f'what does "{spotted.words}" mean? Write means = {hint}{instead}'


def _wording(words: str) -> str:
    try:
        return wording_called(words.lower().replace("-", " "))
    except UnknownNameError:
        return "high"


def disagreement(say: str, lead: str, values: Mapping[str, Any], rules: str) -> str:
    """Return what a sentence says otherwise than its meaning, or beside it, as a question; empty when nothing.

    Parameters
    ----------
    say : str
        The sentence as the talk file gives it.
    lead : str
        The key that leads its meaning.
    values : mapping
        The meaning, looked up.
    rules : {"us", "eu"}
        Whose regulated wordings.
    """
    stated, unit = _stated(lead, values)
    numbers = [one for one in numbers_said(say) if one.nutrient or one.unit not in ("g", "days", "times")]
    alike = [one for one in numbers_said(say) if one.unit == unit]
    if stated is not None and alike and not any(abs(one.number - stated) < 1e-9 for one in alike):
        said = alike[0].words
        return f'the sentence says "{said}" and its meaning says {number(stated, 2)}: which is meant?'
    about = _nutrients(values)
    for one in numbers if lead != "balance" else ():
        own = stated is not None and one.unit == unit and abs(one.number - stated) < 1e-9
        if not own and one.kind == NUMBER and not (lead == "wording" and one.unit == "%"):
            return (
                f'"{one.words}" is not covered by the meaning: make it a point of its own, or write a placeholder there'
            )
    for one in telling_words(say, rules):
        if one.kind in _BELONGS and lead not in _BELONGS[one.kind]:
            return f'"{one.words}" is not covered by the meaning: make it a point of its own?'
        if one.kind == WORDING and one.nutrient and about and one.nutrient not in about:
            return (
                f'"{one.words}" ({thing_said(one.nutrient)}) is not covered by the meaning: make it a point of its own?'
            )
        if one.kind == WORDING and lead == "wording" and not _same_wording(one, values, rules):
            return f'the sentence says "{one.words}" and its meaning says "{values["wording"]}": which is meant?'
    return ""


def _stated(lead: str, values: Mapping[str, Any]) -> tuple[float | None, str]:
    if lead == "times":
        return float(values["times"]), "times"
    if lead == "keeps_days":
        return None, "days"  # "3 to 4 days" names two
    if lead == "grams_of":
        return float(values["number"]), "g"
    if lead == "number":
        unit = values.get("unit") or nutrient(values["nutrient"]).unit
        return float(values["number"]), "%" if unit.startswith("%") else unit
    for key in _EFFECTS:
        if key in values:
            return float(values[key]), nutrient(values["nutrient"]).unit
    return None, ""


def _nutrients(values: Mapping[str, Any]) -> set[str]:
    return {values[key] for key in ("nutrient", *_SOURCES) if values.get(key)}


def _same_wording(one: Spotted, values: Mapping[str, Any], rules: str) -> bool:
    try:
        said = wording_called(one.words.lower().replace("-", " "), rules)
    except UnknownNameError:
        return True
    # "Low in sodium" stands inside "very low in sodium".
    return said in values["wording"]
