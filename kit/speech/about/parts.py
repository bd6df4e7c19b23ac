"""Parts of the dish, and so much of a food, as they are named: "half a plate", "a cup of cooked rice"."""

from collections.abc import Container

from kit.speech.about.nutrient_or_food import COMES_TO, beside_food, in_a_serving, measured_out
from kit.speech.claim import FOOD, SERVING, THE_DISH, UNKNOWN, WEIGHT, WHOLE, About
from kit.speech.words.foods_said import FoodWord
from kit.speech.words.quantities_said import WEIGHTS
from kit.speech.words.sentence import Sentence, food_at
from kit.speech.words.tokens import NO_QUANTITY

PREPOSITIONS = frozenset(
    "in with from of on into onto to for per than as by without like over under at through against".split()
)


DETERMINERS = frozenset(
    "the a an this that these those your our my its their each every all both some any another single one whole entire "
    "complete "
    "good little nice big large small medium average".split()
)


MEASURES = ("cup", "tbsp", "tsp", "oz", "lb", "g", "kg", "mL", "L", "mg")


PLAIN = "plain"  # "the pot", which may as well stand for the dish


_GLASSES = {"glass": "cup", "mug": "cup", "slice": "slice", "piece": "piece", "bowl": "cup"}


_FOR_ONE = ("each", "apiece")
_SIZES = frozenset("large medium small big whole ripe raw boiled fresh hard average cooked".split())
_BEFORE_A_NOUN = DETERMINERS | _SIZES


def leads_on(sentence: Sentence, at: int) -> bool:
    """Return whether what stands behind a word only tells why, where or of what: "gluten-free because of the rice"."""
    return sentence.text_at(at) in PREPOSITIONS or sentence.text_at(at) == "thanks" or sentence.is_a(at, "verb_from")


def is_verb(sentence: Sentence, at: int) -> bool:
    """Return whether there is a token that is a verb of a statement."""
    return at in sentence.verbs


def is_dish(sentence: Sentence, at: int) -> bool:
    """Return whether there is a token that names the dish or a part of it, and no food."""
    return at in sentence.dishes


def is_serving(sentence: Sentence, at: int) -> bool:
    """Return whether there is a token that names a serving: "bowl", "plates"."""
    return sentence.is_a(at, "dish", "serving") and is_dish(sentence, at)


# What is named behind a food is a tool or a place: "a fish spatula", "the bread aisle".
TOOLS = frozenset(
    "knife knives kettle jug jugs carton cartons bottle bottles box boxes "
    "spatula spatulas masher spinner mill timer knife grater press squeezer peeler brush cutter slicer fork spoon "
    "tongs crate drawer aisle stand market farmer farm shop shelf fryer board basket bin".split()
)


def is_food(sentence: Sentence, at: int) -> bool:
    """Return whether a token names a food as a thing: "the salt", but not "low in salt"."""
    token = sentence.tokens[at]
    if token.food is None or is_dish(sentence, at) or sentence.text_at(at + 1) in TOOLS:
        return False
    if token.text == "sugars":
        return False  # those that are counted; what is put in is sugar
    if token.is_a("nutrient"):
        following = sentence.text_at(at + 1)
        opens = at == 0 or (at == 1 and sentence.text_at(0) in ("the", "our"))
        if opens and token.parts["nutrient"] in ("salt", "sugars") and following in ("and", "plus"):
            other = at + 2 + (sentence.text_at(at + 2) in DETERMINERS)
            return food_at(sentence, other) is not None and not sentence.tokens[other].is_a("nutrient")
        if beside_food(sentence, at) or measured_out(sentence, at):
            return True
        over = at + 2 + (sentence.text_at(at + 2) == "not")
        weighed = sentence.tokens[over].amount.unit in ("g", "mg") if over < len(sentence) else False
        if following == "that" and sentence.text_at(at + 2) in ("we", "you", "i") and sentence.text_at(at - 1) == "the":
            return True  # "the salt that I add"
        if following == "in" and in_a_serving(sentence, at + 2):
            return False  # "the salt in a slice comes to half a gram"
        if following == "adds" and sentence.text_at(at + 2) == "up":
            return False  # "the sugar adds up to eighteen grams"
        if following in ("is", "comes") and weighed and sentence.text_at(over + 1) != "of":
            return False  # "the salt is just shy of a gram and a half"
        return (
            sentence.text_at(at - 1) in ("the", "added", "of", "from", "and")
            and (
                following
                in ("we", "you", "i", "brings", "bring", "is", "adds", "in", "itself", "alone", "added", "contributes")
                or "from" in (sentence.text_at(at - 1), sentence.text_at(at - 2))
                or sentence.is_a(at - 1, "wording")
            )
        ) or (at == 0 and at + 1 < len(sentence) and is_verb(sentence, at + 1) and following not in COMES_TO)
    return True


def back(sentence: Sentence, at: int) -> int:
    """Return the place before a noun's determiners and adjectives of size."""
    place = at - 1
    while sentence.text_at(place) in _BEFORE_A_NOUN and sentence.tokens[place].quantity is None:
        place -= 1
    return place


