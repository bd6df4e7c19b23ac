"""Lists of allergens: whether one is said to be whole, and what it leaves out."""

import re
from collections.abc import Sequence

from kit.rules.cautions import allergens
from kit.talk.dish import Dish

# "The only allergen is soy", "eggs and milk are the allergens", "no allergens but soy", "it contains just soy".
_WHOLE = re.compile(
    r"\b(?:only|sole|single|lone|the one)\b[^.;]*\ballergens?\b"
    r"|\b(?:the|its|your|all|major)(?: the)?(?: major| listed)? allergens?(?: here| in (?:it|this|here))?(?: is| are|:)"
    r"|\b(?:is|are) (?:the|its|your|all)(?: the)?(?: only| major)? allergens?\b"
    r"|\b(?:no|any|zero) (?:other|further|more) allergens?\b"
    r"|\ballergens? (?:other than|but|except|besides|apart from|aside from|beyond)\b"
    r"|\b(?:other than|apart from|except(?: for)?|besides|aside from)\b[^.;]*\bno (?:other )?allergens?\b"
    r"|\bnothing (?:else )?(?:to|you (?:have|need) to) (?:declare|flag|mention|warn)"
    r"|\b(?:is|are) all (?:that )?(?:you|we|i) (?:have|need) to (?:declare|flag|mention|warn|watch|look)"
    r"|\b(?:contains?|contain|has|have|brings?|includes?) (?:only|just|nothing (?:else )?(?:but|other than))\b"
    r"|\b(?:only|just) (?:contains?|has|have|brings?|includes?)\b"
    r"|\ballerg[a-z]*[^.;]*\b(?:nothing|none|that's it|that is it|that's all|and no others?)\b"
    r"|\b(?:nothing (?:else|more)|no others?|that's (?:it|all|the lot)|that is (?:it|all|the lot))\b"
    r"|\b(?:nothing else|no others?|that's it|that is it|that's all)\b[^.;]*\ballerg"
)
_NOT_WHOLE = re.compile(r"\b(?:not|isn't|aren't) (?:the )?only\b|\bamong (?:the|its) allergens\b|\bone of the\b")
HERE = ("it", "this", "here", "there", "them", "these", "those")  # in which an allergen is said to be
_STANDS_FOR = {
    "nuts": ("tree_nut", "pine_nut", "peanut"),
    "shellfish": ("crustacean", "mollusc"),
    "seafood": ("fish", "crustacean", "mollusc"),
    "gluten": ("gluten", "wheat"),
    "wheat": ("wheat", "gluten"),
}


def says_whole(text: str) -> bool:
    """Return whether a sentence says that the allergens it names are all there are.

    Examples
    --------
    >>> says_whole("The only allergen is soy."), says_whole("It contains soy.")
    (True, False)
    """
    plain = text.lower().replace("’", "'")
    return _WHOLE.search(plain) is not None and _NOT_WHOLE.search(plain) is None


def left_out(listed: Sequence[str], dish: Dish) -> tuple[str, ...]:
    """Return the names of the dish's listed allergens that a list of ids does not name."""
    named = {one for allergen in listed for one in _STANDS_FOR.get(allergen, (allergen,))}
    nut = named & {"tree_nut", "pine_nut"}
    there = allergens(dish.numbers.recipe, dish.talk.rules)
    return tuple(
        one.name.lower()
        for one in there
        if one.allergen not in named and not (nut and one.allergen in ("tree_nut", "pine_nut"))
    )


def all_of(dish: Dish) -> tuple[str, ...]:
    """Return the names of all the dish's listed allergens."""
    return tuple(dict.fromkeys(one.name.lower() for one in allergens(dish.numbers.recipe, dish.talk.rules)))
