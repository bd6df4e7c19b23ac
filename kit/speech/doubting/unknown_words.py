"""Words that nobody here knows, in the place of a telling word: they are asked about, and never passed by.

"It is nut-free and lectin-free", "no egg and no carmine", "a thimble of it has", "three days in the cellar", "to 165 on
the outside". What may stand in such a place without telling anything is listed; whatever else stands there is asked.
"""

from collections.abc import Iterator, Sequence

from kit.speech.about.parts import DETERMINERS, after_determiners, is_verb
from kit.speech.about.unread import UnreadClaim, asked, is_question
from kit.speech.allergens.allergens_judged import AllergenClaim
from kit.speech.changes.allergens_cooked import CookedAwayClaim
from kit.speech.claim import FOOD, SERVING, Claim
from kit.speech.descriptions.absences import AbsentClaim
from kit.speech.descriptions.kinds import KindClaim
from kit.speech.descriptions.wordings_claim import WordingClaim
from kit.speech.figures.amounts import AmountClaim
from kit.speech.proportions.day_shares import DayShareClaim
from kit.speech.proportions.dish_shares_judged import DishShareClaim
from kit.speech.safety.keeping_judged import OUT, DegreesClaim, TimeClaim
from kit.speech.safety.keeping_words import OUTSIDE
from kit.speech.words.clauses import VERBS
from kit.speech.words.sentence import Sentence, food_at

# What is stored in, and how; where it stands is another word: "in a lidded box in the fridge".
_STORED_IN = frozenset(
    "airtight bag bags bottom bowl bowls box boxes bulk case closed clean coldest container containers cooler covered "
    "dish door drawer flask foil freezer-bag full glass good house jar jars jug lidded lid lock middle pan paper parts "
    "plastic portions pot pots resealable row sealed section shade silicone single small shallow there tightly total "
    "tray tub tubs tupperware wrap wrapping zip fine end hand most least best time all it them this that batches "
    "order mind my our own their your its water sauce broth brine oil syrup".split()
)
_AT_A_PLACE = ("in", "on", "under", "inside", "beside", "by", "near")
# "165 in the middle": where a thermometer goes; in what it is cooked or warmed.
_INSIDE = frozenset(
    "middle center centre heart core inside thickest thick deepest part bone joint thigh breast fish meat bird "
    "thermometer dial probe display oven microwave pan pot skillet stove stovetop hob grill broiler fryer batches "
    "there it each every one all way your a the case order total minutes time fact other both them these those "
    "buffet table pieces piece breasts thighs fillet fillets patties meatballs dish casserole house batch".split()
)
_AT_THE = ("in", "on", "at", "near", "along", "around")
# What is said not to be there, and tells nothing of what is eaten.
_HARMLESS_TO_LACK = frozenset(
    "apology argument arguments big bite bones book bother chance choice chopping cooking cost cracking crying "
    "difference doubt doubting drama effort end equipment exception exceptions excuse excuses extra fancy fat-free "
    "fire flame frills frying further fuss gadget gadgets good great guesswork handles harm hassle hurry idea "
    "ingredient ingredients issue joke knife leftovers less lies limit long longer lumps machine magic matter means "
    "measuring mess mixer more need nonsense one other oven part peeling pink pips pits place plan point problem "
    "question real reason recipe regret regrets rules rush secret secrets seeds shame shells shortage sign simpler "
    "skill skin skins soaking special stalks stems stirring stones stopping stress substitute such surprise surprises "
    "sweat tears telling thanks the time trick tricks trouble two use waiting washing waste way wonder work worries "
    "worry".split()
)
_FREE_OF = frozenset(
    "fuss hassle hands worry stress mess trouble care guilt risk pain rent tax drama waste plastic smoke toll hands "
    "bone bones stone stones lump lumps pit pits seed skin shell shells grit sand".split()
)
_LISTS = (",", "and", "or", "nor", "&")
_JOINTS = frozenset(
    "a an the and or nor but so if as at by for from in into of off on onto out over per than that this to up with "
    "without it its is are was were be been has have had do does did not no we you they i all any some here there "
    "apart both except when while because since though although either too also just only even then else".split()
)


def unknown_words(sentence: Sentence, claims: Sequence[Claim]) -> list[Claim]:
    """Return what is asked because a word that is not known stands where a telling word belongs.

    Parameters
    ----------
    sentence : Sentence
        The sentence, when every family has read it.
    claims : sequence of Claim
        What they have read.
    """
    if is_question(sentence):
        return []
    ways = (_kept_at, _hot_at, _one_has, _lacks, _whose_day, _share_of, _so_many, _subject)
    return [asked(sentence, places) for way in ways for places in way(sentence, claims)]


