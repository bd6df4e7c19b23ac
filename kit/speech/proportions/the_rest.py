"""Who brings what others leave: "the beans bring half of the fiber, and the corn most of the rest"."""

from collections.abc import Sequence

from kit.speech.about.slots import SHARES, negated, nutrients_after, share_at
from kit.speech.about.unread import asked
from kit.speech.claim import FOOD, About, Claim
from kit.speech.proportions.brought_by import foods_before, foods_behind
from kit.speech.proportions.dish_shares_judged import DishShareClaim
from kit.speech.proportions.energy_shares import EnergyShareClaim
from kit.speech.proportions.share_claim import Share
from kit.speech.proportions.shares import where_it_ends
from kit.speech.words.sentence import Sentence

_OF_IT = frozenset("of the".split())


def read(sentence: Sentence, claims: Sequence[Claim], found: Sequence[Share]) -> list[Claim]:
    """Return what is said of the rest of a nutrient, others having been named before.

    Parameters
    ----------
    sentence : Sentence
        The sentence.
    claims : sequence of Claim
        What has been read in it.
    found : sequence of Share
        Its shares: the rest is also said of where nobody was named before, and then asked about.
    """
    more: list[Claim] = []
    for at in sentence.places("share"):
        if at in sentence.used or not sentence.is_a(at, "share", "rest"):
            continue
        before = [
            claim
            for claim in (*claims, *more)
            if isinstance(claim, DishShareClaim) and max(claim.places) < at and not claim.negated
        ]
        if before:
            more.append(_of_the_rest(sentence, at, before))
        elif any(isinstance(claim, EnergyShareClaim) for claim in claims):
            sentence.used.add(at)
            more.append(asked(sentence, (at,)))  # "half from carbohydrate, the rest is evenly split"
        else:
            more += [_alone(sentence, share) for share in found if share.place == at and share.foods]
    return more


def rest_begins(sentence: Sentence, at: int) -> int:
    """Return where the words of a rest begin: with the share of it in "most of the rest"."""
    if sentence.text_at(at - 1) == "of":
        return at - 2
    return at - 1 if sentence.text_at(at - 1).endswith(" of") else at


def _of_the_rest(sentence: Sentence, at: int, before: Sequence[DishShareClaim]) -> Claim:
    """Return the claim about the rest at a place; where nobody is named who brings it, that is asked."""
    first = rest_begins(sentence, at)
    part = share_at(sentence, first) if first >= 0 else None
    if part is None:
        return asked(sentence, (at,))
    named = nutrients_after(sentence, at + 1, _OF_IT)
    name = named[0].nutrient if named and named[0].place <= at + 3 else before[-1].nutrient
    foods, places = foods_behind(sentence, at + 1, where_it_ends(sentence, at + 1, at))
    if not foods:
        foods, places = foods_before(sentence, first - (sentence.text_at(first - 1) == "the"))
    besides = tuple(food for claim in before if claim.nutrient == name for food in claim.about.foods)
    if not foods or not besides:
        return asked(sentence, (at,))
    spots = sorted({first, at, *places, *(one.place for one in named[:1] if one.place <= at + 3)})
    sentence.used.update(spots)
    said = SHARES["nearly all"] if part.relation in ("rest", "all") else part
    return DishShareClaim(
        tuple(spots),
        About(FOOD, 1.0, tuple(foods)),
        negated(sentence, first),
        name,
        said,
        start=-1,
        besides=besides,
    )


def _alone(sentence: Sentence, share: Share) -> DishShareClaim:
    """Return the rest of something of which nothing else is said."""
    places = sorted({share.place, *(one.place for one in share.whole), *share.food_places})
    sentence.used.update(set(places) - share.of_amounts)
    about = About(FOOD, 1.0, share.foods)
    return DishShareClaim(tuple(places), about, False, share.whole[0].nutrient, share.said, start=-1)
