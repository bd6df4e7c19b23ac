"""Keeping and heat told without a time or a place: "the danger zone", "a few days", "130 will do for leftovers"."""

import re

from kit.speech.about.unread import asked
from kit.speech.claim import THE_DISH, Claim
from kit.speech.safety.keeping_judged import OUT, DegreesClaim, TimeClaim
from kit.speech.safety.keeping_words import foods_named, of_an_animal
from kit.speech.words.sentence import Sentence
from kit.speech.words.tokens import Quantity

_SOME_TIME = re.compile(r"\b(?:a few|several|a couple of|many)(?: more)? (?:hours|days|weeks|months)\b")
_AS_LONG = re.compile(
    r"\b(?:keeps?|lasts?|stays? good)(?: in the \w+)? (?:just |every bit )?as long as\b"
    r"|\b(?:keeps?|lasts?) longer (?:on|at|in|out)\b"
)
_OR_LESS = re.compile(
    r"\bor (?:just |only |simply |even )?(?:to |until |\w+ )?(?:warm|lukewarm|less|lower|cooler|tepid)\b"
)
_LASTING = ("day", "week", "month", "year")
_OF_DATES = frozenset("ahead before ago old later next after in a per every within until for".split())
_OUT = r"(?:on the (?:counter|table|stove|windowsill|shelf)|at room temperature|unrefrigerated|in the pantry)"
_OUT_TOO = re.compile(
    rf"\b(?:as long|the same|just as (?:long|well)|likewise|also)(?: \w+)? {_OUT}"
    rf"|\b{_OUT}(?: ,)? (?:too|as well|the same|likewise|also|just as (?:long|well))\b"
)
_KEPT = frozenset("keep keeps last lasts good fine safe frozen freezer fridge refrigerator".split())
_AGAIN = frozenset("leftovers leftover reheat reheats reheated reheating rewarm".split())
_ON_A_HOT_DAY = re.compile(
    r"\b(?:(?:over|above|past|below|under|hotter than) (?:90|ninety|32)\b"
    r"|(?:hot|hotter) (?:day|days|weather|afternoon|evening)\b"
    r"|in the heat\b|degrees? (?:outside|outdoors|out)\b|heat ?wave\b|(?:90|ninety) or (?:more|above|hotter)\b)"
)
_HAVE = frozenset("have has get gets is it limit most".split())


def on_a_hot_day(sentence: Sentence, near: set[str], end: int) -> bool:
    """Return whether a time is what food has on a hot day, told up to a place: "on a hot day you have one hour"."""
    return (
        not near.isdisjoint(_HAVE)
        and "until" not in near
        and _ON_A_HOT_DAY.search(" ".join(sentence.texts[:end])) is not None
    )


def danger_zone(sentence: Sentence) -> list[Claim]:
    """Return between which temperatures germs are said to grow: "the danger zone is between 40 and 140"."""
    if "danger zone" not in sentence.plain:
        return []
    told = [at for at, said in sentence.quantities() if said.unit in ("", "degree", "celsius") and not said.is_fraction]
    sentence.used.update((*told, *sentence.where(("danger", "zone"))))
    if len(told) == 1 and sentence.tokens[told[0]].amount.relation == "between":
        denied = sentence.where(("not", "never"))
        sentence.used.update(denied)
        return [DegreesClaim((told[0],), THE_DISH, bool(denied), "zone", sentence.tokens[told[0]].amount)]
    return [asked(sentence, (at,)) for at in told]


def asides(sentence: Sentence, claims: list[Claim]) -> list[Claim]:
    """Return what tells of keeping or heat in words that nothing else has read; it is asked about.

    Parameters
    ----------
    sentence : Sentence
        The sentence; the tokens that are read are used up.
    claims : list of Claim
        What has been read of keeping in it.
    """
    found: list[Claim] = []
    some = _SOME_TIME.search(sentence.plain) if not claims and not sentence.words.isdisjoint(_KEPT) else None
    if some is not None:
        first = len(sentence.plain[: some.start()].split())
        found.append(asked(sentence, _places(sentence, some[0]) or (min(first, len(sentence) - 1),)))
    cold = [claim for claim in claims if isinstance(claim, TimeClaim) and claim.place != OUT]
    out = _OUT_TOO.search(sentence.plain) if cold and len(cold) == len(claims) else None
    if out is not None:
        found.append(asked(sentence, _places(sentence, out[0])))
    less = _OR_LESS.search(sentence.plain) if any(isinstance(claim, DegreesClaim) for claim in claims) else None
    if less is not None:  # "reheat it to 165 or just to warm"
        found.append(asked(sentence, _places(sentence, less[0])))
    for at, said in sentence.quantities() if cold else ():
        near = (sentence.text_at(at - 1), sentence.text_at(at + 1))
        if said.unit in _LASTING and _OF_DATES.isdisjoint(near):
            sentence.used.add(at)
            found.append(asked(sentence, (at,)))  # "four days; vacuum-packed, a month"
    as_long = _AS_LONG.search(sentence.plain) if not claims else None
    if as_long is not None:
        found.append(asked(sentence, _places(sentence, as_long[0])))
    told = [at for at, said in sentence.quantities() if _is_bare_heat(sentence, at, said)]
    if told and (not sentence.words.isdisjoint(_AGAIN) or any(map(of_an_animal, foods_named(sentence)))):
        sentence.used.update(told)
        found += [asked(sentence, (at,), (at, min(at + 3, len(sentence) - 1))) for at in told]
    return found


def _is_bare_heat(sentence: Sentence, at: int, said: Quantity) -> bool:
    """Return whether a statement opens with a number that may be how hot food gets: "130 will do"."""
    bare = not said.unit and not said.is_fraction and 100 <= said.value <= 212
    told = sentence.text_at(at + 1) in ("is", "will", "would") or sentence.text_at(at - 1) == ":"
    return bare and told and (at == sentence.clause_of(at)[0] or sentence.text_at(at - 1) in (",", ":"))


def _places(sentence: Sentence, words: str) -> tuple[int, ...]:
    """Return the places of the first token and the last that make up some words."""
    last = words.split()[-1]
    spots = [at for at, text in enumerate(sentence.texts) if text.split()[-1:] == [last]]
    return (max(spots[0] - 1, 0), spots[0]) if spots else ()
