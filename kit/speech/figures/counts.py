"""Servings and ingredients that are counted."""

import re
from dataclasses import dataclass, replace

from kit.meal.certainty import Range
from kit.rules.naming import short_name
from kit.rules.verdicts import HOLDS, OFF
from kit.speech.about.parts import is_dish, is_serving, is_verb
from kit.speech.about.slots import negated
from kit.speech.claim import THE_DISH, About, Claim, Edit, Finding
from kit.speech.figures.counts_said import PEOPLE, answers_how_many, can_eat, not_counted, so_much_each, there_are
from kit.speech.figures.weights_said import WeightClaim, judge_weight, weight_at
from kit.speech.values import pinned
from kit.speech.words.agreement import fits
from kit.speech.words.foods_said import FoodWord
from kit.speech.words.quantities_said import WEIGHTS
from kit.speech.words.sentence import Sentence, food_at
from kit.speech.words.tokens import NO_QUANTITY, Quantity
from kit.talk.dish import Dish
from kit.texts import counted, listing, number

FAMILY = "servings and weights"
_SERVES = frozenset(
    "serves serve feeds feed makes make fills fill yields "
    "yield cuts cut divides divide enough stretches stretch splits split goes does do pours pour".split()
)
_NOT_SERVINGS = frozenset("minutes minute cups cup ingredients ingredient tablespoons batches steps".split())
_INSIDE = frozenset("inside within in fall falls".split())


@dataclass(frozen=True, slots=True)
class ServingsClaim(Claim):
    """The recipe makes so many servings."""

    said: Quantity = NO_QUANTITY
    start: int = 0
    end: int = 0


@dataclass(frozen=True, slots=True)
class IngredientsClaim(Claim):
    """The recipe has so many ingredients, some of them perhaps not counted."""

    said: Quantity = NO_QUANTITY
    besides: tuple[FoodWord, ...] = ()
    start: int = 0
    end: int = 0


_ONE_EACH = "tortilla|bun|roll|pita|wrapper|wrap|shell|sheet"  # each of them holds one piece
CountClaim = ServingsClaim | IngredientsClaim | WeightClaim


def read(sentence: Sentence, about: list[About]) -> list[Claim]:
    """Return the servings, and weights that a sentence claims."""
    claims: list[Claim] = []
    for at, said in list(sentence.quantities()):
        if at in sentence.used:
            continue
        claim = _count(sentence, about, at, said)
        if claim is not None:
            sentence.used.update(claim.places)
            token = sentence.tokens[at]
            claims.append(replace(claim, start=token.start, end=token.end))
    return claims


_KINDS_OF_ONE = frozenset("good generous big hungry different simple small large full lidded hearty main".split())
_OF_INGREDIENTS = frozenset("uses use has have are is takes only just with exactly needs in".split())
_BEFORE_COUNT = frozenset(  # "there is enough here for at least six"
    "for into up about to out at least a of all easily comfortably here it in there left".split()
)
_AFTER_COUNT = frozenset(
    ". , ; and ! with if at easily comfortably here it in there left generously for from off today too as".split()
)
_BEHIND_THERE = (",", ".", "", ";", "in", "at", "out", "out of", "from", "here", "and")
_POTS = ("recipe", "pot", "pan", "batch", "tray")
_FEEDS = frozenset(  # these need no "people" behind the number
    "serves serve feeds feed enough stretch stretches cuts divides splits".split()
)
_ALL = ("the", "all", "these", "our", "all the", "all of the")
_EACH_OF = ("each", "every", "any", "one", "all")
_ORDERS = ("let", "cut", "divide", "make", "fill", "do", "pour")


def _count(sentence: Sentence, about: list[About], at: int, said: Quantity) -> CountClaim | None:
    if said.unit in WEIGHTS or said.unit in ("cup", "tbsp", "tsp"):
        return weight_at(sentence, about, at, said)
    if said.unit or said.is_fraction:
        return None
    following = sentence.after(at + 1, lambda token: token.text in _KINDS_OF_ONE)
    things = sentence.text_at(following) == "things" and sentence.text_at(following + 1) in ("go", "in")
    if things or sentence.text_at(following) in ("ingredients", "ingredient"):
        return _ingredients(sentence, at, following, said)
    if answers_how_many(sentence, at) and following == at + 1:
        return ServingsClaim((at,), THE_DISH, False, said)
    people = sentence.text_at(following) in ("people", "persons")
    if people and (can_eat(sentence, following + 1) or so_much_each(sentence, at, following + 1)):
        return ServingsClaim((at,), THE_DISH, negated(sentence, at), said)
    return _servings(sentence, at, following, said) or _counted(sentence, at, following, said)


