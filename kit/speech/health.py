"""Health, disease and beyond: what the table and the rules cannot tell, whatever the numbers are."""

import re
from dataclasses import dataclass
from functools import cache

from kit import files
from kit.food.composition import read_rows
from kit.rules.verdicts import CANNOT_TELL
from kit.speech.claim import Claim, Finding
from kit.speech.sentence import Sentence
from kit.talk.dish import Dish

FAMILY = "health and beyond"
_GAP = r"(?:[\w%,]+ ){0,4}?"
_SHORT_GAP = r"(?:[\w%,]+ ){0,2}?"
_REASONS = {
    "effect": "what a food does in the body is a health or structure/function claim, which the table cannot tell",
    "disease": "a word of disease makes it a health claim, which needs its own authorisation",
    "general": "a word of praise without a rule behind it cannot be judged",
    "regulated word": "it is a regulated word with conditions of its own, which the kit does not check",
    "beyond": "the table has no figures for it",
}


@dataclass(frozen=True, slots=True)
class HealthClaim(Claim):
    """Words of health, disease or praise, or a thing that the table lacks."""

    words: str = ""
    kind: str = ""
    section: str = ""


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


@cache
def _table() -> tuple[re.Pattern[str], list[tuple[str, str]], re.Pattern[str]]:
    rows = read_rows(files.bundled("data/health_words.csv"))
    telling = [row for row in rows if row["kind"] != "kitchen"]
    whole = "|".join(f"(?P<h{number}>{_compiled(row['words'])})" for number, row in enumerate(telling))
    kitchen = "|".join(_compiled(row["words"]) for row in rows if row["kind"] == "kitchen")
    return re.compile(whole), [(row["kind"], row["source"]) for row in telling], re.compile(kitchen)


def read(sentence: Sentence) -> list[Claim]:
    """Return the words of a sentence that speak of health, disease, praise, or of what the table lacks."""
    claims: list[Claim] = []
    plain, starts = "", []
    for token in sentence.tokens:
        starts.append(len(plain))
        plain += token.text + " "
    pattern, kinds, kitchen = _table()
    masked = kitchen.sub(lambda match: "_" * len(match[0]), plain)
    for match in pattern.finditer(masked):
        group = match.lastgroup or "h0"
        kind, section = kinds[int(group[1:])]
        places = tuple(
            at
            for at, start in enumerate(starts)
            if start < match.end() and start + len(sentence.tokens[at].text) > match.start()
        )
        if not places:
            continue
        claims.append(HealthClaim(places, words=match[0].strip(), kind=kind, section=section))
        sentence.used.update(places)
    for at in sentence.places("beyond"):
        if at not in sentence.used:
            near = tuple(
                place for place in (at - 2, at - 1) if place >= 0 and sentence.tokens[place].quantity is not None
            )
            sentence.used.update({at, *near})
            claims.append(HealthClaim((at,), words=sentence.text_at(at), kind="beyond", section=""))
    return claims


def judge(claim: HealthClaim, _dish: Dish) -> Finding:
    """Return that it cannot be told, and why."""
    source = f" ({claim.section})" if claim.section else ""
    return Finding(CANNOT_TELL, f'"{claim.words}": {_REASONS[claim.kind]}{source}')
