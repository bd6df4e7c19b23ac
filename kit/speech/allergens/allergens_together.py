"""Allergens that are named on behind one that is said to be there: "there's fish in it, and shellfish"."""

import re
from collections.abc import Sequence
from dataclasses import replace
from itertools import pairwise

from kit.speech.about.parts import DETERMINERS, after_determiners, before_determiners, is_verb
from kit.speech.about.slots import foods_from
from kit.speech.allergens.allergens_judged import AllergenClaim
from kit.speech.allergens.allergens_listed import HERE
from kit.speech.claim import FOOD, THE_DISH, About
from kit.speech.words.foods_said import FoodWord
from kit.speech.words.sentence import Sentence, food_at

_JOINS = frozenset(
    ", . ; — and plus but also too as well along with of course obviously naturally in it this there here some even a"
    " bit both".split()
)
_JOINS |= frozenset(DETERMINERS) | {"as well as", "a bit", "a little"}
_ENDS = frozenset(("", ".", "!", ";", ",", "and", "plus", "too", "also", "as", "in", "from", "—", ")"))
_LED = ("with", "in", "from")
_NO_FOODS = ("wheat", "gluten", "soy", "tree_nut")
_NAMELY = frozenset(": ( namely specifically meaning".split())


def with_those_behind(sentence: Sentence, claims: Sequence[AllergenClaim]) -> list[AllergenClaim]:
    """Return the claims with those of every allergen that is joined on behind one of them, and the foods named for it.

    Parameters
    ----------
    sentence : Sentence
        The sentence; the places that are read are used up.
    claims : sequence of AllergenClaim
        What has been read of allergens.
    """
    there = [claim for claim in claims if not (claim.free or claim.safe or claim.negated or claim.only)]
    if not there:
        return list(claims)
    found = list(claims)
    last = max(there, key=lambda claim: max(claim.places))
    at = max(last.places) + 1
    while at < len(sentence):
        if sentence.is_a(at, "allergen") and at not in sentence.used and _is_joined(sentence, at):
            sentence.used.add(at)
            name = sentence.tokens[at].parts["allergen"]
            found.append(replace(last, places=(*last.places[:1], at), allergen=name, foods=()))
        elif last.about.kind == FOOD and food_at(sentence, at) and _is_gapped(sentence, at + 1):
            sentence.used.add(at + 1)
            found.append(_of_its_own(sentence, last, at))
            at += 1
        elif at not in sentence.used and sentence.text_at(at) not in _JOINS:
            break
        at += 1
    if len(found) > 1 or last.allergen == "any":
        return found
    foods, places = _named(sentence, max(last.places) + 1)
    sentence.used.update(places)
    return [replace(last, places=(*last.places, *places), foods=foods)] if foods else found


def _is_joined(sentence: Sentence, at: int) -> bool:
    """Return whether an allergen ends a list, and begins no statement of its own."""
    return sentence.text_at(at + 1) in _ENDS and not is_verb(sentence, at + 1)


def _is_gapped(sentence: Sentence, at: int) -> bool:
    """Return whether an allergen stands right behind another food: "the pecans bring tree nuts, the noodles wheat"."""
    return sentence.is_a(at, "allergen") and at not in sentence.used and _is_joined(sentence, at)


def _of_its_own(sentence: Sentence, claim: AllergenClaim, at: int) -> AllergenClaim:
    word = food_at(sentence, at)
    about = About(FOOD, 1.0, (word,) if word is not None else ())
    return replace(
        claim, about=about, places=(at, at + 1), allergen=sentence.tokens[at + 1].parts["allergen"], foods=()
    )


