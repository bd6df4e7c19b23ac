"""Several foods on one line: "salt and pepper", "juice and zest of a lemon", "1 tsp each cumin and paprika"."""

import re
from collections.abc import Iterator
from itertools import islice

from kit.food.amounts import read_count
from kit.food.vocabulary import SMALL_WORDS, line_words, words
from kit.lines.purposes import UNMEASURED, WITHOUT_NEARLY
from kit.lines.quantities import quantity

_MOST_FOODS = 4  # named on one line
_SQUEEZED = r"(?:(?:finely|freshly|coarsely)\s+)?(?:(?:grated|squeezed|pared)\s+)?"
_PRODUCT = re.compile(
    rf"^(?:the\s+)?{_SQUEEZED}(?P<first>juice|zest|rind)(?:\s*(?:and|&|\+|,)\s*{_SQUEEZED}(?P<second>juice|zest|rind))?"
    r"\s+(?:(?:of|from)\s+(?:about\s+)?|(?=\d|an?\s|half\s|one\s|two\s))",
    re.IGNORECASE,
)
_PRODUCT_BEHIND = re.compile(
    rf"^(?P<fruit>[^,(]+?)\s*[,(]\s*{_SQUEEZED}(?P<first>juice|zest|rind)(?:d|ed)?"
    rf"(?:\s*(?:and|&|\+)\s*{_SQUEEZED}(?P<second>juice|zest|rind)(?:d|ed)?)?(?:\s+(?:only|of))?\s*\)?"
    r"(?:,?\s*\(?(?:divided|optional|if desired|(?:or|plus) (?:more )?(?:to taste|as needed|if desired|for [a-z]+))"
    r"\)?)?$",
    re.IGNORECASE,
)
_AND_MORE = re.compile(r"\s*(?:\+|&|\b(?:and|plus|(?:mixed|whisked|blended|combined) with))\s+(?=[\d.])", re.IGNORECASE)
_ANOTHER_AMOUNT = re.compile(r"\s*,\s+(?=[\d.])")
_NO_KIND_OF_SALT = r"(?!(?:t|tb|tbl|tea|table)sp|pinch|dash|cup|each\b|of\b)"
_SEASONING = re.compile(
    rf"^(?P<head>.*?)(?P<salt>(?:\b{_NO_KIND_OF_SALT}[a-z][\w-]{{1,14}}\s+)?\bsalt)\s*(?:,|and|&|\+|/)\s*"
    r"(?P<pepper>(?:[\w-]{1,15}\s+){0,3}pepper)\b(?P<tail>.*)$",
    re.IGNORECASE,
)
_TO_TASTE = re.compile(r"\s+(?:to taste|as (?:needed|desired))\b", re.IGNORECASE)
_THIRD = re.compile(
    r"^\s*(?:,\s*(?:and\s+)?|and\s+|&\s*)(?P<food>(?!freshly|ground|coarse|fine|cracked|milled)[a-z][a-z -]{2,30}?)"
    r"(?P<tail>(?:,?\s+(?:to|as|for)\b.*)?)$",
    re.IGNORECASE,
)
_EACH = re.compile(r"^(?P<amount>[^()]*?)\s*\beach\b\s*(?:of\s+)?:?\s*(?P<foods>[^()]+)$", re.IGNORECASE)
_PART = r"\d+\s+(?:breasts?|thighs?|drumsticks?|legs?|wings?|backs?)(?:\s+halves)?"
_PIECES = re.compile(
    rf"^[\d./]+\s+(?:pieces?|parts?)\s+(?:of\s+)?(?P<food>[a-z ]+?)(?P<said>,[^()]*)?\s*"
    rf"\((?P<parts>{_PART}(?:\s*(?:,|and|&)\s*(?:and\s+)?{_PART})+)\)(?P<tail>.*)$",
    re.IGNORECASE,
)
_LABEL = re.compile(r"^[A-Za-z' -]{3,40}:\s*(?=[\d.])")
_COLOUR = re.compile(r"(?:red|green|yellow|orange|white|black|brown|purple|golden)\b", re.IGNORECASE)
_EACH_LAST = re.compile(
    r"^(?P<foods>[^\d,()]+(?:,[^\d,()]+)*?)[,:]?\s+(?P<amount>[\d./ ]+\s*[A-Za-z]+\.?)\s+(?:of\s+)?each$", re.IGNORECASE
)


