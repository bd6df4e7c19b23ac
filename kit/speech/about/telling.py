"""Names of nutrients and bare numbers that tell something though no family has used them."""

import re

from kit.food.composition import foods
from kit.speech.about.parts import back, is_dish, is_serving, is_verb
from kit.speech.about.slots import is_day
from kit.speech.words.clauses import is_stop
from kit.speech.words.foods_said import FoodWord
from kit.speech.words.sentence import Sentence, food_at
from kit.speech.words.tokens import Quantity, Token

# Nutrients whose names a cook also uses of other things.
ORDINARY = frozenset("salt sugars fat water iron zinc copper".split())
HAS = frozenset("has have had contains contain holds hold packs pack carries brings bring with".split())
HERE = ("it", "this", "here", "there", "these", "them")
_COOKS = frozenset("i we you i've we've you've ill well".split())
_METALS = ("iron", "zinc", "copper")
_ENDS_METAL = frozenset(". , ; ! ? in and or for too than as but at all here".split()) | {""}
_SOME = frozenset("some a bit little of extra more".split())
_COOLEST, _HOTTEST = 100, 212  # degrees Fahrenheit
_UP_TO = frozenset(
    "need needs want wants hit hits reach reaches at to past beyond above below under over than around about "
    "near".split()
)
_BEHIND_HEAT = (",", "with", "for", "and", "or", "inside", "when", "on", "in", "if")
_COOKED_THROUGH = ("meat", "poultry", "fish", "shellfish", "egg")
_MEATS = frozenset("meat poultry mince burger burgers bird roast steak".split())
_CUTS = ("cut", "halv", "slash", "reduc", "trim", "lower", "drop", "shav")
_JUDGED = frozenset("low high minimal negligible moderate small tiny".split())
_BESIDE = re.compile(r"\b(?:compared|versus|vs|against(?! the grain)|next to|relative to|set beside)\b")


def nutrient_tells(sentence: Sentence, at: int) -> bool:
    """Return whether the name of a nutrient tells something; salt, fat and sugar are also what a cook puts in."""
    token = sentence.tokens[at]
    name = token.parts["nutrient"]
    if name == "energy" and token.text == "energy":
        return False
    if name not in ORDINARY or sentence.text_at(at - 1) == "least":
        return True
    if "where" in sentence.texts[max(0, at - 2) : at] and name != "water":  # "the chicken is where the fat is"
        return True
    if name == "water":
        return False
    if sentence.texts[max(0, at - 3) : at] in ((".", "and", "of"), ("!", "and", "of")):  # "... 42 grams. And of fat."
        return True
    if sentence.texts[max(0, at - 2) : at] in (("change", "the"), ("changes", "the"), ("affect", "the")):
        return True  # "light coconut milk would not change the fat"
    if "what" in sentence.words and not sentence.words.isdisjoint(("least", "most")):  # "fat is what you get least of"
        return True
    if _is_judged(sentence, at) or _in_none_of_it(sentence, at) or _of_it_is(sentence, at):
        return True
    clause = sentence.clause_of(at)
    if name in _METALS and (any(is_day(sentence, place) for place in clause) or _is_held(sentence, at)):
        return True
    if _has_share_of(sentence, at) or _is_all_there_is(sentence, at) or _set_beside_another(sentence, at):
        return True
    if _is_brought(sentence, at) or _runs_for(sentence, at) or _is_mostly(sentence, at):
        return True
    return any(place not in sentence.used and _ranks(sentence, place, at) for place in clause)


def _is_held(sentence: Sentence, at: int) -> bool:
    """Return whether food is said to have a metal, or it to come from some: "the spinach has iron", no iron skillet."""
    verb = at - 1
    while sentence.text_at(verb) in _SOME or sentence.text_at(verb) in ("the", "any", "plenty", "lots"):
        verb -= 1
    held = sentence.text_at(verb) in HAS or sentence.is_a(verb, "verb_bring")
    held = held or " ".join(sentence.texts[max(0, verb - 1) : verb + 1]) in ("there is", "there are")
    comes = any(sentence.is_a(place, "verb_from") for place in range(at + 1, at + 4))
    return (held and sentence.text_at(at + 1) in _ENDS_METAL) or comes


