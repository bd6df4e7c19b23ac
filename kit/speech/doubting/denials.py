"""Denials that no family has accounted for: "does not bring half of it", "is not in one bowl"."""

from collections.abc import Sequence
from dataclasses import dataclass, replace

from kit.speech.about.slots import nutrients_after, share_at
from kit.speech.about.unread import UnreadClaim
from kit.speech.allergens.allergens_judged import AllergenClaim
from kit.speech.claim import Claim
from kit.speech.descriptions.health import HealthClaim
from kit.speech.descriptions.kinds import KindClaim
from kit.speech.descriptions.wordings_claim import WordingClaim
from kit.speech.figures.amounts import AmountClaim
from kit.speech.figures.comparisons_claim import ComparisonClaim
from kit.speech.figures.counts import IngredientsClaim, ServingsClaim
from kit.speech.figures.weights_said import WeightClaim
from kit.speech.proportions.day_shares import DayShareClaim
from kit.speech.proportions.dish_shares_judged import DishShareClaim
from kit.speech.proportions.energy_shares import EnergyShareClaim
from kit.speech.proportions.nutrient_parts import PartClaim
from kit.speech.safety.keeping_judged import DegreesClaim, ThawClaim, TimeClaim
from kit.speech.words.clauses import is_stop
from kit.speech.words.sentence import Sentence, food_at

FAMILY = "denial"
_NOT = ("not", "never")
_NONE = ("none", "neither", "nobody", "least")  # that begin a statement: "none of it has", "the least of the fat"
_OF_ALL = ("in", "of", "here", "ingredient", "ingredients", "part", "bit", "food", "one", "about")
# Behind "not", words with which nothing is denied: "not bad for 430 calories", "not only", "not to mention".
_NO_DENIAL = frozenset(
    "only just merely simply bad to least counting including kidding joking surprising surprisingly too so".split()
)
# "Don't forget that it has milk" denies nothing, but "don't expect thirty grams" does.
_EXPECT = frozenset("expect count hope rely bank look think believe say call imagine blame thank credit".split())
_FACTS = frozenset("guess know believe suspect tell notice think imagine dream".split())
_CONDITIONS = frozenset("if unless when because since who that which whether though although provided".split())
_SHARES = (DayShareClaim, DishShareClaim, EnergyShareClaim, PartClaim)
_TURNED = (
    AllergenClaim,
    AmountClaim,
    ComparisonClaim,
    IngredientsClaim,
    KindClaim,
    ServingsClaim,
    WeightClaim,
    WordingClaim,
    *_SHARES,
)
_OWN_WAY = (DegreesClaim, HealthClaim, ThawClaim, UnreadClaim)  # these see to a "not" themselves, or cannot be told


@dataclass(frozen=True, slots=True)
class DenialClaim(UnreadClaim):
    """A denial of which it is not clear what it denies."""


def denied(sentence: Sentence, claims: Sequence[Claim]) -> list[Claim]:
    """Return the claims with what the sentence denies turned; where it is not clear what is denied, that is asked.

    Parameters
    ----------
    sentence : Sentence
        The sentence.
    claims : sequence of Claim
        What every family has read in it.
    """
    found = list(claims)
    for clause in sorted(set(sentence.clauses)):
        negators = [at for at in range(len(sentence)) if sentence.clauses[at] == clause and _denies(sentence, at)]
        if negators:
            found = _of_clause(sentence, found, clause, negators)
    return found