def parts_of(text: str) -> Iterator[tuple[str, str]]:
    """Yield the parts of a line, each naming one food, and the product of it that is meant.

    Examples
    --------
    >>> list(parts_of("2 tbsp each parsley and chives, chopped"))
    [('2 tbsp parsley, chopped', ''), ('2 tbsp chives, chopped', '')]
    >>> list(parts_of("zest and juice of 1 lime"))
    [('1 lime', 'zest'), ('1 lime', 'juice')]
    """
    product = _PRODUCT.match(text) or _PRODUCT_BEHIND.match(text)
    if product:
        fruit = product["fruit"] if "fruit" in product.re.groupindex else text[product.end() :]
        for kind in product.group("first", "second"):
            if kind:
                yield fruit, "juice" if kind.lower() == "juice" else "zest"
        return
    pieces = _PIECES.match(text)
    if pieces:  # "8 pieces chicken, skinless (4 breasts, 4 drumsticks)"
        for part in re.findall(_PART, pieces["parts"], re.IGNORECASE):
            number, _, noun = part.partition(" ")
            yield f"{number} {pieces['food']} {noun}{(pieces['said'] or '').rstrip()}{pieces['tail']}", ""
        return
    label = _LABEL.match(text)
    if label and _names_food(text[label.end() :]):  # "For the salad: 2 cups arugula"
        text = text[label.end() :]
    lower = text.lower()
    each = (_EACH.match(text) or _EACH_LAST.match(text)) if " each" in lower else None
    foods, tail = _listed(each["foods"]) if each else ([], "")
    seasoning = _SEASONING.match(text) if "pepper" in lower and "salt" in lower else None
    if each and len(foods) > 1 and read_count(WITHOUT_NEARLY.sub("", each["amount"]) or "1")[0]:
        cut = _cut_of(foods[0])
        yield from ((f"{each['amount']} {food if _cut_of(food) else cut + food}{tail}", "") for food in foods)
    elif seasoning:
        head = re.sub(r"\beach\b(?:\s+of)?\s*", "", seasoning["head"], flags=re.IGNORECASE)
        third = _THIRD.match(seasoning["tail"])
        named = seasoning.group("salt", "pepper")
        if third and _may_be_food(third["food"]):  # "salt, pepper and garlic powder to taste"
            yield from ((f"{head}{food}{third['tail']}", "") for food in (*named, third["food"]))
        else:
            salt, pepper = named
            yield f"{head}{salt}{seasoning['tail']}", ""
            own = "" if _TO_TASTE.match(seasoning["tail"]) else head  # "1 tsp salt and pepper to taste"
            yield f"{own}{pepper}{seasoning['tail']}", ""
    else:
        yield from ((part, "") for part in _amounts_of_foods(text))


def _listed(text: str) -> tuple[list[str], str]:
    """Return the foods of "parsley, dill and chives, chopped", and what is said of them all behind: ", chopped".

    The last food's noun is that of a colour before it as well: "red and green bell pepper".
    """
    items = [item for item in re.split(r"\s*,\s*(?:and\s+)?|\s+(?:and|&)\s+", text) if item]
    behind = next((number for number, item in enumerate(items) if number and not _may_be_food(item)), len(items))
    foods = items[:behind]
    noun = foods[-1].partition(" ")[2] if foods and _COLOUR.match(foods[-1]) else ""
    shared = [f"{food} {noun}" if noun and _COLOUR.fullmatch(food) else food for food in foods]
    return shared, "".join(f", {item}" for item in items[behind:])


def _cut_of(food: str) -> str:
    """Return the word before a food that says how it is cut ("diced "): it is said of those behind it, too."""
    first, _, rest = food.partition(" ")
    known = line_words().get(first.lower())
    return f"{first} " if rest and known and known.kind == "cut" else ""


def _may_be_food(text: str) -> bool:
    """Whether a text has a word that is none of those that only say something about a food."""
    return any(line_words().get(word) is None and word not in SMALL_WORDS for word in words(text))


def _amounts_of_foods(text: str) -> Iterator[str]:
    """Yield the parts of "1 tbsp cornstarch + 1 tbsp water", each with an amount and a food; else the text."""
    for link in islice(_AND_MORE.finditer(text), _MOST_FOODS):
        left, right = text[: link.start()], text[link.end() :]
        if _names_food(left) and _names_food(right) and left.count("(") == left.count(")"):
            before = _ANOTHER_AMOUNT.split(left)  # "1 carrot, 1 celery rib and 1 onion"
            yield from before if all(map(_names_food, before)) else (left,)
            yield right
            return
    yield text


def _names_food(text: str) -> bool:
    count, rest = read_count(text)
    if count is None:
        return False
    return _may_be_food(UNMEASURED.sub("", quantity(count, re.sub(r"[(\[][^()\[\]]*[)\]]", "", rest), (), "us")[1]))
