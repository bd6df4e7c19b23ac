"""The part of a food that a line means where it names the whole beside it: "kernels from 3 ears of corn"."""

import re

from kit.lines.rewriting import Rewriting

_COUNT = r"(?:about |the )?(?:\d|[½¼¾⅓⅔]|an?\b|one\b|two\b|three\b|four\b|five\b|six\b|half\b)"
_CUT = r"(?:,?\s*(?:freshly |cut|scraped|scooped|stripped|picked|removed|torn|separated)(?: off)?)?"
_FROM = rf"{_CUT}\s+(?:from|of|off(?: of)?)\s+(?={_COUNT})"
_EATEN = re.compile(  # what is eaten of it anyway, and so what its table weighs
    rf"^(?:the |fresh )?(?:kernels(?={_FROM}[^,]*\b(?:corn|cobs?)\b)|flesh|florets|pulp|arils|"
    rf"seeds(?={_FROM}[^,]*\bpomegranates?\b)|cloves(?={_FROM}[^,]*\bgarlic\b)|"
    rf"leaves(?={_FROM}[^,]*\b(?:bunch|bunches|sprigs?|stems?|handfuls?|heads?)\b)){_FROM}",
    re.IGNORECASE,
)
_OF_EGGS = re.compile(
    rf"^(?:the )?(yolk|white)s?{_FROM}(.*?)\b((?:(?:small|medium|large|extra[- ]large|jumbo) )?)eggs?\b", re.IGNORECASE
)
_PEEL_ONLY = re.compile(
    r"^(.*\b(?:lemon|lime|orange|grapefruit)s?\b),?\s*\(?(?:grated )?(?:peel|rind|zest|outer peel)(?: only|,? only)\)?",
    re.IGNORECASE,
)
_GREENS_ONLY = re.compile(
    r"\b(beet|turnip|radish|carrot|kohlrabi|celery)(?:s|es)?\b([^,(]*),?\s*\(?(?:tops|greens|leaves) only\)?",
    re.IGNORECASE,
)

_MEASURED = r"([\d/. -]+ ?(?:tbsp|tablespoons?|tsp|teaspoons?|cups?))\.?"
_JUICE_BEHIND = re.compile(  # "1 lemon (2 tbsp juice)", "2 oranges, juiced (about 2/3 cup)"
    r"^[^,(]*?\b(lemon|lime|orange|grapefruit)s?(?P<juiced>,? juiced)?,? "
    rf"\((?:about |approximately |around |to make )?{_MEASURED}(?(juiced)(?: juice)?| (?:of )?(?:fresh )?juice)\)$",
    re.IGNORECASE,
)
_HALF_OF_ONE = re.compile(  # "1 onion (use half)"
    r"^(?:1|one|an?) ([^,(]+?)(?:, | \()(?:use |using )?(?:only )?(?:a |one )?half(?: of (?:it|one))?(?: only)?\)?$",
    re.IGNORECASE,
)

PARTS_MEANT = (
    Rewriting(_JUICE_BEHIND, r"\3 \1 juice", "juice"),
    Rewriting(_HALF_OF_ONE, r"1/2 \1", "half"),
    Rewriting(_EATEN, ""),
    Rewriting(_OF_EGGS, r"\2\3egg \1s", "egg"),
    Rewriting(_PEEL_ONLY, r"\1, zested", "only"),
    Rewriting(_GREENS_ONLY, r"\1 greens\2", "only"),
)
