"""The ways of asking for other servings, or for a bigger or smaller batch."""

import re

from kit.food.vocabulary import SMALL_WORDS, singular
from kit.meal.change_words import number_in
from kit.meal.portions import MAKE_MORE, SHARE_OUT

PEOPLE = (
    r"(?:people|persons?|guests?|servings?|portions?|helpings?|of us|of them|friends?|kids?|children"
    r"|adults?|folks?|eaters?"
    r"|colleagues?|diners?|plates?|bowls?|box(?:es)?|jars?|containers?|students?|neighbou?rs?|coworkers?"
    r"|pieces?|squares?"
    r"|slices?|meals?|lunch(?:es)?|dinners?|breakfasts?|glass(?:es)?|hungry people)"
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
_NOT_M = (  # "instead of six", not "rather than 12 oz of spaghetti"
    rf"(?:,? (?:instead of|rather than|not) (?:for |the |just |only |usual )*\w+(?: {PEOPLE})?)?"
)
_SIZED = r"(?:(?:big|large|larger|bigger|small|smaller|little|individual|equal|good|generous) )?"
_DAY = r"(?: (?:on |this |next )?(?:\w+day|tonight|tomorrow|today|weekend|week)(?: (?:evening|morning|night|noon))?)?"
_COME = r"(?: (?:come|are coming|show up|turn up|join|for lunch|for dinner|over|instead))?" + _DAY
TIMES = (
    r"(?P<times>double|twice|triple|treble|thrice|quadruple|halve|half|\d+(?:\.\d+)?\s?(?:x|times)"
    r"|(?:two|three|four|five|six|ten|one and a half|1 1/2|two and a half|2 1/2) times)"
)
OF = r"(?:(?:as much|as many|the (?:amount|quantity|number|usual amount) of|that much|that many|of)(?: of)? )?"


def _servings(kind: str, meaning: str, *patterns: str) -> list[tuple[str, str, re.Pattern[str]]]:
    return [(kind, meaning, re.compile(pattern)) for pattern in patterns]


SERVINGS = [
    *_servings(
        "servings",
        SHARE_OUT,
        rf"^(?:serve|feed|get|make|fill|use|add)?\s*{_CROWD}{_N}\s*{PEOPLE}?"
        rf"(?:,? (?:instead of|rather than|not) \w+)?(?:,? (?:from|out of|with|of|using)|,) {_POT}(?: of .*)?$",
        rf"^{_POT},? (?:but |now |just )?{_N} {PEOPLE}$",
        rf"^(?:serve |use |make )?{_POT}(?: of \w+)? (?:for|into|among|amongst|between|to|serves?|feeds?"
        rf"|to feed|to serve) {_N}\s*{PEOPLE}?$",
        r"^(?!.*\b(?:each|every)\b)(?:split|divide|share|ladle|spoon|scoop|pack|portion|stretch|spread|slice|separate|dish|reduce|portioned|divided"
        r"|shared|cut|pour|put|fill)\b[^\d]*?\s*(?:out |up )*"
        rf"(?:between|among|amongst|into|in|to|for|over|across) {_N}\s*{_SIZED}{PEOPLE}?{_NOT_M}$",
        rf"^(?:fill|make|get) {_N} {_SIZED}{PEOPLE} (?:with|from|out of) {_IT}$",
        rf"^(?:serve|feed|fill|get) {_N}\s*{PEOPLE}? (?:from|out of) (?:the|this|that|one) (?:whole )?"
        r"(?:pot|batch|pan|tray|dish|bake|bowl|lot)$",
        rf"^(?:make |serve |get |use )?{_N} (?:smaller|bigger|larger|generous|small|big) {PEOPLE}$",
    ),
    *_servings(
        "servings",
        MAKE_MORE,
        rf"^(?:make |serve |scale |size |use )?(?:{_IT} |enough |some )?(?:up |down )?(?:for|to|to serve"
        rf"|to feed) {_CROWD}{_N}(?: {PEOPLE})?{_COME}{_NOT_M}$",
        rf"^(?:serve|feed|make|fill|make for|use|invite|expect|do|scale to|yield|have) {_CROWD}{_N}(?: "
        rf"{PEOPLE})?{_COME}{_NOT_M}$",
        rf"^(?:serve|feed|make) (?:{_IT} )?(?:for|to) {_CROWD}{_N}(?: {PEOPLE})?{_COME}{_NOT_M}$",
        rf"^(?:there (?:are|will be|were) )?{_CROWD}{_N} {PEOPLE}(?: of us)?{_COME}{_NOT_M}$",
        rf"^(?:an? |the )?{PEOPLE} for {_CROWD}{_N}(?: {PEOPLE})?$",
        r"^(?:what if |if |suppose )?(?:we are|we're|we were|there are|there're|there will be|we'll be|we will be) "
        rf"{_CROWD}{_N}{_COME}$",
        r"^(?:i'd|we'd|i would|we would|i|we) (?:like|want|need) (?:it|this|enough) for "
        rf"{_CROWD}{_N}(?: {PEOPLE})?{_COME}$",
    ),
]
BATCH = [
    re.compile(r"^(?:make |use )?(?:a |the )?(?P<times>\d+/\d+|\d?\.\d+) (?:of )?(?:a |the )?(?:recipe|batch)$"),
    re.compile(r"^(?:the )?(?:whole )?(?:recipe|batch|everything) (?:x|times|\*) ?(?P<times>\d+(?:\.\d+)?)$"),
    re.compile(
        rf"^(?:make |use )?(?:it |this )?(?:only |just )?(?:an? )?{TIMES} "
        r"(?:an? |the |this )?(?:\w+ )?(?:batch|recipe)(?: size)?$"
    ),
    re.compile(rf"^(?:make |use )?(?:the )?{TIMES} {OF}(?:the |this |that )?(?P<what>.+?)(?: recipe)?$"),
    re.compile(rf"^(?:reduce|make|scale|swap) (?P<what>{_IT}) (?:in|by|to|down to|down by) (?P<times>half)$"),
    re.compile(r"^(?:make |use )?(?P<times>twice|half|double|three times) (?:as much|the amount)$"),
    re.compile(r"^make (?:it |this )?(?:only |just )?(?P<times>half|double|triple|\d+(?:\.\d+)?\s?(?:x|times))$"),
    re.compile(r"^(?P<times>two|three|four|five|2|3|4|5) batches$"),
    re.compile(
        r"^(?:make |use )?(?:only |just )?(?P<times>(?:two|three) (?:thirds|quarters|fourths)) of "
        r"(?:it|(?:an? |the |this )?(?:batch|recipe))$"
    ),
    re.compile(
        r"^(?:make |use )?(?:it |this )?(?:only |just )?(?:an? )?(?P<times>quarter|third) (?:of )?(?:an? |the |this )?"
        r"(?:batch|recipe)$"
    ),
]
IT_ALL = re.compile(rf"^{_IT}$")
_SOME = r"(?:\d+|half|one|two|three|four|five|six|some|most|a few|a couple)"
SOME_OF_THEM = re.compile(  # of a part of the servings: "no feta on 3 of the boxes", "two boxes without feta"
    rf"\b(?:on|in|for|from|with|to) (?:only |just )?{_SOME}(?: of)? (?:the|my|our|these|those|them)\b(?: {PEOPLE})?$"
    rf"|^(?:make |do |have |pack )?{_SOME} (?:of (?:the|them) )?(?:{PEOPLE} )?"
    r"(?:without|with no|minus|vegan|vegetarian|(?:gluten|dairy|nut)[- ]free)\b"
)
_POTS = frozenset("pan tray sheet batch dish bake recipe".split())
_COUNT = r"(?:\d+(?:\.\d+)?|an?|one|two|three|four|five|six|seven|eight|nine|ten|twelve|twenty|a dozen)"
_WHOLES = frozenset(  # the singular of what serves many, or is a serving
    "loaf bread pie cake tart quich frittata lasagna casserole soup stew chili curry salad pizza crumble dip".split()
)
_SO_MANY = re.compile(
    rf"^(?:make |do |bake |have |serve |enough for |for )?(?P<n>{_COUNT}) (?P<noun>[a-z]+)(?: of (?:it|them|this))?$"
)


def so_many(text: str, dish: frozenset[str]) -> float | None:
    """Return how many servings a clause asks for by what one is called: "make 12 wraps" of curried wraps.

    Examples
    --------
    >>> so_many("make 12 wraps", frozenset(("curried", "wrap"))), so_many("12 carrots", frozenset(("wrap",)))
    (12.0, None)
    """
    found = _SO_MANY.match(text)
    noun = singular(found["noun"]) if found else ""
    called = noun in dish - _POTS - _WHOLES and found is not None and noun != found["noun"]
    return number_in(found["n"]) if found and called else None


def wholes_named(text: str, dish: frozenset[str]) -> str:
    """Return the word for a whole dish that a text counts, such as loaves; it may be a serving as well.

    Examples
    --------
    >>> wholes_named("make two loaves", frozenset(("banana", "loaf"))), wholes_named("make two", frozenset(("loaf",)))
    ('loaves', '')
    """
    found = _SO_MANY.match(text)
    noun = found["noun"] if found else ""
    return noun if singular(noun) in _WHOLES & dish and singular(noun) != noun else ""


def serving_named(text: str, dish: frozenset[str]) -> str:
    """Return the word for a serving that a text counts beside something else: "a wrap with no hummus"."""
    found = re.findall(rf"\b{_COUNT} ([a-z]+)\b(?! of\b)", text)
    called = dish - _POTS - SMALL_WORDS
    return next((noun for noun in found if singular(noun) in called and not re.fullmatch(PEOPLE, noun)), "")
