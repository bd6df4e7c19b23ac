"""The ways of saying a change: each shape of words, and what its words stand for."""

import re
from collections.abc import Iterator
from dataclasses import dataclass

from kit.meal.change_words import number_in, part_in, times_in, verb_first
from kit.meal.portions import MAKE_MORE, SHARE_OUT


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


_PEOPLE = (
    r"(?:people|persons?|guests?|servings?|portions?|helpings?|of us|of them|friends?|kids?|children"
    r"|adults?|folks?|eaters?"
    r"|colleagues?|diners?|plates?|bowls?|box(?:es)?|jars?|containers?|students?|neighbou?rs?|coworkers?"
    r"|pieces?|squares?"
    r"|slices?|meals?|lunch(?:es)?|dinners?|breakfasts?|pots?|glass(?:es)?|hungry people)"
)
_IT = (
    r"(?:it|this|that|everything|all of it|all|(?:the |this |that )?(?:whole |entire )?"
    r"(?:recipe|batch|pot|dish|thing|lot|pan|tray|quantity|quantities|amounts?|ingredients))"
)
_N = (
    r"(?:about |around |only |just |exactly |a |for )?(?P<n>-?\d+(?:[.,]\d+)?|(?:a|one|two|three|four|half a) dozen|"
    r"a couple(?: of)?|zero|one|two|three|four|five|six|seven|eight|nine|ten|eleven|twelve|\w+teen|"
    r"(?:twenty|thirty|forty|fifty|sixty|seventy|eighty|ninety)(?:[- ]\w+)?|(?:a |one )?hundred)"
)
_POT = (
    r"(?:the |this |that |one |a )?(?:same |one |single |this |that )"
    r"(?:pot|batch|pan|tray|recipe|amount|dish|bake|quantity|bowl)"
)
_CROWD = r"(?:(?:an? |my |our |the )?(?:crowd|family|group|party|team|table|class|total|household|gathering) of )?"
_NOT_M = r"(?:,? (?:instead of|rather than|not) (?!.*\b(?:same|one|single)\b).*)?"
_SIZED = r"(?:(?:big|large|larger|bigger|small|smaller|little|individual|equal|good|generous) )?"
_DAY = r"(?: (?:on |this |next )?(?:\w+day|tonight|tomorrow|today|weekend|week)(?: (?:evening|morning|night|noon))?)?"
_COME = r"(?: (?:come|are coming|show up|turn up|join|for lunch|for dinner|over|instead))?" + _DAY
_TIMES = (
    r"(?P<times>double|twice|triple|treble|thrice|quadruple|halve|half|\d+(?:\.\d+)?\s?(?:x|times)"
    r"|(?:two|three|four|five|six|ten|one and a half|1 1/2|two and a half|2 1/2) times)"
)
_PART = (
    r"(?P<part>\d+\s*/\s*\d+|half(?: of)?|an? (?:half|third|quarter|fourth|fifth)|one (?:half|third"
    r"|quarter|fourth|fifth)"
    r"|one-(?:half|third|quarter)|(?:two|three|four)[- ](?:thirds|quarters|fourths|fifths)|quarter"
    r"|\d+(?:\.\d+)?\s*(?:%|percent|per cent))"
)
_NO_KIND = r"(?!\d+(?:\.\d+)?\s*(?:%|percent|per cent) (?!of |as |the ))"  # "2% milk" is a kind of milk, no part of it
_OF = r"(?:(?:as much|as many|the (?:amount|quantity|number|usual amount) of|that much|that many|of)(?: of)? )?"
_USE = r"(?:(?:use|keep|add|put|only|just|with|make|have|leave out) (?:only |just )?)?"
_NO_VERB = "(?!swap|substitute|leave out|no |reduce|increase)"
_INSTEAD = (
    r"(?:instead of|in place of|in lieu of|rather than|as an? (?:substitute|replacement|swap|stand-in"
    r"|alternative) (?:for|to)"
    r"|replacing|to replace|take the place of|taking the place of|stand in for|standing in for|go in for"
    r"|work instead of|where (?:you|we|i|they|the recipe|it) (?:have|has|had|uses?|used|says?|calls? for|puts?)"
    r"|(?:in|for) the (?:place|spot) of"
    r"|(?:be|make|is|are) an? (?:good |fine |fair |decent )?(?:substitute|replacement|swap|stand-in"
    r"|alternative) (?:for|to))"
)
_ON_TOP = r"(?: (?:on top|over the top|as (?:an? |the )?(?:topping|garnish)))"


