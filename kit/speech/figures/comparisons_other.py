"""What a comparison compares with, and on which basis."""

from kit.speech.about.parts import DETERMINERS, dish_part, food_part, is_dish, is_food, is_serving
from kit.speech.about.slots import foods_from, is_day, negated, nutrient_before, nutrients_after
from kit.speech.claim import FOOD, THE_DISH, UNKNOWN, About
from kit.speech.figures.comparisons_claim import ComparisonClaim
from kit.speech.words.clauses import is_stop
from kit.speech.words.sentence import Sentence, food_at
from kit.speech.words.tokens import Quantity

_UNKNOWN = frozenset(
    "before last usual usually old normal normally regular ordinary typical average most other others original earlier "
    "standard store shop restaurant takeaway takeout takeouts packaged boxed bought similar ever used homemade many "
    "conventional classic traditional yours ours theirs previous first expected think expect anything fast".split()
)


_BASES = {"oz": "100 g", "g": "100 g", "lb": "100 g", "kg": "100 g", "cup": "cup", "kcal": "100 kcal"}
_BASES |= dict.fromkeys(("tbsp", "tsp"), "cup")


_BASIS_WORDS = {"weight": "100 g", "bite": "100 g", "serving": "serving", "portion": "serving", "volume": "cup"}
_BASIS_WORDS |= dict.fromkeys(("spoon", "spoonful", "glass"), "cup")


def _basis(sentence: Sentence) -> tuple[str, list[int]]:
    """Return the basis that is said: "ounce for ounce", "cup for cup", "per 100 grams", "by weight"."""
    for at in range(len(sentence) - 1):
        token = sentence.tokens[at]
        if sentence.text_at(at + 1) == "for" and at + 2 < len(sentence) and sentence.text_at(at + 2) == token.text:
            unit = token.parts.get("unit", "")
            if unit in _BASES:
                return _BASES[unit], [at, at + 2]
            word = token.text
            if word in _BASIS_WORDS:
                return _BASIS_WORDS[word], [at, at + 2]
        if token.text in ("per", "for", "by", "in") and sentence.text_at(at + 1) in ("weight", "volume", "the"):
            following = sentence.text_at(at + 1) if sentence.text_at(at + 1) != "the" else sentence.text_at(at + 2)
            if following in ("weight", "volume"):
                return _BASIS_WORDS[following], [at]
        if token.text in ("per", "in", "for") and at + 1 < len(sentence):
            quantity = sentence.tokens[at + 1].quantity
            unit = quantity.unit if quantity is not None else sentence.tokens[at + 1].parts.get("unit", "")
            if unit in ("g", "oz") and (quantity is None or quantity.value in (1, 100)):
                return "100 g", [at + 1]
            if unit in ("cup", "kcal") and (
                token.text == "per" or (quantity is not None and quantity.value in (1, 100))
            ):
                return _BASES[unit], [at + 1]
    return "", []


# Words on the way to what is compared with: "as much as you would get from", "than there is in".
_ON_THE_WAY = frozenset(
    "that of what you get from there is in does do even as with its are found d would have the those"
    " eating drinking".split()
)
# Words between a number and the food it counts: "two large slices of plain".
_BEFORE_FOOD = {"glass of"} | frozenset(
    "of the glass glasses slice slices piece pieces cooked boiled raw dry large plain ripe in same amount weight"
    " bowl mug".split()
)
_OF_OTHERS = ("most", "other", "average", "usual", "any")  # "most soups" are not this one


