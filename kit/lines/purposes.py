"""Words that tell what an ingredient is for, or how sure its amount is: "to taste", "for garnish", "about"."""

import re

_PURPOSES = (
    r"the (?:pan|tin|dish|top)|garnish(?:ing)?|serv(?:e|ing)|greas(?:e|ing)|drizzl(?:e|ing)|dust(?:ing)?|"
    r"sprinkl(?:e|ing)|finish(?:ing)?|top(?:ping)?|fry(?:ing)?|brush(?:ing)?|cook(?:ing)?|decorat(?:e|ion|ing)|"
    r"season(?:ing)?|roast(?:ing)?|roll(?:ing)?|coat(?:ing)?|saut[eé](?:ing)?|(?:shallow|deep)[- ]fry(?:ing)?|"
    r"color|colour|kneading|thinning"
)
UNMEASURED = re.compile(
    r"[,;]?\s*\b(?:(?:or\s+)?(?:adjust(?:ed)?\s+)?(?:to|according to|for)\s+(?:your\s+|own\s+)?"
    r"(?:taste|preference|liking)|"
    r"(?:or\s+)?as\s+(?:needed|required|desired|necessary)|"
    rf"if\s+(?:desired|needed|you like|using|necessary)|(?:for|to)\s+(?:{_PURPOSES})|"
    r"for\s+(?:the\s+)?(?:[a-z]+\s+){0,2}[a-z]{2,}ing)\b.*$",
    re.IGNORECASE,
)
MORE = re.compile(
    r",?\s*(?:\bplus|\band|\bwith|\+)\s+(?:a\s+(?:little|bit|few)\s+|some\s+)?(?:more|extra|additional)\b.*$",
    re.IGNORECASE,
)
MAY_BE_LEFT_OUT = re.compile(
    r"\boptional(?:ly)?\b(?! (?:topping|garnish|add|extra|ingredient))|\b(?:wedges|sprigs)$", re.IGNORECASE
)  # "Lemon wedges"
_MADE_OF_IT = r"(?:stock|broth|soups?|salads?|sandwich(?:es)?|tacos|wraps|smoothies|filling)"
ASIDE = re.compile(
    r",?\s*\b(?:optional|divided|in total|see notes?|roughly|or (?:more|less|so)|"
    rf"for (?:the |making )?{_MADE_OF_IT})\b\.?",
    re.IGNORECASE,
)
WITHOUT_NEARLY = re.compile(
    r"^(?:an?\s+)?(?:about|approx(?:imately)?\.?|around|roughly|at least|up to|~|scant|heap(?:ed|ing)|generous|rounded|"
    r"level|good|another|additional|remaining)\s*"
    r"(?=\d|\.\d|an?\s|half\s|one\s|two\s|three\s)",
    re.IGNORECASE,
)
