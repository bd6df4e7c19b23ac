"""How much of an ingredient the recipe is said to take: "the pan has eight eggs", "it uses a tablespoon of oil"."""

import re
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from itertools import pairwise

from kit.food.composition import Food
from kit.rules.naming import short_name
from kit.rules.verdicts import CANNOT_TELL, HOLDS, OFF
from kit.speech.about.parts import TOOLS, is_dish, is_serving
from kit.speech.about.slots import negated
from kit.speech.about.unread import asked
from kit.speech.claim import FOOD, THE_DISH, WHOLE, About, Claim, Finding
from kit.speech.figures.counts_of_parts import times_made
from kit.speech.figures.foods_taken import of_a_part, per_servings, taken
from kit.speech.values import food_grams, pinned
from kit.speech.words.foods_said import FoodWord
from kit.speech.words.quantities_said import WEIGHTS
from kit.speech.words.sentence import Sentence, food_at
from kit.speech.words.tokens import NO_QUANTITY, Quantity
from kit.talk.dish import Dish
from kit.texts import number

FAMILY = "servings and weights"
_UNITS = ("", "cup", "tbsp", "tsp", "oz", "lb", "g", "kg")
CONTAINED = {  # what an ingredient is counted in, and its name in the recipe
    **dict.fromkeys(("can", "cans", "tin", "tins"), "can"),
    **{word: word.rstrip("s") for word in "slice slices clove cloves stalk stalks head heads ear ears".split()},
}
_BETWEEN = CONTAINED.keys() | frozenset(
    "a an of the our my large medium small big whole entire single ripe raw fresh cooked boiled dry canned plain more "
    "heaped level good full more extra".split()
)
_TAKES = frozenset("has have had uses use takes take needs need holds hold contains contain are is get gets".split())
_HOLDS = frozenset("has have holds hold contains contain are is get".split())
_SPOONED = ("cup", "tbsp", "tsp")
_EACH = frozenset("each apiece per every person".split())
_IN_ALL = ("in all", "altogether", "in total")
_YOURS = (("you", "get"), ("you", "have"), ("gives", "you"), ("give", "you"))
_COMES_TO = re.compile(
    r"(?:in (?:it|here|this|there) )?(?:comes?|adds?(?: up)?|amounts?|works? out|boils? down|is|are|runs?)"
    r"(?: out)?(?: just| only| about| all of)?(?: to| at)?(?: just| only| about)?"
)
_NEAR, _FAR = 1.3, 1.6  # times as much: an egg or a clove is not all of one size (common practice)
_SAME_NEAR, _SAME_FAR, _ONE_MORE = 1.1, 1.15, 0.5  # where the recipe measures it so itself
_ABBREVIATED = {"pound": "lb", "ounce": "oz", "tablespoon": "tbsp", "teaspoon": "tsp", "cup": "cup", "gram": "g"}
_SIZES = ("small", "medium", "large", "extra large", "extra-large", "jumbo", "whole", "piece", "clove", "")
_NEAR_WEIGHED, _FAR_WEIGHED = 1.15, 1.3  # what is weighed is known better
_NO_FOOD = FoodWord("")


@dataclass(frozen=True, slots=True)
class FoodCountClaim(Claim):
    """The recipe, or a serving, takes so much of a food; `stated`: that is what the words say, and not in passing.

    `counted_in` is the can, slice or clove that is counted.
    """

    said: Quantity = NO_QUANTITY
    food: FoodWord = _NO_FOOD
    stated: bool = False
    counted_in: str = ""


