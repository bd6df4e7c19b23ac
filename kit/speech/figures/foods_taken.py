"""Whether a count of an ingredient tells how much the recipe, or a serving, takes: "each bowl takes a whole banana"."""

import re
from itertools import pairwise

from kit.speech.about.parts import is_dish, is_serving, is_verb
from kit.speech.claim import THE_DISH, WHOLE, About
from kit.speech.words.sentence import Sentence

HOLDS = frozenset(
    "has have holds hold contains contain gets get takes take uses use needs include includes eat eats".split()
)
_GOES = frozenset("go goes went".split())
_EACH = frozenset("each every per apiece".split())
_HEADS = ("head", "person", "people", "us", "eater", "guest")
_RESIZED = frozenset("double triple half twice".split())
_ONLY = frozenset("only just exactly all altogether".split())
_NO_OTHER = (",", "and", "with", "or", "too", "only", "just", "exactly")
_ORDERED = frozenset(  # what is told step by step: "two eggs go in next"
    "now next then later once before after until first last second soon while when another extra more again".split()
)
_OF_ALL = ("it", "this", "recipe", "we", "i", "that")
_IN_IT = frozenset("it this here there recipe them these all total".split())
_INTO = ("in", "into", "in to", "on", "onto", "to")
_LEADS = ("so", "and", "but", "yes", "no", "well", "ok", "okay", "now", ",", "then", "actually")


def taken(sentence: Sentence, at: int, place: int) -> About | None:
    """Return of what a count at a place tells how much of the food at another there is; None where it does not.

    Parameters
    ----------
    sentence : Sentence
        The sentence.
    at, place : int
        Where the count and the food stand.
    """
    clause = sentence.clause_of(at)
    before = [sentence.text_at(spot) for spot in clause if spot < at]
    while before and before[0] in _LEADS:
        before = before[1:]
    behind = [sentence.text_at(spot) for spot in clause if spot > place]
    if not behind or behind[0] not in (*_INTO, *_NO_OTHER, *_EACH, *_GOES, "a", "for", ".", "!", "is", "are", ":"):
        return None  # "two eggs sit on the counter", "a lemon wedge"
    if behind[:1] == ["to"] or behind[:2] in (["for", "the"], ["for", "a"], ["for", "later"]):
        return None
    if _each(sentence, clause):
        return THE_DISH if _holds_each(sentence, clause, at, before, behind) else None
    return About(WHOLE) if _takes_in_all(sentence, at, before, behind) else None


def _each(sentence: Sentence, clause: range) -> bool:
    """Return whether something is told for each serving or person."""
    return any(
        (sentence.text_at(spot) in _EACH and sentence.text_at(spot + 1) not in ("other", "time", "of the"))
        or (sentence.text_at(spot) in ("a", "one") and _is_one(sentence, spot + 1))
        for spot in clause
    )


def _is_one(sentence: Sentence, at: int) -> bool:
    return is_serving(sentence, at) or sentence.text_at(at) in _HEADS


def _holds_each(sentence: Sentence, clause: range, at: int, before: list[str], behind: list[str]) -> bool:
    """Return whether a serving is said to hold the food: "two slices go into each serving", "two eggs a plate"."""
    ordered = not _ORDERED.isdisjoint((*before, *behind))
    if not before:
        goes = behind[0] in _GOES and len(behind) > 1 and behind[1] in _INTO
        end = next((spot for spot in clause if spot > at and sentence.text_at(spot) == ","), clause[-1] + 1)
        bare = not any(is_verb(sentence, spot) for spot in range(at, end))
        return (goes and not ordered) or (bare and behind[0] in (*_EACH, *_INTO, "a", "for", "is"))
    there = before[-2:] in (["there", "are"], ["there", "is"]) and behind[0] in _INTO
    listed = before[-1] in ("and", ",") and not HOLDS.isdisjoint(before)  # "gets a banana and two eggs"
    return (
        there
        or ((before[-1] in HOLDS or listed) and not ordered)
        or (before[-1] in _ONLY and before[-2:-1] == ["gets"])
    )