def _other(sentence: Sentence, at: int) -> tuple[About, str, list[int]] | None:
    """Return what something is compared with: a food, so much of it, another nutrient, or what is not known."""
    start = _past_the_way(sentence, at)
    place = _past_amount(sentence, start)
    if place >= len(sentence):
        return None
    token = sentence.tokens[place]
    quantities = [spot for spot in range(start, place) if sentence.tokens[spot].quantity is not None]
    named = is_food(sentence, place) or not token.is_a("nutrient") or _salt_put_in(sentence, place)
    if named and food_at(sentence, place) is not None and not is_dish(sentence, place):
        if sentence.text_at(place + 1) == "and" and food_at(sentence, place + 2) is not None:
            places = list(range(place, place + 3))
            return About(UNKNOWN, words=sentence.said(places)), "", places  # "fish and chips" is neither
        return food_part(sentence, place), "", [*quantities, place]
    if token.is_a("nutrient", "water"):
        return _not_known(sentence, start, place)  # "less calcium than water": the drink
    if token.is_a("nutrient"):
        return THE_DISH, token.parts["nutrient"], [place]
    if quantities and is_dish(sentence, place) and sentence.text_at(place - 1) not in _OF_OTHERS:
        return dish_part(sentence, place), "", [*quantities, place]
    one = next((spot for spot in range(start, min(place, start + 3)) if is_serving(sentence, spot)), -1)
    if one >= 0 and sentence.text_at(one + 1) == "of" and sentence.text_at(one + 2) in ("this", "it", "ours"):
        return dish_part(sentence, one), "", [one]  # "three eggs have less protein than a plate of this"
    return _not_known(sentence, start, place)


def _salt_put_in(sentence: Sentence, at: int) -> bool:
    """Return whether sodium is compared with that of the salt put in: "more of the sodium than the salt does"."""
    word = food_at(sentence, at) if at < len(sentence) else None
    salt = sentence.is_a(at, "nutrient", "salt") and word is not None and bool(word.inside)
    return salt and any(sentence.is_a(spot, "nutrient", "sodium") for spot in range(at))


def _past_the_way(sentence: Sentence, place: int) -> int:
    while sentence.text_at(place) in _ON_THE_WAY and not _unknown_after(sentence, place):
        place += 1
    own = sentence.text_at(place) == "it" and sentence.text_at(place + 1) in ("has", "does", "holds", "contains")
    if own and sentence.is_a(place + 2, "nutrient"):
        place += 2  # "as much fat as it has protein"
    return place


def _past_amount(sentence: Sentence, place: int) -> int:
    """Return the place behind "two large slices of", or that of a dish that is compared with itself."""
    while place < len(sentence):
        word = sentence.text_at(place)
        counted = sentence.tokens[place].quantity is not None
        added = word == "added" and _salt_put_in(sentence, place + 1)
        if not counted and word not in DETERMINERS and word not in _BEFORE_FOOD and not added:
            break
        if is_dish(sentence, place) and sentence.text_at(place + 1) != "of":
            break
        place += 1
    return place


def _not_known(sentence: Sentence, start: int, place: int) -> tuple[About, str, list[int]]:
    """Return what the table does not hold, in her words: five of them at most."""
    end = place
    while (
        end < len(sentence) and not is_stop(sentence.tokens[end]) and sentence.text_at(end) != "," and end - start < 5
    ):
        end += 1
    return About(UNKNOWN, words=sentence.said(range(min(start, end - 1), end))), "", list(range(start, end)) or [start]


def _unknown_after(sentence: Sentence, place: int) -> bool:
    return sentence.text_at(place) == "the" and sentence.text_at(place + 1) in _UNKNOWN | {"one", "recipe", "version"}


def source(sentence: Sentence, start: int, than: int) -> About | None:
    """Return the food of "more protein comes from the beans than from the beef"; None where nothing comes from any."""
    led = [at for at in range(start, than) if sentence.text_at(at) == "from" or sentence.is_a(at, "verb_from")]
    if not led:
        return None
    place = led[-1] + 1
    while place < than and (sentence.text_at(place) in DETERMINERS or sentence.tokens[place].amount.value):
        place += 1
    if place < than and sentence.text_at(place) in ("it", "this") and place + 1 == than:
        return THE_DISH
    if place < than and is_dish(sentence, place):
        return dish_part(sentence, place)  # "more calcium from a plate than from a cup of milk"
    foods, _ = foods_from(sentence, led[-1] + 1, than)
    found = About(FOOD, 1.0, tuple(foods))
    return found if foods and is_inside(found) else About(UNKNOWN)


