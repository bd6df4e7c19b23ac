"""An ingredient line taken apart: its amount, the words of the food, and what is done to it."""

import math
import re
from dataclasses import dataclass, field, replace

from kit.food.amounts import Count, read_count
from kit.food.vocabulary import SMALL_WORDS, line_words, words
from kit.lines.lighter import said_less
from kit.lines.nearest_measure import Written
from kit.lines.purposes import ASIDE, MAY_BE_LEFT_OUT, MORE, UNMEASURED, WITHOUT_NEARLY
from kit.lines.quantities import LARGEST_COUNT, added, is_amount, quantity, volume_in
from kit.lines.remarks import sort_remarks, without_brackets, without_examples, without_wishes
from kit.lines.several_foods import parts_of
from kit.lines.shares import share_used
from kit.lines.tidy import tidy

LONGEST_LINE = 400  # characters; anything longer is not an ingredient line
_MOST_FOODS = 5  # offered by "or"
_STIRRED = re.compile(
    r"\s+(?:mixed|dissolved|whisked|blended|stirred|made up|combined)\s+(?:with|in|into)\b.*$", re.IGNORECASE
)
_SIZE_OF_EACH = re.compile(
    r"^([\d./ -]+)\(([^()]*\d[^()]*?)(?: each)?\)(?! ?(?:cans?|tins?|jars?|packages?|bags?)\b)(.*)$", re.IGNORECASE
)
_EACH_BEHIND = re.compile(r",\s*((?:about\s+)?[\d./]+\s?-?\s?[A-Za-z]{1,6}\.?) each\b", re.IGNORECASE)
_OR = re.compile(r"\s*,?\s+(?:and/or|or)\s+|\s*/\s*(?=[A-Za-z])", re.IGNORECASE)
_LIES_IN = re.compile(
    r"^(?:(?:packed|canned|marinated|jarred|stuffed|bottled)\s+)?(?:in|with)\s+"
    r"(?!(?:their|its|the|a|an|half|skin|bones?|shells?|peel|water|juice|liquid|\d|rough|thin|small|large|bite|one)\b)",
    re.IGNORECASE,
)
_OTHER_AMOUNT = re.compile(r"(?<=[a-z)]) or (?=(?:about )?(?:\d|one\b|half\b))", re.IGNORECASE)
_AMOUNT_OF_STATE = re.compile(
    r"^(?:from\s+|about\s+)*[\d./ -]+[a-z]+\.?\s+(?:of\s+)?(?:cooked|dry|dried|uncooked|raw|unpopped|unpeeled)\b|"
    r"^(?:from\s+|about\s+)*[\d./ -]+[a-z]+\.?\s+(?:before|after)\s+cooking",
    re.IGNORECASE,
)
_COOKED = re.compile(r"\b(?<!un)cooked\b|\bafter cooking\b", re.IGNORECASE)
_AND = re.compile(r"\s+(?:and|&)\s+", re.IGNORECASE)
_WEIGHED_SO = re.compile(  # "1 banana, peeled (about 150 g)": the weight is said of what is left
    r"\b(?:peeled|skinned|shelled|pitted|stoned|cored|trimmed|hulled|seeded|deseeded)(?:\s+(?:weight|and\s+\w+))?\s*"
    r"\((?:about|approx\.?|around|roughly)?\s*[\d½¼¾][\d ./½¼¾]*-?\s?(?:g|kg|oz|ounces?|lbs?|pounds?)\b",
    re.IGNORECASE,
)
_LIST = re.compile(
    r"^(?P<items>[A-Za-z' -]{2,40}(?:,\s*[A-Za-z' -]{2,40}){1,4}?),?\s+(?P<link>or|and/or|and|&)\s+"
    r"(?P<last>[^,;:]+)(?P<tail>.*)$",
    re.IGNORECASE,
)


