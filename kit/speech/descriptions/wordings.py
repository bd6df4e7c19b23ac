"""Content wordings: "high in fiber", "iron-rich", "low-sodium", "fat-free", "lean", "unsalted", "no added sugar"."""

from collections.abc import Sequence
from dataclasses import replace

from kit.speech.about.parts import dish_named, food_part, is_dish, is_food, is_verb
from kit.speech.about.slots import Named, negated, nutrients_after
from kit.speech.about.unread import asked
from kit.speech.claim import FOOD, THE_DISH, UNKNOWN, About, Claim
from kit.speech.descriptions.additions import but_what_is_set_apart
from kit.speech.descriptions.wordings_claim import WordingClaim
from kit.speech.descriptions.wordings_named import is_called, named_behind, not_any
from kit.speech.descriptions.wordings_otherwise import is_meant_otherwise, noun_behind
from kit.speech.words.clauses import is_stop
from kit.speech.words.sentence import Sentence, food_at

FAMILY = "wording"
_OF_NUTRIENT = ("high", "good source", "low", "very low", "free", "reduced", "more", "light")
_BEHIND = ("high", "free", "reduced", "light", "good source")  # "iron-rich", "fat-free", "sodium-reduced"
_ALONE = ("lean", "extra lean", "unsalted", "no added sugar", "lightly salted")
_IN = frozenset("in of on with from for the a an your any all both plenty lots added".split())
_LOOSE_NUTRIENTS = ("salt", "water")
_PROVIDES = frozenset("contain contains provide provides supply supplies boast boasts deliver delivers".split())
_PUT_IN = frozenset("refined added white table processed extra granulated".split())
_NO = frozenset("no zero without".split())
_BARELY = ("hardly", "barely", "scarcely")
_A_SOURCE = frozenset("a the another one also as its our your plant natural".split())


def read(sentence: Sentence, about: list[About]) -> list[Claim]:
    """Return the content wordings that a sentence claims."""
    claims: list[Claim] = []
    for at in range(len(sentence)):
        if at in sentence.used:
            continue
        token = sentence.tokens[at]
        if "wording" in token.parts:
            claims += _wording(sentence, about, at)
        elif token.text == "containing" and token.hyphen_before and _names_a_vitamin(sentence, at - 1):
            claims += _behind(sentence, about, at, "good source")  # "vitamin-C-containing potatoes"
        elif token.text in _NO:
            claims += _none(sentence, about, at)
        elif token.text == "any" and (denied := not_any(sentence, at)):
            found = _none(sentence, about, at)
            sentence.used.update(denied if found else ())
            claims += [replace(claim, negated=False) for claim in found]
        elif token.text in _PROVIDES:
            named = nutrients_after(sentence, at + 1, frozenset("the a some you your with us both good useful".split()))
            claims += _claims(
                sentence, about, at, "good source", [one for one in named if not _is_thing(sentence, one)], False
            )
        elif token.is_a("share", "much") or token.is_a("share", "hardly any"):
            claims += _plenty(sentence, about, at)
    return [but_what_is_set_apart(sentence, claim) for claim in claims]


def _names_a_vitamin(sentence: Sentence, at: int) -> bool:
    named = sentence.tokens[at].parts.get("nutrient", "")
    return bool(named) and named not in (*_LOOSE_NUTRIENTS, "fat", "sugars", "energy") and at not in sentence.used


def _is_thing(sentence: Sentence, named: Named) -> bool:
    return sentence.tokens[named.place].parts["nutrient"] in _LOOSE_NUTRIENTS or (
        sentence.tokens[named.place].food is not None and is_food(sentence, named.place)
    )


