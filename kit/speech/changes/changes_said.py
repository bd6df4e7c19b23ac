"""Changes of the dish that a sentence names: "leaving out the feta", "whole milk instead of skim", "half the salt"."""

from dataclasses import dataclass, replace

from kit.speech.about.parts import back, is_dish
from kit.speech.changes.changes_from_to import from_to
from kit.speech.changes.changes_left_out import effect_elsewhere, left_out, skip_to
from kit.speech.words.clauses import is_stop
from kit.speech.words.foods_said import FoodWord
from kit.speech.words.sentence import Sentence, food_at
from kit.speech.words.tokens import NO_QUANTITY, Quantity

LEAVE_OUT, SWAP, AMOUNT, RINSE, AS_TYPED, TRIED = "leave out", "swap", "amount", "rinse", "as typed", "tried"
UNRINSED = "unrinsed"
_IN_PLACE = frozenset(("in place of", "instead of", "rather than", "as a substitute for"))
_MADE_WITH = frozenset("with using use make made if would could try take cook".split())
_TOLD_OF = ("from", "by", "thanks to")  # "comes from the milk rather than the cod" changes nothing
_FACTORS = {
    "half": 0.5,
    "halve": 0.5,
    "halving": 0.5,
    "halved": 0.5,
    "halves": 0.5,
    "double": 2.0,
    "doubling": 2.0,
    "twice": 2.0,
}
_FOLLOWS = frozenset("is are has have get gets would will becomes turns ends comes".split())
_UNDONE = frozenset("skip skipping skipped without not never forget forgot instead no omit".split())
_RINSE = frozenset("rinse rinsing rinsed rinses draining drain drains drained".split())


@dataclass(frozen=True, slots=True)
class SaidChange:
    """A change that was said.

    Attributes
    ----------
    kind : str
        ``"leave out"``, ``"swap"``, ``"amount"``, ``"rinse"``, ``"unrinsed"``; ``"as typed"``: its words are read like
        a typed change; ``"tried"``: so are those of the question that is answered.
    foods : tuple of FoodWord
        What is left out, goes, or changes its amount.
    other : FoodWord or None
        What comes instead.
    factor : float
        The new amount as a part of the old one.
    places : tuple of int
        The tokens that said it; none of what a question tries.
    words : str
        The words of a change that is read as it would be typed.
    was : Quantity
        How much there is said to be now: "from three tablespoons to two".
    """

    kind: str
    foods: tuple[FoodWord, ...] = ()
    other: FoodWord | None = None
    factor: float = 1.0
    places: tuple[int, ...] = ()
    words: str = ""
    was: Quantity = NO_QUANTITY


def read_change(sentence: Sentence) -> SaidChange | None:
    """Return the change that a sentence names, or None."""
    return (
        _several(sentence)
        or _rinse(sentence)
        or _in_place(sentence)
        or _swap(sentence)
        or _amount_changed(sentence)
        or _part_of(sentence)
        or _left_out(sentence)
        or _as_typed(sentence)
    )


def _several(sentence: Sentence) -> SaidChange | None:
    """Return several changes that open a sentence and lead to a claim: "leave out the feta, use oat milk, and"."""
    first = 2 if sentence.text_at(0) == "if" and sentence.text_at(1) in ("you", "we") else 0
    if first >= len(sentence) or not _orders(sentence, first):
        return None
    ordered = [at for at in range(first, len(sentence)) if _orders(sentence, at)]
    if len(ordered) < 2:
        return None
    leads = [at for at in range(ordered[1], len(sentence) - 1) if _leads_on(sentence, at)]
    if not leads or any(at > leads[0] for at in ordered):
        return None
    stop = leads[0]
    while sentence.text_at(stop - 1) in (",", "and", "then"):
        stop -= 1
    words = sentence.text[sentence.tokens[first].start : sentence.tokens[stop - 1].end]
    return SaidChange(AS_TYPED, places=tuple(range(first, stop)), words=words)


def _orders(sentence: Sentence, at: int) -> bool:
    """Return whether an order to change the dish begins at a place."""
    led = at == 0 or sentence.text_at(at - 1) in (",", "and", "then", "you", "we")
    change = sentence.is_a(at, "verb_swap") or sentence.is_a(at, "verb_leave_out") or sentence.text_at(at) in _FACTORS
    return led and change and sentence.text_at(at) not in ("without", "with")


def _leads_on(sentence: Sentence, at: int) -> bool:
    """Return whether what follows from changes begins at a place: "and it's", ", then there are"."""
    before, following = sentence.text_at(at - 1), sentence.text_at(at + 1)
    subject = sentence.text_at(at) in ("it", "there", "you", "that", "they", "we")
    return subject and before in (",", "and", "then") and following in _FOLLOWS


