"""Health, disease and beyond: what the table and the rules cannot tell, whatever the numbers are."""

import re
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from functools import cache

from kit import files
from kit.food.cells import read_rows
from kit.rules.verdicts import CANNOT_TELL
from kit.speech.about.nutrient_or_food import is_cooking_starch
from kit.speech.claim import Claim, Finding
from kit.speech.words.sentence import Sentence
from kit.talk.dish import Dish

FAMILY = "health and beyond"
_GAP = r"(?:[\w%,]+ ){0,4}?"
_BEGINS = re.compile(r"(?<!\w)\w")
_LONGEST = 3  # letters of a beginning by which patterns are found
_LETTERS = re.compile(r"\w(?:\w(?!\?)){0,2}")
_SHORT_GAP = r"(?:[\w%,]+ ){0,2}?"
_REASONS = {
    "effect": "what a food does in the body is a health or structure/function claim, which the table cannot tell",
    "disease": "a word of disease makes it a health claim, which needs its own authorisation",
    "general": "a word of praise without a rule behind it cannot be judged",
    "regulated word": "it is a regulated word with conditions of its own, which the kit does not check",
    "people": "whether it suits them is told by what is published for them, by each package and by whom they ask",
    "alcohol": "cooking leaves some of the alcohol, the more the shorter it cooks",
    "reheating": "leftovers are heated to 165 °F (74 °C) inside each time; say how hot",
    "keeping": "food is out of the refrigerator 2 hours at most, and a cooked dish keeps 3 to 4 days in it",
    "doneness": "a thermometer tells whether meat, fish or egg is done, and not its look; say how hot it is inside",
    "whole list": "that nothing else brings it or is in it is told by the list of ingredients; name what it has",
    "germs": "no table tells which germs a food holds and what becomes of them; say how hot or cold, and how long",
    "slow cooker": "meat is thawed before it goes into a slow cooker, and leftovers are heated on the stove first",
    "raw contact": "what has touched raw meat, poultry or fish is boiled, or washed with hot soapy water, before it "
    "touches what is eaten",
    "washing": "raw meat and poultry are not washed, which spreads what is on them; cooking makes them safe",
    "weight": "how much of the weight a food makes up is told by what it weighs; say the grams",
    "guide": "what counts as a serving of a food group is told by a dietary guide; say the cups",
    "beyond": "the table has no figures for it",
}


@dataclass(frozen=True, slots=True)
class HealthClaim(Claim):
    """Words of health, disease or praise, or a thing that the table lacks."""

    words: str = ""
    kind: str = ""
    section: str = ""


_OF_SAFETY = ("reheating", "keeping", "doneness", "germs", "raw contact", "slow cooker", "washing")


@dataclass(frozen=True, slots=True)
class SafetyClaim(HealthClaim):
    """Words of keeping, reheating or doneness that name no time and no temperature."""


def _compiled(pattern: str) -> str:
    pieces = []
    for piece in pattern.split(" "):
        if piece == "~":
            pieces.append(_GAP)
        elif piece == "~2":
            pieces.append(_SHORT_GAP)
        else:
            pieces.append(piece.replace("*", r"\w*") + " ")
    text = "".join(pieces)
    return rf"(?<!\w){text[:-1] if text.endswith(' ') else text}(?!\w)"


def _beginnings(pattern: str) -> set[str]:
    """Return what a pattern of the table may begin with, up to three letters: "(iron|vitamin c) ~" with iro and vit."""
    if not pattern.startswith("("):
        plain = _LETTERS.match(pattern)
        assert plain is not None, pattern
        return {plain[0][:_LONGEST]}
    depth, start, found = 0, 1, set()
    for at, sign in enumerate(pattern):
        depth += (sign == "(") - (sign == ")")
        if (sign == "|" and depth == 1) or depth == 0:
            found |= _beginnings(pattern[start:at])
            start = at + 1
        if depth == 0:
            break
    return found


Phrases = Mapping[str, tuple[tuple[str, ...], tuple[Mapping[str, str], ...]]]


def _by_beginning(rows: Sequence[Mapping[str, str]]) -> Phrases:
    """Return the patterns of some rows, and the rows, for each beginning that a match may have."""
    begun = [(row, tuple(_beginnings(row["words"]))) for row in rows]
    found = {}
    for beginning in sorted({one for _, beginnings in begun for one in beginnings}):
        own = tuple(row for row, beginnings in begun if beginning.startswith(beginnings))
        found[beginning] = tuple(row["words"] for row in own), own
    return found


@cache
def _joined(patterns: tuple[str, ...]) -> re.Pattern[str]:
    """Return some patterns joined into one, compiled when a text first has a word with which they may begin."""
    return re.compile("|".join(f"(?P<h{number}>{_compiled(pattern)})" for number, pattern in enumerate(patterns)))


@cache
def _table() -> tuple[Phrases, Phrases]:
    """Return the words that tell, and those of the kitchen that look like them."""
    rows = read_rows(files.bundled("data/health_words.csv"))
    telling = [row for row in rows if row["kind"] != "kitchen"]
    return _by_beginning(telling), _by_beginning([row for row in rows if row["kind"] == "kitchen"])