def _takes_in_all(sentence: Sentence, at: int, before: list[str], behind: list[str]) -> bool:
    """Return whether the recipe is said to take so much: "it takes four eggs", "only two cloves of garlic go in"."""
    only = not _ONLY.isdisjoint(before) or any(
        sentence.tokens[at].text.startswith(f"{word} ") for word in ("only", "just", "exactly")
    )
    no_more = ("no", "more") in pairwise(behind) or ("not", "more") in pairwise(behind)
    ordered = not _ORDERED.isdisjoint((*before, *behind)) and not no_more
    if ordered:
        return False
    plain = [word for word in before if word not in _ONLY and word not in _RESIZED]
    if plain[-1:] == ["for"] and plain[-2:-1] in (["calls"], ["asks"]):  # "it calls for two cups of milk"
        plain = [*plain[:-2], "takes"]
    if not plain and behind[:2] in (["in", "all"], ["altogether", "."], ["all", "told"]):
        return True
    if not plain:
        goes = behind[0] in _GOES and len(behind) > 1 and behind[1] in _INTO
        return goes and (only or no_more or _ends(behind[2:]))
    if plain[-2:] in (["there", "are"], ["there", "is"]):
        return len(plain) == 2 and behind[0] == "in" and not _IN_IT.isdisjoint(behind[1:3])
    subject = plain[-2] if len(plain) > 1 else ""
    if subject == "that" and of_a_part(sentence, at):
        return False
    named = subject in _OF_ALL or any(
        is_dish(sentence, spot) and sentence.tokens[spot].parts["dish"] != "part" and sentence.text_at(spot) == subject
        for spot in range(at)
    )
    verb = plain[-1]
    puts = subject in ("we", "i") and verb in ("put", "used", "use") and behind[0] in (*_INTO, ".", "!", ",", "and")
    takes = verb in HOLDS and subject not in ("we", "i") and verb not in ("needs", "gets", "get")
    needs = plain in (["you", "need"], ["you", "will", "need"], ["we", "need"], ["it", "needs"]) and _lists(behind)
    return needs or (named and len(plain) <= 3 and (puts or takes))


def _lists(behind: list[str]) -> bool:
    """Return whether what is needed is listed, or nothing more is told of it: "you need three eggs and"."""
    return behind[0] in (".", "!", ",", "and") or _ends(behind[behind[0] in ("in", "for") :])


_PER_WORDS = (
    r"(?:is (?:enough )?|are (?:enough )?|will |would |can )?"
    r"(?:do|does|make|makes|feed|feeds|serve|serves|cover|covers|stretch|stretches|go|goes|last|lasts|for|to|per|into)?"
    r"(?: (?:for|to|into|round|around|every|between|among|all|the|each|of))*"
)
_PER = re.compile(_PER_WORDS)


def per_servings(sentence: Sentence, place: int) -> tuple[int, float] | None:
    """Return for how many servings so much of a food is said to do, and where: "one egg does four slices".

    Parameters
    ----------
    sentence : Sentence
        The sentence.
    place : int
        Where the food stands.
    """
    for at in range(place + 2, min(place + 7, len(sentence))):
        said = sentence.tokens[at].amount
        if sentence.tokens[at].quantity is None:
            continue
        people = is_serving(sentence, at + 1) or sentence.text_at(at + 1) in _HEADS
        feeds = not {"feeds", "feed", "serves", "serve"}.isdisjoint(sentence.texts[place + 1 : at])
        ends = feeds and sentence.text_at(at + 1) in ("", ".", ",", "!", "and", "at")
        does = sentence.text_at(place + 1) in ("does", "do") and sentence.text_at(at - 1) == "all"
        ends = ends or (does and sentence.text_at(at + 1) in ("", ".", ",", "!"))
        plain = not said.unit and not said.is_fraction and said.low == said.high and said.relation == "about"
        led = _PER.fullmatch(" ".join(sentence.texts[place + 1 : at])) is not None
        return (at, said.value) if plain and said.value >= 2 and (people or ends) and led else None
    return None


def of_a_part(sentence: Sentence, at: int) -> bool:
    """Return whether "that" goes back to a part: "half of the pan is four servings, and that is four eggs"."""
    led = sentence.texts[max(0, at - 2) : at] == ("that", "is")
    return led and any(sentence.tokens[spot].amount.is_fraction for spot in range(at))


def _ends(behind: list[str]) -> bool:
    return not [word for word in behind if word not in (".", "!", "it", "this", "the", "recipe", "pot", "dish", "all")]
