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
    "approximately": r"approx",
}
_WORDS = [(re.compile(rf"(?<![\w/-])(?:{short})(?!\w)\.?(?![-/])"), full) for full, short in _SHORT.items()]
_WITH = re.compile(r"(?<!\w)w/\s?")
_SPOONS = re.compile(r"(?<=\d)\s?[Tt]\b\.?(?![-'/])|(?<=\ba )[Tt](?= of\b)")  # T and t are two sizes


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
    return _WITH.sub("with ", text)