def read(sentence: Sentence, claims: Sequence[Claim]) -> list[Claim]:
    """Return how much of its ingredients a sentence says that the recipe takes, where it claims something else too.

    Parameters
    ----------
    sentence : Sentence
        The sentence, when every other family has read it.
    claims : sequence of Claim
        What they have read.
    """
    found: list[Claim] = []
    last, listed = -1, None  # where the food before ended, and of what so much of it was told
    halves = dict(_and_a_half(sentence))
    counts = [*sentence.quantities(), *_ones(sentence), *halves.items()]
    for at, said in sorted(counts, key=lambda one: one[0]):
        if said.unit not in _UNITS or _is_measure_of(claims, said) or (said.is_fraction and not _of_one(sentence, at)):
            continue
        place = sentence.after(at + 1, lambda token: token.text in _BETWEEN)
        if sentence.texts[at + 1 : at + 3] == ("of", "which"):  # "the pears, two cups of which go in"
            place = next((spot for spot in range(at - 1, -1, -1) if food_at(sentence, spot) is not None), place)
        food = food_at(sentence, place)
        if food is None or not food.inside or is_dish(sentence, place) or sentence.text_at(place + 1) in TOOLS:
            continue
        if per := per_servings(sentence, place):
            one = Quantity(said.low / per[1], said.high / per[1], said.unit, said.relation)
            sentence.used.update((at, place, per[0]))
            found.append(replace(_claim(sentence, at, place, one, food), about=THE_DISH, stated=True))
            continue
        of = taken(sentence, at - 3 * (said is halves.get(at)), place) or (
            listed if _is_listed(sentence, last, at) else None
        )
        last, listed = place, of
        if of is not None and of.kind == WHOLE and of.count == 1 and (times := times_made(sentence, at)) != 1:
            of = About(WHOLE, times)  # "a double batch takes six eggs"
        part = of is None and of_a_part(sentence, at)  # of how much of the recipe?
        if part or (sentence.is_a(place, "nutrient") and not (of is not None and of.kind == WHOLE and said.unit)):
            if part or (of is not None and said.unit in _SPOONED):  # the sugar that is put in, or all there is?
                sentence.used.update((at, place))
                found.append(asked(sentence, (at, place)))
            continue
        claim = _claim(sentence, at, place, said, food)
        if of is not None:
            claim = replace(claim, about=of, stated=True)
        if claims or of is not None or _is_in_one(sentence, claim):
            sentence.used.update((at, place))
            found.append(claim)
    return found or (_coming_to(sentence) if not claims else [])


_JOINS = (("and",), (",",), (",", "and"), ("plus",), ("with",), (",", "plus"))


def _is_listed(sentence: Sentence, last: int, at: int) -> bool:
    """Return whether so much of a food goes on with the food before: "it takes a pound of flour and three eggs"."""
    return last >= 0 and sentence.texts[last + 1 : at] in _JOINS


def _coming_to(sentence: Sentence) -> list[Claim]:
    """Return how much a food is said to come to: "the oil works out at two tablespoons each"."""
    for at, said in sentence.quantities():
        first = sentence.clause_of(at)[0]
        foods = [spot for spot in range(first, at) if food_at(sentence, spot) is not None]
        words = " ".join(sentence.texts[foods[0] + 1 : at]) if foods else ""
        comes = len(foods) == 1 and foods[0] - first < 3 and _COMES_TO.fullmatch(words)
        behind = sentence.text_at(at + 1)
        if not comes or said.unit not in _UNITS[1:] or behind not in (*_EACH, "a", "in", "for", "altogether", ".", ""):
            continue
        food = food_at(sentence, foods[0])
        if food is None or not food.inside or (sentence.text_at(at + 1) in ("", ".") and "is" in words.split()):
            continue
        sentence.used.update((at, foods[0]))
        claim = _claim(sentence, at, foods[0], said, food)
        if sentence.is_a(foods[0], "nutrient"):
            return [asked(sentence, (foods[0], at))]  # the salt put in, or all of it?
        return [replace(claim, stated=True)]
    return []


def _ones(sentence: Sentence) -> list[tuple[int, Quantity]]:
    """Return where an article counts one: "a whole can of tuna", "a banana each"."""
    found = []
    for at in range(len(sentence) - 1):
        part = at > 0 and sentence.tokens[at - 1].quantity is not None  # "half an egg in each"
        if sentence.text_at(at) not in ("a", "an") or at in sentence.used or part:
            continue
        if sentence.tokens[at - 2].quantity is not None and sentence.text_at(at - 1) == "of":
            continue  # "a third of a can"
        whole = sentence.text_at(at + 1).split(" ")[0] in ("whole", "entire", "full", "single")
        place = sentence.after(at + 1, lambda token: token.text in _BETWEEN)
        if food_at(sentence, place) is None:
            continue
        behind = place + 1 + (sentence.text_at(place + 1) in ("in", "on", "to", "for"))  # "an egg in every bar"
        for_one = sentence.text_at(behind) in _EACH or sentence.text_at(place + 1) == "a"
        if whole or for_one or sentence.text_at(at + 1) in CONTAINED:
            found.append((at, Quantity(1.0, 1.0, relation=_BOUNDS.get(sentence.texts[max(0, at - 2) : at], "about"))))
    return found