_RATHER = frozenset("would rather prefer to like want choose decide had".split())


def _as_typed(sentence: Sentence) -> SaidChange | None:
    """Return a change that opens the sentence and brings what follows: "use tamari and it is"."""
    text = sentence.text_at(0)
    first = 2 if text == "if" and sentence.text_at(1) in ("you", "we") else 0
    while first and sentence.text_at(first) in _RATHER:
        first += 1
    over = skip_to(sentence, first + 1)
    counted = sentence.is_a(first, "verb_leave_out") and over < len(sentence) and bool(sentence.tokens[over].quantity)
    if not (counted or sentence.is_a(first, "verb_swap") or text in ("with", "buy", "pick", "take")):
        return None
    clauses = sentence.clauses
    end = next(
        (at for at in range(first, len(sentence)) if clauses[at] != clauses[0] or _then(sentence, at)), len(sentence)
    )
    if end == len(sentence) or not any(food_at(sentence, at) is not None for at in range(first, end)):
        return None
    rest = range(end, len(sentence))
    if not any(
        sentence.tokens[at].is_a("verb_save") or sentence.tokens[at].is_a("verb_add") for at in rest
    ) and not any(sentence.text_at(at) in ("would", "will") for at in rest):
        return None
    stop = end
    while stop > first and sentence.text_at(stop - 1) in (",", "and"):
        stop -= 1
    begin = first + (text == "with")
    words = sentence.text[sentence.tokens[begin].start : sentence.tokens[stop - 1].end]
    return SaidChange(AS_TYPED, places=tuple(range(first, stop)), words=f"use {words}" if text == "with" else words)


def _then(sentence: Sentence, at: int) -> bool:
    """Return whether what follows from a change begins here: "with half the salt you would be at"."""
    return sentence.text_at(at) in ("you", "we", "it", "they", "that") and sentence.text_at(at + 1) in ("would", "will")


def _rinse(sentence: Sentence) -> SaidChange | None:
    for at, token in enumerate(sentence.tokens):
        if token.text in _RINSE:
            over = skip_to(sentence, at + 1, frozenset(("and", "rinsing", "rinse", "off", "canned", "tinned")))
            food = food_at(sentence, over)
            if food is not None:
                before = [word for word in sentence.texts[max(0, at - 3) : at] if sentence.text_at(at - 1) != ":"]
                kept = not _UNDONE.isdisjoint(before)
                return SaidChange(UNRINSED if kept else RINSE, (food,), places=(at, over))
    return None


def _in_place(sentence: Sentence) -> SaidChange | None:
    for at, token in enumerate(sentence.tokens):
        if token.text not in _IN_PLACE or (token.text == "rather than" and not _is_change(sentence, at)):
            continue
        before = _food_before(sentence, at)
        after = skip_to(sentence, at + 1)
        old = food_at(sentence, after)
        quantity = sentence.tokens[after].quantity if after < len(sentence) else None
        if quantity is None and sentence.tokens[min(at + 1, len(sentence) - 1)].quantity is not None:
            quantity = sentence.tokens[at + 1].quantity
        if before is not None and quantity is not None:
            first = next(
                (
                    sentence.tokens[spot].quantity
                    for spot in range(before, -1, -1)
                    if sentence.tokens[spot].quantity is not None
                ),
                None,
            )
            word = food_at(sentence, before)
            if first is not None and word is not None and quantity.value > 0 and quantity.unit in ("", first.unit):
                spots = tuple(
                    spot
                    for spot in range(len(sentence))
                    if sentence.tokens[spot].quantity in (first, quantity) and spot <= after
                )
                was = replace(quantity, unit=first.unit)
                return SaidChange(AMOUNT, (word,), None, first.value / quantity.value, (*spots, before, at), was=was)
        if before is not None and old is not None and quantity is None:
            new = food_at(sentence, before)
            if new is not None:
                return SaidChange(SWAP, (old,), new, places=(before, at, after))
        if before is not None and old is None and after < len(sentence):
            # "Whole milk in place of skim": the rest of the name is the other's.
            new = food_at(sentence, before)
            if new is not None:
                joined = f"{sentence.text_at(after)} {new.text.split(' ')[-1]}"
                return SaidChange(SWAP, (FoodWord(joined),), new, places=(before, at, after))
    return None


