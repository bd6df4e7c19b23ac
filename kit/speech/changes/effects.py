"""The effect of a change: "leaving out the feta saves about 170 milligrams of sodium", "cuts the fat by half"."""

import re
from dataclasses import replace

from kit.speech.about.basis import basis_near
from kit.speech.about.parts import is_serving, is_verb
from kit.speech.about.slots import SHARES, Named, nutrient_before, nutrients_after, share_at
from kit.speech.about.unread import asked
from kit.speech.changes.changes_said import TRIED, SaidChange
from kit.speech.changes.effects_judged import _UNITS, EffectClaim
from kit.speech.changes.effects_said import ends_at, is_gone, passes, remains, to_nothing
from kit.speech.claim import WHOLE, About, Claim
from kit.speech.words.sentence import Sentence
from kit.speech.words.tokens import SHARE, Quantity

FAMILY = "effect of a change"
_TO = ("to", "down to", "up to")
_WHEN = ("by", "if", "when")
_LISTED = ("and", ",", "of", "the", "a")
_KEPT = ("left", "remain", "remains", "remaining")
_SAME = frozenset("hardly barely scarcely little".split())


def read(sentence: Sentence, about: list[About], said: SaidChange | None) -> list[Claim]:
    """Return the effects that a sentence claims of the change it names."""
    if said is None or any(text in _KEPT for text in sentence.texts[max(said.places, default=-1) + 1 :]):
        return []  # "take away the milk and 60 percent of the calcium is left": what there is, not what goes
    claims: list[Claim] = []
    near = _clauses_of(sentence, said)
    verb = [at for at in range(len(sentence)) if sentence.clauses[at] in near and _tells_change(sentence, said, at)]
    taken = set(said.places)
    if not verb:
        verb = [at for at in said.places if sentence.is_a(at, "verb_save")]
        if not verb and not _unchanged(sentence):
            return _then_has(sentence, said, near)
    if _unchanged(sentence):
        for named in [
            Named(sentence.tokens[at].parts["nutrient"], at)
            for at in sentence.places("nutrient")
            if at not in taken and sentence.clauses[at] in near
        ]:
            claims.append(_claim(sentence, said, named, Quantity(0, 0, relation="hardly"), 0, named.place))
    else:
        for at, quantity in list(sentence.quantities()):
            if at not in taken:
                claims += _amount(sentence, said, at, _with_unit(sentence, at, quantity), verb)
        claims += _shares(sentence, said, verb, taken)
        claims += _direction(sentence, said, verb, taken, claims)
    if claims:
        sentence.used.update(said.places)
        sentence.used.update(verb)
        claims += _share_of_it(sentence, max(max(claim.places) for claim in claims))
    return claims


def _share_of_it(sentence: Sentence, last: int) -> list[Claim]:
    """Return what is told of an effect behind it: "you save 45 calories, nearly all of it fat"; it is asked about."""
    for at in range(last + 1, len(sentence) - 2):
        goes_back = sentence.text_at(at + 1) == "of" and sentence.text_at(at + 2) in ("it", "that", "them", "those")
        if goes_back and at not in sentence.used and share_at(sentence, at) is not None:
            named = [place for place in sentence.places("nutrient", at) if place not in sentence.used]
            sentence.used.update((at, *named))
            return [asked(sentence, (at, at + 2))]
    return []


def _then_has(sentence: Sentence, said: SaidChange, near: set[int]) -> list[Claim]:
    """Return how many times as much there is then: "with cream in place of milk, a bowl has twice the fat"."""
    claims: list[Claim] = []
    for at, token in enumerate(sentence.tokens):
        times = token.amount.unit == "times" or (token.amount.is_fraction and token.amount.value == 0.5)
        has = any(sentence.text_at(place) in _THEN_HAS for place in range(max(0, at - 2), at))
        has = has or sentence.texts[max(0, at - 2) : at] == ("there", "is")
        if at in said.places or sentence.clauses[at] not in near or not (times and has) or token.amount.value == 1:
            continue
        named = nutrients_after(sentence, at + 1, frozenset("of the its as much many".split()))
        after = named[-1].place + 1 if named else at
        served = sentence.text_at(after) == "in" and is_serving(sentence, after + 2)
        if not named or (sentence.text_at(after) in ("as", "of", "than", "in", "from") and not served):
            continue
        more = token.amount.value - 1
        share = Quantity(abs(more), abs(more), SHARE, token.amount.relation, True)
        made = [_claim(sentence, said, one, share, 1 if more > 0 else -1, at) for one in named]
        claims += [replace(claim, end=0) for claim in made]
    if claims:
        sentence.used.update(said.places)
    return claims


_PASSIVE = ("halved", "doubled")
_THEN_HAS = frozenset("has have holds hold get gets would will".split())


