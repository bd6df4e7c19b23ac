"""The words of keeping: where something is kept, and which foods a sentence names."""

import re
from collections.abc import Iterable
from itertools import pairwise

from kit.food.composition import foods
from kit.speech.about.parts import is_dish, is_food
from kit.speech.safety.keeping_judged import FREEZER, FRIDGE, OUT
from kit.speech.words.clauses import is_stop
from kit.speech.words.foods_said import FoodWord
from kit.speech.words.sentence import Sentence, food_at
from kit.speech.words.tokens import Quantity

KEEP = frozenset(
    "keep keeps last lasts stay stays hold holds good fine safe store stores stored storing fresh refrigerate "
    "leftover leftovers eat use finish safely chilled chill freeze freezes frozen freezer kept survive survives "
    "spoil spoils throw throws thrown toss tossed discard bin".split()
)


IN_FRIDGE = frozenset(
    "fridge fridges refrigerator refrigerators refrigeration refrigerate refrigerated refrigerating chilled chill "
    "chilling cold icebox".split()
)


IN_FREEZER = frozenset("freezer freezers freeze freezes frozen freezing".split())


OUTSIDE = frozenset(
    "stove stovetop hob sink windowsill porch garage out counter "
    "desk table room bench countertop car bag backpack unrefrigerated sideboard "
    "buffet picnic patio deck pantry cupboard larder cloth towel shelf bread-bin bin cloche worktop "
    "thermos".split()
)


PLACES = IN_FRIDGE | IN_FREEZER | OUTSIDE
_TABLES = tuple("breakfast kitchen dining coffee dinner serving picnic work side brunch lunch party cake".split())


def clause_words(sentence: Sentence, at: int) -> set[str]:
    """Return the words of the clause that a token stands in."""
    return {word for place in sentence.clause_of(at) for word in sentence.text_at(place).split()}


_EATEN = frozenset("eat eaten finish finished use used finishing eating using within after before".split())
_OR_ELSE = frozenset("or otherwise else".split())


def eats(sentence: Sentence, at: int) -> bool:
    """Return whether a word is of eating something up: "eat", "finish", "use"."""
    return sentence.text_at(at) in _EATEN


def near_place(sentence: Sentence, at: int, words: frozenset[str], but: str = "", also: str = "") -> str | None:
    """Return where it is kept: the place named nearest to the time; one or two may be left out of account."""
    if not (but or also) and (paired := _pairs(sentence).get(at)):
        return paired
    places = [place for place in _places(sentence, at, words) if place[-1] not in (but, also)]
    return min(places)[-1] if places else None


def place_told(sentence: Sentence, at: int) -> str | None:
    """Return the place that a time is said of beyond doubt: the one paired with it, or right behind it."""
    if paired := _pairs(sentence).get(at):
        return paired
    if sentence.text_at(at - 1) == "for" and (before := _kinds(sentence, at - 2)):
        return before[-1]  # "in the fridge for a month"
    if sentence.text_at(at + 1) not in AT_A_PLACE:
        return None
    behind = {kind for spot in range(at + 2, at + 5) if spot < len(sentence) for kind in _kinds(sentence, spot)}
    return behind.pop() if len(behind) == 1 else None


_TIMES = ("hour", "day", "week", "month", "year")


def _kinds(sentence: Sentence, at: int) -> list[str]:
    """Return the places that the words of a token name."""
    words = sentence.text_at(at).split()
    found = [
        FREEZER if word in IN_FREEZER else FRIDGE if word in IN_FRIDGE else OUT for word in words if word in PLACES
    ]
    return [OUT if kind == FRIDGE and _is_outside(sentence, at) else kind for kind in found]


def _pairs(sentence: Sentence) -> dict[int, str]:
    """Return the place of each time where several stand two by two: "fridge four days, freezer three months"."""
    times = {at for at, token in enumerate(sentence.tokens) if token.quantity and token.amount.unit in _TIMES}
    if len(times) < 2 or sentence.words.isdisjoint(PLACES):
        return {}
    row: list[tuple[int, str]] = []  # the times, each with "", and the places, in the order of the words
    for at in range(len(sentence)):
        if at in times:
            row.append((at, ""))
            continue
        for kind in () if _is_set_apart(sentence, at) else _kinds(sentence, at):
            row += [] if row and row[-1][1] == kind else [(at, kind)]
    two = list(zip(row[::2], row[1::2], strict=False))
    if len(row) % 2 or any((one[1] == "") == (other[1] == "") for one, other in two):
        return {}
    return {one[0] if not one[1] else other[0]: one[1] or other[1] for one, other in two}


