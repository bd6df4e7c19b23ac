"""Allergens: "contains milk, from the feta", "nut-free", "no soy", "safe for someone with a sesame allergy"."""

import re
from dataclasses import replace

from kit.speech.about.exceptions import excepted, only_reason
from kit.speech.about.parts import (
    DETERMINERS,
    TOOLS,
    before_determiners,
    dish_named,
    food_part,
    is_dish,
    is_food,
    leads_on,
)
from kit.speech.about.slots import negated
from kit.speech.about.unread import asked
from kit.speech.allergens.allergens_judged import AllergenClaim, brought_by
from kit.speech.allergens.allergens_listed import says_whole
from kit.speech.allergens.allergens_missing import LOSES, missing, neither_has, nothing_in_it, stands_between
from kit.speech.allergens.allergens_together import (
    changes,
    from_foods,
    is_in_it,
    is_other_food,
    listed_by_food,
    named_as_allergen,
    origin,
    there_is,
    with_those_behind,
)
from kit.speech.allergens.allergens_warned import ends_list, safe_words, warns, watched, with_it
from kit.speech.claim import FOOD, THE_DISH, UNKNOWN, About, Claim
from kit.speech.words.clauses import is_stop
from kit.speech.words.sentence import Sentence, food_at

FAMILY = "allergen"
_CONTAINS = frozenset("contain contains containing include includes including".split())
_NO = (
    frozenset("no zero without not never neither nor lack lacks nothing none".split())
    | {"not any", "not a bit", "not one bit"}
    | {"goes without", "does without"}
)
_GOES_ON = frozenset(", and from once if when without unless because since apart except with but as".split())
_LOOK_OUT = re.compile(
    r"\b(?:what|things?|ones?|foods?) to (?:look|watch) out for\b|\bto (?:declare|flag|warn about)\b"
    r"|\b(?:mention|flag|declare) (?:it|them|those|these|both)\b"
)
_ONLY = ("only", "just", "nowhere")
_NO_OTHER = re.compile(
    r"\b(?:nowhere|nothing) else\b|\b(?:and )?only (?:there|in (?:that|those|it|them))\b|\balone\b"
    r"|\b(?:only|exclusively|solely)(?= ?[.,;!]|$)"
)
_LEAVES = ("leaves", "leave", "keeps", "keep")
_THERE_WOULD = (("there", "would"), ("there", "will"))
_OF_A_SMELL = frozenset("smell smells taste tastes smelling tasting scent reek reeks stink".split())
_ON_PACKAGES = re.compile(r"\b(?:bought|packages?|packaged|label says|cans and|jars included|certified)\b")


def read(sentence: Sentence, about: list[About]) -> list[Claim]:
    """Return the allergens that a sentence claims to be there or not."""
    safe = safe_words(sentence)
    if safe is not None and any(token.text in ("ask", "check", "tell") for token in sentence.tokens):
        return []  # "ask those who must avoid gluten" claims nothing
    claims: list[AllergenClaim] = neither_has(sentence) + listed_by_food(sentence)
    packages = _ON_PACKAGES.search(sentence.text.lower()) is not None
    for at in sentence.places("allergen"):
        if at in sentence.used or (safe is None and _only_a_food(sentence, at)) or sentence.text_at(at + 1) in TOOLS:
            continue
        if not _OF_A_SMELL.isdisjoint(sentence.texts[max(0, at - 6) : at]):
            continue  # "it will smell of lemon, not of fish"
        claim = _claim(sentence, _subject(sentence, about, at), at, safe)
        if claim is not None:
            claims.append(replace(claim, packages=packages))
    if safe is not None and not claims and sentence.places("allergen"):
        claims.append(AllergenClaim((safe,), THE_DISH, False, "any", True, True))
    if safe is not None and not claims:
        place = safe + 1 + (sentence.text_at(safe + 1) in ("any", "to"))
        word = food_at(sentence, place)
        if word is not None and (brings := brought_by(word)):  # "who can't eat walnuts"
            sentence.used.update((safe, place))
            return [AllergenClaim((safe, place), THE_DISH, warns(sentence), one, True, True) for one in brings[:1]]
        if word is not None:
            return [asked(sentence, (safe, place))]
    return _listed(sentence, with_those_behind(sentence, claims))


