"""What is said to be done, in a word that nobody here knows: "the chicken destroys most of the protein" tells nothing.

Between what is spoken of and so much of it stands a word of having, bringing or coming to. Those are listed; whatever
else stands there is asked about.
"""

from collections.abc import Iterator, Sequence

from kit.speech.about.parts import DETERMINERS, PREPOSITIONS, is_dish, is_verb
from kit.speech.claim import Claim
from kit.speech.doubting.counted import COUNTED
from kit.speech.proportions.dish_shares_judged import DishShareClaim
from kit.speech.words.sentence import Sentence

# To have so much, or to come to it.
_HAS = frozenset(
    "& accounts after again ahead alone although amount amounts answer answers anything average averages back bag "
    "bags banks bear bears behind believe between big blame blamed both brings brought bulk call calls can "
    "carries chips chunk churns clearly clock clocks close come comes coming command commands comprise comprises "
    "constitute constitutes consume consumes contributed cost costs could count counts covers cram crams credit "
    "delivered derive derives dish dishes doing done down drawn drive drives due earn earns eat eats else ends "
    "enjoy enjoys equal equals expect expects fall falls feature features figure fills find finds first floats "
    "flow flows folks followed following form forms found generates get gets getting give given gives go goes "
    "good got guess hails half handles head heart hero hidden hide hides hit hits home house houses hover hovers "
    "include includes ingredient ingredients itself keep keeps kick kicks king knocks knows lands last lead "
    "leading leads leave leaves lend lends lie lies lifting likewise line lion live lives load loads locked log "
    "logs lot made main make makes may mean means measure measures meet meets might mind my net nets next not "
    "nothing number offers once one ones originates other our ourselves owe owed owes own owns packed part peaks "
    "per picture place plus powers produce produces provided pull pulls pump pumps purpose put puts queen rack "
    "racks range ranges read reads reckon register registers reports represent represents responsible right ring "
    "rings run runs satisfies satisfy say says scoops score scores second see sees serves set sets settle settles "
    "share shows sit sits slip slips sneak sneaks so source span spans sports spot squeeze squeezes star starts "
    "stay stays stem stems still stocks stops store stored stores stuffs sum sums supplied surprise surprisingly "
    "swallow swallows takes tallies tally than thanks their themselves then think third though three throw throws "
    "together too top toss tosses total totals trace traces tucked two up uses varies vary we weighs well what "
    "where while wields will wins wipes wise work works worth would you your".split()
)


def unknown_verbs(sentence: Sentence, claims: Sequence[Claim]) -> Iterator[tuple[int, ...]]:
    """Yield what is done to a share or an amount, in a word that is none known.

    Parameters
    ----------
    sentence : Sentence
        The sentence, when every family has read it.
    claims : sequence of Claim
        What they have read.
    """
    for claim in claims:
        if isinstance(claim, DishShareClaim):
            between = range(min(claim.places) + 1, max(claim.places))
            odd = [at for at in between if at in sentence.unknown and not _is_plain(sentence, at)]
            yield from ((at, max(claim.places)) for at in odd[:1])
        if isinstance(claim, COUNTED):
            shares = (at for at in claim.places if sentence.is_a(at, "share") or sentence.tokens[at].quantity)
            so_much = next(shares, min(claim.places))
            verb = _before(sentence, so_much)
            if verb is not None and not _is_plain(sentence, verb):
                yield (verb, so_much)


def _is_plain(sentence: Sentence, at: int) -> bool:
    """Return whether a word is one of having or bringing, or only says how: "easily"."""
    return sentence.text_at(at) in _HAS or sentence.text_at(at).endswith("ly")


_AWAY = ("verb_save", "verb_leave_out", "verb_swap")


def _takes_away(sentence: Sentence, at: int) -> bool:
    """Return whether a word is one of taking away, and of nothing else: "the chicken loses most of the protein"."""
    parts = sentence.tokens[at].parts if 0 <= at < len(sentence) else {}
    if sentence.text_at(at + 1) in ("to", "between", "below", "under", "from"):  # "a bowl drops to 215 calories"
        return False
    return "verb_bring" not in parts and "verb_add" not in parts and any(kind in parts for kind in _AWAY)


def _before(sentence: Sentence, at: int) -> int | None:
    """Return the verb between what is spoken of and a number, where it is a word not known: "the oil wastes 90"."""
    first = sentence.clause_of(at)[0]
    place = at - 1
    while place > first and (
        sentence.text_at(place) in DETERMINERS
        or sentence.text_at(place) in PREPOSITIONS
        or sentence.text_at(place) in ("you", "us", "up", "out", "down", "off", "away", "around", "about")
    ):
        place -= 1
    odd = place in sentence.unknown or _takes_away(sentence, place)
    if not odd or any(is_verb(sentence, spot) for spot in range(first, place)):
        return None
    before = place - 1
    named = (
        is_dish(sentence, before)
        or sentence.tokens[before].food is not None
        or sentence.is_a(before, "pronoun")
        or sentence.is_a(before, "nutrient")
    )
    return place if before >= first and named else None
