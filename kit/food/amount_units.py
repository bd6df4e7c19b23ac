"""Units of nutrients as tables and labels write them, as the unit the kit keeps each nutrient in."""

from kit.food.energy import KJ_PER_KCAL
from kit.food.nutrients import nutrient

_GRAMS = {"g": 1.0, "gram": 1.0, "grams": 1.0, "mg": 1e-3, "mcg": 1e-6, "ug": 1e-6, "µg": 1e-6, "μg": 1e-6}
_KCAL = {"kcal": 1.0, "cal": 1.0, "calories": 1.0, "kj": 1 / KJ_PER_KCAL}  # a label's "calorie" is a kilocalorie
_VITAMIN_D_UG_PER_IU = 0.025  # 800 IU is 20 µg: 21 CFR 101.9(c)(8)(iv)


def factor(unit: str, into: str, name: str = "") -> float | None:
    """Return what an amount in one unit is multiplied with to be in another; None when they are not of a kind.

    Parameters
    ----------
    unit, into : str
        The units; capitals do not matter.
    name : str
        The nutrient, since international units differ from one to the next.

    Examples
    --------
    >>> factor("mg", "g"), factor("IU", "µg", "vitamin_d"), factor("IU", "µg", "vitamin_a")
    (0.001, 0.025, None)
    """
    source, target = unit.lower(), into.lower()
    for sizes in (_GRAMS, _KCAL):
        if source in sizes and target in sizes:
            return sizes[source] / sizes[target]
    if name == "vitamin_d" and source == "iu" and target == "µg":
        return _VITAMIN_D_UG_PER_IU
    return None


def into_ours(unit: str, name: str) -> float | None:
    """Return what an amount of a nutrient is multiplied with to be in the kit's unit, or None."""
    return factor(unit, nutrient(name).unit, name)