def _only_a_food(sentence: Sentence, at: int) -> bool:
    """Return whether an allergen is spoken of as a food, of which something else is said: "the eggs in it are"."""
    following = sentence.text_at(at + 1)
    if not is_food(sentence, at) or following not in ("in", "is", "are", "has", "have"):
        return False
    if "allergen" in sentence.text.lower() or sentence.is_a(at + 1, "wording"):
        return False
    if _LOOK_OUT.search(sentence.text.lower()):
        return False
    if origin(sentence, at) or _free(sentence, at) is not None or there_is(sentence, at) or is_in_it(sentence, at):
        return False
    return following != "in" or _contains(sentence, at) is None


def _claim(sentence: Sentence, subject: About, at: int, safe: int | None) -> AllergenClaim | None:
    """Return what is said of an allergen: safe for those who avoid it, free of it, or with it; None for neither."""
    name = sentence.tokens[at].parts["allergen"]
    but, but_places = excepted(sentence, at) if name != "any" else ([], [])
    free, verb = _free(sentence, at), _contains(sentence, at)
    apart = safe is not None and verb is not None and sentence.clauses[at] < sentence.clauses[safe]
    if safe is not None and not apart and (free is None or abs(free - safe) <= 1):
        # The "not" of those who "can not have egg" denies nothing of the dish.
        sentence.used.update({at, safe, *([safe - 1] if sentence.text_at(safe - 1) == "not" else [])})
        return AllergenClaim((min(at, safe), max(at, safe)), THE_DISH, warns(sentence), name, True, True)
    contrary = (
        sentence.tokens[free + 1].parts.get("allergen") if free is not None and at < free < len(sentence) - 1 else ""
    )
    if free is not None and contrary and contrary in (name, "wheat" if name == "gluten" else name):
        sentence.used.update({at, free, free + 1})
        return AllergenClaim((at, free), About(UNKNOWN, words=sentence.said((at, free + 1))), False, name, free=True)
    alone, alone_places = only_reason(sentence, at) if free is not None else ([], [])
    if free is not None and alone:  # "the butter is the only reason it isn't dairy-free"
        sentence.used.update({at, free, *alone_places})
        return AllergenClaim((min(at, free), max(at, free)), THE_DISH, False, name, free=True, but=tuple(alone))
    if free is not None:
        sentence.used.update({at, free, *but_places})
        denied = negated(sentence, at if free > at else free) and sentence.text_at(free) != "not"
        foods, places = from_foods(sentence, free) if denied else ([], [])
        if foods:  # "it is not gluten-free because of the flour": the flour brings it
            sentence.used.update((*places, *(spot for spot in range(at) if sentence.text_at(spot) in ("not", "never"))))
            return AllergenClaim((at, free, *places), subject, False, name, False, False, tuple(foods))
        lost = sentence.text_at(free) in LOSES and changes(sentence, free)
        spots = (min(at, free), max(at, free))
        return AllergenClaim(spots, subject, denied, name, free=True, but=tuple(but), lost=lost)
    if verb is not None:
        foods, places = from_foods(sentence, at)
    elif (came := origin(sentence, at)) is not None:
        verb, foods, places = came
        if sentence.text_at(verb + 1) == "not":  # "the wheat is not in the noodles": these have none
            sentence.used.update({at, verb, verb + 1, *places})
            return AllergenClaim((verb, at, *places), About(FOOD, 1.0, tuple(foods)), True, name)
    else:
        return None
    before = range(sentence.clause_of(at)[0], verb)
    only = any(sentence.text_at(place) in _ONLY for place in (*before, *range(at + 1, min(places, default=at))))
    only = only or bool(places and _NO_OTHER.search(" ".join(sentence.texts[max(places) :])))
    denied = negated(sentence, verb)
    sentence.used.update({at, verb, *places})
    perhaps = not denied and _perhaps(sentence, verb, at)
    return AllergenClaim((verb, at), subject, denied, name, False, False, tuple(foods), only=only, perhaps=perhaps)


