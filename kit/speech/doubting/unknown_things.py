"""Things that nobody here knows, in a list of what it holds, lacks or comes from: they are asked about.

"It is nut-free and lectin-free", "no egg and no carmine", "it contains egg, annatto and wheat", "not vegan because of
the lard", "the oil and the suet bring most of the fat". What may stand there without telling anything is listed.
"""

from collections.abc import Iterator, Sequence

from kit.food.composition import foods
from kit.speech.about.parts import after_determiners, back, before_determiners, is_verb
from kit.speech.allergens.allergens_judged import AllergenClaim
from kit.speech.claim import Claim
from kit.speech.descriptions.absences import AbsentClaim
from kit.speech.descriptions.kinds import KindClaim
from kit.speech.descriptions.wordings_claim import WordingClaim
from kit.speech.figures.comparisons_claim import ComparisonClaim
from kit.speech.proportions.dish_shares_judged import DishShareClaim
from kit.speech.words.sentence import Sentence, food_at

LISTS = (",", "and", "or", "nor", "&")
_ENDS = frozenset((*". , ! ; and or nor but in here either whatsoever at too".split(), ""))
# What a food may bring, or a dish be rich in, that is none of the kit's business.
MATTERS_NOT = frozenset(
    "flavor flavors flavour taste color colour crunch texture work charm fun aroma smell sweetness tang bite bulk body "
    "heat kick sauce look beauty moisture volume weight credit effort time character creaminess freshness show "
    "richness appeal juice interest zing zip depth joy effort cost price fuss mess work comfort goodness character "
    "variety contrast".split()
)
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


def ends(sentence: Sentence, at: int) -> bool:
    """Return whether nothing more than where it is, or the next of a list, stands behind a thing."""
    return sentence.text_at(at + 1) in _ENDS


def _lacks(sentence: Sentence, claims: Sequence[Claim]) -> Iterator[tuple[int, ...]]:
    """Yield what is said not to be in it and is not known: "no egg and no carmine", "nut-free and lectin-free"."""
    beside = any(isinstance(claim, (AllergenClaim, AbsentClaim, KindClaim, WordingClaim)) for claim in claims)
    for at in sentence.unknown:
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
    if sentence.text_at(place) in LISTS:  # "no dairy or carmine", "free of gluten and carmine"
        over = place - 1 - (sentence.text_at(place - 1) == ",")
        listed = place == at - 1 or "of" in sentence.texts[place:at]
        known = sentence.is_a(over, "allergen") or sentence.is_a(over, "group")
        told = listed and known and over in sentence.used and ends(sentence, at)
        return over if told and _is_free_of(sentence, over) else None
    if sentence.is_a(place - (sentence.text_at(place) == "from"), "wording", "free"):
        return place if place < at - 1 or sentence.text_at(place) == "from" else None
    denied = sentence.text_at(place) in _LEADS or (sentence.text_at(place) == "not" and place < at - 2)
    opens = place == sentence.clause_of(at)[0] or sentence.text_at(place - 1) in _HELD
    return place if denied and opens and ends(sentence, at) else None


def _is_free_of(sentence: Sentence, at: int) -> bool:
    """Return whether a list up to a place is of what is not there."""
    while at >= 0 and (sentence.text_at(at) in (*LISTS, "of", "from", "any") or sentence.is_a(at, "allergen")):
        at -= 1
    return sentence.text_at(at) in ("no", "without", "zero", "neither") or sentence.is_a(at, "wording", "free")


_CONTAINS = frozenset("contains contain has have got include includes are is with".split())


def _listed(sentence: Sentence, claims: Sequence[Claim]) -> Iterator[tuple[int, ...]]:
    """Yield what stands in a list of allergens and is none known: "it contains egg, annatto and wheat"."""
    if not any(isinstance(claim, AllergenClaim) and not claim.free for claim in claims):
        return
    for at in sentence.unknown:
        if sentence.text_at(at) in MATTERS_NOT or not ends(sentence, at):
            continue
        before, behind = _next(sentence, at, -1), _next(sentence, at, 1)
        joined = sentence.text_at(at - 1) in LISTS and sentence.is_a(before, "allergen") and before in sentence.used
        leads = sentence.text_at(at - 1) in _CONTAINS and sentence.is_a(behind, "allergen") and behind in sentence.used
        leads = leads or sentence.text_at(at - 1) in ("contains", "contain")
        if joined or (leads and sentence.text_at(at + 1) in (*LISTS, ".", "")):
            yield (min(before, at) if joined else at, at)


