"""Whether a name accounts for every word of a line that may decide which food it is."""

from collections.abc import Collection, Sequence

from kit.food.finding import Name
from kit.food.vocabulary import SMALL_WORDS, line_words, words
from kit.lines.known_names import MISSING, KnownNames, kind_of
from kit.lines.lighter import every_lighter, said_less

# What a line counts or how it is cut up says nothing of which food it is, but a breast is not a leg.
_HARMLESS_MEASURES = frozenset(
    "stalk rib stem head bunch sprig ear cob spear fillet filet slice wedge segment block bulb sheet clove floret "
    "knob stick handful pod fistful cube half rasher".split()
)
_NO_FOOD = ("cut", "size", "edible", "container", "plain", "vague", "state", "spelling")
_OF_GROUND_MEAT = ("lean", "extra")  # a loose word on a roast or a ham, a grade on ground meat
_FAT_MEATS = frozenset("sausage frankfurter bacon salami pepperoni bologna kielbasa".split())
_ROOTS_AND_FRUITS = frozenset(  # whose leaves are another food
    "cassava taro yam potato potatoes turnips beets radishes daikon pumpkin squash pepper chili corn carrots".split()
)
_HOW_HOT = ("hot", "mild", "sweet", "spicy")  # says little of a sausage
_SEASONED = frozenset("basil garlic oregano italian mexican onion herb fire".split())  # in a can of tomatoes
_WITH_FAT = ("fried", "caramelized", "caramelised")  # before the comma it weighs and holds what the plain food does not
_COATS = ("honey", "maple", "chocolate", "yogurt", "caramel", "wasabi", "cinnamon", "sugar")
_SNACK = ("roasted", "toasted", "baked")  # a pulse so called is dry, not cooked
_LYING_IN = ("oil", "water", "juice", "syrup", "sauce")  # a can in oil is another food than one in water
FREE_FROM = {
    "glutenfree": "wheat",
    "wheatfree": "wheat",
    "dairyfree": "milk",
    "eggfree": "egg",
    "soyfree": "soy",
    "nutfree": "tree_nut",
}


def unaccounted(best: Name, name: Sequence[str], after: Sequence[str], names: KnownNames) -> list[str]:
    """Return the words that may make another food of it and that a name does not hold.

    Before the comma that is every word that is not known to be harmless; behind it, where a line says what is done to
    the food, only the words that are known to decide ("smoked", "unsweetened", "greek").

    Parameters
    ----------
    best : Name
        The name that fits best.
    name, after : sequence of str
        Words before the first comma, and behind it.
    names : KnownNames
        All names.
    """
    known = best.words | SMALL_WORDS | {word for _, said in every_lighter(name, after) for word in said.split()}
    if any(word.endswith("%") for word in (*name, *after)):
        known |= set(_OF_GROUND_MEAT)  # the percentage says how lean
    left = [word for word in name if word not in known and not word.endswith("%") and _may_decide(word, best)]
    left += [word for word in name if word not in known and _makes_another(word, best)]
    left += [word for word in (*name, *after) if word not in known and _is_coat_or_cut(word, best, (*name, *after))]
    left += [word for word in after if word in ("wheat", "grain") and _is_refined(best, known)]
    left += [word for word in after if word not in known and _decides_behind(word, best)]
    left += [word for word in after if word not in known and _makes_a_kind(word, best, name, names)]
    return [word for word in dict.fromkeys(left) if not _said_of_it(word, best, (*name, *after), names)]


def _makes_a_kind(word: str, best: Name, name: Sequence[str], names: KnownNames) -> bool:
    """Whether a word behind the comma makes another kind of what stands before it: "juice, cranberry-apple"."""
    if kind_of(word) != "food" or any(kind_of(other) == "food" and other != best.head for other in name):
        return False
    if names.belongs(word, best):
        return False
    of_the_word = (names.names[place] for place in names.by_word.get(word, ()))
    return any(other.words == {word, best.head} and other.head == best.head for other in of_the_word)


def is_missing(best: Name, names: KnownNames) -> bool:
    """Whether a name is one of a food that the table is known to lack."""
    return names.kind(best) == MISSING


