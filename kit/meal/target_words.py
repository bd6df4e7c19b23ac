"""Targets as they are typed: "20 g protein and under 600 mg sodium a serving"."""

import re
from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache

from rapidfuzz.distance import OSA

from kit.errors import TargetError
from kit.food.amounts import plain_characters
from kit.food.composition import foods
from kit.food.finding import index
from kit.food.nutrients import nutrient, nutrients
from kit.food.vocabulary import line_words
from kit.texts import number

_ALSO = {
    "calorie": "energy",
    "calories": "energy",
    "kcal": "energy",
    "energy": "energy",
    "carb": "carbohydrate",
    "carbs": "carbohydrate",
    "carbohydrates": "carbohydrate",
    "fibre": "fiber",
    "sugar": "sugars",
    "sat fat": "saturated_fat",
    "saturates": "saturated_fat",
    "saturated": "saturated_fat",
    "salt": "sodium",
}
_SODIUM_PER_SALT = 400.0  # [mg] in 1 g of salt: salt is sodium x 2.5, Regulation (EU) 1169/2011, Annex I
_BETTER_MORE = ("protein", "fiber")  # of these a plain number is a least amount; vitamins and minerals too
_BETTER_LESS = ("energy", "fat", "saturated_fat", "cholesterol", "sodium", "sugars", "carbohydrate")
_ABOUT = 0.05  # how far "about" and a plain number of calories may be off
_UNITS = {"g": 1.0, "gram": 1.0, "grams": 1.0, "mg": 1e-3, "milligram": 1e-3, "milligrams": 1e-3}
_UNITS |= {"µg": 1e-6, "mcg": 1e-6}
_OWN = {"g": 1.0, "mg": 1e-3, "µg": 1e-6}
_LEAST = (
    r"at least|no less than|not less than|more than|over|above|a minimum of|minimum|min|or more|and up|upwards of|>=?|≥"
)
_MOST = (
    r"at most|no more than|not more than|less than|fewer than|under|below|a maximum of|maximum|max|up to|within"
    r"|or less|or fewer|<=?|≤"
)
_NUMBER = r"\d[\d,]*(?:\.\d+)?"
_UNIT = r"(?:\s*(?P<unit>kcal|calories|g|grams?|mg|milligrams?|µg|mcg)\b)?"
_SERVING = re.compile(
    r"[\s,]*(?:(?:a|per|each|in (?:a|each|every)|for each|to a) "
    r"(?:serving|portion|box|bowl|plate|jar|person|container)|apiece|each|per head)\b",
    re.IGNORECASE,
)
_WISH = re.compile(
    r"^(?:please |can (?:we|you|i) |could (?:we|you|i) |i want |we want |i need |we need |i'd like "
    r"|get (?:it |me |us )?(?:to )?|reach |hit |make (?:it )?(?:have )?|aim for |give me |bring it to "
    r"|adjust (?:it )?(?:to|for) |with |to |it should have )+",
    re.IGNORECASE,
)


@dataclass(frozen=True, slots=True)
class Target:
    """What a serving should hold of a nutrient, in the nutrient's own unit; an end that is not asked for is None."""

    nutrient: str
    low: float | None = None
    high: float | None = None

    def __post_init__(self) -> None:
        nutrient(self.nutrient)
        if self.low is not None and self.high is not None and self.low > self.high:
            raise TargetError(
                f"no {self.nutrient} is at least {number(self.low, 1)} and at most {number(self.high, 1)}; "
                "write the smaller number first"
            )

    @property
    def text(self) -> str:
        """The target in words: "at least 20 g protein"."""
        about = nutrient(self.nutrient)
        ends = [number(end, about.decimals) for end in (self.low, self.high) if end is not None]
        name = about.name[:1].lower() + about.name[1:]
        if len(ends) == 2:
            return f"{ends[0]} to {ends[1]} {about.unit} {name}"
        return f"{'at least' if self.low is not None else 'at most'} {ends[0]} {about.unit} {name}"


@cache
def _names() -> Mapping[str, str]:
    own = {re.sub(r"\s*\([^)]*\)", "", known.name).lower(): id_ for id_, known in nutrients().items()}
    return own | {id_.replace("_", " "): id_ for id_ in nutrients()} | _ALSO


def is_nutrient(words: str) -> bool:
    """Return whether words are what people call a nutrient.

    Examples
    --------
    >>> is_nutrient("the sodium"), is_nutrient("salt and pepper")
    (True, False)
    """
    return words.lower().removeprefix("the ").strip() in _names()


