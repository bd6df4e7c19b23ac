"""The ways of saying a change: each shape of words, and what its words stand for."""

import re
from collections.abc import Iterator
from dataclasses import dataclass

from kit.food.vocabulary import singular
from kit.meal.change_servings import BATCH, IT_ALL, OF, PEOPLE, SERVINGS, TIMES, so_many
from kit.meal.change_words import number_in, part_in, times_in, verb_first
from kit.meal.portions import MAKE_MORE


@dataclass(frozen=True, slots=True)
class Clause:
    """One way to take a clause of a what-if.

    Attributes
    ----------
    kind : str
        ``"leave out"``, ``"keep"``, ``"free"``, ``"need"``, ``"swap"``, ``"times"``, ``"by"``, ``"set"``, ``"more"``,
        ``"add"``, ``"halves"``, ``"use"``, ``"servings"``, ``"batch"``, ``"rinse"``.
    old, new : str
        The words of what is there, and of what comes or of the amount.
    number : float
        How many times, or how many servings; 1 or -1 for more or less.
    how : str
        A further distinction of the kind.
    """

    kind: str
    old: str = ""
    new: str = ""
    number: float = 0.0
    how: str = ""


_PART = (
    r"(?P<part>\d+\s*/\s*\d+|half(?: of)?|an? (?:half|third|quarter|fourth|fifth)|one (?:half|third"
    r"|quarter|fourth|fifth)"
    r"|one-(?:half|third|quarter)|(?:two|three|four)[- ](?:thirds|quarters|fourths|fifths)|quarter"
    r"|\d+(?:\.\d+)?\s*(?:%|percent|per cent))"
)
_NO_KIND = r"(?!\d+(?:\.\d+)?\s*(?:%|percent|per cent) (?!of |as |the ))"  # "2% milk" is a kind of milk, no part of it
_USE = r"(?:(?:use|keep|add|put|take|only|just|with|make|have|leave out) (?:only |just )?)?"
_DOWN = r"(?:be )?(?:reduced|cut|lowered|down) (?:down )?"
_MANY = r"(?:\d+|an?|one|two|three|four|five|six|seven|eight|nine|ten|twelve)"  # "soup for ten" is of servings
_NO_VERB = "(?!swap|substitute|leave out|no |reduce|increase)"
_INSTEAD = (
    r"(?:instead of|in place of|in lieu of|rather than|as an? (?:substitute|replacement|swap|stand-in"
    r"|alternative) (?:for|to)"
    r"|replacing|to replace|replaces?|take the place of|taking the place of|stand in for|standing in for|go in for"
    r"|work instead of|where (?:you|we|i|they|the recipe|it) (?:have|has|had|uses?|used|says?|calls? for|puts?)"
    r"|(?:in|for) the (?:place|spot) of"
    r"|(?:be|make|is|are) an? (?:good |fine |fair |decent )?(?:substitute|replacement|swap|stand-in"
    r"|alternative) (?:for|to))"
)
_ON_TOP = r"(?: (?:on top|over the top|as (?:an? |the )?(?:topping|garnish)))"


_COUNTED = re.compile(r"\d|(?:half|one|two|three|four|five|six|a|an|quarter|third) ")  # "another 1/4 cup walnuts"


def _shape(kind: str, pattern: str, how: str = "") -> tuple[str, str, re.Pattern[str]]:
    return kind, how, re.compile(pattern)