def _is_unknown(sentence: Sentence, at: int) -> bool:
    """Return whether a word is none that plays a part, no food, no number and no stop."""
    if not 0 <= at < len(sentence):
        return False
    token = sentence.tokens[at]
    plain = not token.parts and token.food is None and token.quantity is None and token.text[:1].isalpha()
    return plain and token.text not in _JOINTS


def _kept_at(sentence: Sentence, claims: Sequence[Claim]) -> Iterator[tuple[int, ...]]:
    """Yield a place where it is said to keep that is none of those known: "three days in the cellar"."""
    for claim in claims:
        if not isinstance(claim, TimeClaim) or claim.place == OUT:
            continue
        for at in sentence.clause_of(claim.places[0]):
            if sentence.text_at(at) not in _AT_A_PLACE or at < claim.places[0]:
                continue
            over = after_determiners(sentence, at + 1)
            if _is_unknown(sentence, over) and sentence.text_at(over) not in _STORED_IN | _COLD | OUTSIDE:
                yield (claim.places[0], over)


_COLD = frozenset("fridge fridges refrigerator refrigerators refrigeration freezer freezers cold icebox chill".split())


def _hot_at(sentence: Sentence, claims: Sequence[Claim]) -> Iterator[tuple[int, ...]]:
    """Yield where it is said to be so hot, when that is not inside: "to 165 on the outside"."""
    for claim in claims:
        if not isinstance(claim, DegreesClaim):
            continue
        last = max(claim.places)
        for at in range(last + 1, min(last + 5, sentence.clause_of(last)[-1] + 1)):
            over = after_determiners(sentence, at + 1)
            led = sentence.text_at(at) in _AT_THE and over > at + 1
            if led and _is_unknown(sentence, over) and sentence.text_at(over) not in _INSIDE:
                yield (last, over)


def _one_has(sentence: Sentence, claims: Sequence[Claim]) -> Iterator[tuple[int, ...]]:
    """Yield what a number is said of, where that is no portion known: "a thimble of it has", "per tupperware"."""
    for claim in claims:
        if not isinstance(claim, (AmountClaim, DayShareClaim)) or claim.about.kind != SERVING:
            continue
        first = sentence.clause_of(min(claim.places))[0]
        at = first + (sentence.text_at(first) in ("and", "so", "but", "then"))
        over = at + 1
        if sentence.text_at(at) not in ("a", "an", "one", "each", "every", "per") or not _is_unknown(sentence, over):
            continue
        if sentence.text_at(over + 1) == "of" and sentence.text_at(over + 2) in ("it", "this", "that", "these", "them"):
            behind = over + 3
        else:
            behind = over + 1
        if is_verb(sentence, behind):
            yield (at, over)


def _lacks(sentence: Sentence, claims: Sequence[Claim]) -> Iterator[tuple[int, ...]]:
    """Yield what is said not to be in it and is not known: "no egg and no carmine", "nut-free and lectin-free"."""
    beside = any(isinstance(claim, (AllergenClaim, AbsentClaim, KindClaim, WordingClaim)) for claim in claims)
    for at in range(len(sentence)):
        if not _is_unknown(sentence, at):
            continue
        word = sentence.text_at(at)
        free = sentence.is_a(at + 1, "wording", "free") and sentence.tokens[at + 1].hyphen_before
        if free and word not in _FREE_OF:
            yield (at, at + 1)
        elif beside and word not in _HARMLESS_TO_LACK and (led := _denied_at(sentence, at)) is not None:
            yield (led, at)


_LEADS = frozenset(("no", "without", "zero", "nor", "neither", "any"))
_TRACE_OF = frozenset("a an any the trace hint drop bit scrap speck gram single added of".split())
_HELD = frozenset("has have got contains contain is are with uses use holds and or , nor but there".split())


def _denied_at(sentence: Sentence, at: int) -> int | None:
    """Return the word that says that a thing is not in it; None where none does: "it takes no oven"."""
    place = at - 1
    while sentence.text_at(place) in _TRACE_OF:
        place -= 1
    if sentence.text_at(place) in _LISTS:  # "no dairy or carmine", "free of gluten and carmine"
        over = place - 1 - (sentence.text_at(place - 1) == ",")
        listed = place == at - 1 or "of" in sentence.texts[place:at]
        known = sentence.is_a(over, "allergen") or sentence.is_a(over, "group")
        told = listed and known and over in sentence.used and _ends(sentence, at)
        return over if told and _is_free_of(sentence, over) else None
    if sentence.is_a(place - (sentence.text_at(place) == "from"), "wording", "free"):
        return place if place < at - 1 or sentence.text_at(place) == "from" else None
    denied = sentence.text_at(place) in _LEADS or (sentence.text_at(place) == "not" and place < at - 2)
    opens = place == sentence.clause_of(at)[0] or sentence.text_at(place - 1) in _HELD
    return place if denied and opens and _ends(sentence, at) else None