def only_set_apart(sentence: Sentence, at: int, words: frozenset[str]) -> bool:
    """Return whether every place that is named is one where it is not kept: "thaw it, but never on the counter"."""
    places = _places(sentence, at, words)
    return bool(places) and min(places)[0]


def _has_its_own_time(sentence: Sentence, spot: int, at: int) -> bool:
    """Return whether freezing is told behind a time, in a statement that has a time of its own."""
    if spot < at or sentence.clauses[spot] == sentence.clauses[at]:
        return False
    return any(sentence.tokens[place].amount.unit in _TIMES for place in sentence.clause_of(spot))


def _places(sentence: Sentence, at: int, words: frozenset[str]) -> list[tuple[bool, bool, int, int, str]]:
    """Return the places that a sentence names: whether set apart, not behind, in another clause, how far, which."""
    places: list[tuple[bool, bool, int, int, str]] = []
    behind = range(at + 2, at + 5) if sentence.text_at(at + 1) in ("in", "on", "at", "under") else range(0)
    turns = next((spot for spot in range(at + 1, len(sentence)) if sentence.text_at(spot) in _OR_ELSE), len(sentence))
    for spot in range(len(sentence)):
        for word in sentence.text_at(spot).split():
            if word in IN_FREEZER and (spot > turns or _has_its_own_time(sentence, spot, at)):
                continue  # "eat within three days, or freeze", "it keeps four days, and it freezes for two months"
            if word == "frozen" and sentence.text_at(at).startswith(("thaw", "defrost")):
                continue  # "thaw frozen shrimp on the counter"
            uneaten = "not" in words and bool(words & {"what", "whatever", "anything", "if"})
            spans = ("day", "week", "month") if uneaten else ("day", "week")
            if word == "freeze" and words & _EATEN and sentence.tokens[at].amount.unit in spans:
                continue  # "freeze what you don't eat within five days": so long it is in the refrigerator
            kind = FREEZER if word in IN_FREEZER else FRIDGE if word in IN_FRIDGE else OUT if word in OUTSIDE else None
            if kind == FRIDGE and _is_outside(sentence, spot):
                kind = OUT
            if word == "box" and sentence.text_at(spot - 1) == "lunch":
                kind = OUT
            if word == "ice" and sentence.text_at(spot - 1) in ("no", "without"):
                kind = OUT  # "a lunch box without ice"
            if word == "tin" and sentence.text_at(spot - 1) in ("a", "the") and sentence.text_at(spot - 2) == "in":
                kind = OUT
            if (
                kind == OUT
                and word in ("table", "room", "bag", "car")
                and sentence.text_at(spot - 1)
                not in (*_TABLES, "the", "your", "a", "at", "lunch", "school", "gym", "warm", "hot")
                and sentence.text_at(spot + 1) != "temperature"
            ):
                continue
            if kind == OUT and word == "out" and sentence.text_at(spot + 1) == "of":
                continue
            if sentence.text_at(spot) == "out of" and sentence.text_at(spot + 1) in ("it", "this", "that", "them"):
                continue  # "you get three days out of it"
            if kind is not None:
                same = sentence.clauses[spot] == sentence.clauses[at]
                stops = any(is_stop(sentence.tokens[one]) for one in range(min(spot, at), max(spot, at)))
                far = 0 if same else 2 if stops else 1
                places.append((_is_set_apart(sentence, spot), spot not in behind, far, abs(spot - at), kind))
    return places


_RISES = frozenset("rise rises rising proof prove ferment ferments".split())
_COOKING = frozenset("need needs simmer simmers simmering cook cooks cooking takes take bubble bubbles braise".split())
_TAKEN_OUT = frozenset("take bring remove get butter".split())


def is_of_cooking(sentence: Sentence, at: int, said: Quantity, near: set[str]) -> bool:
    """Return whether hours are those of dough that rises, of a pot on the stove, or of butter taken out ahead."""
    ahead = sentence.text_at(at + 1) in ("ahead", "before", "early", "earlier") and bool(near & _TAKEN_OUT)
    on_the_stove = bool(near & {"stove", "stovetop", "hob"} and near & _COOKING)
    return bool(near & _RISES) or on_the_stove or (ahead and said.high <= 2)


def is_often(sentence: Sentence, at: int, said: Quantity) -> bool:
    """Return whether a time says how often: "fish twice a week"."""
    before = sentence.text_at(at - 1)
    return said.value == 1 and (before in ("twice", "once", "times") or before.endswith(" times"))