def _matches(phrases: Phrases, text: str) -> Iterator[tuple[re.Match[str], Mapping[str, str]]]:
    """Return the matches in a text that do not overlap, each with its row; only words can begin one."""
    end = 0
    for begun in _BEGINS.finditer(text):
        start = begun.start()
        if start < end:
            continue
        beginning = text[start : start + _LONGEST]
        told = phrases.get(beginning) or phrases.get(beginning[:2]) or phrases.get(beginning[:1])
        if told is None:
            continue
        patterns, rows = told
        match = _joined(patterns).match(text, start)
        if match is not None:
            end = match.end()
            yield match, rows[int((match.lastgroup or "h0")[1:])]


def read(sentence: Sentence) -> list[Claim]:
    """Return the words of a sentence that speak of health, disease, praise, or of what the table lacks."""
    claims: list[Claim] = []
    plain, starts = "", []
    for token in sentence.tokens:
        starts.append(len(plain))
        plain += token.text + " "
    telling, kitchen = _table()
    masked = plain
    for match, _ in _matches(kitchen, plain):
        masked = f"{masked[: match.start()]}{'_' * len(match[0])}{masked[match.end() :]}"
    for match, row in _matches(telling, masked):
        places = tuple(
            at
            for at, start in enumerate(starts)
            if start < match.end() and start + len(sentence.tokens[at].text) > match.start()
        )
        if not places:
            continue
        of = SafetyClaim if row["kind"] in _OF_SAFETY else HealthClaim
        claims.append(of(places, words=match[0].strip(), kind=row["kind"], section=row["source"]))
        sentence.used.update(places)
    claims += _unknown_substances(sentence)
    for at in sentence.places("beyond"):
        of_ranges = sentence.text_at(at) == "macronutrients" and "ranges" in sentence.words
        if at not in sentence.used and not is_cooking_starch(sentence, at) and not of_ranges:
            near = tuple(
                place for place in (at - 2, at - 1) if place >= 0 and sentence.tokens[place].quantity is not None
            )
            sentence.used.update({at, *near})
            claims.append(HealthClaim((at,), words=sentence.text_at(at), kind="beyond", section=""))
    return claims


_SUBSTANCE = re.compile(r"[a-z]{3,}(?:ine|ins?|oids?|enes?|ols?|phylls?|anins?|ones?|ates?|acids?)")
_NO_SUBSTANCES = frozenset(
    "ingredients margarine tangerine tangerines nectarines sardines wine routine fine shine pumpkin raisins "
    "grains beans vitamin vitamins protein proteins muffins skins onions lines ones bones stones plates dates "
    "chocolates cinnamon "
    "scones mushrooms medicine machine magazine".split()
)


def _unknown_substances(sentence: Sentence) -> list[Claim]:
    """Return substances that the table does not have: "full of ergothioneine", "two grams of lycopene"."""
    claims: list[Claim] = []
    for at, token in enumerate(sentence.tokens):
        weighed_acid = token.text in ("acid", "acids") and sentence.text_at(at - 2) == "of" and at > 2
        if weighed_acid and sentence.tokens[at - 3].quantity is not None and at not in sentence.used:
            sentence.used.update((at - 3, at - 1, at))
            claims.append(HealthClaim((at - 3, at - 1, at), words=f"{sentence.text_at(at - 1)} acid", kind="beyond"))
            continue
        weighed = sentence.text_at(at - 1) == "of" and _is_small_unit(sentence, at - 2)
        if not (weighed or _SUBSTANCE.fullmatch(token.text)) or token.text in _NO_SUBSTANCES:
            continue
        led = sentence.text_at(at - 1) in ("of", "in", "with") and at > 1
        has = sentence.text_at(at - 1) in ("have", "has", "contain", "contains") and sentence.text_at(at - 2) != "to"
        rich = (
            has
            or (weighed and len(token.text) > 3)
            or (led and (sentence.tokens[at - 2].is_a("wording") or sentence.tokens[at - 2].quantity is not None))
        )
        plain = not token.parts and token.food is None and token.quantity is None
        if rich and plain and at not in sentence.used:
            places = (at - 1, at) if has else (at - 2, at)
            sentence.used.update(places)
            claims.append(HealthClaim(places, words=token.text, kind="beyond"))
    return claims


def _is_small_unit(sentence: Sentence, at: int) -> bool:
    """Return whether a unit stands in which only nutrients are weighed, counted or not: "a few milligrams"."""
    if at < 0:
        return False
    token = sentence.tokens[at]
    return (token.amount.unit or token.parts.get("unit", "")) in ("mg", "µg")


def judge(claim: HealthClaim, _dish: Dish) -> Finding:
    """Return that it cannot be told, and why."""
    source = f" ({claim.section})" if claim.section else ""
    return Finding(CANNOT_TELL, f'"{claim.words}": {_REASONS[claim.kind]}{source}')
