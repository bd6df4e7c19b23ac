"""Allergens beside those that were read, and foods listed with them: "egg-laden", "no milk and some egg", "and rye"."""

from collections.abc import Iterator, Sequence

from kit.food.composition import foods
from kit.speech.about.parts import before_determiners
from kit.speech.about.unread import asked
from kit.speech.allergens.allergens_judged import AllergenClaim
from kit.speech.allergens.allergens_together import from_foods
from kit.speech.claim import THE_DISH, Claim
from kit.speech.descriptions.kinds import KindClaim
from kit.speech.words.foods_said import FoodWord
from kit.speech.words.sentence import Sentence, food_at

_FULL = frozenset("laden heavy rich packed filled loaded stuffed".split())
_SOME = frozenset(("some", "plenty of", "lots of", "a lot of", "only some", "lacks", "lack"))
_OF_WHAT = ("in", "of", "with")
_FULL_OF = _FULL | {"full"}
_GRAINS = frozenset("rye barley spelt oats kamut triticale semolina".split())
_JOINS = (",", "and", "or", "plus", "&")
_ENDS = frozenset(("", ".", ",", "!", ";", ":", "and", "or", "from", "in", "too", "as"))


def allergens_unread(sentence: Sentence, claims: Sequence[Claim]) -> list[Claim]:
    """Return what is asked about allergens, or foods listed beside them, of which nothing was read.

    Parameters
    ----------
    sentence : Sentence
        The sentence, when every family has read it.
    claims : sequence of Claim
        What they have read.
    """
    told = [claim for claim in claims if isinstance(claim, (AllergenClaim, KindClaim))]
    if not told:
        return []
    taken = {*sentence.used, *(at for claim in claims for at in claim.places)}
    there = [claim for claim in told if isinstance(claim, AllergenClaim) and not (claim.free or claim.negated)]
    first = min((max(claim.places) for claim in there), default=len(sentence))
    left = [*_said_full(sentence, taken), *(at for at in _listed(sentence, taken) if at > first)]
    return [_of(sentence, at) for at in sorted(set(left))]


def _of(sentence: Sentence, at: int) -> Claim:
    """Return an allergen that is told in a list as one of the dish; another word of the list is asked about."""
    named = sentence.tokens[at].parts.get("allergen", "any")
    if named == "any" or sentence.text_at(at + 1) in _FULL or sentence.text_at(at - 1) not in (*_JOINS, "some"):
        return asked(sentence, (at,))
    from_which, places = from_foods(sentence, at)
    return AllergenClaim((at, *places), THE_DISH, False, named, False, False, tuple(from_which))


def _said_full(sentence: Sentence, taken: set[int]) -> Iterator[int]:
    """Yield the allergens that are said to be there without a verb: "egg-laden", "rich in nuts", "and some milk"."""
    for at in sentence.places("allergen"):
        if at in taken and sentence.text_at(at + 1) not in _FULL:
            continue
        led = sentence.text_at(at - 1) in _OF_WHAT and sentence.text_at(at - 2) in _FULL_OF
        if sentence.text_at(at + 1) in _FULL or sentence.text_at(at - 1) in _SOME or led:
            yield at


def _listed(sentence: Sentence, taken: set[int]) -> Iterator[int]:
    """Yield what stands in a list of allergens, and is neither one that was read nor a food of the dish."""
    for at in range(1, len(sentence)):
        if at in taken or sentence.text_at(at + 1) not in _ENDS:
            continue
        food = food_at(sentence, at)
        outside = food is not None and not food.inside and not _is_spice(food)
        outside = outside or (food is None and sentence.text_at(at) in _GRAINS)
        if (outside or sentence.is_a(at, "allergen")) and sentence.text_at(before_determiners(sentence, at)) in _JOINS:
            yield at


def _is_spice(word: FoodWord) -> bool:
    """Return whether a word names spices or salt, which nobody lists as what has to be told."""
    table = foods()
    groups = {table[key].group for key in word.outside if key in table}
    return not groups.isdisjoint(("spice", "salt"))