def shared_of(sentence: Sentence, at: int) -> tuple[About, str, list[int]] | None:
    """Return what a share of a nutrient is of, where it is compared: so much of a food, or another one."""
    other = _other(sentence, at + 1)
    if other is None or other[1]:
        return None
    if other[0].kind == FOOD:
        return other if other[0].measure or sentence.text_at(at) == "of" else None
    told = other[0].kind == UNKNOWN and any(word in _UNKNOWN for word in other[0].words.lower().split())
    return other if told and sentence.text_at(at) != "in" else None


def held_in(sentence: Sentence, at: int, than: int) -> About | None:
    """Return the food of "more fiber in the beans than in the corn"; None where it is said of none."""
    if sentence.text_at(at) != "in":
        return None
    place = _past_amount(sentence, at + 1)
    food = place < than and food_at(sentence, place) is not None and not is_dish(sentence, place)
    return food_part(sentence, place) if food and place + 1 == than else None


def is_inside(about: About) -> bool:
    """Return whether something is a food of the dish as a whole, not so much of it."""
    return about.kind == FOOD and not about.measure and all(word.inside for word in about.foods)


def that_of(sentence: Sentence, about: list[About], at: int) -> ComparisonClaim | None:
    """Read "has the protein of four eggs": as much as so many of another food."""
    you = sentence.text_at(at) == "you" and sentence.text_at(at - 1) in ("gives", "give", "gets", "brings")
    has = (
        (you or sentence.text_at(at) in _HAS)
        and sentence.text_at(at + 1) == "the"
        and sentence.is_a(at + 2, "nutrient")
    )
    if not has or sentence.text_at(at + 3) != "of":
        return None
    other = _other(sentence, at + 4)
    counted = any(sentence.tokens[place].quantity is not None for place in (at + 4, at + 5) if place < len(sentence))
    if other is None or other[0].kind != FOOD or not (other[0].measure or counted):
        return None
    said = next((sentence.tokens[place].amount for place in other[2] if sentence.tokens[place].quantity), None)
    relation = said.relation if said is not None else "about"
    places = tuple(sorted({at + 2, *other[2]}))
    times = Quantity(1, 1, "times", relation)
    name = sentence.tokens[at + 2].parts["nutrient"]
    return ComparisonClaim(places, about[at], negated(sentence, at), name, 0, times, other[0], other[1])


def needed(sentence: Sentence, at: int) -> ComparisonClaim | None:
    """Read "you'd need four eggs to get the protein in one bowl": a serving has as much as so many of a food."""
    have_to_eat = sentence.text_at(at) == "eat" and sentence.texts[max(0, at - 2) : at] in (
        ("have", "to"),
        ("need", "to"),
    )
    if sentence.text_at(at) not in ("need", "take") and not have_to_eat:
        return None
    place = at + 1
    said = sentence.tokens[place].amount if place < len(sentence) else Quantity(0, 0)
    food = place + 1
    while sentence.text_at(food) in _BEFORE_FOOD:
        food += 1
    if said.value <= 0 or said.unit or food_at(sentence, food) is None:
        return None
    to_get = sentence.text_at(food + 1) == "to" and sentence.text_at(food + 2) in _TO_GET
    if not to_get and not (sentence.text_at(food + 1) == "for" and sentence.text_at(food + 2) in ("the", "that")):
        return None
    named = nutrients_after(
        sentence, food + 2 + to_get, frozenset("the as much same that this amount of all its".split())
    )
    served = [spot for spot in range(food + 3, len(sentence)) if is_serving(sentence, spot)]
    one = not served or sentence.text_at(served[0] - 1) in ("a", "one", "each", "this", "every", "the")
    if not named or not one:
        return None
    counts = [spot for spot in (served[0] - 1,) if sentence.tokens[spot].amount.value == 1] if served else []
    times = Quantity(1, 1, "times", said.relation)
    spots = tuple(sorted({at, place, food, named[0].place, *counts}))
    return ComparisonClaim(spots, THE_DISH, False, named[0].nutrient, 0, times, food_part(sentence, food), "")