def _of_clause(sentence: Sentence, found: list[Claim], clause: int, negators: Sequence[int]) -> list[Claim]:
    """Return the claims with what one clause denies turned."""
    led = sentence.text_at(sentence.clause_of(negators[0])[-1]) in (":", "—") and not _in_clause(
        sentence, found, clause
    )
    clause += led  # "it is not doing much: half of it comes from ..."
    own = _in_clause(sentence, found, clause)
    if not own and sentence.text_at(negators[-1] + 1) in ("", ".", "!", ",") and clause:
        return _with_earlier(sentence, found, negators)
    alone, negators = _of_their_own(sentence, negators)
    found = found + alone
    if all(isinstance(claim, DishShareClaim) for claim in own):
        negators = [at for at in negators if not _between_commas(sentence, at)]
    if all(_is_first(claim) for claim in own):
        negators = [at for at in negators if not _sets_against(sentence, at)]
    told = sum(1 for claim in own if claim.negated or _sees_to_it(claim))
    if told >= len(negators) or not own or not negators:
        return found
    left = [claim for claim in own if not claim.negated and not _sees_to_it(claim)]
    plain = told == 0 and not led and len(negators) == len(left) == 1
    if plain and _can_turn(sentence, left[0], negators[0]):
        return [replace(claim, negated=True) if claim is left[0] else claim for claim in found]
    # What is denied is not clear, so neither is what is claimed.
    return _asked_together(sentence, found, left, (negators[-1], *left[0].places)) if left else found


def _in_clause(sentence: Sentence, claims: Sequence[Claim], clause: int) -> list[Claim]:
    return [claim for claim in claims if sentence.clauses[max(claim.places)] == clause]


def _with_earlier(sentence: Sentence, found: list[Claim], negators: Sequence[int]) -> list[Claim]:
    """Return the claims with the statement before a clause denied by it: "..., but it does not"."""
    earlier = [sentence.clauses[max(claim.places)] for claim in found if max(claim.places) < negators[0]]
    left = [claim for claim in _in_clause(sentence, found, max(earlier, default=-1)) if not _sees_to_it(claim)]
    places = (negators[-1], *(at for claim in left for at in claim.places))
    return _asked_together(sentence, found, left, places) if left else found


def _asked_together(
    sentence: Sentence, found: Sequence[Claim], claims: Sequence[Claim], places: Sequence[int]
) -> list[Claim]:
    """Return the claims with some of them as one that is asked about."""
    told = tuple(sorted(set(places)))
    return [*(claim for claim in found if claim not in claims), DenialClaim(told, words=sentence.said(told))]


def _of_their_own(sentence: Sentence, negators: Sequence[int]) -> tuple[list[Claim], list[int]]:
    """Return what is denied by words that deny nothing else, and the negators that are left."""
    claims: list[Claim] = []
    vague = [at for at in negators if _much_behind(sentence, at) is not None]
    if vague and (plenty := _not_plenty(sentence, vague[0])) is not None:
        claims.append(plenty)  # "not a lot of sodium"
        negators = [at for at in negators if at not in vague]
    none = [at for at in negators if _none_of(sentence, at)]
    claims += [DenialClaim((at, at + 3), words=sentence.said((at, at + 3))) for at in none]  # "not an ounce of meat"
    return claims, [at for at in negators if at not in none]


def _none_of(sentence: Sentence, at: int) -> bool:
    """Return whether there is said to be none of a thing: "not an ounce of meat", "not a scrap of cheese"."""
    one = sentence.tokens[at + 1].amount.value == 1 if at + 3 < len(sentence) else False
    thing = sentence.is_a(at + 3, "group") or food_at(sentence, at + 3) is not None
    return one and sentence.text_at(at + 2) == "of" and thing and not sentence.is_a(at + 3, "nutrient")


def _much_behind(sentence: Sentence, at: int) -> int | None:
    """Return the place of "a lot" in "is not a lot of", "does not have a lot of"; None where there is none."""
    over = at + 1 + (sentence.text_at(at + 1) in ("have", "contain", "get", "hold"))
    return over if sentence.is_a(over, "share", "much") else None


def _not_plenty(sentence: Sentence, at: int) -> DenialClaim | None:
    """Return "not a lot of sodium", of which no rule says how much that is."""
    much = _much_behind(sentence, at)
    named = nutrients_after(sentence, much + 1, frozenset("of the".split())) if much is not None else []
    if not named:
        return None
    places = (at, named[-1].place)
    return DenialClaim(places, words=sentence.said(places))


