"""Words of a sentence that carry a nutritional meaning of their own, so that she can be asked what is meant.

What counts is kept narrow: a word that a cook also uses ("light", "contains", "more") counts only beside a nutrient.
"""

import re
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from functools import cache

from kit import files
from kit.food.composition import nutrients, read_rows
from kit.rules.naming import said
from kit.rules.wordings import rules_of
from kit.talk.placeholders import pieces

NUMBER, WORDING, TIMES, SHARE, KIND, KEEPS, BALANCE = "number", "wording", "times", "share", "kind", "keeps", "balance"
_COUNTS = {
    **{
        "two": 2,
        "three": 3,
        "four": 4,
        "five": 5,
        "six": 6,
        "seven": 7,
        "eight": 8,
        "nine": 9,
        "ten": 10,
        "twelve": 12,
    },
    **{"twenty": 20, "thirty": 30, "forty": 40, "fifty": 50, "a hundred": 100},
}
_UNITS = {
    "kcal": r"calories|kcal|kilocalories",
    "g": r"grams?|g",
    "mg": r"milligrams?|mg",
    "µg": r"micrograms?|µg|mcg",
    "%": r"percent|per cent|%",
    "days": r"days?",
}
_AMOUNT = r"\d{1,3}(?:,\d{3})+|\d+(?:\.\d+)?"
_NUMBERS = re.compile(
    rf"(?<![\w.])(?P<number>{_AMOUNT}|{'|'.join(_COUNTS)})[\s-]*(?P<unit>{'|'.join(_UNITS.values())})(?![\w])",
    re.IGNORECASE,
)
_BASIS = re.compile(r"\b(?:in|per|for)\s+$", re.IGNORECASE)  # "in 100 grams" is what is measured, not a claim
_TIMES = re.compile(
    rf"\b(?:(?P<word>twice|double|triple|half)\b(?=\s+(?:of\s+)?(?:the|as|its)\b)|(?P<number>{_AMOUNT}|{'|'.join(_COUNTS)})"
    r"\s+times\b(?=\s+(?:the|as|its|more)\b))",
    re.IGNORECASE,
)
_TIMES_WORDS = {"twice": 2.0, "double": 2.0, "triple": 3.0, "half": 0.5}
_SHARES = re.compile(
    r"\b(?:most|much|mainly|mostly|a little|the bulk|the rest|all|tenth|fifths?|quarters?|thirds?) of "
    r"(?:the|its|a day's|it|them|that|this)\b",
    re.IGNORECASE,
)
_PRONOUNS = (" it", " them", " that", " this")
_MAIN = re.compile(r"\b(?:main source|biggest source|largest source|chief source)\b", re.IGNORECASE)
_KINDS = re.compile(
    r"\b(?:plant[- ]based|all plants?|(?:entirely|only|purely|fully) (?:from )?plants?|nothing from an animal|"
    r"vegan|vegetarian|"
    r"whole[- ]?grains?|wholemeal|(?:dairy|gluten|nut|egg|soy|milk|lactose|peanut|sesame|wheat|fish|allergen)[- ]free|"
    r"free (?:from|of) \w+|(?:no|without) (?:dairy|gluten|nuts|eggs?|soy|milk|lactose|peanuts?|sesame|allergens?)|"
    r"contains? (?:dairy|gluten|nuts|tree nuts|eggs?|soy|milk|peanuts?|sesame|wheat|fish|shellfish|allergens?))\b",
    re.IGNORECASE,
)
_KEEPS = re.compile(r"\bkeeps?\b[^.;]*\bdays?\b", re.IGNORECASE)
_BALANCE = re.compile(r"\b(?:well[- ])?balanced?\b", re.IGNORECASE)
# Of the ways to say a wording, those that cooks use of other things too.
_LOOSE = ("high", "contains", "provides", "more", "added", "extra", "plus", "increased", "light", "lite", "lean")
_ORDINARY = ("water", "ash", "energy")  # nutrients whose names mean other things in a kitchen


@dataclass(frozen=True, slots=True)
class Spotted:
    """A word that carries a meaning: its kind, the words, the nutrient they name, and the number and unit."""

    kind: str
    words: str
    nutrient: str = ""
    number: float = 0.0
    unit: str = ""


def unfilled(say: str) -> str:
    """Return what is said outside the placeholders."""
    return " ... ".join(piece.text for piece in pieces(say) if not piece.in_braces)


@cache
def _health() -> tuple[re.Pattern[str], dict[str, tuple[str, str]]]:
    rows = read_rows(files.bundled("data/health_words.csv"))
    table = {row["words"]: (row["kind"], row["source"]) for row in rows}
    longest_first = sorted(table, key=len, reverse=True)
    return re.compile(rf"(?<![\w-])(?:{'|'.join(map(re.escape, longest_first))})(?![\w-])", re.IGNORECASE), table


def health_words(say: str) -> tuple[str, str, str] | None:
    """Return the first words of health in a sentence, their kind and the section of law, or None.

    Examples
    --------
    >>> health_words("Oats lower your cholesterol.")[:2], health_words("Oats are filling.")
    (('lower your cholesterol', 'effect'), None)
    """
    pattern, table = _health()
    found = pattern.search(unfilled(say).replace("’", "'"))
    return (found[0].lower(), *table[found[0].lower()]) if found else None