def _tells_change(sentence: Sentence, said: SaidChange, at: int) -> bool:
    """Return whether a word says that something becomes more or less: "saves", "goes up", "less"; not "less than"."""
    if at in said.places:
        return False
    if not (sentence.is_a(at, "verb_save") or sentence.is_a(at, "verb_add")):
        return sentence.text_at(at) in _PASSIVE and sentence.text_at(at - 1) in ("is", "are", "gets")
    if said.kind == TRIED and sentence.text_at(at) == "brings":  # "brings the protein to 14 grams" is what there is
        return False
    return not any(sentence.text_at(spot) == "than" for spot in range(at, min(at + 6, len(sentence))))


def _clauses_of(sentence: Sentence, said: SaidChange) -> set[int]:
    """Return the clauses in which the effect of a change may stand: its own, the next, and one before "by ...ing".

    What a question tries is not named in the answer, so that all of it may be about that.
    """
    if said.kind == TRIED:
        return set(sentence.clauses)
    own = {sentence.clauses[place] for place in said.places}
    first = min(said.places)
    to_save = sentence.text_at(0) == "to" and (sentence.is_a(1, "verb_save") or sentence.is_a(1, "verb_add"))
    led = sentence.text_at(first - 1) in (*_WHEN, "you") or sentence.text_at(first - 2) in _WHEN
    return own | {max(own) + 1} | ({min(own) - 1} if led or to_save else set())


def _unchanged(sentence: Sentence) -> bool:
    return _SAME_AS_BEFORE.search(sentence.plain) is not None


_SAME_AS_BEFORE = re.compile(
    r"\b(?:(?:hardly|barely|scarcely) (?:change|move|affect|budge)|no change|little difference|no difference"
    r"|(?:hardly|barely) any difference|(?:about|much) the same|does not change|stays the same|next to no difference"
    r"|(?:about|much) where it (?:is|was)|(?:pretty much|about) unchanged)"
)


def _sign(sentence: Sentence, at: int, verb: list[int]) -> int:
    # "Saves 90 milligrams", "brings the sodium down by", "and adds two grams": the nearest verb before, else behind.
    before = [place for place in verb if place < at]
    near = max(before) if before else min(verb, default=-1)
    if near < 0:
        return -1
    after = [
        place
        for place in verb
        if at < place <= at + 3 and sentence.text_at(place) in ("less", "fewer", "more", "extra", "down", "up")
    ]
    if after:
        near = after[0]
    save = sentence.is_a(near, "verb_save") or sentence.text_at(near) == "halved"
    add = sentence.is_a(near, "verb_add")
    if save and add:
        return -1
    if any(sentence.text_at(place) in ("down", "less", "fewer") for place in verb):
        return -1
    return -1 if save else 1


def _claim(sentence: Sentence, said: SaidChange, named: Named, quantity: Quantity, sign: int, at: int) -> EffectClaim:
    token = sentence.tokens[at]
    sentence.used.update({at, named.place})
    places = tuple(sorted({*said.places, at, named.place}))
    subject = About(WHOLE) if _for_a_whole(sentence, at) else basis_near(sentence, at) or About()
    halved = sentence.text_at(at - 1) == "in"  # "cuts the fat in half": by half
    start = sentence.tokens[at - 1].start if halved else token.start
    end = 0 if token.text.startswith(("doubl", "tripl", "quadrupl")) else token.end  # a verb is no place for a number
    return EffectClaim(places, subject, False, said, named.nutrient, quantity, sign, start, end, halved)


def _for_a_whole(sentence: Sentence, at: int) -> bool:
    """Return whether an effect is told for the whole recipe: "saves nine calories a batch"."""
    last = min(at + 6, sentence.clause_of(at)[-1])
    return any(
        sentence.text_at(spot) in ("a", "per", "every", "each") and sentence.is_a(spot + 1, "dish", "whole")
        for spot in range(at + 1, last)
    )


def _with_unit(sentence: Sentence, at: int, quantity: Quantity) -> Quantity:
    """Return "two more grams" with its unit, which stands behind what says that it becomes more or less."""
    behind = at + 2
    if quantity.unit or behind >= len(sentence) or sentence.text_at(at + 1) not in ("more", "less", "fewer", "extra"):
        return quantity
    return replace(quantity, unit=sentence.tokens[behind].parts.get("unit", ""))


def _amount(sentence: Sentence, said: SaidChange, at: int, quantity: Quantity, verb: list[int]) -> list[Claim]:
    unit = quantity.unit
    if unit not in _UNITS or not _governed(sentence, said, at, verb):
        return []
    behind = at + 1 if sentence.tokens[at].amount.unit else at + 3  # "two more grams of protein"
    after = nutrients_after(sentence, behind, frozenset("of the less fewer more extra worth a".split()))
    if after and unit not in ("kcal", "kJ"):
        named = after[0]
    elif unit in ("kcal", "kJ"):
        named = Named("energy", at)
    else:
        before = nutrient_before(sentence, at, whole=sentence.text_at(at + 1) == "of")
        # "Half the sugar and you save three grams": of what is changed.
        changed = [place for place in said.places if sentence.is_a(place, "nutrient")]
        if before is None and not changed:
            return []
        named = before or Named(sentence.tokens[changed[0]].parts["nutrient"], changed[0])
        if before is None and named.nutrient == "salt" and unit == "mg":
            named = replace(named, nutrient="sodium")  # salt is said in grams, milligrams are of its sodium
    return [_claim(sentence, said, named, quantity, _sign(sentence, at, verb), at)]


