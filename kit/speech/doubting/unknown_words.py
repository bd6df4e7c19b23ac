"""Words that nobody here knows, in the place of a telling word: they are asked about, and never passed by.

"Seitan has more protein than", "rich in iron and in tyrosine", "pollotarian", "trimmings aside"; and words that turn
all that is said, where no family has read them.
"""

from collections.abc import Iterator, Sequence

from kit.speech.about.parts import DETERMINERS, is_dish, is_verb
from kit.speech.about.unread import UnreadClaim, asked, is_question
from kit.speech.changes.allergens_cooked import CookedAwayClaim
from kit.speech.claim import FOOD, Claim
from kit.speech.descriptions.kinds import KindClaim
from kit.speech.descriptions.wordings_claim import WordingClaim
from kit.speech.doubting.unknown_around import around
from kit.speech.doubting.unknown_measures import COLD, HOT_THINGS, MEASURES
from kit.speech.doubting.unknown_things import MATTERS_NOT, THINGS, ends
from kit.speech.doubting.unknown_verbs import unknown_verbs
from kit.speech.figures.amounts import AmountClaim
from kit.speech.figures.comparisons_claim import ComparisonClaim
from kit.speech.proportions.day_shares import DayShareClaim
from kit.speech.safety.keeping_judged import DegreesClaim
from kit.speech.words.clauses import VERBS
from kit.speech.words.sentence import Sentence


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
    ways = (*THINGS, *MEASURES, _with_or_without, _subject, _judged, _for_whom, _turned, unknown_verbs, around)
    return [asked(sentence, places) for way in ways for places in way(sentence, claims)]


_WITHOUT = frozenset("minus barring plus sans less excluding including counting".split())


_SPOKEN = frozenset(  # "with luck it has": of nothing that is eaten
    "luck care pleasure ease love friends company time pride confidence joy respect practice patience caution gusto "
    "others him her me us you seconds family guests kids children thanks".split()
)


_WHO = frozenset(
    "everything everyone everybody nobody nothing somebody someone anything anybody who what which that each both none "
    "one many most few others another two three four five six half he she people adults folks guests "
    "stack stacks leftovers left rest remainder extras remains".split()
)
_NOT_NAMED = MATTERS_NOT | _WHO
_NO_THINGS = _NOT_NAMED | _SPOKEN
_HOT = _WHO | HOT_THINGS | COLD  # that may be said to be so hot


def _with_or_without(sentence: Sentence, claims: Sequence[Claim]) -> Iterator[tuple[int, ...]]:
    """Yield a thing that is none known with which, or without which, something is said to be so: "trimmings aside"."""
    if not any(isinstance(claim, (AmountClaim, DayShareClaim, KindClaim, WordingClaim)) for claim in claims):
        return
    for at in sentence.unknown:
        if sentence.text_at(at) in _NO_THINGS:
            continue
        led = at - 1
        while sentence.text_at(led) in ("the", "all", "any", "its", "of", "your", "some"):
            led -= 1
        word, behind = sentence.text_at(led), sentence.text_at(at + 1)
        follows = behind in (",", "it", "you", "that", "there", ".", "") or is_verb(sentence, at + 1)
        opens = led == sentence.clause_of(at)[0] or is_dish(sentence, led - 1)
        added = word in ("add", "adding", "with", "without", "thanks to") and opens and (follows or behind == "and")
        if behind == "aside" or (word in _WITHOUT and follows) or (added and not sentence.text_at(at).endswith("ing")):
            yield (max(led, 0), at)


