"""What stands around a word that carries a claim: its nutrients, the shares, the foods after "from", a denial."""

import re
from dataclasses import dataclass

from kit.speech.about.parts import DETERMINERS, is_dish, is_food, is_verb
from kit.speech.words.clauses import is_stop
from kit.speech.words.foods_said import FoodWord
from kit.speech.words.sentence import Sentence, food_at
from kit.speech.words.tokens import SHARE, Quantity

FILLERS = frozenset(
    "of the a an your our my its their all any real total good that this these very really quite truly more in as "
    "for it "
    "plain own lovely plenty lots both dietary".split()
)
_NOT = frozenset("not never neither nor no hardly scarcely without".split())
_BEFORE_NOT = frozenset(
    "is are was were be been a an the by any means really quite exactly very at all what you would call to it this "
    "that "
    "in so especially particularly truly actually technically strictly considered called either even going as by label "
    "true that case rules count counts claim say think where from as do does did have has had get gets contain".split()
)
SHARES = {
    "most": Quantity(0.5, 0.5, relation="most", is_fraction=True),
    "nearly all": Quantity(1.0, 1.0, relation="nearly all", is_fraction=True),
    "all": Quantity(1.0, 1.0, relation="all", is_fraction=True),
    "none": Quantity(0.0, 0.0, relation="none", is_fraction=True),
    "hardly any": Quantity(0.0, 0.0, relation="hardly", is_fraction=True),
    "a little": Quantity(0.05, 0.20, relation="between", is_fraction=True),
    "much": Quantity(0.30, 0.30, relation="much", is_fraction=True),
    "rest": Quantity(0.0, 0.0, relation="rest", is_fraction=True),
}
_LISTED_ON = frozenset("and or the in of your its well as".split())
_OVER_OR_UNDER = ("above", "below", "over", "under", "outside", "beyond", "past", "higher", "lower")
_DAY_WORDS = frozenset("need needs requirement requirements quota limit allowance maximum".split())


@dataclass(frozen=True, slots=True)
class Named:
    """A nutrient that is named at a place of the sentence."""

    nutrient: str
    place: int


def nutrients_after(sentence: Sentence, at: int, fillers: frozenset[str] = FILLERS) -> list[Named]:
    """Return the nutrients listed from a place on: "in sodium and saturated fat", "of vitamins A, C and K"."""
    found: list[Named] = []
    place = at
    while place < len(sentence):
        token = sentence.tokens[place]
        if token.is_a("nutrient") and token.quantity is None:
            found.append(Named(token.parts["nutrient"], place))
            place += 1
            continue
        text = token.text
        if found and text == "in" and sentence.is_a(place + 1, "pronoun"):  # "of potassium in it, and of fat"
            over = place + 2
            while sentence.text_at(over) in (",", "and", "of"):
                over += 1
            if sentence.text_at(over - 1) == "of" and sentence.is_a(over, "nutrient"):
                place = over
                continue
        if not found and (text in fillers or token.is_a("day")):
            place += 1
            continue
        as_well = text != "as" or sentence.text_at(place + 1) == "well"
        if found and as_well and text in (",", "and", "or", "&", "nor", "plus", "as", "well", "both", "also"):
            over = place + 1
            while over < len(sentence) and (sentence.text_at(over) in _LISTED_ON or sentence.is_a(over, "day")):
                over += 1
            if (
                over < len(sentence)
                and sentence.tokens[over].is_a("nutrient")
                and not sentence.is_a(over + 1, "wording")
                and not _leads(sentence, over)
            ):
                place = over
                continue
        break
    return found


def _leads(sentence: Sentence, at: int) -> bool:
    """Return whether a nutrient begins a statement of its own: "and protein makes up", "and fat about a third"."""
    if at + 1 >= len(sentence):
        return False
    said = sentence.tokens[at + 1].amount
    counted = said.is_fraction or said.unit == "%"
    first = sentence.clause_of(at)[0]
    # But of "all of the iron and the zinc is in it" both.
    joined = "and" in (sentence.text_at(at - 1), sentence.text_at(at - 2))
    told = not joined or any(is_verb(sentence, place) for place in range(first, at))
    return counted or (told and is_verb(sentence, at + 1) and not sentence.tokens[at + 1].is_a("wording"))