_BY_HALVES = re.compile(r"\bhalf (?!and\b|-)[a-z][a-z -]*?,? (?:and )?half (?!and\b)[a-z]", re.IGNORECASE)
_UNPEELED = {"unpeeled", "scrubbed", "new", "baby", "fingerling", "baking", "jacket"}
_WITH_SKIN = ("skin on", "with skin", "skin left on")


@dataclass(frozen=True, slots=True)
class ParsedLine:
    """One ingredient line taken apart.

    Attributes
    ----------
    written : Written
        Amount and measure, as far as the line gives them.
    counted : bool
        Whether the line gives an amount at all.
    unmeasured : bool
        Whether it says "to taste", "for garnish" or the like.
    product : str
        ``"juice"`` or ``"zest"`` when that part of the food is meant.
    name, after : tuple of str
        Words of the food before the first comma, and what follows it.
    whole : tuple of str
        The words before the first comma with those of every "or".
    others : tuple of str
        Foods offered by "or".
    joined : tuple of str
        Foods named side by side with "and"; empty when there is one.
    examples : tuple of str
        Foods named as an example: "such as cod".
    share : float
        The share of it that is eaten, where the line says so ("a quarter is used"). [-]
    volume : Written, optional
        How many cups that makes, where brackets say so.
    problem : str
        Why the amount cannot be read, or empty.
    """

    written: Written = field(default_factory=Written)
    counted: bool = False
    unmeasured: bool = False
    product: str = ""
    name: tuple[str, ...] = ()
    after: tuple[str, ...] = ()
    whole: tuple[str, ...] = ()
    others: tuple[str, ...] = ()
    joined: tuple[str, ...] = ()
    examples: tuple[str, ...] = ()
    share: float = 1.0
    volume: Written | None = None
    problem: str = ""

    @property
    def said(self) -> frozenset[str]:
        """Every word that is said of the food, before the first comma and behind it."""
        return frozenset((*self.name, *self.after))


def take_apart(line: str, system: str = "us") -> list[ParsedLine]:
    """Take an ingredient line apart; several phrases where it names several foods ("salt and pepper")."""
    if len(line) > LONGEST_LINE:
        problem = f"the line has {len(line):,} characters; write one ingredient, shorter than {LONGEST_LINE}"
        return [ParsedLine(problem=problem)]
    text, share = share_used(tidy(line))
    if _BY_HALVES.search(text):
        return [ParsedLine(problem="the line halves its amount between foods; write a line with an amount for each")]
    return [replace(_phrase(part, system), product=product, share=share) for part, product in parts_of(text)]


def _phrase(text: str, system: str) -> ParsedLine:
    edible = bool(_WEIGHED_SO.search(text)) if "(" in text else False
    text = _SIZE_OF_EACH.sub(r"\1 (\2 each)\3", _EACH_BEHIND.sub(r" (\1 each)", text))
    text, inside = without_brackets(_without_other_size(text))
    text, examples = without_examples(text)
    unmeasured = bool(UNMEASURED.search(text)) or any(UNMEASURED.search(part) for part in inside)
    left_to_her = any(MAY_BE_LEFT_OUT.search(part) for part in (text, *inside))
    text = ASIDE.sub("", MORE.sub("", UNMEASURED.sub("", text))).strip(" ,;").rstrip(".")
    text = WITHOUT_NEARLY.sub("", text)
    count, rest = read_count(text)
    if count is None:
        count, rest = _behind(text)
    if count is None:
        count, rest = _in_brackets(text, sort_remarks(inside).amounts)
    if count and not (count.value >= 0 and count.high <= LARGEST_COUNT):  # NaN fails the comparison too
        shown = "is no number" if math.isnan(count.value) else f"of {count.high:g} is too large"
        return ParsedLine(problem=f'the amount in "{text[:40]}" {shown}; write something like "1 1/2 cups"')
    rest, weighed = _amounts_behind(rest) if count else (rest, [])
    remarks = sort_remarks(part for part in (*inside, *weighed) if not _of_another_state(part, text))
    written, rest, told = quantity(count, _STIRRED.sub("", rest), remarks.amounts, system)
    rest, written = added(rest, written, system)
    name, others, joined, after = _foods_and_rest(rest.strip(" ,;:"))
    behind = words(" ".join([after, *remarks.said]))
    sized = _sized_behind(replace(written, edible=edible), ", ".join([after, *remarks.said]))
    return ParsedLine(
        written=_with_words(sized, words(name), behind),
        counted=count is not None or told,
        unmeasured=unmeasured or (left_to_her and count is None),
        name=words(name),
        after=behind,
        whole=words(" or ".join((name, *others))),
        others=tuple(others[:_MOST_FOODS]),
        joined=tuple(joined),
        examples=(*examples, *remarks.examples),
        volume=volume_in(remarks.amounts, system),
    )


