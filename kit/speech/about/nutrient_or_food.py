"""Whether "the salt" and "sugar" are what is put in, or the nutrient that is counted."""

from kit.speech.words.sentence import Sentence, food_at

# "Salt comes to half a gram": the nutrient, and not the salt that is put in.
COMES_TO = frozenset(
    "comes come runs run lands land stays stay works work averages average sits sit goes go clocks clock".split()
)


def in_a_serving(sentence: Sentence, at: int) -> bool:
    """Return whether so much of a nutrient is told behind "in a slice", "in each bowl"."""
    led = sentence.text_at(at) in ("a", "an", "each", "every", "one", "the", "your")
    verb = at + 2
    told = sentence.text_at(verb) in COMES_TO or sentence.text_at(verb) in ("is", "adds")
    weighed = any(one.amount.unit in ("g", "mg") for one in sentence.tokens[verb + 1 : verb + 5])
    return led and sentence.is_a(at + 1, "dish", "serving") and told and weighed


def is_told(sentence: Sentence, at: int) -> bool:
    """Return whether sugar or salt is told as what is counted: "the sugar comes to", "the salt in a slice is"."""
    adds_up = sentence.text_at(at + 1) == "adds" and sentence.text_at(at + 2) == "up"
    comes_to = sentence.is_a(at, "nutrient") and (sentence.text_at(at + 1) in COMES_TO or adds_up)
    salt = sentence.text_at(at) == "salt" and in_a_serving(sentence, at + 2)
    return sentence.text_at(at) == "sugars" or comes_to or salt


def measured_out(sentence: Sentence, at: int) -> bool:
    """Return whether a statement begins with so much of it: "a third of a cup of sugar comes to"."""
    measured = at >= 2 and sentence.text_at(at - 1) == "of" and sentence.tokens[at - 2].amount.unit in _HOUSEHOLD
    return measured and at - 2 == sentence.clause_of(at)[0] and at + 1 in sentence.verbs


_HOUSEHOLD = ("cup", "tbsp", "tsp", "oz", "lb")


def beside_food(sentence: Sentence, at: int) -> bool:
    """Return whether "the salt" is joined to another food: "the ham and the salt between them"."""
    if sentence.text_at(at - 1) != "the" or sentence.tokens[at].parts["nutrient"] not in ("salt", "sugars"):
        return False
    other = at - 3 if sentence.text_at(at - 2) in ("and", "plus") else -1
    return food_at(sentence, other) is not None and not sentence.tokens[other].is_a("nutrient")


def is_cooking_starch(sentence: Sentence, at: int) -> bool:
    """Return whether starch is what thickens and sticks, and not what is counted: "they give up some starch"."""
    if sentence.text_at(at) not in ("starch", "starches"):
        return False
    clause = sentence.clause_of(at)
    counted = any(
        sentence.tokens[place].quantity is not None
        or sentence.is_a(place, "wording")
        or (sentence.is_a(place, "share") and sentence.text_at(place) != "some")
        for place in clause
    )
    return not counted and _OF_STARCH.isdisjoint(sentence.texts[clause[0] : clause[-1] + 1])


_OF_STARCH = frozenset(
    "has have had contains contain holds hold packs pack brings bring with is are no without less more than free "
    "mostly mainly pure source from".split()
)