def before_determiners(sentence: Sentence, at: int) -> int:
    """Return the place before the determiners of a noun: that of "and" in "and the oats"."""
    place = at - 1
    while sentence.text_at(place) in DETERMINERS:
        place -= 1
    return place


def after_determiners(sentence: Sentence, at: int, also: Container[str] = ()) -> int:
    """Return the first place from a place on that holds no "the", "all" or the like, nor one of some other words."""
    while sentence.text_at(at) in DETERMINERS or sentence.text_at(at) in also:
        at += 1
    return at


# What is baked in one piece and shared out, "one" of which is no serving.
_SHARED_OUT = frozenset(
    "gratin pie loaf meatloaf cake quiche frittata lasagna casserole tart bake crumble cobbler pizza roast flan "
    "galette tagine paella stew curry chili risotto pilaf goulash gumbo chowder hash moussaka strata "
    "traybake pot pan tray batch recipe dish".split()
)
ONE_PIECE = frozenset("cake loaf pie tart quiche torte cheesecake meatloaf galette frittata".split())
_ONE_OF_MANY = ("a", "an", "one", "per", "each", "every")
_ALL_OF_IT = frozenset(("whole", "entire", "complete", "the whole", "the entire", "all", "all of", "full"))


def dish_part(sentence: Sentence, at: int) -> About:
    """Return the part of the dish that a word names with what stands before it: "half a plate", "the whole pot"."""
    token = sentence.tokens[at]
    if token.parts["dish"] == "part":
        return About(UNKNOWN, words=token.text)
    kind = WHOLE if token.parts["dish"] == "whole" and sentence.text_at(at - 1) not in ("each", "every") else SERVING
    if token.text in _SHARED_OUT and sentence.text_at(at - 1) in _ONE_OF_MANY:
        return About(WHOLE, or_dish=True)  # "each gratin": all of it, or a serving?
    if (measured := _measured_part(sentence, at, kind)) is not None:
        return measured
    place, count, whole = _counted_part(sentence, at, kind)
    halves = sentence.text_at(at + 1) == "and" and sentence.text_at(at + 2) in ("a half", "half")
    shared = sentence.text_at(at + 3) in ("of", *DETERMINERS) or sentence.is_a(at + 3, "nutrient")
    if halves and not shared:  # "a bowl and a half", but "... a bowl, and half of the fiber", "and half the zinc"
        count += 0.5
    if kind == SERVING and count > 1 and token.text.removesuffix("s") in _SHARED_OUT:
        return About(UNKNOWN, words=token.text)  # "two gratins"
    if kind == SERVING and count > 1:
        count = _of_them(sentence, place, at, count)
    if whole and kind == SERVING and count == 1 and (unclear := _hers_or_all(sentence, at)) is not None:
        return unclear
    if whole and kind == SERVING and count > 1:
        return About(SERVING, count)
    if whole and token.parts["dish"] == "dish":
        kind = WHOLE
    return About(kind, count, words=PLAIN if kind == WHOLE and not whole and count == 1 else "")


def _measured_part(sentence: Sentence, at: int, kind: str) -> About | None:
    """Return the part that "of" leads to: "a slice of the loaf", "100 grams of it"; None where there is none."""
    over = at - 1
    while sentence.text_at(over) in DETERMINERS or sentence.text_at(over) == "of":
        over -= 1
    if over < 0 or sentence.text_at(over + 1) != "of":
        return None
    if kind == WHOLE and sentence.tokens[over].is_a("dish"):
        return dish_part(sentence, over)
    measure = sentence.tokens[over].amount
    if measure.unit in WEIGHTS:
        return About(WEIGHT, measure.value * WEIGHTS[measure.unit])
    return About(UNKNOWN, words=sentence.said(range(over, at + 1))) if measure.unit in MEASURES else None


def _counted_part(sentence: Sentence, at: int, kind: str) -> tuple[int, float, bool]:
    """Return where the words before a part of the dish begin, how many they count, and whether they say the whole."""
    place, whole = at - 1, False
    while place >= 0 and at - place <= 5:
        quantity = sentence.tokens[place].quantity
        if quantity is not None:
            if quantity.unit not in ("", "times") or (quantity.unit and kind != SERVING):
                return place, 1.0, whole
            # "An eighth of the dip" is of all there is; "half a dip" and "half the plate" are of a serving.
            of_all = sentence.text_at(at - 1) in ("the", "this", "that", "our", "your")
            dish = sentence.tokens[at].parts["dish"] == "dish"
            return place, quantity.value, whole or (quantity.is_fraction and dish and of_all)
        if sentence.text_at(place) in _ALL_OF_IT:
            whole = True
        elif sentence.text_at(place) not in DETERMINERS and sentence.text_at(place) not in ("of", "the"):
            break
        place -= 1
    return place, 1.0, whole


