"""Numbers by which a claim is told otherwise than it was read: too wide apart, of a food, of other servings."""

from collections.abc import Iterator, Sequence
from dataclasses import replace

from kit.speech.about.parts import is_serving
from kit.speech.about.unread import asked
from kit.speech.allergens.allergens_judged import AllergenClaim
from kit.speech.changes.effects_judged import EffectClaim
from kit.speech.claim import FOOD, THE_DISH, About, Claim
from kit.speech.doubting.counted import COUNTED
from kit.speech.figures.amounts import AmountClaim
from kit.speech.figures.amounts_of import part_of_it
from kit.speech.figures.counts import IngredientsClaim, ServingsClaim
from kit.speech.proportions.dish_shares_judged import DishShareClaim
from kit.speech.proportions.shares import MACROS
from kit.speech.words.sentence import Sentence, food_at
from kit.speech.words.tokens import Quantity

_WIDE, _EITHER = 2.05, 1.25  # times as much; farther apart, two numbers tell nothing (common practice)
_BOUNDS = frozenset("more less over under least most fewer above below".split())  # "more than three, less than ten"
_COUNTED_FROM = 2
_PIECES = frozenset("fillets fillet chops chop burgers burger patties peppers steaks drumsticks thighs wings".split())
_PARTS = {
    "fat": ("saturated_fat", "monounsaturated_fat", "polyunsaturated_fat", "trans_fat", "fat"),
    "carbohydrate": ("fiber", "sugars", "added_sugars", "starch", "carbohydrate"),
    "sugars": ("added_sugars", "sugars"),
    "protein": ("protein",),
    "fiber": ("fiber",),
}


def numbers_told(sentence: Sentence, claims: Sequence[Claim]) -> list[Claim]:
    """Return what is asked about where a number is told otherwise than it was read.

    Parameters
    ----------
    sentence : Sentence
        The sentence.
    claims : sequence of Claim
        What every family has read in it.
    """
    ways = (_wide, _from_one, _no_part, _of_a_food, _other_count, _all_so_many, _bound_again, _numbered, _enough)
    return [claim for way in ways for claim in way(sentence, claims)]


def _wide(sentence: Sentence, claims: Sequence[Claim]) -> Iterator[Claim]:
    """Yield an amount between two numbers that lie too far apart to tell anything: "350 to 3,700 calories"."""
    for claim in claims:
        said = getattr(claim, "said", None)
        if not isinstance(claim, COUNTED) or said is None or said.relation != "between":
            continue
        told = [sentence.text_at(at).split() for at in claim.places if sentence.tokens[at].quantity is not None]
        words = {word for text in told for word in text}
        if not words or not _BOUNDS.isdisjoint(words) or _of_hundreds(said, words):
            continue
        if said.high > (
            _EITHER * said.low + (said.low >= 1) if "or" in words else _WIDE * said.low
        ):  # "21 or 44 grams"
            yield asked(sentence, claim.places)


def _of_hundreds(said: Quantity, words: set[str]) -> bool:
    """Return whether both numbers are of hundreds, though only the second says so: "three to four hundred"."""
    return bool(words & {"hundred", "thousand"}) and said.low * 100 <= said.high


def _from_one(sentence: Sentence, claims: Sequence[Claim]) -> Iterator[Claim]:
    """Yield calories of one nutrient that a change is said to save: "you save about 32 calories from fat"."""
    for claim in claims:
        if not isinstance(claim, EffectClaim):
            continue
        for at in claim.places:
            over = at + 1 + (sentence.tokens[at].amount.unit == "" and sentence.is_a(at + 1, "nutrient", "energy"))
            energy = sentence.tokens[at].amount.unit in ("kcal", "kJ") or sentence.is_a(over - 1, "nutrient", "energy")
            macro = sentence.text_at(over) == "from" and sentence.is_a(over + 1, "nutrient")
            if energy and macro and sentence.tokens[over + 1].parts["nutrient"] in MACROS:
                yield asked(sentence, (at, over + 1))


def _no_part(sentence: Sentence, claims: Sequence[Claim]) -> Iterator[Claim]:
    """Yield so much of a nutrient that is said to be another: "35 grams of carbohydrate, seven of them protein"."""
    if not any(isinstance(claim, AmountClaim) for claim in claims):
        return
    for at, token in enumerate(sentence.tokens):
        if token.quantity is None:
            continue
        part, before = part_of_it(sentence, at), sentence.places("nutrient", end=at)
        if part is None or not before:
            continue
        whole = sentence.tokens[before[-1]].parts["nutrient"]
        if whole in _PARTS and part.nutrient not in _PARTS[whole]:
            yield asked(sentence, (at, part.place))


