"""What a number is said for: "per 100 grams", "an ounce", "a slice", "in the whole pot", "in half a plate"."""

from kit.speech.about.nutrient_or_food import is_told
from kit.speech.about.parts import (
    DETERMINERS,
    MEASURES,
    ONE_PIECE,
    after_determiners,
    dish_part,
    food_part,
    is_dish,
    is_food,
    is_serving,
    is_verb,
)
from kit.speech.claim import FOOD, SERVING, THE_DISH, UNKNOWN, WEIGHT, WHOLE, About
from kit.speech.words.clauses import is_stop
from kit.speech.words.quantities_said import WEIGHTS
from kit.speech.words.sentence import Sentence, food_at
from kit.speech.words.tokens import NO_QUANTITY

_LEADS = ("per", "in", "for", "every", "each")
_ONE = ("a", "an", "per", "each", "every")
_PIECES = {"slice": "slice", "slices": "slice", "piece": "piece", "pieces": "piece"}
_EATERS = frozenset("one person guest diner adult child of".split())
HANDS = frozenset(
    "handful mouthful spoonful spoon pinch drizzle dollop splash sprinkle scoop ladle ladleful "
    "forkful bite glug quart pint gallon bucket slab chunk sliver corner sip taste thimbleful saucer".split()
)


def basis_near(sentence: Sentence, at: int, subject: About = THE_DISH) -> About | None:
    """Return what a number is said for, where that stands beside it; None when it does not.

    Parameters
    ----------
    sentence : Sentence
        The sentence.
    at : int
        The place of the number.
    subject : About
        What the statement is about: a measure is one of that.
    """
    food = subject if subject.kind == FOOD else None
    found = _measure(sentence, at)
    if found is not None:
        count, unit = found
        if food is not None:
            several = len(food.foods) > 1 or not unit
            return About(UNKNOWN, words="so much of it") if several else About(FOOD, count, food.foods, unit)
        if unit in WEIGHTS:
            return About(WEIGHT, count * WEIGHTS[unit])
        return About(UNKNOWN, words="so much of it")
    near = _for_so_many(sentence, at) or _dish_basis(sentence, at)
    if near is not None and near.kind == WEIGHT and food is not None:
        return About(FOOD, near.count, food.foods, "g") if len(food.foods) == 1 else None
    return near


def _for_so_many(sentence: Sentence, at: int) -> About | None:
    """Return as many servings as people are named where a statement begins: "for two people that's 570 calories"."""
    first, _ = _reach(sentence, at)
    place = first + (sentence.text_at(first) in ("and", "so", "but", ","))
    if sentence.text_at(place) != "for" and sentence.text_at(at + 1) == "for" and at + 2 < len(sentence):
        eaters = sentence.tokens[at + 2].amount  # "that's 1,830 calories for five people"
        people = sentence.text_at(at + 3) in _PEOPLE and not eaters.unit and eaters.value >= 1
        return About(SERVING, eaters.value) if people and eaters.low == eaters.high else None
    if sentence.text_at(place) != "for":
        return None
    place += 1 + (sentence.text_at(place + 1) in ("the", "all", "you"))
    said = sentence.tokens[place].amount if place < at else NO_QUANTITY
    behind = sentence.text_at(place + 1)
    people = behind in _PEOPLE or (behind == "of" and sentence.text_at(place + 2) in ("you", "us", "them"))
    if said.value < 1 or said.unit or said.is_fraction or said.low != said.high:
        return None
    return About(SERVING, said.value) if people or behind in (",", "that", "it", "this", "you") else None


_PEOPLE = frozenset("people persons person guests friends diners adults".split())


def handful(sentence: Sentence, at: int) -> About | None:
    """Return what a number is said of where a statement begins with so much by hand: "a handful of almonds has"."""
    for place in range(sentence.clause_of(at)[0], at):
        whole = place > 0 and sentence.text_at(place - 1).removeprefix("the ") in ("whole", "entire")
        if whole and not sentence.tokens[place].parts and not is_verb(sentence, place):
            return About(UNKNOWN, words=f"whole {sentence.text_at(place)}")  # "the whole blender makes"
        if is_verb(sentence, place):
            first = place > 1 and sentence.text_at(place - 2) in ("each", "every")
            known = sentence.tokens[place - 1].parts or sentence.text_at(place - 1) in _EATERS
            return About(UNKNOWN, words=sentence.text_at(place - 1)) if first and not known else None
        led = place > sentence.clause_of(at)[0] and sentence.text_at(place - 1) in ("the", "these", "those", "our")
        if (
            led
            and place not in sentence.used
            and sentence.is_a(place, "group")
            and not is_told(sentence, place)
            and not is_dish(sentence, place)
            and not is_food(sentence, place)
        ):
            return About(UNKNOWN, words=sentence.text_at(place))  # "the meat has"
        ones = {sentence.text_at(place - 1), sentence.text_at(place - 2)}
        if sentence.text_at(place) in HANDS and not ones.isdisjoint((*_ONE, "one")):
            return About(UNKNOWN, words=sentence.text_at(place))
    return None


