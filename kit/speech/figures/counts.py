"""Servings, ingredients, portions and weights."""

from dataclasses import dataclass

from kit.meal.certainty import Range
from kit.rules.naming import short_name
from kit.rules.verdicts import CANNOT_TELL, HOLDS, OFF
from kit.speech.about.parts import is_dish, is_serving, is_verb
from kit.speech.about.slots import negated
from kit.speech.claim import FOOD, THE_DISH, WHOLE, About, Claim, Finding
from kit.speech.figures.counts_said import PEOPLE, answers_how_many, can_eat, not_counted, so_much_each, there_are
from kit.speech.values import food_grams, pinned
from kit.speech.words.agreement import fits
from kit.speech.words.foods_said import FoodWord
from kit.speech.words.quantities_said import WEIGHTS
from kit.speech.words.sentence import Sentence, food_at
from kit.speech.words.tokens import NO_QUANTITY, Quantity
from kit.talk.dish import Dish
from kit.texts import listing, number

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


@dataclass(frozen=True, slots=True)
class IngredientsClaim(Claim):
    """The recipe has so many ingredients, some of them perhaps not counted."""

    said: Quantity = NO_QUANTITY
    besides: tuple[FoodWord, ...] = ()


@dataclass(frozen=True, slots=True)
class WeightClaim(Claim):
    """A serving weighs so much, or holds so much of a food."""

    said: Quantity = NO_QUANTITY
    foods: tuple[FoodWord, ...] = ()


def read(sentence: Sentence, about: list[About]) -> list[Claim]:
    """Return the servings, and weights that a sentence claims."""
    claims: list[Claim] = []
    for at, said in list(sentence.quantities()):
        if at in sentence.used:
            continue
        claim = _count(sentence, about, at, said)
        if claim is not None:
            sentence.used.update(claim.places)
            claims.append(claim)
    return claims


_KINDS_OF_ONE = frozenset("good generous big hungry different simple small large full lidded hearty main".split())
_OF_INGREDIENTS = frozenset("uses use has are is takes only just with exactly needs in".split())
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
_HOLDS_FOOD = frozenset("has have holds hold with gets get contains is comes you gives brings".split())
_ALL = ("the", "all", "these", "our", "all the", "all of the")
_EACH_OF = ("each", "every", "any", "one", "all")
_ORDERS = ("let", "cut", "divide", "make", "fill", "do", "pour")


def _count(sentence: Sentence, about: list[About], at: int, said: Quantity) -> Claim | None:
    if said.unit in WEIGHTS or said.unit in ("cup", "tbsp", "tsp"):
        return _weight(sentence, about, at, said)
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
    if clause & _OF_INGREDIENTS or said.relation == "exactly" or opens or out_of:
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
    makes = verb in _SERVES or (verb in _POTS and sentence.text_at(at - 1) == "for")
    serving = is_serving(sentence, following)
    people = serving or counted in PEOPLE
    ends = following >= len(sentence) or counted in _AFTER_COUNT
    if not makes or not (people or (ends and verb in _FEEDS)):
        return None
    ordered = sentence.text_at(0) in _ORDERS and at < 4
    if ordered or (counted in _NOT_SERVINGS and not serving):
        return None
    return ServingsClaim((at,), THE_DISH, negated(sentence, before), said)