@cache
def _shapes() -> tuple[re.Pattern[str], ...]:
    names = "|".join(sorted(map(re.escape, _names()), key=len, reverse=True))
    name = rf"(?P<name>{names})"
    limit = rf"(?P<limit>{_LEAST}|{_MOST}|about|around)"
    ends = rf"(?P<low>{_NUMBER})(?:\s*\w+)?\s*(?:-|to|and)\s*(?P<high>{_NUMBER})"
    return tuple(
        re.compile(rf"^{pattern}$", re.IGNORECASE)
        for pattern in (
            rf"(?:between |from )?{ends}{_UNIT}\s*(?:of )?{name}",
            rf"{name}\s*(?::|=|is|of)?\s*(?:between |from )?{ends}{_UNIT}",
            rf"{limit}\s*(?P<one>{_NUMBER}){_UNIT}\s*(?:of )?{name}",
            rf"{name}\s*(?::|=|is|to|of)?\s*{limit}\s*(?P<one>{_NUMBER}){_UNIT}",
            rf"(?P<one>{_NUMBER}){_UNIT}\s*{limit}\s*(?:of )?{name}",
            rf"(?P<one>{_NUMBER}){_UNIT}\s*(?:of )?{name}(?:\s*(?P<limit>{_LEAST}|{_MOST}))?",
            rf"(?P<one>{_NUMBER})\s*(?P<name>calories|kcal)(?:\s*(?P<limit>{_LEAST}|{_MOST}))?",
            rf"{limit}\s*(?P<one>{_NUMBER})\s*(?P<name>calories|kcal)",
            rf"(?:between |from )?{ends}\s*(?P<name>calories|kcal)",
        )
    )


def read_targets(line: str) -> tuple[Target, ...]:
    """Read typed targets for a serving.

    Raises
    ------
    TargetError
        If a part of the line is no target, or leaves open whether it is a least or a greatest amount.

    Examples
    --------
    >>> [target.text for target in read_targets("20 g protein and under 600 mg sodium a serving")]
    ['at least 20 g protein', 'at most 600 mg sodium']
    """
    text = _WISH.sub("", _spelled(re.sub(r"\s+", " ", plain_characters(line)).strip(" .?!")))
    text = _SERVING.sub("", text)
    parts = [part.strip() for part in re.split(r"\s*(?:[,;](?!\d)\s*(?:and |but )?|\b(?:and|but|with|&)\b)\s*", text)]
    whole = [*_joined([part for part in parts if part])]
    if not whole:
        raise TargetError('no target; write for instance "20 g protein and under 600 mg sodium a serving"')
    return tuple(_target(part) for part in whole)


def _spelled(text: str) -> str:
    """Return a text with the names of nutrients spelled right, where a letter is wrong or two have changed places.

    Examples
    --------
    >>> _spelled("30 g protien")
    '30 g protein'
    """
    return re.sub(r"[A-Za-z]{5,}", lambda found: _nutrient_word(found[0].lower()) or found[0], text)


@cache
def _nutrient_word(word: str) -> str:
    """Return the word of a nutrient's name that a word is misspelt from; empty where it is a word itself."""
    known = {own for name in _names() for own in name.split() if len(own) >= 5}
    if word in known or word in line_words() or word in index(foods()).by_word:
        return ""
    near = [own for own in known if OSA.distance(word, own) == 1]
    return near[0] if len(near) == 1 else ""


def is_target(line: str) -> bool:
    """Return whether a line is nothing but targets, so that it asks for no change of its own."""
    try:
        read_targets(line)
    except TargetError:
        return False
    return True


def _joined(parts: list[str]) -> list[str]:
    """Return the parts, "between 400" and "500 calories" as one again."""
    found: list[str] = []
    for part in parts:
        if found and re.search(r"\b(?:between|from)\s+[\d.,]+(?:\s*\w+)?$", found[-1], re.IGNORECASE):
            found[-1] = f"{found[-1]} and {part}"
        else:
            found.append(part)
    return found


def _target(part: str) -> Target:
    found = next((match for shape in _shapes() if (match := shape.match(part))), None)
    if found is None:
        raise TargetError(f'"{part}" is no target; write for instance "at least 20 g protein" or "sodium under 600 mg"')
    said = found.groupdict()
    id_ = _names()[said["name"].lower()]
    factor = _factor(id_, said)
    if said.get("low"):
        return Target(id_, _value(said["low"]) * factor, _value(said["high"]) * factor)
    value, limit = _value(said["one"]) * factor, (said.get("limit") or "").lower()
    if re.fullmatch(_LEAST, limit):
        return Target(id_, low=value)
    if re.fullmatch(_MOST, limit):
        return Target(id_, high=value)
    if limit in ("about", "around") or (id_ == "energy" and not limit):
        return Target(id_, value * (1 - _ABOUT), value * (1 + _ABOUT))
    if id_ in _BETTER_LESS:
        raise TargetError(f'"{part}": at least or at most? write for instance "under {part}"')
    return Target(id_, low=value)


def _factor(id_: str, said: Mapping[str, str | None]) -> float:
    """Return how many of a nutrient's own units one that is written is."""
    unit, own = (said.get("unit") or "").lower(), nutrient(id_).unit
    if said["name"] and said["name"].lower() == "salt":
        return _SODIUM_PER_SALT * (_UNITS.get(unit, 1.0) if unit else 1.0)
    if not unit or unit in ("kcal", "calories"):
        return 1.0
    if own not in _OWN:
        raise TargetError(f"{id_} is counted in {own}, not in {unit}")
    return _UNITS[unit] / _OWN[own]


def _value(text: str | None) -> float:
    return float((text or "0").replace(",", ""))
