"""One sentence checked: read, each claim judged, the verdict, and what can be said instead."""

from collections.abc import Sequence
from dataclasses import dataclass, replace

from kit.food.vocabulary import words
from kit.meal.nutrition import nutrition
from kit.rules.verdicts import CANNOT_TELL, HOLDS, NOTHING_TO_CHECK, OFF
from kit.speech.about import unread
from kit.speech.allergens import allergens_said
from kit.speech.allergens.allergens_judged import AllergenClaim
from kit.speech.changes.changes_excepted import is_excepted, is_only_with
from kit.speech.changes.changes_made import changed, each_meant, said_of_changed
from kit.speech.changes.changes_said import RINSE
from kit.speech.changes.effects_judged import EffectClaim
from kit.speech.claim import FOOD, SERVING, THE_DISH, UNKNOWN, WEIGHT, WHOLE, About, Choice, Claim, Finding
from kit.speech.descriptions import kinds, wordings
from kit.speech.descriptions.absences import AbsentClaim
from kit.speech.descriptions.kinds import KindClaim
from kit.speech.descriptions.wordings_claim import WordingClaim
from kit.speech.figures import amounts
from kit.speech.figures.amounts import AmountClaim
from kit.speech.figures.counts import IngredientsClaim, ServingsClaim
from kit.speech.instead import instead_of
from kit.speech.joined import beginnings, joints
from kit.speech.kept import kept
from kit.speech.proportions.day_shares import DayShareClaim
from kit.speech.proportions.dish_shares_judged import DishShareClaim
from kit.speech.proportions.energy_shares import EnergyShareClaim
from kit.speech.reading import Read, family_of, judge, read
from kit.speech.safety import keeping
from kit.speech.verdict import ClaimFinding
from kit.speech.words.foods_said import FoodWord
from kit.talk.dish import Dish
from kit.texts import listing, number

_ORDER = (OFF, CANNOT_TELL, HOLDS, NOTHING_TO_CHECK)
_OF_A_CHANGED_DISH = (
    AbsentClaim,
    AllergenClaim,
    AmountClaim,
    DayShareClaim,
    DishShareClaim,
    EnergyShareClaim,
    IngredientsClaim,
    KindClaim,
    WordingClaim,
)
_STAND_ALONE = (allergens_said.FAMILY, kinds.FAMILY, wordings.FAMILY)  # "the sodium drops by half" does not


@dataclass(frozen=True, slots=True)
class Checked:
    """What came out for one sentence: the verdict, why, what holds instead, the claims, and words to be pinned."""

    verdict: str
    because: str
    instead: str = ""
    claims: tuple[ClaimFinding, ...] = ()
    choices: tuple[Choice, ...] = ()


@dataclass(frozen=True, eq=False)
class Tried:
    """What a question tries: its words, and the dish that they change."""

    words: str
    untried: Dish


def check_sentence(
    text: str,
    dish: Dish,
    pins: dict[str, str] | None = None,
    find_instead: bool = True,
    tried: Tried | None = None,
) -> Checked:
    """Check what is said against the dish as it is now.

    Parameters
    ----------
    text : str
        The words, their placeholders filled.
    dish : Dish
        The talk and the numbers of its dish as they are now.
    pins : mapping of str to str, optional
        Which food a word stands for.
    find_instead : bool
        Whether to look for words that would hold.
    tried : Tried, optional
        The change that a question tries, when the words answer it.
    """
    readings = read(text, dish, tried.words if tried else "")
    found = [
        (one, claim, _judged(one, _pinned(claim, pins or {}), _dish_of(one, claim, dish, tried)))
        for one in readings
        for claim in one.claims
    ]
    pairs = [(one.offset, finding) for one, _, finding in found]
    if not pairs:
        if doubt := _said_apart(readings, dish, pins or {}, tried):
            return Checked(CANNOT_TELL, doubt)
        return Checked(NOTHING_TO_CHECK, "It says nothing about nutrients, allergens, kinds, keeping or safety.")
    verdict = next(kind for kind in _ORDER if any(finding.verdict == kind for _, finding in pairs))
    if verdict == HOLDS and (doubt := _said_apart(readings, dish, pins or {}, tried)):
        return Checked(CANNOT_TELL, doubt, "", tuple(_told(one, claim, finding, dish) for one, claim, finding in found))
    because = _reason([finding.because for _, finding in pairs if finding.verdict == verdict])
    claims = tuple(_told(one, claim, finding, dish) for one, claim, finding in found)
    choices = tuple(dict.fromkeys(choice for _, finding in pairs for choice in finding.choices))
    instead = ""
    if verdict == OFF and find_instead:
        told = [(one.offset, _with_kept(one, claim, finding, dish)) for one, claim, finding in found]
        instead = instead_of(text, told, dish, lambda new: _reads_back(new, dish, pins or {}, tried))
    return Checked(verdict, because, instead, claims, choices)


