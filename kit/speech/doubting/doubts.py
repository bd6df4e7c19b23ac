"""Words beside a claim that turn it, weaken it or give it to something else; what they leave open is asked."""

import re
from collections.abc import Sequence
from dataclasses import replace
from itertools import pairwise

from kit.speech.about.parts import back
from kit.speech.about.unread import asked
from kit.speech.allergens.allergens_judged import AllergenClaim
from kit.speech.claim import FOOD, Claim
from kit.speech.descriptions.kinds import KindClaim
from kit.speech.descriptions.wordings_claim import WordingClaim
from kit.speech.doubting.joined_on import joined_on, of_its_own, set_apart
from kit.speech.doubting.not_meant import not_meant
from kit.speech.doubting.of_another_need import of_another_need
from kit.speech.doubting.of_several import of_a_piece, of_both, of_several
from kit.speech.doubting.of_something_else import of_something_else
from kit.speech.doubting.said_with import all_of_one, in_turn, of_one_source, with_another
from kit.speech.doubting.shared_out import shared_out
from kit.speech.figures.amounts import AmountClaim
from kit.speech.figures.comparisons_claim import ComparisonClaim
from kit.speech.proportions.day_shares import DayShareClaim
from kit.speech.proportions.dish_shares_judged import DishShareClaim
from kit.speech.safety.keeping_judged import OUT, DegreesClaim, ThawClaim, TimeClaim
from kit.speech.safety.keeping_warned import is_thrown
from kit.speech.words.sentence import Sentence, food_at

# What is said of a whole statement: "it isn't true that", "nothing if not", "keeps it from being".
_OF_ALL_OF_IT = re.compile(
    r"\b(?:not|never) (?:\w+ )?(?:true|the case|right|correct|so|a fact) that\b"
    r"|\b(?:untrue|false|wrong|a lie|nonsense|rubbish|ridiculous) (?:that|to say|to call)\b"
    r"|\bif (?:it|they) (?:was|were|had)(?: not|n't)\b|\b(?:were it|if) not for\b|\bbut for\b"
    r"|\bnothing if not\b|\bfrom being\b|\bif only\b|\bi wish\b|\bas if\b"
    r"|\bnever (?:think|say|call|claim)\b|\bno (?:need|reason) to (?:blame|thank|credit|praise)\b"
    r"|\bif there (?:are|were) (?:only |just )?\w+ (?:of (?:you|us)|people|at the table)\b"
    r"|(?<!no )(?<!a )\bdoubt(?:s|ful)?\b|\bunlikely\b|\bhard to (?:believe|credit|imagine)\b"
)
_LEADS_OFF = frozenset(  # one of these stands in each of them
    "that say call if were but being wish never blame thank credit praise doubt doubts doubtful unlikely hard".split()
)
_NOT_TRUE = re.compile(
    r"(?:it|that) is not (?:true|the case|so|right|correct) that\b|it is (?:untrue|false|wrong) that\b"
)
_TURNED = (AllergenClaim, AmountClaim, ComparisonClaim, DayShareClaim, DishShareClaim, KindClaim, WordingClaim)
# "Isn't it nice that it is nut-free?" denies nothing.
_IS_IT_NOT = re.compile(r"(?:is|are|was|does|do|has|have|can|could|will|would) (?:(?:it|this|that|they|there) )?not\b")
_ALMOST = frozenset(
    "almost nearly practically virtually basically mostly largely mainly essentially partly partially semi "
    "nominally supposedly allegedly".split()
)
_UNNEEDED = re.compile(
    r"\b(?:not (?:bother|need|have to|necessary|needed|required)|no (?:need|reason|rush|hurry)|needless|need not"
    r"|never mind|unnecessary|forget|optional)\b"
)
_CAUSES = ("because of", "thanks to", "due to", "owing to", "on account of")
_OTHER_TIMES = re.compile(
    r"\b(?:last (?:time|week|month|year)|next (?:time|week|month|year)|used to|yesterday|originally|back then"
    r"|in the old days|once had|(?<!you )(?<!we )will have)\b"
)
_EVERY = re.compile(
    r"\b(?:(?:every|each) (?:single )?(?:ingredient|food)|all of (?:the|its|these) (?:ingredients|foods))\b"
)
_SOME = re.compile(
    r"\b(?:(?:most|some|many|half) (?:of (?:the|its|these) )?(?:ingredients|foods)"
    r"|(?:almost|nearly|practically) (?:everything|everyone|all|every))\b"
)
_WASHED = frozenset("rinse rinses rinsing rinsed draining soaking washing".split())
_LIGHTER = frozenset("lighter leaner slimmer heavier richer shy short off down up ahead behind".split())
_GONE = ("gone", "lost", "saved", "spared", "missing")
_SAVES = frozenset("save saves saved saving spare spares shave shaves trim trims cut cuts lose loses".split())
_NONE = frozenset("nothing none nobody".split())


