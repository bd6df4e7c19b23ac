"""The balance of the energy: its shares inside, below or above the acceptable ranges for adults."""

import re
from dataclasses import dataclass
from math import isnan

from kit.meal.nutrition import ENERGY_SOURCES
from kit.rules.reference import distribution_ranges
from kit.rules.verdicts import CANNOT_TELL, HOLDS, OFF
from kit.speech.about.slots import negated
from kit.speech.about.unread import asked
from kit.speech.claim import THE_DISH, Claim, Finding
from kit.speech.words.sentence import Sentence
from kit.talk.dish import Dish
from kit.texts import listing, number, percent

_ABOVE = frozenset("above over beyond higher exceeds exceed exceeding past outside".split())


_BELOW = frozenset("below under beneath short lower".split())
_IN = ("inside", "within", "in")
_MORE, _LESS = frozenset("more bigger larger greater".split()), frozenset("less smaller fewer".split())


FAMILY = "balance"


@dataclass(frozen=True, slots=True)
class BalanceClaim(Claim):
    """Shares of the energy lie inside, below or above the acceptable ranges for adults."""

    nutrients: tuple[str, ...] = ENERGY_SOURCES
    where: str = "inside"
    count: int = 0


_OF_TASTE = ("flavor", "flavour", "taste", "acid", "sweet", "sour", "salt", "seasoning", "spice")
_OF_SHARES = frozenset("shares share energy calories macros macronutrients three adults recommended acceptable".split())


def read(sentence: Sentence) -> list[Claim]:
    """Return what a sentence claims about the ranges of the energy's shares."""
    claims: list[Claim] = []
    for at, token in enumerate(sentence.tokens):
        if at in sentence.used:
            continue
        if token.text == "balanced" and _is_well_balanced(sentence, at):
            sentence.used.add(at)
            claims.append(BalanceClaim((at,), THE_DISH, negated(sentence, at)))
        elif token.text in ("range", "ranges"):
            claims += _in_ranges(sentence, at)
    return claims


def _is_well_balanced(sentence: Sentence, at: int) -> bool:
    """Return whether the dish is called balanced, and not its taste."""
    led = sentence.text_at(at - 1) in ("well", "is", "a", "nicely", "perfectly", "nutritionally")
    text = sentence.text.lower()
    return led and not any(word in text for word in _OF_TASTE)


def _in_ranges(sentence: Sentence, at: int) -> list[Claim]:
    """Return that shares of the energy lie inside, above, below or outside their ranges."""
    clause = sentence.clause_of(at)
    words = {sentence.text_at(place) for place in clause}
    named, before = _macros(sentence, at), [place for place in clause if place < at]
    first = clause[0] + (sentence.text_at(clause[0]) == ",")
    they = before and sentence.text_at(first) in ("they", "these", "those", "all") and clause[0] > 0
    listed = [place for place in range(clause[0]) if sentence.is_a(place, "nutrient")] if they else []
    if listed and all(sentence.tokens[place].parts["nutrient"] in ENERGY_SOURCES for place in listed):
        named = [sentence.tokens[place].parts["nutrient"] for place in listed]  # "fat and carbs, they're all inside"
        before += listed
    if not named and not words & _OF_SHARES:
        return []
    if _SET_APART.search(sentence.plain):
        sentence.used.add(at)
        return [asked(sentence, (at,), (clause[0], at))]  # "all but the protein lie inside the ranges"
    others = [place for place in before if _is_no_share(sentence, place)]
    if others:
        sentence.used.update((*others, at))
        return [asked(sentence, (*others, at))]  # "sodium and fat are within the recommended ranges"
    nutrients = {
        place for place in before if sentence.is_a(place, "nutrient") and not sentence.is_a(place + 1, "wording")
    }
    days = {place for place in clause if sentence.is_a(place, "day") and abs(place - at) < 8}
    shared = any(
        sentence.tokens[place].amount.unit == "%" or sentence.tokens[place].amount.is_fraction for place in clause
    )
    sentence.used.update(place for place in clause if sentence.text_at(place) == "macronutrients")
    sentence.used.update({at} | (set() if shared else nutrients) | days)  # a share in it is read by its own family
    denied = bool(words & {"not", "neither", "none"})
    count = 2 if "two" in words and "three" in words else 0
    counted = [place for place in before if sentence.text_at(place) in ("two", "three")]  # "the three shares of energy"
    places = (*counted, at)
    too = _so_do(sentence, at)
    sentence.used.update(too)
    more = [sentence.tokens[place].parts["nutrient"] for place in too]
    told = tuple(dict.fromkeys((*named, *(more if named else [])))) or ENERGY_SOURCES
    other = _gapped(sentence, at)
    if other is not None and other.nutrients[0] in told and len(told) > 1 and not denied:
        sentence.used.update(other.places)
        told = tuple(name for name in told if name not in other.nutrients)
        return [BalanceClaim((*places, *too), THE_DISH, denied, told, _where(sentence, at), count), other]
    claim = BalanceClaim((*places, *too), THE_DISH, denied, told, _where(sentence, at), count)
    return [claim, *_of_the_same_range(sentence, at)]


def _is_no_share(sentence: Sentence, at: int) -> bool:
    """Return whether a nutrient is named that gives no energy, or is only a part of one that does."""
    if not sentence.is_a(at, "nutrient") or sentence.is_a(at + 1, "wording"):
        return False
    counted = any(sentence.tokens[place].amount.unit for place in range(max(0, at - 3), at))
    return sentence.tokens[at].parts["nutrient"] not in (*ENERGY_SOURCES, "energy") and not counted


