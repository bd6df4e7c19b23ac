"""Her sentence with some of its words put right, made to read as people speak; and sentences told together."""

import re
from collections.abc import Sequence

from kit.speech.claim import Edit
from kit.texts import listing

# "It only covers 45 percent" belittles a number that was put right, and ", tops" bounds it.
_BELITTLED = re.compile(
    r"\b(?:only|barely|merely|scarcely) (?=(?:gives?|gets?|covers?|brings?|has|have|holds?|for about|about)\b)"
)
_BOUNDED = re.compile(
    r",? (?:tops|at most|at least|or less|or more|max|maximum|no more|no less|to the gram|and then some)(?=[.!,;])"
    r"| with room to spare",
    re.IGNORECASE,
)
_BESIDE_A_BOUND = re.compile(r"\b(?:hard[- ]pressed|hard to find|lucky to|struggle to)\b", re.IGNORECASE)
_UP_TO = re.compile(
    r"\b(?:(?:just )?as (?:much|many|little|few) as|(?<!adds )(?<!add )up to|a mere|a full|a whole) (?=about\b)"
)
_TWICE_ABOUT = re.compile(
    r"\b(?:maybe|perhaps|something(?: like)?|somewhere|some|roughly|around|next to|well) (?=about\b)", re.IGNORECASE
)
_BEGINS = re.compile(r"[?!] about\b")  # "How much fat? about 10 grams"
_STAYS = re.compile(
    r"\b(?:stays?|kept|keeps?|keeping|sits?|lands?|lies|hovers?|runs?)(?: (?!to\b|at\b|around\b|you\b)\w+)? $"
    r"|\b(?:come|comes|came|coming) in $|\byou(?:['’]re| are)(?: still| already)? $",
    re.IGNORECASE,
)
_BOUND_VERB = re.compile(  # a verb that bounds a number goes with it: "protein tops forty grams"
    r"(tops(?: out at)?|clears|exceeds?|exceeding|reaches|passes|does(?:n['’]t| not) \w+|isn['’]t|is not|aren['’]t"
    r"|are not)\b"
)
_FALLS = re.compile(r"\b(falls?|comes? up) (?:a (?:bit|little|touch|shade) )?$")  # "falls [short of 20 grams]"
_CLIMBS = re.compile(r"\b(?:climbs?|creeps?|jumps?|shoots?) $")  # "climbs [past forty grams]"
_STANDS_ALONE = (
    "hardly any",
    "no",
    "more",
    "less",
    "all",
    "half",
    "none",
)  # before a nutrient: "brings hardly any fat"
_A_DAY = re.compile(r"^ (?:day|days|week)\b")
_THE = re.compile(r"\b(?:the|its|those|these|this|that|your|our|their|every|each|a|an) $", re.IGNORECASE)
_SHARE = re.compile(r"(?:percent|half|thirds?|quarters?|fifths?|tenths?|twice|times)$")
_OF_IT = re.compile(r" (?:the|your|its|our|their|his|her|an?)\b")
_ONE = re.compile(r"about (?:1|an?|half an?|.* of an?) (?:gram|milligram|microgram|calorie)$")
_ARE = re.compile(r"\b([Tt]here) are $")
_GOES_ON = re.compile(r" (?:of|from|is|are|was|comes?|in|on|each|apiece|and|the|your|its)\b")
# A verb or a word of nearness before a number that was put right, and a share of no noun.
_BOUNDED_BY = re.compile(
    r"\b(?:beats?|surpass\w*|creeping|falls?|smidge|throw from|whisker of|flirting with|pushing|clearing) about \d"
    r"|\ball about \d|\bof the that\b|\bpercent of the \w+ by about\b"
    r"|\b(?:has|have) about (?:\w+ )?(?:half|thirds?|quarters?|fifths?|percent)\."
    r"|\b(?:percent|half|third|quarter|fifth|tenth)s? of the you\b",
    re.IGNORECASE,
)
_AGAIN = re.compile(r",? (about [\w ]+?)( of [^,]+), \1(?=[.!;])")
_AN_ADJECTIVE = re.compile(r"-calorie\b", re.IGNORECASE)
_OF_THEM = re.compile(r"(about [\d.]+) grams(?= of them\b)")  # "17 grams, about 7 of them saturated"
_WORKS_OUT = re.compile(r"\b(works? out|comes? out) (?=about\b)")
_DOUBLED = re.compile(r"\b(\w+) \1\b", re.IGNORECASE)
_TOLD_TWICE = ("that", "had", "so", "very")
_SAME = re.compile(
    r"(?P<begin>(?!There ).+? (?:has|have|brings?|contains?|(?:is|are) free of|is|are)) (?P<rest>(?!.*\bthan\b)[^,]+)\."
)
_FROM = re.compile(r"It contains (?P<what>[^,]+), from (?P<food>.+)\.")
_LISTED = re.compile(r"It contains ([^,]+)\.")


