"""Whether a time of keeping is a warning, a limit, or one that is said not to matter."""

import re

from kit.speech.words.sentence import Sentence

_NOT = ("not", "never")
# Behind "not", what lets a time be: "three hours will not hurt it", "you need not chill it for six hours".
_LETS_BE = frozenset(
    "hurt harm spoil matter kill ruin problem worry issue long dangerous danger bad unsafe risky risk trouble mind "
    "hesitate need require fret panic".split()
)
_OFF = ("off", "bad", "sour")
_BETWEEN = frozenset("be do does have a an any too even much really that so particularly all you to been".split())
# Behind "not", what is warned of: "do not leave it out", "it is not safe for more than two hours".
_HEEDED = frozenset(
    "leave left let eat eaten sit stay stand stood keep kept store stored hold held go wait use used serve served save "
    "risk trust exceed reheat reheated refreeze drink taste finish out safe good fine okay ok last more longer over "
    "for past beyond until till within".split()
)
_AWAY = r"(?:away|out|in the|into the)"
_WHAT = r"(?:it|that|them|those|everything|whatever|all|of|any \w+|the \w+)"
_THROWN = re.compile(
    rf"\b(?:throw|throws|throwing|thrown|toss|tosses|tossed|chuck|pitch|dump) (?:{_WHAT} )*{_AWAY}\b|"
    r"\b(?:toss|bin|pitch|dump|chuck|trash) (?:it|that|them|those|everything|the (?:lot|leftovers|rest|food))\b|"
    r"\bin(?:to)? the (?:trash|bin|garbage|compost)\b|\bdiscard(?:ed|s)?\b|\b(?:get|gets) rid of\b"
)
_NOT_THROWN = re.compile(
    r"\b(?:no need to|not|never|without|rather than|instead of|shame to|waste to)\b(?:\W+\w+){0,3}\W*$"
)
_MAY_BE = frozenset("is are will would does do can could should".split())
_PUT = frozenset("get put bring move stash refrigerate chill transfer pop slide".split())
_GOES = _PUT | {"goes", "go", "puts", "moves"}


def lets_be(sentence: Sentence, at: int) -> bool:
    """Return whether a "not" stands at a place, and only says that something does no harm, or need not be."""
    if set(sentence.text_at(at).split()).isdisjoint(_NOT):
        return False
    over = at + 1
    if sentence.text_at(over) == "have" and sentence.text_at(over + 1) == "to":
        return True
    while sentence.text_at(over) in _BETWEEN:
        over += 1
    goes_off = sentence.text_at(over) in ("go", "going", "gone") and sentence.text_at(over + 1) in _OFF
    return sentence.text_at(over) in _LETS_BE or goes_off


def is_warned(sentence: Sentence, at: int) -> bool:
    """Return whether the statement of a time says "not" or "never", and means it: "do not leave it out"."""
    return any(_heeds(sentence, spot) for spot in _denials(sentence, at))


def denies_unread(sentence: Sentence, at: int) -> bool:
    """Return whether the statement of a time denies something that is neither a warning nor harmless."""
    return any(not _heeds(sentence, spot) for spot in _denials(sentence, at))


def _denials(sentence: Sentence, at: int) -> list[int]:
    """Return where the statement of a time says "not", but where that only says that something does no harm."""
    said = [spot for spot in sentence.clause_of(at) if not set(sentence.text_at(spot).split()).isdisjoint(_NOT)]
    said = [spot for spot in said if sentence.texts[spot : spot + 2] != ("no", "more") or at > spot]
    said = [spot for spot in said if not _is_left_over(sentence, spot)]
    return [spot for spot in said if not (lets_be(sentence, spot) or _is_no_limit(sentence, spot))]


def _is_left_over(sentence: Sentence, at: int) -> bool:
    """Return whether "not" tells what is left: "what we don't eat today goes into the fridge"."""
    led = not {"what", "whatever", "anything", "everything"}.isdisjoint(sentence.texts[max(0, at - 5) : at])
    return led and sentence.text_at(at + 1) in ("eat", "finish", "use")


def _heeds(sentence: Sentence, at: int) -> bool:
    over = at + 1
    while sentence.text_at(over) in _BETWEEN or sentence.text_at(over) in ("it", "them", "the", "your"):
        over += 1
    counted = over < len(sentence) and sentence.tokens[over].quantity is not None
    return counted or not _HEEDED.isdisjoint((*sentence.text_at(at).split(), *sentence.text_at(over).split()))


def is_thrown(sentence: Sentence) -> bool | None:
    """Return whether food is said to be thrown away (True) or need not be (False); None where neither is said."""
    text = sentence.plain
    thrown = _THROWN.search(text)
    return None if thrown is None else _NOT_THROWN.search(text[: thrown.start()]) is None


def is_kept_until(sentence: Sentence, at: int) -> bool:
    """Return whether food is kept until it is thrown away: "after a week", "only after"; not "if it has been out"."""
    after = sentence.text_at(at - 1) == "after" and sentence.words.isdisjoint(("if", "been"))
    return after or not {"only", "until", "till"}.isdisjoint(sentence.texts[:at])


