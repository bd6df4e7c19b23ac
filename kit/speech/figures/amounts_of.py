"""What a spoken amount is of: the dish, a part of it, a food, or so much of a food."""

from dataclasses import replace

from kit.speech.about.bare_parts import is_halved, told_in_all
from kit.speech.about.basis import all_of_a_thing, basis_near, handful, piece_of, shared_out
from kit.speech.about.parts import MEASURES, dish_part, food_part, is_dish, is_food, is_serving, is_verb
from kit.speech.about.slots import Named, foods_from, share_at
from kit.speech.claim import FOOD, SERVING, THE_DISH, UNKNOWN, WHOLE, About
from kit.speech.words.sentence import Sentence, food_at

_ALL_OF_IT = ("the whole thing", "the entire thing", "the whole lot")
ENERGY_UNITS = ("kcal", "kJ", "MJ")
AMOUNT_UNITS = (*ENERGY_UNITS, "g", "mg", "µg", "iu")


def _unit_for_unit(sentence: Sentence, at: int) -> bool:
    """Return whether "ounce for ounce" begins at a place, which says no basis where nothing is compared."""
    again = sentence.text_at(at) == sentence.text_at(at + 2)
    return again and sentence.text_at(at + 1) == "for" and sentence.is_a(at, "unit")


def about_of(sentence: Sentence, at: int, subject: About) -> About:
    """Return what an amount at a place is said of, where `subject` is what its statement is about."""
    return (
        _of_what_leads(sentence, at, subject)
        or _of_so_much(sentence, at, subject)
        or _of_foods_behind(sentence, at, subject)
        or (THE_DISH if subject.kind not in (FOOD, UNKNOWN) and _a_serving_behind(sentence, at) else subject)
    )


def _of_what_leads(sentence: Sentence, at: int, subject: About) -> About | None:
    """Return what the words before an amount, or all of its statement, say that it is of; None where they do not."""
    for_each = next((place for place in sentence.clause_of(at) if _unit_for_unit(sentence, place)), None)
    if for_each is not None:
        return About(UNKNOWN, words=sentence.said((for_each, for_each + 2)))
    if subject.kind == FOOD and not subject.measure and sentence.texts[max(0, at - 2) : at] == (",", "with"):
        return replace(subject, or_dish=True)  # "tuna is a fish, with 17 grams of protein a bowl"
    if _of_each_served(sentence, at):
        return THE_DISH
    counted = is_serving(sentence, at - 2) and sentence.tokens[at - 3].quantity is not None
    if sentence.text_at(at - 1) == "for" and counted:
        sentence.used.add(at - 3)
        return dish_part(sentence, at - 2)  # "you'd have two bowls for about 680 calories"
    if subject == THE_DISH and any(text in _ALL_OF_IT for text in sentence.texts[sentence.clause_of(at)[0] : at]):
        return About(WHOLE, or_dish=True)  # "the whole thing is 700 calories": all there is, or hers?
    if subject.kind == FOOD and subject.measure and sentence.text_at(sentence.clause_of(at)[0]) == "so":
        return replace(subject, or_dish=True)  # "four eggs for two people, so 22 grams each"
    return None


def _of_so_much(sentence: Sentence, at: int, subject: About) -> About | None:
    """Return the food, or so much of it or of the dish, that is named beside an amount; None where none is."""
    if _of_food(sentence, at):
        return food_part(sentence, at + 2)
    if subject.kind != FOOD and (other := _piece_of_another(sentence, at)) is not None:
        return other
    near = basis_near(sentence, at, subject) or piece_of(sentence, at, subject)
    if near is not None:
        return near
    if subject == THE_DISH and told_in_all(sentence, at):
        return About(WHOLE, or_dish=True)  # "in total it's 370 calories"
    if subject == THE_DISH and is_halved(sentence, at):
        return About(SERVING, 0.5)
    if subject.kind != FOOD and (
        unknown := handful(sentence, at) or all_of_a_thing(sentence, at) or shared_out(sentence, at)
    ):
        return unknown
    adjective = sentence.text_at(at).split(" ")[-1] in ("calorie", "gram", "kcal", "kilojoule")
    return THE_DISH if adjective and is_dish(sentence, at + 1) else None  # "a 430-calorie plate"