def all_of_a_thing(sentence: Sentence, at: int) -> About | None:
    """Return what all of is meant by a word that is none of ours: "in the whole stack", "everything on the board"."""
    return _everything_on(sentence, at) or _whole_thing(sentence, at)


def _everything_on(sentence: Sentence, at: int) -> About | None:
    first = sentence.clause_of(at)[0]
    place = first + (sentence.text_at(first) in ("so", "and", "but", "all"))
    led = sentence.text_at(place) in ("everything", "all") and sentence.text_at(place + 1) in ("on", "in", "at")
    thing = place + 2 + (sentence.text_at(place + 2) in ("the", "this", "that", "our", "your"))
    if not led or thing == place + 2 or thing >= at or sentence.tokens[thing].parts:
        return None
    return About(UNKNOWN, words=f"everything on the {sentence.text_at(thing)}")


def _whole_thing(sentence: Sentence, at: int) -> About | None:
    for place in range(at + 2, sentence.clause_of(at)[-1] + 1):
        led = sentence.text_at(place - 1).removeprefix("the ") in ("whole", "entire", "full", "complete")
        thing = led and not sentence.tokens[place].parts and sentence.text_at(place) not in _NO_THINGS
        before = {sentence.text_at(place - 2), sentence.text_at(place - 3)}
        if thing and not before.isdisjoint(("in", "for", "across", "of", "over", "from")):
            return About(UNKNOWN, words=f"whole {sentence.text_at(place)}")
    return None


_NO_THINGS = frozenset("time point reason truth story week month idea while".split())


def _measure(sentence: Sentence, at: int) -> tuple[float, str] | None:
    """Return the count and unit of a measure a number is said for: "per ounce"; no unit for a handful."""
    first, end = _reach(sentence, at)
    for place in range(first, end):
        token, before = sentence.tokens[place], sentence.text_at(place - 1)
        if place == at or (sentence.text_at(place + 1) == "of" and not of_dish(sentence, place + 2)):
            continue
        behind_number = place > at and (sentence.is_a(place - 1, "nutrient") or place - 1 == at)
        quantity = token.quantity
        if quantity is None and token.parts.get("unit", "") in MEASURES and before in ("per", "each", "every"):
            return 1.0, token.parts["unit"]
        if quantity is not None and quantity.unit in MEASURES and quantity.relation == "about":
            one = token.text.startswith(("a ", "an ", "one "))
            if before in ("per", "every", "in", "for") or (one and behind_number):
                return quantity.value, quantity.unit
        if token.text in HANDS and before in _ONE and (place > at or sentence.text_at(first) in _LEADS):
            return 1.0, ""
    return None


def of_dish(sentence: Sentence, at: int) -> bool:
    """Return whether a measure is of the dish: "a cup of it", "every ounce of this soup"."""
    word = sentence.text_at(at)
    behind = at + 1 if word in ("the", "this", "that", "our") else at
    return word in ("it", "this", "that", "them", "these") or (behind > at and is_dish(sentence, behind))


def piece_of(sentence: Sentence, at: int, subject: About) -> About | None:
    """Return a piece of a food a number is said for: "bread has 80 calories a slice", "eggs have six grams each"."""
    if subject.kind != FOOD or subject.measure or len(subject.foods) != 1:
        return None
    for place in range(at + 1, min(at + 6, sentence.clause_of(at)[-1] + 1)):
        word = sentence.text_at(place)
        if word in _PIECES and sentence.text_at(place - 1) in _ONE:
            return About(FOOD, 1.0, subject.foods, _PIECES[word])
        alone = place + 1 >= len(sentence) or is_stop(sentence.tokens[place + 1]) or sentence.text_at(place + 1) == ","
        each = word in ("each", "apiece") and sentence.text_at(place - 1) not in ("to", "in", "for", "of", "into")
        if each and alone:
            return About(FOOD, 1.0, subject.foods, "piece")
    return None


def _reach(sentence: Sentence, at: int) -> tuple[int, int]:
    """Return the first place and the end of what may say what a number is for: its clause and a "per ounce," before."""
    clause = sentence.clause_of(at)
    first = clause[0]
    while (
        first > 0
        and not is_stop(sentence.tokens[first - 1])
        and sentence.clauses[first - 1] == sentence.clauses[at] - 1
    ):
        first -= 1
    led = [spot for spot in range(first, clause[0]) if sentence.text_at(spot) == "per"]
    if led and not any(is_verb(sentence, spot) for spot in range(led[-1], clause[0])):
        return led[-1], clause[-1] + 1  # "I'd say per hundred grams, it has"
    if first < clause[0] and (
        sentence.text_at(first) not in ("per", "in", "for", "every", "by")
        or any(is_verb(sentence, spot) for spot in range(first, clause[0]))
    ):
        first = clause[0]
    return first, clause[-1] + 1