def doubted(sentence: Sentence, claims: Sequence[Claim]) -> list[Claim]:
    """Return the claims with those that other words of the sentence turn or leave open.

    Parameters
    ----------
    sentence : Sentence
        The sentence.
    claims : sequence of Claim
        What every family has read in it.
    """
    if not claims:
        return []
    text = sentence.plain
    once = sum(word in ("not", "never", "no", "none", "nothing", "false", "untrue") for word in text.split()) == 1
    if len(claims) == 1 and once and _NOT_TRUE.match(text) and isinstance(claims[0], _TURNED):
        return [replace(claims[0], negated=True)]
    leads = not _LEADS_OFF.isdisjoint(sentence.words) and _OF_ALL_OF_IT.search(text)
    if leads or (sentence.text.rstrip().endswith("?") and _IS_IT_NOT.match(text)):
        places = tuple(sorted({at for claim in claims for at in claim.places}))
        return [asked(sentence, places)]
    if not _TAKES_BACK.isdisjoint(sentence.words) and (places := _taken_back(sentence, claims)):
        return [asked(sentence, places)]
    found = set_apart(sentence, shared_out(sentence, not_meant(sentence, claims)))
    for one in (
        of_its_own,
        of_something_else,
        of_another_need,
        _of_none,
        _made_of,
        _told_from,
        _weakened,
        _unneeded,
        _at_another_time,
        of_both,
        of_several,
        of_a_piece,
        of_one_source,
        in_turn,
        with_another,
        _made_so,
        _of_what,
    ):
        found = [one(sentence, claim) for claim in found]
    return [*found, *joined_on(sentence, found), *all_of_one(sentence, found), *_because_of(sentence, found)]


_TAKES_BACK = frozenset("sorry oops whoops scratch correction mean strike".split())
_PUT_RIGHT = re.compile(
    r"(?:sorry|oops|whoops|correction|(?:scratch|strike) that|i mean) (?:[,:.—] )*"
    r"(?!to\b|that (?:it|this)\b|about\b|for\b|if\b|but\b|folks\b|everyone\b|all\b|guys\b|i\b|it\b)\w"
)


def _taken_back(sentence: Sentence, claims: Sequence[Claim]) -> tuple[int, ...]:
    """Return the places of what was said and is put right in other words: "thirty grams, sorry, milligrams"."""
    first = min(max(claim.places) for claim in claims)
    for at in range(first + 1, len(sentence)):
        if _PUT_RIGHT.match(" ".join(sentence.texts[at : at + 6])):
            return tuple(sorted({at, *(place for claim in claims for place in claim.places)}))
    return ()


def _of_none(sentence: Sentence, claim: Claim) -> Claim:
    """Return a comparison with all others as one that is asked about: "nothing brings more fiber than the eggs"."""
    if not isinstance(claim, ComparisonClaim):
        return claim
    words = [sentence.text_at(at) for at in sentence.clause_of(claim.places[0]) if at < claim.places[0]]
    none = (
        not _NONE.isdisjoint(words)
        or words[:1] == ["only"]
        or any(pair in (("no", "other"), ("no", "food")) for pair in pairwise(words))
    )
    return asked(sentence, claim.places) if none else claim