def _servings(kind: str, meaning: str, *patterns: str) -> list[tuple[str, str, re.Pattern[str]]]:
    return [(kind, meaning, re.compile(pattern)) for pattern in patterns]


_SERVINGS = [
    *_servings(
        "servings",
        SHARE_OUT,
        rf"^(?:serve|feed|get|make|fill|use|add)?\s*{_CROWD}{_N}\s*{_PEOPLE}?"
        rf"(?:,? (?:instead of|rather than|not) \w+)?(?:,? (?:from|out of|with|of|using)|,) {_POT}(?: of .*)?$",
        rf"^{_POT},? (?:but |now |just )?{_N} {_PEOPLE}$",
        rf"^(?:serve |use |make )?{_POT}(?: of \w+)? (?:for|into|among|amongst|between|to|serves?|feeds?"
        rf"|to feed|to serve) {_N}\s*{_PEOPLE}?$",
        r"^(?:split|divide|share|ladle|spoon|scoop|pack|portion|stretch|spread|slice|separate|dish|reduce|portioned|divided"
        r"|shared|cut|pour|put|fill)\b[^\d]*?\s*(?:out |up )*"
        rf"(?:between|among|amongst|into|in|to|for|over|across) {_N}\s*{_SIZED}{_PEOPLE}?{_NOT_M}$",
        rf"^(?:fill|make|get) {_N} {_SIZED}{_PEOPLE} (?:with|from|out of) {_IT}$",
        rf"^(?:serve|feed|fill|get) {_N}\s*{_PEOPLE}? (?:from|out of) (?:the|this|that|one) (?:whole )?"
        r"(?:pot|batch|pan|tray|dish|bake|bowl|lot)$",
        rf"^(?:make |serve |get |use )?{_N} (?:smaller|bigger|larger|generous|small|big) {_PEOPLE}$",
    ),
    *_servings(
        "servings",
        MAKE_MORE,
        rf"^(?:make |serve |scale |size |use )?(?:{_IT} |enough |some )?(?:up |down )?(?:for|to|to serve"
        rf"|to feed) {_CROWD}{_N}(?: {_PEOPLE})?{_COME}{_NOT_M}$",
        rf"^(?:serve|feed|make|fill|make for|use|invite|expect|do|scale to|yield|have) {_CROWD}{_N}(?: "
        rf"{_PEOPLE})?{_COME}{_NOT_M}$",
        rf"^(?:serve|feed|make) (?:{_IT} )?(?:for|to) {_CROWD}{_N}(?: {_PEOPLE})?{_COME}{_NOT_M}$",
        rf"^(?:there (?:are|will be|were) )?{_CROWD}{_N} {_PEOPLE}(?: of us)?{_COME}{_NOT_M}$",
        rf"^(?:an? |the )?{_PEOPLE} for {_CROWD}{_N}(?: {_PEOPLE})?$",
        rf"^(?:we are|we're|we were|there are|there're|there will be|we'll be|we will be) {_CROWD}{_N}{_COME}$",
    ),
]
_BATCH = [
    re.compile(
        rf"^(?:make |use )?(?:it |this )?(?:only |just )?(?:an? )?{_TIMES} "
        r"(?:an? |the |this )?(?:\w+ )?(?:batch|recipe)(?: size)?$"
    ),
    re.compile(rf"^(?:make |use )?(?:the )?{_TIMES} {_OF}(?:the |this |that )?(?P<what>.+?)(?: recipe)?$"),
    re.compile(rf"^(?:reduce|make|scale|swap) (?P<what>{_IT}) (?:in|by|to|down to|down by) (?P<times>half)$"),
    re.compile(r"^(?:make |use )?(?P<times>twice|half|double|three times) (?:as much|the amount)$"),
    re.compile(r"^make (?:only |just )?(?P<times>half|double|triple)$"),
    re.compile(r"^(?P<times>two|three|four|five|2|3|4|5) batches$"),
    re.compile(
        r"^(?:make |use )?(?:it |this )?(?:only |just )?(?:an? )?(?P<times>quarter|third) (?:of )?(?:an? |the |this )?"
        r"(?:batch|recipe)$"
    ),
]
_COUNTED = re.compile(r"\d|(?:half|one|two|three|four|five|six|a|an|quarter|third) ")  # "another 1/4 cup walnuts"
_IT_ALL = re.compile(rf"^{_IT}$")