def _of_it_is(sentence: Sentence, at: int) -> bool:
    """Return whether something is said of the fat, salt or sugar in it: "its fat is through the roof"."""
    inside = sentence.text_at(at + 1) == "in" and sentence.text_at(at + 2) in HERE
    behind = at + 1 + 2 * inside
    return (inside or sentence.text_at(at - 1) == "its") and sentence.text_at(behind) in ("is", "are")


def _in_none_of_it(sentence: Sentence, at: int) -> bool:
    """Return whether none of it is said to have fat, salt or sugar: "nothing in it has sugar", "Fat? None"."""
    clause = [sentence.text_at(place) for place in sentence.clause_of(at)]
    opens = not {"nothing", "none", "neither"}.isdisjoint(clause[:2]) or "nothing in it" in " ".join(clause)
    none = opens and not HAS.isdisjoint(clause)
    answered = sentence.text_at(at + 1) in ("?", ":") and sentence.text_at(at + 2) in ("none", "zero", "nil", "nothing")
    denied = sentence.text_at(at - 1) == "any" and sentence.text_at(at - 2) == "not"
    return none or answered or denied


def _is_mostly(sentence: Sentence, at: int) -> bool:
    """Return whether fat, salt or sugar is said to be mostly a food: "the fat is mostly butter"."""
    is_at = at + 1 - sentence.tokens[at].possessive  # "the fat's half coconut"
    first = sentence.tokens[is_at + 1] if is_at + 1 < len(sentence) else None
    share = first is not None and (first.text in _MOSTLY or first.amount.is_fraction)
    led = (sentence.text_at(at + 1) in ("is", "are") or sentence.tokens[at].possessive) and share
    return led and any(food_at(sentence, place) is not None for place in range(at + 3, at + 6))


_MOSTLY = ("mostly", "mainly", "largely", "all", "chiefly", "only", "just", "almost all", "nearly all", "really")


def _ranks(sentence: Sentence, place: int, at: int) -> bool:
    """Return whether a word ranks a nutrient: "main source of", "high in"."""
    near = sentence.text_at(place + 1) == "in" and abs(place - at) < 4
    return sentence.is_a(place, "rank") or (sentence.is_a(place, "wording") and near)


def _is_judged(sentence: Sentence, at: int) -> bool:
    """Return whether fat, salt or sugar is said to be low: "the fat in it is low", "hardly any fat"."""
    over = at + 1
    while sentence.text_at(over) in (
        "in",
        "it",
        "this",
        "here",
        "content",
        "level",
        "is",
        "are",
        "stays",
        "very",
        "quite",
    ):
        over += 1
    kept = sentence.words & {"keep", "keeps", "keeping"} or over > at + 1
    ends = sentence.text_at(over + 1) in ("", ".", ",", "!", ";", "and", "but", "for", "too", "here")
    judged = sentence.text_at(over) in _JUDGED and bool(kept) and ends
    barely = sentence.text_at(at - 1) == "any" and not sentence.words.isdisjoint(("hardly", "barely", "scarcely"))
    return judged or barely


def _has_share_of(sentence: Sentence, at: int) -> bool:
    """Return whether something has a share of fat, salt or sugar: "it has half the fat of ..."; not one put into it."""
    over = at - 1
    while sentence.text_at(over) in ("of", "the", "as", "much"):
        over -= 1
    if over < 0 or over == at - 1 or sentence.tokens[over].quantity is None:
        return False
    if sentence.text_at(at + 1) == "of" and sentence.text_at(at + 2) in ("a", "an", "my", "your", "most", "regular"):
        return True
    first = sentence.clause_of(at)[0]
    # "With half the salt it would be": what is put in, not what there is.
    before = [place for place in range(first, over) if not (place == first and sentence.text_at(place) == "with")]
    return any(sentence.text_at(place) in HAS and sentence.text_at(place - 1) not in _COOKS for place in before)


def _is_brought(sentence: Sentence, at: int) -> bool:
    """Return whether a food or a swap is said to add some fat, salt or sugar; not who puts it into the pan."""
    over = at - 1
    while sentence.text_at(over) in _SOME or sentence.is_a(over, "share"):
        over -= 1
    that_bring = sentence.text_at(over) == "bring" and sentence.text_at(over - 1) == "that"
    if (sentence.text_at(over) not in ("adds", "brings") and not that_bring) or sentence.text_at(at + 1) == "to":
        return False
    before = [place for place in sentence.clause_of(at) if place < over]
    return any(sentence.tokens[place].food is not None or sentence.is_a(place, "pronoun") for place in before)