def _weakened(sentence: Sentence, claim: Claim) -> Claim:
    """Return a kind or wording that is only nearly so as one that is asked about: "almost dairy-free"."""
    free = isinstance(claim, AllergenClaim) and claim.free
    if not (free or isinstance(claim, (KindClaim, WordingClaim))):
        return claim
    at = min(claim.places) - 1
    if sentence.text_at(at) not in _ALMOST:
        return claim
    places = (at, *claim.places)
    return asked(sentence, places)


def _made_of(sentence: Sentence, claim: Claim) -> Claim:
    """Return what a food is said to be made of as a question: "the butter is mostly fat" tells nothing of the dish."""
    if not isinstance(claim, DishShareClaim):
        return claim
    shares = [at for at in claim.places if sentence.is_a(at, "share") and sentence.is_a(at + 1, "nutrient")]
    is_so = any(sentence.text_at(at - 1) in ("is", "are") and sentence.text_at(at - 2) != "there" for at in shares)
    return asked(sentence, claim.places) if is_so else claim


def _told_from(sentence: Sentence, claim: Claim) -> Claim:
    """Return a share read of the food that another is told from as one that is asked about: "the oil, not the nuts"."""
    if not isinstance(claim, DishShareClaim):
        return claim
    if not _WASHED.isdisjoint(sentence.words):  # "rinsing takes away a third of the salt in the beans"
        return asked(sentence, claim.places)
    foods = [at for at in claim.places if food_at(sentence, at) is not None and not sentence.is_a(at, "nutrient")]
    told = [at for at in foods if sentence.text_at(back(sentence, at)) == "not"]
    if claim.negated and all(sentence.text_at(at + 1) == "that" for at in told):
        return claim  # "it isn't the beef that brings most of it"
    first = min(claim.places)
    if sentence.text_at(first - 1) == "but" and sentence.text_at(first - 2) in ("all", "everything", "nothing"):
        return asked(sentence, (first - 2, first - 1, *claim.places))  # "all but a little of the cholesterol"
    return asked(sentence, claim.places) if told else claim


def _unneeded(sentence: Sentence, claim: Claim) -> Claim:
    """Return advice that is said not to matter turned round: "don't bother reheating it to 165"."""
    if not isinstance(claim, (TimeClaim, DegreesClaim, ThawClaim)):
        return claim
    clause = sentence.clause_of(claim.places[0])
    before = " ".join(sentence.text_at(at) for at in clause if at < claim.places[0])
    if isinstance(claim, TimeClaim) and claim.warned and claim.place == OUT and claim.days.relation == "under":
        return asked(sentence, claim.places, (clause[0], claim.places[-1]))
    if claim.negated or not _UNNEEDED.search(before) or is_thrown(sentence) is False:
        return claim  # "no need to throw it away": that it keeps is said
    if isinstance(claim, TimeClaim) and claim.place != OUT:
        return asked(sentence, claim.places, (clause[0], claim.places[-1]))
    if isinstance(claim, DegreesClaim) and claim.said.relation in ("over", "well over", "just over"):
        return claim  # "no need to go past 110 degrees": so hot is said to be enough
    return replace(claim, negated=True)


def _because_of(sentence: Sentence, claims: Sequence[Claim]) -> list[Claim]:
    """Return the food that is said to be why, where no claim is about it: "it keeps four days because of the lime"."""
    told = sentence.used.union(*(claim.places for claim in claims))
    about = {word.text for claim in claims for word in claim.about.foods}
    for at in sentence.where(_CAUSES, 1):
        behind = [place for place in range(at + 1, min(at + 5, len(sentence))) if food_at(sentence, place) is not None]
        word = food_at(sentence, behind[0]) if behind else None
        if word is not None and behind[0] not in told and word.text not in about:
            return [asked(sentence, (at, behind[0]))]
    return []


