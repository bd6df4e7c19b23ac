"""An amount for one serving only: "1 egg per person", or everything below the heading "Toppings (per bowl)"."""

import re

_ONE = (
    r"servings?|portions?|persons?|people|guests?|heads?|adults?|child|bowls?|plates?|jars?|glass|glasses|box|boxes|mugs?|"
    r"containers?|sandwich|sandwiches|wraps?|tacos?|pizzas?|skewers?|toasts?|muffins?|burgers?|parfaits?|smoothies?"
)
_EACH = re.compile(
    rf"\b(?:per|(?:for|to|in|on|into|top)\s+(?:each|every|one))\s+(?:single\s+|individual\s+)?(?:{_ONE})\b",
    re.IGNORECASE,
)
_NUMBER = re.compile(r"[\d¼½¾⅓⅔⅛]")


def for_each_serving(line: str, part: str = "") -> str:
    """Return the words by which an amount is that of one serving, or nothing.

    Parameters
    ----------
    line : str
        An ingredient line. An amount beside the first ("4 cod fillets, 1 per person") only tells how it is shared out.
    part : str
        The heading it stands under.

    Examples
    --------
    >>> for_each_serving("1 slice bread per serving"), for_each_serving("1/4 cup granola", "toppings (per bowl)")
    ('per serving', 'per bowl')
    >>> for_each_serving("1 1/2 lb cod (about 4 oz per person)")
    ''
    """
    said = _EACH.search(line)
    if said and not _NUMBER.search(_behind_amount(line[: said.start()])):
        return said[0]
    headed = _EACH.search(part)
    return headed[0] if headed and not _NUMBER.search(part) else ""


def _behind_amount(text: str) -> str:
    """Return what stands behind the number that a line begins with: "1 1/2", "2-3", "1 to 2"."""
    return re.sub(r"^\W*[\d¼½¾⅓⅔⅛][\d¼½¾⅓⅔⅛./ -]*(?:to\s+[\d./ ]+)?", "", text)