def _governed(sentence: Sentence, said: SaidChange, at: int, verb: list[int]) -> bool:
    """Return whether a number is what the change does, and not what there is: "loses 90 mg", not "has 300 mg"."""
    clause = sentence.clause_of(at)
    if sentence.text_at(at - 1) in _TO or passes(sentence, at):  # "drops to 215 calories" is what there is then
        return False
    if sentence.text_at(at - 1) == "from" and sentence.text_at(at + 1) in _TO:
        return False  # "from 530 calories to 317"
    if not any(place in clause for place in (*verb, *said.places)):
        return False
    change = min(said.places, default=0)
    if at < min((*verb, change)) and "and" in sentence.texts[at:change]:
        return False  # "a spoonful puts 100 milligrams in, and two instead of three would bring it down to 430"
    nearest = next((place for place in range(at - 1, clause[0] - 1, -1) if is_verb(sentence, place)), None)
    if nearest is None or nearest in verb or nearest in said.places:
        return True
    end = at + 1
    while sentence.text_at(end) in _LISTED or sentence.is_a(end, "nutrient") or sentence.is_a(end, "quantity"):
        end += 1  # "has about 48 calories and almost five grams of fat less"
    return any(place in verb for place in range(at + 1, min(max(at + 4, end + 1), len(sentence)))) or sentence.text_at(
        nearest
    ) in (
        "will",
        "would",
        "can",
        "is",
        "means",
        "makes",
        "goes",
        "go",
        "comes",
    )


def _shares(sentence: Sentence, said: SaidChange, verb: list[int], taken: set[int]) -> list[Claim]:
    claims: list[Claim] = []
    for at in range(len(sentence)):
        if at in taken or at in sentence.used:
            continue
        share = share_at(sentence, at)
        word = sentence.text_at(at)
        if share is None and word in ("halves", "halve", "halving", "halved"):
            share = Quantity(0.5, 0.5, SHARE, is_fraction=True)
        doubles = word in ("doubles", "double", "doubling") and sentence.is_a(at, "verb_add")
        if share is None and (doubles or word == "doubled"):
            share = Quantity(1.0, 1.0, SHARE, is_fraction=True)
        if share is None or not _governed(sentence, said, at, verb) or remains(sentence, at):
            continue
        fillers = "of the its their that your can cans less fewer more extra".split()  # "a quarter less sugar"
        named = nutrients_after(sentence, at + 1, frozenset(fillers))
        named = [one for one in named if one.place not in taken and not sentence.is_a(one.place + 1, "verb_bring")]
        if not named:
            before = nutrient_before(sentence, at, whole=True)
            named = [before] if before is not None and before.place not in taken else []
        for one in named:
            sign = 1 if word.startswith("doubl") else _sign(sentence, at, verb) if verb else -1
            claims.append(_claim(sentence, said, one, share, sign, at))
    return claims


_TURNS = {"up": 1, "higher": 1, "down": -1, "lower": -1}


def _direction(
    sentence: Sentence, said: SaidChange, verb: list[int], taken: set[int], found: list[Claim]
) -> list[Claim]:
    """Return effects without a number: "cuts the sodium", "adds fiber"."""
    claims: list[Claim] = []
    for at in verb:
        named = nutrients_after(sentence, at + 1, frozenset("the your its some in of on a bit lot".split()))
        named = [one for one in named if one.place not in sentence.used and one.place not in taken]
        if (
            not named
            and sentence.text_at(at - 1)
            and sentence.is_a(at - 1, "nutrient")
            and at - 1 not in sentence.used
            and at - 1 not in taken
        ):
            named = [Named(sentence.tokens[at - 1].parts["nutrient"], at - 1)]
        if ends_at(sentence, max(at, *(one.place for one in named)) if named else at):
            continue
        for one in named:
            sign = -1 if sentence.is_a(at, "verb_save") and sentence.text_at(at) not in ("more",) else 1
            sign = _TURNS.get(sentence.text_at(one.place + 1), sign)  # "brings the fat up"
            all_gone = to_nothing(sentence, max(at, one.place) + 1) if sign < 0 else None
            if sign < 0 and is_gone(sentence, at, one.place):
                all_gone = SHARES["all"]
            quantity = all_gone or Quantity(0, 0, relation="any")
            claims.append(_claim(sentence, said, one, quantity, sign, one.place))
    return claims