def _piece_of_another(sentence: Sentence, at: int) -> About | None:
    """Return a piece of a food that is not in the dish, named behind an amount: "80 calories per slice of bread"."""
    for place in range(at + 1, sentence.clause_of(at)[-1]):
        piece = sentence.text_at(place) in _PIECES and sentence.text_at(place + 1) == "of"
        food = food_at(sentence, place + 2) if piece else None
        if food is not None and not food.inside and not is_dish(sentence, place + 2):
            return food_part(sentence, place + 2)
        each = sentence.text_at(place) == "per" and food_at(sentence, place + 1) is not None
        if each and not is_dish(sentence, place + 1) and not sentence.is_a(place + 1, "unit"):
            return About(UNKNOWN, words=sentence.said((place, place + 1)))  # "seven grams of fat per potato"
    return None


_PIECES = ("slice", "slices", "piece", "pieces", "glass", "mug")


def _of_foods_behind(sentence: Sentence, at: int, subject: About) -> About | None:
    """Return the foods that an amount is said to come from: "160 calories from an ounce of nuts"."""
    clause = sentence.clause_of(at)
    for place in range(at + 1, clause[-1] - 1):
        measured = sentence.text_at(place) == "from" and sentence.tokens[place + 1].amount.unit in MEASURES
        if measured and sentence.text_at(place + 2) == "of" and food_at(sentence, place + 3) is not None:
            return food_part(sentence, place + 3)
    for place in range(at + 1, clause[-1] + 1):
        if place > at + 1 and _is_counted_next(sentence, place):
            return None
        counted = sentence.text_at(place - 1) == "is" and sentence.text_at(place - 2) == "what"
        if sentence.text_at(place) not in ("from", "in") or subject.kind == FOOD or counted:
            continue
        over = place + 1
        while sentence.text_at(over) in ("the", "a", "an", "each", "every", "those", "that"):
            over += 1
        if over < len(sentence) and is_food(sentence, over) and not is_dish(sentence, over):
            return _from_foods(sentence, over, clause[-1] + 1) or food_part(sentence, over)
    return None


def _is_counted_next(sentence: Sentence, at: int) -> bool:
    """Return whether another amount or share begins: "24 grams of sugar, nine of them from the honey"."""
    other = sentence.tokens[at].amount.unit in (*AMOUNT_UNITS, "") and sentence.tokens[at].quantity is not None
    return other or share_at(sentence, at) is not None


def _a_serving_behind(sentence: Sentence, at: int) -> bool:
    """Return whether an amount is told for a serving: "the chicken brings 20 grams a plate"."""
    return any(
        sentence.text_at(place) in ("a", "per", "each", "every") and is_serving(sentence, place + 1)
        for place in range(at + 1, min(at + 6, sentence.clause_of(at)[-1] + 1))
    )


def _from_foods(sentence: Sentence, over: int, end: int) -> About | None:
    """Return the foods of "six grams from the oats and the berries"; None where there is one, or so much of one."""
    foods, places = foods_from(sentence, over, end)
    if places and is_verb(sentence, places[-1] + 1 if places[-1] + 1 < len(sentence) else places[-1]):
        return None  # "four grams from the beans and the rice is high in fiber"
    if len(foods) < 2 or food_part(sentence, over).measure:
        return None
    mostly = sentence.text_at(places[-1] + 1) in ("mostly", "mainly", "largely", "chiefly")
    return THE_DISH if mostly else About(FOOD, 1.0, tuple(foods))


def _of_each_served(sentence: Sentence, at: int) -> bool:
    """Return whether an amount is of each that is served: "ten bowls of 200 calories", "feeds ten at 205 a head"."""
    led = sentence.text_at(at - 1)
    before = [sentence.text_at(place) for place in sentence.clause_of(at) if place < at]
    served = led == "at" and any(word in ("feeds", "feed", "serves", "serve", "makes") for word in before)
    return served or (led in ("of", "at") and is_serving(sentence, at - 2))


def _of_food(sentence: Sentence, at: int) -> bool:
    """Return whether calories are those of a food: "120 calories of beef on each plate"."""
    energy = sentence.tokens[at].amount.unit in ENERGY_UNITS and sentence.text_at(at + 1) == "of"
    return energy and at + 2 < len(sentence) and is_food(sentence, at + 2)


_FOR_EACH = ("for every gram", "for each gram", "for every calorie", "for each calorie")