_POTS = ("pot", "pan", "batch", "tray")  # "in the pot"
_WHOLE = ("whole", "entire", "the whole", "the entire")


def _dish_basis(sentence: Sentence, at: int) -> About | None:
    """Return the part of the dish, or so much of a food, that is named beside a number."""
    first, end = _reach(sentence, at)
    for place in range(first, end):
        if sentence.text_at(place) not in ("per", "in", "for", "every", "each", "on", "from", "with", "by"):
            continue
        over = place + 1
        while sentence.text_at(over) in ("the", "each", "every", "a", "an", "all", "of"):
            over += 1
        if over >= len(sentence) or is_stop(sentence.tokens[over]):
            continue
        if over != at and _leads_to_nutrient(sentence, place, over):
            continue
        found = _weight_basis(sentence, place, over) if over != at else None
        found = found or (_counted_basis(sentence, place, over) if over != at else None)
        found = found or _whole_basis(sentence, place, over)
        if found is not None:
            return found
    return None


def shared_out(sentence: Sentence, at: int) -> About | None:
    """Return all of what is baked in one piece where one of it is named behind a number: "19 grams of fat a pan"."""
    for place in range(at + 1, min(at + 6, sentence.clause_of(at)[-1] + 1)):
        if sentence.text_at(place - 1) in _ONE and is_dish(sentence, place):
            part = dish_part(sentence, place)
            return part if part.or_dish else None
    return None


def _is_weight(sentence: Sentence, place: int, over: int) -> bool:
    """Return whether a weight is named as what a number is for: "per 100 grams", "in 50 grams of it"."""
    said = sentence.tokens[over].quantity
    led = sentence.text_at(place) in ("per", "in", "for", "every", "each", "by")
    return said is not None and said.unit in WEIGHTS and said.relation == "about" and led


def _leads_to_nutrient(sentence: Sentence, place: int, over: int) -> bool:
    """Return whether a weight is of a nutrient, and so an amount of its own: "for 30 grams of protein"."""
    noun = over + 1 + (sentence.text_at(over + 1) == "of")
    return _is_weight(sentence, place, over) and sentence.is_a(noun, "nutrient")


def _weight_basis(sentence: Sentence, place: int, over: int) -> About | None:
    """Return so many grams of the dish, or of a food: "per 100 grams", "in 30 grams of feta"."""
    if not _is_weight(sentence, place, over):
        return None
    said = sentence.tokens[over].amount
    grams = said.value * WEIGHTS[said.unit]
    if sentence.text_at(over + 1) == "of":
        after = over + 2 + (sentence.text_at(over + 2) in DETERMINERS)
        food = food_at(sentence, after)
        if food is not None and not is_dish(sentence, after):
            return About(FOOD, grams, (food,), "g")
    if said.value >= 2 or sentence.text_at(place) in ("per", "every", "each"):
        return About(WEIGHT, grams)
    return None


def _counted_basis(sentence: Sentence, place: int, over: int) -> About | None:
    """Return so many servings, or so much of a food: "in two bowls", "per cup of rice"."""
    said = sentence.tokens[over].quantity
    if said is None or sentence.text_at(place) not in ("in", "for", "per", "on", "from", "with"):
        return None
    noun = after_determiners(sentence, over + 1, ("of",))
    if noun >= len(sentence):
        return None
    if is_dish(sentence, noun) and said.unit == "":
        return dish_part(sentence, noun)
    of_food = sentence.text_at(place) != "with" and is_food(sentence, noun) and said.unit in MEASURES
    return food_part(sentence, noun) if of_food else None


def _whole_basis(sentence: Sentence, place: int, over: int) -> About | None:
    """Return all of the dish: "in the whole pot", "for the entire batch"."""
    word = sentence.text_at(place)
    if word in ("in", "for", "from") and is_dish(sentence, over):
        part = dish_part(sentence, over)
        named = sentence.text_at(over).split(" ")[:2]  # "the whole jug" is one token
        whole = sentence.text_at(over - 1) in _WHOLE or not {"whole", "entire"}.isdisjoint(named)
        named_pots = (*_POTS, "recipe") if word == "for" else _POTS
        of_pot = sentence.text_at(over) in named_pots and not is_serving(
            sentence, place - 1
        )  # no "ten bowls in the pot"
        if part.kind == WHOLE and (whole or of_pot):
            return part
        if sentence.text_at(over) in ONE_PIECE and sentence.text_at(over - 1) in ("the", "this", "our"):
            return About(WHOLE, or_dish=True)  # "there are 2,400 calories in the cake"
    if (
        word in ("in", "for")
        and sentence.text_at(over) in _WHOLE
        and over + 1 < len(sentence)
        and is_dish(sentence, over + 1)
    ):
        part = dish_part(sentence, over + 1)
        return part if part.kind == WHOLE else None
    return None