def _named(sentence: Sentence, at: int) -> tuple[tuple[FoodWord, ...], tuple[int, ...]]:
    """Return the foods that are told for an allergen: "tree nuts: pecans and almonds", "fish (cod)"."""
    at += sentence.text_at(at) == ","
    in_form = sentence.texts[at : at + 4] == ("in", "the", "form", "of")
    if not in_form and sentence.text_at(at) not in _NAMELY:
        return (), ()
    foods, places = foods_from(sentence, at + (4 if in_form else 1), len(sentence))
    if any(food_at(sentence, place) is None for place in places):
        return (), ()
    return tuple(foods), tuple(places)


def origin(sentence: Sentence, at: int) -> tuple[int, list[FoodWord], list[int]] | None:
    """Return the verb, the foods of the dish and their places where an allergen is said to come from them.

    "Wheat comes with the noodles", "the milk in it is from the cream", "gluten is in the noodles"; None elsewhere.
    """
    place = at + 1
    if sentence.text_at(place) == "in" and sentence.text_at(place + 1) in HERE:
        place += 2
    says, led = sentence.text_at(place), sentence.text_at(place + 1)
    if (hidden := _hidden_in(sentence, at, place)) is not None:
        foods, places = those_from(sentence, hidden)
        return (place, foods, places) if foods and all(word.inside for word in foods) else None
    denied = says in ("is", "are") and led == "not"
    led = sentence.text_at(place + 2) if denied else led
    if sentence.is_a(place, "verb_from"):
        start = place + 1
    elif (says in ("come", "comes") and led in _LED) or (says in ("is", "are") and _comes(sentence, at, led)):
        start = place + 2 + denied
    elif says in _LED and (_goes_on(sentence, at) or (sentence.tokens[at].possessive and _comes(sentence, at, says))):
        start = place + 1  # "the wheat's in the noodles"
    elif place > at + 1 and says in ("is", "are") and _is_food_group(sentence, at, place + 1 + denied):
        start = place + 1 + denied  # "the nuts in it are almonds"
    else:
        return None
    foods, places = those_from(sentence, start)
    return (place, foods, places) if foods and all(word.inside for word in foods) else None


def _is_food_group(sentence: Sentence, at: int, behind: int) -> bool:
    """Return whether an allergen is a group of foods, and one is named behind it."""
    group = sentence.tokens[at].parts["allergen"] in ("nuts", "tree_nut", "shellfish", "seafood")
    return group and food_at(sentence, after_determiners(sentence, behind)) is not None


def _hidden_in(sentence: Sentence, at: int, place: int) -> int | None:
    """Return where the foods stand that alone hold an allergen: "hides in", "is only in", "? Only in"."""
    over = place
    if (sentence.tokens[at].parts["allergen"] in _NO_FOODS and sentence.text_at(over) in _SITS) or sentence.text_at(
        over
    ) in ("is", "are"):
        over += 1
    elif sentence.tokens[at].possessive and sentence.text_at(over) in _SOLELY:
        pass  # "the dairy's only in the mayo"
    elif not (sentence.text_at(over) == "?" and sentence.text_at(over + 1) in _SOLELY):
        return None
    else:
        over += 1
    first = over
    while sentence.text_at(over) in (*_SOLELY, "but"):
        over += 1
    alone = over > first or sentence.text_at(place) in _SITS
    return over + 1 if alone and sentence.text_at(over) in ("in", "from", "with") else None


_SITS = ("sits", "hides", "lives", "lurks", "lies", "stays", "hiding", "sitting", "resides")
_SOLELY = ("only", "just", "all", "nowhere", "entirely", "solely")


def those_from(sentence: Sentence, at: int) -> tuple[list[FoodWord], list[int]]:
    """Return the foods that one thing is said to come from, and their places: "the noodles and from the beef"."""
    foods, places = foods_from(sentence, at, len(sentence))
    foods, places = foods[:1], places[:1]
    while places and sentence.text_at(places[-1] + 1) == "and":
        over = after_determiners(sentence, places[-1] + 2 + (sentence.text_at(places[-1] + 2) in _LED))
        word = food_at(sentence, over)
        if word is None or sentence.is_a(over, "allergen") or is_verb(sentence, over + 1):
            break
        foods.append(word)
        places.append(over)
    return foods, places