def put_right(text: str, edits: set[Edit]) -> str:
    """Return a text with some pieces replaced; empty where it cannot be said so.

    Examples
    --------
    >>> put_right("Protein tops forty grams.", {Edit(8, 24, "about 31 grams")})
    'Protein comes to about 31 grams.'
    """
    if len({(edit.start, edit.end) for edit in edits}) < len(edits) or _BESIDE_A_BOUND.search(text):
        return ""
    for edit in sorted(edits, key=lambda edit: -edit.start):
        before, after = text[: edit.start], text[edit.end :]
        words = _fitting(edit, text)
        is_share = bool(_SHARE.search(words))
        old_alone = text[edit.start : edit.end].lower() in _STANDS_ALONE
        if (words.startswith("about") and _THE.search(before) and not before.endswith(" as a ")) or (
            is_share and _A_DAY.match(after)
        ):
            return ""  # "the about 60 milligrams", "about 28 percent day"
        if words.startswith(("high", "low", "very low", "a good")) and before.endswith((" a ", " an ")):
            before = before[: before.rindex(" a")] + " "  # "is a [good source of fiber]": "is high in fiber"
        if words.startswith("about") and _STAYS.search(before):
            words = f"at {words}"  # "sodium stays [below 500]": "stays at about 700"
        if words.startswith("about"):
            before = _CLIMBS.sub("comes to ", before)
        if words.startswith("about") and "short" in text[edit.start : edit.end]:
            before = _FALLS.sub("comes to ", before)
        if old_alone and is_share and re.match(r" \w", after) and not _GOES_ON.match(after):
            if " than " in after:
                return ""  # "bananas bring [more] potassium than everything else"
            words = f"{words} of the"
        if _ONE.match(words):
            before = _ARE.sub(r"\1 is ", before)  # "there are [three grams]": "there is about half a gram"
        if before.endswith("but ") and text[edit.start :].startswith(("only ", "just ", "barely ", "a mere ")):
            before = f"{before[:-4]}and "
        text = before + words + after
    for pattern in (_BELITTLED, _BOUNDED, _TWICE_ABOUT, _UP_TO):
        text = pattern.sub("", text)
    text = _OF_THEM.sub(r"\1", _WORKS_OUT.sub(r"\1 at ", _AGAIN.sub(r" \1\2", text)))
    return capital(_BEGINS.sub(lambda found: found[0].replace("about", "About"), text))


def _fitting(edit: Edit, text: str) -> str:
    """Return the words of an edit as they fit where they go: "a 190-calorie bowl", "about a third of the iron"."""
    old, after = text[edit.start : edit.end], text[edit.end :]
    if _AN_ADJECTIVE.search(old) and " calories" in edit.words:  # "a 90-calorie bowl", but "twenty-one calories"
        return f"{edit.words.removeprefix('about ').removesuffix(' calories')}-calorie"
    if verb := _BOUND_VERB.match(old.lower()):
        return f"{'come' if verb[0].startswith('are') else 'comes'} to {edit.words}"
    if old.lower().startswith("up to ") and text[: edit.start].endswith(("add ", "adds ")):
        return f"up to {edit.words}"
    if _SHARE.search(edit.words) and (old.lower().endswith(" of") or _OF_IT.match(after)):
        return edit.words if edit.words.endswith(("twice", "times")) else f"{edit.words} of"
    return edit.words