def _is_first(claim: Claim) -> bool:
    """Return whether a food is said to bring most of something, so that no other does."""
    if not isinstance(claim, DishShareClaim):
        return False
    return claim.rank == 1 or (claim.said is not None and claim.said.relation in ("most", "nearly all", "all"))


def _sets_against(sentence: Sentence, at: int) -> bool:
    """Return whether "not" only names what it is not, behind the statement: "..., not the beets"."""
    over = at + 1
    while sentence.text_at(over) in ("the", "a", "our", "any", "from", "by"):
        over += 1
    ends = over + 1 >= len(sentence) or is_stop(sentence.tokens[over + 1]) or sentence.text_at(over + 1) == ","
    against = sentence.text_at(at) == "not" and sentence.text_at(at - 1) == ","
    return against and food_at(sentence, over) is not None and ends


def _between_commas(sentence: Sentence, at: int) -> bool:
    """Return whether "not" names what it is not inside a statement: "the bread, not the turkey, brings half"."""
    return _sets_against(sentence, at) and "," in sentence.texts[at + 1 : at + 5]


def _sees_to_it(claim: Claim) -> bool:
    if isinstance(claim, AllergenClaim) and claim.safe:
        return True  # "no one with an allergy can have it"
    return isinstance(claim, _OWN_WAY) or (isinstance(claim, TimeClaim) and (claim.warned or claim.limit))


def _denies(sentence: Sentence, at: int) -> bool:
    text = sentence.texts[at]
    if at in sentence.used:
        return False
    if text in _NONE:
        return at - sentence.clause_of(at)[0] < 3
    if text in ("no", "nothing"):  # "nothing in it contains", "no ingredient has"
        led = [sentence.text_at(place) for place in sentence.clause_of(at) if place < at]
        return all(word in ("no", "yes", "and", "so", "well", ",") for word in led) and (
            sentence.text_at(at + 1) in _OF_ALL or (text == "no" and sentence.is_a(at + 1, "dish"))
        )
    if text.startswith("not ") and sentence.is_a(at, "share", "none"):
        return True
    if text not in _NOT or sentence.text_at(at - 1) == "or":  # "believe it or not"
        return False
    following = sentence.text_at(at + 1)
    if following in _FACTS and sentence.text_at(at - 1) in ("would", "could", "will", "can"):
        return False  # "you'd never guess it has 250 calories": it has
    if following == "that" and sentence.text_at(at - 1) == ",":
        return False  # "low in fat, not that you'd know"
    if following in _NO_DENIAL and not (following == "to" and sentence.text_at(at + 2) in ("blame", "thank", "credit")):
        return False
    order = sentence.text_at(at - 1) == "do" and at - 1 == sentence.clause_of(at)[0]
    return not order or following in _EXPECT


def _can_turn(sentence: Sentence, claim: Claim, negator: int) -> bool:
    """Return whether a claim denied is its opposite; "half of it is not from fat" may mean the other half."""
    if isinstance(claim, TimeClaim):
        return claim.days.relation in ("about", "between", "nearly")
    if not isinstance(claim, _TURNED):
        return False
    if any(sentence.text_at(at) in _CONDITIONS for at in range(max(claim.places) + 1, negator)):
        return False  # "it is vegan if you do not mind honey"
    free = isinstance(claim, AllergenClaim) and claim.free
    if sentence.text_at(negator) in ("nothing", "no", "none") and (
        free or isinstance(claim, (KindClaim, WordingClaim))
    ):
        return False  # "nothing in it is gluten-free" says more than that it is not
    if isinstance(claim, _SHARES):
        shares = [at for at in claim.places if share_at(sentence, at) is not None]
        most = claim.said is not None and claim.said.relation == "most"
        return most or not shares or negator < min(shares)
    return True