def _runs_for(sentence: Sentence, at: int) -> bool:
    """Return whether foods are ranked for a nutrient: "the beans are well ahead of the beef for zinc"."""
    clause = sentence.clause_of(at)
    foods = [place for place in clause if place < at and food_at(sentence, place) is not None]
    between = sentence.texts[foods[0] : foods[-1]] if len(foods) > 1 else ()
    led = sentence.text_at(at - 1) in ("for", "in") and not {"behind", "ahead", "after", "beats"}.isdisjoint(between)
    leads = sentence.text_at(at - 1) in ("on", "for", "in") and sentence.text_at(at - 2) in _LEADS_ON
    ahead = sentence.text_at(at - 1) in ("for", "in", "on", "to", "the") and not _AHEAD.isdisjoint(sentence.words)
    return led or (leads and bool(foods)) or (ahead and any(food_at(sentence, place) for place in clause))


_AHEAD = frozenset("order ahead behind beats beat wins outdoes tops trails".split())
_LEADS_ON = frozenset("leads lead wins win tops scores ranks first ahead top lags trails last".split())


def _is_all_there_is(sentence: Sentence, at: int) -> bool:
    """Return whether it is the only sugar, not much salt, or not a gram of fat that is said to be in it."""
    first = sentence.clause_of(at)[0]
    before = " ".join(sentence.text_at(place) for place in range(first, at))
    inside = sentence.text_at(at + 1) == "in" and sentence.text_at(at + 2) in HERE
    put_in = before.endswith(" of") and "not a" in before and sentence.text_at(at + 1) in ("added", "in", "goes")
    none = inside and ("not a " in f"{before} " or before.endswith(("not much", "not a lot of", "not any")))
    return put_in or none or (before.endswith("only") and (inside or "from" in sentence.text.lower().split()))


def _set_beside_another(sentence: Sentence, at: int) -> bool:
    """Return whether a nutrient is said to be cut when it is set beside another dish: "compared with a shop muffin"."""
    cut = any(word.startswith(_CUTS) for place in range(len(sentence)) for word in sentence.text_at(place).split())
    behind = " ".join(sentence.text_at(place) for place in range(at + 1, len(sentence)))
    return cut and _BESIDE.search(behind) is not None


def is_heat(sentence: Sentence, at: int, said: Quantity) -> bool:
    """Return whether a bare number may be how hot meat gets: "needn't go any higher than 150 with the turkey"."""
    bare = not said.unit and not said.is_fraction and _COOLEST <= said.value <= _HOTTEST
    led = sentence.text_at(at - 1) in _UP_TO or not _UP_TO.isdisjoint(sentence.text_at(at).split())
    alone = sentence.text_at(at + 1) in _BEHIND_HEAT or at + 1 >= len(sentence) or is_stop(sentence.tokens[at + 1])
    return bare and led and alone and any(map(_is_meat, sentence.tokens))


def _is_meat(token: Token) -> bool:
    """Return whether a token names what is told done by how hot it is inside."""
    keys = (*token.food.inside, *token.food.outside) if isinstance(token.food, FoodWord) else ()
    groups = {foods()[key].group for key in keys if key in foods()}
    return not groups.isdisjoint(_COOKED_THROUGH) or not _MEATS.isdisjoint(token.text.split())


def is_another(sentence: Sentence, at: int) -> bool:
    """Return whether a food of the dish is said to be one that is not in it: "the milk in it is skim milk"."""
    food = food_at(sentence, at)
    if food is None or food.inside or sentence.text_at(at + 1) not in ("", ".", ",", "!"):
        return False
    led = back(sentence, at)
    before = (food_at(sentence, place) for place in sentence.clause_of(at) if place < led)
    return sentence.text_at(led) in ("is", "are") and any(word is not None and word.inside for word in before)


def is_low(sentence: Sentence, at: int) -> bool:
    """Return whether a nutrient is said to be low or high: "it's low in sodium; fat is low as well"."""
    low = sentence.text_at(at) in ("low", "high", "lower", "higher", "negligible")
    if not (low or sentence.is_a(at, "share", "hardly any")) or sentence.text_at(at - 1) not in ("is", "are", "also"):
        return False
    return sentence.is_a(at - 2, "nutrient") or sentence.is_a(at - 3, "nutrient")


