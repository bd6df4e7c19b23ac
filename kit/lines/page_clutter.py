"""What in a pasted page is no ingredient: times, ratings, addresses, nutrition, tools, and the sentences around it."""

import re

from kit.food.amounts import read_count
from kit.food.vocabulary import singular
from kit.lines.page_amounts import starts_with_amount
from kit.lines.page_words import is_whole, start


def _pattern(*parts: str) -> re.Pattern[str]:
    return re.compile("".join(parts), re.IGNORECASE)


_MONTH = r"(?:jan|feb|mar|apr|may|june?|july?|aug|sept?|oct|nov|dec)[a-z]*\.?"
_SPAN = r"(?:hours?|hrs?|h|minutes?|mins?|m|days?|seconds?|secs?)"
_CLUTTER = (
    _pattern(r"^\W*(?:https?://|www\.)\S+|\.(?:com|org|gov|net|edu|html?)(?:/\S*)?\s*$"),  # an address
    _pattern(
        r"^\W*(?:(?:mon|tue|wed|thu|fri|sat|sun)[a-z]*,?\s+)?",
        rf"(?:{_MONTH}\s+\d{{1,2}}(?:,?\s+\d{{4}})?|\d{{1,2}}\s+{_MONTH}(?:\s+\d{{4}})?|",
        r"\d{1,4}[/.-]\d{1,2}[/.-]\d{2,4})",
        r"(?:[,\s]+(?:at\s+)?\d{1,2}:\d{2}.*)?\W*$",
    ),  # a date
    _pattern(r"^\d{1,2}/\d{1,2}/\d{2,4},?\s+\d{1,2}:\d{2}"),  # the head of a printed page
    _pattern(
        r"^\W*(?:[\u2605\u2606\u2b50]+.*|\d(?:\.\d+)?\s*(?:/\s*5|out of 5|stars?|from\s+[\d,]+\s+votes?|\([\d,]+\)).*|",
        r"\(?[\d,.]+k?\)?\s*(?:reviews?|ratings?|votes?|comments?|photos?|saves?|shares?|likes?|stars?|views?|questions?)",
        r"\b.*|",
        r"\d\.\d)\W*$",
    ),  # a rating
    _pattern(r"^\W*recipe\s*(?:no\.?|number|#)?\s*\d{1,3}(?:\s*(?:of|/)\s*\d{1,3})?\W*$"),  # "Recipe 2 of 4"
    _pattern(r"^\W*\d+\s+(?:seconds?|minutes?|hours?|days?|weeks?|months?|years?)\s+ago\W*$"),
    _pattern(
        r"^\W*(?:page\s+\d{1,3}\s*/|(?:page\s+)?\d{1,3}\s+of)\s*\d{1,3}\W*$|^\W*(?:page|p\.)\s*\d{1,3}\W*$"
    ),  # a page number
    _pattern(r"^\W*(?:(?:[\d./]+|half|double)\s*x\W*)+$|^\W*(?:(?:us customary|us|metric|imperial)\W*){2,}$"),  # scales
    _pattern(r"_{3,}"),  # a form to fill in
)
_DURATION = _pattern(
    rf"^\W*(?:\d[\d./ ]*(?:(?:-|to)\s*\d+\s*)?|an?\s+){_SPAN}\b\.?",
    rf"(?:[\s,&+]*(?:and\s+)?(?:\d[\d./ ]*)?{_SPAN}\b)*\W*(?:plus\b.*|or less)?$",
)
_CLOCK = _pattern(r"^(?:about\s+)?[\d:./ -]+\s*(?:h|m)")
_NUTRIENTS = (
    r"calories(?: from fat)?|energy|kcal|(?:total |saturated |sat\.? |trans |(?:mono|poly)unsaturated )?fat|"
    r"cholesterol|sodium|(?:total )?carb(?:ohydrate)?s?|(?:dietary )?fib(?:er|re)|(?:total |added |includes )?sugars?|"
    r"protein|potassium|calcium|iron|magnesium|phosphorus|vitamin [a-z]\d*|% daily value.*"
)
_ONLY_ENERGY = re.compile(r"^\W*\d[\d,]* ?(?:k?cals?|calories|kj)\.?(?: (?:each|a|per) \w+)?$", re.IGNORECASE)
_NUTRIENT = _pattern(
    rf"^\W*(?:{_NUTRIENTS})\b[\s:.]*(?:<|less than)?\s*[\d.,]+\s*",
    r"(?:g|mg|mcg|\u00b5g|kcal|kj|cal|calories|grams?|milligrams?|iu|%)?\b(?P<more>.*)$",
)
_PER_SERVING = _pattern(
    r"^\W*(?:(?:typical values |amount |nutrition |calories )?per (?:serving|portion|[\d.]+\s*(?:g|ml)\b)|",
    r"(?:each|one|an?) (?:\S+ ){0,3}(?:serving|portion)s? (?:contains?|provides?|gives|has)|",
    r"each serving|macros|nutrition per|amount per|calories per|% daily)\b",
)
_SENTENCE_END = re.compile(r"[.!?][\"')\u201d]*$")
_STEP_WORDS = _pattern(
    r"\b(?:the|until|minutes?|mins|over|into|degrees|oven|together|well|aside|hours?|then|evenly|each|it|them|your)\b",
    r"|\d+\s*\u00b0",
)
_BARE_NUMBER = re.compile(r"^\d{1,2}\s+(?=[A-Z][a-z])")
_BEHIND_A_TOOL = re.compile(r"\s*(?:,.*|\([^()]*\)[\s.]*)$")
_SIZE_OF_A_TOOL = re.compile(r"[\dx/-]+(?:-?(?:inch|quart|cup|by))?")
_MOST_WORDS_OF_A_TOOL = 4