def in_or_out(sentence: Sentence, at: int) -> bool:
    """Return whether a time is said of the refrigerator and of outside alike: "whether in the fridge or out"."""
    kinds = {word for spot in sentence.clause_of(at) for word in sentence.text_at(spot).split()}
    behind = {sentence.text_at(spot + 1) for spot in range(len(sentence)) if sentence.text_at(spot) == "or"}
    both = bool(kinds & IN_FRIDGE or sentence.words & IN_FRIDGE) and bool(sentence.words & OUTSIDE)
    return both and bool(sentence.words & {"whether", "either"} or behind & {"out", "outside", "not"})


AT_A_PLACE = ("in", "on", "at", "into", "out")
_TO_A_PLACE = frozenset((*AT_A_PLACE, *"the a your onto it of to under".split()))


def _is_set_apart(sentence: Sentence, at: int) -> bool:
    """Return whether a place is one where it is not kept: "in the fridge, not on the counter", "rather than chill"."""
    before = at - 1
    while sentence.text_at(before) in _TO_A_PLACE:
        before -= 1
    return sentence.text_at(before) in ("rather than", "instead of") or (
        sentence.text_at(before) in ("not", "never") and sentence.text_at(before + 1) in AT_A_PLACE
    )


def _is_outside(sentence: Sentence, at: int) -> bool:
    """Return whether a place is one it is kept out of: "outside the fridge", "without refrigeration"."""
    before = at - 1
    while sentence.text_at(before) in ("the", "a", "your", "any"):
        before -= 1
    out_of = sentence.text_at(before) == "of" and sentence.text_at(before - 1) in ("out", "outside")
    return out_of or sentence.text_at(before) in ("outside", "without", "out of", "outside of", "no")


OF_ANIMALS = ("meat", "poultry", "fish", "shellfish", "egg")


def is_of_an_animal(key: str) -> bool:
    """Return whether a food is meat, fish or egg."""
    return key in foods() and foods()[key].group in OF_ANIMALS


def of_an_animal(word: FoodWord) -> bool:
    """Return whether a word may name meat, fish or egg."""
    return any(map(is_of_an_animal, (*word.inside, *word.outside)))


def foods_named(sentence: Sentence, places: Iterable[int] | None = None) -> tuple[FoodWord, ...]:
    """Return the foods that a sentence, or some places of it, name."""
    found = []
    for place in range(len(sentence)) if places is None else places:
        food = food_at(sentence, place)
        if (
            food is not None
            and is_food(sentence, place)
            and not is_dish(sentence, place)
            and not sentence.tokens[place].is_a("nutrient")
        ):
            found.append(food)
    return tuple(found)


_HAVE = ("have", "serve", "enjoy", "finish")
_COOK = ("cook", "cooked")
_UP = ("used", "eaten", "finished")


def had_within(sentence: Sentence, at: int) -> frozenset[str]:
    """Return the word of eating or cooking it within a time: "have it within four days", "cook it inside two days"."""
    led = sentence.text_at(at - 1) in ("within", "inside") or sentence.text_at(at).startswith("within ")
    if not led or sentence.tokens[at].amount.unit not in ("day", "week"):
        return frozenset()
    said = [sentence.text_at(place) for place in range(max(0, at - 4), at)]
    eaten = [word for word, other in pairwise(said) if word in _HAVE and other in ("it", "them", "this", "these")]
    cooked = [word for word in said if word in _COOK and any(map(of_an_animal, foods_named(sentence, range(at))))]
    return frozenset((*eaten, *cooked, *(word for word in said if word in _UP)))


def is_still_raw(sentence: Sentence, at: int) -> bool:
    """Return whether meat, fish or eggs are to be cooked within a time, until which they are raw."""
    cooked_later = _BEFORE_IT_IS_COOKED.search(sentence.plain)
    return cooked_later is not None or not had_within(sentence, at).isdisjoint(_COOK)


_BEFORE_IT_IS_COOKED = re.compile(
    r"\b(?:before|until) (?:you |we |it is |they are |it gets )?(?:cook|cooked|cooking)\b"
)


def foods_of_heat(sentence: Sentence, at: int) -> tuple[FoodWord, ...]:
    """Return the foods that a temperature is said of: of several temperatures, those before it and behind the last."""
    hot = [spot for spot, said in sentence.quantities() if 100 <= said.value <= 220]
    first = max((spot + 1 for spot in hot if spot < at), default=0)
    own = foods_named(sentence, range(first, at)) if len(hot) > 1 else ()
    return own or foods_named(sentence)