def _wording(sentence: Sentence, about: list[About], at: int) -> Sequence[Claim]:
    """Return the claims of one word: of the nutrients before it ("fiber-rich"), behind it ("rich in"), or of none."""
    token = sentence.tokens[at]
    wording = token.parts["wording"]
    if wording in _ALONE:
        return _alone(sentence, about, at, wording)
    if _stands_behind(sentence, at, wording):
        return _behind(sentence, about, at, wording)
    if wording == "free":
        return _free_of(sentence, about, at)
    named = nutrients_after(sentence, at + 1, _IN if wording != "more" else frozenset({"with", "in"}))
    if wording == "light" and (not named or sentence.text_at(at + 1) not in ("in", "on")):
        return _alone(sentence, about, at, wording)
    if not named or named[0].place - at > 5:
        return []
    direct = named[0].place == at + 1
    if token.text == "source" and sentence.text_at(at - 1) not in _A_SOURCE:  # "a poor source of protein"
        sentence.used.update({at, *(one.place for one in named)})
        return [asked(sentence, (at - 1, *(one.place for one in named)))]
    if _names_a_thing(sentence, at, wording, named[0]):
        return []
    if not direct and sentence.text_at(at + 1) not in ("in", "of", "on", "with", "amount", "amounts", "for", "levels"):
        return []
    return _claims(sentence, about, at, wording, named, direct)


def _stands_behind(sentence: Sentence, at: int, wording: str) -> bool:
    """Return whether a wording is said of the nutrient before it: "iron-rich", "is sodium low?"."""
    before = sentence.tokens[at - 1] if at else None
    if before is None or not before.is_a("nutrient") or before.quantity is not None or wording not in _BEHIND:
        return False
    follows = sentence.text_at(at + 1) not in ("in", "of", "from", "on") and wording != "good source"
    return at - 1 not in sentence.used and (sentence.tokens[at].hyphen_before or follows)


def _free_of(sentence: Sentence, about: list[About], at: int) -> Sequence[Claim]:
    """Return what it is said to be free of, allergens apart."""
    if (at and sentence.tokens[at - 1].is_a("allergen")) or sentence.text_at(at + 1) not in ("of", "from"):
        return []
    named = nutrients_after(sentence, at + 2, _IN)
    named = [one for one in named if sentence.tokens[one.place].parts["nutrient"] != "water"]
    return _claims(sentence, about, at, "free", named, False)


def _names_a_thing(sentence: Sentence, at: int, wording: str, named: Named) -> bool:
    """Return whether a word and what follows it are a thing of the kitchen: "heavy fat", "full salt", "more sugar"."""
    if named.nutrient == "water" or wording == "more":
        return named.nutrient in ("salt", "sugars", "water", "fat")
    joined = sentence.tokens[named.place].hyphen_before or named.place != at + 1
    heavy = wording == "high" and sentence.text_at(at) in ("heavy", "full")
    return named.nutrient in ("fat", "salt") and heavy and not joined


def _behind(sentence: Sentence, about: list[About], at: int, wording: str) -> Sequence[Claim]:
    """Return claims whose wording follows its nutrients: "iron- and fiber-rich", "fat-free", "99 percent fat free"."""
    named = [Named(sentence.tokens[at - 1].parts["nutrient"], at - 1)]
    place = at - 2
    while (
        place >= 1
        and sentence.text_at(place) in ("and", "or", ",", "-")
        and sentence.tokens[place - 1].is_a("nutrient")
        and place - 1 not in sentence.used
    ):
        named.insert(0, Named(sentence.tokens[place - 1].parts["nutrient"], place - 1))
        place -= 2
    quantity = sentence.tokens[place].quantity if place >= 0 else None
    percent = quantity.value if quantity is not None and quantity.unit == "%" else 0.0
    if percent:
        sentence.used.add(place)
    return _claims(sentence, about, at, "percent fat free" if percent else wording, named, True, percent)


