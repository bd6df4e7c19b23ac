"""What a line says is not so: "not drained", "do not peel", and what of a can is kept."""

import re

_UN = r"(?:cooked|drained|peeled|sweetened|salted|rinsed|toasted)"
_NOT_DONE = re.compile(rf"\b(?:not|never)\s+(?:yet\s+)?({_UN})\b", re.IGNORECASE)
_DO_NOT = re.compile(
    r"\b(?:(?:do not|don'?t)\s+(cook|drain|peel|rins|toast)e?|without\s+(cook|drain|peel|rins|toast)ing)\b[^,;()]*",
    re.IGNORECASE,
)
_NOT = re.compile(r"[,;]?\s*\b(?:do not|don'?t|not|never)\b[^,;()]*", re.IGNORECASE)
_SAVED = re.compile(
    r"[,;]?\s*\b(?:(?:reserve|reserving|save|saving|keep|keeping)\b[^,;()]*|"
    r"(?:the\s+)?(?:juices?|liquids?|brine|syrup|fronds?|tops?|greens?|leaves|oil)\s+(?:is\s+|are\s+)?(?:reserved|saved|included)\b[^,;()]*|"
    r"(?:with|in|including|plus|and)\s+(?:all\s+)?(?:their|its|the|own)\s*(?:own\s+)?(?:juices?|liquids?|brine|oil)\b|"
    r"(?<=tomatoes )with\s+juices?\b|\bwith\s+(?:leaves|tops|greens|stems)\b)",
    re.IGNORECASE,
)
_WITH_LIQUID = re.compile(  # out of a can: the clams and what they lie in
    r"[,;]?\s*(?:\b(?:with|including|plus|and|&)\s+(?:all\s+)?(?:of\s+)?(?:(?:their|its|the)\s+)?"
    r"(?:juices?|liquids?|brine|(?<=the )oil)\b(?!\s+(?:of|from|drained|reserved|cocktail|pack))(?:\s+included)?|"
    r"\b(?:juices?|liquids?|brine)\s+(?:included|and\s+all)\b)",
    re.IGNORECASE,
)
_CANNED = re.compile(r"\b(?:cans?|canned|tins?|tinned|jars?|jarred)\b", re.IGNORECASE)
_DRAINED = re.compile(r"\b(?:drain(?:ed|ing)?|rinsed|reserv(?:e|ed|ing))\b", re.IGNORECASE)


def denied(text: str) -> str:
    """Return a text in which "not drained" is "undrained", and no other "not" is left.

    Examples
    --------
    >>> denied("1 can tomatoes, do not drain"), denied("1 can clams with their juice")
    ('1 can tomatoes, undrained', '1 can clams, undrained')
    """
    lower = text.lower()
    if "not" in lower or "n't" in lower or "never" in lower or "without" in lower:
        text = _NOT_DONE.sub(r"un\1", text)
        text = _DO_NOT.sub(lambda found: f"un{(found[1] or found[2]).lower()}ed", text)
        text = _NOT.sub("", text)
    if _CANNED.search(lower) and not _DRAINED.search(lower):
        text = _WITH_LIQUID.sub(", undrained", text)
    return _SAVED.sub("", text) if re.search(r"juice|liquid|reserv|sav|keep|brine|syrup|with", lower) else text