_EACH = frozenset("person each head apiece serving portion".split())


def spoons(sentence: Sentence, at: int) -> bool:
    """Return whether a serving is said to have so many spoons of sugar, salt or fat; what goes in is no claim."""
    if sentence.tokens[at].amount.unit not in ("tsp", "tbsp") or sentence.text_at(at + 1) != "of":
        return False
    if not (sentence.is_a(at + 2, "nutrient") and sentence.tokens[at + 2].parts["nutrient"] in ORDINARY):
        return False
    before = [place for place in sentence.clause_of(at) if place < at]
    if sentence.text_at(before[-1] if before else -1) in ("is", "are") and before[:-1]:
        before = list(sentence.clause_of(at))  # "there's a teaspoon of sugar in a slice"
    has = any(
        sentence.text_at(place) in ("has", "have", "holds", "hides", "hold", "is", "are", "comes") for place in before
    )
    of_serving = any(is_dish(sentence, place) and sentence.tokens[place].parts["dish"] == "serving" for place in before)
    return has and of_serving


def and_a_half(sentence: Sentence, at: int) -> bool:
    """Return whether a portion is told as so many cups and a half: "a cup and a half per person"."""
    words = {sentence.text_at(place) for place in sentence.clause_of(at)}
    halved = sentence.tokens[at].amount.unit == "cup" and sentence.text_at(at).endswith("half")
    return halved and sentence.text_at(at + 1) != "of" and bool(words & _EACH)


def counts_part(sentence: Sentence, at: int) -> bool:
    """Return whether a fraction is of a serving or of the dish: "half a plate"."""
    place = at + 1
    while sentence.text_at(place) in ("a", "an", "of", "the", "your", "this", "that"):
        place += 1
    return place < len(sentence) and is_dish(sentence, place)


def is_animal(sentence: Sentence, at: int) -> bool:
    """Return whether what comes from animals is named: "the one animal food in it"."""
    text, behind = sentence.text_at(at), sentence.text_at(at + 1)
    return text.startswith("animal product") or (
        text == "animal" and behind.startswith(("food", "ingredient", "thing"))
    )


def is_a_few(sentence: Sentence, at: int) -> bool:
    """Return whether so few grams or calories are told that are not counted: "a few grams of fat"."""
    token = sentence.tokens[at]
    if token.parts.get("unit", "") not in ("g", "mg", "kcal") or token.quantity is not None:
        return False
    few = sentence.text_at(at - 1) in ("few", "several", "dozen", "dozens", "hundred", "hundreds")
    over = at + 1 + (sentence.text_at(at + 1) == "of")
    put_in = sentence.is_a(over, "nutrient") and sentence.tokens[over].parts["nutrient"] in ("salt", "sugars", "water")
    return few and not put_in


def corrects(sentence: Sentence, at: int) -> bool:
    """Return whether a bare number corrects one before it: "500 calories? No, 285.", "two days, three at a push"."""
    before, behind = sentence.texts[max(0, at - 2) : at], sentence.texts[at + 1 : at + 3]
    last, ends = sentence.text_at(at - 1), behind in ((), (".",), ("!",))
    # "..., it has two", "in milligrams: 80", "..., leaving 50"
    closes = ends and (is_verb(sentence, at - 1) or last in ("got", "with", "you", ":", "leaving", "leaves", "leave"))
    yours = last in ("daily", "recommended", "usual")  # "ten squares give you your daily 28"
    told = [place for place in range(at) if sentence.tokens[place].amount.unit in ("g", "mg", "kcal")]
    a_bowl = behind[:1] == ("a",) and at + 2 < len(sentence) and is_serving(sentence, at + 2)
    for_one = behind[:1] in (("each",), ("apiece",)) or behind == ("a", "piece") or a_bowl
    if closes or yours:
        return bool(told)
    if for_one and sentence.tokens[at].amount.low >= 100 and last in ("is", "to", "are"):
        return True  # "it's 342 a piece"
    if behind == ("at", "a") and sentence.text_at(at + 3) == "time":
        return False  # "she made forty at a time"
    return before in (("no", ","), ("nope", ","), ("call", "it"), ("make", "that")) or behind in (
        ("at", "a"),
        ("at", "most"),
        ("at", "the"),
    )