def _claims(
    sentence: Sentence,
    about: list[About],
    at: int,
    wording: str,
    named: list[Named],
    adjective: bool,
    percent: float = 0.0,
) -> list[WordingClaim]:
    claims: list[WordingClaim] = []
    named = [one for one in named if one.place not in sentence.used or one.place in sentence.counted]
    if not named:
        return []
    last = max(at, named[-1].place)
    first = min(at, named[0].place)
    subject, _noun = _subject(sentence, about, at, last, adjective, first)
    alone = not adjective and _by_itself(sentence, first)
    denied = negated(sentence, first)
    for one in named:
        places = tuple(sorted({at, one.place}))
        nutrient = "sodium" if one.nutrient == "salt" else one.nutrient
        start, end = sentence.tokens[first].start, sentence.tokens[last].end
        claims.append(WordingClaim(places, subject, denied, wording, nutrient, percent, start, end, adjective, alone))
    sentence.used.update({at, *(one.place for one in named)})
    return claims


def _by_itself(sentence: Sentence, at: int) -> bool:
    """Return whether a statement begins with a food as such, and does not say that it is the one in the dish."""
    first = sentence.clause_of(at)[0]
    starts = [first, *(place + 1 for place in range(first, at) if sentence.text_at(place) in _LEADS_TO)]
    return any(is_food(sentence, one) and one + 1 < at and is_verb(sentence, one + 1) for one in starts)


_LEADS_TO = frozenset("that so and know say think find well now then".split())


def _subject(
    sentence: Sentence, about: list[About], at: int, last: int, adjective: bool, first: int = -1
) -> tuple[About, int]:
    """Return what a wording is said of; an adjective is said of the noun that follows it."""
    before = (first if first >= 0 else at) - 1
    while sentence.text_at(before) in ("very", "really", "naturally", "truly", "also", "both", "quite", "not", "all"):
        before -= 1
    predicate = sentence.text_at(before) in ("is", "are", "was", "were", "stays", "stay", "being") and sentence.text_at(
        last + 1
    ) in ("", ",", ".", "and", "but", "too", ";", "!", "or")
    if adjective and not predicate and not (about[at].kind == FOOD and _is_said_to_be(sentence, before)):
        place = last + 1
        while place < len(sentence) and place - last < 8:
            token = sentence.tokens[place]
            if (
                is_stop(token)
                or (is_verb(sentence, place) and not token.is_a("food"))
                or token.text in ("with", "because", "that", "which", "than", "if", "when", "unless", "where")
            ):
                break
            if is_food(sentence, place) and not token.is_a("nutrient"):
                part = food_part(sentence, place)
                called = is_called(sentence, before)
                if called and not any(word.inside for word in part.foods):
                    return THE_DISH, place
                return About(FOOD, 1.0, part.foods, said_inside=part.said_inside, or_dish=called), place
            if is_dish(sentence, place):
                return dish_named(sentence, place), place
            place += 1
    named = named_behind(sentence, last)
    if named >= 0:
        part = food_part(sentence, named)
        return About(FOOD, 1.0, part.foods, said_inside=part.said_inside), named
    subject = about[at]
    if subject.kind == FOOD:
        return About(FOOD, 1.0, subject.foods, said_inside=subject.said_inside, or_dish=subject.or_dish), -1
    return (subject if subject.kind == UNKNOWN else THE_DISH), -1


def _is_said_to_be(sentence: Sentence, at: int) -> bool:
    """Return whether what comes is what the subject is: "cod is a lean fish", "beans are high-fiber foods"."""
    verb = last = at - (sentence.text_at(at) in ("a", "an", "one"))
    while sentence.text_at(verb) in ("not", "never", "hardly", "also", "really", "such", "quite", "actually"):
        verb -= 1
    return sentence.text_at(verb) == "are" or (last < at and sentence.text_at(verb) == "is")


