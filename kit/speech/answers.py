"""Questions that are answered in the next sentence: "Are they nut-free? No.", "Any dairy in it? A little."."""

import re
from collections.abc import Sequence
from dataclasses import replace

from kit.speech.about.unread import UnreadClaim, asked
from kit.speech.claim import Claim
from kit.speech.words.sentence import Sentence

_ANY = re.compile(r"(?!who|what|which|how|why|where|when)\w[^?]*\?\s*$", re.IGNORECASE)
NO_ALONE = re.compile(
    r"(?:no|nope|none|none at all|not a bit|not any|not at all|not here|not in (?:it|this|here)|never|zero|nothing"
    r"|you (?:will not|won['’]t|wouldn['’]t|can['’]t|do not|don['’]t) (?:find|see|get) (?:any|a (?:trace|drop|bit))"
    r"(?: in (?:it|here|this))?)"
    r"\s*(?:[.!,;—]|(?:and|but)\b|$)",
    re.IGNORECASE,
)
# A sentence that tells more of an amount before it: "Half of it comes from the oil.", "And of fat."
OF_WHAT_WENT_BEFORE = re.compile(
    r"(?:and |but |only |just |about |nearly |almost |roughly |well |over |more than )*"
    r"(?:(?:most|half|all|none|much|a (?:third|quarter|fifth|tenth)|\w+ (?:thirds|quarters|fifths|tenths)|\d+ percent)"
    r" of (?:it|that|them|those|this)|(?:twice|double|three times|half) that|divide (?:it|that)|and (?:of|for|in) )"
    r"|(?:no|wait|sorry|well)\b,? (?:[\w-]+ ){1,4}(?:do|does|is|are|has|have)[.! ]*$"  # "... no, the oats do"
    r"|(?:not me|each|apiece|combined|together|per \w+"
    r"|(?:an?|every|each) (?:slice|bowl|plate|cup|piece|person|serving))[.! ]*$",
    re.IGNORECASE,
)
_YES_OR_NO = re.compile(r"(?:is|are|was|does|do|did|has|have|can|could|will|would|so|and)\b[^?]*\?\s*$", re.IGNORECASE)
_NO = re.compile(
    r"(?:no|nope|sadly not|not at all|i'm afraid not|unfortunately not|hardly|not really|not quite|never"
    r"|far from it|not with|(?:it|they|that|there) (?:does|do|is|are|has|have)(?: not|n't))\b",
    re.IGNORECASE,
)
_TAG = re.compile(
    r"(?:, |\b)(?:is|are|was|does|do|did|has|have|can|could|will|would)(?:n't|n’t| not)?"
    r" (?:it|they|that|this|there|we|you)\?\s*$|,? (?:right|correct|eh|okay|ok|huh|yes|no)\?\s*$",
    re.IGNORECASE,
)
_NUMBER = (
    r"(?:\d+|one|two|three|four|five|six|seven|eight|nine|ten|eleven|twelve|\w+teen|\w+ty|half"
    r"|a (?:hundred|third))"
)
_CORRECTS = re.compile(
    r"(?:more like|try|make (?:that|it)|closer to|nowhere near|way|much|far|less|more|fewer|half|double|twice|triple"
    r"|guess again|think again|wrong|rather|(?:almost|nearly|barely|hardly|only|just|about) " + _NUMBER + r""
    r"|(?:no|nope|not (?:quite|really|at all|even)|hardly|never|well)\W+(?:\w+\W+){0,4}?" + _NUMBER + r")\b",
    re.IGNORECASE,
)
_THERE = re.compile(r"\b(?:any|contains?|in (?:it|this|here|there))\b[^?]*\?\s*$", re.IGNORECASE)
_WHICH = re.compile(
    r"(?:and |so |but |now )?(?:where|what|which|who)\b[^?]*"
    r"\b(?:most|more|biggest|main|from|brings?|gives?|supplies|provides|carries|source|least|less|number one)\b"
    r"[^?]*\?\s*$",
    re.IGNORECASE,
)
_ASKS_HOW = re.compile(r"(?:and |so |but |now )?(?:how|where|what|which|who|why)\b[^?]*\?\s*$", re.IGNORECASE)
_WITH = re.compile(
    r"(?:with|from|by|through|thanks to|because of|only|mostly|just|the)\b(?: \w+,?){1,6}[.!]*\s*", re.IGNORECASE
)
_BARE = re.compile(
    r"\w+(?:[, ]+\w+){0,5}[, ]*[.!]*\s*$|(?:\w+[, ]+){1,3}and\b"
)  # ", and" begins what is told beside it
_SOME_ALONE = re.compile(
    r"(?:plenty|lots|loads|tons|some|a (?:few|little|lot|bit|touch|trace|ton)|a good bit|yes|yep|yeah|sure|of course)"
    r"\b[^.!?,;—]{0,12}?(?:[.!,;—]|\s(?:and|but)\b|\s*$)",
    re.IGNORECASE,
)


def answered(said: Sentence, claims: tuple[Claim, ...], piece: str, answer: str) -> tuple[Claim, ...]:
    """Return what a sentence claims when the next answers it.

    Parameters
    ----------
    said : Sentence
        The sentence, which may be a question.
    claims : tuple of Claim
        What has been read in it.
    piece, answer : str
        Its words, and those of the next sentence.
    """
    if claims and piece.rstrip().endswith("?") and not _TAG.search(piece) and _CORRECTS.match(answer):
        return tuple(asked(said, claim.places) for claim in claims)  # "300 calories? More like 500."
    if _YES_OR_NO.match(piece) and _NO.match(answer):  # "Are they nut-free? No, there are pecans in there."
        return tuple(replace(claim, negated=not claim.negated) for claim in claims)
    if _ANY.match(piece) and NO_ALONE.match(answer):  # "Contains egg? No.", "Gluten? None."
        return _denied_whole(said, claims)
    if claims and _ASKS_HOW.match(piece) and _WITH.fullmatch(answer):
        return tuple(asked(said, claim.places) for claim in claims)  # "How do you get to 26 grams? With the rice."
    if not claims and _WHICH.match(piece) and _BARE.match(answer):
        return _named(said)  # "What's the biggest source of cholesterol? The chicken."
    if not claims and _THERE.search(piece) and _SOME_ALONE.match(answer):  # "Any nuts in it? Plenty."
        return _named(said)
    return claims


def _denied_whole(said: Sentence, claims: Sequence[Claim]) -> tuple[Claim, ...]:
    """Return what a question claims that is answered with no; where it names a thing alone, that is asked."""
    if len(claims) == 1:
        return (replace(claims[0], negated=not claims[0].negated),)
    if claims:  # which of them is denied is not clear
        return (*claims, UnreadClaim(claims[-1].places, words=said.said(claims[-1].places)))
    return _named(said)


def _named(said: Sentence) -> tuple[Claim, ...]:
    """Return what asks about the things that a question names."""
    kinds = ("allergen", "kind", "nutrient")
    named = tuple(at for at in range(len(said)) if any(said.is_a(at, kind) for kind in kinds))
    return (asked(said, named),) if named else ()