def _hers_or_all(sentence: Sentence, at: int) -> About | None:
    """Return "the whole bowl", which may be hers or all there is, as what is to be asked; None for any other part."""
    if sentence.text_at(at - 1) not in ("the whole", "the entire") and sentence.text_at(at - 2) != "the":
        return None
    if sentence.text_at(at + 1) == "of" and sentence.text_at(at + 2) not in ("it", "this"):
        return About(UNKNOWN, words=sentence.said((at - 1, at)))  # "the whole bowl of hummus"
    return (
        About(WHOLE, or_dish=True) if sentence.text_at(at) in ("bowl", "bowlful") else None
    )  # the one it was made in?


def _of_them(sentence: Sentence, place: int, at: int, count: float) -> float:
    """Return how many are meant of those counted: "two of the eight bowls", "the eight bowls have ... each"."""
    behind = sentence.clause_of(at)
    if any(sentence.text_at(spot) in _FOR_ONE for spot in range(at + 1, behind[-1] + 1)):
        return 1.0
    before = place - 1
    while sentence.text_at(before) in DETERMINERS and sentence.text_at(before) not in _FOR_ONE:
        before -= 1
    if sentence.text_at(before) != "of":
        return count
    if sentence.text_at(before - 1) in (*_FOR_ONE, "any", "every", "every one", "each one"):
        return 1.0
    quantity = sentence.tokens[before - 1].amount if before > 0 else NO_QUANTITY
    if quantity.unit or quantity.value <= 0:
        return count
    return quantity.value * count if quantity.is_fraction else quantity.value


def dish_named(sentence: Sentence, at: int) -> About:
    """Return the dish that a word names; a part of it, such as its sauce, is not known by itself."""
    token = sentence.tokens[at]
    return About(UNKNOWN, words=token.text) if token.parts["dish"] == "part" else THE_DISH


def each_measure(sentence: Sentence, at: int) -> str:
    """Return the unit of "each tablespoon", "every cup"; empty for any other word."""
    unit = sentence.tokens[at].parts.get("unit", "") if at > 0 else ""
    return unit if unit in MEASURES and sentence.text_at(at - 1) in ("each", "every", "per", "any") else ""


def food_part(sentence: Sentence, at: int) -> About:
    """Return a food with the amount of it that was said: "a tablespoon of olive oil", "four eggs", "an apple"."""
    food = food_at(sentence, at)
    assert isinstance(food, FoodWord)
    place = at - 1
    inside = sentence.text_at(at + 1) in ("in", "inside", "on") and not sentence.tokens[
        min(at + 2, len(sentence) - 1)
    ].is_a("nutrient")
    while place >= 0 and sentence.text_at(place) in _SIZES:
        place -= 1
    if place >= 0:
        quantity = sentence.tokens[place].quantity
        if quantity is not None and not quantity.is_fraction and quantity.unit == "":
            return About(FOOD, quantity.value, (food,), "piece")
        if sentence.text_at(place) in ("a", "an", "one", "single", "each", "every") and not food.text.endswith("s"):
            over = place - 1 - (sentence.text_at(place - 1) == "of")
            part = sentence.tokens[over].amount if over >= 0 else NO_QUANTITY  # "half a banana"
            return About(FOOD, part.value if part.is_fraction and not part.unit else 1.0, (food,), "piece")
        if sentence.text_at(place) in ("of", "the") or quantity is not None:
            over = place
            while over >= 0 and sentence.text_at(over) in ("of", "the", *_SIZES):
                over -= 1
            measure = sentence.tokens[over].quantity if over >= 0 else None
            if measure is not None and measure.unit in MEASURES:
                return About(FOOD, measure.value, (food,), measure.unit)
            if each := each_measure(sentence, over):
                return About(FOOD, 1.0, (food,), each)
            if (
                (
                    over > 0
                    and sentence.text_at(over).removesuffix("s").removesuffix("e")
                    in ("glass", "glasse", "slic", "piec", "mug", "gla")
                )
                or sentence.text_at(over) in _GLASSES
                or sentence.text_at(over).removesuffix("s") in _GLASSES
            ):
                word = sentence.text_at(over)
                measure_name = (
                    _GLASSES.get(word)
                    or _GLASSES.get(word.removesuffix("s"))
                    or _GLASSES.get(word.removesuffix("es"))
                    or "piece"
                )
                before = sentence.tokens[over - 1].quantity if over > 0 else None
                return About(
                    FOOD, before.value if before is not None and before.unit == "" else 1.0, (food,), measure_name
                )
    return About(FOOD, 1.0, (food,), said_inside=inside)


_OF_AN_AMOUNT = DETERMINERS | {"of", "only", "just", "about"}


def with_so_much(sentence: Sentence, place: int) -> tuple[int, ...]:
    """Return the tokens of an amount that ends at a place and that "with" leads: "with half a teaspoon of salt"."""
    first, seen = place, False
    while first >= 0 and (sentence.tokens[first].quantity is not None or sentence.text_at(first) in _OF_AN_AMOUNT):
        seen = seen or sentence.tokens[first].quantity is not None
        first -= 1
    return tuple(range(first, place + 1)) if seen and sentence.text_at(first) in ("with", "using") else ()