def _comes(sentence: Sentence, at: int, led: str) -> bool:
    """Return whether "is in" or "is from" tells where an allergen is; where the eggs are is kitchen talk."""
    alone = " nowhere else" in sentence.text.lower()  # "milk is in the ricotta and nowhere else"
    return (
        led == "from" or (led == "in" and alone) or (led == "in" and sentence.tokens[at].parts["allergen"] in _NO_FOODS)
    )


def _goes_on(sentence: Sentence, at: int) -> bool:
    """Return whether an allergen goes on with a list of where each is from: "wheat with the noodles, milk with"."""
    first = before_determiners(sentence, at)
    before = any(sentence.is_a(place, "allergen") and place in sentence.used for place in range(first))
    return sentence.text_at(first) in (",", "and", ";") and before


def from_foods(sentence: Sentence, at: int) -> tuple[list[FoodWord], list[int]]:
    """Return the foods that an allergen is said to come from, and their places: ", but only in the bread"."""
    place = at + 1
    place += sentence.text_at(place) in ("is", "are") and sentence.text_at(place + 2) in HERE  # "milk is in it, but"
    if sentence.text_at(place) == "in" and sentence.text_at(place + 1) in HERE:
        place += 2  # "it has milk in it from the cheese"
    while sentence.text_at(place) in (",", "but", "only", "just"):
        place += 1
    if sentence.text_at(place) not in ("from", "in", "because", "thanks") and not sentence.is_a(place, "verb_from"):
        return [], []
    place = after_determiners(sentence, place + 1, ("of", "to"))
    if sentence.is_a(place, "pronoun"):
        return [], []
    return those_from(sentence, place)


def changes(sentence: Sentence, before: int) -> bool:
    """Return whether something is left out or swapped before a place."""
    return any(sentence.is_a(at, kind) for at in range(before) for kind in ("verb_leave_out", "verb_swap"))


def named_as_allergen(sentence: Sentence, word: FoodWord) -> bool:
    """Return whether a subject is itself named as an allergen: "eggs, milk and wheat are the allergens"."""
    return any(
        sentence.is_a(place, "allergen") and sentence.tokens[place].food is not None
        for place in range(len(sentence))
        if sentence.text_at(place) == word.text
    )


def there_is(sentence: Sentence, at: int) -> bool:
    """Return whether "there is" leads to a place: "there's sesame in this"."""
    place = at - 1
    while sentence.text_at(place) in (*DETERMINERS, "also", "no", "or", "and", ",") or sentence.is_a(place, "allergen"):
        place -= 1
    return sentence.text_at(place) in ("is", "are") and sentence.text_at(place - 1) == "there"


def is_other_food(sentence: Sentence, at: int) -> bool:
    """Return whether what has an allergen is a food named for another: "eggs are dairy", "the milk brings no soy"."""
    verb = at - 1 - (sentence.text_at(at - 1) in ("no", "a", "any"))
    says = sentence.text_at(verb) in ("is", "are", "has", "have", "contain", "contains", "bring", "brings")
    own = sentence.tokens[verb - 1].parts.get("allergen", "any") if says and verb > 0 else "any"
    opens = verb - 1 - (sentence.text_at(verb - 2) in DETERMINERS) == sentence.clause_of(verb)[0]
    return own not in ("any", sentence.tokens[at].parts["allergen"]) and opens


