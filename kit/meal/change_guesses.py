"""Whose place a food takes where nobody names that: near in kind is enough, but not every food of a kind is near."""

from kit.food.composition import Food
from kit.food.vocabulary import words

_SAYS_LITTLE = frozenset("powder ground seed dried dry sauce fresh leaf whole".split())  # of spices and sauces
_PAIRS_APART = (  # common practice: the one is seldom meant by the other
    ({"cream", "half_and_half"}, {"sour_cream", "yogurt"}),
    ({"milk", "evaporated_milk"}, {"yogurt", "sour_cream"}),
    ({"bread_crumbs"}, {"bread", "tortilla_biscuit", "bagel_muffin"}),
    ({"hot_cereal", "hot_cereal_dry"}, {"grain_dry", "grain_prepared", "pasta_dry", "pasta_prepared"}),
)
_OF_ITS_OWN = frozenset(  # by base: nothing else is nearly the same
    "avocado bananas applesauce hominy coconut coconut-dried coconut-sweetened".split()
)
_SMALL_SEEDS = frozenset("chia-seeds flaxseed sesame-seeds poppy-seed".split())


def is_guess(food: Food, old: Food) -> bool:
    """Return whether that a food would take another's place is no more than a guess, where only the one is named.

    Parameters
    ----------
    food : Food
        What would come.
    old : Food
        What is nearest to it in the recipe.
    """
    if food.base == old.base:
        return False
    if "spice" in (food.group, old.group) or food.group == old.group == "condiment":
        return not (_telling(food) & _telling(old))
    if any(
        (food.reference in one and old.reference in other) or (food.reference in other and old.reference in one)
        for one, other in _PAIRS_APART
    ):
        return True
    bases = {food.base, old.base}
    small = bases & _SMALL_SEEDS
    sliced = [one.key.startswith("bread-") for one in (food, old)]
    return bool(bases & _OF_ITS_OWN) or len(small) == 1 or (food.group == "bread" and sliced[0] != sliced[1])


def _telling(food: Food) -> set[str]:
    return {word for name in (food.name, *food.other_names) for word in words(name)} - _SAYS_LITTLE