@cache
def nutrient_words() -> dict[str, str]:
    """Return the words that name a nutrient, with its id."""
    found = {said(name).lower(): name for name in nutrients() if name not in _ORDINARY}
    also = {"calories": "energy", "calorie": "energy", "sugar": "sugars", "salt": "sodium", "carbs": "carbohydrate"}
    more = {"fibre": "fiber", "carbohydrates": "carbohydrate", "carb": "carbohydrate", "saturates": "saturated_fat"}
    return found | also | more


def nutrient_named(text: str) -> str:
    """Return the id of the nutrient that a text names, the longest name first, or empty.

    Examples
    --------
    >>> nutrient_named("about 3 grams of saturated fat"), nutrient_named("about 3 cups")
    ('saturated_fat', '')
    """
    low = text.lower()
    for words in sorted(nutrient_words(), key=len, reverse=True):
        if re.search(rf"(?<!\w){re.escape(words)}(?!\w)", low):
            return nutrient_words()[words]
    return ""


@cache
def _wordings(rules: str) -> re.Pattern[str]:
    """Return what matches a regulated wording: fixed phrases, and loose words just before or after a nutrient."""
    said_as = {words for rule in rules_of(rules) for words in rule.said_as}
    fixed = sorted((words for words in said_as if words not in _LOOSE), key=len, reverse=True)
    named = sorted(nutrient_words(), key=len, reverse=True)
    thing = rf"(?:{'|'.join(map(re.escape, named))})"
    before = "|".join([*_LOOSE, "contain", "provide", "packed with", "full of", "loaded with"])
    loose = rf"(?:{before})(?:[\s-]+\w+){{0,3}}?[\s-]+{thing}"
    free = rf"{thing}[\s-]free"
    phrases = "|".join(re.escape(words).replace(r"\ ", r"[\s-]") for words in fixed)
    taste = r"(?!\s+(?:flavou?r|colou?r|taste|texture|aroma))"
    return re.compile(rf"(?<![\w-])(?:{phrases}|{loose}|{free})(?![\w]){taste}", re.IGNORECASE)


def _number(text: str) -> float:
    return float(_COUNTS[text.lower()]) if text.lower() in _COUNTS else float(text.replace(",", ""))


def _after(text: str, match: re.Match[str]) -> str:
    """Return the nutrient named in the words that follow at once."""
    following = re.match(r"(?:\s+(?:of|the|as|its|a|day's|per|cent))*((?:[\s-]+\w+){1,2})", text[match.end() :])
    return nutrient_named(following[1]) if following else ""


def numbers_said(say: str) -> tuple[Spotted, ...]:
    """Return the numbers with a unit, and the "times", that a sentence says outside its placeholders.

    Examples
    --------
    >>> [(one.number, one.unit) for one in numbers_said("About 1,200 mg in two bowls, three times the iron of rice.")]
    [(1200.0, 'mg'), (3.0, 'times')]
    """
    text = unfilled(say)
    found = []
    for match in _NUMBERS.finditer(text):
        unit = next(unit for unit, words in _UNITS.items() if re.fullmatch(words, match["unit"], re.IGNORECASE))
        if unit == "g" and _BASIS.search(text[: match.start()]):
            continue
        found.append((match.start(), Spotted(NUMBER, match[0], _after(text, match), _number(match["number"]), unit)))
    for match in _TIMES.finditer(text):
        times = _TIMES_WORDS[match["word"].lower()] if match["word"] else _number(match["number"])
        found.append((match.start(), Spotted(TIMES, match[0], _after(text, match), times, "times")))
    return tuple(spotted for _, spotted in sorted(found, key=lambda pair: pair[0]))


def telling_words(say: str, rules: str = "us") -> tuple[Spotted, ...]:
    """Return the words of a sentence, outside its placeholders, that carry a nutritional meaning, health apart.

    Parameters
    ----------
    say : str
        The sentence as the talk file gives it.
    rules : {"us", "eu"}
        Whose regulated wordings.

    Examples
    --------
    >>> [one.words for one in telling_words("It is vegan and low in sodium.")]
    ['low in sodium', 'vegan']
    >>> telling_words("Toss the squash with the oil and spread it out.")
    ()
    """
    return tuple(_spot(say, rules))


def _spot(say: str, rules: str) -> Iterator[Spotted]:
    text = unfilled(say)
    patterns: Sequence[tuple[str, re.Pattern[str]]] = (
        (WORDING, _wordings(rules)),
        (SHARE, _SHARES),
        (SHARE, _MAIN),
        (KIND, _KINDS),
        (KEEPS, _KEEPS),
        (BALANCE, _BALANCE),
    )
    # "200 g of oil" and "double the recipe" are a cook's words until a nutrient is named too.
    named = nutrient_named(text) != ""
    yield from (
        one for one in numbers_said(say) if one.unit in ("kcal", "mg", "µg", "%") or (named and one.unit != "days")
    )
    for kind, pattern in patterns:
        for match in pattern.finditer(text):
            name = nutrient_named(match[0]) or _after(text, match)
            if kind == SHARE and match[0].endswith(_PRONOUNS):  # "nearly all of it unsaturated": it was named before
                name = name or nutrient_named(say.replace("_", " "))
            # "Most of the time" is no share of a nutrient, and "free of sodium" is a wording.
            if (kind == SHARE and pattern is not _MAIN and not name) or (kind == KIND and name):
                continue
            yield Spotted(kind, match[0], name)
