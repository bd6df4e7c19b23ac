"""How much of an ingredient is eaten, where the line says so: "marinade: a quarter is used", "half is poured off"."""

import re

from kit.food.amounts import read_count

_SHARE = (
    r"(?:(?:about|only|roughly|around)\s+)?"
    r"(?P<share>[\d./ ]+%?|an?\s+[a-z]+|[a-z]+(?:[ -](?:a|third|quarter|half)s?)?)"
)
_PURPOSE = r"(?:marinade|marinating|marinate|dip|dipping|dredging|breading|brine|brining|frying)"
_USED = re.compile(
    rf"[,;:(]?\s*(?:for\s+(?:the\s+)?{_PURPOSE}\s*[:,;]\s*|\b{_PURPOSE}\s*:\s*)?"
    rf"(?:of which\s+)?{_SHARE}"
    r"\s*(?:of\s+(?:it|this|that|them|the\s+[a-z]+)\s+)?(?:is|are|gets?|will be)\s+"
    r"(?P<what>used|eaten|absorbed|taken up|kept|thrown away|discarded|poured off|drained off|left over|left behind|"
    r"not used)"
    r"\b\s*\)?",
    re.IGNORECASE,
)
_NOT_EATEN = ("thrown away", "discarded", "poured off", "drained off", "left over", "left behind", "not used")
_ALL_OF_IT = ("all", "none")


def share_used(text: str) -> tuple[str, float]:
    """Take what a line says of the share that is eaten off it.

    Returns
    -------
    text : str
        The line without it.
    share : float
        From 0 to 1; 1 where the line says nothing, or nothing that can be a share. [-]

    Examples
    --------
    >>> share_used("1/2 cup soy sauce (marinade: a quarter is used)")
    ('1/2 cup soy sauce', 0.25)
    >>> share_used("2 cups oil for frying, 90% is poured off")[1]
    0.1
    """
    if " is " not in text and " are " not in text and " get" not in text and " be " not in text:
        return text, 1.0
    found = _USED.search(text)
    share = _number(found["share"].strip().lower()) if found else None
    if found is None or share is None:
        return text, 1.0
    if found["what"].lower() in _NOT_EATEN:
        share = 1.0 - share
    rest = f"{text[: found.start()]}{text[found.end() :]}"
    return rest.strip(" ,;:("), round(share, 6)


def _number(text: str) -> float | None:
    """Return a share from 0 to 1: "a quarter", "1/3", "25 %", "all"."""
    if text in _ALL_OF_IT:
        return 1.0 if text == "all" else 0.0
    percent = re.fullmatch(r"([\d.]+)\s*%", text)
    count = None if percent else read_count(text)[0]
    try:
        share = float(percent[1]) / 100 if percent else count.value if count else None
    except ValueError:
        return None
    return share if share is not None and 0.0 <= share <= 1.0 else None