def _with_kept(one: Read, claim: Claim, finding: Finding, dish: Dish) -> Finding:
    """Return a finding; of what holds beside what does not, with how it is told again."""
    if finding.verdict != HOLDS or one.change:
        return finding
    return replace(finding, sentences=(kept(claim, dish),))


def _dish_of(reading: Read, claim: Claim, dish: Dish, tried: Tried | None) -> Dish:
    """Return the dish that a claim is about: what a change does is done to the dish before it."""
    changes = reading.change is not None or isinstance(claim, EffectClaim)
    return tried.untried if tried is not None and changes else dish


def _said_apart(readings: Sequence[Read], dish: Dish, pins: dict[str, str], tried: Tried | None) -> str:
    """Return why a sentence may not hold after all: one of two statements that it joins does not hold alone."""
    for one, joint in ((reading, joint) for reading in readings for joint in joints(reading)):
        halves = [_claims_of(half, dish, pins, tried) for half in joint.halves]
        told = [[claim for claim in half if joint.full or claim.family != unread.FAMILY] for half in halves]
        if not (all(told) or (joint.stands and any(told))):
            continue
        doubts = [claim for half in told for claim in half if claim.verdict in (OFF, CANNOT_TELL)]
        if doubts and joint.changed and not _changes_again(joint.halves, dish):
            doubts = _after_change(one, joint.halves[1], doubts, dish, pins)
        if doubts:
            return _alone(doubts[0])
    for first, second, full in (begun for reading in readings for begun in beginnings(reading)):
        doubts = [claim for claim in _claims_of(first, dish, pins, tried) if _does_not_stand(claim, full)]
        if doubts and _claims_of(second, dish, pins, tried):
            return _alone(doubts[0])
    return ""


def _does_not_stand(claim: ClaimFinding, full: bool) -> bool:
    """Return whether what begins a sentence does not hold, be it a whole statement (`full`) or an amount alone."""
    return claim.verdict == OFF or (claim.verdict == CANNOT_TELL and (full or claim.family == amounts.FAMILY))


def _alone(claim: ClaimFinding) -> str:
    return f'Said alone, "{claim.words}" does not hold; say it in a sentence of its own: {claim.because}'


def _claims_of(half: str, dish: Dish, pins: dict[str, str], tried: Tried | None = None) -> tuple[ClaimFinding, ...]:
    return check_sentence(half, dish, pins, find_instead=False, tried=tried).claims


def _changes_again(halves: tuple[str, str], dish: Dish) -> bool:
    """Return whether each of two statements names a change of its own."""
    return all(any(one.change is not None for one in read(half, dish)) for half in halves)


def _after_change(
    one: Read, second: str, doubts: Sequence[ClaimFinding], dish: Dish, pins: dict[str, str]
) -> list[ClaimFinding]:
    """Return the doubts that stay when the second statement is said of the changed dish."""
    assert one.change is not None
    new = changed(one.change, dish)
    if isinstance(new, Finding):
        return [claim for claim in doubts if claim.family == keeping.FAMILY]
    after = _claims_of(second, Dish(dish.talk, nutrition(new[0])), pins)
    open_words = {claim.words for claim in after if claim.verdict in (OFF, CANNOT_TELL)}
    return [
        claim
        for claim in doubts
        if claim.family == keeping.FAMILY or (claim.family in _STAND_ALONE and claim.words in open_words)
    ]


def _judged(reading: Read, claim: Claim, dish: Dish) -> Finding:
    if not claim.about.or_dish:
        return _judged_once(reading, claim, dish)
    both = [
        _judged_once(reading, replace(claim, about=about), dish)
        for about in (replace(claim.about, or_dish=False), THE_DISH)
    ]
    if both[0].verdict == both[1].verdict:
        return both[0]
    words = claim.about.foods[0].text if claim.about.foods else "whole recipe"
    return Finding(
        CANNOT_TELL, f'does "it" mean the {words} or the dish? Say which: {both[0].because}; {both[1].because}'
    )