def _of_the_same_range(sentence: Sentence, at: int) -> list[Claim]:
    """Return what is said of another share by "it": "..., and fat's share is above it"."""
    for place in range(at + 1, len(sentence)):
        name = sentence.tokens[place].parts.get("nutrient", "")
        for over in range(place + 1, min(place + 5, len(sentence) - 1)):
            word = sentence.text_at(over)
            where = "above" if word in _ABOVE else "below" if word in _BELOW else "inside" if word in _IN else ""
            if name in ENERGY_SOURCES and where and sentence.text_at(over + 1) in ("it", "its", "that", "theirs"):
                sentence.used.update((place, over))
                return [BalanceClaim((place, over), THE_DISH, False, (name,), where)]
    return []


def _gapped(sentence: Sentence, at: int) -> BalanceClaim | None:
    """Return what goes on without its verb or its range: "carbohydrate is above the range and fat below it"."""
    for place in range(at + 2, sentence.clause_of(at)[-1] + 1):
        name = sentence.tokens[place].parts.get("nutrient", "")
        side = place + 1 + (sentence.text_at(place + 1) in ("is", "lands", "sits", "falls", "lies", "comes"))
        if name not in ENERGY_SOURCES or sentence.text_at(place - 1) not in ("and", ",", "but", "while"):
            continue
        if sentence.text_at(side) in _SIDES and sentence.text_at(side + 1) in (
            "it",
            "its",
            "that",
            "them",
            "theirs",
            ".",
        ):
            return BalanceClaim((place, side), THE_DISH, False, (name,), _SIDES[sentence.text_at(side)])
    return None


_SET_APART = re.compile(
    r"\b(?:except|excepting|besides|(?:apart|aside) from|other than|(?:all|everything) but|save for)\b"
)
_SIDES = {"above": "above", "over": "above", "below": "below", "under": "below", "inside": "inside", "within": "inside"}


def _so_do(sentence: Sentence, at: int) -> list[int]:
    """Return where others are named of which the same is said: "..., and so do fat and protein"."""
    behind = [place for place in range(at + 1, len(sentence)) if sentence.text_at(place) == "so"]
    if not behind or sentence.text_at(behind[0] + 1) not in ("do", "does", "is", "are"):
        return []
    rest = range(behind[0] + 2, len(sentence))
    named = [place for place in rest if sentence.tokens[place].parts.get("nutrient") in ENERGY_SOURCES]
    plain = all(sentence.text_at(place) in ("and", "the", ",", ".", "!") for place in rest if place not in named)
    return named if plain else []


def _where(sentence: Sentence, at: int) -> str:
    """Return on which side of the ranges they are said to lie."""
    before = {sentence.text_at(place) for place in range(max(0, at - 10), at)}
    than = "than" in before
    if before & (_ABOVE - {"outside"}) or (than and before & _MORE):
        return "above"
    if before & _BELOW or (than and before & _LESS):
        return "below"
    return "outside" if "outside" in before else "inside"


def _macros(sentence: Sentence, at: int) -> list[str]:
    clause = sentence.clause_of(at)
    here = [sentence.tokens[place].parts["nutrient"] for place in clause if sentence.tokens[place].is_a("nutrient")]
    named = [name for name in dict.fromkeys(here) if name in ENERGY_SOURCES]
    if named or any(
        sentence.text_at(place) in ("all", "three", "shares", "macros", "macronutrients", "everything")
        for place in clause
    ):
        return named
    before = [
        sentence.tokens[place].parts["nutrient"]
        for place in range(clause[0] - 1, -1, -1)
        if sentence.tokens[place].is_a("nutrient")
    ]
    return [name for name in before if name in ENERGY_SOURCES][:1]


def judge(claim: BalanceClaim, dish: Dish) -> Finding:
    """Judge where shares of the energy lie."""
    shares, ranges = dish.numbers.energy_shares, distribution_ranges()
    if any(isnan(share) for share in shares.values()):
        return Finding(CANNOT_TELL, "the shares of the energy are not known, since an amount is missing")
    spans = {name: f"{number(100 * low)} to {percent(high)}" for name, (low, high) in ranges.items()}
    told = listing([f"{name} {percent(shares[name])} (range {spans[name]})" for name in claim.nutrients])
    because = f"of the energy, {told}; ranges for adults: IOM 2002/2005"
    tests = {
        "inside": lambda name: ranges[name][0] <= round(shares[name], 4) <= ranges[name][1],
        "above": lambda name: shares[name] > ranges[name][1],
        "below": lambda name: shares[name] < ranges[name][0],
        "outside": lambda name: not ranges[name][0] <= round(shares[name], 4) <= ranges[name][1],
    }
    fitting = [name for name in claim.nutrients if tests[claim.where](name)]
    right = len(fitting) == claim.count if claim.count else len(fitting) == len(claim.nutrients)
    if claim.negated:
        right = not right
    if right:
        return Finding(HOLDS, because)
    wrong = [name for name in claim.nutrients if tests[claim.where](name) == claim.negated]
    lying = (_lying([name for name in wrong if tests[where](name)], where) for where in ("above", "below", "inside"))
    return Finding(OFF, because, None, tuple(filter(None, lying)))


def _lying(names: list[str], where: str) -> str:
    """Return where shares of the energy lie, in a sentence; empty where none lies there."""
    if not names:
        return ""
    several = len(names) > 1
    verb, ranges = ("lie", "ranges") if several else ("lies", "range")
    return f"{listing(names).capitalize()} {verb} {where} the {ranges} for adults, as a share of the energy."