def _ingredients(sentence: Sentence, at: int, following: int, said: Quantity) -> IngredientsClaim | None:
    clause = {sentence.text_at(place) for place in sentence.clause_of(at)}
    if sentence.text_at(at - 1) in ("not", "no") and said.value == 1:
        return None  # "not one ingredient has fish in it"
    several = sentence.text_at(following) == "ingredients"  # "ten ingredients, ..."
    opens = several and at == sentence.clause_of(at)[0] and not sentence.is_a(following + 1, "verb_bring")
    if not several and sentence.text_at(following + 1) == "is":
        return None  # "one ingredient is missing from the table"
    served = is_serving(sentence, at - 2) or is_serving(sentence, at - 3)
    out_of = served and " ".join(sentence.texts[:at]).endswith("out of")  # "six servings out of thirteen ingredients"
    made_from = several and sentence.text_at(at - 1) in ("from", "out of", "of")
    in_all = several and sentence.text_at(following + 1) in (
        "in",
        "in all",
        "in total",
        "altogether",
        "total",
        "all told",
    )
    if clause & _OF_INGREDIENTS or said.relation == "exactly" or opens or out_of or made_from or in_all:
        besides, places = not_counted(sentence, following + 1)
        denied = negated(sentence, at) and not places
        sentence.used.update(places)
        return IngredientsClaim((at, *places), THE_DISH, denied, said, tuple(besides))
    return None


def _counted(sentence: Sentence, at: int, following: int, said: Quantity) -> ServingsClaim | None:
    """Return how many servings there are said to be in passing: "each of the eight bowls", "ten bars, 90 each"."""
    if said.low != said.high or said.value < 2:
        return None
    before, noun = (
        sentence.text_at(at - 1),
        is_serving(sentence, following),
    )
    noun = noun and not sentence.text_at(following).startswith("share")  # "all three shares of the energy"
    of_them = sentence.texts[max(0, at - 2) : at] == ("of", "the") and (
        sentence.text_at(at - 3) in _EACH_OF or is_serving(sentence, at - 3)
    )  # "each of the eight", "every bowl of the eight"
    of_all = before in _ALL and (noun or of_them)
    behind = sentence.text_at(following + 1)
    if behind == "of" and food_at(sentence, following + 2) is not None:
        return None  # "the four slices of bread"
    first = at == sentence.clause_of(at)[0]
    rest = range(following + 2, len(sentence))
    each = any(
        sentence.text_at(place) in ("each", "apiece")
        or (sentence.text_at(place) in ("a", "per") and is_serving(sentence, place + 1))
        for place in rest
    )
    alone = noun and first and behind in (",", "at", "of") and each
    leads = noun and first and behind == "," and sentence.text_at(following + 2) == "so"
    verbs = any(is_verb(sentence, place) for place in range(len(sentence)) if sentence.tokens[place].quantity is None)
    there = noun and there_are(sentence, at) and behind in _BEHIND_THERE
    comes = (
        noun
        and first
        and behind in ("come", "comes")
        and sentence.text_at(following + 2).split(" ")[0] in ("out", "from")
    )
    out_of = behind in ("out of", "from") and sentence.text_at(following + 2) in ("a", "one", "the", "this", "each")
    comes = comes or (
        noun and first and out_of and sentence.is_a(following + 3, "dish", "whole")
    )  # "six out of one pot"
    echoed = before == "," and is_serving(sentence, at - 2) and sentence.tokens[at - 3].amount.value == said.value
    if echoed and said.relation == "exactly" and behind in _BEHIND_THERE:
        return ServingsClaim((at - 3, at), THE_DISH, False, said)  # "ten slices, exactly ten"
    listed = (
        before == ","
        and noun
        and not any(is_verb(sentence, place) for place in range(at))
        and sentence.text_at(at - 2) == "ingredients"
    )
    if listed and behind in _BEHIND_THERE:
        return ServingsClaim((at,), THE_DISH, False, said)  # "ten ingredients, four bowls"
    exact = noun and said.relation == "exactly" and behind in _BEHIND_THERE
    it_is = noun and sentence.texts[:at] in (("it", "is"), ("this", "is")) and behind in (",", ".", "", "in")
    if exact or it_is or of_all or leads or (alone and not verbs) or there or comes:
        return ServingsClaim((at,), THE_DISH, False, said)
    return None