def _at_another_time(sentence: Sentence, claim: Claim) -> Claim:
    """Return what was so, or will be, as a claim that is asked about: "last time a plate had 500 calories"."""
    counted = isinstance(claim, (AmountClaim, DayShareClaim, WordingClaim, KindClaim))
    clause = " ".join(sentence.text_at(at) for at in sentence.clause_of(claim.places[0])) if counted else ""
    if not _OTHER_TIMES.search(clause):
        return claim
    return asked(sentence, claim.places)


def _made_so(sentence: Sentence, claim: Claim) -> Claim:
    """Return what a food is said to make the dish, where the claim leaves it out, as asked about."""
    told = isinstance(claim, (AllergenClaim, KindClaim, WordingClaim)) and claim.about.kind != FOOD
    led = _MADE_SO.search(sentence.plain) if told else None
    used = isinstance(claim, AllergenClaim) and claim.foods
    return asked(sentence, claim.places) if led and not used else claim


_MADE_SO = re.compile(
    r"\b(?:is|are) the (?:\w+ ){1,4}(?:that|which) (?:make|makes|keep|keeps|render|renders|turn|turns)\b"
)


def _of_what(sentence: Sentence, claim: Claim) -> Claim:
    """Return what is said of a whole that the claim does not take up as one that is asked about.

    "The oil adds 240 calories to the pan", "the milk is three percent fat", "every ingredient is low in sodium".
    """
    if not isinstance(claim, (AmountClaim, DishShareClaim, KindClaim, WordingClaim)):
        return claim
    words = [sentence.text_at(at) for at in sentence.clause_of(min(claim.places))]
    if isinstance(claim, AmountClaim):
        open_ended = _adds_otherwise(sentence, claim, words)
    elif isinstance(claim, DishShareClaim):
        open_ended = any(_is_so_much(sentence, at) for at in claim.places)
    else:
        text = " ".join(words)
        alone = "only" in (sentence.text_at(min(claim.places) - 1), words[0])
        of_grain = isinstance(claim, KindClaim) and claim.kind == "whole grain"  # "every ingredient is whole grain"
        said_of_each = (of_grain or isinstance(claim, WordingClaim)) and (alone or bool(_EVERY.search(text)))
        open_ended = said_of_each or bool(_SOME.search(text))
    return asked(sentence, claim.places) if open_ended else claim


def _adds_otherwise(sentence: Sentence, claim: AmountClaim, words: Sequence[str]) -> bool:
    """Return whether an amount is said of a whole, of each of several foods, or is how much less there is."""
    behind = max(claim.places) + 1
    added = claim.about.kind == FOOD and _goes_to(sentence, claim, behind)
    each = len(claim.about.foods) > 1 and "each" in words
    saved = any(sentence.text_at(at - 1) in _SAVES for at in claim.places)  # by a change that was not understood
    gone = sentence.text_at(behind) in ("is", "are") and sentence.text_at(behind + 1) in _GONE
    fewer = sentence.text_at(behind) in ("less", "fewer") and sentence.text_at(behind + 1) != "than"
    return gone or added or each or saved or fewer or sentence.text_at(behind) in _LIGHTER


def _is_so_much(sentence: Sentence, at: int) -> bool:
    """Return whether a food is said to be so much of a nutrient: "the milk is three percent fat"."""
    counted = sentence.tokens[at].quantity is not None
    return counted and sentence.text_at(at - 1) in ("is", "are") and sentence.is_a(at + 1, "nutrient")


def _goes_to(sentence: Sentence, claim: Claim, at: int) -> bool:
    """Return whether what a food adds is said for all of the dish, or what so much of it adds for a serving."""
    over = at + 1
    while sentence.text_at(over) in ("the", "a", "each", "every", "your", "this", "whole", "entire"):
        over += 1
    puts = (
        claim.about.measure
        and sentence.text_at(at) == "in"
        and any(sentence.is_a(place, "verb_add") or sentence.text_at(place) in ("put", "puts") for place in range(at))
    )  # "each tablespoon of it puts 100 milligrams in a bowl"
    if not (puts or sentence.text_at(at) == "to") or not sentence.is_a(over, "dish"):
        return False
    return sentence.tokens[over].parts["dish"] == "whole" or bool(claim.about.measure)