def _judged_once(reading: Read, claim: Claim, dish: Dish) -> Finding:
    said = frozenset(one.nutrient for one in reading.claims if isinstance(one, AmountClaim))
    if reading.open_change and (_about_now(claim) or isinstance(claim, ServingsClaim)):
        return Finding(CANNOT_TELL, "that is about a changed dish, and the change was not understood: try it on screen")
    if reading.change is None or reading.change.kind == RINSE or not _about_now(claim) or not reading.is_changed(claim):
        return judge(claim, dish, said)
    if isinstance(claim, DishShareClaim) and not set(claim.places).isdisjoint(reading.change.places):
        # "Half the cheese means half the fat", whatever follows
        return Finding(CANNOT_TELL, f'is "{reading.words(claim)}" said of less of it? Say what that saves')
    new = changed(reading.change, dish)
    if isinstance(new, Finding):
        each = [changed(change, dish) for change in each_meant(reading.change, new)]
        found = [judge(claim, Dish(dish.talk, nutrition(one[0])), said) for one in each if not isinstance(one, Finding)]
        return found[0] if len(found) == len(each) and len({one.verdict for one in found}) == 1 else new
    with_change = Dish(dish.talk, nutrition(new[0]))
    after = judge(claim, with_change, said)
    after = replace(after, sentences=said_of_changed(after.sentences, reading.change, new[1], with_change))
    if is_excepted(reading.sentence, reading.change):
        return _but_for(judge(claim, dish, said), after)
    if is_only_with(reading.sentence) and after.verdict == HOLDS:
        return _only_then(judge(claim, dish, said), after)
    if not any(isinstance(one, EffectClaim) for one in reading.claims):
        return after
    now = judge(claim, dish, said)
    if now.verdict == after.verdict:
        return now
    return Finding(CANNOT_TELL, f"is that meant with the change or without it? {now.because}; then {after.because}")


def _but_for(now: Finding, after: Finding) -> Finding:
    """Return the finding of "it is not vegan unless you leave out the feta": so now, and not so with the change."""
    if now.verdict == HOLDS and after.verdict != OFF:
        return Finding(CANNOT_TELL, f"that holds with the change too, or cannot be told then: {after.because}")
    return now


def _only_then(now: Finding, after: Finding) -> Finding:
    """Return the finding of "vegan only if you leave out the feta": not so now, and so with the change."""
    if now.verdict == OFF:
        return after
    return Finding(OFF if now.verdict == HOLDS else CANNOT_TELL, f"that may hold without the change too: {now.because}")


def _about_now(claim: Claim) -> bool:
    """Return whether a claim beside a change is about the dish with the change made."""
    return isinstance(claim, _OF_A_CHANGED_DISH)


def _pinned(claim: Claim, pins: dict[str, str]) -> Claim:
    if not pins or not claim.about.foods:
        return claim
    by_word = {words(word): key for word, key in pins.items()}
    foods = tuple(_pin(word, by_word.get(words(word.text), "")) for word in claim.about.foods)
    return replace(claim, about=replace(claim.about, foods=foods))


def _pin(word: FoodWord, key: str) -> FoodWord:
    return FoodWord(word.text, (key,) if key in word.inside else (), (key,), True) if key else word


def _reason(reasons: Sequence[str]) -> str:
    text = "; ".join(dict.fromkeys(reasons))
    return f"{text[:1].upper()}{text[1:]}{'' if text.endswith('?') else '.'}"


def _told(reading: Read, claim: Claim, finding: Finding, dish: Dish) -> ClaimFinding:
    because = _reason([finding.because])
    return ClaimFinding(
        reading.words(claim),
        family_of(claim),
        about_words(claim.about, dish),
        finding.verdict,
        because,
        reading.spans(claim),
    )


def about_words(about: About, dish: Dish) -> str:
    """Return what a claim is about, in words."""
    if about.kind == FOOD:
        names = listing([word.text for word in about.foods])
        return f"{number(about.count, 2)} {about.measure} {names}" if about.measure else names
    if about.kind == WHOLE:
        return "the whole recipe"
    if about.kind == WEIGHT:
        return f"{number(about.count)} g of the dish"
    if about.kind == UNKNOWN:
        return about.words
    assert about.kind == SERVING
    return "a serving" if about.count == 1 else f"{number(about.count, 2)} servings"


def _reads_back(text: str, dish: Dish, pins: dict[str, str], tried: Tried | None) -> bool:
    return check_sentence(text, dish, pins, find_instead=False, tried=tried).verdict == HOLDS
