"""The quality of protein: how much of it a day's protein counts, by published scores."""

from collections.abc import Mapping
from functools import cache

import numpy as np

from kit import files
from kit.food.composition import Food, read_rows
from kit.meal.nutrition import Nutrition


@cache
def protein_quality() -> Mapping[str, tuple[float, ...]]:
    """Return the published protein digestibility-corrected amino acid scores by the base of a food."""
    found: dict[str, tuple[float, ...]] = {}
    for row in read_rows(files.bundled("data/protein_quality.csv")):
        found[row["base"]] = (*found.get(row["base"], ()), float(row["pdcaas"]))
    return found


def quality_of(food: Food) -> tuple[float, ...]:
    """Return the published scores of a food; none where nobody has published one that the kit knows.

    Examples
    --------
    >>> from kit.food.composition import foods
    >>> quality_of(foods()["lentils-dry"])
    (0.52, 0.63)
    """
    return protein_quality().get(food.base, ())


def quality_of_dish(numbers: Nutrition) -> tuple[float, float]:
    """Return the least and the most that the score of a dish's protein can be.

    Notes
    -----
    A mixture's score is not the average of its parts' scores, since one part makes up for what another lacks; but it
    is never less. For each amino acid the mixture holds, per gram of protein, the average of what the parts hold, and
    each part holds at least its own score of it. So the average is the least, and 1 the most. A food without a
    published score counts as 0 in the least.

    References
    ----------
    FAO/WHO, "Protein quality evaluation", Food and Nutrition Paper 51, Rome, 1991: the score of the mixture's amino
    acids; 21 CFR 101.9(c)(7)(ii) counts no more than 1.
    """
    protein = np.nan_to_num(numbers.brings("protein"))
    whole = float(protein.sum())
    if whole <= 0:
        return 0.0, 1.0
    least = [min(quality_of(part.food), default=0.0) for part in numbers.recipe.ingredients]
    return min(1.0, float(protein @ np.array(least)) / whole), 1.0
