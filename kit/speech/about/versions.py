"""The dish beside another way of making it, which is not known: "compared with last time", "than the original"."""

from kit.speech.words.sentence import Sentence

_BEGINS = frozenset("compared versus since as used than of".split())
_MORE_OR_LESS = frozenset("more less fewer lighter leaner half third quarter twice double lower higher".split())


def is_compared(sentence: Sentence, at: int) -> bool:
    """Return whether more or less is told beside another way of making it: "compared with last time, half the oil"."""
    word = sentence.text_at(at)
    if word not in _BEGINS:
        return False
    told = word in ("compared", "versus") and not sentence.words.isdisjoint(_MORE_OR_LESS)
    if word == "since" and sentence.text_at(at + 1) == "last":  # "I've cut the sugar by a third since last year"
        told = any(sentence.places(kind, 0, at) for kind in ("verb_save", "verb_add"))
    if is_other_version(sentence, at):
        return True
    return told and any(sentence.places(kind) for kind in ("food", "nutrient", "dish", "wording"))


_LIGHTER_THAN = ("lighter", "heavier", "leaner", "fattier", "saltier", "starchier", "sugarier")
_BY_HOW_MUCH = frozenset(
    "a an bit good lot far much little touch tad shade way even slightly considerably noticeably somewhat not".split()
)
_IS = frozenset("is are be s stays stay comes come turns makes was were".split())


def is_lighter_than(sentence: Sentence, at: int) -> bool:
    """Return whether the dish is called lighter or saltier than something: "it's a good bit lighter than the pie"."""
    if sentence.text_at(at) not in _LIGHTER_THAN or sentence.text_at(at + 1) != "than":
        return False
    over = at - 1
    while sentence.text_at(over) in _BY_HOW_MUCH or sentence.is_a(over, "share", "much"):
        over -= 1
    if over == at - 1 and sentence.text_at(over) in _BE_LIGHTER:
        return True
    who = sentence.is_a(over - 1, "pronoun") or sentence.is_a(over - 1, "dish") or sentence.text_at(over - 1) == "it"
    return sentence.text_at(over) in _IS and who


_BE_LIGHTER = frozenset("is are s stays stay very really quite so fairly rather too".split())
_LIGHTER = ("lighter", "leaner", "slimmer")
_KIND_OF = frozenset("kind sort type version take of on a the little bit way to make".split())


def is_lighter_dish(sentence: Sentence, at: int) -> bool:
    """Return whether the dish is called lighter than one that is not named: "a lighter kind of stew"."""
    if sentence.text_at(at) not in _LIGHTER:
        return False
    over = at + 1
    while sentence.text_at(over) in _KIND_OF:
        over += 1
    led = sentence.text_at(at - 1) in ("a", "the", "our", "this", "much", "far")
    called = sentence.is_a(over, "dish") and sentence.text_at(over) not in _VESSELS
    return led and called and sentence.tokens[over].parts["dish"] in ("dish", "serving")


_VESSELS = frozenset("bowl bowls plate plates cup cups glass glasses jar mug piece pieces slice slices".split())


_VERSIONS = frozenset("version original recipe one ones kind sort last packet shop store".split())
_WHOSE = frozenset(
    "the a an my our your that last old usual packet shop store bought regular first normal ordinary "
    "standard classic typical".split()
)
_COUNTED_FOODS = frozenset("butter oil cream cheese salt sugar fat honey syrup mayonnaise".split())
_ONCE = ("last", "before", "usual", "ever", "always")


def is_other_version(sentence: Sentence, at: int) -> bool:
    """Return whether more or less of what counts is told beside another version: "a third less butter than the old"."""
    as_before = sentence.text_at(at) == "as" and sentence.text_at(at + 1) in _ONCE
    much = {"much", "many"} & set(sentence.texts[:at])
    if as_before and much and _COUNTED_FOODS & set(sentence.texts[:at]):
        return True  # "half as much butter in it as last time"
    were = sentence.texts[at : at + 3] == ("used", "to", "be") and sentence.text_at(at - 1) in ("there", "it", "than")
    if were and not sentence.words.isdisjoint(_MORE_OR_LESS) and any(one.food for one in sentence.tokens[:at]):
        return True  # "there's half the feta there used to be"
    if sentence.text_at(at) not in ("than", "of"):
        return False
    over = at + 1
    while sentence.text_at(over) in _WHOSE and sentence.text_at(over + 1) != ".":
        over += 1
    said = any(
        one.amount.is_fraction or one.amount.unit in ("times", "%") for one in sentence.tokens[max(0, at - 4) : at]
    )
    less = said or not {"less", "more", "fewer"}.isdisjoint(sentence.texts[max(0, at - 3) : at])
    has = not {"has", "have", "got", "contains", "uses", "is"}.isdisjoint(sentence.texts[:at])
    return less and has and sentence.text_at(at - 1) in _COUNTED_FOODS and sentence.text_at(over) in _VERSIONS
