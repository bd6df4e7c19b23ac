"""Measures, places and times that nobody here knows: "a thimble of it has", "three days in the cellar".

What may stand in such a place without telling anything is listed; whatever else stands there is asked about.
"""

from collections.abc import Iterator, Sequence

from kit.speech.about.parts import after_determiners, is_serving, is_verb
from kit.speech.claim import SERVING, Claim
from kit.speech.descriptions.kinds import KindClaim
from kit.speech.doubting.counted import AMOUNTS
from kit.speech.doubting.unknown_things import ends
from kit.speech.proportions.day_shares import DayShareClaim
from kit.speech.safety.doneness import DONE_THINGS
from kit.speech.safety.keeping_judged import OUT, DegreesClaim, TimeClaim
from kit.speech.safety.keeping_words import OUTSIDE
from kit.speech.words.sentence import Sentence

# What is stored in, and how; where it stands is another word: "in a lidded box in the fridge".
_STORED_IN = frozenset(
    "airtight bag bags bottom bowl bowls box boxes bulk case closed clean coldest container containers cooler covered "
    "dish door drawer flask foil freezer-bag full glass good house jar jars jug lidded lid lock middle pan paper parts "
    "plastic portions pot pots resealable row sealed section shade silicone single small shallow there tightly total "
    "tray tub tubs tupperware wrap wrapping zip fine end hand most least best time all it them this that batches "
    "order mind my our own their your its water sauce broth brine oil syrup".split()
)


COLD = frozenset("fridge fridges refrigerator refrigerators refrigeration freezer freezers cold icebox chill".split())


_COLD_OR_OUT = COLD | OUTSIDE


_KNOWN_PLACES = _STORED_IN | _COLD_OR_OUT


_AT_A_PLACE = ("in", "on", "under", "inside", "beside", "by", "near")


# "165 in the middle": where a thermometer goes; in what it is cooked or warmed.
INSIDE = frozenset(
    "middle center centre heart core inside thickest thick deepest part bone joint thigh breast fish meat bird "
    "thermometer dial probe display oven microwave pan pot skillet stove stovetop hob grill broiler fryer batches "
    "there it each every one all way your a the case order total minutes time fact other both them these those "
    "buffet table pieces piece breasts thighs fillet fillets patties meatballs dish casserole house batch".split()
)


HOT_THINGS = INSIDE | DONE_THINGS.keys()  # what is told to be so hot


_TO_SO_HOT = frozenset("to a at least full the until it is reaches hits inside".split())


_AT_THE = ("in", "on", "at", "near", "along", "around")


def _kept_at(sentence: Sentence, claims: Sequence[Claim]) -> Iterator[tuple[int, ...]]:
    """Yield a place where it is said to keep that is none of those known: "three days in the cellar"."""
    for claim in claims:
        if not isinstance(claim, TimeClaim) or claim.place == OUT:
            continue
        for at in sentence.clause_of(claim.places[0]):
            if sentence.text_at(at) not in _AT_A_PLACE or at < claim.places[0]:
                continue
            over = after_determiners(sentence, at + 1)
            if over in sentence.unknown and sentence.text_at(over) not in _KNOWN_PLACES:
                yield (claim.places[0], over)


def _hot_at(sentence: Sentence, claims: Sequence[Claim]) -> Iterator[tuple[int, ...]]:
    """Yield where it is said to be so hot, when that is not inside: "to 165 on the outside"."""
    for claim in claims:
        if not isinstance(claim, DegreesClaim):
            continue
        last = max(claim.places)
        for at in range(last + 1, min(last + 5, sentence.clause_of(last)[-1] + 1)):
            over = after_determiners(sentence, at + 1)
            led = sentence.text_at(at) in _AT_THE and over > at + 1
            if led and over in sentence.unknown and sentence.text_at(over) not in INSIDE:
                yield (last, over)
        to = min(claim.places) - 1
        while sentence.text_at(to) in _TO_SO_HOT:
            to -= 1
        led = to < min(claim.places) - 1 and claim.what not in ("fridge", "freezer")
        of_it = led and to in sentence.unknown and sentence.text_at(to) not in HOT_THINGS
        if of_it and sentence.text_at(to - 1) == "the" and sentence.text_at(to) not in ("leftovers", "rest"):
            yield (to, min(claim.places))  # "get the ostrich to 145"


_KEEPS = frozenset("keep keeps last lasts hold holds stay stays".split())


_KEPT_SO = frozenset("well fine nicely good fresh longer best happily overnight beautifully covered sealed".split())


def _so_long(sentence: Sentence, claims: Sequence[Claim]) -> Iterator[tuple[int, ...]]:
    """Yield a time that is none known, and grain that is: "it keeps aeons in the freezer", "all the fonio in it is"."""
    timed = any(isinstance(claim, TimeClaim) for claim in claims)
    of_grain = any(isinstance(claim, KindClaim) and claim.kind == "whole grain" for claim in claims)
    for at in sentence.unknown:
        behind = sentence.text_at(at + 1)
        place = after_determiners(sentence, at + 2)
        kept = timed and sentence.text_at(at - 1) in _KEEPS and behind in ("in", "on") and place > at + 2
        if kept and sentence.text_at(place) in _COLD_OR_OUT and sentence.text_at(at) not in _KEPT_SO:
            yield (at - 1, place)
        if of_grain and sentence.text_at(at - 1) in ("all the", "the") and behind in ("in", "is"):
            yield (at, at + 1)