def _perhaps(sentence: Sentence, verb: int, at: int) -> bool:
    """Return whether an allergen is said to be there perhaps, or only a trace of it: "may contain traces of milk"."""
    words = sentence.texts[max(0, verb - 2) : at]
    return any(word in ("may", "might", "could", "trace", "traces", "a trace") for word in words)


def _listed(sentence: Sentence, claims: list[AllergenClaim]) -> list[Claim]:
    """Return the claims with all that are named together; "the only allergen" is then no claim of its own."""
    listed = tuple(one.allergen for one in claims if not (one.free or one.negated or one.allergen == "any"))
    if not listed:
        return list(claims)
    whole = says_whole(sentence.text)
    if whole:
        sentence.used.update(at for at in sentence.places("allergen") if sentence.is_a(at, "allergen", "any"))
    kept = [one for one in claims if not (whole and one.allergen == "any")]
    named = tuple(
        word for at in range(len(sentence)) if (word := food_at(sentence, at)) and not sentence.is_a(at, "allergen")
    )
    return [replace(one, listed=listed, whole=whole, named=named) for one in kept]


def _subject(sentence: Sentence, about: list[About], at: int) -> About:
    for place in range(at + 1, min(len(sentence), at + 5)):
        ends = sentence.text_at(place) in (*_GOES_ON, *DETERMINERS) or is_stop(sentence.tokens[place])
        if ends or leads_on(sentence, place):
            break
        if is_dish(sentence, place):
            return dish_named(sentence, place)
        if sentence.is_a(at + 1, "wording") and is_food(sentence, place) and not sentence.is_a(place, "allergen"):
            if is_dish(sentence, place + 1):  # "a gluten-free banana loaf"
                continue
            return About(FOOD, 1.0, food_part(sentence, place).foods)
    subject = about[at]
    if subject.kind == UNKNOWN:
        return subject
    if subject.kind == FOOD and sentence.texts[max(0, at - 2) : at] == (",", "no") and not sentence.verbs:
        return THE_DISH  # "seeds only, no nuts"
    if subject.kind == FOOD and is_other_food(sentence, at):
        return About(FOOD, 1.0, subject.foods)
    return (
        About(FOOD, 1.0, subject.foods, or_dish=subject.or_dish)
        if subject.kind == FOOD and not any(named_as_allergen(sentence, word) for word in subject.foods)
        else THE_DISH
    )


def _free(sentence: Sentence, at: int) -> int | None:
    """Return the place of the word that says an allergen is not there; None when none does."""
    if is_in_it(sentence, at, "not"):
        return at + 2
    if sentence.texts[max(0, at - 2) : at] == ("nothing", "with"):  # "and nothing with gluten"
        return at - 2
    following = at + 1
    # "Dairy, egg and nut free" shares one "free"; "free of nuts and soy" too.
    while sentence.text_at(following) in (",", "and", "or"):
        behind = following + 1 + (sentence.text_at(following + 1) == "the")
        if not sentence.is_a(behind, "allergen"):
            break
        following = behind + 1
    if sentence.is_a(following, "wording", "free") and sentence.text_at(following + 1) not in ("of", "from"):
        return following
    if sentence.is_a(at + 1, "wording", "free"):
        return at + 1
    if (gone := missing(sentence, following)) is not None:
        return gone
    place, nor = at - 1, None
    while place >= 0 and stands_between(sentence, place):
        if sentence.text_at(place) in ("contain", "contains") and sentence.text_at(place - 1) not in ("not", "never"):
            return None
        nor = place if sentence.text_at(place) == "nor" else nor
        place -= 1
    place = nothing_in_it(sentence, place)
    free_of = sentence.text_at(place + 1) in ("of", "from") and (
        sentence.is_a(place, "wording", "free")
        or sentence.text_at(place) == "clear"  # "steers clear of egg"
        or (sentence.text_at(place) == "rid" and changes(sentence, place))
    )
    if sentence.text_at(place) in LOSES and changes(sentence, place):
        return place  # "drop the cheddar and you lose the milk"
    return place if place >= 0 and (free_of or sentence.text_at(place) in _NO) else nor