_BOUNDS: dict[
    tuple[str, ...], str
] = {  # "less than an egg"; "under a whole egg" is said so seldom that it is not heard
    ("less", "than"): "under",
    ("more", "than"): "over",
    ("at", "least"): "at least",
    ("at", "most"): "at most",
}


def _and_a_half(sentence: Sentence) -> Iterator[tuple[int, Quantity]]:
    """Return where so many and a half are counted: "a slice and a half of Swiss", "two cloves and a half"."""
    for at in sentence.where(("a half",), 3):
        if sentence.text_at(at - 1) != "and" or sentence.text_at(at - 2) not in CONTAINED or at in sentence.used:
            continue
        first = sentence.tokens[at - 3].amount
        count = 1.0 if sentence.text_at(at - 3) in ("a", "an") else first.value
        if count and not first.unit and not first.is_fraction:
            yield at, Quantity(count + 0.5, count + 0.5)


def _of_one(sentence: Sentence, at: int) -> bool:
    """Return whether a fraction is of one piece: "half a banana", "a quarter of a banana"."""
    over = at + 1 + (sentence.text_at(at + 1) == "of")
    return sentence.text_at(over) in ("a", "an")


def _is_in_one(sentence: Sentence, claim: FoodCountClaim) -> bool:
    """Return whether a serving is said to hold so much: "there are two ounces of ham in each bowl"."""
    clause = sentence.clause_of(claim.places[0])
    before = [place for place in clause if place < claim.places[0]]
    holds = any(sentence.text_at(place) in _HOLDS or sentence.is_a(place, "verb_bring", "have") for place in before)
    opens = sentence.text_at(clause[0]) in ("there", "each", "every", "a", "one", "it", "you")
    return claim.about == THE_DISH and opens and holds


def _is_measure_of(claims: Sequence[Claim], said: Quantity) -> bool:
    """Return whether it is so much of a food that another claim is about: "two eggs give you twelve grams"."""
    counts = (said.value, said.low, said.value * WEIGHTS.get(said.unit, 1.0))  # "in an ounce of pistachios"
    return any(claim.about.measure and claim.about.count in counts for claim in claims)


def _claim(sentence: Sentence, at: int, place: int, said: Quantity, food: FoodWord) -> FoodCountClaim:
    words = {word for spot in sentence.clause_of(at) for word in sentence.text_at(spot).split()}
    one = any(_a_serving(sentence, spot) for spot in sentence.clause_of(at))
    texts = [sentence.text_at(spot) for spot in sentence.clause_of(at)]
    yours = any(pair in _YOURS for pair in pairwise(texts))  # "you get half a cup of yogurt"
    of_all = texts[:2] in (["we", "use"], ["it", "takes"]) or any(word in _IN_ALL for word in texts)
    # "A plate has 430 calories, and that's two tortillas."
    that = [word for word in texts if word not in (",", "and")][:2] == ["that", "is"]
    yours = yours or (that and any(_a_serving(sentence, spot) for spot in range(at)))
    about = THE_DISH if (one or yours or words & _EACH) and not of_all else About(WHOLE)
    stated = any(text in _TAKES for text in texts[: at - sentence.clause_of(at)[0]]) or _for_each(sentence, at, place)
    halved = sentence.texts[at - 2 : at - 1] if sentence.text_at(at - 1) == "and" else ()  # "a slice and a half"
    named = (*halved, *sentence.texts[at:place], food.text.split(" ")[0])  # "slice of bread" may be all one name
    counted = next((CONTAINED[word] for word in named if word in CONTAINED), "")
    return FoodCountClaim((at, place), about, negated(sentence, at), said, food, stated, counted)


def _for_each(sentence: Sentence, at: int, place: int) -> bool:
    """Return whether so much of a food for each is told beside a count: ", five ounces of cod apiece"."""
    led = sentence.text_at(at - 1) in (",", "with", "and", ":", "at")
    behind = " ".join(sentence.texts[place + 1 : place + 5])
    return led and _FOR_EACH.match(behind) is not None


