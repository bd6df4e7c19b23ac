"""Two statements joined into one sentence: where each begins, so that each can be judged by itself too.

What one of them says ("no", "not", a part of the dish) may be taken to belong to the other. So a sentence holds only
where the statements that it joins hold when they are said apart.
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from kit.speech.about.parts import PREPOSITIONS
from kit.speech.about.slots import is_day, of_what_went_before
from kit.speech.changes.changes_said import RINSE
from kit.speech.claim import FOOD
from kit.speech.descriptions.wordings_claim import WordingClaim
from kit.speech.figures.amounts import AmountClaim
from kit.speech.figures.comparisons_claim import ComparisonClaim
from kit.speech.proportions.balance import BalanceClaim
from kit.speech.proportions.day_shares import DayShareClaim
from kit.speech.proportions.energy_shares import EnergyShareClaim
from kit.speech.reading import Read
from kit.speech.safety.keeping_judged import FREEZER, TimeClaim
from kit.speech.safety.keeping_words import IN_FRIDGE
from kit.speech.words.clauses import is_verb_word
from kit.speech.words.sentence import Sentence

_BREAKS = ("and", "but", "while")  # behind a comma; without one only "and" joins: "vegan but the yogurt"
_DENIES = ("no", "not", "nothing", "never")
_LEADS = frozenset("if when once unless with without use make have eat take serve drop skip leave".split())
_GO_ON = frozenset("you it they that those these".split())
_JUDGED = ("wording", "kind", "allergen")
_HERE = ("it", "this", "here", "these", "them")
_IS_SO = PREPOSITIONS | frozenset("behind fine safe good okay ok done perfect".split())


@dataclass(frozen=True, slots=True)
class Joint:
    """Where two statements are joined.

    Attributes
    ----------
    halves : tuple of str
        What stands before it and what stands after it.
    full : bool
        Whether both are whole statements, so that words of theirs which are not understood tell too.
    stands : bool
        Whether the one after it is to be judged though the one before it claims nothing.
    changed : bool
        Whether a change stands before it, of which what follows may be said: only what is safe is told apart.
    """

    halves: tuple[str, str]
    full: bool
    stands: bool
    changed: bool


def joints(one: Read) -> Iterator[Joint]:
    """Return where a sentence joins two statements that can stand alone.

    Parameters
    ----------
    one : Read
        The sentence, as it was read.
    """
    said = one.sentence
    for at in range(1, len(said) - 1):
        comma = said.text_at(at - 1) == ","
        if one.change is not None and min(one.change.places, default=at) < at < max(one.change.places, default=at):
            continue  # "take out the eggs and the honey"
        if said.text_at(at) not in (_BREAKS if comma else _BREAKS[:1]) or not _parts(one, at, comma):
            continue
        before, behind = range(at - comma), range(at + 1, len(said))
        listed = said.is_a(at + 1, "allergen") and said.text_at(at + 2) in (":", "—", "–")
        if listed or _goes_back(one, at) or _words_on(one, at):
            continue
        full = _has_verb(said, before) and (_has_verb(said, behind) or _new_clause(said, at))
        led = said.text_at(0) in _LEADS or said.text_at(at + 1) in _GO_ON
        stands = comma or _denies(said, at + 1) or _denies(said, at - 1) or (full and not led)
        halves = (said.text[: said.tokens[at - comma].start], said.text[said.tokens[at + 1].start :])
        yield Joint(halves, full, stands, _is_changed(one, at))


def _goes_back(one: Read, at: int) -> bool:
    """Return whether what follows is another share of the energy told before: ", a quarter of them from protein"."""
    if any(isinstance(claim, BalanceClaim) and min(claim.places) < at < max(claim.places) for claim in one.claims):
        return True  # "carbohydrate lies inside the range, and so do fat and protein"
    balanced = [min(claim.places) for claim in one.claims if isinstance(claim, BalanceClaim)]
    if (
        len(balanced) > 1
        and balanced[0] < at < balanced[-1]
        and {"range", "ranges"}.isdisjoint(one.sentence.texts[at:])
    ):
        return True  # "fat is below the range, and carbohydrate above it"
    of_day = any(isinstance(claim, DayShareClaim) and max(claim.places) < at for claim in one.claims)
    if of_day and not any(is_day(one.sentence, place) for place in range(at)):
        return True  # "fourteen percent of the calcium and a tenth of the iron for the day"
    compared = [claim for claim in one.claims if isinstance(claim, ComparisonClaim)]
    carried = [claim for claim in compared if min(claim.places) > at and claim.other.measure]
    bare = all(one.sentence.tokens[max(claim.places)].quantity is not None for claim in carried)  # "... than one"
    if carried and len(carried) < len(compared) and (bare or {"than", "as"}.isdisjoint(one.sentence.texts[at:])):
        return True  # "as much protein as one egg, but far less cholesterol"
    shares = [claim for claim in one.claims if isinstance(claim, EnergyShareClaim)]
    behind = [claim for claim in shares if min(claim.places) > at]
    timed = [claim for claim in one.claims if min(claim.places) > at]
    if timed and all(isinstance(claim, TimeClaim) and claim.place == FREEZER for claim in timed):
        return one.sentence.words.isdisjoint(IN_FRIDGE)  # "it freezes well and keeps for two months"
    amounts = [claim for claim in one.claims if isinstance(claim, AmountClaim) and min(claim.places) > at]
    if any(not one.sentence.tokens[place].amount.unit for claim in amounts[:1] for place in claim.places[-1:]):
        return True  # "fat stays under sixteen grams, and protein climbs past twenty"
    of_them = behind and any(of_what_went_before(one.sentence, place) for place in behind[0].places)
    gapped = not any(one.sentence.is_a(place, "nutrient", "energy") for place in range(at, len(one.sentence)))
    return 0 < len(behind) < len(shares) and bool(of_them or gapped)


def _words_on(one: Read, at: int) -> bool:
    """Return whether another wording of the same food follows without a verb: "high in fiber, and high in iron"."""
    said = one.sentence
    behind = range(at + 1, len(said))
    worded = [claim for claim in one.claims if isinstance(claim, WordingClaim) and claim.about.kind == FOOD]
    before = [claim for claim in worded if max(claim.places) < at]
    after = [claim for claim in worded if min(claim.places) > at]
    same = bool(before and after) and before[-1].about == after[0].about
    return same and said.is_a(at + 1, "wording") and not _has_verb(said, behind)


def beginnings(one: Read) -> Iterator[tuple[str, str, bool]]:
    """Return what stands before each "and" or "but" of a sentence, what behind it, and whether a verb stands before.

    Whatever follows, what has been said by then has been said; not where it only follows from a change.
    """
    said = one.sentence
    for at in said.where(("and", "but"), 2):
        behind_change = one.change is not None and min(one.change.places, default=at) < at
        states = _states(said, range(at + 1, len(said))) or _denies(said, at + 1)
        if behind_change or not (states and _may_claim(said, range(at))) or _goes_back(one, at):
            continue
        first = said.text[: said.tokens[at - (said.text_at(at - 1) == ",")].start]
        yield first, said.text[said.tokens[at + 1].start :], _has_verb(said, range(at))


def _may_claim(said: Sentence, places: Sequence[int]) -> bool:
    """Return whether more than foods and nutrients is named, as in "the beans and the rice"."""
    counts = any(said.tokens[at].quantity is not None or said.is_a(at, "share") for at in places)
    return counts or _states(said, places)


def _states(said: Sentence, places: Sequence[int]) -> bool:
    """Return whether more than one more amount is told, as in "34 grams of protein and eleven grams of fiber"."""
    return _judges(said, places) or _has_verb(said, places)


def _is_changed(one: Read, at: int) -> bool:
    return one.change is not None and one.change.kind != RINSE and min(one.change.places, default=0) < at


def _parts(one: Read, at: int, comma: bool) -> bool:
    """Return whether two statements are parted here."""
    said = one.sentence
    of_food = any(claim.about.kind == FOOD for claim in one.claims if min(claim.places) < at)
    if said.text_at(at + 1) in _GO_ON and of_food:  # "they" may be who the first was about
        return False
    if comma or _new_clause(said, at) or _denies(said, at - 1):  # "sadly not and leave it on the counter"
        return True
    if _denies(said, at + 1):  # "and no nuts in this one"
        own = any(said.text_at(place) in _HERE for place in range(at + 2, len(said))) or said.is_a(at + 2, "allergen")
        return own or not of_food
    judged = _judges(said, range(at))
    if _has_verb(said, range(at + 1, len(said))):
        return judged or _has_verb(said, range(at))
    worded = any(said.is_a(place, kind) for place in range(at) for kind in ("wording", "kind"))
    return not worded and _judges(
        said, range(at + 1, min(at + 3, len(said)))
    )  # "the butter brings most of the fat and sugar-free"


def _denies(said: Sentence, at: int) -> bool:
    none = said.is_a(at, "share", "none") or said.is_a(at, "share", "hardly any")
    return none or said.text_at(at) in _DENIES


def _judges(said: Sentence, places: Sequence[int]) -> bool:
    return any(said.is_a(at, kind) for at in places for kind in _JUDGED)


def _new_clause(said: Sentence, at: int) -> bool:
    return said.clauses[at - 1] != said.clauses[at + 1]


def _has_verb(said: Sentence, places: Sequence[int]) -> bool:
    return any(
        is_verb_word(said.tokens[at]) or (said.tokens[at].possessive and said.text_at(at + 1) in _IS_SO)
        for at in places
    )