def _one_has(sentence: Sentence, claims: Sequence[Claim]) -> Iterator[tuple[int, ...]]:
    """Yield what a number is said of, where that is no portion known: "a thimble of it has", "per tupperware"."""
    for claim in claims:
        if not isinstance(claim, AMOUNTS) or claim.about.kind != SERVING:
            continue
        first = sentence.clause_of(min(claim.places))[0]
        at = first + (sentence.text_at(first) in ("and", "so", "but", "then"))
        over = at + 1
        if sentence.text_at(at) not in ("a", "an", "one", "each", "every", "per") or over not in sentence.unknown:
            continue
        if sentence.text_at(over + 1) == "of" and sentence.text_at(over + 2) in ("it", "this", "that", "these", "them"):
            behind = over + 3
        else:
            behind = over + 1
        if is_verb(sentence, behind):
            yield (at, over)


# Of a small plate less is eaten than of the one that was weighed; how much less is asked.
_OTHER_SIZES = frozenset(
    "small smaller smallest little tiny mini large larger largest medium oversized jumbo giant thin thinner thick "
    "thicker narrow skimpy meager side starter appetizer tasting lunch snack second extra sample sampler kid kids "
    "kiddie junior baby toddler undressed bare leftover other bonus".split()
)


def _of_a_size(sentence: Sentence, claims: Sequence[Claim]) -> Iterator[tuple[int, ...]]:
    """Yield a serving of another size, or of something unknown, for which a number is said: "a small plate has"."""
    if not any(isinstance(claim, AMOUNTS) and claim.about.kind == SERVING for claim in claims):
        return
    for at in sentence.places("dish", 1):
        size = sentence.text_at(at - 1)
        if not is_serving(sentence, at):
            continue
        if size in _OTHER_SIZES and sentence.text_at(at - 2) in ("a", "an", "each", "every", "per", "one", "the"):
            yield (at - 1, at)
        of_it = sentence.text_at(at + 1) == "of" and at + 2 in sentence.unknown
        if of_it and is_verb(sentence, at + 3) and sentence.text_at(at + 2) not in _WELL:
            yield (at, at + 2)  # "a plate of zander has"


_WELL = frozenset("comfort goodness joy sunshine happiness health heaven warmth color colour food supper".split())


_NEEDS = frozenset("need needs requires require".split())


_PERSONS = frozenset(
    "adult adults person people grown-up grown anyone everyone someone body average most woman man".split()
)


def _whose_day(sentence: Sentence, claims: Sequence[Claim]) -> Iterator[tuple[int, ...]]:
    """Yield whose needs of a day are named, where those are not an adult's: "what a runner needs"."""
    for claim in claims:
        if not isinstance(claim, DayShareClaim):
            continue
        for at in sentence.clause_of(min(claim.places)):
            needs = sentence.text_at(at + 1) in _NEEDS
            theirs = sentence.tokens[at].possessive and sentence.text_at(at - 1) in ("a", "an", "the", "any")
            if (needs or theirs) and at in sentence.unknown and sentence.text_at(at) not in _PERSONS:
                yield (min(claim.places), at)
            for_it = sentence.text_at(at - 1) in ("the", "a", "this", "your") and sentence.text_at(at - 2) == "for"
            if for_it and at > max(claim.places) and at in sentence.unknown and ends(sentence, at):
                yield (min(claim.places), at)


_UNITS = frozenset("g mg µg kcal % day week month hour".split())


def _so_many(sentence: Sentence, _claims: Sequence[Claim]) -> Iterator[tuple[int, ...]]:
    """Yield a number that is not known: "umpteen grams of fat", "a smidgen of a day's"."""
    for at in sentence.places("day", 3):
        of_it = at - 2 if sentence.text_at(at - 1) in ("a", "the", "your") else at - 1
        if sentence.text_at(of_it) == "of" and of_it - 1 in sentence.unknown and of_it - 1 not in sentence.used:
            yield (of_it - 1, at)
    for at in sentence.places("unit", 1):
        if sentence.tokens[at].parts["unit"] not in _UNITS or at in sentence.used or sentence.tokens[at].quantity:
            continue
        of_it = sentence.text_at(at + 1) == "of" and sentence.is_a(at + 2, "nutrient")
        kept = sentence.text_at(at + 1) in ("in", "on") and not sentence.words.isdisjoint(COLD)
        if (of_it or kept) and at - 1 in sentence.unknown and sentence.text_at(at).endswith("s"):
            yield (at - 1, at)


MEASURES = (_kept_at, _hot_at, _so_long, _one_has, _of_a_size, _whose_day, _so_many)