# What is there is `old`; what comes, or how much, is `new`; `a` and `b` are told apart by what the recipe holds.
_SHAPES = [
    _shape("portions", rf"^(?:make |serve |use )?(?:the )?(?P<old>smaller|bigger|larger|fewer|more|less) {PEOPLE}$"),
    _shape(
        "rinse",
        r"^(?:don'?t|do not|not|leave out|no|never) (?P<how>rins|drain)(?:e|ing"
        r"|ing)?(?: off)?(?: and \w+)? (?P<old>.+)$",
        "not",
    ),
    _shape("rinse", r"^(?P<how>rinse|drain)(?: and (?:rinse|drain))?(?: off)? (?P<old>.+?)(?: (?:first|well|off))?$"),
    _shape(
        "swap",
        rf"^(?:use |add )?(?P<new>.+?)(?: (?:do|work|go|be ok|be fine)"
        rf"|{_ON_TOP})?,? {_INSTEAD} (?:using )?(?P<old>.+)$",
    ),
    _shape(
        "swap",
        rf"^{_INSTEAD} (?:using )?(?P<old>.+?)(?:, | (?=(?:use|try|add|have|put|take|i use|we use"
        r"|then) ))(?:i |we |then )?(?:(?:use|try|add|have|put in|put|take) )?(?P<new>.+)$",
    ),
    _shape("swap", rf"^{_INSTEAD} (?P<both>.+)$", "unmarked"),
    _shape(
        "halves",
        r"^half (?!the |of |as |an? )(?P<old>[a-z' -]+?),? (?:and )?half (?!the |of |as |an? )(?P<new>[a-z' -]+)$",
    ),
    _shape(
        "swap",
        r"^(?P<old>.+?) (?:(?:be|is|are|get|gets) )?(?:replaced|swapped|substituted|exchanged|traded|switched)(?: out)?"
        r" (?:with|by|for) (?P<new>.+)$",
    ),
    _shape("times", rf"^(?:reduce|leave out) (?P<old>.+?) (?:by|down by) {_PART}$", "less"),
    _shape("times", rf"^increase (?P<old>.+?) by {_PART}$", "more"),
    _shape("times", r"^reduce (?P<old>[a-z' -]+?) (?P<part>\d+(?:\.\d+)?\s*(?:%|percent|per cent))$", "less"),
    _shape("times", rf"^(?P<old>[a-z' -]+?) {_DOWN}by {_PART}$", "less"),
    _shape("by", rf"^(?P<old>[a-z' -]+?) {_DOWN}by (?P<new>.+)$", "less"),
    _shape("set", rf"^(?P<old>[a-z' -]+?) (?:{_DOWN}|increased |raised |upped |up )to (?P<new>.+)$"),
    _shape(
        "times",
        rf"^(?:reduce|increase|bring|swap) (?P<old>.+?) (?:down |up )?(?:to|in) {_PART}(?: of (?:it|that"
        r"|the amount))?$",
    ),
    _shape(
        "set",
        r"^(?:reduce|increase|set|bring|take|keep|limit|make|go|swap|leave out) (?P<old>.+?) (?:down |up "
        r"|back )?(?:to|at) (?:only |just )?(?P<new>.+)$",
    ),
    _shape("by", r"^reduce (?P<old>.+?) by (?P<new>.+)$", "less"),
    _shape("by", r"^increase (?P<old>.+?) by (?P<new>.+)$", "more"),
    _shape("keep", r"^not (?P<old>[a-z' -]+)$"),
    _shape("keep", r"^leave (?!out)(?P<old>[a-z' -]+?) (?:in|alone|as (?:it|they) (?:is|are)|as is)$"),
    _shape("keep", r"^keep (?:in )?(?!\d|half|only|just)(?P<old>[a-z' -]+?)(?: in| as it is| as is| the same)?$"),
    _shape("swap", r"^(?P<verb>swap|substitute) (?P<a>.+?),? (?P<link>for|with|by|to|into) (?P<b>.+)$"),
    _shape("times", rf"^{_PART} (?:less|fewer) (?:of )?(?P<old>.+)$", "less"),
    _shape("times", rf"^(?P<old>[a-z' -]+?)[,:]? {_PART} (?:less|fewer)$", "less"),
    _shape("times", rf"^(?P<old>[a-z' -]+?)[,:]? {_PART} more$", "more"),
    _shape("times", rf"^{_PART} more (?:of )?(?P<old>.+)$", "more"),
    _shape("times", rf"^(?:use |add )?{_PART} (?:less|fewer) (?:of )?(?P<old>.+)$", "less"),
    _shape("times", rf"^(?:[a-z]+ )?{_PART} {OF}(?P<old>.+?) (?:out|away|off)$", "less"),
    _shape("times", rf"^leave out {_NO_KIND}{_PART} (?:of )?(?P<old>.+)$", "less"),
    _shape("times", rf"^{_USE}{_NO_KIND}{_PART} (?P<old>(?!of |the |as |that ).+)$", "bare part"),
    _shape("times", rf"^{_USE}{TIMES} {OF}(?P<old>.+)$"),
    _shape("times", rf"^{_USE}{_NO_KIND}{_PART} {OF}(?P<old>.+)$"),
    _shape("times", r"^(?P<old>.+?) (?:be )?(?P<times>doubled|tripled|halved|quadrupled)$"),
    _shape("times", r"^(?P<old>.+?),? (?:x|times) ?(?P<times>\d+(?:\.\d+)?)$"),
    _shape(
        "times",
        rf"^(?:with )?(?:the )?(?P<old>.+?),? (?:but )?{TIMES}(?: (?:as much|as many|the amount|of it|that))?$",
    ),
    _shape(
        "more",
        r"^(?:use |add |put |put in |with |plus |have |make it )?(?P<amount>.*?)\b(?P<more>more"
        r"|extra(?! (?:firm|lean|virgin|sharp|large|light)\b)|additional|another|less|fewer) (?P<old>.+)$",
    ),
    _shape("more", r"^(?P<more>reduce|increase) (?P<old>.+)$"),
    _shape("more", r"^(?:use |add |put )?(?P<old>.+) (?P<more>less|fewer|more|extra)$"),
    _shape(
        "leave out",
        r"^(?:(?:leav(?:e|ing)|tak(?:e|ing)|keep(?:ing)?|pick(?:ing)?) )?(?P<old>.+?) (?:out|off|away"
        r"|aside)(?: of .*)?$",
    ),
    _shape("leave out", r"^(?:with )?(?:leave out|no|minus|less)(?: more)? (?P<old>.+)$"),
    _shape("free", r"^(?:make it |make this |make |use |a )?(?P<old>[a-z]+)[- ]free(?: version)?$"),
    _shape("add", rf"^(?:add|plus|with added|with some|add some) (?P<new>.+?){_ON_TOP}?$"),
    _shape("add", rf"^put (?P<new>.+?){_ON_TOP}?$", "put"),
    _shape("add", rf"^(?:have |use |with )?(?P<new>.+?){_ON_TOP}$", "put"),
    _shape("swap", r"^(?:make )?(?:the )?(?P<old>.+?) (?:be|was|were|is|are|become|became) (?P<new>.+)$"),
    _shape("swap", rf"^{_NO_VERB}(?:use )?(?P<new>(?:(?!\bbut\b|\band\b).)+?),? not (?P<old>.+)$", "not"),
    _shape(
        "swap",
        rf"^{_NO_VERB}(?:use )?(?:from )?(?P<a>.+?),? (?P<link>for(?! {_MANY}$)|to|over|as|in for) (?P<b>.+)$",
        "weak",
    ),
    _shape(
        "leave out",
        r"^(?!.*\b(?:half|double|add|instead|swap|use|more|less|no|with|but|and|plus)\b)"
        r"(?P<new>[a-z' ]{2,60}?) without (?P<old>.+)$",
        "behind",
    ),
    _shape("swap", r"^use (?P<a>.+?) (?P<link>for) (?P<b>(?!the (?:top|base|sauce|dressing)).+)$", "use for"),
    _shape("use", r"^(?:make it|make this|make the dish) (?P<new>.+)$", "bare"),
    _shape("use", r"^(?:use |only |just |with |take )+(?P<new>.+?)(?: instead)?$", "verb"),
    _shape("use", r"^(?P<new>.+) instead$", "verb"),
    _shape("use", r"^(?!.*\b(?:instead|without|swap|rather than|place of)\b)(?P<new>.+)$", "bare"),
]
_PLAINLY = ("leave out", "keep", "halves", "rinse", "set", "by", "more", "add", "free")