def _next(sentence: Sentence, at: int, step: int) -> int:
    """Return the place of what stands before or behind a thing in a list."""
    at += step
    while sentence.text_at(at) in LISTS:
        at += step
    return at


def _share_of(sentence: Sentence, claims: Sequence[Claim]) -> Iterator[tuple[int, ...]]:
    """Yield a second share that is not known: "half of it from the beans and a smattering from the rice"."""
    if not any(isinstance(claim, DishShareClaim) for claim in claims):
        return
    for at in sentence.unknown:
        if sentence.text_at(at) in MATTERS_NOT:
            continue
        before = sentence.text_at(at - 1)
        over = at + 1 + (sentence.text_at(at + 1) in ("is", "are", "comes", "come", "of"))
        a_part = before in ("a", "an", "another") and sentence.text_at(over) == "from"
        if a_part and food_at(sentence, after_determiners(sentence, over + 1)) is not None:
            yield (at - 1, over)
        whole = after_determiners(sentence, at + 2)
        few = sentence.text_at(at + 1) == "of" and sentence.is_a(whole, "nutrient")
        if few and (at == sentence.clause_of(at)[0] or before in ("a", "an")):
            yield (at, whole)  # "oodles of the sodium come from the salt"
        if _is_one_of(sentence, at):
            yield (at, at + 1)
        led = at - 1 - (before == "the")
        shared = sentence.is_a(led - 1, "share") or sentence.text_at(led - 1) == "and"
        all_of = sentence.is_a(led, "share") and sentence.text_at(led).endswith(" of")
        if (all_of or (shared and sentence.text_at(led) == "of")) and ends(sentence, at):
            yield (led, at)


def _is_one_of(sentence: Sentence, at: int) -> bool:
    """Return whether a thing is listed beside the foods that bring something: "the oil and the suet bring"."""
    before = before_determiners(sentence, at)
    joined = sentence.text_at(before) in LISTS and food_at(sentence, before - 1) and is_verb(sentence, at + 1)
    other = after_determiners(sentence, at + 2)
    opens = before < sentence.clause_of(at)[0] and sentence.text_at(at + 1) in LISTS
    return bool(joined) or (opens and food_at(sentence, other) is not None and is_verb(sentence, other + 1))


_CAUSES = frozenset(("because of", "due to", "owing to", "on account of", "courtesy of", "from"))
_LEFT_OUT = ("without", "leave out", "leaving out", "skip", "skipping", "drop", "dropping", "omit", "omitting")
_PARTS = frozenset(
    "topping filling roux batter crust dough base sauce dressing ingredients mix marinade glaze frosting crumb crumbs "
    "rub coating breading garnish layer layers shell shells middle pot pan bowl dish".split()
)
_NO_FOODS = frozenset(
    "scratch animal animals plant plants start now heaven then home elsewhere bottom top energy today".split()
)


def _why(sentence: Sentence, claims: Sequence[Claim]) -> Iterator[tuple[int, ...]]:
    """Yield what it is said to come from and is not in the dish: "not vegan because of the lard", "and the ostrich"."""
    if not claims:
        return
    told = any(isinstance(claim, (AllergenClaim, DishShareClaim, KindClaim)) for claim in claims)
    for at in sentence.where(_CAUSES) if told else sentence.where(("from",), 1):
        if told or sentence.is_a(at - 1, "share"):  # "28 grams of protein, mostly from the ostrich"
            yield from ((at, place) for place in _missing(sentence, at + 1))
    for at in sentence.where(("in",), 1) if told else ():
        if sentence.is_a(at - 1, "allergen"):  # "the wheat is in the bread, and the gluten in the seitan"
            things = (place for place in _missing(sentence, at + 1) if sentence.text_at(place - 1) == "the")
            yield from ((at, place) for place in things if sentence.text_at(place) not in _PARTS)
    for at in sentence.where(_LEFT_OUT):  # "leave out the cod and the clams and it's vegetarian"
        things = (place for place in _missing(sentence, at + 1) if food_at(sentence, place) is None)
        yield from ((at, place) for place in things if sentence.text_at(place - 1) in ("the", "both"))