def _alone(sentence: Sentence, about: list[About], at: int, wording: str) -> list[Claim]:
    """Return a claim whose wording needs no nutrient, when its neighbours show that the dish or a food is meant."""
    token = sentence.tokens[at]
    noun = noun_behind(sentence, at)
    is_noun = noun < len(sentence) and (
        is_dish(sentence, noun) or is_food(sentence, noun) or sentence.is_a(noun, "group", "meat")
    )
    if wording in ("light", "lean") and is_meant_otherwise(sentence, at, wording, noun if is_noun else None):
        return []
    subject, _ = _subject(sentence, about, at, at, is_noun)
    sentence.used.add(at)
    denied, alone = negated(sentence, at), _by_itself(sentence, at)
    return [WordingClaim((at,), subject, denied, wording, "", 0.0, token.start, token.end, is_noun, alone)]


def _none(sentence: Sentence, about: list[About], at: int) -> Sequence[Claim]:
    """Return claims of none of a nutrient: "no cholesterol", "zero fat", "without any sodium"."""
    named = nutrients_after(sentence, at + 1, frozenset("any of the real".split()) | _PUT_IN)
    put_in = {sentence.text_at(place) for place in range(at + 1, named[0].place)} & _PUT_IN if named else set()
    if put_in and named[0].nutrient in ("sugars", "fat"):  # "no refined sugar", "no extra sugar", "no added fat"
        sentence.used.update({at, named[0].place})
        start, end = sentence.tokens[at].start, sentence.tokens[named[0].place].end
        wording = "no added sugar" if named[0].nutrient == "sugars" else "no added fat"
        return [WordingClaim((at, named[0].place), THE_DISH, False, wording, "", 0.0, start, end)]
    named = [one for one in named if one.nutrient not in ("water", "energy") or one.nutrient == "energy"]
    if not named or named[0].place > at + 3 or sentence.is_a(named[0].place + 1, "wording"):
        return []
    if named[0].nutrient == "salt":
        sentence.used.update({at, named[0].place})
        token = sentence.tokens[at]
        return [
            WordingClaim(
                (at, named[0].place),
                about[at] if about[at].kind == FOOD else THE_DISH,
                False,
                "unsalted",
                "",
                0.0,
                token.start,
                sentence.tokens[named[0].place].end,
            )
        ]
    if named[0].nutrient == "fat" and food_at(sentence, named[0].place) is not None:
        return []
    last = named[-1].place
    behind = " ".join(sentence.texts[last + 1 : last + 4])
    if behind.startswith(("to speak of", "worth mentioning")):
        return _claims(sentence, about, at, "hardly any", named, False)
    # "No cholesterol" has no weaker word that would fit in its place.
    found = _claims(sentence, about, at, "free", named, False)
    return [replace(claim, adjective=True) for claim in found]


def _plenty(sentence: Sentence, about: list[About], at: int) -> Sequence[Claim]:
    wording = "high" if sentence.is_a(at, "share", "much") else "hardly any"
    if sentence.text_at(at) == "much" or sentence.text_at(at - 1) in ("as", "too", "so", "how"):
        return []
    named = nutrients_after(sentence, at + 1, frozenset("of the".split()))
    if not named or (sentence.text_at(at + 1) == "of" and sentence.text_at(at + 2) in ("the", "its", "your")):
        return []
    if named[0].nutrient in ("water", "salt") and wording == "high":
        return []
    found = _claims(sentence, about, at, wording, named, False)
    if wording != "hardly any" or not found:
        return found
    before = sentence.text_at(at - 1 - (sentence.text_at(at - 1) == "even"))
    if before in _BARELY:  # "hardly a trace of fat" is hardly any
        return [replace(claim, negated=False) for claim in found]
    if before in ("not", "never") and sentence.text_at(at).startswith("a "):  # "not a trace of fat" is none
        sentence.used.update((at - 1, at - 2))
        return [replace(claim, negated=False, wording="free", adjective=True) for claim in found]
    open_ended = before == "than" or any(claim.negated for claim in found)
    return [asked(sentence, (at - 1, at, named[0].place))] if open_ended else found
