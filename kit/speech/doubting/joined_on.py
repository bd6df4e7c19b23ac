"""What is joined on to a statement without saying it again: "and so is the soup", "the butter too", "like the oats"."""

import re
from collections.abc import Mapping, Sequence
from dataclasses import replace

from kit.speech.about.parts import DETERMINERS, before_determiners
from kit.speech.about.unread import asked
from kit.speech.allergens.allergens_judged import AllergenClaim
from kit.speech.claim import FOOD, About, Claim
from kit.speech.descriptions.wordings_claim import WordingClaim
from kit.speech.proportions.dish_shares_judged import DishShareClaim
from kit.speech.words.foods_said import FoodWord
from kit.speech.words.sentence import Sentence, food_at

_MARKS = frozenset(
    "so neither nor just same ditto likewise too well also either similarly equally even another one like unlike as"
    " again gone blame thank reason culprit culprits responsible".split()
)
_IS = r"(?:is|are|was|do|does|has|have|can|will|bring|brings|give|gives)"
_THE_SAME = re.compile(
    rf"(?:(?:so|neither|nor) {_IS}|just like|same as|the same (?:goes|is true|holds)|ditto|likewise)\b"
)
# Behind what is joined on: "the butter is as well", "the corn even higher", "the honey an excellent one".
_TOO = re.compile(
    rf"(?:{_IS} |not |, )*(?:too|as well|also|likewise|neither|either|similarly|equally|even \w+(?: so)?|another"
    r"|the (?:very )?same|an? (?:\w+ )?one|one(?: too| as well| also)?|all the more"
    r"|(?:all )?to (?:blame|thank)|the reason|the culprits?|responsible)(?: too| also)?"
    r"(?: [.,;!?]| and\b| but\b|$)"
)
# Before it: "as is the butter", ", like the butter", "the same for fat", "also in fat".
_AS_IS = re.compile(
    rf"(?:\b(?:so|as|neither|nor) {_IS}|(?:^|, |\b(?:just|much|exactly|quite) )(?:like|unlike)"
    r"|\b(?:goes|said|true|holds|applies) (?:for|of|to)|\bas well as|\bas (?:it|they) (?:is|are) in"
    r"|\bsame (?:for|with|of)|\balso in"
    r"|\bas (?:much|many|great a part|big a part|large a part) (?:again )?(?:is|comes|come)?(?: ?from| ?in| ?of))$"
)
_LIKE = ("like", "unlike")
_LEADS = ("", ",", "and", "plus", "but", ";", "—", ".", "or", "nor", "(")
_OVER = frozenset("not only but also both in of for our".split()) | frozenset(DETERMINERS)
_THINGS = ("allergen", "nutrient", "dish")


def joined_on(sentence: Sentence, claims: Sequence[Claim]) -> list[Claim]:
    """Return another thing of which the same is said, and which no claim is about, as one that is asked about.

    Parameters
    ----------
    sentence : Sentence
        The sentence.
    claims : sequence of Claim
        What has been read in it.
    """
    lists = any(isinstance(claim, AllergenClaim) for claim in claims)
    if not lists and _MARKS.isdisjoint(sentence.words):
        return []
    told = sentence.used.union(*(claim.places for claim in claims))
    about = {word.text for claim in claims for word in claim.about.foods}
    for at in range(1, len(sentence)):
        if (
            at not in told
            and _is_thing(sentence, at)
            and sentence.text_at(at) not in about
            and _is_too(sentence, at, lists)
        ):
            return [asked(sentence, (at,))]
    return _the_same(sentence)


def _is_thing(sentence: Sentence, at: int) -> bool:
    token = sentence.tokens[at]
    return token.food is not None or token.quantity is not None or any(sentence.is_a(at, kind) for kind in _THINGS)


