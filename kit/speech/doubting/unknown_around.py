"""What stands right before and behind so much of something: "430 calories burned", "raw, a plate has".

Such words say of what, when or how much is meant. Those that change nothing are listed; whatever else stands there is
asked about.
"""

from collections.abc import Iterator, Sequence

from kit.speech.about.parts import DETERMINERS, MEASURES, PREPOSITIONS, after_determiners, is_dish, is_verb
from kit.speech.allergens.allergens_judged import AllergenClaim
from kit.speech.claim import Claim
from kit.speech.descriptions.kinds import KindClaim
from kit.speech.descriptions.wordings_claim import WordingClaim
from kit.speech.doubting.counted import AMOUNTS
from kit.speech.figures.amounts import AmountClaim
from kit.speech.figures.comparisons_claim import ComparisonClaim
from kit.speech.proportions.day_shares import DayShareClaim
from kit.speech.proportions.energy_shares import EnergyShareClaim
from kit.speech.words.sentence import Sentence, food_at

# Behind an amount: what makes another one of it.
_OTHERWISE = frozenset(
    "more extra over under up down off out raw dry uncooked cooked boiled drained doubled halved tripled gone left "
    "half double".split()
)
_ENDS = frozenset((*". , ! ; : and but or so when if".split(), ""))
_FOR_ONE = frozenset("adult person head day piece pop go time bit little lot good one each meal person's".split())
# Behind it, and of no weight.
_BEHIND = frozenset(
    "about adult all along although altogether among anybody apiece around away back because behind believe "
    "between both care come comes coming count counting dear depending done each easy enough every everyone "
    "exactly feeds folks friends get give go going guess hard here how however in inside it just left like mind "
    "my near nice now ok okay once or our packed per plated please plus promised ready right roughly same sealed "
    "served should since sits so stay stays still straight sure taken tastes thanks that then there thereabouts "
    "though ticked today together tonight too tops total tucked waiting want well what whereas which while who "
    "whole would yet your".split()
)
# Behind what it is or holds, and of no weight: "vegetarians can eat it", "no nuts anywhere", "by any stretch".
_SO_IT_IS = frozenset(
    "account anywhere can cannot could eat eats enjoy friends go goes went guests have ingredient ingredients layers "
    "means other otherwise speak stretch table things unless way whatsoever".split()
)
# In, on or for what: of no weight either.
_SETTINGS = frozenset(
    "adult afternoon all anybody anyone average best bite bowl brand brands breakfast cans color colour crunch "
    "dessert dinner dot ease effort end evening everybody everyone everything fact flavor front glass go going "
    "good guests hand help house kitchen least limit luck lunch maker makers me mind money morning most need "
    "needs night nose once ourselves pair pan people plate play pot price record shot sitting size slice someone "
    "spoonful stack starters style sum supper sure swoop table taste them time today tonight total tray us way "
    "weight well what whole work you your yourself".split()
)
# Before what is spoken of, and of no weight.
_OPENING = frozenset(
    "account accounts actually adding after afterwards again ah all allow also although always and anybody "
    "anything as at basically because before believe best books bottom breakfast briefly but by calculated "
    "calculation calculations call can card chart complete could count counted cut dinner dish dished done doubt "
    "eat end ends energy entire estimate estimated even every everybody everyone everything expect expressed fact "
    "figure figures finally first folks for frankly friends from front full give good great guess happily heaped "
    "here hey honestly how i if importantly in included inclusive ingredients interestingly just label ladle "
    "ladled large last later let lets like line listen long look luckily lunch math maths may me meanwhile "
    "measure measured might mind must my never news next no nobody none note notes notice now numbers nutshell of "
    "often oh ok okay on once only or our over page part people per picture piled plated point pour poured recipe "
    "reckon reckoning remember right rights rough roughly sadly said say scoop scooped screen second see served "
    "sheet short should side since single slice sliced so somebody something spend split spoon spooned standards "
    "still story such sum sums supper sure surprisingly take tally terms than thankfully that then there these "
    "they thick things think this those though to today together told tonight top total trust truth under unless "
    "until us ways we weeknight weigh weight well what when whereas while whole will wise with without worst "
    "would yep yes you your".split()
)