def nutrient_before(sentence: Sentence, at: int, whole: bool = False) -> Named | None:
    """Return the nearest nutrient named before a place, in its clause or, with `whole`, anywhere before."""
    first = 0 if whole else sentence.clause_of(at)[0]
    for place in range(at - 1, first - 1, -1):
        token = sentence.tokens[place]
        if token.is_a("nutrient") and token.quantity is None:
            return Named(token.parts["nutrient"], place)
    return None


def topic(sentence: Sentence, at: int) -> Named | None:
    """Return the nutrient that a statement is opened with: "when it comes to iron, a bowl has", "for fiber, ..."."""
    first = _statement(sentence, at)
    comma = next((place for place in range(first, min(at, first + 9)) if sentence.text_at(place) == ","), None)
    if comma is None or not _TOPIC.match(" ".join(sentence.texts[first:comma])):
        return None
    named = [place for place in range(first, comma) if sentence.is_a(place, "nutrient")]
    return Named(sentence.tokens[named[0]].parts["nutrient"], named[0]) if named == [comma - 1] else None


_TOPIC = re.compile(
    r"(?:and |but |now |then )*(?:as for|for|on|when it comes to|in terms of|regarding|speaking of|turning to"
    r"|concerning|in the way of|where) (?:the |your |its |daily |[a-z]+ )?[a-z]"
)


def day_opens(sentence: Sentence, at: int) -> bool:
    """Return whether a statement opens with what a day needs: "of all that you need in a day, a bowl gives you"."""
    first = _statement(sentence, at)
    comma = next((place for place in range(first, min(at, first + 12)) if sentence.text_at(place) == ","), first)
    led = sentence.text_at(first) in ("of", "for") or sentence.texts[first : first + 2] == ("out", "of")
    opens = range(first, comma)
    plain = all(sentence.tokens[place].quantity is None and not sentence.is_a(place, "nutrient") for place in opens)
    return led and plain and any(is_day(sentence, place) for place in opens)


def _statement(sentence: Sentence, at: int) -> int:
    """Return where the statement begins in which a token stands: behind the last stop."""
    while at > 0 and not is_stop(sentence.tokens[at - 1]):
        at -= 1
    return at


def antecedent(sentence: Sentence, at: int) -> Named | None:
    """Return what "of it" or "of them" goes back to: the nearest nutrient, or number of calories, before a place."""
    for place in range(at - 1, -1, -1):
        token = sentence.tokens[place]
        if token.is_a("nutrient") and token.quantity is None:
            return Named(token.parts["nutrient"], place)
        if token.quantity is not None and token.quantity.unit in ("kcal", "kJ"):
            return Named("energy", place)
    return None


def of_what_went_before(sentence: Sentence, at: int) -> bool:
    """Return whether a share is of something said before: "two thirds of them", "all of it", "most of which"."""
    merged = sentence.text_at(at).endswith(" of")
    over = at + 1 if merged else at + 2
    led = merged or sentence.text_at(at + 1) == "of"
    return led and (sentence.is_a(over, "pronoun") or sentence.text_at(over) in ("which", "that", "those", "these"))


def share_at(sentence: Sentence, at: int) -> Quantity | None:
    """Return the share that a token says: "a third", "30 percent", "most", "all of"."""
    token = sentence.tokens[at]
    quantity = token.quantity
    if quantity is not None:
        if quantity.unit == "%":
            return Quantity(quantity.low / 100, quantity.high / 100, SHARE, quantity.relation)
        if quantity.unit == "times" or (quantity.is_fraction and not quantity.unit):
            return Quantity(quantity.low, quantity.high, SHARE, quantity.relation, True)
        return None
    if token.text == "every one" and sentence.texts[at + 1 : at + 3] == ("of", "them"):
        calories = any(one.amount.unit == "kcal" for one in sentence.tokens[:at])
        return SHARES["all"] if calories else None  # "480 calories, every one of them from fat"
    if token.is_a("share", "a little") and sentence.text_at(at + 1) in _OVER_OR_UNDER:
        return None  # "a little above the range"
    if token.text == "all" and sentence.text_at(at - 1) in ("at", "after"):
        return None  # "no fiber at all"
    if token.text == "much" and sentence.text_at(at - 1) in ("as", "so", "too", "how"):
        return None  # "as much protein as an egg" is no share
    return SHARES.get(token.parts.get("share", "")) if token.is_a("share") else None


def is_day(sentence: Sentence, at: int) -> bool:
    """Return whether a token speaks of what is needed in a day."""
    return sentence.is_a(at, "day") or sentence.text_at(at) in _DAY_WORDS