def _servings(sentence: Sentence, at: int, following: int, said: Quantity) -> ServingsClaim | None:
    """Return "serves six", "enough for eight plates", "the pot for four people"; None for a count of anything else."""
    before = at - 1
    while before >= 0 and sentence.text_at(before) in _BEFORE_COUNT:
        before -= 1
    verb, counted = sentence.text_at(before), sentence.text_at(following)
    is_at = at - 2 - (sentence.text_at(at - 2) == "not")
    is_for = sentence.text_at(at - 1) == "for" and sentence.text_at(is_at) in ("is", "are") and is_at > 0
    whose = sentence.is_a(is_at - 1, "dish") or sentence.is_a(is_at - 1, "pronoun")
    ends = sentence.text_at(following + 1) in (*_BEHIND_THERE, "!", "with")
    if is_for and whose and ends and sentence.text_at(following) in PEOPLE:
        sentence.used.add(at - 2)
        return ServingsClaim((at,), THE_DISH, is_at < at - 2, said)  # "the recipe is for four people"
    makes = verb in _SERVES or (verb in _POTS and sentence.text_at(at - 1) == "for")
    serving = is_serving(sentence, following)
    people = serving or counted in PEOPLE
    twice = sentence.texts[following : following + 2] == ("twice", "over") and not said.unit
    if twice and makes and verb in _FEEDS:
        return ServingsClaim((at, following), THE_DISH, False, replace(said, low=2 * said.low, high=2 * said.high))
    ends = following >= len(sentence) or counted in _AFTER_COUNT
    bare = verb == "makes" and before <= 2 and counted in (".", "!", "")  # "Makes sixteen."
    if not makes or not (people or bare or (ends and verb in _FEEDS)):
        return None
    ordered = sentence.text_at(0) in _ORDERS and at < 4
    if ordered or _does_food(sentence, before) or (counted in _NOT_SERVINGS and not serving):
        return None
    return ServingsClaim((at,), THE_DISH, negated(sentence, before), said)


def _does_food(sentence: Sentence, verb: int) -> bool:
    """Return whether so much of a food is said to do for some servings: "one egg does four slices"."""
    first = sentence.clause_of(verb)[0]
    of = verb - 1 > first and food_at(sentence, verb - 1) is not None and not is_dish(sentence, verb - 1)
    return of and sentence.tokens[first].quantity is not None


def judge(claim: CountClaim, dish: Dish) -> Finding:
    """Judge counts and weights."""
    if isinstance(claim, WeightClaim):
        return judge_weight(claim, dish)
    if isinstance(claim, ServingsClaim):
        makes, thing, instead = (
            dish.numbers.recipe.servings,
            "the recipe makes",
            "The recipe makes {servings} servings.",
        )
    else:
        both = zip(dish.talk.recipe.ingredients, dish.numbers.recipe.ingredients, strict=False)  # others come behind
        gone = sum(before.grams > 0 >= now.grams for before, now in both)
        makes = float(len(dish.numbers.recipe.ingredients) - gone)
        apart = pinned(dish, claim.besides) if claim.besides else []
        if isinstance(apart, Finding):
            return apart
        makes -= len({food.key for food in apart})
        others = f" besides the {listing([short_name(food) for food in apart])}" if apart else ""
        thing, instead = f"the ingredients of the recipe{others} number", f"The recipe has {number(makes)} ingredients."
    of = Range(makes, makes, makes)
    said = claim.said
    right = fits(
        said
        if said.relation not in ("about", "just over", "nearly")
        else Quantity(said.low, said.high, "", "exactly" if said.low == said.high else "between"),
        of,
    )
    if said.relation in ("about", "nearly") and said.value == makes:
        right = True
    if claim.negated:
        right = not right
    because = f"{thing} {number(makes, 1)}"
    if right:
        return Finding(HOLDS, because)
    counts_pieces = isinstance(claim, ServingsClaim) and any(  # "it makes eight tacos", of eight tortillas
        re.match(rf"{number(said.value)} (?:[\w-]+ )*(?:{_ONE_EACH})s?\b", part.line)
        for part in dish.numbers.recipe.ingredients
    )
    edit = None if claim.negated or makes <= 1 or counts_pieces else Edit(claim.start, claim.end, counted(makes, 1))
    return Finding(OFF, f"{because}, not {number(said.value, 1)}", edit, (instead,))