def _makes_another(word: str, best: Name) -> bool:
    """Whether a word that says how food was cooked makes another food of it: fried onions, roasted chickpeas."""
    return word in _WITH_FAT or (word in _SNACK and best.food.group in ("pulse", "soy"))


def _is_coat_or_cut(word: str, best: Name, asked: Sequence[str]) -> bool:
    """Whether a word says what a nut is coated with ("almonds, honey-roasted"), or which meat of a bird is meant."""
    if word in _COATS:
        return best.food.group in ("nut", "seed") and word not in said_less(asked)
    if word in ("white", "light") and "breast" in best.words:
        return False
    return word in ("white", "dark", "light") and "meat" in asked and best.food.group == "poultry"


def _is_refined(best: Name, known: Collection[str]) -> bool:
    """Whether a food is the refined form of what a line calls "whole wheat" or "whole grain" behind the comma."""
    may_be = best.food.group in ("pasta", "bread", "snack", "baking") or "flour" in best.words
    return may_be and not best.food.whole_grain and {"wheat", "grain"}.isdisjoint(known)


def _may_decide(word: str, best: Name) -> bool:
    kind = kind_of(word)
    if word in FREE_FROM:
        return FREE_FROM[word] in best.food.allergens
    if word in ("skin", "skinless"):
        return best.food.group == "poultry" and (word == "skin" or "skin" in best.food.name)
    if word == "shell" and best.food.group == "shellfish":
        return best.food.refuse == 0  # where the table knows what they weigh, it is taken off
    if word == "water" and best.food.group in ("pulse", "vegetable", "soy"):
        return False  # what lies in a can or a package of them
    if word == "whipped":  # a spoon of it weighs less
        return best.food.group == "dairy" and all(row.cut != "whipped" for row in best.food.measures)
    if word == "baked":
        return best.food.group == "snack"
    if word in _HOW_HOT and best.food.group in ("meat", "poultry"):
        return False
    if word == "hot":
        return best.food.group in ("vegetable", "condiment", "spice")
    if word in _SEASONED and best.food.state == "canned" and "tomato" in best.words:
        return False
    if word in _OF_GROUND_MEAT and best.food.group in ("meat", "poultry"):
        return "ground" in best.food.name.lower() or not _FAT_MEATS.isdisjoint(best.food.key.split("-"))
    return kind not in _NO_FOOD and (kind != "measure" or _is_part(word, best))


def _decides_behind(word: str, best: Name) -> bool:
    decides = (
        kind_of(word) in ("deciding", "other")
        or word in FREE_FROM
        or word in ("skin", "skinless")
        or _is_part(word, best)
    )
    return decides and _may_decide(word, best)


def _is_part(word: str, best: Name) -> bool:
    """Whether a word names a part of an animal or plant that the food is not sold in: the breast, for ground turkey."""
    if kind_of(word) != "measure" or word in _HARMLESS_MEASURES:
        return False
    if word == "leaf" and _has_leaves(best):
        return False
    return all(row.measure != line_words()[word].meaning for row in best.food.measures)


def _has_leaves(best: Name) -> bool:
    """Whether a food's leaves are the food, or part of it: spinach and celery, but not cassava or fenugreek seed."""
    if best.food.group == "vegetable":
        return best.food.retention == "greens" or not _ROOTS_AND_FRUITS.intersection(best.food.base.split("-"))
    return best.food.group not in ("fruit", "pulse", "grain", "nut", "seed") and "seed" not in best.food.name.lower()


def _said_of_it(word: str, best: Name, asked: Sequence[str], names: KnownNames) -> bool:
    """Whether a word is said in a name of the same food: "rotini" in one of whole-wheat pasta, "ground" as its cut.

    A word that decides has to stand in a name all of whose words were written.
    """
    if kind_of(word) == "deciding":
        return any(word in found.words and found.food is best.food for found in names.within(asked))
    if word in _LYING_IN:
        return any(word in words(text) for text in (best.food.name, *best.food.other_names))
    return names.belongs(word, best) or any(word == row.cut for row in best.food.measures)