_BRINGS = frozenset(
    "brings bring find finds found carries carry holds hold hides packs offers comes gives use uses".split()
)


def _is_one(sentence: Sentence, at: int) -> int | None:
    """Return the verb that says that a food is an allergen: "couscous is wheat", "almonds are tree nuts"."""
    verb = before_determiners(sentence, at)
    named = verb > 0 and is_food(sentence, verb - 1) and not is_dish(sentence, verb - 1)
    ends = sentence.text_at(at + 1) in ("product", "products") or ends_list(sentence, at)
    return verb if sentence.text_at(verb) in ("is", "are") and named and ends else None


def _contains(sentence: Sentence, at: int) -> int | None:
    """Return the place of the verb that says an allergen is there; None when none does."""
    clause = sentence.clause_of(at)
    if sentence.text_at(0) in _CONTAINS and sentence.text_at(1) == ":":  # "Contains: tree nuts, milk"
        return 0
    for place in range(at - 1, clause[0] - 1, -1):
        if sentence.text_at(place) in _CONTAINS:
            return place
    for place in range(at - 1, max(clause[0] - 1, at - 7), -1):
        if (
            sentence.text_at(place) == "got"
            and sentence.text_at(place - 1 - (sentence.text_at(place - 1) == "still")) in ("is", "has")
            and ends_list(sentence, at)
        ):
            return place
    for place in range(at - 1, max(clause[0] - 1, at - 5), -1):
        if sentence.text_at(place) in ("is", "are") and sentence.text_at(place - 1) in ("there", "here"):
            return place
        if sentence.text_at(place) == "be" and sentence.texts[max(0, place - 3) : place - 1] in _THERE_WOULD:
            return place  # "there would still be nuts in it"
        if sentence.text_at(place) == "there" and sentence.text_at(place - 1) in ("is", "are"):  # "is there any milk"
            return place
        if sentence.text_at(place) in ("has", "have", "got") and (
            sentence.text_at(at + 1) in ("in", ",", "and", ".", "from")
            or (sentence.text_at(at + 1) in _ONLY and sentence.text_at(at + 2) in ("in", "from"))
        ):
            return place
    for place in range(at - 1, max(clause[0] - 1, at - 5), -1):  # "you'll find egg in it"
        who = place - (3 if sentence.text_at(place - 1) == "not" else 1)  # "the cream does not bring milk"
        of_it = sentence.is_a(who, "pronoun") or is_dish(sentence, who) or is_food(sentence, who)
        inside, bare = with_it(sentence, at), of_it and ends_list(sentence, at)
        if (inside and sentence.text_at(place) in _BRINGS | {"with"}) or (bare and sentence.text_at(place) in _BRINGS):
            return place
    made = sentence.text_at(at - 2) == "made" and sentence.text_at(at - 1) in ("with", "from", "of")
    if made and ends_list(sentence, at):
        return at - 1
    if is_in_it(sentence, at):
        return at + 1
    if (is_one := _is_one(sentence, at)) is not None:
        return is_one
    led = at - 1 - (sentence.text_at(at - 1) in DETERMINERS)
    left_in = sentence.texts[at + 1 : at + 3] in (("in", "."), ("in", ","), ("in",))
    if left_in and sentence.text_at(led) in _LEAVES and changes(sentence, led):
        return led  # "swapping the shrimp for tofu leaves the shellfish in"
    if sentence.text_at(at - 1) in ("is", "are") and sentence.text_at(at - 2) == "which":
        before = [place for place in range(at) if sentence.text_at(place) in _CONTAINS]
        return before[-1] if before else at - 1  # "it contains pecans, which are tree nuts"
    if sentence.text_at(at + 1) in ("is", "are") and "allergen" in sentence.text.lower():
        return at + 1
    if at - clause[0] < 6 and _LOOK_OUT.search(sentence.text.lower()):
        return at  # "tree nuts and milk: those are what to look out for"
    if "allergen" in sentence.text.lower() and not sentence.is_a(at, "allergen", "any"):
        return at
    return watched(sentence, at)