def is_tool(text: str) -> bool:
    """Whether a line names a thing of the kitchen and no food.

    Examples
    --------
    >>> is_tool("8 wooden skewers"), is_tool("1 (9-inch) pie crust"), is_tool("parchment paper, for lining")
    (True, False, True)
    """
    _, rest = read_count(text)
    words = [word.strip(".,()") for word in _BEHIND_A_TOOL.sub("", rest).lower().split()]
    while words and (start("tool adjective", words[0]) == words[0] or _SIZE_OF_A_TOOL.match(words[0])):
        words = words[1:]
    if not 0 < len(words) <= _MOST_WORDS_OF_A_TOOL:
        return False
    return is_whole("tool", " ".join([*words[:-1], singular(words[-1])])) or is_whole("tool", " ".join(words))


def is_step(text: str, *, numbered: bool = False) -> bool:
    """Whether a line is a sentence: of the method, or of what is told around a recipe.

    Examples
    --------
    >>> is_step("Heat the oil."), is_step("1 Cook the noodles."), is_step("Brown sugar"), is_step("1 cup oats.")
    (True, True, False, False)
    """
    bare = _BARE_NUMBER.sub("", text)
    if bare != text and start("verb", bare):
        text, numbered = bare, True
    many = len(text.split())
    ends = _SENTENCE_END.search(text) is not None
    if starts_with_amount(text):
        return many > 25 or (ends and many > 14)
    if many >= 3 and start("verb", text):
        return many > 5 or ends or numbered or _STEP_WORDS.search(text) is not None
    return (ends and many > 7) or many > 22 or (numbered and ends and many > 4)


def is_time(text: str) -> bool:
    """Whether a line tells a time: "Prep Time: 10 minutes", "Total", "35 mins"."""
    bare = text.strip(" *_#:")
    word = start("time", bare)
    if word:
        rest = bare[len(word) :].strip()
        timed = re.sub(r"^(?:time|prep|minutes|mins)\b", "", rest, flags=re.IGNORECASE).strip(" :-.")
        if not timed and (rest or text.strip().endswith(":")):
            return True
        if _DURATION.match(timed) or _CLOCK.match(timed):
            return True
        if rest.lower().startswith("time") and len(rest.split()) <= 12:
            return True
    return _DURATION.match(bare) is not None


def is_clutter(text: str) -> bool:
    """Whether a line is an address, a date, a rating, a page number, a scale or "Cuisine: ..."."""
    if any(pattern.search(text) for pattern in _CLUTTER):
        return True
    label, colon, rest = text.partition(":")
    return bool(colon) and len(text) < 120 and is_whole("label", label) and (bool(rest.strip()) or len(label) > 3)


def is_nutrition(text: str) -> bool:
    """Whether a line is one of a nutrition panel: "Total Fat 6g 8%"."""
    if (_PER_SERVING.match(text) and not starts_with_amount(text)) or _ONLY_ENERGY.match(text):
        return True
    match = _NUTRIENT.match(text)
    if match is None:
        return False
    more = match["more"].strip(" |,;*")
    return not more or bool(re.match(r"[\d.<%]", more)) or _NUTRIENT.match(more) is not None or "%" in more