def is_in_it(sentence: Sentence, at: int, *denied: str) -> bool:
    """Return whether an allergen is said to be in the dish, or not to be: "milk is in there", "egg's not in it"."""
    last = at
    while not denied and sentence.text_at(last + 1) in (",", "and") and _is_listed(sentence, last + 2):
        last += 2
    both = last + 2 if sentence.text_at(last + 2) in ("both", "all", "each") else last + 1
    words = [sentence.text_at(place) for place in (last + 1, *range(both + 1, both + 3 + len(denied)))]
    if sentence.tokens[last].possessive:  # "milk's in it"
        words = ["is", *(sentence.text_at(place) for place in range(last + 1, last + 3 + len(denied)))]
    is_in = words[:1] in (["is"], ["are"]) and words[1 : 2 + len(denied)] == [*denied, "in"]
    bare = sentence.text_at(at - 1) not in DETERMINERS and sentence.is_a(both + 3, "dish")
    return is_in and (words[-1] in HERE or (bare and words[-1] in ("the", "our", "your")))


def _is_listed(sentence: Sentence, at: int) -> bool:
    """Return whether a list goes on with an allergen or a food of the dish: "milk and hazelnuts are in it"."""
    food = food_at(sentence, at)
    return sentence.is_a(at, "allergen") or (food is not None and bool(food.inside) and is_verb(sentence, at + 1))


def told_to_be(sentence: Sentence) -> list[AllergenClaim]:
    """Return what a food of the dish is said to be where it is said to be in it: "hazelnuts are tree nuts, in here"."""
    inside = any(two in tuple(("in", word) for word in HERE) for two in pairwise(sentence.texts))
    found: list[AllergenClaim] = []
    for at in sentence.places("allergen"):
        word = food_at(sentence, at - 2)
        told = sentence.text_at(at - 1) in ("is", "are") and word is not None and bool(word.inside)
        if inside and told and word is not None and sentence.text_at(at + 1) in (",", ":", ";", "and", "—", "."):
            sentence.used.update((at - 2, at))
            found.append(
                AllergenClaim((at - 2, at), THE_DISH, False, sentence.tokens[at].parts["allergen"], foods=(word,))
            )
    return found


_HAS_THEM = re.compile(
    r"\b(?:has|have|contains?|brings?|got|are) (?:all (?:two|three|four|five|of them|of these)|both|the lot)\b"
    r"|\ball (?:three|four|of them) (?:are|is) in (?:it|here|there|this)\b"
)


def told_to_be_there(sentence: Sentence) -> list[AllergenClaim]:
    """Return the allergens of a list that are all said to be there: "milk, wheat and nuts: the salad has all three"."""
    places = sentence.places("allergen")
    last = max(places, default=0)
    listed = len(places) > 1 and not any(is_verb(sentence, place) for place in range(last))
    if not listed or not _HAS_THEM.search(" ".join(sentence.texts[last + 1 :])):
        return []
    sentence.used.update(places)
    return [AllergenClaim((at,), THE_DISH, False, sentence.tokens[at].parts["allergen"]) for at in places]


def listed_by_food(sentence: Sentence) -> list[AllergenClaim]:
    """Return allergens that are listed without a verb, each with its food: "wheat in the noodles, milk in the cheese".

    Only where there are several, and each food is in the dish: one alone may be where a cook puts it.
    """
    if told := told_to_be(sentence) or told_to_be_there(sentence):
        return told
    found: list[tuple[int, int, FoodWord]] = []
    for at in sentence.places("allergen"):
        place = after_determiners(sentence, at + 2)
        word = food_at(sentence, place)
        led = sentence.text_at(at + 1) in ("in", "from", "with") and sentence.text_at(at - 1) not in DETERMINERS
        if at not in sentence.used and led and word is not None and word.inside and not sentence.is_a(place, "dish"):
            found.append((at, place, word))
    last = max((place for _, place, _ in found), default=0)
    if len(found) < 2 or any(is_verb(sentence, place) for place in range(last)):
        return []
    for at, place, _ in found:
        sentence.used.update((at, place))
    kinds = [(at, place, word, sentence.tokens[at].parts["allergen"]) for at, place, word in found]
    return [AllergenClaim((at, place), THE_DISH, False, name, foods=(word,)) for at, place, word, name in kinds]