_TO_GET = ("get", "match", "equal", "reach", "make", "beat", "give")
_HAS = frozenset("has have packs gives holds carries brings with get".split())


_BEATS = frozenset("beat beats outdo outdoes outdoing trump trumps outscore outscores outstrip outstrips".split())


def beats(sentence: Sentence, about: list[About], at: int) -> ComparisonClaim | None:
    """Read "beats Y for X", "tops Y on X", "outdoes Y when it comes to X"."""
    if sentence.text_at(at) not in _BEATS or sentence.tokens[at].quantity is not None:
        return None
    other = _other(sentence, at + 1)
    if other is None or other[0].kind == UNKNOWN:
        return None
    start = other[2][-1] + 1
    behind = [
        place
        for place in range(start, min(start + 6, len(sentence)))
        if sentence.text_at(place) in ("for", "on", "in", "to")
    ]
    named = nutrients_after(sentence, behind[-1] + 1, frozenset("the its".split())) if behind else []
    if not named:
        before = nutrient_before(sentence, at)
        named = [before] if before is not None and before.place not in sentence.used else []
    if not named:
        return None
    places = tuple(sorted({at, named[0].place, *other[2]}))
    return ComparisonClaim(places, about[at], negated(sentence, at), named[0].nutrient, 1, None, other[0], other[1])


def than_in(sentence: Sentence, at: int) -> int:
    """Return where the number stands of "more than one egg, but less than in two"; 0 where there is none."""
    place = at + 3
    if sentence.text_at(at + 1) != "than" or sentence.text_at(at + 2) not in ("in", "from"):
        return 0
    said = sentence.tokens[place].amount if place < len(sentence) else Quantity(0, 0)
    return place if said.value > 0 and not said.unit and not said.is_fraction else 0


def than_amount(sentence: Sentence, at: int) -> bool:
    """Return whether "than" leads to an amount, which it then bounds: "less sodium than 200 milligrams"."""
    led = sentence.text_at(at) == "than" and at + 1 < len(sentence)
    return led and sentence.tokens[at + 1].amount.unit in ("g", "mg", "kcal")


def than_needed(sentence: Sentence, at: int) -> bool:
    """Return whether "than" leads to what a day needs: "more vitamin C than you need in a day"."""
    at = than_of(sentence, at)
    led = sentence.text_at(at) == "than" and sentence.text_at(at + 1) in ("you", "anyone", "anybody")
    return led and any(is_day(sentence, place) for place in range(at + 2, sentence.clause_of(at)[-1] + 1))


def than_of(sentence: Sentence, at: int) -> int:
    """Return the place of "than" behind where something is: "more vitamin K in here than", "on this plate than"."""
    over = at
    while over < at + 4 and (sentence.text_at(over) in _IN_HERE or is_dish(sentence, over)):
        over += 1
    return over if sentence.text_at(over) == "than" else at


_IN_HERE = frozenset("here there in on it this the a one each your that".split())


def times_behind(sentence: Sentence, at: int) -> tuple[Quantity, int] | None:
    """Return how many times as much "than" leads to, and where the other begins: "more than twice the fiber of"."""
    said = sentence.tokens[at].quantity if at < len(sentence) else None
    if said is None or said.unit != "times":
        return None
    rest = nutrients_after(sentence, at + 1, frozenset("of the".split()))
    return Quantity(said.low, said.high, "times", "over"), (rest[-1].place + 1) if rest else at + 1