def _sized_behind(written: Written, after: str) -> Written:
    """Add a size that stands between commas or in brackets: "2 pitas, small". In "small dice" it is that of the cut."""
    known = (line_words().get(part.strip().lower()) for part in after.split(","))
    size = next((found.meaning for found in known if found and found.kind == "size"), "")
    return replace(written, size=size) if size and not written.size and written.unit is None else written


def _of_another_state(remark: str, text: str) -> bool:
    """Whether a remark weighs the food in another state than the line measures it: "4 cups cooked pasta (8 oz dry)"."""
    if not _AMOUNT_OF_STATE.match(remark):
        return False
    return bool(_COOKED.search(text)) != bool(_COOKED.search(remark))


def _without_other_size(text: str) -> str:
    """Return a text without the brackets of another amount it offers: "2 cups fresh or 1 (10 oz) package frozen"."""
    other = _OTHER_AMOUNT.search(text)
    return f"{text[: other.end()]}{without_brackets(text[other.end() :])[0]}" if other else text


def _amounts_behind(text: str) -> tuple[str, list[str]]:
    """Return a text without the amounts that stand between its commas (", about 1 pound,"), and those."""
    if "," not in text:
        return text, []
    first, *pieces = re.split(r"\s*,\s+", text)
    amounts = [piece for piece in pieces if is_amount(piece)]
    return (
        (", ".join([first, *(piece for piece in pieces if piece not in amounts)]), amounts) if amounts else (text, [])
    )


def _foods_and_rest(text: str) -> tuple[str, list[str], list[str], str]:
    """Return the food's name, those offered in its place, those named beside it, and what is said behind the comma."""
    listed = _LIST.match(text)
    if listed:
        items = [item.strip() for item in listed["items"].split(",")] + [listed["last"].strip()]
        if all(_names(item) for item in items):
            tail = without_wishes(listed["tail"].strip(" ,;:"))
            if listed["link"].lower() in ("or", "and/or"):
                return items[0], items[1:], [], tail
            return f"{listed['items']} and {listed['last']}", [], items, tail
    name, after = _name_and_rest(text)
    lying = [part for part in after.split(", ") if _LIES_IN.match(part)]  # "sardines, in tomato sauce"
    after = without_wishes(", ".join(part for part in after.split(", ") if part not in lying))
    name = " ".join((name, *lying))
    name, *others = [part for part in _OR.split(name) if part] or [""]
    joined = [part.strip() for part in _AND.split(name)] if " and " in name or " & " in name else []
    return name, others, joined if all(map(_names, joined)) else [], after


def _name_and_rest(text: str) -> tuple[str, str]:
    """Return the words up to the first comma behind which a food has been named, and the rest."""
    parts = re.split(r"\s*[,;:]\s*|\s+-+\s+|(?<=[a-z])-(?=(?:rinsed|peeled|cut|remove|drained|chopped)\b)", text)
    ends = next((number for number, part in enumerate(parts, start=1) if _names(part)), 1)
    return " ".join(parts[:ends]), ", ".join(parts[ends:])


def _names(text: str) -> bool:
    """Whether a text has a word that none of a recipe's other words is: a food's name, or an unknown one."""
    said = words(text)
    telling = (word for word in said if word not in SMALL_WORDS and not word.isdigit())
    return any(line_words().get(word) is None and word not in said_less(said) for word in telling)