_OF_WHAT_IT_IS = (AmountClaim, DayShareClaim, EnergyShareClaim, AllergenClaim, KindClaim, WordingClaim, ComparisonClaim)


def around(sentence: Sentence, claims: Sequence[Claim]) -> Iterator[tuple[int, ...]]:
    """Yield what stands beside an amount and makes another one of it, or is not known.

    Parameters
    ----------
    sentence : Sentence
        The sentence, when every family has read it.
    claims : sequence of Claim
        What they have read.
    """
    read = sentence.used.union(*(claim.places for claim in claims))
    for claim in claims:
        if not isinstance(claim, _OF_WHAT_IT_IS):
            continue
        first, last = min(claim.places), max(claim.places)
        counted = isinstance(claim, AMOUNTS)
        behind = _behind(sentence, last, read)
        if behind is not None and (counted or sentence.text_at(behind) not in _SO_IT_IS):
            yield (last, behind)
        if not counted:
            continue
        before = _before(sentence, first, read)
        if before is not None:
            yield (before, first)


def _behind(sentence: Sentence, last: int, read: set[int]) -> int | None:
    """Return the place of what stands behind an amount and is not known there; None where nothing does."""
    at, text = last + 1, sentence.text_at(last + 1)
    if at in read or at >= len(sentence):
        return None
    if text in _OTHERWISE and sentence.text_at(at + 1) in _ENDS:
        return None if text == "left" and sentence.places("verb_leave_out") else at
    if sentence.tokens[at].amount.unit in ("hour", "minute", "second", "month", "year"):
        return at  # "430 calories an hour"
    if text in ("a", "an", "per", "each", "every"):
        known = (
            is_dish(sentence, at + 1)
            or sentence.is_a(at + 1, "pronoun")
            or sentence.text_at(at + 1) in _FOR_ONE | _ENDS
        )
        return at + 1 if not known and at + 1 not in read and _is_thing(sentence, at + 1) else None
    if text in PREPOSITIONS or text in ("before", "after", "when", "below", "above"):
        noun = after_determiners(sentence, at + 1)
        return noun if noun in sentence.unknown and _tells(sentence, noun, _SETTINGS) else None
    return at if at in sentence.unknown and _tells(sentence, at, _BEHIND) else None


def _is_thing(sentence: Sentence, at: int) -> bool:
    """Return whether a word may be a measure of something: "an hour", "a can", and no food or nutrient."""
    measured = sentence.is_a(at, "unit") and sentence.tokens[at].parts["unit"] in MEASURES  # which the basis tells
    named = food_at(sentence, at) is not None or sentence.is_a(at, "nutrient") or measured
    return not named and sentence.text_at(at)[:1].isalpha()


def _before(sentence: Sentence, first: int, read: set[int]) -> int | None:
    """Return the place of what opens the statement of an amount and is not known there; None where nothing does."""
    for at in range(sentence.clause_of(first)[0], first):
        named = is_dish(sentence, at) or sentence.is_a(at, "pronoun") or food_at(sentence, at) is not None
        named = named or sentence.text_at(at) in ("you", "we", "i", "they")
        if named or is_verb(sentence, at) or at in read:
            return None
        if at not in sentence.unknown or _leads_to_dish(sentence, at) or sentence.text_at(at - 1) == "-":
            continue
        if _tells(sentence, at, _OPENING):
            return at
    return None


def _leads_to_dish(sentence: Sentence, at: int) -> bool:
    """Return whether a word only says more of the dish: "a golden slice has"."""
    while at in sentence.unknown or sentence.text_at(at) in DETERMINERS:
        at += 1
    return is_dish(sentence, at) or sentence.text_at(at) in ("of", "and")


def _tells(sentence: Sentence, at: int, known: frozenset[str]) -> bool:
    return sentence.text_at(at) not in known and not sentence.text_at(at).endswith("ly")