def _shape(kind: str, pattern: str, how: str = "") -> tuple[str, str, re.Pattern[str]]:
    return kind, how, re.compile(pattern)


# What is there is `old`; what comes, or how much, is `new`; `a` and `b` are told apart by what the recipe holds.
_SHAPES = [
    _shape("portions", rf"^(?:make |serve |use )?(?:the )?(?P<old>smaller|bigger|larger|fewer|more|less) {_PEOPLE}$"),
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
    _shape("times", rf"^{_PART} more (?:of )?(?P<old>.+)$", "more"),
    _shape("times", rf"^(?:use |add )?{_PART} (?:less|fewer) (?:of )?(?P<old>.+)$", "less"),
    _shape("times", rf"^leave out {_NO_KIND}{_PART} (?:of )?(?P<old>.+)$", "less"),
    _shape("times", rf"^{_USE}{_NO_KIND}{_PART} (?P<old>(?!of |the |as |that ).+)$", "bare part"),
    _shape("times", rf"^{_USE}{_TIMES} {_OF}(?P<old>.+)$"),
    _shape("times", rf"^{_USE}{_NO_KIND}{_PART} {_OF}(?P<old>.+)$"),
    _shape("times", r"^(?P<old>.+?) (?:be )?(?P<times>doubled|tripled|halved|quadrupled)$"),
    _shape("times", r"^(?P<old>.+?),? (?:x|times) ?(?P<times>\d+(?:\.\d+)?)$"),
    _shape(
        "times",
        rf"^(?:with )?(?:the )?(?P<old>.+?),? (?:but )?{_TIMES}(?: (?:as much|as many|the amount|of it|that))?$",
    ),
    _shape(
        "more",
        r"^(?:use |add |put |put in |with |plus |have |make it )?(?P<amount>.*?)\b(?P<more>more"
        r"|extra|additional|another|less|fewer) (?P<old>.+)$",
    ),
    _shape("more", r"^(?P<more>reduce|increase) (?P<old>.+)$"),
    _shape("more", r"^(?:use |add |put )?(?P<old>.+) (?P<more>less|fewer|more|extra)$"),
    _shape(
        "leave out",
        r"^(?:(?:leav(?:e|ing)|tak(?:e|ing)|keep(?:ing)?|pick(?:ing)?) )?(?P<old>.+?) (?:out|off|away"
        r"|aside)(?: of .*)?$",
    ),
    _shape("leave out", r"^(?:with )?(?:leave out|no|minus|less)(?: more)? (?P<old>.+)$"),
    _shape("free", r"^(?:make it |make this |make |use |a )?(?P<old>[a-z]+)[- ]free$"),
    _shape("add", rf"^(?:add|plus|with added|with some|add some) (?P<new>.+?){_ON_TOP}?$"),
    _shape("add", rf"^put (?P<new>.+?){_ON_TOP}?$", "put"),
    _shape("add", rf"^(?:have |use |with )?(?P<new>.+?){_ON_TOP}$"),
    _shape("swap", r"^(?:make )?(?:the )?(?P<old>.+?) (?:be|was|were|is|are|become|became) (?P<new>.+)$"),
    _shape(
        "swap",
        rf"^{_NO_VERB}(?:use )?(?:from )?(?P<a>.+?),? (?P<link>for|to|not|over|as|in for) (?P<b>.+)$",
        "weak",
    ),
    _shape(
        "leave out",
        r"^(?!.*\b(?:half|double|add|instead|swap|use|more|less|no)\b)(?P<new>[a-z' ]{2,60}?) without (?P<old>.+)$",
        "behind",
    ),
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
    for kind, meaning, shape in _SERVINGS:
        found = shape.match(text)
        number = number_in(found["n"]) if found else None
        if number is not None:
            yield Clause(kind, number=number, how=meaning)
            return
    for shape in _BATCH:
        found = shape.match(text)
        what = (found.groupdict().get("what") or "it") if found else ""
        times = times_in(found["times"]) if found else None
        if times and (_IT_ALL.match(what) or what.removeprefix("the ") in dish):
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
        one = (more == "another" and not _COUNTED.match(old)) or (
            more in ("extra", "additional") and amount in ("a", "an")
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
