"""A what-if as it is typed in a hurry, written out: "2 T parm w/o the oil pls"."""

import re

# What is typed short, and what it stands for. Common practice.
_SHORT = {
    "without": r"w\s?/\s?o(?:ut)?|w/out|wo/",
    "please": r"pl[sz]e?|pleas|plse",
    "thanks": r"thx|thnx|tks|tx|ty",
    "though": r"tho",
    "because": r"b/c|bc|cuz|cause|coz",
    "instead": r"instd|insted",
    "double": r"dbl",
    "regular": r"reg",
    "gluten-free": r"gf",
    "dairy-free": r"df",
    "whole wheat": r"ww",
    "low-fat": r"lf",
    "low sodium": r"low na|lo[- ]?sodium|lo[- ]?salt",
    "salt and pepper": r"s\s?&\s?p|s and p|s\+p",
    "parmesan": r"parm|parmigiano",
    "mozzarella": r"mozz?",
    "avocado": r"avo",
    "avocados": r"avos",
    "peanut butter": r"pb",
    "orange juice": r"oj",
    "potatoes": r"spuds|taters",
    "cucumber": r"cuke",
    "cucumbers": r"cukes",
    "vegetables": r"veg|veggies|vegg?ies",
    "people": r"ppl",
    "approximately": r"approx",
}
_WORDS = [(re.compile(rf"(?<![\w/-])(?:{short})(?!\w)\.?(?![-/])"), full) for full, short in _SHORT.items()]
_WITH = re.compile(r"(?<!\w)w/\s?")
_SPOONS = re.compile(r"(?<=\d)\s?[Tt]\b\.?(?![-'/])|(?<=\ba )[Tt](?= of\b)")  # T and t are two sizes
_VERB_AHEAD = re.compile(r"^(?:add|no|leave out|skip|omit|swap|use|without|make|half|double): ")
_LEAN = re.compile(r"\b([789]\d)\s?/\s?(\d{1,2})(?= |$)")  # "93/7 beef"
_NONE_PUT_IN = re.compile(r"\bno(?:[- ](salt|sugar)[- ]added| added (salt|sugar))\b(?= (?!and\b|or\b|but\b)[a-z])")
_SO_WIDE = re.compile(  # "8-inch tortillas"
    r"^(use )?\d{1,2}[- ](?:inch|in)\b[- ](?=[a-z]{3})(?!piece|thick|long|wide)"
)
_NO_MORE = re.compile(r"\bno (salt|sugar) added\b|\bno added (salt|sugar)\b")
_HALF_AND_HALF = re.compile(  # the cream, and not half of two things
    r"\bhalf (?:and|&|n) half\b(?= ?(?:$|[,;.?!)]|instead\b|in place\b|rather\b|for\b|cream\b|and\b))"
)
_WHOLE_IN_BRACKETS = re.compile(r"^\(([^()]*)\)$")
_BRACKETS = re.compile(r"\(((?:instead of|in place of|rather than|not|no|without|for|to replace) [^()]*)\)")
_NONE = re.compile(r"^(?:0|zero) (?=[a-z]{3})(?!(?:cups?|tbsps?|tsps?|grams?|cans?|oz)\b)")
_ROUGHLY = re.compile(
    r"(?<!what )(?<!how )\b(?:roughly|approximately|about|around|circa|more or less|~) ?"
    r"(?=\d|half|an? |one|two|three|four|five|six|eight|ten|twice)"
)
_NONE_OF = re.compile(r"^([a-z' ]{3,30}?)\s*[:=-]\s*(?:none|zero|no|0)$")  # "salt: none"
_REASON = re.compile(r"\s*(?:\(|- )(?:\w+ )?(?:allerg\w+|intoleran\w+|fodmap|reflux)\)?$")
_THEN = re.compile(r"(?<![,;&])(?<! and)(?<! but)(?<! then) (?=(?:use|add|try) )")  # "no walnuts use seeds"
_LEFT_OUT = re.compile(r"^(?:no|without|skip|omit|minus|leave out)\b")
_ADDED_BEHIND = re.compile(r"^([a-z' ]{3,30}) \+ ?(\d[\d /]* ?[a-z.]+)$")  # "oats +1 cup"
_ADDED = re.compile(r"^\+\s*(?=[a-z]|\d+(?: \d+/\d+|/\d+)? [a-z])")


def written_out(line: str) -> str:
    """Return a line in small letters, with what is typed short written out.

    Examples
    --------
    >>> written_out("2 T parm w/o the oil pls"), written_out("1t salt, T-bone steak")
    ('2 tbsp parmesan without the oil please', '1 tsp salt, t-bone steak')
    """
    text = _SPOONS.sub(lambda found: " tbsp" if "T" in found[0] else " tsp", line)
    text = re.sub(r"\s+", " ", text).lower()
    for short, full in _WORDS:
        text = short.sub(full, text)
    text = _NONE_PUT_IN.sub(lambda found: f"no-{found[1] or found[2]}-added", text)
    text = _NO_MORE.sub(r"no \1\2", text)
    text = _HALF_AND_HALF.sub("half-and-half", _WITH.sub("with ", text))
    text = _SO_WIDE.sub(r"\1", _ROUGHLY.sub("", text))
    text = _LEAN.sub(lambda ratio: f"{ratio[1]}% lean" if int(ratio[1]) + int(ratio[2]) == 100 else ratio[0], text)
    text = _BRACKETS.sub(r"\1", _WHOLE_IN_BRACKETS.sub(r"\1", text.strip()))
    text = _NONE_OF.sub(r"no \1", _REASON.sub("", text))
    text = _ADDED_BEHIND.sub(r"add \2 \1", text)
    text = _ADDED.sub("add ", _NONE.sub("no ", text))
    text = re.sub(r"^([a-z ]{3,15}): ", r"\1 ", text) if _VERB_AHEAD.match(text) else text
    if not _LEFT_OUT.match(text):
        return text.replace("/half ", ", half ")
    return _THEN.sub(", ", re.sub(r"(?<=[a-z])/(?=[a-z]{3})", ", ", text))
