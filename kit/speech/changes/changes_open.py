"""Changes of the dish that a sentence names in words that are not read: what follows from them is asked about."""

import re
from collections.abc import Sequence

from kit.speech.about.unread import asked
from kit.speech.changes.changes_excepted import is_resized
from kit.speech.claim import Claim
from kit.speech.words.sentence import Sentence, food_at

_OPEN_CHANGES = frozenset("instead".split())
_AMOUNT_ORDERS = ("double", "triple", "halve", "quadruple", "increase", "reduce", "lower")
_DOING = ("using", "making", "choosing", "switching", "going", "buying", "having", "taking")
_THEN = ("it", "you", "we", "that", "there", "they", "a", "each", "every", "one")
_ONE = ("a", "each", "every", "one")
_IF = frozenset("if unless provided providing once".split())


# "If you left the salt out": what follows is of another dish.
_SUPPOSED = re.compile(r"\b(?:if|when|once) (?:you|we|i) left (?:\w+ ){1,4}(?:out|off)\b")


def is_open_change(said: Sentence) -> bool:
    """Return whether a sentence names a change that no reader of changes has understood.

    Parameters
    ----------
    said : Sentence
        The sentence.
    """
    if _SUPPOSED.search(said.plain):
        return True
    texts = set(said.texts)
    return bool(
        texts & _OPEN_CHANGES
        or is_resized(said)
        or _swaps_first(said)
        or _with_other_kind(said)
        or _is_eaten_with(said)
        or (texts & _IF and said.places("verb_swap"))
        or (
            texts & _IF and texts & {"used", "took", "had"} and "for" in texts
        )  # "vegan if you used sugar for the honey"
    )


def _swaps_first(said: Sentence) -> bool:
    """Return whether an order to take something else leads to what is claimed: "use tamari and it's gluten-free"."""
    if said.text_at(0) in _DOING and (said.places("verb_add", 1) or said.places("verb_save", 1)):
        return True  # "using whole wheat flour for all of it adds a gram of fiber"
    ordered = said.text_at(0) in ("use", "try", "swap", "switch", "swap in", "sub", "substitute")
    then = _THEN if _sets_amount(said) else ("it", "they") if ordered else ()
    return bool(then) and any(
        said.text_at(at) in ("and", ",") and said.text_at(at + 1) in then for at in range(len(said))
    )


def _with_other_kind(said: Sentence) -> bool:
    """Return whether what follows is said of the dish with another kind of a food: "with gluten-free noodles it's"."""
    if said.text_at(0) not in ("with", "use", "using", "if", "take", "buy", "try"):
        return False
    first = said.clause_of(0)
    then = [at for at in range(len(said)) if at and said.text_at(at) in _THEN and said.text_at(at - 1) != "if"]
    then = [at for at in then if at > 2 or said.text_at(at) not in _ONE]  # "use a gluten-free flour and"
    end = min([first[-1] + 1, *then])
    kinds = [
        at
        for at in range(1, end)
        if said.is_a(at, "kind") or said.is_a(at, "wording", "free") or said.text_at(at) in _OTHER_KINDS
    ]
    things = [place for at in kinds for place in (at + 1, at + 2)]
    named = any(food_at(said, place) is not None or said.text_at(place) in _OF_A_KIND for place in things)
    return named and end < len(said)


_OF_A_KIND = frozenset("loaf one ones kind brand version bread mix dough crust roll rolls".split())


_OTHER_KINDS = frozenset(
    "regular ordinary normal standard full-fat real proper different another other store-bought shop-bought".split()
)
_SERVED = frozenset(
    "thin dilute stretch bulk top serve eat spoon ladle pour pair stir mix loosen enrich have finish".split()
)
_PUT = frozenset(
    "throw put add finish crumble drop toss fold sprinkle drizzle scatter pop slip melt crack grate".split()
)
_SERVED_SO = frozenset("served ladled spooned poured eaten paired topped finished".split())
_OVER = frozenset("with over on alongside".split())
_WITH = frozenset("with over on alongside into by to in".split())


def _is_eaten_with(said: Sentence) -> bool:
    """Return whether something is put to the dish before a claim: "thin it with water and a bowl has", "over rice"."""
    first = said.text_at(0)
    if first not in _SERVED_SO | _SERVED | _PUT:
        return False
    clause = {word for at in said.clause_of(0) for word in said.text_at(at).split()}
    if first in _SERVED_SO:  # "served over rice it's"
        return not clause.isdisjoint(_OVER) and any(word in _THEN for word in said.texts[3:])
    then = any(said.text_at(at) in ("and", ",") and said.text_at(at + 1) in _THEN for at in range(len(said)))
    if first in _SERVED:
        return then and not _WITH.isdisjoint(clause)
    return then and first in _PUT and any(_is_new(said, at) for at in said.clause_of(0))


def _is_new(said: Sentence, at: int) -> bool:
    """Return whether a food is named that the recipe lacks, or some more of one: "throw in some shrimp"."""
    word = food_at(said, at)
    return word is not None and (not word.inside or said.text_at(at - 1) in ("some", "a", "an", "another", "more"))


def _sets_amount(said: Sentence) -> bool:
    """Return whether an order to take more or less of a food opens the sentence: "double the salt and you're at"."""
    led = said.text_at(0) in _AMOUNT_ORDERS or said.tokens[0].amount.unit == "times" if len(said) else False
    return led and any(food_at(said, at) is not None for at in said.clause_of(0))


def of_the_changed(sentence: Sentence, places: Sequence[int], claims: Sequence[Claim]) -> list[Claim]:
    """Return what a change does to fat or sugar in words not read: "without the cheese you lose no fat"."""
    told = {sentence.clauses[at] for claim in claims for at in claim.places}
    near = {sentence.clauses[at] for at in places}
    near |= {max(near, default=0) + 1}
    if any(sentence.texts[at : at + 2] == ("of", "water") for at in range(len(sentence))):
        return []  # "rinse the rice in three changes of water"
    found = [
        at
        for at in sentence.places("nutrient")
        if at not in sentence.used and at not in places and (not told or sentence.clauses[at] in near - told)
    ]
    if not claims and not found:  # "swap the almonds for peanuts and the tree nuts stay in"
        last = max(places, default=-1)
        left = [at for at in sentence.places("allergen", last + 2) if at not in sentence.used]
        return [
            asked(sentence, (at,)) for at in left[:1] if any(spot in sentence.verbs for spot in range(last, at + 3))
        ]
    tells = not sentence.words.isdisjoint(_CHANGES) or any(
        sentence.is_a(at, "verb_save") or sentence.is_a(at, "verb_add")
        for at in range(len(sentence))
        if at not in places
    )
    return [asked(sentence, (*places, at)) for at in found[:1] if tells]


_CHANGES = frozenset(
    "change changes keep keeps leaves lose loses gain down nothing none gone same alone stay stays".split()
)