_ENDS = frozenset((*". , ! ; and or nor but in here either whatsoever at too".split(), ""))


def _ends(sentence: Sentence, at: int) -> bool:
    """Return whether nothing more than where it is, or the next of a list, stands behind a thing."""
    return sentence.text_at(at + 1) in _ENDS


def _is_free_of(sentence: Sentence, at: int) -> bool:
    """Return whether a list up to a place is of what is not there."""
    while at >= 0 and (sentence.text_at(at) in (*_LISTS, "of", "from", "any") or sentence.is_a(at, "allergen")):
        at -= 1
    return sentence.text_at(at) in ("no", "without", "zero", "neither") or sentence.is_a(at, "wording", "free")


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
            if (needs or theirs) and _is_unknown(sentence, at) and sentence.text_at(at) not in _PERSONS:
                yield (min(claim.places), at)


_MATTERS_NOT = frozenset(
    "flavor flavors flavour taste color colour crunch texture work charm fun aroma smell sweetness tang bite bulk body "
    "heat kick sauce look beauty moisture volume weight credit effort time character creaminess freshness show "
    "richness appeal juice interest zing zip depth joy".split()
)
_BRINGS = frozenset("verb_bring verb_add verb_from".split())


def _share_of(sentence: Sentence, claims: Sequence[Claim]) -> Iterator[tuple[int, ...]]:
    """Yield a second share that is not known: "half of it from the beans and a smattering from the rice"."""
    if not any(isinstance(claim, DishShareClaim) for claim in claims):
        return
    for at in range(1, len(sentence)):
        if not _is_unknown(sentence, at) or sentence.text_at(at) in _MATTERS_NOT:
            continue
        before = sentence.text_at(at - 1)
        over = at + 1 + (sentence.text_at(at + 1) in ("is", "are", "comes", "come", "of"))
        a_part = before in ("a", "an", "another") and sentence.text_at(over) == "from"
        if a_part and food_at(sentence, after_determiners(sentence, over + 1)) is not None:
            yield (at - 1, over)
        led = at - 1 - (before == "the")
        shared = sentence.is_a(led - 1, "share") or sentence.text_at(led - 1) == "and"
        if shared and sentence.text_at(led) == "of" and _ends(sentence, at):
            yield (led - 1, at)


_UNITS = frozenset("g mg µg kcal % day week month hour".split())


def _so_many(sentence: Sentence, _claims: Sequence[Claim]) -> Iterator[tuple[int, ...]]:
    """Yield a number that is not known: "umpteen grams of fat"."""
    for at in sentence.places("unit", 1):
        if sentence.tokens[at].parts["unit"] not in _UNITS or at in sentence.used or sentence.tokens[at].quantity:
            continue
        of_it = sentence.text_at(at + 1) == "of" and sentence.is_a(at + 2, "nutrient")
        kept = sentence.text_at(at + 1) in ("in", "on") and not sentence.words.isdisjoint(_COLD)
        if (of_it or kept) and _is_unknown(sentence, at - 1) and sentence.text_at(at).endswith("s"):
            yield (at - 1, at)


_WHO = frozenset(
    "everything everyone everybody nobody nothing somebody someone anything anybody who what which that each both none "
    "one many most few others another two three four five six half he she people adults folks guests stack stacks".split()
)


def _subject(sentence: Sentence, claims: Sequence[Claim]) -> Iterator[tuple[int, ...]]:
    """Yield what something is said of that is neither the dish nor a food known: "seitan has more protein than"."""
    for claim in claims:
        if claim.about.kind == FOOD or isinstance(claim, (CookedAwayClaim, TimeClaim, UnreadClaim)):
            continue
        known = _WHO | _INSIDE | _COLD | {"leftovers"} if isinstance(claim, DegreesClaim) else _WHO
        clause = sentence.clause_of(min(claim.places))
        verb = next((at for at in clause if sentence.text_at(at) in VERBS), -1)
        at = verb - 1
        first = clause[0] + (sentence.text_at(clause[0]) in ("and", "so", "but", ","))
        if verb < 0 or at < first or not _is_unknown(sentence, at) or sentence.text_at(at) in known:
            continue
        if all(_is_unknown(sentence, place) or sentence.text_at(place) in DETERMINERS for place in range(first, at)):
            yield (at, verb)