def _subject(sentence: Sentence, claims: Sequence[Claim]) -> Iterator[tuple[int, ...]]:
    """Yield what something is said of that is neither the dish nor a food known: "seitan has more protein than"."""
    for claim in claims:
        if claim.about.kind == FOOD or isinstance(claim, (CookedAwayClaim, UnreadClaim)):
            continue
        known = _HOT if isinstance(claim, DegreesClaim) else _WHO
        clause = sentence.clause_of(min(claim.places))
        verb = next((at for at in clause if sentence.text_at(at) in VERBS), -1)
        at = verb - 1
        first = clause[0] + (sentence.text_at(clause[0]) in ("and", "so", "but", ","))
        if verb < 0 or at < first or at not in sentence.unknown or sentence.text_at(at) in known:
            continue
        if at in sentence.used:
            continue  # "the danger zone is"
        alone = isinstance(claim, ComparisonClaim) and sentence.text_at(at - 1) in (",", "the")
        if alone or all(_leads(sentence, place) for place in range(first, at)):
            yield (at, verb)
    for at in sentence.unknown if claims else ():
        named = sentence.text_at(at) not in _NOT_NAMED
        in_it = sentence.text_at(at + 1) == "in" and sentence.text_at(at + 2) in ("it", "this", "here")
        if named and in_it and sentence.text_at(at - 1) == "the" and sentence.clause_of(at)[0] >= at - 3:
            yield (at, at + 2)  # "and the zander in it is low in fat"


def _leads(sentence: Sentence, at: int) -> bool:
    """Return whether a word may lead to what something is said of: "the", or one that is not known either."""
    return at in sentence.unknown or sentence.text_at(at) in DETERMINERS


_BE = frozenset("is are was not very quite really so fairly rather pretty also and".split())


def _judged(sentence: Sentence, claims: Sequence[Claim]) -> Iterator[tuple[int, ...]]:
    """Yield what is said of a nutrient in a word that is none known: "ample in fat", "rich in iron and in tyrosine"."""
    rich = any(isinstance(claim, WordingClaim) for claim in claims)
    for at in sentence.unknown:
        over = at + 2
        of_it = sentence.text_at(at + 1) == "in" and sentence.is_a(over, "nutrient") and over not in sentence.used
        if of_it and sentence.text_at(at - 1) in _BE and ends(sentence, over):
            yield (at, over)
        held = sentence.text_at(at - 1) in ("in", "of") and sentence.is_a(at - 2, "wording")
        also = sentence.text_at(at - 1) == "in" and sentence.text_at(at - 2) in ("and", "or")
        of_a_thing = sentence.is_a(at + 1, "wording") and sentence.tokens[at + 1].hyphen_before
        if rich and (held or also or of_a_thing) and sentence.text_at(at) not in MATTERS_NOT and ends(sentence, at):
            yield (at - 1, at)


_KINDS_OF_EATERS = ("arian", "arians", "vore", "vores", "vorous")


def _for_whom(sentence: Sentence, _claims: Sequence[Claim]) -> Iterator[tuple[int, ...]]:
    """Yield who eats in a way that is none known, and how long a time is: "pollotarian", "for the fortnight"."""
    for at in sentence.unknown:
        word = sentence.text_at(at)
        if word.endswith(_KINDS_OF_EATERS) and word not in ("librarian", "librarians", "veterinarian"):
            yield (at, at)


# What turns or weakens all that is said, wherever it stands: "seldom", "otherwise vegan", "almost contains".
_TURNS = frozenset(
    "rarely seldom occasionally sometimes formerly supposedly allegedly theoretically reportedly nominally ostensibly "
    "purportedly otherwise notwithstanding".split()
)


_ALMOST = frozenset("almost nearly practically virtually hardly scarcely barely".split())


def _turned(sentence: Sentence, claims: Sequence[Claim]) -> Iterator[tuple[int, ...]]:
    """Yield a word that turns or weakens what is said, and that no family has read."""
    read = sentence.used.union(*(claim.places for claim in claims))
    for at in sentence.where(_TURNS | _ALMOST) if claims else ():
        done = is_verb(sentence, at + 1) and sentence.text_at(at + 1) not in ("is", "are", "comes", "come")
        if at not in read and (sentence.text_at(at) in _TURNS or done):
            yield (at, min(at + 1, len(sentence) - 1))
