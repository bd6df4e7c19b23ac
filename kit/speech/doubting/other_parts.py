"""Parts of the dish that are named beside an amount of a serving, and that no claim has taken up: "the whole pan"."""

from collections.abc import Iterator, Sequence
from dataclasses import replace

from kit.speech.about.basis import HANDS, of_dish
from kit.speech.about.parts import MEASURES, PLAIN, dish_part
from kit.speech.about.unread import asked
from kit.speech.claim import FOOD, SERVING, UNKNOWN, WEIGHT, WHOLE, About, Claim
from kit.speech.doubting.counted import AMOUNTS
from kit.speech.figures.counts import ServingsClaim
from kit.speech.figures.weights_said import WeightClaim
from kit.speech.words.sentence import Sentence

_TAKE = frozenset("dish eat have take ladle pour drink spoon scoop serve".split())
_IT_IS = (("it", "is"), ("this", "is"), ("that", "is"))
_ONE = frozenset("a an one each every per single".split())


def other_parts(sentence: Sentence, claims: Sequence[Claim]) -> list[Claim]:
    """Return the claims with the parts of the dish asked about that nothing is about: "500 milligrams the whole pan".

    What is said to be taken is what the amounts behind it are of: "dish up two plates and it's 860 calories".

    Parameters
    ----------
    sentence : Sentence
        The sentence, when every family has read it.
    claims : sequence of Claim
        What they have read.
    """
    counted = [claim for claim in claims if isinstance(claim, AMOUNTS)]
    of_one = [claim for claim in counted if claim.about.kind == SERVING and claim.about.count == 1]
    of_one += [claim for claim in counted if claim.about.kind == FOOD and not claim.about.measure]
    if not of_one:
        return list(claims)
    shared_out = any(isinstance(claim, (ServingsClaim, WeightClaim)) for claim in claims)
    taken = {(claim.about.kind, claim.about.count) for claim in claims}
    kinds = {kind for kind, _ in taken}
    for at, part in _parts(sentence):
        if at in sentence.used or (part.kind, part.count) in taken:
            continue
        if shared_out and part.kind in (SERVING, WHOLE):
            continue  # "the pot makes six bowls, each has"
        numbers = {sentence.tokens[place].amount.value for claim in counted for place in claim.places}
        if part.kind == SERVING and part.count in numbers:
            continue  # "between 150 and 250 a bowl"
        if (
            part.kind in (SERVING, WHOLE)
            and of_one[0].about.kind == SERVING
            and sentence.text_at(0) in _TAKE
            and at < min(of_one[0].places)
        ):
            return [replace(claim, about=part) if claim in of_one else claim for claim in claims]
        if part.kind == SERVING or part.kind not in kinds:
            return [*claims, asked(sentence, (at,))]
    return list(claims)


def _parts(sentence: Sentence) -> Iterator[tuple[int, About]]:
    """Yield the parts that are named, but for a serving and for the pot as such."""
    for at, token in enumerate(sentence.tokens):
        if token.text in HANDS and sentence.text_at(at - 1) in _ONE:
            told = sentence.texts[max(0, at - 3) : at - 1] in _IT_IS  # "it's a bite of chicken and rice with"
            if told or sentence.text_at(at + 1) != "of" or of_dish(sentence, at + 2) or at + 2 in sentence.dishes:
                yield at, About(UNKNOWN, words=token.text)
        elif token.amount.unit in MEASURES and sentence.text_at(at + 1) == "of" and of_dish(sentence, at + 2):
            yield at, About(WEIGHT if token.amount.unit in ("g", "oz", "lb", "kg") else UNKNOWN, words=token.text)
        elif at in sentence.dishes and token.text != "meal":  # "I'd call it a full meal"
            part = dish_part(sentence, at)
            if (part.kind == WHOLE and part.words != PLAIN and not part.or_dish) or (
                part.kind == SERVING and part.count != 1
            ):
                yield at, part