def _behind(text: str) -> tuple[Count | None, str]:
    """Read an amount that stands behind the food: "Olive oil: 2 tbsp", "Feta, 100 g", "Eggs x 3"."""
    turned = re.match(r"^([^\d.(]{3,60}?)\s*(?:[,:=-]|\bx\b)?\s*(?=\d|\.\d)(.+)$", text, re.IGNORECASE)
    if not turned or re.search(r"\b(?:into|in|to|from|about|no|of|at|with)\s*$", turned[1], re.IGNORECASE):
        return None, text
    count, rest = read_count(turned[2])
    if count is None or re.match(r"\s*-?\s*(?:grain|inch|cm\b|minute|hour|day|to\b)", rest, re.IGNORECASE):
        return None, text
    amount, _, tail = re.sub(r"\s*;\s*", ",", rest).partition(",")
    return count, f"{amount.strip()} {turned[1]}, {tail}".strip(" ,")


def _in_brackets(text: str, amounts: tuple[str, ...]) -> tuple[Count | None, str]:
    """Read an amount that stands in brackets only: "Chicken breasts (3, about 2 lbs)"."""
    for amount in sorted(amounts, key=is_amount, reverse=True):
        count, tail = read_count(WITHOUT_NEARLY.sub("", amount))
        if count is not None and (not tail or is_amount(amount) or volume_in((amount,), "us") or _is_measure(tail)):
            return count, f"{tail} {text}".strip()
    return None, text


def _is_measure(text: str) -> bool:
    """Whether a text is one word of a measure or a size: "cloves", "medium"."""
    known = [line_words().get(word) for word in words(text)]
    return len(known) == 1 and known[0] is not None and known[0].kind in ("measure", "size", "container")


def _with_words(written: Written, name: tuple[str, ...], after: tuple[str, ...]) -> Written:
    """Add what single words say: sizes, measures behind the food ("garlic cloves"), peeled or with bones."""
    size = written.size
    for word in name:
        known = line_words().get(word)
        if known and known.kind == "size" and not size:
            size = known.meaning
    said = {*name, *after}
    # What is cut, picked or peeled before the comma is weighed so: "200 g diced carrot", not "200 g carrots, diced".
    bony = said & {"drumstick", "leg", "wing"}  # skinless, they still have their bones
    kinds = {known.kind for word in name if (known := line_words().get(word)) and not (bony and word == "skinless")}
    edible = written.edible or bool({"edible", "cut"} & kinds) or not _READY_TO_EAT.isdisjoint(name)
    boneless = said & {"boneless", "fillet", "filet", "deveined", "boned", *(() if bony else ("skinless",))}
    phrase = f" {' '.join((*name, *after))} "
    with_bones = [words_ for words_ in _WITH_BONES if words_ != "skin on" or said.isdisjoint(_BONES_OUT)]
    as_bought = any(f" {words_} " in phrase for words_ in with_bones) or (
        "deskinned" in said and not boneless - {"skinless"}
    )
    drained = bool(said & {"drained", "rinsed"}) and "undrained" not in said
    thin = {"red", "potato"} <= set(name) and "peeled" not in said  # whoever peels red ones says so
    skin_on = thin or size == "small" or bool(said & _UNPEELED) or any(f" {words_} " in phrase for words_ in _WITH_SKIN)
    return replace(
        written, size=size, edible=edible or bool(boneless), as_bought=as_bought, drained=drained, skin_on=skin_on
    )


_READY_TO_EAT = frozenset("mixed salad mesclun leaf tenderstem sprouting crown".split())
_BONES_OUT = ("boneless", "boned", "fillet", "filet")
_WITH_BONES = (
    "bone in",
    "skin on",
    "shell on",
    "in shell",
    "in the shell",
    "in their shell",
    *("unshelled", "with shell", "debearded", "littleneck", "cherrystone", "on the bone"),
    "chicken part",
    "chicken piece",
    "part chicken",
    "piece chicken",
    "cut up",
)