def _weight(sentence: Sentence, about: list[About], at: int, said: Quantity) -> Claim | None:
    if sentence.text_at(at - 1) in ("as", "than", "of", "from"):
        return None
    clause = list(sentence.clause_of(at))
    words = {sentence.text_at(place) for place in clause}
    first = clause[0]
    is_so_much = (
        sentence.text_at(at - 1) in ("is", "are") and at - 2 in (first, first + 1) and is_serving(sentence, at - 2)
    )
    told = is_so_much and said.unit in ("g", "kg", "oz", "lb") and not sentence.is_a(at + 1, "nutrient")
    weighs_in = "weigh in" in " ".join(sentence.texts) or "weighs in" in " ".join(sentence.texts)  # at 160 calories
    weighs = (words & {"weighs", "weigh", "weight"} and not weighs_in) or told  # "a slice is about 100 grams"
    if weighs and said.unit in WEIGHTS and sentence.text_at(at + 1) != "of":
        if food_at(sentence, at - 2) is not None and about[at].kind == FOOD:
            return WeightClaim((at,), about[at], negated(sentence, at), said, about[at].foods)
        return WeightClaim((at,), about[at], negated(sentence, at), said)
    each = (
        words & {"each", "every", "apiece", "per", "person"}
        or any(
            sentence.text_at(place) in ("a", "one", "per")
            and place + 1 < len(sentence)
            and is_dish(sentence, place + 1)
            for place in clause
        )
        or any(is_serving(sentence, place) for place in (clause[0], clause[0] + 1))
    )
    over = at + 1
    while sentence.text_at(over) in ("of", "the", "raw", "cooked", "dry"):
        over += 1
    food = food_at(sentence, over)
    if not each or food is None or is_dish(sentence, over) or not food.inside or sentence.is_a(over, "nutrient"):
        return None
    if not words & _HOLDS_FOOD:
        return None
    return WeightClaim((at, over), THE_DISH, negated(sentence, at), said, (food,))


def judge(claim: ServingsClaim | IngredientsClaim | WeightClaim, dish: Dish) -> Finding:
    """Judge counts and weights."""
    if isinstance(claim, WeightClaim):
        return _judge_weight(claim, dish)
    if isinstance(claim, ServingsClaim):
        makes, thing, instead = (
            dish.numbers.recipe.servings,
            "the recipe makes",
            "The recipe makes {servings} servings.",
        )
    else:
        makes = float(len(dish.numbers.recipe.ingredients))
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
    return (
        Finding(HOLDS, because) if right else Finding(OFF, f"{because}, not {number(said.value, 1)}", None, (instead,))
    )


def _judge_weight(claim: WeightClaim, dish: Dish) -> Finding:
    if claim.foods:
        found = pinned(dish, claim.foods)
        if isinstance(found, Finding):
            return found
        if len({food.key for food in found}) > 1:
            names = listing([short_name(food) for food in found])
            return Finding(CANNOT_TELL, f"{names} are all meant: say it of one of them")
        food = found[0]
        if food.state == "dry" and any(word in claim.foods[0].text for word in ("cooked", "boiled")):
            return Finding(CANNOT_TELL, f"the recipe weighs the {short_name(food)} dry; say which is meant")
        grams = food_grams(food, About(FOOD, 1.0, claim.foods, claim.said.unit))
        if grams is None:
            return Finding(CANNOT_TELL, f"what a {claim.said.unit} of {short_name(food)} weighs is not known")
        of, because = (
            dish.grams(food),
            f"a serving holds {number(dish.grams(food).value)} g of {short_name(food)}, by the recipe",
        )
    else:
        grams = WEIGHTS[claim.said.unit]
        whole = dish.subject.serving_grams * (
            dish.numbers.recipe.servings if claim.about.kind == WHOLE else claim.about.count
        )
        if whole != whole or whole <= 0:
            return Finding(CANNOT_TELL, "what the dish weighs is not known")
        lightest, heaviest = dish.subject.heavier
        of = Range(whole, min(0.85, lightest) * whole, max(1.15, heaviest) * whole)
        because = f"it weighs about {number(whole)} g ({number(of.low)} to {number(of.high)}) as eaten"
    said = Quantity(claim.said.low * grams, claim.said.high * grams, "g", claim.said.relation)
    near = Range(of.value, min(of.low, 0.93 * of.value), max(of.high, 1.07 * of.value))
    result = fits(said, near if claim.foods else of)
    if claim.said.relation == "exactly":
        result = False
    if claim.negated and result is not None:
        result = not result
    if result is None:
        return Finding(CANNOT_TELL, f"{because}: too near to tell")
    sentences = (
        (f"{{serving}} holds {{grams of {found[0].key}}} of {short_name(found[0])}.",)
        if claim.foods and not isinstance(found, Finding)
        else ()
    )
    return Finding(HOLDS if result else OFF, because, None, () if result else sentences)