def _of_a_food(sentence: Sentence, claims: Sequence[Claim]) -> Iterator[Claim]:
    """Yield grams of a food that were read as those of a nutrient: "you save eight grams of honey a bowl"."""
    for claim in claims:
        for at in claim.places if isinstance(claim, (AmountClaim, EffectClaim)) else ():
            over = at + 2 + (sentence.text_at(at + 2) in ("the", "your"))
            weighed = sentence.tokens[at].amount.unit in ("g", "mg") and sentence.text_at(at + 1) == "of"
            if weighed and food_at(sentence, over) is not None and not sentence.is_a(over, "nutrient"):
                yield asked(sentence, (at, over))


def _other_count(sentence: Sentence, claims: Sequence[Claim]) -> Iterator[Claim]:
    """Yield another count of servings beside one that was read: "four fillets, eight plates: it feeds four"."""
    served = [claim for claim in claims if isinstance(claim, ServingsClaim) and not claim.negated]
    values = {claim.said.value for claim in served}
    taken = {at for claim in claims for at in claim.places}
    if not any(isinstance(claim, (ServingsClaim, IngredientsClaim)) for claim in claims):
        return
    for at, said in sentence.quantities():
        if at in taken or said.unit or said.is_fraction or said.value < _COUNTED_FROM:
            continue
        people = sentence.text_at(at + 1) == "of" and sentence.text_at(at + 2) in ("you", "us", "them")
        serving = at + 1 < len(sentence) and is_serving(sentence, at + 1)
        token = sentence.tokens[at]
        if serving and not served:
            yield ServingsClaim((at, at + 1), THE_DISH, False, said, token.start, token.end)
        elif served and _is_other(sentence, at, people, serving, values):
            yield asked(sentence, (at, at + 1))


def _is_other(sentence: Sentence, at: int, people: bool, serving: bool, values: set[float]) -> bool:
    """Return whether a count is not that of the servings: of plates, of fillets, or of more people than are fed."""
    value = sentence.tokens[at].amount.value
    things = serving or sentence.text_at(at + 1) in _PIECES
    return (things and value not in values) or (people and value > max(values))


def _all_so_many(sentence: Sentence, claims: Sequence[Claim]) -> Iterator[Claim]:
    """Yield "all four" of three allergens: "milk, wheat and tree nuts: the salad has all four"."""
    listed = [claim for claim in claims if isinstance(claim, AllergenClaim)]
    for at, said in sentence.quantities() if len(listed) > 1 else ():
        last = sentence.text_at(at + 1) in ("", ".", "!", ",", "of")
        behind = at > max(min(claim.places) for claim in listed)
        if sentence.text_at(at - 1) == "all" and behind and last and not said.unit and said.value != len(listed):
            yield asked(sentence, (at - 1, at))


def _bound_again(sentence: Sentence, claims: Sequence[Claim]) -> Iterator[Claim]:
    """Yield another bound on the same side that was not read: "less than ten grams, but less than three"."""
    bounded = [claim for claim in claims if isinstance(claim, AmountClaim) and claim.said is not None]
    taken = {at for claim in claims for at in claim.places}
    for at, said in sentence.quantities() if bounded else ():
        again = any(claim.said.relation == said.relation for claim in bounded if claim.said is not None)
        if sentence.text_at(at - 1) == "but" and at not in taken and not said.unit and again:
            yield asked(sentence, (at - 1, at))


def _numbered(sentence: Sentence, claims: Sequence[Claim]) -> Iterator[Claim]:
    """Yield the food that has a number in the order of sources: "..., and olive oil is number two"."""
    ranked = [claim for claim in claims if isinstance(claim, DishShareClaim) and claim.rank == 1 and not claim.negated]
    for at, said in sentence.quantities() if ranked else ():
        food = food_at(sentence, at - 3)
        if sentence.text_at(at - 1) != "number" or sentence.text_at(at - 2) not in ("is", "are", "at") or said.unit:
            continue
        if food is None or said.value not in (2, 3):
            yield asked(sentence, (at - 1, at))
            continue
        about = About(FOOD, 1.0, (food,))
        yield replace(ranked[0], places=(at - 3, at), about=about, rank=int(said.value), start=0, end=0)


def _enough(sentence: Sentence, claims: Sequence[Claim]) -> Iterator[Claim]:
    """Yield how many there is enough for, where other words stand between: "enough on the tray for four, with"."""
    if not claims or "enough" not in sentence.words or any(isinstance(claim, ServingsClaim) for claim in claims):
        return
    taken = {at for claim in claims for at in claim.places}
    for at, said in sentence.quantities():
        before = sentence.texts[max(0, at - 6) : at]
        bare = (
            not said.unit and not said.is_fraction and sentence.text_at(at + 1) in ("", ".", ",", "!", "of", "people")
        )
        if bare and at not in taken and before[-1:] == ("for",) and "enough" in before:
            token = sentence.tokens[at]
            yield ServingsClaim((at,), THE_DISH, False, said, token.start, token.end)