def _is_change(sentence: Sentence, at: int) -> bool:
    """Return whether "rather than" changes the dish: not where "the beans rather than the pork bring most of it"."""
    if at + 1 < len(sentence) and sentence.tokens[at + 1].amount.value and sentence.tokens[0].amount.unit:
        return True  # "one tablespoon of oil rather than two cuts"
    return bool(sentence.words & _MADE_WITH) or any(sentence.is_a(place, "verb_swap") for place in range(at))


def _food_before(sentence: Sentence, at: int) -> int | None:
    for place in range(at - 1, max(-1, at - 4), -1):
        if food_at(sentence, place) is not None and not is_dish(sentence, place):
            return None if sentence.text_at(back(sentence, place)) in _TOLD_OF else place
    return None


_SWAPS = frozenset(
    "swap swapping swapped replace replacing replaced substitute substituting trade trading exchange exchanging "
    "switch switching using use".split()
)


_MORE = frozenset(("more", "extra", "additional", "another", "plain"))  # "swap the butter for more oil"


def _swap(sentence: Sentence) -> SaidChange | None:
    for at in sentence.places("verb_swap"):
        if sentence.text_at(at).removesuffix("s") not in _SWAPS:
            continue
        over = skip_to(sentence, at + 1, frozenset(("out", "in", "all", "all of")))
        old = food_at(sentence, over)
        link = over + 1
        if old is not None and sentence.text_at(link) in ("for", "with", "by", "to"):
            new_place = skip_to(sentence, link + 1, _MORE)
            new = food_at(sentence, new_place)
            if new is None and new_place < len(sentence) and not is_stop(sentence.tokens[new_place]):
                new = FoodWord(sentence.text_at(new_place))
            if sentence.text_at(at) in ("using", "use"):  # "using low-fat yogurt for the whole milk yogurt"
                if sentence.text_at(link) != "for" or new is None or not new.inside or old.inside:
                    continue
                return SaidChange(SWAP, (new,), old, places=(at, over, new_place))
            if new is not None:
                if sentence.text_at(at).startswith("substitut") and sentence.text_at(link) == "for":
                    old, new = new, old
                if new.inside and not old.inside:  # "swap almond butter for the peanut butter"
                    old, new = new, old
                return SaidChange(SWAP, (old,), new, places=(at, over, new_place))
    return None


def _amount_changed(sentence: Sentence) -> SaidChange | None:
    found = from_to(sentence)
    return SaidChange(AMOUNT, (found[0],), factor=found[1], places=found[2], was=found[3]) if found else None


def _part_of(sentence: Sentence) -> SaidChange | None:
    for at, token in enumerate(sentence.tokens):
        factor = _FACTORS.get(token.text)
        quantity = token.quantity
        if factor is None and quantity is not None and quantity.is_fraction and not quantity.unit:
            factor = quantity.value
        if quantity is not None and quantity.unit == "times" and token.text in _FACTORS:
            factor = _FACTORS[token.text]
        if factor is None:
            continue
        lead = (
            at == 0
            or sentence.is_a(at - 1, "verb_swap")
            or sentence.text_at(at - 1)
            in ("with", "if", "you", "just", "only", "by", "using", "use", "to", "in", "about")
            or sentence.text_at(at).startswith("halv")
        )
        over = skip_to(sentence, at + 1, frozenset(("of", "as", "much", "amount")))
        food = food_at(sentence, over)
        thing = food is not None and not is_dish(sentence, over)
        if (
            thing
            and sentence.tokens[over].is_a("nutrient")
            and sentence.tokens[over].parts["nutrient"] not in ("salt", "sugars")
        ):
            thing = False
        thing = thing and sentence.text_at(over + 1) not in ("more", "extra")  # "half a banana more"
        if lead and thing and food is not None and effect_elsewhere(sentence, at, over):
            return SaidChange(AMOUNT, (food,), None, factor, (at, over))
    for at, token in enumerate(sentence.tokens):
        if token.text in ("halved", "half") and at > 1 and sentence.text_at(at - 1) in ("in", "by", "is", "are"):
            food = food_at(sentence, at - 2)
            if (
                food is not None
                and (sentence.is_a(at - 3, "verb_save") or sentence.is_a(at - 4, "verb_save"))
                and (not sentence.tokens[at - 2].is_a("nutrient") or (bool(food.inside) and at <= 5))
            ):
                return SaidChange(AMOUNT, (food,), None, 0.5, (at, at - 2))
    return None


def _left_out(sentence: Sentence) -> SaidChange | None:
    found = left_out(sentence)
    return SaidChange(LEAVE_OUT, found[0], places=found[1]) if found else None