def is_sayable(text: str) -> bool:
    """Return whether a sentence reads well: no word twice, no article before "about", and a stop at its end.

    Examples
    --------
    >>> is_sayable("It has about 10 grams of fat."), is_sayable("The about 10 grams come from the oil.")
    (True, False)
    """
    doubled = any(found[1].lower() not in _TOLD_TWICE for found in _DOUBLED.finditer(text))
    led = re.search(r"\b(?:the|its|those|an?|your|our) about\b", text, re.IGNORECASE)
    if _BOUNDED_BY.search(text):
        return False
    return not doubled and not led and text.rstrip().endswith((".", "!", ".”", '."'))


def capital(text: str) -> str:
    """Return a text with a capital letter at its beginning."""
    return text[:1].upper() + text[1:]


def together(sentences: Sequence[str]) -> list[str]:
    """Return sentences with those that begin alike told as one.

    Examples
    --------
    >>> together(["The kale brings about 3 grams of fiber.", "The kale brings hardly any fat."])
    ['The kale brings about 3 grams of fiber and hardly any fat.']
    """
    told: dict[str, list[str]] = {}
    for sentence in _from_one_food(sentences):
        found = _SAME.fullmatch(sentence)
        begin, rest = (found["begin"], found["rest"]) if found else (sentence, "")
        told.setdefault(begin, [])
        if rest:
            told[begin].append(rest)
    return [f"{begin} {listing(rest)}." if rest else begin for begin, rest in told.items()]


def _from_one_food(sentences: Sequence[str]) -> list[str]:
    """Return sentences with the allergens that one food brings told as one: "wheat and soy, from the soy sauce"."""
    told: dict[str, list[str]] = {}
    for sentence in sentences:
        found = _FROM.fullmatch(sentence)
        told.setdefault(found["food"] if found else sentence, []).extend([found["what"]] if found else [])
    for what in told.values():
        if "peanuts" in what and "nuts" in what:
            what.remove("nuts")
    return [f"It contains {listing(what)}, from {food}." if what else food for food, what in told.items()]


def untold(sentences: Sequence[str]) -> list[str]:
    """Return sentences without those of an allergen that another one tells too.

    Examples
    --------
    >>> untold(["It contains egg.", "It contains milk, egg and wheat."])
    ['It contains milk, egg and wheat.']
    """
    others = {
        one: [other for other in sentences if other != one and other.startswith("It contains")] for one in sentences
    }
    return [
        one
        for one in sentences
        if not (found := _LISTED.fullmatch(one))
        or not any(found[1].removesuffix("s") in other.split(" from ")[0] for other in others[one])
    ]


def as_she_writes(sentence: str, hers: str) -> str:
    """Return a sentence with the words that she writes with a hyphen or a capital letter written so.

    Examples
    --------
    >>> as_she_writes("All purpose flour has less fiber.", "The all-purpose flour has more fiber.")
    'All-purpose flour has less fiber.'
    """
    for word in re.findall(r"\b[A-Za-z]+(?:-[A-Za-z]+)+\b", hers):
        if word == "whole-grain":  # "it is whole grain"
            continue
        plain = re.compile(rf"\b{word.replace('-', ' ')}\b", re.IGNORECASE)
        for found in plain.findall(sentence):
            sentence = sentence.replace(found, capital(word) if found[:1].isupper() else word)
    for word in re.findall(r"(?<=[a-z,] )[A-Z][a-z]+\b", hers):
        sentence = re.sub(rf"\b{word.lower()}\b", word, sentence)
    return sentence