def _is_too(sentence: Sentence, at: int, lists: bool) -> bool:
    """Return whether what was said before is said of a thing again."""
    first = at - 1
    while sentence.text_at(first) in _OVER:
        first -= 1
    ends = sentence.text_at(at + 1) in ("", ".", "!")
    word = food_at(sentence, at)
    more = sentence.is_a(at, "allergen") or (word is not None and not word.inside)
    if lists and ends and more and sentence.text_at(at - 1) in (",", "and", "plus", "but"):
        return True  # "free from nuts and, with the feta gone, milk", "it has tree nuts in it and almonds"
    if sentence.text_at(first) in _LEADS and _TOO.match(" ".join(sentence.texts[at + 1 : at + 7])):
        return True
    led = before_determiners(sentence, at)
    before = " ".join(sentence.texts[max(0, led - 4) : led + 1])
    goes_before = led - 1 in sentence.used and sentence.text_at(led) in _LIKE  # "low in fat like the butter"
    return goes_before or _AS_IS.search(before) is not None


def _the_same(sentence: Sentence) -> list[Claim]:
    """Return a thing further behind of which the same is said: "the same goes, I'd say, for the soup"."""
    for at in range(1, len(sentence)):
        if not _THE_SAME.match(" ".join(sentence.texts[at : at + 3])):
            continue
        behind = range(at + 2, min(at + 6, len(sentence)))
        named = [place for place in behind if sentence.is_a(place, "dish") or food_at(sentence, place) is not None]
        if named and named[0] not in sentence.used:
            return [asked(sentence, (at, named[0]))]
    return []


def of_its_own(sentence: Sentence, claim: Claim) -> Claim:
    """Return a wording with the food right before it: "the oats are low in sodium, the pecans low in fat"."""
    if not isinstance(claim, WordingClaim):
        return claim
    at = min(claim.places) - 1
    at -= 2 * (sentence.text_at(at - 1) == "in" and sentence.text_at(at) in ("it", "this", "here"))
    own = food_at(sentence, at)
    if own is None or sentence.is_a(at, "nutrient") or sentence.tokens[min(claim.places)].hyphen_before:
        return claim
    first = before_determiners(sentence, at)
    joined = first >= 1 and first < at - 1 and sentence.text_at(first) in (",", "and", ";")
    if not joined or own.text in {word.text for word in claim.about.foods}:
        return claim
    return replace(claim, about=About(FOOD, 1.0, (own,)))


_SET_APART: Mapping[str, tuple[str, ...]] = {
    "after": (),
    "behind": (),
    "besides": (),
    "beside": (),
    "next": ("to",),
    "apart": ("from",),
    "aside": ("from",),
}


def set_apart(sentence: Sentence, claims: Sequence[Claim]) -> list[Claim]:
    """Return main sources with the one told before them: "after the oats, the pecans bring the most fiber".

    The one set apart is then the first, and the other the second.
    """
    lead = _SET_APART.get(sentence.text_at(0))
    if lead is None or sentence.texts[1 : 1 + len(lead)] != lead:
        return list(claims)
    apart = _first_foods(sentence, 1 + len(lead))
    found: list[Claim] = []
    for claim in claims:
        others = tuple(word for word in claim.about.foods if word not in apart)
        if not (isinstance(claim, DishShareClaim) and claim.rank == 1 and apart and others):
            found.append(claim)
        elif len(apart) > 1 or len(others) > 1 or claim.negated:
            found.append(asked(sentence, (0, *claim.places)))
        else:
            first = replace(claim, about=About(FOOD, 1.0, apart), start=0, end=0)
            found += [first, replace(claim, about=About(FOOD, 1.0, others), rank=2, start=0, end=0)]
    return found


def _first_foods(sentence: Sentence, at: int) -> tuple[FoodWord, ...]:
    """Return the foods from a place to the first comma, or the first of them where there is none."""
    found: list[FoodWord] = []
    for place in range(at, len(sentence)):
        if sentence.text_at(place) == ",":
            return tuple(found)
        word = food_at(sentence, place)
        if word is not None:
            found.append(word)
    return tuple(found[:1])
