"""Amounts that a what-if gives for each serving, as amounts for all of them: "one slice of bread each"."""

import re

from kit.errors import ChangeError
from kit.food.amounts import read_count
from kit.texts import number

_SERVING = (
    r"(?:person|serving|portion|helping|head|guest|eater|box|bowl|jar|plate|wrap|cup|glass|container|muffin|bar|piece"
    r"|square|slice|one)"
)
_EACH = re.compile(
    rf"^(?P<verb>(?:(?:use|add|put|with|have|take|give|make it) )?)(?P<body>.+?),? "
    rf"(?:each|apiece|per {_SERVING}|a (?:person|head|serving|portion)|(?:in|on|for|to) each(?: {_SERVING})?)$"
)
_SIZE_OF_EACH = re.compile(
    r"(?:^|(?:use|with|make it|only) )\d+(?:\.\d+)?[ -]?(?:oz|ounces?|g|grams?|lbs?|pounds?)[ -](?:\w+ )?"
    r"(?:fillets|breasts|thighs|steaks|chops|patties|portions|pieces|cans|bars|links|rolls|tortillas|wraps)\b"
)
_OF_EACH = re.compile(
    r"\b(?:cups?|tbsps?|tablespoons?|tsps?|teaspoons?|oz|ounces?|g|grams?|lbs?|pounds?|cans?|slices?|pinch(?:es)?)"
    r" each (?=\w)|\beach of\b"
)


def for_all(text: str, servings: float) -> str:
    """Return a clause with the amount for all servings, where it gives one for each.

    Raises
    ------
    ChangeError
        If what each gets is no amount, or "each" stands for each of several foods.

    Examples
    --------
    >>> for_all("one slice of bread each", 4), for_all("add 1 tbsp feta per box", 6), for_all("half the salt", 4)
    ('4 slice of bread', 'add 6 tbsp feta', 'half the salt')
    """
    if _OF_EACH.search(text):
        raise ChangeError(f'"{text}" says "each" of several foods; write every food with its own amount')
    if _SIZE_OF_EACH.search(text):  # "4 oz fillets" may be four of them
        raise ChangeError(f'"{text}": is that the size of each? write how much in all')
    found = _EACH.match(text)
    if not found:
        return text
    count, rest = read_count(found["body"])
    if count is None or not rest or re.match(r"(?:the|of|as|less|more)\b", rest) or " each" in rest:
        raise ChangeError(f'"{text}": write how much in all, for {number(servings, 2)} servings')
    return f"{found['verb']}{number(count.value * servings, 3)} {rest}".replace(",", "")