def _missing(sentence: Sentence, first: int) -> Iterator[int]:
    """Yield the places of what is listed from a place on and is no food of the dish, nor a nutrient or an allergen."""

    def is_named(place: int) -> bool:
        return sentence.is_a(place, "allergen") or sentence.is_a(place, "nutrient")

    place = after_determiners(sentence, first)
    while place < len(sentence) and (food_at(sentence, place) or place in sentence.unknown):
        if is_verb(sentence, place + 1):
            return  # "from the feta, and the salt stays in the cupboard"
        food = food_at(sentence, place)
        missing = not food.inside if food is not None else _closes(sentence, place)
        if missing and sentence.text_at(place) not in _NO_FOODS and not is_named(place):
            yield place
        if sentence.text_at(place + 1) not in LISTS:
            return
        place = after_determiners(sentence, place + 1, LISTS)


def _closes(sentence: Sentence, at: int) -> bool:
    """Return whether nothing more of a thing stands behind a word: "without the suet it is"."""
    return ends(sentence, at) or sentence.text_at(at + 1) in ("it", "you", "there", "they", "that", "this", "a", "the")


_NAMED_AGAIN = (":", "(", "the")
_NEXT = frozenset("next second behind third last".split())


def _named(sentence: Sentence, claims: Sequence[Claim]) -> Iterator[tuple[int, ...]]:
    """Yield what is said to be the allergen, or to rank behind another food, and is not known: "fish (zander)"."""
    brought = any(isinstance(claim, AllergenClaim) and not claim.free for claim in claims)
    ranked = any(isinstance(claim, (DishShareClaim, ComparisonClaim)) for claim in claims)
    for at in sentence.unknown:
        before = sentence.text_at(at - 1)
        told = before in _NAMED_AGAIN and (ends(sentence, at) or sentence.text_at(at + 1) == ")")
        if brought and told and (before != "the" or sentence.texts[at - 3 : at - 1] == ("that", "is")):
            yield (at - 1, at)
        led = at - 1 - (before == "the")
        with_it = sentence.text_at(led) == "with" and sentence.text_at(at + 1) in _NEXT
        then = sentence.text_at(led) == "then" and ends(sentence, at)
        if ranked and (with_it or then):
            yield (led, at)
        of_it = before == "of" and (sentence.is_a(at - 2, "rank") or sentence.text_at(at - 2) == "and")
        if of_it and ends(sentence, at) and sentence.text_at(at) not in MATTERS_NOT:
            yield (at - 2, at)  # "the main source of choline", "a good source of iron and of taurine"


_MADE = frozenset("made comes come cooked baked built what loaded packed full topped finished thickened".split())
_HOLDS = frozenset("has have got use uses using contains includes include".split())
_FLESH = frozenset("meat poultry fish shellfish".split())


def not_in_it(sentence: Sentence, claims: Sequence[Claim]) -> Iterator[tuple[int, ...]]:
    """Yield a food that is said to be in the dish and is not: "there's beef in it, so it isn't vegan".

    To be asked only where no change of the dish is read.
    """
    table = foods() if claims else {}
    for at in sentence.places("food") if claims else ():
        word = food_at(sentence, at)
        if word is None or word.inside or at in sentence.used or at in sentence.dishes:
            continue
        if sentence.is_a(at, "nutrient") or sentence.is_a(at, "allergen"):
            continue
        led = back(sentence, at)
        before, inside = sentence.text_at(led), sentence.texts[at + 1 : at + 3] in _IN_IT
        there = before in ("is", "are") and sentence.text_at(led - 1) in ("there", "here")
        with_it = before == "with" and (sentence.text_at(led - 1) in _MADE or inside)
        over = at + 1 + 2 * (sentence.text_at(at + 1) in ("and", "&") and food_at(sentence, at + 2) is not None)
        named = over in sentence.dishes and any(table[key].group in _FLESH for key in word.outside if key in table)
        if there or with_it or (inside and before != "no") or named:
            yield (max(led, 0), at)
        elif before in _HOLDS and sentence.text_at(led - 1) not in ("to", "not", "can", "could", "may", "might"):
            yield (led, at)


_IN_IT = (("in", "it"), ("in", "this"), ("in", "here"), ("in", "there"), ("in", "them"))
THINGS = (_lacks, _listed, _share_of, _why, _named)