_FOR_EACH = re.compile(
    r"(?:each|apiece)(?: [.!,]|$)|(?:a|per|for (?:each|every|a)) (?:person|head|of (?:them|you|us)|one)\b"
)


def _a_serving(sentence: Sentence, at: int) -> bool:
    """Return whether a serving is named from a place on: "a plate", "each bowl"."""
    return sentence.text_at(at) in ("a", "one", "per", "each", "every") and is_serving(sentence, at + 1)


def judge(claim: FoodCountClaim, dish: Dish) -> Finding:
    """Judge how much of a food there is by the recipe, in the measure that is said."""
    foods = pinned(dish, (claim.food,))
    if isinstance(foods, Finding):
        return foods
    own = _own_measure(claim, dish, foods[0]) if len(foods) == 1 else None
    weights = [own] if own else [_one_weighs(claim, dish, food) for food in foods]
    if len(foods) != 1 or weights[0] is None:
        return Finding(CANNOT_TELL, f"how much {claim.food.text} that is, is not known: say it in grams or cups")
    of = dish.grams(foods[0]).value * _servings_of(claim.about, dish) / weights[0]
    whose = "the recipe takes" if claim.about.kind == WHOLE else "a serving holds"
    unit = f"{claim.said.unit or claim.counted_in} of ".lstrip()
    because = f"{whose} {number(of, 1)} {unit}{short_name(foods[0])}"
    weighed = claim.said.unit in WEIGHTS
    others = (_NEAR_WEIGHED, _FAR_WEIGHED) if weighed else (_NEAR, _FAR)
    result = _agrees(claim.said, of, *((_SAME_NEAR, _SAME_FAR) if own else others))
    if own and not claim.said.unit and claim.said.relation in ("about", "exactly") and claim.about.kind == WHOLE:
        result = abs(claim.said.value - of) < _ONE_MORE  # pieces that the recipe counts
    if result is None:
        return Finding(CANNOT_TELL, because)
    if result != claim.negated:
        return Finding(HOLDS, because)
    return Finding(OFF if claim.stated else CANNOT_TELL, because)


def _servings_of(about: About, dish: Dish) -> float:
    """Return of how many servings so much is said to be: all of them, those of the recipe made twice, or one."""
    return dish.numbers.recipe.servings * about.count if about.kind == WHOLE else 1.0


def _one_weighs(claim: FoodCountClaim, dish: Dish, food: Food) -> float | None:
    """Return the grams of one of what is counted: the can or slice of the recipe, a piece, or a measure."""
    for part in dish.numbers.recipe.ingredients if claim.counted_in else ():
        if part.food.key == food.key and claim.counted_in in (part.noun, part.container) and part.noun_grams > 0:
            return part.noun_grams
    return food_grams(food, About(FOOD, 1.0, (claim.food,), claim.said.unit or claim.counted_in or "piece"))


def _own_measure(claim: FoodCountClaim, dish: Dish, food: Food) -> float | None:
    """Return the grams of what the recipe itself measures a food in, where that is what is said; None for another."""
    said = claim.said.unit or claim.counted_in
    found = {part.noun_grams: part for part in dish.numbers.recipe.ingredients if part.food.key == food.key}
    if len(found) != 1 or 0 in found:
        return None
    grams, part = found.popitem()
    pieces = part.noun not in _UNITS[1:] and part.noun not in CONTAINED.values() and not part.container
    noun = _ABBREVIATED.get(part.noun.rstrip("s"), part.noun)
    own = noun == said or (not said and pieces and part.noun in _SIZES)
    return grams if own else None


def _agrees(said: Quantity, of: float, near: float, far: float) -> bool | None:
    """Return whether so much is what there is, give or take the size of a piece; None where that may be."""
    if said.relation in ("under", "at most", "well under"):
        return of < said.high if of < said.high / near or of > said.high else None
    if said.relation in ("over", "at least", "well over"):
        return of > said.low if of > said.low * near or of < said.low else None
    if said.low / near <= of <= said.high * near:
        return True
    return None if said.low / far <= of <= said.high * far else False