def foods_from(sentence: Sentence, at: int, end: int) -> tuple[list[FoodWord], list[int]]:
    """Return the foods listed from a place on, "the beans and the tomatoes", and their places."""
    found: list[FoodWord] = []
    places: list[int] = []
    place = at
    while place < end:
        token = sentence.tokens[place]
        food = food_at(sentence, place)
        if not found and token.text in (",", "and", "plus"):
            break
        if sentence.is_a(place + 1, "wording") and sentence.tokens[place + 1].hyphen_before:
            break  # "except for the almonds and sugar-free"
        if (
            food is not None
            and not is_dish(sentence, place)
            and (
                is_food(sentence, place) or not token.is_a("nutrient") or token.parts["nutrient"] in ("salt", "sugars")
            )
        ):
            found.append(food)
            places.append(place)
        elif not (
            token.text in DETERMINERS
            or token.text in (",", "and", "plus", "added", "we", "you", "use", "together", "with", "both", "alone")
        ):
            break
        if share_at(sentence, place) is not None and found:
            break
        place += 1
    return found, places


def _turned_off(sentence: Sentence, at: int) -> bool:
    """Return whether the statement ends by denying itself: "a fat-free, sodium-free stew it is not"."""
    end = at
    while end < len(sentence) and not is_stop(sentence.tokens[end]):
        end += 1
    end -= sentence.text_at(end - 1) in ("either", "though", "at all")
    last = [sentence.text_at(place) for place in range(end - 3, end)]
    first = at
    while first > 0 and not is_stop(sentence.tokens[first - 1]):
        first -= 1
    verbs = [place for place in range(first, end - 3) if sentence.text_at(place) in ("is", "are", "has", "have", "but")]
    return last in (["it", "is", "not"], ["they", "are", "not"], ["this", "is", "not"]) and not verbs


def negated(sentence: Sentence, at: int) -> bool:
    """Return whether what stands at a place is denied: "isn't low in", "not where most", "fat-free it is not"."""
    if "not" in sentence.words and _turned_off(sentence, at):
        return True
    for place in range(at + 1, min(len(sentence), at + 6)):
        if (
            sentence.text_at(place) in ("it", "this", "they")
            and sentence.text_at(place + 1) in ("is", "are")
            and sentence.text_at(place + 2) == "not"
            and sentence.text_at(place + 3) in (".", ",", "!", "", ";", "—", "but", "either", "though", "at all")
        ):
            return True
        if is_stop(sentence.tokens[place]) or sentence.text_at(place) in (",", "and"):
            break
    place = at - 1
    while place >= 0 and at - place <= 7:
        token = sentence.tokens[place]
        text = token.text
        if token.is_a("negation"):
            return True
        if text == "not" and _would_not_think(sentence, place):
            return False
        if text in _NOT and text not in ("no", "without"):
            return sentence.text_at(place + 1) not in ("only", "just", "merely", "simply")
        if text == "no" and sentence.text_at(place - 1) in ("is", "are") and sentence.text_at(place - 2) != "there":
            return True  # "it is no vegetarian bread"
        if text in ("longer", "way", "means") and sentence.text_at(place - 1) == "no":
            return True
        if is_stop(token) or text == ",":
            return False
        if (
            token.quantity is not None
            or token.is_a("nutrient")
            or token.is_a("kind")
            or token.is_a("wording")
            or token.is_a("allergen")
        ):
            if sentence.text_at(place + 1) in ("or", "nor"):
                return negated(sentence, place)
            return False
        if (
            text not in _BEFORE_NOT
            and not token.is_a("pronoun")
            and not is_dish(sentence, place)
            and text not in ("or", "low", "going", "to")
        ):
            return False
        place -= 1
    return False


def _would_not_think(sentence: Sentence, at: int) -> bool:
    """Return whether something is so though one might not think it: "you wouldn't think it has 400 calories"."""
    led = sentence.text_at(at - 1) in ("would", "could") and sentence.text_at(at - 2) in ("you", "anyone", "anybody")
    return led and sentence.text_at(at + 1) in ("think", "guess", "know", "believe", "imagine", "expect", "dream")


def another_statement(sentence: Sentence, at: int) -> bool:
    """Return whether "and" leads to something else said, not to a second quality: "lean, and not for vegetarians"."""
    joined = sentence.text_at(at) == "and" and at + 1 < len(sentence)
    following = sentence.text_at(at + 1)
    return joined and (following == "not" or following in DETERMINERS or bool(sentence.tokens[at + 1].parts))
