"""Which animal a food is of, by its name: whether it brings pork or beef; None where its package has to tell."""

from collections.abc import Mapping

from kit.food.composition import Food
from kit.food.vocabulary import words

_OF_PORK = frozenset(
    "pork bacon ham lard chorizo kielbasa bratwurst pepperoni salami bologna mortadella liverwurst prosciutto pancetta "
    "pig chitterling blood".split()
)
_OF_BEEF = frozenset("beef veal pastrami tripe tallow".split())
_NAMED: Mapping[str, frozenset[str]] = {"pork": _OF_PORK, "beef": _OF_BEEF}
_OTHERS = frozenset("turkey chicken meatless beef pork lamb bison elk venison duck fish vegetable".split())
_OF_SEVERAL = frozenset("sausage frankfurter gelatin marshmallow salami bologna mortadella liverwurst bone".split())


def brings(food: Food, animal: str) -> bool | None:
    """Return whether a food brings pork or beef; None where several animals may be in it.

    Sausage and gelatin are made of several animals unless their name says which (common practice).

    Parameters
    ----------
    food : Food
        The food.
    animal : {"pork", "beef"}
        The animal.

    Examples
    --------
    >>> from kit.food.composition import foods
    >>> [brings(foods()[key], "pork") for key in ("ham", "turkey-ham", "gelatin", "beef-stew")]
    [True, False, None, False]
    """
    named = set(words(food.name))
    if animal in named or (named & _NAMED[animal] and not named & (_OTHERS - _NAMED[animal])):
        return True
    if named & _OF_SEVERAL and not named & (_OTHERS | _OF_PORK - _OF_SEVERAL):
        return None
    return False
