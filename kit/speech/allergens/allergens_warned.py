"""Those who avoid an allergen, and whether they are told to leave the dish alone."""

import re

from kit.speech.allergens.allergens_listed import HERE
from kit.speech.words.sentence import Sentence, food_at

_SAFE = frozenset(
    "allergy allergies allergic avoiding avoid avoids intolerant intolerance celiac coeliac celiacs coeliacs "
    "sensitive".split()
) | {"celiac disease", "coeliac disease"}
_WHO = ("anyone", "anybody", "someone", "people", "those", "everyone", "kids", "is", "are")
_WARNINGS = (
    "should skip",
    "not safe",
    "isn't safe",
    "unsafe",
    "should avoid",
    "must avoid",
    "not for",
    "skip it",
    "skip this",
    "skip these",
    "should know",
    "need to know",
    "needs to know",
    "ought to know",
    "take note",
    "be aware",
    "beware",
    "look elsewhere",
    "have something else",
    "pick something else",
    "should not",
    "shouldn't",
    "stay away",
    "nobody with",
    "no one with",
    "nobody who",
    "no one who",
    "keep it away",
    "away from any",
    "keep away",
    "isn't for",
    "not suitable",
    "unsuitable",
    "no good for",
    "not good for",
    "not great for",
    "not okay for",
    "not right for",
    "aren't for",
    "not one for",
    "no use to",
    "off limits",
    "well away",
    "sit this one out",
    "sit this out",
    "pass on this",
    "stay clear",
    "keep clear",
    "isn't your",
    "is not your",
    "not the one for",
    "wouldn't give",
    "watch out",
    "steer clear",
    "give it a miss",
    "leave this",
    "leave the",
    "leave that",
    "alone",
    "leave it alone",
    "leave it.",
    "leave it,",
    "can't eat this",
    "can't eat it",
    "don't eat it",
    "do not eat it",
    "don't eat this",
    "don't serve",
    "do not serve",
    "don't give",
    "do not give",
    "don't offer",
    "do not offer",
    "cannot eat it",
    "can't have it",
    "cannot have it",
    "can't have this",
    "cannot have this",
    "can't have any of",
    "out of bounds",
    "not okay",
    "have to pass",
    "should pass",
    "has to pass",
    "must pass",
    "cannot eat this",
)


def safe_words(sentence: Sentence) -> int | None:
    """Return where those who avoid an allergen are named; None when they are not."""
    for at, token in enumerate(sentence.tokens):
        if token.text in _SAFE:
            return at
        if token.text == "off" and sentence.text_at(at - 1) in _WHO and sentence.is_a(at + 1, "allergen"):
            return at  # "anyone off dairy"
        if (
            token.text in ("problem", "trouble")
            and sentence.text_at(at + 1) in ("for", "with")
            and _led_by_if(sentence)
        ):
            return at
        if (
            token.text in ("eat", "have", "tolerate", "handle", "stomach", "digest")
            and sentence.text_at(at - 1) == "not"
            and (sentence.text_at(at - 2) in ("can", "must") or (token.text != "have" and _who_do(sentence, at - 2)))
        ):
            return at
    return None


def _who_do(sentence: Sentence, at: int) -> bool:
    """Return whether "do" follows who does it: "those who do not eat egg"; "do not eat it" is an order."""
    return sentence.text_at(at) in ("do", "does") and at > sentence.clause_of(at)[0]


def _led_by_if(sentence: Sentence) -> bool:
    """Return whether it is said for whom: "if eggs are a problem for you", "for those who have trouble with milk"."""
    return not sentence.words.isdisjoint(("if", "those", "anyone", "people", "someone", "who"))


_CAN_NOT = re.compile(
    r"\b(?:can|could|should|must|may) not (?:eat|have|touch|try|be served|be given) (?:it|this|these|them|any|one|a)\b"
)


def warns(sentence: Sentence) -> bool:
    """Return whether a sentence tells them to leave it: "no good for coeliacs", "they should skip it"."""
    text = sentence.text.lower()
    if not sentence.words.isdisjoint(("fear", "worry", "worried", "concern", "concerned")):
        return False  # "no one with an allergy has anything to fear"
    return any(words in text for words in _WARNINGS) or _CAN_NOT.search(sentence.plain) is not None


_WATCH = re.compile(
    r"\b(?:watch(?: out)? for|look out for|beware of|be aware of|mind) (?:any )?(?:(?:is|are) )?(?:: )?$"
)


def watched(sentence: Sentence, at: int) -> int | None:
    """Return where a list of allergens begins that is to be watched: "watch out for tree nuts and milk"."""
    first = at
    while sentence.text_at(first - 1) in (",", "and", "or") or sentence.is_a(first - 1, "allergen"):
        first -= 1
    warned = _WATCH.search("".join(f"{word} " for word in sentence.texts[max(0, first - 5) : first]).lower())
    return first - 1 if warned and ends_list(sentence, at) else None


_GO_ON = ("so", "neither", "nor", "but")  # "the butter is dairy, and so is the cream"


def ends_list(sentence: Sentence, at: int) -> bool:
    """Return whether a list of allergens, or the statement, ends in it: "it's got milk and wheat in it"."""
    while at + 1 < len(sentence) and (
        sentence.text_at(at + 1) in (",", "and", "the")
        or sentence.is_a(at + 1, "allergen")
        or food_at(sentence, at + 1) is not None
    ):
        at += 1
    behind = sentence.text_at(at + 1)
    return behind in ("", ".", "!", ";", "nothing", "no", "too", "as", "also", *_GO_ON) or (
        behind == "in" and sentence.text_at(at + 2) in (*HERE, ".")
    )


def with_it(sentence: Sentence, at: int) -> bool:
    """Return whether a list of allergens ends in "in it" or "with it"."""
    while sentence.text_at(at + 1) in (",", "and", "or") or sentence.is_a(at + 1, "allergen"):
        at += 1
    return sentence.text_at(at + 1) in ("in", "with") and sentence.text_at(at + 2) in HERE
