"""Parts that were taken off a food: skin, bones, stems, ends."""

import re

_SHADE = r"(?:white|green|light|pale|dark|tender)"
_ENDS_OF_AN_ONION = re.compile(
    rf"[,;]?\s*\b{_SHADE}(?:[\s,/&-]+(?:{_SHADE}|and|or))*\s+parts?\b(?: only)?", re.IGNORECASE
)
_PARTS = {
    "skin": "skinless deskinned",  # weighed with the skin, unlike what is bought skinless
    "bone": "boneless",
    "shell": "shelled",
    "seed": "seeded",
    "stem": "stemmed",
    "pit": "pitted",
    "stone": "pitted",
    "husk": "husked",
    "peel": "peeled",
    "rind": "peeled",
    "core": "cored",
    "fat": "trimmed",
    "crust": "crustless",
}
_OTHER_PARTS = (
    "rib|membrane|tail|vein|end|leaf|leave|top|root|giblet|neck|gristle|sinew|casing|silk|pith|tip|eye|string|stalk|"
    "wing tip|center|pulp|scale|fin|head|beard|skewer|moisture|water|silver ?skin"
)
_PART = rf"(?:{'|'.join(_PARTS)}|{_OTHER_PARTS})s?"
_KIND_OF_PART = (
    r"(?:all|any|excess|visible|extra|outer|tough|woody|thick|the|inner|white|green|root|hard|external|solid|dark|root)"
)
_LIST_OF_PARTS = rf"(?:(?:{_KIND_OF_PART}\s+)*\b{_PART}\b(?:\s*(?:,|and|&|or|/)\s*(?:and\s+)?)?\s*)+"
_REMOVED = re.compile(
    rf"(?P<parts>{_LIST_OF_PARTS})\s*(?:is\s+|are\s+)?(?:removed|discarded|skimmed|taken|"
    r"(?<!, )(?:trimmed|cut|snapped|peeled|pulled|scraped|drained|strained))\b"  # "celery root, peeled" keeps it
    r"(?:\s+(?:off|away|out|from top|from the top|from surface|and discarded))*",
    re.IGNORECASE,
)
_REMOVE = re.compile(
    r"\b(?:remov(?:e|ing)|discard(?:ing)?|trimmed (?:of|from)|minus|(?P<without>without|with no|no))\s+"
    rf"(?P<parts>{_LIST_OF_PARTS})",
    re.IGNORECASE,
)
_SKINNED = re.compile(r"\bskinned\b", re.IGNORECASE)
_TURNED_OFF = re.compile(r"\b(skin|bone|crust)s? off\b", re.IGNORECASE)
_TAKEN = re.compile(r"remov|discard|trimmed|skimmed|\boff\b|minus|without|\bno\b|snapped|cut|peeled|pulled|scraped")


def without_parts(text: str) -> str:
    """Return a text in which "skin removed" is "skinless"; parts that no word is known for are dropped.

    Examples
    --------
    >>> without_parts("6 chicken thighs, skin removed"), without_parts("1 lb asparagus, tough ends snapped off")
    ('6 chicken thighs, skinless deskinned ', '1 lb asparagus,  ')
    """
    if "skinned" in text.lower():
        text = _SKINNED.sub(_PARTS["skin"], text)
    text = _ENDS_OF_AN_ONION.sub("", text) if "part" in text else text
    if _TAKEN.search(text):
        text = _TURNED_OFF.sub(lambda found: _PARTS[found[1].lower()], text)
        text = _REMOVED.sub(_taken_off, text)
        text = _REMOVE.sub(lambda found: _taken_off(found, bought_without=bool(found["without"])), text)
    return text


def _taken_off(found: re.Match[str], bought_without: bool = False) -> str:
    """Return "skinless" for "skin removed"; the parts that no word is known for are dropped.

    What is bought without its skin was not weighed with it.
    """
    parts = re.findall(r"[a-z]+", re.sub(r"silver ?skin", "", found["parts"].lower()))
    said = (_PARTS.get(part) or _PARTS.get(part.rstrip("s")) for part in parts)
    text = " ".join(dict.fromkeys(word for word in said if word))
    return f"{text.replace(' deskinned', '') if bought_without else text} "
