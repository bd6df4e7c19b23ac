"""What the measure or the cut tells of a food that its words leave open: a bunch is fresh, a can is not."""

from collections.abc import Sequence

from kit.food.composition import Food, Foods

_FRESH_MEASURES = ("bunch", "sprig", "handful", "leaf", "stalk")
_FRESH_CUTS = frozenset("minced chopped snipped torn sliced shredded leaf sprig".split())
_RED_PEPPERS = ("red-bell-pepper", "red-chili")
_CUTS = frozenset("minced chopped diced sliced grated seeded roasted puree".split())
_DRIED_CUTS = frozenset("crushed crumbled rubbed".split())
_SPOONS = ("teaspoon", "tablespoon")
_ALSO_A_ROOT = ("ginger",)  # ground when it is measured by the teaspoon
_ALSO_A_LEAF = ("coriander",)  # whose seed is meant by the spoon


def implied_state(said: Sequence[str], container: str, food: Food | None) -> str:
    """Return the word that the measure or the cut adds to what a line says of a food; empty when they add none.

    Parameters
    ----------
    said : sequence of str
        All telling words of the line.
    container : str
        What is counted: ``"can"``, ``"bunch"``, ``"teaspoon"`` ...
    food : Food or None
        The food that fits the words alone.

    Examples
    --------
    >>> implied_state(["coriander"], "bunch", None), implied_state(["tuna"], "can", None)
    ('fresh', 'canned')
    """
    if container == "can":
        return "canned"
    if container in _FRESH_MEASURES:
        return "fresh"
    if container in _SPOONS and len(said) == 1 and said[0] in _ALSO_A_LEAF:
        return "ground"
    if container in _SPOONS and list(said) == ["soda"]:
        return "baking"  # nobody drinks it by the spoon
    if container in _SPOONS and food is not None and food.base in _RED_PEPPERS and _CUTS.isdisjoint(said):
        return "ground"  # no bell pepper is measured so before it is cut
    if container == "teaspoon" and food is not None and food.base in _ALSO_A_ROOT:
        return "ground" if _CUTS.isdisjoint(said) and {"fresh", "root", "paste"}.isdisjoint(said) else ""
    if (
        food is None
        or food.group not in ("spice", "herb")
        or not {"fresh", "dried", "dry", "ground", "frozen"}.isdisjoint(said)
    ):
        return ""
    if food.group == "spice":
        return "fresh" if container and not _FRESH_CUTS.isdisjoint(said) else ""
    dried = container == "teaspoon" and _FRESH_CUTS.isdisjoint(said)
    return "dried" if dried or (container in _SPOONS and not _DRIED_CUTS.isdisjoint(said)) else ""


def is_open_in(food: Food, implied: str, table: Foods) -> bool:
    """Whether the implied word may lead to another food than the one that fits the words alone."""
    if implied == "canned":
        forms = (food, *table.forms(food.base))
        return not any(form.state in ("canned", "drained", "rinsed") for form in forms)
    return food.group in ("spice", "herb") or food.base in (*_RED_PEPPERS, *_ALSO_A_ROOT)