def clauses(text: str, dish: frozenset[str]) -> Iterator[Clause]:
    """Yield the ways to take a clause, the likeliest first.

    Parameters
    ----------
    text : str
        The clause, without politeness.
    dish : frozenset of str
        What the dish and its servings are called: "double the soup" means the recipe.
    """
    text = verb_first(text)
    for kind, meaning, shape in SERVINGS:
        found = shape.match(text)
        number = number_in(found["n"]) if found else None
        if number is not None:
            yield Clause(kind, number=number, how=meaning)
            return
    many = so_many(text, dish)
    if many is not None:
        yield Clause("servings", number=many, how=MAKE_MORE)
        return
    for shape in BATCH:
        found = shape.match(text)
        what = (found.groupdict().get("what") or "it") if found else ""
        times = (times_in(found["times"]) or part_in(found["times"])) if found else None
        if times and (IT_ALL.match(what) or singular(what.removeprefix("the ")) in dish):
            yield Clause("batch", number=times)
            return
    plainly = False  # whether a verb says what is to be done: then the words alone are no wish for a food
    for kind, how, shape in _SHAPES:
        found = shape.match(text)
        clause = _clause(kind, how, found.groupdict()) if found else None
        if clause is not None and not (plainly and how == "bare"):
            plainly = plainly or kind in _PLAINLY
            yield clause


def _clause(kind: str, how: str, said: dict[str, str | None]) -> Clause | None:
    """Return the clause that a shape's words make, None when a number among them is none."""
    old, new = said.get("old") or "", said.get("new") or ""
    if kind == "times":
        part = times_in(said["times"] or "") if said.get("times") else part_in(said["part"] or "")
        if part is None:
            return None
        return Clause(kind, old, number={"less": 1 - part, "more": 1 + part}.get(how, part), how=how)
    if kind == "more":
        more = said.get("more") or ""
        sign = -1.0 if more in ("less", "fewer", "reduce") else 1.0
        amount = (said.get("amount") or "").strip()
        one = not _COUNTED.match(old) and (
            more == "another" or (more in ("extra", "additional") and amount in ("a", "an"))
        )
        return Clause(kind, old, "1" if one else amount, sign)
    if kind == "by":
        return Clause(kind, old, new, -1.0 if how == "less" else 1.0)
    if kind == "rinse":
        return Clause(kind, old, how=f"{how} {said.get('how') or ''}".strip())
    if kind == "swap" and said.get("a"):
        return Clause(kind, said["a"] or "", said["b"] or "", how=how or f"{said.get('verb')} {said.get('link')}")
    if how == "unmarked":
        return Clause(kind, said.get("both") or "", how=how)
    return Clause(kind, old, new, how=how)