def is_aim(sentence: Sentence, at: int) -> bool:
    """Return whether a number is what several are to add up to, or what somebody eats in a day.

    "You'd need two of these to reach thirty grams", "for a person on 2,000 calories a day".
    """
    if sentence.text_at(at + 1) in ("a", "per", "each") and sentence.is_a(at + 2, "day"):
        return True
    if sentence.text_at(at - 1) in ("a", "an") and sentence.text_at(at - 2) in ("of", "than"):
        return True  # "less than half of a 500-calorie breakfast"
    if sentence.tokens[at].amount.value == 1 and sentence.text_at(at + 1) in ("in", "out of"):
        return True  # "one calorie in five"
    if any(words in " ".join(sentence.texts[:at]) for words in _FOR_EACH) or _per_calories(sentence):
        return True  # "for every gram of fat there are three grams of protein"
    over = at - 2 if sentence.text_at(at - 1) == "to" else at - 1  # "to get to fifteen grams"
    aim = sentence.text_at(over) in ("reach", "hit", "get", "make") and sentence.text_at(over - 1) == "to"
    return aim and any(sentence.text_at(place) in ("need", "needs", "take", "takes") for place in range(at))


def _per_calories(sentence: Sentence) -> bool:
    """Return whether numbers are said for so many calories, and not for a serving: "per hundred calories that's"."""
    return any(
        said.unit in ENERGY_UNITS
        and sentence.text_at(at - 1) in ("per", "every", "each")
        and not (at + 1 < len(sentence) and is_dish(sentence, at + 1))
        for at, said in sentence.quantities()
    )


_OF_THEM = ("that", "it", "which", "this", "them", "those", "these")


def part_of_it(sentence: Sentence, at: int) -> Named | None:
    """Return the nutrient that so much of one is said to be: "eight grams of fat, two of that saturated"."""
    of_which = sentence.texts[max(0, at - 2) : at] == ("of", "which") and sentence.text_at(at + 1) in ("is", "are")
    if not of_which and (sentence.text_at(at + 1) != "of" or sentence.text_at(at + 2) not in _OF_THEM):
        return None
    over = at + 2 if of_which else at + 3 + (sentence.text_at(at + 3) in ("is", "are", "being"))
    if sentence.text_at(over) == "saturated":
        return Named("saturated_fat", over)
    return Named(sentence.tokens[over].parts["nutrient"], over) if sentence.is_a(over, "nutrient") else None


def told_behind(sentence: Sentence, at: int) -> Named | None:
    """Return the nutrient of "it's 17 grams when it comes to fat", "17 grams is the fat in a plate"."""
    led = next((words for words in _BEHIND_AMOUNT if sentence.texts[at + 1 : at + 1 + len(words)] == words), ())
    over = at + 1 + len(led)
    unused = led and sentence.is_a(over, "nutrient") and over not in sentence.used
    return Named(sentence.tokens[over].parts["nutrient"], over) if unused else None


def only_one(sentence: Sentence, at: int) -> Named | None:
    """Return the one nutrient that a sentence names, before this clause: "salt-wise, a plate holds a gram"."""
    places = [place for place in sentence.places("nutrient") if place < at and place not in sentence.used]
    return Named(sentence.tokens[places[0]].parts["nutrient"], places[0]) if len(places) == 1 else None


_BEHIND_AMOUNT = (("when", "it", "comes", "to"), ("in", "terms", "of"), ("is", "the"), (":", "that", "is", "the"))


def unit_of_energy(sentence: Sentence) -> str:
    """Return the unit of a bare number of energy: kilojoules where these are named, "in kilojoules that's 1,280"."""
    kilojoules = not sentence.words.isdisjoint(("kilojoule", "kilojoules", "kj"))
    return "kJ" if kilojoules and sentence.words.isdisjoint(("calorie", "calories", "kcal")) else "kcal"


def gapped(sentence: Sentence, at: int) -> bool:
    """Return whether a number goes on without its unit and verb: "fiber is above twelve grams and fat below twenty"."""
    last = at - 1 - (sentence.text_at(at - 1) in _IS_AT)  # "and protein is past twenty"
    side = sentence.text_at(last) == "side" and sentence.text_at(last - 2) == "the"  # "on the fat side twelve"
    last -= side
    named = sentence.is_a(last, "nutrient") and last not in sentence.used
    bounded = side or sentence.tokens[at].amount.relation not in ("", "about", "exactly")
    return named and bounded and sentence.text_at(at + 1) in ("", ".", ",", "!", "and", "a", "per", "in")


_IS_AT = frozenset("at is are stays sits runs climbs goes gets comes lands tops".split())