def _is_no_limit(sentence: Sentence, at: int) -> bool:
    """Return whether a time is denied to be the longest there is: "two hours is not the most it should get"."""
    return any(sentence.text_at(spot) in ("most", "limit", "longest", "maximum") for spot in (at + 1, at + 2))


def denied_behind(sentence: Sentence, at: int) -> bool:
    """Return whether "is not" or "will not" follows in the statement: "4 degrees is not cold enough"."""
    behind = [spot for spot in sentence.clause_of(at) if spot > at + 1]
    return any(sentence.text_at(spot) in _NOT and sentence.text_at(spot - 1) in _MAY_BE for spot in behind)


def need_not(sentence: Sentence, at: int) -> bool:
    """Return whether what is timed need not be done so long: "you do not have to chill it for six hours"."""
    return any(lets_be(sentence, spot) for spot in sentence.clause_of(at) if spot < at)


def is_limit(sentence: Sentence, at: int, relation: str) -> bool:
    """Return whether a time is the longest there is: "within two hours", "two hours to get it into the fridge"."""
    if relation in ("under", "at most"):
        return True
    if any(sentence.text_at(spot) in ("within", "before", "inside") for spot in (at - 1, at - 2)):
        return True
    words = [sentence.text_at(spot) for spot in range(at + 1, at + 4)]
    if words == ["at", "the", "latest"] or (words[0] == "to" and words[1] in _PUT):
        return True
    put = [spot for spot in sentence.clause_of(at) if spot < at and sentence.text_at(spot) in _GOES]
    joined = any(sentence.text_at(spot) in ("and", ",") for spot in range(put[-1] if put else at, at))
    return sentence.text_at(at - 1) == "after" and bool(put) and not joined


_RISK = re.compile(
    r"\b(?:risky?|risks|unsafe|danger|dangerous|hazard|hazardous|too long|avoid|gamble|gambling|bad idea|no good"
    r"|trouble|germs|bacteria|spoil|spoils|spoiled|sick|ill|longest|limit|maximum)\b"
)
_ALLOWS = re.compile(
    r"\b(?:fine|okay|ok|good|safe|safely|can|may|could|let|lets|keep|keeps|last|lasts|stay|stays|hold|holds|happy"
    r"|happily|harmless|survive|survives|manage|manages)\b"
)
_TURNED = re.compile(r"\b(?:not|never|no|without|nor|hardly|than)(?: \w+){0,3} $")


def _says(sentence: Sentence, words: re.Pattern[str]) -> bool:
    text = sentence.plain
    return any(_TURNED.search(text[: found.start()]) is None for found in words.finditer(text))


def is_risky(sentence: Sentence) -> bool:
    """Return whether something is said to be a risk: "more than two hours out is risky"; not "no risk"."""
    return _says(sentence, _RISK)


def is_allowed(sentence: Sentence) -> bool:
    """Return whether something is said to do no harm: "it can sit out", "more than two hours is fine"."""
    return not is_risky(sentence) and _says(sentence, _ALLOWS)


_ONLY = re.compile(r"\b(?:only|just|merely|barely)\b")
_NO_MORE = ("no", "tops", "max", "maximum")  # "a week, no more"
_ALL_IT_GETS = re.compile(r"\bis (?:all|as long as|the (?:most|longest|limit|maximum))\b")


def is_all(sentence: Sentence, at: int) -> bool:
    """Return whether a time is the longest that something keeps: "only five days", "five days is all it gets"."""
    only = ("only", "just", "merely", "barely")
    return (
        sentence.text_at(at).startswith(only)
        or sentence.text_at(at - 1) in only
        or sentence.text_at(at + 1 + (sentence.text_at(at + 1) == ",")) in _NO_MORE
        or bool(_ALL_IT_GETS.search(sentence.plain))
    )


_OUTDOORS = ("outside", "out", "outdoors")
_HOT = frozenset("hot hotter heat ninety 90 warm".split())


def is_hot(sentence: Sentence, at: int) -> bool:
    """Return whether a word tells of a hot day: "over ninety degrees", "in the heat"."""
    amount = sentence.tokens[at].amount
    told = sentence.tokens[at].quantity is not None and amount.unit in ("", "degree") and amount.value in (90.0, 32.0)
    outside = amount.unit == "degree" and 90 < amount.value <= 120 and sentence.text_at(at + 1) in _OUTDOORS
    return told or outside or not _HOT.isdisjoint(sentence.text_at(at).split())


def hours_between(sentence: Sentence, at: int, spot: int) -> bool:
    """Return whether a word belongs to another time than that at a place: "two hours, one when it is hot"."""
    between = range(min(at, spot) + 1, max(at, spot))
    return any(
        sentence.tokens[place].amount.unit == "hour"
        or (sentence.tokens[place].quantity is not None and not sentence.tokens[place].amount.unit)
        for place in between
    )
